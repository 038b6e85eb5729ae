import { adaptRecipe, STANDING_NOTICE, type AdaptOptions, type Recipe } from "../index.js";
import { bulk, recipeOf } from "./bulk.js";
import { open } from "./open.js";
import { listed, number, UsageError, type Values } from "./options.js";
import { avoidOf } from "./swap.js";

const plain = (s: string): string =>
  ` ${s
    .normalize("NFC")
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, " ")
    .trim()} `;
/** Every line that holds the words: of many recipes some have none, some two. */
const linesWith = (recipe: Recipe, words: readonly string[]): { line: string }[] =>
  [...new Set(recipe.lines.map((l) => l.text))]
    .filter((text) => words.some((w) => plain(text).includes(plain(w))))
    .map((line) => ({ line }));

/** One recipe a line in, the adapted one a line out: the same options for all. A recipe that has none of it comes back unchanged. */
export async function adaptBulk(positionals: readonly string[], values: Values): Promise<number> {
  const [file, ...rest] = positionals;
  if (file === undefined) throw new UsageError("Say which file holds the recipes, or - for standard input.");
  if (rest.length > 0) throw new UsageError("One file at a time.");
  const c = open(values);
  const avoid = avoidOf(c, listed(values.avoid));
  const have = listed(values.have);
  const serves = number(values, "serves");
  const { missing } = values;
  if (missing === undefined && avoid === undefined && serves === undefined)
    throw new UsageError('Say what changes: --missing "kale" (repeat), --avoid egg, --serves 6.');
  if (missing?.some((words) => plain(words).trim() === "")) throw new UsageError("--missing wants words.");
  const common: AdaptOptions = {
    ...(avoid === undefined ? {} : { avoid }),
    ...(have === undefined ? {} : { have }),
    ...(values["only-from-have"] === true ? { onlyFromHave: true } : {}),
    ...(serves === undefined ? {} : { serves }),
  };
  const empty: Recipe = { name: "", lines: [], steps: [], unread: [], source: undefined };
  // What is wrong with the options is wrong with every record: it is said once, before the first.
  adaptRecipe(c, empty, common);
  return bulk(file, values, (record) => {
    const recipe = recipeOf(c, record, values);
    const choices = missing === undefined ? common : { ...common, missing: linesWith(recipe, missing) };
    const { source: _source, ...adapted } = adaptRecipe(c, recipe, choices);
    const { name, serves: people, minutes, lines, steps, changes, notes, refused } = adapted;
    const texts = (all: Recipe["steps"]): object[] =>
      all.map(({ text, group }) => (group === undefined ? { text } : { text, group }));
    return {
      recipe: name,
      ...(people === undefined ? {} : { serves: people }),
      ...(minutes === undefined ? {} : { minutes }),
      lines: texts(lines),
      steps: texts(steps),
      changes,
      notes,
      refused,
      notice: STANDING_NOTICE,
    };
  });
}
