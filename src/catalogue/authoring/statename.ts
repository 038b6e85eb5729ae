import type { Terms } from "./terms.js";

/** Words shown before a food's name for a state; [US, GB]. States that need no word show none. */
const SHOWN: Readonly<Record<string, readonly [string, string]>> = {
  fresh: ["fresh", "fresh"],
  pantry: ["", ""],
  "salt-cured": ["salted", "salted"],
  canned: ["canned", "tinned"],
  powder: ["powdered", "powdered"],
  puree: ["puréed", "puréed"],
  paste: ["", ""],
  "in-oil": ["", ""],
  sweetened: ["sweetened", "sweetened"],
};

/** Splits "dried-smoked-ground" into vocabulary words in order; undefined when it is not made of them. */
export function stateWords(state: string, terms: Terms): string[] | undefined {
  const order = [...Object.keys(terms.preservation), ...Object.keys(terms.heat), ...Object.keys(terms.form)];
  const words: string[] = [];
  let rest = state;
  while (rest !== "") {
    const word = order.filter((w) => rest === w || rest.startsWith(`${w}-`)).sort((a, b) => b.length - a.length)[0];
    if (word === undefined) return undefined;
    words.push(word);
    rest = rest.slice(word.length + 1);
  }
  return words;
}

/** True when the words come preservation, then heat, then form. */
export function inOrder(words: readonly string[], terms: Terms): boolean {
  const rank = (w: string): number => (w in terms.preservation ? 0 : w in terms.heat ? 1 : 2);
  return (
    words.every((w, i) => i === 0 || rank(w) >= rank(words[i - 1] as string)) &&
    words.length > 0 &&
    rank(words[0] as string) === 0
  );
}

/** "dried", "canned"/"tinned" ... as shown before a name. */
export function stateAdjective(words: readonly string[], gb: boolean): string {
  return words
    .map((w) => SHOWN[w]?.[gb ? 1 : 0] ?? w)
    .filter((w) => w !== "")
    .join(" ");
}
