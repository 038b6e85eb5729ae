import { assertType, describe, expectTypeOf, it } from "vitest";
import {
  checkMeal,
  convert,
  findFood,
  foodFacts,
  isSteadfareError,
  judgeSwap,
  listFoods,
  openCatalogue,
  readLine,
  swapsFor,
  vocabulary,
} from "../../src/index.js";
import type { Catalogue, Judgement, MealReport, Portion, ReadLine, Swap, SwapAdvice } from "../../src/index.js";

declare const c: Catalogue;
declare const e: unknown;

describe("the public types", () => {
  it("functions take and give what the contract says", () => {
    expectTypeOf(openCatalogue).returns.toEqualTypeOf<Catalogue>();
    expectTypeOf(swapsFor).returns.toEqualTypeOf<SwapAdvice>();
    expectTypeOf(judgeSwap).returns.toEqualTypeOf<Judgement>();
    expectTypeOf(checkMeal).returns.toEqualTypeOf<MealReport>();
    expectTypeOf(readLine).returns.toEqualTypeOf<ReadLine>();
    expectTypeOf(convert).returns.toExtend<Portion>();
    expectTypeOf(findFood).parameter(1).toEqualTypeOf<string>();
    expectTypeOf(foodFacts).parameter(1).toEqualTypeOf<string>();
    expectTypeOf(listFoods).parameter(0).toEqualTypeOf<Catalogue>();
    expectTypeOf(vocabulary.role).items.toBeString();
  });
  it("results are readonly all the way down", () => {
    const advice = swapsFor(c, {
      missing: "450 g salt cod",
      avoid: { allergens: ["egg"] },
      dish: { technique: "braise", lines: ["2 lb potatoes"] },
    });
    assertType<Swap | undefined>(advice.swaps[0]);
    // @ts-expect-error frozen
    advice.swaps[0]!.use[0].grams = 1;
    // @ts-expect-error a list that cannot be added to
    advice.swaps[0] = advice.swaps[1]!;
  });
  it("errors are switched on by code and their data is typed by it", () => {
    if (isSteadfareError(e, "ambiguous food")) expectTypeOf(e.data.candidates[0]!.name).toBeString();
    if (isSteadfareError(e)) {
      if (e.code === "unknown term") expectTypeOf(e.data.accepted).items.toBeString();
      if (e.code === "input too large") expectTypeOf(e.data.limit).toBeNumber();
    }
  });
});
