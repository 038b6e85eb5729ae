import type { Ingredient } from "../catalogue/index.js";
import { freeze } from "../errors.js";
import { portionOf } from "../portion/index.js";
import { allergenChange, type HazardAnswer } from "../safety/index.js";
import type { Portion, Swap } from "../types.js";
import type { Taste } from "../dose/index.js";
import type { Ask } from "./ask.js";
import { correctionsFor } from "./corrections.js";
import { isCommonPractice, type Known } from "./evidence.js";
import { prepFor } from "./prep.js";
import { explain, strengths, type Scored } from "./score.js";
import { sentence } from "./sentence.js";
import { shiftFor } from "./shift.js";

export interface Candidate {
  readonly uses: readonly { readonly ingredient: Ingredient; readonly grams: number }[];
  readonly scored: Scored;
  readonly known?: Known;
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
  const required = hazards.required.map((step) => ({
    kind: "add" as const,
    procedure: step.procedure,
    minutes: { active: step.active, waiting: step.waiting },
    required: true,
    text: step.text,
  }));
  const use = uses.map((u) => portionOf(ask.store, u.ingredient, u.grams)) as unknown as readonly [
    Portion,
    ...Portion[],
  ];
  const swap: Omit<Swap, "text"> = {
    use,
    score: scored.score,
    parts: explain(ask, scored, known),
    fit: scored.fit,
    basis: known === undefined ? "computed" : isCommonPractice(known.edge) ? "common practice" : "published",
    sources: known?.edge.sources ?? [],
    prep: [...plan.prep, ...required.filter((r) => !plan.prep.some((p) => p.procedure === r.procedure))],
    corrections,
    time: {
      active: plan.active + required.reduce((s, r) => s + r.minutes.active, 0),
      waiting: plan.waiting + required.reduce((s, r) => s + r.minutes.waiting, 0),
    },
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
