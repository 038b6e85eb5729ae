import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { openCatalogue, storeOf, type Ingredient, type Store } from "../../src/catalogue/index.js";
import { aromaLikeness, customLikeness, kinLikeness, textureLikeness, type Stage } from "../../src/likeness/index.js";

const store = storeOf(openCatalogue());
const any = fc.constantFrom(...store.ingredients);
const stage = fc.constantFrom<Stage>("raw", "cooked", "long");
const runs = { numRuns: 1000, seed: 20261125 };
const within = (v: number): boolean => v >= 0 && v <= 1;

describe("likeness, for any two ingredients", () => {
  it("texture: the same both ways, 0 to 1, 1 with itself", () => {
    fc.assert(
      fc.property(any, any, stage, (a, b, s) => {
        const there = textureLikeness(store, a, b, s);
        const back = textureLikeness(store, b, a, s);
        expect(there).toBe(back);
        if (there !== undefined) expect(within(there)).toBe(true);
        const self = textureLikeness(store, a, a, s);
        if (self !== undefined) expect(self).toBe(1);
      }),
      runs,
    );
  });
  it("kin: the same both ways, 0 to 1, and 1 only with itself", () => {
    fc.assert(
      fc.property(any, any, (a, b) => {
        expect(kinLikeness(a, b)).toBe(kinLikeness(b, a));
        expect(within(kinLikeness(a, b))).toBe(true);
        if (a.id !== b.id) expect(kinLikeness(a, b)).toBeLessThan(1);
      }),
      runs,
    );
  });
  it("aroma and custom stay within 0 and 1", () => {
    fc.assert(
      fc.property(any, any, (a, b) => {
        expect(within(aromaLikeness(store, a, b))).toBe(true);
        expect(within(customLikeness(a, b))).toBe(true);
      }),
      runs,
    );
  });
  it("aroma is not symmetric: for a fair share of pairs that differ, the two ways differ", () => {
    let different = 0;
    let asymmetric = 0;
    fc.assert(
      fc.property(any, any, (a, b) => {
        const there = aromaLikeness(store, a, b);
        const back = aromaLikeness(store, b, a);
        if (there === 1 || there === 0) return;
        different++;
        if (Math.abs(there - back) > 1e-9) asymmetric++;
      }),
      runs,
    );
    expect(different).toBeGreaterThan(50);
    expect(asymmetric / different).toBeGreaterThan(0.5);
  });
});

// Profiles made up, so that the direction is known: `more` has every note of `less` and one of its own.
describe("aroma, on made-up profiles", () => {
  const aromas = store.terms["aroma"] ?? [];
  const shelf = (
    profiles: readonly Readonly<Record<string, number>>[],
  ): { store: Store; items: readonly Ingredient[] } => {
    const items = profiles.map((aroma, index) => ({ index, aroma, texture: {} }) as unknown as Ingredient);
    return {
      store: { size: items.length, ingredients: items, terms: { aroma: aromas, texture: [] } } as unknown as Store,
      items,
    };
  };
  const level = fc.integer({ min: 1, max: 9 });
  const profile = fc.dictionary(fc.constantFrom(...aromas.slice(0, 20)), level, { minKeys: 1, maxKeys: 6 });
  const extra = fc.constantFrom(...aromas.slice(20));

  it("a note gained costs more than the same note lost", () => {
    fc.assert(
      fc.property(profile, extra, level, (less, note, strength) => {
        const made = shelf([less, { ...less, [note]: strength }]);
        const [plain, noted] = made.items;
        if (!plain || !noted) return;
        const gaining = aromaLikeness(made.store, plain, noted);
        const losing = aromaLikeness(made.store, noted, plain);
        expect(gaining).toBeLessThanOrEqual(losing);
        if (losing > 0 && losing < 1) expect(gaining).toBeLessThan(losing);
      }),
      runs,
    );
  });
  it("the stronger the alien note, the less alike", () => {
    fc.assert(
      fc.property(profile, extra, fc.integer({ min: 1, max: 8 }), (less, note, strength) => {
        const made = shelf([less, { ...less, [note]: strength }, { ...less, [note]: strength + 1 }]);
        const [plain, weak, strong] = made.items;
        if (!plain || !weak || !strong) return;
        expect(aromaLikeness(made.store, plain, strong)).toBeLessThanOrEqual(
          aromaLikeness(made.store, plain, weak) + 1e-12,
        );
      }),
      runs,
    );
  });
  it("the further apart in strength, the less alike", () => {
    fc.assert(
      fc.property(
        profile,
        fc.double({ min: 1, max: 3, noNaN: true }),
        fc.double({ min: 1, max: 3, noNaN: true }),
        (one, k, l) => {
          const times = (f: number) => Object.fromEntries(Object.entries(one).map(([note, v]) => [note, v * f]));
          const made = shelf([one, times(k), times(k * l)]);
          const [a, near, far] = made.items;
          if (!a || !near || !far) return;
          expect(aromaLikeness(made.store, a, far)).toBeLessThanOrEqual(aromaLikeness(made.store, a, near) + 1e-12);
          expect(aromaLikeness(made.store, far, a)).toBeLessThanOrEqual(aromaLikeness(made.store, near, a) + 1e-12);
        },
      ),
      runs,
    );
  });
});
