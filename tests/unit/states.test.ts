import { describe, expect, it } from "vitest";
import { isSteadfareError } from "../../src/errors.js";
import { convert } from "../../src/states/index.js";
import { saysTrimmed } from "../../src/portion/index.js";
import { readWish } from "../../src/states/wish.js";
import type { ErrorData } from "../../src/types.js";
import { larder } from "../helpers/larder.js";

const c = larder();
function thrown<C extends keyof ErrorData>(code: C, run: () => unknown): ErrorData[C] {
  try {
    run();
  } catch (e) {
    if (isSteadfareError(e, code)) return e.data as unknown as ErrorData[C];
    throw e;
  }
  throw new Error("nothing thrown");
}
const steps = (r: { steps: readonly { procedure: string }[] }) => r.steps.map((s) => s.procedure);

describe("convert to a unit", () => {
  it("keeps the weight and gives the measure, with the source of the measure read", () => {
    const r = convert(c, "1 cup flour", { unit: "g" });
    expect(r).toMatchObject({
      id: "flour/pantry",
      grams: 125,
      measure: { amount: 125, unit: "g", text: "125 g", roundedBy: 0 },
      steps: [],
      byProducts: [],
    });
    expect(r.sources).toEqual([{ key: "judgement", at: "made up for tests" }]);
    expect(convert(c, "250 g flour", { unit: "cup" }).measure).toMatchObject({
      amount: 2,
      text: "2 cups",
      roundedBy: 0,
    });
    expect(convert(c, "9 g garlic", { unit: "clove" }).measure.text).toBe("3 cloves");
    expect(convert(c, "1 lb flour", { unit: "kg" }).measure.amount).toBe(0.454);
  });
  it("refuses what is no unit, and what the food is not measured in", () => {
    expect(thrown("unknown term", () => convert(c, "1 cup flour", { unit: "parsec" as "g" }))).toMatchObject({
      kind: "unit",
      input: "parsec",
    });
    expect(thrown("no conversion", () => convert(c, "1 cup flour", { unit: "bunch" }))).toMatchObject({
      from: "flour/pantry",
      to: "bunch",
    });
    expect(thrown("no conversion", () => convert(c, "1 cup flour", { unit: "bunch" })).known).toContain("cup");
  });
});

describe("the words of a target", () => {
  it("takes cooking, trimming and what is taken off afterwards out of the name", () => {
    expect(readWish("duck meat, roasted, no skin")).toEqual({
      name: ["duck"],
      edible: false,
      cooked: { technique: "roast", meat: true },
    });
    expect(readWish("ground beef patty, pan broiled").cooked).toEqual({ technique: "fry", meat: false });
    expect(readWish("pork picnic, lean, roasted").cooked).toEqual({ technique: "roast", meat: true });
    expect(readWish("chicken meat and skin, stewed").cooked).toEqual({ technique: "stew", meat: false });
    expect(readWish("ground beef patty")).toEqual({ name: ["ground", "beef"], edible: false, cooked: { meat: false } });
    expect(readWish("clam meat")).toEqual({ name: ["clam"], edible: true });
    expect(readWish("shrimp, peeled")).toEqual({ name: ["shrimp"], edible: true });
  });
  it("boneless and peeled are trimmed already, unless it is bone-in", () => {
    expect(saysTrimmed("1 lb pork loin, boneless")).toBe(true);
    expect(saysTrimmed("1 lb lamb leg, bone-in")).toBe(false);
    expect(saysTrimmed("1 lb unpeeled potatoes")).toBe(false);
  });
});

describe("convert along states", () => {
  it("trims what is weighed, not what is measured", () => {
    expect(convert(c, "1000 g potatoes", "potato, edible portion")).toMatchObject({
      id: "potato/fresh",
      grams: 750,
      steps: [{ procedure: "trim", minutes: { active: 3, waiting: 0 } }],
    });
    expect(convert(c, "2 potatoes", { state: "edible portion" })).toMatchObject({ grams: 346, steps: [] });
  });
  it("goes along becomes, both ways", () => {
    expect(convert(c, "1 cup rice", { state: "cooked" })).toMatchObject({
      id: "white-rice/fresh-cooked",
      grams: 518,
      steps: [{ procedure: "simmer" }],
    });
    expect(convert(c, "1 cup rice", "cooked rice")).toMatchObject({ id: "white-rice/fresh-cooked", grams: 518 });
    expect(convert(c, "2 cups cooked rice", "white rice")).toMatchObject({
      id: "white-rice/pantry",
      grams: 112.9,
      steps: [{ procedure: "simmer" }],
    });
  });
  it("composes making ready and cooking: amounts scale, steps come in order", () => {
    const cod = convert(c, "450 g salt cod", { state: "cooked" });
    expect(cod).toMatchObject({ id: "cod/salt-cured", grams: 468 });
    expect(cod.steps).toEqual([
      { procedure: "desalt-fish", minutes: { active: 10, waiting: 1440 } },
      { procedure: "simmer", minutes: { active: 0, waiting: 15 } },
    ]);
    expect(convert(c, "450 g salt cod", "ready")).toMatchObject({ grams: 585 });
    expect(convert(c, "450 g salt cod", "fresh cod")).toMatchObject({ id: "cod/fresh", grams: 585 });
    expect(steps(convert(c, "1 lb frozen cod", "cod, cooked"))).toEqual(["thaw", "simmer"]);
  });
  it("finds beans in their can", () => {
    expect(convert(c, "100 g dried black beans", "canned black beans")).toMatchObject({
      id: "black-bean/canned",
      grams: 250,
      steps: [{ procedure: "boil-beans" }],
    });
  });
  it("tells what is left over", () => {
    const r = convert(c, "30 g dried porcini", "fresh porcini");
    expect(r).toMatchObject({
      id: "porcini/fresh",
      grams: 120,
      steps: [{ procedure: "soak-mushrooms", minutes: { active: 2, waiting: 30 } }],
    });
    expect(r.byProducts).toMatchObject([{ id: "vegetable-stock/pantry", name: "mushroom soaking liquid", grams: 240 }]);
    const back = convert(c, "120 g porcini", "dried porcini");
    expect(back).toMatchObject({ id: "porcini/dried", grams: 30 });
    expect(back.byProducts).toEqual([]);
  });
  it("carries the range and what was assumed", () => {
    expect(convert(c, "100 to 200 g salt cod", "ready")).toMatchObject({ grams: 195, range: [130, 260] });
    expect(convert(c, "kale", { unit: "g" })).toMatchObject({ grams: 250, assumed: true });
  });
  it("is itself when nothing changes", () => {
    expect(convert(c, "2 onions", "onion")).toMatchObject({
      id: "onion/fresh",
      grams: 220,
      measure: { text: "2" },
      steps: [],
    });
  });
  it("leaves what is cooked as it is", () => {
    expect(convert(c, "2 cups cooked rice", { state: "cooked" })).toMatchObject({
      id: "white-rice/fresh-cooked",
      grams: 316,
      steps: [],
    });
  });
  it("names what it could convert to when it cannot", () => {
    const known = thrown("no conversion", () => convert(c, "450 g salt cod", "honey")).known;
    expect(known).toEqual(
      expect.arrayContaining(["g", "edible portion", "ready", "cooked", "cod/fresh", "cod/frozen"]),
    );
    expect(thrown("no conversion", () => convert(c, "1 cup flour", { state: "smoked" })).to).toBe("smoked");
    expect(thrown("unknown food", () => convert(c, "1 cup zzzz", { unit: "g" })).input).toBe("1 cup zzzz");
  });
  it("returns frozen data", () => {
    const r = convert(c, "450 g salt cod", "ready");
    expect([r, r.steps, r.measure, r.sources].every((x) => Object.isFrozen(x))).toBe(true);
  });
});
