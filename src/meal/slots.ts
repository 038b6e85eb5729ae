import type { Ingredient, Store } from "../catalogue/index.js";
import { dose } from "../dose/index.js";
import type { SlotId, SourceRef } from "../types.js";

interface SlotRule {
  readonly portion: number;
  readonly unit: string;
  readonly target: readonly [number, number];
  readonly text: string;
  readonly sources: readonly SourceRef[];
  readonly classes: readonly { readonly kinds: readonly string[]; readonly per: number }[];
}
export type PortionTable = Readonly<Record<SlotId, SlotRule>> & {
  readonly tolerance: number;
  readonly balance: { readonly vegetableToProtein: readonly [number, number]; readonly sources: readonly SourceRef[] };
  readonly sodium: { readonly perMeal: number; readonly sources: readonly SourceRef[] };
};
export const portionTable = (store: Store): PortionTable => store.tables["portions"] as PortionTable;

/** Below this share of its main job an ingredient only seasons the dish. */
const FILLS = 0.5;
const SLOT_ROLES: Readonly<Record<SlotId, readonly string[]>> = {
  starch: ["starch base"],
  protein: ["main protein"],
  vegetable: ["leafy green", "crunchy stem", "bulk vegetable"],
  soup: [],
};
export const fills = (i: Ingredient, slot: SlotId): boolean =>
  i.slot === slot &&
  (SLOT_ROLES[slot].length === 0 || i.roles.some((r) => SLOT_ROLES[slot].includes(r.role) && r.weight >= FILLS));

/** Portion grams (as the slot counts them) that one gram of what is eaten gives, soaked and cooked. */
export function slotYield(store: Store, i: Ingredient, slot: SlotId): number {
  const served = dose(store, i, "served");
  const rule = portionTable(store)[slot];
  const match = rule.classes.find((c) => c.kinds.some((k) => i.kinds.includes(k)));
  return Number.isNaN(served) ? 0 : (served * rule.portion) / (match?.per ?? rule.portion);
}
