// Reading and understanding recipes: schema.org JSON-LD, HTML pages, Markdown, plain text.
import { storeOf } from "../catalogue/index.js";
import { fail, freeze } from "../errors.js";
import { lookupOf, readLineWith } from "../portion/index.js";
import type { Catalogue, Dish, IngredientId } from "../types.js";
import { blocksOf, looksMarkdown } from "./blocks.js";
import { looksHtml, readPage } from "./html.js";
import { copyOf, isNode, parseJson, recipesIn, textsIn } from "./json.js";
import { readNode } from "./jsonld.js";
import { MAX_LINES, MAX_RECIPES, MAX_SOURCE, MAX_STEPS, within } from "./limits.js";
import { outline } from "./outline.js";
import { clean, hasWord, tokensOf } from "./text.js";
import { emptyRaw, type NotUnderstood, type Raw, type ReadRecipe, type RecipeForm } from "./types.js";
import { mainTechnique, understand } from "./understand.js";
import { techniqueOfName } from "./verbs.js";
import { readYield, type Yield } from "./yields.js";

export { isoMinutes } from "./duration.js";
export { recipesIn } from "./json.js";
export { kitchenOf } from "./kitchen.js";
export { keepingOfLines, techniquesOfLines } from "./technique.js";
export type * from "./types.js";
export { isUncooked } from "./uncooked.js";

interface Source {
  readonly form: RecipeForm;
  readonly source: unknown;
  readonly raws: readonly Raw[];
}

function fromDocument(form: RecipeForm, document: unknown, source: unknown): Source {
  const { recipes, byId } = recipesIn(document);
  within(recipes.length, MAX_RECIPES, "recipes in one source");
  if (recipes.length > 0) return { form, source, raws: recipes.map((n) => ({ ...readNode(n, byId), document })) };
  const raw = emptyRaw();
  if (isNode(document) && typeof document["name"] === "string") raw.name = clean(document["name"]);
  raw.unread.push(...textsIn(document).map(clean).filter(hasWord));
  return { form, source, raws: [raw] };
}

/** A page: its JSON-LD, else its microdata, else its headings and lists. */
function fromPage(html: string): Source {
  const page = readPage(html);
  const broken: string[] = [];
  const raws: Raw[] = [];
  for (const script of page.scripts) {
    const parsed = parseJson(script);
    if (parsed === undefined) {
      if (hasWord(script)) broken.push(clean(script));
      continue;
    }
    const document = copyOf(parsed.value);
    const { recipes, byId } = recipesIn(document);
    within(raws.length + recipes.length, MAX_RECIPES, "recipes in one source");
    raws.push(...recipes.map((n) => ({ ...readNode(n, byId), document })));
  }
  if (raws.length === 0) {
    const { recipes, byId } = recipesIn(copyOf(page.items));
    within(recipes.length, MAX_RECIPES, "recipes in one source");
    raws.push(...recipes.map((n) => readNode(n, byId)));
  }
  if (raws.length === 0) raws.push(outline(page.blocks, page.title));
  raws[0]?.unread.push(...broken);
  return { form: "html", source: html, raws };
}

function fromText(text: string, form: "markdown" | "text"): Source {
  return { form, source: text, raws: [outline(blocksOf(text, form === "markdown"), "")] };
}

const FORMS: readonly string[] = ["json-ld", "html", "markdown", "text"];

function take(source: unknown, form: RecipeForm | undefined): Source {
  if (form !== undefined && !FORMS.includes(form))
    fail("conflicting request", "form must be json-ld, html, markdown or text.", { fields: ["form"] });
  if (typeof source === "object" && source !== null) {
    if (form !== undefined && form !== "json-ld")
      fail("conflicting request", `An object is read as json-ld, not as ${form}.`, { fields: ["source", "form"] });
    const copy = copyOf(source);
    return fromDocument("json-ld", copy, copy);
  }
  if (typeof source !== "string")
    fail("conflicting request", "A recipe is a text or an object of schema.org's Recipe.", { fields: ["source"] });
  within(source.length, MAX_SOURCE, "characters");
  if (form === undefined || form === "json-ld") {
    const parsed = parseJson(source);
    if (parsed !== undefined && typeof parsed.value === "object" && parsed.value !== null) {
      const copy = copyOf(parsed.value);
      return fromDocument("json-ld", copy, copy);
    }
    if (form === "json-ld") {
      const raw = emptyRaw();
      if (hasWord(source)) raw.unread.push(clean(source));
      return { form, source, raws: [raw] };
    }
  }
  const kind = form ?? (looksHtml(source) ? "html" : looksMarkdown(source) ? "markdown" : "text");
  return kind === "html" ? fromPage(source) : fromText(source, kind);
}

function yieldOf(raw: Raw, notUnderstood: NotUnderstood[]): Yield {
  let out: Yield = {};
  for (const text of raw.yields) {
    const read = readYield(text);
    if (read === undefined) {
      raw.unread.push(text);
      notUnderstood.push({ where: "yield", text: text.slice(0, 200), why: "no number of people or pieces" });
    } else out = { ...read, ...out };
  }
  return out;
}

function build(c: Catalogue, s: Source, raw: Raw): ReadRecipe {
  within(raw.lines.length, MAX_LINES, "ingredient lines");
  within(raw.steps.length, MAX_STEPS, "steps");
  const lookup = lookupOf(c);
  const store = storeOf(c);
  const lines = raw.lines.map((l) => ({ ...l, read: readLineWith(lookup, l.text) }));
  const understood = understand(store, lines, raw.steps);
  const notUnderstood: NotUnderstood[] = [...raw.notUnderstood];
  const { serves, range, makes } = yieldOf(raw, notUnderstood);
  lines.forEach((l, at) => {
    if (l.read.status === "food and amount" || (l.read.status === "food only" && l.read.unread === undefined)) return;
    const why =
      l.read.status === "no food"
        ? "no food is known in it"
        : l.read.status === "ambiguous"
          ? "it may mean several foods"
          : "its amount cannot be weighed";
    notUnderstood.push({ where: "line", at, text: l.text.slice(0, 200), why });
  });
  const sum = (raw.prep ?? 0) + (raw.cook ?? 0);
  const minutes = raw.total ?? (sum > 0 ? sum : undefined);
  const technique =
    techniqueOfName(tokensOf(raw.method.slice(0, 200))) ??
    techniqueOfName(tokensOf(raw.name.slice(0, 200))) ??
    mainTechnique(understood.steps);
  const dish: Dish = {
    lines: lines.map((l) => l.text),
    ...(serves === undefined ? {} : { serves }),
    ...(technique === undefined ? {} : { technique }),
    ...(raw.cuisine === "" ? {} : { cuisine: raw.cuisine }),
  };
  const foods = new Set<IngredientId>();
  for (const l of lines) if (l.read.food !== undefined) foods.add(l.read.food.id);
  return freeze<ReadRecipe>({
    name: raw.name,
    ...(serves === undefined ? {} : { serves }),
    ...(range === undefined ? {} : { servesRange: range }),
    ...(makes === undefined ? {} : { makes }),
    lines,
    steps: raw.steps,
    ...(minutes === undefined ? {} : { minutes }),
    times: {
      ...(raw.prep === undefined ? {} : { prep: raw.prep }),
      ...(raw.cook === undefined ? {} : { cook: raw.cook }),
      ...(raw.total === undefined ? {} : { total: raw.total }),
    },
    unread: raw.unread,
    source: s.source,
    form: s.form,
    dish,
    understood: understood.steps,
    images: raw.images,
    notUnderstood: [...notUnderstood, ...understood.notUnderstood],
    ...(raw.node === undefined ? {} : { node: raw.node }),
    ...(raw.document === undefined ? {} : { document: raw.document }),
    foods: [...foods],
  });
}

/** Every recipe of a source, in its order; at least one, empty when nothing was read. See {@link readRecipe}. */
export function readRecipes(c: Catalogue, source: string | object, form?: RecipeForm): readonly ReadRecipe[] {
  const s = take(source, form);
  return freeze(s.raws.map((raw) => build(c, s, raw)));
}

/**
 * Reads a recipe: schema.org Recipe JSON-LD (an object or a string), an HTML page, Markdown or plain text. Without `form` it is
 * told by the text itself. Of a source with several recipes the first that has lines or steps is read, and the names of the
 * others are in `unread`; `readRecipes` reads all.
 *
 * Nothing is dropped: what is neither line nor step nor a number that was read is in `unread` as text. Nothing in the source is
 * executed or fetched. Control, direction and invisible characters are taken out of what is returned, and only there: `source`
 * is the JSON document or the text as it came. The texts are plain text, not safe HTML: escape them where they are shown.
 *
 * Limits: 5,000,000 characters, 64 levels of JSON, 1,000 of tags, 1,000 lines and steps, 50 recipes; 5,000 characters of a step
 * and 300,000 of all of them are understood, though all are kept.
 * @returns minutes in whole or hundredths; the total as stated, else preparing and cooking together
 * @throws "input too large" over a limit, "conflicting request" when the source is no text or object or `form` does not fit it
 */
export function readRecipe(c: Catalogue, source: string | object, form?: RecipeForm): ReadRecipe {
  const s = take(source, form);
  const full = s.raws.findIndex((r) => r.lines.length + r.steps.length > 0);
  const chosen = s.raws[Math.max(0, full)] ?? emptyRaw();
  for (const other of s.raws) if (other !== chosen && other.name !== "") chosen.unread.push(other.name);
  return build(c, s, chosen);
}
