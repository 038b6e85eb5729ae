import type { Ingredient, Store } from "../catalogue/store.js";
import type { FoodMatch } from "../types.js";
import { Rank, type Claim, type NameIndex } from "./claims.js";
import { keyOf, rawText, type Token } from "./fold.js";
import { settle, type Said } from "./settle.js";

export type How = FoodMatch["how"];
/** What a text may mean, best first. `top` are equally good; `behind` are other things called the same. */
export interface Found {
  readonly top: readonly Hit[];
  readonly behind: readonly Hit[];
}
export interface Hit {
  readonly ingredient: Ingredient;
  readonly matched: string;
  readonly how: How;
  readonly confidence: number;
}

/** Confidence by what had to be overlooked. The spread says only which reading is closer to what was written. */
export const SURE = { same: 1, folded: 0.97, made: 0.95, joined: 0.95, reordered: 0.93, behind: 0.9 } as const;

const NOT_ASCII = /[^\p{ASCII}]/u;

/** Compared only for the few claims on one key, so it is not kept for all. */
const isAsWritten = (claim: Claim, raw: string): boolean => rawText(claim.text) === raw;

/** Whose word it is counts before how it is written, but a foreign word written with its marks was meant as one. */
function cost(claim: Claim, raw: string): number {
  if (!isAsWritten(claim, raw)) return claim.rank + 0.2;
  return claim.rank === Rank.foreign && NOT_ASCII.test(raw) ? 0.1 : claim.rank;
}

function hitOf(store: Store, claim: Claim, raw: string, folded: number): Hit {
  const same = isAsWritten(claim, raw);
  if (!same) return { ingredient: claim.ingredient, matched: claim.text, how: "folded", confidence: folded };
  const shown = rawText(store.nameOf(claim.ingredient)) === raw;
  return {
    ingredient: claim.ingredient,
    matched: claim.text,
    how: claim.byDefault ? "default" : shown ? "exact" : "alias",
    confidence: SURE.same,
  };
}

/** "gas 4" is no goose: a foreign word of three letters is only read with the marks it is written with. */
const CHANCE = 3;
const byChance = (claim: Claim, key: string, raw: string): boolean =>
  key.length <= CHANCE && claim.rank === Rank.foreign && NOT_ASCII.test(claim.text) && !NOT_ASCII.test(raw);

/** Weighs all claims on one key against each other. */
export function weigh(index: NameIndex, claims: readonly Claim[], raw: string, folded: number): Found {
  const best = new Map<Ingredient, { claim: Claim; cost: number }>();
  for (const claim of claims) {
    const c = cost(claim, raw);
    const before = best.get(claim.ingredient);
    if (before === undefined) best.set(claim.ingredient, { claim, cost: c });
    // of one ingredient's names the one written so is what matched, whatever made it win
    else
      best.set(claim.ingredient, {
        claim: isAsWritten(claim, raw) && (!isAsWritten(before.claim, raw) || c < before.cost) ? claim : before.claim,
        cost: Math.min(c, before.cost),
      });
  }
  const all = [...best.values()];
  const least = Math.min(...all.map((x) => x.cost));
  const top = all.filter((x) => x.cost === least);
  // What else is listed under this name is offered behind; names nobody listed are not.
  const behind = all
    .filter((x) => x.cost > least && x.claim.rank !== Rank.id && x.claim.rank < Rank.made)
    .sort((a, b) => a.cost - b.cost || order(a.claim.ingredient, b.claim.ingredient));
  return {
    top: top.map((x) => hitOf(index.store, x.claim, raw, folded)).sort((a, b) => order(a.ingredient, b.ingredient)),
    behind: behind.map((x) => ({
      ingredient: x.claim.ingredient,
      matched: x.claim.text,
      how: "folded",
      confidence: SURE.behind,
    })),
  };
}

/** The stated default first, then by id. */
export function order(a: Ingredient, b: Ingredient): number {
  return Number(b.isDefault) - Number(a.isDefault) || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0);
}

/**
 * A whole text that is a listed name: as written, folded, with its words in another order, or joined or split.
 * @param reorder whether another order of the words may be meant
 */
export function byName(index: NameIndex, key: string, raw: string, reorder = true): Found | undefined {
  if (key === "") return undefined;
  const isListed = (c: Claim): boolean => c.rank < Rank.made;
  const straight = (index.byKey.get(key) ?? []).filter((c) => !byChance(c, key, raw));
  if (straight.some(isListed)) return weigh(index, straight, raw, SURE.folded);
  const swapped =
    reorder && key.includes(" ")
      ? index
          .otherwise()
          .inAnyOrder(key)
          .flatMap((k) => index.byKey.get(k) ?? [])
      : [];
  // a listed name in another order before one made by rule: "kale green" is green kale, not the greens of kale
  if (swapped.some(isListed)) return weigh(index, swapped, raw, SURE.reordered);
  if (straight.length > 0) return weigh(index, straight, raw, SURE.made);
  return swapped.length > 0 ? weigh(index, swapped, raw, SURE.reordered) : byJoin(index, key, raw);
}

function byJoin(index: NameIndex, key: string, raw: string): Found | undefined {
  const joined = key.replaceAll(" ", "");
  if (joined.length < 6) return undefined;
  const claims = [
    ...(key === joined ? [] : (index.byKey.get(joined) ?? [])),
    ...index
      .otherwise()
      .together(joined)
      .flatMap((k) => index.byKey.get(k) ?? []),
  ];
  return claims.length === 0 ? undefined : weigh(index, claims, raw, SURE.joined);
}

/**
 * Whether these words may be a name in another order. A comma says so ("beans, black"); without one, not when they end in
 * a dish or a thing ("potato salad" is not the salad potato).
 */
export function mayReorder(index: NameIndex, tokens: readonly Token[]): boolean {
  return tokens.some((t) => t.breaks) || !index.words.endings.has(tokens.at(-1)?.key ?? "");
}

/** State words in a row of tokens, two-word ones first. */
export function statesIn(
  index: NameIndex,
  tokens: readonly Token[],
): readonly { readonly from: number; readonly to: number; readonly said: Said }[] {
  const found: { from: number; to: number; said: Said }[] = [];
  for (let i = 0; i < tokens.length; i++) {
    const [one, two] = [tokens[i] as Token, tokens[i + 1]];
    const pair = two === undefined || two.breaks ? undefined : index.words.states.get(`${one.key} ${two.key}`);
    const state = pair ?? index.words.states.get(one.key);
    if (state === undefined) continue;
    found.push({ from: i, to: i + (pair ? 2 : 1), said: { state } });
    if (pair) i++;
  }
  return found;
}

/**
 * A text made of nothing but a food's name and state words: "frozen cod", "beans, canned", "ground cinnamon".
 * @param name how the name itself is looked up
 */
export function byRule(
  index: NameIndex,
  tokens: readonly Token[],
  text: string,
  name: (index: NameIndex, key: string, raw: string) => Found | undefined = byName,
): Found | undefined {
  const marks = statesIn(index, tokens);
  if (marks.length === 0) return undefined;
  // Fewest words read as states first, so that "salt cod, frozen" keeps its name; then all of them.
  for (const subset of subsets(marks)) {
    const outside = tokens.filter((_, i) => !subset.some((m) => i >= m.from && i < m.to));
    const key = keyOf(outside);
    const found = name(index, key, outside.map((t) => t.text.toLowerCase()).join(" "));
    if (found === undefined) continue;
    const settled = settle(
      index,
      found.top.map((h) => h.ingredient),
      subset.map((m) => m.said),
    );
    if (settled === undefined) continue;
    const first = found.top[0] as Hit;
    const near = settled.unmet.length > 0;
    const sure = first.how === "fuzzy" ? first.confidence : first.confidence === SURE.same ? SURE.same : SURE.made;
    const hit = (ingredient: Ingredient): Hit => ({
      ingredient,
      matched: near || first.how === "fuzzy" ? first.matched : text.trim(),
      how: near || first.how === "fuzzy" ? "fuzzy" : sure === SURE.same ? "alias" : "folded",
      confidence: near ? Math.min(0.7, sure) : sure,
    });
    return { top: settled.ingredients.map(hit).sort((a, b) => order(a.ingredient, b.ingredient)), behind: [] };
  }
  return undefined;
}

function subsets<T>(marks: readonly T[]): readonly (readonly T[])[] {
  const some = marks.slice(0, 4);
  const out: T[][] = [];
  for (let bits = 1; bits < 1 << some.length; bits++) out.push(some.filter((_, i) => (bits & (1 << i)) !== 0));
  return out.sort((a, b) => a.length - b.length);
}
