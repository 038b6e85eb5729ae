import type { Ingredient, Store } from "../catalogue/index.js";

/**
 * What of every ingredient a question over the whole catalogue looks at first, as numbers: the same number stands for the same thing.
 * Made once a catalogue. Rows share their lists, so what is the same is told by the list and not by its words.
 */
export interface Traits {
  /** Kind and what it is made from, which is all kinship hangs on beyond the food itself. */
  readonly kin: Int32Array;
  readonly kins: number;
  readonly dominant: Int32Array;
  readonly dominants: number;
  readonly food: Int32Array;
  readonly atHand: Uint8Array;
  /** All ingredients, those with the same roles together, and where each such group begins, by the code of the roles and one. */
  readonly byRoles: { readonly order: Int32Array; readonly start: Int32Array };
}

const counted = new WeakMap<ArrayLike<number> & object, number>();
/** How many different codes there may be, none (-1) among them: one more than the highest and one for none. */
export function codesIn(codes: ArrayLike<number> & object): number {
  let n = counted.get(codes);
  if (n === undefined) {
    n = 0;
    for (let i = 0; i < codes.length; i++) n = Math.max(n, (codes[i] as number) + 2);
    counted.set(codes, n);
  }
  return n;
}

class Numbering<K> {
  private readonly numbers = new Map<K, number>();
  get size(): number {
    return this.numbers.size;
  }
  of(key: K): number {
    let number = this.numbers.get(key);
    if (number === undefined) this.numbers.set(key, (number = this.numbers.size));
    return number;
  }
}

const made = new WeakMap<Store, Traits>();
export function traitsOf(store: Store): Traits {
  let traits = made.get(store);
  if (traits === undefined)
    made.set(store, (traits = { ...read(store.ingredients), byRoles: grouped(store.codes("roles")) }));
  return traits;
}

/** By counting: what has one code stands together, in the order of the catalogue. */
function grouped(codes: ArrayLike<number> & object): Traits["byRoles"] {
  const start = new Int32Array(codesIn(codes) + 1);
  for (let i = 0; i < codes.length; i++)
    start[(codes[i] as number) + 2] = (start[(codes[i] as number) + 2] as number) + 1;
  for (let k = 1; k < start.length; k++) start[k] = (start[k] as number) + (start[k - 1] as number);
  const next = start.slice();
  const order = new Int32Array(codes.length);
  for (let i = 0; i < codes.length; i++) {
    const code = (codes[i] as number) + 1;
    const at = next[code] as number;
    order[at] = i;
    next[code] = at + 1;
  }
  return { order, start };
}

function read(ingredients: readonly Ingredient[]): Omit<Traits, "byRoles"> {
  const n = ingredients.length;
  const [kin, dominant, food, atHand] = [new Int32Array(n), new Int32Array(n), new Int32Array(n), new Uint8Array(n)];
  const kinds = new Numbering<readonly string[]>();
  const origins = new Numbering<ReadonlySet<string>>();
  const kins = new Numbering<number>();
  const dominants = new Numbering<readonly string[]>();
  const foods = new Numbering<string>();
  for (let i = 0; i < n; i++) {
    const one = ingredients[i] as Ingredient;
    kin[i] = kins.of(kinds.of(one.kinds) * 1_000_000 + origins.of(one.origin));
    dominant[i] = dominants.of(one.dominant);
    food[i] = foods.of(one.food);
    atHand[i] = one.athand;
  }
  return { kin, kins: kins.size, dominant, dominants: dominants.size, food, atHand };
}
