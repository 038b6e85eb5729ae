import type { PairingBase } from "../catalogue/index.js";
import type { AllergenFacts, Avoid, FoodRef, Refusal, SourceRef } from "../types.js";

/** Why two foods go together. Computed: no record says so; shared aromas, a contrast or near kin do. */
export type PairingBasis = PairingBase | "computed";

export interface PairingRequest {
  /** A name, a phrase or an id. */
  food: string;
  /** What is in the house: it ranks before the rest of its kind, and is shown in the state it is there. */
  have?: readonly string[];
  avoid?: Avoid;
  /** A tradition of the vocabulary or a word of one ("Italian", "Turkish"): its own pairings come first. */
  cuisine?: string;
  /** Most pairings, 1 to 200; 12 when left out. */
  limit?: number;
}
export interface Pairing {
  readonly with: FoodRef;
  /** 0 to 1. Recorded pairings are above 0.6, computed ones at or below. */
  readonly score: number;
  readonly basis: PairingBasis;
  /** The kitchen that pairs them so, when the record names one. */
  readonly tradition?: string;
  readonly why: string;
  /** Empty when computed. */
  readonly sources: readonly SourceRef[];
  /** What the other food brings. */
  readonly allergens: AllergenFacts;
}
export interface PairingAdvice {
  readonly food: FoodRef;
  readonly pairings: readonly Pairing[];
  /** Only what would have stood within `limit`, and the food itself when it is to be avoided. */
  readonly refused: readonly Refusal[];
  /** Words of `have` that name no food. */
  readonly notUnderstood: readonly string[];
}
