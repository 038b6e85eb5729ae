import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { openCatalogue } from "../../src/index.js";
import { storeOf } from "../../src/catalogue/index.js";
import { nnls, solve } from "../../src/swap/blend/solve.js";
import { blendsFor, residualOf } from "../../src/swap/blend/index.js";
import { readAsk } from "../../src/swap/ask.js";

type Matrix = readonly (readonly number[])[];
const dot = (a: readonly number[], b: readonly number[]): number => a.reduce((s, v, k) => s + v * (b[k] ?? 0), 0);
const columns = (a: Matrix): number[][] => (a[0] ?? []).map((_, j) => a.map((row) => row[j] ?? 0));
/** A^T A row by row and A^T y. */
function normal(a: Matrix, y: readonly number[]): { gram: number[]; b: number[]; n: number } {
  const cols = columns(a);
  return { gram: cols.flatMap((p) => cols.map((q) => dot(p, q))), b: cols.map((p) => dot(p, y)), n: cols.length };
}
const squares = (a: Matrix, y: readonly number[], x: readonly number[]): number =>
  a.reduce((s, row, k) => s + (dot(row, x) - (y[k] ?? 0)) ** 2, 0);

/**
 * The independent solver: every choice of which weights are free, each solved by Gram-Schmidt on the columns themselves (not on the
 * normal equations), the best without a negative weight kept. Exact, and exponential.
 */
function byEnumeration(a: Matrix, y: readonly number[]): number {
  const cols = columns(a);
  let best = dot(y, y);
  for (let mask = 1; mask < 1 << cols.length; mask++) {
    const set = cols.map((_, j) => j).filter((j) => mask & (1 << j));
    const q: number[][] = [];
    const r: number[][] = [];
    let full = true;
    for (const j of set) {
      let v = [...(cols[j] ?? [])];
      const size = Math.sqrt(dot(v, v));
      const along: number[] = [];
      // twice, so that nearly parallel columns stay orthogonal
      for (let pass = 0; pass < 2; pass++)
        q.forEach((e, k) => {
          const c = dot(e, v);
          along[k] = (along[k] ?? 0) + c;
          v = v.map((x, i) => x - c * (e[i] ?? 0));
        });
      const length = Math.sqrt(dot(v, v));
      if (!(length > 1e-9 * Math.max(1, size))) full = false;
      q.push(v.map((x) => x / length));
      r.push([...along, length]);
    }
    if (!full) continue;
    const x = new Array<number>(set.length).fill(0);
    for (let k = set.length - 1; k >= 0; k--) {
      let right = dot(q[k] ?? [], y);
      for (let l = k + 1; l < set.length; l++) right -= (r[l]?.[k] ?? 0) * (x[l] ?? 0);
      x[k] = right / (r[k]?.[k] ?? 1);
    }
    if (x.some((v) => v < 0)) continue;
    const whole = cols.map((_, j) => (set.includes(j) ? (x[set.indexOf(j)] ?? 0) : 0));
    best = Math.min(best, squares(a, y, whole));
  }
  return best;
}

const entry = fc.integer({ min: -60, max: 60 }).map((v) => v / 10);
const instance = fc.tuple(fc.integer({ min: 1, max: 4 }), fc.integer({ min: 1, max: 8 })).chain(([n, m]) =>
  fc.record({
    a: fc.array(fc.array(entry, { minLength: n, maxLength: n }), { minLength: m, maxLength: m }),
    y: fc.array(entry, { minLength: m, maxLength: m }),
  }),
);
const runs = { numRuns: 3000, seed: 20261125 };

describe("non-negative least squares", () => {
  it("leaves no more than trying every set of parts does", () => {
    fc.assert(
      fc.property(instance, ({ a, y }) => {
        const { gram, b, n } = normal(a, y);
        const x = nnls(gram, b, n);
        expect(x).toHaveLength(n);
        expect(x.every((v) => v >= 0 && Number.isFinite(v))).toBe(true);
        const left = squares(a, y, x);
        const best = byEnumeration(a, y);
        expect(left).toBeLessThanOrEqual(best + 1e-6 * Math.max(1, dot(y, y)));
      }),
      runs,
    );
  });
  it("no part that was left out would help, and none that is in is pulled (Karush, Kuhn and Tucker)", () => {
    fc.assert(
      fc.property(instance, ({ a, y }) => {
        const { gram, b, n } = normal(a, y);
        const x = nnls(gram, b, n);
        const scale = Math.max(1, ...b.map(Math.abs), ...gram.map(Math.abs));
        for (let j = 0; j < n; j++) {
          const pull = (b[j] ?? 0) - dot(gram.slice(j * n, j * n + n), x);
          expect(pull).toBeLessThanOrEqual(1e-6 * scale);
          if ((x[j] ?? 0) > 1e-9) expect(Math.abs(pull)).toBeLessThanOrEqual(1e-6 * scale);
        }
      }),
      runs,
    );
  });
  it("a mixture made on purpose is found again", () => {
    fc.assert(
      fc.property(
        instance,
        fc.array(fc.double({ min: 0, max: 5, noNaN: true }), { minLength: 4, maxLength: 4 }),
        ({ a }, weights) => {
          const made = a.map((row) => dot(row, weights.slice(0, row.length)));
          const { gram, b, n } = normal(a, made);
          expect(squares(a, made, nnls(gram, b, n))).toBeLessThanOrEqual(1e-6 * Math.max(1, dot(made, made)));
        },
      ),
      runs,
    );
  });
  it("Gaussian elimination solves what can be solved", () => {
    fc.assert(
      fc.property(instance, ({ a, y }) => {
        const { gram, b, n } = normal(a, y);
        const rows = Array.from({ length: n }, (_, i) => gram.slice(i * n, i * n + n));
        const x = solve(
          rows.map((r) => [...r]),
          [...b],
        );
        expect(x.every(Number.isFinite)).toBe(true);
      }),
      runs,
    );
  });
});

describe("mixtures, for any ingredient", () => {
  const c = openCatalogue();
  const store = storeOf(c);
  it("two to four different parts, each above nothing, never the thing itself, best first, the same again", () => {
    let met = 0;
    fc.assert(
      fc.property(fc.constantFrom(...store.ingredients), (i) => {
        const ask = readAsk(c, { missing: i.id, amount: "100 g" });
        const blends = blendsFor(ask);
        met += blends.length;
        let before = 0;
        for (const { uses, residual } of blends) {
          expect(uses.length).toBeGreaterThanOrEqual(2);
          expect(uses.length).toBeLessThanOrEqual(4);
          expect(new Set(uses.map((u) => u.ingredient.id)).size).toBe(uses.length);
          for (const u of uses) {
            expect(u.grams > 0 && Number.isFinite(u.grams), `${i.id}: ${u.ingredient.id} ${u.grams}`).toBe(true);
            // Its powder or its unsalted form may be a part, the thing as it is may not.
            expect(u.ingredient.id).not.toBe(i.id);
            if (u.ingredient.food === i.food && u.ingredient.part === i.part)
              expect(u.ingredient.state.join()).not.toBe(i.state.join());
          }
          expect(residual).toBeGreaterThanOrEqual(before - 1e-9);
          before = residual;
          // the printed residual counts what each part costs on top of what is left
          expect(residualOf(ask, uses)).toBeLessThanOrEqual(residual + 1e-9);
        }
        const again = blendsFor(ask);
        expect(again.map((f) => f.uses.map((u) => [u.ingredient.id, u.grams]))).toEqual(
          blends.map((f) => f.uses.map((u) => [u.ingredient.id, u.grams])),
        );
      }),
      { numRuns: 60, seed: 20261125 },
    );
    expect(met).toBeGreaterThan(50);
  });
  it("the weights found are the best: a nudge to any part leaves more", () => {
    fc.assert(
      fc.property(fc.constantFrom(...store.ingredients), fc.constantFrom(0.9, 1.1), (i, nudge) => {
        const ask = readAsk(c, { missing: i.id, amount: "100 g" });
        for (const { uses } of blendsFor(ask).slice(0, 5)) {
          const left = residualOf(ask, uses);
          uses.forEach((_, k) => {
            const moved = uses.map((u, j) => (j === k ? { ...u, grams: u.grams * nudge } : u));
            expect(residualOf(ask, moved)).toBeGreaterThanOrEqual(left - 1e-9);
          });
        }
      }),
      { numRuns: 40, seed: 20261125 },
    );
  });
});
