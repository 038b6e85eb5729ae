import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { openCatalogue, readLine } from "../../src/index.js";
import { storeOf } from "../../src/catalogue/index.js";
import { carrierAmount, dose } from "../../src/dose/index.js";
import { readAsk } from "../../src/swap/ask.js";
import { amountFor } from "../../src/swap/amount.js";

const c = openCatalogue();
const store = storeOf(c);
const food = (id: string) => {
  const i = store.byId.get(id);
  if (!i) throw new Error(`${id} is not in the catalogue`);
  return i;
};
/** g of citric-acid equivalents per 100 g */
const acid = (id: string): number => dose(store, food(id), "acid") * 100;

// Grams of acid per mole of protons it gives up: molar mass over the number of acid hydrogens (from memory; IUPAC atomic masses).
const EQUIVALENT = {
  citric: 192.12 / 3,
  acetic: 60.05,
  lactic: 90.08,
  tartaric: 150.09 / 2,
  malic: 134.09 / 2,
  ascorbic: 176.12,
};
const asCitric = (grams: number, kind: keyof typeof EQUIVALENT): number =>
  (grams * EQUIVALENT.citric) / EQUIVALENT[kind];

describe("pure acids, by stoichiometry", () => {
  it.each([
    ["citric-acid/pantry", "citric"],
    ["tartaric-acid/pantry", "tartaric"],
    ["ascorbic-acid/pantry", "ascorbic"],
  ] as const)("%s", (id, kind) => expect(Math.abs(acid(id) / asCitric(100, kind) - 1)).toBeLessThan(0.02));
});

// Total organic acids, g per 100 g, from the table itself: Standard Tables of Food Composition in Japan 2020, by food number. What kind
// of acid they are is the food's own (vinegars acetic, fermented milk lactic, fruit citric). The table prints one decimal.
const MEXT: readonly (readonly [id: string, number: string, kind: keyof typeof EQUIVALENT])[] = [
  ["rice-vinegar/pantry", "17016", "acetic"],
  ["cider-vinegar/pantry", "17018", "acetic"],
  ["balsamic-vinegar/pantry", "17091", "acetic"],
  ["kiwi/fresh", "07054", "citric"],
  ["grapefruit/fresh", "07062", "citric"],
  ["orange/fresh", "07040", "citric"],
  ["lemon/fresh", "07155", "citric"],
  ["blackcurrant/frozen", "07182", "citric"],
  ["pineapple/fresh", "07097", "citric"],
  ["passion-fruit.juice/frozen", "07106", "citric"],
  ["strawberry/fresh", "07012", "citric"],
  ["umeboshi/salt-cured", "07022", "citric"],
  ["tomato/fresh", "06182", "citric"],
  ["cherry-tomato/fresh", "06183", "citric"],
  ["tomato/dried", "06370", "citric"],
  ["yogurt/fresh", "13025", "lactic"],
  ["low-fat-yogurt/fresh", "13053", "lactic"],
  ["nonfat-yogurt/fresh", "13054", "lactic"],
  ["ketchup/pantry", "17036", "citric"],
  ["white-wine/pantry", "16010", "tartaric"],
  ["red-wine/pantry", "16011", "tartaric"],
  ["rose-wine/pantry", "16012", "tartaric"],
];
const organic = new Map(
  readFileSync(new URL("../../data/composition/mext-2020-foods.tsv", import.meta.url), "utf8")
    .split("\n")
    .map((line) => line.split("\t"))
    .map((row) => [row[0] ?? "", Number(row[10])]),
);
describe("organic acids, Standard Tables of Food Composition in Japan 2020", () => {
  // Half of the last printed digit, and a quarter for crops and makers of two countries.
  it.each(MEXT)("%s (%s, %s)", (id, number, kind) => {
    const published = asCitric(organic.get(number) ?? Number.NaN, kind);
    expect(Math.abs(acid(id) - published), `${acid(id)} against ${published}`).toBeLessThanOrEqual(
      0.25 * published + 0.05,
    );
  });
});

// Citric acid in citrus juices: Penniston et al., Journal of Endourology 22 (2008): 1.44 g a US fluid ounce of fresh lemon juice, 1.38
// lime, 1.10 and 1.06 from concentrate (read); 25.0 g/l grapefruit (second hand).
describe("citrus juice by the fluid ounce, Penniston et al. 2008", () => {
  it.each([
    ["lemon.juice/fresh", "1 fl oz lemon juice", 1.44],
    ["lime.juice/fresh", "1 fl oz lime juice", 1.38],
    ["lemon.juice/pantry", "1 fl oz bottled lemon juice", 1.1],
    ["lime.juice/pantry", "1 fl oz bottled lime juice", 1.06],
  ])("%s", (id, line, published) => {
    const portion = readLine(c, line).portion;
    expect(portion?.id).toBe(id);
    expect(Math.abs(((portion?.grams ?? 0) * acid(id)) / 100 / published - 1)).toBeLessThan(0.08);
  });
});

describe("as sour: how much of one for another", () => {
  const lemon = food("lemon.juice/fresh");
  const amount = (use: string): number => carrierAmount(store, lemon, 15.2, food(use), "acid", 500);
  // 1 tbsp of juice at 48 g/l holds 0.71 g citric acid (Penniston et al.); 5 % vinegar holds 0.75 g acetic in 15 ml (retail strength,
  // from memory), which titrates as 0.80 g citric: nine tenths of a tablespoon is as sour.
  it("5 % vinegar for a tablespoon of lemon juice: 12.5 to 15 g", () => {
    expect(amount("white-vinegar/pantry")).toBeGreaterThan(12.5);
    expect(amount("white-vinegar/pantry")).toBeLessThan(15);
  });
  it("citric acid for a tablespoon of lemon juice: about 0.7 g", () => {
    expect(Math.abs(amount("citric-acid/pantry") - 0.72)).toBeLessThan(0.06);
  });
  it("sherry vinegar is the sharpest of them (7 %, the Spanish minimum, from memory): less of it than of cider vinegar", () => {
    expect(amount("sherry-vinegar/pantry")).toBeLessThan(amount("cider-vinegar/pantry"));
  });
  it("the amount solver, asked for sourness alone, does the same within what else it weighs", () => {
    const ask = readAsk(c, { missing: "1 tbsp lemon juice", role: "acid" });
    const solved = amountFor(ask, food("white-vinegar/pantry"));
    expect(solved).toBeGreaterThan(11);
    expect(solved).toBeLessThan(16);
  });
});
