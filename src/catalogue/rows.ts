import type { AllergenId, IngredientId, RoleId, SlotId, SourceRef } from "../types.js";
import type { NameReader } from "./compiled.js";
import {
  keyPlaces,
  measuresOf,
  recordsOf,
  unpackMeasure,
  valuesOf,
  type Coded,
  type Commons,
  type Compiled,
  type FlatIngredient,
  type PackedBecomes,
  type PackedReady,
} from "./compiled.js";
import type { StoredMeasure } from "./measure-columns.js";
import { placesOf } from "./numbers.js";
import type { Ingredient } from "./store.js";

/** Rows share their lists (the columns keep each once), so what is made of a list is made once too. */
function once<K extends object, V>(make: (key: K) => V): (key: K) => V {
  const made = new WeakMap<K, V>();
  return (key) => {
    let value = made.get(key);
    if (value === undefined) {
      value = make(key);
      made.set(key, value);
    }
    return value;
  };
}
const setOf = once((list: readonly string[]): ReadonlySet<string> => new Set(list));
const rolesOf = once((roles: Readonly<Record<string, number>>): Ingredient["roles"] =>
  Object.entries(roles)
    .map(([role, weight]) => ({ role: role as RoleId, weight }))
    .sort((a, b) => b.weight - a.weight || (a.role < b.role ? -1 : 1)),
);
const minutesOf = once((minutes: FlatIngredient["minutes"]): Ingredient["minutes"] =>
  Object.fromEntries(Object.entries(minutes).map(([technique, [value]]) => [technique, value])),
);
const refsOf = once((_refs: Commons["refs"]): Map<number, SourceRef> => new Map());
export const sourceRef = (commons: Commons, place: number): SourceRef => {
  const made = refsOf(commons.refs);
  let ref = made.get(place);
  if (ref === undefined) {
    ref = readRef(commons, place);
    made.set(place, ref);
  }
  return ref;
};
const readRef = (commons: Commons, place: number): SourceRef => {
  const [key, at, grade] = commons.refs[place] ?? ["judgement"];
  const where = [grade === "calculated" ? `calculated from ${at ?? ""}` : at, grade === "memory" ? "from memory" : ""]
    .filter((x) => x !== undefined && x !== "")
    .join("; ");
  return where === "" ? { key } : { key, at: where };
};

type CookedBy = Exclude<Ingredient["cookedBy"], undefined>;
const NO_YIELDS: CookedBy = Object.freeze({});
const yieldsOf = once((row: Exclude<FlatIngredient["cookedBy"], undefined>) =>
  once((commons: Commons): CookedBy =>
    Object.fromEntries(
      Object.entries(row).map(([technique, [value, source]]) => [
        technique,
        { yield: value, source: sourceRef(commons, source) },
      ]),
    ),
  ),
);

type Column = (i: number) => unknown;
/** Reads one column at a row, whichever way it is packed. */
function reader(compiled: Compiled, field: string): Column {
  const column = compiled.columns[field];
  if (column === undefined) return () => undefined;
  if (Array.isArray(column)) return (i) => (column as unknown[])[i] ?? undefined;
  const at = placesOf(column as Coded<unknown>);
  const of = valuesOf(compiled, field);
  return (i) => of[at[i] as number];
}

/** What every row of one catalogue reads from. */
class Columns {
  readonly commons: Commons;
  readonly kinds: ReadonlyMap<string, readonly string[]>;
  private readonly places: Int32Array;
  private readonly readers = new Map<string, Column>();
  constructor(
    private readonly compiled: Compiled,
    readonly names: NameReader,
  ) {
    this.commons = compiled.commons;
    this.kinds = kindLines(compiled.commons);
    this.places = keyPlaces(compiled);
  }
  key(i: number): string {
    return this.compiled.names.of[this.places[i] as number] ?? "";
  }
  private listed: readonly (readonly StoredMeasure[])[] | undefined;
  private records: readonly (readonly number[])[] | undefined;
  measures(i: number): readonly StoredMeasure[] {
    return (this.listed ??= measuresOf(this.compiled))[i] ?? [];
  }
  recordsAt(i: number): readonly number[] {
    return (this.records ??= recordsOf(this.compiled))[i] ?? [];
  }
  read(field: string, i: number): unknown {
    let column = this.readers.get(field);
    if (!column) {
      column = reader(this.compiled, field);
      this.readers.set(field, column);
    }
    return column(i);
  }
}

/**
 * One ingredient over the columns. What a query over the whole catalogue reads is a plain field; names, measures and the rest are made
 * when first asked for, since a query looks at a few of them and opening should cost next to nothing.
 */
class Row implements Ingredient {
  readonly id: IngredientId;
  readonly food: string;
  readonly state: readonly string[];
  readonly isDefault: boolean;
  readonly kind: string;
  readonly roles: Ingredient["roles"];
  readonly can: ReadonlySet<string>;
  readonly cannot: ReadonlySet<string>;
  readonly origin: ReadonlySet<string>;
  readonly tags: ReadonlySet<string>;
  declare readonly part?: string;
  declare readonly slot?: SlotId;
  declare readonly usual?: string;
  declare readonly cooked?: number;
  declare readonly colour?: string;
  declare readonly starchKind?: string;
  declare readonly acidKind?: string;
  declare readonly pungencyKind?: string;
  #measures: Ingredient["measures"] | undefined;
  #becomes: Ingredient["becomes"] | undefined;
  #ready: Ingredient["ready"] | null | undefined;
  #names: { name: Ingredient["name"]; names: Ingredient["names"] } | undefined;
  readonly #columns: Columns;

  constructor(
    columns: Columns,
    readonly index: number,
  ) {
    this.#columns = columns;
    const key = columns.key(index);
    this.state = columns.read("state", index) as string[];
    this.id = `${key}/${this.state.join("-")}`;
    const dot = key.indexOf(".");
    this.food = dot < 0 ? key : key.slice(0, dot);
    if (dot >= 0) this.part = key.slice(dot + 1);
    this.isDefault = columns.read("isDefault", index) === true;
    this.kind = columns.commons.kinds[columns.read("kind", index) as number]?.[0] ?? "";
    this.roles = rolesOf(columns.read("roles", index) as Record<string, number>);
    this.can = setOf(columns.read("can", index) as string[]);
    this.cannot = setOf(columns.read("cannot", index) as string[]);
    this.origin = setOf(columns.read("origin", index) as string[]);
    this.tags = setOf(columns.read("tags", index) as string[]);
    const set = (field: "slot" | "usual" | "colour" | "starchKind" | "acidKind" | "pungencyKind"): void => {
      const value = columns.read(field, index);
      if (value !== undefined) (this as Record<string, unknown>)[field] = value;
    };
    set("slot");
    set("usual");
    set("colour");
    set("starchKind");
    set("acidKind");
    set("pungencyKind");
    const cooked = columns.read("cooked", index) as readonly [number] | undefined;
    if (cooked) this.cooked = cooked[0];
  }
  get kinds(): readonly string[] {
    return this.#columns.kinds.get(this.kind) ?? [this.kind];
  }
  get texture(): Ingredient["texture"] {
    return this.#columns.read("texture", this.index) as Ingredient["texture"];
  }
  get flavour(): Ingredient["flavour"] {
    return this.#columns.read("flavour", this.index) as Ingredient["flavour"];
  }
  get aroma(): Ingredient["aroma"] {
    return this.#columns.read("aroma", this.index) as Ingredient["aroma"];
  }
  get dominant(): readonly string[] {
    return this.#columns.read("dominant", this.index) as string[];
  }
  get contains(): readonly AllergenId[] {
    return this.#columns.read("contains", this.index) as AllergenId[];
  }
  get mayContain(): readonly AllergenId[] {
    return this.#columns.read("may", this.index) as AllergenId[];
  }
  get unknownAllergens(): readonly AllergenId[] {
    return this.#columns.read("unknown", this.index) as AllergenId[];
  }
  get edible(): number {
    return this.#columns.read("edible", this.index) as number;
  }
  get minutes(): Ingredient["minutes"] {
    return minutesOf(this.#columns.read("minutes", this.index) as FlatIngredient["minutes"]);
  }
  get cookedBy(): CookedBy {
    const row = this.#columns.read("cookedBy", this.index) as FlatIngredient["cookedBy"];
    return row === undefined ? NO_YIELDS : yieldsOf(row)(this.#columns.commons);
  }
  get cost(): number {
    return this.#columns.read("cost", this.index) as number;
  }
  get athand(): number {
    return this.#columns.read("athand", this.index) as number;
  }
  get traditions(): readonly string[] {
    return this.#columns.read("traditions", this.index) as string[];
  }
  private named(): { name: Ingredient["name"]; names: Ingredient["names"] } {
    if (!this.#names) {
      const { name, names } = this.#columns.names.row(this.index);
      this.#names = { name: { us: name[0], gb: name[1] }, names };
    }
    return this.#names;
  }
  get name(): Ingredient["name"] {
    return this.named().name;
  }
  get names(): Ingredient["names"] {
    return this.named().names;
  }
  get measures(): Ingredient["measures"] {
    if (this.#measures === undefined) {
      const { commons } = this.#columns;
      const records = this.#columns.recordsAt(this.index);
      this.#measures = this.#columns.measures(this.index).map((m) => {
        const [unit, label, grams, source] = unpackMeasure(m, records);
        return { unit, label, grams, source: sourceRef(commons, source) };
      });
    }
    return this.#measures;
  }
  get becomes(): Ingredient["becomes"] {
    const { commons } = this.#columns;
    return (this.#becomes ??= (this.#columns.read("becomes", this.index) as PackedBecomes[]).map((b) => ({
      to: b.to as IngredientId,
      by: b.by,
      yield: b.yield,
      ...(b.minutes ? { active: b.minutes.active, waiting: b.minutes.waiting } : {}),
      source: sourceRef(commons, b.source),
    })));
  }
  get ready(): Exclude<Ingredient["ready"], undefined> {
    if (this.#ready === undefined) {
      const packed = this.#columns.read("ready", this.index) as PackedReady | undefined;
      this.#ready = packed
        ? {
            by: packed.by,
            yield: packed.yield,
            ...(packed.salt === undefined ? {} : { salt: packed.salt }),
            source: sourceRef(this.#columns.commons, packed.source),
          }
        : null;
    }
    // Absent is undefined to every reader; the declared type only says what it is when it is there.
    return (this.#ready ?? undefined) as Exclude<Ingredient["ready"], undefined>;
  }
}

/** Every ingredient of the catalogue, kin beside kin; the order is the index and says nothing else. */
export function ingredientsOf(compiled: Compiled, names: NameReader): readonly Ingredient[] {
  const columns = new Columns(compiled, names);
  return Array.from({ length: compiled.size }, (_, i) => new Row(columns, i));
}

function kindLines(commons: Commons): ReadonlyMap<string, readonly string[]> {
  const parent = new Map(commons.kinds);
  const lines = new Map<string, readonly string[]>();
  for (const [kind] of commons.kinds) {
    const line: string[] = [];
    for (let k: string | undefined = kind; k !== undefined && k !== "" && !line.includes(k); k = parent.get(k))
      line.push(k);
    lines.set(kind, line);
  }
  return lines;
}
