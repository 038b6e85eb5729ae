// Grams on the plate (or, soaked, in the dish) per gram as sold, as published.
export type Yield = readonly [id: string, low: number, high?: number];

// USDA Table of Cooking Yields for Meat and Poultry (2012), figures at second hand from a public table that says it transcribes them.
// Ours cite the same table: this is a check of the copying and of the way from figure to dose, not an independent witness.
// Two figures are two ways of cooking; ours lies between them.
export const MEAT: readonly Yield[] = [
  ["ground-beef/fresh", 0.67, 0.73],
  ["lean-ground-beef/fresh", 0.71, 0.76],
  ["chicken-breast/fresh", 0.72, 0.77],
  ["chicken-thigh/fresh", 0.69, 0.74],
  ["chicken-drumstick/fresh", 0.76],
  ["chicken-wing/fresh", 0.66, 0.74],
  ["chicken/fresh", 0.78],
  ["ribeye-steak/fresh", 0.84],
  ["strip-steak/fresh", 0.82],
  ["top-sirloin/fresh", 0.8],
  ["beef-tenderloin/fresh", 0.8],
  ["flank-steak/fresh", 0.81],
  ["skirt-steak/fresh", 0.7],
  ["tri-tip/fresh", 0.84],
  ["rib-roast/fresh", 0.77],
  ["chuck-roast/fresh", 0.66],
  ["beef-brisket/fresh", 0.69],
  ["short-ribs/fresh", 0.66],
  ["stewing-beef/fresh", 0.67],
  ["pork-chop/fresh", 0.78, 0.82],
  ["pork-tenderloin/fresh", 0.8],
  ["pork-loin/fresh", 0.79],
  ["pork-shoulder/fresh", 0.65, 0.74],
  ["spareribs/fresh", 0.76],
  ["baby-back-ribs/fresh", 0.82],
  ["bone-in-ham/smoked", 0.9],
  ["ground-pork/fresh", 0.67, 0.68],
  ["bacon/cured", 0.29, 0.32],
];

// Food Yields Summarized by Different Stages of Preparation, USDA Agriculture Handbook 102 (1975), read where a research note quotes it.
export const BOILED_YIELDS: readonly Yield[] = [
  ["white-rice/pantry", 2.43, 3.75],
  ["brown-lentil/dried", 2.61, 2.89],
  ["chickpea/dried", 2.07, 2.07],
];

// Weight after soaking over dry weight: tables of two Japanese dietitians' pages and a cooking notes site (read in part, secondary).
export const SOAKED: readonly Yield[] = [
  ["wakame/dried", 10, 12],
  ["wakame/salt-cured", 1.5, 1.5],
  ["hijiki/dried", 8.5, 9.9],
  ["kombu/dried", 3, 3],
  ["shiitake/dried", 4, 4],
  ["daikon/dried", 4, 4],
];
