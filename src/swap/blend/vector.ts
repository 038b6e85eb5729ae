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

/** Tastes that tables leave out where there is none: nobody measured the acid of cream, and lemon in it is noticed. */
const NONE_UNLESS_MEASURED: readonly Axis[] = ["acid", "alcohol", "pungency"];
/** A step of colour is never less than so much of what was there: the eye takes half as brown for brown. */
const PALER = 0.5;
/** In what is poured by the cup little is much: such a share of what does a job, however little that is. */
const DILUTE = 0.25;
/** A dry spice is so small a part of a dish that its sugar, salt and acid count this many times less. */
const SPICE_DILUTED = 10;
const DILUTED: readonly Axis[] = ["salt", "sweetness", "acid"];

/** A step of a note, by its own dose; of a faint or alien one, by that of the strongest; and never less than this. */
const NOTE = 0.22;
const FAINT = 0.1;
const LEAST_NOTE = 6;

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

/** How strongly a gram smells beside a gram of others, times what its levels say. */
export function scentOf(store: Store, i: Ingredient): number {
  const matrix = doseMatrix(store);
  const s = matrix[i.index * WIDTH + AT.aroma] as number;
  const dry = matrix[i.index * WIDTH + AT["dry weight"]] as number;
  // Without a figure aroma is taken to go with dry matter: a cube against the stock made of it. A guess, so it counts little.
  if (Number.isNaN(s)) return Number.isNaN(dry) ? 0.25 : 2.5 * Math.max(dry, 0.01);
  return s * (POTENCY.find(([role]) => i.roles.some((r) => r.role === role && r.weight >= 0.5))?.[1] ?? 4);
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
  const strength = (i: Ingredient): number => scentOf(store, i);
  // What is felt grows with the root of the dose, so doses go with the square of the levels, and a tenth of the level of each note is a step.
  const scent = strength(missing);
  const note = (k: number): number => (aroma[missing.index * aromas.length + k] as number) ** 2 * scent;
  let strongest = 0;
  for (let k = 0; k < aromas.length; k++) strongest = Math.max(strongest, note(k));
  const aromaStep = aromas.map((_, k) => Math.max(NOTE * note(k), FAINT * strongest, LEAST_NOTE));
  // A spice is what it smells and burns of, a leavener or setter what it does; what they weigh is nobody's concern.
  const dry = !((matrix[missing.index * WIDTH + AT.water] as number) > 0.3);
  const top = missing.roles[0]?.role;
  const spice = dry && ["spice", "herb", "chilli"].some((kind) => missing.kinds.includes(kind));
  const essence = spice || top === "leavener" || top === "gelling agent";
  const poured = top === "liquid";
  const carries = (axis: Axis): boolean => carriers.has(axis) || carriers.has(ONLY_AS_JOB[axis] ?? "");
  const steps = MAKEUP.map((axis) => {
    const own = (matrix[missing.index * WIDTH + AT[axis]] as number) || 0;
    let step = STEP[axis] ?? 0.05;
    if (axis === "colour") step = Math.max(step, PALER * own);
    else if (poured && own > 0 && carries(axis)) step = Math.min(step, DILUTE * own);
    return spice && DILUTED.includes(axis) ? step * SPICE_DILUTED : step;
  });
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
      out[k] = (dose / (steps[k] as number)) * weight;
    });
    const s = strength(i);
    for (let k = 0; k < aromas.length; k++)
      out[MAKEUP.length + k] = ((aroma[i.index * aromas.length + k] as number) ** 2 * s) / (aromaStep[k] as number);
    if (gluten && i.can.has("forms gluten"))
      out[width - 1] = (matrix[i.index * WIDTH + AT.protein] as number) / GLUTEN_STEP;
    return out;
  };
  const own = raw(missing);
  const known = Uint8Array.from(own, (v, k) => {
    if (essence && k < MAKEUP.length && !ESSENCE.includes(MAKEUP[k] as Axis)) return 0;
    const job = ONLY_AS_JOB[MAKEUP[k] as Axis];
    if (job !== undefined && !carriers.has(job)) return 0;
    if (!Number.isNaN(v)) return 1;
    // The acid of what lifts is told by what it neutralises.
    return NONE_UNLESS_MEASURED.includes(MAKEUP[k] as Axis) && !carriers.has("lift") ? 1 : 0;
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
