import { adaptRecipe, readRecipes, STANDING_NOTICE, type AdaptOptions, type Recipe } from "../index.js";
import { adaptedMarkdown, adaptedText } from "./adapted.js";
import { readText, writeOut } from "./files.js";
import { open } from "./open.js";
import { listed, number, recipeForm, UsageError, type Values } from "./options.js";
import { avoidOf } from "./swap.js";

const plain = (s: string): string => s.normalize("NFC").toLowerCase().replace(/\s+/g, " ").trim();
/** The line that reads so, else the only one that holds these words: "kale" finds "500 g kale, chopped". */
function lineOf(recipe: Recipe, words: string): string {
  const wanted = plain(words);
  const exact = recipe.lines.find((l) => plain(l.text) === wanted);
  if (exact) return exact.text;
  const found = recipe.lines.filter((l) => ` ${plain(l.text).replace(/[,()]/g, " ")} `.includes(` ${wanted} `));
  if (found.length === 1 && found[0]) return found[0].text;
  const lines = recipe.lines.slice(0, 40).map((l) => `"${l.text.slice(0, 80)}"`);
  throw new UsageError(
    found.length === 0
      ? `No line of the recipe holds "${words}". Its lines: ${lines.join(", ")}.`
      : `"${words}" is in ${found.length} lines: say more of the one that is missing.`,
  );
}

/** Rewrites the recipe in a file or on standard input around what is missing, must be avoided, or for another number of people. */
export async function adaptCommand(positionals: readonly string[], values: Values): Promise<number> {
  const [file, ...rest] = positionals;
  if (file === undefined) throw new UsageError("Say which file holds the recipe, or - for standard input.");
  if (rest.length > 0) throw new UsageError("One file at a time.");
  const { format } = values;
  const markdown = format === "markdown" || (format === undefined && /\.(?:md|markdown)$/i.test(values.out ?? ""));
  if (format !== undefined && format !== "markdown" && format !== "text")
    throw new UsageError(`--format is markdown or text, not "${format}".`);
  const c = open(values);
  const all = readRecipes(c, await readText(file), recipeForm(values));
  const recipe = all.find((r) => r.lines.length > 0);
  if (!recipe)
    throw new UsageError(
      `${file === "-" ? "Standard input" : file} holds no recipe with ingredients that could be read.`,
    );
  const avoid = avoidOf(c, listed(values.avoid));
  const have = listed(values.have);
  const serves = number(values, "serves");
  // Lines have commas of their own, so that --missing is repeated and never a list
  const missing = values.missing?.map((words) => ({ line: lineOf(recipe, words) }));
  if (missing === undefined && avoid === undefined && serves === undefined)
    throw new UsageError('Say what changes: --missing "kale" (repeat), --avoid egg, --serves 6.');
  const choices: AdaptOptions = {
    ...(missing === undefined ? {} : { missing }),
    ...(avoid === undefined ? {} : { avoid }),
    ...(have === undefined ? {} : { have }),
    ...(values["only-from-have"] === true ? { onlyFromHave: true } : {}),
    ...(serves === undefined ? {} : { serves }),
  };
  const adapted = adaptRecipe(c, recipe, choices);
  const { source: _source, ...data } = adapted;
  const text =
    values.json === true
      ? `${JSON.stringify({ ...data, notice: STANDING_NOTICE }, undefined, 2)}\n`
      : markdown
        ? `${adaptedMarkdown(adapted)}\n${STANDING_NOTICE}\n`
        : `${adaptedText(adapted)}\n\n${STANDING_NOTICE}\n`;
  writeOut(text, values);
  return adapted.notes.some((n) => n.startsWith("NOT REPLACED")) ? 1 : 0;
}
