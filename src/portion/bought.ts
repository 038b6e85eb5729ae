import type { Ingredient } from "../catalogue/index.js";
import type { Portion } from "../types.js";

// A weight is of a thing as it is bought, a cup of what is eaten of it.

/** Kinds bought in what nobody eats: pods, cobs, rinds, shells, stones. What is peeled or trimmed of the rest is up to the cook. */
const CASED: readonly string[] = [
  "fruiting vegetable",
  "pulse",
  "nut",
  "edible thistle",
  "crisp shoot",
  "buttery fruit",
];
/** Counted as they lie on the counter, shell and all. */
const IN_SHELL: readonly string[] = ["crustacean", "mollusc"];
const SCALE: readonly string[] = ["g", "kg", "oz", "lb"];

const is = (i: Ingredient, kinds: readonly string[]): boolean => i.kinds.some((k) => kinds.includes(k));

/**
 * g eaten per g bought of what fills a plate, before it is cooked: without bones, shells, heads, pods, cobs and rinds. 1 for the rest,
 * for eggs, which are weighed without their shells, and where nothing is known.
 */
export function eatenShare(i: Ingredient): number {
  const flesh = i.slot === "protein" && !i.kinds.includes("egg");
  const bought = flesh || (i.slot !== undefined && is(i, CASED));
  return bought && i.edible > 0 && i.edible < 1 ? i.edible : 1;
}

/** Is one of a measure the whole of it as bought? A mussel weighs with its shell; an ear of corn is what comes off it. */
export const isWholeRow = (i: Ingredient, unit: string, label: string): boolean =>
  unit === "piece" && (label === "whole" || is(i, IN_SHELL));
/** The same of a portion that was read. */
export const isCountedWhole = (i: Ingredient, { measure }: Portion): boolean =>
  isWholeRow(i, measure.unit, measure.text.endsWith(" whole") ? "whole" : "");

const isScale = (unit: string | undefined): boolean => unit !== undefined && SCALE.includes(unit);

/** g eaten per g of a measure that says nothing more. */
export const shareOfRow = (i: Ingredient, unit: string, label: string): number =>
  isScale(unit) || isWholeRow(i, unit, label) ? eatenShare(i) : 1;

/** Are the grams of a portion those of the thing as bought: weighed, or counted whole? "2 cups (300 g)" are not. */
function isAsBought(i: Ingredient, portion: Portion): boolean {
  const { unit, beside } = portion.measure;
  if (isScale(unit) || isCountedWhole(i, portion)) return true;
  return isScale(beside) && !["cup", "tbsp", "tsp", "ml", "l", "pinch"].includes(unit);
}

const GONE = new Set([
  "boneless",
  "boned",
  "deboned",
  "peeled",
  "shelled",
  "shucked",
  "pitted",
  "cored",
  "filleted",
  "fillet",
  "fillets",
  "podded",
  "kernels",
  "flesh",
]);
/** Does a text say that what is not eaten is off already ("boneless", "peeled")? Bone-in things trimmed of fat are not. */
export function saysTrimmed(text: string): boolean {
  const words = text.toLowerCase().split(/[^\p{L}\p{N}-]/u);
  return words.some((w) => GONE.has(w)) && !words.includes("bone-in") && !words.includes("unpeeled");
}

/**
 * g of flesh per g of a fish as it came out of the water, and of one gutted. A fish's figures are those of its fillet. MEXT 2020: median of
 * 100 raw fish whose refuse is "head, viscera, bones, fins", 50 % (nine in ten 35 to 60); of 13 that were cooked gutted, 35 %.
 */
const WHOLE_FISH = 0.5;
const GUTTED_FISH = 0.65;
const WHOLE: ReadonlySet<string> = new Set(["whole", "round", "entire", "uncleaned"]);
const GUTTED: ReadonlySet<string> = new Set(["gutted", "cleaned", "dressed", "head-on", "drawn"]);
/** Lighter ones are eaten bones and all. */
const EATEN_WHOLE = 25;
/** g of flesh per g of fish that is said to be whole; undefined for fillets, and for what is no raw fish. */
export function wholeFish(i: Ingredient, portion: Portion, text = ""): number | undefined {
  if (!i.kinds.includes("finfish") || i.edible < 1 || i.part !== undefined || saysTrimmed(text)) return undefined;
  if (!i.state.every((s) => s === "fresh" || s === "frozen") || !isAsBought(i, portion)) return undefined;
  const words = text.toLowerCase().split(/[^\p{L}\p{N}-]/u);
  const gutted = words.some((w) => GUTTED.has(w));
  if (!gutted && !isCountedWhole(i, portion) && !words.some((w) => WHOLE.has(w))) return undefined;
  const one =
    i.measures.find((m) => m.unit === "piece" && m.label === "whole") ?? i.measures.find((m) => m.unit === "piece");
  if (one !== undefined && one.grams < EATEN_WHOLE) return undefined;
  return gutted ? GUTTED_FISH : WHOLE_FISH;
}

/** g eaten per g of a portion, as its amount was given. @param text what was read, which may say that it is trimmed already */
export function shareOf(i: Ingredient, portion: Portion, text = ""): number {
  if (!isAsBought(i, portion) || saysTrimmed(text)) return 1;
  const fish = wholeFish(i, portion, text);
  if (fish !== undefined) return fish;
  return is(i, IN_SHELL) && text.toLowerCase().includes(" meat") ? 1 : eatenShare(i);
}
