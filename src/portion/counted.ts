import type { Ingredient, Store } from "../catalogue/index.js";
import type { Quantity } from "../quantity/index.js";
import { type Weight, weigh } from "./weigh.js";

const COUNTS = new Set(["piece", "clove", "slice", "stick", "bunch"]);
const LOOSE = ["ground", "powder", "flakes", "granules"];

/** "4 pods cardamom", "1 inch piece of cinnamon": what is usually bought ground is here in the state that is counted so. */
export function countedAs(
  store: Store,
  i: Ingredient,
  q: Quantity,
  words: ReadonlySet<string>,
): { readonly ingredient: Ingredient; readonly weight: Weight } | undefined {
  if (q.unit === undefined || !COUNTS.has(q.unit.id) || !i.state.some((s) => LOOSE.includes(s))) return undefined;
  for (const ingredient of store.ingredients) {
    if (ingredient.food !== i.food || ingredient.part !== i.part || ingredient === i) continue;
    const weight = ingredient.state.some((s) => LOOSE.includes(s)) ? undefined : weigh(store, ingredient, q, words);
    if (weight !== undefined) return { ingredient, weight };
  }
  return undefined;
}
