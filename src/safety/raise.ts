import type { HazardRule } from "../catalogue/safety-tables.js";
import type { Ingredient } from "../catalogue/store.js";
import type { AvoidRules } from "./avoid.js";
import type { Place } from "./doneness.js";
import { fits } from "./fits.js";
import type { SafetyStore } from "./tables.js";
import { foldWord } from "./words.js";

/** What is known of a swap when its hazards are asked for. */
export interface HazardQuestion {
  readonly missing?: Ingredient;
  readonly use: readonly { readonly ingredient: Ingredient; readonly grams: number }[];
  readonly technique?: string;
  readonly role?: string;
  /** The other ingredients of the dish. */
  readonly dish?: readonly Ingredient[];
  readonly rules?: AvoidRules;
  /** Words of the request or the recipe that may raise a hazard ("garlic oil", "foraged"). */
  readonly context?: string;
  readonly serves?: number;
  readonly jurisdiction?: Place;
}

/** Longest context that is read. */
const LONGEST_CONTEXT = 2000;

/** What holds egg and needs no cooking (mayonnaise, dressings, eggnog) goes on the plate as it is, unless a technique is given. */
const isDressing = (missing: Ingredient | undefined): boolean =>
  missing?.origin.has("egg") === true && missing.can.has("edible uncooked") && !missing.tags.has("raw egg");

/** A question with what every rule would otherwise work out again. */
export interface Asked extends HazardQuestion {
  readonly folded: string;
}
export const asked = (q: HazardQuestion): Asked => ({
  ...q,
  ...(q.technique === undefined && isDressing(q.missing) ? { technique: "raw" } : {}),
  folded: ` ${foldWord((q.context ?? "").slice(0, LONGEST_CONTEXT).replaceAll(/[.,;:!?()]/g, " "))} `,
});

function amountPassed(h: HazardRule, q: Asked, grams: number): boolean {
  if (h.amount === undefined) return true;
  if (h.amount.knownServes === true && q.serves === undefined) return false;
  // Without a number of servings one person is assumed to eat it all: the stricter reading.
  return grams / Math.max(1, q.serves ?? 1) >= h.amount.perServing;
}

/** Whether a rule is about this technique, job and setting. */
const about = (h: HazardRule, q: Asked): boolean =>
  (h.techniques === undefined || (q.technique !== undefined && h.techniques.includes(q.technique))) &&
  (h.roles === undefined || (q.role !== undefined && h.roles.includes(q.role))) &&
  (h.context === undefined || h.context.some((word) => q.folded.includes(` ${word} `)));

/** Whether a rule says that the missing ingredient keeps harm out of this dish. */
export const keepsSafe = (store: SafetyStore, h: HazardRule, q: Asked, missing: Ingredient): boolean =>
  h.neverWithout === true && about(h, q) && (h.missing === undefined || fits(store, missing, h.missing));

/** Whether a rule whose description the use fits speaks of it at all, before asking who is at the table. */
export function raised(store: SafetyStore, h: HazardRule, q: Asked, use: Ingredient, grams: number): boolean {
  if (!about(h, q)) return false;
  if (!amountPassed(h, q, grams)) return false;
  // A rule about exchanging things says nothing of a thing that takes its own place.
  if (
    h.missing !== undefined &&
    (q.missing === undefined || q.missing.id === use.id || !fits(store, q.missing, h.missing))
  )
    return false;
  if (h.roles !== undefined && h.stop === "never" && q.missing?.id === use.id) return false;
  const { dish } = h;
  return (
    dish === undefined ||
    [...(q.dish ?? []), ...q.use.map((u) => u.ingredient)].some(
      (other) => other.id !== use.id && other.id !== q.missing?.id && fits(store, other, dish),
    )
  );
}

/** True when the stand-in brings the hazard: what it replaces did not have it. */
export function brought(store: SafetyStore, h: HazardRule, q: Asked): boolean {
  return q.missing === undefined || h.when === undefined || h.missing !== undefined || !fits(store, q.missing, h.when);
}
