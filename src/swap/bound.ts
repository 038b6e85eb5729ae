import type { Ingredient } from "../catalogue/index.js";
import type { Ask } from "./ask.js";
import { unlistedMark } from "./score.js";
import { settledOf } from "./settled.js";
import { traitsOf } from "./traits.js";

/** Marks are rounded to four places one by one and once more as a score: twice that is never reached. */
const ROUNDING = 0.0002;
/** Share of a job below which a stand-in does not do it. */
export const LEAST_FIT = 0.3;

/**
 * The most each single stand-in could score by its jobs and its kin alone, all else taken for alike: told by numbers that many share,
 * since most of a catalogue is out of the question and need not be looked at. Kept in a heap, the highest first; of equals the one that
 * comes first in the catalogue, which only keeps the work the same every time. What has been looked at closely goes back by what it could
 * score then.
 */
export class Prospects<T> {
  private readonly index: Int32Array;
  private readonly bound: Float64Array;
  private readonly close = new Map<number, T>();
  private size = 0;

  /** @param floor bounds below it are left out */
  constructor(ask: Ask, floor: number) {
    const { store } = ask;
    const settled = settledOf(ask);
    const w = settled.weights;
    const [forRole, forKin, rest] = [Math.max(0, w.role), Math.max(0, w.kin), others(w)];
    const total = forRole + forKin + rest;
    const beside = settled.named > 0 ? settled.silence : 0;
    const { kin, kins, food, byRoles } = traitsOf(store);
    const ownFood = food[ask.item.index];
    /** What kin alone adds, and the mark it gives beside tables, by its number. */
    const near = new Float64Array(kins).fill(-1);
    const mark = new Float64Array(kins);
    const { order, start } = byRoles;
    this.index = new Int32Array(store.size);
    this.bound = new Float64Array(store.size);
    for (let group = 0; group + 1 < start.length; group++) {
      const [from, to] = [start[group] as number, start[group + 1] as number];
      if (from === to) continue;
      // The same jobs are done as well by all that have them.
      const one = store.ingredients[order[from] as number] as Ingredient;
      const fit = settled.jobFit(one, 1, undefined);
      if (!(fit >= LEAST_FIT)) continue;
      const job = settled.roleMark(fit, [{ ingredient: one, grams: 1 }]) * forRole;
      for (let at = from; at < to; at++) {
        const i = order[at] as number;
        const k = kin[i] as number;
        let base: number;
        let evidence: number;
        if (food[i] === ownFood) {
          const own = settled.kin(store.ingredients[i] as Ingredient);
          base = own * forKin;
          evidence = unlistedMark(settled, own);
        } else {
          if (near[k] === -1) {
            const other = settled.kin(store.ingredients[i] as Ingredient);
            near[k] = other * forKin;
            mark[k] = unlistedMark(settled, other);
          }
          base = near[k] as number;
          evidence = mark[k] as number;
        }
        const sum = base + job + rest;
        if (sum / total + ROUNDING < floor) continue;
        this.index[this.size] = i;
        this.bound[this.size++] = (sum + evidence * beside) / (total + beside) + ROUNDING;
      }
    }
    for (let at = (this.size >> 1) - 1; at >= 0; at--) this.sink(at);
  }

  get most(): number | undefined {
    return this.size === 0 ? undefined : this.bound[0];
  }
  /** The highest, with what was found of it when it had been looked at closely. */
  take(): { readonly index: number; readonly close: T | undefined } {
    const index = this.index[0] as number;
    this.size--;
    this.move(this.size, 0);
    this.sink(0);
    return { index, close: this.close.get(index) };
  }
  put(index: number, most: number, close: T): void {
    this.close.set(index, close);
    let at = this.size++;
    this.index[at] = index;
    this.bound[at] = most;
    for (let up = (at - 1) >> 1; at > 0 && this.before(at, up); at = up, up = (at - 1) >> 1) this.swap(at, up);
  }
  private before(a: number, b: number): boolean {
    const x = this.bound[a] as number;
    const y = this.bound[b] as number;
    return x > y || (x === y && (this.index[a] as number) < (this.index[b] as number));
  }
  private move(from: number, to: number): void {
    this.index[to] = this.index[from] as number;
    this.bound[to] = this.bound[from] as number;
  }
  private swap(a: number, b: number): void {
    const index = this.index[a] as number;
    const bound = this.bound[a] as number;
    this.move(b, a);
    this.index[b] = index;
    this.bound[b] = bound;
  }
  private sink(from: number): void {
    for (let at = from; ;) {
      let child = 2 * at + 1;
      if (child >= this.size) return;
      if (child + 1 < this.size && this.before(child + 1, child)) child++;
      if (!this.before(child, at)) return;
      this.swap(child, at);
      at = child;
    }
  }
}

const others = (w: Readonly<Record<string, number>>): number =>
  ["texture", "flavour", "handling", "custom"].reduce((sum, part) => sum + Math.max(0, w[part] ?? 0), 0);
