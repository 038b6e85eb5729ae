import { packInts, placesOf, unpackInts } from "./numbers.js";
import type { Coded, Compiled } from "./packed.js";

/**
 * The places of keys among the list of names, which has them in the order they first come up: 0 is the next new one, others are how far
 * back it lies. Kin stand together, so most are small.
 */
export function packKeys(places: readonly number[]): string {
  let last = -1;
  return packInts(places.map((k) => (k > last ? ((last = k), 0) : 1 + last - k)));
}
const read = new WeakMap<Compiled, Int32Array>();
/** The place of each ingredient's key in the list of names. */
export function keyPlaces(compiled: Compiled): Int32Array {
  let places = read.get(compiled);
  if (!places) {
    places = unpackInts(compiled.keys);
    let last = -1;
    for (let i = 0; i < places.length; i++) {
      const back = places[i] as number;
      places[i] = back === 0 ? ++last : 1 + last - back;
    }
    read.set(compiled, places);
  }
  return places;
}

/** "cod" or "chard.stem" of each ingredient: the list of names has every key once. */
export const keysOf = (compiled: Compiled): string[] =>
  Array.from(keyPlaces(compiled), (k) => compiled.names.of[k] ?? "");
/** Ingredient ids in order: the food and part from one column, the state from another. */
export function idsOf(compiled: Compiled): string[] {
  const keys = keysOf(compiled);
  const states = compiled.columns["state"] as Coded<readonly string[]>;
  const at = placesOf(states);
  return keys.map((key, i) => `${key}/${states.of[at[i] as number]?.join("-") ?? ""}`);
}
