import type { Ingredient, Store } from "../catalogue/index.js";
import { isDash, isDigit, type Quantity, readQuantity, readWord, skipSpace, skipWord } from "../quantity/index.js";
import type { FoodMatch } from "../types.js";
import { trimmed, wordsIn } from "./text.js";

/** The food inside an ingredient phrase, as the room of names finds it. */
export interface Phrase {
  readonly match: FoodMatch;
  readonly candidates: readonly FoodMatch[];
  readonly words: readonly [from: number, to: number];
  readonly rest: string;
}
/** What a line is read against: the store and the two ways of finding a food by name. */
export interface Lookup {
  readonly store: Store;
  findFood(text: string, limit?: number): readonly FoodMatch[];
  findInPhrase(text: string): Phrase | undefined;
  /** The nearest names for an error message. */
  nearest(text: string, n: number): readonly FoodMatch[];
}

export interface Found {
  readonly ingredient: Ingredient;
  readonly match: FoodMatch;
  /** Two or more when the words fit several foods equally well. */
  readonly candidates: readonly FoodMatch[];
  readonly rest: string;
  /** The words the food was found in. */
  readonly text: string;
}

const SURE = new Set(["exact", "alias", "default"]);

export function isExact(m: FoodMatch | undefined): boolean {
  return m !== undefined && m.confidence >= 1 && SURE.has(m.how);
}

function found(lookup: Lookup, phrase: Phrase, text: string): Found | undefined {
  const ingredient = lookup.store.byId.get(phrase.match.id);
  if (ingredient === undefined) return undefined;
  return { ingredient, match: phrase.match, candidates: ambiguous(phrase), rest: trimmed(phrase.rest), text };
}
/** Several foods the words fit equally well; [] when one is clearly meant. */
function ambiguous(phrase: Phrase): readonly FoodMatch[] {
  const ids = new Set(phrase.candidates.map((m) => m.id));
  return ids.size > 1 ? phrase.candidates : [];
}

/** "200 g soju/pantry": an id is read as itself, now or as it was once called. */
export function findId(lookup: Lookup, text: string): Found | undefined {
  if (!text.includes("/") || text.includes(" ")) return undefined;
  const id = text.toLowerCase();
  if (!lookup.store.byId.has(id) && !lookup.store.tombstones.has(id)) return undefined;
  return findWhole(lookup, id);
}

/** The food a stretch of text names: the whole of it when that is a name, else the name inside it. */
export function findIn(lookup: Lookup, text: string): Found | undefined {
  if (text === "" || text.length > 300) return undefined;
  const own = findId(lookup, text);
  if (own !== undefined) return own;
  const phrase = lookup.findInPhrase(text);
  return phrase === undefined ? undefined : found(lookup, phrase, text);
}
/** The food a text is the name of, word for word. */
export function findWhole(lookup: Lookup, text: string, least = 1): Found | undefined {
  if (text === "" || text.length > 100) return undefined;
  const all = lookup.findFood(text, 50);
  const match = all[0];
  if (match === undefined || match.confidence < least) return undefined;
  const candidates = all.filter((m) => m.confidence === match.confidence);
  return found(lookup, { match, candidates, words: [0, 0], rest: "" }, text);
}

/**
 * "chicken or vegetable stock" shares its last words; "milk or cream" does not. The left side is completed with the
 * last words of the right when that makes a name word for word, the longest such ending first.
 */
export function shareTail(lookup: Lookup, left: string, right: string): string | undefined {
  const words = [...wordsIn(right)];
  for (let i = 1; i < words.length && i <= 4; i++) {
    const w = words[i];
    if (w === undefined) break;
    const joined = `${left} ${right.slice(w.start)}`;
    const hit = findWhole(lookup, joined, 0.9);
    if (hit !== undefined && hit.candidates.length === 0) return joined;
  }
  return undefined;
}

/** Splits at the word "or" (or a slash between words), outside hyphens. */
export function splitAt(
  text: string,
  ...joints: readonly string[]
): readonly [left: string, right: string, joint: string] | undefined {
  for (const w of wordsIn(text)) {
    if (!joints.includes(w.text) || w.start === 0) continue;
    if (isDash(text[w.start - 1]) || isDash(text[w.end])) continue;
    const left = trimmed(text.slice(0, w.start));
    const right = trimmed(text.slice(w.end));
    if (left !== "" && right !== "") return [left, right, w.text];
  }
  for (const sign of joints.includes("or") ? ["/"] : ["&", "+"]) {
    const at = text.indexOf(sign);
    if (at <= 0 || (isDigit(text[at + 1]) && isDigit(text[at - 1]))) continue;
    const left = trimmed(text.slice(0, at));
    const right = trimmed(text.slice(at + 1));
    if (left !== "" && right !== "") return [left, right, sign === "/" ? "or" : "and"];
  }
  return undefined;
}

const PARTS: Readonly<Record<string, string>> = {
  juice: "juice",
  juices: "juice",
  zest: "zest",
  zests: "zest",
  rind: "zest",
  peel: "zest",
  white: "white",
  whites: "white",
  yolk: "yolk",
  yolks: "yolk",
};
const BEFORE_PART = new Set([
  "the",
  "a",
  "finely",
  "coarsely",
  "freshly",
  "fresh",
  "grated",
  "squeezed",
  "shredded",
  "pared",
  "strained",
  "some",
  "about",
  "thinly",
]);

export interface PartOf {
  readonly part: string;
  /** "zest and juice": the other part named. */
  readonly also?: string;
  /** Words before the part: "finely grated". */
  readonly before: string;
  /** How many of the whole food; undefined when not said. */
  readonly quantity: Quantity | undefined;
  readonly food: string;
}

/** "juice of 1 lemon", "finely grated zest of 2 limes", "the juice of half a lemon", "whites of 2 eggs", "juice from 2 lemons". */
export function readPartOf(text: string, imperial: boolean): PartOf | undefined {
  let p = 0;
  let w = readWord(text, p);
  for (let i = 0; i < 5 && w !== undefined && BEFORE_PART.has(w.text); i++) {
    p = w.end;
    w = readWord(text, p);
  }
  const part = w === undefined ? undefined : PARTS[w.text];
  if (w === undefined || part === undefined) return undefined;
  const before = trimmed(text.slice(0, w.start));
  let end = w.end;
  let also: string | undefined;
  const amp = skipSpace(text, end);
  const and = text[amp] === "&" ? amp + 1 : skipWord(text, end, "and", "plus");
  const second = and === undefined ? undefined : readWord(text, and);
  if (second !== undefined && PARTS[second.text] !== undefined) {
    also = PARTS[second.text];
    end = second.end;
  }
  const of = skipWord(text, end, "of", "from");
  const q = readQuantity(text, of ?? end, { imperial });
  if (of === undefined && (q === undefined || q.implied === true)) return undefined;
  const from = of ?? end;
  const start = q === undefined || q.implied === true ? from : q.end;
  const food = trimmed(text.slice(start));
  if (food === "") return undefined;
  const quantity = q?.implied === true ? undefined : q;
  return { part, ...(also === undefined || also === part ? {} : { also }), before, quantity, food };
}

/** The part of a food as an ingredient of its own: lemon + juice → lemon juice. */
export function findPart(lookup: Lookup, food: string, part: string): Found | undefined {
  const whole = findWhole(lookup, `${food} ${part}`, 0.9);
  if (whole !== undefined && whole.ingredient.part === part) return whole;
  const base = findIn(lookup, food);
  if (base === undefined) return whole;
  const ofPart = lookup.store.ingredients.filter((i) => i.food === base.ingredient.food && i.part === part);
  const ingredient = ofPart.find((i) => i.isDefault) ?? ofPart.find((i) => i.state.includes("fresh")) ?? ofPart[0];
  if (ingredient === undefined) return whole;
  return { ...base, ingredient, candidates: [] };
}

/** Kept in another way than fresh or dried already: a can of these holds just these. */
const KEPT = new Set(["canned", "pickled", "in-oil", "brined", "fermented", "smoked", "salt-cured", "candied"]);

/** What comes in a can is canned: "2 tins tomatoes" are not fresh ones. The canned state of the same food, if there is one. */
export function findCanned(lookup: Lookup, plain: Found): Found | undefined {
  if (plain.ingredient.state.some((s) => KEPT.has(s))) return undefined;
  if (plain.candidates.some((m) => lookup.store.byId.get(m.id)?.state.includes("canned"))) return undefined;
  // "1 can pumpkin" is what is called canned pumpkin, though that is another food
  const named = findWhole(lookup, `canned ${plain.text}`);
  if (named?.candidates.length === 0 && isExact(named.match) && named.ingredient.state.includes("canned"))
    return { ...named, rest: plain.rest, text: plain.text };
  const canned = findIn(lookup, `canned ${plain.text}`);
  if (canned?.ingredient.food !== plain.ingredient.food || !canned.ingredient.state.includes("canned"))
    return undefined;
  return { ...canned, rest: plain.rest, text: plain.text };
}

/**
 * "2 cups chopped tomatoes" are fresh ones cut up, though a tin of them bears the same name: where nobody said a can,
 * the name without its cutting words answers when that is the fresh state of the same food.
 */
export function findFresh(lookup: Lookup, canned: Found): Found | undefined {
  if (!canned.ingredient.state.includes("canned")) return undefined;
  const words = canned.text.split(" ");
  const bare = words.filter((w) => !CUTTING.has(w.toLowerCase())).join(" ");
  if (bare === canned.text || bare === "") return undefined;
  const fresh = findIn(lookup, bare);
  if (fresh?.ingredient.food !== canned.ingredient.food || !fresh.ingredient.state.includes("fresh")) return undefined;
  const cut = words.filter((w) => CUTTING.has(w.toLowerCase())).join(" ");
  return { ...fresh, rest: trimmed(`${cut} ${fresh.rest}`), text: canned.text };
}

const CUTTING = new Set(
  (
    "chopped diced sliced minced grated shredded cubed crushed halved quartered peeled unpeeled trimmed beaten melted softened " +
    "mashed torn crumbled rinsed washed scrubbed seeded deseeded cored pitted stoned stemmed whisked sifted divided packed cut " +
    "julienned shaved smashed bruised separated husked shelled cleaned boned skinned picked zested juiced cooled warmed chilled"
  ).split(" "),
);
const HOW = new Set(
  "finely roughly thinly coarsely lightly thickly very well freshly and or then into to in at room temperature slightly gently".split(
    " ",
  ),
);

/** Does a segment only say how to cut or handle it ("finely chopped", "peeled and sliced")? It never chooses the food. */
export function onlyCut(segment: string): boolean {
  let cut = false;
  for (const w of wordsIn(segment)) {
    if (CUTTING.has(w.text)) cut = true;
    else if (!HOW.has(w.text)) return false;
  }
  return cut;
}

const GENERAL = new Set(["food", "plant", "animal", "prepared"]);
/** Two foods of one family: they share a kind that says something. */
export function alike(a: Ingredient, b: Ingredient): boolean {
  return a.kinds.some((k) => !GENERAL.has(k) && b.kinds.includes(k));
}
