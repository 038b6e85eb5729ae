import { describe, expect, it } from "vitest";
import { openCatalogue, swapsFor } from "../../src/index.js";
import type { Swap, SwapRequest } from "../../src/index.js";

// Steps a cook would take, and steps that belong to another dish: common practice, no source.
const c = openCatalogue();
const swaps = (missing: string, setting: string, more: Partial<SwapRequest> = {}): readonly Swap[] =>
  swapsFor(c, { missing, for: setting, limit: 30, ...more }).swaps;
const steps = (all: readonly Swap[]): string[] => all.flatMap((s) => s.prep.map((p) => p.text));
const use = (all: readonly Swap[], id: string): Swap | undefined =>
  all.find((s) => s.use.length === 1 && s.use[0].id === id);

describe("its own cooking time", () => {
  it.each([
    ["1 egg", "coating"],
    ["1 egg", "cake"],
    ["1/4 cup pine nuts", "pesto"],
    ["1 cup breadcrumbs", "coating"],
  ])("%s for %s: says nothing of the dish", (missing, setting) => {
    expect(steps(swaps(missing, setting)).filter((t) => /minutes? instead of/.test(t))).toEqual([]);
  });
  it("rice that is eaten takes the time it takes", () => {
    expect(steps(swaps("1 cup rice", "pilaf")).some((t) => /minutes? instead of/.test(t))).toBe(true);
  });
});

describe("slurry", () => {
  const slurry = (missing: string, setting: string, more: Partial<SwapRequest> = {}): boolean =>
    steps(swaps(missing, setting, more)).some((t) => /cold water before it meets|slurry/i.test(t));
  it("only where something wet is thickened", () => {
    expect(slurry("1 cup cake flour", "cake")).toBe(false);
    expect(slurry("1 tsp baking powder", "scones")).toBe(false);
    expect(slurry("2 eggs", "cake", { avoid: { diets: ["vegan"] } })).toBe(false);
    expect(slurry("2 tbsp flour", "gravy")).toBe(true);
  });
});

describe("powders", () => {
  it("made up with so much water, which is said", () => {
    const paste = use(swaps("2 tbsp tomato paste", "stew", { evidence: "computed" }), "tomato/dried-powder");
    expect(paste?.prep.find((p) => p.procedure === "dilute")?.text).toMatch(
      /^Dilute with \S+ ?\S* (cups?|tbsp) water\.$/,
    );
  });
  it("dry for dry needs none", () => {
    const mixed = swaps("1 tsp paprika", "goulash", { limit: 60 }).filter((s) =>
      s.use.some((u) => u.id === "tomato/dried-powder"),
    );
    for (const s of mixed) expect(s.prep.some((p) => p.procedure === "dilute")).toBe(false);
  });
  it("seeds swell in the water measured with them, and it is said once", () => {
    const chia = swaps("1 egg", "muffins", { avoid: { allergens: ["egg"] } }).find((s) =>
      s.use.some((u) => u.id.startsWith("chia-seed")),
    );
    expect(chia?.text).toContain("Stir into the water");
    expect(chia?.text.match(/10 minutes/g)).toHaveLength(1);
  });
});

describe("whole for ground", () => {
  it.each([
    ["1 tsp ground ginger", "cookies", "ginger/dried"],
    ["1 tsp cinnamon", "stew", "cinnamon/dried"],
    ["1 tsp ground cumin", "curry", "cumin/dried"],
  ])("%s for %s: is ground, and must be", (missing, setting, id) => {
    const whole = use(swaps(missing, setting, { evidence: "computed" }), id);
    const grind = whole?.prep.find((p) => p.procedure === "grind");
    expect(grind?.kind).toBe("add");
    expect(grind?.required).toBe(true);
    expect(whole?.prep.some((p) => p.procedure === "lift-out-leaf")).toBe(false);
  });
  it("saffron is bloomed, not ground", () => {
    for (const s of swaps("1 tsp turmeric", "curry"))
      if (s.use.some((u) => u.id === "saffron/dried") && !s.use.some((u) => u.id.endsWith("-seed/dried")))
        expect(s.prep.some((p) => p.procedure === "grind")).toBe(false);
  });
});

it("a step is not said twice", () => {
  for (const s of swaps("1 bunch spinach", "soup").filter((x) => x.use[0].id === "spinach/frozen"))
    expect(s.text.match(/thaw/gi)).toHaveLength(1);
});

describe("going without", () => {
  const without = (missing: string, setting: string): string | undefined =>
    swapsFor(c, { missing, for: setting, limit: 8 }).goWithout;
  it.each([
    ["15 curry leaves", "curry"],
    ["1 tbsp epazote", "stew"],
    ["1 tsp fenugreek leaves", "curry"],
  ])("%s: offered beside the swaps, since nothing is like them", (missing, setting) => {
    expect(swaps(missing, setting).length).toBeGreaterThan(0);
    expect(without(missing, setting)).toMatch(/leav/);
  });
  it.each([
    ["1/2 cup pomegranate seeds", "garnish", "a berry is like them and nothing to go out for"],
    ["2 tbsp rose water", "dessert", "nothing else smells of roses"],
    ["3 stalks celery", "soup", "nothing is crisp in a soup, and fennel smells of anise"],
  ])("%s for %s: offered, since %s", (missing, setting) => {
    expect(without(missing, setting)).toMatch(/as good an answer/);
  });
  it("what is left when a diet takes all that is like it", () => {
    const missing = "100 g pancetta";
    expect(without(missing, "soup")).toBeUndefined();
    expect(swapsFor(c, { missing, for: "soup", avoid: { diets: ["vegetarian"] } }).goWithout).toMatch(/leav/);
  });
  it("a herb by the bunch, a fifth of the dish and more, is no accent", () => {
    const of = (grams: number): string | undefined =>
      swapsFor(c, { missing: "15 curry leaves", for: "curry", dish: { lines: [`${grams} g onion`] } }).goWithout;
    expect(of(500)).toMatch(/leav/);
    expect(of(5)).toBeUndefined();
  });
  it.each([
    ["60 g Stilton", "garnish"],
    ["1 tsp ground cumin", "stew"],
    ["3 stalks celery", "salad"],
    ["1 onion", "soup"],
    ["1 tbsp basil", "pasta"],
    ["1 sprig rosemary", "roast"],
    ["1 tsp cinnamon", "cake"],
    ["1/4 cup pine nuts", "pesto"],
  ])("%s: not where something alike is in the cupboard", (missing, setting) => {
    expect(without(missing, setting)).toBeUndefined();
  });
});

it("a sauce mixed for one that was cooked is not told to have its oil boiled first", () => {
  for (const s of swapsFor(c, { missing: "1 jar marinara sauce", for: "pasta", limit: 10 }).swaps)
    expect(s.text.match(/cook it first/gi)?.length ?? 0, s.text).toBeLessThanOrEqual(1);
});
it("nobody salts a flatbread for want of a saltier one", () => {
  for (const s of swapsFor(c, { missing: "8 flour tortillas", for: "tacos", limit: 10 }).swaps)
    expect(s.corrections.map((x) => x.ingredient.id)).not.toContain("salt/pantry");
});
