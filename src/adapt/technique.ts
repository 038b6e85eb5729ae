import { isUncooked } from "../recipe/index.js";
import type { Recipe, TechniqueId } from "../types.js";
import { stems, tokens } from "./words.js";

/** Words of steps and the way of cooking they mean; what says most comes first. */
const WORDS: readonly (readonly [technique: TechniqueId, words: readonly string[]])[] = [
  ["deep-fry", ["deep"]],
  ["braise", ["braise", "braised", "braising"]],
  ["stew", ["stew", "stewed"]],
  ["roast", ["roast", "roasting", "roasted"]],
  ["bake", ["bake", "baked", "baking"]],
  ["grill", ["grill", "griddle", "broil", "barbecue"]],
  ["steam", ["steam", "steamer"]],
  ["stir-fry", ["wok"]],
  ["simmer", ["simmer", "simmering", "poach", "stock", "broth"]],
  ["boil", ["boil", "boiling", "boiled"]],
  ["fry", ["fry", "frying", "saute", "sear", "brown", "sweat", "soften", "sizzle"]],
];
/** How the dish is cooked, from the steps that name the food, else from all of them; undefined when they do not say. */
export function techniqueOf(recipe: Recipe, names: readonly (readonly string[])[]): TechniqueId | undefined {
  const steps = recipe.steps.map((s) => tokens(s.text.slice(0, 5000)).map((t) => t.text));
  const stemmed = recipe.steps.map((s) => stems(s.text.slice(0, 5000)));
  const named = steps.filter((_, i) => names.some((n) => n.every((w) => stemmed[i]?.includes(w))));
  for (const group of [named, steps]) {
    const said = new Set(group.flat());
    if (said.has("stir") && (said.has("fry") || said.has("fried"))) return "stir-fry";
    const found = WORDS.find(([, words]) => words.some((w) => said.has(w)));
    if (found) return found[0];
  }
  return isUncooked(recipe) ? "raw" : undefined;
}
