import { existsSync, readdirSync, readFileSync } from "node:fs";
import { basename, join, relative } from "node:path";
import type * as z from "zod";
import { parse, YAMLParseError } from "yaml";
import {
  FoodRecord,
  KindRecord,
  PairingRecord,
  ProcedureRecord,
  SwapRecord,
} from "../../src/catalogue/authoring/schema.js";
import { SafetyTables } from "../../src/catalogue/authoring/safety-schema.js";
import { Sources, Terms } from "../../src/catalogue/authoring/terms.js";
import type { Authored, From, Problem } from "../../src/catalogue/authoring/compile.js";
import { compositionLookup, type CompositionLookup } from "../../src/catalogue/authoring/composition.js";
import { Exceptions } from "../../src/catalogue/authoring/rules/index.js";

/** What rules find and may stand, with the reason. */
export const EXCEPTIONS = "tools/exceptions.yaml";

const yamlFiles = (folder: string): string[] =>
  existsSync(folder)
    ? readdirSync(folder, { recursive: true, withFileTypes: true })
        .filter((entry) => entry.isFile() && entry.name.endsWith(".yaml"))
        .map((entry) => join(entry.parentPath, entry.name))
        .sort()
    : [];

/** Reads everything under data/. What cannot be read becomes a problem, never a lost run. */
export function readData(root: string): {
  authored: Authored;
  look: CompositionLookup;
  exceptions: Exceptions;
  problems: Problem[];
} {
  const problems: Problem[] = [];
  const name = (file: string): string => relative(root, file);
  const load = (file: string): unknown => {
    try {
      return parse(readFileSync(file, "utf8"));
    } catch (e) {
      const where = e instanceof YAMLParseError && e.linePos ? `line ${e.linePos[0].line}` : "";
      problems.push({
        file: name(file),
        record: where,
        rule: "yaml",
        message: `Not readable as YAML: ${(e as Error).message.split("\n")[0]}`,
      });
      return undefined;
    }
  };
  const check = <T>(schema: z.ZodType<T>, data: unknown, file: string, record: string): T | undefined => {
    const result = schema.safeParse(data, { reportInput: true });
    if (result.success) return result.data;
    for (const issue of result.error.issues) {
      const got =
        "input" in issue && issue.input !== undefined ? ` (got ${JSON.stringify(issue.input)?.slice(0, 80)})` : "";
      problems.push({
        file: name(file),
        record: `${record} ${issue.path.join(".")}`.trim(),
        rule: "schema",
        message: `${issue.message}${got}`,
      });
    }
    return undefined;
  };
  const list = <T>(folder: string, schema: z.ZodType<T>, key?: string): From<T>[] =>
    yamlFiles(join(root, folder)).flatMap((file) => {
      const data = load(file);
      if (data === undefined || data === null) return [];
      if (!Array.isArray(data)) {
        problems.push({
          file: name(file),
          record: "",
          rule: "schema",
          message: "This file holds a list: start each record with a dash.",
        });
        return [];
      }
      return data.flatMap((item: unknown, i) => {
        const own = key === undefined ? undefined : (item as Record<string, unknown> | null)?.[key];
        const record = check(schema, item, file, typeof own === "string" ? own : `#${i + 1}`);
        return record === undefined ? [] : [{ file: name(file), data: record }];
      });
    });

  const one = <T>(file: string, schema: z.ZodType<T>): T => {
    const value = check(schema, load(join(root, file)), join(root, file), "");
    if (value === undefined)
      throw new Error(
        `${file} must be readable before anything else:\n${problems.map((p) => `  ${p.file} ${p.record}: ${p.message}`).join("\n")}`,
      );
    return value;
  };
  const terms = one("vocabulary/terms.yaml", Terms);
  const sources = one("sources.yaml", Sources);
  const exceptions = one(EXCEPTIONS, Exceptions);
  const foods = yamlFiles(join(root, "foods")).flatMap((file) => {
    const data = load(file);
    const record = data === undefined ? undefined : check(FoodRecord, data, file, "");
    if (record && `${record.food}.yaml` !== basename(file)) {
      problems.push({
        file: name(file),
        record: record.food,
        rule: "path",
        message: `The file must be named ${record.food}.yaml after its food.`,
      });
    }
    return record ? [{ file: name(file), data: record }] : [];
  });
  const tables: Record<string, unknown> = {};
  for (const table of [
    "allergens",
    "diets",
    "hazards",
    "temperatures",
    "names",
    "portions",
    "jobs",
    "cuisines",
    "weights",
    "basics",
    "everyday",
    "makeup",
    "notes",
  ]) {
    const file = join(root, "vocabulary", `${table}.yaml`);
    if (!existsSync(file)) continue;
    const data = load(file);
    const schema = (SafetyTables as Readonly<Record<string, z.ZodType>>)[table];
    tables[table] = schema === undefined ? data : check(schema, data, file, table);
  }
  const text = (file: string): string => readFileSync(join(root, "composition", file), "utf8");
  return {
    authored: {
      terms,
      sources,
      kinds: list("vocabulary/kinds", KindRecord, "kind"),
      foods,
      procedures: list("procedures", ProcedureRecord, "id"),
      swaps: list("swaps", SwapRecord, "id"),
      pairings: list("pairings", PairingRecord),
      tables,
    },
    look: compositionLookup({
      usda: text("usda-sr28-foods.tsv"),
      weights: text("usda-sr28-household-weights.tsv"),
      mext: text("mext-2020-foods.tsv"),
    }),
    exceptions,
    problems,
  };
}
