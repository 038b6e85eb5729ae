import type { Ingredient } from "../catalogue/index.js";
import type { Taste } from "../dose/index.js";
import type { Ask } from "./ask.js";
import { fieldOf, floorOf, weighSingle, type Single, type Weighed } from "./candidates.js";

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

/** Taken from a heap in the order of the most a single could score; ties by index, which only keeps the work the same every time. */
class Waiting {
  constructor(private readonly heap: Single[]) {
    for (let i = (heap.length >> 1) - 1; i >= 0; i--) this.sink(i);
  }
  get most(): number | undefined {
    return this.heap[0]?.most;
  }
  take(): Single | undefined {
    const { heap } = this;
    const top = heap[0];
    const last = heap.pop();
    if (last !== undefined && heap.length > 0) {
      heap[0] = last;
      this.sink(0);
    }
    return top;
  }
  private sink(from: number): void {
    const { heap } = this;
    const item = heap[from] as Single;
    let i = from;
    for (;;) {
      let child = 2 * i + 1;
      if (child >= heap.length) break;
      if (child + 1 < heap.length && before(heap[child + 1] as Single, heap[child] as Single)) child++;
      if (!before(heap[child] as Single, item)) break;
      heap[i] = heap[child] as Single;
      i = child;
    }
    heap[i] = item;
  }
}
const before = (a: Single, b: Single): boolean =>
  a.most > b.most || (a.most === b.most && a.ingredient.index < b.ingredient.index);

/**
 * The stand-ins for one question, best first, one at a time. A single stand-in is weighed only when the most it could score comes up:
 * what nobody reaches is never weighed, and the order is the same as if all had been.
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
  const { weighed, singles } = fieldOf(ask, was);
  // Best last, so that taking it is cheap; those that compare equal keep their order.
  const ready = weighed.filter(stays).sort(compare).reverse();
  const waiting = new Waiting([...singles]);
  // Quick or cheap comes first among those of one tenth of the score.
  const rough = ask.prefer === "quickest" || ask.prefer === "cheapest";
  const level = (score: number): number => (rough ? Math.floor(score * 10) : score);
  for (;;) {
    for (let most = waiting.most; most !== undefined; most = waiting.most) {
      const best = ready.at(-1);
      if (best && level(most) < level(best.scored.score)) break;
      const single = waiting.take() as Single;
      if (skip(single.ingredient)) continue;
      const w = weighSingle(ask, single, was);
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
