// Paths between the states of a food: yields, minutes, what is left over; and conversion of amounts.
import { lookupOf } from "../portion/index.js";
import type { Catalogue, Conversion, UnitId } from "../types.js";
import { convertWith } from "./convert.js";

export { convertWith, knownTargets } from "./convert.js";
export { type Edge, edgesFrom, findPath, isHeated, type Node, siblingsOf, type Stage } from "./graph.js";

/**
 * Converts an amount of a food: to another unit, to another state, or to another food it becomes.
 *
 * - `{ unit: "g" }`: the same weight in that unit, by the ingredient's own measures or density. `measure.roundedBy` tells
 *   the grams that rounding to a kitchen's steps costs.
 * - `{ state: "cooked" }`, "beans, cooked", "potato, edible portion", "ready": along what the catalogue knows of trimming,
 *   soaking and cooking; yields multiply, steps are listed in order, what is left over comes as by-products. A cooked or
 *   raw amount can also be traced back to what to start from.
 * - A weight is of the thing as sold, so trimming counts; cups and pieces are of the edible part already.
 * @param amount a food with an amount, read as `parsePortion` reads it; without one the usual measure is assumed
 * @returns grams to 0.1; minutes per step; the sources of the yields and measures used
 * @throws "no conversion" with the known targets; "unknown term" for a unit that is none; what `parsePortion` throws
 */
export function convert(c: Catalogue, amount: string, to: string | { unit: UnitId } | { state: string }): Conversion {
  return convertWith(lookupOf(c), amount, to);
}
