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
