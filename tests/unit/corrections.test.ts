import { describe, expect, it } from "vitest";
import { openCatalogue, swapsFor } from "../../src/index.js";
import type { Swap, SwapRequest } from "../../src/index.js";

// What a cook would add or hold back, and what not: common practice, no source.
const c = openCatalogue();
const swaps = (missing: string, setting: string, more: Partial<SwapRequest> = {}): readonly Swap[] =>
  swapsFor(c, { missing, for: setting, limit: 8, ...more }).swaps;
const mends = (all: readonly Swap[]): string[] => all.flatMap((s) => s.corrections.map((x) => x.ingredient.id));

describe("fat", () => {
  it.each([
    ["1/2 cup mayonnaise", "salad"],
    ["1 can coconut milk", "curry"],
    ["1/2 cup sour cream", "stroganoff sauce"],
    ["1/4 cup tahini", "hummus"],
    ["1 cup ricotta", "pasta"],
  ])("%s for %s: no butter is stirred in or held back", (missing, setting) => {
    const all = swaps(missing, setting);
    expect(all.length).toBeGreaterThan(2);
    expect(mends(all).filter((id) => /butter|oil/.test(id))).toEqual([]);
  });
  it("a leaner cheese in a cake batter asks for fat", () => {
    const lean = swaps("8 oz cream cheese", "cake", { evidence: "computed", limit: 40 }).flatMap((s) =>
      s.corrections.filter((x) => x.ingredient.id.startsWith("butter")),
    );
    expect(lean.length).toBeGreaterThan(0);
  });
  it("a batter told without dairy is not mended with butter", () => {
    const lines = ["200 g flour", "150 g sugar", "100 ml vegetable oil", "2 eggs", "1 tsp baking powder"];
    const all = swaps("100 g almond butter", "cake", { dish: { lines }, limit: 40 });
    expect(mends(all).filter((id) => id.startsWith("butter"))).toEqual([]);
  });
  it("what is held back is in the dish, and never more than that", () => {
    const lines = ["200 g flour", "10 g unsalted butter", "150 ml milk", "1 g salt"];
    for (const missing of ["100 g sour cream", "200 g ricotta", "100 g yogurt"])
      for (const s of swaps(missing, "cake", { dish: { lines }, limit: 40 }))
        for (const x of s.corrections.filter((y) => y.grams < 0)) {
          const there: Record<string, number> = { "butter/fresh-unsalted": 10, "salt/pantry": 1 };
          expect(-x.grams, `${s.text}`).toBeLessThanOrEqual(there[x.ingredient.id] ?? 0);
        }
  });
});

describe("salt", () => {
  it("what raw fish and leaves hold of themselves is no reason to salt less", () => {
    expect(mends(swaps("1 lb cod", "stew").filter((s) => s.use[0].id.endsWith("/fresh")))).toEqual([]);
    expect(mends(swaps("1 bunch spinach", "soup").filter((s) => s.use[0].id.endsWith("/fresh")))).toEqual([]);
  });
  it("nobody is asked to mend an eighth of a teaspoon", () => {
    for (const s of swaps("1 cup buttermilk", "cake")) expect(s.text).not.toContain("1/8 tsp salt");
  });
  it("salt cod asks for less salt, fresh for salted for more", () => {
    const salted = swaps("1 lb cod", "stew", { limit: 60 }).find((s) => s.use[0].id === "cod/salt-cured");
    expect(salted?.corrections.some((x) => x.ingredient.id === "salt/pantry" && x.grams < 0)).toBe(true);
    const fresh = swaps("450 g salt cod", "stew", { limit: 60 }).find(
      (s) => s.use.length === 1 && s.use[0].id === "cod/fresh",
    );
    expect(fresh?.corrections.some((x) => x.ingredient.id === "salt/pantry" && x.grams > 0)).toBe(true);
  });
});
