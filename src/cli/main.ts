import { readFileSync } from "node:fs";
import { isSteadfareError, type ErrorData, type SteadfareError } from "../index.js";
import { adaptCommand } from "./adapt.js";
import { adaptBulk } from "./bulk-adapt.js";
import { checkCommand } from "./check.js";
import { mealCommand } from "./meal.js";
import { pairCommand } from "./pair.js";
import { notesCommand } from "./notes.js";
import { readArgs, UsageError, type Values } from "./options.js";
import { swapCommand } from "./swap.js";

const HELP = `steadfare: what can stand in for a missing ingredient, how much of it, and what else changes

  steadfare swap "450 g salt cod"              stand-ins, best first
  steadfare swap "1 egg" --for binding --instead "ground flaxseed"
  steadfare meal FILE                          does the meal add up? (JSON; - reads standard input)
  steadfare notes FILE                         substitution notes to print under a recipe (- reads standard input)
  steadfare adapt FILE --missing "kale"        the recipe rewritten around what is missing (- reads standard input)
  steadfare pair "kale"                        what goes with it, best first
  steadfare check FILE                         check foods of your own (YAML or JSON) by the catalogue's rules

of swap:
  --instead FOOD      judge this one stand-in
  --for WORDS         what it is wanted for: binding, thickening, soup, baking ...
  --role ROLE         the job itself (repeat for several)
  --technique WORD    raw, simmer, braise, stir-fry, bake ...      --cuisine WORDS
  --line "2 lb potatoes"   another line of the dish (repeat)       --serves N   --grams N
  --have A,B          what is in the house    --only-from-have     --minutes N
  --avoid A,B         allergens, diets or foods to keep out        --computed   ignore published swaps
  --prefer closest | quickest | cheapest      --limit N (1 to 200)  --why        show the marks
  swap - reads one request a line (text or JSON) and writes one JSON answer a line
of notes:
  --format markdown | html | text | json-ld    (the ending of --out says it too)
  --have A,B   --avoid A,B   --serves N   --limit N (swaps a line, 1 to 10)
  --form json-ld | html | markdown | text      how the recipe is written, when the text itself does not tell
  --out FILE   writes there, never over a file that is there already; with --overwrite it does
  --ndjson     one recipe a line in (a JSON object, or a text in quotation marks), one answer a line out
of adapt:
  --missing "LINE OR WORDS"                    a line of the recipe, or words that only one line has (repeat)
  --avoid A,B   --serves N   --have A,B   --only-from-have   --form ...   --format markdown | text   --out FILE
  --ndjson     as for notes; every line that holds the words of --missing
of pair:
  --have A,B   --avoid A,B   --cuisine WORDS   --limit N (1 to 200)
everywhere:
  --json   --locale en-US | en-GB   --measures us | metric   --extension FILE

Ends with 0; with 1 when the answer is no (no stand-in, nothing to note, nothing that goes with it, a slot open, a file that fails its check); with 2 for input it cannot use.
Allergen and safety facts are advice, never a guarantee: read labels, follow local food-safety rules, ask a professional where it matters.`;

const COMMANDS: Readonly<Record<string, (positionals: readonly string[], values: Values) => number | Promise<number>>> =
  {
    swap: swapCommand,
    notes: notesCommand,
    adapt: (rest, values) => (values.ndjson === true ? adaptBulk : adaptCommand)(rest, values),
    meal: mealCommand,
    pair: pairCommand,
    check: checkCommand,
  };

const isTerminalError = (e: unknown): e is NodeJS.ErrnoException => e instanceof Error && "code" in e;

/** One line on what was wrong, and what would work. */
function explain(e: unknown): string {
  if (isSteadfareError(e)) {
    const known = e as SteadfareError & { data: ErrorData[keyof ErrorData] };
    return known.message;
  }
  if (isTerminalError(e) && e.code === "ENOENT") return `No such file: ${e.path ?? ""}`;
  if (isTerminalError(e) && e.code === "EISDIR") return "That is a folder, not a file.";
  if (isTerminalError(e) && e.code === "EACCES") return `Not allowed: ${e.path ?? ""}`;
  return e instanceof Error ? e.message : String(e);
}

async function main(): Promise<number> {
  const { values, positionals } = readArgs(process.argv.slice(2));
  if (values.version) {
    const pkg = JSON.parse(readFileSync(new URL("../package.json", import.meta.url), "utf8")) as { version: string };
    process.stdout.write(`${pkg.version}\n`);
    return 0;
  }
  const [command, ...rest] = positionals;
  if (values.help || command === undefined) {
    process.stdout.write(`${HELP}\n`);
    return command === undefined && !values.help ? 2 : 0;
  }
  const run = Object.hasOwn(COMMANDS, command) ? COMMANDS[command] : undefined;
  if (!run)
    throw new UsageError(
      `There is no command "${command}". There are: ${Object.keys(COMMANDS).join(", ")}. See steadfare --help.`,
    );
  return run(rest, values);
}

// A reader that closes early (head) is no failure.
process.stdout.on("error", (e: NodeJS.ErrnoException) => {
  if (e.code === "EPIPE") process.exitCode = 0;
  else throw e;
});
try {
  process.exitCode = await main();
} catch (e) {
  process.stderr.write(`steadfare: ${explain(e)}\n`);
  process.exitCode = 2;
}
