import { describe, expect, it } from "vitest";
import { adaptRecipe, listFoods, openCatalogue, readRecipe, swapNotes, swapsFor } from "../../src/index.js";
import { storeOf } from "../../src/catalogue/index.js";
import type { SwapAdvice, TechniqueId } from "../../src/types.js";

// What keeps harm out of a jar is neither swapped nor left out. Penn State Extension, "Acidifying canned products for safety": kind,
// strength and amount of the acid stay as tested. Nitrite against botulism and salt in a ferment: common practice, from memory.
const c = openCatalogue();
const store = storeOf(c);
const ask = (missing: string, more: { for?: string; technique?: string }): SwapAdvice =>
  swapsFor(c, {
    missing,
    ...(more.for === undefined ? {} : { for: more.for }),
    ...(more.technique === undefined ? {} : { dish: { technique: more.technique } }),
  });

describe("what keeps harm out", () => {
  it.each([
    ["1 cup white vinegar", { for: "pickles" }],
    ["1 cup white vinegar", { for: "pickling" }],
    ["1 cup cider vinegar", { for: "pickled onions" }],
    ["2 tbsp lemon juice", { for: "canned tomatoes" }],
    ["2 tbsp bottled lemon juice", { for: "home canning" }],
    ["1/2 tsp citric acid", { technique: "can" }],
    ["1 cup malt vinegar", { for: "chutney" }],
    ["1 cup white vinegar", { for: "relish" }],
  ])("acid is not swapped, and not left out: %s %o", (missing, more) => {
    const advice = ask(missing, more);
    expect(advice.swaps).toEqual([]);
    expect(advice.refused.some((r) => r.because === "hazard")).toBe(true);
    expect(advice.mustStay).toMatch(/^Do not leave .*botulism/);
    expect(advice.goWithout).toBeUndefined();
  });
  it.each([
    ["1 tsp curing salt", { for: "sausage", technique: "cure" }],
    ["1 tsp pink curing salt", {}],
    ["1 tsp curing salt", { for: "curing" }],
  ])("curing salt: %s %o", (missing, more) => {
    const advice = ask(missing, more);
    expect(advice.swaps).toEqual([]);
    expect(advice.mustStay).toMatch(/^Do not leave .*botulism/);
    expect(advice.goWithout).toBeUndefined();
  });
  it("is what the setting says, however the pot is heated", () => {
    for (const technique of ["boil", "simmer", "raw"])
      expect(ask("1 cup white vinegar", { for: "canning", technique }).swaps).toEqual([]);
  });
  it("salt in a ferment is other salt or none is offered", () => {
    for (const setting of ["sauerkraut", "kimchi", "fermenting"]) {
      const { swaps, goWithout } = ask("2 tbsp salt", { for: setting });
      expect(swaps.length).toBeGreaterThan(0);
      for (const s of swaps) expect(s.use.every((u) => store.byId.get(u.id)?.kinds.includes("salt"))).toBe(true);
      expect(goWithout).toBeUndefined();
    }
  });
  it("a dish made of what was kept is cooked as any other", () => {
    expect(ask("1 tbsp rice vinegar", { for: "kimchi fried rice" }).swaps.length).toBeGreaterThan(2);
    expect(ask("1 tbsp lemon juice", { for: "salad" }).swaps.length).toBeGreaterThan(2);
  });
  it("a wetter sweetener does not go into a jar", () => {
    const used = ask("1 cup sugar", { for: "canning" }).swaps.flatMap((s) => s.use.map((u) => u.id));
    expect(used.length).toBeGreaterThan(0);
    expect(used).not.toContain("simple-syrup/pantry");
    expect(used).not.toContain("water/pantry");
  });
  it("no acid and no salt of the whole catalogue is ever left out of what is kept", () => {
    const keeps: readonly (readonly [TechniqueId, string])[] = [
      ["can", "acid"],
      ["pickle", "acid"],
      ["ferment", "salt"],
      ["cure", "salt"],
    ];
    let asked = 0;
    for (const [technique, kind] of keeps)
      for (const { id } of listFoods(c).filter((f) => store.byId.get(f.id)?.kinds.includes(kind))) {
        asked++;
        const { goWithout, mustStay } = swapsFor(c, { missing: id, dish: { technique }, limit: 3 });
        expect(goWithout, `${id} ${technique}`).toBeUndefined();
        expect(mustStay, `${id} ${technique}`).toMatch(/^Do not leave/);
      }
    expect(asked).toBeGreaterThan(60);
  });
});

describe("a recipe that keeps", () => {
  const recipe = (name: string, lines: readonly string[], steps: readonly string[]): ReturnType<typeof readRecipe> =>
    readRecipe(
      c,
      [
        `# ${name}`,
        "",
        "## Ingredients",
        ...lines.map((l) => `- ${l}`),
        "",
        "## Method",
        ...steps.map((s, i) => `${i + 1}. ${s}`),
      ].join("\n"),
      "markdown",
    );
  const noted = (r: ReturnType<typeof readRecipe>): readonly string[] => swapNotes(c, r).notes.map((n) => n.line);
  const brine = [
    "1 kg cucumbers, sliced",
    "2 tbsp pickling salt",
    "3 cups cider vinegar",
    "1 cup sugar",
    "1 tbsp mustard seeds",
  ];
  it.each([
    [
      "Quayside cucumbers",
      [
        "Bring the vinegar, sugar and mustard seeds to a boil.",
        "Add the cucumbers and simmer 5 minutes.",
        "Pack into hot jars and process in a boiling-water canner for 10 minutes.",
      ],
    ],
    [
      "Quayside pickles",
      [
        "Boil the vinegar with sugar, salt and mustard seeds.",
        "Pour over the cucumbers in a jar. Keeps 3 weeks in the refrigerator.",
      ],
    ],
    ["Cucumbers for the winter", ["Simmer everything 5 minutes.", "Ladle into sterilised jars and seal."]],
  ])("%s: the vinegar is left alone", (name, steps) => {
    const r = recipe(name, brine, steps);
    expect(noted(r)).not.toContain("3 cups cider vinegar");
    expect(noted(r)).toContain("1 tbsp mustard seeds");
    const adapted = adaptRecipe(c, r, { missing: [{ line: "3 cups cider vinegar" }] });
    expect(adapted.lines.map((l) => l.text)).toContain("3 cups cider vinegar");
    expect(adapted.notes.join(" ")).toMatch(/NOT REPLACED.*Do not leave.*botulism/);
  });
  it("a dressing with as much vinegar is free", () => {
    const r = recipe("Cucumber salad", brine, [
      "Whisk the vinegar with the sugar and mustard seeds.",
      "Toss with the cucumbers and salt. Serve.",
    ]);
    expect(noted(r)).toContain("3 cups cider vinegar");
  });
  it("one line pickled for a dish that is not kept", () => {
    const r = recipe(
      "Fish tacos with onions",
      ["400 g cod", "1 red onion, sliced", "1/2 cup white vinegar", "8 corn tortillas"],
      [
        "Pickle the onion in the white vinegar for 1 hour.",
        "Grill the cod 6 minutes.",
        "Fill the tortillas with cod and onion.",
      ],
    );
    expect(noted(r)).not.toContain("1/2 cup white vinegar");
    expect(noted(r)).toContain("400 g cod");
  });
});
