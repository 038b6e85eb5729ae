import type { Store } from "../catalogue/index.js";
import type { Catalogue, Change, Recipe } from "../types.js";
import { stirredInLate, type LineNames, type Naming } from "./rename.js";
import { severalOf } from "./line.js";
import { saidIn } from "./mentions.js";

/** A step on its way: its number is known only when all are settled. */
export interface Draft {
  text: string;
  readonly group?: string;
  /** As the recipe had it; undefined for a new one. */
  readonly original?: string;
  /** Its number in the recipe as it was, from 1. */
  readonly was?: number;
  readonly why: Set<string>;
  /** Namings whose food it names. */
  readonly uses: Set<Naming>;
  /** Left out: nothing of it is needed. */
  gone: boolean;
}
/** Said under the recipe; with a draft, its number is put in. */
export interface Aside {
  readonly draft?: Draft;
  readonly text: (step: number) => string;
}
export interface Work {
  readonly c: Catalogue;
  readonly store: Store;
  readonly recipe: Recipe;
  readonly lines: LineNames;
  readonly namings: readonly Naming[];
  readonly drafts: Draft[];
  readonly notes: Aside[];
  /** Named in full by a step already. */
  readonly said: Set<Naming>;
  /** Still called by the old name somewhere. */
  readonly left: Set<Naming>;
  /** "at" of a stand and procedure, for those whose step was found. */
  readonly skipped: Set<string>;
  /** Minutes the steps' own times changed by, for stands whose cooking time was found in them; by "at". */
  readonly timed: Map<number, number>;
}
/** How a change is written where there was nothing before, or is nothing after. */
export const NOTHING = "(nothing)";
export const LEFT_OUT = "(left out)";

export const label = (w: Work, n: Naming): string => {
  const name = saidIn(w.recipe.lines[n.stand.at]?.text ?? "", n.called.asNamed);
  // The same word for both: how it is kept tells them apart. And the water alone is not what stands in
  const now =
    name === n.now.text || stirredInLate(n.stand) !== undefined
      ? n.stand.use.map((u) => severalOf(u.name, u)).join(" and ")
      : n.now.text;
  return `${now} for ${now === name ? `the ${name} of the recipe` : name}`;
};
export const end = (s: string): string => (/[.!?:]["”»)]?\s*$/.test(s) ? s.trimEnd() : `${s.trimEnd()}.`);

export function append(d: Draft, sentence: string, why: string): void {
  if (d.text.includes(sentence)) return;
  d.text = `${end(d.text)} ${sentence}`;
  d.why.add(why);
}
export const here = (w: Work): readonly Draft[] => w.drafts.filter((d) => !d.gone);

/** The steps as they now are, numbered, and what became of each. */
export function settled(w: Work): {
  readonly steps: readonly { readonly text: string; readonly group?: string }[];
  readonly changes: readonly Change[];
  readonly notes: readonly string[];
} {
  const steps = here(w).map((d) => ({ text: d.text, ...(d.group === undefined ? {} : { group: d.group }) }));
  const number = new Map(here(w).map((d, i) => [d, i + 1]));
  const changes: Change[] = [];
  for (const d of w.drafts) {
    const why = [...d.why].join("; ");
    const now = number.get(d);
    if (d.gone && d.original !== undefined)
      changes.push({ where: `step ${d.was ?? 0}, left out`, before: d.original, after: LEFT_OUT, why });
    else if (d.original === undefined)
      changes.push({ where: `new step ${now ?? 0}`, before: NOTHING, after: d.text, why });
    else if (d.text !== d.original)
      changes.push({
        where: now === d.was ? `step ${now}` : `step ${now ?? 0} (was ${d.was ?? 0})`,
        before: d.original,
        after: d.text,
        why,
      });
  }
  const notes = w.notes
    .filter((n) => n.draft === undefined || !n.draft.gone)
    .map((n) => n.text(n.draft === undefined ? 0 : (number.get(n.draft) ?? 0)));
  return { steps, changes, notes: [...new Set(notes)] };
}
