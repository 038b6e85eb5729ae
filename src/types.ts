// The public vocabulary of types: plain data, no zod, no graphology. Everything here is immutable and JSON-serialisable.
export type Open<T extends string> = T | (string & {}); // completion for the known, any string accepted, unknown ones refused at run time
export type IngredientId = `${string}/${string}`; // "cod/salt-cured", "chard.stem/fresh"; a generated union may narrow it
export interface Vocabulary {
  // `vocabulary` is exported as const; checks, CLI help and JSON Schema read it
  readonly role: readonly RoleId[];
  readonly technique: readonly TechniqueId[];
  readonly allergen: readonly AllergenId[];
  readonly diet: readonly DietId[];
  readonly preservation: readonly string[];
  readonly heat: readonly string[];
  readonly form: readonly string[];
  readonly unit: readonly UnitId[];
}
export type RoleId =
  | "starch base"
  | "main protein"
  | "leafy green"
  | "crunchy stem"
  | "bulk vegetable"
  | "aromatic"
  | "herb"
  | "spice"
  | "heat"
  | "acid"
  | "sweetener"
  | "salt seasoning"
  | "umami seasoning"
  | "fat"
  | "frying medium"
  | "thickener"
  | "binder"
  | "leavener"
  | "structure"
  | "foam"
  | "emulsifier"
  | "tenderiser"
  | "liquid"
  | "enrichment"
  | "gelling agent"
  | "coating"
  | "colour"
  | "garnish";
// judging one swap: "can I use X instead of Y?"
export interface Judgement {
  readonly verdict: "yes" | "with changes" | "only for" | "no";
  readonly swap?: Swap;
  readonly why: string;
  readonly better: readonly Swap[];
}
export type TechniqueId =
  | "raw"
  | "boil"
  | "simmer"
  | "braise"
  | "stew"
  | "steam"
  | "stir-fry"
  | "fry"
  | "deep-fry"
  | "roast"
  | "grill"
  | "bake"
  | "marinate"
  | "whip"
  | "set cold"
  | "pickle"
  | "ferment"
  | "cure"
  | "can"
  | "slow cooker";
export type AllergenId =
  | "milk"
  | "egg"
  | "fish"
  | "crustacean shellfish"
  | "molluscs"
  | "tree nuts"
  | "peanuts"
  | "wheat"
  | "gluten cereals"
  | "soy"
  | "sesame"
  | "celery"
  | "mustard"
  | "lupin"
  | "sulphites";
export type DietId =
  | "vegan"
  | "vegetarian"
  | "pescatarian"
  | "halal"
  | "kosher"
  | "jain"
  | "buddhist"
  | "coeliac"
  | "lactose-free"
  | "low sodium"
  | "low fodmap"
  | "pregnancy"
  | "infant"
  | "toddler"
  | "lacto-vegetarian"
  | "ovo-vegetarian"
  | "g6pd"
  | "warfarin"
  | "grapefruit medicines"
  | "low tyramine"
  | "kidney disease"
  | "no mammal meat"
  | "no pork"
  | "no beef"
  | "no alcohol";
export type UnitId =
  | "g"
  | "kg"
  | "oz"
  | "lb"
  | "ml"
  | "l"
  | "tsp"
  | "tbsp"
  | "cup"
  | "piece"
  | "clove"
  | "slice"
  | "packet"
  | "can"
  | "stick"
  | "bunch"
  | "pinch";
export type SourceRef =
  | { readonly key: string; readonly at?: string }
  | { readonly key: "judgement" | "common practice"; readonly at?: string };
export type Deep<T> = T extends (...a: never[]) => unknown
  ? T
  : T extends object
    ? { readonly [K in keyof T]: Deep<T[K]> }
    : T;

// ---- opening. Reading a user's file needs zod, opening must not: two entries, and the value says it was checked
export interface Extension {
  readonly kind: "steadfare/extension@1";
  readonly name: string;
} // made only by steadfare/extend: readExtension(json: unknown): Extension
export interface Catalogue {
  // opaque; inner state under Symbol.for(...), so an ESM and a CJS copy agree
  readonly size: number;
  readonly locale: string;
  readonly measures: "us" | "metric";
  readonly meta: {
    readonly version: string;
    readonly data: string;
    readonly hash: string;
    readonly schema: number;
    readonly extensions: readonly string[];
  };
}

// ---- names and facts
export interface FoodRef {
  readonly id: IngredientId;
  readonly name: string;
}
export interface FoodMatch extends FoodRef {
  readonly matched: string;
  readonly confidence: number;
  readonly how: "exact" | "alias" | "folded" | "fuzzy" | "default";
  readonly formerId?: string;
}
// confidence: exact, alias and default 1; folded >= 0.9; fuzzy < 0.9; below 0.6 is never returned. Nonsense returns [].
export interface FoodFacts extends FoodRef {
  // what an embedder shows on a page and a notebook queries
  readonly names: readonly { readonly tag: string; readonly text: string }[];
  readonly food: string;
  readonly part?: string;
  readonly state: readonly string[];
  readonly roles: readonly { readonly role: RoleId; readonly weight: number }[];
  readonly per100g: Readonly<
    Record<string, { readonly value: number; readonly unit: string; readonly source: SourceRef } | null>
  >; // null: not measured
  readonly can: Readonly<Record<string, boolean | null>>; // melts, sets on heating, foams, edible uncooked ...; null: unknown
  readonly allergens: AllergenFacts;
  readonly measures: readonly { readonly unit: string; readonly grams: number; readonly source: SourceRef }[];
}
export interface AllergenFacts {
  readonly contains: readonly AllergenId[];
  readonly mayContain: readonly AllergenId[];
  readonly free: readonly AllergenId[];
  readonly unknown: readonly AllergenId[];
} // the four parts cover the list exactly

// ---- amounts
export interface Measure {
  readonly amount: number;
  readonly unit: UnitId;
  readonly text: string;
  readonly roundedBy: number;
  readonly beside?: UnitId;
} // roundedBy: grams the kitchen measure is over (+) or under (-); beside: the unit of a second amount the text gave ("2 breasts (300 g)")
export interface Portion extends FoodRef {
  readonly grams: number;
  readonly range?: readonly [low: number, high: number];
  readonly measure: Measure;
  readonly assumed?: true;
} // grams finite and > 0; assumed: the usual measure stands for none given
export interface ReadLine {
  readonly status: "food and amount" | "food only" | "ambiguous" | "no food";
  readonly food?: FoodRef;
  readonly candidates: readonly FoodMatch[]; // candidates only when ambiguous
  readonly portion?: Portion; // only with "food and amount"
  readonly alternatives: readonly (FoodRef & { readonly portion?: Portion })[];
  readonly preparation: string;
  readonly note: string;
  readonly optional: boolean;
  readonly divided: boolean;
  readonly unread?: string;
}
export interface Conversion extends Portion {
  readonly steps: readonly {
    readonly procedure: string;
    readonly minutes: { readonly active: number; readonly waiting: number };
  }[];
  readonly byProducts: readonly Portion[];
  readonly sources: readonly SourceRef[];
}

// ---- swaps
export interface Avoid {
  allergens?: readonly Open<AllergenId>[];
  diets?: readonly Open<DietId>[];
  foods?: readonly string[];
} // a word that is not understood throws unknown-term with the nearest: never ignored
export interface Dish {
  technique?: Open<TechniqueId>;
  cuisine?: string;
  serves?: number;
  grams?: number;
  lines?: readonly string[];
} // lines with amounts: without them no concentration and no floor under a correction
export interface SwapRequest {
  missing: string;
  amount?: string;
  role?: RoleId | readonly RoleId[];
  for?: string;
  dish?: Dish;
  have?: readonly string[];
  onlyFromHave?: boolean;
  avoid?: Avoid;
  minutes?: number;
  evidence?: "all" | "computed";
  prefer?: "closest" | "quickest" | "cheapest";
  prices?: Readonly<Record<string, number>>;
  limit?: number; // limit 1..200
}
export interface ScorePart {
  readonly name: "role" | "texture" | "flavour" | "handling" | "kin" | "custom" | "evidence";
  readonly value: number;
  readonly weight: number;
  readonly text: string;
} // score is their weighted mean, exactly as printed
export interface Swap {
  readonly use: readonly [Portion, ...Portion[]];
  readonly score: number;
  readonly parts: readonly ScorePart[];
  readonly fit: {
    readonly role: number;
    readonly texture: number;
    readonly flavour: number;
    readonly handling: number;
  };
  readonly basis: "published" | "common practice" | "computed";
  readonly sources: readonly SourceRef[];
  readonly prep: readonly {
    readonly kind: "skip" | "add" | "change";
    readonly procedure: string;
    readonly minutes: { readonly active: number; readonly waiting: number };
    readonly required: boolean;
    readonly text: string;
  }[];
  readonly corrections: readonly {
    readonly ingredient: FoodRef;
    readonly grams: number;
    readonly measure: Measure;
    readonly why: string;
  }[];
  readonly time: { readonly active: number; readonly waiting: number };
  readonly shift: readonly {
    readonly axis: string;
    readonly direction: "more" | "less";
    readonly strength: 1 | 2 | 3;
    readonly text: string;
  }[];
  readonly allergens: {
    readonly gained: readonly AllergenId[];
    readonly lost: readonly AllergenId[];
    readonly kept: readonly AllergenId[];
    readonly unknown: readonly AllergenId[];
    /** Those of gained and kept that only some makers use: check the label. */
    readonly label?: readonly AllergenId[];
  };
  readonly cautions: readonly Caution[];
  readonly text: string;
}
export interface Caution {
  readonly hazard: string;
  readonly severity: "stop" | "caution" | "note";
  readonly who: string;
  readonly text: string;
  readonly sources: readonly SourceRef[];
}
export type Refusal = FoodRef & {
  readonly because:
    | "allergen"
    | "unknown allergen"
    | "diet"
    | "hazard"
    | "avoided"
    | "time"
    | "technique"
    | "spoils the dish"
    | "not in the house";
  readonly what: string;
  readonly detail: string;
};
export interface SwapAdvice {
  readonly missing: Portion;
  readonly roles: readonly { readonly role: RoleId; readonly weight: number }[];
  readonly swaps: readonly Swap[];
  readonly refused: readonly Refusal[];
  /** Leaving it out is the better answer, the only one, or as good as the swaps: what is lost. */
  readonly goWithout?: string;
  /** Why it may not be left out: it keeps harm out of what is canned, pickled, fermented or cured. There is then no `goWithout`. */
  readonly mustStay?: string;
  readonly notUnderstood: readonly string[];
}
// refused: only candidates that would have stood within `limit`; notUnderstood: words of `for` or `technique` that changed nothing
// Order: score rounded to 4 places, then fewer ingredients, then id by code unit. Every public number is rounded at the boundary (grams 0.1, scores 1e-4) so that engines agree.

// ---- recipes: the fields the checks read
export interface Recipe {
  readonly name: string;
  readonly serves?: number;
  readonly lines: readonly { readonly text: string; readonly read: ReadLine; readonly group?: string }[];
  readonly steps: readonly { readonly text: string; readonly group?: string }[];
  readonly minutes?: number;
  readonly unread: readonly string[];
  readonly source: unknown;
}
export interface Change {
  readonly where: string;
  readonly before: string;
  readonly after: string;
  readonly why: string;
}
export interface AdaptedRecipe extends Recipe {
  readonly changes: readonly Change[];
  readonly notes: readonly string[];
  readonly refused: readonly Refusal[];
}
export interface SwapNotes {
  readonly recipe: string;
  readonly notes: readonly {
    readonly line: string;
    readonly swaps: readonly Swap[];
    /** What the line asks for, by weight; `assumed` when it gave no amount, and then none is printed. */
    readonly missing?: Portion;
    readonly roles?: readonly RoleId[];
  }[];
  readonly locale?: string;
  /** People the amounts are for, when they were scaled away from the recipe's own. */
  readonly serves?: number;
  /** The recipe as it was given, or the JSON-LD of its page: rendering to JSON-LD keeps its every field. */
  readonly source?: unknown;
  /** Which recipe of the source it is, counted from 0; the first when left out. */
  readonly place?: number;
}

export interface AdaptChoices {
  missing?: readonly { line: string; swap?: Swap }[];
  avoid?: Avoid;
  serves?: number;
}

// ---- the meal
export type SlotId = "starch" | "protein" | "vegetable" | "soup";
export interface Meal {
  serves: number;
  dishes: readonly ({ name: string; lines: readonly string[]; liquid?: string } | Recipe)[];
  table?: readonly { name?: string; avoid: Avoid }[];
  have?: readonly string[];
  soup?: "expected" | "optional";
}
export interface SlotReport {
  readonly covered: boolean;
  readonly perPerson: number;
  readonly unit: string;
  readonly target: readonly [low: number, high: number];
  readonly from: readonly Portion[];
  readonly sources: readonly SourceRef[];
}
export interface MealReport {
  readonly slots: { readonly [K in SlotId]: SlotReport };
  readonly gaps: readonly {
    readonly slot: SlotId;
    readonly short: number;
    readonly unit: string;
    readonly fill: readonly Portion[];
  }[];
  readonly balance: { readonly proteinToVegetable: number; readonly text: string };
  readonly allergens: AllergenFacts;
  readonly sodiumPerPerson: { readonly milligrams: number; readonly atLeast: boolean };
  readonly cautions: readonly Caution[];
  readonly text: string;
}

// ---- errors: switch on code, data is typed by it, isSteadfareError works across copies and realms
export interface ErrorData {
  "unknown food": { input: string; nearest: readonly FoodMatch[] };
  "ambiguous food": { input: string; candidates: readonly FoodMatch[] };
  "unreadable amount": { input: string; at: number };
  "unknown term": {
    kind: "role" | "technique" | "allergen" | "diet" | "unit" | "locale" | "tradition";
    input: string;
    nearest: readonly string[];
    accepted: readonly string[];
  };
  "invalid extension": { issues: readonly { path: string; message: string; received: unknown }[] };
  "extension conflict": { id: string; first: string; second: string };
  "conflicting request": { fields: readonly string[] };
  "no conversion": { from: string; to: string; known: readonly string[] };
  "input too large": { limit: number; size: number };
}
export type SteadfareError<C extends keyof ErrorData = keyof ErrorData> = Error &
  { [K in C]: { readonly name: "SteadfareError"; readonly code: K; readonly data: Deep<ErrorData[K]> } }[C];
