import type { Ingredient, MeasureRow, Store } from "../catalogue/index.js";
import { type Amount, ML_PER_CUP, ML_PER_TBSP, ML_PER_TSP, type Quantity, type Unit } from "../quantity/index.js";
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

const ML: Readonly<Record<string, number>> = { tsp: ML_PER_TSP, tbsp: ML_PER_TBSP, cup: ML_PER_CUP, ml: 1, l: 1000 };
const COUNTED = new Set(["piece", "clove", "slice", "packet", "can", "stick", "bunch"]);

/** Words that say the same of a measure, by the one used in comparing. */
const SAME: Readonly<Record<string, string>> = {
  diced: "chopped",
  cubed: "chopped",
  cubes: "chopped",
  minced: "chopped",
  shredded: "grated",
  slices: "sliced",
  halved: "halves",
  pureed: "mashed",
  torn: "leaves",
  leaf: "leaves",
};
/** Kinds of piece that stand for each other when the ingredient has no measure of its own for the one said. */
const KIN: readonly (readonly string[])[] = [
  ["head", "bulb", "round"],
  ["stalk", "stick", "spear"],
  ["sprig", "stem", "stalk"],
  ["knob", "inch"],
  ["block", "cake", "cube"],
  ["can", "jar", "tub", "carton", "bottle"],
  ["packet", "jar", "bottle", "carton", "tub", "can"],
  ["slice", "rasher", "strip"],
  ["leaf", "sheet"],
];
/** One of these is the whole thing: the plain piece will do. A leaf or a wedge is not. */
const WHOLE = new Set([
  "",
  "head",
  "bulb",
  "fillet",
  "ear",
  "cake",
  "block",
  "ball",
  "sheet",
  "sprig",
  "stalk",
  "pod",
  "rack",
  "round",
  "cube",
]);
/** Against a medium one; common practice, used only when the ingredient has no measure for that size. */
const SIZE: Readonly<Record<string, number>> = {
  small: 0.7,
  large: 1.35,
  "extra-large": 1.6,
  jumbo: 1.6,
  thick: 1.25,
  thin: 0.75,
};
/** Likewise for a bunch, a handful or a head that is called small or large. */
const SIZE_OF_LOT: Readonly<Record<string, number>> = { small: 0.75, large: 1.3, "extra-large": 1.5 };

/** Lower-case words of a text, with the words that mean the same folded together. */
export function measureWords(text: string): ReadonlySet<string> {
  const out = new Set<string>();
  for (const w of text.toLowerCase().split(/[^\p{L}-]/u)) {
    if (w === "") continue;
    out.add(w);
    const same = SAME[w];
    if (same !== undefined) out.add(same);
  }
  return out;
}
function rowWords(label: string): readonly string[] {
  return label === "" ? [] : label.split(" ").map((w) => SAME[w] ?? w);
}

/** The volume row that answers best: one whose label the line says, else the plain one, else any; nearest in size first. */
export function volumeRow(i: Ingredient, unit: UnitId, words: ReadonlySet<string> = new Set()): MeasureRow | undefined {
  let best: MeasureRow | undefined;
  let bestRank = Infinity;
  // Millilitres are read off a jug: the cup figure is the more precise one
  const ml = unit === "ml" || unit === "l" ? ML_PER_CUP : (ML[unit] ?? ML_PER_TSP);
  for (const row of i.measures) {
    const rowMl = ML[row.unit];
    if (rowMl === undefined) continue;
    const said = rowWords(row.label);
    const labelRank = said.length === 0 ? 10 : said.every((w) => words.has(w)) ? 10 - said.length : 20;
    const distance = rowMl > ml ? rowMl / ml : ml / rowMl;
    const rank = labelRank + Math.min(distance, 1000) / 1001;
    if (rank < bestRank) {
      bestRank = rank;
      best = row;
    }
  }
  return best;
}

/** g per ml of the ingredient as measured in spoons and cups, and what was done to it; undefined when nothing says. */
export function densityOf(
  store: Store,
  i: Ingredient,
  unit: UnitId = "cup",
  words?: ReadonlySet<string>,
): { readonly gramsPerMl: number; readonly label: string; readonly source: SourceRef } | undefined {
  const row = volumeRow(i, unit, words);
  if (row !== undefined) return { gramsPerMl: row.grams / (ML[row.unit] ?? 1), label: row.label, source: row.source };
  const figure = store.figure(i, "density");
  return figure === null || !(figure.value > 0)
    ? undefined
    : { gramsPerMl: figure.value, label: "", source: figure.source };
}

function rowOf(i: Ingredient, unit: string, label: string): MeasureRow | undefined {
  return i.measures.find((r) => r.unit === unit && r.label === label);
}

/** The measure row for one of a kind of piece: "piece sprig", "can", "packet jar". Kin stand in for each other. */
function countRow(
  i: Ingredient,
  id: UnitId,
  label: string,
  size: string,
): { row: MeasureRow; sized: boolean } | undefined {
  const name = label === "" ? id : label;
  if (size !== "") {
    const sized =
      rowOf(i, id, label === "" ? size : `${label} ${size}`) ??
      rowOf(i, "piece", label === "" ? `${id} ${size}` : `${size} ${label}`);
    if (sized !== undefined) return { row: sized, sized: true };
  }
  const own = rowOf(i, id, label) ?? rowOf(i, "piece", name) ?? rowOf(i, name, "");
  if (own !== undefined) return { row: own, sized: false };
  for (const group of KIN) {
    if (!group.includes(name)) continue;
    for (const other of group) {
      const kin =
        other === name
          ? undefined
          : (rowOf(i, "piece", other) ??
            rowOf(i, other, "") ??
            i.measures.find((r) => COUNTED.has(r.unit) && r.label === other));
      if (kin !== undefined) return { row: kin, sized: false };
    }
  }
  const plain = id === "piece" && WHOLE.has(label) ? rowOf(i, "piece", "") : undefined;
  return plain === undefined ? undefined : { row: plain, sized: false };
}

/** "3 garlic cloves", "1 cinnamon stick": the piece is named after the food. Also plain "3 onions" and the usual one. */
function bareRow(
  i: Ingredient,
  size: string,
  words: ReadonlySet<string>,
): { row: MeasureRow; sized: boolean } | undefined {
  const said = (noun: string) => words.has(noun) || words.has(`${noun}s`) || (noun === "leaf" && words.has("leaves"));
  for (const r of i.measures) {
    if (!COUNTED.has(r.unit)) continue;
    const noun = r.label === "" ? r.unit : r.label;
    if (noun !== "piece" && said(noun)) return { row: r, sized: false };
  }
  if (size !== "") {
    const sized = rowOf(i, "piece", size);
    if (sized !== undefined) return { row: sized, sized: true };
  }
  const usual = i.usual === undefined ? undefined : usualRow(i);
  const row =
    (usual !== undefined && usual.unit === "piece" ? usual : undefined) ??
    rowOf(i, "piece", "") ??
    rowOf(i, "piece", "medium") ??
    (usual !== undefined && COUNTED.has(usual.unit) ? usual : undefined);
  if (row !== undefined) return { row, sized: false };
  const pieces = i.measures.filter((r) => COUNTED.has(r.unit) && r.label !== "inch");
  const only = pieces.length === 1 ? pieces[0] : undefined;
  return only === undefined ? undefined : { row: only, sized: false };
}

/** The row the ingredient's usual measure names. */
export function usualRow(i: Ingredient): MeasureRow | undefined {
  return i.measures.find((r) => (r.label === "" ? r.unit : `${r.unit} ${r.label}`) === i.usual);
}

function massOf(a: Amount): number | undefined {
  return a.unit?.dimension === "mass" ? a.value * a.unit.factor : undefined;
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
    const whole = rowOf(i, "can", "");
    const drained = words.has("drained") ? rowOf(i, "can", "drained") : undefined;
    return whole !== undefined && drained !== undefined && unit?.id === "can"
      ? (mass * drained.grams) / whole.grams
      : mass;
  }
  if (each.unit?.dimension === "volume") {
    const d = densityOf(store, i, each.unit.id, words);
    return d === undefined ? undefined : each.value * each.unit.factor * d.gramsPerMl;
  }
  if (each.unit?.dimension === "length" && unit?.id === "piece") {
    const inch = rowOf(i, "piece", "inch");
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
  if (unit?.dimension === "mass") return scaled(unit.factor, unit.id, "");
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
