import type { NameIndex } from "./claims.js";
import { keyOf, type Token } from "./fold.js";
import { statesIn } from "./lookup.js";
import type { Said } from "./settle.js";

/** What a word of a phrase does when it is not part of the name. */
export type Class =
  "silent" | "number" | "state" | "plain" | "before" | "note" | "join" | "change" | "not food" | "unknown";
export interface Mark {
  readonly token: Token;
  readonly class: Class;
  /** Plain words that are done by the cook: what follows them is preparation. */
  readonly done: boolean;
  readonly said?: Said;
}

const NUMBER = /^\p{N}+$/u;
// Words in -ed and -ly that are things or say what a food is, not what is done to it.
const NOT_DOINGS: ReadonlySet<string> = new Set([
  "reduced",
  "seed",
  "weed",
  "seaweed",
  "linseed",
  "aniseed",
  "flaxseed",
  "rapeseed",
  "hempseed",
  "bread",
  "reed",
  "jelly",
  "belly",
  "holly",
  "lily",
  "barley",
  "parsely",
]);
const isDoing = (plain: string): boolean =>
  plain.length > 4 && (plain.endsWith("ed") || plain.endsWith("ly")) && !NOT_DOINGS.has(plain);

/** Classes every word of a phrase by the lists of data/vocabulary/names.yaml. Longest phrases first. */
export function marksOf(index: NameIndex, tokens: readonly Token[]): readonly Mark[] {
  const { words } = index;
  const marks: (Mark | undefined)[] = tokens.map(() => undefined);
  const set = (i: number, kind: Class, done = false, said?: Said): void => {
    const token = tokens[i];
    if (token !== undefined && marks[i] === undefined)
      marks[i] = { token, class: kind, done, ...(said === undefined ? {} : { said }) };
  };
  for (let i = 0; i < tokens.length; i++) {
    for (const size of [4, 3, 2]) {
      const row = tokens.slice(i, i + size);
      if (row.length < size || row.slice(1).some((t) => t.breaks)) continue;
      if (!words.describing.has(keyOf(row)) && !words.changingExceptions.has(keyOf(row))) continue;
      row.forEach((_, k) => set(i + k, "plain"));
      break;
    }
  }
  for (const s of statesIn(index, tokens)) {
    // "tin of tomatoes" tells the state, "muffin tin" is a tin
    const kind = words.before.has(s.said.state.word) ? "before" : "state";
    for (let i = s.from; i < s.to; i++) set(i, kind, false, i === s.from ? s.said : undefined);
  }
  tokens.forEach((t, i) => {
    if (t.key === "" || words.linking.has(t.key)) set(i, "silent");
    else if (NUMBER.test(t.key)) set(i, "number");
    else if (words.joining.has(t.key)) set(i, "join");
    else if (words.changing.has(t.key)) set(i, "change");
    else if (words.describing.has(t.key) || words.counting.has(t.key) || words.cutting.has(t.key)) set(i, "plain");
    else if (words.before.has(t.key)) set(i, "before");
    else if (words.notFood.has(t.key)) set(i, "not food");
    else if (words.notes.has(t.key)) set(i, "note");
    else if (words.preparing.has(t.key)) set(i, "plain", true);
    else if (isDoing(t.plain)) set(i, "plain", t.plain.endsWith("ed"));
    else if (startsWithDigit(t.key) || endsInNumber(t.key)) set(i, "number");
    else set(i, "unknown");
  });
  return marks as readonly Mark[];
}

const isDigitAt = (key: string, at: number): boolean => key.charCodeAt(at) >= 48 && key.charCodeAt(at) <= 57;
const startsWithDigit = (key: string): boolean => isDigitAt(key, 0);
/** "大さじ2": the measure and its number, written together. */
const endsInNumber = (key: string): boolean => key.charCodeAt(0) > 0x2e7f && isDigitAt(key, key.length - 1);
