import type { Ingredient } from "../catalogue/index.js";
import { freeze } from "../errors.js";
import { requireFood } from "../names/index.js";
import type { Catalogue, Judgement, Refusal, Swap, SwapAdvice, SwapRequest } from "../types.js";
import { readAsk } from "./ask.js";
import { buildSwap } from "./build.js";
import { beforeOf, floorOf, weighOne, withHazards, withRefusal, type Weighed } from "./candidates.js";
import { Crowd, sameMixture } from "./crowd.js";
import { goWithoutFor, mustStay } from "./gowithout.js";
import { ranked } from "./rank.js";
import { checkRequest } from "./request.js";
import { named } from "./sentence.js";

/** Refusals listed for one question. */
const REFUSED = 50;

/**
 * What can stand in for a missing ingredient: ranked, with amounts, changed steps, corrections, shifts, allergens and cautions.
 * @param request a line ("450 g salt cod") or a {@link SwapRequest}
 * @throws `unknown food`, `ambiguous food`, `unreadable amount`, `unknown term`, `conflicting request`, `input too large`
 */
export function swapsFor(c: Catalogue, request: string | SwapRequest): SwapAdvice {
  const ask = readAsk(c, typeof request === "string" ? { missing: request } : request);
  const before = beforeOf(ask);
  const swaps: Swap[] = [];
  const refused: Refusal[] = [];
  const seen = new Set<string>();
  const seenSets: (readonly Ingredient[])[] = [];
  const crowd = new Crowd(ask);
  let mixtures = 0;
  // Once the list of what is refused is full, what is not in the house can neither be offered nor named. Water is in every house, and
  // what is like it counts towards how much of it there is.
  const water = ask.store.byId.get("water/pantry");
  const away = (i: Ingredient): boolean =>
    ask.onlyFromHave &&
    refused.length >= REFUSED &&
    ask.have?.has(i.id) === false &&
    i.kind !== water?.kind &&
    i.food !== water?.food;
  for (const candidate of ranked(ask, before, (i) => away(i) || crowd.full(i))) {
    if (swaps.length >= ask.limit) break;
    if (candidate.uses.length > 1 && candidate.known === undefined) {
      // The same mixture with one thing more or less, or with a twin of one, is clutter, and a third of the answers are enough of them.
      // All is settled before anything is refused, so that avoiding more never brings up a swap that was not there before.
      const parts = candidate.uses.map((u) => u.ingredient);
      const alike = seenSets.some((s) => sameMixture(ask.store, s, parts));
      seenSets.push(parts);
      if (alike || mixtures++ >= Math.ceil(ask.limit / 3)) continue;
    }
    if (crowd.crowded(candidate)) continue;
    const gated = withRefusal(ask, candidate);
    const checked = gated.refusal ? gated : withHazards(ask, gated);
    if (checked.refusal) {
      // With a shopping list of a thousand things not in the house, only those that matter are worth a line.
      if (!seen.has(checked.refusal.id) && refused.length < REFUSED) refused.push(checked.refusal);
      seen.add(checked.refusal.id);
      continue;
    }
    if (!checked.hazards) continue;
    swaps.push(buildSwap(ask, checked, checked.hazards, before));
  }
  const stays = mustStay(ask);
  const goWithout = stays === undefined ? goWithoutFor(ask, swaps) : undefined;
  return freeze({
    missing: ask.missing,
    roles: ask.roles.map(({ role, weight }) => ({ role, weight })),
    swaps,
    refused,
    ...(goWithout === undefined ? {} : { goWithout }),
    ...(stays === undefined ? {} : { mustStay: stays }),
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
