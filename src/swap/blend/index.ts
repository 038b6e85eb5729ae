import type { Ingredient } from "../../catalogue/index.js";
import { carrierOf, dose } from "../../dose/index.js";
import type { Ask } from "../ask.js";
import { costOf, pool } from "./pool.js";
import { spaceFor, type Space } from "./vector.js";
import { nnls } from "./solve.js";
export { isBasic } from "./pool.js";
export { stirred } from "./stirred.js";

export interface Blend {
  readonly uses: readonly { readonly ingredient: Ingredient; readonly grams: number }[];
  /** What is left over and what the parts cost, root mean square in steps a cook would mind: for ranking mixtures among themselves. */
  readonly residual: number;
  /** What is left over as a share of all there was to bring, both squared: 0 is the thing itself, 1 nothing of it. */
  readonly short: number;
}
/** Of the best pairs and triples this many are grown by one more part. */
const BEAM = 24;
/** A further part must cut what is left by this much, or it is clutter. */
const WORTH = 0.82;
const KEEP = 40;
/** And by so much in squared steps, or nobody would notice that it was left out. */
const NOTICED = 1;
/** Share of water in something wet that changes nothing. */
const SPLASH = 0.2;
/** Grams of a mixture for a gram of what is missing, at most. */
const MOST = 12;
const SPRINKLED: readonly string[] = ["herb", "spice", "chilli"];
/** Grams of what is sprinkled for a gram of something wet, at most. */
const PINCH = 0.06;
/** Grams of a powder made up with water for a gram of something wet, at most. */
const POWDER = 0.3;
/** What a part brings, in squared steps, below which nobody would notice it was left out. */
const LEAST = 0.08;

/**
 * Mixtures of two to four parts that come close to what is missing in makeup, taste, working and aroma: non-negative least squares over
 * the parts, grown from the best pairs. Best first.
 */
export function blendsFor(ask: Ask): Blend[] {
  const parts = pool(ask);
  const cost = parts.map((i) => costOf(ask, i));
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
  const fit = (set: readonly number[]): { set: readonly number[]; x: number[]; left: number; paid: number } => {
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
    return { set, x, left: Math.max(0, left) + paid, paid };
  };
  type Fit = ReturnType<typeof fit>;
  // Fat and water part again unless something holds them together: butter in water is no milk.
  // Cold, dairy does not either: butter sits in a dip in lumps, and oil swims on it.
  const cold = ask.technique === "raw" && ask.item.origin.has("dairy");
  const holds = parts.map(
    (i) => i.can.has("emulsifies") || (!cold && i.origin.has("dairy") && dose(ask.store, i, "water") > 0.3),
  );
  const fatty = parts.map((i) => dose(ask.store, i, "fat") > 0.6);
  // Spooned cold as it is, a sauce holds no fat that is hard when cold: no yolk beaten into margarine.
  const spooned = ask.item.can.has("emulsifies") && ask.item.can.has("edible uncooked") && !ask.item.can.has("melts");
  const hard = parts.map((i, r) => spooned && fatty[r] === true && i.can.has("melts"));
  const wet = parts.map((i) => dose(ask.store, i, "water") > 0.7);
  const sour = parts.map((i) => i.roles[0]?.role === "acid");
  // Two fats are no nearer a third than either is, nor are two sours.
  const together = (set: readonly number[]): boolean => {
    let fats = 0;
    let sours = 0;
    for (const r of set) {
      if (hard[r]) return false;
      if (fatty[r]) fats++;
      if (sour[r]) sours++;
    }
    if (sours > 1) return false;
    return fats === 0 || (fats === 1 && (!set.some((r) => wet[r]) || set.some((r) => holds[r])));
  };
  // Dry herbs, spices and glutamate flavour what is wet; they do not make it up.
  const moist = dose(ask.store, ask.item, "water") > 0.3;
  // A powder that takes up water makes a paste of lumps when it is most of it.
  const powder = parts.map((i) => moist && (i.ready?.yield ?? 1) > 1);
  const sprinkled = moist
    ? parts.map(
        (i) =>
          dose(ask.store, i, "water") < 0.15 &&
          (i.kinds.some((k) => SPRINKLED.includes(k)) || i.roles[0]?.role === "umami seasoning"),
      )
    : [];
  const whole = (f: Fit): boolean =>
    f.x.reduce((sum, v) => sum + v, 0) <= MOST &&
    f.x.every((v, i) => v <= PINCH || sprinkled[f.set[i] as number] !== true) &&
    f.x.every((v, i) => v <= POWDER || powder[f.set[i] as number] !== true) &&
    f.x.every(
      (v, i) => v > 0.0004 && (gram[(f.set[i] as number) * n + (f.set[i] as number)] as number) * v * v > LEAST,
    );
  // Of two wet things a fifth more or less is nobody's concern: a splash of water makes no mixture.
  const water = parts.findIndex((i) => i.id === "water/pantry");
  const splash = (f: Fit): boolean => {
    const at = f.set.indexOf(water);
    if (f.set.length > 2 || at < 0 || !wet[f.set[1 - at] as number]) return false;
    return (f.x[at] as number) < SPLASH * ((f.x[0] as number) + (f.x[1] as number));
  };
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
  // Every part must earn its place: the mixture without any one of them is clearly worse, and so much that it is noticed.
  const earned = (f: Fit): boolean =>
    f.set.every((r) => {
      const without = fitOf(f.set.filter((q) => q !== r));
      return f.left < without.left * WORTH && without.left - without.paid - (f.left - f.paid) >= NOTICED;
    });
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
        if (f.left < base.left * WORTH && whole(f) && !splash(f) && earned(f)) grown.push(f);
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
      short: total > 0 ? (f.left - f.paid) / total : 1,
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
