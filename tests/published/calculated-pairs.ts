// Foods whose record is published and which can be calculated too: what our method makes of them beside what was measured. Proportions are
// what such a product is usually made of (common practice, no source), written down before any result was looked at, and never changed
// after one. Left out are records that say "prepared from recipe": those were calculated by the table itself and would prove nothing.
import type { Calculated } from "../../src/catalogue/authoring/schema.js";

export type Pair = readonly [record: string, what: string, parts: Calculated["parts"]];

/** One food in another form; the water of the dried one is the record's own, so that only what else changes is seen. */
export const FORMS: readonly Pair[] = [
  ["usda-sr28:02003", "dried basil from fresh", { "basil/fresh": 1 }],
  ["usda-sr28:02029", "dried parsley from fresh", { "parsley/fresh": 1 }],
  ["usda-sr28:02017", "dried dill from fresh", { "dill/fresh": 1 }],
  ["usda-sr28:02036", "dried rosemary from fresh", { "rosemary/fresh": 1 }],
  ["usda-sr28:02042", "dried thyme from fresh", { "thyme/fresh": 1 }],
  ["usda-sr28:02012", "dried coriander leaf from fresh", { "cilantro/fresh": 1 }],
  ["usda-sr28:02066", "dried spearmint from fresh", { "mint/fresh": 1 }],
  ["usda-sr28:02020", "garlic powder from fresh", { "garlic/fresh": 1 }],
  ["usda-sr28:02026", "onion powder from fresh", { "onion/fresh": 1 }],
  ["usda-sr28:02021", "ground ginger from fresh", { "ginger/fresh": 1 }],
  ["usda-sr28:11284", "dried onion flakes from fresh", { "onion/fresh": 1 }],
  ["usda-sr28:11615", "freeze-dried chives from fresh", { "chives/fresh": 1 }],
  ["usda-sr28:11640", "freeze-dried shallots from fresh", { "shallot/fresh": 1 }],
  ["usda-sr28:11931", "freeze-dried red pepper from fresh", { "red-bell-pepper/fresh": 1 }],
  ["usda-sr28:11683", "dried carrot from fresh", { "carrot/fresh": 1 }],
  ["usda-sr28:11955", "sun-dried tomatoes from fresh", { "tomato/fresh": 1 }],
  ["usda-sr28:11546", "tomato paste from fresh tomatoes", { "tomato/fresh": 1 }],
  ["usda-sr28:11547", "tomato puree from fresh tomatoes", { "tomato/fresh": 1 }],
  ["usda-sr28:11268", "dried shiitake from fresh", { "shiitake/fresh": 1 }],
  ["mext-2020:08030", "dried maitake from fresh", { "mext-2020:08028": 1 }],
  ["mext-2020:08004", "dried wood ear from fresh", { "mext-2020:08054": 1 }],
  ["mext-2020:06136", "dried daikon from fresh", { "mext-2020:06132": 1 }],
  ["usda-sr28:09011", "dried apples from fresh", { "apple/fresh": 1 }],
  ["usda-sr28:09032", "dried apricots from fresh", { "apricot/fresh": 1 }],
  ["usda-sr28:09246", "dried peaches from fresh", { "peach/fresh": 1 }],
  ["usda-sr28:09259", "dried pears from fresh", { "pear/fresh": 1 }],
  ["usda-sr28:09041", "dried bananas from fresh", { "banana/fresh": 1 }],
  ["usda-sr28:09094", "dried figs from fresh", { "fig/fresh": 1 }],
  ["usda-sr28:09291", "prunes from plums", { "plum/fresh": 1 }],
  ["usda-sr28:09298", "raisins from grapes", { "grape/fresh": 1 }],
  ["mext-2020:07179", "dried mango from fresh", { "mext-2020:07132": 1 }],
  ["usda-sr28:12108", "dried coconut from fresh", { "coconut/fresh": 1 }],
  ["usda-sr28:01212", "dried whole milk from milk", { "milk/fresh": 1 }],
  ["usda-sr28:01214", "evaporated milk from milk", { "milk/fresh": 1 }],
  ["usda-sr28:01154", "dried skim milk from skim milk", { "skim-milk/fresh": 1 }],
  ["usda-sr28:01133", "dried egg from fresh", { "egg/fresh": 1 }],
  ["usda-sr28:01137", "dried egg yolk from fresh", { "egg.yolk/fresh": 1 }],
];

/** Cured and smoked: flesh and salt, the water the record's own. */
export const CURED: readonly Pair[] = [
  ["usda-sr28:15018", "salt cod from cod", { "usda-sr28:15015": 0.93, "salt/pantry": 0.07 }],
  ["usda-sr28:15042", "kippers from herring", { "usda-sr28:15039": 0.98, "salt/pantry": 0.02 }],
  ["usda-sr28:15035", "smoked haddock from haddock", { "usda-sr28:15033": 0.98, "salt/pantry": 0.02 }],
  ["usda-sr28:83110", "salted mackerel from mackerel", { "usda-sr28:15046": 0.92, "salt/pantry": 0.08 }],
  [
    "usda-sr28:10130",
    "Canadian bacon from pork loin",
    { "usda-sr28:10024": 0.975, "salt/pantry": 0.02, "sugar/pantry": 0.005 },
  ],
  [
    "usda-sr28:10123",
    "bacon from pork belly",
    { "usda-sr28:10005": 0.975, "salt/pantry": 0.018, "sugar/pantry": 0.007 },
  ],
  ["usda-sr28:13346", "corned beef from brisket", { "beef-brisket/fresh": 0.97, "salt/pantry": 0.03 }],
  ["mext-2020:11182", "dry-cured ham from pork leg", { "mext-2020:11130": 0.96, "salt/pantry": 0.04 }],
  ["mext-2020:10162", "dried opened mackerel from mackerel", { "mext-2020:10158": 0.985, "salt/pantry": 0.015 }],
];

/** Recipes: the water too is what the parts bring, except where it is cooked or dried away. */
export const RECIPES: readonly Pair[] = [
  [
    "usda-sr28:02015",
    "curry powder",
    {
      "coriander-seed/dried-ground": 0.36,
      "turmeric/dried-ground": 0.2,
      "cumin/dried-ground": 0.14,
      "fenugreek-seed/dried-ground": 0.1,
      "black-pepper/dried-ground": 0.05,
      "ginger/dried-ground": 0.05,
      "cayenne/dried-ground": 0.05,
      "yellow-mustard-seed/dried-ground": 0.05,
    },
  ],
  [
    "usda-sr28:02009",
    "chili powder",
    {
      "ancho/dried-ground": 0.78,
      "cumin/dried-ground": 0.08,
      "garlic/dried-powder": 0.05,
      "salt/pantry": 0.05,
      "oregano/dried": 0.04,
    },
  ],
  [
    "usda-sr28:02035",
    "pumpkin pie spice",
    {
      "cinnamon/dried-ground": 0.55,
      "ginger/dried-ground": 0.2,
      "nutmeg/dried-ground": 0.12,
      "allspice/dried-ground": 0.08,
      "clove/dried-ground": 0.05,
    },
  ],
  [
    "usda-sr28:02034",
    "poultry seasoning",
    {
      "sage/dried-ground": 0.35,
      "thyme/dried": 0.25,
      "marjoram/dried": 0.2,
      "rosemary/dried": 0.1,
      "black-pepper/dried-ground": 0.06,
      "nutmeg/dried-ground": 0.04,
    },
  ],
  [
    "usda-sr28:04025",
    "mayonnaise",
    {
      "vegetable-oil/pantry": 0.78,
      "egg.yolk/fresh": 0.08,
      "white-vinegar/pantry": 0.07,
      "water/pantry": 0.045,
      "sugar/pantry": 0.015,
      "salt/pantry": 0.01,
    },
  ],
  [
    "usda-sr28:11935",
    "ketchup",
    {
      "water/pantry": 0.353,
      "tomato-paste/canned": 0.3,
      "sugar/pantry": 0.2,
      "white-vinegar/pantry": 0.12,
      "salt/pantry": 0.022,
      "onion/dried-powder": 0.005,
    },
  ],
  [
    "usda-sr28:06626",
    "pesto",
    {
      "vegetable-oil/pantry": 0.33,
      "basil/fresh": 0.32,
      "parmesan/aged-grated": 0.2,
      "pine-nut/pantry": 0.12,
      "garlic/fresh": 0.02,
      "salt/pantry": 0.01,
    },
  ],
  [
    "usda-sr28:06150",
    "barbecue sauce",
    {
      "ketchup/pantry": 0.5,
      "brown-sugar/pantry": 0.22,
      "cider-vinegar/pantry": 0.12,
      "water/pantry": 0.11,
      "worcestershire-sauce/pantry": 0.03,
      "salt/pantry": 0.01,
      "paprika/dried-ground": 0.01,
    },
  ],
  [
    "usda-sr28:27049",
    "tartar sauce",
    { "mayonnaise/pantry": 0.72, "pickle-relish/pickled": 0.22, "caper/pickled": 0.03, "lemon.juice/fresh": 0.03 },
  ],
  [
    "usda-sr28:27051",
    "cocktail sauce",
    {
      "ketchup/pantry": 0.78,
      "horseradish/pickled-grated": 0.15,
      "lemon.juice/fresh": 0.05,
      "worcestershire-sauce/pantry": 0.02,
    },
  ],
  [
    "usda-sr28:04017",
    "thousand island dressing",
    { "mayonnaise/pantry": 0.5, "ketchup/pantry": 0.25, "pickle-relish/pickled": 0.2, "white-vinegar/pantry": 0.05 },
  ],
  [
    "usda-sr28:16158",
    "hummus",
    {
      "chickpea/fresh-cooked": 0.6,
      "tahini/pantry": 0.15,
      "water/pantry": 0.1,
      "lemon.juice/fresh": 0.08,
      "vegetable-oil/pantry": 0.05,
      "garlic/fresh": 0.01,
      "salt/pantry": 0.01,
    },
  ],
  [
    "usda-sr28:06112",
    "teriyaki sauce",
    {
      "soy-sauce/pantry": 0.6,
      "water/pantry": 0.14,
      "sugar/pantry": 0.14,
      "mirin/pantry": 0.1,
      "ginger/fresh": 0.01,
      "garlic/fresh": 0.01,
    },
  ],
  [
    "usda-sr28:06164",
    "salsa",
    {
      "tomato/canned": 0.72,
      "onion/fresh": 0.13,
      "green-chilli/fresh": 0.08,
      "white-vinegar/pantry": 0.04,
      "salt/pantry": 0.015,
      "cilantro/fresh": 0.015,
    },
  ],
  ["usda-sr28:12071", "almond paste", { "blanched-almond/pantry": 0.5, "sugar/pantry": 0.4, "water/pantry": 0.1 }],
  ["usda-sr28:01049", "half-and-half", { "milk/fresh": 0.5, "single-cream/fresh": 0.5 }],
  ["usda-sr28:01095", "condensed milk", { "milk/fresh": 0.83, "sugar/pantry": 0.17 }],
  ["usda-sr28:09081", "cranberry sauce", { "cranberry/fresh": 0.3, "sugar/pantry": 0.38, "water/pantry": 0.32 }],
  ["mext-2020:07013", "strawberry jam", { "strawberry/fresh": 0.5, "sugar/pantry": 0.5 }],
  ["mext-2020:07010", "apricot jam", { "apricot/fresh": 0.5, "sugar/pantry": 0.5 }],
  [
    "usda-sr28:18192",
    "shortbread",
    { "all-purpose-flour/pantry": 0.5, "butter/fresh-salted": 0.3, "sugar/pantry": 0.2 },
  ],
  [
    "usda-sr28:18364",
    "flour tortillas",
    {
      "all-purpose-flour/pantry": 0.6,
      "water/pantry": 0.31,
      "shortening/pantry": 0.07,
      "salt/pantry": 0.01,
      "baking-powder/pantry": 0.01,
    },
  ],
  [
    "usda-sr28:18334",
    "pie crust",
    { "all-purpose-flour/pantry": 0.52, "shortening/pantry": 0.3, "water/pantry": 0.17, "salt/pantry": 0.01 },
  ],
  [
    "usda-sr28:07063",
    "breakfast sausage",
    {
      "usda-sr28:10070": 0.83,
      "pork-fatback/fresh": 0.1,
      "water/pantry": 0.045,
      "salt/pantry": 0.018,
      "sage/dried": 0.004,
      "black-pepper/dried-ground": 0.003,
    },
  ],
  [
    "usda-sr28:07036",
    "Italian sausage",
    {
      "usda-sr28:10070": 0.82,
      "pork-fatback/fresh": 0.15,
      "salt/pantry": 0.018,
      "fennel-seed/dried": 0.007,
      "black-pepper/dried-ground": 0.005,
    },
  ],
  [
    "usda-sr28:07019",
    "dry chorizo",
    {
      "usda-sr28:10070": 0.85,
      "pork-fatback/fresh": 0.1,
      "salt/pantry": 0.025,
      "paprika/dried-ground": 0.02,
      "garlic/fresh": 0.005,
    },
  ],
  [
    "usda-sr28:07071",
    "dry salami",
    { "usda-sr28:10070": 0.82, "pork-fatback/fresh": 0.15, "salt/pantry": 0.027, "black-pepper/dried-ground": 0.003 },
  ],
  [
    "usda-sr28:11940",
    "sweet pickles",
    { "cucumber/fresh": 0.68, "sugar/pantry": 0.17, "white-vinegar/pantry": 0.14, "salt/pantry": 0.01 },
  ],
  [
    "mext-2020:17109",
    "white sauce",
    { "milk/fresh": 0.84, "butter/fresh-salted": 0.08, "all-purpose-flour/pantry": 0.07, "salt/pantry": 0.01 },
  ],
  [
    "mext-2020:17037",
    "tomato sauce",
    { "tomato/canned": 0.85, "onion/fresh": 0.1, "olive-oil/pantry": 0.03, "salt/pantry": 0.01, "sugar/pantry": 0.01 },
  ],
];
/** Of the recipes those that lose water in the pan or the cellar: it is the record's own. */
export const COOKED_DOWN: readonly string[] = [
  "usda-sr28:01095",
  "mext-2020:07013",
  "mext-2020:07010",
  "usda-sr28:18192",
  "usda-sr28:07019",
  "usda-sr28:07071",
  "mext-2020:17109",
  "mext-2020:17037",
];
