import type { Ingredient } from "../catalogue/index.js";
import type { Taste } from "../dose/index.js";
import type { Ask } from "./ask.js";
import { Prospects } from "./bound.js";
import { floorOf, namedAndMixed, singleOf, weighSingle, type Single, type Weighed } from "./candidates.js";

const code = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
const key = (w: Weighed): string => w.uses.map((u) => u.ingredient.id).join("+");

/** Score rounded to 4 places, then fewer ingredients, then id by code unit; or by minutes or price first when asked. */
export function order(ask: Ask): (a: Weighed, b: Weighed) => number {
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

/**
 * The stand-ins for one question, best first, one at a time. A single stand-in is looked at only when the most it could score comes up,
 * and weighed only when the most it could score at its amount does: what nobody reaches is never weighed, and the order is the same as if
 * all had been.
 * @param skip true for what the reader of the list would pass over anyway, now and later
 */
export function* ranked(
  ask: Ask,
  was: Readonly<Record<Taste, number>>,
  skip: (i: Ingredient) => boolean,
): Generator<Weighed, void> {
  const floor = floorOf(ask);
  const stays = (w: Weighed): boolean => w.scored.base >= floor || w.known !== undefined;
  const compare = order(ask);
  const { weighed, named } = namedAndMixed(ask, was);
  // Best last, so that taking it is cheap; those that compare equal keep their order.
  const ready = weighed.filter(stays).sort(compare).reverse();
  const waiting = new Prospects<Single>(ask, floor);
  // Quick or cheap comes first among those of one tenth of the score.
  const rough = ask.prefer === "quickest" || ask.prefer === "cheapest";
  const level = (score: number): number => (rough ? Math.floor(score * 10) : score);
  for (;;) {
    for (let most = waiting.most; most !== undefined; most = waiting.most) {
      const best = ready.at(-1);
      if (best && level(most) < level(best.scored.score)) break;
      const { index, close } = waiting.take();
      const ingredient = ask.store.ingredients[index] as Ingredient;
      if (skip(ingredient)) continue;
      if (close === undefined) {
        const single = singleOf(ask, ingredient, named, floor);
        if (single !== undefined) waiting.put(index, single.most, single);
        continue;
      }
      const w = weighSingle(ask, close, was);
      if (!stays(w)) continue;
      let at = ready.length;
      while (at > 0 && compare(ready[at - 1] as Weighed, w) < 0) at--;
      ready.splice(at, 0, w);
    }
    const next = ready.pop();
    if (next === undefined) return;
    yield next;
  }
}
