import type { Ingredient } from "../catalogue/store.js";
import { freeze } from "../errors.js";
import type { Caution } from "../types.js";
import type { AvoidRules } from "./avoid.js";
import { dietEntry } from "./diets.js";
import { fits } from "./fits.js";
import { refs, type SafetyStore } from "./tables.js";

/** Two things a diet keeps apart, both on the table. */
export interface MealConflict extends Caution {
  /** Ids of what stands on either side. */
  readonly between: readonly string[];
}

/** Pairs among these that a diet of the rules keeps apart. */
export function apartIn(
  store: SafetyStore,
  ingredients: readonly Ingredient[],
  rules: AvoidRules,
): readonly MealConflict[] {
  const conflicts: MealConflict[] = [];
  for (const diet of rules.diets) {
    for (const pair of dietEntry(store, diet).apart ?? []) {
      const side = (m: typeof pair.one): Ingredient[] => ingredients.filter((i) => fits(store, i, m));
      const one = side(pair.one);
      const other = side(pair.other);
      if (one.length === 0 || other.length === 0) continue;
      const names = (list: readonly Ingredient[]): string =>
        [...new Set(list.map((i) => store.nameOf(i)))].slice(0, 3).join(", ");
      conflicts.push({
        hazard: pair.id,
        severity: pair.answer === "no" ? "stop" : "caution",
        who: diet,
        text: `${names(one)} with ${names(other)}. ${pair.text}`,
        sources: refs(pair.sources),
        between: [...new Set([...one, ...other].map((i) => i.id))],
      });
    }
  }
  return conflicts;
}

/**
 * What a whole meal puts together that someone's diet keeps apart, across its dishes: meat beside milk for a kosher table,
 * fish beside meat as a caution. Stops are to be refused or the meal changed.
 */
export function mealConflicts(
  store: SafetyStore,
  ingredients: readonly Ingredient[],
  rules: AvoidRules,
): readonly MealConflict[] {
  return freeze(apartIn(store, ingredients, rules));
}
