import { describe, expect, it } from "vitest";
import { convert, openCatalogue } from "../../src/index.js";

const c = openCatalogue();

// USDA National Nutrient Database SR28, household weights: what 1 lb of raw meat with its refuse, or one ready-to-cook bird, gives cooked and
// off the bone. Ours are derived from the same records: this checks the way from words and yields to grams, it is no independent witness.
describe("grams cooked from 1 lb as bought, USDA SR28", () => {
  it.each([
    ["leg of lamb", "lamb leg, roasted", 265], // 17012
    ["leg of lamb", "lamb leg, lean, roasted", 218], // 17014
    ["lamb shank", "lamb shank meat, braised", 148], // 17229
    ["veal shank", "veal shank, braised", 194], // 17277
    ["pork shoulder", "pork shoulder, roasted", 262], // 10083
    ["chicken", "chicken meat, stewed, no skin", 157], // 05014
    ["chicken", "chicken, meat and skin, roasted", 178], // 05009
    ["duck", "duck meat, roasted, no skin", 100], // 05142
    ["goose", "goose meat, roasted, no skin", 143], // 05149
    ["ground lamb", "ground lamb, broiled", 313], // 17225
    ["ground veal", "ground veal, broiled", 299], // 17143
  ] as const)("1 lb %s, %s: %d g", (from, to, grams) => {
    const got = convert(c, `1 lb raw ${from}`, to).grams;
    expect(got).toBeGreaterThan(grams * 0.97);
    expect(got).toBeLessThan(grams * 1.03);
  });
});

describe("a cut without a figure of its own", () => {
  it("takes its kind's by the technique, with the source told", () => {
    const r = convert(c, "1 kg veal chops, boneless", "veal chop, roasted");
    expect(r.grams).toBeCloseTo(789, -1); // SR28 17098, veal leg
    expect(r.sources.some((s) => s.key === "usda-sr28" && s.at?.startsWith("17098"))).toBe(true);
  });
});
