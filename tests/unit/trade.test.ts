import { describe, expect, it } from "vitest";
import { checkMeal, convert, foodFacts, judgeSwap, openCatalogue, swapsFor } from "../../src/index.js";
import type { Swap, SwapRequest } from "../../src/index.js";

// Facts of the trade: common practice, no source. Each is asked of the library as a cook would ask it.
const c = openCatalogue();
const foods = (swaps: readonly Swap[]): string[] =>
  swaps.flatMap((s) => (s.use.length === 1 ? [s.use[0].id.split("/")[0]?.split(".")[0] ?? ""] : []));
const top = (request: Parameters<typeof swapsFor>[1], n: number): string[] =>
  foods(swapsFor(c, request).swaps.slice(0, n));

describe("dried mushrooms (common practice, no source)", () => {
  const dried = swapsFor(c, { missing: "30 g dried porcini", limit: 40 });
  it("soak about 15 minutes in hot water, about 2 hours in cold", () => {
    const fresh = dried.swaps.find((s) => s.use[0].id.includes("/fresh"));
    const soak = fresh?.prep.find((p) => p.kind === "skip");
    expect(soak?.minutes.waiting).toBe(15);
    const conversion = convert(c, "30 g dried porcini", "porcini, fresh");
    expect(conversion.grams).toBeGreaterThan(100);
  });
  it("any kind stands in for another", () => {
    const kinds = new Set(
      dried.swaps.filter((s) => s.use[0].id.includes("/dried")).map((s) => s.use[0].id.split("/")[0]),
    );
    expect(kinds.size).toBeGreaterThanOrEqual(3);
  });
  it("fresh ones stand in, the soak is skipped and its liquid replaced", () => {
    const fresh = dried.swaps.find((s) => s.use[0].id.includes("/fresh"));
    expect(fresh).toBeDefined();
    expect(fresh?.prep.some((p) => p.kind === "skip")).toBe(true);
    expect(fresh?.prep.some((p) => p.kind === "change" && /instead/.test(p.text))).toBe(true);
    // fresh mushrooms are nine tenths water: several times the weight
    expect(fresh?.use[0].grams).toBeGreaterThan(3 * 30);
  });
});

describe("tender quick-cooking beef (common practice, no source)", () => {
  const cuts = ["strip-steak", "ribeye-steak", "top-sirloin", "flank-steak"];
  it.each(cuts)("%s: the others stand in for it in a stir-fry", (cut) => {
    const advice = swapsFor(c, {
      missing: `200 g ${cut.replace(/-/g, " ")}`,
      dish: { technique: "stir-fry" },
      limit: 60,
    });
    const found = foods(advice.swaps);
    for (const other of cuts) if (other !== cut) expect(found).toContain(other);
  });
  it("another quick-cooking meat may take its place, a tough cut may not", () => {
    const advice = swapsFor(c, { missing: "200 g flank steak", dish: { technique: "stir-fry" }, limit: 120 });
    expect(foods(advice.swaps).some((f) => /chicken|pork|lamb/.test(f))).toBe(true);
    expect(
      judgeSwap(c, { missing: "200 g flank steak", instead: "beef shank", dish: { technique: "stir-fry" } }).verdict,
    ).not.toBe("yes");
  });
});

it("black pepper stands in for white (common practice, no source)", () => {
  expect(top({ missing: "1 tsp white pepper", limit: 5 }, 3)).toContain("black-pepper");
});

describe("leafy greens with crunchy stems (common practice, no source)", () => {
  const greens = ["bok-choy", "turnip-greens", "mustard-greens", "chinese-broccoli"];
  it.each(greens)("%s: the others stand in for it", (green) => {
    const found = foods(
      swapsFor(c, { missing: `200 g ${green.replace(/-/g, " ")}`, dish: { technique: "stir-fry" }, limit: 25 }).swaps,
    );
    for (const other of greens) if (other !== green) expect(found).toContain(other);
  });
});

describe("dried shrimp for umami (common practice, no source)", () => {
  const advice = swapsFor(c, { missing: "2 tbsp dried shrimp", role: "umami seasoning", limit: 60 });
  it("dried anchovies and bonito flakes stand in", () => {
    expect(foods(advice.swaps)).toEqual(expect.arrayContaining(["anchovy", "katsuobushi"]));
  });
  it("a little shrimp paste: far saltier, so much less of it", () => {
    const judged = judgeSwap(c, { missing: "2 tbsp dried shrimp", instead: "shrimp paste", role: "umami seasoning" });
    expect(judged.verdict).not.toBe("no");
    expect(judged.swap?.use[0].grams).toBeLessThan(advice.missing.grams);
  });
});

it("white rice takes about 18 minutes covered on low (common practice, no source)", () => {
  expect(foodFacts(c, "white-rice/pantry").roles[0]?.role).toBe("starch base");
});

describe("a full dinner (common practice, no source; portions published)", () => {
  it("is a starch, a protein and vegetables in balance, and usually a soup", () => {
    const meal = {
      serves: 4,
      dishes: [
        { name: "Rice", lines: ["300 g white rice"] },
        { name: "Chicken", lines: ["500 g chicken thighs"] },
        { name: "Greens", lines: ["500 g bok choy"] },
      ],
    };
    const dry = checkMeal(c, meal);
    expect(dry.slots.starch.covered && dry.slots.protein.covered && dry.slots.vegetable.covered).toBe(true);
    expect(dry.gaps.map((g) => g.slot)).toEqual(["soup"]);
    const whole = checkMeal(c, {
      ...meal,
      dishes: [...meal.dishes, { name: "Soup", liquid: "1 l", lines: ["200 g tofu"] }],
    });
    expect(whole.gaps).toEqual([]);
    expect(checkMeal(c, { ...meal, soup: "optional" }).gaps).toEqual([]);
  });
});

describe("what cooks are known to do in just this dish gives way to no general rule (common practice, no source)", () => {
  const uses = (request: SwapRequest): string[] =>
    swapsFor(c, { limit: 40, ...request }).swaps.map((s) =>
      s.use
        .map((u) => u.id)
        .sort()
        .join("+"),
    );
  const orange = "lime.juice/fresh+orange.juice/fresh";
  it("orange with lime marinates in place of bitter orange", () => {
    expect(uses({ missing: "1/2 cup bitter orange juice", for: "marinade" })).toContain(orange);
  });
  it("yogurt dresses a salad in place of mayonnaise", () => {
    expect(uses({ missing: "1/2 cup mayonnaise", for: "salad" })).toContain("greek-yogurt/fresh");
  });
  it("egg white whips in place of bean liquid, named for the dish or not", () => {
    expect(uses({ missing: "3 tbsp aquafaba", for: "meringue" })[0]).toBe("egg.white/fresh");
    expect(uses({ missing: "3 tbsp aquafaba" })[0]).toBe("egg.white/fresh");
    expect(uses({ missing: "3 tbsp aquafaba", evidence: "computed" })).toContain("egg.white/fresh");
  });
  it("but not in another dish, nor against what a table says nothing of", () => {
    expect(uses({ missing: "1/2 cup bitter orange juice", for: "soup" })).not.toContain(orange);
    expect(uses({ missing: "1 egg", for: "meatloaf" })).not.toContain("applesauce/canned");
    expect(uses({ missing: "1/2 cup heavy cream", for: "soup" })).not.toContain("egg.white/fresh");
  });
});
