import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { linesIn, type Line } from "../../src/cli/bulk-lines.js";
import { progressOn } from "../../src/cli/bulk-progress.js";
import { STANDING_NOTICE } from "../../src/index.js";

const root = fileURLToPath(new URL("../..", import.meta.url));
const ARGS = ["--import", "tsx", join(root, "src", "cli", "main.ts")];
interface Ran {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}
function run(args: readonly string[], input = ""): Ran {
  const done = spawnSync(process.execPath, [...ARGS, ...args], { cwd: root, input, encoding: "utf8", timeout: 60_000 });
  return { code: done.status, out: done.stdout, err: done.stderr };
}
function refused(ran: Ran, says: RegExp): void {
  expect(ran.code).toBe(2);
  expect(ran.out).toBe("");
  expect(ran.err).toMatch(/^steadfare: .+\n$/);
  expect(ran.err).toMatch(says);
}

let folder = "";
const at = (name: string): string => join(folder, name);
const file = (name: string, text: string): string => {
  writeFileSync(at(name), text);
  return at(name);
};
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "steadfare-notes-"));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const SOUP =
  "# Harbour soup\n\nServes 4\n\n## Ingredients\n\n- 1 cup buttermilk\n- 450 g salt cod\n\n## Method\n\n1. Simmer.\n";

describe("notes", () => {
  it("from a file and from standard input alike, with the notice at the end", () => {
    const one = run(["notes", file("soup.md", SOUP)]);
    expect([one.code, one.err]).toEqual([0, ""]);
    expect(one.out).toContain("Instead of 1 cup buttermilk:");
    expect(one.out.replace(/\s+/g, " ")).toContain(STANDING_NOTICE);
    expect(run(["notes", "-"], SOUP).out).toBe(one.out);
  });
  it("in every format, each with the notice", () => {
    const html = run(["notes", "-", "--format", "html"], SOUP).out;
    expect(html).toMatch(/^<section class="steadfare-notes" lang="en-US">/);
    const md = run(["notes", "-", "--format", "markdown"], SOUP).out;
    expect(md).toMatch(/^## Substitutions for Harbour soup/);
    const ld = JSON.parse(run(["notes", "-", "--format", "json-ld"], SOUP).out) as Record<string, unknown>;
    expect(ld["hasPart"]).toMatchObject({ text: STANDING_NOTICE });
    const data = JSON.parse(run(["notes", "-", "--json"], SOUP).out) as Record<string, unknown>;
    expect(data).toMatchObject({ recipe: "Harbour soup", notice: STANDING_NOTICE, notes: [{}, {}] });
    for (const text of [html, md]) expect(text).toContain(STANDING_NOTICE);
  });
  it("options reach it: avoid, have, serves, limit, locale, measures", () => {
    const options = [
      "--avoid",
      "milk,fish",
      "--serves",
      "8",
      "--limit",
      "1",
      "--locale",
      "en-GB",
      "--measures",
      "metric",
    ];
    const ran = run(["notes", "-", "--json", "--have", "chicken thighs", ...options], SOUP);
    const data = JSON.parse(ran.out) as {
      locale: string;
      serves: number;
      notes: { swaps: { use: { id: string }[] }[] }[];
    };
    expect([data.locale, data.serves]).toEqual(["en-GB", 8]);
    for (const note of data.notes) {
      expect(note.swaps).toHaveLength(1);
      for (const swap of note.swaps)
        for (const u of swap.use) expect(u.id).not.toMatch(/^(milk|buttermilk|yogurt|cod)\//);
    }
  });
  it("--out writes, never over a file unless told to, and its ending says the format", () => {
    const out = at("notes.html");
    expect(run(["notes", "-", "--out", out], SOUP)).toEqual({ code: 0, out: "", err: "" });
    expect(readFileSync(out, "utf8")).toMatch(/^<section/);
    refused(run(["notes", "-", "--out", out, "--format", "text"], SOUP), /there already; --overwrite/);
    expect(readFileSync(out, "utf8")).toMatch(/^<section/);
    expect(run(["notes", "-", "--out", out, "--format", "text", "--overwrite"], SOUP).code).toBe(0);
    expect(readFileSync(out, "utf8")).toMatch(/^Substitutions for/);
  });
  it("ends with 1 when nothing is worth a note", () => {
    const ran = run(["notes", "-"], "Brine\n\nIngredients\n1 tsp salt\n1 cup water\n");
    expect([ran.code, ran.out]).toEqual([1, ""]);
    expect(ran.err).toMatch(/^Nothing to note/);
  });
  it("tells that a source holds more recipes", () => {
    const two = [1, 2].map((n) => ({ "@type": "Recipe", name: `R${n}`, recipeIngredient: ["1 cup buttermilk"] }));
    expect(run(["notes", "-"], JSON.stringify(two)).err).toMatch(/holds 1 more/);
  });
  it.each([
    ["no file named", ["notes"], /which file/],
    ["no such file", ["notes", "/nowhere/at-all.md"], /No such file/],
    ["a folder", ["notes", root], /folder/],
    ["no recipe", ["notes", "-"], /holds no recipe/],
    ["two files", ["notes", "a", "b"], /One file/],
    ["a format nobody knows", ["notes", "-", "--format", "pdf"], /--format is one of/],
    ["a form nobody knows", ["notes", "-", "--form", "pdf"], /--form is one of/],
    ["a word to avoid nobody knows", ["notes", "-", "--avoid", "zzqxy"], /zzqxy/],
    ["too many swaps a line", ["notes", "-", "--limit", "11"], /perLine|1 to 10/],
  ])("%s ends with 2 and one plain line", (_what, args, says) =>
    refused(run(args, args.includes("--limit") || args.includes("--avoid") ? SOUP : ""), says),
  );
});

describe("--ndjson", () => {
  const recipe = (n: number): object => ({
    "@type": "Recipe",
    "@id": `r${n}`,
    name: `R${n}`,
    recipeIngredient: ["1 cup buttermilk"],
  });
  const lines = [
    JSON.stringify(recipe(1)),
    "{ not json",
    "",
    JSON.stringify(SOUP),
    "null",
    JSON.stringify({ "@type": "Recipe", name: "empty" }),
    `{"@type":"Recipe","name":"deep","x":${"[".repeat(5000)}${"]".repeat(5000)},"recipeIngredient":["1 egg"]}`,
    '{"@type":"Recipe","__proto__":{"polluted":1},"recipeIngredient":["1 cup buttermilk"],"@id":"last"}',
  ];
  interface Answer {
    readonly line: number;
    readonly id?: string;
    readonly notes?: unknown;
    readonly error?: { readonly code: string; readonly message: string };
  }
  it("one answer a record, in order, with line and id; a bad record stops nothing and the end says 2", () => {
    const ran = run(["notes", "-", "--ndjson", "--limit", "1"], lines.join("\r\n"));
    const answers = ran.out
      .trimEnd()
      .split("\n")
      .map((l) => JSON.parse(l) as Answer);
    expect(answers.map((a) => [a.line, a.id, a.error?.code])).toEqual([
      [1, "r1", undefined],
      [2, undefined, "unreadable record"],
      [4, undefined, undefined],
      [5, undefined, "unreadable record"],
      [6, undefined, "unreadable record"],
      [7, undefined, "input too large"],
      [8, "last", undefined],
    ]);
    expect([ran.code, ran.err]).toEqual([2, ""]);
    expect(answers[0]?.notes).toContain("Instead of 1 cup buttermilk");
  });
  it("from a file to a file, all good: 0; what a piped run answers is the same", () => {
    const source = file("all.ndjson", `${[1, 2, 3].map((n) => JSON.stringify(recipe(n))).join("\n")}\n`);
    const out = at("answers.ndjson");
    expect(run(["notes", source, "--ndjson", "--json", "--out", out])).toEqual({ code: 0, out: "", err: "" });
    expect(run(["notes", "-", "--ndjson", "--json"], readFileSync(source, "utf8")).out).toBe(readFileSync(out, "utf8"));
    refused(run(["notes", source, "--ndjson", "--out", source, "--overwrite"]), /the file that is read/);
    expect(readFileSync(source, "utf8")).toContain("R3");
  });
  it("what is wrong with the options is said once", () =>
    refused(run(["notes", "-", "--ndjson", "--avoid", "zzqxy"], `${JSON.stringify(recipe(1))}\n`), /zzqxy/));
});

describe("lines of a stream", () => {
  async function* chunks(bytes: Uint8Array, size: number): AsyncGenerator<Uint8Array> {
    for (let i = 0; i < bytes.length; i += size) yield await Promise.resolve(bytes.subarray(i, i + size));
  }
  const all = async (bytes: Uint8Array, size: number, limit?: number): Promise<Line[]> => {
    const out: Line[] = [];
    for await (const line of linesIn(chunks(bytes, size), undefined, limit)) out.push(line);
    return out;
  };
  it("are the same however the stream is cut, across letters of several bytes too", async () => {
    const text = '\ufeff"crème"\r\n\r\n"鰹節 1 本"\n"½"';
    for (const size of [1, 2, 3, 7, 1000])
      expect((await all(Buffer.from(text), size)).map((l) => [l.number, l.text])).toEqual([
        [1, '"crème"'],
        [2, ""],
        [3, '"鰹節 1 本"'],
        [4, '"½"'],
      ]);
  });
  it("one too long is counted and not kept; the next is whole", async () => {
    for (const size of [3, 64, 1000]) {
      const got = await all(Buffer.from(`${"x".repeat(500)}\nnext\n${"y".repeat(300)}`), size, 100);
      expect(got).toEqual([
        { number: 1, text: "", over: 500 },
        { number: 2, text: "next" },
        { number: 3, text: "", over: 300 },
      ]);
    }
  });
  it("what is no UTF-8 is told", async () => {
    expect((await all(Buffer.from([0x22, 0xff, 0x22, 0x0a, 0x31]), 9)).map((l) => l.broken ?? l.text)).toEqual([
      true,
      "1",
    ]);
  });
});

describe("progress", () => {
  const screen = (isTTY: boolean): { isTTY: boolean; columns: number; said: string[]; write: (s: string) => void } => {
    const said: string[] = [];
    return { isTTY, columns: 90, said, write: (s) => void said.push(s) };
  };
  it("is silent anywhere but on a terminal", () => {
    const s = screen(false);
    const p = progressOn(s, 100);
    p.bytes(50);
    p.record(true);
    p.end();
    expect(s.said).toEqual([]);
  });
  it("draws at most every fifth of a second, on one line no wider than the screen, and at the end", () => {
    const s = screen(true);
    let time = 0;
    const p = progressOn(s, 1000, () => time);
    for (let i = 0; i < 100; i++) {
      time += 10;
      p.bytes(10);
      p.record(i % 50 > 0);
    }
    p.end();
    expect(s.said.length).toBeLessThanOrEqual(8);
    for (const text of s.said.slice(0, -1))
      expect(text.replace("\r", "").replace("\u001b[K", "").length).toBeLessThan(90);
    expect(s.said.at(-2)).toContain("100% 100 recipes, 2 not read, 100.0 a second");
  });
  it("without a known size there is no bar", () => {
    const s = screen(true);
    const p = progressOn(s, undefined, () => 0);
    p.record(true);
    p.end();
    expect(s.said.join("")).not.toContain("[#");
  });
});
