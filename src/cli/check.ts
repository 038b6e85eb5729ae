import { readExtension } from "../extend.js";
import { isSteadfareError, openCatalogue } from "../index.js";
import { readData } from "./open.js";
import { UsageError, type Values } from "./options.js";

/** Lints a user's own file by the catalogue's rules and tries it over the catalogue. */
export function checkCommand(positionals: readonly string[], values: Values): number {
  const file = positionals[0];
  if (file === undefined) throw new UsageError("Say which file to check.");
  const data = readData(file);
  let issues: readonly { path: string; message: string }[] = [];
  try {
    openCatalogue({ extensions: [readExtension(data)] });
  } catch (e) {
    if (isSteadfareError(e, "invalid extension")) issues = e.data.issues;
    else if (isSteadfareError(e, "extension conflict")) issues = [{ path: e.data.id, message: e.message }];
    else throw e;
  }
  if (values.json) process.stdout.write(`${JSON.stringify({ file, ok: issues.length === 0, issues }, undefined, 2)}\n`);
  else if (issues.length === 0) process.stdout.write(`${file}: nothing wrong.\n`);
  else for (const i of issues) process.stdout.write(`${file}: ${i.path}: ${i.message}\n`);
  return issues.length === 0 ? 0 : 1;
}
