import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { openCatalogue } from "../../src/index.js";
import { storeOf } from "../../src/catalogue/index.js";
import { AXES, TASTES, carrierAmount, carrierOf, dose, perceived, umami } from "../../src/dose/index.js";
import { readAsk } from "../../src/swap/ask.js";
import { strengths } from "../../src/swap/felt.js";
import type { RoleId } from "../../src/types.js";

const c = openCatalogue();
const store = storeOf(c);
const any = fc.constantFrom(...store.ingredients);
const grams = fc.double({ min: 0.5, max: 2000, noNaN: true });
const runs = { numRuns: 400, seed: 20261125 };
const close = (a: number, b: number, relative = 1e-9): boolean =>
  Math.abs(a - b) <= relative * Math.max(1, Math.abs(a), Math.abs(b));

describe("perceived strength", () => {
  it("more is never less, and stays between 0 and 9", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...TASTES),
        fc.double({ min: 0, max: 1e5, noNaN: true }),
        fc.double({ min: 0, max: 1e5, noNaN: true }),
        (taste, a, b) => {
          const [low, high] = a < b ? [a, b] : [b, a];
          expect(perceived(taste, low)).toBeLessThanOrEqual(perceived(taste, high));
          expect(perceived(taste, high)).toBeGreaterThanOrEqual(0);
          expect(perceived(taste, high)).toBeLessThanOrEqual(9);
        },
      ),
      runs,
    );
  });
});

describe("conservation", () => {
  const ask = readAsk(c, { missing: "100 g rice", dish: { grams: 2000 } });
  it("a heap tastes the same however it is split", () => {
    fc.assert(
      fc.property(any, grams, fc.double({ min: 0.01, max: 0.99, noNaN: true }), (i, g, share) => {
        const whole = strengths(ask, [{ ingredient: i, grams: g }]);
        const split = strengths(ask, [
          { ingredient: i, grams: g * share },
          { ingredient: i, grams: g * (1 - share) },
        ]);
        for (const taste of TASTES)
          expect(
            Object.is(whole[taste], split[taste]) || close(whole[taste], split[taste], 1e-7),
            `${i.id} ${taste}`,
          ).toBe(true);
      }),
      runs,
    );
  });
  it("two things taste of the sum of their doses, unknown when either is, in any order", () => {
    fc.assert(
      fc.property(any, any, grams, grams, (a, b, ga, gb) => {
        const parts = [
          { ingredient: a, grams: ga },
          { ingredient: b, grams: gb },
        ];
        const both = strengths(ask, parts);
        const turned = strengths(ask, [...parts].reverse());
        for (const taste of TASTES) {
          expect(Object.is(both[taste], turned[taste]) || close(both[taste], turned[taste], 1e-7)).toBe(true);
          if (taste === "umami") continue;
          const concentration = ((dose(store, a, taste) * ga + dose(store, b, taste) * gb) * 100) / ask.dishGrams;
          const expected = Number.isNaN(concentration) ? Number.NaN : perceived(taste, concentration);
          expect(
            Object.is(both[taste], expected) || close(both[taste], expected, 1e-7),
            `${a.id} ${b.id} ${taste}`,
          ).toBe(true);
        }
      }),
      runs,
    );
  });
  it("a share of the dish: twice the dish, half the concentration", () => {
    fc.assert(
      fc.property(any, grams, (i, g) => {
        const small = strengths({ ...ask, dishGrams: 500 }, [{ ingredient: i, grams: g }]);
        const large = strengths({ ...ask, dishGrams: 1000 }, [{ ingredient: i, grams: 2 * g }]);
        for (const taste of TASTES)
          expect(Object.is(small[taste], large[taste]) || close(small[taste], large[taste], 1e-7)).toBe(true);
      }),
      runs,
    );
  });
  it("every dose is finite or NaN", () => {
    for (const i of store.ingredients)
      for (const axis of AXES) expect(Math.abs(dose(store, i, axis)), `${i.id} ${axis}`).not.toBe(Infinity);
  });
});

describe("umami", () => {
  const amount = fc.double({ min: 1e-6, max: 1, noNaN: true });
  it("each of the two makes it stronger, and together more than apart", () => {
    fc.assert(
      fc.property(amount, amount, amount, (g, n, more) => {
        expect(umami(g + more, n)).toBeGreaterThan(umami(g, n));
        expect(umami(g, n + more)).toBeGreaterThan(umami(g, n));
        expect(umami(g, n)).toBeGreaterThan(umami(g, 0) + umami(0, n));
      }),
      runs,
    );
  });
});

describe("amount by the carrier", () => {
  const roles = (store.terms["role"] ?? []) as readonly RoleId[];
  it("there and back again: a by b by a is a, for every role", () => {
    let met = 0;
    fc.assert(
      fc.property(any, any, fc.constantFrom(...roles), grams, (a, b, role, g) => {
        const dish = 20 * g + 500;
        const there = carrierAmount(store, a, g, b, role, dish);
        if (Number.isNaN(there)) return;
        met++;
        const back = carrierAmount(store, b, there, a, role, dish);
        expect(Math.abs(back / g - 1), `${a.id} ${b.id} ${role}`).toBeLessThan(1e-6);
      }),
      { ...runs, numRuns: 4000 },
    );
    expect(met).toBeGreaterThan(500);
  });
  it("umami: what is found satisfies Yamaguchi's equation at the dish's concentration, whatever the pair", () => {
    const savoury = store.ingredients.filter((i) => dose(store, i, "glutamate") > 0);
    expect(savoury.length).toBeGreaterThan(100);
    fc.assert(
      fc.property(
        fc.constantFrom(...savoury),
        fc.constantFrom(...savoury),
        fc.double({ min: 0.5, max: 100, noNaN: true }),
        (a, b, g) => {
          const dish = 1000;
          const at = (i: typeof a, x: number): number =>
            umami(
              (dose(store, i, "glutamate") * x * 100) / dish,
              ((dose(store, i, "nucleotide") || 0) * x * 100) / dish,
            );
          const x = carrierAmount(store, a, g, b, "umami seasoning", dish);
          expect(x).toBeGreaterThan(0);
          expect(Math.abs(at(b, x) / at(a, g) - 1), `${a.id} ${b.id}`).toBeLessThan(1e-6);
        },
      ),
      runs,
    );
  });
  it("brings exactly as much of the carrier", () => {
    fc.assert(
      fc.property(any, any, fc.constantFrom(...roles), grams, (a, b, role, g) => {
        const carrier = carrierOf(store, role);
        const x = carrierAmount(store, a, g, b, role, 5000);
        if (Number.isNaN(x) || carrier === "umami" || carrier === "served weight") return;
        const axis = carrier as (typeof AXES)[number];
        expect(close(dose(store, a, axis) * g, dose(store, b, axis) * x, 1e-9)).toBe(true);
      }),
      { ...runs, numRuns: 2000 },
    );
  });
});
