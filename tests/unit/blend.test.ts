import { describe, expect, it } from "vitest";
import { openCatalogue, swapsFor } from "../../src/index.js";
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

/** The place of the first answer worked out without any table that has a part from each group (water and salt stand free), or 0. */
function placeOf(request: SwapRequest, groups: readonly (readonly string[])[]): number {
  const { swaps } = swapsFor(c, { limit: 15, evidence: "computed", ...request });
  const at = swaps.findIndex((s) => {
    const ids: string[] = s.use.map((u) => u.id).filter((id) => id !== "water/pantry" && id !== "salt/pantry");
    return ids.length <= groups.length + 1 && groups.every((g) => g.some((id) => ids.includes(id)));
  });
  return at + 1;
}
const SOURS = ["white-vinegar/pantry", "cider-vinegar/pantry", "lemon.juice/fresh", "lime.juice/fresh"];
const SUGARS = ["sugar/pantry", "brown-sugar/pantry", "honey/pantry", "molasses/pantry", "maple-syrup/pantry"];
const FATS = ["butter/fresh-unsalted", "butter/fresh-salted", "margarine/pantry", "vegetable-oil/pantry"];
const MILK = ["milk/fresh"];
const DRIED = ["milk/dried-powder", "nonfat-dry-milk/dried-instant"];
const FLOUR = ["all-purpose-flour/pantry"];
const SOY = ["soy-sauce/pantry"];
describe("mixtures worked out without any table, and where they stand (common practice, no source)", () => {
  it.each<readonly [missing: string, groups: readonly (readonly string[])[], place: number]>([
    ["1 cup buttermilk", [MILK, SOURS], 5],
    ["1 cup half-and-half", [MILK, FATS], 5],
    ["1 cup half-and-half", [MILK, ["heavy-cream/fresh"]], 5],
    ["1 cup evaporated milk", [DRIED], 5],
    ["1 cup milk", [DRIED], 5],
    ["1 cup heavy cream", [MILK, FATS], 5],
    ["1 cup sour cream", [["yogurt/fresh"], FATS], 5],
    ["1 cup creme fraiche", [["sour-cream/fresh"], FATS], 5],
    ["1 cup self-rising flour", [FLOUR, ["baking-powder/pantry"]], 1],
    ["1 cup cake flour", [FLOUR, ["cornstarch/pantry"]], 3],
    ["1 tsp baking powder", [["baking-soda/pantry"], ["cream-of-tartar/pantry"]], 5],
    ["1 cup honey", [["sugar/pantry", "brown-sugar/pantry"], ["maple-syrup/pantry"]], 5],
    ["1 cup honey", [["sugar/pantry", "brown-sugar/pantry"]], 5],
    ["1 cup corn syrup", [["sugar/pantry"]], 5],
    ["1 cup ketchup", [["tomato-paste/canned", "tomato-sauce/canned"], SUGARS], 5],
    ["1 tbsp chili powder", [["cayenne/dried-ground"], ["cumin/dried-ground"]], 5],
    ["1 tsp garam masala", [["cumin/dried-ground"], ["clove/dried-ground", "cinnamon/dried-ground"]], 5],
    [
      "1 tsp five-spice powder",
      [
        ["star-anise/dried", "star-anise/dried-ground"],
        ["cinnamon/dried-ground"],
        ["clove/dried-ground", "fennel-seed/dried-ground"],
      ],
      5,
    ],
    ["1 cup chicken broth", [["chicken-bouillon/pantry-cubes"]], 5],
    ["1 cup beef broth", [["beef-bouillon/pantry-cubes"]], 5],
    ["2 tbsp dark soy sauce", [SOY, SUGARS], 5],
    ["2 tbsp oyster sauce", [SOY, SUGARS], 5],
    ["1/4 cup teriyaki sauce", [SOY, SUGARS], 5],
    ["2 tbsp ponzu", [SOY, SOURS], 1],
    ["2 tbsp mirin", [["sake/pantry"], SUGARS], 5],
    ["1 tbsp tamarind paste", [SOURS, SUGARS], 5],
    ["2 tbsp pomegranate molasses", [SOURS, SUGARS], 5],
  ])("%s", (missing, groups, place) => {
    const at = placeOf({ missing }, groups);
    expect(at).toBeGreaterThan(0);
    expect(at).toBeLessThanOrEqual(place);
  });
  it("fish sauce for who eats no fish is soy sauce and salt", () => {
    expect(placeOf({ missing: "1 tbsp fish sauce", avoid: { diets: ["vegetarian"] } }, [SOY])).toBe(1);
  });
  it("dashi is kombu and bonito in water where the house has them: 10 to 60 g of flakes a litre", () => {
    const have = ["kombu", "bonito flakes", "soy sauce", "salt"];
    const { swaps } = swapsFor(c, { missing: "1 l dashi", have, onlyFromHave: true, evidence: "computed" });
    const grams = (id: string): number => swaps[0]?.use.find((u) => u.id === id)?.grams ?? 0;
    expect(grams("katsuobushi/dried-flakes")).toBeGreaterThan(10);
    expect(grams("katsuobushi/dried-flakes")).toBeLessThan(60);
    expect(grams("kombu/dried")).toBeGreaterThan(5);
    expect(grams("kombu/dried")).toBeLessThan(30);
    expect(grams("water/pantry")).toBeGreaterThan(900);
  });
});

describe("mixtures nobody would stir", () => {
  const parts = (missing: string): readonly (readonly string[])[] =>
    swapsFor(c, { missing, limit: 30, evidence: "computed" }).swaps.map((s) => s.use.map((u) => u.id));
  const NEITHER = ["water/pantry", "salt/pantry"];
  it.each(["1 tsp lemon juice", "1/2 cup rice vinegar", "1/2 oz bonito flakes", "2 oz queso fresco", "1 tsp cloves"])(
    "%s: no splash of water, no grain of salt or sugar beside one thing",
    (missing) => {
      for (const ids of parts(missing))
        if (ids.length > 1) expect(ids.filter((id) => ![...NEITHER, "sugar/pantry"].includes(id)).length).not.toBe(1);
    },
  );
  it("cinnamon is not mended with a grain of sugar", () => {
    for (const ids of parts("1 tsp pumpkin pie spice")) expect(ids).not.toContain("sugar/pantry");
  });
  it.each(["1/2 cup passion fruit", "1/2 cup tkemali"])("%s is not vinegar, sugar, salt and water", (missing) => {
    const BLAND = [...NEITHER, "sugar/pantry", "white-vinegar/pantry", "cider-vinegar/pantry", "soy-sauce/pantry"];
    for (const ids of parts(missing))
      if (ids.length > 1)
        expect(
          ids.every((id) => BLAND.includes(id)),
          ids.join(),
        ).toBe(false);
  });
  it("a raw sugar is another sugar before it is sugar with prunes or flour", () => {
    const [first, second] = parts("1/2 cup jaggery");
    expect(first).toHaveLength(1);
    expect(second).toHaveLength(1);
    expect(parts("1/2 cup jaggery").flat()).not.toContain("all-purpose-flour/pantry");
  });
  it("a syrup takes no vinegar and no butter", () => {
    for (const missing of ["1 cup corn syrup", "1 cup maple syrup"])
      for (const ids of parts(missing))
        if (ids.length > 1) for (const id of [...SOURS, ...FATS]) expect(ids).not.toContain(id);
  });
  it("cream takes no lemon that nobody measured in it", () => {
    for (const { uses } of blends({ missing: "240 g half-and-half" }))
      for (const u of uses) expect(SOURS).not.toContain(u.ingredient.id);
  });
  it("two sours are no nearer a third", () => {
    for (const { uses } of blends({ missing: "5 g cream of tartar" }))
      expect(uses.filter((u) => u.ingredient.roles[0]?.role === "acid").length).toBeLessThan(2);
  });
  it("salted butter for unsalted is no second mixture, margarine is: someone may not eat butter", () => {
    const listed = parts("1 cup half-and-half").filter((ids) => ids.includes("milk/fresh") && ids.length === 2);
    const fats = listed.flatMap((ids) => ids.filter((id) => FATS.includes(id)));
    expect(fats.filter((id) => id.startsWith("butter"))).toHaveLength(1);
    expect(fats).toContain("margarine/pantry");
  });
});
