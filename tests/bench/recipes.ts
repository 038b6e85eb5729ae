// Recipes a second of one core, read and noted, and the memory a long stream of them takes. `npm run bench` runs it after the rest;
// `npx tsx tests/bench/recipes.ts --records 100000` streams as many.
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { linesIn } from "../../src/cli/bulk-lines.js";
import { openCatalogue, readRecipe, renderNotes, swapNotes } from "../../src/index.js";

const FOLDER = fileURLToPath(new URL("../fixtures/recipes", import.meta.url));
const SOURCES = readdirSync(FOLDER).flatMap((id) =>
  ["recipe.json", "page.html", "recipe.md", "recipe.txt"].map((file) => ({
    form: file.slice(file.indexOf(".") + 1),
    text: readFileSync(join(FOLDER, id, file), "utf8"),
  })),
);
const say = (text: string): void => void process.stdout.write(`${text}\n`);

/** Seconds of one core this process has used: the same whatever else the machine does. */
function core(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1_000_000;
}
/** How often a second of one core `work` is done, over at least `budget` seconds. */
function rate(work: (i: number) => unknown, budget: number): string {
  for (let i = 0; i < SOURCES.length; i++) work(i);
  const start = core();
  let n = 0;
  while (core() - start < budget) work(n++);
  return (n / (core() - start)).toFixed(0);
}

async function stream(records: number): Promise<void> {
  const c = openCatalogue();
  const at = new Set([0.1, 0.25, 0.5, 0.75, 1].map((share) => Math.ceil(records * share)));
  // eslint-disable-next-line @typescript-eslint/require-await
  async function* bytes(): AsyncGenerator<Uint8Array> {
    for (let i = 0; i < records; i++) {
      const recipe = { "@type": "Recipe", name: `R${i}`, recipeIngredient: [`${(i % 900) + 1} g water`, "1 tsp salt"] };
      yield Buffer.from(`${JSON.stringify({ ...recipe, recipeInstructions: ["Boil for 10 minutes."] })}\n`);
    }
  }
  const start = core();
  let done = 0;
  for await (const { text } of linesIn(bytes())) {
    renderNotes(swapNotes(c, readRecipe(c, JSON.parse(text) as object)), "text");
    if (at.has(++done)) say(`  after ${done}: ${(process.memoryUsage().rss / 1_000_000).toFixed(0)} MB resident`);
  }
  say(`  ${(done / (core() - start)).toFixed(0)} a second of one core`);
}

/** Prints the figures of this file. */
export async function recipeTimes(records: number): Promise<void> {
  const c = openCatalogue();
  for (const form of ["json", "html", "md", "txt"]) {
    const texts = SOURCES.filter((s) => s.form === form).map((s) => s.text);
    say(`recipes read a second of one core, ${form}: ${rate((i) => readRecipe(c, texts[i % texts.length] ?? ""), 1)}`);
  }
  const recipes = SOURCES.filter((s) => s.form === "json").map((s) => readRecipe(c, s.text));
  const lines = recipes.reduce((sum, r) => sum + r.lines.length, 0) / recipes.length;
  const noted = rate((i) => swapNotes(c, recipes[i % recipes.length] as (typeof recipes)[number]), 3);
  say(`recipes noted a second of one core (${lines.toFixed(1)} lines each): ${noted}`);
  say(`a stream of ${records} short recipes:`);
  await stream(records);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const at = process.argv.indexOf("--records");
  await recipeTimes(at < 0 ? 5000 : Number(process.argv[at + 1]));
}
