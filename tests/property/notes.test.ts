import fc from "fast-check";
import { parseDocument } from "htmlparser2";
import { expect, it } from "vitest";
import { openCatalogue } from "../../src/catalogue/index.js";
import { foodFacts } from "../../src/facts/index.js";
import { clean, escapeHtml, escapeMarkdown } from "../../src/notes/escape.js";
import { jsonForPage, renderNotes, swapNotes } from "../../src/notes/index.js";
import { readLine } from "../../src/portion/index.js";
import { readRecipe, readRecipes } from "../../src/recipe/index.js";
import type { AllergenId, Recipe, SwapNotes } from "../../src/types.js";

const c = openCatalogue();
const recipeOf = (lines: readonly string[], steps: readonly string[] = [], name = "x", source?: unknown): Recipe => ({
  name,
  serves: 4,
  lines: lines.map((text) => ({ text, read: readLine(c, text) })),
  steps: steps.map((text) => ({ text })),
  unread: [],
  source,
});
const model = swapNotes(c, recipeOf(["1 cup buttermilk", "2 corn tortillas"]));
const note = model.notes[0] as SwapNotes["notes"][number];
const text = fc.oneof(fc.string({ unit: "binary", maxLength: 80 }), fc.string({ maxLength: 80 }));
const withText = (recipe: string, line: string): SwapNotes => ({ ...model, recipe, notes: [{ ...note, line }] });
const pageText = (html: string): string => {
  const walk = (n: { data?: string; children?: unknown[] }): string =>
    n.children === undefined ? (n.data ?? "") : (n.children as never[]).map(walk).join("");
  return walk(parseDocument(html));
};

it("clean is settled after one pass, one line, and keeps words", () => {
  fc.assert(
    fc.property(text, (t) => {
      const once = clean(t);
      expect(clean(once)).toBe(once);
      expect(once).toBe(once.trim());

      expect(once).not.toMatch(/[\u0000-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069]| {2}/);
      const letters = (s: string): string => s.replace(/[^\p{L}\p{N}]/gu, "");
      expect(letters(once)).toBe(letters(t));
    }),
  );
});

it("HTML and Markdown give the text back", () => {
  fc.assert(
    fc.property(text, (t) => {
      expect(pageText(escapeHtml(t))).toBe(clean(t));
      const md = escapeMarkdown(t);
      expect(md).not.toMatch(/[<>]/);
      expect(
        md.replace(
          /\\([!-/:-@[-`{-~])|&lt;|&gt;|&amp;/g,
          (m, mark: string | undefined) => mark ?? (m === "&lt;" ? "<" : m === "&gt;" ? ">" : "&"),
        ),
      ).toBe(clean(t));
    }),
  );
});

it("rendering never throws and holds the recipe's words whole, whatever they are", () => {
  fc.assert(
    fc.property(text, text, (name, line) => {
      const notes = withText(name, line);
      expect(renderNotes(notes, "text").split("\n")).toContain(`Instead of ${clean(line)}:`);
      expect(pageText(renderNotes(notes, "html"))).toContain(clean(line));
      expect(renderNotes(notes, "markdown")).toContain(escapeMarkdown(line));
      const data = renderNotes(notes, "json-ld");
      expect(data["name"]).toBe(clean(name));
      expect(JSON.parse(jsonForPage(data))).toEqual(data);
    }),
  );
});

it("JSON-LD keeps every field of whatever document it was given", () => {
  fc.assert(
    fc.property(fc.dictionary(fc.string(), fc.jsonValue()), (fields) => {
      const source = { ...fields, "@type": "Recipe" };
      const { hasPart, ...rest } = JSON.parse(JSON.stringify(renderNotes({ ...model, source }, "json-ld"))) as Record<
        string,
        unknown
      >;
      expect(hasPart).toBeDefined();
      const { hasPart: _had, ...given } = JSON.parse(JSON.stringify(source)) as Record<string, unknown>;
      expect(rest).toEqual(given);
    }),
  );
});

const LINES = [
  "2 eggs",
  "1/2 cup butter",
  "1 cup buttermilk",
  "2 cups all-purpose flour",
  "3 tbsp soy sauce",
  "450 g salt cod",
  "1/2 cup walnuts",
  "200 g shrimp",
  "1 cup white wine",
  "2 tbsp tahini",
];
const ALLERGENS: readonly AllergenId[] = [
  "milk",
  "egg",
  "fish",
  "tree nuts",
  "wheat",
  "soy",
  "sesame",
  "sulphites",
  "mustard",
];
it("no swap that is printed is not known to be free of what is avoided, and rendering it never throws", () => {
  fc.assert(
    fc.property(
      fc.subarray(LINES, { minLength: 1, maxLength: 3 }),
      fc.subarray([...ALLERGENS], { minLength: 1, maxLength: 3 }),
      fc.array(fc.oneof(text, fc.constantFrom("Bake.", "Fry the eggs.", "Simmer.", "Chill.")), { maxLength: 3 }),
      (lines, allergens, steps) => {
        const notes = swapNotes(c, recipeOf(lines, steps), { avoid: { allergens } });
        for (const { swaps } of notes.notes)
          for (const { use } of swaps)
            for (const { id } of use) for (const a of allergens) expect(foodFacts(c, id).allergens.free).toContain(a);
        for (const form of ["markdown", "html", "text"] as const)
          expect(typeof renderNotes(notes, form)).toBe("string");
      },
    ),
    { numRuns: 12 },
  );
});

it("recipes of any text give notes, the same each time", () => {
  fc.assert(
    fc.property(fc.array(text, { maxLength: 4 }), fc.array(text, { maxLength: 3 }), (lines, steps) => {
      const once = swapNotes(c, recipeOf(lines, steps));
      expect(JSON.stringify(swapNotes(c, recipeOf(lines, steps)))).toBe(JSON.stringify(once));
      expect(once.notes.every((n) => lines.includes(n.line))).toBe(true);
    }),
    { numRuns: 25 },
  );
});

// Names of the fields: schema.org, Recipe and what it inherits from HowTo, CreativeWork and Thing.
const FIELDS = (
  "about abstract aggregateRating alternateName author citation comment commentCount cookTime cookingMethod copyrightYear dateModified " +
  "datePublished description disambiguatingDescription editor estimatedCost hasPart headline identifier image inLanguage " +
  "interactionStatistic isAccessibleForFree isPartOf isBasedOn keywords license mainEntityOfPage nutrition performTime prepTime publisher " +
  "recipeCategory recipeCuisine recipeYield review sameAs steps suitableForDiet supply thumbnailUrl tool totalTime url video yield @id x-own"
).split(" ");
const value = fc.oneof(
  fc.jsonValue({ maxDepth: 3 }),
  fc.constantFrom("PT30M", "4 servings", "https://example.org/a.jpg", "</script><script>alert(1)</script>"),
);
const anyRecipe = fc
  .record({
    fields: fc.dictionary(fc.constantFrom(...FIELDS), value, { maxKeys: 12 }),
    type: fc.constantFrom<unknown>("Recipe", ["Recipe", "NewsArticle"], "https://schema.org/Recipe", "schema:Recipe"),
    lines: fc.subarray(["1 cup buttermilk", "For the top:", "450 g salt cod", "1 tsp salt", "zork"]),
    steps: fc.constantFrom<unknown>("Boil.", ["Boil.", { "@type": "HowToStep", text: "Serve.", url: "#s" }], null, []),
  })
  .map(({ fields, type, lines, steps }) => ({
    ...fields,
    "@type": type,
    recipeIngredient: lines,
    recipeInstructions: steps,
  }));
type Json = Record<string, unknown>;
const plain = (v: unknown): unknown => JSON.parse(JSON.stringify(v)) as unknown;
/** A recipe without the last part of it, which the notes added; a part alone, a list of one and none (null) are held alike. */
function without(node: Json, added = true): Json {
  const key =
    node["@type"] === "schema:Recipe"
      ? "schema:hasPart"
      : node["@type"] === "https://schema.org/Recipe"
        ? "https://schema.org/hasPart"
        : "hasPart";
  const { [key]: part, ...rest } = node;
  const parts = part === undefined || part === null ? [] : Array.isArray(part) ? (part as unknown[]) : [part];
  const given = added ? parts.slice(0, -1) : parts;
  return given.length === 0 ? rest : { ...rest, [key]: given };
}
const noted = (source: string | object, at = 0): Json => {
  const recipe = readRecipes(c, source)[at];
  if (recipe === undefined) throw new Error("no recipe");
  return plain(
    renderNotes({ ...swapNotes(c, { ...recipe, lines: [] }), ...model, ...originOf(recipe) }, "json-ld"),
  ) as Json;
};
/** The fields of the notes that say where they belong, from the notes of that recipe; the notes themselves are those of one model. */
function originOf(recipe: Recipe): Partial<SwapNotes> {
  const { source, place } = swapNotes(c, { ...recipe, lines: [] });
  return { recipe: recipe.name, source, ...(place === undefined ? {} : { place }) };
}

it("reading JSON-LD and writing it with notes loses no field and changes none, whatever document holds the recipe", () => {
  const page = { "@type": "WebPage", "@id": "#page", name: "Page", breadcrumb: [{ a: 1 }] };
  const shapes: readonly ((r: Json) => { source: string | object; find: (out: Json) => unknown })[] = [
    (r) => ({ source: r, find: (o) => o }),
    (r) => ({ source: JSON.stringify(r), find: (o) => o }),
    (r) => ({
      source: { "@context": "https://schema.org", "@graph": [page, r] },
      find: (o) => (o["@graph"] as Json[])[1],
    }),
    (r) => ({ source: [page, r], find: (o) => (o["@graph"] as Json[])[1] }),
    (r) => ({ source: { ...page, mainEntity: r }, find: (o) => o["mainEntity"] }),
    (r) => ({
      source: `<html><head><script type="application/ld+json">${jsonForPage({ ...page, mainEntity: r })}</script></head><body><h1>x</h1></body></html>`,
      find: (o) => o["mainEntity"],
    }),
  ];
  fc.assert(
    fc.property(anyRecipe, fc.constantFrom(...shapes), (recipe, shape) => {
      const given = plain(recipe) as Json;
      const { source, find } = shape(given);
      const out = noted(source);
      const node = find(out) as Json;
      expect(JSON.stringify(node)).toContain("Instead of 1 cup buttermilk");
      expect(without(node)).toEqual(without(given, false));
      const around = plain(typeof source === "string" ? {} : source) as Json;
      if (Array.isArray(around["@graph"])) expect((out["@graph"] as Json[])[0]).toEqual(page);
      if (out["mainEntity"] !== undefined) expect({ ...out, mainEntity: 0 }).toEqual({ ...page, mainEntity: 0 });
    }),
    { numRuns: 150 },
  );
});

it("of several recipes in one document the notes go to the one they were made for, and the others stay", () => {
  const recipes = ["1 egg", "1 cup buttermilk", "450 g salt cod"].map((line, i) => ({
    "@type": "Recipe",
    name: `R${i}`,
    recipeIngredient: [line],
  }));
  for (const source of [recipes, { "@graph": recipes }])
    for (const at of [0, 1, 2]) {
      const graph = noted(source, at)["@graph"] as Json[];
      expect(graph.map((r) => r["hasPart"] !== undefined)).toEqual([0, 1, 2].map((i) => i === at));
      expect(graph.map((r, i) => without(r, i === at))).toEqual(recipes);
    }
});

it("a page's own data is kept, and a page without any gets a recipe of its name and notes alone", () => {
  const own = {
    "@context": "https://schema.org",
    "@type": "Recipe",
    name: "Own",
    "x-own": [1],
    recipeIngredient: ["1 cup buttermilk"],
  };
  const page = readRecipe(c, `<script type="application/ld+json">${JSON.stringify(own)}</script><h1>Other</h1>`);
  const out = renderNotes(swapNotes(c, page), "json-ld");
  expect({ ...out, hasPart: 0 }).toEqual({ ...own, hasPart: 0 });
  const bare = readRecipe(c, "<h1>Own</h1><h2>Ingredients</h2><ul><li>1 cup buttermilk</ul>");
  expect(Object.keys(renderNotes(swapNotes(c, bare), "json-ld"))).toEqual(["@context", "@type", "name", "hasPart"]);
});
