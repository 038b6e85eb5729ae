import * as z from "zod";
import { ALLERGENS, DIETS } from "../words.js";

const words = z.array(z.string().min(1));
const allergen = z.enum(ALLERGENS);
const diet = z.enum(DIETS);
const technique = z.enum([
  "raw",
  "boil",
  "simmer",
  "braise",
  "stew",
  "steam",
  "stir-fry",
  "fry",
  "deep-fry",
  "roast",
  "grill",
  "bake",
  "marinate",
  "whip",
  "set cold",
  "pickle",
  "ferment",
  "cure",
  "can",
  "slow cooker",
]);
const id = z.string().regex(/^[a-z0-9]+(-[a-z0-9]+)*$/);
/** "judgement" and "common practice" stand where no publication was read. */
const source = z.strictObject({
  key: z.string().min(2),
  at: z.string().optional(),
  grade: z.enum(["read", "read-secondary", "derived", "memory"]).optional(),
});
const sources = z.array(source).min(1);
/** Sentences for a cook: short, whole, and never a liability formula. */
const sentence = z.string().min(10).max(420);

const figures = z.record(
  z.string(),
  z.strictObject({ over: z.number().optional(), under: z.number().optional(), missing: z.boolean().optional() }),
);
const matchShape = {
  origin: words.optional(),
  tags: words.optional(),
  kinds: words.optional(),
  foods: words.optional(),
  parts: words.optional(),
  states: words.optional(),
  contains: z.array(allergen).optional(),
  may: z.array(allergen).optional(),
  unknown: z.array(allergen).optional(),
  can: words.optional(),
  cannot: words.optional(),
  jobs: words.optional(),
  figures: figures.optional(),
  originKnown: z.boolean().optional(),
};
const filled = (m: object): boolean => Object.keys(m).length > 0;
const inner = z.strictObject(matchShape).refine(filled, "an empty description matches everything");
const match = z
  .strictObject({ ...matchShape, not: z.union([inner, z.array(inner)]).optional() })
  .refine(filled, "an empty description matches everything");
const matches = z.union([match, z.array(match).min(1)]);

export const AllergensFile = z.strictObject({
  words: z.record(z.string(), words).optional(),
  allergens: z
    .array(
      z.strictObject({
        id: allergen,
        names: words,
        lists: z.array(z.enum(["US", "EU", "UK", "Canada"])),
        text: sentence,
        sources,
      }),
    )
    .length(15),
  groups: z.array(z.strictObject({ names: words, means: z.array(allergen).min(1) })),
  carriers: z.array(
    z.strictObject({
      id,
      when: matches,
      usual: z.array(allergen),
      sometimes: z.array(allergen),
      text: sentence.optional(),
      sources,
    }),
  ),
  cross: z.array(
    z.strictObject({
      id,
      from: z.array(allergen).min(1),
      when: matches,
      rate: z.string().optional(),
      text: sentence,
      sources,
    }),
  ),
});

const sure = z.enum(["certain", "usual", "disputed"]);
const decides = z.enum(["the diner", "a certifier", "a clinician"]);
const dietRule = z.strictObject({
  id,
  answer: z.enum(["no", "unknown", "caution", "yes"]),
  when: matches,
  text: sentence,
  sure: sure.optional(),
  decides: decides.optional(),
  alike: z.string().min(3).optional(),
  sources,
});
const apart = z.strictObject({
  id,
  one: matches,
  other: matches,
  answer: z.enum(["no", "caution"]),
  text: sentence,
  sources,
});
export const DietsFile = z.strictObject({
  words: z.record(z.string(), z.unknown()).optional(),
  diets: z.array(
    z.strictObject({
      id: diet,
      names: words,
      text: sentence,
      sure,
      decides,
      otherwise: z.enum(["yes", "unknown"]),
      otherwiseText: sentence.optional(),
      rules: z.array(dietRule),
      apart: z.array(apart).optional(),
      sources,
    }),
  ),
  groups: z.array(z.strictObject({ names: words.min(1), when: matches })),
});

const step = z.strictObject({ procedure: id, text: sentence, active: z.number().min(0), waiting: z.number().min(0) });
const hazard = z
  .strictObject({
    id,
    severity: z.enum(["stop", "caution", "note"]),
    stop: z.enum(["never", "unless", "diner"]).optional(),
    who: z.string().min(3),
    text: sentence,
    when: matches.optional(),
    missing: matches.optional(),
    dish: matches.optional(),
    techniques: z.array(technique).optional(),
    roles: words.optional(),
    context: words.optional(),
    never: z.array(technique).optional(),
    unlessCooked: z.boolean().optional(),
    diners: z.array(diet).optional(),
    amount: z.strictObject({ perServing: z.number().positive(), knownServes: z.boolean().optional() }).optional(),
    always: z.boolean().optional(),
    neverWithout: z.boolean().optional(),
    alike: z.string().min(3).optional(),
    step: step.optional(),
    conflict: sentence.optional(),
    sources,
  })
  .refine(
    (h) => (h.severity === "stop") === (h.stop !== undefined),
    "a stop says of which kind it is, and only a stop does",
  )
  .refine((h) => h.stop !== "unless" || h.step !== undefined, "unless what? give the step")
  .refine((h) => h.stop !== "diner" || (h.diners ?? []).length > 0, "for which diner?")
  .refine((h) => h.unlessCooked !== true || h.stop !== "diner" || h.step !== undefined, "cooked how? give the step")
  .refine(
    (h) => h.neverWithout !== true || (h.stop === "never" && (h.missing !== undefined || h.roles !== undefined)),
    "what may not be left out? a stop of kind never with the missing ingredient or its roles",
  )
  .refine((h) => h.when !== undefined || h.missing !== undefined || h.dish !== undefined, "nothing would raise it");
export const HazardsFile = z.strictObject({
  words: z.record(z.string(), z.unknown()).optional(),
  cookedThrough: z.array(technique),
  hazards: z.array(hazard),
});

const target = z.strictObject({
  celsius: z.number().min(40).max(100).optional(),
  fahrenheit: z.number().min(100).max(212).optional(),
  rest: z.number().min(0).optional(),
  hold: z.number().min(0).optional(),
  sign: sentence.optional(),
  sources,
});
const jurisdiction = z.enum(["US", "UK", "Canada", "Australia", "WHO", "Hong Kong"]);
const handling = z.strictObject({
  id,
  topic: z.enum(["thaw", "soak", "marinate", "cool", "hold", "rice", "reheat", "store", "cure"]),
  jurisdiction: z.union([jurisdiction, z.literal("general")]),
  when: matches.optional(),
  techniques: z.array(technique).optional(),
  text: sentence,
  figures: z.record(z.string(), z.number()),
  conflict: sentence.optional(),
  sources,
});
export const TemperaturesFile = z.strictObject({
  words: z.record(z.string(), words).optional(),
  ready: matches,
  cookFirst: matches,
  uncookedCured: matches,
  classes: z.array(
    z.strictObject({
      id,
      text: z.string().min(3),
      when: matches,
      targets: z.partialRecord(jurisdiction, target),
      conflict: sentence.optional(),
    }),
  ),
  handling: z.array(handling),
});

/** The four files of data/vocabulary that the safety room reads, by name. */
export const SafetyTables = {
  allergens: AllergensFile,
  diets: DietsFile,
  hazards: HazardsFile,
  temperatures: TemperaturesFile,
} as const;
