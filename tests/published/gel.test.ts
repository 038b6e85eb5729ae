import { describe, expect, it } from "vitest";
import { openCatalogue, readLine } from "../../src/index.js";
import { storeOf } from "../../src/catalogue/index.js";
import { carrierAmount, dose } from "../../src/dose/index.js";
import { readAsk } from "../../src/swap/ask.js";
import { amountFor } from "../../src/swap/amount.js";

const c = openCatalogue();
const store = storeOf(c);
const food = (id: string) => {
  const i = store.byId.get(id);
  if (!i) throw new Error(`${id} is not in the catalogue`);
  return i;
};
const powder = food("gelatin/pantry-powder");
const sheet = food("gelatin-sheet/pantry");

// Leaf gelatin: a private page of conversion factors (2012, after a hydrocolloid recipe collection, secondary): gold leaf 190 to 220
// bloom, 2 g a leaf. Common powder 225 bloom, an envelope 1/4 oz, 3 to 4 leaves (a food science cookbook, quoted; secondary).
const GOLD = [190, 220] as const;
const POWDER = 225;

describe("gelatin by bloom", () => {
  it("the linear rule, weight x bloom: a gold leaf sets as 0.84 to 0.98 of its weight in powder", () => {
    const gel = dose(store, sheet, "gel");
    expect(dose(store, powder, "gel")).toBe(1);
    expect(gel).toBeGreaterThanOrEqual(GOLD[0] / POWDER);
    expect(gel).toBeLessThanOrEqual(GOLD[1] / POWDER);
  });
  // The square-root rule (from memory) would give 0.92 to 0.99: the two circulate, and ours is below it.
  it("and not the square-root rule", () => {
    expect(dose(store, sheet, "gel")).toBeLessThan(Math.sqrt(GOLD[0] / POWDER));
  });
  it("an envelope of powder, 7 g, is 3 to 4 leaves of 2 g", () => {
    const envelope = readLine(c, "1 packet gelatin").portion;
    expect(envelope?.grams).toBeGreaterThanOrEqual(7);
    expect(envelope?.grams).toBeLessThanOrEqual(7.3);
    const leaves = carrierAmount(store, powder, 7, sheet, "gelling agent", 500) / 2;
    expect(leaves).toBeGreaterThanOrEqual(3);
    expect(leaves).toBeLessThanOrEqual(4);
    const solved = amountFor(readAsk(c, { missing: "7 g gelatin", role: "gelling agent" }), sheet) / 2;
    expect(solved).toBeCloseTo(leaves, 6);
  });
  it("agar powder sets two to four times its weight in gelatin (kitchen tables, from memory)", () => {
    const gel = dose(store, food("agar/pantry-powder"), "gel");
    expect(gel).toBeGreaterThanOrEqual(2);
    expect(gel).toBeLessThanOrEqual(4);
  });
  it("flakes and bars of agar set less than the powder, weight for weight (common practice, no source)", () => {
    for (const id of ["agar/pantry-flakes", "agar/dried"])
      expect(dose(store, food(id), "gel")).toBeLessThan(dose(store, food("agar/pantry-powder"), "gel"));
  });
});

// "Cooking with starches", University of Kentucky Extension (read): flour has about half the thickening power of other starches.
describe("thickening", () => {
  const flour = food("all-purpose-flour/pantry");
  it.each(["cornstarch/pantry", "arrowroot-starch/pantry", "tapioca-starch/pantry", "potato-starch/pantry"])(
    "%s: about half as much as flour",
    (id) => {
      const grams = carrierAmount(store, flour, 30, food(id), "thickener", 600);
      expect(grams).toBeGreaterThan(12);
      expect(grams).toBeLessThan(19);
    },
  );
  it("a tablespoon of cornstarch for two of flour (Extension tables)", () => {
    const two = readLine(c, "2 tbsp all-purpose flour").portion?.grams ?? Number.NaN;
    const one = readLine(c, "1 tbsp cornstarch").portion?.grams ?? Number.NaN;
    expect(
      Math.abs(carrierAmount(store, flour, two, food("cornstarch/pantry"), "thickener", 600) / one - 1),
    ).toBeLessThan(0.1);
  });
  it("the darker the roux, the less it thickens (direction established, size from memory)", () => {
    expect(dose(store, food("roux/fresh-roasted"), "thickening")).toBeLessThan(
      dose(store, food("roux/fresh"), "thickening"),
    );
  });
});
