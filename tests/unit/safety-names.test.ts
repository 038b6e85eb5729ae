// A name that sounds like an allergen or a diet's forbidden food, and one that hides it: what counts is the record.
// Right answers are those a clinician would give; the trade's usual recipes stand behind them (common practice, no source).
import { describe, expect, it } from "vitest";
import { storeOf, type Ingredient } from "../../src/catalogue/index.js";
import { findFood, openCatalogue } from "../../src/index.js";
import { allergenFacts, readAvoid, refusalFor } from "../../src/safety/index.js";
import type { AllergenId } from "../../src/types.js";

const c = openCatalogue();
const store = storeOf(c);
const the = (name: string): Ingredient => {
  const found = findFood(c, name, { limit: 1 })[0];
  const i = found && store.byId.get(found.id);
  if (!i) throw new Error(`no food is called ${name}`);
  return i;
};

describe("a name that sounds like it and is free of it", () => {
  const rows: readonly (readonly [string, ...AllergenId[]])[] = [
    ["vegan butter", "milk", "egg"],
    ["cocoa butter", "milk"],
    ["peanut butter", "milk"],
    ["apple butter", "milk"],
    ["butter beans", "milk"],
    ["butter lettuce", "milk"],
    ["butternut squash", "tree nuts", "milk", "peanuts"],
    ["oat milk", "milk"],
    ["almond milk", "milk"],
    ["rice milk", "milk", "gluten cereals"],
    ["soy milk", "milk"],
    ["coconut milk", "milk", "tree nuts"],
    ["coconut cream", "milk", "tree nuts"],
    ["cream of coconut", "milk", "tree nuts"],
    ["coconut", "tree nuts"],
    ["cream of tartar", "milk"],
    ["vegan mayonnaise", "egg", "milk"],
    ["nutmeg", "tree nuts", "peanuts"],
    ["water chestnut", "tree nuts"],
    ["chestnut mushroom", "tree nuts"],
    ["eggplant", "egg"],
    ["milkfish", "milk"],
    ["buckwheat", "wheat", "gluten cereals"],
    ["buckwheat flour", "wheat", "gluten cereals"],
    ["teff", "wheat", "gluten cereals"],
    ["glass noodles", "wheat", "gluten cereals"],
    ["gluten-free bread", "wheat", "gluten cereals"],
    ["oyster mushroom", "molluscs"],
    ["oyster plant", "molluscs"],
    ["vegan fish sauce", "fish"],
    ["vegan Worcestershire sauce", "fish"],
    ["sweetbreads", "wheat", "gluten cereals"],
    ["coconut aminos", "soy"],
    ["lactic acid", "milk"],
    ["nutritional yeast", "milk"],
    ["bombay duck", "egg", "milk"],
  ];
  it.each(rows)("%s holds no %s", (name, ...free) => {
    const facts = allergenFacts(store, the(name));
    for (const a of free) {
      expect(facts.contains as readonly string[]).not.toContain(a);
      expect((facts.mayContain as readonly string[]).includes(a) && name !== "coconut milk", `may contain ${a}`).toBe(
        false,
      );
    }
  });
});

describe("a name that hides it", () => {
  const contains: readonly (readonly [string, ...AllergenId[]])[] = [
    ["goat cheese", "milk"],
    ["buttermilk", "milk"],
    ["ghee", "milk"],
    ["lactose-free milk", "milk"],
    ["egg noodles", "egg", "wheat"],
    ["mayonnaise", "egg"],
    ["crab stick", "fish", "egg", "wheat"],
    ["surimi", "fish", "egg", "wheat"],
    ["bombay duck", "fish"],
    ["caviar", "fish"],
    ["milkfish", "fish"],
    ["Worcestershire sauce", "fish"],
    ["fish gelatin", "fish"],
    ["kimchi", "fish", "crustacean shellfish"],
    ["oyster sauce", "molluscs", "wheat"],
    ["vegetarian oyster sauce", "soy", "wheat"],
    ["soy sauce", "soy", "wheat", "gluten cereals"],
    ["soba", "wheat", "gluten cereals"],
    ["spelt", "wheat", "gluten cereals"],
    ["seitan", "wheat", "gluten cereals"],
    ["panko", "wheat", "gluten cereals"],
    ["couscous", "wheat", "gluten cereals"],
    ["cream crackers", "wheat", "gluten cereals"],
    ["vegetable suet", "wheat", "gluten cereals"],
    ["malt vinegar", "gluten cereals"],
    ["barley miso", "gluten cereals", "soy"],
    ["oat milk", "gluten cereals"],
    ["almond milk", "tree nuts"],
    ["marzipan", "tree nuts"],
    ["vegan pesto", "tree nuts"],
    ["pine nut", "tree nuts"],
    ["peanut butter", "peanuts"],
    ["tahini", "sesame"],
    ["hummus", "sesame"],
    ["lupin flour", "lupin"],
    ["celeriac", "celery"],
    ["celery seed", "celery"],
    ["mustard greens", "mustard"],
    ["zha cai", "mustard"],
    ["red wine", "sulphites"],
    ["tempeh", "soy"],
  ];
  // Several carriers are "by maker": then the label is asked for, and it is refused all the same.
  it.each(contains)("%s is refused to whoever avoids %s", (name, ...allergens) => {
    const i = the(name);
    for (const a of allergens)
      expect(
        refusalFor(
          store,
          i,
          readAvoid(store, { allergens: [a] }, () => []),
        ),
        a,
      ).toBeDefined();
  });
  const may: readonly (readonly [string, AllergenId])[] = [
    ["almond extract", "tree nuts"],
    ["asafoetida", "wheat"],
    ["tempeh", "gluten cereals"],
    ["tamari", "wheat"],
    ["papad", "wheat"],
    ["baking powder", "wheat"],
    ["curry powder", "mustard"],
    ["marshmallow", "egg"],
    ["spring roll wrapper", "egg"],
    ["cornflakes", "gluten cereals"],
    ["coconut milk", "sulphites"],
  ];
  it.each(may)("%s may contain %s: check the label", (name, allergen) => {
    const no = refusalFor(
      store,
      the(name),
      readAvoid(store, { allergens: [allergen] }, () => []),
    );
    expect(no?.detail).toMatch(/^May contain|^Contains/);
  });
});

describe("diets by record", () => {
  const rows: readonly (readonly [diet: string, right: string, wrong: string])[] = [
    [
      "vegan",
      "vegan butter, oat milk, coconut milk, cocoa butter, oyster mushroom, vegetable suet, vegan kimchi",
      "butter, ghee, goat cheese, crab stick, honey, marshmallow, kimchi, lard, Worcestershire sauce",
    ],
    [
      "vegetarian",
      "butternut squash, vegan fish sauce, vegetarian oyster sauce, egg noodles, beefsteak tomato",
      "sweetbreads, head cheese, gelatin, lard, suet, bombay duck, parmesan, oyster sauce",
    ],
    [
      "halal",
      "vegan kimchi, malt vinegar, chicken thigh",
      "wild boar, lard, head cheese, black pudding, vanilla extract, mirin, gelatin, marshmallow",
    ],
    [
      "kosher",
      "salmon, tilapia, cod, carp",
      "basa, monkfish, wolffish, catfish, eel, swordfish, sturgeon, monkfish liver, crab stick, oyster sauce, suet, wild boar, rabbit",
    ],
    [
      "coeliac",
      "buckwheat, teff, glass noodles, cream of tartar, millet, liquid smoke",
      "oat milk, spelt, soba, seitan, malt vinegar, soy sauce, couscous, panko, barley miso, papad",
    ],
    [
      "jain",
      "eggplant, butternut squash, lotus seed",
      "potato, water chestnut, garlic chives, leek, oyster mushroom, honey, egg noodles",
    ],
    ["buddhist", "butternut squash, tofu", "leek, chives, garlic, asafoetida, egg noodles, fish sauce"],
    ["no pork", "beef bacon, turkey bacon, chicken sausage", "wild boar, lard, bacon, gelatin, pork rinds"],
    [
      "pregnancy",
      "cheddar, sardine, mozzarella",
      "brie, blue cheese, pate, liverwurst, swordfish, Cajun boudin, homemade mayonnaise, brandy",
    ],
    ["infant", "maple syrup, ground almonds", "honey, honey mustard, cashew, soy sauce, rice milk, mochi"],
    ["g6pd", "chickpea, kidney bean", "fava bean, doubanjiang, plant-based mince"],
    ["warfarin", "cabbage", "grapefruit, natto, goji berry"],
    [
      "low tyramine",
      "ricotta, chicken thigh",
      "blue cheese, salami, miso, soy sauce, kecap manis, doubanjiang, vegan kimchi",
    ],
  ];
  it.each(rows)("%s: yes to %s; no to %s", (diet, right, wrong) => {
    const rules = readAvoid(store, { diets: [diet] }, () => []);
    for (const name of right.split(", ")) expect(refusalFor(store, the(name), rules), name).toBeUndefined();
    for (const name of wrong.split(", ")) expect(refusalFor(store, the(name), rules), name).toBeDefined();
  });
  it("a name nobody knows is never taken for a safe one", () => {
    for (const name of ["horse chestnut", "egg tofu", "fish mint"]) expect(findFood(c, name)).toEqual([]);
  });
});
