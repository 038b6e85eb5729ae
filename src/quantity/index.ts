// Kitchen measures: numbers, units, amounts read from text and measures printed. Knows no food.
export type { Amount } from "./amounts.js";
export { decimalText, fractionText, nearestStep, roundTo } from "./fractions.js";
export {
  amountText,
  cupFor,
  type KitchenMeasure,
  measureText,
  metricMassFor,
  metricVolumeFor,
  spoonsFor,
  usMassFor,
} from "./kitchen.js";
export { type Numeral, readNumeral } from "./numbers.js";
export { type Quantity, quantityOf, type ReadOptions, readQuantity } from "./read.js";
export { isDash, isDigit, isLetter, isSpace, plainText, readWord, skipSpace, skipWord, type Word } from "./scan.js";
export {
  findUnit,
  GRAMS_PER_LB,
  GRAMS_PER_OZ,
  ML_PER_CUP,
  ML_PER_PINCH,
  ML_PER_TBSP,
  ML_PER_TSP,
  readUnit,
  type Unit,
  UNIT_IDS,
  unitOf,
  UNITS,
  unitWords,
} from "./units.js";
