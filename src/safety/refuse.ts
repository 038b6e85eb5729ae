import type { Ingredient } from "../catalogue/store.js";
import { freeze } from "../errors.js";
import type { AllergenId, Refusal } from "../types.js";
import { allergenFacts } from "./allergens.js";
import type { AvoidRules } from "./avoid.js";
import { dietAnswer, dietDetail } from "./diets.js";
import { matches } from "./match.js";
import { safetyTables, type SafetyStore } from "./tables.js";

export type Reason = Omit<Refusal, "id" | "name">;

function avoided(store: SafetyStore, i: Ingredient, rules: AvoidRules): Reason | undefined {
  const facts = allergenFacts(store, i);
  const group = rules.groups.find((g) => matches(store, i, facts, g.when));
  const single = rules.foods.find(
    (f) => f.food === i.food && (f.part === undefined || i.part === undefined || f.part === i.part),
  );
  const word = group?.word ?? single?.word;
  return word === undefined ? undefined : { because: "avoided", what: word, detail: `To be avoided: ${word}.` };
}

/** Why carriers make it so, when the name does not show it. */
function why(store: SafetyStore, i: Ingredient, allergen: AllergenId): string {
  const record = { contains: i.contains, mayContain: i.mayContain, unknown: i.unknownAllergens };
  const carrier = safetyTables(store).allergens.carriers.find(
    (c) => c.text !== undefined && [...c.usual, ...c.sometimes].includes(allergen) && matches(store, i, record, c.when),
  );
  return carrier?.text === undefined ? "" : ` ${carrier.text}`;
}

/**
 * Why an ingredient cannot be offered to whoever avoids this, or undefined when nothing speaks against it. What is
 * contained goes before what may be, and that before what is unknown; each is a refusal.
 * @param options.technique what is done with it: cooking through lifts some stops, leaving raw raises some
 */
export function refusalFor(
  store: SafetyStore,
  ingredient: Ingredient,
  rules: AvoidRules,
  options: { readonly technique?: string } = {},
): Reason | undefined {
  const group = avoided(store, ingredient, rules);
  if (group) return freeze(group);
  const facts = allergenFacts(store, ingredient);
  const first = (list: readonly AllergenId[]): AllergenId | undefined => rules.allergens.find((a) => list.includes(a));
  const contained = first(facts.contains);
  if (contained)
    return freeze({
      because: "allergen",
      what: contained,
      detail: `Contains ${contained}.${why(store, ingredient, contained)}`,
    });
  const possible = first(facts.mayContain);
  if (possible)
    return freeze({
      because: "allergen",
      what: possible,
      detail: `May contain ${possible}: check the label.${why(store, ingredient, possible)}`,
    });
  const unclear = first(facts.unknown);
  if (unclear)
    return freeze({
      because: "unknown allergen",
      what: unclear,
      detail: `Whether it contains ${unclear} is not known: recipes differ by maker, so read the label.`,
    });
  for (const diet of rules.diets) {
    const answer = dietAnswer(store, ingredient, diet, options.technique);
    if (answer.answer === "yes") continue;
    const detail =
      answer.answer === "unknown"
        ? `Unknown whether it is right for ${diet}. ${dietDetail(answer)}`
        : dietDetail(answer);
    return freeze({ because: "diet", what: diet, detail });
  }
  return undefined;
}
