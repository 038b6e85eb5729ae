import { Rank, type NameIndex } from "./claims.js";
import type { Token } from "./fold.js";
import type { Mark } from "./marks.js";
import type { Span } from "./spans.js";

// What words around a name do to it that no list can say, since it depends on the food.

/** "soy sauce (gluten-free if needed)" is advice and leaves it soy sauce. */
export const ADVISING: ReadonlySet<string> = new Set(["if", "for", "when"]);

export const FLAVORED: ReadonlySet<string> = new Set(["flavored", "flavor"]);

/** What a food is said to be free of, by its allergens. */
const FREE_OF: ReadonlyMap<string, readonly string[]> = new Map([
  ["gluten", ["gluten cereals", "wheat"]],
  ["wheat", ["wheat"]],
  ["dairy", ["milk"]],
  ["egg", ["egg"]],
  ["nut", ["tree nuts", "peanuts"]],
  ["soy", ["soy"]],
]);
/** "gluten-free baking powder" is baking powder: what a food never has may be said to be left out of it. */
export function neverHad(span: Span, what: Mark | undefined, free: Mark): boolean {
  const allergens = free.token.key === "free" && free.token.joined ? FREE_OF.get(what?.token.key ?? "") : undefined;
  return (
    allergens !== undefined &&
    span.found.top.every(
      // oats are sold free of other cereals and are still oats
      ({ ingredient: i }) => i.food.includes("oat") || !i.contains.some((a: string) => allergens.includes(a)),
    )
  );
}

const MADE: ReadonlySet<string> = new Set(["style", "type"]);
/** "old-timer-style pickles": made as a place or a maker does. Not when it is like a food: "crab-style sticks". */
export const isMaker = (index: NameIndex, what: Mark | undefined, style: Mark): boolean =>
  MADE.has(style.token.key) && style.token.joined && what?.class === "unknown" && !index.byKey.has(what.token.key);

/** "Aleppo-style pepper" without the word "style", and where the maker or place stands in it; not what is like a food. */
export function withoutStyle(
  index: NameIndex,
  tokens: readonly Token[],
): { readonly tokens: readonly Token[]; readonly maker: number } | undefined {
  const at = tokens.findIndex((t) => MADE.has(t.key) && t.joined);
  if (at < 1 || index.byKey.has((tokens[at - 1] as Token).key)) return undefined;
  return { tokens: tokens.filter((_, i) => i !== at), maker: at - 1 };
}

const lastWord = (kind: string): string => kind.slice(kind.lastIndexOf(" ") + 1);
/** "penne pasta", "tuna fish": the word after the name only says what kind of thing it is. */
export const isKindOf = (span: Span, key: string): boolean =>
  span.found.top.every((h) => h.ingredient.kinds.some((k) => lastWord(k) === key));

/** A short word of another language beside English nobody knows is a chance likeness: "candy bar" is no sea bass. */
export const mayBeChance = (index: NameIndex, span: Span, word: Token): boolean =>
  span.size === 1 &&
  word.key.length < 5 &&
  word.plain === word.text.toLowerCase() &&
  (index.byKey.get(word.key) ?? []).every((c) => c.rank >= Rank.foreign);
