import type { Ingredient } from "../catalogue/index.js";
import { carrierOf } from "../dose/index.js";
import { eatenShare } from "../portion/index.js";
import type { Ask } from "./ask.js";

/** What jobs go by that are there to be eaten. Only there is what is bought turned into what is eaten. */
export const PLATE = "served weight";
/** Shares within a tenth of each other are no reason to weigh more or less. */
const ALIKE = 0.9;

type Plate = Pick<Ask, "store" | "roles" | "share">;

export const fillsPlate = ({ store, roles }: Plate): boolean =>
  carrierOf(store, roles[0]?.role ?? "main protein") === PLATE;

/** g eaten per g bought of a stand-in, told beside what is missing. */
export function shareFor(ask: Plate, i: Ingredient): number {
  if (!fillsPlate(ask)) return 1;
  const own = eatenShare(i);
  const ratio = own / ask.share;
  return ratio >= ALIKE && ratio <= 1 / ALIKE ? ask.share : own;
}
