// Published allergen lists, hidden carriers and cross-reactions against what the catalogue says. The source stands beside each row.
import { describe, expect, it } from "vitest";
import { openCatalogue, storeOf } from "../../src/catalogue/index.js";
import type { Ingredient } from "../../src/catalogue/store.js";
import { allergenFacts, dietAnswer, hazardsFor, readAvoid } from "../../src/safety/index.js";
import type { AllergenId } from "../../src/types.js";

const store = storeOf(openCatalogue());
const the = (id: string): Ingredient => {
  const i = store.byId.get(id);
  if (!i) throw new Error(`The catalogue has no ${id}.`);
  return i;
};
const { allergens } = store.vocabulary.allergens;
const named = (list: "US" | "EU" | "UK" | "Canada"): string[] =>
  allergens.filter((a) => a.lists.includes(list)).map((a) => a.id);

describe("the public lists", () => {
  it("US: nine major allergens (US FDA, What is a major food allergen; sesame by the FASTER Act from 2023)", () =>
    expect(named("US")).toEqual([
      "milk",
      "egg",
      "fish",
      "crustacean shellfish",
      "tree nuts",
      "peanuts",
      "wheat",
      "soy",
      "sesame",
    ]));
  it("EU and UK: fourteen, wheat within the gluten cereals (Regulation (EU) 1169/2011, Annex II)", () => {
    const fourteen = [
      "milk",
      "egg",
      "fish",
      "crustacean shellfish",
      "molluscs",
      "tree nuts",
      "peanuts",
      "gluten cereals",
      "soy",
      "sesame",
      "celery",
      "mustard",
      "lupin",
      "sulphites",
    ];
    expect(named("EU").filter((id) => id !== "wheat")).toEqual(fourteen);
    expect(named("UK")).toEqual(named("EU"));
  });
  it("Canada: mustard and sulphites, no celery or lupin (Health Canada, Allergens and gluten sources labelling)", () => {
    const canada = named("Canada");
    expect(canada).toEqual(
      expect.arrayContaining([
        "egg",
        "milk",
        "mustard",
        "peanuts",
        "crustacean shellfish",
        "molluscs",
        "fish",
        "sesame",
        "soy",
        "sulphites",
        "tree nuts",
        "wheat",
        "gluten cereals",
      ]),
    );
    expect(canada).not.toContain("celery");
    expect(canada).not.toContain("lupin");
  });
  it.each([
    "almond/pantry",
    "black-walnut/pantry",
    "brazil-nut/pantry",
    "cashew/pantry",
    "hazelnut/pantry",
    "macadamia/pantry",
    "pecan/pantry",
    "pine-nut/pantry",
    "pistachio/pantry",
    "walnut/pantry",
  ])("%s is a tree nut (Wisconsin DATCP 2025 on FDA guidance, edition 5)", (id) =>
    expect(allergenFacts(store, the(id)).contains).toContain("tree nuts"),
  );
  it.each(["coconut/fresh", "coconut-milk/canned", "chestnut/fresh", "ginkgo-nut/canned"])(
    "%s is not one any more (Wisconsin DATCP 2025)",
    (id) => expect(allergenFacts(store, the(id)).contains).not.toContain("tree nuts"),
  );
  it.each([
    ["goat-milk/fresh", "milk"],
    ["sheep-milk/fresh", "milk"],
    ["duck-egg/fresh", "egg"],
    ["quail-egg/fresh", "egg"],
  ] as const)("%s counts as %s (FDA guidance of 2025 on all milks and all birds' eggs)", (id, allergen) =>
    expect(allergenFacts(store, the(id)).contains).toContain(allergen),
  );
});

describe("hidden carriers", () => {
  const usual: readonly (readonly [string, readonly AllergenId[], string])[] = [
    ["soy-sauce/pantry", ["soy", "wheat", "gluten cereals"], "wheat-free.org fact file, read second-hand"],
    ["miso/pantry-paste", ["soy"], "Food Allergy Canada, Soy"],
    ["tempeh/fermented", ["soy"], "Food Allergy Canada, Soy"],
    ["edamame/frozen", ["soy"], "Food Allergy Canada, Soy"],
    [
      "teriyaki-sauce/pantry",
      ["soy", "wheat", "gluten cereals"],
      "soy: Canadian government list, second-hand; wheat from memory",
    ],
    [
      "surimi/frozen",
      ["fish", "egg", "wheat"],
      "Virginia Extension 2021; Minnesota Department of Agriculture; wheat from memory",
    ],
    ["crab-stick/frozen", ["fish", "egg", "wheat"], "the same"],
    ["worcestershire-sauce/pantry", ["fish"], "Virginia Extension FST-196, 2021"],
    ["oyster-sauce/pantry", ["molluscs"], "UK fourteen, restated"],
    ["shrimp-paste/fermented-paste", ["crustacean shellfish"], "UK fourteen, restated"],
    ["hoisin-sauce/pantry", ["soy", "wheat", "sesame"], "from memory"],
    ["ghee/pantry", ["milk"], "Minnesota Department of Agriculture"],
    ["mayonnaise/pantry", ["egg"], "Minnesota Department of Agriculture"],
    ["tahini/pantry", ["sesame"], "UK fourteen, restated 2014"],
    ["malt-vinegar/pantry", ["gluten cereals"], "Health Canada, barley"],
    ["seitan/fresh", ["wheat", "gluten cereals"], "from memory"],
    ["panko/dried", ["wheat", "gluten cereals"], "a food scientist's correction, from memory"],
    ["vegetable-suet/pantry", ["wheat"], "a food scientist's correction, from memory"],
    ["salmon-roe/salt-cured", ["fish"], "WebMD, Fish allergy; a food scientist's correction"],
    ["soba/dried", ["wheat"], "from memory"],
    ["shaoxing-wine/pantry", ["wheat"], "from memory"],
    ["red-wine/pantry", ["sulphites"], "safefood, Sulphur dioxide and sulphites"],
    ["celery-seed/dried", ["celery"], "UK fourteen, restated"],
    ["rolled-oats/pantry", ["gluten cereals"], "Regulation (EU) 1169/2011, Annex II"],
  ];
  it.each(usual)("%s contains %s (%s)", (id, list) =>
    expect(allergenFacts(store, the(id)).contains).toEqual(expect.arrayContaining([...list])),
  );

  const sometimes: readonly (readonly [string, AllergenId, string])[] = [
    ["tamari/pantry", "wheat", "wheat-free.org fact file, read second-hand"],
    ["worcestershire-sauce/pantry", "soy", "Canadian government list, second-hand"],
    ["barbecue-sauce/pantry", "fish", "Virginia Extension FST-196, 2021"],
    ["chicken-bouillon/pantry-cubes", "celery", "UK fourteen, restated"],
    ["asafoetida/dried-ground", "wheat", "from memory"],
    ["margarine/pantry", "milk", "Minnesota Department of Agriculture"],
    ["dark-chocolate/pantry", "milk", "from memory"],
    ["oyster-sauce/pantry", "fish", "a maker's choice, from the record"],
    ["pink-peppercorn/dried", "tree nuts", "a food scientist's correction, from memory"],
  ];
  it.each(sometimes)("%s may contain %s: never free (%s)", (id, allergen) => {
    const facts = allergenFacts(store, the(id));
    expect(facts.free).not.toContain(allergen);
    expect([...facts.mayContain, ...facts.contains]).toContain(allergen);
  });
});

describe("names that mislead: what a clinician would say (judgement; facts of the trade)", () => {
  const free: readonly (readonly [string, AllergenId])[] = [
    ["oat-milk/pantry", "milk"],
    ["coconut-milk/canned", "milk"],
    ["coconut/fresh", "tree nuts"],
    ["buckwheat-groats/pantry", "wheat"],
    ["buckwheat-groats/pantry", "gluten cereals"],
    ["cremini/fresh", "tree nuts"],
    ["oyster-mushroom/fresh", "molluscs"],
    ["cream-of-tartar/pantry", "milk"],
    ["butternut-squash/fresh", "tree nuts"],
    ["nutmeg/dried-ground", "tree nuts"],
    ["sweetbreads/fresh", "wheat"],
    ["sweetbreads/fresh", "gluten cereals"],
    ["egg-noodles/dried", "milk"],
  ];
  it.each(free)("%s is free of %s", (id, allergen) => expect(allergenFacts(store, the(id)).free).toContain(allergen));
  it("goat cheese is milk, egg noodles egg and wheat, crab stick fish, vegan butter not milk by recipe", () => {
    expect(allergenFacts(store, the("goat-cheese/fresh")).contains).toContain("milk");
    expect(allergenFacts(store, the("egg-noodles/dried")).contains).toEqual(expect.arrayContaining(["egg", "wheat"]));
    expect(allergenFacts(store, the("crab-stick/frozen")).contains).toContain("fish");
    expect(allergenFacts(store, the("vegan-butter/pantry")).contains).not.toContain("milk");
    expect(dietAnswer(store, the("vegan-butter/pantry"), "vegan").answer).toBe("yes");
    expect(dietAnswer(store, the("sweetbreads/fresh"), "vegetarian").answer).toBe("no");
    expect(dietAnswer(store, the("vegan-worcestershire-sauce/pantry"), "vegetarian").answer).toBe("yes");
    expect(dietAnswer(store, the("worcestershire-sauce/pantry"), "vegetarian").answer).toBe("no");
    expect(dietAnswer(store, the("oat-milk/pantry"), "coeliac").answer).toBe("no");
    expect(dietAnswer(store, the("buckwheat-groats/pantry"), "coeliac").answer).toBe("yes");
  });
});

describe("cross-reactions (Journal of Food Allergy 2020, table 2, unless said otherwise)", () => {
  it.each([
    ["peanuts", "lupini-bean/brined", "peanut-lupin"],
    ["peanuts", "walnut/pantry", "peanut-tree-nut"],
    ["tree nuts", "peanut/pantry", "tree-nut-peanut"],
    ["crustacean shellfish", "mussel/fresh", "crustacean-mollusc"],
    ["wheat", "pearl-barley/pantry", "wheat-rye-barley"],
    ["milk", "stewing-beef/fresh", "milk-beef"],
    ["tree nuts", "coconut-milk/canned", "tree-nut-coconut"],
    ["sesame", "walnut/pantry", "sesame-nut"],
  ])("avoiding %s, %s is cautioned", (allergen, id, hazard) => {
    const rules = readAvoid(store, { allergens: [allergen] }, () => []);
    expect(
      hazardsFor(store, { use: [{ ingredient: the(id), grams: 50 }], rules }).cautions.map((c) => c.hazard),
    ).toContain(`cross-reaction: ${hazard}`);
  });
});

describe("diets against published definitions", () => {
  const rows: readonly (readonly [string, Parameters<typeof dietAnswer>[2], "yes" | "no", string])[] = [
    ["gelatin/pantry-powder", "vegetarian", "no", "ISO 23662:2021 4.2"],
    ["parmesan/aged", "vegetarian", "no", "ISO 23662:2021 4.2: enzymes not of animal origin"],
    ["honey/pantry", "vegetarian", "yes", "ISO 23662:2021 4.2"],
    ["honey/pantry", "vegan", "no", "common usage, from memory"],
    ["pork-loin/fresh", "halal", "no", "CAC/GL 24-1997, from memory for the item"],
    ["red-wine/pantry", "halal", "no", "CAC/GL 24-1997 3.1"],
    ["shrimp/fresh", "kosher", "no", "a certifier's questions and answers"],
    ["eel/fresh", "kosher", "no", "a certifier's questions and answers"],
    ["cod/fresh", "kosher", "yes", "a certifier's questions and answers: fins and scales"],
    ["pearl-barley/pantry", "coeliac", "no", "CODEX STAN 118-1979"],
    ["rolled-oats/pantry", "coeliac", "no", "CODEX STAN 118-1979, oats footnote: only labelled ones"],
    ["soy-sauce/pantry", "low sodium", "no", "21 CFR 101.61 and USDA SR28"],
    ["garlic/fresh", "low fodmap", "no", "OH! Magazine 2018, second-hand"],
    ["garlic/fresh", "buddhist", "no", "five pungent vegetables, second-hand"],
    ["asafoetida/dried", "buddhist", "no", "another list of the five, second-hand"],
    ["potato/fresh", "jain", "no", "Jain practice, from memory"],
    ["milk/fresh", "lactose-free", "no", "Penn State Extension"],
    ["parmesan/aged", "lactose-free", "yes", "hard cheese under 1 g a portion, second-hand"],
    ["fava-bean/dried", "g6pd", "no", "American Academy of Clinical Toxicology 2017"],
    ["brie/aged", "pregnancy", "no", "NHS 111 Wales"],
    ["chicken-liver/fresh", "pregnancy", "no", "British Nutrition Foundation"],
    ["swordfish/fresh", "pregnancy", "no", "US FDA/EPA by Indiana"],
    ["salmon/smoked", "pregnancy", "no", "newer advice, from memory"],
    ["feta/brined", "pregnancy", "yes", "NHS 111 Wales"],
    ["honey/pantry", "infant", "no", "INSPQ"],
    ["peanut/pantry", "toddler", "no", "USDA ChooseMyPlate"],
    ["cheddar/aged", "low tyramine", "no", "HealthInfo Waitaha Canterbury"],
    ["cottage-cheese/fresh", "low tyramine", "yes", "HealthInfo Waitaha Canterbury"],
    ["salt-substitute/pantry", "kidney disease", "no", "US Dietary Guidelines, second-hand"],
  ];
  it.each(rows)("%s for %s: %s (%s)", (id, diet, answer) => {
    const said = dietAnswer(store, the(id), diet).answer;
    expect(answer === "no" ? said !== "yes" : said === "yes", said).toBe(true);
  });
});
