import type { Ingredient } from "../catalogue/index.js";
import { carrierDose, dose } from "../dose/index.js";
import type { Ask } from "./ask.js";
import { residualOf } from "./blend/index.js";
import { settledOf } from "./settled.js";

/** A mixture is judged by how far its makeup and aroma as a whole lie from what is missing, and by the kin of what gives it its taste. */
export function mixture(
  ask: Ask,
  uses: readonly { ingredient: Ingredient; grams: number }[],
): { role: number; aroma: number; kin: number } {
  const settled = settledOf(ask);
  const residual = residualOf(ask, uses);
  // Water and salt are nobody's kin; everything else in a mixture says what it is like.
  const telling = uses.filter((u) => u.ingredient.id !== "water/pantry" && u.ingredient.id !== "salt/pantry");
  const counted = telling.length > 0 ? telling : uses;
  const grams = counted.reduce((s, u) => s + u.grams, 0);
  return {
    role: jobsDone(ask, uses),
    aroma: 1 / (1 + 0.6 * residual),
    kin: counted.reduce((s, u) => s + settled.kin(u.ingredient) * u.grams, 0) / grams,
  };
}

/** A mixture has about the body of its parts by weight: butter stirred into water is no milk. Undefined when no part can be compared. */
export function mixedTexture(
  ask: Ask,
  uses: readonly { ingredient: Ingredient; grams: number }[],
  stage: Ask["stage"],
): number | undefined {
  const texture = settledOf(ask).texture[stage];
  let sum = 0;
  let grams = 0;
  for (const u of uses) {
    const alike = texture(u.ingredient);
    if (alike === undefined) continue;
    sum += alike * u.grams;
    grams += u.grams;
  }
  return grams > 0 ? sum / grams : undefined;
}

/** Each job asked by how near the mixture's dose of its carrier comes, too much counting like too little; jobs without a figure count as done. */
function jobsDone(ask: Ask, uses: readonly { ingredient: Ingredient; grams: number }[]): number {
  const settled = settledOf(ask);
  let done = 0;
  for (const { carrier, want, counts } of settled.jobs) {
    // The water a powder takes up is another part of the mixture.
    const soaked = (i: Ingredient): number => (carrier === "water" ? Math.max(0, (i.ready?.yield ?? 1) - 1) : 0);
    let have = 0;
    for (const u of uses)
      have += ((carrierDose(ask.store, u.ingredient, carrier) || 0) - soaked(u.ingredient)) * u.grams;
    done += counts * (want > 0 ? (have > 0 ? Math.min(have / want, want / have) : 0) : 1);
  }
  const off = settled.lifts && Math.abs(mixedBalance(ask, uses) - settled.balance) > 0.5 ? 0.6 : 1;
  return settled.total === 0 ? 1 : (off * done) / settled.total;
}

const mixedBalance = (ask: Ask, uses: readonly { ingredient: Ingredient; grams: number }[]): number => {
  const sum = (axis: "lift" | "neutralising"): number =>
    uses.reduce((s, u) => s + (dose(ask.store, u.ingredient, axis) || 0) * u.grams, 0);
  return sum("lift") > 0 ? sum("neutralising") / sum("lift") : 0;
};
