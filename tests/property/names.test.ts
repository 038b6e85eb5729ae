import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { openCatalogue, storeOf } from "../../src/catalogue/index.js";
import { plainWord, rawText, tokensOf } from "../../src/names/fold.js";
import { Folder } from "../../src/names/folder.js";
import { editsWithin } from "../../src/names/distance.js";
import { findFood, findInPhrase, foldText, nearestNames } from "../../src/names/index.js";
import { catalogueOf, SHELVES } from "../helpers/pantry.js";

const small = catalogueOf(SHELVES);
const whole = openCatalogue();
const ingredients = storeOf(whole).ingredients;
const anyText = fc.oneof(
  fc.string({ unit: "grapheme", maxLength: 60 }),
  fc.string({ unit: "binary", maxLength: 60 }),
  fc.string({ maxLength: 600 }),
  fc
    .array(
      fc.constantFrom(
        "cod",
        "salt",
        "of",
        "dried",
        "tomatoes,",
        "(canned)",
        "and",
        "or",
        "vegan",
        "2",
        "chopped",
        "-",
        "juice",
        "lemon",
        "for",
        "Ĳ",
        "½",
        "́",
      ),
      { maxLength: 30 },
    )
    .map((w) => w.join(" ")),
);
const listed = fc.constantFrom(...ingredients.flatMap((i) => i.names.map((n) => ({ i, n }))));

describe("whatever the text", () => {
  it("nothing throws, confidences keep their bands, results are frozen", () => {
    fc.assert(
      fc.property(anyText, (text) => {
        for (const m of findFood(small, text)) {
          expect(m.confidence).toBeGreaterThanOrEqual(0.6);
          expect(m.confidence).toBeLessThanOrEqual(1);
          if (m.how === "fuzzy") expect(m.confidence).toBeLessThan(0.9);
          else if (m.how === "folded") expect(m.confidence).toBeGreaterThanOrEqual(0.9);
          else expect(m.confidence).toBe(1);
        }
        const phrase = findInPhrase(small, text);
        if (phrase) expect(phrase.candidates[0]).toEqual(phrase.match);
        nearestNames(small, text, 3);
      }),
      { numRuns: 400 },
    );
  });
  it("folding twice is folding once", () => {
    fc.assert(
      fc.property(anyText, (text) => {
        expect(foldText(foldText(text))).toBe(foldText(text));
      }),
      { numRuns: 1000 },
    );
  });
  it("a folder that remembers letters and words folds as one text alone is folded", () => {
    const letters =
      "d l D L ' ’ ` ´ ʼ a é e\u0301 \u0301 \u0327 ď ß ñ & ( - 1 ½ が か 한 Ş İ ς Σ т й œ d' l’ ies s".split(" ");
    const pieces = fc.array(fc.constantFrom(" ", ...letters), { maxLength: 8 }).map((w) => w.join(""));
    const folder = new Folder();
    fc.assert(
      fc.property(fc.oneof(pieces, anyText), (text) => {
        expect(folder.fold(text)).toBe(foldText(text));
      }),
      { numRuns: 3000 },
    );
  });
  it("raw text and words are stable", () => {
    fc.assert(
      fc.property(anyText, (text) => {
        expect(rawText(rawText(text))).toBe(rawText(text));
        for (const t of tokensOf(text)) expect(plainWord(t.plain)).toBe(t.plain);
      }),
      { numRuns: 1000 },
    );
  });
  it("the same question has the same answer", () => {
    fc.assert(
      fc.property(anyText, (text) => {
        expect(findFood(small, text)).toEqual(findFood(catalogueOf(SHELVES), text));
      }),
      { numRuns: 50 },
    );
  });
  it("edits are symmetric, zero only for equals, and never above the bound plus one", () => {
    const word = fc.string({ unit: fc.constantFrom("a", "b", "c"), maxLength: 8 });
    fc.assert(
      fc.property(word, word, fc.nat(6), (a, b, most) => {
        const d = editsWithin(a, b, most);
        expect(d).toBe(editsWithin(b, a, most));
        expect(d === 0).toBe(a === b);
        expect(d).toBeLessThanOrEqual(most + 1);
      }),
    );
  });
});

describe("every listed name", () => {
  it.each([
    ["en-US", ["en", "en-US"]],
    ["en-GB", ["en-GB"]],
  ] as const)("finds its ingredient, or the default state of its food (%s)", (locale, own) => {
    const catalogue = openCatalogue({ locale });
    const store = storeOf(catalogue);
    const missed: string[] = [];
    for (const i of store.ingredients) {
      for (const n of i.names) {
        const found = findFood(catalogue, n.text, { limit: 200 });
        // a name of the food or part means its default state; a word of another language or country comes behind the reader's own
        const mine = found.filter(
          (m) => m.id === i.id || (n.of !== "state" && store.byId.get(m.id)?.food === i.food && !i.isDefault),
        );
        const least = (own as readonly string[]).includes(n.tag) ? 1 : 0.9;
        if (!mine.some((m) => m.confidence >= least)) missed.push(`${i.id}: ${n.tag} ${n.text}`);
        if (found.length === 0 || found[0]?.how === "fuzzy")
          missed.push(`${i.id}: ${n.tag} ${n.text} is not found as written`);
      }
    }
    expect(missed).toEqual([]);
  });
  it("finds the same whatever its case, spacing and word order", () => {
    fc.assert(
      fc.property(listed, fc.boolean(), ({ n }, upper) => {
        const straight = findFood(whole, n.text, { limit: 200 });
        const first = new Set(straight.filter((m) => m.confidence === straight[0]?.confidence).map((m) => m.id));
        const cased = findFood(whole, `  ${upper ? n.text.toUpperCase() : n.text.toLowerCase()} `, { limit: 200 });
        // ß, ſ and their like change letters with case, which folding mends; plain letters stay exact
        expect(cased.map((m) => m.id).some((id) => first.has(id))).toBe(true);
        const words = tokensOf(n.text);
        if (words.length < 2 || !n.tag.startsWith("en")) return;
        const swapped = findFood(
          whole,
          [...words]
            .reverse()
            .map((t) => t.text)
            .join(", "),
          { limit: 200 },
        );
        // "chocolate milk" is not "milk chocolate": an order that is a name of its own keeps its meaning
        if ((swapped[0]?.confidence ?? 0) >= 0.97) return;
        expect(
          swapped.map((m) => m.id).some((id) => first.has(id)),
          n.text,
        ).toBe(true);
      }),
      { numRuns: 500 },
    );
  });
  it("finds the same in the plural", () => {
    fc.assert(
      fc.property(listed, ({ n }) => {
        const word = n.text.split(" ").at(-1) ?? "";
        if (
          !n.tag.startsWith("en") ||
          word.length < 4 ||
          /[^a-z]/.test(word) ||
          /(s|x|z|ch|sh|y|f|fe|o|u|feet)$/.test(word)
        )
          return;
        const straight = findFood(whole, n.text, { limit: 200 })[0]?.id;
        expect(findFood(whole, `${n.text}s`, { limit: 200 }).map((m) => m.id)).toContain(straight);
      }),
      { numRuns: 500 },
    );
  });
});
