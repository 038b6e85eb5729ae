import type { AllergenId } from "../types.js";

/** The allergens facts are given for: the US nine, the EU and UK fourteen and Canada's, as one list. */
export const ALLERGENS: readonly AllergenId[] = Object.freeze([
  "milk",
  "egg",
  "fish",
  "crustacean shellfish",
  "molluscs",
  "tree nuts",
  "peanuts",
  "wheat",
  "gluten cereals",
  "soy",
  "sesame",
  "celery",
  "mustard",
  "lupin",
  "sulphites",
]);

/** Every diet and condition the safety tables know: the fourteen of the contract and further ones. Written here and nowhere else. */
export const DIETS = Object.freeze([
  "vegan",
  "vegetarian",
  "lacto-vegetarian",
  "ovo-vegetarian",
  "pescatarian",
  "halal",
  "kosher",
  "jain",
  "buddhist",
  "coeliac",
  "lactose-free",
  "low sodium",
  "low fodmap",
  "pregnancy",
  "infant",
  "toddler",
  "g6pd",
  "warfarin",
  "grapefruit medicines",
  "low tyramine",
  "kidney disease",
  "no mammal meat",
  "no pork",
  "no beef",
  "no alcohol",
] as const);
