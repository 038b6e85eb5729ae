// Published food hazards against the answers. The source stands beside each row; "memory" means no publication was read.
import { describe, expect, it } from "vitest";
import { openCatalogue, storeOf } from "../../src/catalogue/index.js";
import type { Ingredient } from "../../src/catalogue/store.js";
import { hazardsFor, readAvoid, type HazardAnswer } from "../../src/safety/index.js";

const store = storeOf(openCatalogue());
const the = (id: string): Ingredient => {
  const i = store.byId.get(id);
  if (!i) throw new Error(`The catalogue has no ${id}.`);
  return i;
};
interface Asked {
  readonly technique?: string;
  readonly role?: string;
  readonly diets?: readonly string[];
  readonly dish?: readonly string[];
  readonly context?: string;
  readonly grams?: number;
  readonly serves?: number;
}
function ask(missing: string | undefined, use: string, q: Asked = {}): HazardAnswer {
  return hazardsFor(store, {
    ...(missing === undefined ? {} : { missing: the(missing) }),
    use: [{ ingredient: the(use), grams: q.grams ?? 100 }],
    ...(q.technique === undefined ? {} : { technique: q.technique }),
    ...(q.role === undefined ? {} : { role: q.role }),
    ...(q.context === undefined ? {} : { context: q.context }),
    ...(q.serves === undefined ? {} : { serves: q.serves }),
    dish: (q.dish ?? []).map(the),
    rules: readAvoid(store, { diets: q.diets ?? [] }, () => []),
  });
}
const stops = (a: HazardAnswer, kind: "never" | "unless" | "diner"): readonly string[] =>
  a.stops.filter((s) => s.kind === kind).map((s) => s.hazard);

describe("never", () => {
  const rows: readonly (readonly [string | undefined, string, Asked, string, string])[] = [
    [
      "white-vinegar/pantry",
      "cider-vinegar/pantry",
      { technique: "can" },
      "preserving-acid",
      "Penn State, Acidifying canned products",
    ],
    [
      "white-vinegar/pantry",
      "rice-vinegar/pantry",
      { technique: "pickle" },
      "preserving-acid",
      "Penn State, Acidifying canned products",
    ],
    ["tomato/fresh", "zucchini/fresh", { technique: "can" }, "canning-low-acid", "Rutgers, Canning in jars"],
    ["salt/pantry", "curing-salt/pantry", {}, "curing-salt-in", "an encyclopaedia, second-hand"],
    ["curing-salt/pantry", "salt/pantry", { technique: "cure" }, "curing-salt-out", "an encyclopaedia, second-hand"],
    ["baking-soda/pantry", "kansui/pantry", {}, "lye-in", "SA Health, on a copy"],
    ["wakame/dried", "hijiki/dried", {}, "hijiki", "UK FSA 2010"],
    ["chard/fresh", "rhubarb/fresh", { role: "leafy green" }, "rhubarb-as-greens", "MedlinePlus, second-hand"],
    ["white-mushroom/fresh", "morel/fresh", { technique: "raw" }, "morel-raw", "US FDA 2023, second-hand"],
    [
      "white-mushroom/fresh",
      "mixed-wild-mushrooms/fresh",
      { technique: "raw" },
      "wild-mushroom",
      "California Department of Public Health, second-hand",
    ],
    [
      "white-mushroom/fresh",
      "oyster-mushroom/fresh",
      { context: "some we picked ourselves" },
      "foraged",
      "California Department of Public Health, second-hand",
    ],
    [
      "jicama/fresh",
      "taro/fresh",
      { technique: "raw" },
      "taro-raw",
      "memory for cultivated taro; Hong Kong CFS for wild",
    ],
    ["jicama/fresh", "cassava/fresh", { technique: "raw" }, "cassava-raw", "FSANZ 2017, on a copy"],
    ["tuna/fresh", "carp/fresh", { technique: "raw" }, "raw-freshwater-fish", "US CDC, Clonorchis"],
    ["salami/cured", "bacon/cured", { technique: "raw" }, "must-be-cooked", "9 CFR 318.10"],
    ["tuna/fresh", "chicken-breast/fresh", { technique: "raw" }, "raw-meat", "derived from the cooking chart"],
    [
      "allspice/dried-ground",
      "nutmeg/dried-ground",
      { grams: 30, serves: 4 },
      "nutmeg-too-much",
      "ACMT: effects from 5 g",
    ],
    [
      "vegetable-oil/pantry",
      "butter/fresh-unsalted",
      { technique: "deep-fry", role: "frying medium" },
      "watery-fat",
      "derived from NFPA",
    ],
  ];
  it.each(rows)("%s to %s %j: %s (%s)", (missing, use, q, hazard) =>
    expect(stops(ask(missing, use, q), "never")).toContain(hazard),
  );
});

describe("unless a step is done", () => {
  const rows: readonly (readonly [string | undefined, string, Asked, string, string, RegExp])[] = [
    [
      "kidney-bean/canned",
      "kidney-bean/dried",
      {},
      "bean-lectin",
      "FDA Bad Bug Book, second-hand: 30 min",
      /30 minutes/,
    ],
    [
      "kidney-bean/canned",
      "cannellini-bean/dried",
      { technique: "slow cooker" },
      "slow-cooker-beans",
      "FDA Bad Bug Book, second-hand",
      /boil hard for 30/i,
    ],
    [
      "potato/fresh",
      "cassava/fresh",
      { technique: "boil" },
      "cassava-raw",
      "FSANZ 2017, on a copy",
      /throw the water away/,
    ],
    ["potato/fresh", "taro/fresh", { technique: "boil" }, "taro-raw", "a local guide, second-hand", /fully soft/],
    [
      "bamboo-shoots/canned",
      "bamboo-shoots/fresh",
      {},
      "bamboo-raw",
      "Food Safety Information Council: 8 to 10 min",
      /10 minutes/,
    ],
    ["broccoli/fresh", "fiddleheads/fresh", {}, "fiddlehead", "Health Canada 2012: 15 min", /15 minutes/],
    [
      "white-mushroom/fresh",
      "morel/fresh",
      { technique: "simmer" },
      "morel-raw",
      "US FDA 2023, second-hand",
      /through/,
    ],
    [
      "salmon/smoked",
      "salmon/fresh",
      { technique: "cure" },
      "raw-fish-parasites",
      "Southern Nevada Health District: 7 days",
      /7 days/,
    ],
    [
      "sesame-oil/pantry",
      "garlic/fresh",
      { context: "infused oil" },
      "garlic-in-oil",
      "NCHFP 7 days; 4 days from memory",
      /4 days/,
    ],
    [
      "ribeye-steak/fresh",
      "ground-beef/fresh",
      { technique: "grill" },
      "doneness",
      "FoodSafety.gov chart: 71 °C",
      /71 °C/,
    ],
    [
      "pork-loin/fresh",
      "chicken-thigh/fresh",
      { technique: "roast" },
      "doneness",
      "FoodSafety.gov chart: 74 °C",
      /74 °C/,
    ],
  ];
  it.each(rows)("%s to %s %j: %s (%s)", (missing, use, q, hazard, _source, step) => {
    const answer = ask(missing, use, q);
    expect(stops(answer, "unless")).toContain(hazard);
    expect(stops(answer, "never")).toEqual([]);
    expect(answer.required.some((r) => step.test(r.text))).toBe(true);
    expect(answer.cautions.find((c) => c.hazard === hazard)?.severity).toBe("stop");
  });
  it("canned beans need nothing (Hong Kong CFS 2015)", () =>
    expect(ask("kidney-bean/dried", "kidney-bean/canned").required).toEqual([]));
  it("gelatin and raw papaya (Scientific American 2013)", () =>
    expect(stops(ask("cucumber/fresh", "green-papaya/fresh", { dish: ["gelatin/pantry-powder"] }), "unless")).toContain(
      "gelatin-raw-enzyme",
    ));
});

describe("for this diner", () => {
  const rows: readonly (readonly [string, string, string, Asked, string, string])[] = [
    ["infant", "maple-syrup/pantry", "honey/pantry", {}, "honey-infant", "INSPQ"],
    ["infant", "cinnamon/dried-ground", "star-anise/dried", {}, "star-anise-infant", "US FDA 2003"],
    [
      "toddler",
      "sunflower-seed/pantry",
      "almond/pantry",
      {},
      "whole-nut",
      "USDA ChooseMyPlate; under five from memory",
    ],
    ["toddler", "milk/fresh", "rice-milk/pantry", {}, "rice-drink", "UK advice, memory"],
    ["infant", "glass-noodles/dried", "shirataki/fresh", {}, "konjac-child", "US FDA import alert 33-15"],
    ["g6pd", "chickpea/dried", "fava-bean/dried", {}, "fava-g6pd", "American Academy of Clinical Toxicology"],
    [
      "kidney disease",
      "salt/pantry",
      "salt-substitute/pantry",
      {},
      "potassium-salt",
      "US Dietary Guidelines, second-hand",
    ],
    ["pregnancy", "ground-beef/fresh", "beef-liver/fresh", {}, "liver-pregnancy", "British Nutrition Foundation"],
    ["pregnancy", "cod/fresh", "swordfish/fresh", {}, "mercury", "US FDA/EPA"],
    ["pregnancy", "cheddar/aged", "brie/aged", { technique: "raw" }, "soft-cheese", "NHS 111 Wales"],
    ["pregnancy", "ham/cured", "prosciutto/cured", { technique: "raw" }, "cured-uncooked", "NHS 111 Wales"],
    ["pregnancy", "salmon/canned", "salmon/smoked", { technique: "raw" }, "cold-smoked-fish", "newer advice, memory"],
    ["pregnancy", "cucumber/fresh", "alfalfa-sprouts/fresh", { technique: "raw" }, "raw-sprouts-diner", "memory"],
    ["pregnancy", "yogurt/fresh", "egg/fresh", { technique: "whip" }, "raw-egg-diner", "NHS, by a parenting charity"],
    [
      "pregnancy",
      "cinnamon/dried-ground",
      "licorice-root/dried",
      {},
      "liquorice-pregnancy",
      "US FDA 2012, second-hand",
    ],
  ];
  it.each(rows)("%s: %s to %s %j stops for %s (%s)", (diet, missing, use, q, hazard) => {
    expect(stops(ask(missing, use, { ...q, diets: [diet] }), "diner")).toContain(hazard);
    const others = ask(missing, use, q);
    expect(stops(others, "diner")).toEqual([]);
    expect(others.cautions.map((c) => c.hazard)).toContain(hazard);
  });
});

describe("cautions and notes", () => {
  const rows: readonly (readonly [string, string, Asked, string, string])[] = [
    ["cod/fresh", "mackerel/fresh", {}, "histamine", "Penn State on FDA guidance"],
    ["cinnamon/dried-ground", "star-anise/dried", {}, "star-anise", "US FDA 2003"],
    ["chard/fresh", "rhubarb/fresh", {}, "rhubarb-stalk", "MedlinePlus, second-hand"],
    ["rice-flour/pantry", "all-purpose-flour/pantry", { technique: "set cold" }, "raw-flour", "US CDC, second-hand"],
    ["cucumber/fresh", "alfalfa-sprouts/fresh", {}, "raw-sprouts-diner", "memory"],
    ["chicken-stock/fresh", "white-wine/pantry", {}, "alcohol-left", "USDA retention factors, second-hand"],
    [
      "vegetable-oil/pantry",
      "sesame-oil/pantry",
      { technique: "deep-fry" },
      "smoke-point",
      "NFPA; which oils from memory",
    ],
    ["potato/fresh", "hake/frozen", { technique: "deep-fry" }, "water-in-hot-oil", "NFPA"],
    ["allspice/dried-ground", "nutmeg/dried-ground", { grams: 7 }, "nutmeg-dose", "ACMT"],
    ["wakame/dried", "kombu/dried", {}, "kelp-eaten", "FSANZ"],
    ["gelatin/pantry-powder", "agar/pantry-powder", {}, "agar-for-gelatin", "memory"],
    ["celery/fresh", "rhubarb/fresh", {}, "rhubarb-stalk", "MedlinePlus, second-hand"],
    ["napa-cabbage/fresh", "kale/fresh", {}, "vitamin-k", "Cambridge University Hospitals"],
  ];
  it.each(rows)("%s to %s %j: %s (%s)", (missing, use, q, hazard) => {
    const found = ask(missing, use, q).cautions.find((c) => c.hazard === hazard);
    expect(found).toBeDefined();
    expect(found?.sources.length).toBeGreaterThan(0);
    expect(["caution", "note"]).toContain(found?.severity);
  });
  it("says nothing of a hazard the missing ingredient had as well", () => {
    expect(ask("sardine/fresh", "mackerel/fresh").cautions.map((c) => c.hazard)).not.toContain("histamine");
    expect(ask("kale/fresh", "chard/fresh").cautions.map((c) => c.hazard)).not.toContain("vitamin-k");
  });
  it("an everyday swap raises nothing (judgement)", () =>
    expect(ask("onion/fresh", "leek/fresh", { technique: "braise" })).toEqual({
      stops: [],
      required: [],
      cautions: [],
    }));
});
