import type { Recipe } from "../types.js";
import type { ReadRecipe } from "./types.js";

/** The kitchen a recipe says it belongs to, as a request for swaps takes it; nothing when it says none. */
export function kitchenOf(recipe: Recipe): { readonly cuisine?: string } {
  const cuisine: unknown = (recipe as Partial<ReadRecipe>).dish?.cuisine;
  return typeof cuisine === "string" && cuisine.trim() !== "" ? { cuisine } : {};
}
