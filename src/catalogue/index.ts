export { openCatalogue, storeOf } from "./open.js";
export type { Store, Ingredient, Figure, MeasureRow, ReadyRow, BecomesRow, Procedure, SwapEdge } from "./store.js";
