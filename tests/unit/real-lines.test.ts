// Ingredient lines as pages print them, of our own invention, across kitchens: sizes in brackets, two systems at once, parts of a food,
// things that are no food. Every answer was read and judged, line by line (common practice, no source): one that is wrong has the right
// food and weight beside it here and counts as a miss.
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { openCatalogue } from "../../src/catalogue/index.js";
import { readLine } from "../../src/portion/index.js";
import { readRecipe } from "../../src/recipe/index.js";

const c = openCatalogue();
interface Row {
  readonly line: string;
  readonly food: string;
  readonly grams: number | undefined;
}
const ROWS: readonly Row[] = readFileSync(join(import.meta.dirname, "../fixtures/real-lines.tsv"), "utf8")
  .split("\n")
  .filter((l) => l !== "" && !l.startsWith("#"))
  .map((l) => {
    const [line = "", food = "", grams = "-"] = l.split("\t");
    return { line, food, grams: grams === "-" ? undefined : Number(grams) };
  });

const foodRight = ({ line, food }: Row): boolean => {
  const id = readLine(c, line).food?.id;
  return food === "-" ? id === undefined : food.includes("/") ? id === food : id?.split(/[/.]/)[0] === food;
};
/** A fifth of the weight: what one onion differs from another by. */
const amountRight = ({ line, grams }: Row): boolean => {
  const read = readLine(c, line).portion?.grams;
  return grams === undefined
    ? read === undefined
    : read !== undefined && Math.abs(read - grams) <= Math.max(0.2, grams / 5);
};
const share = (rows: readonly Row[], right: (r: Row) => boolean): { share: number; wrong: string[] } => ({
  share: rows.filter(right).length / rows.length,
  wrong: rows.filter((r) => !right(r)).map((r) => r.line),
});

describe(`${ROWS.length} lines`, () => {
  it("at least 95 in 100 have the right food", () => {
    const { share: part, wrong } = share(ROWS, foodRight);
    expect(part, wrong.join("\n")).toBeGreaterThanOrEqual(0.95);
  });
  it("at least 94 in 100 have the right food and amount", () => {
    const { share: part, wrong } = share(ROWS, (r) => foodRight(r) && amountRight(r));
    expect(part, wrong.join("\n")).toBeGreaterThanOrEqual(0.94);
  });
  it("what is no food is never taken for one", () => {
    const things = ROWS.filter((r) => r.food === "-");
    expect(things.length).toBeGreaterThan(15);
    for (const { line } of things) expect(readLine(c, line).food?.id, line).toBeUndefined();
  });
  it("every line is kept as it is written, in every form of a recipe", () => {
    const texts = ROWS.map((r) => r.line);
    const inData = readRecipe(c, { "@type": "Recipe", recipeIngredient: texts, recipeInstructions: ["Cook."] });
    expect(inData.lines.map((l) => l.text)).toEqual(texts);
    const md = readRecipe(
      c,
      `# T\n\n## Ingredients\n\n${texts.map((t) => `- ${t}`).join("\n")}\n\n## Method\n\nCook.\n`,
      "markdown",
    );
    // square brackets are Markdown's own only before an address
    expect(md.lines.map((l) => l.text)).toEqual(texts);
    const page = `<h2>Ingredients</h2><ul>${texts.map((t) => `<li>${t.replace(/&/g, "&amp;")}</li>`).join("")}</ul>`;
    expect(readRecipe(c, page, "html").lines.map((l) => l.text)).toEqual(texts);
  });
});

describe("what stands before the amount", () => {
  it.each([
    ["optional: 1/2 tsp cayenne pepper", "cayenne/dried-ground", true, ""],
    ["(optional) 1/2 tsp cayenne pepper", "cayenne/dried-ground", true, ""],
    ["plus 1 tbsp unsalted butter", "butter/fresh-unsalted", false, ""],
    ["Garnish: 2 limes", "lime/fresh", false, "Garnish"],
    ["Flour: 2 cups, sifted", "all-purpose-flour/pantry", false, ""],
  ])("%s", (line, id, optional, note) => {
    const read = readLine(c, line);
    expect([read.food?.id, read.optional]).toEqual([id, optional]);
    expect(read.status).toBe("food and amount");
    if (note !== "") expect(read.note).toContain(note);
  });
});

describe("amounts in two parts", () => {
  // A stick is 8 tablespoons: what its wrapper marks. Common practice.
  it.each([
    ["1 stick plus 2 tablespoons unsalted butter", "10 tbsp unsalted butter"],
    ["a cup and a half of rice", "1 1/2 cups rice"],
    ["a pound and a half of ground beef", "1 1/2 lb ground beef"],
    ["1 cup and a quarter of milk", "1 1/4 cups milk"],
  ])("%s is %s", (line, plain) => {
    expect(readLine(c, line).portion?.grams).toBeCloseTo(readLine(c, plain).portion?.grams ?? 0, 0);
  });
  it("a half of something else is not half of the unit", () =>
    expect(readLine(c, "1 cup milk and a half lemon").portion?.grams).toBe(readLine(c, "1 cup milk").portion?.grams));
  it("an inch of ginger is one whatever the piece is called", () =>
    expect(readLine(c, "a 2-inch knob fresh ginger").portion?.grams).toBe(
      readLine(c, "a 2-inch piece fresh ginger").portion?.grams,
    ));
});

// Cards shorten what their writer knows by heart. Common practice, no source.
describe("short for a word", () => {
  it.each([
    ["2 cans cr mushroom soup", "cream-of-mushroom-soup/canned"],
    ["1 c. sug.", "sugar/pantry"],
    ["1 T. worc. sauce", "worcestershire-sauce/pantry"],
    ["1 tsp blk pep", "black-pepper/dried-ground"],
    ["1 tsp cel. salt", "celery-salt/pantry"],
    ["1 oz tom. puree", "tomato-puree/canned"],
    ["1 c. brn. sugar", "brown-sugar/pantry"],
    ["1 T. bak. powder", "baking-powder/pantry"],
  ])("%s", (line, id) => expect(readLine(c, line).food?.id).toBe(id));
  it("but a name that is a whole word stays one", () =>
    expect(readLine(c, "2 tbsp tom yum paste").food?.id).toBe("tom-yum-paste/pantry-paste"));
});
describe("counted in a state that is not the default", () => {
  it.each([
    ["4 pods cardamom", "cardamom/dried"],
    ["3 sticks cinnamon", "cinnamon/dried"],
  ])("%s", (line, id) => {
    const read = readLine(c, line);
    expect(read.food?.id).toBe(id);
    expect(read.status).toBe("food and amount");
  });
  it("a spoon of it is the default", () =>
    expect(readLine(c, "2 tsp cardamom").food?.id).toBe("cardamom/dried-ground"));
});
it("zested and segmented is the whole fruit", () =>
  expect(readLine(c, "1 orange, zested and segmented").food?.id).toBe("orange/fresh"));
it('a sign for "and" inside a name is part of it', () =>
  expect(readLine(c, "1 lg. can pork & beans").food?.id).toBe("baked-beans/canned"));
it("a misspelling that ends as a doing does is still one", () =>
  expect(readLine(c, "1/4 cup parsely").food?.id).toBe("parsley/fresh"));
