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

/** Numbers below this take one character, as most do; the next ones two, the rest a lead and a fixed width. */
const SHORT = 70;
const LEADS = BASE - 1 - SHORT;
const REST = 5;
/** Whole numbers, none negative, the small ones short. */
export function packShort(list: readonly number[]): string {
  let text = "";
  for (const n of list) {
    const beyond = n - SHORT;
    if (beyond < 0) text += DIGITS[n] as string;
    else if (beyond < LEADS * BASE)
      text += (DIGITS[SHORT + Math.floor(beyond / BASE)] as string) + (DIGITS[beyond % BASE] as string);
    else {
      let rest = beyond - LEADS * BASE;
      let word = "";
      for (let k = 0; k < REST; k++) {
        word = (DIGITS[rest % BASE] as string) + word;
        rest = Math.floor(rest / BASE);
      }
      text += (DIGITS[BASE - 1] as string) + word;
    }
  }
  return text;
}
export function unpackShort(text: string): Int32Array {
  const out = new Int32Array(text.length);
  let size = 0;
  for (let p = 0; p < text.length;) {
    let n = digit(text.charCodeAt(p++));
    if (n === BASE - 1) {
      n = 0;
      for (let k = 0; k < REST; k++) n = n * BASE + digit(text.charCodeAt(p++));
      n += SHORT + LEADS * BASE;
    } else if (n >= SHORT) n = SHORT + (n - SHORT) * BASE + digit(text.charCodeAt(p++));
    out[size++] = n;
  }
  return out.subarray(0, size);
}

/**
 * Places in a list that has every value once, in the order they first come up; -1 is none. 0 is the next new one, others say how many
 * different ones have come up since it last did: kin stand together, so most are small.
 */
export function packPlaces(places: readonly number[]): string {
  const recent = [-1];
  return packShort(
    places.map((place) => {
      const at = recent.lastIndexOf(place);
      const back = at < 0 ? 0 : recent.length - at;
      if (at >= 0) recent.splice(at, 1);
      recent.push(place);
      return back;
    }),
  );
}
export function unpackPlaces(text: string): Int32Array {
  const out = unpackShort(text);
  let size = 1;
  for (let i = 0; i < out.length; i++) if (out[i] === 0) size++;
  // Newest last, so that what moves are the few after it: moved by the engine, since this runs while a catalogue opens.
  const recent = new Int32Array(size);
  recent[0] = -1;
  let end = 1;
  let newest = -1;
  for (let i = 0; i < out.length; i++) {
    const back = out[i] as number;
    if (back === 0) {
      newest = end - 1;
      recent[end++] = newest;
    } else if (back > 1) {
      const k = end - back;
      newest = recent[k] as number;
      recent.copyWithin(k, k + 1, end);
      recent[end - 1] = newest;
    }
    out[i] = newest;
  }
  return out;
}
/** Each value once and the places of all. Undefined is none. */
export function packCoded<T>(values: readonly (T | undefined)[]): { readonly of: T[]; readonly at: string } {
  const seen = new Map<string, number>();
  const of: T[] = [];
  const at = values.map((value) => {
    if (value === undefined) return -1;
    const key = JSON.stringify(value);
    let place = seen.get(key);
    if (place === undefined) {
      place = of.push(value) - 1;
      seen.set(key, place);
    }
    return place;
  });
  return { of, at: packPlaces(at) };
}
const placed = new WeakMap<{ readonly at: string }, Int32Array>();
/** The places of a coded column, unpacked once; -1 is none. */
export function placesOf(column: { readonly at: string }): Int32Array {
  let places = placed.get(column);
  if (!places) placed.set(column, (places = unpackPlaces(column.at)));
  return places;
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
