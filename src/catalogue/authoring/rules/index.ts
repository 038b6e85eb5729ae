import type { Problem } from "../compile.js";
import { calculated } from "./calculated.js";
import { carriers, energy, measures, ranges, sums } from "./figures.js";
import { knownWords, naming, references } from "./references.js";
import { makeup } from "./makeup.js";
import { melting, milkSugar, richness, tastes, thawed } from "./kitchen.js";
import { basics, cuisines, everyday, jobs, portionClasses } from "./tables.js";
import { treatment } from "./treatment.js";
import { pairings } from "./pairings.js";
import { repeats } from "./repeats.js";
import { runRule, type Rule, type RuleInput } from "./types.js";
import { idle, orphans, salt } from "./upkeep.js";

/** Every integrity check, in the order their messages are most use: words first, then what points where, then figures. */
export const RULES: readonly Rule[] = [
  knownWords,
  references,
  naming,
  calculated,
  ranges,
  sums,
  energy,
  measures,
  carriers,
  tastes,
  richness,
  thawed,
  melting,
  milkSugar,
  treatment,
  salt,
  orphans,
  idle,
  portionClasses,
  jobs,
  cuisines,
  basics,
  everyday,
  makeup,
  repeats,
  pairings,
];

/** Runs all rules; a rule that crashes becomes a problem, never a lost run. */
export function checkAll(input: RuleInput): Problem[] {
  return RULES.flatMap((rule) => {
    try {
      return runRule(rule, input);
    } catch (e) {
      return [{ file: "", record: "", rule: rule.name, message: `The rule itself failed: ${(e as Error).message}` }];
    }
  });
}
export { except, Exceptions } from "./exceptions.js";
export { NEEDS } from "./figures.js";
export type { Rule, RuleInput } from "./types.js";
