import { fail } from "./errors.js";
import { makeExtension } from "./catalogue/overlay.js";
import { builtIn } from "./catalogue/authoring/builtin.js";
import { compile, type Authored, type Problem } from "./catalogue/authoring/compile.js";
import { checkAll } from "./catalogue/authoring/rules/index.js";
import { ExtensionFile } from "./catalogue/authoring/extension-schema.js";
import type { Extension } from "./types.js";

/** "chard.stem" of "chard.stem/fresh". */
const foodOf = (id: string): string => id.slice(0, id.indexOf("/"));

const asIssue = (p: Problem): { path: string; message: string; received: unknown } => ({
  path: [p.file, p.record].filter((s) => s !== "").join(" "),
  message: `[${p.rule}] ${p.message}`,
  received: undefined,
});

/** What was given, short: the caller's own objects are neither kept nor frozen, and a message stays a message. */
function brief(value: unknown): unknown {
  if (typeof value === "string") return value.length > 200 ? `${value.slice(0, 200)}…` : value;
  if (Array.isArray(value)) return `a list of ${value.length}`;
  return typeof value === "object" && value !== null ? "an object" : value;
}

/**
 * Checks foods, kinds, procedures and swaps of your own by the same schemas and rules as the built-in catalogue.
 * Shape: `{ name, sources?, kinds?, foods?, procedures?, swaps? }`, each record as in the data guide. Figures are given by hand under
 * `figures` (`composition: none`): the open tables are not shipped.
 * @throws `invalid extension` listing every problem with its path
 */
export function readExtension(json: unknown): Extension {
  const result = ExtensionFile.safeParse(json, { reportInput: true });
  if (!result.success) {
    const issues = result.error.issues.map((i) => ({
      path: i.path.join("."),
      message: i.message,
      received: brief((i as { input?: unknown }).input),
    }));
    return fail(
      "invalid extension",
      `The extension has ${issues.length} problems; first: ${issues[0]?.path ?? ""}: ${issues[0]?.message ?? ""}`,
      { issues },
    );
  }
  const { name, sources = {}, kinds = [], foods = [], procedures = [], swaps = [] } = result.data;
  const built = builtIn();
  const from = <T>(list: readonly T[]): { file: string; data: T }[] => list.map((data) => ({ file: name, data }));
  const authored: Authored = {
    terms: built.terms,
    sources: { ...built.sources, ...sources },
    kinds: [...built.kinds.map((data) => ({ file: "catalogue", data })), ...from(kinds)],
    foods: from(foods),
    procedures: [...built.procedures.map((data) => ({ file: "catalogue", data })), ...from(procedures)],
    swaps: from(swaps),
    tables: {},
  };
  const flat = compile(authored, () => undefined, built.allergens, new Set(built.ids.map(foodOf)));
  const problems = checkAll({ authored, flat, look: () => undefined, alsoKnown: new Set(built.ids) });
  if (problems.length > 0)
    return fail(
      "invalid extension",
      `The extension "${name}" has ${problems.length} problems; first: ${problems[0]?.record ?? ""}: ${problems[0]?.message ?? ""}`,
      { issues: problems.map(asIssue) },
    );
  const own = new Set(procedures.map((p) => p.id));
  return makeExtension(name, {
    ...flat,
    commons: { ...flat.commons, procedures: flat.commons.procedures.filter((p) => own.has(p.id)) },
  });
}
