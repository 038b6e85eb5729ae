import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  cupFor,
  findUnit,
  fractionText,
  measureText,
  metricMassFor,
  metricVolumeFor,
  readNumeral,
  readQuantity,
  roundTo,
  spoonsFor,
  unitOf,
  UNITS,
  usMassFor,
} from "../../src/quantity/index.js";
import type { UnitId } from "../../src/types.js";

const anyText = fc.oneof(
  fc.string({ unit: "binary", maxLength: 200 }),
  fc.string({ unit: "grapheme", maxLength: 200 }),
);
/** Text that looks like amounts: the pieces the reader knows, in any order. */
const likeAmounts = fc
  .array(
    fc.constantFrom(
      "1",
      "2",
      "1/2",
      "½",
      "1 1/2",
      "-",
      "–",
      "to",
      "or",
      "x",
      "(",
      ")",
      "/",
      "400",
      "g",
      "oz",
      "oz.",
      "cup",
      "cups",
      "tin",
      "can",
      "large",
      "a",
      "half",
      "dozen",
      "and",
      "about",
      "piece",
      "inch",
      ",",
      ".",
      "0",
      "%",
      " ",
      "heaped",
      "plus",
      "pinch",
      "of",
    ),
    { maxLength: 25 },
  )
  .chain((words) => fc.constantFrom("", " ").map((by) => words.join(by)));
const amount = fc.oneof(
  fc.integer({ min: 1, max: 400 }).map((n) => n / 4),
  fc.integer({ min: 1, max: 300 }).map((n) => n / 3),
  fc.integer({ min: 1, max: 999 }),
);
const UNIT_IDS: readonly UnitId[] = [
  "g",
  "kg",
  "oz",
  "lb",
  "ml",
  "l",
  "tsp",
  "tbsp",
  "cup",
  "clove",
  "slice",
  "packet",
  "can",
  "stick",
  "bunch",
  "pinch",
];

describe("reading amounts", () => {
  it("never throws, never reads past the end, and is finite and above 0", () => {
    fc.assert(
      fc.property(fc.oneof(anyText, likeAmounts), fc.nat(5), fc.boolean(), (text, at, imperial) => {
        const q = readQuantity(text, at, { imperial });
        if (q === undefined) return true;
        const sound = (a: { value: number; low: number; high: number }) =>
          Number.isFinite(a.high) && a.low > 0 && a.low <= a.value && a.value <= a.high;
        return (
          q.end <= text.length &&
          q.words <= text.length &&
          q.end > at &&
          sound(q) &&
          (q.each === undefined || sound(q.each)) &&
          (q.also === undefined || sound(q.also))
        );
      }),
      { numRuns: 3000 },
    );
  });
  it("reads what it printed, in every unit", () => {
    fc.assert(
      fc.property(amount, fc.constantFrom(...UNIT_IDS), (value, unit) => {
        const text = measureText(value, unit);
        const q = readQuantity(text);
        return (
          q !== undefined &&
          q.end === text.length &&
          q.unit?.id === unit &&
          Math.abs(q.value * q.unit.scale - value) <= 0.005
        );
      }),
    );
  });
  it("reads every kind of piece it prints", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...[...UNITS.values()].filter((u) => u.dimension === "count")),
        fc.integer({ min: 1, max: 20 }),
        (unit, n) => {
          const text = measureText(n, unit.id, unit.label);
          const q = readQuantity(`${text} onion`);
          return q?.value === n && (unit.name === "piece" ? q.unit === undefined : q.unit === unit);
        },
      ),
    );
  });
  it("reads the fractions it prints", () => {
    fc.assert(fc.property(amount, (x) => Math.abs((readNumeral(fractionText(x), 0)?.value ?? 0) - x) <= 0.005));
  });
  it("sums the parts of a compound amount", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 20 }), fc.integer({ min: 1, max: 15 }), (lb, oz) => {
        const q = readQuantity(`${lb} lb ${oz} oz beef`);
        return (
          q !== undefined && Math.abs(q.value * (q.unit?.factor ?? 0) - (lb * 16 + oz) * unitOf("oz").factor) < 1e-6
        );
      }),
    );
  });
  it("takes the ends of a range in either order", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 99 }), fc.integer({ min: 1, max: 99 }), (a, b) => {
        const q = readQuantity(`${a} to ${b} g`);
        return q !== undefined && q.low === Math.min(a, b) && q.high === Math.max(a, b) && q.value === (a + b) / 2;
      }),
    );
  });
  it("reads in time linear in the text", () => {
    // Hostile runs: were anything quadratic in them, these would take minutes.
    for (const run of ["1", "1/", "(", "1 (", "1 x ", "½", "a ", "and 1/2 ", "-", " ", "1,000", "oz.", "1 - "])
      readQuantity(run.repeat(200_000));
  }, 20_000);
});

describe("printing amounts", () => {
  it("rounds to a measure near the amount", () => {
    fc.assert(
      fc.property(fc.double({ min: 20, max: 5000, noNaN: true }), (x) => {
        const near = (base: number, within: number) => Math.abs(base / x - 1) <= within;
        const cup = x >= 60 ? cupFor(x) : undefined;
        return (
          near(metricMassFor(x).base, 0.13) &&
          near(metricVolumeFor(x).base, 0.13) &&
          near(usMassFor(x)?.base ?? 0, 0.2) &&
          (cup === undefined || near(cup.base, 0.2))
        );
      }),
    );
  });
  it("always has a spoon for a small volume", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.4, max: 50, noNaN: true }), (ml) =>
        spoonsFor(ml).some((m) => Math.abs(m.base / ml - 1) <= 0.34),
      ),
    );
  });
  it("rounds as the digits say, halves and their neighbours too", () => {
    const byDigits = (x: number, places: number): number => {
      const rounded = Math.sign(x) * Math.round(Math.abs(Number(`${x}e${places}`)));
      return rounded === 0 ? 0 : Number(`${rounded}e-${places}`);
    };
    const places = fc.integer({ min: 0, max: 6 });
    const half = fc
      .tuple(fc.integer({ min: -2_000_000, max: 2_000_000 }), places, fc.constantFrom(-1e-6, -1e-12, 0, 1e-12, 1e-6))
      .map(([n, p, off]) => (n + 0.5 + off) / 10 ** p);
    const any = fc.double({ min: -1e10, max: 1e10, noNaN: true });
    fc.assert(
      fc.property(fc.oneof(half, any), places, (x, p) => {
        // Smaller ones are written with an exponent already.
        fc.pre(x === 0 || Math.abs(x) > 1e-6);
        expect(roundTo(x, p)).toBe(byDigits(x, p));
      }),
      { numRuns: 2000 },
    );
  });
  it("rounds idempotently", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1e6, max: 1e6, noNaN: true }),
        fc.nat(4),
        (x, places) => roundTo(roundTo(x, places), places) === roundTo(x, places),
      ),
    );
  });
  it("takes plurals and abbreviations of every unit for it", () => {
    fc.assert(
      fc.property(fc.constantFrom(...UNIT_IDS), fc.constantFrom("", "s", "."), (unit, end) => {
        const word = (unit === "bunch" || unit === "pinch") && end === "s" ? `${unit}es` : `${unit}${end}`;
        return unit === "g" && end === "s" ? true : unit === "l" && end === "s" ? true : findUnit(word)?.id === unit;
      }),
    );
  });
});
