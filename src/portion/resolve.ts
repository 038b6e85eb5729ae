import type { Quantity } from "../quantity/index.js";
import { isDash, isLetter, readQuantity, readWord } from "../quantity/index.js";
import {
  alike,
  type Found,
  findId,
  findIn,
  findPart,
  findWhole,
  isExact,
  onlyCut,
  type Lookup,
  readPartOf,
  shareTail,
  splitAt,
} from "./food.js";
import { trimmed, wordsIn } from "./text.js";

/** A food named beside the first: "or 2 shallots". `quantity` when it has its own. */
export interface Other {
  readonly found: Found;
  readonly quantity?: Quantity;
}
export interface Resolved {
  readonly found: Found;
  /** Replaces the amount read before ("juice of 1 lemon", "4 cloves"). */
  readonly quantity?: Quantity | undefined;
  readonly others: readonly Other[];
  readonly preparation: readonly string[];
  readonly notes: readonly string[];
  /** How many of the segments after the head were needed to name the food. */
  readonly used: number;
  /** Segments that only chose the food ("butter, vegan"): no preparation. */
  readonly consumed: readonly string[];
  /** The amount counts whole foods of which this is a part: nobody measures juice in lemons. */
  readonly ofWhole?: true;
}

const NONE = { others: [], preparation: [], notes: [], used: 0, consumed: [] } as const;

/** A unit that may be the food itself or the first word of its name: "4 cloves", "2 cube steaks". */
function withUnit(line: string, q: Quantity | undefined): string | undefined {
  if (q === undefined || q.also !== undefined) return undefined;
  // "little gem lettuce": a size word may belong to the name; "1 cup carton custard": so may a container
  if (q.each !== undefined) return q.unit !== undefined && q.value === 1 ? line.slice(q.words) : undefined;
  if (q.unit === undefined ? q.size === "" : q.unit.dimension !== "count") return undefined;
  return line.slice(q.words);
}
/** The amount without the words that turned out to be the name. */
function bare(q: Quantity): Quantity {
  const { value, low, high, unit } = q.each ?? { value: q.value, low: q.low, high: q.high, unit: undefined };
  const size = q.unit === undefined ? "" : q.size;
  return { value, low, high, unit, size, approximate: q.approximate, end: q.words, words: q.words };
}

/** How sure a name is that differs only by its plural. */
const PLURAL = 0.97;

/**
 * The food of a line.
 * @param line the whole line, without bullets
 * @param head what stands between the amount and the first comma or stock phrase
 * @param rest the segments after it
 * @param brackets what stood in brackets
 */
export function resolve(
  lookup: Lookup,
  line: string,
  head: string,
  rest: readonly string[],
  brackets: readonly string[],
  q: Quantity | undefined,
  imperial: boolean,
): Resolved | undefined {
  const id = findId(lookup, head);
  if (id !== undefined) return { ...NONE, found: id };
  const part = resolvePart(lookup, head, q, imperial);
  if (part !== undefined) return part;

  const unitHead = withUnit(line, q);
  if (unitHead !== undefined && q !== undefined) {
    const alt = headOf(unitHead);
    const whole = alt === head ? undefined : findWhole(lookup, alt, q.unit === undefined ? PLURAL : 1);
    const own = whole === undefined ? undefined : findWhole(lookup, head);
    // "2 little gem lettuces": the plural of a name, where the rest of it alone is hardly one
    const plural = q.unit === undefined && own === undefined;
    if (whole !== undefined && (isExact(whole.match) || plural)) {
      const has = own?.ingredient.measures.some((r) => r.unit === q.unit?.id && r.label === q.unit.label) === true;
      const other = own?.ingredient !== whole.ingredient;
      // "1 can corned beef": the can tells the state and is still what is counted
      const counts = q.unit?.name === "can" && whole.ingredient.state.includes("canned");
      // "1 can pumpkin": the can is no part of the name
      const holds = q.unit?.name === "can" && !other;
      if (!holds && (own === undefined || (q.unit === undefined ? other : !isExact(own.match) || !has)))
        return counts ? { ...NONE, found: whole } : { ...NONE, found: whole, quantity: bare(q) };
    }
  }

  const whole = findWhole(lookup, head);
  const named = whole !== undefined && isExact(whole.match);
  const or = named ? undefined : splitAt(head, "or");
  if (or !== undefined) {
    const hit = resolveOr(lookup, or[0], or[1], imperial, 0);
    if (hit !== undefined) return hit;
  }
  const and = named ? undefined : splitAt(head, "and", "with");
  if (and !== undefined) {
    const hit = resolveAnd(lookup, head, and[0], and[1], and[2]);
    if (hit !== undefined) return hit;
  }
  const hit = resolvePlain(lookup, head, rest, brackets, imperial);
  if (hit !== undefined) return hit;
  if (unitHead !== undefined && q !== undefined) {
    const hit = findIn(lookup, headOf(unitHead));
    if (hit !== undefined) return { ...NONE, found: hit, quantity: bare(q) };
  }
  return undefined;
}

/** The food of the head. What follows it may choose its state ("tomatoes, canned") or make it another thing ("butter, vegan"). */
function resolvePlain(
  lookup: Lookup,
  head: string,
  rest: readonly string[],
  brackets: readonly string[],
  imperial: boolean,
): Resolved | undefined {
  const after = rest.map((s) => (onlyAmount(s, imperial) || onlyCut(s) ? "" : s));
  const inside = brackets.filter((s) => !onlyAmount(s, imperial)).map((s) => ` (${s})`);
  const join = (first: string, others: readonly string[]) =>
    [first, ...others].filter((s) => s !== "").join(", ") + inside.join("");
  // "boneless, skinless chicken thighs": while the head only describes, the next segment belongs to it
  for (let used = 0; used <= Math.min(3, rest.length); used++) {
    const text = [head, ...rest.slice(0, used)].filter((s) => s !== "").join(" ");
    const own = text === "" || onlyAmount(text, imperial) ? undefined : findIn(lookup, text);
    if (own === undefined) continue;
    const full = findIn(lookup, join(text, after.slice(used)));
    if (full === undefined) return undefined;
    const left = new Set([...wordsIn(full.rest)].map((w) => w.text));
    const consumed = rest.slice(used).filter((s) => {
      const words = [...wordsIn(s)];
      return words.length > 0 && !words.some((w) => left.has(w.text)) && !onlyAmount(s, imperial) && !onlyCut(s);
    });
    return { ...NONE, found: { ...full, rest: own.rest, text }, used, consumed };
  }
  const full = findIn(lookup, join(head, after));
  return full === undefined ? undefined : { ...NONE, found: { ...full, rest: "" } };
}

function onlyAmount(text: string, imperial: boolean): boolean {
  const q = readQuantity(text, 0, { imperial });
  return q !== undefined && trimmed(text.slice(q.end)) === "";
}

/** Up to the first comma or bracket. */
function headOf(text: string): string {
  let end = text.length;
  for (let i = 0; i < text.length; i++) {
    const ch = text[i] ?? "";
    if (ch === "," || ch === "(" || ch === ";") {
      end = i;
      break;
    }
  }
  return trimmed(text.slice(0, end));
}

function resolvePart(lookup: Lookup, head: string, q: Quantity | undefined, imperial: boolean): Resolved | undefined {
  const part = readPartOf(head, imperial);
  if (part === undefined) return undefined;
  const found = findPart(lookup, part.food, part.part);
  if (found === undefined) return undefined;
  const notes = part.also === undefined ? [] : [`and ${part.also}`];
  const preparation = part.before === "" ? [] : [withoutArticle(part.before)].filter((s) => s !== "");
  if (q !== undefined && q.implied !== true) return { ...NONE, found: { ...found, rest: "" }, notes, preparation };
  return { ...NONE, found: { ...found, rest: "" }, notes, preparation, quantity: part.quantity, ofWhole: true };
}
function withoutArticle(text: string): string {
  const w = readWord(text, 0);
  return w !== undefined && (w.text === "the" || w.text === "a" || w.text === "some")
    ? trimmed(text.slice(w.end))
    : text;
}

/** One side of an "or", which may have its own amount. */
export function readOther(lookup: Lookup, text: string, imperial: boolean): Other | undefined {
  const q = readQuantity(text, 0, { imperial });
  const own = q !== undefined && q.implied !== true ? q : undefined;
  const found = findIn(lookup, trimmed(own === undefined ? text : text.slice(own.end)));
  if (found !== undefined) return own === undefined ? { found } : { found, quantity: own };
  const unitHead = own === undefined ? undefined : withUnit(text, own);
  const again = unitHead === undefined ? undefined : findIn(lookup, trimmed(unitHead));
  return again === undefined || own === undefined ? undefined : { found: again, quantity: bare(own) };
}

function resolveOr(
  lookup: Lookup,
  left: string,
  right: string,
  imperial: boolean,
  depth: number,
): Resolved | undefined {
  const more = depth < 3 ? splitAt(right, "or") : undefined;
  const tail = more === undefined ? undefined : resolveOr(lookup, more[0], more[1], imperial, depth + 1);
  const own = findIn(lookup, left);
  // "1 tbsp fresh thyme or 1 tsp dried": the right side leaves the name to the left
  const named = own === undefined ? right : `${right} ${own.ingredient.names[0]?.text ?? ""}`;
  const other =
    tail === undefined
      ? (readOther(lookup, right, imperial) ?? readOther(lookup, named, imperial))
      : { found: tail.found };
  const others = other === undefined ? [] : [other, ...(tail?.others ?? [])];
  const joined = other === undefined || "quantity" in other ? undefined : shareTail(lookup, left, right);
  const shared = joined === undefined ? undefined : findWhole(lookup, joined, 0.9);
  // "chicken or vegetable stock": two stocks. "butter or olive oil": a fat and an oil, whatever "butter oil" is.
  const family =
    shared !== undefined &&
    other !== undefined &&
    alike(shared.ingredient, other.found.ingredient) &&
    own !== undefined &&
    !alike(own.ingredient, other.found.ingredient);
  if (shared !== undefined && (own === undefined || family))
    return { ...NONE, found: shared, others: distinct(shared, others) };
  if (own !== undefined) {
    const notes = other === undefined ? [`or ${right}`] : [];
    return { ...NONE, found: own, others: distinct(own, others), notes };
  }
  // "salted or unsalted butter" where only the whole of the right side is a food
  if (other === undefined) return undefined;
  return {
    ...NONE,
    found: { ...other.found, rest: trimmed(`${left} or ${other.found.rest}`) },
    quantity: "quantity" in other ? other.quantity : undefined,
    others: distinct(other.found, others.slice(1)),
  };
}

function distinct(found: Found, others: readonly Other[]): readonly Other[] {
  const seen = new Set<string>([found.ingredient.id]);
  return others.filter((o) => {
    if (seen.has(o.found.ingredient.id)) return false;
    seen.add(o.found.ingredient.id);
    return true;
  });
}

/** "salt and pepper": the first food; the second is told in the note. Adjectives joined by "and" are one food. */
function resolveAnd(lookup: Lookup, head: string, left: string, right: string, joint: string): Resolved | undefined {
  const one = findIn(lookup, head);
  if (one !== undefined && one.match.confidence >= 0.9 && covers(one, head)) return undefined;
  const a = findIn(lookup, left);
  const b = findIn(lookup, right);
  if (
    a === undefined ||
    b === undefined ||
    a.match.confidence < 0.9 ||
    b.match.confidence < 0.9 ||
    a.ingredient === b.ingredient
  )
    return undefined;
  return { ...NONE, found: a, notes: [`${joint} ${right}`] };
}
/** Did the name take in the joining word itself ("half and half", "macaroni and cheese")? */
function covers(found: Found, head: string): boolean {
  const taken = [...wordsIn(head)].length - [...wordsIn(found.rest)].length;
  const matched = found.match.matched.toLowerCase();
  // "pork & beans": the sign is no word to count
  return taken > (head.includes("&") ? 1 : 2) && (matched.includes(" and ") || matched.includes("&"));
}

/** Words that say how a food was prepared rather than which it is. */
const PREPARED = new Set([
  "cut",
  "freshly",
  "finely",
  "coarsely",
  "roughly",
  "thinly",
  "thickly",
  "lightly",
  "well",
  "very",
  "skin",
  "skinless",
  "boneless",
  "skin-on",
  "bone-in",
  "crushed",
  "beaten",
  "melted",
  "softened",
  "ground",
  "shaved",
  "frozen",
  "thawed",
]);

/** Are these leftover words a preparation ("finely chopped") rather than a description ("good quality")? */
export function isPreparation(text: string): boolean {
  for (const w of wordsIn(text)) {
    if (isDash(text[w.end]) && isLetter(text[w.end + 1])) continue;
    if (PREPARED.has(w.text) || (w.text.length > 4 && w.text.endsWith("ed"))) return true;
  }
  return false;
}
