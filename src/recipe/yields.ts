import { isDash, isDigit, readNumeral, skipSpace, skipWord } from "../quantity/index.js";
import { tokensOf } from "./text.js";

export interface Yield {
  readonly serves?: number;
  readonly range?: readonly [low: number, high: number];
  readonly makes?: { readonly count: number; readonly of: string };
}

const PEOPLE = new Set([
  "serving",
  "servings",
  "serves",
  "serve",
  "people",
  "persons",
  "person",
  "portion",
  "portions",
  "guests",
  "diners",
  "adults",
  "eaters",
  "helpings",
  "plates",
  "bowls",
  "feeds",
]);
const MAKES = new Set([
  "makes",
  "yield",
  "yields",
  "make",
  "about",
  "approximately",
  "approx",
  "around",
  "roughly",
  "ca",
]);

/**
 * "4", "4 servings", "Serves 4-6", "Makes 24 cookies", "one loaf". A bare number is people: that is how schema.org's
 * recipeYield is filled when it is only a number. Of a range the lower end counts, so that nobody's share is counted short.
 */
export function readYield(text: string): Yield | undefined {
  if (text.length > 300) return undefined;
  const tokens = tokensOf(text);
  const people = tokens.some((t) => PEOPLE.has(t.text));
  let seen = 0;
  for (const t of tokens) {
    const n = readNumeral(text, t.start);
    if (n === undefined || n.article === true || n.value > 10_000) {
      if (++seen > 12) return undefined;
      continue;
    }
    let high = n.spread?.[1] ?? n.value;
    const p = skipSpace(text, n.end);
    const to = isDash(text[p]) || text[p] === "\u2013" ? p + 1 : skipWord(text, p, "to", "or");
    const second = to === undefined ? undefined : readNumeral(text, to);
    const end = second?.end ?? n.end;
    if (second !== undefined && second.value > n.value) high = second.value;
    const rest = tokensOf(text.slice(end)).filter((w) => !MAKES.has(w.text));
    const before = tokensOf(text.slice(0, t.start)).map((w) => w.text);
    const bare = rest.length === 0 && !before.some((w) => w === "makes" || w === "make");
    const low = n.spread?.[0] ?? n.value;
    // "makes 1 loaf (8 servings)": the number beside the word for people is the one
    if (people && rest.length > 0 && !PEOPLE.has(rest[0]?.text ?? "") && !before.some((w) => PEOPLE.has(w))) {
      const later = readYield(text.slice(end));
      if (later?.serves !== undefined) return { ...later, makes: { count: n.value, of: upTo(text.slice(end)) } };
    }
    if (people || bare) return { serves: low, ...(high > low ? { range: [low, high] as const } : {}) };
    return { makes: { count: n.value, of: upTo(text.slice(end)) } };
  }
  return undefined;
}

/** The words of the thing made, up to a bracket or a comma. */
function upTo(text: string): string {
  let p = 0;
  while (p < text.length && !"(,;[".includes(text[p] ?? "") && !(isDigit(text[p]) && p > 0 && text[p - 1] === " ")) p++;
  return text.slice(0, p).trim();
}
