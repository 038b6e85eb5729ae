import { isDigit, readQuantity, readWord, skipSpace } from "../quantity/index.js";
import { trimmed } from "./text.js";

/**
 * Words before the amount that are no part of it: "optional: 1/2 tsp cayenne", "plus 1 tbsp butter", "Garnish: 2 limes". Only before an
 * amount in figures, so that no name is cut; `lead` is what was taken off.
 */
export function afterOpener(line: string): { readonly lead: string; readonly body: string } {
  const none = { lead: "", body: line };
  const first = readWord(line, line[0] === "(" ? 1 : 0);
  if (first === undefined) return none;
  let p = first.end;
  if (line[0] === "(") {
    if (line[p] !== ")") return none;
    p++;
  } else {
    for (let i = 0; i < 3 && line[p] !== ":"; i++) p = readWord(line, p)?.end ?? p;
    if (line[p] === ":") p++;
    else if (OPENERS.has(first.text)) p = first.end;
    else return none;
  }
  const at = skipSpace(line, p);
  const q = isDigit(line[at]) || line.charCodeAt(at) > 0x7f ? readQuantity(line, at) : undefined;
  return q === undefined
    ? none
    : { lead: JOINS.has(first.text) ? "" : trimmed(line.slice(0, p)), body: line.slice(at) };
}
/** They join a line to the one before and say nothing of the food. */
const JOINS = new Set(["plus", "and", "also", "then"]);
const OPENERS = new Set([...JOINS, "optional", "optionally"]);
