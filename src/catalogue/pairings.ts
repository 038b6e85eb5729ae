import { decodePairings, type PackedPairings, type PairingRow } from "./pairing-columns.js";
import { PAIRINGS } from "./pairings.generated.js";

let rows: readonly PairingRow[] | undefined;
/** What data/pairings holds, unpacked when first asked for: opening the catalogue does not touch it. */
export const recordedPairings = (): readonly PairingRow[] =>
  (rows ??= decodePairings(JSON.parse(PAIRINGS) as PackedPairings));
