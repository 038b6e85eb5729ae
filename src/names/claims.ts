import type { Ingredient, Store } from "../catalogue/store.js";
import { Claims, type Naming } from "./claimed.js";
import { Folder } from "./folder.js";
import { Otherwise } from "./otherwise.js";
import { wordsOf, type Words } from "./words.js";

/** Lower wins. Words of the reader's own English come before other English, that before ids, that before other languages, that before names made by rule. */
export const Rank = { own: 0, english: 0.25, otherEnglish: 0.5, id: 0.75, foreign: 2, made: 4 } as const;

export type { Claim } from "./claimed.js";

export interface NameIndex {
  readonly store: Store;
  readonly words: Words;
  readonly byKey: Claims;
  /** Names by their words in any order or written together; made when a name is first not found as written. */
  readonly otherwise: () => Otherwise;
  /** Food and part ids ("cod", "chard.stem") -> the ingredients their bare name means. */
  readonly byFood: ReadonlyMap<string, readonly Ingredient[]>;
  /** All ingredients of a food and part. */
  readonly siblings: ReadonlyMap<string, readonly Ingredient[]>;
  /** Longest name in words. */
  readonly longest: number;
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
  readonly byKey = new Claims();
  readonly siblings = new Map<string, Ingredient[]>();
  readonly foods = new Map<string, Ingredient[]>();
  readonly byFood = new Map<string, readonly Ingredient[]>();
  private readonly ranks = new Map<string, number>();
  private readonly folder = new Folder();
  constructor(
    readonly store: Store,
    readonly words: Words,
  ) {}

  /** A way to write names of these down. @param rank when left out, that of the language each is in */
  private claimer(targets: readonly Ingredient[], byDefault: boolean): (text: string, tag: string | number) => void {
    let by: Naming = { rank: Number.NaN, targets, byDefault };
    return (text, tag) => {
      const rank = typeof tag === "number" ? tag : this.rank(tag);
      if (rank !== by.rank) by = { rank, targets, byDefault };
      const key = this.folder.fold(text);
      if (key !== "") this.byKey.add(key, text, by);
    };
  }

  build(): NameIndex {
    for (const i of this.store.ingredients) {
      push(this.siblings, groupOf(i), i);
      push(this.foods, i.food, i);
    }
    for (const [food, all] of this.foods) this.food(food, all);
    for (const [group, list] of this.siblings) if (list[0]?.part !== undefined) this.part(group, list);
    for (const i of this.store.ingredients) this.state(i);
    // Words that mean several foods are claimed by all of them alike, which is what ambiguity is.
    for (const [word, foods] of this.words.bare)
      for (const food of foods) this.claimer(this.byFood.get(food) ?? [], false)(word, "en");
    return this.finish();
  }

  private rank(tag: string): number {
    let rank = this.ranks.get(tag);
    if (rank === undefined) this.ranks.set(tag, (rank = rankOf(tag, this.store.locale)));
    return rank;
  }
  /** Names of the whole food: they mean its default state; a food sold only in parts, its default part. */
  private food(food: string, all: readonly Ingredient[]): void {
    const whole = all.filter((i) => i.part === undefined);
    const pool = whole.length > 0 ? whole : all;
    const targets = meant(pool);
    const byDefault = targets.length < pool.length;
    this.byFood.set(food, targets);
    const claim = this.claimer(targets, byDefault);
    if (whole[0]) this.store.names.eachShared(whole[0].index, claim);
    claim(food.replaceAll("-", " "), Rank.id);
  }
  /** Names of a part, listed and made from the food's English names: "lemon juice". */
  private part(group: string, list: readonly Ingredient[]): void {
    const [food, part] = [list[0]?.food ?? "", list[0]?.part ?? ""];
    const targets = meant(list);
    const byDefault = targets.length < list.length;
    this.byFood.set(group, targets);
    const claim = this.claimer(targets, byDefault);
    if (list[0]) this.store.names.eachShared(list[0].index, claim);
    const whole = (this.foods.get(food) ?? []).find((i) => i.part === undefined);
    const names = [food.replaceAll("-", " ")];
    if (whole)
      this.store.names.eachShared(whole.index, (text, tag) => {
        if (tag.startsWith("en")) names.push(text);
      });
    const called = new Set([part.replaceAll("-", " "), ...(this.words.parts.get(part) ?? [])]);
    for (const name of names) for (const word of called) claim(`${name} ${word}`, Rank.made);
  }
  private state(i: Ingredient): void {
    const own = this.store.names.ownOf(i.index);
    const claim = this.claimer([i], false);
    for (const tag of Object.keys(own)) for (const text of own[tag] as readonly string[]) claim(text, tag);
    const shown = this.store.names.unlisted(i.index);
    if (shown === undefined) return;
    if (this.isNew(i, shown[0])) claim(shown[0], Rank.id);
    if (shown[0] !== shown[1] && this.isNew(i, shown[1])) claim(shown[1], Rank.id);
  }
  /** Whether nothing lists the name shown: a state's own name is claimed already, the food's bare name is not this state's. */
  private isNew(i: Ingredient, name: string): boolean {
    for (const n of i.names) if (n.text === name) return false;
    const key = this.folder.fold(name);
    // All names of foods and parts are claimed by now: only where one is called so can it be this one's.
    return !this.byKey.has(key) || !i.names.some((n) => n.of !== "state" && this.folder.fold(n.text) === key);
  }

  private finish(): NameIndex {
    let made: Otherwise | undefined;
    let longest: number | undefined;
    const { store, words, byKey, byFood, siblings } = this;
    return {
      store,
      words,
      byKey,
      otherwise: () => (made ??= new Otherwise(byKey.keys())),
      byFood,
      siblings,
      get longest() {
        return (longest ??= longestOf(byKey.keys()));
      },
    };
  }
}

function longestOf(keys: Iterable<string>): number {
  let longest = 1;
  for (const key of keys) longest = Math.max(longest, wordCount(key));
  return longest;
}
function wordCount(key: string): number {
  let n = 1;
  for (let at = key.indexOf(" "); at >= 0; at = key.indexOf(" ", at + 1)) n++;
  return n;
}

const built = new WeakMap<Store, NameIndex>();

/** The name index of a catalogue, built at first use. */
export function indexOf(store: Store): NameIndex {
  let index = built.get(store);
  if (index === undefined) built.set(store, (index = new Builder(store, wordsOf(store)).build()));
  return index;
}
