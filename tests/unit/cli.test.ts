import { spawn, spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import * as source from "../../src/index.js";
import type { Judgement, MealReport, SwapAdvice } from "../../src/index.js";

// The command as it is run: the built one when there is one, else its source.
const root = fileURLToPath(new URL("../..", import.meta.url));
const built = join(root, "dist", "cli.js");
const ARGS = existsSync(built) ? [built] : ["--import", "tsx", join(root, "src", "cli", "main.ts")];

/** The library the command uses: its neighbour in dist, or the source. */
const library = existsSync(built)
  ? ((await import(pathToFileURL(join(root, "dist", "index.js")).href)) as typeof source)
  : source;

interface Ran {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}
function run(args: readonly string[], input = ""): Ran {
  const done = spawnSync(process.execPath, [...ARGS, ...args], { cwd: root, input, encoding: "utf8", timeout: 60_000 });
  return { code: done.status, out: done.stdout, err: done.stderr };
}
/** What an engine says of a fault in the code, which nobody at a stove can use. */
const RAW = /\bat .+:\d+:\d+|node:internal|SteadfareError|\[object|is not a function|Cannot read|not iterable/;
/** One line that says what was wrong; no stack, no path of this machine. */
function plain(ran: Ran): void {
  expect(ran.code).toBe(2);
  expect(ran.out).toBe("");
  expect(ran.err).toMatch(/^steadfare: .+\n$/);
  expect(ran.err.trimEnd().split("\n")).toHaveLength(1);
  expect(ran.err).not.toMatch(RAW);
}
const json = (ran: Ran): unknown => JSON.parse(ran.out);

let folder = "";
const file = (name: string, text: string): string => {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
};
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "steadfare-cli-"));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe("swap", () => {
  it("answers in words and ends with 0", () => {
    const ran = run(["swap", "1 tsp white pepper"]);
    expect(ran.code).toBe(0);
    expect(ran.err).toBe("");
    expect(ran.out).toMatch(/^Instead of 1 tsp white pepper/);
    expect(ran.out).toContain("black pepper");
  });
  it("--json is the answer the library gives, field by field as the contract has them", () => {
    const ran = run(["swap", "450 g salt cod", "--technique", "simmer", "--json", "--limit", "3"]);
    expect(ran.code).toBe(0);
    const advice = json(ran) as SwapAdvice;
    expect(advice).toEqual(
      JSON.parse(
        JSON.stringify(
          library.swapsFor(library.openCatalogue(), {
            missing: "450 g salt cod",
            dish: { technique: "simmer" },
            limit: 3,
          }),
        ),
      ),
    );
    expect(Object.keys(advice).sort()).toEqual(
      expect.arrayContaining(["missing", "notUnderstood", "refused", "roles", "swaps"]),
    );
    expect(advice.swaps).toHaveLength(3);
    for (const s of advice.swaps) {
      expect(Object.keys(s).sort()).toEqual([
        "allergens",
        "basis",
        "cautions",
        "corrections",
        "fit",
        "parts",
        "prep",
        "score",
        "shift",
        "sources",
        "text",
        "time",
        "use",
      ]);
      expect(["published", "common practice", "computed"]).toContain(s.basis);
      expect(s.score).toBeGreaterThanOrEqual(0);
      expect(s.score).toBeLessThanOrEqual(1);
      expect(typeof s.text).toBe("string");
      expect(s.use[0].grams).toBeGreaterThan(0);
      expect(Object.keys(s.allergens)).toEqual(expect.arrayContaining(["gained", "kept", "lost", "unknown"]));
    }
  });
  it("ends with 1 when nothing stands in", () => {
    const ran = run(["swap", "1 packet yeast", "--have", "salt", "--only-from-have", "--json"]);
    expect((json(ran) as SwapAdvice).swaps).toEqual([]);
    expect(ran.code).toBe(1);
  });
  it("a food nobody knows ends with 2 and says what is nearest, or that nothing is", () => {
    const ran = run(["swap", "unobtainium"]);
    plain(ran);
    expect(ran.err).toContain("unobtainium");
    expect(ran.err).toMatch(/nearest|nothing|no food|none|close/i);
  });
  it("a misspelling is either read or answered with the nearest", () => {
    const ran = run(["swap", "1 tsp whte peper"]);
    if (ran.code === 2) expect(ran.err).toMatch(/white pepper/);
    else expect(ran.out).toMatch(/white pepper/);
  });
  it("options reach the question: --have, --only-from-have, --avoid, --why", () => {
    const ran = run([
      "swap",
      "1 egg",
      "--for",
      "binding",
      "--have",
      "ground flaxseed,mayonnaise",
      "--only-from-have",
      "--avoid",
      "egg",
      "--json",
    ]);
    const advice = json(ran) as SwapAdvice;
    const ids = advice.swaps.flatMap((s) => s.use.map((u) => u.id));
    expect(ids).toContain("flaxseed/pantry-ground");
    expect(ids.some((id) => id.startsWith("mayonnaise"))).toBe(false);
    expect(advice.refused.some((r) => r.because === "allergen" && r.id.startsWith("mayonnaise"))).toBe(true);
    expect(run(["swap", "1 egg", "--for", "binding", "--why", "--limit", "1"]).out).toMatch(/role +\d\.\d\d x 0\.\d/);
  });
  it("--instead judges one: 0 for yes, 1 for no", () => {
    const yes = run(["swap", "1 tsp white pepper", "--instead", "black pepper", "--json"]);
    const judged = json(yes) as Judgement;
    expect(["yes", "with changes"]).toContain(judged.verdict);
    expect(judged.why.length).toBeGreaterThan(5);
    expect(yes.code).toBe(0);
    const no = run(["swap", "1 tsp white pepper", "--instead", "white sugar"]);
    expect(no.out).toMatch(/^No\. /);
    expect(no.code).toBe(1);
  });
});

describe("swap -, many at once", () => {
  const lines = [
    "1 tsp white pepper",
    "",
    "zzqx of nothing",
    '{"missing":"2 tbsp lemon juice","limit":2}',
    "{ not json",
    "500 g kale",
  ];
  it("one answer a line, a bad line becomes a record and stops nothing, and the end says 2", () => {
    const ran = run(["swap", "-"], lines.join("\n"));
    const records = ran.out
      .trimEnd()
      .split("\n")
      .map((l) => JSON.parse(l) as Partial<SwapAdvice> & { error?: { code: string; message: string }; line?: number });
    expect(records).toHaveLength(5);
    expect(records.map((r) => r.error === undefined)).toEqual([true, false, true, false, true]);
    expect(records[1]?.error?.code).toBe("unknown food");
    expect(records[1]?.line).toBe(3);
    expect(records[3]?.line).toBe(5);
    expect(records[3]?.error?.message).not.toMatch(RAW);
    expect(records[2]?.swaps?.length).toBeLessThanOrEqual(2);
    expect(ran.code).toBe(2);
    expect(ran.err).toBe("");
  });
  it("all lines good: 0; nothing at all: 0 and no output", () => {
    expect(run(["swap", "-"], "1 tsp white pepper\r\n500 g kale\r\n").code).toBe(0);
    const empty = run(["swap", "-"], "");
    expect([empty.code, empty.out]).toEqual([0, ""]);
  });
  it.each([
    ["null"],
    ["[]"],
    ["{}"],
    ['{"missing":5}'],
    ['{"missing":"1 egg","limit":-3}'],
    ['{"missing":"1 egg","have":"milk"}'],
    ['{"missing":"1 egg","dish":{"lines":"x"}}'],
  ])("%s is answered with an error record, not with a crash", (line) => {
    const ran = run(["swap", "-"], `${line}\n1 tsp white pepper\n`);
    const records = ran.out
      .trimEnd()
      .split("\n")
      .map((l) => JSON.parse(l) as { error?: { message: string }; swaps?: unknown[] });
    expect(records).toHaveLength(2);
    expect(records[0]?.error?.message, line).toBeDefined();
    expect(records[0]?.error?.message).not.toMatch(RAW);
    expect(records[1]?.swaps?.length).toBeGreaterThan(0);
    expect(ran.code).toBe(2);
  });
  it("a reader that goes away early is no failure", async () => {
    const child = spawn(process.execPath, [...ARGS, "swap", "-"], { cwd: root, stdio: ["pipe", "pipe", "pipe"] });
    let err = "";
    child.stderr.on("data", (chunk: Buffer) => (err += chunk.toString()));
    child.stdin.on("error", () => undefined); // the child may be gone before all is written
    child.stdout.once("data", () => child.stdout.destroy());
    child.stdin.end("1 tsp white pepper\n".repeat(40));
    const code = await new Promise<number | null>((resolve) => child.on("close", resolve));
    expect(err).toBe("");
    expect(code).toBe(0);
  });
});

describe("meal", () => {
  const whole = {
    serves: 4,
    dishes: [
      { name: "Rice", lines: ["300 g white rice"] },
      { name: "Chicken", lines: ["500 g chicken thighs"] },
      { name: "Greens", lines: ["500 g bok choy"] },
    ],
    soup: "optional",
  };
  it("0 when it adds up, 1 when a slot is open", () => {
    const good = run(["meal", file("good.json", JSON.stringify(whole)), "--json"]);
    expect((json(good) as MealReport).gaps).toEqual([]);
    expect(good.code).toBe(0);
    const open = run([
      "meal",
      file("open.json", JSON.stringify({ ...whole, dishes: whole.dishes.slice(0, 1) })),
      "--json",
    ]);
    expect((json(open) as MealReport).gaps.map((g) => g.slot)).toEqual(["protein", "vegetable"]);
    expect(open.code).toBe(1);
  });
  it("1 when someone at the table must not eat it", () => {
    const table = [{ name: "Ada", avoid: { diets: ["vegan"] } }];
    const ran = run(["meal", file("table.json", JSON.stringify({ ...whole, table }))]);
    expect(ran.code).toBe(1);
    expect(ran.out).toContain("Not for Ada");
  });
  it("reads standard input for -", () => expect(run(["meal", "-"], JSON.stringify(whole)).code).toBe(0));
  it.each([
    ["no file named", ["meal"], ""],
    ["no such file", ["meal", "/nowhere/at-all.json"], ""],
    ["neither JSON nor YAML", ["meal", "-"], "{ a: [1, "],
    ["no meal", ["meal", "-"], "[1, 2]"],
    ["nothing", ["meal", "-"], ""],
    ["serves missing", ["meal", "-"], '{"dishes":[]}'],
    ["a dish without lines", ["meal", "-"], '{"serves":4,"dishes":[{"name":"x"}]}'],
    ["a dish that is none", ["meal", "-"], '{"serves":4,"dishes":[null]}'],
  ])("%s ends with 2 and one plain line", (_what, args, input) => plain(run(args, input)));
});

describe("check", () => {
  const egg = {
    name: "my shelf",
    foods: [
      {
        food: "moon-cheese",
        kind: "fresh cheese",
        names: { en: ["moon cheese"] },
        states: { fresh: { default: true } },
      },
    ],
  };
  it("0 and so said when nothing is wrong, 1 with the mend when something is", () => {
    const empty = run(["check", file("empty.yaml", "name: my shelf\n")]);
    expect([empty.code, empty.out.endsWith("nothing wrong.\n")]).toEqual([0, true]);
    const bad = run([
      "check",
      file("bad.json", JSON.stringify({ ...egg, foods: [{ ...egg.foods[0], kind: "no such kind" }] })),
      "--json",
    ]);
    const result = json(bad) as { ok: boolean; issues: { path: string; message: string }[] };
    expect(result.ok).toBe(false);
    expect(result.issues.length).toBeGreaterThan(0);
    expect(result.issues[0]?.message).toBeTruthy();
    expect(bad.code).toBe(1);
  });
  it("ends with 2 for what cannot be read", () => plain(run(["check", "/nowhere/at-all.yaml"])));
});

describe("around it", () => {
  it("help ends with 0, no command at all with 2, both say how", () => {
    const help = run(["--help"]);
    expect([help.code, help.out.includes("steadfare swap")]).toEqual([0, true]);
    const none = run([]);
    expect([none.code, none.out.includes("steadfare swap")]).toEqual([2, true]);
  });
  it.runIf(existsSync(built))("the version is the package's", () =>
    expect(run(["--version"]).out).toMatch(/^\d+\.\d+\.\d+\n$/),
  );
  it.each([
    ["an unknown command", ["fetch", "x"]],
    ["__proto__ as a command", ["__proto__"]],
    ["an unknown option", ["swap", "1 egg", "--colour"]],
    ["nothing missing", ["swap"]],
    ["a number that is none", ["swap", "1 egg", "--limit", "many"]],
    ["a limit that is too large", ["swap", "1 egg", "--limit", "5000"]],
    ["an unknown preference", ["swap", "1 egg", "--prefer", "best"]],
    ["an unknown locale", ["swap", "1 egg", "--locale", "tlh"]],
    ["unknown measures", ["swap", "1 egg", "--measures", "stone"]],
    ["an unknown role", ["swap", "1 egg", "--role", "magic"]],
    ["a word to avoid that nothing knows", ["swap", "1 egg", "--avoid", "zzqxy"]],
    ["only from the house without a house", ["swap", "1 egg", "--only-from-have"]],
    ["a stand-in nobody knows", ["swap", "1 egg", "--instead", "zzqxy"]],
    ["an extension that is not there", ["swap", "1 egg", "--extension", "/nowhere/x.yaml"]],
    ["a very long name", ["swap", "x".repeat(20_000)]],
  ])("%s ends with 2 and one plain line", (_what, args) => plain(run(args)));
});
