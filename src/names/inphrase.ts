import { withoutStyle } from "./around.js";
import type { NameIndex } from "./claims.js";
import { LONGEST, tokensOf, type Token } from "./fold.js";
import { SURE, type Hit } from "./lookup.js";
import { Reader, type InPhrase } from "./phrase.js";
import { writtenOut } from "./shortened.js";

const MOST_WORDS = 80;

/** Finds the food in an ingredient phrase; undefined when there is none or a word makes it another thing. */
export function inPhrase(
  index: NameIndex,
  text: string,
): { readonly read: InPhrase; readonly tokens: readonly Token[] } | undefined {
  if (text.length > LONGEST) return undefined;
  const tokens = tokensOf(text);
  if (tokens.length === 0 || tokens.length > MOST_WORDS) return undefined;
  const plain = withoutStyle(index, tokens);
  if (plain !== undefined) {
    const read = new Reader(index, plain.tokens).read();
    // "Greek-style yogurt" has the name of Greek yogurt
    if (read?.owned.has(plain.maker) === true) return { read, tokens: plain.tokens };
  }
  const read = new Reader(index, tokens).read();
  const longer = read === undefined || read.unknown.length > 0 ? shortened(index, text, tokens) : undefined;
  if (longer !== undefined) return { read: longer, tokens };
  return read === undefined ? undefined : { read, tokens };
}

/**
 * The first reading of words written out in which every one of them tells the food. A guess, and as sure as one; three letters alone
 * are only one when nothing else begins with them.
 */
function shortened(index: NameIndex, text: string, tokens: readonly Token[]): InPhrase | undefined {
  const alone = tokens.length === 1 && (tokens[0] as Token).plain.length <= 3;
  let first: InPhrase | undefined;
  for (const { tokens: written, changed } of writtenOut(index, text.normalize("NFKC"), tokens)) {
    const read = new Reader(index, written).read();
    if (read === undefined || read.unknown.length > 0 || (read.hits[0]?.confidence ?? 0) < SURE.behind) continue;
    if (!changed.every((i) => read.owned.has(i))) continue;
    if (first !== undefined && first.hits[0]?.ingredient.food !== read.hits[0]?.ingredient.food) return undefined;
    first ??= { ...read, hits: read.hits.map((h): Hit => ({ ...h, how: "fuzzy", confidence: GUESSED })) };
    if (!alone) return first;
  }
  return first;
}
const GUESSED = 0.8;
