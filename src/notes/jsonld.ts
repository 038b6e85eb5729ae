import { recipesIn } from "../recipe/index.js";
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
const DEEPEST = 70;
/** A frozen copy of JSON data with every own field, `__proto__` as well; the caller's object is left as it is. */
function copy(value: unknown, at?: { readonly node: object; readonly put: Json }): unknown {
  const made = new Map<object, unknown>();
  const one = (v: unknown, depth: number): unknown => {
    if (typeof v !== "object" || v === null || depth > DEEPEST) return v;
    const before = made.get(v);
    if (before !== undefined) return before;
    if (Array.isArray(v)) {
      const out: unknown[] = [];
      made.set(v, out);
      for (const item of v) out.push(one(item, depth + 1));
      return Object.freeze(out);
    }
    const out: Json = {};
    made.set(v, out);
    for (const key of Object.keys(v)) put(out, key, one((v as Json)[key], depth + 1));
    if (v === at?.node) for (const key of Object.keys(at.put)) put(out, key, one(at.put[key], depth + 1));
    return Object.freeze(out);
  };
  return one(value, 0);
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

/** The field with the notes, after whatever parts the node had. */
function withNotes(node: Json, notes: SwapNotes): Json {
  const prefix = recipeType(node)?.slice(0, -"Recipe".length) ?? "";
  const key = `${prefix}hasPart`;
  const had = Object.hasOwn(node, key) ? node[key] : undefined;
  const part = partOf(notes, prefix);
  return {
    [key]: had === undefined || had === null ? part : [...(Array.isArray(had) ? (had as unknown[]) : [had]), part],
  };
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
    const { recipes } = recipesIn(document);
    const node = recipes[notes.place ?? 0] ?? recipes[0];
    if (node !== undefined) return copy(document, added ? { node, put: withNotes(node, notes) } : undefined) as Json;
  }
  return copy({
    "@context": "https://schema.org",
    "@type": "Recipe",
    name: clean(notes.recipe),
    ...(added ? { hasPart: partOf(notes, "") } : {}),
  }) as Json;
}
