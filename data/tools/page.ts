import { existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { dirname } from "node:path";
import { format, resolveConfig } from "prettier";

/** Writes a generated page, laid out like the rest of the repository; with `check` it only says whether the page is as it should be. */
export async function page(file: string, text: string, parser: "markdown" | "json", check: boolean): Promise<boolean> {
  const wanted = await format(text, { ...(await resolveConfig(file)), parser });
  const same = existsSync(file) && readFileSync(file, "utf8") === wanted;
  if (same || check) return same;
  mkdirSync(dirname(file), { recursive: true });
  writeFileSync(file, wanted);
  return true;
}
