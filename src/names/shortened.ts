import { Rank, type NameIndex } from "./claims.js";
import { keyOf, wordKey, type Token } from "./fold.js";

/** Letters of a word that must be there, and must be missing. */
const LEAST = 3;
/** Longer words tried for one shortened one, and readings of a phrase. */
const WORDS = 6;
const READINGS = 24;
/** Words of a phrase that may be shortened. */
const MOST = 3;

/** What a recipe cuts short that is no food: times, sizes, temperatures, packs. */
const NO_FOOD: ReadonlySet<string> = new Set([
  ..."approx min temp total sec deg doz pkg pck cont contr prep med lge opt fig vol num therm tab vit cov rem ref min max hrs hour".split(
    " ",
  ),
  ..."alum est orig avg ser serv servs mod minimum cal carb prot sat sod chol env tsp tbsp tbs cup qts gal lbs ozs inch".split(
    " ",
  ),
]);
/** Two letters are only read where cards agree on them. */
const PAIRS: Readonly<Record<string, readonly string[]>> = {
  gr: ["green", "ground"],
  on: ["onion"],
  wh: ["whole", "white"],
  dr: ["dry"],
};

const made = new WeakMap<NameIndex, ReadonlyMap<string, readonly string[]>>();

/** English words of names by their first letters, those that are in most names first. */
function longerWords(index: NameIndex): ReadonlyMap<string, readonly string[]> {
  let byStart = made.get(index);
  if (byStart === undefined) {
    const counts = new Map<string, number>();
    index.byKey.forEach((key, rank) => {
      if (rank >= Rank.foreign && rank < Rank.made) return;
      for (const word of key.split(" ")) if (word.length > LEAST) counts.set(word, (counts.get(word) ?? 0) + 1);
    });
    const grouped = new Map<string, string[]>();
    for (const word of [...counts.keys()].sort(
      (a, b) => (counts.get(b) ?? 0) - (counts.get(a) ?? 0) || (a < b ? -1 : 1),
    )) {
      const start = word.slice(0, LEAST);
      const list = grouped.get(start);
      if (list) list.push(word);
      else grouped.set(start, [word]);
    }
    made.set(index, (byStart = grouped));
  }
  return byStart;
}

/** "chick." and "ris.": cut short with a full stop, and no word of its own. */
function isShortened(index: NameIndex, text: string, token: Token): boolean {
  return (
    text[token.end] === "." &&
    !NO_FOOD.has(token.plain) &&
    (token.plain.length >= LEAST || Object.hasOwn(PAIRS, token.plain)) &&
    !(index.byKey.has(token.key) || index.words.states.has(token.key) || index.words.describing.has(token.key))
  );
}

export interface Lengthened {
  readonly tokens: readonly Token[];
  /** Which were made longer. */
  readonly changed: readonly number[];
}
/**
 * The ways a phrase may read when words that recipe cards cut short are written out, the likeliest first: "cream of chick. soup".
 * None when nothing in it was cut short.
 * @param text the phrase, NFKC, as the tokens were cut from it
 */
export function* writtenOut(index: NameIndex, text: string, tokens: readonly Token[]): Generator<Lengthened> {
  const changed = tokens.flatMap((t, i) => (isShortened(index, text, t) ? [i] : []));
  if (changed.length === 0 || changed.length > MOST) return;
  const words = changed.map((i) => {
    const { plain } = tokens[i] as Token;
    if (Object.hasOwn(PAIRS, plain)) return PAIRS[plain] ?? [];
    return (longerWords(index).get(plain.slice(0, LEAST)) ?? [])
      .filter((w) => w.startsWith(plain) && w !== wordKey(plain))
      .slice(0, WORDS);
  });
  // The likeliest of all together first, then those that differ in what comes next.
  const sums = words.reduce<readonly (readonly number[])[]>(
    (all, list) => all.flatMap((picks) => list.map((_, k) => [...picks, k])),
    [[]],
  );
  const inOrder = [...sums].sort((a, b) => a.reduce((x, y) => x + y, 0) - b.reduce((x, y) => x + y, 0));
  for (const picks of inOrder.slice(0, READINGS)) {
    const written = [...tokens];
    changed.forEach((i, k) => {
      const word = words[k]?.[picks[k] as number] as string;
      written[i] = { ...(tokens[i] as Token), text: word, plain: word, key: word };
    });
    if (keyOf(written) !== "") yield { tokens: written, changed };
  }
}
