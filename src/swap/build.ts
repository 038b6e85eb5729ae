import type { Ingredient } from "../catalogue/index.js";
import { freeze } from "../errors.js";
import { portionFor } from "./measure.js";
import { allergenChange, type HazardAnswer } from "../safety/index.js";
import type { Portion, Swap } from "../types.js";
import type { Taste } from "../dose/index.js";
import type { Ask } from "./ask.js";
import { correctionsFor } from "./corrections.js";
import { isCommonPractice, type Known } from "./evidence.js";
import { prepFor, type PrepPlan } from "./prep.js";
import { explain } from "./explain.js";
import { strengths } from "./felt.js";
import type { Scored } from "./score.js";
import { sentence } from "./sentence.js";
import { shiftFor } from "./shift.js";

export interface Candidate {
  readonly uses: readonly { readonly ingredient: Ingredient; readonly grams: number }[];
  readonly scored: Scored;
  readonly known?: Known;
}

const FIRST = "Cook it first";

/**
 * The steps with those that safety asks for. A step already there is not said again, but only when it is added and required itself: one
 * that falls away or may be left out never stands for a required one. "Cook it first" takes the temperature along.
 */
function withRequired(plan: PrepPlan, hazards: HazardAnswer): PrepPlan {
  const prep = [...plan.prep];
  let { active, waiting } = plan;
  for (const { procedure, text, active: work, waiting: wait } of hazards.required) {
    if (prep.some((p) => p.kind === "add" && p.required && p.procedure === procedure && !text.includes("°"))) continue;
    const at = prep.findIndex((p) => p.kind === "add" && p.procedure === "cook" && p.text.startsWith(FIRST));
    const first = prep[at];
    if (first && procedure === "cook-through" && text.startsWith("Cook it ")) {
      const head = first.text.split(":")[0] as string;
      prep[at] = { ...first, procedure, text: `${head}, ${text.slice("Cook it ".length)}` };
      continue;
    }
    prep.push({ kind: "add", procedure, minutes: { active: work, waiting: wait }, required: true, text });
    active += work;
    waiting += wait;
  }
  return { prep, active, waiting };
}

/** Fills a ranked candidate out into the advice a cook reads. */
export function buildSwap(
  ask: Ask,
  candidate: Candidate,
  hazards: HazardAnswer,
  before: Readonly<Record<Taste, number>>,
): Swap {
  const { uses, scored, known } = candidate;
  const plan = prepFor(ask, uses, known);
  const corrections = correctionsFor(ask, uses);
  const mended = new Set(corrections.map((c) => (c.ingredient.id.startsWith("salt") ? "salt" : "")));
  const shift = shiftFor(ask, uses, before, strengths(ask, uses), mended);
  const { prep, active, waiting } = withRequired(plan, hazards);
  const use = uses.map((u) => portionFor(ask, u.ingredient, u.grams)) as unknown as readonly [Portion, ...Portion[]];
  const swap: Omit<Swap, "text"> = {
    use,
    score: scored.score,
    parts: explain(ask, scored, known),
    fit: scored.fit,
    basis: known === undefined ? "computed" : isCommonPractice(known.edge) ? "common practice" : "published",
    sources: known?.edge.sources ?? [],
    prep,
    corrections,
    time: { active, waiting },
    shift,
    allergens: allergenChange(
      ask.store,
      ask.item,
      uses.map((u) => u.ingredient),
    ),
    cautions: hazards.cautions,
  };
  return freeze({ ...swap, text: sentence(ask.missing, swap) });
}
