// Twelve recipes of our own invention, each as JSON-LD, as a page, as Markdown and as plain text.
// Shapes of the data: schema.org, Recipe, HowToSection, HowToStep, ItemList, QuantitativeValue (schema.org/Recipe, an open standard).
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { openCatalogue } from "../../src/catalogue/index.js";
import { isSteadfareError } from "../../src/errors.js";
import { isoMinutes, readRecipe, readRecipes } from "../../src/recipe/index.js";

const c = openCatalogue();
const DIR = join(import.meta.dirname, "../fixtures/recipes");
interface Expected {
  name: string;
  serves: number | null;
  makes: number | null;
  minutes: number;
  lines: [string, string][];
  steps: [string, string][];
}
const FORMS = [
  ["recipe.json", "json-ld"],
  ["page.html", "html"],
  ["recipe.md", "markdown"],
  ["recipe.txt", "text"],
] as const;
const fixture = (id: string, file: string): string => readFileSync(join(DIR, id, file), "utf8");

describe.each(readdirSync(DIR))("%s", (id) => {
  const want = JSON.parse(fixture(id, "expected.json")) as Expected;
  it.each(FORMS)("reads the same from %s", (file, form) => {
    const r = readRecipe(c, fixture(id, file));
    expect(r.form).toBe(form);
    expect(r.name).toBe(want.name);
    expect(r.serves ?? null).toBe(want.serves);
    expect(r.makes?.count ?? null).toBe(want.makes);
    expect(r.minutes).toBe(want.minutes);
    expect(r.lines.map((l) => [l.text, l.group ?? ""])).toEqual(want.lines);
    expect(r.steps.map((s) => [s.text, s.group ?? ""])).toEqual(want.steps);
    expect(r.unread).toEqual([]);
    expect(r.understood).toHaveLength(want.steps.length);
    expect(r.dish.lines).toEqual(want.lines.map(([t]) => t));
  });
  it("links every line to a step", () => {
    const r = readRecipe(c, fixture(id, "recipe.json"));
    const named = new Set(r.understood.flatMap((s) => s.uses.map((u) => u.line)));
    expect(r.lines.filter((_, i) => !named.has(i)).map((l) => l.text)).toEqual([]);
    expect(r.lines.filter((l) => l.read.status === "no food")).toEqual([]);
  });
});

describe("shapes of JSON-LD", () => {
  const of = (extra: object): ReturnType<typeof readRecipe> =>
    readRecipe(c, { "@type": "Recipe", name: "Trial", ...extra });
  it.each([
    [4, 4],
    ["4", 4],
    ["4 servings", 4],
    ["Serves four", 4],
    [["4", "4 servings"], 4],
    ["Serves 4-6", 4],
    [{ "@type": "QuantitativeValue", value: 5, unitText: "people" }, 5],
    [{ "@type": "QuantitativeValue", minValue: 2, maxValue: 3 }, 2],
    ["1 loaf (8 servings)", 8],
  ])("recipeYield %j", (recipeYield, serves) => {
    expect(of({ recipeYield }).serves).toBe(serves);
  });
  it("a number of things made is no number of people, and words are told as unread", () => {
    const r = of({ recipeYield: "24 cookies" });
    expect(r.serves).toBeUndefined();
    expect(r.makes).toEqual({ count: 24, of: "cookies" });
    const crowd = of({ recipeYield: "a crowd" });
    expect(crowd.unread).toEqual(["a crowd"]);
    expect(crowd.notUnderstood[0]?.where).toBe("yield");
  });
  // ISO 8601: durations
  it.each([
    ["PT90M", 90],
    ["P0DT1H30M", 90],
    ["PT1H", 60],
    ["PT1.5H", 90],
    ["P1DT2H", 1560],
    ["P0Y0M0DT0H35M0.000S", 35],
    ["pt45m", 45],
    ["PT0M", 0],
    ["P2W", undefined],
    ["P1M", undefined],
    ["P1Y", undefined],
    ["PT", undefined],
    ["P", undefined],
    ["PT5", undefined],
    ["-PT5M", undefined],
    ["30", undefined],
  ])("duration %s", (text, minutes) => {
    expect(isoMinutes(text)).toBe(minutes);
  });
  it("times: total first, else prepared and cooked; words are read; what is no duration is told", () => {
    expect(of({ prepTime: "PT10M", cookTime: "PT20M" }).minutes).toBe(30);
    expect(of({ prepTime: "PT10M", totalTime: "PT1H" }).minutes).toBe(60);
    expect(of({ totalTime: "1 hour 15 minutes" }).minutes).toBe(75);
    const weeks = of({ totalTime: "P3W" });
    expect(weeks.minutes).toBeUndefined();
    expect(weeks.unread).toEqual(["P3W"]);
  });
  it.each([
    ["a string of lines", "Boil.\nServe."],
    ["HTML in a string", "<p>Boil.</p><p>Serve.</p>"],
    ["entities", ["Boil&#46;", "Serve&period;"]],
    [
      "HowToStep",
      [
        { "@type": "HowToStep", text: "Boil." },
        { "@type": "HowToStep", name: "Serve." },
      ],
    ],
    ["nested lists", [["Boil."], [["Serve."]]]],
    ["ItemList", { "@type": "ItemList", itemListElement: ["Boil.", { item: { text: "Serve." } }] }],
  ])("instructions as %s", (_, recipeInstructions) => {
    expect(of({ recipeInstructions }).steps.map((s) => s.text)).toEqual(["Boil.", "Serve."]);
  });
  it("ingredients as objects, as one string, and under the old name", () => {
    expect(of({ recipeIngredient: [{ name: "flour", amount: "200", unit: "g" }] }).lines[0]?.text).toBe("200 g flour");
    expect(of({ recipeIngredient: "- 2 eggs\n- 1 cup milk" }).lines.map((l) => l.text)).toEqual([
      "2 eggs",
      "1 cup milk",
    ]);
    expect(of({ ingredients: ["2 eggs"] }).lines).toHaveLength(1);
  });
  it("images in any shape", () => {
    const image = ["https://example.org/a.jpg", { "@type": "ImageObject", url: "https://example.org/b.jpg" }];
    expect(of({ image }).images).toEqual(["https://example.org/a.jpg", "https://example.org/b.jpg"]);
  });
  it("steps that are only pointed at in a graph", () => {
    const r = readRecipe(c, {
      "@graph": [
        { "@id": "#s1", "@type": "HowToStep", text: "Boil the rice." },
        { "@type": "Recipe", name: "Rice", recipeInstructions: [{ "@id": "#s1" }] },
      ],
    });
    expect(r.steps.map((s) => s.text)).toEqual(["Boil the rice."]);
  });
  it("several recipes in one source", () => {
    const two = [
      { "@type": "Recipe", name: "One", recipeIngredient: ["1 egg"] },
      { "@type": "Recipe", name: "Two", recipeIngredient: ["2 eggs"] },
    ];
    expect(readRecipes(c, two).map((r) => r.name)).toEqual(["One", "Two"]);
    expect(readRecipe(c, two).unread).toEqual(["Two"]);
  });
  it("keeps the source, unknown fields and all, and leaves the caller's object alone", () => {
    const given = { "@type": "Recipe", name: "Kept", "x:own": { deep: [1, null, "a"] }, recipeIngredient: ["1 egg"] };
    const r = readRecipe(c, given);
    expect(r.source).toEqual(given);
    expect(Object.isFrozen(given)).toBe(false);
    expect(Object.isFrozen(given.recipeIngredient)).toBe(false);
    expect(Object.isFrozen(r)).toBe(true);
  });
});

describe("understanding", () => {
  const cod = readRecipe(c, fixture("quay-salt-cod", "recipe.txt"));
  const soup = readRecipe(c, fixture("forest-edge-barley", "recipe.md"));
  it("procedures, waiting time and by-products used later", () => {
    expect(cod.understood[0]?.procedures.map((p) => p.procedure)).toEqual(["soak"]);
    expect(cod.understood[0]?.times[0]).toMatchObject({ minutes: 480, kind: "waiting" });
    expect(soup.understood[0]?.keeps.map((k) => k.what)).toEqual(["soaking liquid"]);
    expect(soup.understood[2]?.usesByProducts).toEqual([{ what: "soaking liquid", from: 0, confidence: 0.9 }]);
    expect(cod.understood[4]?.usesByProducts[0]?.confidence).toBe(0.95);
  });
  it("a name in full is surer than part of it, and that than everything", () => {
    const r = readRecipe(c, fixture("market-day-tacos", "recipe.txt"));
    const sure = (step: number, line: number): number =>
      r.understood[step]?.uses.find((u) => u.line === line)?.confidence ?? 0;
    expect(sure(0, 2)).toBe(1);
    expect(sure(2, 0)).toBe(0.85);
    expect(sure(4, 7)).toBe(0.8);
  });
  it("chicken is no chicken stock, olives no olive oil", () => {
    const r = readRecipe(c, fixture("lagoon-peanut-stew", "recipe.txt"));
    expect(r.understood[0]?.uses.map((u) => u.line)).toEqual([0, 1]);
    expect(r.understood[3]?.temperatures).toMatchObject([{ celsius: 74, fahrenheit: 165, of: "inside" }]);
  });
  it("temperatures said twice are one, ranges keep both ends, cues stop at the next verb", () => {
    const cake = readRecipe(c, fixture("lemon-grove-cake", "recipe.json"));
    expect(cake.understood[0]?.temperatures).toMatchObject([{ celsius: 180, fahrenheit: 350, of: "oven" }]);
    expect(cake.understood[4]?.times[0]).toMatchObject({ minutes: 45, range: [40, 45], kind: "waiting" });
    const greens = readRecipe(c, fixture("lantern-greens", "recipe.json"));
    expect(greens.understood[0]?.doneness).toEqual(["until it smokes"]);
  });
  it("what is denied is not done", () => {
    const r = readRecipe(c, {
      "@type": "Recipe",
      name: "Broth",
      recipeInstructions: ["Warm the stock; do not let it boil."],
    });
    expect(r.understood[0]?.techniques).toEqual([]);
  });
  it("tells what it did not understand", () => {
    const r = readRecipe(c, {
      "@type": "Recipe",
      name: "T",
      recipeIngredient: ["2 glimmers", "1 egg"],
      recipeInstructions: ["Sing."],
    });
    expect(r.notUnderstood.map((n) => [n.where, n.at, n.why])).toEqual([
      ["line", 0, "no food is known in it"],
      ["step", 0, "no line, technique, time or temperature"],
      ["line", 0, "no step names it"],
      ["line", 1, "no step names it"],
    ]);
  });
  it("finds the technique of the dish", () => {
    const technique = (id: string): string | undefined => readRecipe(c, fixture(id, "recipe.md")).dish.technique;
    expect(technique("copper-pot-cabbage")).toBe("braise");
    expect(technique("lemon-grove-cake")).toBe("bake");
    expect(technique("lantern-greens")).toBe("stir-fry");
    expect(technique("terrace-chard-stew")).toBe("stew");
  });
});

describe("text without headings", () => {
  it("lines with amounts are ingredients, the rest is the method, the introduction is kept", () => {
    const r = readRecipe(
      c,
      "Quick Rice\n\nA note of ours.\n\nServes 2\n\n200 g rice\n2 cups water\n\nBoil the rice in the water for 15 minutes.\n",
    );
    expect([r.name, r.serves, r.lines.length, r.steps.length]).toEqual(["Quick Rice", 2, 2, 1]);
    expect(r.unread).toEqual(["A note of ours."]);
  });
});

describe("hostile input", () => {
  const tooLarge = (source: string | object): boolean => {
    try {
      readRecipe(c, source);
    } catch (e) {
      return isSteadfareError(e, "input too large");
    }
    return false;
  };
  it("refuses what is too large or too deep with a typed error", () => {
    expect(tooLarge("x".repeat(5_000_001))).toBe(true);
    expect(tooLarge("[".repeat(200_000))).toBe(true);
    expect(tooLarge("<div>".repeat(5000))).toBe(true);
    let deep: object = {};
    for (let i = 0; i < 5000; i++) deep = { deep };
    expect(tooLarge(deep)).toBe(true);
    expect(tooLarge({ "@type": "Recipe", recipeIngredient: new Array(1001).fill("1 egg") })).toBe(true);
  });
  it("reaches no prototype", () => {
    const r = readRecipe(
      c,
      '{"@type":"Recipe","name":"P","__proto__":{"polluted":1,"recipeYield":9},"constructor":{"prototype":{"polluted":1}},"recipeIngredient":["1 egg"]}',
    );
    expect(r.lines).toHaveLength(1);
    expect(r.serves).toBeUndefined();
    expect(({} as Record<string, unknown>)["polluted"]).toBeUndefined();
    const page =
      '<div itemscope itemtype="https://schema.org/Recipe"><b itemprop="__proto__">x</b><li itemprop="recipeIngredient">1 egg</li></div>';
    expect(readRecipe(c, page).lines).toHaveLength(1);
    expect(Object.hasOwn(Object.prototype, "x")).toBe(false);
  });
  it("takes out control and direction characters, and keeps the source", () => {
    const source = { "@type": "Recipe", name: "Bid\u202ei\u0000", recipeIngredient: ["1\u2067 egg\u0007"] };
    const r = readRecipe(c, source);
    expect(r.name).toBe("Bidi");
    expect(r.lines[0]?.text).toBe("1 egg");
    expect(r.source).toEqual(source);
  });
  it("reads round scripts, broken data and unclosed tags", () => {
    const page =
      '<h1>Egg <script>alert(1)</script>toast</h1><script type="application/ld+json">{"@type":"Recipe", broken</script><h2>Ingredients<ul><li onclick="x()">1 egg<li>2 slices bread</ul><h2>Method</h2><p>Toast the bread.';
    const r = readRecipe(c, page);
    expect(r.name).toBe("Egg toast");
    expect(r.lines.map((l) => l.text)).toEqual(["1 egg", "2 slices bread"]);
    expect(r.steps.map((s) => s.text)).toEqual(["Toast the bread."]);
    expect(r.unread).toEqual(['{"@type":"Recipe", broken']);
  });
  it("an object that holds itself", () => {
    const self: Record<string, unknown> = { "@type": "Recipe", name: "Loop" };
    self["self"] = self;
    expect(readRecipe(c, self).name).toBe("Loop");
  });
  it("a source that is neither text nor object", () => {
    expect(() => readRecipe(c, 5 as unknown as string)).toThrow("A recipe is a text");
  });
});
