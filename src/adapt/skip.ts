import type { Store } from "../catalogue/index.js";
import type { Recipe } from "../types.js";
import { mentionsIn } from "./mentions.js";
import type { Naming } from "./rename.js";
import { placeOf, stems, tokens } from "./words.js";

/** A sentence with one of these does more than make an ingredient ready. */
const COOKING: readonly string[] = (
  "add fry cook simmer bake roast stir mix chop slice season flake serve heat brown combine fold blend saute grill toss layer boil cut " +
  "strip sear spread poach shred mash whisk beat pour arrange tip scatter crush grate peel blanch steam cream knead roll coat dust return " +
  "preheat melt warm toast braise marinate puree skin bone remove break"
).split(" ");
const WAITING: ReadonlySet<string> = new Set(
  (
    "drain rinse pat dry change discard squeeze refrigerate cover leave set keep reserve save strain lift throw away then and the it them in a " +
    "well aside liquid water out off with paper towel towels kitchen for later of all to on from hands your very gently"
  ).split(" "),
);
const EXTRA: Readonly<Record<string, readonly string[]>> = {
  desalt: ["soak"],
  thaw: ["defrost", "thaw"],
  bloom: ["soak", "sprinkle", "bloom"],
  plump: ["soak"],
  rehydrate: ["soak"],
  proof: ["proof", "prove", "foamy", "frothy"],
  wet: ["whisk", "mix"],
};

/** Words that say a procedure is done: its name without "-ing", and what else it goes by. */
export function verbsOf(store: Store, id: string): readonly string[] {
  const p = store.procedures.get(id);
  const first = id.split("-")[0] ?? id;
  const named = tokens(p?.name ?? "")
    .map((t) => t.text)
    .filter((w) => w.endsWith("ing") && w.length > 5)
    .map((w) => w.slice(0, -3));
  return [...new Set([first, ...named, ...(EXTRA[first] ?? [])])];
}
const does = (words: readonly string[], verbs: readonly string[]): boolean =>
  words.some((w) => verbs.some((v) => w === v || w === `${v}ing` || w === `${v}ed`));

/** Does the text do this procedure to the food, among other things or alone? */
export function doesProcedure(store: Store, text: string, naming: Naming, id: string): boolean {
  const words = tokens(text);
  return (
    does(
      words.map((t) => t.text),
      verbsOf(store, id),
    ) && mentionsIn(words, naming.called.names).length > 0
  );
}

/** Does the sentence only do this procedure to this food, so that it can go whole? */
export function onlyDoes(store: Store, recipe: Recipe, sentence: string, naming: Naming, id: string): boolean {
  if (!doesProcedure(store, sentence, naming, id)) return false;
  const verbs = verbsOf(store, id);
  const words = tokens(sentence).map((t) => t.text);
  return !words.some((w) => COOKING.includes(w) && !verbs.includes(w)) && !othersIn(recipe, sentence, naming.stand.at);
}
/** "Drain and pat dry." right after a soak: nothing but what belongs to it. */
export function goesOn(sentence: string): boolean {
  const words = tokens(sentence).map((t) => t.text);
  return words.length > 0 && words.length < 20 && words.every((w) => WAITING.has(w));
}
/** Speaks of "it" or "them" without naming a food. */
export const pointsBack = (sentence: string): boolean =>
  tokens(sentence)
    .slice(0, 6)
    .some((t) => t.text === "it" || t.text === "them" || t.text === "they");

/** Another line of the recipe is named; plain water does not count. */
function othersIn(recipe: Recipe, sentence: string, at: number): boolean {
  const words = stems(sentence);
  return recipe.lines.some((l, i) => {
    const name = l.read.food?.name;
    if (i === at || name === undefined || name === "water") return false;
    const own = stems(name);
    const head = own.at(-1);
    return (
      placeOf(words, own) >= 0 || (head !== undefined && head.length > 2 && head !== "water" && words.includes(head))
    );
  });
}
