import { storeOf } from "./catalogue/index.js";
import { buildGraph, type FoodGraph } from "./catalogue/graph/build.js";
import type { Catalogue } from "./types.js";

export type { EdgeAttributes, FoodGraph, NodeAttributes } from "./catalogue/graph/build.js";

/** The catalogue as a typed graphology graph; a fresh copy each call, yours to change. */
export function toGraph(catalogue: Catalogue): FoodGraph {
  return buildGraph(storeOf(catalogue).flat());
}
