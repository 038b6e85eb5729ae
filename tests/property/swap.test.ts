import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { findFood, listFoods, openCatalogue, swapsFor, vocabulary } from "../../src/index.js";

const c = openCatalogue();
const ids = listFoods(c).map((f) => f.id);
const anyId = fc.constantFrom(...ids);
const runs = { numRuns: 60, seed: 20261125 };
const grams = (id: string, g: number) => swapsFor(c, { missing: id, amount: `${g} g`, limit: 8 });

const weighed = (unit: string): boolean => ["g", "kg", "oz", "lb"].includes(unit);

describe("swaps, for any ingredient", () => {
  it("the same request gives the same answer in the same order", () => {
    fc.assert(
      fc.property(anyId, (id) => {
        expect(JSON.stringify(grams(id, 100))).toBe(JSON.stringify(grams(id, 100)));
      }),
      runs,
    );
  });
  it("an ingredient is never offered for itself", () => {
    fc.assert(
      fc.property(anyId, (id) => {
        expect(grams(id, 100).swaps.some((s) => s.use.length === 1 && s.use[0].id === id)).toBe(false);
      }),
      runs,
    );
  });
  it("twice as much is missing: twice as much stands in, in the same order", () => {
    fc.assert(
      fc.property(anyId, fc.integer({ min: 40, max: 400 }), (id, g) => {
        const one = grams(id, g);
        const two = grams(id, 2 * g);
        expect(two.swaps.map((s) => s.use.map((u) => u.id))).toEqual(one.swaps.map((s) => s.use.map((u) => u.id)));
        two.swaps.forEach((s, i) => {
          const other = one.swaps[i]?.use[0];
          const half = other?.grams ?? 0;
          // Grams on a scale are as bought, with bone and shell; those of cups and pieces are not.
          if (weighed(s.use[0].measure.unit) !== weighed(other?.measure.unit ?? "g")) return;
          // both are rounded to 0.1 g on their own
          expect(Math.abs(s.use[0].grams - 2 * half)).toBeLessThanOrEqual(0.31);
        });
      }),
      runs,
    );
  });
  it("the score is the weighted mean of its parts, exactly as printed", () => {
    fc.assert(
      fc.property(anyId, (id) => {
        for (const s of grams(id, 100).swaps) {
          const weight = s.parts.reduce((a, p) => a + p.weight, 0);
          const mean = s.parts.reduce((a, p) => a + p.value * p.weight, 0) / weight;
          expect(Math.abs(s.score - mean)).toBeLessThan(0.5e-4 + 1e-9);
        }
      }),
      runs,
    );
  });
  it("scores fall from first to last, grams are finite and above 0, results are frozen and survive JSON", () => {
    fc.assert(
      fc.property(anyId, (id) => {
        const advice = grams(id, 100);
        const scores = advice.swaps.map((s) => s.score);
        expect([...scores].sort((a, b) => b - a)).toEqual(scores);
        for (const s of advice.swaps) for (const u of s.use) expect(Number.isFinite(u.grams) && u.grams > 0).toBe(true);
        expect(Object.isFrozen(advice) && advice.swaps.every((s) => Object.isFrozen(s.use[0].measure))).toBe(true);
        expect(JSON.parse(JSON.stringify(advice))).toEqual(advice);
      }),
      runs,
    );
  });
  it("an avoided allergen never comes back, and avoiding more never offers something new", () => {
    fc.assert(
      fc.property(anyId, fc.constantFrom(...vocabulary.allergen), (id, allergen) => {
        const all = swapsFor(c, { missing: id, amount: "100 g", limit: 200 });
        const safe = swapsFor(c, { missing: id, amount: "100 g", limit: 200, avoid: { allergens: [allergen] } });
        for (const s of safe.swaps) {
          expect(s.allergens.gained).not.toContain(allergen);
          expect(s.allergens.kept).not.toContain(allergen);
          expect(s.allergens.unknown).not.toContain(allergen);
        }
        if (all.swaps.length < 200) {
          const offered = new Set(all.swaps.map((s) => s.use.map((u) => u.id).join("+")));
          for (const s of safe.swaps) expect(offered.has(s.use.map((u) => u.id).join("+"))).toBe(true);
        }
      }),
      { ...runs, numRuns: 40 },
    );
  });
});

describe("finding", () => {
  it("never throws, and never returns a match under 0.6", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary", maxLength: 80 }), (text) => {
        for (const m of findFood(c, text)) expect(m.confidence).toBeGreaterThanOrEqual(0.6);
      }),
      { numRuns: 300, seed: 20261125 },
    );
  });
});
