import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { convert, openCatalogue, swapsFor } from "../../src/index.js";

// MEXT 2020, Standard Tables of Food Composition in Japan: refuse of raw fish weighed whole (head, viscera, bones, fins), and of fish that
// were gutted before they were cooked (head, bones, fins).
const rows = readFileSync(join(import.meta.dirname, "../../data/composition/mext-2020-foods.tsv"), "utf8")
  .split("\n")
  .map((line) => line.split("\t"))
  .filter(([, name = ""]) => name.includes("魚類"));
const median = (list: readonly number[]): number =>
  [...list].sort((a, b) => a - b)[Math.floor(list.length / 2)] ?? Number.NaN;
const whole = rows.flatMap((row) => {
  const told = /魚体全体から調理する場合、廃棄率： ?(\d+)/.exec(row.join("\t"))?.[1];
  if (told !== undefined) return [Number(told)];
  const [, name = "", refuse = ""] = row;
  const remark = row.at(-1) ?? "";
  const is = name.endsWith("生") && remark.includes("頭部") && remark.includes("内臓") && !remark.includes("除");
  return is && Number(refuse) >= 30 ? [Number(refuse)] : [];
});
const gutted = rows.flatMap(([, name = "", refuse = "", ...rest]) =>
  /水煮|焼き/.test(name) && (rest.at(-1) ?? "").includes("頭部、骨") && Number(refuse) > 0 ? [Number(refuse)] : [],
);

const c = openCatalogue();
const flesh = (amount: string): number => convert(c, amount, "edible").grams ?? Number.NaN;
const first = (missing: string): number => {
  const { use } = swapsFor(c, { missing, evidence: "computed", limit: 30 }).swaps.find((s) =>
    s.use.every((u) => u.id.startsWith("salmon/") || u.id.startsWith("trout/")),
  ) ?? { use: [] };
  return use.reduce((sum, u) => sum + u.grams, 0);
};

describe("what is eaten of a whole fish", () => {
  it("is what the records have as refuse, in the middle", () => {
    expect(whole.length).toBeGreaterThan(90);
    expect(flesh("1 kg whole mackerel")).toBeCloseTo(1000 * (1 - median(whole) / 100), 0);
    expect(gutted.length).toBeGreaterThan(10);
    expect(flesh("1 kg gutted mackerel")).toBeCloseTo(1000 * (1 - median(gutted) / 100), 0);
  });
  it("is all of a fillet, and nothing is taken off what is eaten bones and all", () => {
    expect(flesh("1 kg mackerel fillets")).toBe(1000);
    expect(flesh("1 kg mackerel")).toBe(1000);
    expect(flesh("1 kg whole whitebait")).toBe(1000);
  });
  it("is what stands in for it: half as much fillet", () => {
    expect(first("1 kg whole mackerel")).toBeCloseTo(first("1 kg mackerel fillets") / 2, -1);
    expect(first("2 lb whole sea bass, gutted")).toBeGreaterThan(first("2 lb whole sea bass"));
  });
});
