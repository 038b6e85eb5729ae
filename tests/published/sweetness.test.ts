import { describe, expect, it } from "vitest";
import { openCatalogue, storeOf } from "../../src/catalogue/index.js";
import { carrierAmount, dose, referenceDish } from "../../src/dose/index.js";
import { readAsk } from "../../src/swap/ask.js";
import { amountFor } from "../../src/swap/amount.js";

const c = openCatalogue();
const store = storeOf(c);
const food = (id: string) => {
  const i = store.byId.get(id);
  if (!i) throw new Error(`${id} is not in the catalogue`);
  return i;
};
const sweetness = (id: string): number => dose(store, food(id), "sweetness");

// Relative sweetness, sucrose = 1 by weight as sold. Sources:
//   phn2022: Public Health Nutrition 26(5):952-964, table 2 (table read)
//   bmc2011: BMC Medicine 9:123, table 1, description of sweeteners (table read)
//   amb2017: Applied Microbiology and Biotechnology 102:587-595, table 1 (table read)
//   memory:  recalled, no publication opened
// The tables disagree among themselves by up to half for the same thing (glucose 0.5 to 1, fructose 1 to 2), since sweetness depends on
// concentration, warmth and what it was compared at. A single figure is met within a quarter, a range within a tenth beyond its ends.
const PUBLISHED: readonly (readonly [id: string, low: number, high: number, source: string])[] = [
  ["sugar/pantry", 1, 1, "by definition"],
  ["brown-sugar/pantry", 1, 1, "phn2022"],
  ["dextrose/pantry-powder", 0.8, 0.8, "phn2022"],
  ["dextrose/pantry-powder", 0.5, 1, "bmc2011"],
  ["fructose/pantry", 1, 2, "bmc2011"],
  ["honey/pantry", 1, 1, "phn2022"],
  ["malt-syrup/pantry", 0.5, 0.5, "phn2022"],
  ["corn-syrup/pantry", 0.3, 0.45, "memory, 42 DE"],
  ["erythritol/pantry", 0.7, 0.7, "phn2022"],
  ["erythritol/pantry", 0.6, 0.8, "amb2017"],
  ["xylitol/pantry", 1, 1, "phn2022"],
  ["xylitol/pantry", 1, 1, "amb2017"],
  ["maple-syrup/pantry", 0.6, 0.7, "memory"],
  ["golden-syrup/pantry", 0.75, 0.85, "memory"],
  ["rice-syrup/pantry", 0.3, 0.5, "memory"],
  ["coconut-sugar/pantry", 0.9, 1, "memory"],
];
// Figures that ours contradict, all of one kind: one number for a syrup without saying whether its water counts, or a crystal tasted
// cold. Ours are lower in each; the reason stands beside it.
const APART: readonly (readonly [id: string, published: number, source: string, why: string])[] = [
  ["fructose/pantry", 1.7, "phn2022", "crystals tasted cold; in warm solution about 1.2 (memory)"],
  ["honey/pantry", 1.5, "bmc2011, upper end of 1 to 1.5", "summed from the sugars measured by USDA"],
  ["molasses/pantry", 0.9, "phn2022", "22 g water, and bitterness takes from it"],
  ["treacle/pantry", 0.9, "phn2022", "the same"],
  ["corn-syrup/pantry", 1.1, "phn2022", "blended with fructose there; plain glucose syrup 0.3 to 0.75 elsewhere"],
];
const agrees = (v: number, low: number, high: number): boolean =>
  low === high ? Math.abs(v / low - 1) <= 0.25 : v >= low * 0.9 && v <= high * 1.1;

describe("relative sweetness as sold", () => {
  it.each(PUBLISHED)("%s: %f to %f (%s)", (id, low, high) =>
    expect(agrees(sweetness(id), low, high), String(sweetness(id))).toBe(true),
  );
  it.each(APART)("%s is kept below the %f of %s", (id, published) => {
    expect(agrees(sweetness(id), published, published)).toBe(false);
    expect(sweetness(id)).toBeLessThan(published);
  });
  it("cane sugars are as sweet as the sugar in them: all of it sucrose or split sucrose (by definition)", () => {
    const low: string[] = [];
    for (const id of [
      "sugar/pantry",
      "brown-sugar/pantry",
      "powdered-sugar/pantry",
      "muscovado-sugar/pantry",
      "jaggery/pantry",
    ]) {
      const sugars = (store.figure(food(id), "sugars")?.value ?? Number.NaN) / 100;
      if (!(sweetness(id) >= 0.95 * sugars))
        low.push(`${id}: ${sweetness(id).toFixed(2)} with ${sugars} g sugars a gram`);
    }
    expect(low).toEqual([]);
  });
});

// Sweetness of single sugars in solution against sucrose: glucose 0.74, maltose 0.33, lactose 0.16 (a dictionary of food and nutrition,
// entry on sweeteners, read). Honey and apple juice are summed by hand from the sugars USDA SR28 prints, with fructose 1.2.
describe("sweetness summed from measured sugars (USDA SR28)", () => {
  it.each([
    // NDB 19296: sucrose 0.89, glucose 35.75, fructose 40.94, maltose 1.44, per 100 g
    ["honey/pantry", 0.0089 + 0.74 * 0.3575 + 1.2 * 0.4094 + 0.33 * 0.0144],
    // NDB 19353: sucrose 58.32, glucose 1.6, fructose 0.52
    ["maple-syrup/pantry", 0.5832 + 0.74 * 0.016 + 1.2 * 0.0052],
    // NDB 09016: sucrose 1.26, glucose 2.63, fructose 5.73
    ["apple.juice/pantry", 0.0126 + 0.74 * 0.0263 + 1.2 * 0.0573],
  ])("%s", (id, expected) => expect(sweetness(id)).toBeCloseTo(expected, 2));
  it("milk's own sugar is faintly sweet: a sixth of sucrose", () => {
    expect(sweetness("milk/fresh")).toBeGreaterThan(0.005);
    expect(sweetness("milk/fresh")).toBeLessThan(0.012);
  });
  // Condensed milk 0.45 to 0.55 (memory). USDA SR28 01095 has 54.4 g sugars, of which milk sugar is about 12 (memory): the rest is cane
  // sugar. Bars of milk chocolate hold 51.5 g sugars (19120), white 59 (19087), of which milk sugar is a sixth at most (memory).
  it("what is sweetened with sugar is not as faint as milk sugar", () => {
    const faint = (
      [
        ["condensed-milk/canned", 0.4],
        ["milk-chocolate/pantry", 0.38],
        ["white-chocolate/pantry", 0.42],
        ["ice-cream/frozen", 0.12],
        ["fruit-yogurt/fresh-sweetened", 0.1],
      ] as const
    ).filter(([id, least]) => !(sweetness(id) >= least));
    expect(faint.map(([id, least]) => `${id}: ${sweetness(id).toFixed(3)}, at least ${least}`)).toEqual([]);
  });
});

describe("how much sweetener for sugar", () => {
  const grams = (id: string): number => {
    const sugar = food("sugar/pantry");
    return carrierAmount(store, sugar, 200, food(id), "sweetener", referenceDish(store, sugar, "sweetener", 200));
  };
  it.each([
    ["erythritol/pantry", 200 / 0.8, 200 / 0.6], // amb2017: 0.6 to 0.8
    ["xylitol/pantry", 190, 210], // amb2017: 1
    ["dextrose/pantry-powder", 200 / 1, 200 / 0.5], // bmc2011: 0.5 to 1
  ])("200 g sugar by %s: %f to %f g", (id, low, high) => {
    expect(grams(id)).toBeGreaterThanOrEqual(low);
    expect(grams(id)).toBeLessThanOrEqual(high);
    // and the amount solver, asked for sweetness alone, agrees with the single carrier
    const ask = readAsk(c, { missing: "200 g sugar", role: "sweetener" });
    const short = amountFor(ask, food(id)) / grams(id);
    expect(short).toBeLessThan(1.02);
    // A miss: drawn to the same measure, dextrose comes out three tenths less sweet than its figure asks for. The row has been learned
    // when this fails: then the exception goes.
    if (id === "dextrose/pantry-powder") expect(short).toBeLessThan(0.8);
    else expect(short).toBeGreaterThan(0.8);
  });
  it("honey: 3/4 to 1 cup for a cup of sugar (Extension tables; a honey board's leaflet of 1998 gives 1 cup)", () => {
    const cups = grams("honey/pantry") / 339; // USDA SR28 19296: 1 cup is 339 g
    expect(cups).toBeGreaterThanOrEqual(0.7);
    expect(cups).toBeLessThanOrEqual(1);
  });
});
