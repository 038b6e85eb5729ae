import type { Match, Matches } from "../catalogue/safety-tables.js";
import type { Ingredient } from "../catalogue/store.js";
import type { AllergenFacts } from "../types.js";
import type { SafetyStore } from "./tables.js";

type AllergenLists = Pick<AllergenFacts, "contains" | "mayContain" | "unknown">;

const some = (list: readonly string[] | undefined, has: (word: string) => boolean): boolean =>
  list === undefined || list.some(has);

function named(i: Ingredient, id: string): boolean {
  return id === i.food || id === i.id || (i.part !== undefined && id === `${i.food}.${i.part}`);
}

function figuresHold(store: SafetyStore, i: Ingredient, figures: NonNullable<Match["figures"]>): boolean {
  return Object.entries(figures).every(([name, { over, under, missing }]) => {
    const figure = store.figure(i, name);
    if (missing === true) return figure === null;
    if (figure === null) return false;
    return (over === undefined || figure.value > over) && (under === undefined || figure.value < under);
  });
}

function one(store: SafetyStore, i: Ingredient, facts: AllergenLists, m: Match): boolean {
  return (
    some(m.origin, (w) => i.origin.has(w)) &&
    some(m.tags, (w) => i.tags.has(w)) &&
    some(m.kinds, (w) => i.kinds.includes(w)) &&
    some(m.foods, (w) => named(i, w)) &&
    some(m.parts, (w) => i.part === w) &&
    some(m.states, (w) => i.state.includes(w)) &&
    some(m.can, (w) => i.can.has(w)) &&
    some(m.cannot, (w) => i.cannot.has(w)) &&
    some(m.jobs, (w) => i.roles.some(({ role, weight }) => role === w && weight >= 0.5)) &&
    some(m.contains, (w) => (facts.contains as readonly string[]).includes(w)) &&
    some(m.may, (w) => (facts.mayContain as readonly string[]).includes(w)) &&
    some(m.unknown, (w) => (facts.unknown as readonly string[]).includes(w)) &&
    (m.originKnown === undefined || m.originKnown === i.origin.size > 0) &&
    (m.figures === undefined || figuresHold(store, i, m.figures)) &&
    (m.not === undefined || !matches(store, i, facts, m.not))
  );
}

/**
 * Whether an ingredient's record fits a description. Only the record is read, never a word of the name: butternut squash
 * is no nut and cream of tartar no cream because nothing in their records says so.
 */
export function matches(store: SafetyStore, i: Ingredient, facts: AllergenLists, m: Matches): boolean {
  return Array.isArray(m)
    ? (m as readonly Match[]).some((each) => one(store, i, facts, each))
    : one(store, i, facts, m as Match);
}
