import type { DonenessClass, HandlingRule, Jurisdiction, RequiredStep, Target } from "../catalogue/safety-tables.js";
import type { Ingredient } from "../catalogue/store.js";
import { freeze } from "../errors.js";
import type { SourceRef } from "../types.js";
import { fits } from "./fits.js";
import { refs, safetyTables, type SafetyStore } from "./tables.js";

/** Whether an animal food may be eaten as sold: "ready"; "cured" (raw, and ready for most people); "cook first" (looks ready and is not); "cook". */
export type Readiness = "ready" | "cured" | "cook first" | "cook" | "not applicable";

export interface Doneness {
  /** The class of food the figure is for: "whole-pork", "minced-meat". */
  readonly kind: string;
  readonly jurisdiction: Jurisdiction;
  /** Least temperature in the middle. */
  readonly celsius: number;
  readonly fahrenheit: number;
  /** Minutes to rest off the heat. */
  readonly rest: number;
  /** Seconds to stay at that temperature. */
  readonly hold: number;
  readonly text: string;
  readonly sources: readonly SourceRef[];
}
export interface DonenessChange {
  readonly from?: Doneness;
  readonly to: Doneness;
  /** True when the stand-in needs more heat than what it replaces. */
  readonly raised: boolean;
  readonly text: string;
  readonly step: RequiredStep;
}
export interface Handling {
  readonly topic: HandlingRule["topic"];
  readonly jurisdiction: HandlingRule["jurisdiction"];
  readonly text: string;
  readonly figures: Readonly<Record<string, number>>;
  readonly sources: readonly SourceRef[];
}
export type Place = Jurisdiction | "strictest";

const HOME = { "en-US": "US", "en-GB": "UK" } as const;
const FLESH = ["meat", "poultry", "finfish", "crustacean", "mollusc", "egg"];

/** Whether an animal food is eaten as it is or must be cooked. Plants and made foods are "not applicable". */
export function readinessOf(store: SafetyStore, ingredient: Ingredient): Readiness {
  const { cookFirst, uncookedCured, ready } = safetyTables(store).temperatures;
  if (!FLESH.some((kind) => ingredient.kinds.includes(kind))) return "not applicable";
  if (fits(store, ingredient, cookFirst)) return "cook first";
  if (fits(store, ingredient, uncookedCured)) return "cured";
  return fits(store, ingredient, ready) ? "ready" : "cook";
}

/** How much heat a target asks for, comparable between targets: a held 70 °C counts as much as an instant 75 °C (UK equivalents). */
const heat = (t: Target): number => (t.celsius ?? 0) + ((t.hold ?? 0) >= 120 ? 5 : 0);

function targetOf(c: DonenessClass, place: Place): [Jurisdiction, Target] | undefined {
  const all = Object.entries(c.targets) as [Jurisdiction, Target][];
  const own = place === "strictest" ? undefined : c.targets[place];
  if (own && place !== "strictest") return [place, own];
  return all.reduce<[Jurisdiction, Target] | undefined>(
    (best, next) => (best && heat(best[1]) >= heat(next[1]) ? best : next),
    undefined,
  );
}

function sentence(store: SafetyStore, c: DonenessClass, t: Target): string {
  const both =
    store.locale === "en-GB" ? `${t.celsius} °C (${t.fahrenheit} °F)` : `${t.fahrenheit} °F (${t.celsius} °C)`;
  const held = t.hold ? (t.hold >= 60 ? `, held for ${t.hold / 60} minutes` : `, held for ${t.hold} seconds`) : "";
  const rest = t.rest ? `, then rest ${t.rest} minutes` : "";
  return [`Cook ${c.text} to ${both} in the middle${held}${rest}.`, t.sign, c.conflict].filter(Boolean).join(" ");
}

/**
 * The least internal temperature for an ingredient; undefined when it is eaten as sold or has none (a plant, a stock).
 * @param options.jurisdiction whose figures: that of the catalogue's locale when left out; "strictest" for the highest of all. Where
 * a jurisdiction says nothing of a food the strictest is used.
 */
export function donenessFor(
  store: SafetyStore,
  ingredient: Ingredient,
  options: { readonly jurisdiction?: Place } = {},
): Doneness | undefined {
  const place = options.jurisdiction ?? HOME[store.locale];
  let all = known.get(store);
  if (all === undefined) known.set(store, (all = new WeakMap<Ingredient, Targets>()));
  let of = all.get(ingredient);
  if (of === undefined) all.set(ingredient, (of = new Map<Place, Doneness | undefined>()));
  if (!of.has(place)) of.set(place, workedOut(store, ingredient, place));
  return of.get(place);
}
type Targets = Map<Place, Doneness | undefined>;
/** By catalogue and ingredient: asked of both sides of every swap. */
const known = new WeakMap<SafetyStore, WeakMap<Ingredient, Targets>>();

function workedOut(store: SafetyStore, ingredient: Ingredient, place: Place): Doneness | undefined {
  const readiness = readinessOf(store, ingredient);
  if (readiness !== "cook" && readiness !== "cook first") return undefined;
  const c = safetyTables(store).temperatures.classes.find((each) => fits(store, ingredient, each.when));
  const found = c && targetOf(c, place);
  if (!found) return undefined;
  const [jurisdiction, t] = found;
  if (t.celsius === undefined || t.fahrenheit === undefined) return undefined;
  return freeze({
    kind: c.id,
    jurisdiction,
    celsius: t.celsius,
    fahrenheit: t.fahrenheit,
    rest: t.rest ?? 0,
    hold: t.hold ?? 0,
    text: sentence(store, c, t),
    sources: refs(t.sources),
  });
}

const degreesIn = (store: SafetyStore, d: Doneness): string =>
  store.locale === "en-GB" ? `${d.celsius} °C (${d.fahrenheit} °F)` : `${d.fahrenheit} °F (${d.celsius} °C)`;

/** "to 160 °F (71 °C) in the middle", as the end of an order to cook; "until steaming hot all through" for what has no target. */
export function heatOf(store: SafetyStore, ingredient: Ingredient, jurisdiction?: Place): string {
  const d = donenessFor(store, ingredient, jurisdiction === undefined ? {} : { jurisdiction });
  if (!d) return "until steaming hot all through";
  return `to ${degreesIn(store, d)} in the middle${d.hold >= 60 ? ` for ${d.hold / 60} minutes` : ""}`;
}

/**
 * How the target changes when one thing stands in for another; undefined when the stand-in has none, or needs the same.
 * Whole cut to mince, red meat to poultry and cured to fresh raise it.
 */
export function donenessChange(
  store: SafetyStore,
  missing: Ingredient,
  use: Ingredient,
  options: { readonly jurisdiction?: Place } = {},
): DonenessChange | undefined {
  const to = donenessFor(store, use, options);
  if (!to) return undefined;
  const from = donenessFor(store, missing, options);
  const level = (d: Doneness): number => d.celsius + (d.hold >= 120 ? 5 : 0);
  if (from && level(from) === level(to)) return undefined;
  const raised = !from || level(to) > level(from);
  const degrees = (d: Doneness): string => degreesIn(store, d);
  const held = to.hold >= 60 ? ` for ${to.hold / 60} minutes` : "";
  const rest = to.rest > 0 ? `, and rest it ${to.rest} minutes` : "";
  const order = `Cook it to ${degrees(to)} in the middle${held}${rest}`;
  const before = from ? `; what it replaces needed ${degrees(from)}` : "; what it replaces needed no cooking";
  const text = raised
    ? `${order}${before}.`
    : `${degrees(to)} in the middle is enough${rest}; what it replaces needed ${degrees(from)}.`;
  return freeze({
    ...(from ? { from } : {}),
    to,
    raised,
    text,
    step: { procedure: "cook-through", text: `${order}.`, active: 0, waiting: 0 },
  });
}

/** How an ingredient is thawed, soaked, marinated, cooled, held and reheated; of all places unless one is named. */
export function handlingFor(
  store: SafetyStore,
  ingredient: Ingredient,
  options: { readonly jurisdiction?: Jurisdiction; readonly technique?: string } = {},
): readonly Handling[] {
  const rules = safetyTables(store).temperatures.handling.filter(
    (h) =>
      (options.jurisdiction === undefined || h.jurisdiction === options.jurisdiction || h.jurisdiction === "general") &&
      (h.techniques === undefined || (options.technique !== undefined && h.techniques.includes(options.technique))) &&
      (h.when === undefined || fits(store, ingredient, h.when)),
  );
  return freeze(
    rules.map(({ topic, jurisdiction, text, figures, conflict, sources }) => ({
      topic,
      jurisdiction,
      text: conflict === undefined ? text : `${text} ${conflict}`,
      figures,
      sources: refs(sources),
    })),
  );
}
