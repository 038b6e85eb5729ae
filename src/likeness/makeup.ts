import type { Ingredient, Store } from "../catalogue/index.js";

/** Shares by weight of what a thing is stirred together from, by the ingredient's place in the catalogue; they sum to 1. */
export type Makeup = ReadonlyMap<number, number>;
type Table = Readonly<Record<string, Readonly<Record<string, number>>>>;
/** Deeper than any made thing is made of made things; the rules of the data bar circles. */
const DEEP = 8;

const made = new WeakMap<Store, Map<Ingredient, Makeup>>();
const tableOf = (store: Store): Table => (store.tables["makeup"] as Table | undefined) ?? {};

/** The parts as they were written down, made things among them; undefined for what is no mixture. */
export function partsOf(store: Store, i: Ingredient): readonly { ingredient: Ingredient; share: number }[] | undefined {
  const table = tableOf(store);
  const parts = Object.hasOwn(table, i.id) ? table[i.id] : undefined;
  return (
    parts &&
    Object.entries(parts).flatMap(([id, share]) => {
      const ingredient = store.byId.get(id);
      return ingredient ? [{ ingredient, share }] : [];
    })
  );
}

/** The same down to what is no mixture itself; of that, it is all there is. */
function makeupOf(store: Store, i: Ingredient): Makeup {
  let known = made.get(store);
  if (known === undefined) made.set(store, (known = new Map<Ingredient, Makeup>()));
  let makeup = known.get(i);
  if (makeup === undefined) {
    const shares = new Map<number, number>();
    spread(store, i, 1, shares, DEEP);
    known.set(i, (makeup = shares));
  }
  return makeup;
}
function spread(store: Store, i: Ingredient, share: number, into: Map<number, number>, deep: number): void {
  const parts = deep > 0 ? partsOf(store, i) : undefined;
  if (parts === undefined) into.set(i.index, (into.get(i.index) ?? 0) + share);
  else for (const p of parts) spread(store, p.ingredient, share * p.share, into, deep - 1);
}

/**
 * How much of what a made thing is stirred together from is in others too, by weight, 0 to 1: 1 for the same parts in the same shares.
 * Undefined where nobody wrote down what it is made from.
 */
export function commonMakeup(
  store: Store,
  missing: Ingredient,
  uses: readonly { readonly ingredient: Ingredient; readonly grams: number }[],
): number | undefined {
  if (partsOf(store, missing) === undefined) return undefined;
  const want = makeupOf(store, missing);
  const have = new Map<number, number>();
  const grams = uses.reduce((sum, u) => sum + u.grams, 0);
  for (const u of uses)
    for (const [part, share] of makeupOf(store, u.ingredient))
      have.set(part, (have.get(part) ?? 0) + (share * u.grams) / grams);
  let common = 0;
  for (const [part, share] of want) common += Math.min(share, have.get(part) ?? 0);
  return common;
}
