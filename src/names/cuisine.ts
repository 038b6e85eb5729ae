import type { Store } from "../catalogue/index.js";
import { foldText } from "./fold.js";

/** What a text says of the kitchen a dish belongs to. */
export interface Kitchen {
  /** Traditions it names, in the order of the vocabulary; none when nothing in it is known. */
  readonly traditions: readonly string[];
  /** Words nothing knows, as folded. */
  readonly unknown: readonly string[];
}

const LONGEST = 100;
/** They tell traditions apart only beside another word. */
const BESIDE: readonly string[] = ["and", "north", "south", "central"];
/** "home-style Italian cooking" is Italian. */
const SILENT: readonly string[] = [
  "cuisine",
  "cooking",
  "kitchen",
  "food",
  "dish",
  "recipe",
  "style",
  "and",
  "or",
  "the",
  "of",
];

const built = new WeakMap<Store, ReadonlyMap<string, readonly string[]>>();

/** Folded words and phrases with the traditions they mean. */
function phrasesOf(store: Store): ReadonlyMap<string, readonly string[]> {
  const kept = built.get(store);
  if (kept !== undefined) return kept;
  const map = new Map<string, string[]>();
  const add = (phrase: string, tradition: string): void => {
    const key = foldText(phrase);
    const to = map.get(key);
    if (to === undefined) map.set(key, [tradition]);
    else if (!to.includes(tradition)) to.push(tradition);
  };
  const table = (store.tables["cuisines"] ?? {}) as Readonly<Record<string, readonly string[]>>;
  for (const tradition of store.terms["tradition"] ?? []) {
    for (const phrase of Object.hasOwn(table, tradition) ? (table[tradition] ?? []) : []) add(phrase, tradition);
    for (const word of foldText(tradition).split(" ")) if (!BESIDE.includes(word)) add(word, tradition);
  }
  // A whole name means that tradition alone: "Italian", "South Asian south"
  for (const tradition of store.terms["tradition"] ?? []) map.set(foldText(tradition), [tradition]);
  built.set(store, map);
  return map;
}

/**
 * The traditions a free text means by the kitchen of a dish: "Italian", "Sri Lankan", "Tex-Mex", "South Asian south".
 * Longest phrases first; case, marks and hyphens do not matter. At most 100 characters are read.
 */
export function readCuisine(store: Store, text: string): Kitchen {
  const phrases = phrasesOf(store);
  const words = foldText(text.slice(0, LONGEST))
    .split(" ")
    .filter((w) => w !== "");
  const whole = phrases.get(words.join(" "));
  if (whole !== undefined) return { traditions: whole, unknown: [] };
  const found = new Set<string>();
  const unknown: string[] = [];
  for (let i = 0; i < words.length;) {
    let taken = 0;
    for (let n = Math.min(3, words.length - i); n > 0 && taken === 0; n--) {
      const meant = phrases.get(words.slice(i, i + n).join(" "));
      if (meant === undefined) continue;
      for (const tradition of meant) found.add(tradition);
      taken = n;
    }
    if (taken === 0 && !SILENT.includes(words[i] as string)) unknown.push(words[i] as string);
    i += Math.max(1, taken);
  }
  return { traditions: (store.terms["tradition"] ?? []).filter((t) => found.has(t)), unknown };
}
