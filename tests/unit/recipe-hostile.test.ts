// What nobody who cooks would send, but anybody may: bounded work, typed errors, nothing lost. No clock is looked at: what bounds the
// work is counted.
import { describe, expect, it } from "vitest";
import { openCatalogue } from "../../src/catalogue/index.js";
import { isSteadfareError } from "../../src/errors.js";
import { readRecipe, type ReadRecipe } from "../../src/recipe/index.js";

const c = openCatalogue();
const recipe = (lines: readonly unknown[], steps: readonly unknown[] = [], more: object = {}): ReadRecipe =>
  readRecipe(c, { "@type": "Recipe", name: "T", recipeIngredient: lines, recipeInstructions: steps, ...more });
const links = (r: ReadRecipe): number => r.understood.reduce((sum, s) => sum + s.uses.length, 0);
const code = (run: () => unknown): string => {
  try {
    run();
  } catch (e) {
    return isSteadfareError(e) ? e.code : String(e);
  }
  return "";
};

describe("a thousand lines and a thousand steps", () => {
  it("of one food: each step is linked to no more lines than a step can mean, and every text is kept", () => {
    const step = "Fry the onion with the onions until the onion is soft. ".repeat(80).trim();
    const r = recipe(new Array(1000).fill("1 onion, chopped"), new Array(1000).fill(step));
    expect([r.lines.length, r.steps.length]).toEqual([1000, 1000]);
    for (const s of r.understood) expect(s.uses.length).toBeLessThanOrEqual(30);
    expect(r.steps.every((s) => s.text === step)).toBe(true);
    expect(r.notUnderstood.filter((n) => n.where === "line")).toEqual([]);
    expect(r.notUnderstood.some((n) => n.why.includes("characters of the steps"))).toBe(true);
  });
  it("that name everything: the links of a recipe are bounded", () => {
    const r = recipe(
      Array.from({ length: 1000 }, (_, i) => `${i + 1} g flour`),
      new Array(1000).fill("Mix all the ingredients."),
    );
    expect(links(r)).toBeLessThanOrEqual(20_000);
    expect(r.understood[0]?.uses).toHaveLength(1000);
    expect(r.understood).toHaveLength(1000);
  });
  it("of a thousand foods with one first word, and steps that keep and use liquids", () => {
    const r = recipe(
      Array.from({ length: 1000 }, (_, i) => `1 zork ${i.toString(36)}x`),
      new Array(1000).fill("Reserve the bean liquid, then add the bean liquid and the steaming water and zork zork."),
    );
    expect(r.understood.every((s) => s.uses.length <= 30)).toBe(true);
  });
  it("the line of the step's own group is meant, however many share its name", () => {
    const r = recipe(
      Array.from({ length: 100 }, (_, i) => [`For part ${i + 1 === 7 ? "seven" : `x${i}`}:`, "1 onion"]).flat(),
      [{ "@type": "HowToSection", name: "For part seven", itemListElement: ["Fry the onion."] }],
    );
    expect(r.lines[6]?.group).toBe("For part seven");
    expect(r.understood[0]?.uses).toEqual([{ line: 6, confidence: 0.95, how: "named", words: "onion" }]);
  });
});

describe("long and deep", () => {
  it("a line of a megabyte is kept whole as text and read no further than a line goes", () => {
    const long = `1 cup ${"very ".repeat(200_000)}long rice`;
    const r = recipe([long, "1 egg"]);
    expect(r.lines[0]?.text).toBe(long);
    expect(r.lines[1]?.read.food?.id).toMatch(/^egg\//);
  });
  it("an object is bounded like a text", () => {
    expect(code(() => recipe(["x".repeat(5_000_001)]))).toBe("input too large");
    expect(code(() => recipe(new Array(600).fill("y".repeat(10_000))))).toBe("input too large");
  });
  it("nesting is counted, not followed", () => {
    for (const [open, close] of [
      ["[", "]"],
      ['{"a":', "}"],
    ] as const)
      for (const n of [100, 10_000, 200_000])
        expect(code(() => readRecipe(c, `${open.repeat(n)}1${close.repeat(n)}`, "json-ld"))).toBe("input too large");
    expect(code(() => readRecipe(c, `<ul>${"<li><ul>".repeat(3000)}1 egg`))).toBe("input too large");
    const brackets = `1 cup ${"(".repeat(50_000)}milk${")".repeat(50_000)}`;
    expect(recipe([brackets]).lines[0]?.text).toBe(brackets);
  });
  it.each([
    ["digits", "1".repeat(100_000)],
    ["fractions", "1/".repeat(50_000)],
    ["ranges", "1-".repeat(50_000)],
    ["spaces", `1 cup${" ".repeat(100_000)}milk`],
    ["and", "1 cup milk and ".repeat(8000)],
    ["or", "milk or ".repeat(12_000)],
    ["commas", `milk${",".repeat(100_000)}`],
    ["plus", "1 cup plus ".repeat(9000)],
    ["brackets", "[x](".repeat(25_000)],
    ["stars", "*".repeat(100_000)],
    ["hashes", "#".repeat(100_000)],
    ["entities", "&amp;".repeat(20_000)],
    ["open tags", "<b ".repeat(30_000)],
    ["attributes", `<p ${'a="1" '.repeat(20_000)}>1 egg`],
    ["quotes", '"'.repeat(100_000)],
    ["degrees", "180°".repeat(25_000)],
    ["times", "1 hour ".repeat(14_000)],
    ["until", "until ".repeat(16_000)],
    ["combining marks", `e${"\u0301".repeat(100_000)}gg`],
    ["surrogates", "\ud83d".repeat(100_000)],
    ["bars", "a | ".repeat(25_000)],
  ])("100,000 characters of %s in every form: read or refused, never stuck", (_what, text) => {
    for (const form of ["json-ld", "html", "markdown", "text"] as const)
      expect(["", "input too large"]).toContain(code(() => readRecipe(c, text, form)));
    expect(["", "input too large"]).toContain(
      code(() => recipe([text], [text], { recipeYield: text, totalTime: text })),
    );
  });
});

describe("keys that reach for prototypes", () => {
  it.each(["__proto__", "constructor", "prototype", "toString", "hasOwnProperty", "valueOf"])(
    "%s is a key like another",
    (key) => {
      const text = `{"@type":"Recipe","name":"P","${key}":{"polluted":1},"recipeIngredient":["1 egg",{"${key}":{"polluted":1}},{"name":"milk","${key}":"2 cups"}],"recipeInstructions":{"${key}":[{"polluted":"Boil."}]},"recipeYield":{"${key}":4}}`;
      const r = readRecipe(c, text);
      expect(r.lines[0]?.text).toBe("1 egg");
      expect(({} as Record<string, unknown>)["polluted"]).toBeUndefined();
      expect(Object.keys(Object.prototype)).toEqual([]);
      expect(JSON.stringify(r.source)).toBe(JSON.stringify(JSON.parse(text)));
    },
  );
});
