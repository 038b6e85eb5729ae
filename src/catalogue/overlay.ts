import { fail } from "../errors.js";
import type { Extension } from "../types.js";
import { contradicts, subjectOf } from "./contradict.js";
import { nameKey } from "./name-columns.js";
import type { Flat, FlatIngredient, NameRow, PackedSwap } from "./packed.js";

const CHECKED = Symbol.for("steadfare.extension");

/** The checked content of an extension, put there by `steadfare/extend`. */
export function extensionContent(extension: Extension): Flat | undefined {
  return (extension as unknown as Record<symbol, Flat | undefined>)[CHECKED];
}
/** Marks checked content as an extension. Used by `steadfare/extend` alone. */
export function makeExtension(name: string, content: Flat): Extension {
  const extension = { kind: "steadfare/extension@1" as const, name };
  Object.defineProperty(extension, CHECKED, { value: content, enumerable: false });
  return Object.freeze(extension);
}

type OnConflict = "error" | "replace";
const BUILT_IN = "catalogue";
const sideOf = (name: string): string => (name === BUILT_IN ? "the catalogue" : `the extension "${name}"`);

/** Refuses what two sides both say, naming both. */
function conflict(what: string, id: string, first: string, second: string): never {
  return fail(
    "extension conflict",
    `${what} "${id}" is in ${sideOf(first)} and in the extension "${second}". Rename yours, or open with onConflict: "replace".`,
    { id, first, second },
  );
}

const told = (s: PackedSwap): string =>
  `${s.uses.map((u) => `${u.amount ?? u.ratio ?? "some"} ${u.id}`).join(" + ")} for ${s.replaces.amount ?? "1"} ${s.replaces.id}`;
/** Refuses two swaps by the same parts for the same use that say other amounts, naming both. */
function contradiction(mine: PackedSwap, name: string, theirs: PackedSwap, first: string): never {
  return fail(
    "extension conflict",
    `The extension "${name}" swaps ${told(mine)}; ${sideOf(first)} swaps ${told(theirs)}. Take yours out, or open with onConflict: "replace".`,
    { id: mine.id, first, second: name },
  );
}

/** A row with its sources re-pointed, since each side numbers its own. */
function shifted(row: FlatIngredient, at: (place: number) => number): FlatIngredient {
  const cited = (c: readonly [number, number]): readonly [number, number] => [c[0], at(c[1])];
  return {
    ...row,
    figures: Object.fromEntries(Object.entries(row.figures).map(([k, c]) => [k, cited(c)])),
    measures: row.measures.map(([unit, label, grams, source]) => [unit, label, grams, at(source)] as const),
    becomes: row.becomes.map((b) => ({ ...b, source: at(b.source) })),
    minutes: Object.fromEntries(Object.entries(row.minutes).map(([k, c]) => [k, cited(c)])),
    ...(row.cooked ? { cooked: cited(row.cooked) } : {}),
    ...(row.cookedBy
      ? { cookedBy: Object.fromEntries(Object.entries(row.cookedBy).map(([k, c]) => [k, cited(c)])) }
      : {}),
    ...(row.ready ? { ready: { ...row.ready, source: at(row.ready.source) } } : {}),
  };
}

/** The states of one food share its names: those the catalogue has, then those an extension adds. */
function shareNames(rows: readonly FlatIngredient[], keys: ReadonlySet<string>): FlatIngredient[] {
  const shared = new Map<string, Map<string, NameRow>>();
  for (const row of rows) {
    const key = nameKey(row);
    if (!keys.has(key)) continue;
    const names = shared.get(key) ?? new Map<string, NameRow>();
    for (const n of row.names)
      if (n.of !== "state" && !names.has(`${n.tag}|${n.text}`)) names.set(`${n.tag}|${n.text}`, n);
    shared.set(key, names);
  }
  return rows.map((row) => {
    const names = shared.get(nameKey(row));
    return names ? { ...row, names: [...row.names.filter((n) => n.of === "state"), ...names.values()] } : row;
  });
}

/**
 * Lays extensions over the catalogue's rows, one after another.
 * @throws `extension conflict` when an id, the default of a food or a swap is there already, or a swap says other amounts than one there, and `onConflict` is "error"; `invalid extension`
 */
export function overlay(base: Flat, extensions: readonly Extension[], onConflict: OnConflict): Flat {
  const from = new Map<string, string>();
  return extensions.reduce((rows, extension) => overlayOne(rows, extension, onConflict, from), base);
}

function overlayOne(base: Flat, extension: Extension, onConflict: OnConflict, from: Map<string, string>): Flat {
  const { name } = extension;
  const content = extensionContent(extension);
  if (content === undefined)
    return fail("invalid extension", `"${name}" was not made by readExtension of steadfare/extend.`, {
      issues: [{ path: "", message: "make it with readExtension from steadfare/extend", received: name }],
    });
  const shift = base.commons.refs.length;
  const at = (place: number): number => place + shift;
  const owner = (key: string): string => from.get(key) ?? BUILT_IN;

  const rows = new Map(base.ingredients.map((row) => [row.id, row]));
  const defaults = new Map(base.ingredients.filter((row) => row.isDefault).map((row) => [nameKey(row), row.id]));
  for (const row of content.ingredients) {
    if (rows.has(row.id) && onConflict === "error") conflict("The ingredient", row.id, owner(row.id), name);
    const meant = defaults.get(nameKey(row));
    const before = meant === undefined || meant === row.id ? undefined : rows.get(meant);
    if (row.isDefault && before !== undefined) {
      // A bare name means one state only.
      if (onConflict === "error") conflict("A default state of", nameKey(row), owner(before.id), name);
      rows.set(before.id, { ...before, isDefault: false });
    }
    if (row.isDefault) defaults.set(nameKey(row), row.id);
    rows.set(row.id, shifted(row, at));
    from.set(row.id, name);
  }

  const swaps = new Map(base.swaps.map((s) => [s.id, s]));
  const subjects = new Map<string, PackedSwap[]>();
  if (content.swaps.length > 0)
    for (const s of base.swaps) subjects.set(subjectOf(s), [...(subjects.get(subjectOf(s)) ?? []), s]);
  for (const swap of content.swaps) {
    for (const other of subjects.get(subjectOf(swap)) ?? []) {
      if (!contradicts(swap, other)) continue;
      if (onConflict === "error") contradiction(swap, name, other, owner(other.id));
      swaps.delete(other.id);
    }
    if (swaps.has(swap.id) && onConflict === "error") conflict("The swap", swap.id, owner(swap.id), name);
    swaps.set(swap.id, { ...swap, sources: swap.sources.map(at) } satisfies PackedSwap);
    from.set(swap.id, name);
  }
  const kinds = new Map([...base.commons.kinds, ...content.commons.kinds]);
  return {
    commons: {
      ...base.commons,
      refs: [...base.commons.refs, ...content.commons.refs],
      sources: { ...base.commons.sources, ...content.commons.sources },
      kinds: [...kinds].sort(([a], [b]) => (a < b ? -1 : 1)),
      procedures: [
        ...base.commons.procedures,
        ...content.commons.procedures.map((p) => ({ ...p, source: at(p.source) })),
      ],
      tombstones: { ...base.commons.tombstones, ...content.commons.tombstones },
    },
    ingredients: shareNames([...rows.values()], new Set(content.ingredients.map(nameKey))),
    swaps: [...swaps.values()],
  };
}
