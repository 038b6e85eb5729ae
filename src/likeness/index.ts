import type { Ingredient, Store } from "../catalogue/index.js";
import { profilesOf, type Stage } from "./profiles.js";
export type { Stage } from "./profiles.js";
export { commonMakeup, partsOf } from "./makeup.js";
export { formLikeness, useLikeness } from "./form.js";

/** Gaining a note that was not there costs this many times what losing one does (judgement: taste is not symmetric). */
const ALIEN = 1.6;

/**
 * How much of one aroma profile another keeps, 0 to 1; not symmetric. Levels are compared as they stand: they say how strongly each
 * smells as it is usually used, which is what a fitted amount brings.
 */
export function aromaLikeness(store: Store, missing: Ingredient, use: Ingredient): number {
  const { aromas, aroma } = profilesOf(store);
  return profileLikeness(aroma, missing.index * aromas.length, aroma, use.index * aromas.length, aromas.length);
}
/** The same for a profile of its own: what a mixture smells of. */
export function smellLikeness(store: Store, missing: Ingredient, levels: ArrayLike<number>): number {
  const { aromas, aroma } = profilesOf(store);
  return profileLikeness(aroma, missing.index * aromas.length, levels, 0, aromas.length);
}
function profileLikeness(
  missing: ArrayLike<number>,
  m0: number,
  use: ArrayLike<number>,
  u0: number,
  w: number,
): number {
  let difference = 0;
  let total = 0;
  for (let k = 0; k < w; k++) {
    const a = missing[m0 + k] as number;
    const b = use[u0 + k] as number;
    difference += b > a ? ALIEN * (b - a) : a - b;
    total += a + b;
  }
  // Two faint profiles differ by little however unlike they are: never divide by less than two marked notes.
  return Math.max(0, 1 - difference / Math.max(total, 6));
}

/** 0 to 1; symmetric. Undefined when the two share no judged attribute. */
export function textureLikeness(store: Store, a: Ingredient, b: Ingredient, stage: Stage): number | undefined {
  const { textures, texture } = profilesOf(store);
  const w = textures.length;
  const rows = texture[stage];
  let sum = 0;
  let n = 0;
  for (let k = 0; k < w; k++) {
    const x = rows[a.index * w + k] as number;
    const y = rows[b.index * w + k] as number;
    if (x < 0 && y < 0) continue;
    // Judged in one only: taken as absent in the other, at half weight, since kinds list what stands out.
    if (x < 0 || y < 0) {
      const d = Math.max(x, y);
      sum += 0.5 * d * d * 0.25;
      n += 0.5;
      continue;
    }
    sum += (x - y) * (x - y);
    n += 1;
  }
  return n === 0 ? undefined : Math.max(0, 1 - Math.sqrt(sum / n) / 5);
}

/** Nearness in the kind tree, 0 to 1; symmetric. Same food in another state 0.95, same kind 0.9, then by how deep the common
 * ancestor lies, or by what both are made from. */
export function kinLikeness(a: Ingredient, b: Ingredient): number {
  if (a.id === b.id) return 1;
  if (a.food === b.food && a.part === b.part) return 0.95;
  if (a.kind === b.kind) return 0.9;
  const la = a.kinds;
  const lb = b.kinds;
  // "food" itself and the first branch (plant, animal, ...) say nothing in a kitchen: the last of either line is left out.
  const deep = Math.max(la.length, lb.length) - 1;
  let common = 0;
  for (let k = 0; k < la.length - 1; k++) {
    const at = lb.indexOf(la[k] as string);
    if (at >= 0 && at < lb.length - 1) common++;
  }
  const tree = deep <= 0 ? 0 : Math.min(0.85, (0.9 * common) / deep);
  return Math.max(tree, 0.45 * sharedOrigin(a, b));
}

/** What tells little of kinship: nearly everything is a plant, and microbes are in half of all seasonings. */
const COMMON_ORIGIN: readonly string[] = ["plant", "microbe", "mineral", "alcohol", "leavening yeast"];
/** Share of what two are made from that is the same: dried shrimp and shrimp paste, butter and buttermilk. */
function sharedOrigin(a: Ingredient, b: Ingredient): number {
  let all = 0;
  let both = 0;
  for (const o of a.origin) {
    if (COMMON_ORIGIN.includes(o)) continue;
    all++;
    if (b.origin.has(o)) both++;
  }
  if (both === 0) return 0;
  for (const o of b.origin) if (!COMMON_ORIGIN.includes(o) && !a.origin.has(o)) all++;
  return both / all;
}

/** Share of one's traditions the other belongs to as well, 0 to 1; 0.5 when either lists none. */
export function customLikeness(missing: Ingredient, use: Ingredient, cuisines?: readonly string[]): number {
  // Read once: a row looks them up.
  const theirs = use.traditions;
  if (cuisines !== undefined) {
    if (theirs.length === 0) return 0.5;
    return cuisines.some((t) => theirs.includes(t)) ? 1 : 0.25;
  }
  const own = missing.traditions;
  if (own.length === 0 || theirs.length === 0) return 0.5;
  let common = 0;
  for (const t of own) if (theirs.includes(t)) common++;
  return common / own.length;
}
