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
/** Three foods in four are called what their key says, so that name is left empty. */
const plainKey = (key: string): string => key.replaceAll("-", " ").replaceAll(".", " ");
export const packNames = (tag: string, key: string, names: readonly string[]): string =>
  tag === "en" && names[0] === plainKey(key) ? ["", ...names.slice(1)].join("|") : names.join("|");
function unpackNames(key: string, packed: string): string[] {
  const names = packed.split("|");
  if (names[0] === "") names[0] = plainKey(key);
  return names;
}
function rowsOf(names: NamesByTag, of: NameRow["of"]): NameRow[] {
  const rows: NameRow[] = [];
  for (const tag of Object.keys(names))
    for (const text of names[tag] as readonly string[]) rows.push({ tag, text, of });
  return rows;
}

/** Reads the names of a row: those of its state first, then those its food or part shares. The shared ones are unpacked on first use. */
export function nameReader(
  compiled: Compiled,
): (i: number) => { name: readonly [string, string]; names: readonly NameRow[] } {
  let shared: Map<string, Record<string, string[]>> | undefined;
  // The states of one food share one list.
  const rows = new Map<string, readonly NameRow[]>();
  const columns = compiled.columns as Readonly<Record<string, readonly unknown[]>>;
  const places = keyPlaces(compiled);
  return (i) => {
    shared ??= sharedNames(compiled);
    const key = compiled.names.of[places[i] as number] ?? "";
    let common = rows.get(key);
    if (common === undefined) {
      common = rowsOf(shared.get(key) ?? {}, key.includes(".") ? "part" : "food");
      rows.set(key, common);
    }
    const own = rowsOf((columns["stateNames"]?.[i] ?? {}) as NamesByTag, "state");
    const names = own.length === 0 ? common : [...own, ...common];
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
      const key = compiled.names.of[k] ?? "";
      const names = shared.get(key);
      if (names) names[tag] = unpackNames(key, lines[n] ?? "");
    });
  }
  return shared;
}
