import Fuse from "fuse.js";
import type { NameIndex } from "./claims.js";
import { shortlistOf, type Alike } from "./shortlist.js";
import { allowedEdits, editsWithin, plausibleSlip } from "./distance.js";
import { order, type Found, type Hit } from "./lookup.js";

const LONGEST_QUERY = 60;

/** The keys that share most letters with a text, best first. @see Shortlist.alike */
export const alike = (index: NameIndex, key: string): readonly Alike[] =>
  shortlistOf(index).alike(key.slice(0, LONGEST_QUERY), SHORTLISTED);
const SHORTLISTED = 60;

/** Edits between two names word by word; undefined when any word is further off than its length allows. */
function edits(index: NameIndex, query: readonly string[], name: readonly string[]): number | undefined {
  if (query.length !== name.length) return undefined;
  // Beside a word that is right, a wrong letter is easier to believe: "red onwon".
  const alone = !query.some((q, i) => q === name[i] && q.length > 2);
  let sum = 0;
  for (let i = 0; i < query.length; i++) {
    const [q, n] = [query[i] as string, name[i] as string];
    if (q === n) continue;
    const most = allowedEdits(Math.min(q.length, n.length));
    // The first letter is seldom mistyped, and changing it makes most false friends: foil, oil; honey, money.
    if (most === 0 || index.words.ordinary.has(q) || q[0] !== n[0]) return undefined;
    const d = editsWithin(q, n, most);
    if (d > most || (alone && d === 1 && !plausibleSlip(q, n))) return undefined;
    sum += d;
  }
  return sum;
}

/** "worcestershire" for "worcestershire sauce": only long words that name nothing else. */
function withoutHead(index: NameIndex, name: readonly string[]): readonly string[] | undefined {
  const [first, head] = name;
  if (name.length !== 2 || first === undefined || head === undefined || first.length < 7) return undefined;
  const alone = shortlistOf(index).startsOne(first);
  return alone && index.words.leavable.has(head) && !index.byKey.has(first) && !index.words.ordinary.has(first)
    ? [first]
    : undefined;
}

/**
 * Misspelled names: a shortlist by shared letters, then both fuse.js and a bound on edits must agree.
 * @param key a folded text no name matched
 */
export function byLetters(index: NameIndex, key: string): Found | undefined {
  if (key.length < 5 || key.length > LONGEST_QUERY) return undefined;
  const query = key.split(" ");
  const close = alike(index, key)
    .flatMap(({ key: name, foreign }) => {
      // Words of other languages are a letter away from English words that are no food: only long ones, a letter off.
      const limit = foreign ? (name.length < 8 ? 0 : 1) : 6;
      const words = name.split(" ");
      const whole = edits(index, query, words);
      if (whole !== undefined && whole <= limit) return [{ name, compared: name, edits: whole, whole: true }];
      const short = withoutHead(index, words);
      const less = short && edits(index, query, short);
      return short && less !== undefined && less <= Math.min(1, limit)
        ? [{ name, compared: short.join(" "), edits: less, whole: false }]
        : [];
    })
    .slice(0, 20);
  if (close.length === 0) return undefined;
  const fuse = new Fuse(close, {
    keys: ["compared"],
    includeScore: true,
    threshold: 0.4,
    ignoreLocation: true,
    ignoreFieldNorm: true,
  });
  const hits = new Map<string, Hit>();
  for (const { item, score } of fuse.search(key)) {
    const off = (item.edits / key.length + (score ?? 0)) / 2;
    const confidence = Math.round(Math.min(0.89, 0.9 - off - (item.whole ? 0 : 0.05)) * 1e4) / 1e4;
    if (confidence < 0.6) continue;
    const claims = index.byKey.get(item.name) ?? [];
    const least = Math.min(...claims.map((c) => c.rank));
    for (const c of claims) {
      const before = hits.get(c.ingredient.id);
      if (c.rank === least && (before === undefined || before.confidence < confidence))
        hits.set(c.ingredient.id, { ingredient: c.ingredient, matched: c.text, how: "fuzzy", confidence });
    }
  }
  const all = [...hits.values()].sort((a, b) => b.confidence - a.confidence || order(a.ingredient, b.ingredient));
  const first = all[0];
  if (first === undefined) return undefined;
  return {
    top: all.filter((h) => h.confidence === first.confidence),
    behind: all.filter((h) => h.confidence < first.confidence),
  };
}
