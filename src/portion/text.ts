import { isDash, isDigit, isLetter, isSpace, plainText, readQuantity, readWord, skipSpace } from "../quantity/index.js";

// A recipe line taken apart by its punctuation and its stock phrases. Knows no food.

const BULLETS = "•·▪▫‣⁃∙●○◦■□☐☑☒▢✓✔✗✘*>◇◆►▸–—-_";

/** Bullets, check boxes and numbering at the head of a line ("- ", "[ ] ", "1. ", "2) ") taken off; odd spaces made plain. */
export function stripLead(text: string): string {
  const s = plainText(text);
  let p = skipSpace(s, 0);
  for (let i = 0; i < 4; i++) {
    const before = p;
    while (p < s.length && BULLETS.includes(s[p] ?? "")) p++;
    if (s[p] === "[" && (s[p + 2] === "]" || s[p + 1] === "]")) p += s[p + 1] === "]" ? 2 : 3;
    p = skipSpace(s, p);
    if (p === before) break;
  }
  const n = numbering(s, p);
  return trimmed(s.slice(n));
}
/** "1. " and "2) " number a line; "1.5" does not, and "(1)" does. */
function numbering(s: string, at: number): number {
  let p = at;
  const open = s[p] === "(";
  if (open) p++;
  const from = p;
  while (isDigit(s[p])) p++;
  if (p === from || p - from > 2) return at;
  const mark = s[p];
  if (mark !== ")" && (mark !== "." || open)) return at;
  if (!isSpace(s[p + 1])) return at;
  return skipSpace(s, p + 1);
}

export interface Segments {
  /** Before the first comma, without brackets. */
  readonly head: string;
  /** Between further commas. */
  readonly rest: readonly string[];
  /** What stood in brackets. */
  readonly brackets: readonly string[];
}

/** Splits at commas, semicolons and spaced dashes outside brackets. An unclosed bracket runs to the end. One pass. */
export function segments(text: string): Segments {
  const parts: string[] = [];
  const brackets: string[] = [];
  let part = "";
  let inside = "";
  let depth = 0;
  for (let i = 0; i < text.length; i++) {
    const ch = text[i] ?? "";
    if (ch === "(" || ch === "[" || ch === "{") {
      if (depth > 0) inside += ch;
      depth++;
    } else if ((ch === ")" || ch === "]" || ch === "}") && depth > 0) {
      depth--;
      if (depth > 0) inside += ch;
      else {
        brackets.push(trimmed(inside));
        inside = "";
        part += " ";
      }
    } else if (depth > 0) inside += ch;
    else if (splits(text, i, ch)) {
      parts.push(trimmed(part));
      part = "";
    } else part += ch;
  }
  if (inside !== "") brackets.push(trimmed(inside));
  parts.push(trimmed(part));
  const [head = "", ...rest] = parts;
  return { head, rest: rest.filter((s) => s !== ""), brackets: brackets.filter((s) => s !== "") };
}
function splits(text: string, i: number, ch: string): boolean {
  if (ch === ",") return !(isDigit(text[i - 1]) && isDigit(text[i + 1]));
  if (ch === ";") return true;
  if (isDash(ch)) return isSpace(text[i - 1]) && isSpace(text[i + 1]) && isLetter(text[skipSpace(text, i + 1)]);
  return false;
}

export function trimmed(s: string): string {
  let a = 0;
  let b = s.length;
  while (a < b && (isSpace(s[a]) || s[a] === "," || s[a] === ";" || s[a] === ":")) a++;
  while (b > a && (isSpace(s[b - 1]) || ",;:".includes(s[b - 1] ?? ""))) b--;
  let out = "";
  let space = false;
  for (let i = a; i < b; i++) {
    if (isSpace(s[i])) space = true;
    else {
      if (space) out += " ";
      space = false;
      out += s[i] ?? "";
    }
  }
  return out.endsWith(".") && !out.endsWith("..") ? out.slice(0, -1) : out;
}

/** Where a phrase ends the naming of the food: the rest of the segment is a note. */
const MARKERS: readonly (readonly string[])[] = [
  ["or", "to", "taste"],
  ["or", "as", "needed"],
  ["or", "as", "required"],
  ["or", "more"],
  ["or", "less"],
  ["or", "so"],
  ["or", "other"],
  ["or", "another"],
  ["or", "any"],
  ["or", "your"],
  ["or", "whatever"],
  ["or", "similar"],
  ["or", "equivalent"],
  ["to", "taste"],
  ["al", "gusto"],
  ["nach", "geschmack"],
  ["au", "goût"],
  ["q", "b"],
  ["to", "serve"],
  ["to", "garnish"],
  ["to", "finish"],
  ["to", "decorate"],
  ["to", "sprinkle"],
  ["to", "cover"],
  ["to", "coat"],
  ["to", "season"],
  ["to", "grease"],
  ["to", "drizzle"],
  ["as", "needed"],
  ["as", "required"],
  ["if", "needed"],
  ["if", "desired"],
  ["if", "you"],
  ["if", "using"],
  ["if", "available"],
  ["if", "necessary"],
  ["for", "serving"],
  ["for", "garnish"],
  ["for", "garnishing"],
  ["for", "the"],
  ["for", "frying"],
  ["for", "deep"],
  ["for", "greasing"],
  ["for", "dusting"],
  ["for", "brushing"],
  ["for", "drizzling"],
  ["for", "sprinkling"],
  ["for", "rolling"],
  ["for", "cooking"],
  ["for", "sauteing"],
  ["for", "coating"],
  ["for", "topping"],
  ["for", "dredging"],
  ["for", "a"],
  ["at", "room", "temperature"],
  ["plus", "more"],
  ["plus", "extra"],
  ["plus", "additional"],
  ["plus", "a"],
  ["plus", "some"],
  ["plus"],
  ["and", "more"],
  ["and", "extra"],
  ["extra", "for"],
  ["more", "for"],
  ["the", "size"],
  ["such", "as"],
  ["preferably"],
  ["ideally"],
  ["divided"],
  ["optional"],
  ["about"],
  ["approximately"],
  ["approx"],
  ["per"],
  ["cut", "into"],
  ["cut", "in"],
  ["roughly"],
  ["kept", "whole"],
  ["with", "its"],
  ["with", "their"],
  ["with", "the"],
  ["with", "juice"],
  ["with", "juices"],
  ["with", "skin"],
  ["with", "bones"],
];
const BY_FIRST: ReadonlyMap<string, readonly (readonly string[])[]> = (() => {
  const map = new Map<string, (readonly string[])[]>();
  for (const m of MARKERS) {
    const first = m[0] ?? "";
    const list = map.get(first) ?? [];
    list.push(m);
    map.set(first, list);
  }
  return map;
})();
/** These open a preparation rather than a note. */
const PREPARING = new Set(["cut", "roughly", "at"]);

/** The head up to the first stock phrase, and the phrase with all that follows. A phrase at the very start cuts nothing but itself. */
export function cutMarker(head: string): { readonly head: string; readonly tail: string; readonly prepares: boolean } {
  for (const w of wordsIn(head)) {
    const list = BY_FIRST.get(w.text);
    if (list === undefined || (w.start === 0 && w.text !== "optional")) continue;
    if (w.start > 0 && isDash(head[w.start - 1])) continue;
    if (list.some((m) => follows(head, w.start, m)))
      return {
        head: trimmed(head.slice(0, w.start)),
        tail: trimmed(head.slice(w.start)),
        prepares: PREPARING.has(w.text),
      };
  }
  return { head, tail: "", prepares: false };
}
function follows(text: string, at: number, words: readonly string[]): boolean {
  let p = at;
  for (const word of words) {
    const w = readWord(text, p);
    if (w === undefined || w.text !== word) return false;
    p = w.end;
  }
  return true;
}

export function* wordsIn(
  text: string,
): Generator<{ readonly text: string; readonly start: number; readonly end: number }> {
  let p = 0;
  while (p < text.length) {
    while (p < text.length && !isLetter(text[p])) p++;
    const w = readWord(text, p);
    if (w === undefined) return;
    yield w;
    p = w.end;
  }
}

/** Does the text hold these words in a row? */
export function says(text: string, ...words: readonly string[]): boolean {
  for (const w of wordsIn(text)) if (w.text === words[0] && follows(text, w.start, words)) return true;
  return false;
}

const FILLERS = new Set([
  "each",
  "total",
  "in",
  "all",
  "approx",
  "apiece",
  "altogether",
  "or",
  "so",
  "drained",
  "weight",
  "unpeeled",
  "peeled",
  "trimmed",
  "whole",
  "raw",
]);
/** A segment that is an amount and nothing else: "about 1 lb", "200 g each". */
export function wholeAmount(
  segment: string,
  imperial: boolean,
): { readonly quantity: NonNullable<ReturnType<typeof readQuantity>>; readonly each: boolean } | undefined {
  const q = readQuantity(segment, 0, { imperial });
  if (q === undefined || q.unit === undefined || q.implied === true) return undefined;
  let each = false;
  let p = q.end;
  for (;;) {
    const w = readWord(segment, p);
    if (w === undefined) break;
    if (!FILLERS.has(w.text)) return undefined;
    each ||= w.text === "each" || w.text === "apiece";
    p = w.end;
  }
  return skipSpace(segment, p) === segment.length ? { quantity: q, each } : undefined;
}

/** A short safe piece of a text for `unread`: never cut inside a surrogate pair. */
export function shorten(text: string, limit = 200): string {
  if (text.length <= limit) return text;
  const code = text.charCodeAt(limit - 1);
  return `${text.slice(0, code >= 0xd800 && code <= 0xdbff ? limit - 1 : limit)}…`;
}
