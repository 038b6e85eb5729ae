import { freeze, isSteadfareError } from "../errors.js";
import type { Lookup } from "../portion/index.js";
import type { Conversion } from "../types.js";

/** Whichever of several foods is meant, the answers for all of them may differ by this much. */
const ALIKE = 1.25;

/** The same names with one of several candidates left standing. */
function only(lookup: Lookup, id: string, ids: ReadonlySet<string>): Lookup {
  const stays = (m: { readonly id: string }): boolean => m.id === id || !ids.has(m.id);
  return {
    ...lookup,
    findFood: (text, limit) => lookup.findFood(text, limit).filter(stays),
    findInPhrase: (text) => {
      const found = lookup.findInPhrase(text);
      return found === undefined ? undefined : { ...found, candidates: found.candidates.filter(stays) };
    },
  };
}

/**
 * "1 cup dry beans": black, pinto or navy, they cook to the same within little. The middle one answers and its range spans
 * the others; undefined when one of them has no answer or they are too far apart, so that the food has to be named.
 */
export function middleOf(
  lookup: Lookup,
  ids: ReadonlySet<string>,
  convert: (lookup: Lookup) => Conversion,
): Conversion | undefined {
  const all: Conversion[] = [];
  for (const id of ids) {
    try {
      all.push(convert(only(lookup, id, ids)));
    } catch (e) {
      if (isSteadfareError(e)) return undefined;
      throw e;
    }
  }
  all.sort((a, b) => a.grams - b.grams || (a.id < b.id ? -1 : 1));
  const [least, most] = [all[0]?.grams ?? 0, all.at(-1)?.grams ?? 0];
  const middle = all[(all.length - 1) >> 1];
  if (middle === undefined || !(least > 0) || most > least * ALIKE) return undefined;
  return freeze({ ...middle, range: middle.range ?? ([least, most] as const) });
}
