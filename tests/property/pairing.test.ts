import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { recordedPairings, storeOf } from "../../src/catalogue/index.js";
import { listFoods, openCatalogue, pairingsFor } from "../../src/index.js";
import { recordsOf } from "../../src/pairing/recorded.js";
import { readAvoid, refusalFor } from "../../src/safety/index.js";

const c = openCatalogue();
const store = storeOf(c);
const anyId = fc.constantFrom(...listFoods(c).map((f) => f.id));
const records = recordsOf(store);
const runs = { numRuns: 80 };

describe("pairings, for any ingredient", () => {
  it("a recorded pairing serves both: each is found from the other", () => {
    expect(records).toHaveLength(recordedPairings().length);
    fc.assert(
      fc.property(fc.constantFrom(...records), ({ sides: [a, b] }) => {
        const from = (one: typeof a, other: typeof a): void => {
          const found = pairingsFor(c, { food: one.shown.id, limit: 200 }).pairings.find(
            (p) => p.with.id === other.shown.id,
          );
          expect(found?.basis).toBeDefined();
          expect(found?.basis).not.toBe("computed");
        };
        from(a, b);
        from(b, a);
      }),
      { numRuns: 300 },
    );
  });
  it("the same request gives the same answer, from a catalogue opened anew as well", () => {
    const again = openCatalogue();
    fc.assert(
      fc.property(anyId, fc.subarray(["potato", "lemon", "butter", "kale", "egg"]), (food, have) => {
        const first = JSON.stringify(pairingsFor(c, { food, have }));
        expect(JSON.stringify(pairingsFor(c, { food, have }))).toBe(first);
        expect(JSON.stringify(pairingsFor(again, { food, have }))).toBe(first);
      }),
      runs,
    );
  });
  it("what is avoided is never there, and each refusal has its reason", () => {
    fc.assert(
      fc.property(
        anyId,
        fc.subarray(["milk", "egg", "fish", "tree nuts", "wheat", "soy"] as const),
        fc.subarray(["vegan", "no pork", "halal", "coeliac"] as const),
        fc.array(anyId, { maxLength: 5 }),
        (food, allergens, diets, have) => {
          const avoid = { allergens, diets };
          const rules = readAvoid(store, avoid, () => []);
          const advice = pairingsFor(c, { food, avoid, have, limit: 40 });
          for (const { with: other } of advice.pairings) {
            const i = store.byId.get(other.id);
            expect(i && refusalFor(store, i, rules)).toBeUndefined();
          }
          for (const r of advice.refused) expect(r.detail).not.toBe("");
        },
      ),
      runs,
    );
  });
  it("avoiding only takes away: what is left keeps its order", () => {
    fc.assert(
      fc.property(anyId, (food) => {
        const all = pairingsFor(c, { food, limit: 200 }).pairings.map((p) => p.with.id);
        const without = pairingsFor(c, { food, limit: 200, avoid: { allergens: ["milk"] } }).pairings.map(
          (p) => p.with.id,
        );
        expect(all.filter((id) => without.includes(id))).toEqual(without);
      }),
      runs,
    );
  });
  it("scores fall from first to last, recorded before computed, each food once and never itself", () => {
    fc.assert(
      fc.property(
        anyId,
        fc.option(fc.constantFrom(...(store.terms["tradition"] ?? [])), { nil: undefined }),
        (food, cuisine) => {
          const { pairings } = pairingsFor(c, { food, limit: 200, ...(cuisine === undefined ? {} : { cuisine }) });
          const scores = pairings.map((p) => p.score);
          expect([...scores].sort((a, b) => b - a)).toEqual(scores);
          for (const p of pairings) {
            expect(p.score > 0.6).toBe(p.basis !== "computed");
            expect(p.score).toBeGreaterThan(0);
            expect(p.score).toBeLessThanOrEqual(1);
            expect(p.with.id).not.toBe(food);
          }
          expect(new Set(pairings.map((p) => p.with.id)).size).toBe(pairings.length);
        },
      ),
      runs,
    );
  });
  it("a smaller limit is the start of a larger one", () => {
    fc.assert(
      fc.property(anyId, fc.integer({ min: 1, max: 30 }), (food, limit) => {
        const all = pairingsFor(c, { food, limit: 200 }).pairings;
        expect(pairingsFor(c, { food, limit }).pairings).toEqual(all.slice(0, limit));
      }),
      runs,
    );
  });
});
