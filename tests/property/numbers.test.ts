import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  packCoded,
  packFigures,
  packInts,
  packPlaces,
  packShort,
  packSparse,
  packSteps,
  placesOf,
  unpackFigures,
  unpackInts,
  unpackPlaces,
  unpackShort,
  unpackSparse,
  unpackSteps,
} from "../../src/catalogue/numbers.js";

const whole = fc.integer({ min: 0, max: 1_000_000 });
const signed = fc.integer({ min: -500_000, max: 500_000 });

describe("columns of numbers as text", () => {
  it("whole numbers come back as they went in, and nothing needs escaping in JSON", () => {
    fc.assert(
      fc.property(fc.oneof(fc.array(whole), fc.array(fc.integer({ min: 0, max: 90 }))), (list) => {
        const text = packInts(list);
        expect([...unpackInts(text)]).toEqual(list);
        expect(JSON.stringify(text)).toHaveLength(text.length + 2);
      }),
    );
  });
  it("steps and sparse columns come back, signs too", () => {
    fc.assert(
      fc.property(fc.array(signed), (list) => {
        expect([...unpackSteps(packSteps(list))]).toEqual(list);
        expect([...unpackSparse(packSparse(list), list.length)]).toEqual(list);
      }),
    );
  });
  it("measured numbers come back to the last digit; what was not measured is NaN", () => {
    const figure = fc.option(fc.double({ noNaN: true, noDefaultInfinity: true }).map((v) => (v === 0 ? 0 : v)));
    fc.assert(
      fc.property(fc.array(figure), (list) => {
        expect([...unpackFigures(packFigures(list), list.length)]).toEqual(list.map((v) => v ?? Number.NaN));
      }),
    );
  });
  it("one character a number up to 90, two from 91", () => {
    expect(packInts([0, 90])).toHaveLength(3);
    expect(packInts([0, 91])).toHaveLength(5);
    expect(packInts([])).toBe("1");
  });
  it("short ones come back too, from one character to six, and nothing needs escaping", () => {
    const edges = [0, 69, 70, 70 + 20 * 91 - 1, 70 + 20 * 91, 1_000_000];
    expect(edges.map((n) => packShort([n]).length)).toEqual([1, 1, 2, 2, 6, 6]);
    fc.assert(
      fc.property(fc.array(fc.oneof(whole, fc.integer({ min: 0, max: 3000 }), fc.constantFrom(...edges))), (list) => {
        const text = packShort(list);
        expect([...unpackShort(text)]).toEqual(list);
        expect(JSON.stringify(text)).toHaveLength(text.length + 2);
      }),
    );
  });
  it("values that repeat come back from their list and their places, and what is missing stays missing", () => {
    const word = fc.option(fc.constantFrom("a", "b", "c", "d", "e", "constructor", "__proto__"), { nil: undefined });
    fc.assert(
      fc.property(fc.array(fc.oneof(word, fc.string())), (list) => {
        const packed = packCoded(list);
        expect(new Set(packed.of).size).toBe(packed.of.length);
        expect(Array.from(placesOf(packed), (place) => packed.of[place])).toEqual(list);
      }),
    );
    expect([...unpackPlaces(packPlaces([0, -1, 1, 0, 0, 2, -1]))]).toEqual([0, -1, 1, 0, 0, 2, -1]);
  });
});
