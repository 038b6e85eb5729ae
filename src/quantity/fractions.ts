// Fractions as kitchens write them. Pure arithmetic on text; knows no unit and no food.

/** Vulgar-fraction characters and their exact quotients. */
export const VULGAR: ReadonlyMap<string, number> = new Map([
  ["¼", 1 / 4],
  ["½", 1 / 2],
  ["¾", 3 / 4],
  ["⅐", 1 / 7],
  ["⅑", 1 / 9],
  ["⅒", 1 / 10],
  ["⅓", 1 / 3],
  ["⅔", 2 / 3],
  ["⅕", 1 / 5],
  ["⅖", 2 / 5],
  ["⅗", 3 / 5],
  ["⅘", 4 / 5],
  ["⅙", 1 / 6],
  ["⅚", 5 / 6],
  ["⅛", 1 / 8],
  ["⅜", 3 / 8],
  ["⅝", 5 / 8],
  ["⅞", 7 / 8],
]);

/** The fractions a printed amount may carry, smallest denominators first so that a tie reads simply. */
const PRINTED: readonly (readonly [value: number, text: string])[] = [
  [1 / 2, "1/2"],
  [1 / 3, "1/3"],
  [2 / 3, "2/3"],
  [1 / 4, "1/4"],
  [3 / 4, "3/4"],
  [1 / 5, "1/5"],
  [2 / 5, "2/5"],
  [3 / 5, "3/5"],
  [4 / 5, "4/5"],
  [1 / 6, "1/6"],
  [5 / 6, "5/6"],
  [1 / 8, "1/8"],
  [3 / 8, "3/8"],
  [5 / 8, "5/8"],
  [7 / 8, "7/8"],
  [1 / 16, "1/16"],
];

const SCALES = [1, 10, 100, 1_000, 10_000, 100_000, 1_000_000] as const;
/** Below this a product is off by far less than {@link CLEAR}. */
const EXACT = 1e9;
/** This far from a half both ways of scaling round alike; nearer, the digits decide. */
const CLEAR = 1e-5;
/** Rounds to `places` decimals, half away from zero, without the last-bit noise of a product (1.005 → 1.01). */
export function roundTo(x: number, places: number): number {
  if (!Number.isFinite(x)) return x;
  if (Math.abs(x) >= 1e15) return x;
  const scale = SCALES[places];
  if (scale !== undefined) {
    const product = Math.abs(x) * scale;
    const whole = Math.floor(product);
    // Whole numbers divided by a power of ten are the nearest double there is, as reading the digits is.
    if (product < EXACT && Math.abs(product - whole - 0.5) > CLEAR) {
      const rounded = product - whole > 0.5 ? whole + 1 : whole;
      return rounded === 0 ? 0 : (x < 0 ? -rounded : rounded) / scale;
    }
  }
  const shifted = Number(`${x}e${places}`);
  // Very small numbers already carry an exponent ("1e-7e2" is not a number): plain arithmetic is exact enough there.
  // Adding 0 makes a negative zero, which JSON does not keep, a plain one.
  if (Number.isNaN(shifted)) return Math.round(x * 10 ** places) / 10 ** places + 0;
  const rounded = Math.sign(x) * Math.round(Math.abs(shifted));
  return rounded === 0 ? 0 : Number(`${rounded}e-${places}`);
}

/** A plain decimal without exponent or trailing zeros: 0.05, 2.5, 250. */
export function decimalText(x: number, places = 2): string {
  const r = roundTo(x, places);
  const text = r.toFixed(places);
  if (!text.includes(".")) return text;
  let end = text.length;
  while (text[end - 1] === "0") end--;
  if (text[end - 1] === ".") end--;
  return text.slice(0, end);
}

/**
 * An amount as a cook writes it: 1.5 → "1 1/2", 1/3 → "1/3", 2 → "2". What is no kitchen fraction
 * (within a thousandth) is printed as a decimal: 1.27 → "1.27".
 */
export function fractionText(x: number): string {
  const whole = Math.floor(x + 1e-6);
  const part = x - whole;
  if (part < 1e-3) return String(whole);
  if (part > 1 - 1e-3) return String(whole + 1);
  const hit = PRINTED.find(([v]) => Math.abs(v - part) < 1e-3);
  if (hit === undefined) return decimalText(x);
  return whole === 0 ? hit[1] : `${whole} ${hit[1]}`;
}

/** The member of `steps` nearest to x; the larger on a tie. `steps` is not empty. */
export function nearestStep(x: number, steps: readonly number[]): number {
  let best = steps[0] ?? x;
  let bestError = Infinity;
  for (const s of steps) {
    const error = Math.abs(s - x);
    if (error <= bestError) {
      best = s;
      bestError = error;
    }
  }
  return best;
}
