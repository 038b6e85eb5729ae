import { fail, freeze } from "../errors.js";
import type { Catalogue, Extension, IngredientId, RoleId } from "../types.js";
import { COMPILED } from "./compiled.generated.js";
import { TABLES } from "./tables.generated.js";
import {
  decode,
  decodeSwaps,
  encode,
  figuresOf,
  NameReader,
  recordsOf,
  sourcesOf,
  type Coded,
  type Commons,
  type Compiled,
  type Flat,
  type PackedProcedure,
  type PackedSwap,
} from "./compiled.js";
import { placesOf } from "./numbers.js";
import { overlay } from "./overlay.js";
import { ingredientsOf, sourceRef } from "./rows.js";
import type { SafetyVocabulary } from "./safety-tables.js";
import type { Figure, Procedure, Store, SwapEdge } from "./store.js";

const STORE = Symbol.for("steadfare.store");

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
  const names = new NameReader(compiled);
  const ingredients = ingredientsOf(compiled, names);
  const columns: Record<string, Float64Array> = {};
  // Unpacked when first asked for: a query looks at a third of them, opening at none.
  for (const name of Object.keys(compiled.figures))
    Object.defineProperty(columns, name, {
      enumerable: true,
      configurable: true,
      get: () => {
        const value = figuresOf(compiled, name);
        Object.defineProperty(columns, name, { enumerable: true, value });
        return value;
      },
    });
  let flat: Flat | undefined;
  let swaps: readonly SwapEdge[] | undefined;
  return {
    size: ingredients.length,
    locale,
    measures,
    ingredients,
    names,
    byId: new Map(ingredients.map((i) => [i.id, i])),
    procedures: new Map(commons.procedures.map((p) => [p.id, procedureOf(p, commons)])),
    get swaps() {
      return (swaps ??= decodeSwaps(compiled).map((s) => swapOf(s, commons)));
    },
    columns,
    codes: (field) => placesOf(compiled.columns[field] as Coded<unknown>),
    figure(i, name): Figure | null {
      if (!Object.hasOwn(compiled.figures, name)) return null;
      const value = figuresOf(compiled, name)[i.index] as number;
      if (Number.isNaN(value)) return null;
      const at = sourcesOf(compiled, name)[i.index] as number;
      return { value, source: sourceRef(commons, at > 0 ? at - 1 : (recordsOf(compiled)[i.index]?.[-at] ?? -1)) };
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
      : encode(overlay(decode(base), extensions, options.onConflict ?? "error"), {
          version: base.version,
          data: base.data,
          hash: base.hash,
        });
  return catalogueOf(compiled, { locale, measures, extensions: extensions.map((e) => e.name) });
}

/** A catalogue over columns however they were come by. Internal: tests open compiled data with it without writing them to a file. */
export function catalogueOf(
  compiled: Compiled,
  options: { locale: "en-US" | "en-GB"; measures: "us" | "metric"; extensions: readonly string[] },
): Catalogue {
  const { locale, measures } = options;
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
      extensions: options.extensions,
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
