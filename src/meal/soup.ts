import type { Ingredient, Store } from "../catalogue/index.js";
import { densityOf, dose } from "../dose/index.js";

/** Below this much free liquid a person a dish is sauced, not soup (ml; judgement). */
const SOUPY = 110;

/**
 * Served volume in ml of a dish that is soup or stew; 0 when it is not. Free liquid is what was poured in, less what dried starches and
 * pulses drink; the rest of the dish is counted at a gram a ml.
 * @param poured ml given for the dish by name ("1.5 l"), beside its lines
 */
export function soupVolume(
  store: Store,
  lines: readonly { ingredient: Ingredient; grams: number }[],
  poured: number,
  serves: number,
): number {
  let liquid = poured;
  let drunk = 0;
  let solids = 0;
  for (const { ingredient, grams } of lines) {
    const wet = ingredient.roles.some((r) => r.role === "liquid" && r.weight >= 0.7);
    const density = densityOf(store, ingredient);
    if (wet) liquid += grams / (Number.isNaN(density) ? 1 : density);
    else {
      const served = dose(store, ingredient, "served") * grams;
      if (served > grams * 1.2) drunk += served - grams;
      solids += Number.isNaN(served) ? grams : served;
    }
  }
  const free = liquid - drunk;
  return free / serves >= SOUPY ? free + solids : 0;
}
