import { nearestOf } from "../../../nearest.js";
import type { Flat, FlatIngredient } from "../../compiled.js";
import type { Authored, Problem } from "../compile.js";
import { eachState, idOf } from "../compile.js";
import type { CompositionLookup } from "../composition.js";

/** What a rule looks at: the records as written, the rows made of them, and the open composition tables. */
export interface RuleInput {
  readonly authored: Authored;
  readonly flat: Flat;
  readonly look: CompositionLookup;
  /** Ids that exist already: those of the built-in catalogue when an extension is checked. */
  readonly alsoKnown?: ReadonlySet<string>;
}
/** One integrity check. `say` takes the file, the record in it, and a message that tells the mend. */
export interface Rule {
  readonly name: string;
  readonly text: string;
  check(input: RuleInput, say: (file: string, record: string, message: string) => void): void;
}

export function runRule(rule: Rule, input: RuleInput): Problem[] {
  const problems: Problem[] = [];
  rule.check(input, (file, record, message) => problems.push({ file, record, rule: rule.name, message }));
  return problems;
}

/** Each row beside the record and the file it came from. */
export function* rows(
  input: RuleInput,
): Generator<{ row: FlatIngredient; slot: ReturnType<typeof eachState>[number]; file: string }> {
  const byId = new Map(input.flat.ingredients.map((row) => [row.id, row]));
  for (const slot of eachState(input.authored.foods)) {
    const row = byId.get(idOf(slot));
    if (row) yield { row, slot, file: slot.file };
  }
}

/** For "did you mean". */
export const nearest = (word: string, list: readonly string[]): string => nearestOf(word, list).join(", ");

/** Allergens a part has and the whole neither has nor may have: they would be hidden from whoever must not eat them. */
export const hiddenAllergens = (
  whole: FlatIngredient | undefined,
  part: FlatIngredient | undefined,
): readonly string[] =>
  whole === undefined || part === undefined
    ? []
    : part.contains.filter((a) => !whole.contains.includes(a) && !whole.may.includes(a));
