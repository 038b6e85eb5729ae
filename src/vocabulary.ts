import { builtInVocabulary } from "./catalogue/index.js";
import { freeze } from "./errors.js";
import type { Vocabulary } from "./types.js";

/** The words requests may use: roles, techniques, allergens, diets, states, units. For help texts, forms and checks. */
export const vocabulary: Vocabulary = freeze(builtInVocabulary());
