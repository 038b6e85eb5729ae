import { defineConfig } from "vitest/config";

export default defineConfig({
  root: new URL("..", import.meta.url).pathname,
  test: {
    include: ["tests/{unit,property,published,types}/**/*.test.ts"],
    typecheck: { enabled: true, include: ["tests/types/**/*.test-d.ts"], tsconfig: "./tsconfig.json" },
    testTimeout: 60_000,
  },
});
