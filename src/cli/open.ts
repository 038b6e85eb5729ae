import { readFileSync } from "node:fs";
import { parse } from "yaml";
import { openCatalogue, type Catalogue } from "../index.js";
import { readExtension } from "../extend.js";
import { UsageError, type Values } from "./options.js";

/** A file as data: JSON is YAML too. "-" is standard input. */
export function readData(file: string): unknown {
  const text = readFileSync(file === "-" ? 0 : file, "utf8");
  try {
    return parse(text, { maxAliasCount: 100 }) as unknown;
  } catch (e) {
    throw new UsageError(`${file} is neither JSON nor YAML: ${(e as Error).message.split("\n")[0] ?? ""}`);
  }
}

export function open(values: Values): Catalogue {
  const { locale, measures } = values;
  if (measures !== undefined && measures !== "us" && measures !== "metric")
    throw new UsageError(`--measures is us or metric, not "${measures}".`);
  return openCatalogue({
    ...(locale === undefined ? {} : { locale: locale as "en-US" }),
    ...(measures === undefined ? {} : { measures }),
    ...(values.extension ? { extensions: values.extension.map((file) => readExtension(readData(file))) } : {}),
  });
}
