import { fail, freeze } from "../errors.js";
import type { AllergenId, Catalogue, Extension, IngredientId, RoleId, SlotId, SourceRef, Vocabulary } from "../types.js";
import { COMPILED } from "./compiled.generated.js";
import { decode, type Commons, type Compiled, type Flat, type FlatIngredient, type PackedProcedure, type PackedSwap } from "./compiled.js";
import type { DietTable, SafetyVocabulary } from "./safety-tables.js";
import type { Figure, Ingredient, Procedure, Store, SwapEdge } from "./store.js";

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

let parsed: { compiled: Compiled; flat: Flat } | undefined;
function builtIn(): { compiled: Compiled; flat: Flat } {
  if (parsed === undefined) {
    const compiled = JSON.parse(COMPILED) as Compiled;
    parsed = { compiled, flat: decode(compiled) };
  }
  return parsed;
}

/** The words requests may use, as the built-in data has them. */
export function builtInVocabulary(): Vocabulary {
  const { commons } = builtIn().flat;
  const diets = (commons.tables["diets"] as DietTable | undefined)?.diets ?? [];
  const list = <T extends string>(name: string): readonly T[] => (commons.vocabulary[name] ?? []) as readonly T[];
  return {
    role: list("role"),
    technique: list("technique"),
    allergen: list("allergen"),
    diet: diets.map((d) => d.id) as Vocabulary["diet"],
    preservation: list("preservation"),
    heat: list("heat"),
    form: list("form"),
    unit: list("unit"),
  };
}

const sourceRef = (commons: Commons, place: number): SourceRef => {
  const [key, at, grade] = commons.refs[place] ?? ["judgement"];
  const where = [at, grade === "memory" ? "from memory" : undefined].filter((x) => x !== undefined && x !== "").join("; ");
  return where === "" ? { key } : { key, at: where };
};

function ingredientOf(row: FlatIngredient, index: number, commons: Commons, kinds: ReadonlyMap<string, readonly string[]>): Ingredient {
  return {
    index,
    id: row.id as IngredientId,
    food: row.food,
    ...(row.part === undefined ? {} : { part: row.part }),
    state: row.state,
    isDefault: row.isDefault,
    name: { us: row.name[0], gb: row.name[1] },
    names: row.names,
    kind: row.kind,
    kinds: kinds.get(row.kind) ?? [row.kind],
    roles: Object.entries(row.roles)
      .map(([role, weight]) => ({ role: role as RoleId, weight }))
      .sort((a, b) => b.weight - a.weight || (a.role < b.role ? -1 : 1)),
    ...(row.slot === undefined ? {} : { slot: row.slot as SlotId }),
    can: new Set(row.can),
    cannot: new Set(row.cannot),
    texture: row.texture,
    flavour: row.flavour,
    aroma: row.aroma,
    dominant: row.dominant,
    origin: new Set(row.origin),
    tags: new Set(row.tags),
    contains: row.contains as AllergenId[],
    mayContain: row.may as AllergenId[],
    unknownAllergens: row.unknown as AllergenId[],
    measures: row.measures.map(([unit, label, grams, source]) => ({ unit, label, grams, source: sourceRef(commons, source) })),
    ...(row.usual === undefined ? {} : { usual: row.usual }),
    edible: row.edible,
    ...(row.cooked ? { cooked: row.cooked[0] } : {}),
    ...(row.ready
      ? { ready: { by: row.ready.by, yield: row.ready.yield, ...(row.ready.salt === undefined ? {} : { salt: row.ready.salt }), source: sourceRef(commons, row.ready.source) } }
      : {}),
    becomes: row.becomes.map((b) => ({
      to: b.to as IngredientId,
      by: b.by,
      yield: b.yield,
      ...(b.minutes ? { active: b.minutes.active, waiting: b.minutes.waiting } : {}),
      source: sourceRef(commons, b.source),
    })),
    minutes: Object.fromEntries(Object.entries(row.minutes).map(([technique, [value]]) => [technique, value])),
    cost: row.cost,
    ...(row.colour === undefined ? {} : { colour: row.colour }),
    ...(row.starchKind === undefined ? {} : { starchKind: row.starchKind }),
    ...(row.acidKind === undefined ? {} : { acidKind: row.acidKind }),
    ...(row.pungencyKind === undefined ? {} : { pungencyKind: row.pungencyKind }),
    traditions: row.traditions,
  };
}

function kindLines(commons: Commons): ReadonlyMap<string, readonly string[]> {
  const parent = new Map(commons.kinds);
  const lines = new Map<string, readonly string[]>();
  for (const [kind] of commons.kinds) {
    const line: string[] = [];
    for (let k: string | undefined = kind; k !== undefined && k !== "" && !line.includes(k); k = parent.get(k)) line.push(k);
    lines.set(kind, line);
  }
  return lines;
}

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

function makeStore(flat: Flat, locale: "en-US" | "en-GB", measures: "us" | "metric"): Store {
  const { commons } = flat;
  const kinds = kindLines(commons);
  const ingredients = flat.ingredients.map((row, i) => ingredientOf(row, i, commons, kinds));
  const columns: Record<string, Float64Array> = {};
  for (const name of Object.keys(commons.figures)) {
    columns[name] = Float64Array.from(flat.ingredients, (row) => row.figures[name]?.[0] ?? Number.NaN);
  }
  return {
    size: ingredients.length,
    locale,
    measures,
    ingredients,
    byId: new Map(ingredients.map((i) => [i.id, i])),
    procedures: new Map(commons.procedures.map((p) => [p.id, procedureOf(p, commons)])),
    swaps: flat.swaps.map((s) => swapOf(s, commons)),
    columns,
    figure(i, name): Figure | null {
      const figure = flat.ingredients[i.index]?.figures[name];
      return figure === undefined ? null : { value: figure[0], source: sourceRef(commons, figure[1]) };
    },
    figureUnit: (name) => commons.figures[name]?.unit ?? "",
    tombstones: new Map(Object.entries(commons.tombstones)) as ReadonlyMap<string, IngredientId>,
    nameOf: (i) => (locale === "en-GB" ? i.name.gb : i.name.us),
    terms: commons.vocabulary,
    roles: commons.roles,
    sources: commons.sources,
    tables: commons.tables,
    vocabulary: commons.tables as unknown as SafetyVocabulary,
    flat,
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
  options: { extensions?: readonly Extension[]; onConflict?: "error" | "replace"; locale?: "en-US" | "en-GB"; measures?: "us" | "metric" } = {},
): Catalogue {
  const locale = options.locale ?? "en-US";
  const accepted = ["en-US", "en-GB"];
  if (!accepted.includes(locale)) fail("unknown term", `Unknown locale "${String(locale)}". Use en-US or en-GB.`, { kind: "locale", input: String(locale), nearest: accepted, accepted });
  const measures = options.measures ?? (locale === "en-GB" ? "metric" : "us");
  const { compiled, flat } = builtIn();
  const merged = (options.extensions ?? []).reduce<Flat>((base, extension) => overlay(base, extension, options.onConflict ?? "error"), flat);
  const store = makeStore(merged, locale, measures);
  const catalogue: Catalogue = {
    size: store.size,
    locale,
    measures,
    meta: { version: compiled.version, data: compiled.data, hash: compiled.hash, schema: compiled.format, extensions: (options.extensions ?? []).map((e) => e.name) },
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
    return fail("invalid extension", `"${extension.name}" was not made by readExtension of steadfare/extend.`, { issues: [{ path: "", message: "make it with readExtension from steadfare/extend", received: extension.name }] });
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
      fail("extension conflict", `"${row.id}" is in the catalogue and in the extension "${extension.name}". Rename yours, or open with onConflict: "replace".`, { id: row.id, first: "catalogue", second: extension.name });
    old.set(row.id, row);
  }
  const oldSwaps = new Map(base.swaps.map((s) => [s.id, s]));
  for (const swap of content.swaps) {
    if (oldSwaps.has(swap.id) && onConflict === "error")
      fail("extension conflict", `The swap "${swap.id}" is in the catalogue and in the extension "${extension.name}".`, { id: swap.id, first: "catalogue", second: extension.name });
    oldSwaps.set(swap.id, { ...swap, sources: swap.sources.map(at) });
  }
  const byId = <T extends { readonly id: string }>(a: T, b: T): number => (a.id < b.id ? -1 : a.id > b.id ? 1 : 0);
  const kinds = new Map([...base.commons.kinds, ...content.commons.kinds]);
  return {
    commons: {
      ...base.commons,
      refs: [...base.commons.refs, ...content.commons.refs],
      sources: { ...base.commons.sources, ...content.commons.sources },
      kinds: [...kinds].sort(([a], [b]) => (a < b ? -1 : 1)),
      procedures: [...base.commons.procedures, ...content.commons.procedures.map((p) => ({ ...p, source: at(p.source) }))],
    },
    ingredients: [...old.values()].sort(byId),
    swaps: [...oldSwaps.values()].sort(byId),
  };
}
