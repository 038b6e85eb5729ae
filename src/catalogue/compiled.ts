import { idsOf, keyPlaces, packKeys } from "./ids.js";
import { byTag, nameKey, NameReader, packNames, sameNames, usualName, type NamesByTag } from "./name-columns.js";
import { figuresOf, sourcesOf } from "./figures.js";
import { measuresOf, packMeasures, packRecords, recordsFor, recordsOf, unpackMeasure } from "./measure-columns.js";
import { packCoded, packFigures, packSparse, placesOf } from "./numbers.js";
import { FORMAT, type Coded, type Compiled, type Flat, type FlatIngredient, type PackedFigure } from "./packed.js";
import { CODECS } from "./squeeze.js";
import { decodeSwaps, encodeSwaps } from "./swap-columns.js";

export * from "./packed.js";
export { idsOf, keyPlaces, keysOf } from "./ids.js";
export { figuresOf, sourcesOf } from "./figures.js";
export { measuresOf, recordsOf, unpackMeasure } from "./measure-columns.js";
export { NameReader } from "./name-columns.js";
export { decodeSwaps, nameSwaps } from "./swap-columns.js";

const CODED = [
  "state",
  "roles",
  "slot",
  "can",
  "cannot",
  "texture",
  "flavour",
  "aroma",
  "dominant",
  "origin",
  "tags",
  "contains",
  "may",
  "unknown",
  "ready",
  "minutes",
  "cost",
  "athand",
  "colour",
  "starchKind",
  "acidKind",
  "pungencyKind",
  "traditions",
  "usual",
  "cooked",
  "cookedBy",
  "edible",
] as const;
const PLAIN = ["isDefault", "becomes"] as const;
/** Turns rows into columns. Pure; keys of every object keep the order they came in, so equal rows give equal text. */
export function encode(flat: Flat, meta: { version: string; data: string; hash: string }): Compiled {
  const columns: Record<string, Coded<unknown> | unknown[]> = {};
  for (const field of CODED) {
    columns[field] = packCoded<unknown>(
      flat.ingredients.map((row) => {
        const plain = row[field];
        return plain === undefined ? undefined : (CODECS[field]?.pack(plain, flat.commons.vocabulary) ?? plain);
      }),
    );
  }
  for (const field of PLAIN) columns[field] = flat.ingredients.map((row) => row[field] ?? null);
  columns["name"] = flat.ingredients.map((row) => (sameNames(row.name, usualName(row)) ? null : row.name));
  columns["stateNames"] = flat.ingredients.map((row) => byTag(row.names.filter((n) => n.of === "state")));
  const records = flat.ingredients.map(recordsFor);
  // A map, since an extension may call a food "constructor".
  const names = new Map<string, NamesByTag>();
  for (const row of flat.ingredients) {
    const key = nameKey(row);
    if (!names.has(key)) names.set(key, byTag(row.names.filter((n) => n.of !== "state")));
  }
  const figures: Record<string, PackedFigure> = {};
  for (const name of Object.keys(flat.commons.figures)) {
    const v = flat.ingredients.map((row) => row.figures[name]?.[0] ?? null);
    if (v.some((x) => x !== null))
      figures[name] = {
        v: packFigures(v),
        s: packSparse(flat.ingredients.map((row, i) => place(row.figures[name]?.[1], records[i] ?? []))),
      };
  }
  const of = [...names.keys()];
  const keyAt = new Map(of.map((key, k) => [key, k]));
  const kindAt = new Map(flat.commons.kinds.map(([kind], k) => [kind, k]));
  columns["kind"] = flat.ingredients.map((row) => kindAt.get(row.kind) ?? -1);
  const tags: Record<string, { step: number[]; text: string }> = {};
  for (const tag of [...new Set([...names.values()].flatMap((n) => Object.keys(n)))].sort()) {
    const with_ = of.flatMap((key, k) => (names.get(key)?.[tag] ? [k] : []));
    tags[tag] = {
      step: with_.map((k, n) => k - (with_[n - 1] ?? 0)),
      text: with_.map((k) => packNames(tag, of[k] ?? "", names.get(of[k] ?? "")?.[tag] ?? [])).join("\n"),
    };
  }
  return {
    format: FORMAT,
    ...meta,
    commons: flat.commons,
    size: flat.ingredients.length,
    columns,
    keys: packKeys(flat.ingredients.map((row) => keyAt.get(nameKey(row)) ?? -1)),
    names: { of, tags },
    records: packRecords(records),
    measures: packMeasures(
      flat.ingredients.map((row, i) =>
        row.measures.map(([unit, label, grams, source]) => [
          label === "" ? unit : `${unit} ${label}`,
          grams,
          place(source, records[i] ?? []),
        ]),
      ),
    ),
    figures,
    swaps: encodeSwaps(flat.swaps, new Map(flat.ingredients.map((row, i) => [row.id, i]))),
  };
}
/** 0 for no figure and for the first own record alike: the value says which. Own records are 0, -1, -2 ...; others 1 + their place. */
function place(source: number | undefined, own: readonly number[]): number {
  if (source === undefined) return 0;
  const k = own.indexOf(source);
  return k >= 0 ? -k : source + 1;
}

/** The dictionary of a coded column, squeezed values unpacked. */
export function valuesOf(compiled: Compiled, field: string): readonly unknown[] {
  const { of } = compiled.columns[field] as Coded<unknown>;
  const codec = CODECS[field];
  return codec ? of.map((text) => codec.unpack(text as string, compiled.commons.vocabulary)) : of;
}

/** The inverse of {@link encode}. */
export function decode(compiled: Compiled): Flat {
  if (compiled.format !== FORMAT)
    throw new Error(`Catalogue data has format ${compiled.format}; this version reads format ${FORMAT}.`);
  const rows: Record<string, unknown>[] = Array.from({ length: compiled.size }, () => ({}));
  for (const [field, column] of Object.entries(compiled.columns)) {
    if (Array.isArray(column)) {
      column.forEach((value: unknown, i) => {
        if (value !== null) (rows[i] as Record<string, unknown>)[field] = value;
      });
    } else {
      const of = valuesOf(compiled, field);
      placesOf(column as Coded<unknown>).forEach((place, i) => {
        if (place >= 0) (rows[i] as Record<string, unknown>)[field] = of[place];
      });
    }
  }
  const names = new NameReader(compiled);
  const ids = idsOf(compiled);
  const keys = keyPlaces(compiled);
  const records = recordsOf(compiled);
  const measures = measuresOf(compiled);
  const measured = Object.keys(compiled.figures).map(
    (name) => [name, figuresOf(compiled, name), sourcesOf(compiled, name)] as const,
  );
  rows.forEach((row, i) => {
    const { stateNames: _stateNames, kind, ...rest } = row as { stateNames?: unknown; kind: number };
    const own = records[i] ?? [];
    const key = compiled.names.of[keys[i] as number] ?? "";
    const dot = key.indexOf(".");
    const figures: Record<string, readonly [number, number]> = {};
    for (const [figure, v, s] of measured) {
      const value = v[i] as number;
      const at = s[i] as number;
      if (!Number.isNaN(value)) figures[figure] = [value, at > 0 ? at - 1 : (own[-at] ?? 0)];
    }
    rows[i] = {
      ...rest,
      id: ids[i],
      food: dot < 0 ? key : key.slice(0, dot),
      ...(dot < 0 ? {} : { part: key.slice(dot + 1) }),
      kind: compiled.commons.kinds[kind]?.[0] ?? "",
      measures: (measures[i] ?? []).map((m) => unpackMeasure(m, own)),
      ...names.row(i),
      figures,
    };
  });
  return { commons: compiled.commons, ingredients: rows as unknown as FlatIngredient[], swaps: decodeSwaps(compiled) };
}
