/**
 * Non-negative least squares over a few columns by the active-set method of Lawson and Hanson (Solving Least Squares Problems, 1974),
 * from the Gram matrix: exact for the at most four parts a mixture has.
 * @param gram A^T A of the chosen columns, row by row, n x n @param b A^T y
 * @returns the weights, none negative
 */
export function nnls(gram: readonly number[], b: readonly number[], n: number): number[] {
  const x = new Array<number>(n).fill(0);
  const passive = new Array<boolean>(n).fill(false);
  for (let guard = 0; guard < 4 * n + 4; guard++) {
    let best = -1;
    let slope = 1e-9;
    for (let j = 0; j < n; j++) {
      if (passive[j]) continue;
      let w = b[j] as number;
      for (let k = 0; k < n; k++) w -= (gram[j * n + k] as number) * (x[k] as number);
      if (w > slope) {
        slope = w;
        best = j;
      }
    }
    if (best < 0) return x;
    passive[best] = true;
    for (;;) {
      const active = [...passive.keys()].filter((j) => passive[j]);
      const z = solve(
        active.map((r) => active.map((c) => gram[r * n + c] as number)),
        active.map((r) => b[r] as number),
      );
      if (z.every((v) => v > 1e-12)) {
        x.fill(0);
        active.forEach((j, i) => (x[j] = z[i] as number));
        break;
      }
      let alpha = 1;
      active.forEach((j, i) => {
        const zi = z[i] as number;
        if (zi <= 1e-12) alpha = Math.min(alpha, (x[j] as number) / ((x[j] as number) - zi || 1e-300));
      });
      active.forEach((j, i) => {
        x[j] = (x[j] as number) + alpha * ((z[i] as number) - (x[j] as number));
        if (x[j] <= 1e-12) {
          x[j] = 0;
          passive[j] = false;
        }
      });
      if (!passive.some(Boolean)) break;
    }
  }
  return x;
}

/** Gaussian elimination with partial pivoting for at most four unknowns; a singular system gives zeros for what it cannot tell apart. */
export function solve(a: number[][], y: number[]): number[] {
  const n = y.length;
  const m = a.map((row, i) => [...row, y[i] as number]);
  for (let c = 0; c < n; c++) {
    let pivot = c;
    for (let r = c + 1; r < n; r++)
      if (Math.abs((m[r] as number[])[c] as number) > Math.abs((m[pivot] as number[])[c] as number)) pivot = r;
    [m[c], m[pivot]] = [m[pivot] as number[], m[c] as number[]];
    const head = m[c] as number[];
    if (Math.abs(head[c] as number) < 1e-12) continue;
    for (let r = 0; r < n; r++) {
      if (r === c) continue;
      const row = m[r] as number[];
      const f = (row[c] as number) / (head[c] as number);
      for (let k = c; k <= n; k++) row[k] = (row[k] as number) - f * (head[k] as number);
    }
  }
  return m.map((row, i) => (Math.abs(row[i] as number) < 1e-12 ? 0 : (row[n] as number) / (row[i] as number)));
}
