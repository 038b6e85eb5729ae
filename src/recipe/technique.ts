import { storeOf } from "../catalogue/index.js";
import type { Catalogue, Recipe, TechniqueId } from "../types.js";
import { MAX_LINES, MAX_STEPS } from "./limits.js";
import { keptIn, preservedBy } from "./preserving.js";
import type { ReadRecipe, StepReading } from "./types.js";
import { isUncooked } from "./uncooked.js";
import { mainTechnique, understand } from "./understand.js";

/** Words for giving colour or softness before the cooking itself: what follows in the pot is what the food goes through. */
const FIRST = new Set(["brown", "browning", "sear", "searing", "sweat", "sweating"]);
const LONG: readonly TechniqueId[] = ["braise", "stew", "simmer", "slow cooker"];

/** What was understood of the steps: kept from reading, or worked out for a recipe that came another way. */
function stepsOf(c: Catalogue, recipe: Recipe): readonly StepReading[] {
  const { understood } = recipe as Partial<ReadRecipe>;
  if (understood !== undefined && understood.length === recipe.steps.length) return understood;
  return understand(storeOf(c), recipe.lines.slice(0, MAX_LINES), recipe.steps.slice(0, MAX_STEPS)).steps;
}

/** The technique of the whole dish as it was read, else as its steps tell it. */
const wholeOf = (recipe: Recipe, steps: readonly StepReading[]): TechniqueId | undefined =>
  ((recipe as Partial<ReadRecipe>).dish?.technique as TechniqueId | undefined) ??
  mainTechnique(steps) ??
  (isUncooked(recipe) ? "raw" : undefined);
const stepsUsing = (steps: readonly StepReading[], line: number): StepReading[] =>
  steps.filter((s) => s.uses.some((u) => u.line === line && u.confidence >= 0.5));

/** For each line, by its index, how it is kept: canned, pickled, fermented or cured; undefined for what is eaten fresh. */
export function keepingOfLines(c: Catalogue, recipe: Recipe): (line: number) => TechniqueId | undefined {
  const steps = stepsOf(c, recipe);
  const kept = preservedBy(recipe, steps, wholeOf(recipe, steps));
  return (line) => kept ?? keptIn(stepsUsing(steps, line));
}

/**
 * For each line, by its index, the technique its food goes through: told by the steps that use it, else by the whole dish; undefined when
 * no step names one. What is canned, pickled, fermented or cured goes by that before all else: a jar is not safe by how its brine was heated.
 */
export function techniquesOfLines(c: Catalogue, recipe: Recipe): (line: number) => TechniqueId | undefined {
  const steps = stepsOf(c, recipe);
  const whole = wholeOf(recipe, steps);
  const kept = preservedBy(recipe, steps, whole);
  if (kept !== undefined) return () => kept;
  const lastOf = steps.findLastIndex((s) => s.techniques.some((t) => t.technique === whole));
  return (line) => {
    const own = stepsUsing(steps, line);
    const found = keptIn(own) ?? mainTechnique(own);
    if (found === undefined) return whole;
    const words = own.flatMap((s) => s.techniques).filter((t) => t.technique === found);
    const first = words.length > 0 && words.every((t) => FIRST.has(t.word));
    const later = lastOf > Math.max(...own.map((s) => s.step));
    return first && later && whole !== undefined && LONG.includes(whole) ? whole : found;
  };
}
