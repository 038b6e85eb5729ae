import { describe, expect, it } from "vitest";
import { openCatalogue, storeOf, type Ingredient, type Store } from "../../src/catalogue/index.js";
import { carrierAmount, dose } from "../../src/dose/index.js";
import { readAsk, type Ask } from "../../src/swap/ask.js";
import { amountFor } from "../../src/swap/amount.js";
import type { SwapRequest } from "../../src/types.js";

const c = openCatalogue();
const store = storeOf(c);
const food = (id: string): Ingredient => {
  const i = store.byId.get(id);
  if (!i) throw new Error(`${id} is not in the catalogue`);
  return i;
};

/** The same question asked of a catalogue in which one figure of one food is another. */
function withFigure(ask: Ask, id: string, name: string, value: number): Ask {
  const column = Float64Array.from(ask.store.columns[name] ?? new Float64Array(ask.store.size).fill(Number.NaN));
  column[food(id).index] = value;
  const changed: Store = { ...ask.store, columns: { ...ask.store.columns, [name]: column } };
  return { ...ask, store: changed };
}
const amounts = (request: SwapRequest, id: string, name: string, values: readonly number[]): number[] => {
  const ask = readAsk(c, request);
  return values.map((v) => amountFor(withFigure(ask, id, name, v), food(id)));
};
const falling = (list: readonly number[]): boolean => list.every((v, k) => k === 0 || v <= (list[k - 1] ?? 0) + 1e-9);

describe("the saltier the stand-in, the less of it", () => {
  const SODIUM = [0, 500, 1000, 2000, 4000, 8000, 16_000, 32_000];
  it.each([
    ["2 tbsp soy sauce for umami", { missing: "2 tbsp soy sauce", role: "umami seasoning" }, "miso/pantry-paste"],
    ["lemon juice by a salted souring agent", { missing: "2 tbsp lemon juice", role: "acid" }, "umeboshi/salt-cured"],
    [
      "dried shrimp by shrimp paste",
      { missing: "2 tbsp dried shrimp", role: "umami seasoning" },
      "shrimp-paste/fermented-paste",
    ],
  ] as const)("%s", (_what, request, id) => {
    const list = amounts({ ...request }, id, "sodium", SODIUM);
    expect(list.every((v) => v > 0)).toBe(true);
    expect(falling(list), list.map((v) => v.toFixed(2)).join(" ")).toBe(true);
    expect(list[list.length - 1]).toBeLessThan(list[0] ?? 0);
    // never below a third of what the job alone would ask for, but where the same spoonful is less
    const ask = readAsk(c, { ...request });
    const job = carrierAmount(store, ask.item, ask.grams, food(id), request.role, ask.dishGrams);
    const spoonful = (ask.grams * dose(store, ask.item, "volume")) / dose(store, food(id), "volume");
    expect(Math.min(...list)).toBeGreaterThanOrEqual(Math.min(job / 3, spoonful) - 1e-9);
  });
  it("salt itself: twice as salty, half as much", () => {
    const list = amounts({ missing: "2 tsp salt", role: "salt seasoning" }, "soy-sauce/pantry", "sodium", [4000, 8000]);
    expect((list[0] ?? 0) / (list[1] ?? 1)).toBeCloseTo(2, 1);
  });
});

describe("the stronger the stand-in at its job, the less of it", () => {
  it.each([
    ["sourness", { missing: "2 tbsp lemon juice", role: "acid" }, "cider-vinegar/pantry", "acid", [2, 4, 5, 6, 8]],
    [
      "heat",
      { missing: "1 tsp cayenne", role: "heat" },
      "gochugaru/dried-flakes",
      "pungency",
      [2000, 4000, 8000, 30_000],
    ],
    ["thickening", { missing: "2 tbsp flour", role: "thickener" }, "cornstarch/pantry", "thickening", [1, 1.5, 2, 3]],
    [
      "gas",
      { missing: "2 tsp baking powder", role: "leavener" },
      "baking-soda/pantry",
      "carbon dioxide",
      [10, 20, 40, 60],
    ],
  ] as const)("%s", (_what, request, id, name, values) => {
    const list = amounts({ ...request }, id, name, values);
    expect(list.every((v) => v > 0)).toBe(true);
    expect(falling(list), list.join(" ")).toBe(true);
    expect(list[list.length - 1]).toBeLessThan(list[0] ?? 0);
  });
});

describe("one job alone", () => {
  it.each([
    ["30 g flour", "thickener", "cornstarch/pantry"],
    ["2 tsp baking powder", "leavener", "baking-soda/pantry"],
    ["100 g butter", "fat", "olive-oil/pantry"],
  ] as const)("%s as %s: what works by its power brings exactly as much of it", (missing, role, id) => {
    const ask = readAsk(c, { missing, role });
    const carrier = carrierAmount(store, ask.item, ask.grams, food(id), role, ask.dishGrams);
    expect(carrier).toBeGreaterThan(0);
    expect(amountFor(ask, food(id))).toBeCloseTo(carrier, 6);
  });
  it.each([
    ["200 g sugar", "sweetener", "honey/pantry"],
    ["250 g chicken breast", "main protein", "firm-tofu/fresh"],
    ["200 g white rice", "starch base", "couscous/pantry"],
    ["10 g dried oregano", "herb", "basil/dried"],
    ["500 g cod", "main protein", "salmon/fresh"],
  ] as const)("%s as %s: between the doses and the same weight, when asked on a scale", (missing, role, id) => {
    const ask = readAsk(c, { missing, role });
    const carrier = carrierAmount(store, ask.item, ask.grams, food(id), role, ask.dishGrams);
    const solved = amountFor(ask, food(id));
    expect(solved).toBeGreaterThanOrEqual(Math.min(carrier, ask.grams) - 1e-9);
    expect(solved).toBeLessThanOrEqual(Math.max(carrier, ask.grams) + 1e-9);
  });
  it.each([
    ["2 cups sour cream", "yogurt/fresh"],
    ["1 cup mayonnaise", "greek-yogurt/fresh"],
    ["1 cup cream", "milk/fresh"],
    ["250 g ricotta", "quark/fresh"],
  ] as const)("%s: what fills the dish keeps its room within a quarter, however lean", (missing, id) => {
    const ask = readAsk(c, { missing });
    const room = ask.byWeight ? 1 : dose(store, food(id), "volume") / dose(store, ask.item, "volume");
    const share = (amountFor(ask, food(id)) * room) / ask.grams;
    expect(share).toBeGreaterThanOrEqual(0.8 - 1e-9);
    expect(share).toBeLessThanOrEqual(1.25 + 1e-9);
  });
  it("the same food in another state goes by its yield, not by the spoon", () => {
    const ask = readAsk(c, { missing: "1 tsp dried oregano", role: "herb" });
    const carrier = carrierAmount(store, ask.item, ask.grams, food("oregano/fresh"), "herb", ask.dishGrams);
    expect(amountFor(ask, food("oregano/fresh"))).toBeCloseTo(carrier, 6);
  });
  it("a strong stand-in is measured by its strength, not by the cup it is asked for", () => {
    const ask = readAsk(c, { missing: "1 cup sugar", role: "sweetener" });
    const carrier = carrierAmount(store, ask.item, ask.grams, food("stevia/pantry-powder"), "sweetener", ask.dishGrams);
    expect(Math.abs(Math.log(amountFor(ask, food("stevia/pantry-powder")) / carrier))).toBeLessThan(Math.log(1.25));
  });
  it("powdered sugar holds air: nearer its weight than its cup", () => {
    const ask = readAsk(c, { missing: "1 cup sugar", role: "sweetener" });
    expect(amountFor(ask, food("powdered-sugar/pantry"))).toBeGreaterThan(0.85 * ask.grams);
  });
  it("several jobs: between the least and the most that any of them asks for", () => {
    const ask = readAsk(c, { missing: "250 ml milk" });
    const use = food("evaporated-milk/canned");
    const each = ask.roles
      .filter((r) => use.roles.some((u) => u.role === r.role && u.weight > 0))
      .map((r) => carrierAmount(store, ask.item, ask.grams, use, r.role, ask.dishGrams))
      .filter((x) => x > 0);
    expect(each.length).toBeGreaterThan(0);
    each.push(ask.grams);
    const solved = amountFor(ask, use);
    expect(solved).toBeGreaterThanOrEqual(Math.min(...each) / 3);
    expect(solved).toBeLessThanOrEqual(Math.max(...each) + 1e-9);
  });
  it("twice as much missing, twice as much in", () => {
    for (const id of ["honey/pantry", "maple-syrup/pantry"]) {
      const one = amountFor(readAsk(c, { missing: "100 g sugar" }), food(id));
      const two = amountFor(readAsk(c, { missing: "200 g sugar" }), food(id));
      expect(two / one).toBeCloseTo(2, 6);
    }
  });
  it("nothing to compare by is NaN, not zero", () => {
    const ask = readAsk(c, { missing: "2 tsp baking powder", role: "leavener" });
    expect(amountFor(ask, food("water/pantry"))).toBeNaN();
    expect(dose(store, food("water/pantry"), "lift") > 0).toBe(false);
  });
});
