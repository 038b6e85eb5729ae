import { isOdd, stem } from "./spelling.js";

/** One word of a text. */
export interface Token {
  /** As written, after NFKC. */
  readonly text: string;
  /** Lower case, Latin marks stripped, not yet brought to the singular. */
  readonly plain: string;
  /** The folded word; "" for words that say nothing in a name (of, the, a). */
  readonly key: string;
  /** Offsets in the NFKC text. */
  readonly start: number;
  readonly end: number;
  /** What stands before it ends a thought: comma, semicolon, colon, dash between spaces, bracket. */
  readonly breaks: boolean;
  /** How deep in brackets. */
  readonly depth: number;
  /** Joined to the word before by a hyphen without spaces. */
  readonly joined: boolean;
}

const SILENT: ReadonlySet<string> = new Set(["of", "the", "a", "an"]);
export function wordKey(plain: string): string {
  if (SILENT.has(plain)) return "";
  const key = stem(plain);
  return SILENT.has(key) ? "" : key;
}
/** Whether a word is its own key, for most of those that are. */
export function isItsKey(plain: string): boolean {
  const last = plain.charCodeAt(plain.length - 1);
  return last !== 115 /* s */ && last !== 101 /* e */ && !isOdd(plain) && !(plain.length < 4 && SILENT.has(plain));
}

/** Longest text any name function reads; longer ones find nothing. */
export const LONGEST = 500;

const LETTERS: Readonly<Record<string, string>> = {
  œ: "oe",
  æ: "ae",
  ø: "o",
  ł: "l",
  ß: "ss",
  ð: "d",
  đ: "d",
  þ: "th",
  ı: "i",
};
export const APOSTROPHES = "'’‘ʼ`´′ʹ";
const WORD = /[\p{L}\p{M}\p{N}]/u;
const MARK = /\p{M}/u;
const LATIN = /\p{Script=Latin}/u;

function isAscii(s: string): boolean {
  for (let i = 0; i < s.length; i++) if (s.charCodeAt(i) > 127) return false;
  return true;
}
/** a-z, A-Z, 0-9. */
const isPlain = (code: number): boolean =>
  (code >= 97 && code <= 122) || (code >= 65 && code <= 90) || (code >= 48 && code <= 57);
export const isWordChar = (ch: string): boolean => {
  const code = ch.charCodeAt(0);
  return code < 128 ? isPlain(code) : WORD.test(ch);
};

/** Lower case; marks stripped from Latin letters only (が is not か, क़ is not क); œ æ ø ł ß ð þ ı spelled out. */
export function plainWord(text: string): string {
  const lower = text.toLowerCase();
  if (isAscii(lower)) return lower;
  let out = "";
  let latin = false;
  for (const ch of lower.normalize("NFKC").toLowerCase().normalize("NFD")) {
    const code = ch.charCodeAt(0);
    if (code >= 0x300 && MARK.test(ch)) {
      if (!latin) out += ch;
      continue;
    }
    latin = code < 128 ? code >= 97 && code <= 122 : LATIN.test(ch);
    out += LETTERS[ch] ?? ch;
  }
  return out.normalize("NFC");
}

/** Same text whatever the case and the spacing: the test for "exact". */
export function rawText(text: string): string {
  const lower = isAscii(text) ? text.toLowerCase() : text.normalize("NFKC").toLowerCase();
  if (!hasOddSpace(lower)) return lower;
  let out = "";
  let gap = false;
  for (const ch of lower) {
    if (ch.trim() === "") {
      gap = out !== "";
      continue;
    }
    if (gap) out += " ";
    gap = false;
    out += ch;
  }
  return out;
}

function isLettersAndSpaces(s: string): boolean {
  for (let i = 0; i < s.length; i++) {
    const code = s.charCodeAt(i);
    if ((code < 97 || code > 122) && code !== 32) return false;
  }
  return true;
}
/** Spaces at an end, doubled, or other than the plain one. */
function hasOddSpace(s: string): boolean {
  let before = 32;
  for (let i = 0; i < s.length; i++) {
    const code = s.charCodeAt(i);
    if (code < 32 || (code === 32 && before === 32) || (code > 127 && (s[i] as string).trim() === "")) return true;
    before = code;
  }
  return before === 32 && s !== "";
}

const isDigit = (ch: string | undefined): boolean => ch !== undefined && ch >= "0" && ch <= "9";

/** "d'ail", "l'huile": an article, and a word of its own. */
export const isElided = (word: string): boolean => word === "d" || word === "l" || word === "D" || word === "L";

/** Cuts a text into words. Linear in its length. */
export function tokensOf(text: string): Token[] {
  const nfkc = text.normalize("NFKC");
  const tokens: Token[] = [];
  let depth = 0;
  let breaks = false;
  let gap = "";
  let start = -1;
  let word = "";
  let at = 0;
  const close = (end: number): void => {
    if (start >= 0 && word !== "") {
      const plain = plainWord(word);
      const key = wordKey(plain);
      tokens.push({
        text: word,
        plain,
        key,
        start,
        end,
        breaks: breaks && tokens.length > 0,
        depth,
        joined: gap === "-",
      });
      breaks = false;
      gap = "";
    }
    start = -1;
    word = "";
  };
  for (const ch of nfkc) {
    const here = at;
    at += ch.length;
    if (isWordChar(ch)) {
      if (start < 0) start = here;
      word += ch;
    } else if (APOSTROPHES.includes(ch) && start >= 0 && !isElided(word)) {
      continue;
    } else {
      close(here);
      gap = ch.trim() === "" ? (gap === "" ? " " : `${gap} `) : gap + ch;
      if (ch === "(" || ch === "[") depth++;
      else if (ch === ")" || ch === "]") depth = Math.max(0, depth - 1);
      const dash = (ch === "–" || ch === "—" || ch === "-") && nfkc[here - 1] === " " && nfkc[at] === " ";
      const comma = ch === "," && !(isDigit(nfkc[here - 1]) && isDigit(nfkc[at]));
      if (comma || dash || ";:()[]\n•|".includes(ch)) breaks = true;
      if (ch === "&") {
        tokens.push({
          text: "&",
          plain: "and",
          key: "and",
          start: here,
          end: at,
          breaks: breaks && tokens.length > 0,
          depth,
          joined: false,
        });
        breaks = false;
        gap = "";
      }
    }
  }
  close(nfkc.length);
  return tokens;
}

export const keyOf = (tokens: readonly Token[]): string =>
  tokens
    .map((t) => t.key)
    .filter((k) => k !== "")
    .join(" ");

/** A text as names are compared: folded words in order, one space between. Folding twice changes nothing. */
export const foldText = (text: string): string => (isAscii(text) ? foldAscii(text) : keyOf(tokensOf(text)));

/** The same for plain letters, without making tokens: most names are, and an index folds all of them. */
function foldAscii(text: string): string {
  const lower = text.toLowerCase();
  if (isLettersAndSpaces(lower)) {
    if (!lower.includes(" ")) return wordKey(lower);
    return lower
      .split(" ")
      .map((w) => (w === "" ? "" : wordKey(w)))
      .filter((k) => k !== "")
      .join(" ");
  }
  let out = "";
  let word = "";
  const close = (): void => {
    const key = word === "" ? "" : wordKey(word);
    if (key !== "") out += out === "" ? key : ` ${key}`;
    word = "";
  };
  for (let i = 0; i <= lower.length; i++) {
    const code = i < lower.length ? lower.charCodeAt(i) : 32;
    if (isPlain(code)) word += lower[i] as string;
    else if (word === "" || (code !== 39 && code !== 96) || isElided(word)) {
      close();
      if (code === 38) out += out === "" ? "and" : " and";
    }
  }
  return out;
}

/** The same whatever the order of the words. */
export const sortedKey = (key: string): string => (key.includes(" ") ? key.split(" ").sort().join(" ") : key);
