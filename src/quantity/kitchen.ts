import type { UnitId } from "../types.js";
import { decimalText, fractionText, nearestStep, roundTo } from "./fractions.js";
import { GRAMS_PER_LB, GRAMS_PER_OZ, ML_PER_CUP, ML_PER_PINCH, ML_PER_TBSP, ML_PER_TSP } from "./units.js";

/** A measure a kitchen has: `base` is ml for a volume and g for a mass. */
export interface KitchenMeasure {
  readonly amount: number;
  readonly unit: UnitId;
  readonly base: number;
}

const TSP = [1 / 8, 1 / 4, 1 / 2, 3 / 4, 1, 3 / 2, 2, 5 / 2];
const TBSP = [1, 3 / 2, 2, 5 / 2, 3];
const CUP_PARTS = [0, 1 / 4, 1 / 3, 1 / 2, 2 / 3, 3 / 4];

function cupSteps(cups: number): readonly number[] {
  const whole = Math.floor(cups);
  if (cups < 4) return [...CUP_PARTS.map((f) => whole + f), whole + 1].filter((s) => s > 0);
  if (cups < 8) return [whole, whole + 1 / 2, whole + 1];
  return [whole, whole + 1];
}

/** The spoons nearest to a volume, the best of tsp and tbsp each. ml above 0; a pinch below 1/8 tsp. */
export function spoonsFor(ml: number): readonly KitchenMeasure[] {
  const tsp = nearestStep(ml / ML_PER_TSP, TSP);
  const tbsp = nearestStep(ml / ML_PER_TBSP, TBSP);
  const out: KitchenMeasure[] = [];
  if (ml < ML_PER_PINCH * 1.5) out.push({ amount: 1, unit: "pinch", base: ML_PER_PINCH });
  if (ml < ML_PER_TSP * 2.8) out.push({ amount: tsp, unit: "tsp", base: tsp * ML_PER_TSP });
  if (ml > ML_PER_TBSP * 0.8 && ml < ML_PER_TBSP * 3.5)
    out.push({ amount: tbsp, unit: "tbsp", base: tbsp * ML_PER_TBSP });
  return out;
}

/** The cup nearest to a volume; undefined below a fifth of a cup. */
export function cupFor(ml: number): KitchenMeasure | undefined {
  const cups = ml / ML_PER_CUP;
  if (cups < 0.2) return undefined;
  const amount = nearestStep(cups, cupSteps(cups));
  return { amount, unit: "cup", base: amount * ML_PER_CUP };
}

/** The step a metric scale or jug is read to: 1 below 20, 5 below 100, 10 below 500 (or 25 from 200), 25 below 1,000, then 50. */
function metricStep(x: number): number {
  if (x < 2) return 0.1;
  if (x < 20) return 1;
  if (x < 100) return 5;
  if (x < 500) return 10;
  return x < 1000 ? 25 : 50;
}
function metric(x: number, small: "g" | "ml", big: "kg" | "l"): KitchenMeasure {
  const step = metricStep(x);
  const tens = Math.max(step, roundTo(Math.round(x / step) * step, 1));
  // Recipes write 225, 275 and 375 g as readily as whole tens
  const rounded = step === 10 && x >= 200 ? nearestStep(x, [tens, Math.round(x / 25) * 25]) : tens;
  return rounded >= 1000
    ? { amount: roundTo(rounded / 1000, 2), unit: big, base: rounded }
    : { amount: rounded, unit: small, base: rounded };
}
/** Grams rounded to what a scale is read to; kilograms from 1,000 g. */
export function metricMassFor(grams: number): KitchenMeasure {
  return metric(grams, "g", "kg");
}
/** Millilitres rounded to what a jug is read to; litres from 1,000 ml. */
export function metricVolumeFor(ml: number): KitchenMeasure {
  return metric(ml, "ml", "l");
}

/** Ounces in quarters (halves from 4 oz), pounds in quarters from 1 lb (halves from 5 lb). Undefined below 1/4 oz. */
export function usMassFor(grams: number): KitchenMeasure | undefined {
  const oz = grams / GRAMS_PER_OZ;
  if (oz < 0.2) return undefined;
  if (oz < 15.75) {
    const step = oz < 4 ? 0.25 : 0.5;
    const amount = Math.max(step, Math.round(oz / step) * step);
    return { amount, unit: "oz", base: amount * GRAMS_PER_OZ };
  }
  const lb = grams / GRAMS_PER_LB;
  const step = lb < 5 ? 0.25 : 0.5;
  const amount = Math.max(1, Math.round(lb / step) * step);
  return { amount, unit: "lb", base: amount * GRAMS_PER_LB };
}

const PLURAL: Readonly<Record<string, string>> = {
  leaf: "leaves",
  loaf: "loaves",
  bunch: "bunches",
  pinch: "pinches",
  dash: "dashes",
  inch: "inches",
};
/** Units a plural is never written for. */
const SYMBOLS = new Set(["g", "kg", "oz", "lb", "ml", "l", "tsp", "tbsp"]);
const DECIMAL = new Set(["g", "kg", "ml", "l"]);

function plural(word: string): string {
  return PLURAL[word] ?? `${word}s`;
}
/** An amount as printed for a unit: decimals for metric, kitchen fractions for the rest. */
export function amountText(amount: number, unit: UnitId): string {
  return DECIMAL.has(unit) ? decimalText(amount, unit === "kg" || unit === "l" ? 3 : 2) : fractionText(amount);
}

/**
 * A measure in words that readQuantity understands: "1 1/2 tbsp", "2 cups", "3 cloves", "250 g", "a pinch".
 * @param label which kind of piece ("sprig", "large"), or what was done to it ("chopped", after a volume)
 */
export function measureText(amount: number, unit: UnitId, label = "", range?: readonly [number, number]): string {
  const number =
    range === undefined ? amountText(amount, unit) : `${amountText(range[0], unit)} to ${amountText(range[1], unit)}`;
  const many = (range?.[1] ?? amount) > 1;
  if (unit === "pinch" && amount === 1 && range === undefined) return "a pinch";
  if (SYMBOLS.has(unit)) return words(number, unit, label);
  if (unit === "cup") return words(number, many ? "cups" : "cup", label);
  if (unit === "piece" || unit === "packet" || unit === "slice" || unit === "bunch")
    return words(number, counted(unit, label, many));
  const noun = many ? plural(unit) : unit;
  return SIZE_LABELS.has(label) ? words(number, label, noun) : words(number, noun, label);
}
const SIZE_LABELS = new Set(["small", "medium", "large", "extra-large", "jumbo"]);
function counted(unit: UnitId, label: string, many: boolean): string {
  const noun = label === "" || SIZE_LABELS.has(label) ? (unit === "piece" ? "" : unit) : label;
  // "whole" is no noun and has no plural
  const said = noun === "" ? "" : many && noun !== "whole" ? plural(noun) : noun;
  return SIZE_LABELS.has(label) ? words(label, said) : said;
}
function words(...parts: readonly string[]): string {
  return parts.filter((p) => p !== "").join(" ");
}
