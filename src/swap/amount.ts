import type { Ingredient } from "../catalogue/index.js";
import { AT, WIDTH, carrierAmount, carrierOf, dose, doseMatrix, type Axis } from "../dose/index.js";
import type { RoleId } from "../types.js";
import type { Ask } from "./ask.js";

/** Jobs whose amount is held down when the stand-in brings more of something else than the dish would bear. */
const SEASONING: readonly string[] = ["salt", "acid", "umami", "pungency", "aroma", "sweetness"];
/** Steps on each axis, g per 100 g of dish (SHU for pungency), that would be noticed (docs/method). */
const STEP: readonly (readonly [Axis, number])[] = [
  ["salt", 0.15],
  ["sweetness", 1.5],
  ["acid", 0.1],
  ["pungency", 150],
  ["alcohol", 1.5],
];

/** What a job asks for is cut to a third of it at most: then another swap is the better answer. */
const LEAST = 3;

/**
 * Grams of `use` that leave the dish closest to what it was for the jobs asked: weighted least squares over the jobs' carriers in
 * relative units, and over what the stand-in would bring too much of in noticeable steps; then as far towards the same measure as cooks
 * go. Not negative; NaN when nothing can be compared.
 */
export function amountFor(ask: Ask, use: Ingredient): number {
  return towardsMeasure(ask, use, held(ask, use, byCarriers(ask, use)));
}

function byCarriers(ask: Ask, use: Ingredient): number {
  let top = 0;
  let bottom = 0;
  let first = Number.NaN;
  for (const { role, weight } of ask.roles) {
    const mine = use.roles.find((r) => r.role === role)?.weight ?? 0;
    if (mine <= 0) continue;
    const x = carrierAmount(ask.store, ask.item, ask.grams, use, role, ask.dishGrams);
    if (!(x > 0)) continue;
    if (Number.isNaN(first)) first = x;
    // (x / x_r - 1)^2 weighted by the job: a least-squares pull towards each job's own amount.
    const w = weight * weight;
    top += w / x;
    bottom += w / (x * x);
  }
  if (bottom === 0) return Number.NaN;
  // Least squares heeds the smallest amount most: the first job keeps its say.
  return Math.min(LEAST * first, Math.max(first / LEAST, top / bottom));
}

/** What comes along in excess pulls the amount down. */
function held(ask: Ask, use: Ingredient, carriers: number): number {
  if (!(carriers > 0) || !SEASONING.includes(carrierOf(ask.store, firstJob(ask)))) return carriers;
  const matrix = doseMatrix(ask.store);
  const relative = 1 / (carriers * carriers * 0.0625);
  let a = carriers * relative;
  let b = relative;
  for (const [axis, step] of STEP) {
    const has = (matrix[ask.item.index * WIDTH + AT[axis]] as number) * ask.grams;
    const brings = matrix[use.index * WIDTH + AT[axis]] as number;
    if (!(brings > 0) || Number.isNaN(has)) continue;
    const sigma = (step * ask.dishGrams) / 100;
    if (brings * carriers - has <= sigma) continue;
    const w = (brings * brings) / (sigma * sigma);
    a += w * ((has + sigma) / brings);
    b += w;
  }
  return Math.max(carriers / LEAST, a / b);
}

const firstJob = (ask: Ask): RoleId => ask.roles[0]?.role ?? "main protein";

/** What fills the dish keeps its room: within a quarter of it, whatever it brings (docs/method). */
const FILLS: readonly string[] = [
  "liquid",
  "enrichment",
  "foam",
  "emulsifier",
  "tenderiser",
  "frying medium",
  "coating",
  "garnish",
];
const ROOM = 1.25;
/** How much the same measure counts beside what the doses say, by what the first job goes by (docs/method). */
const SAME: Readonly<Record<string, number>> = {
  salt: 0.7,
  acid: 0.7,
  sweetness: 0.7,
  umami: 0.7,
  aroma: 0.5,
  pungency: 0.5,
  "served weight": 0.5,
  "dry weight": 0.5,
  binding: 0.5,
};
const FILL = 0.85;
/** From a factor of two on nobody would take the one for the other by the spoonful: there the same measure counts half. */
const APART = Math.LN2;
/** Dry things whose cups weigh by so much apart are packed otherwise. */
const AIRY = Math.log(ROOM);
const SNAP = Math.log(1.2);
/** Between what is dry and what is wet a spoonful means little. */
const UNLIKE = 0.4;

/**
 * A cook takes as much as the recipe says unless something speaks against it, and strengths are known roughly at best. In logarithms:
 * d, how far the doses lie from the same measure, becomes d (1 - s / (1 + (d / ln 2)^2)): near the same measure where the two differ
 * little, what the doses say where they differ much. Rising in the doses' amount, so the stronger stand-in is always the smaller one.
 */
function towardsMeasure(ask: Ask, use: Ingredient, x: number): number {
  // The same food dried, ground or canned: its yields are known, and a spoonful of each is no like.
  if (!(x > 0) || use.food === ask.item.food) return x;
  const role = firstJob(ask);
  const fills = FILLS.includes(role);
  const share = fills ? FILL : (SAME[carrierOf(ask.store, role)] ?? 0);
  if (share === 0) return x;
  const measure = sameMeasure(ask, use);
  const unlike = isUnlike(ask, use);
  const d = Math.log(x / measure);
  // A cup of powder or flakes that weighs otherwise holds more or less air, and says the less.
  const airy = !fills && isDry(ask, ask.item) && isDry(ask, use) ? Math.log(measure / ask.grams) / AIRY : 0;
  const same = (share * (unlike ? UNLIKE : 1)) / (1 + (d / APART) ** 2 + airy * airy);
  const nearer = d * (1 - same);
  // Within a fifth nobody tastes the difference, and everybody fills the same spoon.
  if (Math.abs(nearer) <= SNAP && carrierOf(ask.store, role) !== "served weight") return measure;
  const moved = measure * Math.exp(nearer);
  return fills && !unlike ? Math.min(ROOM * measure, Math.max(measure / ROOM, moved)) : moved;
}

/** As many grams as fill the measure the recipe asks for: the same weight on a scale, the same cup or spoon where both have one. */
function sameMeasure(ask: Ask, use: Ingredient): number {
  if (ask.byWeight) return ask.grams;
  const room = dose(ask.store, ask.item, "volume") / dose(ask.store, use, "volume");
  return room > 0 && Number.isFinite(room) ? ask.grams * room : ask.grams;
}

const isWet = ({ store }: Ask, i: Ingredient): boolean => dose(store, i, "water") > 0.5 || dose(store, i, "fat") > 0.5;
const isDry = (ask: Ask, i: Ingredient): boolean => dose(ask.store, i, "water") < 0.15 && !isWet(ask, i);
/** A dry thing beside one that is wet or all fat. */
const isUnlike = (ask: Ask, use: Ingredient): boolean =>
  (isWet(ask, ask.item) && isDry(ask, use)) || (isDry(ask, ask.item) && isWet(ask, use));
