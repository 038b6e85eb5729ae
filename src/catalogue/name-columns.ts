import { keyPlaces } from "./ids.js";
import type { Compiled, FlatIngredient, NameRow } from "./packed.js";

export type NamesByTag = Readonly<Record<string, readonly string[]>>;

export const nameKey = (row: FlatIngredient): string => (row.part === undefined ? row.food : `${row.food}.${row.part}`);
export const byTag = (names: readonly NameRow[]): NamesByTag => {
  const tags: Record<string, string[]> = {};
  for (const { tag, text } of names) (tags[tag] ??= []).push(text);
  return tags;
};
/** The name shown unless a record says otherwise: the food's first English name for its default state, the state's own first for others. */
export function usualName(row: {
  isDefault: boolean;
  names: readonly NameRow[];
}): readonly [string, string] | undefined {
  const first = (tag: string): string | undefined =>
    row.names.find((n) => n.tag === tag && (n.of === "state") !== row.isDefault)?.text;
  const us = first("en");
  return us === undefined ? undefined : [us, first("en-GB") ?? us];
}
export const sameNames = (a: readonly [string, string], b: readonly [string, string] | undefined): boolean =>
  a[0] === b?.[0] && a[1] === b[1];
const BAR = "|";
/** Three foods in four are called what their key says, so that name is left empty. */
const plainKey = (key: string): string => key.replaceAll("-", " ").replaceAll(".", " ");
export const packNames = (tag: string, key: string, names: readonly string[]): string =>
  tag === "en" && names[0] === plainKey(key) ? ["", ...names.slice(1)].join(BAR) : names.join(BAR);
const unpackNames = (key: string, packed: string): string =>
  packed === "" || packed.startsWith(BAR) ? plainKey(key) + packed : packed;
function rowsOf(names: NamesByTag, of: NameRow["of"]): NameRow[] {
  const rows: NameRow[] = [];
  for (const tag of Object.keys(names))
    for (const text of names[tag] as readonly string[]) rows.push({ tag, text, of });
  return rows;
}
const NO_LINES: readonly string[] = [];
const NO_NAMES: NamesByTag = {};

/** The names of every row as the columns hold them, by the row's place. What is shared is unpacked on first use. */
export class NameReader {
  private lines: readonly (string[] | undefined)[] | undefined;
  private readonly columns: Readonly<Record<string, readonly unknown[]>>;
  private readonly places: Int32Array;
  /** The states of one food share one list. */
  private readonly rows = new Map<number, readonly NameRow[]>();
  constructor(private readonly compiled: Compiled) {
    this.columns = compiled.columns as Readonly<Record<string, readonly unknown[]>>;
    this.places = keyPlaces(compiled);
  }
  private key(i: number): string {
    return this.compiled.names.of[this.places[i] as number] ?? "";
  }
  private shared(i: number): readonly string[] {
    return (this.lines ??= linesOf(this.compiled))[this.places[i] as number] ?? NO_LINES;
  }
  /** Calls for each name that all states of the row's food or part share. */
  eachShared(i: number, each: (text: string, tag: string) => void): void {
    const lines = this.shared(i);
    for (let k = 0; k < lines.length; k += 2) {
      const tag = lines[k] as string;
      const line = lines[k + 1] as string;
      if (!line.includes(BAR)) each(line, tag);
      else for (const text of line.split(BAR)) each(text, tag);
    }
  }
  /** Names of the row's own state, by language. */
  ownOf(i: number): NamesByTag {
    return (this.columns["stateNames"]?.[i] ?? NO_NAMES) as NamesByTag;
  }
  /** The names shown where they need not be among those listed; undefined where they are taken from the list. */
  unlisted(i: number): readonly [string, string] | undefined {
    const given = this.columns["name"]?.[i] as readonly [string, string] | null | undefined;
    if (given) return given;
    const listed =
      this.columns["isDefault"]?.[i] === true
        ? this.shared(i).some((tag, k) => k % 2 === 0 && tag === "en")
        : this.ownOf(i)["en"] !== undefined;
    return listed ? undefined : [this.key(i), this.key(i)];
  }
  /** All names of a row, those of its state first, and the two it is shown by. */
  row(i: number): { name: readonly [string, string]; names: readonly NameRow[] } {
    const place = this.places[i] as number;
    const key = this.key(i);
    let shared = this.rows.get(place);
    if (shared === undefined) {
      const rows: NameRow[] = [];
      const of = key.includes(".") ? "part" : "food";
      this.eachShared(i, (text, tag) => rows.push({ tag, text, of }));
      this.rows.set(place, (shared = rows));
    }
    const own = rowsOf(this.ownOf(i), "state");
    const names = own.length === 0 ? shared : [...own, ...shared];
    const isDefault = this.columns["isDefault"]?.[i] === true;
    const name = (this.columns["name"]?.[i] ?? usualName({ isDefault, names }) ?? [key, key]) as readonly [
      string,
      string,
    ];
    return { name, names };
  }
}

/** By the place of the key: a tag and its names, set apart by bars, then the next tag; one language after another, as they are packed. */
function linesOf(compiled: Compiled): (string[] | undefined)[] {
  const { of: keys, tags } = compiled.names;
  const all = new Array<string[] | undefined>(keys.length).fill(undefined);
  for (const tag of Object.keys(tags)) {
    const { step, text } = tags[tag] as { readonly step: readonly number[]; readonly text: string };
    const lines = text.split("\n");
    let k = 0;
    for (let n = 0; n < step.length; n++) {
      k += step[n] as number;
      (all[k] ??= []).push(tag, unpackNames(keys[k] ?? "", lines[n] ?? ""));
    }
  }
  return all;
}
