import type { Ingredient } from "../catalogue/index.js";
import { hazardsFor, refusalFor, type HazardAnswer } from "../safety/index.js";
import type { Refusal } from "../types.js";
import { amountFor } from "./amount.js";
import type { Ask } from "./ask.js";
import { LEAST_FIT } from "./bound.js";
import type { Candidate } from "./build.js";
import type { Known } from "./evidence.js";
import { gateForAll } from "./gates.js";
import { prepFor } from "./prep.js";
import { blendsFor, stirred } from "./blend/index.js";
import { isPoured, mixture } from "./mixed.js";
import { strengths } from "./felt.js";
import { classOf, mostOf, roleFit, scoreOf, weightsOf } from "./score.js";
import { carrierOf, type Taste } from "../dose/index.js";
import { settledOf } from "./settled.js";

/** A candidate with what speaks against it, if anything does. */
export interface Weighed extends Candidate {
  readonly refusal?: Refusal;
  readonly hazards?: HazardAnswer;
}

const refused = (ask: Ask, i: Ingredient, because: Refusal["because"], what: string, detail: string): Refusal => ({
  id: i.id,
  name: ask.store.nameOf(i),
  because,
  what,
  detail,
});

/** The same food can be a stand-in in another state, but not in the state asked for, nor as the whole its part was cut from and back. */
function isSame(ask: Ask, i: Ingredient): boolean {
  if (i.food !== ask.item.food) return false;
  if (i.id === ask.item.id) return true;
  const sameState = i.state.join() === ask.item.state.join();
  return sameState && (i.part === undefined || ask.item.part === undefined);
}

function against(
  ask: Ask,
  uses: readonly { ingredient: Ingredient; grams: number }[],
  minutes: { active: number; waiting: number },
): { refusal?: Refusal; hazards?: HazardAnswer } {
  for (const { ingredient } of uses) {
    const no = refusalFor(
      ask.store,
      ingredient,
      ask.rules,
      ask.technique === undefined ? {} : { technique: ask.technique },
    );
    if (no) return { refusal: { id: ingredient.id, name: ask.store.nameOf(ingredient), ...no } };
    if (ask.onlyFromHave && ask.have && !ask.have.has(ingredient.id) && ingredient.id !== "water/pantry")
      return {
        refusal: refused(
          ask,
          ingredient,
          "not in the house",
          "not in the house",
          `${ask.store.nameOf(ingredient)} is not among what is in the house.`,
        ),
      };
  }
  const first = (uses[0] as { ingredient: Ingredient }).ingredient;
  const gate = gateForAll(ask, uses);
  if (gate) return { refusal: refused(ask, first, gate.because, gate.what, gate.detail) };
  if (ask.minutes !== undefined && minutes.active + minutes.waiting > ask.minutes)
    return {
      refusal: refused(
        ask,
        first,
        "time",
        `${Math.round(minutes.active + minutes.waiting)} minutes`,
        `${ask.store.nameOf(first)} takes ${Math.round(minutes.active + minutes.waiting)} minutes more; there are ${ask.minutes}.`,
      ),
    };
  return {};
}

function hazardsOf(ask: Ask, uses: readonly { ingredient: Ingredient; grams: number }[]): HazardAnswer {
  return hazardsFor(ask.store, {
    missing: ask.item,
    use: uses,
    ...(ask.technique === undefined ? {} : { technique: ask.technique }),
    ...(ask.roles[0] ? { role: ask.roles[0].role } : {}),
    dish: ask.dish.map((l) => l.ingredient),
    ...(ask.serves === undefined ? {} : { serves: ask.serves }),
    rules: ask.rules,
    ...(ask.setting === "" ? {} : { context: ask.setting }),
  });
}

/** Looks only at hazards of those that would be shown: the tables are long. */
export function withHazards(ask: Ask, w: Weighed): Weighed {
  const hazards = hazardsOf(ask, w.uses);
  const stop = hazards.stops.find((s) => s.kind !== "unless");
  if (!stop) return { ...w, hazards };
  const first = (w.uses[0] as { ingredient: Ingredient }).ingredient;
  // Of a mixture, the part that is refused is named.
  const i = w.uses.find((u) => u.ingredient.id === stop.ingredient)?.ingredient ?? first;
  return { ...w, hazards, refusal: refused(ask, i, "hazard", stop.hazard, stop.detail) };
}

function weigh(
  ask: Ask,
  uses: readonly { ingredient: Ingredient; grams: number }[],
  known: Known | undefined,
  before: Readonly<Record<Taste, number>>,
): Weighed {
  const steps = prepFor(ask, uses, known);
  // Each further part is another thing to fetch and measure.
  const plan = { ...steps, active: steps.active + 2 * (uses.length - 1) };
  const scored = scoreOf(ask, uses, plan, known, before);
  return known ? { uses, scored, known } : { uses, scored };
}
/** What speaks against it by yes or no. Looked at for those that come up, not for all that were weighed. */
export const withRefusal = (ask: Ask, w: Weighed): Weighed => ({ ...w, ...against(ask, w.uses, w.scored) });

/** A single stand-in no table names, with its amount and the most its score could be. */
export interface Single {
  readonly ingredient: Ingredient;
  readonly grams: number;
  readonly most: number;
}
export const weighSingle = (ask: Ask, single: Single, before: Readonly<Record<Taste, number>>): Weighed =>
  weigh(ask, [single], undefined, before);
/** What may be ranked for one question. */
export interface Field {
  /** Weighed already: known swaps and mixtures. */
  readonly weighed: readonly Weighed[];
  readonly singles: readonly Single[];
}

/** A seasoning that would have to make a third of the dish, or a thing that would need many times its weight, is no stand-in. */
function believable(ask: Ask, grams: number): boolean {
  return (
    grams > 0 &&
    Number.isFinite(grams) &&
    grams <= Math.max(ask.grams * 12, 0.02) &&
    grams >= ask.grams / 60 &&
    (grams <= ask.grams * 1.6 || grams <= 0.35 * ask.dishGrams || ask.dishKnown === false)
  );
}

/** Every single stand-in that does the job at all, and every known swap, with scores and refusals; unordered. */
export function weighAll(ask: Ask, before: Readonly<Record<Taste, number>>): Weighed[] {
  const { weighed, singles } = fieldOf(ask, before, -Infinity);
  return [...weighed, ...singles.map((s) => weighSingle(ask, s, before))].map((w) => withRefusal(ask, w));
}

/**
 * The same, unweighed where no table names the stand-in: most of them could never come up.
 * @param floor singles that cannot come up to it are left out
 */
export function fieldOf(ask: Ask, before: Readonly<Record<Taste, number>>, floor = floorOf(ask)): Field {
  const { weighed, named } = namedAndMixed(ask, before);
  const singles: Single[] = [];
  for (const ingredient of ask.store.ingredients) {
    const single = singleOf(ask, ingredient, named, floor);
    if (single !== undefined) singles.push(single);
  }
  return { weighed, singles };
}

/** A stand-in that no table names, by itself; undefined when it does not do the job, is the thing itself, or cannot come up to `floor`. */
export function singleOf(
  ask: Ask,
  ingredient: Ingredient,
  named: ReadonlyMap<string, Known>,
  floor: number,
): Single | undefined {
  if (!(roleFit(ask, ingredient) >= LEAST_FIT) || isSame(ask, ingredient) || named.has(ingredient.id)) return undefined;
  if (smellsOfElse(ask, ingredient)) return undefined;
  const grams = amountFor(ask, ingredient);
  if (!believable(ask, grams)) return undefined;
  const best = mostOf(ask, ingredient, grams);
  return best.base >= floor ? { ingredient, grams, most: best.score } : undefined;
}

/** Share of the smell that must be kept at least. */
const OTHER_SMELL = 0.05;
/** What is there for its fragrance is not replaced by another: no cinnamon for celery seed. What is in the house may serve. */
function smellsOfElse(ask: Ask, i: Ingredient): boolean {
  if (ask.have?.has(i.id) === true || carrierOf(ask.store, ask.roles[0]?.role ?? "main protein") !== "aroma")
    return false;
  return settledOf(ask).smell(i) < OTHER_SMELL;
}

/** What tables name, and mixtures; and the single ingredients that tables name. */
export function namedAndMixed(
  ask: Ask,
  before: Readonly<Record<Taste, number>>,
): { readonly weighed: readonly Weighed[]; readonly named: ReadonlyMap<string, Known> } {
  const found: Weighed[] = [];
  const known = new Map<string, Known>();
  for (const k of ask.known) {
    const only = k.uses.length === 1 ? k.uses[0] : undefined;
    if (only) {
      const old = known.get(only.ingredient.id);
      if (
        !old ||
        k.fits > old.fits ||
        (k.fits === old.fits && only.perGram !== undefined && old.uses[0]?.perGram === undefined)
      )
        known.set(only.ingredient.id, k);
      continue;
    }
    if (k.uses.some((u) => u.ingredient.id === ask.item.id)) continue;
    const share = 1 / k.uses.length;
    const uses = k.uses.map((u) => ({
      ingredient: u.ingredient,
      grams: u.perGram === undefined ? (amountFor(ask, u.ingredient) || ask.grams) * share : u.perGram * ask.grams,
    }));
    found.push(weigh(ask, uses, k, before));
  }
  for (const [id, k] of known) {
    const ingredient = ask.store.byId.get(id);
    if (!ingredient || isSame(ask, ingredient)) continue;
    const perGram = k.uses[0]?.perGram;
    const computed = perGram === undefined ? amountFor(ask, ingredient) : perGram * ask.grams;
    const grams = Number.isNaN(computed) && perGram === undefined ? ask.grams : computed;
    if (grams > 0) found.push(weigh(ask, [{ ingredient, grams }], k, before));
  }
  found.push(...mixtures(ask, before, found));
  return { weighed: found, named: known };
}

/** Mixtures worked out, where one thing alone would be second best and the job is not to be eaten for itself. */
function mixtures(ask: Ask, before: Readonly<Record<Taste, number>>, found: readonly Weighed[]): Weighed[] {
  const known = new Set(found.filter((w) => w.uses.length > 1).map((w) => names(w.uses)));
  const made = stirred(ask);
  const own = made === undefined || known.has(names(made)) ? [] : [made];
  for (const uses of own) known.add(names(uses));
  return [...own, ...solved(ask).filter((uses) => !known.has(names(uses)))].map((uses) =>
    weigh(ask, uses, undefined, before),
  );
}
function solved(ask: Ask): readonly Candidate["uses"][] {
  // A spice is itself; only blends are made of others.
  const single =
    ["spice", "herb", "chilli"].some((k) => ask.item.kinds.includes(k)) &&
    !ask.item.kinds.some((k) => k.includes("blend"));
  // What is eaten, strewn or dusted as it is has a body that adding figures up does not make; a starch is not thinned with water.
  const first = ask.roles[0]?.role ?? "";
  const asItIs = ask.item.slot !== undefined || classOf(ask) === "bulk" || NOT_MIXED.includes(first);
  if (single || (asItIs && !isPoured(ask) && !alsoSeasons(ask))) return [];
  return blendsFor(ask)
    .filter((b) => (b.residual <= FAR || b.short <= SHORT) && isOfIt(ask, b.uses))
    .map((b) => b.uses);
}
/** Coloured, but for something else nearly as much: a dark sauce is first a sauce. */
const alsoSeasons = (ask: Ask): boolean =>
  ask.roles[0]?.role === "colour" && (ask.roles[1]?.weight ?? 0) >= 0.8 * (ask.roles[0]?.weight ?? 1);
/** Sour, salt and sweet alone are not what is there for its taste: something in it must be of its kin, or smell like it a little. */
function isOfIt(ask: Ask, uses: Candidate["uses"]): boolean {
  if (classOf(ask) !== "seasoning") return true;
  const { aroma, kin } = mixture(ask, uses, false);
  return kin >= ALIEN_KIN || aroma >= ALIEN_SMELL;
}
const ALIEN_KIN = 0.1;
const ALIEN_SMELL = 0.3;
const names = (uses: readonly { ingredient: Ingredient }[]): string =>
  uses
    .map((u) => u.ingredient.id)
    .sort()
    .join("+");
const NOT_MIXED: readonly string[] = ["garnish", "coating", "thickener", "colour", "foam"];
/** Steps beyond which a mixture is another thing, unless it brings all but so little of what there was. */
const FAR = 0.9;
const SHORT = 0.08;

export const beforeOf = (ask: Ask): Readonly<Record<Taste, number>> =>
  strengths(ask, [{ ingredient: ask.item, grams: ask.grams }]);
export const floorOf = (ask: Ask): number => weightsOf(ask).floor[classOf(ask)];
/** One stand-in weighed whatever its role: for judging a single swap. */
export function weighOne(ask: Ask, ingredient: Ingredient, before: Readonly<Record<Taste, number>>): Weighed {
  const all = ask.known.filter((k) => k.uses.length === 1 && k.uses[0]?.ingredient.id === ingredient.id);
  const known = [...all].sort((a, b) => b.fits - a.fits)[0];
  const computed = amountFor(ask, ingredient);
  const grams =
    known?.uses[0]?.perGram === undefined
      ? Number.isNaN(computed)
        ? ask.grams
        : computed
      : known.uses[0].perGram * ask.grams;
  return withRefusal(ask, weigh(ask, [{ ingredient, grams }], known, before));
}
