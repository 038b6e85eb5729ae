import { describe, expect, it } from "vitest";
import { openCatalogue, readRecipe, swapNotes, swapsFor } from "../../src/index.js";
import type { SwapAdvice } from "../../src/types.js";

// What the words of a setting say beside the job: who eats, and that it is eaten raw. Kitchen sense: common practice, no source.
const c = openCatalogue();
const ask = (missing: string, setting: string): SwapAdvice => swapsFor(c, { missing, for: setting, limit: 20 });
const used = (a: SwapAdvice): readonly string[] => a.swaps.flatMap((s) => s.use.map((u) => u.id));

describe("who eats, said in passing", () => {
  it.each([
    ["1 cup flour", "gluten-free cake", { diets: ["coeliac"] }],
    ["2 eggs", "vegan cake", { diets: ["vegan"] }],
    ["1 cup milk", "dairy-free pancakes", { allergens: ["milk"] }],
    ["1 cup walnuts", "nut free brownies", { allergens: ["tree nuts", "peanuts"] }],
    ["1 cup almonds", "cookies without nuts", { allergens: ["tree nuts", "peanuts"] }],
    ["200 g ham", "halal sandwich", { diets: ["halal"] }],
    ["1 cup maple syrup", "porridge for babies", { diets: ["infant"] }],
  ] as const)("%s for %s: as if it were asked for apart", (missing, setting, avoid) => {
    const said = ask(missing, setting);
    const apart = swapsFor(c, { missing, for: setting, avoid, limit: 20 });
    expect(said.swaps.map((s) => s.use)).toEqual(apart.swaps.map((s) => s.use));
    expect(said.swaps.length).toBeGreaterThan(0);
    expect(said.refused.some((r) => ["allergen", "diet", "unknown allergen"].includes(r.because))).toBe(true);
    expect(said.notUnderstood.join(" ")).not.toMatch(/free|vegan|halal|babies|nuts/);
  });
  it.each([
    ["1 can kidney beans", "kidney bean chili"],
    ["1 cup spinach", "baby spinach salad"],
    ["1 cup cream", "no-bake cheesecake"],
    ["1 cup milk", "milk bread"],
    ["1 cup walnuts", "nut bread"],
    ["1 grapefruit", "grapefruit salad"],
  ])("%s for %s: a dish, no diner", (missing, setting) => {
    const { refused, swaps } = ask(missing, setting);
    expect(swaps.length).toBeGreaterThan(0);
    expect(refused.filter((r) => ["allergen", "diet", "unknown allergen"].includes(r.because))).toEqual([]);
  });
  it("honey never comes for a baby, and nothing for infant formula", () => {
    expect(used(ask("1 cup maple syrup", "baby food"))).not.toContain("honey/pantry");
    // FDA, advice on homemade infant formula, from memory.
    const none = ask("1 cup milk", "baby formula");
    expect(none.swaps).toEqual([]);
    expect(none.mustStay).toMatch(/ask a doctor/);
    expect(none.goWithout).toBeUndefined();
  });
});

describe("eaten raw, said by the dish", () => {
  it.each(["sashimi", "tartare", "poke", "carpaccio", "ceviche", "sushi"])("salmon for %s", (setting) => {
    const advice = ask("300 g salmon", setting);
    expect(used(advice)).not.toContain("trout/fresh");
    expect(advice.refused.map((r) => r.id)).toContain("trout/fresh");
    for (const s of advice.swaps.filter((x) => x.use[0].id.endsWith("salmon/fresh")))
      expect(s.cautions.map((x) => x.severity)).toContain("stop");
  });
  it.each(["mayonnaise", "aioli", "tiramisu", "eggnog", "hollandaise"])("egg for %s", (setting) => {
    const frozen = ask("3 eggs", setting).swaps.find((s) => s.use[0].id === "egg/frozen");
    expect(frozen?.cautions.map((x) => x.hazard)).toContain("raw-egg");
  });
  it("dried beans for a slow cooker", () => {
    const beans = ask("1 cup cannellini beans", "slow cooker").swaps.find((s) => s.use[0].id === "navy-bean/dried");
    expect(beans?.cautions.map((x) => x.hazard)).toContain("slow-cooker-beans");
    expect(beans?.prep.some((p) => p.required)).toBe(true);
  });
  it("a recipe that heats nothing is raw too", () => {
    const r = readRecipe(
      c,
      "# Quayside bowl\n\n## Ingredients\n- 300 g salmon, diced\n- 1 cucumber\n- 2 tbsp soy sauce\n\n## Method\n1. Mix the salmon with the soy sauce.\n2. Serve over the cucumber.\n",
      "markdown",
    );
    const salmon = swapNotes(c, r).notes.find((n) => n.line.includes("salmon"));
    expect(salmon?.swaps.flatMap((s) => s.use.map((u) => u.id))).not.toContain("trout/fresh");
    for (const s of salmon?.swaps ?? []) expect(s.cautions.length).toBeGreaterThan(0);
  });
});
