import type { Store } from "../catalogue/index.js";
import { mentionsIn } from "./mentions.js";
import type { Recipe } from "../types.js";
import type { LineNames, Naming } from "./rename.js";
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

const LIQUIDS: ReadonlySet<string> = new Set("water liquid liquor juice".split(" "));
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
  // "the soaking water" is what a soak left, no soak
  const said = words.filter((t, i) => !(t.text.endsWith("ing") && LIQUIDS.has(words[i + 1]?.text ?? "")));
  return (
    does(
      said.map((t) => t.text),
      verbsOf(store, id),
    ) && mentionsIn(words, naming.called.names).length > 0
  );
}

/** Does the sentence only do this procedure to this food, so that it can go whole? */
export function onlyDoes(store: Store, lines: LineNames, sentence: string, naming: Naming, id: string): boolean {
  if (!doesProcedure(store, sentence, naming, id)) return false;
  const verbs = verbsOf(store, id);
  const words = tokens(sentence).map((t) => t.text);
  // "in warm water" is no warming
  const said = words.filter((w, i) => !(w === "warm" && LIQUIDS.has(words[i + 1] ?? "")));
  return !said.some((w) => COOKING.includes(w) && !verbs.includes(w)) && !othersIn(lines, sentence, naming.stand.at);
}
const BOILS: ReadonlySet<string> = new Set("boil simmer cook poach bring".split(" "));
/** Does the sentence only boil this food by itself, to be used in a later step? Such a step falls away with what is cooked already. */
export function onlyCooks(recipe: Recipe, lines: LineNames, sentence: string, naming: Naming, step: number): boolean {
  const words = tokens(sentence);
  if (mentionsIn(words, naming.called.names).length === 0 || othersIn(lines, sentence, naming.stand.at)) return false;
  const said = words.map((t) => t.text);
  if (!said.some((t) => BOILS.has(t)) || said.some((t) => COOKING.includes(t) && !BOILS.has(t))) return false;
  return recipe.steps
    .slice(step)
    .some((s) => mentionsIn(tokens(s.text.slice(0, 5000)), naming.called.names).length > 0);
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
/** "Chop them roughly." with the name put in the place of the pronoun; undefined when it may speak of something else. */
export function turnedTo(sentence: string, name: string): string | undefined {
  const words = tokens(sentence);
  const [verb, it] = words;
  const acts = verb !== undefined && COOKING.includes(verb.text);
  if (!acts || it === undefined || (it.text !== "it" && it.text !== "them")) return undefined;
  if (words.slice(2).some((t) => ["it", "them", "they"].includes(t.text))) return undefined;
  return `${sentence.slice(0, it.start)}the ${name}${sentence.slice(it.end)}`;
}
const KEEP_ONE: ReadonlySet<string> = new Set(["water", "salt", "oil"]);

/** Another line of the recipe is named; plain water does not count. */
export function othersIn(lines: LineNames, sentence: string, at: number): boolean {
  const words = stems(sentence);
  return lines.named.some((own, i) => {
    if (i === at || own.length === 0 || (own.length === 1 && own[0] === "water")) return false;
    const head = own.at(-1);
    return (
      placeOf(words, own) >= 0 || (head !== undefined && head.length > 2 && !KEEP_ONE.has(head) && words.includes(head))
    );
  });
}
