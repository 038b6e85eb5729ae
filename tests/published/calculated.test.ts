import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { GROUPS, misses, quantile } from "../../data/tools/calculated.js";
import { readData } from "../../data/tools/read.js";
import { calculator } from "../../src/catalogue/authoring/calculated.js";
import { CURED, FORMS, RECIPES, type Pair } from "./calculated-pairs.js";

// How far a calculated composition is off: 76 foods that have a record in USDA SR28 or MEXT 2020, calculated as we calculate those that
// have none (data guide, "Calculated"), against that record. The bounds are what was measured, rounded up to the next half gram or 50 mg;
// nothing was set before and nothing adjusted after. They can only tell how the method does: which parts go into a product is judged, here
// as there. Half of the foods are nearer than the first number, nine in ten nearer than the second; g per 100 g, sodium mg.
type Bounds = Readonly<Record<string, readonly [half: number, most: number]>>;
const MEASURED: Readonly<Record<string, Bounds>> = {
  "another form of the same food": {
    protein: [1.5, 6],
    fat: [1, 4],
    carbohydrate: [2, 10],
    sugars: [3, 17.5],
    fibre: [1, 10.5],
    sodium: [50, 200],
  },
  "cured and smoked": { protein: [3.5, 6], fat: [3, 7.5], sodium: [100, 2500] },
  recipes: {
    water: [3, 8.5],
    protein: [0.5, 1.5],
    fat: [1, 5.5],
    carbohydrate: [2, 6.5],
    sugars: [3, 6.5],
    fibre: [0.5, 23.5],
    sodium: [50, 400],
  },
};

const data = readData(join(import.meta.dirname, "../../data"));
const { authored, look } = data;
const calculate = calculator(authored, look);
const errors = (pairs: readonly Pair[], figure: string, shift = 0): number[] =>
  misses(data, pairs, figure, shift).map((m) => m.by);

describe("calculated composition against the record", () => {
  it("every pair has a record, its parts are known and make the whole", () => {
    const all = [...FORMS, ...CURED, ...RECIPES];
    expect(all).toHaveLength(76);
    expect(new Set(all.map(([record]) => record)).size).toBe(all.length);
    for (const [record, what, parts] of all) {
      expect(look(record), what).toBeDefined();
      expect(calculate({ parts }), what).toBeDefined();
      expect(Object.values(parts).reduce((a, b) => a + b, 0)).toBeCloseTo(1, 6);
    }
  });
  for (const [title, within] of Object.entries(MEASURED)) {
    const pairs = GROUPS[title] ?? [];
    it.each(Object.entries(within))(`${title}: %s`, (figure, [half, most]) => {
      const list = errors(pairs, figure);
      expect(list.length / pairs.length).toBeGreaterThan(0.55);
      expect(quantile(list, 0.5)).toBeLessThanOrEqual(half);
      expect(quantile(list, 0.9)).toBeLessThanOrEqual(most);
    });
  }
  it("and that is no accident: against the next food's record half are off by several times as much", () => {
    for (const figure of ["protein", "fat", "carbohydrate"]) {
      expect(quantile(errors(FORMS, figure, 18), 0.5)).toBeGreaterThan(3 * quantile(errors(FORMS, figure), 0.5));
      expect(quantile(errors(RECIPES, figure, 7), 0.5)).toBeGreaterThan(3 * quantile(errors(RECIPES, figure), 0.5));
    }
  });
});
