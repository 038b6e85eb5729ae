export { ALLERGENS, DIETS } from "../catalogue/words.js";
export {
  allergenChange,
  allergenFacts,
  changeOf,
  mergeAllergens,
  unknownFacts,
  type AllergenChange,
} from "./allergens.js";
export { avoidSaid, mergeRules, readAvoid, type AvoidRules } from "./avoid.js";
export { dietAnswer, type DietAnswer } from "./diets.js";
export {
  donenessChange,
  donenessFor,
  handlingFor,
  heatOf,
  readinessOf,
  type Doneness,
  type DonenessChange,
  type Handling,
  type Place,
  type Readiness,
} from "./doneness.js";
export { hazardsFor, neverWithout, type HazardAnswer, type Stop } from "./hazards.js";
export { mealConflicts, type MealConflict } from "./meal.js";
export { STANDING_NOTICE } from "./notice.js";
export type { HazardQuestion } from "./raise.js";
export { refusalFor, type Reason } from "./refuse.js";
export type { SafetyStore } from "./tables.js";
export { ALLERGEN_WORDS, DIET_WORDS } from "./words.js";
