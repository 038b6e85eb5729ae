import { readQuantity } from "../quantity/index.js";
import type { PackedSwap } from "./packed.js";

/** Amounts that differ by more than this are two answers, not one answer rounded twice. */
const SAME = 1.15;

/** The ingredient replaced and those it takes, in any order, and the role: what two swaps must share to speak of the same thing. */
export const subjectOf = (s: PackedSwap): string =>
  [s.replaces.id, s.role ?? "", ...s.uses.map((u) => u.id).sort()].join("<");

interface Size {
  readonly dimension: string;
  readonly amount: number;
}
function sizeOf(text: string | undefined): Size | undefined {
  if (text === undefined) return undefined;
  const q = readQuantity(text);
  if (q === undefined) return undefined;
  if (q.unit === undefined) return { dimension: "piece", amount: q.value };
  const { dimension, id, factor } = q.unit;
  return dimension === "count" ? { dimension: id, amount: q.value } : { dimension, amount: q.value * factor };
}

/** How much of one part goes for one of what is replaced, and in what it was measured; undefined when it is not said. */
function shareOf(s: PackedSwap, use: PackedSwap["uses"][number]): Size | undefined {
  if (use.ratio !== undefined) return { dimension: "mass a mass", amount: use.ratio };
  const whole = sizeOf(s.replaces.amount);
  const part = sizeOf(use.amount);
  if (whole === undefined || part === undefined || !(whole.amount > 0)) return undefined;
  return { dimension: `${part.dimension} a ${whole.dimension}`, amount: part.amount / whole.amount };
}

const words = (text: string | undefined): string[] => (text ?? "").split(",").map((w) => w.trim());
/** Two contexts meet when one is for anything or they share a use. */
function meet(a: PackedSwap, b: PackedSwap): boolean {
  if (a.context === undefined || b.context === undefined) return true;
  const mine = new Set(words(a.context));
  return words(b.context).some((w) => mine.has(w));
}

/** Do two swaps of the same subject, for the same use, say different amounts? Amounts measured in other ways are left alone. */
export function contradicts(a: PackedSwap, b: PackedSwap): boolean {
  if (!meet(a, b)) return false;
  return a.uses.some((use) => {
    const other = b.uses.find((u) => u.id === use.id);
    const x = shareOf(a, use);
    const y = other === undefined ? undefined : shareOf(b, other);
    if (x === undefined || y === undefined || x.dimension !== y.dimension) return false;
    return Math.max(x.amount, y.amount) > Math.min(x.amount, y.amount) * SAME;
  });
}
