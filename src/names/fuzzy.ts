import Fuse from "fuse.js";
import { Rank, type NameIndex } from "./claims.js";
import { allowedEdits, editsWithin, plausibleSlip } from "./distance.js";
import { order, type Found, type Hit } from "./lookup.js";

/** Keys and, for each run of three letters, which keys hold it. */
interface Shortlist {
  readonly keys: readonly string[];
  readonly counts: Uint16Array;
  readonly gram: ReadonlyMap<string, number>;
  /** Where each gram's keys start in `posts`. */
  readonly starts: Uint32Array;
  readonly posts: Uint32Array;
  /** Keys no English name shares. */
  readonly foreign: ReadonlySet<string>;
  /** First words of names, with how many foods' names start so. */
  readonly firsts: ReadonlyMap<string, number>;
}

const SHORTLISTED = 60;
const LONGEST_QUERY = 60;

function gramsOf(key: string): Set<string> {
  const padded = ` ${key} `;
  const grams = new Set<string>();
  for (let i = 0; i + 3 <= padded.length; i++) grams.add(padded.slice(i, i + 3));
  return grams;
}

function makeShortlist(index: NameIndex): Shortlist {
  const keys: string[] = [];
  const foreign = new Set<string>();
  const firstFoods = new Map<string, Set<string>>();
  for (const [key, claims] of index.byKey) {
    const least = Math.min(...claims.map((c) => c.rank));
    if (least >= Rank.made) continue;
    keys.push(key);
    if (least >= Rank.foreign) foreign.add(key);
    const first = key.split(" ")[0] as string;
    const foods = firstFoods.get(first) ?? new Set();
    firstFoods.set(first, foods);
    for (const c of claims) foods.add(c.ingredient.food);
  }
  const firsts = new Map([...firstFoods].map(([first, foods]) => [first, foods.size]));
  const gram = new Map<string, number>();
  const sizes: number[] = [];
  const rows = keys.map((key) =>
    [...gramsOf(key)].map((g) => {
      let id = gram.get(g);
      if (id === undefined) gram.set(g, (id = gram.size));
      sizes[id] = (sizes[id] ?? 0) + 1;
      return id;
    }),
  );
  const starts = new Uint32Array(gram.size + 1);
  sizes.forEach((n, i) => (starts[i + 1] = (starts[i] as number) + n));
  const next = starts.slice();
  const posts = new Uint32Array(starts[gram.size] ?? 0);
  rows.forEach((row, k) => {
    for (const id of row) {
      const place = next[id] as number;
      posts[place] = k;
      next[id] = place + 1;
    }
  });
  return { keys, counts: Uint16Array.from(rows, (r) => r.length), gram, starts, posts, foreign, firsts };
}

const lists = new WeakMap<NameIndex, Shortlist>();
function shortlistOf(index: NameIndex): Shortlist {
  let list = lists.get(index);
  if (list === undefined) lists.set(index, (list = makeShortlist(index)));
  return list;
}

/** The keys that share most letters with a text, best first, with how alike (0 to 1, Dice of three-letter runs). */
export function alike(
  index: NameIndex,
  key: string,
  most = SHORTLISTED,
): readonly { readonly key: string; readonly alike: number }[] {
  const list = shortlistOf(index);
  const query = gramsOf(key.slice(0, LONGEST_QUERY));
  const shared = new Uint16Array(list.keys.length);
  const touched: number[] = [];
  for (const g of query) {
    const id = list.gram.get(g);
    if (id === undefined) continue;
    for (let p = list.starts[id] as number; p < (list.starts[id + 1] as number); p++) {
      const k = list.posts[p] as number;
      const before = shared[k] as number;
      if (before === 0) touched.push(k);
      shared[k] = before + 1;
    }
  }
  // Only the best are kept, in order; nearly all of the thousands touched stop at the last of them.
  const best: { readonly key: string; readonly alike: number }[] = [];
  for (const k of touched) {
    const score = (2 * (shared[k] as number)) / (query.size + (list.counts[k] as number));
    const last = best.length < most ? undefined : best[most - 1];
    if (last && score < last.alike) continue;
    const key = list.keys[k] as string;
    let at = best.length;
    while (at > 0) {
      const other = best[at - 1] as { readonly key: string; readonly alike: number };
      if (other.alike > score || (other.alike === score && other.key < key)) break;
      at--;
    }
    if (at >= most) continue;
    best.splice(at, 0, { key, alike: score });
    if (best.length > most) best.pop();
  }
  return best;
}

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
  const alone = shortlistOf(index).firsts.get(first) === 1;
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
  const { foreign } = shortlistOf(index);
  const close = alike(index, key)
    .flatMap(({ key: name }) => {
      // Words of other languages are a letter away from English words that are no food: only long ones, a letter off.
      const limit = foreign.has(name) ? (name.length < 8 ? 0 : 1) : 6;
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
