import { spawnSync } from "node:child_process";
import { fileURLToPath, pathToFileURL } from "node:url";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { STANDING_NOTICE } from "../../src/index.js";

// Many recipes adapted, one a line: run as a process of its own, since it writes to standard output.
const root = fileURLToPath(new URL("../..", import.meta.url));
const room = (file: string): string => JSON.stringify(pathToFileURL(join(root, "src", "cli", file)).href);
const CODE = `import { adaptBulk } from ${room("bulk-adapt.ts")};
import { readArgs } from ${room("options.ts")};
const { values, positionals } = readArgs(process.argv.slice(1));
process.exitCode = await adaptBulk(positionals, values).catch((e) => { process.stderr.write(e.message); return 3; });`;
interface Answer {
  readonly line: number;
  readonly id?: string;
  readonly lines?: readonly { readonly text: string }[];
  readonly changes?: readonly unknown[];
  readonly notice?: string;
  readonly error?: { readonly code: string };
}
function run(args: readonly string[], input: string): { code: number | null; answers: Answer[]; err: string } {
  const argv = ["--import", "tsx", "--input-type=module", "-e", CODE, "--", ...args];
  const done = spawnSync(process.execPath, argv, { cwd: root, input, encoding: "utf8", timeout: 60_000 });
  const answers = done.stdout
    .split("\n")
    .filter((l) => l !== "")
    .map((l) => JSON.parse(l) as Answer);
  return { code: done.status, answers, err: done.stderr };
}
const recipe = (id: string, lines: readonly string[]): string =>
  JSON.stringify({
    "@type": "Recipe",
    "@id": id,
    name: id,
    recipeYield: "4",
    recipeIngredient: lines,
    recipeInstructions: ["Braise."],
  });

describe("adapting many", () => {
  const input = [
    recipe("a", ["500 g kale, chopped", "1 tsp salt"]),
    "{ not json",
    recipe("b", ["1 onion"]),
    recipe("c", []),
  ].join("\n");
  it("every recipe that has it is changed, others come back as they were, bad records stop nothing", () => {
    const { code, answers } = run(["-", "--missing", "kale"], input);
    expect(code).toBe(2);
    expect(answers.map((a) => [a.line, a.id, a.error?.code])).toEqual([
      [1, "a", undefined],
      [2, undefined, "unreadable record"],
      [3, "b", undefined],
      [4, "c", "unreadable record"],
    ]);
    expect(answers[0]?.lines?.map((l) => l.text).join()).not.toContain("kale");
    expect(answers[0]?.changes?.length).toBeGreaterThan(0);
    expect([answers[2]?.lines?.[0]?.text, answers[2]?.changes]).toEqual(["1 onion", []]);
    expect([answers[0]?.notice, answers[2]?.notice]).toEqual([STANDING_NOTICE, STANDING_NOTICE]);
  });
  it("serves goes to each, and all good ends with 0", () => {
    const { code, answers } = run(
      ["-", "--serves", "8"],
      `${recipe("a", ["500 g kale"])}\n${recipe("b", ["2 eggs"])}\n`,
    );
    expect(code).toBe(0);
    expect(answers[1]?.lines?.[0]?.text).toMatch(/^4 .*eggs?/);
  });
  it("nothing to change, or a word to avoid nobody knows, is said once and not for every record", () => {
    for (const args of [["-"], ["-", "--avoid", "zzqxy"], ["-", "--missing", "?"]]) {
      const { code, answers, err } = run(args, input);
      expect([code, answers]).toEqual([3, []]);
      expect(err.length).toBeGreaterThan(5);
    }
  });
});
