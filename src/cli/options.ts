import { parseArgs } from "node:util";

export const OPTIONS = {
  instead: { type: "string" },
  amount: { type: "string" },
  role: { type: "string", multiple: true },
  for: { type: "string" },
  technique: { type: "string" },
  cuisine: { type: "string" },
  line: { type: "string", multiple: true },
  serves: { type: "string" },
  grams: { type: "string" },
  have: { type: "string", multiple: true },
  "only-from-have": { type: "boolean" },
  avoid: { type: "string", multiple: true },
  minutes: { type: "string" },
  computed: { type: "boolean" },
  prefer: { type: "string" },
  limit: { type: "string" },
  locale: { type: "string" },
  measures: { type: "string" },
  extension: { type: "string", multiple: true },
  why: { type: "boolean" },
  form: { type: "string" },
  format: { type: "string" },
  out: { type: "string" },
  overwrite: { type: "boolean" },
  ndjson: { type: "boolean" },
  missing: { type: "string", multiple: true },
  json: { type: "boolean" },
  help: { type: "boolean", short: "h" },
  version: { type: "boolean", short: "v" },
} as const;

export type Values = ReturnType<typeof readArgs>["values"];

/** Splits the command line. Throws a TypeError that says which option is not known or wants a value. */
export function readArgs(argv: readonly string[]): ReturnType<typeof parse> {
  return parse([...argv]);
}
function parse(args: string[]) {
  return parseArgs({ args, options: OPTIONS, allowPositionals: true, strict: true });
}

/** Bad input on the command line: what is wrong and what would work. Ends the program with 2. */
export class UsageError extends Error {}

export function number(values: Values, name: "serves" | "grams" | "minutes" | "limit"): number | undefined {
  const text = values[name];
  if (text === undefined) return undefined;
  const value = Number(text);
  if (!Number.isFinite(value) || value <= 0) throw new UsageError(`--${name} wants a number above 0, not "${text}".`);
  return value;
}
/** "--have a,b --have c" as a list. */
export const listed = (values: readonly string[] | undefined): string[] | undefined =>
  values
    ?.flatMap((v) => v.split(","))
    .map((v) => v.trim())
    .filter((v) => v !== "");

const FORMS = ["json-ld", "html", "markdown", "text"] as const;
/** How the recipe is written; told by the text itself when left out. */
export function recipeForm(values: Values): (typeof FORMS)[number] | undefined {
  if (values.form === undefined) return undefined;
  const found = FORMS.find((f) => f === values.form);
  if (!found) throw new UsageError(`--form is one of ${FORMS.join(", ")}, not "${values.form}".`);
  return found;
}
