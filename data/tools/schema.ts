// Writes JSON Schemas of the YAML files into docs/schema, for editors. With --check it writes nothing and exits 1 when one is out of date.
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import * as z from "zod";
import { ExtensionFile } from "../../src/catalogue/authoring/extension-schema.js";
import {
  FoodRecord,
  KindRecord,
  PairingRecord,
  ProcedureRecord,
  SwapRecord,
} from "../../src/catalogue/authoring/schema.js";
import type { Terms } from "../../src/catalogue/authoring/terms.js";
import { ALLERGENS } from "../../src/catalogue/words.js";
import { page } from "./page.js";
import { readData } from "./read.js";

type Json = Record<string, unknown>;
const object = (value: unknown): Json | undefined =>
  typeof value === "object" && value !== null && !Array.isArray(value) ? (value as Json) : undefined;

/** Which list of the vocabulary a field takes its words from, so that an editor can offer them. */
function vocabulary(terms: Terms): Readonly<Record<string, readonly string[]>> {
  const roles = [...Object.keys(terms.role), ...Object.keys(terms["extra role"])];
  return {
    roles,
    role: roles,
    slot: terms.slot,
    can: terms.capability,
    cannot: terms.capability,
    flavour: terms["judged flavour"],
    aroma: terms.aroma,
    dominant: terms.note,
    origin: terms.origin,
    tags: Object.keys(terms.tag),
    figures: Object.keys(terms.figure),
    minutes: terms.technique,
    cookedBy: [...terms.technique, ...terms.technique.map((t) => `${t} meat`)],
    technique: terms.technique,
    techniques: terms.technique,
    traditions: terms.tradition,
    tradition: terms.tradition,
    starchKind: terms["starch kind"],
    acidKind: terms["acid kind"],
    pungencyKind: terms["pungency kind"],
    contains: ALLERGENS,
    may: ALLERGENS,
    unknown: ALLERGENS,
  };
}
/** Puts the words in: as the value of a text, the items of a list, or the keys of a record. */
function offer(schema: unknown, words: Readonly<Record<string, readonly string[]>>): void {
  for (const inner of Array.isArray(schema) ? (schema as unknown[]) : Object.values(object(schema) ?? {}))
    offer(inner, words);
  for (const [field, value] of Object.entries(object(object(schema)?.["properties"]) ?? {})) {
    const list = words[field];
    const at = object(value);
    if (list === undefined || at === undefined) continue;
    if (at["type"] === "string") at["enum"] = list;
    else if (at["type"] === "array") Object.assign(object(at["items"]) ?? {}, { enum: list });
    // A record of minutes or aromas; a procedure's `minutes` has fixed fields and is left alone.
    else if (at["propertyNames"] !== undefined) at["propertyNames"] = { type: "string", enum: list };
  }
}

const root = join(dirname(fileURLToPath(import.meta.url)), "..");
const check = process.argv.includes("--check");
const words = vocabulary(readData(root).authored.terms);
const FILES: readonly (readonly [name: string, title: string, schema: z.ZodType])[] = [
  ["food", "One food: data/foods/<family>/<food>.yaml", FoodRecord],
  ["kinds", "Kinds: data/vocabulary/kinds/*.yaml", z.array(KindRecord)],
  ["procedures", "Procedures: data/procedures/*.yaml", z.array(ProcedureRecord)],
  ["swaps", "Swaps: data/swaps/*.yaml", z.array(SwapRecord)],
  ["pairings", "Pairings: data/pairings/*.yaml", z.array(PairingRecord)],
  ["extension", "Foods, kinds, procedures and swaps of your own, for readExtension", ExtensionFile],
];
for (const [name, title, schema] of FILES) {
  const json = z.toJSONSchema(schema, { io: "input" }) as Json;
  offer(json, words);
  const file = join(root, `../docs/schema/${name}.json`);
  if (!(await page(file, JSON.stringify({ title, ...json }), "json", check))) {
    console.error(`docs/schema/${name}.json is out of date: run \`npx tsx data/tools/schema.ts\`.`);
    process.exitCode = 1;
  }
}
