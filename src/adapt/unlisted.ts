import type { Store } from "../catalogue/index.js";
import { findFood } from "../names/index.js";
import { refusalFor, type AvoidRules } from "../safety/index.js";
import type { Catalogue, Recipe } from "../types.js";
import { partOfAnother } from "./mentions.js";
import { MAX_STEP, placeOf, stems, tokens } from "./words.js";

/** What steps use and lists of ingredients leave out, and what carries most allergens. */
const OFTEN: readonly string[] = [
  "butter",
  "milk",
  "cream",
  "egg",
  "cheese",
  "parmesan",
  "yogurt",
  "ghee",
  "flour",
  "bread",
  "breadcrumbs",
  "honey",
  "lard",
  "bacon",
  "ham",
  "gelatin",
  "mayonnaise",
  "mustard",
  "soy sauce",
  "fish sauce",
  "oyster sauce",
  "sesame oil",
  "sesame seeds",
  "peanuts",
  "almonds",
  "walnuts",
  "pasta",
  "noodles",
  "stock",
  "celery",
  "wine",
  "beer",
  "anchovies",
];

/** Foods the steps name that no line lists and that must be avoided: nothing is put in their place, the cook is told. */
export function namedOnlyInSteps(c: Catalogue, store: Store, recipe: Recipe, rules: AvoidRules): readonly string[] {
  if (rules.allergens.length + rules.diets.length + rules.groups.length + rules.foods.length === 0) return [];
  const lines = recipe.lines.map((l) => stems(l.text.slice(0, 500)));
  const steps = recipe.steps.map((s) => tokens(s.text.slice(0, MAX_STEP)));
  return OFTEN.flatMap((name) => {
    const words = stems(name);
    if (lines.some((l) => placeOf(l, words) >= 0)) return [];
    const found = findFood(c, name, { limit: 1 })[0];
    const item = found && store.byId.get(found.id);
    if (item === undefined || refusalFor(store, item, rules) === undefined) return [];
    const at = steps.flatMap((step, i) => {
      const from = placeOf(
        step.map((t) => t.stem),
        words,
      );
      if (from < 0) return [];
      const last = step[from + words.length - 1];
      const first = step[from];
      if (first === undefined || last === undefined) return [];
      const m = { start: first.start, end: last.end, from, to: from + words.length, words, many: false };
      return partOfAnother(c, store, item, step, m) ? [] : [i + 1];
    });
    return at.length === 0
      ? []
      : [`CHECK BY HAND: step ${at.join(", ")} of the recipe names ${name}, which no line lists and must be avoided.`];
  });
}
