import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { readData } from "../../data/tools/read.js";
import { calculator } from "../../src/catalogue/authoring/calculated.js";
import { COOKED_DOWN, CURED, FORMS, RECIPES, type Pair } from "./calculated-pairs.js";

// How far a calculated composition is off: 76 foods that have a record in USDA SR28 or MEXT 2020, calculated as we calculate those that
// have none (data guide, "Calculated"), against that record. The bounds are what was measured, rounded up to the next half gram or 50 mg;
// nothing was set before and nothing adjusted after. They can only tell how the method does: which parts go into a product is judged, here
// as there. Half of the foods are nearer than the first number, nine in ten nearer than the second; g per 100 g, sodium mg.
interface Measured {
  readonly pairs: readonly Pair[];
  readonly within: Readonly<Record<string, readonly [half: number, most: number]>>;
}
const MEASURED: Readonly<Record<string, Measured>> = {
  "another form of the same food": {
    pairs: FORMS,
    within: {
      protein: [1.5, 6],
      fat: [1, 4],
      carbohydrate: [2, 10],
      sugars: [3, 17.5],
      fibre: [1, 10.5],
      sodium: [50, 200],
    },
  },
  "cured and smoked": {
    pairs: CURED,
    within: { protein: [3.5, 6], fat: [3, 7.5], sodium: [100, 2500] },
  },
  recipes: {
    pairs: RECIPES,
    within: {
      water: [3, 8.5],
      protein: [0.5, 1.5],
      fat: [1, 5.5],
      carbohydrate: [2, 6.5],
      sugars: [3, 6.5],
      fibre: [0.5, 23.5],
      sodium: [50, 400],
    },
  },
};

const { authored, look } = readData(join(import.meta.dirname, "../../data"));
const calculate = calculator(authored, look);

/** Water is given where drying, curing or cooking drives it off: then it is the record's own and no test. */
const known = (pairs: readonly Pair[], record: string): boolean => pairs !== RECIPES || COOKED_DOWN.includes(record);
/** How far each food is off in one figure, compared with the record of the one `shift` places further on. */
function errors(pairs: readonly Pair[], figure: string, shift = 0): number[] {
  return pairs.flatMap(([own, , parts], k) => {
    if (figure === "water" && known(pairs, own)) return [];
    const record = look(pairs[(k + shift) % pairs.length]?.[0] ?? "")?.figures ?? {};
    const water = look(own)?.figures["water"] ?? 0;
    const made = calculate({ parts, ...(known(pairs, own) ? { water: { v: water, from: "record" } } : {}) });
    const [a, b] = [made?.figures[figure], record[figure]];
    return a === undefined || b === undefined ? [] : [Math.abs(a - b)];
  });
}
const at = (list: readonly number[], share: number): number =>
  [...list].sort((a, b) => a - b)[Math.ceil(share * list.length) - 1] ?? Number.NaN;

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
  for (const [title, { pairs, within }] of Object.entries(MEASURED)) {
    it.each(Object.entries(within))(`${title}: %s`, (figure, [half, most]) => {
      const list = errors(pairs, figure);
      expect(list.length / pairs.length).toBeGreaterThan(0.55);
      expect(at(list, 0.5)).toBeLessThanOrEqual(half);
      expect(at(list, 0.9)).toBeLessThanOrEqual(most);
    });
  }
  it("and that is no accident: against the next food's record half are off by several times as much", () => {
    for (const figure of ["protein", "fat", "carbohydrate"]) {
      expect(at(errors(FORMS, figure, 18), 0.5)).toBeGreaterThan(3 * at(errors(FORMS, figure), 0.5));
      expect(at(errors(RECIPES, figure, 7), 0.5)).toBeGreaterThan(3 * at(errors(RECIPES, figure), 0.5));
    }
  });
});
