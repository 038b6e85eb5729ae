import { describe, expect, it } from "vitest";
import { openCatalogue } from "../../src/catalogue/index.js";
import { clean, escapeHtml, escapeMarkdown, MAX_TEXT } from "../../src/notes/escape.js";
import { jsonForPage, renderNotes, swapNotes } from "../../src/notes/index.js";
import { readLine } from "../../src/portion/index.js";
import type { Swap, SwapNotes } from "../../src/types.js";
import { textOf } from "../helpers/page.js";
import { PAYLOADS } from "../helpers/payloads.js";

const c = openCatalogue();
const line = "2 corn tortillas";
const model = swapNotes(c, {
  name: "Supper",
  lines: [{ text: line, read: readLine(c, line) }],
  steps: [],
  unread: [],
  source: undefined,
});
const note = model.notes[0] as SwapNotes["notes"][number];
const swap = note.swaps[0] as Swap;

/** The notes with the payload in one of the fields a recipe or an extension can fill. */
const FIELDS: Readonly<Record<string, (p: string) => SwapNotes>> = {
  recipe: (p) => ({ ...model, recipe: p }),
  line: (p) => ({ ...model, notes: [{ ...note, line: p }] }),
  use: (p) => withSwap({ ...swap, use: [{ ...swap.use[0], name: p }] }),
  measure: (p) => withSwap({ ...swap, use: [{ ...swap.use[0], measure: { ...swap.use[0].measure, text: p } }] }),
  prep: (p) =>
    withSwap({
      ...swap,
      prep: [
        { kind: "add", procedure: "x", minutes: { active: 0, waiting: 0 }, required: false, text: p },
        { kind: "change", procedure: "as noted", minutes: { active: 0, waiting: 0 }, required: false, text: p },
      ],
    }),
  correction: (p) =>
    withSwap({
      ...swap,
      corrections: [
        { ingredient: { id: "a/b", name: p }, grams: 5, measure: { ...swap.use[0].measure, text: p }, why: p },
      ],
    }),
  shift: (p) =>
    withSwap({
      ...swap,
      shift: [
        { axis: "salty", direction: "more", strength: 2, text: p },
        { axis: `note: ${p}`, direction: "more", strength: 2, text: p },
      ],
    }),
  allergen: (p) =>
    withSwap({ ...swap, allergens: { gained: [p as "egg"], lost: [p as "milk"], kept: [], unknown: [p as "soy"] } }),
  caution: (p) => withSwap({ ...swap, cautions: [{ hazard: p, severity: "caution", who: p, text: p, sources: [] }] }),
  missing: (p) => ({ ...model, serves: 8, notes: [{ ...note, missing: { ...swap.use[0], name: p } }] }),
  locale: (p) => ({ ...model, locale: p }),
};
function withSwap(s: Swap): SwapNotes {
  return { ...model, notes: [{ ...note, swaps: [s] }] };
}

/** What a reader of Markdown shows: escapes and the three entities undone. Every mark that is left must be one of ours. */
const shown = (md: string): string =>
  md
    .replace(/\\([!-/:-@[-`{-~])/g, "$1")
    .replace(/&lt;/g, "<")
    .replace(/&gt;/g, ">")
    .replace(/&amp;/g, "&");

describe(`${PAYLOADS.length} payloads in every field`, () => {
  it("are at least sixty", () => expect(PAYLOADS.length).toBeGreaterThanOrEqual(60));
  for (const [field, put] of Object.entries(FIELDS)) {
    const kept = field === "recipe" || field === "line" || field === "use";
    it(`${field}: HTML holds our elements and attributes only, and the text whole`, () => {
      for (const p of PAYLOADS) {
        const text = textOf(renderNotes(put(p), "html"));
        if (field === "recipe" || field === "line") expect(text).toContain(clean(p));
      }
    });
    it(`${field}: Markdown holds no HTML, link, code, heading, list or table that is not ours`, () => {
      for (const p of PAYLOADS) {
        const md = renderNotes(put(p), "markdown");
        expect(md).not.toMatch(/[<>]/);
        expect(md).not.toMatch(/&(?!lt;|gt;|amp;)/);
        // With what is escaped taken out, no mark is left but the stars, the heading and the list we write.
        const bare = md.replace(/\\[!-/:-@[-`{-~]/g, "");
        expect(bare).not.toMatch(/[`[\]|~_{}$@=^]/);
        expect(bare).not.toMatch(/:\/\/|www\.\w/);
        expect(bare.split("\n").filter((l) => /^ {0,3}(#|[-+*] |\d+[.)]|=|---|\*\*\*)/.test(l))).toSatisfy(
          (ls: string[]) => ls.every((l) => l.startsWith("## Substitutions") || l.startsWith("- **")),
        );
        if (kept && field !== "use") expect(shown(md)).toContain(clean(p));
      }
    });
    it(`${field}: plain text is one line where it was one, without controls or direction marks`, () => {
      for (const p of PAYLOADS) {
        const text = renderNotes(put(p), "text");

        expect(text).not.toMatch(
          /[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u200b\u200e\u200f\u202a-\u202e\u2066-\u2069\ufeff]/,
        );
        if (field === "line") expect(text.split("\n")).toContain(`Instead of ${clean(p)}:`);
        if (field === "recipe") expect(text.split("\n")[0]).toBe(`Substitutions for ${clean(p)}`);
      }
    });
    it(`${field}: JSON-LD stays inside its script element and reads back the same`, () => {
      for (const p of PAYLOADS) {
        const data = renderNotes({ ...put(p), source: { "@type": "Recipe", name: p, [p]: p } }, "json-ld");
        const page = jsonForPage(data);
        expect(page).not.toMatch(/[<>&\u2028\u2029]/);
        expect(JSON.parse(page)).toEqual(data);
        expect(data["name"]).toBe(p);
        expect(data[p]).toBe(p);
      }
    });
  }
  it("the names of foods to use are whole in HTML", () => {
    for (const p of PAYLOADS.filter((x) => !/our|ulph|hilli/.test(x))) {
      const put = FIELDS["use"] as (p: string) => SwapNotes;
      expect(textOf(renderNotes(put(p), "html"))).toContain(clean(p));
    }
  });
});

describe("escapes", () => {
  it("HTML: text and quoted attributes alike", () => {
    expect(escapeHtml(`<a b="c" d='e'>&amp; f=\`g\` [h] {i}`)).toBe(
      "&lt;a b&#61;&quot;c&quot; d&#61;&#39;e&#39;&gt;&amp;amp; f&#61;&#96;g&#96; &#91;h] &#123;i}",
    );
  });
  it("Markdown: everyday lines stay easy to read", () => {
    expect(escapeMarkdown("1 1/2 lb cod (fresh), skin-on; about 5% salt")).toBe(
      "1 1/2 lb cod (fresh), skin-on; about 5\\% salt",
    );
    expect(escapeMarkdown("2. eggs")).toBe("2\\. eggs");
    expect(escapeMarkdown("- an egg")).toBe("\\- an egg");
    expect(escapeMarkdown("1.5 cups")).toBe("1.5 cups");
    expect(escapeMarkdown("see www.x.example or http://x")).toBe("see www\\.x\\.example or http\\://x");
  });
  it("is bounded", () => {
    const long = "a".repeat(1_000_000);
    expect(clean(long).length).toBe(MAX_TEXT + 1);
    expect(renderNotes({ ...model, recipe: long, notes: [{ ...note, line: long }] }, "html").length).toBeLessThan(
      20_000,
    );
  });
  it("keeps what writing needs: joiners, marks on letters, emoji, other scripts", () => {
    for (const text of ["می‌خواهم", "crème brûlée", "👩‍🍳", "कद्दू", "שמן זית", "½ カップ"]) expect(clean(text)).toBe(text);
  });
});
