import type { Ingredient, Store } from "../catalogue/index.js";

// What a cook does to a food before measuring it changes what a cup of it weighs.

/** The words of a line, folded as measureWords folds them, and the state they make. */
const FORMS: readonly (readonly [word: string, form: string])[] = [
  ["mashed", "puree"],
  ["grated", "grated"],
  ["sliced", "sliced"],
  ["chopped", "chopped"],
];
const HEATS: ReadonlySet<string> = new Set(["cooked", "boiled", "roasted", "steamed"]);
const SPOONED: ReadonlySet<string> = new Set(["cup", "tbsp", "tsp"]);

const formsOf = new WeakMap<Store, ReadonlyMap<string, readonly Ingredient[]>>();
/** What is sold in one of these forms, by food and part. */
function formed(store: Store): ReadonlyMap<string, readonly Ingredient[]> {
  const known = formsOf.get(store);
  if (known !== undefined) return known;
  const made = new Map<string, Ingredient[]>();
  for (const i of store.ingredients) {
    if (!FORMS.some(([, form]) => i.state.includes(form)) || !i.measures.some((r) => SPOONED.has(r.unit))) continue;
    const key = `${i.food}.${i.part ?? ""}`;
    made.set(key, [...(made.get(key) ?? []), i]);
  }
  formsOf.set(store, made);
  return made;
}

/** "1 cup potatoes, mashed": the state of the same food that is so already, and is otherwise kept the same way. */
export function preparedLike(store: Store, i: Ingredient, words: ReadonlySet<string>): Ingredient | undefined {
  const form = FORMS.find(([word, name]) => words.has(word) && !i.state.includes(name))?.[1];
  if (form === undefined) return undefined;
  return formed(store)
    .get(`${i.food}.${i.part ?? ""}`)
    ?.find((o) => o.state.includes(form) && o.state.every((t) => t === form || i.state.includes(t) || HEATS.has(t)));
}

/** Not dry: mashed, it fills the cup without gaps. */
export const isMoist = (i: Ingredient): boolean => ["fresh", "frozen", "canned"].some((s) => i.state.includes(s));
