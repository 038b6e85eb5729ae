import { describe, expect, it } from "vitest";
import { isSteadfareError } from "../../src/errors.js";
import {
  ALLERGENS,
  allergenChange,
  allergenFacts,
  dietAnswer,
  DIETS,
  donenessChange,
  donenessFor,
  handlingFor,
  hazardsFor,
  mealConflicts,
  mergeAllergens,
  mergeRules,
  readAvoid,
  readinessOf,
  refusalFor,
  STANDING_NOTICE,
  unknownFacts,
  type AvoidRules,
} from "../../src/safety/index.js";
import type { Ingredient } from "../../src/catalogue/store.js";
import type { Avoid } from "../../src/types.js";
import { larder, tables, usual } from "../helpers/safety.js";

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
    expect(cautions.find((c) => c.hazard === "bean-lectin")?.text).not.toMatch(/No publication was read/);
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
