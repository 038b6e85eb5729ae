// Twelve recipes written out in every form a recipe comes in, and what they were adapted to. See tests/fixtures/adapt.
import { readFileSync } from "node:fs";
import { parse } from "yaml";
import type { AdaptOptions, AdaptedRecipe, Recipe, Swap } from "../../src/index.js";

export interface Case {
  readonly id: string;
  readonly missing?: readonly string[];
  readonly avoid?: NonNullable<AdaptOptions["avoid"]>;
  readonly have?: readonly string[];
  readonly serves?: number;
}
export interface Dish {
  readonly id: string;
  readonly tradition: string;
  readonly name: string;
  readonly serves: number;
  readonly minutes: number;
  readonly groups: readonly {
    readonly name?: string;
    readonly lines: readonly string[];
    readonly steps: readonly string[];
  }[];
  readonly cases: readonly Case[];
}
export const FIXTURES = new URL("../fixtures/adapt/", import.meta.url);
export const DISHES = parse(readFileSync(new URL("recipes.yaml", FIXTURES), "utf8")) as readonly Dish[];

export const choicesOf = (k: Case): AdaptOptions => ({
  ...(k.missing === undefined ? {} : { missing: k.missing.map((line) => ({ line })) }),
  ...(k.avoid === undefined ? {} : { avoid: k.avoid }),
  ...(k.have === undefined ? {} : { have: [...k.have], onlyFromHave: true }),
  ...(k.serves === undefined ? {} : { serves: k.serves }),
});
/** Stand-ins as they were when the texts were reviewed, so that a better ranking does not change the texts. */
export type Pinned = Readonly<Record<string, readonly { readonly line: string; readonly swap: Swap }[]>>;
export function pinnedOf(dish: Dish): Pinned {
  return JSON.parse(readFileSync(new URL(`${dish.id}.swaps.json`, FIXTURES), "utf8")) as Pinned;
}
export function pinnedChoices(dish: Dish, k: Case, pinned: Pinned = pinnedOf(dish)): AdaptOptions {
  const swaps = pinned[k.id] ?? [];
  const { missing: _missing, have: _have, onlyFromHave: _only, ...rest } = choicesOf(k);
  return swaps.length === 0 ? rest : { ...rest, missing: swaps.map((s) => ({ ...s })) };
}

const html = (s: string): string => s.replace(/&/g, "&amp;").replace(/</g, "&lt;");
const lines = (d: Dish): readonly string[] => d.groups.flatMap((g) => g.lines);

/** The dish in five forms; the graph has its steps in sections. */
export const FORMS: Readonly<Record<string, (d: Dish) => string | object>> = {
  "json-ld object": (d) => ({
    "@context": "https://schema.org",
    "@type": "Recipe",
    name: d.name,
    recipeYield: `${d.serves} servings`,
    totalTime: `PT${d.minutes}M`,
    recipeIngredient: lines(d),
    recipeInstructions: d.groups.flatMap((g) => g.steps.map((text) => ({ "@type": "HowToStep", text }))),
  }),
  "json-ld graph with sections": (d) => ({
    "@context": "https://schema.org",
    "@graph": [
      { "@type": "WebPage", name: "A page" },
      {
        "@type": ["Recipe"],
        name: d.name,
        recipeYield: [String(d.serves), `${d.serves} servings`],
        totalTime: `PT${Math.floor(d.minutes / 60)}H${d.minutes % 60}M`,
        recipeIngredient: lines(d),
        recipeInstructions: d.groups.map((g) => ({
          "@type": "HowToSection",
          ...(g.name === undefined ? {} : { name: g.name }),
          itemListElement: g.steps.map((text) => ({ "@type": "HowToStep", text })),
        })),
      },
    ],
  }),
  "html page": (d) =>
    `<!doctype html><html><head><title>${html(d.name)}</title></head><body><h1>${html(d.name)}</h1>
<p>Serves ${d.serves}</p><p>Total time: ${d.minutes} minutes</p><h2>Ingredients</h2>
${d.groups.map((g) => `${g.name === undefined ? "" : `<h3>${html(g.name)}</h3>`}<ul>${g.lines.map((l) => `<li>${html(l)}</li>`).join("")}</ul>`).join("\n")}
<h2>Method</h2>
${d.groups.map((g) => `${g.name === undefined ? "" : `<h3>${html(g.name)}</h3>`}<ol>${g.steps.map((s) => `<li>${html(s)}</li>`).join("")}</ol>`).join("\n")}
</body></html>`,
  markdown: (d) =>
    `# ${d.name}\n\nServes ${d.serves}\n\nTotal time: ${d.minutes} minutes\n\n## Ingredients\n\n${d.groups
      .map((g) => `${g.name === undefined ? "" : `### ${g.name}\n\n`}${g.lines.map((l) => `- ${l}`).join("\n")}`)
      .join("\n\n")}\n\n## Method\n\n${d.groups
      .map(
        (g) =>
          `${g.name === undefined ? "" : `### ${g.name}\n\n`}${g.steps.map((s, i) => `${i + 1}. ${s}`).join("\n")}`,
      )
      .join("\n\n")}\n`,
  text: (d) =>
    `${d.name}\n\nServes ${d.serves}\nTotal time: ${d.minutes} minutes\n\nIngredients\n\n${d.groups
      .map((g) => `${g.name === undefined ? "" : `${g.name}:\n`}${g.lines.join("\n")}`)
      .join("\n\n")}\n\nMethod\n\n${d.groups
      .map((g) => `${g.name === undefined ? "" : `${g.name}:\n`}${g.steps.join("\n\n")}`)
      .join("\n\n")}\n`,
};

/** What a cook reads, without what the form alone knows (groups, pictures, the source). */
export const essence = (r: Recipe | AdaptedRecipe): object => ({
  name: r.name,
  serves: r.serves,
  minutes: r.minutes,
  lines: r.lines.map((l) => l.text),
  steps: r.steps.map((s) => s.text),
  ...("changes" in r ? { changes: r.changes, notes: r.notes, refused: r.refused } : {}),
});
