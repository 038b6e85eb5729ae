import type { Ingredient } from "../catalogue/index.js";
import { kinLikeness } from "../likeness/index.js";
import type { Ask } from "./ask.js";
import type { Weighed } from "./candidates.js";
import { classOf } from "./score.js";

/** Answers of one food, and of the missing food in its other states, before the list is nothing but varieties. */
const OF_FOOD = 1;
const OF_OWN_FOOD = 3;
/** Of one kind. What is eaten for itself has many good others: any white fish for a white fish. What works in a dish has few worth two lines. */
const OF_KIND = { bulk: 8, seasoning: 3, working: 2 } as const;
/** Of one family of kinds (any sugar, any milk), for what works in a dish: a list of what else would do has to leave the family. */
const OF_FAMILY = { bulk: Infinity, seasoning: 3, working: 3 } as const;

/** The branches of the tree of kinds that say where a food comes from, not what it is. */
const ORDERS: ReadonlySet<string> = new Set(["food", "plant", "animal", "fungus", "alga", "mineral"]);
/** The widest kind below those, the last but one of the line when it has more. */
function familyOf(i: Ingredient): string {
  const line = i.kinds.filter((k) => !ORDERS.has(k));
  return line.at(-2) ?? line[0] ?? i.kind;
}

/**
 * Tells whether a single stand-in is one more of what the list has enough of: states of one food, varieties of one kind, members of one
 * family. What a table names and what is in the house always stay. Counted before anything is refused, so that avoiding more never brings
 * up a swap that was not there before.
 */
export class Crowd {
  private readonly foods = new Map<string, number>();
  private readonly kinds = new Map<string, number>();
  private readonly families = new Map<string, number>();
  private readonly twins = new Set<string>();
  constructor(private readonly ask: Ask) {}
  /** Whether one that no table names would be one too many. Once true, always true. */
  full(i: Ingredient): boolean {
    if (this.ask.have?.has(i.id) === true) return false;
    const klass = classOf(this.ask);
    const own = i.food === this.ask.item.food;
    if ((this.foods.get(i.food) ?? 0) >= (own ? OF_OWN_FOOD : OF_FOOD)) return true;
    if (own) return false;
    if ((this.kinds.get(i.kind) ?? 0) >= OF_KIND[klass]) return true;
    return (this.families.get(familyOf(i)) ?? 0) >= OF_FAMILY[klass];
  }
  /** The same for one that has come up, counting it when it stays. */
  crowded(w: Weighed): boolean {
    const only = w.uses.length === 1 ? w.uses[0]?.ingredient : undefined;
    // What is as good as the thing itself needs nothing stirred in that makes it no better.
    if (!only) return w.known === undefined && w.uses.some((u) => this.twins.has(u.ingredient.id));
    if (kinLikeness(this.ask.item, only) >= 0.88) this.twins.add(only.id);
    if (this.ask.have?.has(only.id) === true) return false;
    if (w.known === undefined && this.full(only)) return true;
    const family = familyOf(only);
    this.foods.set(only.food, (this.foods.get(only.food) ?? 0) + 1);
    this.kinds.set(only.kind, (this.kinds.get(only.kind) ?? 0) + 1);
    this.families.set(family, (this.families.get(family) ?? 0) + 1);
    return false;
  }
}
