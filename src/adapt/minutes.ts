import type { Store } from "../catalogue/index.js";
import type { Recipe } from "../types.js";
import type { Stand } from "./choose.js";

export interface Total {
  readonly minutes?: number;
  readonly why: string;
  readonly notes: readonly string[];
}
const NAMES: Readonly<Record<string, string>> = {
  cook: "cooking it first",
  "boil-hard": "the hard boil",
  "cook-through": "cooking it through",
};
/**
 * The recipe's minutes with what the swaps save and cost. A step that falls away is taken off only when the recipe has that step and
 * a total long enough to hold it; work adds up, waiting for several things at once is waiting once.
 */
export function totalMinutes(
  store: Store,
  recipe: Recipe,
  stands: readonly Stand[],
  skipped: ReadonlySet<string>,
  timed: ReadonlyMap<number, number>,
): Total {
  const { minutes } = recipe;
  if (minutes === undefined || stands.length === 0)
    return { ...(minutes === undefined ? {} : { minutes }), why: "", notes: [] };
  let saved = 0;
  let active = 0;
  let longest = 0;
  const whys = new Set<string>();
  const notes: string[] = [];
  for (const stand of stands) {
    const { swap } = stand;
    if (swap === undefined) continue;
    let rest = swap.time.active + swap.time.waiting;
    let waits = 0;
    for (const p of swap.prep) {
      const span = p.minutes.active + p.minutes.waiting;
      if (p.kind === "skip") {
        rest += span;
        if (!skipped.has(`${stand.at} ${p.procedure}`)) continue;
        if (span < minutes - saved) {
          saved += span;
          whys.add(`less ${span} for ${store.procedures.get(p.procedure)?.name ?? p.procedure}`);
        } else
          notes.push(
            `The recipe's ${minutes} minutes do not count ${store.procedures.get(p.procedure)?.name ?? p.procedure}, so nothing was taken off for it.`,
          );
      } else if (p.kind === "add") {
        rest -= span;
        active += p.minutes.active;
        // The soak that goes with the hard boil is the soak that was added already
        const soaked = p.procedure === "boil-hard" && swap.prep.some((q) => q.procedure === "soak-beans");
        const wait = soaked ? Math.min(p.minutes.waiting, 30) : p.minutes.waiting;
        waits += wait;
        const name = NAMES[p.procedure] ?? store.procedures.get(p.procedure)?.name ?? p.procedure;
        if (p.minutes.active + wait > 0) whys.add(`${p.minutes.active + wait} more for ${name}`);
      }
    }
    rest = timed.get(stand.at) ?? rest;
    // What is left of the swap's time are cooking times that changed
    if (rest > 0) {
      waits += rest;
      whys.add(`${rest} more to cook ${stand.use[0]?.name ?? ""}`);
    } else if (rest < 0 && -rest < (timed.has(stand.at) ? minutes - saved - 5 : (minutes - saved) / 2)) {
      saved -= rest;
      whys.add(`${-rest} less to cook ${stand.use[0]?.name ?? ""}`);
    }
    longest = Math.max(longest, waits);
  }
  const total = Math.max(1, Math.round(minutes - saved + active + longest));
  return { minutes: total, why: [...whys].join(", "), notes };
}
