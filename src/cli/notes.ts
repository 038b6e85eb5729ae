import {
  jsonForPage,
  readRecipe,
  readRecipes,
  renderNotes,
  STANDING_NOTICE,
  swapNotes,
  type Catalogue,
  type NoteOptions,
  type SwapNotes,
} from "../index.js";
import { bulk, recipeOf } from "./bulk.js";
import { readText, writeOut } from "./files.js";
import { open } from "./open.js";
import { listed, number, recipeForm, UsageError, type Values } from "./options.js";
import { avoidOf } from "./swap.js";

const FORMATS = ["markdown", "html", "text", "json-ld"] as const;
type Format = (typeof FORMATS)[number];
const ENDINGS: Readonly<Record<string, Format>> = {
  md: "markdown",
  markdown: "markdown",
  html: "html",
  htm: "html",
  txt: "text",
  json: "json-ld",
  jsonld: "json-ld",
};

/** The format asked for, else the one the name of --out ends in, else text. */
function formatOf(values: Values): Format {
  const ending = values.out?.slice(values.out.lastIndexOf(".") + 1).toLowerCase() ?? "";
  const word = values.format ?? (Object.hasOwn(ENDINGS, ending) ? ENDINGS[ending] : "text");
  const found = FORMATS.find((f) => f === word);
  if (!found) throw new UsageError(`--format is one of ${FORMATS.join(", ")}, not "${word}".`);
  return found;
}
function optionsOf(c: Catalogue, values: Values): NoteOptions {
  const avoid = avoidOf(c, listed(values.avoid));
  const have = listed(values.have);
  const serves = number(values, "serves");
  const perLine = number(values, "limit");
  return {
    ...(avoid === undefined ? {} : { avoid }),
    ...(have === undefined ? {} : { have }),
    ...(serves === undefined ? {} : { serves }),
    ...(perLine === undefined ? {} : { perLine }),
  };
}
/** As data: without the source, which the caller has, and with the notice every printed form carries. */
function dataOf({ source: _source, ...notes }: SwapNotes): object {
  return { ...notes, notice: STANDING_NOTICE };
}
const printed = (notes: SwapNotes, format: Format): string =>
  format === "json-ld" ? `${jsonForPage(renderNotes(notes, format))}\n` : renderNotes(notes, format);

const say = (text: string): void => void process.stderr.write(`${text}\n`);

/** Substitution notes for the recipe in a file or on standard input; with --ndjson for one recipe a line. */
export async function notesCommand(positionals: readonly string[], values: Values): Promise<number> {
  const [file, ...rest] = positionals;
  if (file === undefined) throw new UsageError("Say which file holds the recipe, or - for standard input.");
  if (rest.length > 0) throw new UsageError("One file at a time; many recipes go through --ndjson, one a line.");
  const c = open(values);
  const options = optionsOf(c, values);
  const format = formatOf(values);
  const form = recipeForm(values);
  if (values.ndjson === true) {
    // What is wrong with the options is wrong with every record: it is said once, before the first.
    swapNotes(c, readRecipe(c, { "@type": "Recipe" }), options);
    return bulk(file, values, (record) => {
      const notes = swapNotes(c, recipeOf(c, record, values), options);
      if (values.json) return dataOf(notes);
      return {
        recipe: notes.recipe,
        notes: format === "json-ld" ? renderNotes(notes, format) : renderNotes(notes, format),
      };
    });
  }
  const all = readRecipes(c, await readText(file), form);
  const recipe = all.find((r) => r.lines.length > 0);
  if (!recipe)
    throw new UsageError(
      `${file === "-" ? "Standard input" : file} holds no recipe with ingredients that could be read.`,
    );
  const notes = swapNotes(c, recipe, options);
  const asked = values.json === true ? `${JSON.stringify(dataOf(notes), undefined, 2)}\n` : printed(notes, format);
  if (asked !== "") writeOut(asked, values);
  const others = all.filter((r) => r !== recipe && r.lines.length > 0).length;
  if (others > 0) say(`Notes for the first recipe; the source holds ${others} more.`);
  if (notes.notes.length === 0) say("Nothing to note: no line has a stand-in worth printing.");
  return notes.notes.length === 0 ? 1 : 0;
}
