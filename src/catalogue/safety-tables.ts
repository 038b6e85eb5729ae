import type { AllergenId, SourceRef } from "../types.js";
import type { DIETS } from "./words.js";

// The shape of data/vocabulary/{allergens,diets,hazards,temperatures}.yaml once parsed. Types only.

/** Where a rule was read. Without a grade it was read at the publisher or on a faithful copy. */
export interface RuleSource {
  readonly key: string;
  readonly at?: string;
  readonly grade?: "read" | "read-secondary" | "derived" | "memory";
}

/**
 * What an ingredient must be for a rule to speak of it. Every key given must hold (and); inside a list one is enough (or).
 * It reads the ingredient's record only: never a word of its name.
 */
export interface Match {
  readonly origin?: readonly string[];
  readonly tags?: readonly string[];
  /** The kind or any of its ancestors. */
  readonly kinds?: readonly string[];
  /** Ids: "food", "food.part" or a whole ingredient id. */
  readonly foods?: readonly string[];
  readonly parts?: readonly string[];
  readonly states?: readonly string[];
  readonly contains?: readonly AllergenId[];
  readonly may?: readonly AllergenId[];
  readonly unknown?: readonly AllergenId[];
  readonly can?: readonly string[];
  readonly cannot?: readonly string[];
  /** Jobs the ingredient has with a weight of a half or more. */
  readonly jobs?: readonly string[];
  /** Figures per 100 g in the vocabulary's unit. `missing` holds when it was never measured. */
  readonly figures?: Readonly<
    Record<string, { readonly over?: number; readonly under?: number; readonly missing?: boolean }>
  >;
  /** Whether the record says what the thing is made from. */
  readonly originKnown?: boolean;
  readonly not?: Matches;
}
/** One description or several of which any will do. */
export type Matches = Match | readonly Match[];

export interface AllergenEntry {
  readonly id: AllergenId;
  /** What people write for it. The id is accepted too. */
  readonly names: readonly string[];
  /** Which public lists name it. */
  readonly lists: readonly ("US" | "EU" | "UK" | "Canada")[];
  readonly text: string;
  readonly sources: readonly RuleSource[];
}
/** A word people write that stands for several allergens. */
export interface AllergenGroup {
  readonly names: readonly string[];
  readonly means: readonly AllergenId[];
}
/** An ingredient that brings allergens its name does not show. */
export interface Carrier {
  readonly id: string;
  readonly when: Matches;
  readonly usual: readonly AllergenId[];
  readonly sometimes: readonly AllergenId[];
  readonly text?: string;
  readonly sources: readonly RuleSource[];
}
/** Allergic to one, some people react to the other. */
export interface CrossReaction {
  readonly id: string;
  readonly from: readonly AllergenId[];
  readonly when: Matches;
  readonly rate?: string;
  readonly text: string;
  readonly sources: readonly RuleSource[];
}
export interface AllergenTable {
  readonly allergens: readonly AllergenEntry[];
  readonly groups: readonly AllergenGroup[];
  readonly carriers: readonly Carrier[];
  readonly cross: readonly CrossReaction[];
}

/** The contract's diets and the further conditions the tables know. */
export type SafetyDietId = (typeof DIETS)[number];

/** certain: the definition itself. usual: most people who keep it. disputed: authorities or customs differ. */
export type Sureness = "certain" | "usual" | "disputed";
export type Decider = "the diner" | "a certifier" | "a clinician";
export interface DietRule {
  readonly id: string;
  /** no: not eaten. unknown: cannot be told, so it is refused as unknown. caution: offered with a word of warning. yes: settles it at once. */
  readonly answer: "no" | "unknown" | "caution" | "yes";
  readonly when: Matches;
  readonly text: string;
  readonly sure?: Sureness;
  readonly decides?: Decider;
  /** The hazards under this word say the same of the ingredient: the diet's own words are said instead. */
  readonly alike?: string;
  readonly sources: readonly RuleSource[];
}
export interface DietEntry {
  readonly id: SafetyDietId;
  readonly names: readonly string[];
  readonly text: string;
  readonly sure: Sureness;
  readonly decides: Decider;
  /** What is answered when no rule speaks. */
  readonly otherwise: "yes" | "unknown";
  readonly otherwiseText?: string;
  /** In order; the first no, unknown or yes settles it. */
  readonly rules: readonly DietRule[];
  /** Pairs that may not share a dish or a meal. */
  readonly apart?: readonly {
    readonly id: string;
    readonly one: Matches;
    readonly other: Matches;
    readonly answer: "no" | "caution";
    readonly text: string;
    readonly sources: readonly RuleSource[];
  }[];
  readonly sources: readonly RuleSource[];
}
/** A word for what people leave out ("pork", "shellfish") and what it covers. */
export interface FoodGroup {
  readonly names: readonly string[];
  readonly when: Matches;
}
export interface DietTable {
  readonly diets: readonly DietEntry[];
  readonly groups: readonly FoodGroup[];
}

/** A step that makes a hazard safe; it goes into a swap's prep as required. */
export interface RequiredStep {
  readonly procedure: string;
  readonly text: string;
  readonly active: number;
  readonly waiting: number;
}
export interface HazardRule {
  readonly id: string;
  readonly severity: "stop" | "caution" | "note";
  /** Only with severity stop. never: refused. unless: offered with `step`. diner: refused for `diners`, a caution for others. */
  readonly stop?: "never" | "unless" | "diner";
  readonly who: string;
  readonly text: string;
  readonly when?: Matches;
  readonly missing?: Matches;
  /** Some other ingredient of the dish. */
  readonly dish?: Matches;
  readonly techniques?: readonly string[];
  readonly roles?: readonly string[];
  /** Words of the request or the recipe, folded. */
  readonly context?: readonly string[];
  /** For `unless`: techniques where the step cannot be done, so it is refused. */
  readonly never?: readonly string[];
  /** Cooked through it is no danger: a `diner` stop is then offered with `step`, and nothing is said to those who are not at the table. */
  readonly unlessCooked?: boolean;
  readonly diners?: readonly SafetyDietId[];
  /** Grams a person that must be passed. `knownServes`: silent when the number of servings is not known. */
  readonly amount?: { readonly perServing: number; readonly knownServes?: boolean };
  /** Speak even when the missing ingredient had the same hazard. Stops of kind never and unless always do. */
  readonly always?: boolean;
  /** The missing ingredient itself keeps harm out: it is not left out either. */
  readonly neverWithout?: boolean;
  /** Rules under one word say much the same: of those raised by one ingredient only the gravest is said. Stops and steps all count. */
  readonly alike?: string;
  readonly step?: RequiredStep;
  readonly conflict?: string;
  readonly sources: readonly RuleSource[];
}
export interface HazardTable {
  /** Techniques that heat food through, and those that do not. */
  readonly cookedThrough: readonly string[];
  readonly hazards: readonly HazardRule[];
}

export type Jurisdiction = "US" | "UK" | "Canada" | "Australia" | "WHO" | "Hong Kong";
export interface Target {
  readonly celsius?: number;
  readonly fahrenheit?: number;
  /** Minutes to rest off the heat before it is cut. */
  readonly rest?: number;
  /** Seconds the middle must stay there. */
  readonly hold?: number;
  /** What to look for when there is no figure, or beside it. */
  readonly sign?: string;
  readonly sources: readonly RuleSource[];
}
export interface DonenessClass {
  readonly id: string;
  readonly text: string;
  readonly when: Matches;
  /** Asked for in order of strictness when kinds are compared. */
  readonly targets: Readonly<Partial<Record<Jurisdiction, Target>>>;
  readonly conflict?: string;
}
export interface HandlingRule {
  readonly id: string;
  readonly topic: "thaw" | "soak" | "marinate" | "cool" | "hold" | "rice" | "reheat" | "store" | "cure";
  readonly jurisdiction: Jurisdiction | "general";
  readonly when?: Matches;
  readonly techniques?: readonly string[];
  readonly text: string;
  readonly figures: Readonly<Record<string, number>>;
  readonly conflict?: string;
  readonly sources: readonly RuleSource[];
}
export interface TemperatureTable {
  /** Eaten as it is; checked before the classes, after `cookFirst`. */
  readonly ready: Matches;
  /** Looks ready and is not. */
  readonly cookFirst: Matches;
  /** Cured or smoked without cooking: eaten as it is by most people. */
  readonly uncookedCured: Matches;
  readonly classes: readonly DonenessClass[];
  readonly handling: readonly HandlingRule[];
}

export interface SafetyVocabulary {
  readonly allergens: AllergenTable;
  readonly diets: DietTable;
  readonly hazards: HazardTable;
  readonly temperatures: TemperatureTable;
}
/** Sources as they are handed out. */
export type RuleRefs = readonly SourceRef[];
