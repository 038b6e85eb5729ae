import type { Ingredient } from "../catalogue/index.js";
import { portionOf, publicGrams } from "../portion/index.js";
import { measureText, metricMassFor, nearestStep, roundTo } from "../quantity/index.js";
import { GRAMS_PER_LB, GRAMS_PER_OZ } from "../quantity/units.js";
import type { Measure, Portion, UnitId } from "../types.js";
import type { Ask } from "./ask.js";
import { shareFor } from "./eaten.js";

const METRIC: readonly string[] = ["g", "kg", "ml", "l"];
const SCALE: readonly string[] = ["oz", "lb"];
/** Below these grams nobody asks a scale, whatever the recipe's own measure was. */
const LEAST = 2 * GRAMS_PER_OZ;
/** Sold in pieces that everybody counts, or in cans. */
const COUNTED: readonly string[] = ["piece", "can", "packet", "slice", "bunch", "clove", "stick"];
const DOZEN = 12;

/**
 * So many grams of a stand-in in the family of measures the request used: grams for grams, ounces for ounces, else as a cook would say.
 * Eggs are counted whatever was asked, and a stand-in for pieces of meat or fish is weighed: nobody fills cups with tofu for a chicken leg.
 * @param grams of what is eaten; a scale shows them as bought
 */
export function portionFor(ask: Ask, i: Ingredient, grams: number): Portion {
  const { unit, beside } = ask.missing.measure;
  const told = ask.missing.assumed !== true;
  // "2 chicken breasts (300 g)" and "1 (400 g) can" were written in a metric kitchen; "1 cup (120 g)" was written for both.
  const metric =
    told && (METRIC.includes(unit) || (COUNTED.includes(unit) && beside !== undefined && METRIC.includes(beside)));
  const share = shareFor(ask, i);
  const usual = portionOf(ask.store, i, grams, {
    ...(metric ? { measures: "metric" } : {}),
    ...(share === 1 ? {} : { eaten: share }),
  });
  const eggs = inEggs(i, publicGrams(grams));
  if (eggs !== undefined) return { ...usual, grams: publicGrams(grams), measure: eggs };
  if (grams < LEAST) return usual;
  const bought = publicGrams(grams / share);
  // Who weighed what is missing has the scale out: no bunches and packets for 600 g of kale; but ears are counted, not weighed cob and all
  if (share === 1 && told && (unit === "g" || unit === "kg") && COUNTED.includes(usual.measure.unit))
    return { ...usual, grams: bought, measure: weighed(bought) };
  if (ask.store.measures === "metric" || metric) return usual;
  if (i.roles.some((r) => r.role === "liquid" && r.weight >= 0.5)) return usual;
  const asked = told && SCALE.includes(unit);
  const protein = ask.roles[0]?.role === "main protein" && unit === "piece" && !COUNTED.includes(usual.measure.unit);
  if (!asked && !protein) return usual;
  return { ...usual, grams: bought, measure: onScale(bought) };
}

const measure = (amount: number, unit: UnitId, per: number, grams: number): Measure => ({
  amount,
  unit,
  text: measureText(amount, unit),
  roundedBy: roundTo(amount * per - grams, 1),
});

function weighed(grams: number): Measure {
  const { amount, unit, base } = metricMassFor(grams);
  return measure(amount, unit, base / amount, grams);
}

/** Whole eggs, yolks and whites by the piece, up to a dozen; at least half a one. What comes in cartons is poured. */
function inEggs(i: Ingredient, grams: number): Measure | undefined {
  const piece = i.measures.find((r) => r.unit === "piece" && r.label === "");
  if (!i.kinds.includes("egg") || !i.state.includes("fresh") || piece === undefined || i.usual === "cup")
    return undefined;
  const n = grams / piece.grams;
  const amount = n < 0.6 ? 0.5 : Math.round(n);
  return n < 0.4 || n > DOZEN ? undefined : measure(amount, "piece", piece.grams, grams);
}

/** Ounces and pounds as a US kitchen weighs them: quarters of an ounce below 4, halves below a pound; then quarter pounds that fit, else ounces. */
function onScale(grams: number): Measure {
  const oz = grams / GRAMS_PER_OZ;
  const lb = grams / GRAMS_PER_LB;
  const pounds = nearestStep(
    lb,
    [Math.floor(lb * 4) / 4, Math.floor(lb * 4 + 1) / 4].filter((x) => x > 0),
  );
  if (oz >= 15.75 && (lb > 3 || Math.abs(pounds / lb - 1) < 0.05)) return measure(pounds, "lb", GRAMS_PER_LB, grams);
  const step = oz < 4 ? 0.25 : oz < 16 ? 0.5 : 1;
  return measure(Math.round(oz / step) * step, "oz", GRAMS_PER_OZ, grams);
}
