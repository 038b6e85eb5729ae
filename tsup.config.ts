import type { PluginBuild } from "esbuild";
import { defineConfig } from "tsup";

const dts = { compilerOptions: { ignoreDeprecations: "6.0" } };
/** The command uses the library's own build beside it instead of carrying a second copy of the catalogue. */
const shared = {
  name: "shared-build",
  setup(build: PluginBuild): void {
    build.onResolve({ filter: /^\.\.\/(index|extend)\.js$/ }, ({ path }) => ({
      path: path.replace("../", "./"),
      external: true,
    }));
  },
};
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
    external: ["zod", "graphology", "fuse.js", "yaml", "htmlparser2"],
  },
  {
    entry: { cli: "src/cli/main.ts", demo: "src/cli/demo.ts" },
    format: ["esm"],
    target: "node20",
    platform: "node",
    external: ["zod", "graphology", "fuse.js", "yaml", "htmlparser2"],
    esbuildPlugins: [shared],
    banner: { js: "#!/usr/bin/env node" },
    clean: false,
  },
]);
