import type { Ingredient } from "../catalogue/index.js";
import { AT, WIDTH, carrierAmount, carrierOf, doseMatrix, type Axis } from "../dose/index.js";
import type { Ask } from "./ask.js";

/** Jobs whose amount is held down when the stand-in brings more of something else than the dish would bear. */
const SEASONING: readonly string[] = ["salt", "acid", "umami", "pungency", "aroma", "sweetness"];
/** Steps on each axis, g per 100 g of dish (SHU for pungency), that would be noticed (docs/method). */
const STEP: readonly (readonly [Axis, number])[] = [
  ["salt", 0.15],
  ["sweetness", 1.5],
  ["acid", 0.1],
  ["pungency", 150],
  ["bitter", 1],
  ["alcohol", 1.5],
];

/**
 * Grams of `use` that leave the dish closest to what it was for the jobs asked: weighted least squares over the jobs' carriers in
 * relative units, and over what the stand-in would bring too much of in noticeable steps. Not negative; NaN when nothing can be compared.
 */
export function amountFor(ask: Ask, use: Ingredient): number {
  const matrix = doseMatrix(ask.store);
  const { item, grams } = ask;
  let top = 0;
  let bottom = 0;
  let first = Number.NaN;
  for (const { role, weight } of ask.roles) {
    const mine = use.roles.find((r) => r.role === role)?.weight ?? 0;
    if (mine <= 0) continue;
    const x = carrierAmount(ask.store, item, grams, use, role, ask.dishGrams);
    if (!(x > 0)) continue;
    if (Number.isNaN(first)) first = x;
    // (x / x_r - 1)^2 weighted by the job: a least-squares pull towards each job's own amount.
    const w = weight * weight;
    top += w / x;
    bottom += w / (x * x);
  }
  if (bottom === 0) return Number.NaN;
  // Least squares heeds the smallest amount most: the first job keeps its say.
  const carriers = Math.min(2 * first, Math.max(first / 2, top / bottom));
  if (!SEASONING.includes(carrierOf(ask.store, ask.roles[0]?.role ?? "main protein"))) return carriers;
  // What comes along in excess pulls the amount down, but not below a third: then another swap is the better answer.
  const relative = 1 / (carriers * carriers * 0.0625);
  let a = carriers * relative;
  let b = relative;
  for (const [axis, step] of STEP) {
    const has = (matrix[item.index * WIDTH + AT[axis]] as number) * grams;
    const brings = matrix[use.index * WIDTH + AT[axis]] as number;
    if (!(brings > 0) || Number.isNaN(has)) continue;
    const sigma = (step * ask.dishGrams) / 100;
    if (brings * carriers - has <= sigma) continue;
    const w = (brings * brings) / (sigma * sigma);
    a += w * ((has + sigma) / brings);
    b += w;
  }
  return Math.max(carriers / 3, a / b);
}
