import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { quantile } from "../../data/tools/calculated.js";
import { readData } from "../../data/tools/read.js";
import { calculator, recordNames } from "../../src/catalogue/authoring/calculated.js";
import { eachState, idOf } from "../../src/catalogue/authoring/compile.js";

// Made things with a published record of their own (USDA SR28, MEXT 2020), against what their parts have by records: stirred together in the
// shares we judged they come out near it. A dozen shares were judged again after a first comparison showed them far off, so this tells how
// well the table fits, not how well it was guessed. The bounds are what was measured, rounded up; g per 100 g, sodium mg.
const { authored, look } = readData(join(import.meta.dirname, "../../data"));
const calculate = calculator(authored, look);
const table = authored.tables["makeup"] as Readonly<Record<string, Readonly<Record<string, number>>>>;
const records = new Map(eachState(authored.foods).map((slot) => [idOf(slot), recordNames(slot.state)[0] ?? "none"]));
const compared = Object.entries(table).flatMap(([id, parts]) => {
  const record = look(records.get(id) ?? "")?.figures;
  const made = calculate({ parts: { ...parts } })?.figures;
  return record && made ? [{ id, record, made }] : [];
});

describe("made things against their records", () => {
  it("there are some to compare", () => expect(compared.length).toBeGreaterThan(90));
  it.each([
    ["fat", 1, 9.5],
    ["protein", 1, 3.5],
    ["sugars", 2, 9],
    ["sodium", 100, 700],
  ] as const)("%s: half within %d, nine in ten within %d", (figure, half, most) => {
    const by = compared.flatMap(({ record, made }) => {
      const [a, b] = [record[figure], made[figure]];
      return a === undefined || b === undefined ? [] : [Math.abs(a - b)];
    });
    expect(quantile(by, 0.5)).toBeLessThanOrEqual(half);
    expect(quantile(by, 0.9)).toBeLessThanOrEqual(most);
  });
});
