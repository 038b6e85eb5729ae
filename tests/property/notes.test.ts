import fc from "fast-check";
import { parseDocument } from "htmlparser2";
import { expect, it } from "vitest";
import { openCatalogue } from "../../src/catalogue/index.js";
import { foodFacts } from "../../src/facts/index.js";
import { clean, escapeHtml, escapeMarkdown } from "../../src/notes/escape.js";
import { jsonForPage, renderNotes, swapNotes } from "../../src/notes/index.js";
import { readLine } from "../../src/portion/index.js";
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
