// The public face: re-exports only.
export { openCatalogue } from "./catalogue/index.js";
export { findFood } from "./names/index.js";
export { readLine } from "./portion/index.js";
export { convert } from "./states/index.js";
export { donenessOf, foodFacts, listFoods } from "./facts/index.js";
export { swapsFor, judgeSwap } from "./swap/index.js";
export { pairingsFor } from "./pairing/index.js";
export { readRecipe, readRecipes } from "./recipe/index.js";
export { adaptRecipe, type AdaptOptions } from "./adapt/index.js";
export { checkMeal } from "./meal/index.js";
export { jsonForPage, renderNotes, swapNotes, type NoteOptions } from "./notes/index.js";
export { vocabulary } from "./vocabulary.js";
export { isSteadfareError } from "./errors.js";
export { ALLERGEN_WORDS, DIET_WORDS, STANDING_NOTICE } from "./safety/index.js";
export type * from "./types.js";
export type * from "./pairing/types.js";
