import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { openCatalogue, convert } from "../../src/index.js";
import { storeOf } from "../../src/catalogue/index.js";
import { carrierAmount, dose } from "../../src/dose/index.js";

const c = openCatalogue();
const store = storeOf(c);
const food = (id: string) => {
  const i = store.byId.get(id);
  if (!i) throw new Error(`${id} is not in the catalogue`);
  return i;
};
/** g on the plate per g as sold */
const served = (id: string): number => dose(store, food(id), "served");
/** g in the dish per g as sold, after soaking or desalting */
const ready = (id: string): number => dose(store, food(id), "mass");

// USDA Table of Cooking Yields for Meat and Poultry (2012), figures at second hand from a public table that says it transcribes them.
// Ours cite the same table: this is a check of the transcription and of the way from figure to dose, not an independent witness.
// Two figures are two ways of cooking; ours lies between them.
const MEAT: readonly (readonly [id: string, low: number, high?: number])[] = [
  ["ground-beef/fresh", 0.67, 0.73],
  ["lean-ground-beef/fresh", 0.71, 0.76],
  ["chicken-breast/fresh", 0.72, 0.77],
  ["chicken-thigh/fresh", 0.69, 0.74],
  ["chicken-drumstick/fresh", 0.76],
  ["chicken-wing/fresh", 0.66, 0.74],
  ["chicken/fresh", 0.78],
  ["ribeye-steak/fresh", 0.84],
  ["strip-steak/fresh", 0.82],
  ["top-sirloin/fresh", 0.8],
  ["beef-tenderloin/fresh", 0.8],
  ["flank-steak/fresh", 0.81],
  ["skirt-steak/fresh", 0.7],
  ["tri-tip/fresh", 0.84],
  ["rib-roast/fresh", 0.77],
  ["chuck-roast/fresh", 0.66],
  ["beef-brisket/fresh", 0.69],
  ["short-ribs/fresh", 0.66],
  ["stewing-beef/fresh", 0.67],
  ["pork-chop/fresh", 0.78, 0.82],
  ["pork-tenderloin/fresh", 0.8],
  ["pork-loin/fresh", 0.79],
  ["pork-shoulder/fresh", 0.65, 0.74],
  ["spareribs/fresh", 0.76],
  ["baby-back-ribs/fresh", 0.82],
  ["bone-in-ham/smoked", 0.9],
  ["ground-pork/fresh", 0.67, 0.68],
  ["bacon/cured", 0.29, 0.32],
];
describe("meat cooked, USDA cooking yields", () => {
  it.each(MEAT.map(([id, low, high]) => [id, low, high ?? low] as const))("%s: %f to %f", (id, low, high) => {
    expect(served(id)).toBeGreaterThanOrEqual(low - 0.005);
    expect(served(id)).toBeLessThanOrEqual(high + 0.005);
  });
});

// Food Yields Summarized by Different Stages of Preparation, USDA Agriculture Handbook 102 (1975), read where a research note quotes it.
describe("boiled, Agriculture Handbook 102", () => {
  it.each([
    ["white-rice/pantry", 2.43, 3.75],
    ["brown-lentil/dried", 2.61, 2.89],
    ["chickpea/dried", 2.07, 2.07],
  ])("%s: %f to %f, within an eighth", (id, low, high) => {
    expect(served(id)).toBeGreaterThanOrEqual(low * 0.875);
    expect(served(id)).toBeLessThanOrEqual(high * 1.125);
  });
});

// Dry-matter balance, (100 - water dry) / (100 - water boiled), from the Standard Tables of Food Composition in Japan 2020, by food
// number. Most of ours rest on USDA records, so the two are independent. The balance is an upper bound, since boiling leaches solids, and
// cooks of two countries stop at different softness: within a fifth.
const BOILED: readonly (readonly [id: string, dry: string, boiled: string])[] = [
  ["chickpea/dried", "04065", "04066"],
  ["kidney-bean/dried", "04007", "04008"],
  ["azuki-bean/dried", "04001", "04002"],
  ["soybean/dried", "04023", "04024"],
  ["mung-bean/dried", "04071", "04072"],
  ["spaghetti/dried", "01063", "01064"],
  ["somen/dried", "01043", "01044"],
  ["udon/dried", "01041", "01042"],
  ["soba/dried", "01129", "01130"],
];
const water = new Map(
  readFileSync(new URL("../../data/composition/mext-2020-foods.tsv", import.meta.url), "utf8")
    .split("\n")
    .map((line) => line.split("\t"))
    .map((row) => [row[0] ?? "", Number(row[3])]),
);
describe("boiled, dry matter of the Standard Tables of Food Composition in Japan 2020", () => {
  it.each(BOILED)("%s (%s, %s)", (id, dry, boiled) => {
    const balance = (100 - (water.get(dry) ?? Number.NaN)) / (100 - (water.get(boiled) ?? Number.NaN));
    expect(Math.abs(served(id) / balance - 1), `${served(id)} against ${balance}`).toBeLessThan(0.2);
  });
});

// Weight after soaking over dry weight: tables of two Japanese dietitians' pages and a cooking notes site (read in part, secondary).
describe("dried foods soaked", () => {
  it.each([
    ["wakame/dried", 10, 12],
    ["wakame/salt-cured", 1.5, 1.5],
    ["hijiki/dried", 8.5, 9.9],
    ["kombu/dried", 3, 3],
    ["shiitake/dried", 4, 4],
    ["daikon/dried", 4, 4],
  ])("%s: %f to %f, within an eighth", (id, low, high) => {
    expect(ready(id)).toBeGreaterThanOrEqual(low * 0.875);
    expect(ready(id)).toBeLessThanOrEqual(high * 1.125);
  });
});

describe("yields in use", () => {
  it("a pound of dried chickpeas boils to 940 to 1,050 g (Agriculture Handbook 102: 2.07; dry matter of USDA 16056, 16057: 2.32)", () => {
    const cooked = convert(c, "1 lb dried chickpeas", "chickpea/fresh-cooked").grams;
    expect(cooked).toBeGreaterThan(935);
    expect(cooked).toBeLessThan(1060);
  });
  it("what is missing and its stand-in are matched on the plate: dried beans for a drained can go by what is eaten", () => {
    const can = food("chickpea/canned");
    const dried = carrierAmount(store, can, 250, food("chickpea/dried"), "main protein", 1000);
    expect(dried * served("chickpea/dried")).toBeCloseTo(250 * served("chickpea/canned"), 6);
    expect(dried).toBeLessThan(125);
  });
});
