import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { openCatalogue, readLine } from "../../src/index.js";
import { WEIGHTS } from "./weight-pairs.js";

const table = new Map<string, number>();
for (const row of readFileSync(
  new URL("../../data/composition/usda-sr28-household-weights.tsv", import.meta.url),
  "utf8",
).split("\n")) {
  const [ndb, amount, measure, grams] = row.split("\t");
  if (ndb !== undefined && measure !== undefined) table.set(`${ndb}|${measure}`, Number(grams) / Number(amount));
}
const c = openCatalogue();
const gramsOf = (line: string): number => readLine(c, line).portion?.grams ?? Number.NaN;

describe("household weights, USDA SR28", () => {
  it("names at least 40 different records", () => {
    expect(new Set(WEIGHTS.map(([, ndb]) => ndb)).size).toBeGreaterThanOrEqual(40);
  });
  // The table rounds a spoon to 0.1 g and a cup to 1 g, so its own tsp, tbsp and cup differ by a few in a hundred; grams print to 0.1.
  it.each(WEIGHTS)("%s (NDB %s, 1 %s)", (line, ndb, measure) => {
    const published = table.get(`${ndb}|${measure}`) ?? Number.NaN;
    const grams = gramsOf(line);
    expect(Math.abs(grams - published), `${grams} g against ${published} g`).toBeLessThanOrEqual(
      0.05 * published + 0.051,
    );
  });
  it("two and a half times as much weighs two and a half times as much", () => {
    for (const [line] of WEIGHTS) {
      const more = line.replace(/^1 /, "2 1/2 ");
      // both are rounded to 0.1 g, so the single one may be 0.05 off before it is multiplied
      expect(Math.abs(gramsOf(more) - 2.5 * gramsOf(line)), more).toBeLessThanOrEqual(0.05 + 2.5 * 0.05 + 1e-9);
    }
  });
});
