import type { CompositionRecord } from "../composition.js";
import { rows, type Rule } from "./types.js";

// What LanguaL codes say of the food that was analysed, in the words of our states.
const DRIED = ["J0116", "J0117", "J0130", "J0140", "J0141", "J0144", "J0170"];
const FROZEN = ["J0136"];
const CANNED = ["J0123"];
const SMOKED = ["H0172"];
const SALTED = ["H0173", "H0190", "H0253", "H0367"];
const SOURED = ["H0190", "H0200", "H0253", "H0101", "H0107", "H0123"];
const CURED = [...SALTED, ...SMOKED];
const RAW = ["F0003"];
const COOKED = ["F0014"];
/** Cooking not known, and not applicable: tofu is fully heat-treated, yet nobody cooked it. */
const NO_COOKING = ["G0001", "G0003"];

/** Water of a food that would keep dried, at most, in g per 100 g. */
const DRY_ENOUGH = 30;
/** mg sodium per 100 g from which a food can be called salted. */
const SALTY = 300;
/** g acid per 100 g from which a food can be called pickled. */
const SOUR = 0.3;

interface Coded {
  readonly has: (codes: readonly string[]) => boolean;
  readonly cooked: boolean;
}
function read(record: CompositionRecord): Coded {
  const codes = record.langual ?? [];
  const has = (any: readonly string[]): boolean => any.some((c) => codes.includes(c));
  return { has, cooked: has(COOKED) && codes.some((c) => c.startsWith("G") && !NO_COOKING.includes(c)) };
}

/** What the record was, when the state says it is something else; undefined when the two can live together. */
function contradiction(
  preservation: string,
  heated: boolean,
  record: CompositionRecord,
  of: (figure: string) => number | undefined,
): string | undefined {
  const { has, cooked } = read(record);
  if (heated && has(RAW)) return "raw";
  switch (preservation) {
    case "fresh":
    case "frozen":
      if (has(DRIED) && !heated) return "dried";
      if (has(CANNED)) return "canned";
      if (has(SMOKED)) return "smoked";
      if (preservation === "fresh" && has(FROZEN)) return "frozen";
      return cooked && !heated ? "cooked" : undefined;
    case "canned":
      if (has(CANNED)) return undefined;
      if (has(RAW)) return "raw";
      if (has(FROZEN)) return "frozen";
      return has(DRIED) && !has(COOKED) ? "dried" : undefined;
    case "dried":
      if (has(CANNED)) return "canned";
      if (has(FROZEN)) return "frozen";
      return !has(DRIED) && (of("water") ?? 0) > DRY_ENOUGH ? "not dried" : undefined;
    case "smoked":
      return has(CURED) ? undefined : "not smoked";
    case "salt-cured":
    case "brined":
      return has(SALTED) || (of("sodium") ?? 0) >= SALTY ? undefined : "not salted";
    case "pickled":
      return has(SOURED) || (of("sodium") ?? 0) >= SALTY || (of("acid") ?? 0) >= SOUR ? undefined : "not pickled";
    default:
      return undefined;
  }
}

/** The record analysed the food as this state keeps it. Only the first record counts: the next ones just fill gaps. */
export const treatment: Rule = {
  name: "treatment",
  text: "A fresh, frozen, canned, dried, smoked, salted or cooked state takes its figures from a record whose LanguaL codes do not say otherwise.",
  check(input, say) {
    const heats = Object.keys(input.authored.terms.heat);
    for (const { row, slot, file } of rows(input)) {
      const { composition } = slot.state;
      const reference = typeof composition === "string" ? composition : composition?.[0];
      const record = reference === undefined ? undefined : input.look(reference);
      if (record?.langual === undefined) continue;
      const heated = row.state.some((word) => heats.includes(word));
      const was = contradiction(row.state[0] ?? "", heated, record, (name) => row.figures[name]?.[0]);
      if (was !== undefined)
        say(
          file,
          row.id,
          `is ${row.state.join(" ")}, but ${reference} ("${record.description}") was ${was} when it was analysed (LanguaL ${record.langual.join(" ")}). Take the record of this state, or rename the state.`,
        );
    }
  },
};
