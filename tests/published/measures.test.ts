// Kitchen measures against published factors. Two kinds of source:
// - the exact definitions, written from memory and named where they stand: NIST Handbook 44, appendix C (the US gallon is
//   231 cubic inches, the pound 453.592 37 g), NIST SP 811, appendix B (the conversion factors printed to seven figures), and
//   the UK Units of Measurement Regulations 1995 (the imperial gallon is 4.546 09 litres);
// - rounded equivalences for the kitchen and the label: NIST, "Metric kitchen: cooking measurement equivalencies", and
//   21 CFR 101.9(b)(5)(viii), household measures for nutrition labelling. These round on purpose, so they are met within
//   their own rounding and not exactly.
import { describe, expect, it } from "vitest";
import { findUnit, readQuantity } from "../../src/quantity/index.js";

const CUBIC_INCH = 2.54 ** 3;
const GALLON = 231 * CUBIC_INCH;
const IMPERIAL_GALLON = 4546.09;

const factor = (word: string, imperial = false): number => findUnit(word, imperial)?.factor ?? NaN;

describe("NIST Handbook 44, appendix C: definitions (from memory)", () => {
  const EXACT: readonly (readonly [string, number])[] = [
    ["gallon", GALLON],
    ["quart", GALLON / 4],
    ["pint", GALLON / 8],
    ["cup", GALLON / 16],
    ["fluid ounce", GALLON / 128],
    ["tablespoon", GALLON / 256],
    ["teaspoon", GALLON / 768],
    ["pound", 453.59237],
    ["ounce", 453.59237 / 16],
    ["inch", 2.54],
    ["litre", 1000],
    ["kilogram", 1000],
  ];
  it.each(EXACT)("one %s", (word, value) => expect(Math.abs(factor(word) / value - 1)).toBeLessThan(1e-12));
});

describe("NIST SP 811, appendix B: factors to seven figures (from memory)", () => {
  const ROWS: readonly { word: string; value: number; imperial?: true }[] = [
    { word: "cup", value: 236.5882 },
    { word: "fluid ounce", value: 29.57353 },
    { word: "gallon", value: 3785.412 },
    { word: "pint", value: 473.1765 },
    { word: "quart", value: 946.3529 },
    { word: "tablespoon", value: 14.78676 },
    { word: "teaspoon", value: 4.928922 },
    { word: "ounce", value: 28.34952 },
    { word: "pound", value: 453.5924 },
    { word: "fluid ounce", value: 28.41306, imperial: true },
    { word: "gallon", value: 4546.09, imperial: true },
  ];
  it.each(ROWS)("one $word is $value (imperial: $imperial)", ({ word, value, imperial }) =>
    expect(Number(factor(word, imperial).toPrecision(7))).toBe(value),
  );
});

describe("UK Units of Measurement Regulations 1995: imperial measures (from memory)", () => {
  it.each([
    ["gallon", IMPERIAL_GALLON],
    ["quart", IMPERIAL_GALLON / 4],
    ["pint", IMPERIAL_GALLON / 8],
    ["fluid ounce", IMPERIAL_GALLON / 160],
  ] as const)("one imperial %s", (word, value) => expect(Math.abs(factor(word, true) / value - 1)).toBeLessThan(1e-12));
});

describe("NIST, cooking measurement equivalencies: rounded, met within 2 %", () => {
  const ROWS: readonly (readonly [string, number])[] = [
    ["1/4 teaspoon", 1.25],
    ["1/2 teaspoon", 2.5],
    ["1 teaspoon", 5],
    ["1 tablespoon", 15],
    ["1/4 cup", 60],
    ["1/3 cup", 80],
    ["1/2 cup", 120],
    ["3/4 cup", 180],
    ["1 cup", 240],
    ["1 fluid ounce", 30],
    ["1 pint", 480],
    ["1 quart", 950],
    ["1 pound", 454],
  ];
  it.each(ROWS)("%s is about %d", (text, value) => {
    const q = readQuantity(text);
    expect(Math.abs(((q?.value ?? 0) * (q?.unit?.factor ?? 0)) / value - 1)).toBeLessThan(0.02);
  });
});

describe("21 CFR 101.9(b)(5)(viii): household measures for labels: rounded, met within 2 %", () => {
  it.each([
    ["teaspoon", 5],
    ["tablespoon", 15],
    ["cup", 240],
    ["fluid ounce", 30],
    ["ounce", 28],
  ] as const)("one %s is about %d", (word, value) => expect(Math.abs(factor(word) / value - 1)).toBeLessThan(0.02));
});

describe("metric spoons and cups, where the line says so", () => {
  // UK Metric Association, "Kitchen utensil names in recipes" (2023): metric cup 250 ml, dessertspoon 10 ml, teaspoon 5 ml.
  // The 20 ml Australian tablespoon and the 15 ml metric one: common practice, no source of the first hand.
  it.each([
    ["metric cup", 250],
    ["dessertspoon", 10],
    ["metric teaspoon", 5],
    ["metric tablespoon", 15],
    ["Australian tablespoon", 20],
  ] as const)("one %s is %d ml", (word, value) => expect(factor(word)).toBe(value));
});

describe("pinch and dash: common practice, no standard", () => {
  it("are a sixteenth and an eighth of a teaspoon", () => {
    expect([factor("pinch") / factor("teaspoon"), factor("dash") / factor("teaspoon")]).toEqual([1 / 16, 1 / 8]);
  });
});
