import type { HazardRule, Matches } from "../catalogue/safety-tables.js";
import type { Ingredient } from "../catalogue/store.js";
import { allergenFacts } from "./allergens.js";
import { matches } from "./match.js";
import { safetyTables, type SafetyStore } from "./tables.js";

/** What the tables say of one ingredient whatever is asked. */
interface Known {
  readonly fits: Map<Matches, boolean>;
  hazards?: readonly HazardRule[];
}
const known = new WeakMap<object, WeakMap<Ingredient, Known>>();
function knownOf(store: SafetyStore, i: Ingredient): Known {
  let all = known.get(store.tables);
  if (all === undefined) known.set(store.tables, (all = new WeakMap<Ingredient, Known>()));
  let of = all.get(i);
  if (of === undefined) all.set(i, (of = { fits: new Map<Matches, boolean>() }));
  return of;
}

/** Whether an ingredient fits a description of the tables, looked up once: a question asks the same rules of many, and many questions of the same. */
export function fits(store: SafetyStore, i: Ingredient, m: Matches): boolean {
  const { fits: before } = knownOf(store, i);
  let answer = before.get(m);
  if (answer === undefined) before.set(m, (answer = matches(store, i, allergenFacts(store, i), m)));
  return answer;
}

/** The hazards whose description an ingredient fits, in the order of the table: most rules can never speak of it. */
export function hazardsOf(store: SafetyStore, i: Ingredient): readonly HazardRule[] {
  const of = knownOf(store, i);
  if (of.hazards === undefined) {
    const facts = allergenFacts(store, i);
    of.hazards = safetyTables(store).hazards.hazards.filter(
      (h) => h.when === undefined || matches(store, i, facts, h.when),
    );
  }
  return of.hazards;
}
