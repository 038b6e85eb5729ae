// What was found wrong by reading 360 random answers and 60 cautions as a clinician, an allergist and a cook would, kept right.
import { describe, expect, it } from "vitest";
import { storeOf, type Ingredient } from "../../src/catalogue/index.js";
import { openCatalogue } from "../../src/index.js";
import { allergenFacts, dietAnswer, donenessFor, hazardsFor, readAvoid, refusalFor } from "../../src/safety/index.js";
import type { Caution } from "../../src/types.js";

const store = storeOf(openCatalogue());
const the = (id: string): Ingredient => {
  const i = store.byId.get(id);
  if (!i) throw new Error(`no ${id}`);
  return i;
};
const ask = (missing: string, use: string, technique?: string, diet?: string) =>
  hazardsFor(store, {
    missing: the(missing),
    use: [{ ingredient: the(use), grams: 100 }],
    ...(technique === undefined ? {} : { technique }),
    ...(diet === undefined ? {} : { rules: readAvoid(store, { diets: [diet] }, () => []) }),
  });
const hazards = (cautions: readonly Caution[]): string[] => cautions.map((c) => c.hazard);

describe("what needs no word", () => {
  it.each([
    ["lap-cheong/dried", "pancetta/cured", "deep-fry", "cured-uncooked"],
    ["raclette-cheese/aged", "taleggio/aged", "bake", "soft-cheese"],
    ["toulouse-sausage/fresh", "black-pudding/fresh", "braise", "deli-meat"],
    ["haddock/fresh", "trout/smoked-cooked", "bake", "hot-smoked-fish"],
  ])("%s to %s, to %s: cooked through, so not %s", (missing, use, technique, hazard) => {
    expect(hazards(ask(missing, use, technique).cautions)).not.toContain(hazard);
    expect(hazards(ask(missing, use, "set cold").cautions)).toContain(hazard);
  });
  it("bottled anchovies are past the danger of warm fish, and tapioca is no news beside cornstarch", () => {
    expect(hazards(ask("miso/pantry-paste", "anchovy/cured-in-oil").cautions)).not.toContain("histamine");
    expect(hazards(ask("cornstarch/pantry", "tapioca-starch/pantry").cautions)).toEqual([]);
  });
  it("dried egg white is pasteurized", () =>
    expect(hazards(ask("egg.white/fresh", "egg.white/dried-powder", "whip").cautions)).not.toContain("raw-egg"));
  it("a pinch of pepper or dried tarragon is no leaf rich in vitamin K", () => {
    for (const id of ["black-pepper/dried-ground", "tarragon/dried"])
      expect(dietAnswer(store, the(id), "warfarin").cautions).toEqual([]);
  });
});

describe("one thing is said once, in words that fit", () => {
  it("star anise: babies are named in one caution only", () => {
    const said = ask("anise-seed/dried", "star-anise/dried").cautions.map((c) => c.text);
    expect(said.filter((text) => text.includes("bab"))).toHaveLength(1);
  });
  it("fresh pods are not soaked like dry beans", () => {
    const { required } = ask("green-beans/frozen", "hyacinth-beans/fresh", "braise");
    expect(required.map((r) => r.text).join(" ")).toMatch(/boil the pods 10 minutes/i);
    expect(required.map((r) => r.text).join(" ")).not.toMatch(/5 hours/);
  });
  it("what is said of lima beans is both: the hard boil and the water thrown away", () => {
    const { required, cautions } = ask("kidney-bean/canned", "lima-bean/dried", "slow cooker");
    expect(cautions).toHaveLength(1);
    expect(required).toHaveLength(1);
    expect(required[0]?.text).toMatch(/boil hard.*30 minutes.*throw that water away.*slow cooker/);
  });
});

describe("what was let through", () => {
  it.each([
    ["kale/fresh", "fenugreek-leaf/fresh"],
    ["smoked-cheese/smoked", "vegan-cheese/fresh"],
    ["mentsuyu/pantry-concentrate", "bombay-duck/dried"],
    ["tomato/fresh", "jalapeno/fresh"],
  ])("%s to %s in a canned recipe", (missing, use) =>
    expect(ask(missing, use, "can").stops.map((s) => s.kind)).toContain("never"),
  );
  it("a dry herb may still change there, and sugar", () => {
    expect(ask("oregano/dried", "thyme/dried", "can").stops).toEqual([]);
    expect(ask("sugar/pantry", "caster-sugar/pantry", "can").stops).toEqual([]);
  });
  it("minced sausage is not a whole cut, and salt pork is not eaten as it is", () => {
    expect(donenessFor(store, the("linguica/smoked"))?.celsius).toBe(71);
    expect(donenessFor(store, the("salt-pork/salt-cured"))?.celsius).toBe(71);
    expect(ask("prosciutto/cured", "salt-pork/salt-cured", "set cold").stops.map((s) => s.kind)).toContain("never");
  });
  it("butterbur is boiled first, and not for pregnancy", () => {
    expect(ask("celery/fresh", "butterbur/fresh", "simmer").required.map((r) => r.hazard)).toContain("butterbur");
    expect(dietAnswer(store, the("butterbur/fresh"), "pregnancy").answer).toBe("no");
  });
  it("lard, cochineal and fining where the name shows none", () => {
    for (const diet of ["vegan", "vegetarian", "halal", "kosher", "no pork"] as const)
      expect(dietAnswer(store, the("refried-beans/canned"), diet).answer, diet).toBe("unknown");
    expect(dietAnswer(store, the("candied-fruit/candied"), "vegetarian").text).toMatch(/insect/);
    expect(dietAnswer(store, the("beer/pantry"), "vegan").answer).toBe("unknown");
  });
  it.each([
    ["popcorn/pantry-toasted", "toddler"],
    ["granola/pantry", "infant"],
    ["granola/pantry", "vegan"],
    ["garlic-salt/pantry", "low fodmap"],
    ["shiro-powder/pantry", "g6pd"],
    ["tonic-water/pantry", "g6pd"],
  ] as const)("%s is not offered for %s", (id, diet) =>
    expect(dietAnswer(store, the(id), diet).answer).not.toBe("yes"),
  );
  it("breads and pastries may hold lupin, and a milk-free spread is offered with a word about the label", () => {
    for (const id of ["baguette/fresh", "pie-crust/frozen", "rye-bread/fresh"])
      expect(allergenFacts(store, the(id)).mayContain, id).toContain("lupin");
    const rules = readAvoid(store, { allergens: ["milk"] }, () => []);
    expect(refusalFor(store, the("vegan-butter/pantry"), rules)).toBeUndefined();
    const said = hazardsFor(store, { use: [{ ingredient: the("vegan-butter/pantry"), grams: 50 }], rules }).cautions;
    expect(said.map((x) => x.hazard)).toContain("cross-reaction: milk-plant-kinds");
  });
  it("cheese whose rennet is not known is offered to a vegetarian with a word", () => {
    for (const id of ["halloumi/brined", "cheddar/aged"])
      expect(dietAnswer(store, the(id), "vegetarian").cautions.map((x) => x.hazard)).toContain("vegetarian-cheese");
    expect(dietAnswer(store, the("paneer/fresh"), "vegetarian").cautions).toEqual([]);
  });
  it("sea creatures are said to be neither mollusc nor crustacean", () => {
    const no = refusalFor(
      store,
      the("sea-urchin/fresh"),
      readAvoid(store, { allergens: ["molluscs"] }, () => []),
    );
    expect(no?.detail).toMatch(/May contain molluscs.*Neither mollusc nor crustacean/);
  });
  it("sugar in a baby's food is worth a word", () =>
    expect(dietAnswer(store, the("golden-syrup/pantry"), "infant").cautions.map((c) => c.hazard)).toContain(
      "infant-sugar",
    ));
});
