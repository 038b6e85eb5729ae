import { storeOf, type Ingredient, type Store } from "../catalogue/index.js";
import { fail, freeze } from "../errors.js";
import type { Catalogue, FoodMatch, IngredientId } from "../types.js";
import { indexOf, type NameIndex } from "./claims.js";
import { keyOf, LONGEST, rawText, tokensOf } from "./fold.js";
import { alike, byLetters } from "./fuzzy.js";
import { byName, byRule, mayReorder, order, type Found, type Hit } from "./lookup.js";
import { inPhrase } from "./inphrase.js";
import type { InPhrase } from "./phrase.js";

export { readCuisine, type Kitchen } from "./cuisine.js";
export { foldText } from "./fold.js";

/** A food found inside an ingredient phrase. */
export interface PhraseMatch {
  readonly match: FoodMatch;
  /** Equally good readings, `match` first. More than one means the phrase is ambiguous. */
  readonly candidates: readonly FoodMatch[];
  /** Words of the name, [from, to): indexes into the words of the phrase as `phraseWords` cuts it. */
  readonly words: readonly [from: number, to: number];
  /** What is left when the name and the words that chose its state are taken out, in order. */
  readonly rest: string;
  /** State words no ingredient satisfies, let go: "frozen" when only the fresh one is known. Confidence is lower then. */
  readonly unmet: readonly string[];
  /** Words nobody knows that were let go. Confidence is lower then. */
  readonly unknown: readonly string[];
  /** Other foods joined by "and" or "or": "salt and pepper". */
  readonly also: readonly FoodMatch[];
}

const toMatch = (store: Store, hit: Hit): FoodMatch => ({
  id: hit.ingredient.id,
  name: store.nameOf(hit.ingredient),
  matched: hit.matched,
  confidence: hit.confidence,
  how: hit.how,
});

/** An id as such: of an ingredient, of a food or part, or one that has moved. */
function byIdentity(index: NameIndex, text: string): readonly FoodMatch[] | undefined {
  const { store } = index;
  const id = text.trim().toLowerCase();
  const match = (ingredient: Ingredient, how: FoodMatch["how"], formerId?: string): FoodMatch => ({
    ...toMatch(store, { ingredient, matched: id, how, confidence: 1 }),
    ...(formerId === undefined ? {} : { formerId }),
  });
  const known = store.byId.get(id);
  if (known) return [match(known, "exact")];
  const moved = store.tombstones.get(id);
  const now = moved === undefined ? undefined : store.byId.get(moved);
  if (now) return [match(now, "exact", id)];
  // "chard.stem", "cream-of-tartar": only spellings no cook would use; plain words are names first
  const food = id.includes(".") || id.includes("-") ? index.byFood.get(id) : undefined;
  return food === undefined || index.byKey.has(keyOf(tokensOf(id)))
    ? undefined
    : [...food].sort(order).map((i) => match(i, food.length > 1 ? "exact" : "default"));
}

/** The whole text as a name, or as a name with state and part words: no guess among it. */
function exactly(index: NameIndex, text: string): Found | undefined {
  const tokens = tokensOf(text);
  const key = keyOf(tokens);
  if (key === "") return undefined;
  return byName(index, key, rawText(text), mayReorder(index, tokens)) ?? byRule(index, tokens, text);
}

/** As {@link exactly}, then as a misspelling. */
function search(index: NameIndex, text: string): Found | undefined {
  const tokens = tokensOf(text);
  const key = keyOf(tokens);
  if (key === "") return undefined;
  return exactly(index, text) ?? byLetters(index, key) ?? byRule(index, tokens, text, byLetters);
}

/**
 * Ingredients a name may mean, best first: by id, exact, alias and stated default (confidence 1), folded for case, number,
 * accents, spelling and word order (0.9 and up), then misspellings (below 0.9). Nothing below 0.6 is returned.
 * Several results of the same highest confidence mean the name is ambiguous.
 * @param text up to 500 characters; longer ones find nothing
 * @param o.limit most results, 10 when left out
 */
export function findFood(c: Catalogue, text: string, o: { limit?: number } = {}): readonly FoodMatch[] {
  const index = indexOf(storeOf(c));
  return freeze(matches(index, text).slice(0, Math.max(0, Math.floor(o.limit ?? 10))));
}

function matches(index: NameIndex, text: string): FoodMatch[] {
  if (typeof text !== "string" || text.length > LONGEST) return [];
  const known = byIdentity(index, text);
  if (known) return [...known];
  const whole = exactly(index, text);
  if (whole) return [...whole.top, ...whole.behind].map((hit) => toMatch(index.store, hit));
  // "egg, large", "onion, medium": a name with words around it that change nothing. Before misspellings, which are a guess.
  const phrase = inPhrase(index, text);
  if (phrase && phrase.read.unknown.length === 0 && phrase.read.also.length === 0)
    return equals(phrase.read).map((h) => described(toMatch(index.store, h)));
  const found = search(index, text);
  return found === undefined ? [] : [...found.top, ...found.behind].map((hit) => toMatch(index.store, hit));
}
/** The words around a name were let go, so it is no longer the name as written. */
const described = (m: FoodMatch): FoodMatch => (m.confidence <= 0.9 ? m : { ...m, confidence: 0.9, how: "folded" });

/** As {@link findFood} for text that is a name and nothing else: describing words around it are not let go. For rooms that read phrases themselves. */
export function findName(c: Catalogue, text: string, limit = 10): readonly FoodMatch[] {
  const index = indexOf(storeOf(c));
  if (text.length > LONGEST) return [];
  const known = byIdentity(index, text);
  if (known) return freeze([...known]);
  const found = search(index, text);
  return freeze(
    found === undefined ? [] : [...found.top, ...found.behind].slice(0, limit).map((hit) => toMatch(index.store, hit)),
  );
}

/** The words of a phrase as `findInPhrase` counts them. */
export function phraseWords(text: string): readonly string[] {
  return text.length > LONGEST ? [] : tokensOf(text).map((t) => t.text);
}

/**
 * Finds the food inside an ingredient phrase: "large ripe tomatoes, finely chopped", "dried salt cod fillet".
 * The longest name wins, of equals the one nearest the end; state words around it choose the state.
 * @returns undefined when there is no food, or when a word that changes it would have to be dropped ("vegan butter",
 * "chicken wire")
 */
export function findInPhrase(c: Catalogue, text: string): PhraseMatch | undefined {
  const index = indexOf(storeOf(c));
  const found = typeof text === "string" ? inPhrase(index, text) : undefined;
  if (found === undefined) return undefined;
  const { read, tokens } = found;
  const candidates = equals(read).map((h) => toMatch(index.store, h));
  const match = candidates[0] as FoodMatch;
  const taken = new Set([read, ...read.also].flatMap((r) => [...r.owned]));
  return freeze({
    match,
    candidates,
    words: [read.from, read.to] as const,
    rest: tokens
      .filter((_, i) => !taken.has(i))
      .map((t) => t.text)
      .join(" "),
    unmet: read.unmet,
    unknown: read.unknown,
    also: read.also.map((a) => toMatch(index.store, a.hits[0] as Hit)),
  });
}

const equals = (read: InPhrase): readonly Hit[] => read.hits.filter((h) => h.confidence === read.hits[0]?.confidence);

/**
 * The nearest names for an error message: what `findFood` finds, then names that share letters. Those carry the floor, 0.6,
 * which says no more than that nothing nearer is known.
 */
export function nearestNames(c: Catalogue, text: string, n = 5): readonly FoodMatch[] {
  const index = indexOf(storeOf(c));
  const out = new Map<string, FoodMatch>(matches(index, text).map((m) => [m.id, m]));
  const key = typeof text === "string" ? keyOf(tokensOf(text.slice(0, LONGEST))) : "";
  for (const near of key === "" ? [] : alike(index, key)) {
    if (out.size >= n || near.alike < 0.3) break;
    const claim = index.byKey.get(near.key)?.[0];
    if (claim === undefined || out.has(claim.ingredient.id)) continue;
    const hit: Hit = { ingredient: claim.ingredient, matched: claim.text, how: "fuzzy", confidence: 0.6 };
    out.set(claim.ingredient.id, toMatch(index.store, hit));
  }
  return freeze([...out.values()].slice(0, n));
}

/**
 * The one ingredient a text means: a name or a phrase.
 * @throws `ambiguous food` when it may mean several, `unknown food` with the nearest names when it means none for sure
 */
export function requireFood(c: Catalogue, text: string): Ingredient {
  const store = storeOf(c);
  const found = findFood(c, text, { limit: 50 }).filter((m) => m.how !== "fuzzy");
  const best = found.filter((m) => m.confidence === found[0]?.confidence);
  const candidates =
    best.length > 0 ? best : (findInPhrase(c, text)?.candidates ?? []).filter((m) => m.how !== "fuzzy");
  if (candidates.length > 1)
    fail(
      "ambiguous food",
      `"${shown(text)}" may mean ${candidates.map((m) => `${m.name} (${m.id})`).join(", ")}. Say which.`,
      { input: text, candidates },
    );
  const id: IngredientId | undefined = candidates[0]?.id;
  const one = id === undefined ? undefined : store.byId.get(id);
  if (one !== undefined) return one;
  const nearest = nearestNames(c, text, 5);
  const hint = nearest.length > 0 ? ` Nearest: ${nearest.map((m) => m.name).join(", ")}.` : "";
  return fail("unknown food", `No food is called "${shown(text)}".${hint}`, { input: text, nearest });
}

const shown = (text: string): string =>
  typeof text !== "string" ? String(text) : text.length > 80 ? `${text.slice(0, 80)}…` : text;
