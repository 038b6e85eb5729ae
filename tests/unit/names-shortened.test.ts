import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { openCatalogue, readLine } from "../../src/index.js";
import { storeOf } from "../../src/catalogue/index.js";
import { indexOf } from "../../src/names/claims.js";
import { tokensOf } from "../../src/names/fold.js";
import { writtenOut } from "../../src/names/shortened.js";

const c = openCatalogue();
const index = indexOf(storeOf(c));
const food = (line: string): string | undefined => readLine(c, line).food?.id;
const ways = (text: string): readonly string[] =>
  [...writtenOut(index, text, tokensOf(text))].map((w) => w.tokens.map((t) => t.key).join(" "));

// How recipe cards write: common practice, no source.
describe("words cut short with a full stop", () => {
  it("are written out with words of names, the commonest first", () => {
    expect(ways("chick. broth")[0]).toBe("chicken broth");
    expect(ways("chicken broth")).toEqual([]);
  });
  it("are not those a name or a measure of time has whole", () => {
    expect(ways("20 min. total")).toEqual([]);
    expect(ways("cod.")).toEqual([]);
  });
  it.each([
    ["1 lb. hamb.", "ground-beef/fresh"],
    ["1 c. cott. cheese", "cottage-cheese/fresh"],
    ["2 tbsp. pars. flakes", "parsley/dried"],
    ["1/2 c. marg., melted", "margarine/pantry"],
    ["1 lge. on.", "onion/fresh"],
  ])("%s", (line, id) => expect(food(line)).toBe(id));
  it("three letters alone that several foods begin with are none of them", () => {
    expect(food("1 c. pec.")).toBeUndefined();
  });
  it("never take long over a line, nor throw", () => {
    fc.assert(
      fc.property(fc.array(fc.string({ minLength: 1, maxLength: 8 }), { maxLength: 12 }), (words) => {
        expect(() => readLine(c, words.join(". "))).not.toThrow();
      }),
      { numRuns: 200 },
    );
  });
});
