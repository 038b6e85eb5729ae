import type { Ingredient, Store } from "../catalogue/index.js";
import type { RoleId } from "../types.js";
import { AT, WIDTH, type Axis } from "./axes.js";
import { doseMatrix } from "./columns.js";
import { umami } from "./strength.js";

/** What a role's usual dish holds of its carrier, g per 100 g of dish: the reference dish when none is given (judgement, docs/method). */
const USUAL: Readonly<Record<string, number>> = {
  "served weight": 30,
  aroma: 2,
  pungency: 1000,
  acid: 0.35,
  sweetness: 8,
  salt: 0.9,
  umami: 0.25,
  fat: 6,
  weight: 8,
  thickening: 5,
  binding: 12,
  lift: 0.35,
  "dry weight": 40,
  water: 50,
  gel: 1.5,
  colour: 0.3,
  volume: 10,
};

export const carrierOf = (store: Store, role: RoleId): string => store.roles[role]?.carrier ?? "weight";

/** Amount of the carrier in one gram; for umami the equivalent concentration it gives a dish diluted to `share` grams per gram. */
export function carrierDose(store: Store, i: Ingredient, carrier: string): number {
  if (carrier === "umami") return umamiDose(store, i, 0.02);
  const axis: Axis = carrier === "served weight" ? "served" : (carrier as Axis);
  return doseMatrix(store)[i.index * WIDTH + AT[axis]] as number;
}

/** g MSG equivalents per gram when the ingredient makes `share` of the dish by weight. */
export function umamiDose(store: Store, i: Ingredient, share: number): number {
  const matrix = doseMatrix(store);
  const glutamate = matrix[i.index * WIDTH + AT.glutamate] as number;
  const nucleotide = matrix[i.index * WIDTH + AT.nucleotide] as number;
  if (Number.isNaN(glutamate)) return Number.NaN;
  return umami(glutamate * share * 100, (Number.isNaN(nucleotide) ? 0 : nucleotide) * share * 100) / (share * 100);
}

/** The weight in grams of the dish a role's reference would make of so many grams of this ingredient. */
export function referenceDish(store: Store, i: Ingredient, role: RoleId, grams: number): number {
  const carrier = carrierOf(store, role);
  const per = carrierDose(store, i, carrier);
  const usual = USUAL[carrier] ?? 10;
  const dish = Number.isNaN(per) || per <= 0 ? grams * 12 : (grams * per * 100) / usual;
  // A dish is never lighter than what goes into it, nor so large that the ingredient is a trace.
  return Math.min(Math.max(dish, grams * 1.5), grams * 2000);
}

/**
 * Grams of `b` that bring as much of the role's carrier as `grams` of `a` in a dish of `dish` grams; NaN when either was not measured.
 * For umami the synergy equation is solved at the dish's concentration.
 */
export function carrierAmount(
  store: Store,
  a: Ingredient,
  grams: number,
  b: Ingredient,
  role: RoleId,
  dish: number,
): number {
  const carrier = carrierOf(store, role);
  if (carrier !== "umami") {
    const have = carrierDose(store, a, carrier);
    const give = carrierDose(store, b, carrier);
    return have > 0 && give > 0 ? (grams * have) / give : Number.NaN;
  }
  const matrix = doseMatrix(store);
  const per = (i: Ingredient, axis: Axis): number => {
    const v = matrix[i.index * WIDTH + AT[axis]] as number;
    return Number.isNaN(v) ? 0 : v;
  };
  const to100 = 100 / dish;
  const target = umami(per(a, "glutamate") * grams * to100, per(a, "nucleotide") * grams * to100);
  const g = per(b, "glutamate") * to100;
  const n = per(b, "nucleotide") * to100;
  if (!(target > 0) || !(g > 0)) return Number.NaN;
  // g x + 1218 g n x^2 = target
  const q = 1218 * g * n;
  return q === 0 ? target / g : (-g + Math.sqrt(g * g + 4 * q * target)) / (2 * q);
}
