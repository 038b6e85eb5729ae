import type { Ingredient, Store } from "../catalogue/index.js";
import { kinLikeness } from "../likeness/index.js";
import { allergenFacts } from "../safety/index.js";
import type { Ask } from "./ask.js";
import type { Weighed } from "./candidates.js";
import { classOf } from "./score.js";
import { traitsOf } from "./traits.js";

/** Answers of one food, and of the missing food in its other states, before the list is nothing but varieties. */
const OF_FOOD = 1;
const OF_OWN_FOOD = 3;
/** Of one kind. What is eaten for itself has many good others: any white fish for a white fish. */
const OF_KIND = { bulk: 8, seasoning: 3, working: 3 } as const;
/** Kin from which on two parts of a mixture are one choice on a shelf: any vinegar, salted butter or not. */
const ONE_CHOICE = 0.7;
const KEPT_FROM: readonly string[] = [
  "dairy",
  "egg",
  "fish",
  "crustacean",
  "mollusc",
  "beef",
  "pork",
  "poultry",
  "alcohol",
];
/** One stands for the other, for everybody at the table: what the one must be kept from, so must the other. */
function oneChoice(store: Store, a: Ingredient, b: Ingredient): boolean {
  if (a.id === b.id || kinLikeness(a, b) < ONE_CHOICE) return a.id === b.id;
  if (KEPT_FROM.some((o) => a.origin.has(o) !== b.origin.has(o))) return false;
  const [mine, theirs] = [allergenFacts(store, a), allergenFacts(store, b)];
  return mine.contains.join() === theirs.contains.join() && mine.mayContain.join() === theirs.mayContain.join();
}
/** Whether of two mixtures one is the other with something more, or with another of the same shelf in place of a part. */
export function sameMixture(store: Store, a: readonly Ingredient[], b: readonly Ingredient[]): boolean {
  const [few, many] = a.length <= b.length ? [a, b] : [b, a];
  if (few.every((i) => many.includes(i))) return true;
  if (few.length !== many.length) return false;
  const free = [...many];
  return few.every((i) => {
    const at = free.findIndex((j) => oneChoice(store, i, j));
    if (at >= 0) free.splice(at, 1);
    return at >= 0;
  });
}

/**
 * Tells whether a single stand-in is one more of what the list has enough of: states of one food, varieties of one kind. What a table names and what is in the house always stay. Counted before anything is refused, so that avoiding more never brings
 * up a swap that was not there before.
 */
export class Crowd {
  private readonly foods = new Map<string, number>();
  private readonly kinds = new Map<string, number>();
  /** Kinds of which there is one that is not the missing food in another state. */
  private readonly others = new Set<string>();
  private readonly twins = new Set<string>();
  constructor(private readonly ask: Ask) {}
  /** Whether one that no table names would be one too many. Once true, always true. */
  full(i: Ingredient): boolean {
    if (this.ask.have?.has(i.id) === true) return false;
    const most = i.food === this.ask.item.food ? OF_OWN_FOOD : OF_FOOD;
    if ((this.foods.get(i.food) ?? 0) >= most) return true;
    const ofKind = this.kinds.get(i.kind) ?? 0;
    return ofKind >= OF_KIND[classOf(this.ask)] || (this.others.has(i.kind) && this.farFetched(i));
  }
  /** Only in special shops, and no tradition asked for cooks with it: after a duck egg nobody needs to hear of goose and quail. */
  private farFetched(i: Ingredient): boolean {
    return (
      classOf(this.ask) !== "bulk" &&
      i.food !== this.ask.item.food &&
      traitsOf(this.ask.store).atHand[i.index] === 0 &&
      this.ask.cuisines?.some((t) => i.traditions.includes(t)) !== true
    );
  }
  /** The same for one that has come up, counting it when it stays. */
  crowded(w: Weighed): boolean {
    const only = w.uses.length === 1 ? w.uses[0]?.ingredient : undefined;
    // What is as good as the thing itself needs nothing stirred in that makes it no better.
    if (!only) return w.known === undefined && w.uses.some((u) => this.twins.has(u.ingredient.id));
    if (kinLikeness(this.ask.item, only) >= 0.88) this.twins.add(only.id);
    if (this.ask.have?.has(only.id) === true) return false;
    if (w.known === undefined && this.full(only)) return true;
    this.foods.set(only.food, (this.foods.get(only.food) ?? 0) + 1);
    this.kinds.set(only.kind, (this.kinds.get(only.kind) ?? 0) + 1);
    if (only.food !== this.ask.item.food) this.others.add(only.kind);
    return false;
  }
}
