import { describe, expect, it } from "vitest";
import {
  donenessChange,
  donenessFor,
  handlingFor,
  hazardsFor,
  mealConflicts,
  readAvoid,
  readinessOf,
  STANDING_NOTICE,
  type AvoidRules,
} from "../../src/safety/index.js";
import type { Ingredient } from "../../src/catalogue/store.js";
import type { Avoid } from "../../src/types.js";
import { larder, tables } from "../helpers/safety.js";
import { usual } from "../helpers/safety-foods.js";

const l = larder();
const { store, food } = l;
const foods = usual(l);
const the = (name: string): Ingredient => foods[name] as Ingredient;
const rules = (avoid: Avoid): AvoidRules =>
  readAvoid(store, avoid, (text) => Object.entries(foods).flatMap(([name, i]) => (name === text ? [i] : [])));

describe("hazards", () => {
  const ask = (name: string, more: Partial<Parameters<typeof hazardsFor>[1]> = {}): ReturnType<typeof hazardsFor> =>
    hazardsFor(store, { use: [{ ingredient: the(name), grams: 100 }], ...more });
  it("offers dry kidney beans only with a hard boil, canned without", () => {
    const dry = ask("kidney beans", { missing: the("canned kidney beans"), technique: "slow cooker" });
    expect(dry.stops.every((s) => s.kind === "unless")).toBe(true);
    expect(dry.required).toHaveLength(1);
    expect(dry.required[0]).toMatchObject({ procedure: "boil-hard" });
    expect(dry.required[0]?.text).toMatch(/30 minutes/);
    expect(dry.cautions.map((c) => c.hazard)).toContain("slow-cooker-beans");
    expect(ask("canned kidney beans", { missing: the("kidney beans") }).required).toEqual([]);
  });
  it("refuses raw what has to be cooked", () => {
    for (const name of ["morel", "cassava", "bacon"])
      expect(ask(name, { technique: "raw" }).stops.some((s) => s.kind === "never")).toBe(true);
    expect(ask("morel", { technique: "simmer" }).stops.some((s) => s.kind === "never")).toBe(false);
    expect(ask("chicken", { technique: "raw" }).stops.some((s) => s.kind === "never")).toBe(true);
    expect(ask("carp", { technique: "raw" }).stops.some((s) => s.kind === "never")).toBe(true);
    expect(ask("cod", { technique: "cure" }).required.map((r) => r.procedure)).toContain("freeze-fish");
  });
  it("never swaps a preserving acid, salt in a cure or curing salt", () => {
    const never = (name: string, missing: string, technique: string): boolean =>
      ask(name, { missing: the(missing), technique, role: "acid" }).stops.some((s) => s.kind === "never");
    expect(never("lemon juice", "white vinegar", "can")).toBe(true);
    expect(never("lemon juice", "white vinegar", "pickle")).toBe(true);
    expect(never("lemon juice", "white vinegar", "braise")).toBe(false);
    expect(never("white vinegar", "white vinegar", "pickle")).toBe(false);
    expect(ask("curing salt", { missing: the("salt") }).stops.map((s) => s.hazard)).toContain("curing-salt-in");
    expect(ask("salt", { missing: the("curing salt") }).stops.map((s) => s.hazard)).toContain("curing-salt-out");
  });
  it("stops for the diner at the table and only cautions others", () => {
    const alone = ask("honey", { missing: the("butternut squash") });
    expect(alone.stops).toEqual([]);
    expect(alone.cautions.find((c) => c.hazard === "honey-infant")).toMatchObject({ severity: "caution" });
    expect(ask("honey", { rules: rules({ diets: ["infant"] }) }).stops).toContainEqual(
      expect.objectContaining({ kind: "diner", hazard: "honey-infant" }),
    );
    expect(ask("honey", { missing: the("honey") }).cautions.map((c) => c.hazard)).not.toContain("honey-infant");
  });
  it("asks for cheese cooked through for a pregnant diner when it is baked", () => {
    const baked = ask("brie", { technique: "bake", rules: rules({ diets: ["pregnant"] }) });
    expect(baked.stops.map((s) => s.kind)).toEqual(["unless"]);
    expect(baked.required.map((r) => r.procedure)).toContain("cook-through");
    expect(ask("brie", { technique: "raw", rules: rules({ diets: ["pregnant"] }) }).stops.map((s) => s.kind)).toEqual([
      "diner",
    ]);
  });
  it("minds amounts", () => {
    const some = (grams: number, serves?: number): readonly string[] =>
      hazardsFor(store, {
        use: [{ ingredient: the("nutmeg"), grams }],
        ...(serves === undefined ? {} : { serves }),
      }).stops.map((s) => s.kind);
    expect(some(1, 4)).toEqual([]);
    expect(some(30, 4)).toEqual(["never"]);
    expect(
      hazardsFor(store, { use: [{ ingredient: the("nutmeg"), grams: 7 }] }).cautions.map((c) => c.hazard),
    ).toContain("nutmeg-dose");
    expect(
      hazardsFor(store, { use: [{ ingredient: the("nutmeg"), grams: 0.5 }], serves: 4 }).cautions.map((c) => c.hazard),
    ).not.toContain("nutmeg-dose");
  });
  it("minds the rest of the dish: raw pineapple and gelatin, both ways", () => {
    expect(ask("pineapple", { dish: [the("gelatin")] }).required.map((r) => r.hazard)).toContain("gelatin-raw-enzyme");
    expect(ask("gelatin", { dish: [the("pineapple")] }).required.map((r) => r.hazard)).toContain(
      "gelatin-meets-enzyme",
    );
    expect(ask("pineapple", { dish: [the("egg")] }).required).toEqual([]);
  });
  it("hears garlic oil in the request", () => {
    expect(ask("garlic", { context: "for a jar of garlic oil, kept" }).required.map((r) => r.hazard)).toContain(
      "garlic-in-oil",
    );
    expect(ask("garlic", { context: "for a garlicky stew" }).required).toEqual([]);
  });
  it("raises the temperature when the protein changes", () => {
    const mince = ask("beef mince", { missing: the("beef"), technique: "grill" });
    expect(mince.required.find((r) => r.hazard === "doneness")?.text).toMatch(/160 °F \(71 °C\)/);
    expect(
      ask("chicken", { missing: the("pork"), technique: "braise" }).required.find((r) => r.hazard === "doneness")?.text,
    ).toMatch(/165 °F/);
    expect(ask("cod", { missing: the("chicken") }).required.filter((r) => r.hazard === "doneness")).toEqual([]);
  });
  it("cautions relatives of an avoided allergen", () => {
    expect(ask("lupin", { rules: rules({ allergens: ["peanuts"] }) }).cautions.map((c) => c.hazard)).toContain(
      "cross-reaction: peanut-lupin",
    );
    expect(ask("scallop", { rules: rules({ allergens: ["crustaceans"] }) }).cautions.map((c) => c.hazard)).toContain(
      "cross-reaction: crustacean-mollusc",
    );
    expect(ask("lupin", {}).cautions.map((c) => c.hazard)).not.toContain("cross-reaction: peanut-lupin");
  });
  it("puts grave cautions first, once each, and says what is unsourced", () => {
    const { cautions } = ask("kidney beans", { technique: "slow cooker" });
    expect(new Set(cautions.map((c) => c.hazard)).size).toBe(cautions.length);
    expect(cautions[0]?.severity).toBe("stop");
    const lima = hazardsFor(store, {
      use: [{ ingredient: food("lima-bean/dried", { kinds: ["pulse"], origin: ["plant"] }), grams: 100 }],
    });
    expect(lima.cautions.find((c) => c.hazard === "lima-raw")?.text).toMatch(/No publication was read/);
    const dry = ask("kidney beans").cautions.find((c) => c.hazard === "bean-lectin");
    expect(dry?.text).not.toMatch(/No publication was read/);
  });
});

describe("a whole meal", () => {
  const kosher = rules({ diets: ["kosher"] });
  it("keeps meat and milk apart, and warns of fish with meat", () => {
    const found = mealConflicts(store, [the("beef"), the("butternut squash"), the("milk"), the("cod")], kosher);
    expect(found.map((c) => [c.hazard, c.severity])).toEqual([
      ["kosher-meat-milk", "stop"],
      ["kosher-meat-fish", "caution"],
    ]);
    expect(found[0]?.between).toEqual(["stewing-beef/fresh", "milk/fresh"]);
    expect(mealConflicts(store, [the("beef"), the("butternut squash")], kosher)).toEqual([]);
    expect(mealConflicts(store, [the("beef"), the("milk")], rules({ diets: ["halal"] }))).toEqual([]);
  });
  it("stops a swap that would bring them together", () => {
    const stops = hazardsFor(store, {
      missing: the("vegan butter"),
      use: [{ ingredient: the("butter"), grams: 20 }],
      dish: [the("beef"), the("vegan butter")],
      rules: kosher,
    }).stops;
    expect(stops).toContainEqual(
      expect.objectContaining({ kind: "diner", hazard: "kosher-meat-milk", because: "diet" }),
    );
    expect(
      hazardsFor(store, {
        missing: the("beef"),
        use: [{ ingredient: the("tofu"), grams: 20 }],
        dish: [the("beef"), the("milk")],
        rules: kosher,
      }).stops,
    ).toEqual([]);
  });
});

describe("doneness and handling", () => {
  it("speaks by class, jurisdiction and locale", () => {
    expect(donenessFor(store, the("pork"))).toMatchObject({
      kind: "whole-pork",
      jurisdiction: "US",
      celsius: 63,
      fahrenheit: 145,
      rest: 3,
    });
    expect(donenessFor(store, the("pork"), { jurisdiction: "Canada" })).toMatchObject({ celsius: 71 });
    expect(donenessFor(larder("en-GB").store, the("pork"))).toMatchObject({
      jurisdiction: "UK",
      celsius: 70,
      hold: 120,
    });
    expect(donenessFor(store, the("pork"), { jurisdiction: "strictest" })?.celsius).toBeGreaterThanOrEqual(70);
    expect(donenessFor(store, the("butternut squash"))).toBeUndefined();
    expect(donenessFor(store, the("dry-cured ham"))).toBeUndefined();
  });
  it("knows what is ready and what only looks so", () => {
    expect([
      readinessOf(store, the("dry-cured ham")),
      readinessOf(store, the("bacon")),
      readinessOf(store, the("crab stick")),
      readinessOf(store, the("pork")),
      readinessOf(store, the("onion")),
    ]).toEqual(["cured", "cook first", "ready", "cook", "not applicable"]);
  });
  it("tells a change from none", () => {
    expect(donenessChange(store, the("beef"), the("beef mince"))).toMatchObject({ raised: true });
    expect(donenessChange(store, the("dry-cured ham"), the("pork"))).toMatchObject({ raised: true });
    expect(donenessChange(store, the("chicken"), the("cod"))).toMatchObject({ raised: false });
    expect(donenessChange(store, the("beef"), the("pork"))).toBeUndefined();
  });
  it("tells how to thaw, and how to cool rice, the stricter first", () => {
    const frozen = food("cod/frozen", { kinds: ["finfish"], origin: ["fish"] });
    expect(handlingFor(store, frozen, { jurisdiction: "US" }).map((h) => h.topic)).toContain("thaw");
    const rice = handlingFor(store, food("white-rice/fresh-cooked", { kinds: ["rice", "grain"] }), {
      jurisdiction: "UK",
    }).find((h) => h.topic === "rice");
    expect(rice?.figures).toMatchObject({ hours: 1 });
  });
});

describe("how it speaks", () => {
  const texts = [
    ...tables.hazards.hazards.flatMap((h) => [h.text, h.step?.text ?? h.text]),
    ...tables.diets.diets.flatMap((d) => [d.text, ...d.rules.map((r) => r.text)]),
    ...tables.allergens.cross.map((c) => c.text),
    ...tables.temperatures.handling.map((h) => h.text),
  ];
  it("is short, ends its sentences and hides behind nobody", () => {
    for (const text of texts) {
      expect(text.length, text).toBeLessThanOrEqual(230);
      expect(text, text).toMatch(/[.]$/);
      expect(text, text).not.toMatch(/liab|disclaim|at your own risk|consult a|!/i);
    }
  });
  it("has one standing notice that puts others first", () => {
    expect(STANDING_NOTICE).toMatch(/Local food-safety rules.*label.*come first/);
    for (const text of texts) expect(text).not.toContain("come first");
  });
});
