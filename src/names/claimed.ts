import type { Ingredient } from "../catalogue/store.js";

/** One name that points to one ingredient. */
export interface Claim {
  readonly ingredient: Ingredient;
  /** The name as listed. */
  readonly text: string;
  /** Whose word it is: see `Rank`. */
  readonly rank: number;
  /** A bare name that points here because this is the stated default among several states. */
  readonly byDefault: boolean;
}
/** Whose word a name is and what it points to: the same for many names of one food. */
export interface Naming {
  readonly rank: number;
  readonly targets: readonly Ingredient[];
  readonly byDefault: boolean;
}
/** One name as it was written down, and the one on the same key before it. */
interface Entry {
  readonly text: string;
  readonly by: Naming;
  readonly before: Entry | undefined;
}

/** Claims by folded name. Written down as they come and only spelt out for the keys that are asked for: a few of tens of thousands. */
export class Claims {
  /** The last written down on each key. */
  private readonly entries = new Map<string, Entry>();
  private readonly made = new Map<string, readonly Claim[]>();

  /** All names are added before any is asked for. */
  add(key: string, text: string, by: Naming): void {
    this.entries.set(key, { text, by, before: this.entries.get(key) });
  }
  has(key: string): boolean {
    return this.entries.has(key);
  }
  get(key: string): readonly Claim[] | undefined {
    const entry = this.entries.get(key);
    if (entry === undefined) return undefined;
    let claims = this.made.get(key);
    if (claims === undefined) this.made.set(key, (claims = speltOut(entry)));
    return claims;
  }
  keys(): Iterable<string> {
    return this.entries.keys();
  }
  /** Calls for every key with the lowest rank on it and the food it points to, null when there are several. */
  forEach(each: (key: string, rank: number, food: string | null) => void): void {
    for (const [key, entry] of this.entries) {
      let rank = Infinity;
      let food: string | null | undefined;
      for (let e: Entry | undefined = entry; e !== undefined; e = e.before) {
        if (e.by.targets.length > 0 && e.by.rank < rank) rank = e.by.rank;
        for (const i of e.by.targets) food = food === undefined || food === i.food ? i.food : null;
      }
      each(key, rank, food ?? null);
    }
  }
}

/** The same name for the same ingredient counts once, by the best word for it. */
function speltOut(last: Entry): readonly Claim[] {
  const entries: Entry[] = [];
  for (let e: Entry | undefined = last; e !== undefined; e = e.before) entries.push(e);
  const list: Claim[] = [];
  for (const { text, by } of entries.reverse()) {
    const { rank, byDefault } = by;
    for (const ingredient of by.targets) {
      const same = list.findIndex((c) => c.ingredient === ingredient && c.text === text);
      if (same < 0) list.push({ ingredient, text, rank, byDefault });
      else if ((list[same] as Claim).rank > rank) list[same] = { ingredient, text, rank, byDefault };
    }
  }
  return list;
}
