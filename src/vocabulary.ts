import { VOCABULARY } from "./catalogue/vocabulary.generated.js";
import { freeze } from "./errors.js";
import type { Vocabulary } from "./types.js";

/** The words requests may use: roles, techniques, allergens, diets, states, units. For help texts, forms and checks. */
export const vocabulary: Vocabulary = freeze(VOCABULARY as unknown as Vocabulary);
