import { execFileSync } from "node:child_process";
import { describe, expect, it } from "vitest";

const root = new URL("../..", import.meta.url).pathname;
const tool = (name: string, ...args: string[]): string => {
  try {
    return execFileSync("npx", ["--no-install", name, ...args], {
      cwd: root,
      encoding: "utf8",
      stdio: ["ignore", "pipe", "pipe"],
    });
  } catch (e) {
    const failed = e as { stdout?: string; stderr?: string };
    throw new Error(`${name} found fault:\n${failed.stdout ?? ""}${failed.stderr ?? ""}`, { cause: e });
  }
};

// Two general-purpose linters of packages, from npm.
describe("what a resolver sees", () => {
  it("publint finds nothing wrong", () => {
    expect(tool("publint", "--strict", "--pack", "false")).toMatch(/All good|No issues/i);
  });
  it("the types resolve in every mode", () => {
    // Subpaths are for resolvers that read `exports`; the one of Node 10 does not, and Node 20 is the oldest supported.
    const report = tool("attw", "--pack", ".", "--profile", "node16", "--format", "ascii");
    const seen = report.split("\n").filter((line) => !line.includes("(ignored"));
    expect(seen.filter((line) => line.includes("🟢")).length).toBeGreaterThanOrEqual(12);
    expect(seen.filter((line) => /💀|❌|🎭|⚠/u.test(line))).toEqual([]);
  });
});
