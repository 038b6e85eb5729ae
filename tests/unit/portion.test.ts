import { describe, expect, it } from "vitest";
import { storeOf } from "../../src/catalogue/index.js";
import { isSteadfareError } from "../../src/errors.js";
import {
  densityOf,
  kitchenMeasure,
  parsePortion,
  portionOf,
  readLine,
  unitsOf,
  usualGrams,
} from "../../src/portion/index.js";
import type { ErrorData } from "../../src/types.js";
import { larder } from "../helpers/larder.js";
import { LINES } from "../helpers/lines.js";

const us = larder();
const gb = larder("en-GB");
const store = storeOf(us);
const food = (id: string) => {
  const i = store.byId.get(id);
  if (i === undefined) throw new Error(`no ${id} in the larder`);
  return i;
};
function codeOf(run: () => unknown): string {
  try {
    run();
    return "nothing thrown";
  } catch (e) {
    return isSteadfareError(e) ? e.code : String(e);
  }
}
function dataOf<C extends keyof ErrorData>(code: C, run: () => unknown): unknown {
  try {
    run();
  } catch (e) {
    if (isSteadfareError(e, code)) return e.data;
    throw e;
  }
  throw new Error("nothing thrown");
}

describe("lines", () => {
  it("has at least 150 of them", () => expect(LINES.length).toBeGreaterThanOrEqual(150));
  it.each(LINES.map(([line, ...expected]) => ({ line, expected })))(
    "$line",
    ({ line, expected: [id, grams, measure, preparation = "", note = ""] }) => {
      const r = readLine(us, line);
      expect([
        r.food?.id ?? r.status,
        r.portion?.grams ?? null,
        r.portion?.measure.text ?? "",
        r.preparation,
        r.note,
      ]).toEqual([id, grams, measure, preparation, note]);
      expect(r.status).toBe(grams === null ? (r.food ? "food only" : "no food") : "food and amount");
      expect(r.candidates).toEqual([]);
    },
  );
});

describe("what a line says besides", () => {
  it("gives alternatives with their own or the same amount", () => {
    const shallots = readLine(us, "1 onion or 2 shallots, sliced");
    expect(shallots.alternatives.map((a) => [a.id, a.portion?.grams])).toEqual([["shallot/fresh", 60]]);
    expect(readLine(us, "2 tbsp butter or olive oil").alternatives.map((a) => [a.id, a.portion?.grams])).toEqual([
      ["olive-oil/pantry", 27],
    ]);
    expect(readLine(us, "1 cup chicken or vegetable stock").alternatives.map((a) => a.id)).toEqual([
      "vegetable-stock/pantry",
    ]);
    expect(readLine(us, "1 tbsp fresh thyme or 1 tsp dried").alternatives.map((a) => [a.id, a.portion?.grams])).toEqual(
      [["thyme/dried", 1]],
    );
    expect(readLine(us, "1 cup milk, or buttermilk").alternatives.map((a) => a.id)).toEqual(["buttermilk/fresh"]);
    expect(readLine(us, "1 cup milk (or buttermilk)").alternatives.map((a) => a.id)).toEqual(["buttermilk/fresh"]);
    expect(readLine(us, "1 tsp salt, or to taste").alternatives).toEqual([]);
  });
  it("marks what is optional and what is divided", () => {
    expect([
      readLine(us, "1 tsp chilli flakes (optional)").optional,
      readLine(us, "1 tsp salt, if desired").optional,
      readLine(us, "1 tsp salt").optional,
    ]).toEqual([true, true, false]);
    expect([readLine(us, "1/2 cup sugar, divided").divided, readLine(us, "1/2 cup sugar").divided]).toEqual([
      true,
      false,
    ]);
  });
  it("gives a range in grams, the middle as the amount", () => {
    expect(readLine(us, "2-3 carrots").portion).toMatchObject({ grams: 152.5, range: [122, 183] });
    expect(readLine(us, "100 to 150 g flour").portion).toMatchObject({ grams: 125, range: [100, 150] });
    expect(readLine(us, "2 carrots").portion).not.toHaveProperty("range");
  });
  it("has no portion without an amount, nor with one that nothing can weigh", () => {
    expect(readLine(us, "salt, to taste")).not.toHaveProperty("portion");
    const glass = readLine(us, "1 cup radishes");
    expect(glass).toMatchObject({ status: "food only", food: { id: "radish/fresh" }, unread: "1 cup" });
    expect(glass).not.toHaveProperty("portion");
  });
  it("says how far a measure as written is from the weight beside it", () => {
    expect(readLine(us, "1 cup (120 g) flour").portion).toMatchObject({
      grams: 120,
      measure: { amount: 1, unit: "cup", roundedBy: 5 },
    });
  });
  it("takes a can of something for the canned state, and cutting words for no state", () => {
    const id = (text: string) => readLine(us, text).food?.id;
    expect([
      id("2 tins tomatoes"),
      id("2 tomatoes, chopped"),
      id("2 cups chopped tomatoes"),
      id("400 g tin chopped tomatoes"),
    ]).toEqual(["tomato/canned", "tomato/fresh", "tomato/fresh", "tomato/canned-chopped"]);
    expect(readLine(us, "2 cups chopped tomatoes")).toMatchObject({ preparation: "chopped", portion: { grams: 360 } });
  });
  it("refuses to make a vegan butter of butter, wherever the word stands", () => {
    expect(readLine(us, "2 cups butter, vegan").food?.id).not.toBe("butter/fresh");
    expect(readLine(us, "1 cup vegan milk").food?.id).not.toBe("milk/fresh");
  });
  it("reads the pint of the writer", () => {
    expect(readLine(us, "1 pint milk").portion?.grams).toBe(488);
    expect(readLine(gb, "1 pint milk").portion?.grams).toBe(586.1);
  });
  it("keeps lines apart from headings, and long ones out", () => {
    expect(readLine(us, "For the sauce:").status).toBe("no food");
    const long = readLine(us, `1 cup flour ${"x".repeat(2500)}`);
    expect(long.status).toBe("no food");
    expect(long.unread?.length).toBeLessThanOrEqual(201);
    expect(readLine(us, "").status).toBe("no food");
  });
  it("never cuts a character in two", () => {
    const unread = readLine(us, "🥕".repeat(1500)).unread ?? "";
    expect(() => encodeURIComponent(unread)).not.toThrow();
  });
  it("returns frozen data", () => {
    const r = readLine(us, "1 onion or 2 shallots");
    expect([r, r.portion, r.alternatives, r.portion?.measure].every((x) => Object.isFrozen(x))).toBe(true);
  });
});

describe("parsePortion", () => {
  it("reads an amount, or assumes the usual one", () => {
    expect(parsePortion(us, "450 g salt cod")).toMatchObject({
      id: "cod/salt-cured",
      grams: 450,
      measure: { amount: 450, unit: "g", text: "450 g", roundedBy: 0 },
    });
    expect(parsePortion(us, "450 g salt cod")).not.toHaveProperty("assumed");
    expect(parsePortion(us, "kale")).toMatchObject({
      id: "kale/fresh",
      grams: 250,
      assumed: true,
      measure: { text: "1 bunch" },
    });
    expect(parsePortion(us, "salt cod", "1 lb")).toMatchObject({ grams: 453.6, measure: { text: "1 lb" } });
    expect(parsePortion(us, "2% milk")).toMatchObject({ id: "milk/fresh", assumed: true });
  });
  it("throws what it cannot read, with what is near", () => {
    expect(codeOf(() => parsePortion(us, "100 g unobtainium"))).toBe("unknown food");
    const nearest = (dataOf("unknown food", () => parsePortion(us, "100 g oniin zz")) as ErrorData["unknown food"])
      .nearest;
    expect(nearest.map((m) => m.id)).toContain("onion/fresh");
    for (const bad of ["0 g salt", "-5 g salt", "99999999 g salt", "1/0 cup salt", "1 cup radishes", "1 bunch salt"])
      expect([bad, codeOf(() => parsePortion(us, bad))]).toEqual([bad, "unreadable amount"]);
    for (const bad of ["", "lots", "0 g", "-1 cup", "1 cup please", "1 bunch"])
      expect([bad, codeOf(() => parsePortion(us, "salt", bad))]).toEqual([bad, "unreadable amount"]);
    expect(codeOf(() => parsePortion(us, "x".repeat(2001)))).toBe("input too large");
  });
});

describe("printing", () => {
  const text = (c: typeof us, id: string, grams: number) =>
    portionOf(storeOf(c), storeOf(c).byId.get(id) ?? food(id), grams).measure.text;
  const CASES: readonly (readonly [id: string, grams: number, us: string, metric: string])[] = [
    ["flour/pantry", 125, "1 cup", "130 g"],
    ["flour/pantry", 8, "1 tbsp", "1 tbsp"],
    ["sugar/pantry", 100, "1/2 cup", "100 g"],
    ["salt/pantry", 6, "1 tsp", "1 tsp"],
    ["salt/pantry", 0.3, "a pinch", "a pinch"],
    ["salt/pantry", 1.5, "1/4 tsp", "1/4 tsp"],
    ["garlic/fresh", 9, "3 cloves", "3 cloves"],
    ["onion/fresh", 110, "1", "1"],
    ["kale/fresh", 250, "1 bunch", "1 bunch"],
    ["egg/fresh", 100, "2 large", "2 large"],
    ["milk/fresh", 244, "1 cup", "240 ml"],
    ["cod/salt-cured", 450, "1 lb", "450 g"],
    ["ground-beef/fresh", 227, "8 oz", "225 g"],
    ["lemon.juice/fresh", 15, "1 tbsp", "1 tbsp"],
    ["butter/fresh", 28, "2 tbsp", "30 g"],
    ["yeast/dried", 7, "1 packet", "1 packet"],
    ["cod/fresh", 1200, "2 3/4 lb", "1.2 kg"],
  ];
  it.each(CASES)("%s %d g", (id, grams, inUs, inMetric) => {
    expect([text(us, id, grams), text(gb, id, grams)]).toEqual([inUs, inMetric]);
  });
  it("says what the rounding cost, over as +", () => {
    expect(portionOf(store, food("flour/pantry"), 130).measure).toMatchObject({ text: "1 cup", roundedBy: -5 });
    expect(portionOf(store, food("flour/pantry"), 120).measure).toMatchObject({ text: "1 cup", roundedBy: 5 });
  });
  it("gives grams to a tenth and never 0", () => {
    expect([
      portionOf(store, food("saffron/dried"), 0.001).grams,
      portionOf(store, food("flour/pantry"), 1 / 3).grams,
    ]).toEqual([0.1, 0.3]);
  });
  it("prints in a unit on request, or not at all", () => {
    expect(kitchenMeasure(store, food("flour/pantry"), 125, { unit: "cup" })).toMatchObject({
      amount: 1,
      unit: "cup",
      text: "1 cup",
    });
    expect(kitchenMeasure(store, food("flour/pantry"), 125, { unit: "g" })).toMatchObject({
      amount: 125,
      roundedBy: 0,
    });
    expect(kitchenMeasure(store, food("flour/pantry"), 125, { unit: "bunch" })).toBeUndefined();
    expect(unitsOf(store, food("kale/fresh"))).toEqual([
      "g",
      "kg",
      "oz",
      "lb",
      "ml",
      "l",
      "tsp",
      "tbsp",
      "cup",
      "piece",
      "bunch",
      "pinch",
    ]);
  });
  it("weighs by density when no measure is given", () => {
    expect(densityOf(store, food("maple-syrup/pantry"))).toMatchObject({ gramsPerMl: 1.32 });
    expect(densityOf(store, food("radish/fresh"))).toBeUndefined();
    expect(usualGrams(store, food("radish/fresh"))).toBeCloseTo(453.59237, 5);
  });
});
