import { describe, expect, it } from "vitest";
import { openCatalogue, swapsFor } from "../../src/index.js";
import { storeOf, type Ingredient } from "../../src/catalogue/index.js";
import { commonMakeup, partsOf } from "../../src/likeness/index.js";
import { stirred } from "../../src/swap/blend/index.js";
import { readAsk } from "../../src/swap/ask.js";
import type { SwapRequest } from "../../src/types.js";

const c = openCatalogue();
const store = storeOf(c);
const of = (id: string): Ingredient => store.byId.get(id) as Ingredient;
const made = store.ingredients.filter((i) => partsOf(store, i) !== undefined);
const common = (missing: string, uses: Readonly<Record<string, number>>): number | undefined =>
  commonMakeup(
    store,
    of(missing),
    Object.entries(uses).map(([id, grams]) => ({ ingredient: of(id), grams })),
  );

describe("what made things have in common", () => {
  it("is everything with themselves and with all their parts in their shares", () => {
    expect(made.length).toBeGreaterThan(100);
    for (const i of made) {
      expect(commonMakeup(store, i, [{ ingredient: i, grams: 5 }])).toBeCloseTo(1, 2);
      const uses = (partsOf(store, i) ?? []).map(({ ingredient, share }) => ({ ingredient, grams: share * 80 }));
      expect(commonMakeup(store, i, uses), i.id).toBeCloseTo(1, 2);
    }
  });
  it("is what one part makes of the whole, and nothing with what is not in it", () => {
    const share = (partsOf(store, of("brown-sugar/pantry")) ?? []).find(
      (p) => p.ingredient.id === "sugar/pantry",
    )?.share;
    expect(common("brown-sugar/pantry", { "sugar/pantry": 10 })).toBeCloseTo(share as number, 6);
    expect(common("brown-sugar/pantry", { "salt/pantry": 10 })).toBe(0);
  });
  it("looks into parts that are made things themselves", () => {
    // ranch dressing is mayonnaise for the most part, and that is oil for the most part
    expect(common("ranch-dressing/pantry", { "vegetable-oil/pantry": 1 })).toBeGreaterThan(0.3);
  });
  it("grows with every part that is put in, and does not hang on how much there is", () => {
    const two = common("zaatar-blend/dried", { "thyme/dried": 2, "sesame-seed/pantry-toasted": 1 }) as number;
    const one = common("zaatar-blend/dried", { "thyme/dried": 2 }) as number;
    expect(two).toBeGreaterThan(one);
    expect(common("zaatar-blend/dried", { "thyme/dried": 20, "sesame-seed/pantry-toasted": 10 })).toBeCloseTo(two, 9);
  });
  it("is not known of what nobody wrote down", () => {
    expect(common("cod/fresh", { "salt/pantry": 1 })).toBeUndefined();
    expect(partsOf(store, of("cod/fresh"))).toBeUndefined();
  });
});

describe("stirring it together", () => {
  const parts = (request: SwapRequest): Record<string, number> | undefined => {
    const uses = stirred(readAsk(c, request));
    return uses && Object.fromEntries(uses.map((u) => [u.ingredient.id, u.grams]));
  };
  it("takes the parts it is made of, and makes as much as was missing", () => {
    for (const i of made) {
      const ask = readAsk(c, { missing: i.id, amount: "100 g" });
      const uses = stirred(ask);
      if (uses === undefined) continue;
      expect(uses.length, i.id).toBeGreaterThanOrEqual(2);
      expect(uses.length, i.id).toBeLessThanOrEqual(4);
      expect(
        uses.reduce((sum, u) => sum + u.grams, 0),
        i.id,
      ).toBeCloseTo(ask.grams, 6);
      expect(
        uses.every((u) => u.grams > 0 && u.ingredient.food !== i.food),
        i.id,
      ).toBe(true);
    }
  });
  it("doubles with the amount", () => {
    const once = parts({ missing: "1 tbsp za'atar" }) as Record<string, number>;
    const twice = parts({ missing: "2 tbsp za'atar" }) as Record<string, number>;
    expect(Object.keys(twice)).toEqual(Object.keys(once));
    for (const [id, grams] of Object.entries(once)) expect(twice[id]).toBeCloseTo(2 * grams, 6);
  });
  it("keeps to the house, and gives up when too little of it is there", () => {
    const house = { missing: "1 cup brown sugar", onlyFromHave: true };
    expect(Object.keys(parts({ ...house, have: ["sugar", "molasses"] }) ?? {})).toEqual([
      "sugar/pantry",
      "molasses/pantry",
    ]);
    expect(parts({ ...house, have: ["molasses", "flour"] })).toBeUndefined();
    expect(parts({ missing: "500 g cod" })).toBeUndefined();
  });
});

// Common practice, no source: what a cook stirs together before going out for the thing itself.
describe("among the first three, without any table", () => {
  it.each([
    ["1 cup brown sugar", "cookies", ["sugar/pantry", "molasses/pantry"]],
    ["1 tbsp za'atar", "salad", ["thyme/dried", "sesame-seed/pantry-toasted", "sumac/dried-ground"]],
    ["1 tsp apple pie spice", "pie", ["cinnamon/dried-ground", "nutmeg/dried-ground"]],
    ["1 tbsp Italian seasoning", "pasta sauce", ["oregano/dried", "basil/dried"]],
    ["1 cup self-rising flour", "baking", ["all-purpose-flour/pantry", "baking-powder/pantry"]],
    ["1 cup condensed milk", "baking", ["sugar/pantry", "nonfat-dry-milk/dried-instant"]],
  ])("%s for %s", (missing, setting, parts) => {
    const { swaps } = swapsFor(c, { missing, for: setting, evidence: "computed" });
    const first = swaps.slice(0, 3).map((s) => s.use.map((u): string => u.id));
    expect(
      first.some((ids) => parts.every((id) => ids.includes(id))),
      first.join(" | "),
    ).toBe(true);
  });
});

describe("raw egg in what is stirred together", () => {
  const withYolk = (request: Pick<SwapRequest, "for" | "avoid">) =>
    swapsFor(c, { missing: "1 cup mayonnaise", limit: 30, ...request }).swaps.filter((s) =>
      s.use.some((u) => u.id === "egg.yolk/fresh"),
    );
  it("is told to whoever is at risk, and nobody is asked to cook a mayonnaise", () => {
    const swaps = withYolk({});
    expect(swaps.length).toBeGreaterThan(0);
    for (const { cautions } of swaps) {
      expect(cautions.some((w) => w.hazard.startsWith("raw-egg"))).toBe(true);
      expect(cautions.some((w) => w.text.includes("Cook it to"))).toBe(false);
    }
  });
  it("is not for a pregnant diner", () => {
    expect(withYolk({ for: "for a pregnant woman" })).toEqual([]);
    expect(withYolk({ avoid: { diets: ["pregnancy"] } })).toEqual([]);
  });
});
