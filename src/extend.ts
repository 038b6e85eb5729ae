import { fail } from "./errors.js";
import { makeExtension } from "./catalogue/overlay.js";
import { builtIn } from "./catalogue/authoring/builtin.js";
import { compile, type Authored, type Problem } from "./catalogue/authoring/compile.js";
import { checkAll } from "./catalogue/authoring/rules/index.js";
import { ExtensionFile } from "./catalogue/authoring/extension-schema.js";
import type { Extension } from "./types.js";

/** "chard.stem" of "chard.stem/fresh". */
const foodOf = (id: string): string => id.slice(0, id.indexOf("/"));

interface Issue {
  readonly path: string;
  readonly message: string;
  readonly received: unknown;
}
/** A message stays a message, however long the words it repeats. */
const LONGEST = 400;
const cut = (text: string): string => (text.length > LONGEST ? `${text.slice(0, LONGEST)}…` : text);
/** What was given, in short: the caller's own objects are neither kept nor frozen. */
function brief(value: unknown): unknown {
  if (typeof value === "string") return cut(value);
  if (Array.isArray(value)) return `a list of ${value.length}`;
  return typeof value === "object" && value !== null ? "an object" : value;
}
const issueOf = (path: string, message: string, received: unknown): Issue => ({
  path: cut(path),
  message: cut(message),
  received: brief(received),
});
const ofRule = (p: Problem): Issue =>
  issueOf([p.file, p.record].filter((s) => s !== "").join(" "), `[${p.rule}] ${p.message}`, undefined);
function refuse(what: string, issues: readonly Issue[]): never {
  const [first] = issues;
  const count = issues.length === 1 ? "1 problem" : `${issues.length} problems`;
  return fail("invalid extension", `${what} has ${count}; first: ${first?.path ?? ""}: ${first?.message ?? ""}`, {
    issues,
  });
}

/**
 * Checks foods, kinds, procedures and swaps of your own by the same schemas and rules as the built-in catalogue.
 * Shape: `{ name, sources?, kinds?, foods?, procedures?, swaps? }`, each record as in the data guide. Figures are given by hand under
 * `figures` (`composition: none`): the open tables are not shipped.
 * @throws `invalid extension` listing every problem with its path
 */
export function readExtension(json: unknown): Extension {
  const result = ExtensionFile.safeParse(json, { reportInput: true });
  if (!result.success)
    return refuse(
      "The extension",
      result.error.issues.map((i) => issueOf(i.path.join("."), i.message, (i as { input?: unknown }).input)),
    );
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
  if (problems.length > 0) return refuse(`The extension "${name}"`, problems.map(ofRule));
  const own = new Set(procedures.map((p) => p.id));
  return makeExtension(name, {
    ...flat,
    commons: { ...flat.commons, procedures: flat.commons.procedures.filter((p) => own.has(p.id)) },
  });
}
