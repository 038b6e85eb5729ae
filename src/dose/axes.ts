/**
 * What a gram of an ingredient brings to a dish, axis by axis. All per gram as sold and weighed (after trimming),
 * as it is in the dish: soaked, desalted or drained where the food needs it. NaN means not measured, never zero.
 */
export const AXES = [
  "mass", // g in the dish per g as sold, after soaking, desalting or draining
  "served", // g on the plate after cooking
  "water", // g
  "fat", // g
  "protein", // g
  "starch", // g
  "sweetness", // g sucrose equivalents
  "salt", // g NaCl
  "acid", // g citric-acid equivalents
  "glutamate", // g free glutamic acid
  "nucleotide", // g IMP equivalents (GMP counts 2.3 times)
  "pungency", // SHU x g
  "bitter", // judged level x g
  "thickening", // g wheat-flour equivalents
  "lift", // g carbon dioxide
  "neutralising", // g baking soda it neutralises (negative: alkali)
  "alcohol", // g
  "gel", // g gelatin (225 bloom) equivalents
  "aroma", // strength x g
  "binding", // g whole-egg equivalents
  "colour", // strength x g
  "volume", // ml
  "dry weight", // g
  "weight", // g as weighed
] as const;
export type Axis = (typeof AXES)[number];
export const AT = Object.fromEntries(AXES.map((axis, i) => [axis, i])) as Readonly<Record<Axis, number>>;
export const WIDTH = AXES.length;
