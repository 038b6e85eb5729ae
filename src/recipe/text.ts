import { isDash, isDigit, isLetter, isSpace } from "../quantity/index.js";

/** "" drops it, " " makes it a space, undefined keeps it. Control and direction characters say nothing and can deceive. */
function plain(code: number): string | undefined {
  if (code === 0x20) return undefined;
  if (code < 0x20 || code === 0x7f || (code >= 0x80 && code < 0xa0)) return " ";
  if (code < 0xa0) return undefined;
  if (code === 0xa0 || (code >= 0x2000 && code <= 0x200a) || code === 0x202f || code === 0x205f || code === 0x3000)
    return " ";
  if (code === 0x2028 || code === 0x2029) return " ";
  if (code === 0xad || code === 0x61c || code === 0x200b || code === 0x200e || code === 0x200f) return "";
  if ((code >= 0x202a && code <= 0x202e) || (code >= 0x2060 && code <= 0x2069) || code === 0xfeff) return "";
  return undefined;
}

/** One line: control, direction and invisible characters taken out, runs of spaces made one, ends trimmed. One pass. */
export function clean(text: string): string {
  const out: string[] = [];
  let from = 0;
  let space = true; // leading spaces are dropped
  for (let i = 0; i < text.length; i++) {
    const code = text.charCodeAt(i);
    const to = code === 0x20 ? " " : code > 0x20 && code < 0x7f ? undefined : plain(code);
    if (to === undefined) {
      space = false;
      continue;
    }
    out.push(text.slice(from, i));
    from = i + 1;
    if (to === " " && !space) {
      out.push(" ");
      space = true;
    }
  }
  out.push(text.slice(from));
  const joined = out.join("");
  return joined.endsWith(" ") ? joined.slice(0, -1) : joined;
}

const BREAKS = new Set([0x0a, 0x0b, 0x0c, 0x0d, 0x85, 0x2028, 0x2029]);

/** Lines of a text, whatever its line ends. */
export function linesOf(text: string): string[] {
  const out: string[] = [];
  let from = 0;
  for (let i = 0; i < text.length; i++) {
    const code = text.charCodeAt(i);
    if (!BREAKS.has(code)) continue;
    out.push(text.slice(from, i));
    if (code === 0x0d && text.charCodeAt(i + 1) === 0x0a) i++;
    from = i + 1;
  }
  out.push(text.slice(from));
  return out;
}

export function hasWord(text: string): boolean {
  for (const ch of text) if (isDigit(ch) || isLetter(ch)) return true;
  return false;
}

const BULLETS = "-*+•·▪▫‣⁃∙●○◦■□☐☑☒▢✓✔◆►▸–—";

export interface Lead {
  /** Where the text itself begins. */
  readonly at: number;
  readonly bullet: boolean;
  readonly number: boolean;
}

/** A bullet, a check box or a number at the head of a line. "1." and "2)" number a line, "1.5" does not; "Step 3:" does. */
export function leadOf(line: string): Lead {
  let p = spaces(line, 0);
  let bullet = false;
  if (BULLETS.includes(line[p] ?? "\0") && (isSpace(line[p + 1]) || !isAscii(line[p]))) {
    bullet = true;
    p = spaces(line, p + 1);
  }
  if (line[p] === "[" && (line[p + 2] === "]" || line[p + 1] === "]")) {
    bullet = true;
    p = spaces(line, p + (line[p + 1] === "]" ? 2 : 3));
  }
  let q = p;
  const step = line.slice(p, p + 5).toLowerCase() === "step ";
  if (step) q = spaces(line, p + 5);
  const from = q;
  while (isDigit(line[q]) && q - from < 3) q++;
  if (q > from && !isDigit(line[q])) {
    const mark = line[q];
    if ((mark === "." || mark === ")" || (step && mark === ":")) && (isSpace(line[q + 1]) || q + 1 === line.length))
      return { at: spaces(line, q + 1), bullet, number: true };
    if (step && q === line.length) return { at: q, bullet, number: true };
  }
  return { at: p, bullet, number: false };
}
function isAscii(ch: string | undefined): boolean {
  return ch !== undefined && ch <= "\u007f";
}
function spaces(s: string, at: number): number {
  let p = at;
  while (isSpace(s[p])) p++;
  return p;
}

/** Sentences: cut after . ! ? ; before a space, not after a number's point or a short abbreviation. */
export function sentencesOf(text: string): string[] {
  const out: string[] = [];
  let from = 0;
  for (let i = 0; i < text.length; i++) {
    const ch = text[i];
    if (ch !== "." && ch !== "!" && ch !== "?" && ch !== ";") continue;
    if (i + 1 < text.length && !isSpace(text[i + 1])) continue;
    if (ch === "." && abbreviates(text, i)) continue;
    out.push(text.slice(from, i + 1).trim());
    from = i + 1;
  }
  out.push(text.slice(from).trim());
  return out.filter((s) => s !== "");
}
const ABBREVIATED = new Set([
  "min",
  "mins",
  "hr",
  "hrs",
  "approx",
  "tsp",
  "tbsp",
  "oz",
  "lb",
  "deg",
  "no",
  "sec",
  "secs",
  "fl",
  "c",
]);
function abbreviates(text: string, dot: number): boolean {
  let p = dot;
  while (p > 0 && isLetter(text[p - 1])) p--;
  if (!ABBREVIATED.has(text.slice(p, dot).toLowerCase())) return false;
  // "bake for 20 min. Cool": a capital after it begins a sentence all the same
  const next = text[spaces(text, dot + 1)];
  return next !== undefined && !(next !== next.toLowerCase());
}

export interface Token {
  readonly text: string;
  readonly start: number;
  readonly end: number;
}
/** Words and numbers of a text, lower case; hyphens and apostrophes part them. */
export function tokensOf(text: string): Token[] {
  const out: Token[] = [];
  let p = 0;
  while (p < text.length) {
    if (!isLetter(text[p]) && !isDigit(text[p])) {
      p++;
      continue;
    }
    const start = p;
    while (isLetter(text[p]) || isDigit(text[p]) || isMark(text[p])) p++;
    out.push({ text: text.slice(start, p).toLowerCase(), start, end: p });
  }
  return out;
}
function isMark(ch: string | undefined): boolean {
  return ch !== undefined && ((ch >= "\u0300" && ch <= "\u036f") || ch === "\u200c" || ch === "\u200d");
}

/** "stir-fry" and "stir fry": is the token joined to the next by a dash or a space only? */
export function joined(text: string, a: Token, b: Token): boolean {
  return b.start === a.end + 1 && (isDash(text[a.end]) || text[a.end] === " ");
}
