import type { Ingredient } from "../../catalogue/index.js";
import { carrierOf, dose } from "../../dose/index.js";
import type { Ask } from "../ask.js";
import { alien } from "../gates.js";
import { settledOf } from "../settled.js";
import { spaceFor, type Space } from "./vector.js";
import { nnls } from "./solve.js";

export interface Blend {
  readonly uses: readonly { readonly ingredient: Ingredient; readonly grams: number }[];
  /** What is left over and what the parts cost, root mean square in steps a cook would mind: for ranking mixtures among themselves. */
  readonly residual: number;
}
/** Of the best pairs and triples this many are grown by one more part. */
const BEAM = 24;
/** A further part must cut what is left by this much, or it is clutter. */
const WORTH = 0.82;
const KEEP = 40;
/** Grams of a mixture for a gram of what is missing, at most. */
const MOST = 12;
/** What a part brings, in squared steps, below which nobody would notice it was left out. */
const LEAST = 0.08;

/** What a part costs against its use, in squared steps: little when plain or kin, more the further it lies from what is missing. */
const PLAIN_COST = 0.6;
const FAR_COST = 6;
const HARMLESS: readonly string[] = ["sweet", "sour", "alcohol"];

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
];
const SCENT: readonly string[] = ["spice", "herb", "chilli"];
function belongs(ask: Ask, i: Ingredient): boolean {
  // What is dry and compared by what it smells of, lifts or sets would take any amount of water without a sign.
  const top = ask.item.roles[0]?.role ?? "";
  const essence = ["leavener", "gelling agent"].includes(top) || SCENT.some((k) => ask.item.kinds.includes(k));
  if (i.id === "water/pantry" && essence && dose(ask.store, ask.item, "water") < 0.25) return false;
  const job = i.roles[0]?.role;
  if (job === undefined || !WORKING.includes(job)) return true;
  if (ask.item.roles.some((r) => r.role === job && r.weight >= 0.2)) return true;
  if (job === "sweetener" && dose(ask.store, ask.item, "sweetness") > 0.02) return true;
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
function pool(ask: Ask): Ingredient[] {
  const { basics } = basicsOf(ask);
  const ids = ask.onlyFromHave && ask.have ? [...ask.have, "water/pantry"] : [...(ask.have ?? []), ...basics];
  return (
    [...new Set(ids)]
      .sort()
      .flatMap((id) => ask.store.byId.get(id) ?? [])
      // Another state of the missing food may be a part (its powder with water), the thing itself may not.
      .filter((i) => i.food !== ask.item.food || (i.part === ask.item.part && i.state.join() !== ask.item.state.join()))
      .filter((i) => i.dominant.every((note) => HARMLESS.includes(note) || ask.item.dominant.includes(note)))
      .filter((i) => belongs(ask, i) && related(ask, i))
      .filter((i) => alien(ask, i) === undefined)
  );
}

/**
 * Mixtures of two to four parts that come close to what is missing in makeup, taste, working and aroma: non-negative least squares over
 * the parts, grown from the best pairs. Best first.
 */
export function blendsFor(ask: Ask): Blend[] {
  const parts = pool(ask);
  const { plain } = basicsOf(ask);
  const cost = parts.map((i) =>
    plain.includes(i.id) || sameJob(ask, i)
      ? PLAIN_COST
      : PLAIN_COST + FAR_COST * (1 - Math.max(settledOf(ask).kin(i), settledOf(ask).aroma(i))),
  );
  const { space, target, vectorOf } = spaceOf(ask);
  const vectors = parts.map(vectorOf);
  const n = parts.length;
  const dot = (a: Float64Array, b: Float64Array): number => {
    let s = 0;
    for (let k = 0; k < space.width; k++) s += (a[k] as number) * (b[k] as number);
    return s;
  };
  const gram = new Float64Array(n * n);
  for (let i = 0; i < n; i++)
    for (let j = i; j < n; j++)
      gram[i * n + j] = gram[j * n + i] = dot(vectors[i] as Float64Array, vectors[j] as Float64Array);
  const b = vectors.map((v) => dot(v, target));
  const total = dot(target, target);
  const g = new Float64Array(16);
  const y = new Float64Array(4);
  const fit = (set: readonly number[]): { set: readonly number[]; x: number[]; left: number } => {
    const m = set.length;
    for (let i = 0; i < m; i++) {
      const r = set[i] as number;
      for (let k = 0; k < m; k++) g[i * m + k] = gram[r * n + (set[k] as number)] as number;
      y[i] = b[r] as number;
    }
    const x = nnls(g, y, m);
    let left = total;
    let paid = 0;
    for (let i = 0; i < m; i++) {
      left -= (x[i] as number) * (y[i] as number);
      paid += cost[set[i] as number] as number;
    }
    return { set, x, left: Math.max(0, left) + paid };
  };
  type Fit = ReturnType<typeof fit>;
  // Fat and water part again unless something holds them together: butter in water is no milk.
  const holds = parts.map(
    (i) => i.can.has("emulsifies") || (i.origin.has("dairy") && dose(ask.store, i, "water") > 0.3),
  );
  const fatty = parts.map((i) => dose(ask.store, i, "fat") > 0.6);
  const wet = parts.map((i) => dose(ask.store, i, "water") > 0.7);
  // Two fats are no nearer a third than either is.
  const together = (set: readonly number[]): boolean => {
    let fats = 0;
    for (const r of set) if (fatty[r]) fats++;
    return fats === 0 || (fats === 1 && (!set.some((r) => wet[r]) || set.some((r) => holds[r])));
  };
  const whole = (f: Fit): boolean =>
    f.x.reduce((sum, v) => sum + v, 0) <= MOST &&
    f.x.every(
      (v, i) => v > 0.0004 && (gram[(f.set[i] as number) * n + (f.set[i] as number)] as number) * v * v > LEAST,
    );
  const better = (a: Fit, c: Fit): number => a.left - c.left || a.set.length - c.set.length;
  const keyOf = (set: readonly number[]): number => {
    let key = 0;
    for (const r of set) key = key * (n + 1) + r + 1;
    return key;
  };
  const fits = new Map<number, Fit>();
  const fitOf = (set: readonly number[]): Fit => {
    const key = keyOf(set);
    let f = fits.get(key);
    if (!f) {
      f = fit(set);
      fits.set(key, f);
    }
    return f;
  };
  // Every part must earn its place: the mixture without any one of them is clearly worse.
  const earned = (f: Fit): boolean => f.set.every((r) => f.left < fitOf(f.set.filter((q) => q !== r)).left * WORTH);
  // What the parts cost alone is more than they could ever be worth beside what was there before: nothing to solve.
  const tooDear = (set: readonly number[], base: Fit): boolean => {
    let paid = 0;
    for (const r of set) paid += cost[r] as number;
    return paid >= base.left * WORTH;
  };
  const found: Fit[] = [];
  let layer: Fit[] = parts.map((_, i) => fitOf([i]));
  for (let size = 2; size <= 4; size++) {
    const grown: Fit[] = [];
    const tried = new Set<number>();
    for (const base of size === 2 ? layer : layer.slice(0, BEAM)) {
      for (let j = 0; j < n; j++) {
        if (base.set.includes(j)) continue;
        const set = withPart(base.set, j);
        const key = keyOf(set);
        if (tried.has(key)) continue;
        tried.add(key);
        if (tooDear(set, base) || !together(set)) continue;
        const f = fitOf(set);
        if (f.left < base.left * WORTH && whole(f) && earned(f)) grown.push(f);
      }
    }
    layer = grown.sort(better);
    found.push(...layer.slice(0, KEEP));
  }
  return found
    .sort(better)
    .slice(0, KEEP)
    .map((f) => ({
      uses: f.set.map((r, i) => ({ ingredient: parts[r] as Ingredient, grams: (f.x[i] as number) * ask.grams })),
      residual: Math.sqrt(f.left / space.width),
    }));
}

/** A set of parts, lowest first, with one more in its place. */
function withPart(set: readonly number[], part: number): number[] {
  const grown = set.slice();
  let at = set.length;
  for (; at > 0 && (set[at - 1] as number) > part; at--) grown[at] = set[at - 1] as number;
  grown[at] = part;
  return grown;
}

/** How far the makeup of a given mixture lies from what is missing, root mean square in steps a cook would mind; 0 is the thing itself. */
export function residualOf(
  ask: Ask,
  uses: readonly { readonly ingredient: Ingredient; readonly grams: number }[],
): number {
  const { space, target, vectorOf } = spaceOf(ask);
  const rest = target.slice();
  for (const { ingredient, grams } of uses) {
    const v = vectorOf(ingredient);
    for (let k = 0; k < space.width; k++)
      if (v[k] !== 0) rest[k] = (rest[k] as number) - ((v[k] as number) * grams) / ask.grams;
  }
  let sum = 0;
  for (let k = 0; k < space.width; k++) sum += (rest[k] as number) * (rest[k] as number);
  return Math.sqrt(sum / space.width);
}

interface AskSpace {
  readonly space: Space;
  readonly target: Float64Array;
  readonly vectorOf: (i: Ingredient) => Float64Array;
}
const spaces = new WeakMap<Ask, AskSpace>();
/** The space of one question and the vectors in it, made once each. */
function spaceOf(ask: Ask): AskSpace {
  let made = spaces.get(ask);
  if (!made) {
    const carriers = new Set(ask.roles.filter((r) => r.weight >= 0.5).map((r) => carrierOf(ask.store, r.role)));
    const space = spaceFor(ask.store, ask.item, carriers);
    const vectors = new Map<Ingredient, Float64Array>();
    const vectorOf = (i: Ingredient): Float64Array => {
      let v = vectors.get(i);
      if (!v) {
        v = space.vector(i);
        vectors.set(i, v);
      }
      return v;
    };
    made = { space, target: space.vector(ask.item), vectorOf };
    spaces.set(ask, made);
  }
  return made;
}
const isPlain = (ask: Ask, i: Ingredient): boolean => basicsOf(ask).plain.includes(i.id);
export const isBasic = (ask: Ask, i: Ingredient): boolean => basicsOf(ask).basics.includes(i.id);
