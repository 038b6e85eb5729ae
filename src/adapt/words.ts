// Text as words with their places. Knows no food. Forward scans only, so that hostile text costs no more than its length.
export interface Token {
  /** Lower case, one of a thing: "Onions" is "onion". */
  readonly stem: string;
  readonly text: string;
  readonly start: number;
  readonly end: number;
}
/** Longer texts are left as they are. */
export const MAX_STEP = 5000;

const ODD: Readonly<Record<string, string>> = {
  leaves: "leaf",
  loaves: "loaf",
  halves: "half",
  radishes: "radish",
  anchovies: "anchovy",
  geese: "goose",
  chillis: "chilli",
  chilis: "chili",
};
/** Spellings of one word. */
const SPELLED: Readonly<Record<string, string>> = {
  yoghurt: "yogurt",
  chili: "chilli",
  chile: "chilli",
  chilly: "chilli",
};
/** One of a thing, spelled one way. */
export function stem(word: string): string {
  const one = singular(word);
  return Object.hasOwn(SPELLED, one) ? (SPELLED[one] as string) : one;
}
/** One of a thing. Words that only look like more than one stay. */
export function singular(word: string): string {
  const odd = Object.hasOwn(ODD, word) ? ODD[word] : undefined;
  if (odd !== undefined) return odd;
  if (word.length < 4 || !word.endsWith("s") || /(?:ss|us|is)$/.test(word)) return word;
  if (word.endsWith("ies") && word.length > 4) return `${word.slice(0, -3)}y`;
  if (/(?:oes|ches|shes|xes|sses)$/.test(word)) return word.slice(0, -2);
  return word.slice(0, -1);
}
const fold = (s: string): string => s.normalize("NFD").replace(/\p{M}/gu, "").toLowerCase();

export function tokens(text: string): readonly Token[] {
  const out: Token[] = [];
  for (const m of text.matchAll(/[\p{L}\p{M}]+|[\d½¼¾⅓⅔⅛]+/gu)) {
    const folded = fold(m[0]);
    out.push({ stem: stem(folded), text: folded, start: m.index, end: m.index + m[0].length });
  }
  return out;
}
export const stems = (text: string): readonly string[] => tokens(text).map((t) => t.stem);

/** Where `part` stands in `all`, word for word; -1 when it does not. */
export function placeOf(all: readonly string[], part: readonly string[], from = 0): number {
  if (part.length === 0) return -1;
  for (let i = from; i + part.length <= all.length; i++) if (part.every((p, k) => all[i + k] === p)) return i;
  return -1;
}

/** True for places inside double quotes: somebody's words, never edited. An unclosed quote runs to the end. */
export function quoted(text: string): (at: number) => boolean {
  const spans: [number, number][] = [];
  let open = -1;
  let close = "";
  for (let i = 0; i < text.length; i++) {
    const ch = text[i] ?? "";
    if (open < 0) {
      const pair = { '"': '"', "“": "”", "«": "»", "„": "“" }[ch];
      if (pair !== undefined) {
        open = i;
        close = pair;
      }
    } else if (ch === close || (close === "”" && ch === '"')) {
      spans.push([open, i]);
      open = -1;
    }
  }
  if (open >= 0) spans.push([open, text.length]);
  return (at) => spans.some(([a, b]) => at >= a && at <= b);
}

/** The text cut after each sentence; joined again they are the text. */
export function sentences(text: string): readonly string[] {
  const out: string[] = [];
  let from = 0;
  for (let i = 0; i < text.length; i++) {
    const end = ".!?".includes(text[i] ?? "") && /\s/.test(text[i + 1] ?? "");
    if (!end && text[i] !== "\n") continue;
    let next = i + 1;
    while (next < text.length && /\s/.test(text[next] ?? "")) next++;
    out.push(text.slice(from, next));
    from = next;
    i = next - 1;
  }
  if (from < text.length) out.push(text.slice(from));
  return out;
}
export const upper = (s: string): string => s.charAt(0).toUpperCase() + s.slice(1);
export const lower = (s: string): string => s.charAt(0).toLowerCase() + s.slice(1);
