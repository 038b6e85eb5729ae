import type { UnitId } from "../types.js";
import { isDash, isDigit, isLetter, readWord, skipSpace } from "./scan.js";

/**
 * A unit as written. `factor` is g for a mass, ml for a volume, cm for a length, and 1 for a count.
 * `id` is the public unit it belongs to, and one of these is `scale` of that (1 US pint = 2 cups).
 * `label` says which kind of a count it is ("sprig", "jar"), "" when the id says it all.
 */
export interface Unit {
  readonly name: string;
  readonly id: UnitId;
  readonly dimension: "mass" | "volume" | "length" | "count";
  readonly factor: number;
  readonly scale: number;
  readonly label: string;
}

/** The public units, in the order of the vocabulary. */
export const UNIT_IDS: readonly UnitId[] = [
  "g",
  "kg",
  "oz",
  "lb",
  "ml",
  "l",
  "tsp",
  "tbsp",
  "cup",
  "piece",
  "clove",
  "slice",
  "packet",
  "can",
  "stick",
  "bunch",
  "pinch",
];

// Exact by definition: the US gallon is 231 cubic inches, the inch 2.54 cm, the avoirdupois pound 453.59237 g
// (NIST Handbook 44, appendix C); the imperial gallon is 4.54609 litres (UK Units of Measurement Regulations 1995).
export const GRAMS_PER_LB = 453.59237;
export const GRAMS_PER_OZ = 28.349523125;
export const ML_PER_CUP = 236.5882365;
export const ML_PER_TBSP = 14.78676478125;
export const ML_PER_TSP = 4.92892159375;
const ML_PER_FL_OZ = 29.5735295625;
const ML_PER_IMPERIAL_PINT = 568.26125;
const ML_PER_IMPERIAL_FL_OZ = 28.4130625;
// No standard says what a pinch, a dash or a splash is: common practice in sets of measuring spoons and test kitchens.
export const ML_PER_PINCH = ML_PER_TSP / 16;

type Row = readonly [
  name: string,
  id: UnitId,
  dimension: Unit["dimension"],
  factor: number,
  scale: number,
  aliases: string,
];

/** Aliases are singular; "s" and "es" are understood by rule. */
const MEASURES: readonly Row[] = [
  ["g", "g", "mass", 1, 1, "g gm gms gr gram gramme"],
  ["kg", "kg", "mass", 1000, 1, "kg kilo kilogram kilogramme kgs"],
  ["mg", "g", "mass", 0.001, 0.001, "mg milligram"],
  ["oz", "oz", "mass", GRAMS_PER_OZ, 1, "oz ounce ozs"],
  ["lb", "lb", "mass", GRAMS_PER_LB, 1, "lb lbs pound"],
  ["ml", "ml", "volume", 1, 1, "ml mls millilitre milliliter cc"],
  ["cl", "ml", "volume", 10, 10, "cl centilitre centiliter"],
  ["dl", "ml", "volume", 100, 100, "dl decilitre deciliter"],
  ["l", "l", "volume", 1000, 1, "l lt ltr litre liter"],
  [
    "tsp",
    "tsp",
    "volume",
    ML_PER_TSP,
    1,
    "tsp tsps teaspoon teaspoonful tea_spoon teasp tsk tl cucharadita cdta teelöffel theelepel colher_de_chá colheres_de_chá cuillère_à_café cuillères_à_café",
  ],
  [
    "tbsp",
    "tbsp",
    "volume",
    ML_PER_TBSP,
    1,
    "tbsp tbsps tbs tbl tbls tblsp tblspn tbspn tablespoon tablespoonful table_spoon msk spsk el cucharada cda esslöffel eetlepel colher_de_sopa colheres_de_sopa cuillère_à_soupe cuillères_à_soupe",
  ],
  ["cup", "cup", "volume", ML_PER_CUP, 1, "cup cupful us_cup taza xícara"],
  ["metric cup", "ml", "volume", 250, 250, "metric_cup"],
  ["metric tbsp", "ml", "volume", 15, 15, "metric_tablespoon metric_tbsp"],
  ["metric tsp", "ml", "volume", 5, 5, "metric_teaspoon metric_tsp"],
  ["australian tbsp", "ml", "volume", 20, 20, "australian_tablespoon australian_tbsp"],
  // A small steel bowl of Indian kitchens: common practice
  ["katori", "ml", "volume", 150, 150, "katori"],
  ["jigger", "ml", "volume", ML_PER_FL_OZ * 1.5, ML_PER_FL_OZ * 1.5, "jigger"],
  ["dessertspoon", "ml", "volume", 10, 10, "dessertspoon dessertspoonful dessert_spoon dsp dstsp"],
  ["us fl oz", "tbsp", "volume", ML_PER_FL_OZ, 2, "us_fl_oz us_fluid_ounce"],
  ["us pint", "cup", "volume", ML_PER_CUP * 2, 2, "us_pint"],
  ["quart", "cup", "volume", ML_PER_CUP * 4, 4, "us_quart"],
  ["gallon", "cup", "volume", ML_PER_CUP * 16, 16, "us_gallon"],
  [
    "imperial fl oz",
    "ml",
    "volume",
    ML_PER_IMPERIAL_FL_OZ,
    ML_PER_IMPERIAL_FL_OZ,
    "imperial_fl_oz imperial_fluid_ounce uk_fl_oz",
  ],
  ["imperial pint", "ml", "volume", ML_PER_IMPERIAL_PINT, ML_PER_IMPERIAL_PINT, "imperial_pint uk_pint"],
  ["imperial quart", "ml", "volume", ML_PER_IMPERIAL_PINT * 2, ML_PER_IMPERIAL_PINT * 2, "imperial_quart"],
  ["imperial gallon", "ml", "volume", ML_PER_IMPERIAL_PINT * 8, ML_PER_IMPERIAL_PINT * 8, "imperial_gallon"],
  ["pinch", "pinch", "volume", ML_PER_PINCH, 1, "pinch pizca prise nypa pincée pitada pizzico"],
  ["dash", "pinch", "volume", ML_PER_PINCH * 2, 2, "dash"],
  ["smidgen", "pinch", "volume", ML_PER_PINCH / 2, 0.5, "smidgen smidge"],
  ["drop", "ml", "volume", 0.05, 0.05, "drop"],
  ["splash", "tsp", "volume", ML_PER_TSP, 1, "splash drizzle squeeze"],
  ["glug", "tbsp", "volume", ML_PER_TBSP, 1, "glug"],
  ["inch", "piece", "length", 2.54, 1, "inch"],
  ["cm", "piece", "length", 1, 1 / 2.54, "cm cms centimetre centimeter"],
  ["mm", "piece", "length", 0.1, 1 / 25.4, "mm millimetre millimeter"],
];

/** Words that mean the US measure or the imperial one, by where the writer is. */
const LOCAL: readonly (readonly [aliases: string, us: string, imperial: string])[] = [
  ["fl_oz floz fluid_ounce fluid_oz fl_ounce", "us fl oz", "imperial fl oz"],
  ["pint pt", "us pint", "imperial pint"],
  ["quart qt", "quart", "imperial quart"],
  ["gallon gal", "gallon", "imperial gallon"],
];

/** Things counted: public unit, label, words. The first word is the one printed. */
const COUNTS: readonly (readonly [id: UnitId, label: string, words: string])[] = [
  ["piece", "", "piece pc pce"],
  ["clove", "", "clove diente gousse zehe zehen spicchio spicchi klyfta klyftor"],
  ["slice", "", "slice"],
  ["slice", "rasher", "rasher"],
  ["slice", "strip", "strip"],
  ["packet", "", "packet package pkg pkge pkt pack sachet envelope env bag box pouch päckchen sobre sachê bustina"],
  ["packet", "jar", "jar"],
  ["packet", "bottle", "bottle"],
  ["packet", "carton", "carton"],
  ["packet", "tub", "tub pot container"],
  ["can", "", "can tin lata dose dosen burk"],
  ["stick", "", "stick"],
  ["bunch", "", "bunch bunche bund knippe manojo"],
  ["bunch", "bundle", "bundle"],
  ["packet", "sleeve", "sleeve"],
  ["piece", "sprig", "sprig rama"],
  ["piece", "stalk", "stalk rib stem spear"],
  ["piece", "head", "head"],
  ["piece", "bulb", "bulb"],
  ["piece", "leaf", "leaf"],
  ["piece", "sheet", "sheet"],
  ["piece", "fillet", "fillet filet"],
  ["piece", "ear", "ear cob"],
  ["piece", "cake", "cake"],
  ["piece", "cube", "cube"],
  ["piece", "block", "block"],
  ["piece", "ball", "ball"],
  ["piece", "wedge", "wedge"],
  ["piece", "floret", "floret"],
  ["piece", "knob", "knob nub thumb"],
  ["piece", "handful", "handful"],
  ["piece", "pat", "pat"],
  ["piece", "scoop", "scoop"],
  ["piece", "rack", "rack"],
  ["piece", "pod", "pod"],
  ["piece", "round", "round"],
  ["piece", "portion", "portion"],
  ["piece", "heart", "heart"],
  ["piece", "shoot", "shoot"],
  ["piece", "loaf", "loaf"],
  ["piece", "side", "side"],
  ["piece", "crown", "crown"],
];
const IRREGULAR: Readonly<Record<string, string>> = {
  leaves: "leaf",
  loaves: "loaf",
  bunches: "bunch",
  inches: "inch",
  pinches: "pinch",
  dashes: "dash",
  splashes: "splash",
  squeezes: "squeeze",
  boxes: "box",
  handsful: "handful",
  feet: "foot",
};
/** One-letter abbreviations, where the case says which. */
const ONE_LETTER: Readonly<Record<string, string>> = {
  T: "tbsp",
  t: "tsp",
  c: "cup",
  C: "cup",
  g: "g",
  G: "g",
  l: "l",
  L: "l",
};

/** Every unit by its own name. */
export const UNITS: ReadonlyMap<string, Unit> = new Map<string, Unit>([
  ...MEASURES.map(
    ([name, id, dimension, factor, scale]) => [name, { name, id, dimension, factor, scale, label: "" }] as const,
  ),
  ...COUNTS.map(([id, label, words]) => {
    const name = words.split(" ")[0] ?? "";
    return [name, { name, id, dimension: "count", factor: 1, scale: 1, label }] as const;
  }),
]);

const ALIASES: ReadonlyMap<string, readonly [us: string, imperial: string]> = new Map([
  ...MEASURES.flatMap(([name, , , , , words]) => words.split(" ").map((w) => [w, [name, name]] as const)),
  ...COUNTS.flatMap(([, , words]) => {
    const all = words.split(" ");
    return all.map((w) => [w, [all[0] ?? w, all[0] ?? w]] as const);
  }),
  ...LOCAL.flatMap(([words, us, imperial]) => words.split(" ").map((w) => [w, [us, imperial]] as const)),
]);

/** The public unit ids as units. */
export function unitOf(id: UnitId): Unit {
  return UNITS.get(id) ?? { name: id, id, dimension: "count", factor: 1, scale: 1, label: "" };
}

/** The unit a word or phrase names ("Tbsp.", "fl. oz.", "cups"), if any. */
export function findUnit(text: string, imperial = false): Unit | undefined {
  const hit = readUnit(text, 0, imperial);
  return hit !== undefined && skipSpace(text, hit.end) === text.length ? hit.unit : undefined;
}

/** Every word understood as a unit, for error messages; stable order. */
export function unitWords(): readonly string[] {
  return [...UNITS.keys()];
}

function known(word: string, imperial: boolean): Unit | undefined {
  const forms = [word, IRREGULAR[word]];
  if (word.endsWith("s")) forms.push(word.slice(0, -1));
  for (const form of forms) {
    const hit = form === undefined ? undefined : ALIASES.get(form);
    if (hit !== undefined) return UNITS.get(imperial ? hit[1] : hit[0]);
  }
  return undefined;
}

/**
 * The unit at `at`: spaces or one hyphen may stand before it ("15-oz", "400g", "2 fl. oz."), a dot after it.
 * The longest phrase of up to three words wins. Inch marks (" and ″) count as inches.
 */
export function readUnit(
  text: string,
  at: number,
  imperial = false,
): { readonly unit: Unit; readonly end: number } | undefined {
  let p = skipSpace(text, at);
  if (isDash(text[p]) && p === at) p++;
  if ((text[p] === '"' || text[p] === "\u201d" || text[p] === "\u2033") && isDigit(text[at - 1]))
    return length("inch", p + 1);
  const found: { word: string; raw: string; end: number }[] = [];
  let from = p;
  while (found.length < 3) {
    const w = readWord(text, from);
    if (w === undefined || (found.length === 0 && w.start !== p)) break;
    const dot = text[w.end] === ".";
    found.push({ word: w.text, raw: w.raw, end: dot ? w.end + 1 : w.end });
    from = dot ? w.end + 1 : w.end;
    if (!dot && text[from] !== " ") break;
  }
  for (let n = found.length; n >= 1; n--) {
    const words = found.slice(0, n);
    const last = words[n - 1];
    if (last === undefined) continue;
    const one = n === 1 ? ONE_LETTER[last.raw] : undefined;
    const unit = one === undefined ? known(words.map((w) => w.word).join("_"), imperial) : UNITS.get(one);
    if (unit !== undefined && !isLetter(text[last.end]) && !isDigit(text[last.end]))
      return { unit, end: endOf(text, last.end) };
  }
  // "2 in. piece": the bare word "in" is a preposition far more often than an inch.
  const first = found[0];
  if (
    first?.word === "in" &&
    (text[first.end - 1] === "." || isDash(text[at]) || isDash(text[first.end]) || found[1]?.word === "piece")
  )
    return length("inch", first.end);
  return undefined;
}

/** "(s)" after a unit: "2 tablespoon(s)". */
function endOf(text: string, end: number): number {
  return text.startsWith("(s)", end) ? end + 3 : end;
}

function length(name: string, end: number): { unit: Unit; end: number } | undefined {
  const unit = UNITS.get(name);
  return unit === undefined ? undefined : { unit, end };
}
