import type { Ingredient, Store } from "../catalogue/index.js";
import {
  type Amount,
  GRAMS_PER_LB,
  ML_PER_CUP,
  ML_PER_TBSP,
  ML_PER_TSP,
  type Quantity,
  type Unit,
} from "../quantity/index.js";
import { bareRow, countRow, densityOf, inchRow, rowOf, SIZE, SIZE_OF_LOT } from "./rows.js";
import type { SourceRef, UnitId } from "../types.js";

/** Grams of a quantity of an ingredient, with the measure row that gave them. Not rounded. */
export interface Weight {
  readonly grams: number;
  readonly low: number;
  readonly high: number;
  /** The public unit the amount is in, and which kind of it ("sprig", "large"); "" when plain. */
  readonly unit: UnitId;
  readonly label: string;
  /** Where the grams of the measure come from; undefined for a plain weight. */
  readonly source?: SourceRef;
  /** Grams of what the measure as written would weigh by the ingredient's own figures, when the text gave a weight beside it. */
  readonly byMeasure?: number;
}

function massOf(a: Amount): number | undefined {
  return a.unit?.dimension === "mass" ? a.value * a.unit.factor : undefined;
}

/** What stays in the sieve of a can of beans: common practice, USDA 16145 has 266 g of a 439 g can. */
const DRAINED = 0.6;
/** All weights of what is drained before use are of the drained food, so a can with a weight on it is too, unless the line keeps the liquid. */
function countsDrained(i: Ingredient, words: ReadonlySet<string>): boolean {
  if (i.ready === undefined || !i.ready.by.includes("drain") || i.ready.yield < 0.95) return false;
  return !["undrained", "liquid", "juice", "juices", "brine", "water"].some((w) => words.has(w));
}

/** Grams of one container or piece of a stated size. */
function eachGrams(
  store: Store,
  i: Ingredient,
  each: Amount,
  unit: Unit | undefined,
  words: ReadonlySet<string>,
): number | undefined {
  const mass = massOf(each);
  if (mass !== undefined) {
    if (unit?.name !== "can") return mass;
    const whole = rowOf(i, "can", "");
    const drained = rowOf(i, "can", "drained");
    const said = words.has("drained");
    if (said && whole !== undefined && drained !== undefined) return (mass * drained.grams) / whole.grams;
    const asSold = !said && !countsDrained(i, words);
    if (asSold) return mass;
    // A plain can row well below the weight on the tin is the drained one
    if (whole !== undefined && whole.grams < 0.85 * mass && whole.grams > 0.4 * mass) return whole.grams;
    return countsDrained(i, words) && (whole === undefined || whole.grams < 0.4 * mass) ? mass * DRAINED : mass;
  }
  if (each.unit?.dimension === "volume") {
    const d = densityOf(store, i, each.unit.id, words);
    return d === undefined ? undefined : each.value * each.unit.factor * d.gramsPerMl;
  }
  if (each.unit?.dimension === "length" && unit?.id === "piece") {
    const inch = inchRow(i);
    return inch === undefined ? undefined : (inch.grams * each.value * each.unit.factor) / 2.54;
  }
  return undefined;
}

/** Handfuls, knobs and pats of what has no such measure of its own: common practice, through the volume they fill. */
function looseVolume(i: Ingredient, label: string): number | undefined {
  if (label === "handful")
    return i.roles[0]?.role === "leafy green" && !i.kinds.includes("herb") ? ML_PER_CUP : ML_PER_CUP / 4;
  if (label === "knob") return ML_PER_TBSP;
  if (label === "pat") return ML_PER_TSP;
  return undefined;
}

/**
 * Weighs a quantity of an ingredient: masses directly, volumes by its own spoon or cup measure (or its density),
 * pieces and containers by theirs or by the weight the text gives for one.
 * @param words what the line says was done to it, from measureWords: "cup chopped" answers when it says chopped
 * @param nouns the words the food is named by, in case the piece is among them ("2 garlic cloves"); `words` when left out
 * @returns undefined when nothing known of the ingredient answers; never throws
 */
export function weigh(
  store: Store,
  i: Ingredient,
  q: Quantity,
  words: ReadonlySet<string> = new Set(),
  nouns: ReadonlySet<string> = words,
): Weight | undefined {
  const own = ownWeight(store, i, q, words, nouns);
  const other = q.also === undefined ? undefined : massOf(q.also);
  if (q.also === undefined || other === undefined || q.unit?.dimension === "mass") {
    if (own === undefined && q.also?.unit?.dimension === "volume")
      return ownWeight(store, i, { ...q, ...q.also }, words, nouns);
    return own;
  }
  const factor = q.also.unit?.factor ?? 1;
  return {
    grams: other,
    low: q.also.low * factor,
    high: q.also.high * factor,
    unit: own?.unit ?? q.unit?.id ?? "piece",
    label: own?.label ?? q.unit?.label ?? q.size,
    ...(own === undefined ? {} : { byMeasure: own.grams }),
  };
}

/** "in the shell", "in their shells", "unshelled": of these the shell is weighed too. */
const inShell = (words: ReadonlySet<string>): boolean =>
  words.has("unshelled") || words.has("in-shell") || (words.has("in") && (words.has("shell") || words.has("shells")));

function ownWeight(
  store: Store,
  i: Ingredient,
  q: Quantity,
  words: ReadonlySet<string>,
  nouns: ReadonlySet<string>,
): Weight | undefined {
  const unit = q.unit;
  const scaled = (grams: number, id: UnitId, label: string, source?: SourceRef): Weight | undefined => {
    const total = q.value * grams;
    if (!(total > 0) || total > 1e7) return undefined;
    return {
      grams: total,
      low: q.low * grams,
      high: q.high * grams,
      unit: id,
      label,
      ...(source === undefined ? {} : { source }),
    };
  };
  if (q.each !== undefined) {
    const each = eachGrams(store, i, q.each, unit, words);
    if (each !== undefined) return scaled(each, unit?.id ?? "piece", unit?.label ?? "");
    if (q.each.unit?.dimension !== "length") return undefined;
  }
  if (unit?.dimension === "mass") {
    // "500 g walnuts in the shell": what is in it, by a row for a pound of them
    const kernels = inShell(words) ? rowOf(i, "lb", "in-shell") : undefined;
    return kernels === undefined
      ? scaled(unit.factor, unit.id, "")
      : scaled((unit.factor * kernels.grams) / GRAMS_PER_LB, unit.id, "in shell", kernels.source);
  }
  if (unit?.dimension === "length") return undefined;
  if (unit?.dimension === "volume") {
    const d = densityOf(store, i, unit.id === "pinch" ? "tsp" : unit.id, words);
    return d === undefined ? undefined : scaled(d.gramsPerMl * unit.factor, unit.id, d.label, d.source);
  }
  if (unit === undefined) {
    const hit = bareRow(i, q.size, nouns);
    if (hit === undefined) return undefined;
    // An egg is the egg that was meant: only foods that come in all sizes are scaled by the word
    const by = hit.sized || i.kinds.includes("egg") ? 1 : (SIZE[q.size] ?? 1);
    // "1 dozen eggs" are weighed as large ones and still only said to be eggs
    const plain = hit.row.label === "" || hit.row.label === "medium" || SIZE[hit.row.label] !== undefined;
    return scaled(hit.row.grams * by, hit.row.unit as UnitId, plain ? q.size : hit.row.label, hit.row.source);
  }
  const drained = unit.name === "can" && words.has("drained") ? rowOf(i, "can", "drained") : undefined;
  if (drained !== undefined) return scaled(drained.grams, unit.id, q.size, drained.source);
  const hit = countRow(i, unit.id, unit.label, q.size);
  if (hit !== undefined) {
    const by = hit.sized ? 1 : (SIZE_OF_LOT[q.size] ?? 1);
    return scaled(hit.row.grams * by, unit.id, unit.label === "" ? q.size : unit.label, hit.row.source);
  }
  const ml = looseVolume(i, unit.label);
  const d = ml === undefined ? undefined : densityOf(store, i, "cup", words);
  return ml === undefined || d === undefined
    ? undefined
    : scaled(ml * d.gramsPerMl * (SIZE_OF_LOT[q.size] ?? 1), unit.id, unit.label, d.source);
}
