import type { Sparse } from "./numbers.js";

/**
 * The shape the package ships: columns, one value an ingredient, parsed once from one JSON string.
 * Words that repeat are kept once in a dictionary and pointed to; figures are numbers or null (not measured).
 */
export const FORMAT = 4;

/** A column whose values repeat: each once, and packed the place of every ingredient's in that list; -1 is none. */
export interface Coded<T> {
  readonly of: readonly T[];
  readonly at: string;
}
/**
 * Kitchen measures: the units of each ingredient ("cup", "piece whole"), then one after another the grams, and the sources coded like
 * those of figures.
 */
export interface MeasureColumns {
  readonly units: Coded<readonly string[]>;
  readonly grams: string;
  readonly sources: string;
}
/** Lists of places that repeat: how long each different one is, all of them one after another, and which of them each ingredient has. */
export interface RecordColumns {
  readonly counts: string;
  readonly of: string;
  readonly at: string;
}
/** A source as [key, where in it, evidence grade]. */
export type PackedSource = readonly [key: string, at?: string, grade?: string];

export interface NameRow {
  readonly tag: string;
  readonly text: string;
  readonly of: "food" | "part" | "state";
}
export type PackedMeasure = readonly [unit: string, label: string, grams: number, source: number];
export interface PackedReady {
  readonly by: readonly string[];
  readonly yield: number;
  readonly salt?: number;
  readonly source: number;
}
export interface PackedBecomes {
  readonly to: string;
  readonly by: string;
  readonly yield: number;
  readonly minutes?: { readonly active: number; readonly waiting: number };
  readonly source: number;
}

/** One ingredient before it is turned into columns: what kind, food and state say together. */
export interface FlatIngredient {
  readonly id: string;
  readonly food: string;
  readonly part?: string;
  readonly state: readonly string[];
  readonly isDefault: boolean;
  readonly name: readonly [us: string, gb: string];
  readonly names: readonly NameRow[];
  readonly kind: string;
  readonly roles: Readonly<Record<string, number>>;
  readonly slot?: string;
  readonly can: readonly string[];
  readonly cannot: readonly string[];
  readonly texture: Readonly<Record<string, Readonly<Record<string, number>>>>;
  readonly flavour: Readonly<Record<string, number>>;
  readonly aroma: Readonly<Record<string, number>>;
  readonly dominant: readonly string[];
  readonly origin: readonly string[];
  readonly tags: readonly string[];
  readonly contains: readonly string[];
  readonly may: readonly string[];
  readonly unknown: readonly string[];
  readonly figures: Readonly<Record<string, readonly [value: number, source: number]>>;
  readonly measures: readonly PackedMeasure[];
  readonly usual?: string;
  readonly edible: number;
  readonly cooked?: readonly [value: number, source: number];
  /** By technique, "roast meat" for what is left when skin, bone and fat are taken off. */
  readonly cookedBy?: Readonly<Record<string, readonly [value: number, source: number]>>;
  readonly ready?: PackedReady;
  readonly becomes: readonly PackedBecomes[];
  readonly minutes: Readonly<Record<string, readonly [value: number, source: number]>>;
  readonly cost: number;
  /** 2 in most kitchens, 1 in an ordinary supermarket, 0 neither. */
  readonly athand: number;
  readonly colour?: string;
  readonly starchKind?: string;
  readonly acidKind?: string;
  readonly pungencyKind?: string;
  readonly traditions: readonly string[];
}

export interface PackedProcedure {
  readonly id: string;
  readonly name: string;
  readonly skip: string;
  readonly add: string;
  readonly minutes: { readonly active: number; readonly waiting: number };
  readonly source: number;
  readonly quick?: { readonly text: string; readonly active: number; readonly waiting: number };
  readonly byProduct?: {
    readonly name: string;
    readonly replaceWith: string;
    readonly gramsPerGram: number;
    readonly role: string;
  };
  readonly safety?: string;
}
export interface PackedSwap {
  readonly id: string;
  readonly replaces: { readonly id: string; readonly amount?: string };
  readonly uses: readonly { readonly id: string; readonly amount?: string; readonly ratio?: number }[];
  readonly role?: string;
  readonly context?: string;
  readonly techniques?: readonly string[];
  readonly tradition?: string;
  readonly change?: string;
  readonly sources: readonly number[];
}

/** What is the same for all ingredients. */
export interface Commons {
  readonly roles: Readonly<Record<string, { readonly carrier: string; readonly text: string }>>;
  readonly vocabulary: Readonly<Record<string, readonly string[]>>;
  readonly figures: Readonly<Record<string, { readonly unit: string }>>;
  readonly tags: Readonly<Record<string, string>>;
  readonly sources: Readonly<
    Record<string, { readonly title: string; readonly publisher?: string; readonly year?: number | string }>
  >;
  readonly refs: readonly PackedSource[];
  readonly kinds: readonly (readonly [kind: string, parent: string])[];
  readonly procedures: readonly PackedProcedure[];
  readonly tombstones: Readonly<Record<string, string>>;
  readonly tables: Readonly<Record<string, unknown>>;
}
/** The whole catalogue as rows: what the graph is built from and what the columns encode. */
export interface Flat {
  readonly commons: Commons;
  readonly ingredients: readonly FlatIngredient[];
  readonly swaps: readonly PackedSwap[];
}
export interface Compiled {
  readonly format: number;
  readonly version: string;
  readonly data: string;
  readonly hash: string;
  readonly commons: Commons;
  readonly size: number;
  readonly columns: Readonly<Record<string, Coded<unknown> | readonly unknown[]>>;
  /**
   * Names that all states of a food ("cod") or part ("chard.stem") share: the keys, then for each language how many keys on the
   * next name lies (`step`) and one line a key, names set apart by a bar. One language after another packs much smaller than one food
   * after another. Names of one state are a column.
   */
  readonly names: {
    readonly of: readonly string[];
    readonly tags: Readonly<Record<string, { readonly step: readonly number[]; readonly text: string }>>;
  };
  /** For each ingredient the place of its key among `names.of`, packed (keys.ts). */
  readonly keys: string;
  /** The places in `commons.refs` of the records that most of an ingredient's figures come from. */
  readonly records: RecordColumns;
  readonly measures: MeasureColumns;
  readonly figures: Readonly<Record<string, PackedFigure>>;
  readonly swaps: SwapColumns;
}
/** v: values; s: the place of each source among `commons.refs`, plus 1; 0, -1, -2 ... point to the ingredient's own records. */
export interface PackedFigure {
  readonly v: string;
  readonly s: Sparse;
}
/** A column whose values repeat, the places packed: 0 is none, 1 the first of the list. */
export interface Listed<T> {
  readonly of: readonly T[];
  readonly at: string;
}
/** Swaps by column: ingredients by their place in the catalogue, amounts as text or a ratio; what they use one after another. */
export interface SwapColumns {
  readonly replaces: string;
  readonly amount: Listed<string>;
  readonly count: string;
  readonly uses: string;
  readonly usesAmount: Listed<string | number>;
  readonly role: Listed<string>;
  readonly context: Listed<string>;
  readonly techniques: Listed<readonly string[]>;
  readonly tradition: Listed<string>;
  readonly sources: Listed<readonly number[]>;
  readonly change: Coded<string>;
}
