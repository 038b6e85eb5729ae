import { describe, expect, it } from "vitest";
import { storeOf } from "../../src/catalogue/index.js";
import { openCatalogue, swapsFor } from "../../src/index.js";
import { kitchenMeasure } from "../../src/portion/index.js";

const c = openCatalogue();
const METRIC = ["g", "kg", "ml", "l", "tsp", "tbsp", "pinch"];
const units = (missing: string): string[] =>
  swapsFor(c, { missing, limit: 6 }).swaps.flatMap((s) => s.use.map((u) => u.measure.unit));

describe("an answer comes in the measures the question was asked in", () => {
  it.each([
    "1 smoked sausage (about 275 g)",
    "1 can (400 g) chickpeas",
    "2 chicken breasts (300 g)",
    "1 bunch (100 g) kale",
  ])("%s: metric, for a metric weight stands beside the pieces", (missing) => {
    expect(units(missing).filter((u) => !METRIC.includes(u))).toEqual([]);
  });
  it("1 can (14 oz) chickpeas and 1 cup (120 g) flour: cups, for nothing metric was counted", () => {
    expect(units("1 can (14 oz) chickpeas")).toContain("cup");
    expect(units("1 cup (120 g) flour")).toContain("cup");
  });
  it("600 g of kale: no bunches and packets, for the scale is out", () => {
    const counted = units("600 g kale").filter((u) => !METRIC.includes(u));
    expect(counted).toEqual([]);
    expect(units("2 bunches kale")).toContain("bunch");
  });
  it.each([
    ["celery/fresh", 80, "2 stalks"],
    ["green-cabbage/fresh", 908, "1 head"],
    ["pandan-leaf/fresh", 10, "2 leaves"],
    ["coconut-milk/pantry-powder", 93, "95 g"],
    ["pumpkin-pie-spice/dried-ground", 4.3, "2 1/2 tsp"],
  ])("%s: %d g are %s", (id, grams, text) => {
    const store = storeOf(c);
    const item = store.byId.get(id);
    expect(item && kitchenMeasure(store, item, grams, { measures: "metric" }).text).toBe(text);
  });
  it("tells the second unit of the text, and none where there is none", () => {
    const beside = (missing: string) => swapsFor(c, { missing, limit: 1 }).missing?.measure.beside;
    expect([beside("2 chicken breasts (300 g)"), beside("1 (14 oz) can chickpeas"), beside("2 onions")]).toEqual([
      "g",
      "oz",
      undefined,
    ]);
  });
});
