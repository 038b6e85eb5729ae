import { isDigit, type Quantity, readQuantity, readWord, skipSpace, skipWord } from "../quantity/index.js";
import { findPart, type Found, findWhole, type Lookup } from "./food.js";
import { type Other, readOther, type Resolved } from "./resolve.js";
import { cutMarker, says, trimmed, wholeAmount, wordsIn } from "./text.js";

// What stands beside the food: preparation, notes, alternatives, and amounts told after it.

const FLAGS = new Set(["optional", "divided"]);
export function flagOnly(text: string): boolean {
  const all = [...wordsIn(text)];
  return all.length > 0 && all.every((w) => FLAGS.has(w.text));
}

/** "flour 200 g", "butter - 100 g": the amount after the food. */
export function trailingAmount(head: string, imperial: boolean): { head: string; quantity: Quantity } | undefined {
  let tries = 0;
  for (let p = 1; p < head.length && tries < 4; p++) {
    const starts =
      (isDigit(head[p]) || "¼½¾⅓⅔⅛".includes(head[p] ?? " ")) &&
      !isDigit(head[p - 1]) &&
      head[p - 1] !== "." &&
      head[p - 1] !== "/";
    if (!starts) continue;
    tries++;
    const q = readQuantity(head, p, { imperial });
    if (q === undefined || skipSpace(head, q.end) !== head.length) continue;
    let before = head.slice(0, p).trimEnd();
    while (
      before !== "" &&
      "-–—=:x×".includes(before.at(-1) ?? " ") &&
      (before.at(-2) === " " || !"x×".includes(before.at(-1) ?? ""))
    )
      before = before.slice(0, -1).trimEnd();
    return { head: trimmed(before), quantity: q };
  }
  return undefined;
}

interface Sorted {
  readonly preparation: readonly string[];
  readonly notes: readonly string[];
  readonly others: readonly Other[];
  readonly amounts: readonly { readonly quantity: Quantity; readonly each: boolean }[];
}
const NOTE_STARTS = new Set([
  "plus",
  "to",
  "for",
  "or",
  "and",
  "about",
  "approximately",
  "approx",
  "such",
  "preferably",
  "ideally",
  "if",
  "as",
  "optional",
  "divided",
  "see",
  "note",
  "more",
  "extra",
  "from",
  "any",
  "i",
  "e",
  "store",
]);

/** Sorts what stands after the food into preparation, notes, alternatives and amounts. */
export function sortSegments(
  lookup: Lookup,
  rest: readonly string[],
  brackets: readonly string[],
  imperial: boolean,
): Sorted {
  const preparation: string[] = [];
  const notes: string[] = [];
  const others: Other[] = [];
  const amounts: { quantity: Quantity; each: boolean }[] = [];
  const take = (segment: string, bracket: boolean) => {
    const amount = wholeAmount(segment, imperial);
    if (amount !== undefined) {
      amounts.push(amount);
      notes.push(segment);
      return;
    }
    const or = skipWord(segment, 0, "or");
    const other =
      or === undefined ? undefined : readOther(lookup, trimmed(cutMarker(segment.slice(or)).head), imperial);
    if (other !== undefined && other.found.match.confidence >= 0.9) {
      others.push(other);
      return;
    }
    if (flagOnly(segment)) return;
    const first = readWord(segment, 0);
    if (bracket || (first !== undefined && NOTE_STARTS.has(first.text))) notes.push(segment);
    else preparation.push(segment);
  };
  rest.forEach((segment, n) => {
    // "butter, ghee, or oil": a food before an "or" is an alternative too
    const next = rest[n + 1];
    const listed =
      next !== undefined && skipWord(next, 0, "or") !== undefined ? findWhole(lookup, segment, 1) : undefined;
    if (listed === undefined) take(segment, false);
    else others.push({ found: listed });
  });
  for (const b of brackets) take(b, true);
  return { preparation, notes, others, amounts };
}

const WHOLE_USED = new Set(["segmented", "segments", "supremed", "sliced", "quartered", "chopped", "cubed"]);
/** "1 lemon, juiced": the juice is what is used. Both juice and zest, or neither: the fruit itself. */
export function partAfter(lookup: Lookup, hit: Resolved, preparation: readonly string[]): Found | undefined {
  if (hit.ofWhole === true || hit.found.ingredient.part !== undefined) return undefined;
  const all = preparation.join(" ");
  const juice =
    says(all, "juiced") ||
    says(all, "juice", "only") ||
    says(all, "juice", "of") ||
    preparation.some((p) => p.toLowerCase() === "juice");
  const zest =
    says(all, "zested") ||
    says(all, "zest", "only") ||
    says(all, "zest", "of") ||
    says(all, "zest") ||
    says(all, "rind");
  // "zested and segmented": the rest of the fruit is used as well
  if (juice === zest || (zest && [...wordsIn(all)].some((w) => WHOLE_USED.has(w.text)))) return undefined;
  const part = juice ? "juice" : "zest";
  const found = findPart(lookup, hit.found.match.name, part) ?? findPart(lookup, hit.found.text, part);
  return found?.ingredient.part === part ? { ...found, rest: "" } : undefined;
}

/** A weight told after the food ("1 onion (about 200 g)", "2 potatoes, about 1 lb") answers for its amount. */
export function beside(q: Quantity | undefined, amounts: Sorted["amounts"], ofWhole: boolean): Quantity | undefined {
  if (q === undefined || q.also !== undefined || q.each !== undefined || q.unit?.dimension === "mass") return q;
  for (const { quantity, each } of amounts) {
    if (quantity === q) continue;
    const dimension = quantity.unit?.dimension;
    if (ofWhole && dimension === "volume") return quantity;
    if (dimension !== "mass" && !(dimension === "volume" && q.unit?.id === "can")) continue;
    const container = q.unit?.id === "can" || q.unit?.id === "packet";
    return each || container ? { ...q, each: quantity } : { ...q, also: quantity };
  }
  return q;
}
