import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { openCatalogue } from "../../src/index.js";
import { storeOf } from "../../src/catalogue/index.js";
import { portionOf } from "../../src/portion/index.js";

const store = storeOf(openCatalogue());
const spooned = store.ingredients.filter((i) =>
  i.measures.some((m) => (m.unit === "tsp" || m.unit === "tbsp") && m.label === ""),
);

describe("amounts below what spoons measure", () => {
  it("are a pinch of whatever has a spoon, never tenths of a gram or a drop in a jug", () => {
    expect(spooned.length).toBeGreaterThan(500);
    fc.assert(
      fc.property(fc.constantFrom(...spooned), fc.double({ min: 0.02, max: 0.25, noNaN: true }), (i, ml) => {
        const tsp = i.measures.find((m) => m.unit === "tsp" || m.unit === "tbsp");
        const perMl = (tsp?.grams ?? 5) / (tsp?.unit === "tbsp" ? 14.787 : 4.929);
        const { text, unit } = portionOf(store, i, ml * perMl).measure;
        expect(text, i.id).not.toMatch(/^0\./);
        expect(["pinch", "tsp", "piece", "clove", "slice", "stick"], `${i.id} ${text}`).toContain(unit);
      }),
      { numRuns: 600, seed: 7 },
    );
  });
});
