// Published cooking temperatures against what the catalogue's ingredients are told. The source stands beside each row.
import { describe, expect, it } from "vitest";
import { openCatalogue, storeOf } from "../../src/catalogue/index.js";
import type { Ingredient } from "../../src/catalogue/store.js";
import { donenessChange, donenessFor, handlingFor, readinessOf, type Place } from "../../src/safety/index.js";

const store = storeOf(openCatalogue());
const the = (id: string): Ingredient => {
  const i = store.byId.get(id);
  if (!i) throw new Error(`The catalogue has no ${id}.`);
  return i;
};

const CHART = "FoodSafety.gov chart, reproduced 2013; Mississippi State Extension 2016";
const targets: readonly (readonly [string, Place, number, number, string])[] = [
  ["ground-beef/fresh", "US", 71, 0, CHART],
  ["ground-pork/fresh", "US", 71, 0, CHART],
  ["ground-turkey/fresh", "US", 74, 0, CHART],
  ["ribeye-steak/fresh", "US", 63, 3, CHART],
  ["leg-of-lamb/fresh", "US", 63, 3, CHART],
  ["pork-loin/fresh", "US", 63, 3, CHART],
  ["chicken/fresh", "US", 74, 0, CHART],
  ["chicken-thigh/fresh", "US", 74, 0, CHART],
  ["cod/fresh", "US", 63, 0, CHART],
  ["egg/fresh", "US", 71, 0, CHART],
  ["venison-steak/fresh", "US", 71, 0, "from memory"],
  ["beef-liver/fresh", "US", 71, 0, "from memory"],
  ["chicken-thigh/fresh", "Canada", 74, 0, "Government of Canada"],
  ["chicken/fresh", "Canada", 85, 0, "York Region table; other Canadian pages say 82: the stricter"],
  ["ribeye-steak/fresh", "Canada", 63, 0, "Simcoe Muskoka"],
  ["pork-loin/fresh", "Canada", 71, 0, "Simcoe Muskoka"],
  ["ground-beef/fresh", "Canada", 71, 0, "Simcoe Muskoka"],
  ["ground-chicken/fresh", "Canada", 74, 0, "Simcoe Muskoka"],
  ["cod/fresh", "Canada", 70, 0, "Simcoe Muskoka, York Region"],
  ["shrimp/fresh", "Canada", 74, 0, "York Region, table by Health Canada"],
  ["egg/fresh", "Canada", 74, 0, "Simcoe Muskoka, egg dishes"],
  ["venison-steak/fresh", "Canada", 74, 0, "Health Canada, from memory"],
  ["ground-beef/fresh", "UK", 70, 0, "University of Nottingham: 70 °C for 2 minutes"],
  ["chicken-thigh/fresh", "UK", 70, 0, "University of Nottingham: 70 °C for 2 minutes"],
  ["chicken-thigh/fresh", "Australia", 75, 0, "Victoria Department of Health, section 34"],
  ["ground-beef/fresh", "WHO", 70, 0, "Five keys, second-hand"],
];

describe("least internal temperatures", () => {
  it.each(targets)("%s, %s: %d °C, rest %d (%s)", (id, jurisdiction, celsius, rest) => {
    const d = donenessFor(store, the(id), { jurisdiction });
    expect(d).toMatchObject({ celsius, rest });
    expect(Math.abs((d?.fahrenheit ?? 0) - (celsius * 9) / 5 - 32)).toBeLessThanOrEqual(1.2); // charts round either way
  });
  it("UK figures are held for two minutes (University of Nottingham; a UK training provider)", () =>
    expect(donenessFor(store, the("ground-beef/fresh"), { jurisdiction: "UK" })?.hold).toBe(120));
  it("says that sources differ", () => expect(donenessFor(store, the("pork-loin/fresh"))?.text).toMatch(/Canada/));
});

describe("changed when the protein changes (from the rows above)", () => {
  it.each([
    ["ribeye-steak/fresh", "ground-beef/fresh", true],
    ["pork-loin/fresh", "chicken-thigh/fresh", true],
    ["cod/fresh", "chicken-thigh/fresh", true],
    ["prosciutto/cured", "pork-loin/fresh", true],
    ["salami/cured", "mexican-chorizo/fresh", true],
    ["chicken-thigh/fresh", "cod/fresh", false],
  ])("%s to %s: raised %s", (from, to, raised) =>
    expect(donenessChange(store, the(from), the(to))?.raised).toBe(raised),
  );
  it("beef to lamb and tofu to anything plant change nothing", () => {
    expect(donenessChange(store, the("ribeye-steak/fresh"), the("lamb-chop/fresh"))).toBeUndefined();
    expect(donenessChange(store, the("ribeye-steak/fresh"), the("potato/fresh"))).toBeUndefined();
  });
});

describe("ready to eat, or to be cooked first", () => {
  it.each([
    ["bacon/cured", "cook first", "9 CFR 318.10: needs cooking by the user"],
    ["mexican-chorizo/fresh", "cook first", "9 CFR 318.10"],
    ["lap-cheong/dried", "cook first", "9 CFR 318.10 by kind, judgement"],
    ["prosciutto/cured", "cured", "NHS 111 Wales: cured uncooked"],
    ["salmon/smoked", "cured", "FSA 2024: cold smoked"],
    ["mackerel/smoked-cooked", "ready", "common practice, no source"],
    ["tuna/canned", "ready", "common practice, no source"],
    ["pork-loin/fresh", "cook", "common practice, no source"],
  ])("%s: %s (%s)", (id, readiness) => expect(readinessOf(store, the(id))).toBe(readiness));
});

describe("holding, cooling, thawing, reheating", () => {
  const figure = (
    id: string,
    topic: string,
    jurisdiction: "US" | "UK" | "Canada" | "Australia" | "WHO" | "Hong Kong",
    key: string,
    technique?: string,
  ): readonly number[] =>
    handlingFor(store, the(id), { jurisdiction, ...(technique === undefined ? {} : { technique }) })
      .filter((h) => h.topic === topic && key in h.figures)
      .map((h) => h.figures[key] as number);
  it.each([
    ["chicken-thigh/fresh", "cool", "US", "firstHours", 2, "WAC 246-215-03515"],
    ["chicken-thigh/fresh", "cool", "US", "totalHours", 6, "WAC 246-215-03515"],
    ["chicken-thigh/fresh", "hold", "US", "celsius", 57, "WAC 246-215-03525, hot"],
    ["chicken-thigh/fresh", "hold", "UK", "celsius", 63, "Bromley; Scottish regulations 2006, hot"],
    ["chicken-thigh/fresh", "hold", "Australia", "celsius", 60, "Victoria Department of Health"],
    ["chicken-thigh/fresh", "hold", "US", "hours", 2, "Academy of Nutrition and Dietetics"],
    ["chicken-thigh/fresh", "reheat", "US", "celsius", 74, "California 114016"],
    ["chicken-thigh/fresh", "reheat", "UK", "celsius", 82, "Scotland 1995; the stricter"],
    ["chicken-thigh/frozen", "thaw", "UK", "hours", 24, "University of Nottingham"],
    ["white-rice/pantry", "rice", "UK", "hours", 1, "a UK dietitian; 1.5 h by a local authority: the stricter"],
    ["kidney-bean/dried", "soak", "US", "standMinutes", 60, "Penn State Extension, quoted"],
    ["garlic/fresh", "store", "US", "days", 4, "newer US advice, from memory; NCHFP says 7: the stricter"],
  ] as const)("%s %s %s %s = %d (%s)", (id, topic, jurisdiction, key, value, _source) =>
    expect(figure(id, topic, jurisdiction, key)).toContain(value),
  );
  it("fish to be eaten raw: 168 hours at -20 °C (Southern Nevada Health District)", () =>
    expect(figure("cod/fresh", "cure", "US", "hours", "raw")).toEqual([168]));
});
