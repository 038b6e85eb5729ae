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
    const r = convert(c, "1 kg veal breast, boneless", "veal breast, roasted");
    expect(r.grams).toBeCloseTo(789, -1); // SR28 17098, veal leg
    expect(r.sources.some((s) => s.key === "usda-sr28" && s.at?.startsWith("17098"))).toBe(true);
  });
});

// USDA SR28 household weights and refuse, the number beside each; UC Davis grains chart for the last two.
describe("what is left, over the classes of the tables", () => {
  it.each([
    ["1 lb pork picnic shoulder, bone-in", "pork picnic, lean, roasted", 191], // 10079
    ["1 lb veal shoulder", "veal shoulder, braised", 191], // 17117
    ["151 g pork chop, bone-in", "pork chop, broiled", 87], // 10022
    ["1 lb stewing hen", "stewed chicken meat", 137], // 05126
    ["4 oz ground turkey", "ground turkey patty, cooked", 82], // 05306
    ["1 lb clams", "clam meat", 68], // 15157
    ["1 lb asparagus", "asparagus, edible portion", 240], // 11011
    ["1 lb peas in the pod", "peas, shelled", 172], // 11304
    ["1 lime", "lime juice", 44], // 09160
    ["1 oz urad beans", "urad beans, cooked", 69], // 16084
    ["1 cup oat bran", "oat bran, cooked", 438], // 2 cups of 20034
    ["1 cup quick brown rice", "quick brown rice, cooked", 370], // 2 cups
  ] as const)("%s, %s: %d g", (from, to, grams) => {
    const got = convert(c, from, to).grams;
    expect(got).toBeGreaterThan(grams * 0.85);
    expect(got).toBeLessThan(grams * 1.15);
  });
  it("dry beans cook to the same whichever they are: the middle one, with the range of the others", () => {
    const r = convert(c, "1 cup dry beans", "beans, cooked");
    expect(r.grams).toBeGreaterThan(440);
    expect(r.grams).toBeLessThan(560);
    expect(r.range?.[0]).toBeLessThanOrEqual(r.grams);
    expect(r.range?.[1]).toBeGreaterThanOrEqual(r.grams);
    expect(() => convert(c, "1 cup beans", "bean flour")).toThrow();
  });
  it("comes back to where it started", () => {
    for (const [from, to] of [
      ["1000 g beets", "cooked beets"],
      ["1000 g lemons", "lemon juice"],
      ["1000 g butternut squash", "pumpkin puree"],
      ["1000 g dried navy beans", "cooked navy beans"],
      ["1000 g millet", "cooked millet"],
    ] as const) {
      const there = convert(c, from, to);
      const back = convert(c, `${there.grams} g ${there.id}`, from.slice(7));
      expect(back.grams, from).toBeGreaterThan(995);
      expect(back.grams, from).toBeLessThan(1005);
    }
  });
});
