import { describe, expect, it } from "vitest";
import { openCatalogue, readLine } from "../../src/index.js";
import { storeOf } from "../../src/catalogue/index.js";

const c = openCatalogue();
const read = (line: string): [id: string | undefined, grams: number | undefined] => {
  const r = readLine(c, line);
  return r.status === "food and amount" ? [r.food?.id, r.portion?.grams] : [r.food?.id, undefined];
};

describe("ids in a line", () => {
  it("reads every ingredient's id as itself", () => {
    const wrong = storeOf(c)
      .ingredients.filter((i) => read(`200 g ${i.id}`)[0] !== i.id)
      .map((i) => i.id);
    expect(wrong).toEqual([]);
    expect(read("200 g soju/pantry")).toEqual(["soju/pantry", 200]);
  });
});

describe("the animal before a cut", () => {
  it.each([
    ["666 g beef tri-tip roast", "tri-tip/fresh"],
    ["1 lb raw lamb, ground", "ground-lamb/fresh"],
    ["1 lb beef tenderloin", "beef-tenderloin/fresh"],
  ])("%s is %s", (line, id) => expect(read(line)[0]).toBe(id));
});

describe("cans", () => {
  // Common practice, no source: what is drained before use is weighed drained. USDA SR28 16145: 266 g of a 439 g can.
  it("a can of what is drained counts as drained, whatever weight is on it", () => {
    expect(read("1 (15 oz) can kidney beans")).toEqual(["kidney-bean/canned", 266]);
    expect(read("1 (15 oz) can kidney beans, undrained")[1]).toBeCloseTo(425.2, 0);
    const large = read("1 (28 oz) can chickpeas")[1] ?? 0;
    expect(large / (28 * 28.35)).toBeGreaterThan(0.55);
    expect(large / (28 * 28.35)).toBeLessThan(0.65);
  });
  it("what is used with its liquid keeps the weight on the can", () => {
    expect(read("1 (6 oz) can tomato paste")[1]).toBeCloseTo(170, 0);
    expect(read("1 can (14 oz) coconut milk")[1]).toBeCloseTo(397, 0);
  });
  it("the can tells the food and is still counted", () => {
    expect(read("1 can corned beef")).toEqual(["corned-beef/canned", 340]);
    expect(read("2 cans corned beef")).toEqual(["corned-beef/canned", 680]);
    expect(read("1 (15 oz) can pumpkin")[0]).toBe("pumpkin-puree/canned");
  });
});

describe("a size behind the name", () => {
  // USDA SR28 01123 (jumbo 63 g, medium 44 g) and 11282 (large 150 g, medium 110 g).
  it.each([
    ["1 egg, jumbo", 63],
    ["1 egg, medium", 44],
    ["1 onion, large", 150],
    ["1 onion, medium", 110],
    ["2 onions, large, chopped", 300],
  ] as const)("%s is %d g", (line, grams) => expect(read(line)[1]).toBe(grams));
});
