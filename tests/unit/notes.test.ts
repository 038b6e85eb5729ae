import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { openCatalogue } from "../../src/catalogue/index.js";
import { isSteadfareError } from "../../src/errors.js";
import { foodFacts } from "../../src/facts/index.js";
import { jsonForPage, renderNotes, swapNotes, type NoteOptions } from "../../src/notes/index.js";
import { readLine } from "../../src/portion/index.js";
import { STANDING_NOTICE } from "../../src/safety/index.js";
import type { Catalogue, Recipe, SwapNotes } from "../../src/types.js";

const us = openCatalogue();
function recipeOf(c: Catalogue, lines: readonly string[], steps: readonly string[] = [], more = {}): Recipe {
  return {
    name: "Supper",
    serves: 4,
    lines: lines.map((text) => ({ text, read: readLine(c, text) })),
    steps: steps.map((text) => ({ text })),
    unread: [],
    source: undefined,
    ...more,
  };
}
const ask = (lines: readonly string[], options: NoteOptions = {}, steps: readonly string[] = []): SwapNotes =>
  swapNotes(us, recipeOf(us, lines, steps), options);
const idsOf = (notes: SwapNotes): string[] =>
  notes.notes.flatMap((n) => n.swaps.flatMap((s) => s.use.map((u) => u.id)));

// The notes of a fixed recipe in every format, beside the notes they were made from. UPDATE_GOLDEN=1 writes them anew: read the change.
const FOLDER = join(import.meta.dirname, "../fixtures/notes");
describe("golden files", () => {
  for (const name of ["supper-us", "supper-gb"]) {
    const notes = JSON.parse(readFileSync(join(FOLDER, `${name}.notes.json`), "utf8")) as SwapNotes;
    const made: Readonly<Record<string, string>> = {
      md: renderNotes(notes, "markdown"),
      html: renderNotes(notes, "html"),
      txt: renderNotes(notes, "text"),
      json: `${jsonForPage(renderNotes(notes, "json-ld"))}\n`,
    };
    for (const [form, text] of Object.entries(made))
      it(`${name}.${form}`, () => {
        const file = join(FOLDER, `${name}.${form}`);
        if (process.env["UPDATE_GOLDEN"] === "1" || !existsSync(file)) writeFileSync(file, text);
        expect(text).toBe(readFileSync(file, "utf8"));
      });
  }
});

describe("what is worth printing", () => {
  it("leaves out salt, water, plain oil, what is no food, and a food already noted", () => {
    const notes = ask([
      "salt and pepper",
      "1 tsp salt",
      "1 tsp fine sea salt",
      "4 cups water",
      "2 tbsp olive oil",
      "2 tbsp vegetable oil",
      "a great deal of patience",
      "1 cup buttermilk",
      "another 1/4 cup buttermilk, to brush",
    ]);
    expect(notes.notes.map((n) => n.line)).toEqual(["1 cup buttermilk"]);
  });
  it("keeps an oil that is there for its taste", () => {
    expect(ask(["1 tsp toasted sesame oil"]).notes).toHaveLength(1);
  });
  it("prints at most perLine swaps, each of another food, and says who made them: the lines as they were", () => {
    for (const perLine of [1, 2, 3, 5]) {
      const notes = ask(["1 cup buttermilk", "450 g salt cod"], { perLine });
      expect(notes.notes.length).toBe(2);
      for (const note of notes.notes) {
        expect(note.swaps.length).toBeGreaterThan(0);
        expect(note.swaps.length).toBeLessThanOrEqual(perLine);
        const firsts = note.swaps.map((s) => s.use[0].id.split("/")[0]);
        expect(new Set(firsts).size).toBe(firsts.length);
      }
    }
  });
  it("one of the swaps takes the allergen out when a good one does", () => {
    const eggs = ask(["2 eggs"], {}, ["Bake for 50 minutes."]).notes[0];
    expect(eggs?.swaps.some((s) => s.allergens.lost.includes("egg"))).toBe(true);
  });
  it("what is in the house comes first", () => {
    const house = ask(["500 g kale"], { have: ["collard greens", "chard"] }).notes[0];
    expect(["collard-greens", "collards", "chard"]).toContain(house?.swaps[0]?.use[0].id.split(/[/.]/)[0]);
  });
  it("never prints a swap that carries or may carry what is avoided", () => {
    const lines = ["2 eggs", "1/2 cup butter", "2 cups all-purpose flour", "1 cup buttermilk", "2 tbsp oyster sauce"];
    for (const allergen of ["milk", "egg", "wheat", "soy", "fish", "sulphites"] as const) {
      const ids = idsOf(ask(lines, { avoid: { allergens: [allergen] } }));
      expect(ids.length).toBeGreaterThan(0);
      for (const id of ids) expect(foodFacts(us, id).allergens.free).toContain(allergen);
    }
    for (const id of idsOf(ask(["450 g chicken thighs"], { avoid: { foods: ["pork"] } })))
      expect(id).not.toMatch(/pork|ham|bacon/);
  });
  it("the step that names a food tells its technique", () => {
    const steps = ["Braise the lamb for 2 hours.", "Bake the bread."];
    const stewed = ask(["2 lb lamb shoulder"], {}, steps).notes[0];
    const raw = ask(["2 lb lamb shoulder"], {}, ["Grill the lamb, and serve on a baking sheet."]).notes[0];
    expect(JSON.stringify(stewed?.swaps)).not.toBe(JSON.stringify(raw?.swaps));
  });
  it("meat that is browned first goes through what the pot does after", () => {
    const steps = ["Brown the lamb for 5 minutes.", "Add the stock and braise for 2 hours."];
    const browned = ask(["2 lb lamb shoulder"], {}, steps).notes[0];
    const braised = ask(["2 lb lamb shoulder"], {}, ["Braise the lamb for 2 hours."]).notes[0];
    expect(browned?.swaps.map((s) => s.use[0].id)).toEqual(braised?.swaps.map((s) => s.use[0].id));
  });
  it("amounts follow serves, and say so", () => {
    const one = ask(["1 cup buttermilk"]).notes[0]?.swaps[0]?.use[0].grams ?? 0;
    const twice = ask(["1 cup buttermilk"], { serves: 8 });
    expect((twice.notes[0]?.swaps[0]?.use[0].grams ?? 0) / one).toBeCloseTo(2, 1);
    expect(renderNotes(twice, "text")).toContain("Instead of 1 cup buttermilk (2 cups buttermilk for 8):");
  });
  it("a line without an amount gets none", () => {
    const text = renderNotes(ask(["cilantro, to serve"]), "text");
    expect(text).toContain("Instead of cilantro, to serve:");
    expect(text).not.toMatch(/- [\d/]/);
  });
  it("refuses what it cannot use", () => {
    const code = (run: () => unknown): string => {
      try {
        run();
      } catch (e) {
        return isSteadfareError(e) ? e.code : String(e);
      }
      return "";
    };
    expect(code(() => ask(["1 egg"], { avoid: { allergens: ["eeg"] } }))).toBe("unknown term");
    expect(code(() => ask([], { avoid: { allergens: ["eeg"] } }))).toBe("unknown term");
    for (const perLine of [0, 1.5, 11, Number.NaN])
      expect(code(() => ask([], { perLine }))).toBe("conflicting request");
    expect(code(() => ask([], { serves: 0 }))).toBe("conflicting request");
    expect(code(() => ask([], { have: "chard" as never }))).toBe("conflicting request");
    expect(code(() => ask(Array.from({ length: 301 }, () => "1 egg")))).toBe("input too large");
    expect(code(() => renderNotes(ask([]), "pdf" as never))).toBe("conflicting request");
  });
});

describe("rendering", () => {
  const notes = ask(["1 cup buttermilk", "450 g salt cod", "2 corn tortillas"]);
  it("says the standing notice once, at the end", () => {
    for (const form of ["markdown", "html", "text"] as const) {
      const text = renderNotes(notes, form).replace(/\s+/g, " ");
      expect(text.split(STANDING_NOTICE)).toHaveLength(2);
    }
    expect(JSON.stringify(renderNotes(notes, "json-ld")).split(STANDING_NOTICE)).toHaveLength(2);
  });
  it("without a note there is nothing to paste", () => {
    const none = ask(["1 tsp salt"]);
    for (const form of ["markdown", "html", "text"] as const) expect(renderNotes(none, form)).toBe("");
    expect(renderNotes(none, "json-ld")).toEqual({
      "@context": "https://schema.org",
      "@type": "Recipe",
      name: "Supper",
    });
  });
  it("says allergens in words, and never that something is free of them", () => {
    const text = renderNotes(notes, "text");
    expect(text).toMatch(/Allergens: Adds wheat \(gluten\)/);
    expect(text).not.toMatch(/-free|free of/);
  });
  it("is spelt and measured as the locale has it", () => {
    const gb = openCatalogue({ locale: "en-GB", measures: "metric" });
    const lines = ["4 cups dashi", "1 tbsp Shaoxing wine"];
    const british = renderNotes(swapNotes(gb, recipeOf(gb, lines)), "html");
    const american = renderNotes(swapNotes(us, recipeOf(us, lines)), "html");
    expect(british).toContain('lang="en-GB"');
    expect(american).toContain('lang="en-US"');
    expect(british).toMatch(/\d ml|\d l|\d g/);
    expect(american).not.toMatch(/savoury|sulphite|flavour/);
    expect(british).not.toMatch(/savory|sulfite|flavor\b/);
  });
  it("contract fields alone are enough", () => {
    const bare: SwapNotes = { recipe: notes.recipe, notes: notes.notes.map(({ line, swaps }) => ({ line, swaps })) };
    for (const form of ["markdown", "html", "text"] as const)
      expect(renderNotes(bare, form)).toContain("1 cup buttermilk");
  });
});

describe("JSON-LD", () => {
  const source = {
    "@context": "https://schema.org",
    "@type": ["Recipe", "NewsArticle"],
    name: "Supper",
    commentCount: 2,
    comment: [{ "@type": "Comment", text: "Lovely" }],
    recipeIngredient: ["1 cup buttermilk"],
    nutrition: { calories: null, deep: [[{ a: 1 }]] },
    "x-own": false,
  };
  const withSource = (s: unknown): SwapNotes => swapNotes(us, recipeOf(us, ["1 cup buttermilk"], [], { source: s }));
  it("keeps every field given and adds hasPart alone", () => {
    const before = JSON.stringify(source);
    const out = renderNotes(withSource(source), "json-ld");
    const { hasPart, ...rest } = out;
    expect(rest).toEqual(source);
    expect(hasPart).toMatchObject({ "@type": "CreativeWork", hasPart: [{ name: "Instead of 1 cup buttermilk" }] });
    expect(JSON.stringify(source)).toBe(before);
    expect(Object.isFrozen(out) && Object.isFrozen(out["nutrition"])).toBe(true);
    expect(Object.isFrozen(source)).toBe(false);
  });
  it("parts already there stay first", () => {
    for (const part of [{ "@type": "Clip" }, [{ "@type": "Clip" }, { "@type": "Clip" }]]) {
      const out = renderNotes(withSource({ ...source, hasPart: part }), "json-ld")["hasPart"] as unknown[];
      const given = Array.isArray(part) ? part : [part];
      expect(out.slice(0, -1)).toEqual(given);
      expect(out).toHaveLength(given.length + 1);
    }
  });
  it("finds the recipe in a graph, a list and JSON text, and leaves the other nodes", () => {
    const page = { "@type": "WebPage", name: "Page" };
    const graph = { "@context": "https://schema.org", "@id": "x", "@graph": [page, source] };
    for (const s of [graph, JSON.stringify(graph)]) {
      const out = renderNotes(withSource(s), "json-ld");
      expect(out["@id"]).toBe("x");
      expect((out["@graph"] as unknown[])[0]).toEqual(page);
      expect((out["@graph"] as unknown[])[1]).toMatchObject({ ...source, hasPart: {} });
    }
    const list = renderNotes(withSource([page, source]), "json-ld")["@graph"] as unknown[];
    expect(list[1]).toMatchObject({ ...source, hasPart: {} });
  });
  it("writes its words as the recipe writes its own", () => {
    const out = renderNotes(withSource({ "@type": "schema:Recipe", "schema:name": "Supper" }), "json-ld");
    expect(out["schema:hasPart"]).toMatchObject({ "@type": "schema:CreativeWork", "schema:name": "Substitutions" });
  });
  it("keeps a field called __proto__ and survives deep and circular sources", () => {
    const odd = JSON.parse('{"@type":"Recipe","__proto__":{"polluted":1},"name":"x"}') as object;
    const out = renderNotes(withSource(odd), "json-ld");
    expect(JSON.stringify(out)).toContain('"__proto__":{"polluted":1}');
    expect(({} as Record<string, unknown>)["polluted"]).toBeUndefined();
    let deep: unknown = 1;
    for (let i = 0; i < 5000; i++) deep = [deep];
    expect(renderNotes(withSource({ "@type": "Recipe", deep }), "json-ld")["deep"]).toBeDefined();
    const ring: Record<string, unknown> = { "@type": "Recipe" };
    ring["self"] = ring;
    expect(renderNotes(withSource(ring), "json-ld")["@type"]).toBe("Recipe");
  });
  it("a recipe that came in another form becomes a new Recipe with its name and notes", () => {
    for (const s of [undefined, null, 7, "# Soup\n- 1 egg", "{broken", { "@type": "Person" }, []])
      expect(Object.keys(renderNotes(withSource(s), "json-ld"))).toEqual(["@context", "@type", "name", "hasPart"]);
  });
});
