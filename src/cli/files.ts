import { createReadStream, createWriteStream, fstatSync, openSync, statSync, writeFileSync } from "node:fs";
import type { Readable, Writable } from "node:stream";
import { UsageError, type Values } from "./options.js";

/** Bytes of one recipe's file: a page of 5,000,000 characters, four bytes each. */
const MAX_BYTES = 20_000_000;

/** Standard input for "-". Errors of the file system come out as they are: main says them in words. */
export const streamOf = (file: string): Readable => (file === "-" ? process.stdin : createReadStream(file));
/** Bytes of a plain file; undefined for standard input and pipes, which do not say. */
export function sizeOf(file: string): number | undefined {
  const stat = file === "-" ? fstatSync(0) : statSync(file);
  return stat.isFile() ? stat.size : undefined;
}

/** UTF-8 as nearly everything is; UTF-16 by its mark; else the old Western encoding pages without a word about it are in. */
function decoded(bytes: Uint8Array): string {
  const [a, b] = bytes;
  if (a === 0xff && b === 0xfe) return new TextDecoder("utf-16le").decode(bytes);
  if (a === 0xfe && b === 0xff) return new TextDecoder("utf-16be").decode(bytes);
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder("windows-1252").decode(bytes);
  }
}

/** A file or standard input as text, no more of it held than a recipe may have. */
export async function readText(file: string): Promise<string> {
  const parts: Uint8Array[] = [];
  let size = 0;
  for await (const chunk of streamOf(file) as AsyncIterable<Uint8Array>) {
    size += chunk.length;
    if (size > MAX_BYTES)
      throw new UsageError(`${file === "-" ? "Standard input" : file} is larger than ${MAX_BYTES / 1_000_000} MB.`);
    parts.push(chunk);
  }
  return decoded(Buffer.concat(parts));
}

/** "wx" makes a file anew or not at all, with no moment between looking and writing. */
const flagOf = (values: Values): "w" | "wx" => (values.overwrite === true ? "w" : "wx");
function there(e: unknown, path: string): unknown {
  return (e as NodeJS.ErrnoException).code === "EEXIST"
    ? new UsageError(`${path} is there already; --overwrite writes over it.`)
    : e;
}

/** Writes an answer to --out, never over a file unless told to, or to standard output. */
export function writeOut(text: string, values: Values): void {
  const { out } = values;
  if (out === undefined || out === "-") return void process.stdout.write(text);
  try {
    writeFileSync(out, text, { flag: flagOf(values) });
  } catch (e) {
    throw there(e, out);
  }
}

/** --out as a stream, opened before anything is read; standard output without it. */
export function outStream(values: Values, input: string): Writable {
  const { out } = values;
  if (out === undefined || out === "-") return process.stdout;
  if (input !== "-" && same(input, out)) throw new UsageError("--out is the file that is read.");
  try {
    return createWriteStream(out, { fd: openSync(out, flagOf(values)) });
  } catch (e) {
    throw there(e, out);
  }
}
function same(one: string, other: string): boolean {
  try {
    const [a, b] = [statSync(one), statSync(other)];
    return a.dev === b.dev && a.ino === b.ino;
  } catch {
    return false;
  }
}
