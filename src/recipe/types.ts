import type { Dish, IngredientId, Recipe, TechniqueId } from "../types.js";

/** A line a step uses and how sure that is: 1 named in full, about 0.8 by part of its name, 0.7 and less by kind or by "everything". */
export interface LineUse {
  /** Index into `lines`. */
  readonly line: number;
  readonly confidence: number;
  readonly how: "named" | "part of the name" | "kind" | "everything" | "the rest";
  /** The words of the step that say so. */
  readonly words: string;
}
export interface TechniqueUse {
  readonly technique: TechniqueId;
  readonly word: string;
  readonly confidence: number;
}
/** Minutes said in a step. A range keeps both ends; `minutes` is the upper one, so that nothing is planned too short. */
export interface StepTime {
  readonly minutes: number;
  readonly range?: readonly [low: number, high: number];
  readonly kind: "active" | "waiting";
  readonly text: string;
}
export interface Temperature {
  readonly celsius: number;
  readonly fahrenheit: number;
  readonly of: "oven" | "fan oven" | "oil" | "inside" | "not said";
  /** True when the scale was not written and was told by the size of the number. */
  readonly guessed?: true;
  readonly text: string;
}
export type ProcedureId = "soak" | "drain" | "rinse" | "marinate" | "thaw";
export interface ByProductUse {
  readonly what: string;
  /** Index of the step that leaves it. */
  readonly from: number;
  readonly confidence: number;
}
/** What one step says. `step` is its index in `steps`. */
export interface StepReading {
  readonly step: number;
  readonly uses: readonly LineUse[];
  readonly techniques: readonly TechniqueUse[];
  readonly times: readonly StepTime[];
  readonly temperatures: readonly Temperature[];
  /** "until golden": how the cook sees that it is done, as written. */
  readonly doneness: readonly string[];
  readonly procedures: readonly { readonly procedure: ProcedureId; readonly word: string }[];
  /** By-products kept for later: "the soaking liquid". */
  readonly keeps: readonly { readonly what: string; readonly text: string }[];
  readonly usesByProducts: readonly ByProductUse[];
}
export interface NotUnderstood {
  readonly where: "line" | "step" | "yield" | "time";
  /** Index into `lines` or `steps`. */
  readonly at?: number;
  readonly text: string;
  readonly why: string;
}
/** A recipe with what was understood of it. */
export interface ReadRecipe extends Recipe {
  readonly form: RecipeForm;
  /** What ranking and corrections need. */
  readonly dish: Dish;
  /** One for each step, in order. */
  readonly understood: readonly StepReading[];
  /** Minutes said for preparing and for cooking; `minutes` is the total. */
  readonly times: { readonly prep?: number; readonly cook?: number; readonly total?: number };
  /** "Serves 4 to 6": both ends. `serves` is the lower. */
  readonly servesRange?: readonly [low: number, high: number];
  /** What it makes when that is no number of people: 24 cookies. */
  readonly makes?: { readonly count: number; readonly of: string };
  /** Addresses of pictures, as written. Never fetched; check them before putting them in a page. */
  readonly images: readonly string[];
  readonly notUnderstood: readonly NotUnderstood[];
  /** The JSON-LD recipe this was read from, when there was one (`source` may hold a whole document). */
  readonly node?: Readonly<Record<string, unknown>>;
  /** The JSON-LD document {@link node} stands in: `source` itself, or what a page carries in a script. */
  readonly document?: unknown;
  /** Ids of the foods the lines name, in order, each once. */
  readonly foods: readonly IngredientId[];
}
export type RecipeForm = "json-ld" | "html" | "markdown" | "text";

export interface RawText {
  readonly text: string;
  readonly group?: string;
}
/** What every form is brought to before it is understood. */
export interface Raw {
  name: string;
  lines: RawText[];
  steps: RawText[];
  yields: string[];
  prep?: number;
  cook?: number;
  total?: number;
  method: string;
  cuisine: string;
  images: string[];
  unread: string[];
  notUnderstood: NotUnderstood[];
  node?: Readonly<Record<string, unknown>>;
  document?: unknown;
}
export function emptyRaw(): Raw {
  return {
    name: "",
    lines: [],
    steps: [],
    yields: [],
    method: "",
    cuisine: "",
    images: [],
    unread: [],
    notUnderstood: [],
  };
}
