export { openCatalogue, storeOf } from "./open.js";
export { recordedPairings } from "./pairings.js";
export type { PairingBase, PairingRow } from "./pairing-columns.js";
export type { Store, Ingredient, Figure, MeasureRow, ReadyRow, BecomesRow, Procedure, SwapEdge } from "./store.js";
