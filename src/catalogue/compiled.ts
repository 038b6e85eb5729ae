import { CODECS } from "./squeeze.js";

/**
 * The shape the package ships: columns, one value an ingredient, parsed once from one JSON string.
 * Words that repeat are kept once in a dictionary and pointed to; figures are numbers or null (not measured).
 */
export const FORMAT = 1;

/** A column whose values repeat: `at[i]` is the place of ingredient i's value in `of`; -1 is none. */
export interface Coded<T> {
  readonly of: readonly T[];
  readonly at: readonly number[];
}
/** A source as [key, where in it, evidence grade]. */
export type PackedSource = readonly [key: string, at?: string, grade?: string];

export interface NameRow {
  readonly tag: string;
  readonly text: string;
  readonly of: "food" | "part" | "state";
}
export type PackedMeasure = readonly [unit: string, label: string, grams: number, source: number];
export interface PackedReady {
  readonly by: readonly string[];
  readonly yield: number;
  readonly salt?: number;
  readonly source: number;
}
export interface PackedBecomes {
  readonly to: string;
  readonly by: string;
  readonly yield: number;
  readonly minutes?: { readonly active: number; readonly waiting: number };
  readonly source: number;
}

/** One ingredient before it is turned into columns: what kind, food and state say together. */
export interface FlatIngredient {
  readonly id: string;
  readonly food: string;
  readonly part?: string;
  readonly state: readonly string[];
  readonly isDefault: boolean;
  readonly name: readonly [us: string, gb: string];
  readonly names: readonly NameRow[];
  readonly kind: string;
  readonly roles: Readonly<Record<string, number>>;
  readonly slot?: string;
  readonly can: readonly string[];
  readonly cannot: readonly string[];
  readonly texture: Readonly<Record<string, Readonly<Record<string, number>>>>;
  readonly flavour: Readonly<Record<string, number>>;
  readonly aroma: Readonly<Record<string, number>>;
  readonly dominant: readonly string[];
  readonly origin: readonly string[];
  readonly tags: readonly string[];
  readonly contains: readonly string[];
  readonly may: readonly string[];
  readonly unknown: readonly string[];
  readonly figures: Readonly<Record<string, readonly [value: number, source: number]>>;
  readonly measures: readonly PackedMeasure[];
  readonly usual?: string;
  readonly edible: number;
  readonly cooked?: readonly [value: number, source: number];
  readonly ready?: PackedReady;
  readonly becomes: readonly PackedBecomes[];
  readonly minutes: Readonly<Record<string, readonly [value: number, source: number]>>;
  readonly cost: number;
  readonly colour?: string;
  readonly starchKind?: string;
  readonly acidKind?: string;
  readonly pungencyKind?: string;
  readonly traditions: readonly string[];
}

export interface PackedProcedure {
  readonly id: string;
  readonly name: string;
  readonly skip: string;
  readonly add: string;
  readonly minutes: { readonly active: number; readonly waiting: number };
  readonly source: number;
  readonly quick?: { readonly text: string; readonly active: number; readonly waiting: number };
  readonly byProduct?: {
    readonly name: string;
    readonly replaceWith: string;
    readonly gramsPerGram: number;
    readonly role: string;
  };
  readonly safety?: string;
}
export interface PackedSwap {
  readonly id: string;
  readonly replaces: { readonly id: string; readonly amount?: string };
  readonly uses: readonly { readonly id: string; readonly amount?: string; readonly ratio?: number }[];
  readonly role?: string;
  readonly context?: string;
  readonly techniques?: readonly string[];
  readonly tradition?: string;
  readonly change?: string;
  readonly sources: readonly number[];
}

/** What is the same for all ingredients. */
export interface Commons {
  readonly roles: Readonly<Record<string, { readonly carrier: string; readonly text: string }>>;
  readonly vocabulary: Readonly<Record<string, readonly string[]>>;
  readonly figures: Readonly<Record<string, { readonly unit: string }>>;
  readonly tags: Readonly<Record<string, string>>;
  readonly sources: Readonly<
    Record<string, { readonly title: string; readonly publisher?: string; readonly year?: number | string }>
  >;
  readonly refs: readonly PackedSource[];
  readonly kinds: readonly (readonly [kind: string, parent: string])[];
  readonly procedures: readonly PackedProcedure[];
  readonly tombstones: Readonly<Record<string, string>>;
  readonly tables: Readonly<Record<string, unknown>>;
}
/** The whole catalogue as rows: what the graph is built from and what the columns encode. */
export interface Flat {
  readonly commons: Commons;
  readonly ingredients: readonly FlatIngredient[];
  readonly swaps: readonly PackedSwap[];
}
export interface Compiled {
  readonly format: number;
  readonly version: string;
  readonly data: string;
  readonly hash: string;
  readonly commons: Commons;
  readonly size: number;
  readonly columns: Readonly<Record<string, Coded<unknown> | readonly unknown[]>>;
  /**
   * Names that all states of a food ("cod") or part ("chard.stem") share: the keys, then for each language how many keys on the
   * next name lies (`step`) and one line a key, names set apart by a bar. One language after another packs much smaller than one food
   * after another. Names of one state are a column.
   */
  readonly names: {
    readonly of: readonly string[];
    readonly tags: Readonly<Record<string, { readonly step: readonly number[]; readonly text: string }>>;
  };
  /** v: values; s: the place of each source among `commons.refs`, plus 1; 0, -1, -2 ... point to the ingredient's own records. */
  readonly figures: Readonly<Record<string, { readonly v: readonly (number | null)[]; readonly s: readonly number[] }>>;
  readonly swaps: SwapColumns;
}
/** Swaps by column: ingredients by their place in the catalogue, amounts as text or a ratio (0: none given), the rest coded. */
export interface SwapColumns {
  readonly replaces: readonly number[];
  readonly amount: readonly (string | 0)[];
  readonly uses: readonly (readonly (number | string)[])[];
  readonly rest: Coded<Omit<PackedSwap, "id" | "replaces" | "uses" | "change">>;
  readonly change: readonly (string | 0)[];
}
function encodeSwaps(swaps: readonly PackedSwap[], at: ReadonlyMap<string, number>): SwapColumns {
  const seen = new Map<string, number>();
  const of: Omit<PackedSwap, "id" | "replaces" | "uses" | "change">[] = [];
  const rest = swaps.map(({ id: _id, replaces: _replaces, uses: _uses, change: _change, ...other }) => {
    const key = JSON.stringify(other);
    const place = seen.get(key) ?? of.push(other) - 1;
    seen.set(key, place);
    return place;
  });
  const place = (id: string): number => at.get(id) ?? -1;
  return {
    replaces: swaps.map((s) => place(s.replaces.id)),
    amount: swaps.map((s) => s.replaces.amount ?? 0),
    uses: swaps.map((s) => s.uses.flatMap((u) => [place(u.id), u.amount ?? u.ratio ?? 0])),
    rest: { of, at: rest },
    change: swaps.map((s) => s.change ?? 0),
  };
}
/** The inverse: swaps as rows. */
export function decodeSwaps(compiled: Compiled): PackedSwap[] {
  const { replaces, amount, uses, rest, change } = compiled.swaps;
  const ids = idsOf(compiled);
  const rows = replaces.map((need, i) => {
    const pairs = uses[i] ?? [];
    return {
      replaces: { id: ids[need] ?? "", ...(amount[i] === 0 || amount[i] === undefined ? {} : { amount: amount[i] }) },
      uses: Array.from({ length: pairs.length / 2 }, (_, k) => {
        const given = pairs[2 * k + 1];
        return {
          id: ids[pairs[2 * k] as number] ?? "",
          ...(typeof given === "string"
            ? { amount: given }
            : typeof given === "number" && given > 0
              ? { ratio: given }
              : {}),
        };
      }),
      ...(rest.of[rest.at[i] ?? -1] as Omit<PackedSwap, "id" | "replaces" | "uses" | "change">),
      ...(change[i] === 0 || change[i] === undefined ? {} : { change: change[i] }),
    };
  });
  return nameSwaps(rows);
}
/** A swap is named by what it replaces and uses ("egg/fresh<flaxseed/dried-ground+water/pantry"); a second of the same is "#2". */
export function nameSwaps<T extends Omit<PackedSwap, "id">>(rows: readonly T[]): (T & { id: string })[] {
  const seen = new Map<string, number>();
  return rows.map((row) => {
    const base = `${row.replaces.id}<${row.uses.map((u) => u.id).join("+")}`;
    const n = (seen.get(base) ?? 0) + 1;
    seen.set(base, n);
    return { id: n === 1 ? base : `${base}#${n}`, ...row };
  });
}
/** "cod" or "chard.stem" of each ingredient: the list of names has every key once. */
export const keysOf = (compiled: Compiled): string[] =>
  (compiled.columns["key"] as readonly number[]).map((k) => compiled.names.of[k] ?? "");
/** Ingredient ids in order: the food and part from one column, the state from another. */
export function idsOf(compiled: Compiled): string[] {
  const keys = keysOf(compiled);
  const { of, at } = compiled.columns["state"] as Coded<readonly string[]>;
  return keys.map((key, i) => `${key}/${of[at[i] ?? -1]?.join("-") ?? ""}`);
}

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
  "colour",
  "starchKind",
  "acidKind",
  "pungencyKind",
  "traditions",
  "usual",
  "cooked",
  "edible",
] as const;
const PLAIN = ["isDefault", "becomes"] as const;
type NamesByTag = Readonly<Record<string, readonly string[]>>;

const nameKey = (row: FlatIngredient): string => (row.part === undefined ? row.food : `${row.food}.${row.part}`);
const byTag = (names: readonly NameRow[]): NamesByTag => {
  const tags: Record<string, string[]> = {};
  for (const { tag, text } of names) (tags[tag] ??= []).push(text);
  return tags;
};
/** The name shown unless a record says otherwise: the food's first English name for its default state, the state's own first for others. */
function usualName(row: { isDefault: boolean; names: readonly NameRow[] }): readonly [string, string] | undefined {
  const first = (tag: string): string | undefined =>
    row.names.find((n) => n.tag === tag && (n.of === "state") !== row.isDefault)?.text;
  const us = first("en");
  return us === undefined ? undefined : [us, first("en-GB") ?? us];
}
const sameNames = (a: readonly [string, string], b: readonly [string, string] | undefined): boolean =>
  a[0] === b?.[0] && a[1] === b[1];
function* rowsOf(names: NamesByTag, of: NameRow["of"]): Generator<NameRow> {
  for (const [tag, texts] of Object.entries(names)) for (const text of texts) yield { tag, text, of };
}
/** The sources most of an ingredient's figures come from: its composition records. */
function recordsOf(row: FlatIngredient): number[] {
  const count = new Map<number, number>();
  for (const [, source] of Object.values(row.figures)) count.set(source, (count.get(source) ?? 0) + 1);
  return [...count].filter(([, n]) => n >= 3).map(([source]) => source);
}

/** A measure as shipped: unit and what was done to it, grams, source coded like that of a figure. */
export type StoredMeasure = readonly [unit: string, grams: number, source: number];
export function unpackMeasure([unit, grams, source]: StoredMeasure, records: readonly number[]): PackedMeasure {
  const space = unit.indexOf(" ");
  return [
    space < 0 ? unit : unit.slice(0, space),
    space < 0 ? "" : unit.slice(space + 1),
    grams,
    source > 0 ? source - 1 : (records[-source] ?? 0),
  ];
}

/** Turns rows into columns. Pure; keys of every object keep the order they came in, so equal rows give equal text. */
export function encode(flat: Flat, meta: { version: string; data: string; hash: string }): Compiled {
  const columns: Record<string, Coded<unknown> | unknown[]> = {};
  for (const field of CODED) {
    const seen = new Map<string, number>();
    const of: unknown[] = [];
    const at = flat.ingredients.map((row) => {
      const plain = row[field];
      if (plain === undefined) return -1;
      const value = CODECS[field]?.pack(plain, flat.commons.vocabulary) ?? plain;
      const key = JSON.stringify(value);
      let place = seen.get(key);
      if (place === undefined) {
        place = of.length;
        seen.set(key, place);
        of.push(value);
      }
      return place;
    });
    columns[field] = { of, at };
  }
  for (const field of PLAIN) columns[field] = flat.ingredients.map((row) => row[field] ?? null);
  columns["name"] = flat.ingredients.map((row) => (sameNames(row.name, usualName(row)) ? null : row.name));
  columns["stateNames"] = flat.ingredients.map((row) => byTag(row.names.filter((n) => n.of === "state")));
  const records = flat.ingredients.map(recordsOf);
  columns["measures"] = flat.ingredients.map((row, i) =>
    row.measures.map(([unit, label, grams, source]) => [
      label === "" ? unit : `${unit} ${label}`,
      grams,
      place(source, records[i] ?? []),
    ]),
  );
  columns["records"] = records;
  const names: Record<string, NamesByTag> = {};
  for (const row of flat.ingredients) names[nameKey(row)] ??= byTag(row.names.filter((n) => n.of !== "state"));
  const figures: Record<string, { v: (number | null)[]; s: number[] }> = {};
  for (const name of Object.keys(flat.commons.figures)) {
    const v = flat.ingredients.map((row) => row.figures[name]?.[0] ?? null);
    if (v.some((x) => x !== null))
      figures[name] = { v, s: flat.ingredients.map((row, i) => place(row.figures[name]?.[1], records[i] ?? [])) };
  }
  const of = Object.keys(names);
  const keyAt = new Map(of.map((key, k) => [key, k]));
  columns["key"] = flat.ingredients.map((row) => keyAt.get(nameKey(row)) ?? -1);
  const kindAt = new Map(flat.commons.kinds.map(([kind], k) => [kind, k]));
  columns["kind"] = flat.ingredients.map((row) => kindAt.get(row.kind) ?? -1);
  const tags: Record<string, { step: number[]; text: string }> = {};
  for (const tag of [...new Set(Object.values(names).flatMap((n) => Object.keys(n)))].sort()) {
    const with_ = of.flatMap((key, k) => (names[key]?.[tag] ? [k] : []));
    tags[tag] = {
      step: with_.map((k, n) => k - (with_[n - 1] ?? 0)),
      text: with_.map((k) => names[of[k] ?? ""]?.[tag]?.join("|")).join("\n"),
    };
  }
  return {
    format: FORMAT,
    ...meta,
    commons: flat.commons,
    size: flat.ingredients.length,
    columns,
    names: { of, tags },
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
      const { at } = column as Coded<unknown>;
      const of = valuesOf(compiled, field);
      at.forEach((place, i) => {
        if (place >= 0) (rows[i] as Record<string, unknown>)[field] = of[place];
      });
    }
  }
  const names = nameReader(compiled);
  const ids = idsOf(compiled);
  rows.forEach((row, i) => {
    const {
      stateNames: _stateNames,
      records,
      key: at,
      kind,
      measures,
      ...rest
    } = row as { stateNames?: unknown; records?: number[]; key: number; kind: number; measures: StoredMeasure[] };
    const key = compiled.names.of[at] ?? "";
    const dot = key.indexOf(".");
    const figures: Record<string, readonly [number, number]> = {};
    for (const [figure, { v, s }] of Object.entries(compiled.figures)) {
      const value = v[i];
      const at = s[i] ?? 0;
      if (value !== null && value !== undefined) figures[figure] = [value, at > 0 ? at - 1 : (records?.[-at] ?? 0)];
    }
    rows[i] = {
      ...rest,
      id: ids[i],
      food: dot < 0 ? key : key.slice(0, dot),
      ...(dot < 0 ? {} : { part: key.slice(dot + 1) }),
      kind: compiled.commons.kinds[kind]?.[0] ?? "",
      measures: measures.map((m) => unpackMeasure(m, records ?? [])),
      ...names(i),
      figures,
    };
  });
  return { commons: compiled.commons, ingredients: rows as unknown as FlatIngredient[], swaps: decodeSwaps(compiled) };
}

/** Reads the names of a row: those of its state first, then those its food or part shares. The shared ones are unpacked on first use. */
export function nameReader(
  compiled: Compiled,
): (i: number) => { name: readonly [string, string]; names: readonly NameRow[] } {
  let shared: Map<string, Record<string, string[]>> | undefined;
  const columns = compiled.columns as Readonly<Record<string, readonly unknown[]>>;
  return (i) => {
    shared ??= sharedNames(compiled);
    const key = compiled.names.of[columns["key"]?.[i] as number] ?? "";
    const isPart = key.includes(".");
    const names = [
      ...rowsOf((columns["stateNames"]?.[i] ?? {}) as NamesByTag, "state"),
      ...rowsOf(shared.get(key) ?? {}, isPart ? "part" : "food"),
    ];
    const name = (columns["name"]?.[i] ??
      usualName({ isDefault: columns["isDefault"]?.[i] === true, names }) ?? [key, key]) as readonly [string, string];
    return { name, names };
  };
}
function sharedNames(compiled: Compiled): Map<string, Record<string, string[]>> {
  const shared = new Map<string, Record<string, string[]>>(compiled.names.of.map((key) => [key, {}]));
  for (const [tag, { step, text }] of Object.entries(compiled.names.tags)) {
    const lines = text.split("\n");
    let k = 0;
    step.forEach((d, n) => {
      k += d;
      const names = shared.get(compiled.names.of[k] ?? "");
      if (names) names[tag] = (lines[n] ?? "").split("|");
    });
  }
  return shared;
}
