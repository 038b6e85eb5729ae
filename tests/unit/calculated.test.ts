import { describe, expect, it } from "vitest";
import { foodFacts, openCatalogue } from "../../src/index.js";
import { calculator, mix, sourceOf } from "../../src/catalogue/authoring/calculated.js";
import { addState, set, state } from "../helpers/broken-records.js";
import { authoredOf, clean, compiledOf, look, problemsOf, type Records } from "../helpers/records.js";

const DRIED = { parts: { "cod/fresh": 1 }, water: { v: 16, from: "judgement" } };
const SALTED = { parts: { "cod/dried": 0.8, "salt/pantry": 0.2 }, from: "judgement" };
/** Dried cod from fresh, and salted from that. */
function twice(): Records {
  const records = clean();
  addState(records, "dried", "none");
  set(state(records, "cod/dried"), { calculated: DRIED });
  addState(records, "smoked", "none");
  set(state(records, "cod/smoked"), { calculated: SALTED });
  return records;
}

describe("mixing", () => {
  const pea = { water: 80, protein: 5, carbohydrate: 14, sugars: 6, sodium: 5 };
  const oil = { water: 0, protein: 0, fat: 100, carbohydrate: 0 };
  it("sums what the parts bring by their share of the weight", () => {
    expect(
      mix([
        { share: 0.9, figures: pea },
        { share: 0.1, figures: { ...oil, sodium: 0 } },
      ]),
    ).toMatchObject({
      water: 72,
      protein: 4.5,
      sodium: 4.5,
    });
  });
  it("spreads the rest over the weight that loss of water leaves, and the other way round", () => {
    expect(mix([{ share: 1, figures: pea }], 10)).toEqual({
      water: 10,
      protein: 23,
      carbohydrate: 63,
      sugars: 27,
      sodium: 23,
    });
    expect(mix([{ share: 1, figures: { water: 10, protein: 22.5 } }], 80)).toEqual({ water: 80, protein: 5 });
  });
  it("knows that oil without a figure for sugar has none, and says nothing where a larger part was not measured", () => {
    const half = [
      { share: 0.5, figures: pea },
      { share: 0.5, figures: oil },
    ];
    expect(mix(half)["sugars"]).toBe(3);
    expect(mix(half)).not.toHaveProperty("sodium");
    expect(mix(half)).not.toHaveProperty("fat");
  });
  it("lets the rest speak for a twentieth that was not measured", () => {
    const parts = (share: number): Parameters<typeof mix>[0] => [
      { share: 1 - share, figures: { water: 80, sodium: 100 } },
      { share, figures: { water: 80 } },
    ];
    expect(mix(parts(0.05))["sodium"]).toBe(100);
    expect(mix(parts(0.06))).not.toHaveProperty("sodium");
  });
  it("gives pure water back as it is", () => {
    expect(mix([{ share: 1, figures: { water: 100, sodium: 3 } }], 99)).toEqual({ water: 99, sodium: 3 });
  });
});

describe("a calculated ingredient", () => {
  it("has the figures of its parts, two calculations deep, and passes the rules", () => {
    const records = twice();
    expect(problemsOf(records)).toEqual([]);
    const of = calculator(authoredOf(records), look);
    // 84 g dry matter of 18.78: cod raw is 81.22 % water in the sample
    expect(of("cod/dried")?.figures["protein"]).toBe(80);
    expect(of("cod/smoked")?.figures["protein"]).toBe(64);
    expect(of("cod/fresh")).toBeUndefined();
    expect(of("cod/smoked")?.from.map((r) => r.record)).toEqual(["15015", "02047"]);
  });
  it("cites the records it comes from, marked as calculated", () => {
    const { flat } = compiledOf(twice());
    const row = flat.ingredients.find((r) => r.id === "cod/smoked");
    const [value, place] = row?.figures["protein"] ?? [];
    expect(value).toBe(64);
    expect(flat.commons.refs[place ?? -1]).toEqual(["usda-sr28", "15015 02047", "calculated"]);
  });
  it("says so to whoever asks for the facts, and names the record", () => {
    const { per100g } = foodFacts(openCatalogue(), "black-garlic/aged");
    expect(per100g["protein"]?.source).toEqual({ key: "usda-sr28", at: "calculated from 11215" });
    expect(per100g["free glutamate"]?.source).toEqual({ key: "judgement" });
    const published = foodFacts(openCatalogue(), "garlic/fresh").per100g["protein"]?.source;
    expect(published).toEqual({ key: "usda-sr28", at: "11215" });
  });
  it("keeps what was written by hand beside the sum", () => {
    const records = twice();
    set(state(records, "cod/dried"), { figures: { sodium: { v: 500, from: "judgement" } } });
    const { flat } = compiledOf(records);
    expect(flat.ingredients.find((r) => r.id === "cod/dried")?.figures["sodium"]?.[0]).toBe(500);
  });
  it("has no figures when a part is missing or it is part of itself", () => {
    const records = twice();
    set(state(records, "cod/dried"), { calculated: { ...DRIED, parts: { "cod/smoked": 1 } } });
    const of = calculator(authoredOf(records), look);
    expect(of("cod/dried")).toBeUndefined();
    expect(of("cod/smoked")).toBeUndefined();
  });
  it("a circle is named once for each that stands in it", () => {
    const records = twice();
    set(state(records, "cod/dried"), { calculated: { ...DRIED, parts: { "cod/smoked": 1 } } });
    const found = problemsOf(records).filter((p) => p.rule === "calculated");
    expect(found.map((p) => p.message)).toEqual([
      "goes in a circle: cod/dried < cod/smoked < cod/dried.",
      "goes in a circle: cod/smoked < cod/dried < cod/smoked.",
    ]);
  });
});

describe("the source", () => {
  const record = (key: string, number: string) => ({ key, record: number, description: "", figures: {}, weights: [] });
  it("stands under the table of the heaviest part and names the other one", () => {
    expect(sourceOf([record("mext-2020", "11129"), record("usda-sr28", "02047")])).toEqual([
      "mext-2020",
      "11129 usda-sr28 02047",
    ]);
  });
});
