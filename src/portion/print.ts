import type { Ingredient, MeasureRow, Store } from "../catalogue/index.js";
import {
  UNIT_IDS,
  cupFor,
  type KitchenMeasure,
  measureText,
  metricMassFor,
  metricVolumeFor,
  ML_PER_CUP,
  ML_PER_PINCH,
  nearestStep,
  roundTo,
  spoonsFor,
  usMassFor,
} from "../quantity/index.js";
import type { Measure, Portion, UnitId } from "../types.js";
import { isWholeRow } from "./bought.js";
import { densityOf, usualRow } from "./rows.js";

/** Grams at the public boundary: a tenth, and never 0. */
export function publicGrams(grams: number): number {
  return Math.max(0.1, roundTo(grams, 1));
}

const COUNTED = new Set(["piece", "clove", "slice", "packet", "can", "stick", "bunch"]);
/** Kinds sold and written by weight where cups are used for the rest. */
const BY_WEIGHT = ["meat", "poultry", "finfish", "crustacean", "mollusc"];
/** Parts whose `piece` is what one fruit gives: nobody counts them. */
export const NOT_COUNTED: ReadonlySet<string> = new Set(["juice", "zest", "peel", "rind"]);
const LIQUID_KINDS = ["drink", "stock"];

interface Candidate {
  readonly amount: number;
  readonly unit: UnitId;
  readonly label: string;
  readonly grams: number;
  /** The grams it is to measure: of what is eaten, or as bought. */
  readonly of: number;
  /** What is held against it besides its rounding; 0 = the natural way to say it here. */
  readonly penalty: number;
}

export interface PrintOptions {
  /** Cups and ounces or grams and litres; the catalogue's own when left out. */
  readonly measures?: "us" | "metric";
  /** Only measures in this unit. */
  readonly unit?: UnitId;
  /** g eaten per g bought, when the grams given are of what is eaten: a scale then shows what is bought. */
  readonly eaten?: number;
}

/** Below this a metric kitchen takes a spoon where there is one: about a tablespoon, g or ml. */
const SPOONFUL = 16;
/** A piece of meat or fish heavier than this is bought and written by weight; rashers and anchovies are counted. */
const BY_THE_PIECE = 60;

/** Poured from a packet or a jar it may be, but not from a jug. */
const DRY: readonly string[] = ["powder", "dried", "ground", "instant", "cubes", "granules", "paste"];

function isLiquid(i: Ingredient): boolean {
  if (i.state.some((s) => DRY.includes(s))) return false;
  return i.kinds.some((k) => LIQUID_KINDS.includes(k)) || i.roles.some((r) => r.role === "liquid" && r.weight >= 0.3);
}

function pieceSteps(pieces: number, fine: boolean): readonly number[] {
  if (pieces < 3.25) return fine ? [1 / 4, 1 / 2, 1, 3 / 2, 2, 5 / 2, 3] : [1 / 2, 1, 3 / 2, 2, 5 / 2, 3];
  const whole = Math.floor(pieces);
  return [whole, whole + 1];
}

/** Words of a piece that say no noun: "2 whole sauries" and "1 large egg" are said without them. */
const NO_NOUN: readonly string[] = ["", "small", "medium", "large", "extra-large", "jumbo", "whole", "portion"];
/** The same piece under a noun of its own: one celery is one stalk, one cabbage one head. */
function namedPiece(rows: readonly MeasureRow[], row: MeasureRow): MeasureRow {
  if (row.unit !== "piece" || row.label !== "") return row;
  const same = (r: MeasureRow): boolean =>
    r.grams === row.grams &&
    (r.unit === "piece" ? !NO_NOUN.includes(r.label) : r.unit === "slice" || r.unit === "stick");
  return rows.find(same) ?? row;
}

function counted(i: Ingredient, eaten: number, bought: number, heavy: boolean): readonly Candidate[] {
  if (i.part !== undefined && NOT_COUNTED.has(i.part)) return [];
  const usual = usualRow(i);
  const rows = i.measures.filter(
    (r) => COUNTED.has(r.unit) && r.grams > 0 && r.label !== "inch" && r.label !== "drained",
  );
  const said = usual === undefined ? undefined : namedPiece(rows, usual);
  return rows.map((row) => {
    const of = isWholeRow(i, row.unit, row.label) ? bought : eaten;
    const n = of / row.grams;
    const amount = nearestStep(n, pieceSteps(n, row.unit === "piece" || row.unit === "stick"));
    const wholes = Number.isInteger(amount)
      ? 0
      : i.kinds.includes("egg") || row.unit === "can" || row.unit === "packet"
        ? 0.1
        : 0.02;
    const many = amount > 12 || (heavy && row.grams > BY_THE_PIECE) ? 0.2 : 0;
    return {
      amount,
      unit: row.unit as UnitId,
      label: row.label,
      grams: amount * row.grams,
      of,
      penalty: (row === said ? 0 : 0.2) + wholes + many,
    };
  });
}

function volumes(store: Store, i: Ingredient, grams: number, metric: boolean, heavy: boolean): readonly Candidate[] {
  const out: Candidate[] = [];
  const add = (m: KitchenMeasure | undefined, gramsPerMl: number, label: string, penalty: number) => {
    if (m !== undefined)
      out.push({ amount: m.amount, unit: m.unit, label, grams: m.base * gramsPerMl, of: grams, penalty });
  };
  for (const unit of ["tsp", "tbsp"] as const) {
    const spoon = densityOf(store, i, unit);
    // Nobody measures "1/8 tsp flaked cod", nor lemon sections by the spoon
    if (spoon === undefined || ((heavy || spoon.label === "sections") && spoon.label !== "")) break;
    for (const m of spoonsFor(grams / spoon.gramsPerMl)) {
      if ((m.unit === "tbsp") !== (unit === "tbsp")) continue;
      // Spoons are for small amounts everywhere; a metric kitchen weighs from about 15 g
      const big = metric && grams >= SPOONFUL ? 0.12 : 0;
      add(m, spoon.gramsPerMl, m.unit === "pinch" ? "" : spoon.label, big + (heavy ? 0.25 : 0));
    }
  }
  const cup = densityOf(store, i, "cup");
  if (cup === undefined) return out;
  const ml = grams / cup.gramsPerMl;
  // Below a pinch no jug reads: a pinch it is.
  if (ml < ML_PER_PINCH && out.some((m) => m.unit === "pinch")) return out;
  if (!metric)
    add(cupFor(ml), cup.gramsPerMl, cup.label, (heavy ? 0.25 : 0) + (ml > 4.2 * ML_PER_CUP && !isLiquid(i) ? 0.15 : 0));
  add(metricVolumeFor(ml), cup.gramsPerMl, "", metric && isLiquid(i) ? (grams < SPOONFUL ? 0.2 : 0) : 1);
  return out;
}

function masses(grams: number, metric: boolean, heavy: boolean, spooned: boolean): readonly Candidate[] {
  const out: Candidate[] = [];
  const add = (m: KitchenMeasure | undefined, penalty: number) => {
    if (m !== undefined) out.push({ amount: m.amount, unit: m.unit, label: "", grams: m.base, of: grams, penalty });
  };
  // No kitchen scale weighs a tenth of a gram: where there is a spoon, it is a pinch.
  if (!(spooned && grams < 1)) add(metricMassFor(grams), metric ? (grams < SPOONFUL ? 0.3 : 0.01) : 0.6);
  // What has a spoon or cup of its own is not put on the scale in a US kitchen, least of all half an ounce of salt.
  add(usMassFor(grams), metric ? 1 : heavy ? 0 : spooned ? (grams < 85 ? 0.5 : 0.25) : 0.12);
  return out;
}

function candidates(
  store: Store,
  i: Ingredient,
  grams: number,
  measures: "us" | "metric",
  share = 1,
): readonly Candidate[] {
  const metric = measures === "metric";
  const bought = grams / share;
  const heavy = i.kinds.some((k) => BY_WEIGHT.includes(k));
  const spooned = volumes(store, i, grams, metric, heavy);
  return [...counted(i, grams, bought, heavy), ...spooned, ...masses(bought, metric, heavy, spooned.length > 0)];
}

/** In one unit, where the caller says which: the nearest amount of it that can be measured. */
function inUnit(store: Store, i: Ingredient, grams: number, unit: UnitId): Candidate | undefined {
  const all = [...candidates(store, i, grams, "us"), ...candidates(store, i, grams, "metric")].filter(
    (c) => c.unit === unit,
  );
  const exact = exactly(store, i, grams, unit);
  // Scales and jugs are read as finely as one likes; spoons and cups are not
  if (METRIC.has(unit) && exact !== undefined) return exact;
  const best = pick(all);
  return best !== undefined && Math.abs(best.grams / grams - 1) < 0.07 ? best : (exact ?? best);
}

const METRIC = new Set<UnitId>(["g", "kg", "ml", "l"]);

/** Without rounding to a kitchen's steps: for units far from the amount ("60 tsp flour"). */
function exactly(store: Store, i: Ingredient, grams: number, unit: UnitId): Candidate | undefined {
  const per = gramsPer(store, i, unit);
  if (per === undefined) return undefined;
  const exact = grams / per.grams;
  const places = unit === "g" || unit === "ml" ? 1 : unit === "kg" || unit === "l" || exact < 1 ? 3 : 2;
  const amount = Math.max(10 ** -places, roundTo(exact, places));
  return { amount, unit, label: per.label, grams: amount * per.grams, of: grams, penalty: 0 };
}

const MASS: Readonly<Record<string, number>> = { g: 1, kg: 1000, oz: 28.349523125, lb: 453.59237 };
const VOLUME: Readonly<Record<string, number>> = {
  ml: 1,
  l: 1000,
  tsp: 4.92892159375,
  tbsp: 14.78676478125,
  cup: ML_PER_CUP,
  pinch: 4.92892159375 / 16,
};

/** Grams of one of a unit of the ingredient; undefined when it has no such measure. */
export function gramsPer(
  store: Store,
  i: Ingredient,
  unit: UnitId,
): { readonly grams: number; readonly label: string } | undefined {
  const mass = MASS[unit];
  if (mass !== undefined) return { grams: mass, label: "" };
  const ml = VOLUME[unit];
  if (ml !== undefined) {
    const d = densityOf(store, i, unit === "pinch" ? "tsp" : unit === "l" ? "cup" : unit);
    return d === undefined ? undefined : { grams: ml * d.gramsPerMl, label: unit === "pinch" ? "" : d.label };
  }
  const usual = usualRow(i);
  const of = (r: MeasureRow) => r.unit === unit && r.label !== "inch";
  const row =
    i.measures.find((r) => of(r) && r.label === "") ?? (usual !== undefined && of(usual) ? usual : i.measures.find(of));
  return row === undefined ? undefined : { grams: row.grams, label: row.label };
}

/** The units an ingredient can be measured in, in the order of the vocabulary. */
export function unitsOf(store: Store, i: Ingredient): readonly UnitId[] {
  return UNIT_IDS.filter((u) => gramsPer(store, i, u) !== undefined);
}

function pick(all: readonly Candidate[]): Candidate | undefined {
  let best: Candidate | undefined;
  let bestCost = Infinity;
  for (const c of all) {
    // To four places, so that the last bit of a quotient never decides between two measures
    const cost = roundTo(Math.abs(c.grams / c.of - 1) + c.penalty, 4);
    if (cost < bestCost) {
      bestCost = cost;
      best = c;
    }
  }
  return best;
}

function measureOf(c: Candidate): Measure {
  const amount = roundTo(c.amount, 4);
  return { amount, unit: c.unit, text: measureText(c.amount, c.unit, c.label), roundedBy: roundTo(c.grams - c.of, 1) };
}

/** The measure a cook would reach for. */
function usual(store: Store, i: Ingredient, grams: number, o: PrintOptions): Candidate {
  const best = pick(candidates(store, i, grams, o.measures ?? store.measures, o.eaten));
  if (best !== undefined) return best;
  const of = grams / (o.eaten ?? 1);
  const { amount, unit, base } = metricMassFor(of);
  return { amount, unit, label: "", grams: base, of, penalty: 0 };
}

/**
 * The kitchen measure nearest to so many grams of an ingredient: the smallest rounding among the ways a cook would say it.
 * @param grams finite and above 0
 * @returns undefined only when `unit` is given and the ingredient cannot be measured in it
 */
export function kitchenMeasure(
  store: Store,
  i: Ingredient,
  grams: number,
  o: PrintOptions & { unit: UnitId },
): Measure | undefined;
export function kitchenMeasure(store: Store, i: Ingredient, grams: number, o?: Omit<PrintOptions, "unit">): Measure;
export function kitchenMeasure(store: Store, i: Ingredient, grams: number, o: PrintOptions = {}): Measure | undefined {
  if (o.unit !== undefined) {
    const c = inUnit(store, i, grams, o.unit);
    return c === undefined ? undefined : measureOf(c);
  }
  return measureOf(usual(store, i, grams, o));
}

/**
 * So many grams of an ingredient with the kitchen measure a cook would reach for.
 * @param grams finite and above 0; rounded to 0.1. With `eaten` they are of what is eaten, and so are those of the answer by cup or
 * piece; by weight the answer's are as bought
 */
export function portionOf(
  store: Store,
  i: Ingredient,
  grams: number,
  o: Omit<PrintOptions, "unit"> & { readonly range?: readonly [number, number] } = {},
): Portion {
  const range = o.range === undefined ? {} : { range: [publicGrams(o.range[0]), publicGrams(o.range[1])] as const };
  const chosen = usual(store, i, o.eaten === undefined ? publicGrams(grams) : grams, o);
  const g = publicGrams(chosen.of);
  return { id: i.id, name: store.nameOf(i), grams: g, ...range, measure: measureOf(chosen) };
}
