import type { Ingredient, MeasureRow, Store } from "../catalogue/index.js";
import { isMoist, preparedLike } from "./prepared.js";
import { ML_PER_CUP, ML_PER_TBSP, ML_PER_TSP } from "../quantity/index.js";
import type { SourceRef, UnitId } from "../types.js";

// Which of an ingredient's own measures answers for what a line says.

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
  ["block", "cake", "cube"],
  ["can", "jar", "tub", "carton", "bottle"],
  ["packet", "jar", "bottle", "carton", "tub", "can"],
  ["slice", "rasher", "strip"],
  ["leaf", "sheet"],
  ["bundle", "bunch", "piece"],
];
const VESSELS = new Set(["jar", "bottle", "carton", "tub", "can"]);
/** Grams below which a packet is a serving and no bottle: common practice. */
const SACHET = 50;
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
export const SIZE: Readonly<Record<string, number>> = {
  small: 0.7,
  large: 1.35,
  "extra-large": 1.6,
  jumbo: 1.6,
  thick: 1.25,
  thin: 0.75,
};
/** Likewise for a bunch, a handful or a head that is called small or large. */
export const SIZE_OF_LOT: Readonly<Record<string, number>> = { small: 0.75, large: 1.3, "extra-large": 1.5 };

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

/** g per ml of a mash of vegetables or fruit: about that of water (common practice). */
const MASHED = 1;
/** Below this a cup is of pieces with air between them. */
const LOOSE = 0.85;

/** g per ml of the ingredient as measured in spoons and cups, and what was done to it; undefined when nothing says. */
export function densityOf(
  store: Store,
  i: Ingredient,
  unit: UnitId = "cup",
  words?: ReadonlySet<string>,
): { readonly gramsPerMl: number; readonly label: string; readonly source: SourceRef } | undefined {
  const own = volumeRow(i, unit, words);
  const told = own !== undefined && own.label !== "" && rowWords(own.label).every((w) => words?.has(w));
  const like = words === undefined || told ? undefined : preparedLike(store, i, words);
  const row = like === undefined ? own : volumeRow(like, unit, words);
  const loose = row !== undefined && row.grams / (ML[row.unit] ?? 1) < LOOSE;
  if (like === undefined && !told && loose && words?.has("mashed") === true && isMoist(i))
    return { gramsPerMl: MASHED, label: "mashed", source: { key: "common practice" } };
  if (row !== undefined) return { gramsPerMl: row.grams / (ML[row.unit] ?? 1), label: row.label, source: row.source };
  const figure = store.figure(i, "density");
  return figure === null || !(figure.value > 0)
    ? undefined
    : { gramsPerMl: figure.value, label: "", source: figure.source };
}

export function rowOf(i: Ingredient, unit: string, label: string): MeasureRow | undefined {
  return i.measures.find((r) => r.unit === unit && r.label === label);
}

/**
 * Grams of one inch of a root: its "piece inch", else the plain piece of a ginger-like root when that weighs what an inch
 * of one does, about 15 g (common practice).
 */
export function inchRow(i: Ingredient): MeasureRow | undefined {
  const own = rowOf(i, "piece", "inch");
  if (own !== undefined) return own;
  const plain = rowOf(i, "piece", "");
  const inch = plain !== undefined && plain.grams >= 10 && plain.grams <= 25 && i.kinds.includes("fragrant rhizome");
  return inch ? plain : undefined;
}

/** The measure row for one of a kind of piece: "piece sprig", "can", "packet jar". Kin stand in for each other. */
export function countRow(
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
  const inch = name === "knob" ? inchRow(i) : undefined;
  if (inch !== undefined) return { row: inch, sized: false };
  for (const group of KIN) {
    if (!group.includes(name)) continue;
    for (const other of group) {
      const kin =
        other === name
          ? undefined
          : (rowOf(i, "piece", other) ??
            rowOf(i, other, "") ??
            i.measures.find((r) => COUNTED.has(r.unit) && r.label === other));
      // "1 bottle soy sauce": the packet of a sauce is what comes with a takeaway
      if (kin?.unit === "packet" && kin.label === "" && VESSELS.has(name) && kin.grams < SACHET) continue;
      if (kin !== undefined) return { row: kin, sized: false };
    }
  }
  const plain = id === "piece" && WHOLE.has(label) ? rowOf(i, "piece", "") : undefined;
  return plain === undefined ? undefined : { row: plain, sized: false };
}

/** "3 garlic cloves", "1 cinnamon stick": the piece is named after the food. Also plain "3 onions" and the usual one. */
export function bareRow(
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
