// Small forward-only scanners. Everything in this room reads text with these and never with a backtracking pattern,
// so that reading a line is linear in its length whatever the line is.

const LETTER = /^\p{L}$/u;

export function isDigit(ch: string | undefined): boolean {
  return ch !== undefined && ch >= "0" && ch <= "9";
}
export function isLetter(ch: string | undefined): boolean {
  if (ch === undefined || ch === "") return false;
  if ((ch >= "a" && ch <= "z") || (ch >= "A" && ch <= "Z")) return true;
  return ch > "\u007f" && LETTER.test(ch);
}
export function isSpace(ch: string | undefined): boolean {
  return ch === " " || ch === "\t" || ch === "\n" || ch === "\r";
}
export function skipSpace(text: string, at: number): number {
  let p = at;
  while (isSpace(text[p])) p++;
  return p;
}

export interface Word {
  /** as written */
  readonly raw: string;
  /** lower case */
  readonly text: string;
  readonly start: number;
  readonly end: number;
}

/** The run of letters at `at` (after spaces); undefined when there is none. Apostrophes and hyphens end it. */
export function readWord(text: string, at: number): Word | undefined {
  const start = skipSpace(text, at);
  let p = start;
  while (isLetter(text[p])) p++;
  if (p === start) return undefined;
  const raw = text.slice(start, p);
  return { raw, text: raw.toLowerCase(), start, end: p };
}

/** The position after `word` when that very word stands at `at` (after spaces), else undefined. */
export function skipWord(text: string, at: number, ...words: readonly string[]): number | undefined {
  const w = readWord(text, at);
  return w !== undefined && words.includes(w.text) ? w.end : undefined;
}

const DASHES = "-\u2010\u2011\u2012\u2013\u2014\u2212";
export function isDash(ch: string | undefined): boolean {
  return ch !== undefined && ch !== "" && DASHES.includes(ch);
}

/** Super- and subscript digits, full-width digits and odd spaces in plain form; control and invisible characters dropped. One pass. */
export function plainText(text: string): string {
  let out = "";
  let kept = 0;
  for (let i = 0; i < text.length; i++) {
    const code = text.charCodeAt(i);
    if (code >= 0x20 && code < 0x7f) continue;
    const plain = plainChar(code);
    if (plain === undefined) continue;
    out += text.slice(kept, i) + plain;
    kept = i + 1;
  }
  return kept === 0 ? text : out + text.slice(kept);
}

const SUPER = new Map([
  [0x2070, "0"],
  [0xb9, "1"],
  [0xb2, "2"],
  [0xb3, "3"],
]);

function plainChar(code: number): string | undefined {
  if (code < 0x20) return " ";
  if (code >= 0x7f && code < 0xa0) return "";
  if (code === 0xa0 || (code >= 0x2000 && code <= 0x200a) || code === 0x2028 || code === 0x2029) return " ";
  if (code === 0x202f || code === 0x205f || code === 0x3000) return " ";
  if (code === 0xad || (code >= 0x200b && code <= 0x200f) || (code >= 0x202a && code <= 0x202e)) return "";
  if (code === 0x2060 || code === 0xfeff || code === 0xfe0e || code === 0xfe0f) return "";
  if (code === 0x2018 || code === 0x2019 || code === 0x02bc) return "'";
  if (code >= 0xff10 && code <= 0xff19) return String.fromCharCode(code - 0xff10 + 0x30);
  if (code >= 0x2074 && code <= 0x2079) return String.fromCharCode(code - 0x2070 + 0x30);
  if (code >= 0x2080 && code <= 0x2089) return String.fromCharCode(code - 0x2080 + 0x30);
  return SUPER.get(code);
}
