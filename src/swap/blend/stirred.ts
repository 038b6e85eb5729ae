import type { Ingredient } from "../../catalogue/index.js";
import { partsOf } from "../../likeness/index.js";
import type { Ask } from "../ask.js";
import { isBasic } from "./pool.js";

const MOST_PARTS = 4;
/** Share of the thing by weight that its parts at hand must make, or it is another thing. */
const ENOUGH = 0.6;

function atHand(ask: Ask, i: Ingredient): boolean {
  if (i.id === "water/pantry" || ask.have?.has(i.id) === true) return true;
  return !(ask.onlyFromHave && ask.have !== undefined) && (isBasic(ask, i) || i.athand > 0);
}

/** Parts at hand, a made thing that is not at hand taken apart into its own. */
function found(ask: Ask, i: Ingredient, share: number, into: Map<Ingredient, number>): void {
  for (const part of partsOf(ask.store, i) ?? []) {
    const { ingredient } = part;
    if (ingredient.food !== ask.item.food && atHand(ask, ingredient))
      into.set(ingredient, (into.get(ingredient) ?? 0) + share * part.share);
    else found(ask, ingredient, share * part.share, into);
  }
}

/**
 * What is missing, stirred together from the parts it is made from, as far as they are at hand: the four that weigh most, for all of it.
 * Undefined when it is no mixture, or too little of it can be had.
 */
export function stirred(ask: Ask): readonly { ingredient: Ingredient; grams: number }[] | undefined {
  const shares = new Map<Ingredient, number>();
  found(ask, ask.item, 1, shares);
  const parts = [...shares].sort(([a, x], [b, y]) => y - x || (a.id < b.id ? -1 : 1)).slice(0, MOST_PARTS);
  const whole = parts.reduce((sum, [, share]) => sum + share, 0);
  if (parts.length < 2 || whole < ENOUGH) return undefined;
  return parts.map(([ingredient, share]) => ({ ingredient, grams: (share / whole) * ask.grams }));
}
