import { STANDING_NOTICE } from "../safety/index.js";
import type { SwapNotes } from "../types.js";
import { clean } from "./escape.js";
import { sayOf, scaledSaid } from "./words.js";

type Json = Record<string, unknown>;
const record = (v: unknown): v is Json => typeof v === "object" && v !== null && !Array.isArray(v);

/** The `@type` of a recipe node as it writes it ("Recipe", "schema:Recipe", "https://schema.org/Recipe"), if it is one. */
function recipeType(node: Json): string | undefined {
  const type = Object.hasOwn(node, "@type") ? node["@type"] : undefined;
  const types = Array.isArray(type) ? type : [type];
  return types.find(
    (t): t is string =>
      typeof t === "string" && ["Recipe", "schema:Recipe"].includes(t.replace(/^https?:\/\/schema\.org\//, "")),
  );
}

/** Deeper than this a document is kept by reference and not copied: what is that deep is no recipe. */
const DEEPEST = 60;
/** A frozen copy of JSON data with every own field, `__proto__` as well; the caller's object is left as it is. */
function copy(value: unknown, made = new Map<object, unknown>(), depth = 0): unknown {
  if (typeof value !== "object" || value === null || depth > DEEPEST) return value;
  const before = made.get(value);
  if (before !== undefined) return before;
  if (Array.isArray(value)) {
    const out: unknown[] = [];
    made.set(value, out);
    for (const item of value) out.push(copy(item, made, depth + 1));
    return Object.freeze(out);
  }
  const out: Json = {};
  made.set(value, out);
  for (const key of Object.keys(value)) put(out, key, copy((value as Json)[key], made, depth + 1));
  return Object.freeze(out);
}
/** Sets a field as data, whatever its name. */
const put = (target: Json, key: string, value: unknown): void =>
  void Object.defineProperty(target, key, { value, enumerable: true, configurable: true, writable: true });

/** The notes as a part of the recipe: one CreativeWork that holds one for each line. */
function partOf(notes: SwapNotes, prefix: string): Json {
  const locale = notes.locale === "en-GB" ? "en-GB" : "en-US";
  const work = (fields: Json): Json => ({ "@type": `${prefix}CreativeWork`, ...named(prefix, fields) });
  return work({
    name: "Substitutions",
    inLanguage: locale,
    text: STANDING_NOTICE,
    hasPart: notes.notes.map((note) => {
      const scaled = scaledSaid(note, notes.serves);
      const text = note.swaps.map((swap) => {
        const said = sayOf(note, swap, locale);
        const allergens = said.allergens === "" ? "" : ` Allergens: ${said.allergens}`;
        return clean(
          `${said.use}. ${said.how}${allergens}${said.cautions.map((x) => ` ${x.label}: ${x.text}`).join("")}`,
        );
      });
      return work({
        name: `Instead of ${clean(note.line)}${scaled === "" ? "" : ` (${clean(scaled)})`}`,
        inLanguage: locale,
        text: text.join("\n"),
      });
    }),
  });
}
const named = (prefix: string, fields: Json): Json =>
  Object.fromEntries(Object.entries(fields).map(([key, value]) => [`${prefix}${key}`, value]));

/** A node with the notes after whatever parts it had. */
function withNotes(node: Json, type: string, notes: SwapNotes): Json {
  const prefix = type.slice(0, -"Recipe".length);
  const key = `${prefix}hasPart`;
  const out: Json = {};
  for (const k of Object.keys(node)) put(out, k, node[k]);
  const had = Object.hasOwn(node, key) ? node[key] : undefined;
  const part = partOf(notes, prefix);
  out[key] = had === undefined || had === null ? part : [...(Array.isArray(had) ? (had as unknown[]) : [had]), part];
  return out;
}

/** The document the recipe came in, as data: an object, a list of nodes, or JSON text. */
function documentOf(source: unknown): Json | undefined {
  let data = source;
  if (typeof source === "string") {
    const start = source.trimStart().charAt(0);
    if (start !== "{" && start !== "[") return undefined;
    try {
      data = JSON.parse(source) as unknown;
    } catch {
      return undefined;
    }
  }
  if (Array.isArray(data)) return { "@context": "https://schema.org", "@graph": data };
  return record(data) ? data : undefined;
}

/**
 * The recipe as schema.org JSON-LD with the notes in `hasPart`.
 *
 * Why `hasPart`: any CreativeWork has it, and notes printed under a recipe are a part of what is published. `comment` would say that a
 * reader wrote them (and put `commentCount` wrong), `text`, `description` and `recipeInstructions` belong to the recipe itself, and
 * `additionalProperty` is not for creative works. Every field that was given is kept as it was; nothing else is added, so nothing is
 * claimed that the recipe did not say.
 */
export function renderJsonLd(notes: SwapNotes): Readonly<Json> {
  const document = documentOf(notes.source);
  const added = notes.notes.length > 0;
  if (document) {
    const type = recipeType(document);
    if (type !== undefined) return copy(added ? withNotes(document, type, notes) : document) as Json;
    const graph = document["@graph"];
    if (Array.isArray(graph)) {
      const at = graph.findIndex((node) => record(node) && recipeType(node) !== undefined);
      if (at >= 0) {
        const node = graph[at] as Json;
        const nodes = (graph as unknown[]).map((n, i) =>
          i === at && added ? withNotes(node, recipeType(node) as string, notes) : n,
        );
        return copy({ ...document, "@graph": nodes }) as Json;
      }
    }
  }
  return copy({
    "@context": "https://schema.org",
    "@type": "Recipe",
    name: clean(notes.recipe),
    ...(added ? { hasPart: partOf(notes, "") } : {}),
  }) as Json;
}
