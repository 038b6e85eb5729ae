import type { Ingredient, MeasureRow, Store } from "../catalogue/index.js";
import { GRAMS_PER_LB, ML_PER_CUP, ML_PER_TBSP, ML_PER_TSP } from "../quantity/index.js";
import { usualRow, volumeRow } from "./rows.js";

const ML: Readonly<Record<string, number>> = { tsp: ML_PER_TSP, tbsp: ML_PER_TBSP, cup: ML_PER_CUP };
const COUNTS = ["piece", "clove", "bunch", "can", "packet", "stick", "slice"];

/** What one line of a recipe asks for, by the first job of the ingredient: common practice, where the data names no usual measure. */
function byRole(role: string): readonly string[] {
  switch (role) {
    case "main protein":
      return ["piece", "can", "pound"];
    case "bulk vegetable":
    case "crunchy stem":
    case "leafy green":
    case "aromatic":
      return ["piece", "bunch", "clove", "cup", "can", "pound"];
    case "herb":
      return ["bunch", "tbsp", "tsp"];
    case "spice":
    case "heat":
    case "salt seasoning":
    case "leavener":
    case "gelling agent":
    case "colour":
    case "tenderiser":
      return ["tsp", "piece", "packet", "tbsp"];
    case "acid":
    case "fat":
    case "umami seasoning":
    case "thickener":
    case "emulsifier":
    case "garnish":
    case "frying medium":
      return ["tbsp", "tsp", "piece"];
    case "binder":
    case "foam":
      return ["piece", "tbsp"];
    default:
      return ["cup", "piece", "can", "packet"];
  }
}

function weightOf(i: Ingredient, unit: string): number | undefined {
  if (unit === "pound") return GRAMS_PER_LB;
  const ml = ML[unit];
  if (ml !== undefined) {
    const row = volumeRow(i, unit === "cup" ? "cup" : unit === "tbsp" ? "tbsp" : "tsp");
    return row === undefined ? undefined : (row.grams * ml) / (ML[row.unit] ?? ml);
  }
  return (
    i.measures.find((r: MeasureRow) => r.unit === unit && r.label === "")?.grams ??
    i.measures.find((r) => r.unit === unit && r.label !== "inch")?.grams
  );
}

/** Grams meant when a line gives no amount: the usual measure, else what its job suggests, else 100 g. */
export function usualGrams(store: Store, i: Ingredient): number {
  const usual = usualRow(i);
  if (usual !== undefined) return usual.grams;
  if (i.usual !== undefined) {
    const grams = weightOf(i, i.usual);
    if (grams !== undefined) return grams;
  }
  for (const unit of [...byRole(i.roles[0]?.role ?? ""), ...COUNTS, "cup"]) {
    const grams = weightOf(i, unit);
    if (grams !== undefined) return grams;
  }
  const density = store.figure(i, "density");
  return density === null ? 100 : density.value * ML_PER_CUP;
}
