import { isDash, isDigit, isLetter, readNumeral, readWord, skipSpace, skipWord } from "../quantity/index.js";

/** A year: longer times are no recipe's. */
const MAX_MINUTES = 525_600;
const round = (v: number): number => Math.round(v * 100) / 100;

/**
 * Minutes of an ISO 8601 duration: PT90M, P0DT1H30M, PT1.5H, P2D. Weeks, months and years are refused unless they are 0:
 * a month has no length in minutes, and a standard week is written by nobody who cooks; such a text is told as not understood.
 */
export function isoMinutes(text: string): number | undefined {
  const s = text.trim().toUpperCase();
  if (s[0] !== "P" || s.length > 60) return undefined;
  let minutes = 0;
  let time = false;
  let parts = 0;
  let p = 1;
  while (p < s.length) {
    if (s[p] === "T") {
      if (time) return undefined;
      time = true;
      p++;
      continue;
    }
    const from = p;
    while (isDigit(s[p])) p++;
    if (p > from && (s[p] === "." || s[p] === ",")) {
      p++;
      while (isDigit(s[p])) p++;
    }
    if (p === from || p - from > 12) return undefined;
    const value = Number(s.slice(from, p).replace(",", "."));
    const unit = s[p++];
    const factor = time ? { H: 60, M: 1, S: 1 / 60 }[unit ?? ""] : unit === "D" ? 1440 : undefined;
    if (factor === undefined && !(value === 0 && !time && (unit === "Y" || unit === "M" || unit === "W")))
      return undefined;
    minutes += value * (factor ?? 0);
    parts++;
  }
  return parts > 0 && Number.isFinite(minutes) && minutes <= MAX_MINUTES ? round(minutes) : undefined;
}

export interface Duration {
  readonly low: number;
  readonly high: number;
  readonly start: number;
  readonly end: number;
}

const UNITS: ReadonlyMap<string, number> = new Map([
  ...["h", "hr", "hrs", "hour", "hours"].map((w) => [w, 60] as const),
  ...["m", "min", "mins", "minute", "minutes"].map((w) => [w, 1] as const),
  ...["s", "sec", "secs", "second", "seconds"].map((w) => [w, 1 / 60] as const),
  ...["day", "days"].map((w) => [w, 1440] as const),
  ...["week", "weeks"].map((w) => [w, 10_080] as const),
]);
/** "Overnight" is a night's sleep: common practice. */
const OVERNIGHT = 480;

interface Piece {
  readonly low: number;
  readonly high: number;
  readonly factor: number;
  readonly end: number;
}

/** A number, a range or neither, and a unit of time: "30 minutes", "1 to 1½ hours", "20-25 min". */
function piece(text: string, at: number): Piece | undefined {
  const first = readNumeral(text, at);
  if (first === undefined) return undefined;
  let low = first.spread?.[0] ?? first.value;
  let high = first.spread?.[1] ?? first.value;
  let p = first.end;
  const to = rangeMark(text, p);
  const second = to === undefined ? undefined : readNumeral(text, to);
  if (second !== undefined && second.value >= low) {
    high = second.value;
    p = second.end;
  }
  let q = skipSpace(text, p);
  if (isDash(text[q])) q++;
  for (const filler of ["more", "full", "whole", "further"]) q = skipWord(text, q, filler) ?? q;
  const w = readWord(text, q);
  const factor = w === undefined ? undefined : UNITS.get(w.text);
  if (w === undefined || factor === undefined || (isDigit(text[w.end]) && factor < 60)) return undefined;
  if (low > high) low = high;
  return {
    low: low * factor,
    high: high * factor,
    factor,
    end: text[w.end] === "." && isLetter(text[w.end - 1]) && w.text.length < 5 ? w.end + 1 : w.end,
  };
}
function rangeMark(text: string, at: number): number | undefined {
  const p = skipSpace(text, at);
  if (isDash(text[p])) return p + 1;
  return skipWord(text, p, "to", "or");
}

/** "1 hour 30 minutes", "1 hr, 15 min", "1h30". */
function compound(text: string, at: number): Piece | undefined {
  const first = piece(text, at);
  if (first === undefined) return undefined;
  let { low, high, end } = first;
  let factor = first.factor;
  for (let i = 0; i < 2; i++) {
    let p = skipSpace(text, end);
    if (text[p] === ",") p++;
    p = skipWord(text, p, "and", "plus") ?? p;
    let next = piece(text, p);
    if (next === undefined && factor === 60 && isDigit(text[end])) {
      const bare = readNumeral(text, end);
      if (bare !== undefined && bare.value < 60) next = { low: bare.value, high: bare.value, factor: 1, end: bare.end };
    }
    if (next === undefined || next.factor >= factor) break;
    low += next.low;
    high += next.high;
    factor = next.factor;
    end = next.end;
  }
  return { low, high, factor, end };
}

/** Every duration a text names, in order. Linear: each number is tried once. */
export function durationsIn(text: string): Duration[] {
  const out: Duration[] = [];
  let p = 0;
  while (p < text.length) {
    const ch = text[p];
    const fresh =
      p === 0 || !(isLetter(text[p - 1]) || isDigit(text[p - 1]) || text[p - 1] === "." || text[p - 1] === "/");
    if (!fresh || ch === " ") {
      p++;
      continue;
    }
    const one = compound(text, p);
    if (one !== undefined) {
      let { high, end } = one;
      const to = rangeMark(text, end);
      const other = to === undefined ? undefined : compound(text, to);
      if (other !== undefined && other.high > high) ({ high, end } = other);
      if (high > 0 && high <= MAX_MINUTES) out.push({ low: round(one.low), high: round(high), start: p, end });
      p = end;
      continue;
    }
    const w = readWord(text, p);
    if (w !== undefined && w.start === p) {
      if (w.text === "overnight") out.push({ low: OVERNIGHT, high: OVERNIGHT, start: p, end: w.end });
      p = w.end;
      continue;
    }
    p++;
  }
  return out;
}

/** Minutes of a stated time, in ISO 8601 or in words; the upper end of a range. Undefined when it is neither; 0 is "not said". */
export function minutesOf(text: string): number | undefined {
  const iso = isoMinutes(text);
  if (iso !== undefined) return iso;
  if (text.length > 200) return undefined;
  const found = durationsIn(text);
  return found.length === 0 ? undefined : found.reduce((s, d) => s + d.high, 0);
}
