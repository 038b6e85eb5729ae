// Recipe lines read, weighed and printed.
import { type Ingredient, type Store, storeOf } from "../catalogue/index.js";
import { findInPhrase, findName, nearestNames } from "../names/index.js";
import type { Catalogue, Portion, ReadLine } from "../types.js";
import type { Lookup } from "./food.js";
import { readLineWith } from "./line.js";
import { parsePortionWith } from "./parse.js";

export type { Lookup, Phrase } from "./food.js";
export { MAX_LINE, readLineWith } from "./line.js";
export { parsePortionWith, quantityOfText } from "./parse.js";
export { gramsPer, kitchenMeasure, portionOf, type PrintOptions, publicGrams, unitsOf } from "./print.js";
export { eatenShare, isCountedWhole, saysTrimmed, shareOf, shareOfRow, wholeFish } from "./bought.js";
export { usualGrams } from "./usual.js";
export { densityOf, measureWords } from "./rows.js";
export { weigh, type Weight } from "./weigh.js";

/** The store and the names of an opened catalogue, as the reader needs them. */
export function lookupOf(c: Catalogue): Lookup {
  return {
    store: storeOf(c),
    findFood: (text, limit) => findName(c, text, limit),
    findInPhrase: (text) => findInPhrase(c, text),
    nearest: (text, n) => nearestNames(c, text, n),
  };
}

/**
 * Reads one ingredient line of a recipe.
 *
 * Understands amounts in US, metric and imperial kitchen measures, fractions, ranges ("2-3" gives the middle and a `range`),
 * containers of a stated size ("2 x 400 g tins"), two units beside each other (the weight answers for the grams, the first
 * is kept as printed), "juice of 1 lemon", alternatives after "or", preparation after a comma, notes in brackets.
 * Pints, quarts and fluid ounces are imperial in an en-GB catalogue. Cups and spoons are US measures unless the line says
 * "metric" or "Australian" (source of the factors: NIST Handbook 44, appendix C).
 *
 * Never throws on any string. A line over 2,000 characters is "no food". A line without an amount, or with one that
 * nothing known of the food can weigh (told in `unread`), is "food only" and has no portion.
 * @returns grams to 0.1, finite and above 0
 */
export function readLine(c: Catalogue, text: string): ReadLine {
  return readLineWith(lookupOf(c), String(text));
}

/**
 * Reads one ingredient with its amount: "450 g salt cod". Without an amount the ingredient's usual measure is put in and
 * `assumed` is true.
 * @param amount when given, replaces what the text says: parsePortion(c, "salt cod", "1 lb")
 * @throws "unknown food" with the nearest names, "ambiguous food" with the candidates, "unreadable amount" when a number
 * cannot be read or nothing known of the food can weigh it, "input too large" over 2,000 characters
 */
export function parsePortion(c: Catalogue, text: string, amount?: string): Portion {
  return parsePortionWith(lookupOf(c), text, amount);
}

export type { Ingredient, Store };
