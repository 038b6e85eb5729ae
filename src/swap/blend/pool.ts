import type { Ingredient } from "../../catalogue/index.js";
import { dose, type Axis } from "../../dose/index.js";
import type { Ask } from "../ask.js";
import { alien } from "../gates.js";
import { settledOf } from "../settled.js";

/** What a part costs against its use, in squared steps: little when plain or kin, more the further it lies from what is missing. */
const PLAIN_COST = 0.6;
const FAR_COST = 6;
const HARMLESS: readonly string[] = ["sweet", "sour", "alcohol"];

/** What is sour anyway may be soured by lemon or lime. */
const SOURS: readonly string[] = ["citrus"];
const SOUR_JOB = 0.4;
/**
 * A note that people name a part by is at home in the missing thing when it is named by it too, or smells at least half as much of what
 * the part smells of most: cinnamon in a blend led by anise.
 */
function isNative(ask: Ask, i: Ingredient, note: string): boolean {
  const { item } = ask;
  if (HARMLESS.includes(note) || item.dominant.includes(note)) return true;
  if (SOURS.includes(note)) return item.roles.some((r) => r.role === "acid" && r.weight >= SOUR_JOB);
  const [family, level] = Object.entries(i.aroma).reduce((top, one) => (one[1] > top[1] ? one : top), ["", 0]);
  return level > 0 && (item.aroma[family] ?? 0) >= level / 2;
}

/** Parts with such a job come in only for what has that job too: no soda to fill a syrup, no turmeric to brown a sauce. */
const WORKING: readonly string[] = [
  "salt seasoning",
  "umami seasoning",
  "spice",
  "herb",
  "heat",
  "aromatic",
  "leavener",
  "gelling agent",
  "colour",
  "thickener",
  "structure",
  "sweetener",
  "acid",
  "fat",
  "binder",
  "foam",
];
/** g water per g below which a thing is dry. */
const DRY = 0.15;
/** Weight from which a job counts as one of its own. */
const JOB = 0.3;
/** Or so much of it, in g per g, that it was noticed. */
const HELD: Readonly<Record<string, readonly [Axis, number]>> = {
  sweetener: ["sweetness", 0.02],
  acid: ["acid", 0.004],
  fat: ["fat", 0.02],
};
function belongs(ask: Ask, i: Ingredient): boolean {
  // What is dry, or compared by what it smells of, lifts or sets, would take any amount of water without a sign.
  if (i.id === "water/pantry" && dose(ask.store, ask.item, "water") < DRY) return false;
  const job = i.roles[0]?.role;
  if (job === undefined || !WORKING.includes(job)) return true;
  if (ask.item.roles.some((r) => r.role === job && r.weight >= JOB)) return true;
  const holds = HELD[job];
  if (holds && dose(ask.store, ask.item, holds[0]) > holds[1]) return true;
  // Salt is in nearly everything made: it may come in where the missing thing was noticeably salty.
  return i.id === "salt/pantry" && dose(ask.store, ask.item, "salt") > 0.004;
}

/** Does the very job that is asked for, and well: soda where lift is wanted, tomato paste where tomato is. */
const sameJob = (ask: Ask, i: Ingredient): boolean =>
  ask.item.roles.some(
    (r) => r.weight >= 0.2 && WORKING.includes(r.role) && i.roles[0]?.role === r.role && i.kind !== "spice",
  );

/** Jobs that one thing can lend another whatever it tastes of. */
const LENT: readonly string[] = [
  "umami seasoning",
  "salt seasoning",
  "sweetener",
  "acid",
  "leavener",
  "thickener",
  "fat",
  "heat",
  "gelling agent",
];
/** A part is plain, kin, smells alike, or does one of the working jobs; else it only adds up on paper (juice and oil for coconut milk). */
function related(ask: Ask, i: Ingredient): boolean {
  if (isPlain(ask, i) || settledOf(ask).kin(i) >= 0.3 || settledOf(ask).aroma(i) >= 0.3) return true;
  const job = i.roles[0]?.role;
  return job !== undefined && LENT.includes(job) && ask.item.roles.some((r) => r.role === job && r.weight >= 0.4);
}

interface Basics {
  readonly basics: readonly string[];
  readonly plain: readonly string[];
}
const basicsOf = (ask: Ask): Basics => (ask.store.tables["basics"] as Basics | undefined) ?? { basics: [], plain: [] };

/**
 * The parts a mixture may be made of: the house when it was told, else what kitchens have; never what is missing or alien to it. What
 * someone at the table must avoid is struck out later, from finished mixtures: avoiding more then never brings up something new.
 */
export function pool(ask: Ask): Ingredient[] {
  const { basics } = basicsOf(ask);
  const ids = ask.onlyFromHave && ask.have ? [...ask.have, "water/pantry"] : [...(ask.have ?? []), ...basics];
  return (
    [...new Set(ids)]
      .sort()
      .flatMap((id) => ask.store.byId.get(id) ?? [])
      // Another state of the missing food may be a part (its powder with water), the thing itself may not.
      .filter((i) => i.food !== ask.item.food || (i.part === ask.item.part && i.state.join() !== ask.item.state.join()))
      .filter((i) => isPlain(ask, i) || i.dominant.every((note) => isNative(ask, i, note)))
      .filter((i) => belongs(ask, i) && related(ask, i))
      .filter((i) => alien(ask, i) === undefined)
  );
}

/** What a part costs before it has brought anything: less the nearer it is to what is missing. */
export const costOf = (ask: Ask, i: Ingredient): number =>
  isPlain(ask, i) || sameJob(ask, i)
    ? PLAIN_COST
    : PLAIN_COST + FAR_COST * (1 - Math.max(settledOf(ask).kin(i), settledOf(ask).aroma(i)));

export const isPlain = (ask: Ask, i: Ingredient): boolean => basicsOf(ask).plain.includes(i.id);
export const isBasic = (ask: Ask, i: Ingredient): boolean => basicsOf(ask).basics.includes(i.id);
