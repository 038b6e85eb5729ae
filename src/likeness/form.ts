import type { Ingredient, Store } from "../catalogue/index.js";
import { dose } from "../dose/index.js";

/** What an ingredient is bought for, as a direction: how far apart two jobs lists point, not how long they are. Symmetric, 0 to 1. */
export function useLikeness(a: Ingredient, b: Ingredient): number {
  let both = 0;
  for (const { role, weight } of a.roles) both += weight * (b.roles.find((r) => r.role === role)?.weight ?? 0);
  return both === 0 ? 0 : both / Math.sqrt(length2(a) * length2(b));
}
const length2 = (i: Ingredient): number => i.roles.reduce((sum, r) => sum + r.weight * r.weight, 0);

/** Four things a cook sees and feels of it before it is cooked, each as a number that stands for the same in all. */
interface Forms {
  readonly part: Int32Array;
  readonly heat: Int32Array;
  readonly pours: Uint8Array;
  readonly unit: Int32Array;
}
const made = new WeakMap<Store, Forms>();

/** Half water and more, or all fat: it is poured or yields, where the dry is strewn and the firm is cut. */
const WET = 0.5;
const OIL = 0.9;

function formsOf(store: Store): Forms {
  let forms = made.get(store);
  if (forms !== undefined) return forms;
  const heats = store.terms["heat"] ?? [];
  const numbers = new Map<string, number>();
  const numbered = (word: string): number => {
    let n = numbers.get(word);
    if (n === undefined) numbers.set(word, (n = numbers.size));
    return n;
  };
  const n = store.size;
  forms = { part: new Int32Array(n), heat: new Int32Array(n), pours: new Uint8Array(n), unit: new Int32Array(n) };
  for (const i of store.ingredients) {
    forms.part[i.index] = numbered(i.part ?? "");
    forms.heat[i.index] = numbered(i.state.filter((s) => heats.includes(s)).join());
    // Not measured compares as false.
    forms.pours[i.index] = dose(store, i, "water") > WET || dose(store, i, "fat") > OIL ? 1 : 0;
    forms.unit[i.index] = numbered(unitOf(i.usual));
  }
  made.set(store, forms);
  return forms;
}
/** "1 tbsp grated" goes by the tbsp. */
const unitOf = (usual: string | undefined): string =>
  usual?.split(" ").find((w) => w !== "" && !/^[\d./]/.test(w)) ?? "";

/** How alike two come to the kitchen: the same part, as raw or as cooked, both poured or neither, measured alike. Symmetric, 0 to 1. */
export function formLikeness(store: Store, a: Ingredient, b: Ingredient): number {
  const { part, heat, pours, unit } = formsOf(store);
  const same = (row: ArrayLike<number>): number => (row[a.index] === row[b.index] ? 1 : 0);
  return (same(part) + same(heat) + same(pours) + same(unit)) / 4;
}
