// Things whose names mislead and things every safety rule needs, said by hand.
import type { Ingredient } from "../../src/catalogue/store.js";
import type { Larder } from "./safety.js";

/** A small larder of things whose names mislead and things every rule needs. */
export function usual(l: Larder): Readonly<Record<string, Ingredient>> {
  const { food } = l;
  const plant = ["plant"];
  return {
    "vegan butter": food("vegan-butter/pantry", {
      kinds: ["spread fat", "fat"],
      origin: plant,
      contains: ["soy"],
      figures: { sodium: 500, lactose: 0 },
    }),
    butter: food("butter/fresh-unsalted", {
      kinds: ["butter", "dairy", "animal"],
      origin: ["dairy"],
      tags: ["low lactose", "low fodmap"],
      figures: { lactose: 0.1, sodium: 11, water: 16 },
    }),
    "oat milk": food("oat-milk/pantry", {
      kinds: ["grain milk", "plant milk", "plant"],
      origin: plant,
      tags: ["oats"],
      contains: ["gluten cereals"],
      figures: { sodium: 40, lactose: 0 },
    }),
    milk: food("milk/fresh", {
      kinds: ["milk", "dairy", "animal"],
      origin: ["dairy"],
      tags: ["high lactose", "high fodmap"],
      figures: { lactose: 4.8, sodium: 43 },
    }),
    "almond extract": food("almond-extract/pantry", {
      kinds: ["nut extract", "seasoning"],
      origin: ["plant", "alcohol"],
      tags: ["alcohol"],
      may: ["tree nuts"],
    }),
    coconut: food("coconut/fresh", { kinds: ["fruit", "plant"], origin: plant, figures: { sodium: 20 } }),
    buckwheat: food("buckwheat/pantry", {
      kinds: ["buckwheat groat", "grain", "plant"],
      origin: plant,
      tags: ["gluten free grain"],
      figures: { sodium: 1 },
    }),
    "chestnut mushroom": food("cremini/fresh", {
      name: "chestnut mushroom",
      kinds: ["mushroom", "fungus"],
      origin: ["fungus"],
      figures: { sodium: 6 },
    }),
    "oyster mushroom": food("oyster-mushroom/fresh", {
      kinds: ["mushroom", "fungus"],
      origin: ["fungus"],
      figures: { sodium: 18 },
    }),
    "crab stick": food("crab-stick/frozen", {
      kinds: ["shellfish-style fish paste", "finfish", "animal"],
      origin: ["fish", "egg", "plant"],
      contains: ["fish", "egg", "wheat"],
      may: ["crustacean shellfish"],
      can: ["ready to eat"],
      figures: { sodium: 700 },
    }),
    "Worcestershire-style sauce": food("worcestershire-sauce/pantry", {
      kinds: ["brown table sauce", "seasoning"],
      origin: ["plant", "fish"],
      contains: ["fish"],
      unknown: ["soy", "gluten cereals"],
      figures: { sodium: 980 },
    }),
    "cream of tartar": food("cream-of-tartar/pantry", {
      kinds: ["leavening acid", "leavener"],
      origin: ["mineral"],
      figures: { sodium: 52 },
    }),
    "butternut squash": food("butternut-squash/fresh", {
      kinds: ["vegetable", "plant"],
      origin: plant,
      figures: { sodium: 4 },
    }),
    nutmeg: food("nutmeg/dried-ground", {
      kinds: ["spice", "plant"],
      origin: plant,
      tags: ["nutmeg"],
      figures: { sodium: 16 },
    }),
    "goat cheese": food("goat-cheese/fresh", {
      kinds: ["fresh acid goat cheese", "cheese", "dairy"],
      origin: ["dairy", "microbe"],
      tags: ["low lactose"],
      figures: { sodium: 460, lactose: 0.5 },
    }),
    "egg noodles": food("egg-noodles/dried", {
      kinds: ["egg wheat noodle", "pasta or noodle", "grain"],
      origin: ["plant", "egg"],
      contains: ["egg", "wheat"],
      figures: { sodium: 21 },
    }),
    sweetbread: food("sweetbreads/fresh", {
      kinds: ["creamy offal", "offal", "red meat", "meat"],
      origin: ["beef"],
      figures: { sodium: 96 },
    }),
    egg: food("egg/fresh", {
      kinds: ["raw whole egg", "egg", "animal"],
      origin: ["egg"],
      tags: ["raw egg", "low fodmap"],
      figures: { sodium: 142 },
    }),
    honey: food("honey/pantry", {
      kinds: ["honey", "sweetener"],
      origin: ["honey"],
      tags: ["honey", "high fodmap"],
      figures: { sodium: 4 },
    }),
    beef: food("stewing-beef/fresh", {
      kinds: ["tough beef cut", "beef", "red meat", "meat"],
      origin: ["beef"],
      tags: ["low fodmap"],
      figures: { sodium: 60 },
    }),
    "beef mince": food("ground-beef/fresh", {
      kinds: ["minced beef", "beef", "red meat", "meat"],
      origin: ["beef"],
      tags: ["minced meat"],
      figures: { sodium: 66 },
    }),
    pork: food("pork-loin/fresh", {
      kinds: ["lean pork cut", "pork", "red meat", "meat"],
      origin: ["pork"],
      figures: { sodium: 50 },
    }),
    bacon: food("bacon/cured-smoked", {
      kinds: ["bacon", "cured meat", "meat"],
      origin: ["pork"],
      tags: ["must be cooked", "nitrite cured"],
      figures: { sodium: 800 },
    }),
    "dry-cured ham": food("prosciutto/cured", {
      kinds: ["dry-cured ham", "cured meat", "meat"],
      origin: ["pork"],
      tags: ["cured uncooked", "ready to eat meat"],
      can: ["ready to eat"],
      figures: { sodium: 2000 },
    }),
    chicken: food("chicken-thigh/fresh", {
      kinds: ["dark chicken meat", "bird", "poultry"],
      origin: ["poultry"],
      figures: { sodium: 90 },
    }),
    cod: food("cod/fresh", {
      kinds: ["flaky white fish", "finfish", "animal"],
      origin: ["fish"],
      figures: { sodium: 54 },
    }),
    carp: food("carp/fresh", { kinds: ["freshwater white fish", "finfish", "animal"], origin: ["fish"] }),
    "kidney beans": food("kidney-bean/dried", {
      kinds: ["red bean", "common bean", "cooking pulse", "pulse"],
      origin: plant,
      tags: ["lectin", "high fodmap"],
      figures: { sodium: 12 },
    }),
    "canned kidney beans": food("kidney-bean/canned", {
      kinds: ["red bean", "common bean", "cooking pulse", "pulse"],
      origin: plant,
      tags: ["lectin", "high fodmap"],
      figures: { sodium: 250 },
    }),
    gelatin: food("gelatin/pantry-powder", {
      kinds: ["gelatin", "gelling agent"],
      origin: ["gelatin", "pork", "beef"],
    }),
    pineapple: food("pineapple/fresh", { kinds: ["fruit", "plant"], origin: plant, tags: ["enzyme raw"] }),
    "white vinegar": food("white-vinegar/pantry", {
      kinds: ["vinegar", "acid"],
      origin: plant,
      tags: ["preserving acid"],
      roles: [{ role: "acid", weight: 1 }],
    }),
    "lemon juice": food("lemon.juice/fresh", {
      kinds: ["fruit", "plant"],
      origin: plant,
      roles: [{ role: "acid", weight: 1 }],
    }),
    "hot sauce": food("hot-sauce/pantry", {
      kinds: ["hot sauce", "table sauce", "seasoning"],
      origin: plant,
      unknown: ["milk", "egg", "fish", "wheat", "gluten cereals", "soy", "celery", "mustard", "sulphites"],
    }),
    onion: food("onion/fresh", {
      kinds: ["vegetable", "plant"],
      origin: ["plant", "allium", "root"],
      tags: ["high fodmap"],
      figures: { sodium: 4 },
    }),
    tofu: food("tofu/fresh", {
      kinds: ["firm tofu", "soy food", "pulse"],
      origin: plant,
      contains: ["soy"],
      tags: ["low fodmap"],
      figures: { sodium: 10 },
    }),
    brie: food("brie/aged", {
      kinds: ["bloomy-rind cheese", "cheese", "dairy"],
      origin: ["dairy", "microbe"],
      tags: ["soft cheese", "low lactose"],
      figures: { sodium: 630 },
    }),
    "broad beans": food("fava-bean/dried", {
      kinds: ["broad bean", "cooking pulse", "pulse"],
      origin: plant,
      tags: ["fava"],
    }),
    lupin: food("lupin-bean/brined", { kinds: ["lupin bean", "pulse"], origin: plant, contains: ["lupin"] }),
    scallop: food("scallop/fresh", { kinds: ["scallop", "mollusc meat", "mollusc"], origin: ["mollusc"] }),
    walnut: food("walnut/pantry", {
      kinds: ["tree nut", "nut"],
      origin: plant,
      contains: ["tree nuts"],
      tags: ["whole nut"],
    }),
    garlic: food("garlic/fresh", { kinds: ["vegetable", "plant"], origin: ["plant", "allium", "root"] }),
    morel: food("morel/fresh", { kinds: ["mushroom", "fungus"], origin: ["fungus"], tags: ["morel", "wild mushroom"] }),
    cassava: food("cassava/fresh", {
      kinds: ["root vegetable", "vegetable", "plant"],
      origin: ["plant", "root"],
      tags: ["cassava"],
    }),
    salt: food("salt/pantry", {
      kinds: ["fine salt", "salt", "mineral"],
      origin: ["mineral"],
      roles: [{ role: "salt seasoning", weight: 1 }],
      figures: { sodium: 38758 },
    }),
    "curing salt": food("curing-salt/pantry", {
      kinds: ["fine salt", "salt", "mineral"],
      origin: ["mineral"],
      tags: ["curing salt"],
    }),
    grapefruit: food("grapefruit/fresh", { kinds: ["fruit", "plant"], origin: plant, tags: ["grapefruit"] }),
    "wheat flour": food("all-purpose-flour/pantry", {
      kinds: ["wheat flour", "flour", "grain"],
      origin: plant,
      tags: ["raw flour", "high fodmap"],
      contains: ["wheat", "gluten cereals"],
    }),
    parmesan: food("parmesan/aged", {
      kinds: ["hard grating cheese", "cheese", "dairy"],
      origin: ["dairy", "microbe", "animal rennet"],
      tags: ["low lactose"],
      figures: { sodium: 1600, lactose: 0 },
    }),
  };
}
