import { defineConfig } from "tsup";

const dts = { compilerOptions: { ignoreDeprecations: "6.0" } };
export default defineConfig([
  {
    entry: { index: "src/index.ts", extend: "src/extend.ts", graph: "src/graph.ts" },
    format: ["esm", "cjs"],
    dts,
    target: "es2022",
    platform: "neutral",
    treeshake: true,
    clean: true,
    splitting: true,
    external: ["zod", "graphology", "fuse.js"],
  },
  {
    entry: { cli: "src/cli/main.ts", demo: "src/cli/demo.ts" },
    format: ["esm"],
    target: "node20",
    platform: "node",
    // The command shares the library's build instead of carrying a second copy of the catalogue.
    external: [/^\.\.\/index\.js$/, "zod", "graphology", "fuse.js"],
    noExternal: ["yaml"],
    banner: { js: "#!/usr/bin/env node" },
    clean: false,
  },
]);
