import { describe, expect, it } from "vitest";
import { openCatalogue } from "../../src/index.js";
import { blendsFor, type Blend } from "../../src/swap/blend/index.js";
import { nnls, solve } from "../../src/swap/blend/solve.js";
import { readAsk } from "../../src/swap/ask.js";
import type { SwapRequest } from "../../src/types.js";

const c = openCatalogue();
const blends = (request: SwapRequest): Blend[] => blendsFor(readAsk(c, request));
const gramsOf = (blend: Blend | undefined, ids: readonly string[]): number =>
  (blend?.uses ?? []).filter((u) => ids.includes(u.ingredient.id)).reduce((s, u) => s + u.grams, 0);
const withAll = (list: readonly Blend[], groups: readonly (readonly string[])[]): Blend | undefined =>
  list.find((b) => groups.every((ids) => gramsOf(b, ids) > 0));

describe("solving by hand", () => {
  it("elimination: 2x + y = 5, x + 3y = 10 gives 1 and 3", () => {
    const [x, y] = solve(
      [
        [2, 1],
        [1, 3],
      ],
      [5, 10],
    );
    expect(x).toBeCloseTo(1, 12);
    expect(y).toBeCloseTo(3, 12);
  });
  it("elimination with a zero on the diagonal swaps rows", () => {
    expect(
      solve(
        [
          [0, 2],
          [4, 0],
        ],
        [6, 8],
      ),
    ).toEqual([2, 3]);
  });
  it("what a singular system cannot tell apart is zero, not infinite", () => {
    const x = solve(
      [
        [1, 1],
        [1, 1],
      ],
      [2, 2],
    );
    expect(x.every(Number.isFinite)).toBe(true);
    expect((x[0] ?? 0) + (x[1] ?? 0)).toBeCloseTo(2, 12);
  });
  it("a weight that would be negative is none at all, and the other takes its best alone", () => {
    // columns (1,0) and (1,1), target (2,-1): freely 3 and -1; with none below zero 2 and 0
    expect(nnls([1, 1, 1, 2], [2, 1], 2)).toEqual([2, 0]);
  });
  it("nothing helps: all weights are zero", () => expect(nnls([1, 0, 0, 1], [-1, -2], 2)).toEqual([0, 0]));
  it("the same part twice does not loop", () => {
    const x = nnls([4, 4, 4, 4], [8, 8], 2);
    expect((x[0] ?? 0) + (x[1] ?? 0)).toBeCloseTo(2, 9);
  });
});

const CREAM = ["heavy-cream/fresh", "butter/fresh-unsalted", "evaporated-milk/canned"];
describe("mixtures cooks know (common practice, no source)", () => {
  it("half-and-half is milk and something with its fat, about as much as was missing", () => {
    const blend = withAll(blends({ missing: "240 g half-and-half" }), [["milk/fresh"], CREAM]);
    expect(blend).toBeDefined();
    const total = blend?.uses.reduce((s, u) => s + u.grams, 0) ?? 0;
    expect(total).toBeGreaterThan(0.8 * 240);
    expect(total).toBeLessThan(1.2 * 240);
    expect(gramsOf(blend, ["milk/fresh"])).toBeGreaterThan(gramsOf(blend, CREAM));
  });
  // Extension tables print 1 to 4 tbsp molasses (21 g each, USDA SR28 19304) to a cup of sugar (200 g, 19335).
  it("brown sugar is sugar with molasses: 0.1 to 0.42 of the sugar by weight", () => {
    const blend = withAll(blends({ missing: "200 g brown sugar" }), [["sugar/pantry"], ["molasses/pantry"]]);
    const share = gramsOf(blend, ["molasses/pantry"]) / gramsOf(blend, ["sugar/pantry"]);
    expect(share).toBeGreaterThanOrEqual(0.1);
    expect(share).toBeLessThanOrEqual(0.42);
  });
  it("baking powder is soda and an acid", () => {
    const blend = withAll(blends({ missing: "9 g baking powder" }), [
      ["baking-soda/pantry"],
      ["cream-of-tartar/pantry"],
    ]);
    expect(blend).toBeDefined();
    expect(gramsOf(blend, ["cream-of-tartar/pantry"])).toBeGreaterThan(gramsOf(blend, ["baking-soda/pantry"]));
  });
});

describe("what a mixture may be made of", () => {
  it("only what is in the house, and water, when told so", () => {
    const have = ["milk", "butter", "sugar", "lemon juice"];
    const ask = readAsk(c, { missing: "240 g half-and-half", have, onlyFromHave: true });
    const allowed = new Set([...(ask.have ?? []), "water/pantry"]);
    const list = blendsFor(ask);
    expect(list.length).toBeGreaterThan(0);
    for (const blend of list)
      for (const u of blend.uses) expect(allowed.has(u.ingredient.id), u.ingredient.id).toBe(true);
  });
  it("nothing that tastes of fish makes cream", () => {
    for (const blend of blends({ missing: "240 g heavy cream" }))
      for (const u of blend.uses) expect(u.ingredient.dominant, u.ingredient.id).not.toContain("fish");
  });
  it("twice as much missing: the same parts, twice as much of each", () => {
    const one = blends({ missing: "100 g brown sugar" });
    const two = blends({ missing: "200 g brown sugar" });
    expect(two.length).toBe(one.length);
    two.forEach((b, k) =>
      b.uses.forEach((u, j) => {
        expect(u.ingredient.id).toBe(one[k]?.uses[j]?.ingredient.id);
        expect(u.grams / (one[k]?.uses[j]?.grams ?? Number.NaN)).toBeCloseTo(2, 9);
      }),
    );
  });
});
