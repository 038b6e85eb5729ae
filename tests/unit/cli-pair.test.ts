import { spawnSync } from "node:child_process";
import { existsSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { openCatalogue, pairingsFor, type PairingAdvice } from "../../src/index.js";

// The source, as it stands: a build left over from before would not know the command.
const root = fileURLToPath(new URL("../..", import.meta.url));
const main = join(root, "src", "cli", "main.ts");
function run(...args: readonly string[]): { code: number | null; out: string; err: string } {
  expect(existsSync(main)).toBe(true);
  const done = spawnSync(process.execPath, ["--import", "tsx", main, "pair", ...args], {
    cwd: root,
    encoding: "utf8",
    timeout: 60_000,
  });
  return { code: done.status, out: done.stdout, err: done.stderr };
}

describe("pair", () => {
  it("answers in words and ends with 0", () => {
    const ran = run("kale", "--limit", "3");
    expect(ran).toMatchObject({ code: 0, err: "" });
    expect(ran.out).toMatch(/^With kale:\n\n {2}kale stems \(parts of one ingredient\): Use the rest: /);
    expect(ran.out.trim().split("\n")).toHaveLength(5);
  });
  it("--json is the answer the library gives, with every option passed on", () => {
    const ran = run(
      "spinach",
      "--have",
      "potatoes,lemon",
      "--avoid",
      "milk,pork",
      "--cuisine",
      "italian",
      "--limit",
      "6",
      "--json",
    );
    expect(ran).toMatchObject({ code: 0, err: "" });
    const answer = JSON.parse(ran.out) as PairingAdvice;
    expect(answer).toEqual(
      pairingsFor(openCatalogue(), {
        food: "spinach",
        have: ["potatoes", "lemon"],
        avoid: { allergens: ["milk"], foods: ["pork"], diets: [] },
        cuisine: "italian",
        limit: 6,
      }),
    );
    expect(answer.pairings).toHaveLength(6);
    expect(answer.refused.length).toBeGreaterThan(0);
  });
  it("ends with 1 when nothing goes with it", () => {
    const ran = run("baking powder");
    expect(ran).toMatchObject({ code: 1, err: "" });
    expect(ran.out).toContain("Nothing is known to go with it.");
  });
  it.each([
    [[], "Say what is to be paired"],
    [["qqqqzzzz"], "qqqqzzzz"],
    [["kale", "--cuisine", "Itallian"], "Nearest: Italian"],
    [["kale", "--limit", "many"], "--limit wants a number"],
    [["kale", "--limit", "500"], "limit must be a whole number from 1 to 200"],
  ])("%j is bad input: 2, and one line says why", (args, says) => {
    const ran = run(...args);
    expect(ran.code).toBe(2);
    expect(ran.out).toBe("");
    expect(ran.err).toContain(says);
    expect(ran.err.trimEnd().split("\n")).toHaveLength(1);
  });
});
