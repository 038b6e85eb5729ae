import { describe, expect, it } from "vitest";
import { openCatalogue, storeOf } from "../../src/catalogue/index.js";
import { swapsFor } from "../../src/index.js";
import type { Swap, SwapRequest } from "../../src/index.js";

// What a cook would say of a swap: common practice, no source.
const c = openCatalogue();
const store = storeOf(c);
const swaps = (missing: string, setting: string, more: Partial<SwapRequest> = {}): readonly Swap[] =>
  swapsFor(c, { missing, for: setting, limit: 12, ...more }).swaps;
const LITTLE = "little difference";

it("every note and every aroma has a cook's words", () => {
  const words = store.tables["notes"] as Readonly<Record<string, string>>;
  const known = [...(store.terms["note"] ?? []), ...(store.terms["aroma"] ?? [])];
  expect(known.filter((w) => !Object.hasOwn(words, w))).toEqual([]);
  expect(Object.keys(words).filter((w) => !known.includes(w))).toEqual([]);
  // Said after "with a" and "without the".
  for (const phrase of Object.values(words)) expect(phrase, phrase).toMatch(/^(?![aeiou]).+ .+$/);
});

describe("little difference is not said of what differs", () => {
  it("oats for the egg of a meatloaf, and water with a powder for a cake's", () => {
    const all = [
      ...swaps("1 egg", "meatloaf", { avoid: { allergens: ["egg"] } }),
      ...swaps("2 eggs", "cake", { avoid: { diets: ["vegan"] } }),
    ];
    expect(all.length).toBeGreaterThan(6);
    for (const s of all) expect(s.text).not.toContain(LITTLE);
    expect(all.some((s) => s.text.includes("without the taste of egg"))).toBe(true);
  });
  it("sugar and water for honey lose the honey", () => {
    const sugar = swaps("1/4 cup honey", "granola").find((s) => s.use.some((u) => u.id === "sugar/pantry"));
    expect(sugar?.text).toContain("without the taste of honey");
  });
  it("only where the score says so", () => {
    for (const [missing, setting] of [
      ["1 tbsp basil", "pasta"],
      ["1 tsp paprika", "goulash"],
      ["1 cup rice", "pilaf"],
      ["250 g paneer", "curry"],
      ["1 cup breadcrumbs", "coating"],
    ] as const)
      for (const s of swaps(missing, setting))
        if (s.text.includes(LITTLE)) expect(s.score, s.text).toBeGreaterThanOrEqual(0.8);
  });
});

describe("words", () => {
  it("the words of the data are not read out", () => {
    for (const [missing, setting] of [
      ["1 lb shrimp", "stir-fry"],
      ["2 shallots", "sauce"],
      ["4 slices bacon", "soup"],
      ["1/2 cup dry white wine", "risotto"],
      ["8 oz cream cheese", "frosting"],
    ] as const)
      for (const s of swaps(missing, setting, { limit: 25 }))
        expect(s.text).not.toMatch(/without the (marine|allium|cured pork)|note of|little without|to bite/);
  });
  it("a dry coating is compared as it is, not boiled to a porridge", () => {
    const meal = swaps("1 cup breadcrumbs", "coating", { limit: 60 }).find((s) => s.use[0].id.startsWith("cornmeal"));
    expect(meal).toBeDefined();
    expect(meal?.shift.some((x) => ["moistness", "adhesiveness"].includes(x.axis) && x.strength === 3)).toBe(false);
  });
  it("the mouthfeel of a spice is nobody's concern", () => {
    for (const s of swaps("1 tbsp basil", "pasta")) expect(s.text).not.toMatch(/drier|chewier|firmer/);
  });
  it("many small things are said in the plural, and one minute is a minute", () => {
    const all = [...swaps("1 cup walnuts", "brownies"), ...swaps("1 bunch spinach", "soup", { limit: 25 })];
    for (const s of all) expect(s.text).not.toMatch(/\b(walnut|pecan|almond|hazelnut) for the|\b1 minutes/);
    expect(swaps("15 curry leaves", "curry")[0]?.text).toContain("for the 15 curry leaves");
  });
});

describe("measures", () => {
  const units = (missing: string, setting: string, more: Partial<SwapRequest> = {}): string[] =>
    swaps(missing, setting, more).flatMap((s) => s.use.filter((u) => u.grams > 60).map((u) => u.measure.unit));
  it("a pound of chicken is a pound of something, not cups of it", () => {
    const all = units("1 lb chicken breast", "stir-fry", { avoid: { diets: ["vegetarian"] } });
    expect(all.length).toBeGreaterThan(1);
    for (const unit of all) expect(["oz", "lb", "piece", "can"]).toContain(unit);
  });
  it("grams are answered in grams", () => {
    for (const unit of units("500 g mozzarella", "pizza")) expect(["g", "kg", "ml", "piece"]).toContain(unit);
  });
  it("an egg is an egg, whatever laid it", () => {
    const duck = swaps("1 egg", "cake", { evidence: "computed", have: ["duck eggs"], limit: 40 }).find(
      (s) => s.use[0].id === "duck-egg/fresh",
    );
    expect(duck?.use[0].measure.text).toBe("1");
    expect(duck?.text).toContain("1 duck egg ");
  });
  it("no kitchen weighs a tenth of a gram", () => {
    const all = swaps("1 tsp fenugreek leaves", "curry", { limit: 40 });
    for (const s of all) for (const u of s.use) expect(u.measure.text).not.toMatch(/^0\.\d+ g$/);
  });
});
