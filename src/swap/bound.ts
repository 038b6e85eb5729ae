import type { Ingredient } from "../catalogue/index.js";
import type { Ask } from "./ask.js";
import { unlistedMark } from "./score.js";
import { settledOf } from "./settled.js";
import { codesIn, traitsOf } from "./traits.js";

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
    const { kin, kins, food } = traitsOf(store);
    const codes = store.codes("roles");
    const ownFood = food[ask.item.index];
    const n = store.size;
    this.index = new Int32Array(n);
    this.bound = new Float64Array(n);
    /** What kin alone adds, and the mark it gives beside tables, by its number. */
    const near = new Float64Array(kins).fill(Number.NaN);
    const mark = new Float64Array(kins);
    /** What the jobs add, by the number of the roles and one, since -1 is none; none where they are not done. */
    const jobs = new Float64Array(codesIn(codes)).fill(-1);
    for (let i = 0; i < n; i++) {
      const code = (codes[i] as number) + 1;
      let job = jobs[code] as number;
      if (job === -1) {
        const ingredient = store.ingredients[i] as Ingredient;
        const fit = settled.jobFit(ingredient, 1, undefined);
        const mark = fit >= LEAST_FIT ? settled.roleMark(fit, [{ ingredient, grams: 1 }]) : Number.NaN;
        jobs[code] = job = mark * forRole;
      }
      if (Number.isNaN(job)) continue;
      const k = kin[i] as number;
      let base: number;
      let evidence: number;
      if (food[i] === ownFood) {
        const own = settled.kin(store.ingredients[i] as Ingredient);
        base = own * forKin;
        evidence = unlistedMark(settled, own);
      } else {
        if (Number.isNaN(near[k])) {
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
    const [x, y] = [this.bound[a] as number, this.bound[b] as number];
    return x > y || (x === y && (this.index[a] as number) < (this.index[b] as number));
  }
  private move(from: number, to: number): void {
    this.index[to] = this.index[from] as number;
    this.bound[to] = this.bound[from] as number;
  }
  private swap(a: number, b: number): void {
    const [index, bound] = [this.index[a] as number, this.bound[a] as number];
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
