import type { Ingredient } from "../catalogue/index.js";
import { carrierDose, dose } from "../dose/index.js";
import { commonMakeup, smellLikeness } from "../likeness/index.js";
import { profilesOf } from "../likeness/profiles.js";
import type { Ask } from "./ask.js";
import { residualOf } from "./blend/index.js";
import { scentOf } from "./blend/vector.js";
import { settledOf } from "./settled.js";

const EVERYWHERE: readonly string[] = ["water/pantry", "salt/pantry"];
/** How many parts have to be fetched, at least one: water and salt are in every house and stand beside the stove. */
export const fetched = (uses: readonly { readonly ingredient: Ingredient }[]): number =>
  Math.max(1, uses.filter((u) => !EVERYWHERE.includes(u.ingredient.id)).length);

/** A mixture is judged by how far its makeup and aroma as a whole lie from what is missing, and by the kin of what gives it its taste. */
export function mixture(
  ask: Ask,
  uses: readonly { ingredient: Ingredient; grams: number }[],
  known: boolean,
): { role: number; aroma: number; kin: number } {
  const settled = settledOf(ask);
  // Water and salt are nobody's kin; everything else in a mixture says what it is like.
  const telling = uses.filter((u) => !EVERYWHERE.includes(u.ingredient.id));
  const counted = telling.length > 0 ? telling : uses;
  const grams = counted.reduce((s, u) => s + u.grams, 0);
  // The parts a thing is made from do what it does, smell of it and are its next of kin, as far as they are the same.
  const common = commonMakeup(ask.store, ask.item, uses) ?? 0;
  return {
    role: Math.max(Math.sqrt(common), jobsDone(ask, uses)),
    // Whoever wrote a mixture down has smelled it: it is judged by its makeup. What was worked out has to smell of it.
    aroma: known
      ? Math.max(Math.sqrt(common), 1 / (1 + 0.6 * residualOf(ask, uses)))
      : settled.ofBlend(Math.max(Math.sqrt(common), smellOf(ask, uses)), common),
    kin: Math.max(0.9 * common, counted.reduce((s, u) => s + settled.kin(u.ingredient) * u.grams, 0) / grams),
  };
}

const SHARP: readonly string[] = ["vinegar", "citrus"];
const isCultured = ({ item }: Ask): boolean =>
  item.origin.has("dairy") && item.dominant.includes("sour") && (item.aroma["fermented"] ?? 0) > 0;

/**
 * What is lost of the smell, and what is gained, costs a mixture what it costs anything else: each part smells by its levels, its strength
 * and how much of it there is beside what is missing. Levels are felt, and what is felt grows with the root of the dose: a spoon of
 * molasses makes sugar brown.
 */
function smellOf(ask: Ask, uses: readonly { ingredient: Ingredient; grams: number }[]): number {
  const { aromas, aroma } = profilesOf(ask.store);
  // Milk soured with vinegar or lemon smells soured: in what is cultured the one sharpness passes for the other.
  const cultured = isCultured(ask) && uses.some((u) => u.ingredient.can.has("curdles with acid"));
  const fermented = aromas.indexOf("fermented");
  const levels = new Float64Array(aromas.length);
  const whole = scentOf(ask.store, ask.item) * ask.grams;
  for (const { ingredient, grams } of uses) {
    const share = (scentOf(ask.store, ingredient) * grams) / whole;
    for (let k = 0; k < levels.length; k++) {
      const level = aroma[ingredient.index * levels.length + k] as number;
      const to = cultured && SHARP.includes(aromas[k] as string) ? fermented : k;
      levels[to] = (levels[to] as number) + share * level * level;
    }
  }
  for (let k = 0; k < levels.length; k++) levels[k] = Math.sqrt(levels[k] as number);
  return smellLikeness(ask.store, ask.item, levels);
}

/** g water per g up to which a thing is dry. */
const DRY = 0.15;
/** What sets, thickens or binds is there for the body it gives. */
const BODIES: readonly string[] = ["gelling agent", "thickener", "binder"];
/** Sugar, salt and what is made up with water leave no grain of their own in what is wet. */
const stirsIn = (ask: Ask, i: Ingredient): boolean => {
  const soaked = Math.max(0, (i.ready?.yield ?? 1) - 1);
  return (
    dose(ask.store, i, "water") - soaked < DRY &&
    (i.can.has("dissolves") || soaked > 0) &&
    !i.roles.some((r) => BODIES.includes(r.role) && r.weight >= 0.3)
  );
};

/**
 * A mixture has about the body of its parts by weight: butter stirred into water is no milk. What stirs in has none, nor has the water it
 * goes into: there the makeup tells, which counts as a job. Undefined when no part can be compared.
 */
export function mixedTexture(
  ask: Ask,
  uses: readonly { ingredient: Ingredient; grams: number }[],
  stage: Ask["stage"],
): number | undefined {
  const texture = settledOf(ask).texture[stage];
  let sum = 0;
  let grams = 0;
  const wet = dose(ask.store, ask.item, "water") > DRY;
  const gone = wet ? uses.filter((u) => stirsIn(ask, u.ingredient)) : [];
  for (const u of uses) {
    if (gone.includes(u) || (gone.length > 0 && u.ingredient.id === "water/pantry")) continue;
    const alike = texture(u.ingredient);
    if (alike === undefined) continue;
    sum += alike * u.grams;
    grams += u.grams;
  }
  // Stirred from its own parts it has the body it had.
  const common = commonMakeup(ask.store, ask.item, uses) ?? 0;
  return grams > 0 ? Math.max(sum / grams, Math.sqrt(common)) : undefined;
}

/** Each job asked by how near the mixture's dose of its carrier comes, too much counting like too little; jobs without a figure count as done. */
function jobsDone(ask: Ask, uses: readonly { ingredient: Ingredient; grams: number }[]): number {
  const settled = settledOf(ask);
  let done = 0;
  for (const { role, theirs, carrier, want, counts } of settled.jobs) {
    // The water a powder takes up is another part of the mixture.
    const soaked = (i: Ingredient): number => (carrier === "water" ? Math.max(0, (i.ready?.yield ?? 1) - 1) : 0);
    // What is eaten, or strewn, for itself is not made up by weight of what is neither.
    const eaten = EATEN.includes(carrier) && !isPoured(ask);
    let have = 0;
    for (const u of uses) {
      const brings = (carrierDose(ask.store, u.ingredient, carrier) || 0) - soaked(u.ingredient);
      const able = eaten ? Math.min(1, (u.ingredient.roles.find((r) => r.role === role)?.weight ?? 0) / theirs) : 1;
      have += brings * able * u.grams;
    }
    done += counts * (want > 0 ? (have > 0 ? Math.min(have / want, want / have) : 0) : 1);
  }
  const off = settled.lifts && Math.abs(mixedBalance(ask, uses) - settled.balance) > 0.5 ? 0.6 : 1;
  return settled.total === 0 ? 1 : (off * done) / settled.total;
}

const EATEN: readonly string[] = ["served weight", "volume"];
/** What is smooth and poured has no body that stirring does not make. */
export const isPoured = (ask: Ask): boolean =>
  (ask.item.roles.find((r) => r.role === "liquid")?.weight ?? 0) >= POURED && dose(ask.store, ask.item, "water") > WET;
const POURED = 0.5;
const WET = 0.4;

const mixedBalance = (ask: Ask, uses: readonly { ingredient: Ingredient; grams: number }[]): number => {
  const sum = (axis: "lift" | "neutralising"): number =>
    uses.reduce((s, u) => s + (dose(ask.store, u.ingredient, axis) || 0) * u.grams, 0);
  return sum("lift") > 0 ? sum("neutralising") / sum("lift") : 0;
};
