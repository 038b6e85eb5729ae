import { once } from "node:events";
import type { Writable } from "node:stream";
import { isSteadfareError, readRecipe, type Catalogue } from "../index.js";
import { linesIn, MAX_LINE, type Line } from "./bulk-lines.js";
import { progressOn } from "./bulk-progress.js";
import { outStream, sizeOf, streamOf } from "./files.js";
import { recipeForm, UsageError, type Values } from "./options.js";

/** What one record becomes: a plain object. Throws for a record it cannot use. */
export type Work = (record: string | object) => object;

/** Says what is wrong with a line before anything is asked about it. */
class Unreadable extends UsageError {}

/** The recipe of a record: the first it holds. */
export function recipeOf(c: Catalogue, record: string | object, values: Values): ReturnType<typeof readRecipe> {
  const recipe = readRecipe(c, record, typeof record === "string" ? recipeForm(values) : undefined);
  if (recipe.lines.length === 0)
    throw new Unreadable("The record holds no recipe with ingredients that could be read.");
  return recipe;
}

/** A record is a JSON object (a recipe) or a JSON string (a recipe as text, page or Markdown). */
function recordOf(line: Line): string | object {
  if (line.over !== undefined)
    throw new Unreadable(`The line has ${line.over} bytes; a record may have ${MAX_LINE} at most.`);
  if (line.broken) throw new Unreadable("The line is not UTF-8.");
  let value: unknown;
  try {
    value = JSON.parse(line.text);
  } catch (e) {
    throw new Unreadable(`The line is not JSON: ${(e as Error).message}`);
  }
  if (typeof value === "string" || (typeof value === "object" && value !== null)) return value;
  throw new Unreadable("A record is an object, or a text in quotation marks.");
}

/** The record's own name, so that answers of several processes can be put beside their recipes. */
function nameOf(record: unknown): { readonly id?: string | number } {
  if (typeof record !== "object" || record === null || Array.isArray(record)) return {};
  for (const key of ["@id", "id", "identifier", "url"]) {
    const id = Object.hasOwn(record, key) ? (record as Record<string, unknown>)[key] : undefined;
    if ((typeof id === "string" && id.length <= 2000) || (typeof id === "number" && Number.isFinite(id))) return { id };
  }
  return {};
}

function errorOf(e: unknown): object {
  if (isSteadfareError(e)) return { code: e.code, message: e.message, data: e.data };
  if (e instanceof UsageError) return { code: "unreadable record", message: e.message };
  // A fault of ours costs this record and no other.
  return { code: "failed", message: e instanceof Error ? e.message : String(e) };
}

/** Waits while the reader is behind. False when it is gone. */
export async function write(out: Writable, text: string): Promise<boolean> {
  if (out.destroyed || out.writableEnded || out.errored !== null) return false;
  if (out.write(text)) return true;
  const stop = new AbortController();
  const { signal } = stop;
  await Promise.race([once(out, "drain", { signal }), once(out, "close", { signal })]).catch(() => undefined);
  stop.abort();
  return !out.destroyed && out.errored === null;
}

/**
 * One JSON record a line in, one a line out, in order: `{ line, id?, ... }`, or `{ line, id?, error: { code, message, data? } }` for one
 * that could not be used, which stops none of the others. One line and one answer are held at a time.
 * @returns 0, or 2 when any record could not be used
 */
export async function bulk(file: string, values: Values, work: Work): Promise<number> {
  const total = sizeOf(file);
  const out = outStream(values, file);
  const progress = progressOn(process.stderr, total);
  let bad = 0;
  let gone = false;
  for await (const line of linesIn(streamOf(file) as AsyncIterable<Uint8Array>, (n) => progress.bytes(n))) {
    if (line.text === "" && line.over === undefined && line.broken !== true) continue;
    let id: ReturnType<typeof nameOf> = {};
    let answer: object;
    let ok = true;
    try {
      const record = recordOf(line);
      id = nameOf(record);
      answer = work(record);
    } catch (e) {
      ok = false;
      bad++;
      answer = { error: errorOf(e) };
    }
    progress.record(ok);
    gone = !(await write(out, `${JSON.stringify({ line: line.number, ...id, ...answer })}\n`));
    if (gone) break;
  }
  progress.end();
  if (out !== process.stdout && !gone) {
    out.end();
    await once(out, "finish");
  }
  return bad > 0 ? 2 : 0;
}
