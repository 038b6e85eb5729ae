import type { Decider, DietEntry, HazardRule, RuleSource, SafetyDietId, Sureness } from "../catalogue/safety-tables.js";
import type { Ingredient } from "../catalogue/store.js";
import { freeze } from "../errors.js";
import type { Caution, SourceRef } from "../types.js";
import { fits } from "./fits.js";
import { refs, safetyTables, type SafetyStore } from "./tables.js";

/** What a diet says of one ingredient, how sure that is and whose word settles it. */
export interface DietAnswer {
  readonly diet: SafetyDietId;
  readonly answer: "yes" | "no" | "unknown";
  readonly text: string;
  readonly sure: Sureness;
  readonly decides: Decider;
  readonly sources: readonly SourceRef[];
  /** What to mind although the answer is yes. */
  readonly cautions: readonly Caution[];
}

export function dietEntry(store: SafetyStore, id: SafetyDietId): DietEntry {
  const entry = safetyTables(store).diets.diets.find((d) => d.id === id);
  if (!entry) throw new Error(`The diet table has no ${id}.`);
  return entry;
}

/** True for a hazard that is a diner's whatever is cooked: no technique, dish, amount or missing food is needed to raise it. */
export function standing(h: HazardRule): boolean {
  return (
    h.stop === "diner" &&
    h.when !== undefined &&
    !h.techniques &&
    !h.context &&
    !h.dish &&
    !h.amount &&
    !h.missing &&
    !h.roles
  );
}

/** The hazard that stops an ingredient for a diet, if one does. */
function stoppedBy(
  store: SafetyStore,
  ingredient: Ingredient,
  diet: SafetyDietId,
  technique: string | undefined,
): HazardRule | undefined {
  const { hazards, cookedThrough } = safetyTables(store).hazards;
  return hazards.find((h) => {
    if (h.stop !== "diner" || h.when === undefined || !h.diners?.includes(diet)) return false;
    const raised =
      standing(h) ||
      (technique !== undefined &&
        h.techniques?.includes(technique) === true &&
        !h.dish &&
        !h.context &&
        !h.amount &&
        !h.missing &&
        !h.roles);
    if (!raised || (h.unlessCooked === true && technique !== undefined && cookedThrough.includes(technique)))
      return false;
    return fits(store, ingredient, h.when);
  });
}

/**
 * What a diet or condition says of an ingredient: yes, no, or unknown when the facts do not tell.
 * @param technique what is done with it; cooking through lifts some stops
 */
export function dietAnswer(
  store: SafetyStore,
  ingredient: Ingredient,
  id: SafetyDietId,
  technique?: string,
): DietAnswer {
  const entry = dietEntry(store, id);
  const cautions: Caution[] = [];
  const answer = (
    a: DietAnswer["answer"],
    text: string,
    sources: readonly RuleSource[],
    sure = entry.sure,
    decides = entry.decides,
  ): DietAnswer => freeze({ diet: id, answer: a, text, sure, decides, sources: refs(sources), cautions });
  let settled: DietAnswer | undefined;
  for (const rule of entry.rules) {
    if (!fits(store, ingredient, rule.when)) continue;
    if (rule.answer === "caution")
      cautions.push({
        hazard: rule.id,
        severity: "caution",
        who: entry.id,
        text: rule.text,
        sources: refs(rule.sources),
      });
    else {
      settled = answer(rule.answer, rule.text, rule.sources, rule.sure, rule.decides);
      break;
    }
  }
  if (settled && settled.answer !== "yes") return settled;
  const stop = stoppedBy(store, ingredient, id, technique);
  if (stop) return answer("no", stop.text, stop.sources);
  if (settled) return settled;
  return answer(entry.otherwise, entry.otherwiseText ?? "Nothing in its record speaks against it.", entry.sources);
}

/** A sentence for a refusal: the reason, and whose word settles it. */
export function dietDetail({ text, sure, decides }: DietAnswer): string {
  const how = sure === "certain" ? "" : sure === "disputed" ? "Views differ; " : "";
  return how === "" ? `${text} ${capital(decides)} decides.` : `${text} ${how}${decides} decides.`;
}
const capital = (s: string): string => s.charAt(0).toUpperCase() + s.slice(1);
