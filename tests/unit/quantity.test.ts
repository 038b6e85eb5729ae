import { describe, expect, it } from "vitest";
import {
  cupFor,
  decimalText,
  findUnit,
  fractionText,
  measureText,
  metricMassFor,
  metricVolumeFor,
  nearestStep,
  plainText,
  readNumeral,
  readQuantity,
  roundTo,
  spoonsFor,
  usMassFor,
} from "../../src/quantity/index.js";

describe("numbers", () => {
  const READS: readonly (readonly [string, number])[] = [
    ["2", 2],
    ["2.5", 2.5],
    ["1,5", 1.5],
    ["0,125", 0.125],
    ["1,000", 1000],
    ["12,500", 12500],
    [".5", 0.5],
    ["1/2", 0.5],
    ["3 / 4", 0.75],
    ["1 1/2", 1.5],
    ["1-1/2", 1.5],
    ["1½", 1.5],
    ["1 ½", 1.5],
    ["½", 0.5],
    ["⅔", 2 / 3],
    ["1⁄2", 0.5],
    ["2 and 1/2", 2.5],
    ["one and a half", 1.5],
    ["two-and-a-half", 2.5],
    ["three quarters of a", 0.75],
    ["two-thirds", 2 / 3],
    ["half", 0.5],
    ["half a", 0.5],
    ["a half", 0.5],
    ["half a dozen", 6],
    ["a dozen", 12],
    ["two dozen", 24],
    ["a couple of", 2],
    ["a few", 3],
    ["a", 1],
    ["Twelve", 12],
  ];
  it.each(READS)("reads %s", (text, value) => {
    const n = readNumeral(`${text} eggs`, 0);
    expect(n?.value).toBeCloseTo(value, 12);
    expect(`${text} eggs`.slice(n?.end).trim()).toBe("eggs");
  });
  it.each([
    "0 g",
    "00 flour",
    "1/0 cup",
    "2% milk",
    "12345678 g",
    "half and half",
    "half-fat cream",
    "a little oil",
    "",
    "-",
    "/2",
    "x",
  ])("takes %j for no amount", (text) => expect(readNumeral(text, 0)).toBeUndefined());
  it("prints fractions a kitchen has and decimals for the rest", () => {
    expect([0.5, 1 / 3, 1.5, 2, 2.75, 0.125, 1.27, 0.999999].map(fractionText)).toEqual([
      "1/2",
      "1/3",
      "1 1/2",
      "2",
      "2 3/4",
      "1/8",
      "1.27",
      "1",
    ]);
  });
  it("rounds half away from zero without noise", () => {
    expect([
      roundTo(1.005, 2),
      roundTo(2.5, 0),
      roundTo(-1.25, 1),
      roundTo(0.1 + 0.2, 1),
      roundTo(1e-9, 1),
      roundTo(-0.01, 1),
    ]).toEqual([1.01, 3, -1.3, 0.3, 0, 0]);
    expect(Object.is(roundTo(-0.01, 1), 0)).toBe(true);
    expect([250, 2.5, 0.05, 1e-9].map((x) => decimalText(x))).toEqual(["250", "2.5", "0.05", "0"]);
  });
  it("makes odd characters plain", () => {
    expect(plainText("1\u00a0cup\u200b \uff12\u2009eggs, cook\u2019s")).toBe("1 cup 2 eggs, cook's");
    expect(plainText("plain")).toBe("plain");
  });
});

describe("units", () => {
  const WORDS: readonly (readonly [string, string])[] = [
    ...["g", "gram", "grams", "gramme", "grammes", "gm", "gms"].map((w) => [w, "g"] as const),
    ...["kg", "kilo", "kilos", "kilograms"].map((w) => [w, "kg"] as const),
    ...["oz", "oz.", "ozs", "ounce", "ounces"].map((w) => [w, "oz"] as const),
    ...["lb", "lbs", "lbs.", "pound", "pounds"].map((w) => [w, "lb"] as const),
    ...["ml", "mls", "millilitres", "milliliter"].map((w) => [w, "ml"] as const),
    ...["l", "L", "litre", "liters", "ltr"].map((w) => [w, "l"] as const),
    ...["t", "tsp", "tsp.", "teaspoons", "tea spoon"].map((w) => [w, "tsp"] as const),
    ...["T", "Tbs", "tbsp.", "Tablespoons", "tblsp", "TBSP"].map((w) => [w, "tbsp"] as const),
    ...["c", "c.", "cup", "Cups", "cupful"].map((w) => [w, "cup"] as const),
    ...["fl oz", "fl. oz.", "fluid ounces", "floz"].map((w) => [w, "us fl oz"] as const),
    ...["pinch", "pinches"].map((w) => [w, "pinch"] as const),
    ...["leaf", "leaves"].map((w) => [w, "leaf"] as const),
    ...["tin", "can", "tins"].map((w) => [w, "can"] as const),
    ...["package", "pkg", "packet", "envelopes", "sachet"].map((w) => [w, "packet"] as const),
    ...["bunches", "bunch"].map((w) => [w, "bunch"] as const),
    ["rashers", "rasher"],
    ["cloves", "clove"],
    ["stalks", "stalk"],
    ["ribs", "stalk"],
    ["handfuls", "handful"],
    ["knob", "knob"],
    ["dashes", "dash"],
  ];
  it.each(WORDS)("%s is %s", (word, name) => expect(findUnit(word)?.name).toBe(name));
  it.each(["", "cupboard", "gr8", "tt", "onion", "litres of"])("%j is no unit", (word) =>
    expect(findUnit(word)).toBeUndefined(),
  );
  it("reads pints and fluid ounces by where the writer is", () => {
    expect([findUnit("pint")?.factor, findUnit("pint", true)?.factor]).toEqual([473.176473, 568.26125]);
    expect([findUnit("fl oz")?.factor, findUnit("fl oz", true)?.factor]).toEqual([29.5735295625, 28.4130625]);
    expect(findUnit("imperial pint")?.factor).toBe(568.26125);
    expect(findUnit("US pint", true)?.factor).toBe(473.176473);
    expect([
      findUnit("metric cup")?.factor,
      findUnit("metric tablespoon")?.factor,
      findUnit("Australian tablespoon")?.factor,
    ]).toEqual([250, 15, 20]);
  });
});

/** value or [low, high], unit, what one holds, the same in another unit, size, what is left */
const AMOUNTS: readonly (readonly [string, string])[] = [
  ["2 x 400 g tins chopped tomatoes", "2 can each 400 g | chopped tomatoes"],
  ["2x400g tins tomatoes", "2 can each 400 g | tomatoes"],
  ["2 × 400g tomatoes", "2 - each 400 g | tomatoes"],
  ["2 (14.5 oz) cans tomatoes", "2 can each 14.5 oz | tomatoes"],
  ["1 (400 g/14 oz) tin tomatoes", "1 can each 400 g | tomatoes"],
  ["1 15-oz can beans", "1 can each 15 oz | beans"],
  ["1 - 15 oz can beans", "1 can each 15 oz | beans"],
  ["1 12 oz. jar peppers", "1 jar each 12 oz | peppers"],
  ["two 400g tins beans", "2 can each 400 g | beans"],
  ["a 400 g tin of tomatoes", "1 can each 400 g | tomatoes"],
  ["half a 400 g tin of beans", "0.5 can each 400 g | beans"],
  ["400g tin tomatoes", "1 can each 400 g | tomatoes"],
  ["2 cans (15 oz each) beans", "2 can each 15 oz | beans"],
  ["1 (.25 oz) package yeast", "1 packet each 0.25 oz | yeast"],
  ["2 6-oz salmon fillets", "2 - each 6 oz | salmon fillets"],
  ["200 g / 7 oz butter", "200 g also 7 oz | butter"],
  ["500g/1lb 2oz potatoes", "500 g also 1.125 lb | potatoes"],
  ["1 cup (240 ml) milk", "1 cup also 240 ml | milk"],
  ["1 cup or 240 ml milk", "1 cup also 240 ml | milk"],
  ["2 tsp or 1 tbsp oil", "2..3 tsp | oil"],
  ["1 lb 2 oz beef", "1.125 lb | beef"],
  ["1 cup plus 2 tbsp flour", "1.125 cup | flour"],
  ["1 cup minus 1 tbsp milk", "0.9375 cup | milk"],
  ["2-3 cloves", "2..3 clove | "],
  ["2 – 3 cups flour", "2..3 cup | flour"],
  ["2 to 3 eggs", "2..3 - | eggs"],
  ["2 or 3 eggs", "2..3 - | eggs"],
  ["100 g to 150 g flour", "100..150 g | flour"],
  ["1 tsp to 1 tbsp salt", "1..3 tsp | salt"],
  ["1 1/2 to 2 cups flour", "1.5..2 cup | flour"],
  ["a few sprigs thyme", "2..4 sprig | thyme"],
  ["a 2-inch piece of ginger", "1 piece each 2 inch | ginger"],
  ['2" piece ginger', "1 piece each 2 inch | ginger"],
  ["1 x 5cm piece ginger", "1 piece each 5 cm | ginger"],
  ["1 (2-inch) piece ginger", "1 piece each 2 inch | ginger"],
  ["a thumb-sized piece of ginger", "1 knob | ginger"],
  ["1 3- to 4-pound chicken", "1 - each 3.5 lb | chicken"],
  ["200 g/7 oz/1 cup sugar", "200 g also 7 oz | sugar"],
  ["1 tbsp each parsley and chives", "1 tbsp | parsley and chives"],
  ["2 large eggs", "2 - large | eggs"],
  ["2 extra-large eggs", "2 - extra-large | eggs"],
  ["3 medium-sized carrots", "3 - medium | carrots"],
  ["1 large bunch kale", "1 bunch large | kale"],
  ["a small handful of parsley", "1 handful small | parsley"],
  ["pinch of salt", "1 pinch | salt"],
  ["a knob of butter", "1 knob | butter"],
  ["2 tablespoon(s) oil", "2 tbsp | oil"],
  ["1 heaped tsp cumin", "1.5 tsp | cumin"],
  ["about 2 cups milk", "2 cup | milk"],
  ["~200 g flour", "200 g | flour"],
  ["three quarters of a cup milk", "0.75 cup | milk"],
];
function told(text: string): string {
  const q = readQuantity(text);
  if (q === undefined) return "none";
  const value = q.low === q.high ? String(q.value) : `${q.low}..${q.high}`;
  const parts = [value, q.unit?.name ?? "-"];
  if (q.each) parts.push("each", String(q.each.value), q.each.unit?.name ?? "-");
  if (q.also) parts.push("also", String(q.also.value), q.also.unit?.name ?? "-");
  if (q.size) parts.push(q.size);
  return `${parts.join(" ")} | ${text.slice(q.end).trim()}`;
}
describe("amounts", () => {
  it.each(AMOUNTS)("%s", (text, expected) => expect(told(text)).toBe(expected));
  it.each(["5-spice powder", "five spice", "7-grain bread", "00 flour", "half-and-half", "flour", "", "(", "2%"])(
    "%j begins with no amount",
    (text) => expect(readQuantity(text)).toBeUndefined(),
  );
  it("takes pints as imperial when told", () => {
    expect(readQuantity("1 pint milk", 0, { imperial: true })?.unit?.factor).toBe(568.26125);
  });
});

describe("kitchen measures", () => {
  it("has the spoons a kitchen has", () => {
    expect(spoonsFor(5).map((m) => [m.amount, m.unit])).toEqual([[1, "tsp"]]);
    expect(spoonsFor(15).map((m) => [m.amount, m.unit])).toEqual([[1, "tbsp"]]);
    expect(spoonsFor(0.3)[0]).toMatchObject({ amount: 1, unit: "pinch" });
    expect(cupFor(80)).toMatchObject({ amount: 1 / 3, unit: "cup" });
    expect(cupFor(30)).toBeUndefined();
  });
  it("rounds weights and volumes as a scale or jug is read", () => {
    expect([7.4, 23, 117, 512, 1234].map((g) => metricMassFor(g).base)).toEqual([7, 25, 120, 500, 1250]);
    expect(metricMassFor(1234)).toMatchObject({ amount: 1.25, unit: "kg" });
    expect(metricVolumeFor(1000)).toMatchObject({ amount: 1, unit: "l" });
    expect(usMassFor(453.59237)).toMatchObject({ amount: 1, unit: "lb" });
    expect(usMassFor(113.4)).toMatchObject({ amount: 4, unit: "oz" });
    expect(usMassFor(2)).toBeUndefined();
  });
  it("writes plurals right", () => {
    expect([
      measureText(1.5, "tbsp"),
      measureText(2, "cup"),
      measureText(1, "cup"),
      measureText(0.5, "cup"),
      measureText(3, "clove"),
      measureText(250, "g"),
      measureText(1, "pinch"),
      measureText(2, "pinch"),
      measureText(2, "piece"),
      measureText(2, "piece", "large"),
      measureText(3, "piece", "sprig"),
      measureText(2, "piece", "leaf"),
      measureText(2, "can", "large"),
      measureText(1, "cup", "chopped"),
      measureText(2, "bunch"),
      measureText(1.5, "piece", "head"),
      measureText(2.5, "clove", "", [2, 3]),
    ]).toEqual([
      "1 1/2 tbsp",
      "2 cups",
      "1 cup",
      "1/2 cup",
      "3 cloves",
      "250 g",
      "a pinch",
      "2 pinches",
      "2",
      "2 large",
      "3 sprigs",
      "2 leaves",
      "2 large cans",
      "1 cup chopped",
      "2 bunches",
      "1 1/2 heads",
      "2 to 3 cloves",
    ]);
  });
  it("takes the nearest step, the larger on a tie", () => {
    expect([nearestStep(1.2, [1, 1.5, 2]), nearestStep(1.25, [1, 1.5, 2]), nearestStep(9, [1, 2])]).toEqual([
      1, 1.5, 2,
    ]);
  });
});
