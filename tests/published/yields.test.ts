import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { openCatalogue, convert } from "../../src/index.js";
import { storeOf } from "../../src/catalogue/index.js";
import { carrierAmount, dose } from "../../src/dose/index.js";
import { BOILED_YIELDS, MEAT, SOAKED } from "./yield-rows.js";

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

describe("meat cooked, USDA cooking yields", () => {
  it.each(MEAT.map(([id, low, high]) => [id, low, high ?? low] as const))("%s: %f to %f", (id, low, high) => {
    expect(served(id)).toBeGreaterThanOrEqual(low - 0.005);
    expect(served(id)).toBeLessThanOrEqual(high + 0.005);
  });
});

describe("boiled, Agriculture Handbook 102", () => {
  it.each(BOILED_YIELDS.map(([id, low, high]) => [id, low, high ?? low] as const))(
    "%s: %f to %f, within an eighth",
    (id, low, high) => {
      expect(served(id)).toBeGreaterThanOrEqual(low * 0.875);
      expect(served(id)).toBeLessThanOrEqual(high * 1.125);
    },
  );
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

describe("dried foods soaked", () => {
  it.each(SOAKED.map(([id, low, high]) => [id, low, high ?? low] as const))(
    "%s: %f to %f, within an eighth",
    (id, low, high) => {
      expect(ready(id)).toBeGreaterThanOrEqual(low * 0.875);
      expect(ready(id)).toBeLessThanOrEqual(high * 1.125);
    },
  );
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
