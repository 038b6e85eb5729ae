import fc from "fast-check";
import { describe, it } from "vitest";
import { openCatalogue } from "../../src/catalogue/index.js";
import { isSteadfareError } from "../../src/errors.js";
import { readRecipe, type ReadRecipe } from "../../src/recipe/index.js";
import { LINES } from "../helpers/lines.js";

const c = openCatalogue();
const bare = (text: string): string => text.replace(/[^\p{L}\p{N}]/gu, "").toLowerCase();
/** Everything that came out as text. */
const told = (r: ReadRecipe): string =>
  bare([r.name, ...[...r.lines, ...r.steps].flatMap((l) => [l.group ?? "", l.text]), ...r.unread].join("\n"));

const line = fc.constantFrom(...LINES.map(([text]) => text));
const step = fc.constantFrom(
  "Soak the beans overnight, then drain.",
  "Fry the onion for 5 minutes, until golden.",
  "Bake at 180 °C for 40 minutes",
  "Reserve the liquid.",
  "for the sauce",
  "Sauce:",
  "## Notes",
  "> a story",
  "a | b",
);
const wild = fc.oneof(line, step, fc.string({ maxLength: 60 }));
const head = fc.constantFrom(
  "Ingredients",
  "## Ingredients",
  "Method:",
  "# Rice",
  "Directions",
  "Notes",
  "",
  "Filling:",
);
const text = fc.array(fc.oneof({ weight: 4, arbitrary: wild }, head), { maxLength: 25 });

describe("recipes", () => {
  it("every ingredient given is a line, a group or unread, whatever shape holds it", () => {
    fc.assert(
      fc.property(
        fc.array(fc.oneof(line, step), { maxLength: 20 }),
        fc.array(step, { maxLength: 8 }),
        (lines, steps) => {
          const r = readRecipe(c, { "@type": "Recipe", name: "T", recipeIngredient: lines, recipeInstructions: steps });
          const all = told(r);
          return [...lines, ...steps].every((l) => all.includes(bare(l)));
        },
      ),
      { numRuns: 60 },
    );
  });
  it("no letter of a text is lost under its headings", () => {
    const heads = new Set(["ingredients", "method"]);
    fc.assert(
      fc.property(
        fc.array(fc.oneof(line, step), { maxLength: 12 }),
        fc.array(step, { maxLength: 6 }),
        (lines, steps) => {
          const source = ["Some Dish", "", "Ingredients", ...lines, "", "Method", ...steps].join("\n");
          const all = told(readRecipe(c, source, "text"));
          return [...lines, ...steps].every((l) => {
            const want = bare(
              l
                .trim()
                .replace(/^\[x\]/u, "")
                .replace(/^(step )?\d{1,3}[.):] /iu, ""),
            );
            return heads.has(want) || want === "notes" || all.includes(want);
          });
        },
      ),
      { numRuns: 60 },
    );
  });
  it("throws nothing but typed errors on any text, in any form", () => {
    fc.assert(
      fc.property(
        fc.oneof(
          text.map((l) => l.join("\n")),
          fc.string({ unit: "binary", maxLength: 400 }),
          fc.json(),
        ),
        fc.constantFrom(undefined, "json-ld", "html", "markdown", "text"),
        (source, form) => {
          try {
            return Object.isFrozen(readRecipe(c, source, form));
          } catch (e) {
            return isSteadfareError(e);
          }
        },
      ),
      { numRuns: 150 },
    );
  });
  it("throws nothing but typed errors on any object, and on any value in any field", () => {
    const field = fc.constantFrom(
      "name",
      "recipeIngredient",
      "recipeInstructions",
      "recipeYield",
      "totalTime",
      "image",
      "@type",
    );
    fc.assert(
      fc.property(fc.dictionary(field, fc.jsonValue()), fc.jsonValue(), (fields, any) => {
        for (const source of [{ "@type": "Recipe", ...fields }, fields, any])
          try {
            readRecipe(c, source as object);
          } catch (e) {
            if (!isSteadfareError(e)) return false;
          }
        return true;
      }),
      { numRuns: 150 },
    );
  });
  it("reads the same twice", () => {
    fc.assert(
      fc.property(text, (lines) => {
        const source = lines.join("\n");
        return JSON.stringify(readRecipe(c, source)) === JSON.stringify(readRecipe(c, source));
      }),
      { numRuns: 40 },
    );
  });
});
