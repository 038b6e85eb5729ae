import * as z from "zod";
import { PAIRING_BASES } from "../pairing-columns.js";

/** A figure with where it comes from. `v` in the unit the vocabulary gives for that figure. */
const from = z.string().min(2);
const grade = z.enum(["read", "read-secondary", "derived", "memory"]);
export const Cited = z.strictObject({
  v: z.number().finite(),
  from,
  at: z.string().optional(),
  grade: grade.optional(),
});
export const Measured = z.strictObject({ g: z.number().positive(), from, at: z.string().optional() });
const Level = z.number().min(0).max(9);
const Words = z.array(z.string().min(1));

export const Names = z.record(z.string().regex(/^[a-z]{2,3}(-[A-Za-z]{4})?(-[A-Z]{2}|-[0-9]{3})?$/), Words.min(1));

export const Allergens = z.strictObject({
  contains: Words.optional(),
  may: Words.optional(),
  unknown: Words.optional(),
});

/** What a kind, a food and a state may all say. The nearest word wins; lists add up. */
const shared = {
  roles: z.record(z.string(), z.number().min(0).max(1)).optional(),
  slot: z.string().optional(),
  can: Words.optional(),
  cannot: Words.optional(),
  texture: z.record(z.string(), z.record(z.string(), Level)).optional(),
  flavour: z.record(z.string(), Level).optional(),
  aroma: z.record(z.string(), Level).optional(),
  dominant: Words.optional(),
  origin: Words.optional(),
  allergens: Allergens.optional(),
  openRecipe: z.boolean().optional(),
  tags: Words.optional(),
  cost: z.number().min(1).max(9).optional(),
  colour: z.string().optional(),
  starchKind: z.string().optional(),
  acidKind: z.string().optional(),
  pungencyKind: z.string().optional(),
  minutes: z.record(z.string(), Cited).optional(),
  cookedBy: z.record(z.string(), Cited).optional(),
};

export const KindRecord = z.strictObject({
  kind: z.string(),
  parent: z.string().optional(),
  text: z.string().optional(),
  ...shared,
});

export const Ready = z.strictObject({
  by: Words.min(1),
  yield: Cited,
  salt: Cited.optional(),
});
export const Becomes = z.strictObject({
  to: z.string(),
  by: z.string(),
  yield: Cited,
  minutes: z.strictObject({ active: z.number().min(0), waiting: z.number().min(0) }).optional(),
});

/**
 * Figures worked out from published records: `parts` are shares of the weight before cooking or drying (together 1) of ingredients by id
 * or records; `water` is g per 100 g of the finished food where drying, cooking or soaking changes it; `from` says whose proportions they are.
 */
export const Calculated = z.strictObject({
  parts: z.record(z.string(), z.number().positive().max(1)),
  water: Cited.optional(),
  from: from.optional(),
  at: z.string().optional(),
});

export const StateRecord = z.strictObject({
  default: z.boolean().optional(),
  kind: z.string().optional(),
  names: Names.optional(),
  display: z.strictObject({ "en-US": z.string(), "en-GB": z.string().optional() }).optional(),
  composition: z.union([z.string(), Words]).optional(),
  calculated: Calculated.optional(),
  figures: z.record(z.string(), Cited).optional(),
  measures: z.record(z.string(), Measured).optional(),
  usual: z.string().optional(),
  edible: Cited.optional(),
  cooked: Cited.extend({ technique: z.string().optional() }).optional(),
  ready: Ready.optional(),
  becomes: z.array(Becomes).optional(),
  ...shared,
});

const states = z.record(z.string(), StateRecord);
export const PartRecord = z.strictObject({ names: Names, kind: z.string().optional(), states, ...shared });
export const FoodRecord = z.strictObject({
  food: z.string().regex(/^[a-z0-9]+(-[a-z0-9]+)*$/),
  kind: z.string(),
  names: Names,
  latin: z.string().optional(),
  traditions: Words.optional(),
  note: z.string().optional(),
  formerIds: z.record(z.string(), z.string()).optional(),
  states: states.optional(),
  parts: z.record(z.string().regex(/^[a-z]+(-[a-z]+)*$/), PartRecord).optional(),
  ...shared,
});

export const ProcedureRecord = z.strictObject({
  id: z.string().regex(/^[a-z]+(-[a-z]+)*$/),
  name: z.string(),
  skip: z.string(),
  add: z.string(),
  minutes: z.strictObject({ active: z.number().min(0), waiting: z.number().min(0), from }),
  quick: z
    .strictObject({
      text: z.string(),
      minutes: z.strictObject({ active: z.number().min(0), waiting: z.number().min(0) }),
      from,
    })
    .optional(),
  byProduct: z
    .strictObject({
      name: z.string(),
      replaceWith: z.string(),
      gramsPerGram: z.number().positive(),
      role: z.string(),
      from,
    })
    .optional(),
  safety: z.string().optional(),
});

export const SwapUse = z.strictObject({
  food: z.string(),
  amount: z.string().optional(),
  ratio: z.number().positive().optional(),
});
export const SwapRecord = z.strictObject({
  id: z.string(),
  replaces: z.strictObject({ food: z.string(), amount: z.string().optional() }),
  uses: z.array(SwapUse).min(1).max(4),
  role: z.string().optional(),
  context: z.string().optional(),
  techniques: Words.optional(),
  tradition: z.string().optional(),
  change: z.string().optional(),
  from: Words.min(1),
  both: z.boolean().optional(),
});

/** What goes with what; one record serves both. Foods by food or part ("kale", "chard.stem": any state) or by ingredient id. */
export const PairingRecord = z.strictObject({
  with: z.tuple([z.string(), z.string()]),
  basis: z.enum(PAIRING_BASES),
  tradition: z.string().optional(),
  why: z.string().min(10).max(90),
  from: Words.min(1),
});

export type FoodRecord = z.infer<typeof FoodRecord>;
export type KindRecord = z.infer<typeof KindRecord>;
export type StateRecord = z.infer<typeof StateRecord>;
export type ProcedureRecord = z.infer<typeof ProcedureRecord>;
export type SwapRecord = z.infer<typeof SwapRecord>;
export type PairingRecord = z.infer<typeof PairingRecord>;
export type Calculated = z.infer<typeof Calculated>;
export type Cited = z.infer<typeof Cited>;
