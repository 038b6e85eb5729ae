/**
 * How strong a concentration tastes, on the 0 to 9 scale of the data guide: 5 x (c / c5)^n, at most 9.
 * c5 is the concentration (g per 100 g of dish) that tastes "marked"; n is the exponent of Stevens' power law.
 * Exponents for sucrose (1.3) and salt (1.4) from published Stevens tables; the others and all c5 are judgement (docs/method).
 */
const LAW = {
  salt: { c5: 1.2, n: 1.4 },
  sweetness: { c5: 12, n: 1.3 },
  acid: { c5: 0.6, n: 0.9 },
  umami: { c5: 0.6, n: 0.9 },
  pungency: { c5: 2000, n: 0.7 },
  bitter: { c5: 5, n: 1 },
  fat: { c5: 20, n: 0.8 },
  alcohol: { c5: 10, n: 1 },
} as const;
export type Taste = keyof typeof LAW;
export const TASTES = Object.keys(LAW) as readonly Taste[];

/** Differences below this step on the 0 to 9 scale are not noticed in a dish (judgement; about a tenth of "marked"). */
export const NOTICEABLE = 0.5;

/** @param concentration g per 100 g of dish (SHU for pungency) @returns 0 to 9 */
export function perceived(taste: Taste, concentration: number): number {
  const { c5, n } = LAW[taste];
  if (!(concentration > 0)) return 0;
  return Math.min(9, 5 * Math.pow(concentration / c5, n));
}

/**
 * Equivalent umami concentration of a finished dish, g MSG per 100 g: Y = a + 1218 a b, with a the free glutamate and b the
 * nucleotides (IMP 1, GMP 2.3), both in g per 100 g of dish (Yamaguchi's synergy equation). For dishes, never for a concentrate.
 */
export function umami(glutamate: number, nucleotide: number): number {
  return glutamate + 1218 * glutamate * nucleotide;
}
