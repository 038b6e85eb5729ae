import { freeze } from "../errors.js";
import { requireFood } from "../names/index.js";
import type { Catalogue, Judgement, Refusal, Swap, SwapAdvice, SwapRequest } from "../types.js";
import { readAsk, type Ask } from "./ask.js";
import { buildSwap } from "./build.js";
import { beforeOf, floorOf, weighAll, weighOne, withHazards, type Weighed } from "./candidates.js";
import { goWithoutFor } from "./gowithout.js";
import { checkRequest } from "./request.js";
import { named } from "./sentence.js";

const code = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
const key = (w: Weighed): string => w.uses.map((u) => u.ingredient.id).join("+");

/** Score rounded to 4 places, then fewer ingredients, then id by code unit; or by minutes or price first when asked. */
function order(ask: Ask): (a: Weighed, b: Weighed) => number {
  const price = (w: Weighed): number =>
    Math.round(
      w.uses.reduce((s, u) => s + (ask.prices?.[u.ingredient.id] ?? u.ingredient.cost / 1000) * u.grams, 0) * 100,
    );
  const minutes = (w: Weighed): number => Math.round((1 - w.scored.fit.handling) * 10_000);
  const close = (a: Weighed, b: Weighed): number =>
    b.scored.score - a.scored.score || a.uses.length - b.uses.length || code(key(a), key(b));
  // Quick or cheap among those that are nearly as good: within a tenth of the score, never a poor swap first.
  const tier = (w: Weighed): number => Math.floor(w.scored.score * 10);
  if (ask.prefer === "quickest") return (a, b) => tier(b) - tier(a) || minutes(a) - minutes(b) || close(a, b);
  if (ask.prefer === "cheapest") return (a, b) => tier(b) - tier(a) || price(a) - price(b) || close(a, b);
  return close;
}

/** Answers of one food, and of one kind, before the list is nothing but varieties. */
const OF_FOOD = 2;
const OF_KIND = 3;
/**
 * Tells whether a single stand-in is one more of what the list has enough of: states of one food, varieties of one kind. What a table
 * names and what is in the house always stay. Counted before anything is refused, so that avoiding more never brings up a swap that was
 * not there before.
 */
function crowd(ask: Ask): (w: Weighed) => boolean {
  const foods = new Map<string, number>();
  const kinds = new Map<string, number>();
  return (w) => {
    const only = w.uses.length === 1 ? w.uses[0]?.ingredient : undefined;
    if (!only || ask.have?.has(only.id) === true) return false;
    const food = foods.get(only.food) ?? 0;
    const kind = kinds.get(only.kind) ?? 0;
    const full = w.known === undefined && (food >= OF_FOOD || kind >= OF_KIND);
    if (full) return true;
    foods.set(only.food, food + 1);
    kinds.set(only.kind, kind + 1);
    return false;
  };
}

/**
 * What can stand in for a missing ingredient: ranked, with amounts, changed steps, corrections, shifts, allergens and cautions.
 * @param request a line ("450 g salt cod") or a {@link SwapRequest}
 * @throws `unknown food`, `ambiguous food`, `unreadable amount`, `unknown term`, `conflicting request`, `input too large`
 */
export function swapsFor(c: Catalogue, request: string | SwapRequest): SwapAdvice {
  const ask = readAsk(c, typeof request === "string" ? { missing: request } : request);
  const before = beforeOf(ask);
  const ranked = weighAll(ask, before)
    .filter((w) => w.scored.base >= floorOf(ask) || w.known !== undefined)
    .sort(order(ask));
  const swaps: Swap[] = [];
  const refused: Refusal[] = [];
  const seen = new Set<string>();
  const seenSets: string[][] = [];
  const crowded = crowd(ask);
  let mixtures = 0;
  for (const candidate of ranked) {
    if (swaps.length >= ask.limit) break;
    const ids: string[] = candidate.uses.map((u) => u.ingredient.id);
    if (ids.length > 1 && candidate.known === undefined) {
      // The same mixture with one thing more or less is clutter, and a third of the answers are enough of them. Both are settled before
      // anything is refused, so that avoiding more never brings up a swap that was not there before.
      const alike = seenSets.some((s) => s.every((id) => ids.includes(id)) || ids.every((id) => s.includes(id)));
      seenSets.push(ids);
      if (alike || mixtures++ >= Math.ceil(ask.limit / 3)) continue;
    }
    if (crowded(candidate)) continue;
    const checked = candidate.refusal ? candidate : withHazards(ask, candidate);
    if (checked.refusal) {
      // With a shopping list of a thousand things not in the house, only those that matter are worth a line.
      if (!seen.has(checked.refusal.id) && refused.length < 50) refused.push(checked.refusal);
      seen.add(checked.refusal.id);
      continue;
    }
    if (!checked.hazards) continue;
    swaps.push(buildSwap(ask, checked, checked.hazards, before));
  }
  const goWithout = goWithoutFor(ask, swaps);
  return freeze({
    missing: ask.missing,
    roles: ask.roles.map(({ role, weight }) => ({ role, weight })),
    swaps,
    refused,
    ...(goWithout === undefined ? {} : { goWithout }),
    notUnderstood: ask.notUnderstood,
  });
}

/**
 * "Can I use X instead of Y?": yes, with changes, only for some uses, or no; why; and up to three better answers.
 * @throws what {@link swapsFor} throws
 */
export function judgeSwap(c: Catalogue, request: SwapRequest & { instead: string }): Judgement {
  checkRequest(request);
  const { instead, ...rest } = request;
  const ask = readAsk(c, rest);
  const before = beforeOf(ask);
  const use = ask.store.byId.get(requireFood(c, instead).id);
  if (!use) return requireFood(c, instead) as never;
  const advice = swapsFor(c, { ...rest, limit: Math.max(ask.limit, 10) });
  const name = ask.store.nameOf(use);
  const better = (floor: number): readonly Swap[] =>
    advice.swaps.filter((s) => s.score > floor && s.use[0].id !== use.id).slice(0, 3);
  if (use.id === ask.item.id)
    return freeze({ verdict: "yes", why: `${name} is what is missing; it is the same thing.`, better: [] });
  const first = weighOne(ask, use, before);
  const weighed = first.refusal ? first : withHazards(ask, first);
  if (weighed.refusal) {
    const partly = weighed.refusal.because === "technique";
    return freeze({
      verdict: partly ? "only for" : "no",
      why: partly ? `${weighed.refusal.detail} It would do in another kind of cooking.` : weighed.refusal.detail,
      better: better(0),
    });
  }
  const swap = buildSwap(ask, weighed, weighed.hazards as NonNullable<Weighed["hazards"]>, before);
  const { score } = swap;
  const undone = ask.roles
    .filter((r) => r.weight >= 0.5 && !use.roles.some((u) => u.role === r.role && u.weight >= 0.3))
    .map((r) => r.role);
  const done = ask.roles.filter((r) => !undone.includes(r.role)).map((r) => r.role);
  if (swap.fit.role < 0.3 && swap.basis === "computed")
    return freeze({
      verdict: "no",
      why: `${name} does not do the job of ${ask.missing.name}: ${undone.join(", ") || ask.roles[0]?.role || ""}.`,
      better: better(0),
    });
  if (undone.length > 0 && swap.basis === "computed")
    return freeze({
      verdict: "only for",
      swap,
      why: `${name} serves as ${done.join(", ")}, not as ${undone.join(", ")}.`,
      better: better(score),
    });
  if (weighed.scored.base < floorOf(ask) && swap.basis === "computed")
    return freeze({
      verdict: "no",
      why: `${name} would change the dish too much: ${
        swap.shift
          .slice(0, 3)
          .map((s) => s.text)
          .join(", ") || "little is alike"
      }.`,
      better: better(score),
    });
  const changes = swap.prep.length + swap.corrections.length > 0 || swap.shift.some((s) => s.strength === 3);
  const verdict = !changes && score >= 0.72 ? "yes" : "with changes";
  return freeze({
    verdict,
    swap,
    why:
      verdict === "yes"
        ? `${named(swap.use[0])} does the same job, ${swap.shift.length > 0 ? swap.shift[0]?.text : "with little difference"}.`
        : swap.text,
    better: better(score),
  });
}
