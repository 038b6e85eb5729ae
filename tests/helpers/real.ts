// The real data, read and compiled once a test file: what `npm run data` does, in memory.
import { join } from "node:path";
import { readData } from "../../data/tools/read.js";
import { compile } from "../../src/catalogue/authoring/compile.js";
import type { Flat } from "../../src/catalogue/compiled.js";
import { ALLERGENS } from "../../src/catalogue/words.js";

export const real = readData(join(import.meta.dirname, "../../data"));
let compiled: Flat | undefined;
export const realFlat = (): Flat => (compiled ??= compile(real.authored, real.look, ALLERGENS));
/** The same data with an empty folder of swaps. */
export const withoutSwaps = (): Flat => compile({ ...real.authored, swaps: [] }, real.look, ALLERGENS);
export const META = { version: "0.0.0", data: "1", hash: "test" };
