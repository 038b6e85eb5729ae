/** Working room for up to {@link MOST} unknowns: thousands of small systems are solved for one answer, and none outlives the call. */
const MOST = 16;
const active = new Int32Array(MOST);
const rows = new Float64Array(MOST * (MOST + 1));
const order = new Int32Array(MOST);
const found = new Float64Array(MOST);

/**
 * Non-negative least squares over a few columns by the active-set method of Lawson and Hanson (Solving Least Squares Problems, 1974),
 * from the Gram matrix: exact for the at most four parts a mixture has.
 * @param gram A^T A of the chosen columns, row by row, n x n @param b A^T y @param n at most 16
 * @returns the weights, none negative
 */
export function nnls(gram: ArrayLike<number>, b: ArrayLike<number>, n: number): number[] {
  const x = new Array<number>(n).fill(0);
  // One bit a column: in the passive set or not.
  let passive = 0;
  for (let guard = 0; guard < 4 * n + 4; guard++) {
    let best = -1;
    let slope = 1e-9;
    for (let j = 0; j < n; j++) {
      if ((passive & (1 << j)) !== 0) continue;
      let w = b[j] as number;
      for (let k = 0; k < n; k++) w -= (gram[j * n + k] as number) * (x[k] as number);
      if (w > slope) {
        slope = w;
        best = j;
      }
    }
    if (best < 0) return x;
    passive |= 1 << best;
    for (;;) {
      let m = 0;
      for (let j = 0; j < n; j++) if ((passive & (1 << j)) !== 0) active[m++] = j;
      for (let i = 0; i < m; i++) {
        const r = active[i] as number;
        for (let k = 0; k < m; k++) rows[i * (m + 1) + k] = gram[r * n + (active[k] as number)] as number;
        rows[i * (m + 1) + m] = b[r] as number;
      }
      eliminate(m);
      let positive = true;
      for (let i = 0; i < m; i++) if (!((found[i] as number) > 1e-12)) positive = false;
      if (positive) {
        x.fill(0);
        for (let i = 0; i < m; i++) x[active[i] as number] = found[i] as number;
        break;
      }
      let alpha = 1;
      for (let i = 0; i < m; i++) {
        const xj = x[active[i] as number] as number;
        const zi = found[i] as number;
        if (zi <= 1e-12) alpha = Math.min(alpha, xj / (xj - zi || 1e-300));
      }
      for (let i = 0; i < m; i++) {
        const j = active[i] as number;
        const moved = (x[j] as number) + alpha * ((found[i] as number) - (x[j] as number));
        x[j] = moved;
        if (moved <= 1e-12) {
          x[j] = 0;
          passive &= ~(1 << j);
        }
      }
      if (passive === 0) break;
    }
  }
  return x;
}

/** Gaussian elimination with partial pivoting for at most 16 unknowns; a singular system gives zeros for what it cannot tell apart. */
export function solve(a: readonly (readonly number[])[], y: readonly number[]): number[] {
  const n = y.length;
  for (let i = 0; i < n; i++) {
    for (let k = 0; k < n; k++) rows[i * (n + 1) + k] = (a[i] as readonly number[])[k] as number;
    rows[i * (n + 1) + n] = y[i] as number;
  }
  eliminate(n);
  return Array.from(found.subarray(0, n));
}

/** Solves what stands in `rows` (n rows of n coefficients and the right side) into `found`. */
function eliminate(n: number): void {
  const w = n + 1;
  for (let i = 0; i < n; i++) order[i] = i * w;
  for (let c = 0; c < n; c++) {
    let pivot = c;
    for (let r = c + 1; r < n; r++)
      if (Math.abs(rows[(order[r] as number) + c] as number) > Math.abs(rows[(order[pivot] as number) + c] as number))
        pivot = r;
    const head = order[pivot] as number;
    order[pivot] = order[c] as number;
    order[c] = head;
    const lead = rows[head + c] as number;
    if (Math.abs(lead) < 1e-12) continue;
    for (let r = 0; r < n; r++) {
      if (r === c) continue;
      const row = order[r] as number;
      const f = (rows[row + c] as number) / lead;
      for (let k = c; k <= n; k++) rows[row + k] = (rows[row + k] as number) - f * (rows[head + k] as number);
    }
  }
  for (let i = 0; i < n; i++) {
    const row = order[i] as number;
    const lead = rows[row + i] as number;
    found[i] = Math.abs(lead) < 1e-12 ? 0 : (rows[row + n] as number) / lead;
  }
}
