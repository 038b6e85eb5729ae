import { defineConfig } from "vitest/config";

export default defineConfig({
  root: new URL("..", import.meta.url).pathname,
  test: {
    include: ["tests/{unit,property,published,exam,types}/**/*.test.ts"],
    typecheck: { enabled: true, include: ["tests/types/**/*.test-d.ts"], tsconfig: "./tsconfig.json" },
    setupFiles: [new URL("vitest.setup.ts", import.meta.url).pathname],
    testTimeout: 60_000,
  },
});
