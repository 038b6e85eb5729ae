import type { Ingredient } from "../catalogue/store.js";
import { ALLERGENS } from "../catalogue/words.js";
import { freeze } from "../errors.js";
import type { AllergenFacts, AllergenId } from "../types.js";
import { matches } from "./match.js";
import { safetyTables, type SafetyStore } from "./tables.js";

/** What something is made from brings its allergen with it, should the record forget to say so. */
const OF_ORIGIN: Readonly<Record<string, AllergenId>> = {
  dairy: "milk",
  egg: "egg",
  fish: "fish",
  crustacean: "crustacean shellfish",
  mollusc: "molluscs",
};

/** Sorts sets into the four lists: the surest word wins, and each allergen stands in exactly one list. */
function settle(
  contains: ReadonlySet<AllergenId>,
  may: ReadonlySet<AllergenId>,
  unknown: ReadonlySet<AllergenId>,
): AllergenFacts {
  const facts = {
    contains: [] as AllergenId[],
    mayContain: [] as AllergenId[],
    free: [] as AllergenId[],
    unknown: [] as AllergenId[],
  };
  for (const a of ALLERGENS) {
    if (contains.has(a)) facts.contains.push(a);
    else if (may.has(a)) facts.mayContain.push(a);
    else if (unknown.has(a)) facts.unknown.push(a);
    else facts.free.push(a);
  }
  return freeze(facts);
}

/** Wheat is a gluten cereal, so what is said of wheat is said of both. */
function withGluten(set: Set<AllergenId>): Set<AllergenId> {
  if (set.has("wheat")) set.add("gluten cereals");
  return set;
}

const known = new WeakMap<object, WeakMap<Ingredient, AllergenFacts>>();

/**
 * What one ingredient contains, may contain (sometimes made with it, or touched by it: check the label), is free of, and
 * is not known of. The record, the hidden carriers of the allergen table and the origin all count; none can take away
 * what another says. The four lists cover the fifteen allergens exactly; unknown is never called free.
 */
export function allergenFacts(store: SafetyStore, ingredient: Ingredient): AllergenFacts {
  const cache = known.get(store.tables) ?? new WeakMap<Ingredient, AllergenFacts>();
  known.set(store.tables, cache);
  const before = cache.get(ingredient);
  if (before) return before;
  const record = {
    contains: ingredient.contains,
    mayContain: ingredient.mayContain,
    unknown: ingredient.unknownAllergens,
  };
  const contains = new Set(record.contains);
  const may = new Set(record.mayContain);
  const unknown = new Set(record.unknown);
  for (const [origin, allergen] of Object.entries(OF_ORIGIN)) if (ingredient.origin.has(origin)) contains.add(allergen);
  for (const carrier of safetyTables(store).allergens.carriers) {
    if (!matches(store, ingredient, record, carrier.when)) continue;
    for (const a of carrier.usual) contains.add(a);
    for (const a of carrier.sometimes) may.add(a);
  }
  const facts = settle(withGluten(contains), withGluten(may), withGluten(unknown));
  cache.set(ingredient, facts);
  return facts;
}

/** Facts of something that could not be read: nothing is known of it. */
export function unknownFacts(): AllergenFacts {
  return settle(new Set(), new Set(), new Set(ALLERGENS));
}

/**
 * The facts of a dish or a meal from those of its parts: contained in one is contained, free only when free in all.
 * Of nothing at all, nothing is known.
 */
export function mergeAllergens(list: readonly AllergenFacts[]): AllergenFacts;
export function mergeAllergens(store: SafetyStore, ingredients: readonly Ingredient[]): AllergenFacts;
export function mergeAllergens(
  from: SafetyStore | readonly AllergenFacts[],
  ingredients: readonly Ingredient[] = [],
): AllergenFacts {
  const list = "tables" in from ? ingredients.map((i) => allergenFacts(from, i)) : from;
  if (list.length === 0) return unknownFacts();
  const union = (pick: keyof AllergenFacts): Set<AllergenId> => new Set(list.flatMap((f) => f[pick]));
  return settle(union("contains"), union("mayContain"), union("unknown"));
}

/** How a swap changes what is in the dish. `label`: those of gained and kept that only some makers use: check the label. */
export interface AllergenChange {
  readonly gained: readonly AllergenId[];
  readonly lost: readonly AllergenId[];
  readonly kept: readonly AllergenId[];
  readonly unknown: readonly AllergenId[];
  readonly label: readonly AllergenId[];
}

/**
 * Gained, lost, kept and unknown allergens, each in one list at most. Lost only when what comes in is free of it; a
 * "sometimes" that becomes a "contains" is gained.
 */
export function changeOf(before: AllergenFacts, after: AllergenFacts): AllergenChange {
  const change = {
    gained: [] as AllergenId[],
    lost: [] as AllergenId[],
    kept: [] as AllergenId[],
    unknown: [] as AllergenId[],
    label: [] as AllergenId[],
  };
  for (const a of ALLERGENS) {
    const had = before.contains.includes(a);
    const mightHave = had || before.mayContain.includes(a);
    if (after.unknown.includes(a)) change.unknown.push(a);
    else if (after.contains.includes(a)) (had ? change.kept : change.gained).push(a);
    else if (after.mayContain.includes(a)) {
      (mightHave ? change.kept : change.gained).push(a);
      change.label.push(a);
    } else if (mightHave) change.lost.push(a);
  }
  return freeze(change);
}

/** What changes when `uses` stand in for `missing`. @see changeOf */
export function allergenChange(store: SafetyStore, missing: Ingredient, uses: readonly Ingredient[]): AllergenChange {
  return changeOf(allergenFacts(store, missing), mergeAllergens(uses.map((use) => allergenFacts(store, use))));
}
