import type { Ingredient } from "../catalogue/index.js";
import { AT, NOTICEABLE, TASTES, WIDTH, doseMatrix, perceived, umami, type Taste } from "../dose/index.js";
import type { Ask } from "./ask.js";

/** Perceived strengths (0 to 9) of so many grams in the dish; NaN where not measured. */
export function strengths(
  ask: Ask,
  parts: readonly { ingredient: Ingredient; grams: number }[],
): Record<Taste, number> {
  const matrix = doseMatrix(ask.store);
  const to100 = 100 / ask.dishGrams;
  const sum = (axis: keyof typeof AT): number => {
    let s = 0;
    for (const p of parts) s += (matrix[p.ingredient.index * WIDTH + AT[axis]] as number) * p.grams;
    return s * to100;
  };
  const felt = { ...NOTHING };
  for (const taste of TASTES) {
    if (taste !== "umami") {
      felt[taste] = cap(taste, sum(taste));
      continue;
    }
    const nucleotide = sum("nucleotide");
    const glutamate = sum("glutamate");
    felt.umami = Number.isNaN(glutamate)
      ? Number.NaN
      : perceived("umami", umami(glutamate, Number.isNaN(nucleotide) ? 0 : nucleotide));
  }
  return felt;
}
const NOTHING: Readonly<Record<Taste, number>> = Object.fromEntries(TASTES.map((t) => [t, 0])) as Record<Taste, number>;
const cap = (taste: Taste, c: number): number => (Number.isNaN(c) ? Number.NaN : perceived(taste, c));

/** 1 when no taste differs noticeably. What can be added back (salt) costs less than what cannot be taken out. */
export function tasteLikeness(
  ask: Ask,
  before: Readonly<Record<Taste, number>>,
  after: Readonly<Record<Taste, number>>,
): number {
  let cost = 0;
  for (const taste of TASTES) {
    const d = after[taste] - before[taste];
    if (Number.isNaN(d)) continue;
    const beyond = Math.abs(d) - NOTICEABLE;
    if (beyond <= 0) continue;
    const mendable = d < 0 && (taste === "salt" || taste === "sweetness" || taste === "acid");
    cost += beyond * (d > 0 ? 1.6 : mendable ? 0.4 : 1);
  }
  return 1 / (1 + cost / 6);
}
