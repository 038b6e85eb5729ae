// The same payloads from the source of a recipe to what is pasted into a page: each form a recipe comes in, each field it has, each format.
import { describe, expect, it } from "vitest";
import { openCatalogue } from "../../src/catalogue/index.js";
import { clean } from "../../src/notes/escape.js";
import { jsonForPage, renderNotes, swapNotes } from "../../src/notes/index.js";
import { readRecipe, type ReadRecipe } from "../../src/recipe/index.js";
import type { SwapNotes } from "../../src/types.js";
import { textOf } from "../helpers/page.js";
import { PAYLOADS } from "../helpers/payloads.js";

const c = openCatalogue();
const line = (p: string): string => `1 cup buttermilk, ${p}`;
const escaped = (p: string): string => p.replace(/&/g, "&amp;").replace(/</g, "&lt;").replace(/"/g, "&quot;");
const document = (p: string): object => ({
  "@context": "https://schema.org",
  "@type": "Recipe",
  "@id": p,
  name: p,
  description: p,
  author: { "@type": "Person", name: p, url: p },
  image: [p, { "@type": "ImageObject", url: p }],
  recipeYield: p,
  recipeCuisine: p,
  cookingMethod: p,
  totalTime: p,
  keywords: [p],
  recipeIngredient: [`${p.slice(0, 40)}:`, line(p), { name: p, amount: p, unit: p }, p],
  recipeInstructions: [
    { "@type": "HowToSection", name: p, itemListElement: [{ "@type": "HowToStep", name: p, text: p, image: p }, p] },
  ],
  [p]: { [p]: p },
});
const FORMS: Readonly<Record<string, (p: string) => ReadRecipe>> = {
  "JSON-LD object": (p) => readRecipe(c, document(p)),
  "JSON-LD text": (p) => readRecipe(c, JSON.stringify(document(p))),
  "a page's script": (p) =>
    readRecipe(c, `<h1>x</h1><script type="application/ld+json">${jsonForPage(document(p))}</script>`, "html"),
  "a page, escaped": (p) =>
    readRecipe(
      c,
      `<title>${escaped(p)}</title><h1>${escaped(p)}</h1><h2>Ingredients</h2><ul><li>${escaped(line(p))}<li>1 egg</ul><h2>Method</h2><p>${escaped(p)}`,
      "html",
    ),
  // an unclosed script swallows what follows it, as it does in a browser
  "a page, raw": (p) => readRecipe(c, `<h2>Ingredients</h2><ul><li>1 egg</li><li>${line(p)}</ul><h1>${p}</h1>`, "html"),
  microdata: (p) =>
    readRecipe(
      c,
      `<div itemscope itemtype="https://schema.org/Recipe"><h1 itemprop="name">${escaped(p)}</h1><meta itemprop="recipeYield" content="${escaped(p)}"><ul><li itemprop="recipeIngredient">${escaped(line(p))}</ul><p itemprop="${escaped(p)}">x</p></div>`,
      "html",
    ),
  Markdown: (p) =>
    readRecipe(c, `# ${p}\n\n## Ingredients\n\n- ${line(p)}\n- 1 egg\n\n## Method\n\n1. ${p}\n`, "markdown"),
  text: (p) => readRecipe(c, `${p}\n\nIngredients\n1 egg\n${line(p)}\n\nMethod\n${p}\n`, "text"),
};
const model = swapNotes(
  c,
  readRecipe(c, { "@type": "Recipe", recipeIngredient: ["1 cup buttermilk", "2 corn tortillas"] }),
);
const swaps = model.notes.flatMap((n) => n.swaps);
/** Notes under every line of the recipe, group and step too: all that a reader could print. */
const under = (r: ReadRecipe): SwapNotes => {
  const { notes: _own, ...rest } = swapNotes(c, { ...r, lines: [] });
  const texts = [...r.lines, ...r.steps].flatMap((l) => [l.text, l.group ?? "x"]);
  return { ...rest, notes: texts.map((text) => ({ line: text, swaps })) };
};

describe.each(Object.entries(FORMS))("%s", (form, read) => {
  it("comes out as text in HTML, Markdown, plain text and JSON-LD", () => {
    for (const p of PAYLOADS) {
      const recipe = read(p);
      const notes = under(recipe);
      expect(notes.notes.length, p).toBeGreaterThan(0);
      const shown = textOf(renderNotes(notes, "html"));
      for (const { line: text } of notes.notes) expect(shown).toContain(clean(text));
      const md = renderNotes(notes, "markdown");
      expect(md).not.toMatch(/[<>]|&(?!lt;|gt;|amp;)/);
      expect(md.replace(/\\[!-/:-@[-`{-~]/g, "")).not.toMatch(/[`[\]|~_{}$@=^]|:\/\/|www\.\w/);
      expect(renderNotes(notes, "text")).not.toMatch(
        /[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u200b\u200e\u200f\u202a-\u202e\u2066-\u2069\ufeff]/,
      );
      const data = renderNotes(notes, "json-ld");
      const page = jsonForPage(data);
      expect(page).not.toMatch(/[<>&\u2028\u2029]/);
      expect(JSON.parse(page)).toEqual(data);
      if (form.includes("JSON-LD") || form === "a page's script")
        expect({ ...data, hasPart: 0 }).toEqual({ ...document(p), hasPart: 0 });
    }
  });
  it("leaves no control or direction mark in what is read", () => {
    for (const p of PAYLOADS) {
      const r = read(p);
      const said = [
        r.name,
        ...r.unread,
        ...r.images,
        ...[...r.lines, ...r.steps].flatMap((l) => [l.text, l.group ?? ""]),
      ];
      for (const text of said)
        expect(text).not.toMatch(/[\u0000-\u001f\u007f-\u009f\u200b\u200e\u200f\u202a-\u202e\u2066-\u2069\ufeff]/);
    }
  });
});
