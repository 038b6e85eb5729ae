import { fail, freeze } from "../errors.js";
import { isDash, isDigit, isLetter, readQuantity, skipSpace } from "../quantity/index.js";
import type { FoodMatch, Portion, SourceRef } from "../types.js";
import type { Lookup } from "./food.js";
import { type Draft, draftOf, MAX_LINE, readPortion } from "./line.js";
import { portionOf } from "./print.js";
import { shorten, stripLead } from "./text.js";
import { usualGrams } from "./usual.js";
import { weigh } from "./weigh.js";

/** A number stands at the head of the text and is no amount: where. "2% milk" and "7-grain bread" are names. */
function unreadableAt(text: string): number | undefined {
  const p = skipSpace(text, 0);
  const sign = isDash(text[p]) ? p + 1 : p;
  if (!isDigit(text[sign])) return undefined;
  let end = sign;
  while (isDigit(text[end])) end++;
  if (sign === p && (text[end] === "%" || (isDash(text[end]) && isLetter(text[end + 1])))) return undefined;
  return p;
}

/** Does the name that was found hold the number itself ("2% milk", "00 flour")? */
function numberInName(match: FoodMatch): boolean {
  for (const ch of match.matched) if (isDigit(ch)) return true;
  return false;
}

function nearest(lookup: Lookup, draft: Draft): readonly FoodMatch[] {
  const from = draft.quantity?.end ?? 0;
  return lookup.nearest(draft.line.slice(from).trim(), 5);
}

/** "450 g salt cod" → a portion. See `parsePortion` in the index of this room. */
export function parsePortionWith(lookup: Lookup, text: string, amount?: string): Portion {
  const size = text.length + (amount?.length ?? 0);
  if (size > MAX_LINE)
    fail("input too large", `An ingredient may have ${MAX_LINE} characters; this one has ${size}.`, {
      limit: MAX_LINE,
      size,
    });
  const draft = draftOf(lookup, text);
  if (draft.found === undefined) {
    const near = nearest(lookup, draft);
    const hint = near.length === 0 ? " No name comes near it." : ` The nearest: ${near.map((m) => m.name).join(", ")}.`;
    fail("unknown food", `No food is known in "${shorten(text, 80)}".${hint}`, { input: text, nearest: near });
  }
  const { found } = draft;
  if (found.candidates.length > 1)
    fail("ambiguous food", `"${shorten(text, 80)}" may be ${found.candidates.map((m) => m.name).join(" or ")}.`, {
      input: text,
      candidates: found.candidates,
    });
  if (amount !== undefined) return freeze(fromAmount(lookup, draft, amount));
  const at = draft.quantity === undefined || isDash(stripSpace(text)[0]) ? unreadableAt(text) : undefined;
  if (at !== undefined && !numberInName(found.match)) unreadable(text, at);
  if (draft.quantity === undefined) {
    const portion = portionOf(lookup.store, found.ingredient, usualGrams(lookup.store, found.ingredient));
    return freeze<Portion>({ ...portion, assumed: true });
  }
  if (draft.weight === undefined) unreadable(text, Math.max(0, text.indexOf(draft.line.slice(0, draft.quantity.end))));
  return freeze(readPortion(lookup, found, draft.quantity, draft.weight, draft.ofWhole));
}

function stripSpace(text: string): string {
  return text.slice(skipSpace(text, 0));
}

function fromAmount(lookup: Lookup, draft: Draft, amount: string): Portion {
  const line = stripLead(amount);
  const negative = unreadableAt(amount);
  const q = readQuantity(line, 0, { imperial: lookup.store.locale === "en-GB" });
  if (
    q === undefined ||
    skipSpace(line, q.end) !== line.length ||
    (negative !== undefined && isDash(stripSpace(amount)[0]))
  )
    unreadable(amount, q?.end ?? 0);
  const found = draft.found;
  const w = found === undefined ? undefined : weigh(lookup.store, found.ingredient, q, draft.words);
  if (found === undefined || w === undefined) unreadable(amount, 0);
  return readPortion(lookup, found, q, w);
}

function unreadable(text: string, at: number): never {
  fail("unreadable amount", `The amount in "${shorten(text, 80)}" cannot be read or weighed.`, { input: text, at });
}

/** How an amount was given: by a measure of the food (with its source) or by plain weight. */
export function quantityOfText(
  lookup: Lookup,
  text: string,
): { readonly byMeasure: boolean; readonly source?: SourceRef } {
  const { quantity, weight } = draftOf(lookup, text);
  if (quantity === undefined || weight === undefined) return { byMeasure: true };
  const mass =
    quantity.unit?.dimension === "mass" ||
    quantity.also?.unit?.dimension === "mass" ||
    quantity.each?.unit?.dimension === "mass";
  return { byMeasure: !mass, ...(weight.source === undefined ? {} : { source: weight.source }) };
}
