import { fail, freeze } from "../errors.js";
import type { Catalogue, Extension, IngredientId, RoleId } from "../types.js";
import { COMPILED } from "./compiled.generated.js";
import { TABLES } from "./tables.generated.js";
import {
  decode,
  decodeSwaps,
  encode,
  type Commons,
  type Compiled,
  type Flat,
  type PackedProcedure,
  type PackedSwap,
} from "./compiled.js";
import { ingredientsOf, sourceRef } from "./rows.js";
import type { SafetyVocabulary } from "./safety-tables.js";
import type { Figure, Procedure, Store, SwapEdge } from "./store.js";

const STORE = Symbol.for("steadfare.store");
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

/** Foods and the tables of rules are two files, since they change apart and weigh apart. */
const join = (compiled: Compiled, tables: Commons["tables"]): Compiled => ({
  ...compiled,
  commons: { ...compiled.commons, tables },
});
let parsed: Compiled | undefined;
const builtIn = (): Compiled =>
  (parsed ??= join(JSON.parse(COMPILED) as Compiled, JSON.parse(TABLES) as Commons["tables"]));

const procedureOf = (p: PackedProcedure, commons: Commons): Procedure => ({
  id: p.id,
  name: p.name,
  skip: p.skip,
  add: p.add,
  active: p.minutes.active,
  waiting: p.minutes.waiting,
  source: sourceRef(commons, p.source),
  ...(p.quick ? { quick: p.quick } : {}),
  ...(p.byProduct ? { byProduct: { ...p.byProduct, role: p.byProduct.role as RoleId } } : {}),
});
const swapOf = (s: PackedSwap, commons: Commons): SwapEdge => ({
  ...(s as unknown as Omit<SwapEdge, "sources">),
  sources: s.sources.map((place) => sourceRef(commons, place)),
});

function makeStore(compiled: Compiled, locale: "en-US" | "en-GB", measures: "us" | "metric"): Store {
  const { commons } = compiled;
  const ingredients = ingredientsOf(compiled);
  const columns: Record<string, Float64Array> = {};
  for (const [name, { v }] of Object.entries(compiled.figures))
    columns[name] = Float64Array.from(v, (x) => x ?? Number.NaN);
  const records = compiled.columns["records"] as readonly (readonly number[])[];
  let flat: Flat | undefined;
  let swaps: readonly SwapEdge[] | undefined;
  return {
    size: ingredients.length,
    locale,
    measures,
    ingredients,
    byId: new Map(ingredients.map((i) => [i.id, i])),
    procedures: new Map(commons.procedures.map((p) => [p.id, procedureOf(p, commons)])),
    get swaps() {
      return (swaps ??= decodeSwaps(compiled).map((s) => swapOf(s, commons)));
    },
    columns,
    figure(i, name): Figure | null {
      const column = compiled.figures[name];
      const value = column?.v[i.index];
      if (!column || value === null || value === undefined) return null;
      const at = column.s[i.index] ?? 0;
      return { value, source: sourceRef(commons, at > 0 ? at - 1 : (records[i.index]?.[-at] ?? -1)) };
    },
    figureUnit: (name) => commons.figures[name]?.unit ?? "",
    tombstones: new Map(Object.entries(commons.tombstones)) as ReadonlyMap<string, IngredientId>,
    nameOf: (i) => (locale === "en-GB" ? i.name.gb : i.name.us),
    terms: commons.vocabulary,
    roles: commons.roles,
    sources: commons.sources,
    tables: commons.tables,
    vocabulary: commons.tables as unknown as SafetyVocabulary,
    flat: () => (flat ??= decode(compiled)),
  };
}

/**
 * Opens the catalogue: a few milliseconds, no disk, no network, no zod, no graphology.
 * @param options.extensions foods, names and swaps of your own, made by `readExtension` in `steadfare/extend`
 * @param options.onConflict "error" (default) refuses an id the catalogue already has; "replace" lets the extension win
 * @param options.locale "en-US" (default) or "en-GB": which English names and spellings are shown and preferred
 * @param options.measures "us" or "metric"; follows the locale when left out
 * @throws `extension conflict`, `unknown term`
 */
export function openCatalogue(
  options: {
    extensions?: readonly Extension[];
    onConflict?: "error" | "replace";
    locale?: "en-US" | "en-GB";
    measures?: "us" | "metric";
  } = {},
): Catalogue {
  const locale = options.locale ?? "en-US";
  const accepted = ["en-US", "en-GB"];
  if (!accepted.includes(locale))
    fail("unknown term", `Unknown locale "${String(locale)}". Use en-US or en-GB.`, {
      kind: "locale",
      input: String(locale),
      nearest: accepted,
      accepted,
    });
  const measures = options.measures ?? (locale === "en-GB" ? "metric" : "us");
  const extensions = options.extensions ?? [];
  const base = builtIn();
  const compiled =
    extensions.length === 0
      ? base
      : encode(
          extensions.reduce<Flat>(
            (rows, extension) => overlay(rows, extension, options.onConflict ?? "error"),
            decode(base),
          ),
          { version: base.version, data: base.data, hash: base.hash },
        );
  const store = makeStore(compiled, locale, measures);
  const catalogue: Catalogue = {
    size: store.size,
    locale,
    measures,
    meta: {
      version: compiled.version,
      data: compiled.data,
      hash: compiled.hash,
      schema: compiled.format,
      extensions: extensions.map((e) => e.name),
    },
  };
  Object.defineProperty(catalogue, STORE, { value: store, enumerable: false });
  freeze(catalogue.meta);
  return Object.freeze(catalogue);
}

/** The inner state of an opened catalogue. */
export function storeOf(catalogue: Catalogue): Store {
  const store = (catalogue as unknown as Record<symbol, Store | undefined>)[STORE];
  if (store === undefined) throw new TypeError("This is not a catalogue: make one with openCatalogue().");
  return store;
}

/** Lays an extension over the rows so far. Sources are re-pointed, since each side numbers its own. */
function overlay(base: Flat, extension: Extension, onConflict: "error" | "replace"): Flat {
  const content = extensionContent(extension);
  if (content === undefined)
    return fail("invalid extension", `"${extension.name}" was not made by readExtension of steadfare/extend.`, {
      issues: [{ path: "", message: "make it with readExtension from steadfare/extend", received: extension.name }],
    });
  const shift = base.commons.refs.length;
  const at = (place: number): number => place + shift;
  const cited = (c: readonly [number, number]): readonly [number, number] => [c[0], at(c[1])];
  const added = content.ingredients.map((row) => ({
    ...row,
    figures: Object.fromEntries(Object.entries(row.figures).map(([k, c]) => [k, cited(c)])),
    measures: row.measures.map(([unit, label, grams, source]) => [unit, label, grams, at(source)] as const),
    becomes: row.becomes.map((b) => ({ ...b, source: at(b.source) })),
    minutes: Object.fromEntries(Object.entries(row.minutes).map(([k, c]) => [k, cited(c)])),
    ...(row.cooked ? { cooked: cited(row.cooked) } : {}),
    ...(row.ready ? { ready: { ...row.ready, source: at(row.ready.source) } } : {}),
  }));
  const old = new Map(base.ingredients.map((row) => [row.id, row]));
  for (const row of added) {
    if (old.has(row.id) && onConflict === "error")
      fail(
        "extension conflict",
        `"${row.id}" is in the catalogue and in the extension "${extension.name}". Rename yours, or open with onConflict: "replace".`,
        { id: row.id, first: "catalogue", second: extension.name },
      );
    old.set(row.id, row);
  }
  const oldSwaps = new Map(base.swaps.map((s) => [s.id, s]));
  for (const swap of content.swaps) {
    if (oldSwaps.has(swap.id) && onConflict === "error")
      fail(
        "extension conflict",
        `The swap "${swap.id}" is in the catalogue and in the extension "${extension.name}".`,
        { id: swap.id, first: "catalogue", second: extension.name },
      );
    oldSwaps.set(swap.id, { ...swap, sources: swap.sources.map(at) });
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
    },
    ingredients: [...old.values()],
    swaps: [...oldSwaps.values()],
  };
}
