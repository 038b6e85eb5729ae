/**
 * Columns of numbers as text: whole numbers at a fixed width of characters, measured ones as they are written. It packs smaller than a
 * list and, since most columns are never looked at, nothing is read until it is asked for.
 */

// The characters from "#" to "~" without the backslash: none of them is escaped in JSON.
const DIGITS = Array.from({ length: 92 }, (_, k) => String.fromCharCode(35 + k)).filter((c) => c !== "\\");
const BASE = DIGITS.length;
const BACKSLASH = 92;
const digit = (code: number): number => (code > BACKSLASH ? code - 36 : code - 35);

/** Whole numbers, none negative. The first character says how many the others are for a number. */
export function packInts(list: readonly number[]): string {
  let most = 0;
  for (const n of list) most = Math.max(most, n);
  let width = 1;
  for (let reach = BASE; most >= reach; reach *= BASE) width++;
  let text = String(width);
  for (const n of list) {
    let rest = n;
    let word = "";
    for (let k = 0; k < width; k++) {
      word = (DIGITS[rest % BASE] as string) + word;
      rest = Math.floor(rest / BASE);
    }
    text += word;
  }
  return text;
}
export function unpackInts(text: string): Int32Array {
  const width = Number(text[0]);
  const out = new Int32Array((text.length - 1) / width);
  for (let i = 0, p = 1; i < out.length; i++) {
    let n = 0;
    for (let k = 0; k < width; k++) n = n * BASE + digit(text.charCodeAt(p++));
    out[i] = n;
  }
  return out;
}

/** Any whole numbers as ones that are not negative: 0, -1, 1, -2 ... become 0, 1, 2, 3 ... */
export const fold = (n: number): number => (n < 0 ? -2 * n - 1 : 2 * n);
export const unfold = (n: number): number => (n % 2 === 1 ? -(n + 1) / 2 : n / 2);

/** Each as its distance from the one before. */
export const packSteps = (list: readonly number[]): string =>
  packInts(list.map((n, i) => fold(n - (list[i - 1] ?? 0))));
export function unpackSteps(text: string): Int32Array {
  const out = unpackInts(text);
  let sum = 0;
  for (let i = 0; i < out.length; i++) out[i] = sum += unfold(out[i] as number);
  return out;
}

/** Those of a long list that are not 0: how far on each lies, then what it is. */
export type Sparse = readonly [gaps: string, values: string];
export function packSparse(list: readonly number[]): Sparse {
  const at = list.flatMap((n, i) => (n === 0 ? [] : [i]));
  return [packInts(at.map((i, k) => i - (at[k - 1] ?? 0))), packInts(at.map((i) => fold(list[i] as number)))];
}
export function unpackSparse([gaps, values]: Sparse, size: number): Int32Array {
  const out = new Int32Array(size);
  const value = unpackInts(values);
  let i = 0;
  unpackInts(gaps).forEach((gap, k) => {
    i += gap;
    out[i] = unfold(value[k] as number);
  });
  return out;
}

/** Measured numbers; null is not measured and nothing stands for it. */
export function packFigures(list: readonly (number | null)[]): string {
  const last = list.findLastIndex((v) => v !== null);
  return list
    .slice(0, last + 1)
    .map((v) => (v === null ? "" : String(v)))
    .join(",");
}
/** NaN where not measured. */
export function unpackFigures(text: string, size: number): Float64Array {
  const out = new Float64Array(size).fill(Number.NaN);
  if (text === "") return out;
  text.split(",").forEach((v, i) => {
    if (v !== "") out[i] = Number(v);
  });
  return out;
}
