// Writes docs/coverage.md from data/. With --check it writes nothing and exits 1 when the file is out of date.
import { readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { parse } from "yaml";
import { compile } from "../../src/catalogue/authoring/compile.js";
import { ALLERGENS } from "../../src/catalogue/words.js";
import { coverage } from "./coverage.js";
import { page } from "./page.js";
import { readData } from "./read.js";

const root = join(dirname(fileURLToPath(import.meta.url)), "..");
const check = process.argv.includes("--check");
const { authored, look, problems } = readData(root);
if (problems.length > 0) {
  console.error(`${problems.length} problems in data/: mend them first (npm run data).`);
  process.exitCode = 1;
} else {
  const flat = compile(authored, look, ALLERGENS);
  const { lacked } = parse(readFileSync(join(root, "vocabulary/lacked.yaml"), "utf8")) as { lacked: string[] };
  const text = coverage({ authored, flat, look, lacked });
  const same = await page(join(root, "../docs/coverage.md"), text, "markdown", check);
  if (!same) {
    console.error("docs/coverage.md is out of date: run `npx tsx data/tools/report.ts`.");
    process.exitCode = 1;
  }
}
