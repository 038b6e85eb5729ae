import { foldText, isElided, isItsKey, isWordChar, plainWord, wordKey, APOSTROPHES } from "./fold.js";

/** What one character beyond ASCII is in a folded text, where that does not hang on what stands beside it. */
interface Letter {
  readonly is: "letter" | "mark" | "gap" | "nothing" | "unsure";
  /** The letter folded. */
  readonly text: string;
  /** Marks are taken off Latin letters and kept on others. */
  readonly latin: boolean;
}
const only = (is: Letter["is"]): Letter => ({ is, text: "", latin: false });
const [MARKING, GAP, NOTHING, UNSURE] = [only("mark"), only("gap"), only("nothing"), only("unsure")];
// Kana, Han and Hangul are themselves, as below.
const LETTERS_AND_SPACES = /^[a-z0-9 \u3041-\u3096\u30a1-\u30fa\u4e00-\u9fff\uac00-\ud7a3]+$/;
const MARK = /\p{M}/u;
const LATIN = /\p{Script=Latin}/u;
const within = (code: number, from: number, to: number): boolean => code >= from && code <= to;

function letterOf(code: number): Letter {
  const ch = String.fromCharCode(code);
  // Kana, Han and Hangul, of which there are thousands: each is itself.
  if (within(code, 0x3041, 0x3096) || within(code, 0x30a1, 0x30fa) || within(code, 0x4e00, 0x9fff))
    return { is: "letter", text: ch, latin: false };
  if (within(code, 0xac00, 0xd7a3)) return { is: "letter", text: ch, latin: false };
  // Halves of a pair and the pieces Hangul is put together from say nothing alone; a sigma is another at the end of a word.
  if (within(code, 0xd800, 0xdfff) || within(code, 0x3c2, 0x3c3)) return UNSURE;
  if (within(code, 0x1100, 0x11ff) || within(code, 0xa960, 0xa97f) || within(code, 0xd7b0, 0xd7ff)) return UNSURE;
  if (ch.normalize("NFKC") !== ch) return UNSURE;
  if (MARK.test(ch)) return MARKING;
  if (!isWordChar(ch)) return APOSTROPHES.includes(ch) ? NOTHING : GAP;
  const text = plainWord(ch);
  return text === ch || isPlainText(text) ? { is: "letter", text, latin: LATIN.test(ch) } : UNSURE;
}
function isPlainText(text: string): boolean {
  for (let i = 0; i < text.length; i++) if (text.charCodeAt(i) > 127) return false;
  return true;
}

/**
 * Folds many texts as {@link foldText} does. An index folds every name there is: words come up again and again, and what a letter is
 * need be looked up once.
 */
export class Folder {
  private readonly words = new Map<string, string>();
  private readonly letters = new Map<number, Letter>();

  fold(text: string): string {
    const lower = text.toLowerCase();
    // Most names. The engine's own matching is fast the first time, which a loop of ours is not.
    if (LETTERS_AND_SPACES.test(lower)) return this.plain(lower);
    let out = "";
    /** What has been read of a word before `from`, where it is not simply a piece of the text. */
    let head = "";
    let from = 0;
    let inside = false;
    /** Whether what was read last may carry a mark. */
    let bears = false;
    let stable = false;
    for (let i = 0; i <= lower.length; i++) {
      const code = i < lower.length ? lower.charCodeAt(i) : 32;
      if ((code >= 97 && code <= 122) || (code >= 48 && code <= 57)) {
        if (!inside) from = i;
        inside = true;
        bears = false;
        continue;
      }
      let apostrophe = code === 39 || code === 96;
      if (code > 127) {
        const letter = this.letter(code);
        if (letter.is === "unsure") return foldText(text);
        if (letter.is === "letter") {
          bears = !letter.latin;
          if (inside) head += lower.slice(from, i);
          head += letter.text;
          from = i + 1;
          inside = true;
          continue;
        }
        if (letter.is === "mark") {
          stable ||= lower.normalize("NFKC") === text;
          if (!inside || !bears || !stable) return foldText(text);
          continue;
        }
        apostrophe = letter.is === "nothing";
      }
      // An apostrophe is nothing inside a word.
      if (inside && apostrophe) {
        const word = head + lower.slice(from, i);
        if (!isElided(word)) {
          head = word;
          from = i + 1;
          continue;
        }
        if (head !== "") return foldText(text);
      }
      if (inside) {
        const last = lower.slice(from, i);
        const key = this.word(head === "" ? last : head + last);
        if (key !== "") out = out === "" ? key : `${out} ${key}`;
        head = "";
        inside = false;
      }
      if (code === 38) out = out === "" ? "and" : `${out} and`;
    }
    return out;
  }
  /** Letters and spaces; the text itself where nothing changes, since that is nothing to keep. */
  private plain(lower: string): string {
    let out = "";
    /** Up to here the text is its own key. */
    let same = true;
    for (let from = 0; from <= lower.length;) {
      let end = lower.indexOf(" ", from);
      if (end < 0) end = lower.length;
      const word = from === 0 && end === lower.length ? lower : lower.slice(from, end);
      const key = this.word(word);
      if (same && (word === "" || key !== word)) {
        same = false;
        out = lower.slice(0, Math.max(0, from - 1));
      }
      if (!same && key !== "") out = out === "" ? key : `${out} ${key}`;
      from = end + 1;
    }
    return same ? lower : out;
  }
  private word(plain: string): string {
    if (isItsKey(plain)) return plain;
    let key = this.words.get(plain);
    if (key === undefined) this.words.set(plain, (key = wordKey(plain)));
    return key;
  }
  private letter(code: number): Letter {
    let letter = this.letters.get(code);
    if (letter === undefined) this.letters.set(code, (letter = letterOf(code)));
    return letter;
  }
}
