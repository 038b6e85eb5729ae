import type { Recipe, TechniqueId } from "../types.js";
import { tokensOf } from "./text.js";
import type { StepReading } from "./types.js";

/** Ways of cooking that keep food: what is safe in them is another question than in a pot that is eaten today. */
const KEEPING: readonly TechniqueId[] = ["can", "ferment", "cure", "pickle"];
/** What is kept is often named after it. Chutney and relish stand by their acid, as pickles do. */
const NAMED: ReadonlyMap<string, TechniqueId> = new Map<string, TechniqueId>([
  ...["canned", "preserves", "preserve"].map((w) => [w, "can"] as const),
  ...["sauerkraut", "kimchi", "fermented"].map((w) => [w, "ferment"] as const),
  ...["cured", "gravlax"].map((w) => [w, "cure"] as const),
  ...["pickles", "pickled", "pickle", "chutney", "relish"].map((w) => [w, "pickle"] as const),
]);
/** A dish made of what was kept before has none of these in its steps. */
const KEPT = new Set("jar jars crock crocks weeks months days canner sterilised sterilized".split(" "));
const JARS = new Set("jar jars bottle bottles".split(" "));
const CLEAN = new Set("sterilised sterilized sterile seal sealed sealing".split(" "));

/**
 * How a recipe keeps its food, if it does: by its name where its steps speak of keeping, else by what they do. Everything in the jar is then
 * a matter of safety, whatever pot it went through before. Undefined when it is eaten fresh.
 * @param whole the technique of the whole dish
 */
export function preservedBy(
  recipe: Recipe,
  steps: readonly StepReading[],
  whole: TechniqueId | undefined,
): TechniqueId | undefined {
  const said = recipe.steps.map((s) => new Set(tokensOf(s.text.slice(0, 5000)).map((t) => t.text)));
  const any = (words: ReadonlySet<string>, of: ReadonlySet<string>): boolean => [...words].some((w) => of.has(w));
  const canned =
    steps.some((s) => s.techniques.some((t) => t.technique === "can")) ||
    said.some((w) => w.has("canner") || (w.has("water") && w.has("bath") && any(JARS, w)));
  if (canned) return "can";
  const kept = said.some((w) => any(KEPT, w));
  const named = tokensOf(recipe.name.slice(0, 200)).flatMap((t) => NAMED.get(t.text) ?? []);
  if (kept && named[0] !== undefined) return named[0];
  if (whole !== undefined && KEEPING.includes(whole)) return whole;
  return said.some((w) => any(JARS, w) && any(CLEAN, w)) ? "pickle" : undefined;
}

/** The way of keeping one line's own steps name, if they name one for sure. */
export const keptIn = (own: readonly StepReading[]): TechniqueId | undefined =>
  KEEPING.find((k) => own.some((s) => s.techniques.some((t) => t.technique === k && t.confidence >= 0.7)));
