import { fold, packCoded, packShort, placesOf, unfold, unpackShort } from "./numbers.js";
import type { Compiled, FlatIngredient, MeasureColumns, PackedMeasure, RecordColumns } from "./packed.js";

/** The sources most of an ingredient's figures come from: its composition records. */
export function recordsFor(row: FlatIngredient): number[] {
  const count = new Map<number, number>();
  for (const [, source] of Object.values(row.figures)) count.set(source, (count.get(source) ?? 0) + 1);
  return [...count].filter(([, n]) => n >= 3).map(([source]) => source);
}

/** Sources are numbered as they first come up: a record is mostly a little beyond the last new one, or one of the few that all use. */
export function packRecords(lists: readonly (readonly number[])[]): RecordColumns {
  const { of, at } = packCoded(lists);
  let highest = -1;
  const coded = of.flat().map((place) => {
    if (place <= highest) return 2 * place + 1;
    const step = 2 * (place - highest - 1);
    highest = place;
    return step;
  });
  return { counts: packShort(of.map((list) => list.length)), of: packShort(coded), at };
}
function unpackRecords(packed: RecordColumns): (readonly number[])[] {
  let highest = -1;
  const places = Array.from(unpackShort(packed.of), (n) => (n % 2 === 1 ? (n - 1) / 2 : (highest += n / 2 + 1)));
  let next = 0;
  const of = Array.from(unpackShort(packed.counts), (n) => places.slice(next, (next += n)));
  return Array.from(placesOf(packed), (place) => of[place] ?? []);
}
const records = new WeakMap<Compiled, readonly (readonly number[])[]>();
export function recordsOf(compiled: Compiled): readonly (readonly number[])[] {
  let all = records.get(compiled);
  if (!all) records.set(compiled, (all = unpackRecords(compiled.records)));
  return all;
}

/** A measure as shipped: unit and what was done to it, grams, source coded like that of a figure. */
export type StoredMeasure = readonly [unit: string, grams: number, source: number];
export function unpackMeasure([unit, grams, source]: StoredMeasure, own: readonly number[]): PackedMeasure {
  const space = unit.indexOf(" ");
  return [
    space < 0 ? unit : unit.slice(0, space),
    space < 0 ? "" : unit.slice(space + 1),
    grams,
    source > 0 ? source - 1 : (own[-source] ?? 0),
  ];
}
export function packMeasures(lists: readonly (readonly StoredMeasure[])[]): MeasureColumns {
  const all = lists.flat();
  return {
    units: packCoded(lists.map((list) => list.map(([unit]) => unit))),
    grams: all.map(([, grams]) => grams).join(","),
    sources: packShort(all.map(([, , source]) => fold(source))),
  };
}
const measures = new WeakMap<Compiled, readonly (readonly StoredMeasure[])[]>();
/** The measures of every ingredient, unpacked when first asked for. */
export function measuresOf(compiled: Compiled): readonly (readonly StoredMeasure[])[] {
  let all = measures.get(compiled);
  if (!all) {
    const { units, grams, sources } = compiled.measures;
    const weights = grams.split(",");
    const from = unpackShort(sources);
    let next = 0;
    all = Array.from(placesOf(units), (place) =>
      (units.of[place] ?? []).map((unit): StoredMeasure => {
        const at = next++;
        return [unit, Number(weights[at]), unfold(from[at] as number)];
      }),
    );
    measures.set(compiled, all);
  }
  return all;
}
