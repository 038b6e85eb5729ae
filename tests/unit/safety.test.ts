import { describe, expect, it } from "vitest";
import { isSteadfareError } from "../../src/errors.js";
import {
  ALLERGENS,
  allergenChange,
  allergenFacts,
  dietAnswer,
  DIETS,
  mergeAllergens,
  mergeRules,
  readAvoid,
  refusalFor,
  unknownFacts,
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
const thrown = (run: () => unknown): unknown => {
  try {
    run();
  } catch (e) {
    return e;
  }
  return undefined;
};

describe("allergens", () => {
  it("sorts the fifteen into four lists", () => {
    const facts = allergenFacts(store, the("crab stick"));
    expect(facts.contains).toEqual(expect.arrayContaining(["fish", "egg", "wheat", "gluten cereals"]));
    expect(facts.mayContain).toContain("crustacean shellfish");
    expect([...facts.contains, ...facts.mayContain, ...facts.free, ...facts.unknown].sort()).toEqual(
      [...ALLERGENS].sort(),
    );
    expect(Object.isFrozen(facts.free)).toBe(true);
  });
  it("takes wheat to be a gluten cereal and origin to bring its allergen", () => {
    expect(allergenFacts(store, food("x/pantry", { contains: ["wheat"] })).contains).toContain("gluten cereals");
    expect(allergenFacts(store, food("y/pantry", { origin: ["mollusc"] })).contains).toEqual(["molluscs"]);
  });
  it("adds hidden carriers by the record, never by a word of the name", () => {
    expect(allergenFacts(store, food("soy-sauce/pantry", { name: "soy sauce" })).contains).toEqual([
      "wheat",
      "gluten cereals",
      "soy",
    ]);
    expect(allergenFacts(store, food("something/pantry", { name: "soy sauce" })).contains).toEqual([]);
  });
  it("never calls unknown free, nor nothing free", () => {
    expect(allergenFacts(store, the("hot sauce")).free).not.toContain("milk");
    expect(mergeAllergens([]).free).toEqual([]);
    expect(unknownFacts().unknown).toEqual(ALLERGENS);
  });
  it("merges a dish: the surest word wins", () => {
    const dish = mergeAllergens(store, [the("egg"), the("crab stick"), the("hot sauce")]);
    expect(dish.contains).toContain("egg");
    expect(dish.mayContain).toContain("crustacean shellfish");
    expect(dish.unknown).toContain("milk");
    expect(dish).toEqual(
      mergeAllergens([the("egg"), the("crab stick"), the("hot sauce")].map((i) => allergenFacts(store, i))),
    );
  });
  it("says what a swap gains, loses, keeps and leaves unknown", () => {
    expect(allergenChange(store, the("butter"), [the("vegan butter")])).toMatchObject({
      gained: ["soy"],
      lost: ["milk"],
      kept: [],
      unknown: [],
    });
    const fish = allergenChange(store, the("cod"), [the("crab stick")]);
    expect(fish.kept).toEqual(["fish"]);
    expect(fish.gained).toEqual(expect.arrayContaining(["egg", "wheat", "crustacean shellfish"]));
    expect(fish.label).toEqual(expect.arrayContaining(["crustacean shellfish"]));
    expect(allergenChange(store, the("milk"), [the("hot sauce")]).lost).toEqual([]);
  });
});

describe("what is to be avoided", () => {
  it.each([
    ["dairy", ["milk"]],
    ["Eggs", ["egg"]],
    ["nuts", ["tree nuts"]],
    ["shellfish", ["crustacean shellfish", "molluscs"]],
    ["gluten", ["wheat", "gluten cereals"]],
    ["soya", ["soy"]],
    ["egg-free", ["egg"]],
    ["no sesame", ["sesame"]],
    ["nut allergy", ["tree nuts"]],
    ["sulfites", ["sulphites"]],
  ])("reads the allergen word %s", (word, ids) => expect(rules({ allergens: [word] }).allergens).toEqual(ids));
  it.each([
    ["gluten-free", "coeliac"],
    ["celiac", "coeliac"],
    ["plant-based", "vegan"],
    ["pregnant", "pregnancy"],
    ["baby", "infant"],
    ["no pork", "no pork"],
    ["Pork-Free", "no pork"],
    ["low salt", "low sodium"],
    ["FODMAP", "low fodmap"],
    ["alpha-gal", "no mammal meat"],
    ["lactose intolerant", "lactose-free"],
  ])("reads the diet word %s", (word, id) => expect(rules({ diets: [word] }).diets).toEqual([id]));
  it("reads an allergen said as a diet", () => expect(rules({ diets: ["dairy-free"] }).allergens).toEqual(["milk"]));
  it("knows every id and every documented name, each for one thing", () => {
    expect(tables.allergens.allergens.map((a) => a.id)).toEqual(ALLERGENS);
    expect(tables.diets.diets.map((d) => d.id)).toEqual(DIETS);
    const seen = new Map<string, string>();
    for (const { id, names } of tables.diets.diets) {
      for (const name of [id, ...names]) {
        expect(rules({ diets: [name] }).diets).toEqual([id]);
        expect([undefined, id]).toContain(seen.get(name));
        seen.set(name, id);
      }
    }
    for (const { id, names } of tables.allergens.allergens)
      for (const name of names) expect(rules({ allergens: [name] }).allergens).toContain(id);
  });
  it("refuses words it does not know, with the nearest and all it accepts", () => {
    const e = thrown(() => rules({ allergens: ["sesami"] }));
    expect(
      isSteadfareError(e, "unknown term") && [
        e.data.kind,
        e.data.input,
        e.data.nearest.includes("sesame"),
        e.data.accepted.length > 15,
      ],
    ).toEqual(["allergen", "sesami", true, true]);
    expect(
      isSteadfareError(
        thrown(() => rules({ diets: ["carnivore"] })),
        "unknown term",
      ),
    ).toBe(true);
    expect(
      isSteadfareError(
        thrown(() => rules({ foods: ["unobtainium"] })),
        "unknown food",
      ),
    ).toBe(true);
    expect(
      isSteadfareError(
        thrown(() => rules({ allergens: [""] })),
        "unknown term",
      ),
    ).toBe(true);
  });
  it("refuses what is no list of words, unknown fields and endless words", () => {
    expect(
      isSteadfareError(
        thrown(() => rules({ allergen: ["egg"] } as unknown as Avoid)),
        "conflicting request",
      ),
    ).toBe(true);
    expect(
      isSteadfareError(
        thrown(() => rules({ allergens: "egg" } as unknown as Avoid)),
        "conflicting request",
      ),
    ).toBe(true);
    expect(
      isSteadfareError(
        thrown(() => rules({ allergens: [5] } as unknown as Avoid)),
        "conflicting request",
      ),
    ).toBe(true);
    expect(
      isSteadfareError(
        thrown(() => rules({ allergens: ["x".repeat(5000)] })),
        "input too large",
      ),
    ).toBe(true);
  });
  it("avoids a food in every state, a part and the whole that holds it, and groups", () => {
    expect(refusalFor(store, food("cod/salt-cured", { origin: ["fish"] }), rules({ foods: ["cod"] }))).toMatchObject({
      because: "avoided",
      what: "cod",
    });
    expect(refusalFor(store, food("lemon/fresh"), rules({ foods: ["lemon juice"] }))?.because).toBe("avoided");
    expect(refusalFor(store, food("lemon.zest/fresh"), rules({ foods: ["lemon juice"] }))).toBeUndefined();
    expect(refusalFor(store, the("bacon"), rules({ foods: ["pork"] }))?.because).toBe("avoided");
    expect(refusalFor(store, the("oyster mushroom"), rules({ foods: ["mushrooms"] }))?.because).toBe("avoided");
    expect(refusalFor(store, the("beef"), rules({ foods: ["no pork"] }))).toBeUndefined();
  });
});

describe("refusals", () => {
  it("names contained, possible and unknown apart", () => {
    expect(refusalFor(store, the("egg"), rules({ allergens: ["egg"] }))).toMatchObject({
      because: "allergen",
      what: "egg",
    });
    const may = refusalFor(store, the("crab stick"), rules({ allergens: ["crustaceans"] }));
    expect(may?.because).toBe("allergen");
    expect(may?.detail).toMatch(/^May contain crustacean shellfish: check the label/);
    expect(refusalFor(store, the("hot sauce"), rules({ allergens: ["milk"] }))).toMatchObject({
      because: "unknown allergen",
      what: "milk",
    });
    expect(refusalFor(store, the("butternut squash"), rules({ allergens: [...ALLERGENS] }))).toBeUndefined();
  });
  it("says nothing without rules", () => {
    for (const i of Object.values(foods)) expect(refusalFor(store, i, rules({}))).toBeUndefined();
  });
  it("joins the rules of a table", () => {
    const both = mergeRules([rules({ allergens: ["egg"] }), rules({ diets: ["vegan"], foods: ["pork"] })]);
    expect(both).toMatchObject({ allergens: ["egg"], diets: ["vegan"] });
    expect(refusalFor(store, the("egg"), both)?.because).toBe("allergen");
    expect(refusalFor(store, the("honey"), both)?.because).toBe("diet");
  });
});

describe("diets", () => {
  const answer = (name: string, diet: (typeof DIETS)[number], technique?: string): string =>
    dietAnswer(store, the(name), diet, technique).answer;
  it.each([
    [
      "vegan",
      ["tofu", "oat milk", "vegan butter", "coconut", "buckwheat", "cream of tartar"],
      [
        "butter",
        "egg",
        "honey",
        "beef",
        "cod",
        "gelatin",
        "egg noodles",
        "goat cheese",
        "sweetbread",
        "Worcestershire-style sauce",
      ],
    ],
    [
      "vegetarian",
      ["egg", "honey", "milk", "goat cheese"],
      ["gelatin", "cod", "parmesan", "Worcestershire-style sauce", "sweetbread", "crab stick"],
    ],
    ["lacto-vegetarian", ["milk", "honey"], ["egg", "egg noodles", "beef"]],
    ["ovo-vegetarian", ["egg", "honey"], ["milk", "goat cheese", "beef"]],
    ["pescatarian", ["cod", "scallop", "egg", "milk"], ["beef", "chicken", "gelatin"]],
    ["halal", ["beef", "chicken", "cod"], ["pork", "bacon", "gelatin", "almond extract"]],
    ["kosher", ["beef", "cod", "milk"], ["pork", "scallop", "gelatin"]],
    ["jain", ["milk", "tofu"], ["onion", "egg", "honey", "chestnut mushroom", "garlic"]],
    ["buddhist", ["tofu", "chestnut mushroom"], ["onion", "garlic", "egg", "cod"]],
    ["coeliac", ["buckwheat", "egg", "tofu"], ["wheat flour", "oat milk", "egg noodles", "crab stick"]],
    ["lactose-free", ["butter", "parmesan", "oat milk", "egg", "goat cheese"], ["milk"]],
    ["low sodium", ["egg", "beef", "butternut squash"], ["salt", "bacon", "Worcestershire-style sauce"]],
    ["low fodmap", ["beef", "tofu", "egg"], ["onion", "honey", "milk", "kidney beans"]],
    ["pregnancy", ["parmesan", "cod"], ["brie", "dry-cured ham", "almond extract"]],
    ["infant", ["butternut squash"], ["honey", "walnut", "salt"]],
    ["toddler", ["honey"], ["walnut"]],
    ["g6pd", ["kidney beans"], ["broad beans"]],
    ["grapefruit medicines", ["lemon juice"], ["grapefruit"]],
    ["no pork", ["beef"], ["pork", "bacon", "gelatin", "dry-cured ham"]],
    ["no beef", ["pork"], ["beef", "sweetbread"]],
    ["no alcohol", ["white vinegar"], ["almond extract"]],
    ["no mammal meat", ["chicken", "cod"], ["beef", "pork", "sweetbread", "gelatin"]],
  ] as const)("%s", (diet, yes, no) => {
    for (const name of yes) expect([name, answer(name, diet)]).toEqual([name, "yes"]);
    for (const name of no) expect([name, answer(name, diet)]).not.toEqual([name, "yes"]);
  });
  it("answers unknown, refuses as unknown and says so", () => {
    expect(dietAnswer(store, food("x/pantry"), "vegan").answer).toBe("unknown");
    expect(dietAnswer(store, food("x/pantry"), "low sodium").answer).toBe("unknown");
    expect(answer("hot sauce", "coeliac")).toBe("unknown");
    expect(refusalFor(store, the("hot sauce"), rules({ diets: ["coeliac"] }))?.detail).toMatch(/^Unknown whether/);
  });
  it("says how sure it is and who decides", () => {
    const pork = dietAnswer(store, the("pork"), "halal");
    expect([pork.sure, pork.decides, pork.sources.length > 0]).toEqual(["certain", "a certifier", true]);
    expect(refusalFor(store, the("egg"), rules({ diets: ["buddhist"] }))?.detail).toMatch(/the diner decides/);
  });
  it("lifts some stops by cooking through and raises some by leaving raw", () => {
    expect(answer("brie", "pregnancy", "bake")).toBe("yes");
    expect(answer("egg", "pregnancy", "bake")).toBe("yes");
    expect(answer("egg", "pregnancy", "whip")).toBe("no");
    expect(refusalFor(store, the("egg"), rules({ diets: ["pregnancy"] }), { technique: "whip" })?.because).toBe("diet");
  });
});
