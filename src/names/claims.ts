import type { Ingredient, Store } from "../catalogue/store.js";
import { foldText, sortedKey } from "./fold.js";
import { wordsOf, type Words } from "./words.js";

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

/** Lower wins. Words of the reader's own English come before other English, that before ids, that before other languages, that before names made by rule. */
export const Rank = { own: 0, english: 0.25, otherEnglish: 0.5, id: 0.75, foreign: 2, made: 4 } as const;

export interface NameIndex {
  readonly store: Store;
  readonly words: Words;
  readonly byKey: ReadonlyMap<string, readonly Claim[]>;
  /** Words in any order -> keys, and words written together -> keys; made when a name is first not found as written. */
  readonly otherwise: () => Otherwise;
  /** Food and part ids ("cod", "chard.stem") -> the ingredients their bare name means. */
  readonly byFood: ReadonlyMap<string, readonly Ingredient[]>;
  /** All ingredients of a food and part. */
  readonly siblings: ReadonlyMap<string, readonly Ingredient[]>;
  /** Longest name in words. */
  readonly longest: number;
}

export interface Otherwise {
  readonly bySorted: ReadonlyMap<string, readonly string[]>;
  readonly byJoined: ReadonlyMap<string, readonly string[]>;
}

export const groupOf = (i: Ingredient): string => (i.part === undefined ? i.food : `${i.food}.${i.part}`);

function rankOf(tag: string, locale: string): number {
  if (tag === locale || (tag === "en" && locale === "en-US")) return Rank.own;
  if (tag === "en") return Rank.english;
  return tag.startsWith("en-") ? Rank.otherEnglish : Rank.foreign;
}

const push = <V>(map: Map<string, V[]>, key: string, value: V): void => {
  const list = map.get(key);
  if (list) list.push(value);
  else map.set(key, [value]);
};

/** The states a bare name of this group means: the stated default, or all when none is stated. */
function meant(group: readonly Ingredient[]): readonly Ingredient[] {
  const stated = group.filter((i) => i.isDefault);
  return stated.length > 0 ? stated : group;
}

class Builder {
  readonly byKey = new Map<string, Claim[]>();
  readonly siblings = new Map<string, Ingredient[]>();
  readonly foods = new Map<string, Ingredient[]>();
  readonly byFood = new Map<string, readonly Ingredient[]>();
  constructor(
    readonly store: Store,
    readonly words: Words,
  ) {}

  claim(text: string, rank: number, targets: readonly Ingredient[], byDefault: boolean): void {
    const key = foldText(text);
    if (key === "") return;
    const list = this.byKey.get(key);
    if (list === undefined) {
      const claims: Claim[] = [];
      for (const ingredient of targets) claims.push({ ingredient, text, rank, byDefault });
      this.byKey.set(key, claims);
      return;
    }
    for (const ingredient of targets) {
      const same = list.findIndex((c) => c.ingredient === ingredient && c.text === text);
      const claim = { ingredient, text, rank, byDefault };
      if (same < 0) list.push(claim);
      else if ((list[same] as Claim).rank > rank) list[same] = claim;
    }
  }

  build(): NameIndex {
    for (const i of this.store.ingredients) {
      push(this.siblings, groupOf(i), i);
      push(this.foods, i.food, i);
    }
    for (const [food, all] of this.foods) this.food(food, all);
    for (const [group, list] of this.siblings) if (group.includes(".")) this.part(group, list);
    for (const i of this.store.ingredients) this.state(i);
    // Words that mean several foods are claimed by all of them alike, which is what ambiguity is.
    for (const [word, foods] of this.words.bare)
      for (const food of foods) this.claim(word, this.rank("en"), this.byFood.get(food) ?? [], false);
    return this.finish();
  }

  private rank(tag: string): number {
    return rankOf(tag, this.store.locale);
  }
  /** Names of the whole food: they mean its default state; a food sold only in parts, its default part. */
  private food(food: string, all: readonly Ingredient[]): void {
    const whole = all.filter((i) => i.part === undefined);
    const pool = whole.length > 0 ? whole : all;
    const targets = meant(pool);
    const byDefault = targets.length < pool.length;
    this.byFood.set(food, targets);
    for (const [tag, text] of this.listed(pool, "food")) this.claim(text, this.rank(tag), targets, byDefault);
    this.claim(food.replaceAll("-", " "), Rank.id, targets, byDefault);
  }
  /** Names of a part, listed and made from the food's English names: "lemon juice". */
  private part(group: string, list: readonly Ingredient[]): void {
    const [food, part] = [list[0]?.food ?? "", list[0]?.part ?? ""];
    const targets = meant(list);
    const byDefault = targets.length < list.length;
    this.byFood.set(group, targets);
    for (const [tag, text] of this.listed(list, "part")) this.claim(text, this.rank(tag), targets, byDefault);
    const whole = (this.foods.get(food) ?? []).filter((i) => i.part === undefined);
    const names = [
      food.replaceAll("-", " "),
      ...this.listed(whole, "food").flatMap(([tag, text]) => (tag.startsWith("en") ? [text] : [])),
    ];
    const called = new Set([part.replaceAll("-", " "), ...(this.words.parts.get(part) ?? [])]);
    for (const name of names) for (const word of called) this.claim(`${name} ${word}`, Rank.made, targets, byDefault);
  }
  private state(i: Ingredient): void {
    const { names } = i;
    for (const n of names) {
      if (n.of !== "state") break; // those of the state come first
      this.claim(n.text, this.rank(n.tag), [i], false);
    }
    this.shown(i, i.name.us);
    if (i.name.us !== i.name.gb) this.shown(i, i.name.gb);
  }
  /** The name shown, when nothing lists it: a state's own name is claimed already, the food's bare name is not this state's. */
  private shown(i: Ingredient, name: string): void {
    for (const n of i.names) if (n.text === name) return;
    const key = foldText(name);
    // All names of foods and parts are claimed by now: only where one is called so can it be this one's.
    if (this.byKey.has(key)) for (const n of i.names) if (n.of !== "state" && foldText(n.text) === key) return;
    this.claim(name, Rank.id, [i], false);
  }
  /** The names all states of a food or part share, so those of the first that has them. */
  private listed(list: readonly Ingredient[], of: "food" | "part"): readonly (readonly [string, string])[] {
    const out: (readonly [string, string])[] = [];
    const named = list.find((i) => i.names.some((n) => n.of === of));
    for (const n of named?.names ?? []) if (n.of === of) out.push([n.tag, n.text]);
    return out;
  }

  private finish(): NameIndex {
    let longest = 1;
    for (const key of this.byKey.keys()) longest = Math.max(longest, wordCount(key));
    let made: Otherwise | undefined;
    const { store, words, byKey, byFood, siblings } = this;
    return { store, words, byKey, otherwise: () => (made ??= otherwiseOf(byKey.keys())), byFood, siblings, longest };
  }
}

function wordCount(key: string): number {
  let n = 1;
  for (let at = key.indexOf(" "); at >= 0; at = key.indexOf(" ", at + 1)) n++;
  return n;
}

function otherwiseOf(keys: Iterable<string>): Otherwise {
  const bySorted = new Map<string, string[]>();
  const byJoined = new Map<string, string[]>();
  for (const key of keys) {
    if (!key.includes(" ")) continue;
    push(bySorted, sortedKey(key), key);
    push(byJoined, key.replaceAll(" ", ""), key);
  }
  return { bySorted, byJoined };
}

const built = new WeakMap<Store, NameIndex>();

/** The name index of a catalogue, built at first use. */
export function indexOf(store: Store): NameIndex {
  let index = built.get(store);
  if (index === undefined) built.set(store, (index = new Builder(store, wordsOf(store)).build()));
  return index;
}
