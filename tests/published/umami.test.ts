import { describe, expect, it } from "vitest";
import { umami } from "../../src/dose/index.js";

// Yamaguchi's synergy equation Y = sum(a b) + 1218 sum(a b) sum(a b), all in g per 100 g, as reprinted with its coefficients (MSG 1,
// IMP 1, GMP 2.3) in the literature on equivalent umami concentration. The worked sums are by hand from the printed formula.
describe("the umami equation", () => {
  it.each([
    ["equal parts of MSG and IMP, 0.05 g/100 ml together", 0.025, 0.025, 0.786],
    ["a dashi with 50 mg glutamate and 20 mg IMP in 100 ml", 0.05, 0.02, 1.268],
    ["2 g of dried shiitake (1,060 mg glutamate, 150 mg GMP per 100 g) in 100 ml of soup", 0.0212, 0.003 * 2.3, 0.1994],
    ["no nucleotides: the glutamate alone", 0.1, 0, 0.1],
  ])("%s", (_what, glutamate, nucleotide, published) => {
    expect(umami(glutamate, nucleotide)).toBeCloseTo(published, 3);
  });
  it("the coefficient depends on the unit: 1.218 in mg per 100 g gives the same dish", () => {
    const inGrams = umami(0.05, 0.02);
    const inMilligrams = 50 + 1.218 * 50 * 20;
    expect(inGrams * 1000).toBeCloseTo(inMilligrams, 6);
  });
});
