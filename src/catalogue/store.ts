import type { Flat } from "./compiled.js";
import type { NameReader } from "./name-columns.js";
import type { SafetyVocabulary } from "./safety-tables.js";
import type { AllergenId, IngredientId, RoleId, SlotId, SourceRef } from "../types.js";

/** One measured or judged number with its source. */
export interface Figure {
  readonly value: number;
  readonly source: SourceRef;
}
/** Grams of one of a unit of this ingredient. `label` is what was done to it ("chopped") or which one ("large"); "" when plain. */
export interface MeasureRow {
  readonly unit: string;
  readonly label: string;
  readonly grams: number;
  readonly source: SourceRef;
}
/** Grams ready for use per gram as sold, and what has to be done. */
export interface ReadyRow {
  readonly by: readonly string[];
  readonly yield: number;
  /** g salt per 100 g ready weight, when the procedure changes it. */
  readonly salt?: number;
  readonly source: SourceRef;
}
export interface BecomesRow {
  readonly to: IngredientId;
  readonly by: string;
  readonly yield: number;
  readonly active?: number;
  readonly waiting?: number;
  readonly source: SourceRef;
}

/** Everything known of one ingredient, frozen. Kind, food and state facts are already merged. */
export interface Ingredient {
  readonly index: number;
  readonly id: IngredientId;
  readonly food: string;
  readonly part?: string;
  readonly state: readonly string[];
  readonly isDefault: boolean;
  /** Display names. */
  readonly name: { readonly us: string; readonly gb: string };
  readonly names: readonly { readonly tag: string; readonly text: string; readonly of: "food" | "part" | "state" }[];
  readonly kind: string;
  /** The kind and its ancestors, nearest first, ending in "food". */
  readonly kinds: readonly string[];
  readonly roles: readonly { readonly role: RoleId; readonly weight: number }[];
  readonly slot?: SlotId;
  readonly can: ReadonlySet<string>;
  readonly cannot: ReadonlySet<string>;
  /** 0 to 9 by stage ("raw", "cooked", "long") and attribute. */
  readonly texture: Readonly<Record<string, Readonly<Record<string, number>>>>;
  readonly flavour: Readonly<Record<string, number>>;
  readonly aroma: Readonly<Record<string, number>>;
  readonly dominant: readonly string[];
  readonly origin: ReadonlySet<string>;
  readonly tags: ReadonlySet<string>;
  readonly contains: readonly AllergenId[];
  readonly mayContain: readonly AllergenId[];
  readonly unknownAllergens: readonly AllergenId[];
  readonly measures: readonly MeasureRow[];
  readonly usual?: string;
  /** Edible share of what is bought, 0 to 1. */
  readonly edible: number;
  /** g served per g ready-to-cook; undefined when it is not eaten as a slot. */
  readonly cooked?: number;
  /** The same by technique; "roast meat" is what is left of it without skin, bone and fat. */
  readonly cookedBy?: Readonly<Record<string, { readonly yield: number; readonly source: SourceRef }>>;
  readonly ready?: ReadyRow;
  readonly becomes: readonly BecomesRow[];
  /** Typical minutes to done by technique. */
  readonly minutes: Readonly<Record<string, number>>;
  readonly cost: number;
  /** How likely it is in the house: 2 in most kitchens, 1 in an ordinary supermarket (and foods of an extension), 0 neither. */
  readonly athand: number;
  readonly colour?: string;
  readonly starchKind?: string;
  readonly acidKind?: string;
  readonly pungencyKind?: string;
  readonly traditions: readonly string[];
}

export interface Procedure {
  readonly id: string;
  readonly name: string;
  readonly skip: string;
  readonly add: string;
  readonly active: number;
  readonly waiting: number;
  readonly source: SourceRef;
  readonly quick?: { readonly text: string; readonly active: number; readonly waiting: number };
  readonly byProduct?: {
    readonly name: string;
    readonly replaceWith: string;
    readonly gramsPerGram: number;
    readonly role: RoleId;
  };
}

export interface SwapEdge {
  readonly id: string;
  readonly replaces: { readonly id: IngredientId; readonly amount?: string };
  readonly uses: readonly { readonly id: IngredientId; readonly amount?: string; readonly ratio?: number }[];
  readonly role?: RoleId;
  readonly context?: string;
  readonly techniques?: readonly string[];
  readonly tradition?: string;
  readonly change?: string;
  readonly sources: readonly SourceRef[];
}

export type CodedField = "roles" | "traditions" | "state" | "texture" | "aroma";

/** The opened catalogue as the rooms read it. Reached with `storeOf(catalogue)`. */
export interface Store {
  readonly size: number;
  readonly locale: "en-US" | "en-GB";
  readonly measures: "us" | "metric";
  readonly ingredients: readonly Ingredient[];
  readonly byId: ReadonlyMap<string, Ingredient>;
  /** Names as the columns hold them: for reading all of them, which through the ingredients would make a list for each. */
  readonly names: Pick<NameReader, "eachShared" | "ownOf" | "unlisted">;
  readonly procedures: ReadonlyMap<string, Procedure>;
  readonly swaps: readonly SwapEdge[];
  /** Every figure as a column over ingredients, NaN where not measured, in the unit of the vocabulary per 100 g. */
  readonly columns: Readonly<Record<string, Float64Array>>;
  /**
   * For a field whose values repeat: a number for each ingredient, the same for the same value, -1 for none. What depends on the value
   * alone is then worked out once a value and not once an ingredient.
   */
  codes(field: CodedField): ArrayLike<number>;
  /** value and source, or null when not measured. */
  figure(i: Ingredient, name: string): Figure | null;
  /** one or more former ids and where they went. */
  readonly tombstones: ReadonlyMap<string, IngredientId>;
  /** Unit of a figure, per 100 g. */
  figureUnit(name: string): string;
  /** The display name in the catalogue's locale. */
  nameOf(i: Ingredient): string;
  /** The words of data/vocabulary/terms.yaml, by list. */
  readonly terms: Readonly<Record<string, readonly string[]>>;
  /** Roles with the dose that carries them. */
  readonly roles: Readonly<Record<string, { readonly carrier: string; readonly text: string }>>;
  readonly sources: Readonly<
    Record<string, { readonly title: string; readonly publisher?: string; readonly year?: number | string }>
  >;
  /** Tables other rooms own, as compiled from data/vocabulary (safety, names). */
  readonly tables: Readonly<Record<string, unknown>>;
  /** The same tables, typed for the safety room. */
  readonly vocabulary: SafetyVocabulary;
  /** The catalogue as rows, unpacked when first asked for (graph, extensions). */
  flat(): Flat;
}
