// Substitution notes for a whole recipe: what is worth printing, in words a blogger would keep, safe in every format.
import { fail, freeze } from "../errors.js";
import { findFood } from "../names/index.js";
import { readLine } from "../portion/index.js";
import { kitchenOf, recipesIn, techniquesOfLines, type ReadRecipe } from "../recipe/index.js";
import { swapsFor } from "../swap/index.js";
import type { Avoid, Catalogue, Recipe, SwapNotes } from "../types.js";
import { worthAsking, worthPrinting } from "./choose.js";
import { clean } from "./escape.js";
import { renderJsonLd } from "./jsonld.js";
import { renderHtml, renderMarkdown, renderText } from "./render.js";

export { jsonForPage } from "./escape.js";

/** Most lines of a recipe that are asked about. */
const MAX_LINES = 300;
/** Other lines of the dish beyond these change its concentrations little. */
const MAX_DISH = 60;
/** Asked of each line: enough that the few worth printing are among them. */
const ASKED = 25;

export interface NoteOptions {
  readonly avoid?: Avoid;
  /** What is in the house: swaps made of it come first. */
  readonly have?: readonly string[];
  /** Swaps printed for a line, 1 to 10; 3 when left out. */
  readonly perLine?: number;
  /** Amounts for so many people; the recipe's own when left out, or when it does not say for how many it is. */
  readonly serves?: number;
}

function inTheHouse(c: Catalogue, have: readonly string[]): ReadonlySet<string> {
  return new Set(
    have.slice(0, 1000).flatMap((text) => {
      const { food, candidates } = readLine(c, text);
      if (food) return [food.id];
      const found = candidates.length > 0 ? candidates : findFood(c, text, { limit: 5 });
      return found.filter((m) => m.confidence >= 0.8).map((m) => m.id);
    }),
  );
}

/**
 * The swaps worth printing under a recipe, line by line. Lines without a food, water, salt, plain oil and foods already noted are left
 * out; so is a line for which nothing good stands in. No swap carries what is avoided. The technique of each line is what
 * the steps that use it say, else that of the dish.
 * @throws `unknown term`, `unknown food` (a word in `avoid`), `conflicting request`, `input too large` (above 300 lines)
 */
export function swapNotes(c: Catalogue, recipe: Recipe, options: NoteOptions = {}): SwapNotes {
  const { avoid, have, perLine = 3, serves } = options;
  if (!Number.isInteger(perLine) || perLine < 1 || perLine > 10)
    fail("conflicting request", "perLine must be a whole number from 1 to 10.", { fields: ["perLine"] });
  if (serves !== undefined && !(Number.isFinite(serves) && serves > 0 && serves <= 100_000))
    fail("conflicting request", "serves must be a number of people above 0.", { fields: ["serves"] });
  if (have !== undefined && !(Array.isArray(have) && have.every((x) => typeof x === "string")))
    fail("conflicting request", "have must be a list of foods.", { fields: ["have"] });
  if (recipe.lines.length > MAX_LINES)
    fail("input too large", `A recipe may have ${MAX_LINES} ingredient lines; this one has ${recipe.lines.length}.`, {
      limit: MAX_LINES,
      size: recipe.lines.length,
    });
  // What is avoided is read even when no line is asked about: a word that is not understood is never passed over.
  if (avoid !== undefined) swapsFor(c, { missing: "1 tsp salt", avoid, limit: 1 });
  const scale = serves !== undefined && recipe.serves !== undefined && recipe.serves > 0 ? serves / recipe.serves : 1;
  const people = scale === 1 ? recipe.serves : serves;
  const house = inTheHouse(c, have ?? []);
  const techniqueOf = techniquesOfLines(c, recipe);
  const seen = new Set<string>();
  const notes = recipe.lines.flatMap((line, at): SwapNotes["notes"][number][] => {
    const { food, portion } = line.read;
    if (!food || seen.has(food.id) || !worthAsking(c, food.id)) return [];
    seen.add(food.id);
    const technique = techniqueOf(at);
    const others = recipe.lines.filter((l) => l !== line && l.read.portion).slice(0, MAX_DISH);
    const advice = swapsFor(c, {
      missing: food.id,
      ...(portion ? { amount: `${round(portion.grams * scale)} g` } : {}),
      dish: {
        lines: others.map((l) => `${round((l.read.portion?.grams ?? 0) * scale)} g ${l.read.portion?.name ?? ""}`),
        ...(technique === undefined ? {} : { technique }),
        ...(people === undefined ? {} : { serves: people }),
        ...kitchenOf(recipe),
      },
      ...(avoid === undefined ? {} : { avoid }),
      ...(have === undefined ? {} : { have }),
      limit: ASKED,
    });
    const swaps = worthPrinting(advice, perLine, house);
    if (swaps.length === 0) return [];
    const missing = portion ? advice.missing : { ...advice.missing, assumed: true as const };
    return [{ line: line.text, swaps, missing, roles: advice.roles.map((r) => r.role) }];
  });
  return freezeNotes({
    recipe: recipe.name,
    notes,
    locale: c.locale,
    ...(scale === 1 ? {} : { serves: serves as number }),
    ...origin(recipe),
  });
}

/** The document a recipe stands in, and which of its recipes it is: a page's own data is what its notes go into. */
function origin(recipe: Recipe): Pick<SwapNotes, "source" | "place"> {
  const { document, node } = recipe as Partial<ReadRecipe>;
  if (document === undefined || node === undefined) return { source: recipe.source };
  const place = recipesIn(document).recipes.indexOf(node);
  return { source: document, ...(place > 0 ? { place } : {}) };
}
const round = (grams: number): number => Math.max(0.1, Math.round(grams * 10) / 10);

/** All but the source, which is the caller's own. */
function freezeNotes(notes: SwapNotes): SwapNotes {
  freeze(notes.notes);
  return Object.freeze(notes);
}

/**
 * Notes as text or data. Everything that came from the recipe is escaped for the format; controls, direction marks and unseen characters
 * are taken out; each text is bounded. Markdown and HTML are fragments to paste under a recipe; without a note they are empty. JSON-LD is
 * the recipe's own document (for a page, the one in its script) with the notes in `hasPart`, every field kept, or a new Recipe when it
 * came in another form; print it into a page with {@link jsonForPage}.
 * @param format "markdown", "html", "text" or "json-ld"
 * @throws `conflicting request` for another format
 */
export function renderNotes(notes: SwapNotes, format: "markdown" | "html" | "text"): string;
export function renderNotes(notes: SwapNotes, format: "json-ld"): Readonly<Record<string, unknown>>;
export function renderNotes(
  notes: SwapNotes,
  format: "markdown" | "html" | "text" | "json-ld",
): string | Readonly<Record<string, unknown>> {
  switch (format) {
    case "markdown":
      return renderMarkdown(notes);
    case "html":
      return renderHtml(notes);
    case "text":
      return renderText(notes);
    case "json-ld":
      return renderJsonLd(notes);
    default:
      return fail(
        "conflicting request",
        `Notes are markdown, html, text or json-ld, not "${clean(String(format)).slice(0, 40)}".`,
        { fields: ["format"] },
      );
  }
}
