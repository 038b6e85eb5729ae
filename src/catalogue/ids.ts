import type { Coded, Compiled } from "./packed.js";

/** "cod" or "chard.stem" of each ingredient: the list of names has every key once. */
export const keysOf = (compiled: Compiled): string[] =>
  (compiled.columns["key"] as readonly number[]).map((k) => compiled.names.of[k] ?? "");
/** Ingredient ids in order: the food and part from one column, the state from another. */
export function idsOf(compiled: Compiled): string[] {
  const keys = keysOf(compiled);
  const { of, at } = compiled.columns["state"] as Coded<readonly string[]>;
  return keys.map((key, i) => `${key}/${of[at[i] ?? -1]?.join("-") ?? ""}`);
}
