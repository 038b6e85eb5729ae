import { VULGAR } from "./fractions.js";
import { isDash, isDigit, isLetter, isSpace, readWord, skipSpace, skipWord } from "./scan.js";

/** A number read from text. `article` marks "a" and "an", which are an amount only before a measure or a food. */
export interface Numeral {
  readonly value: number;
  readonly end: number;
  readonly spread?: readonly [low: number, high: number];
  readonly article?: true;
  readonly integer?: true;
}

/** More digits than this is no amount a kitchen has: the text is left unread. */
const MAX_DIGITS = 7;
const SLASHES = "/\u2044\u2215";

const WORDS: ReadonlyMap<string, number> = new Map([
  ...["one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"].map(
    (w, i) => [w, i + 1] as const,
  ),
  ["fifteen", 15],
  ["sixteen", 16],
  ["twenty", 20],
  ["thirty", 30],
]);
const PARTS: ReadonlyMap<string, number> = new Map([
  ["half", 2],
  ["halves", 2],
  ["third", 3],
  ["thirds", 3],
  ["quarter", 4],
  ["quarters", 4],
  ["fourth", 4],
  ["fourths", 4],
  ["eighth", 8],
  ["eighths", 8],
]);
/** After "a": a quantity that is none ("a little oil"). */
const NO_AMOUNT = new Set(["little", "bit", "lot", "touch"]);

/**
 * Reads the number at `at`: 2, 1.5, 1,5, 1,000, 1/2, 1 1/2, 1-1/2, 1½, "one and a half", "half a dozen", "a couple".
 * Zero, a zero denominator, a percentage and over-long digit runs are not amounts and give undefined.
 */
export function readNumeral(text: string, at: number): Numeral | undefined {
  const p = skipSpace(text, at);
  const ch = text[p];
  const n = isDigit(ch) || ch === "." ? digits(text, p) : VULGAR.has(ch ?? "") ? vulgar(text, p) : words(text, p);
  if (n === undefined || !(n.value > 0) || text[skipSpace(text, n.end)] === "%") return undefined;
  return dozen(text, n);
}

function vulgar(text: string, p: number): Numeral {
  return { value: VULGAR.get(text[p] ?? "") ?? 0, end: skipOfA(text, p + 1) };
}

function run(text: string, p: number): number {
  let e = p;
  while (isDigit(text[e])) e++;
  return e;
}

function digits(text: string, p: number): Numeral | undefined {
  let e = run(text, p);
  if (e - p > MAX_DIGITS) return undefined;
  if (e === p) {
    // ".5"
    const d = run(text, p + 1);
    if (d === p + 1 || d - p > MAX_DIGITS) return undefined;
    return { value: Number(`0${text.slice(p, d)}`), end: d };
  }
  let whole = Number(text.slice(p, e));
  // "1,000": a comma and exactly three digits after one to three digits; anything else after a comma is a decimal.
  let grouped = false;
  while (text[e] === "," && (grouped || (e - p <= 3 && text[p] !== "0")) && run(text, e + 1) - e === 4) {
    whole = whole * 1000 + Number(text.slice(e + 1, e + 4));
    e += 4;
    grouped = true;
    if (whole > 10_000_000) return undefined;
  }
  if (text[e] === "." || (text[e] === "," && !grouped)) {
    const d = run(text, e + 1);
    if (d > e + 1) {
      if (d - e > MAX_DIGITS + 1) return undefined;
      return { value: Number(`${whole}.${text.slice(e + 1, d)}`), end: d };
    }
  }
  const plain = simpleFraction(text, p);
  if (plain !== undefined) return { ...plain, end: skipOfA(text, plain.end) };
  if (SLASHES.includes(text[skipSpace(text, e)] ?? " ") && isDigit(text[skipSpace(text, skipSpace(text, e) + 1)]))
    return undefined; // "1/0", "5/999999999"
  const more = fractionAfter(text, e);
  if (more !== undefined) return { value: whole + more.value, end: more.end };
  return { value: whole, end: e, integer: true };
}

/** "3/4" with any of the slashes, at p. */
function simpleFraction(text: string, p: number): Numeral | undefined {
  const a = run(text, p);
  if (a === p || a - p > 3) return undefined;
  const s = skipSpace(text, a);
  if (!SLASHES.includes(text[s] ?? " ")) return undefined;
  const b = skipSpace(text, s + 1);
  const e = run(text, b);
  if (e === b || e - b > 3) return undefined;
  const den = Number(text.slice(b, e));
  return den === 0 ? undefined : { value: Number(text.slice(p, a)) / den, end: e };
}
/** What may follow a whole number to make it mixed: " 1/2", "-1/2", "½", " and 1/2", " and a half". */
function fractionAfter(text: string, e: number): Numeral | undefined {
  let p = skipSpace(text, e);
  const joined = p === e;
  if (isDash(text[p]) && joined) p++;
  else if (text[p] === "&" || text[p] === "+") p = skipSpace(text, p + 1);
  else {
    const and = skipWord(text, p, "and");
    if (and !== undefined) {
      const w = wordFraction(text, and);
      if (w !== undefined && w.value < 1) return w;
      p = skipSpace(text, and);
    } else if (joined && !VULGAR.has(text[p] ?? "")) return undefined;
  }
  const v = VULGAR.get(text[p] ?? "");
  if (v !== undefined) return { value: v, end: p + 1 };
  const f = simpleFraction(text, p);
  return f !== undefined && f.value < 1 ? f : undefined;
}

/** "a half", "half a", "three quarters", "two-thirds", "a third of a". */
function wordFraction(text: string, at: number): Numeral | undefined {
  let w = readWord(text, at);
  if (w === undefined) return undefined;
  let count = 1;
  const n = WORDS.get(w.text);
  if (w.text === "a" || w.text === "an" || n !== undefined) {
    count = n ?? 1;
    const from = isDash(text[w.end]) ? w.end + 1 : w.end;
    w = readWord(text, from);
    if (w === undefined) return undefined;
  }
  const den = PARTS.get(w.text);
  if (den === undefined || count >= den) return undefined;
  // "half and half", "half-fat", "quarter-pounder" are foods, not amounts.
  if (isDash(text[w.end]) && isLetter(text[w.end + 1]) && skipWord(text, w.end + 1, "a", "inch", "cup") === undefined)
    return undefined;
  const next = skipSpace(text, w.end);
  const pair = text[next] === "&" ? next + 1 : skipWord(text, next, "and", "n");
  if (den === 2 && pair !== undefined && skipWord(text, pair, "half") !== undefined) return undefined;
  return { value: count / den, end: skipOfA(text, w.end) };
}

/** After a fraction: "of a", "of an", "a", "an" say nothing more. */
function skipOfA(text: string, at: number): number {
  const from = isDash(text[at]) ? at + 1 : at;
  const of = skipWord(text, from, "of");
  const a = skipWord(text, of ?? from, "a", "an", "one");
  return a !== undefined && (isSpace(text[a]) || isDash(text[a])) ? a : at;
}

function words(text: string, p: number): Numeral | undefined {
  const w = readWord(text, p);
  if (w === undefined) return undefined;
  const part = wordFraction(text, p);
  if (part !== undefined) return part;
  if (isLetter(text[w.end]) || text[w.end] === "'") return undefined;
  if (w.text === "a" || w.text === "an") {
    const next = readWord(text, w.end);
    if (next === undefined)
      return isDigit(text[skipSpace(text, w.end)]) ? { value: 1, end: w.end, article: true } : undefined;
    if (next.text === "couple") return { value: 2, end: skipWord(text, next.end, "of") ?? next.end };
    if (next.text === "few") return few(next.end);
    if (DOZEN.has(next.text)) return { value: 12, end: afterDot(text, next.end) };
    if (NO_AMOUNT.has(next.text)) return undefined;
    return { value: 1, end: w.end, article: true };
  }
  if (w.text === "couple") return { value: 2, end: skipWord(text, w.end, "of") ?? w.end };
  if (w.text === "few") return few(w.end);
  if (w.text === "several") return { value: 4, end: w.end, spread: [3, 5] };
  if (DOZEN.has(w.text)) return { value: 12, end: afterDot(text, w.end) };
  const n = WORDS.get(w.text);
  if (n === undefined) return undefined;
  // "one-and-a-half cups", "one and a half cups"
  const from = isDash(text[w.end]) ? w.end + 1 : w.end;
  const and = skipWord(text, from, "and");
  if (and !== undefined) {
    const f = wordFraction(text, isDash(text[and]) ? and + 1 : and);
    if (f !== undefined) return { value: n + f.value, end: f.end };
  }
  return { value: n, end: w.end, integer: true };
}

const DOZEN: ReadonlySet<string> = new Set(["dozen", "doz"]);
const afterDot = (text: string, at: number): number => (text[at] === "." ? at + 1 : at);

function few(end: number): Numeral {
  return { value: 3, end, spread: [2, 4] };
}

function dozen(text: string, n: Numeral): Numeral {
  if (n.article === true || n.spread !== undefined) return n;
  const d = skipWord(text, n.end, ...DOZEN);
  return d === undefined ? n : { value: n.value * 12, end: afterDot(text, d) };
}
