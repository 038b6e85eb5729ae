import type { Ingredient, Store } from "../../catalogue/index.js";
import { AT, WIDTH, doseMatrix, type Axis } from "../../dose/index.js";
import { profilesOf } from "../../likeness/profiles.js";

/** What a mixture is fitted on: mass and makeup, what it tastes of, what it does, then the aroma families. */
const MAKEUP: readonly Axis[] = [
  "weight",
  "water",
  "fat",
  "protein",
  "starch",
  "sweetness",
  "salt",
  "acid",
  "glutamate",
  "nucleotide",
  "pungency",
  "alcohol",
  "thickening",
  "lift",
  "neutralising",
  "gel",
  "binding",
  "colour",
];
/** A step on each axis that a cook would mind, per gram of what is missing (SHU for pungency; judgement, docs/method). */
const STEP: Readonly<Partial<Record<Axis, number>>> = {
  weight: 0.06,
  water: 0.06,
  fat: 0.03,
  protein: 0.06,
  starch: 0.05,
  sweetness: 0.04,
  salt: 0.006,
  acid: 0.004,
  glutamate: 0.002,
  nucleotide: 0.0005,
  pungency: 400,
  alcohol: 0.03,
  thickening: 0.06,
  lift: 0.008,
  neutralising: 0.05,
  gel: 0.04,
  binding: 0.15,
  colour: 0.25,
};

/** Looked at only when it is the job, or no cook would think of it: nobody reaches for turmeric because a sauce was brown. */
const ONLY_AS_JOB: Readonly<Partial<Record<Axis, string>>> = {
  glutamate: "umami",
  nucleotide: "umami",
  thickening: "thickening",
  lift: "lift",
  neutralising: "lift",
  gel: "gel",
  binding: "binding",
  colour: "colour",
};
/** How strongly a gram smells against a gram of plain food, by what its aroma strength is measured against (judgement). */
const POTENCY: readonly (readonly [role: string, factor: number])[] = [
  ["spice", 40],
  ["heat", 40],
  ["herb", 10],
  ["aromatic", 4],
];

const ESSENCE: readonly Axis[] = ["pungency", "salt", "sweetness", "acid", "lift", "neutralising", "gel"];

/** g gluten-forming protein per g that a baker would mind: a point of flour protein (judgement, docs/method). */
const GLUTEN_STEP = 0.01;
/** What must be right for each job counts this many times over. */
const CARRIER_WEIGHT = 3;
export interface Space {
  /** How many axes there are: those measured for the missing ingredient. */
  readonly width: number;
  /** One unit is one step. */
  vector(i: Ingredient): Float64Array;
}

/**
 * The space mixtures are fitted in, scaled so that a difference of 1 is one step a cook would mind. Aroma counts by how strongly an
 * ingredient smells for its weight, so that a pinch of clove and a spoon of cinnamon meet on one axis.
 */
export function spaceFor(store: Store, missing: Ingredient, carriers: ReadonlySet<string>): Space {
  const matrix = doseMatrix(store);
  const { aromas, aroma } = profilesOf(store);
  // The last is gluten, which tells one flour from another, where what is missing forms it.
  const width = MAKEUP.length + aromas.length + 1;
  const gluten = missing.can.has("forms gluten");
  const strength = (i: Ingredient): number => {
    const s = matrix[i.index * WIDTH + AT.aroma] as number;
    const dry = matrix[i.index * WIDTH + AT["dry weight"]] as number;
    // Without a figure aroma is taken to go with dry matter: a cube against the stock made of it. A guess, so it counts little.
    if (Number.isNaN(s)) return Number.isNaN(dry) ? 0.25 : 2.5 * Math.max(dry, 0.01);
    return s * (POTENCY.find(([role]) => i.roles.some((r) => r.role === role && r.weight >= 0.5))?.[1] ?? 4);
  };
  let strongest = 0;
  for (let k = 0; k < aromas.length; k++)
    strongest = Math.max(strongest, (aroma[missing.index * aromas.length + k] as number) * strength(missing));
  const aromaStep = Math.max(0.22 * strongest, 1.5);
  const raw = (i: Ingredient): Float64Array => {
    const out = new Float64Array(width);
    MAKEUP.forEach((axis, k) => {
      const weight = carriers.has(axis) ? CARRIER_WEIGHT : 1;
      // Colour is one number: only the same hue makes up for it.
      const given =
        axis === "colour" && i.colour !== missing.colour ? 0 : (matrix[i.index * WIDTH + AT[axis]] as number);
      // What a powder takes up is a part of its own in a mixture.
      const soaked = axis === "water" && i !== missing ? Math.max(0, (i.ready?.yield ?? 1) - 1) : 0;
      const dose = given - soaked;
      out[k] = (dose / (STEP[axis] ?? 0.05)) * weight;
    });
    const s = strength(i);
    for (let k = 0; k < aromas.length; k++)
      out[MAKEUP.length + k] = ((aroma[i.index * aromas.length + k] as number) * s) / aromaStep;
    if (gluten && i.can.has("forms gluten"))
      out[width - 1] = (matrix[i.index * WIDTH + AT.protein] as number) / GLUTEN_STEP;
    return out;
  };
  const own = raw(missing);
  // A spice is what it smells and burns of, a leavener or setter what it does; what they weigh is nobody's concern.
  const dry = !((matrix[missing.index * WIDTH + AT.water] as number) > 0.3);
  const top = missing.roles[0]?.role;
  const essence =
    (dry && ["spice", "herb", "chilli"].some((kind) => missing.kinds.includes(kind))) ||
    top === "leavener" ||
    top === "gelling agent";
  const known = Uint8Array.from(own, (v, k) => {
    if (essence && k < MAKEUP.length && !ESSENCE.includes(MAKEUP[k] as Axis)) return 0;
    const job = ONLY_AS_JOB[MAKEUP[k] as Axis];
    return Number.isNaN(v) || (job !== undefined && !carriers.has(job)) ? 0 : 1;
  });
  const axes = [...known.keys()].filter((k) => known[k] === 1);
  return {
    width: axes.length,
    vector: (i) => {
      const v = i === missing ? own : raw(i);
      // Not measured in what goes in: taken as none of it, since a mixture is judged by what is known to be there.
      const out = new Float64Array(axes.length);
      for (let n = 0; n < axes.length; n++) out[n] = v[axes[n] as number] || 0;
      return out;
    },
  };
}
