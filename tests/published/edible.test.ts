import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { checkMeal, convert, judgeSwap, openCatalogue } from "../../src/index.js";

// What is bought with shell, bone, cob, pod or rind, against what is not: refuse of the USDA National Nutrient Database for Standard
// Reference, Release 28, as percent of the weight bought, by NDB number. Where the record of the catalogue is the same one, this checks the
// way from figure to answer; the amounts themselves are worked out, with no table of swaps looked at.
const table = new Map(
  readFileSync(new URL("../../data/composition/usda-sr28-foods.tsv", import.meta.url), "utf8")
    .split("\n")
    .map((line) => line.split("\t"))
    .map((row) => [row[0] ?? "", Number(row[4])]),
);
const weights = new Map(
  readFileSync(new URL("../../data/composition/usda-sr28-household-weights.tsv", import.meta.url), "utf8")
    .split("\n")
    .map((line) => line.split("\t"))
    .map((row) => [`${row[0] ?? ""}|${row[2] ?? ""}`, Number(row[3])]),
);
/** g eaten per g bought; nothing is thrown away of what has no record named. */
const eaten = (ndb: string): number => (ndb === "" ? 1 : 1 - (table.get(ndb) ?? Number.NaN) / 100);

const c = openCatalogue({ measures: "metric" });
const instead = (missing: string, id: string) => {
  const { swap } = judgeSwap(c, { missing, instead: id, evidence: "computed" });
  if (!swap) throw new Error(`${id} is not offered for ${missing}`);
  return swap.use[0];
};
const gramsOf = (missing: string, id: string): number => instead(missing, id).grams;

// A stand-in may shrink a little more or less in the pan than what is missing: within an eighth.
const near = (got: number, want: number): void => {
  expect(Math.abs(got / want - 1), `${got} g against ${want.toFixed(0)} g`).toBeLessThan(0.125);
};

describe("as bought, both sides: USDA SR28 refuse", () => {
  it.each([
    ["1000 g corn on the cob", "11167", "corn/frozen", ""],
    ["1000 g peas in the pod", "11304", "green-peas/frozen", ""],
    ["1000 g frozen peas", "", "green-peas/fresh", "11304"],
    ["1000 g whole chicken", "05006", "boneless-chicken-thigh/fresh", ""],
    ["1000 g boneless chicken thighs", "", "chicken/fresh", "05006"],
    ["1000 g chicken wings", "05100", "boneless-chicken-thigh/fresh", ""],
    ["1000 g boneless pork shoulder", "", "spareribs/fresh", "10088"],
    ["1000 g stewing beef", "", "short-ribs/fresh", "13147"],
    ["1000 g short ribs", "13147", "stewing-beef/fresh", ""],
    ["1000 g pumpkin", "11422", "butternut-squash/fresh", "11485"],
    ["1000 g butternut squash", "11485", "hubbard-squash/fresh", "11489"],
    ["1000 g acorn squash", "11482", "pumpkin/fresh", "11422"],
    ["1000 g whole duck", "05139", "duck-breast/fresh", ""],
  ] as const)("%s (%s) is %s (%s)", (missing, a, id, b) => {
    near(gramsOf(missing, id), (1000 * eaten(a)) / eaten(b));
  });
});

describe("as bought, both sides: USDA SR28 household weights", () => {
  const shelled = weights.get("15157|lb (with shell), yield after shell removed") ?? Number.NaN;
  it("a pound of clams in the shell is 68 g of other shellfish (15157)", () => {
    for (const id of ["scallop/fresh", "squid/fresh"]) near(gramsOf("1 lb clams", id), shelled);
  });
  it("and back: 68 g of scallops is a pound of clams", () => {
    near(gramsOf(`${shelled} g scallops`, "clam/fresh"), 453.6);
  });
  it("an ear gives 102 g of kernels (11167), and is counted as such", () => {
    near(gramsOf("4 ears corn", "corn/frozen"), 4 * 102);
    const ears = instead("408 g frozen corn", "corn/fresh");
    expect(ears.measure).toMatchObject({ amount: 4, unit: "piece" });
  });
});

// Common practice, no source.
describe("what is trimmed already, or by the cook as he likes", () => {
  it("peeled, shelled and boneless are weighed without", () => {
    near(gramsOf("500 g boneless short ribs", "stewing-beef/fresh"), 500);
    near(gramsOf("300 g fresh shelled peas", "green-peas/frozen"), 300);
    near(gramsOf("400 g peeled raw shrimp", "scallop/fresh"), 400);
  });
  it("cups are of what is eaten", () => {
    near(gramsOf("2 cups corn kernels", "corn/frozen"), gramsOf("290 g corn kernels", "corn/frozen"));
    near(gramsOf("2 cups corn kernels", "corn/frozen"), 290);
  });
  it("mussels and prawns are counted in the shell", () => {
    near(
      convert(c, "20 mussels", { state: "edible portion" }).grams,
      convert(c, "440 g mussels", { state: "edible portion" }).grams,
    );
    near(gramsOf("20 mussels", "scallop/fresh"), 110);
  });
  it("roots, leaves, heads and stalks are taken one for one, trimmed thick or thin", () => {
    near(gramsOf("500 g cauliflower", "broccoli/fresh"), 500);
    near(gramsOf("500 g carrots", "parsnip/fresh"), 500);
    near(gramsOf("500 g spinach", "chard/fresh"), 500);
  });
  it("a tenth more or less is no reason to change the weight", () => {
    near(gramsOf("1000 g chuck roast", "beef-brisket/fresh"), 1000);
  });
});

describe("in the meal: shells feed nobody", () => {
  const protein = (line: string): number =>
    checkMeal(c, { serves: 1, dishes: [{ name: "a dish", lines: [line] }] }).slots.protein.perPerson;
  it("a pound of clams is 68 g of meat before it is cooked (15157)", () => {
    near(protein("1 lb clams") / protein("1 lb scallops"), 68 / 453.6);
  });
  // Common practice, no source: cuts are sold with and without their bones, and lines do not say which.
  it("bones of meat are let pass", () => {
    expect(protein("600 g chicken thighs")).toBeCloseTo(protein("600 g boneless chicken thighs") * (0.69 / 0.74), -1);
  });
});
