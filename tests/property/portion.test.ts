import fc from "fast-check";
import { describe, it } from "vitest";
import { openCatalogue, storeOf } from "../../src/catalogue/index.js";
import { isSteadfareError } from "../../src/errors.js";
import { kitchenMeasure, parsePortion, portionOf, readLine } from "../../src/portion/index.js";
import { convert } from "../../src/states/index.js";
import type { ReadLine } from "../../src/types.js";
import { larder } from "../helpers/larder.js";
import { LINES } from "../helpers/lines.js";

const us = larder();
const gb = larder("en-GB");
const catalogues = fc.constantFrom(us, gb);
const ingredient = fc.constantFrom(...storeOf(us).ingredients);
const line = fc.constantFrom(...LINES.map(([text]) => text));
const words = LINES.flatMap(([text]) => text.split(" "));
const anyText = fc.oneof(
  fc.string({ unit: "binary", maxLength: 300 }),
  fc.string({ unit: "grapheme", maxLength: 100 }),
  fc
    .array(fc.constantFrom(...words, "(", ")", ",", "or", "and", "/", "-", "plus", "juice of", "1", "½", "0", "%"), {
      maxLength: 15,
    })
    .map((w) => w.join(" ")),
  fc
    .tuple(line, fc.nat(60), fc.string({ unit: "binary", maxLength: 5 }))
    .map(([text, at, odd]) => text.slice(0, at) + odd + text.slice(at)),
);

function sound(r: ReadLine): boolean {
  const portions = [r.portion, ...r.alternatives.map((a) => a.portion)].filter((p) => p !== undefined);
  const numbers = portions.every(
    (p) =>
      Number.isFinite(p.grams) &&
      p.grams > 0 &&
      Math.abs(p.grams * 10 - Math.round(p.grams * 10)) < 1e-4 * Math.max(1, p.grams) &&
      Number.isFinite(p.measure.amount) &&
      p.measure.amount > 0 &&
      p.measure.text !== "" &&
      (p.range === undefined || (p.range[0] <= p.grams && p.grams <= p.range[1])),
  );
  const status =
    r.status === "food and amount"
      ? r.food !== undefined && r.portion !== undefined && r.portion.id === r.food.id
      : r.portion === undefined && (r.status === "food only" ? r.food !== undefined : r.food === undefined);
  return (
    numbers &&
    status &&
    (r.status === "ambiguous" ? r.candidates.length > 1 : r.candidates.length === 0) &&
    Object.isFrozen(r)
  );
}

describe("readLine", () => {
  it("never throws on any string, and what it returns is sound", () => {
    fc.assert(
      fc.property(catalogues, anyText, (c, text) => sound(readLine(c, text))),
      { numRuns: 3000 },
    );
  });
  it("is the same every time", () => {
    fc.assert(
      fc.property(
        catalogues,
        anyText,
        (c, text) => JSON.stringify(readLine(c, text)) === JSON.stringify(readLine(c, text)),
      ),
    );
  });
  it("does not mind bullets, numbering, spaces or a full stop", () => {
    fc.assert(
      fc.property(
        line,
        fc.constantFrom("- ", "• ", "☐ ", "[ ] ", "* ", "3. ", "2) ", "  ", "\u00a0"),
        fc.constantFrom("", " ", ".", "  "),
        (text, before, after) => {
          const plain = readLine(us, text);
          const dressed = readLine(us, `${before}${text}${text.endsWith(":") || /^\W/u.test(text) ? "" : after}`);
          if (/^(\W|\d+[.)])/u.test(text)) return true; // it has a bullet of its own
          return dressed.food?.id === plain.food?.id && dressed.portion?.grams === plain.portion?.grams;
        },
      ),
    );
  });
  it("scales with the number", () => {
    const foods = fc.constantFrom(
      "g flour",
      "cups flour",
      "tsp salt",
      "onions",
      "cloves garlic",
      "bunches kale",
      "lb chicken thighs",
      "cans black beans",
      "large eggs",
      "ml milk",
    );
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 50 }), fc.integer({ min: 2, max: 8 }), foods, (n, by, food) => {
        const one = readLine(us, `${n} ${food}`).portion?.grams ?? NaN;
        const many = readLine(us, `${n * by} ${food}`).portion?.grams ?? NaN;
        return Math.abs(many - one * by) <= 0.05 * by + 0.051;
      }),
    );
  });
  it("weighs more for more", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 300 }), fc.integer({ min: 1, max: 300 }), (a, b) => {
        const grams = (n: number) => readLine(us, `${n} tbsp honey`).portion?.grams ?? NaN;
        return Math.sign(grams(a) - grams(b)) === Math.sign(a - b);
      }),
    );
  });
  it("reads hostile lines in little time", () => {
    for (const run of [
      "(",
      ")",
      ",",
      " or ",
      " and ",
      "1/",
      "1 (",
      "- ",
      "½",
      "a ",
      "juice of ",
      "onion ",
      "[",
      "1 onion, ",
      "/",
    ]) {
      const text = run.repeat(2000).slice(0, 2000);
      if (!sound(readLine(us, text))) throw new Error(`unsound: ${run}`);
    }
  }, 20_000);
});

describe("printing and reading again", () => {
  const grams = fc.oneof(fc.double({ min: 0.2, max: 20, noNaN: true }), fc.double({ min: 20, max: 3000, noNaN: true }));
  it("gives back the grams, within what rounding was said to cost", () => {
    fc.assert(
      fc.property(catalogues, ingredient, grams, (c, { id }, g) => {
        const i = storeOf(c).byId.get(id);
        if (i === undefined) return false;
        const p = portionOf(storeOf(c), i, g);
        const again = readLine(c, `${p.measure.text} ${p.name}`);
        const meant = p.grams + p.measure.roundedBy;
        // 0.05 from each of the three roundings to a tenth; 0.6 % because a pinch of a cup is printed to three places
        return (
          again.food?.id === id &&
          again.portion !== undefined &&
          Math.abs(again.portion.grams - meant) <= 0.16 + 0.006 * meant
        );
      }),
      { numRuns: 2000 },
    );
  });
  it("holds for the shipped catalogue too, but for names that lean on another food", () => {
    const c = openCatalogue();
    const store = storeOf(c);
    let asked = 0;
    let back = 0;
    for (const i of store.ingredients.filter((_, n) => n % 3 === 0))
      for (const g of [4, 120, 900]) {
        const p = portionOf(store, i, g);
        const again = readLine(c, `${p.measure.text} ${p.name}`);
        const meant = p.grams + p.measure.roundedBy;
        asked++;
        if (again.food?.id === i.id && Math.abs((again.portion?.grams ?? 0) - meant) <= 0.16 + 0.006 * meant) back++;
      }
    if (back / asked < 0.99) throw new Error(`${back} of ${asked} came back`);
  });
  it("rounds by no more than a cook would mind", () => {
    fc.assert(
      fc.property(catalogues, ingredient, fc.double({ min: 15, max: 3000, noNaN: true }), (c, { id }, g) => {
        const i = storeOf(c).byId.get(id);
        if (i === undefined) return false;
        const p = portionOf(storeOf(c), i, g);
        return Math.abs(p.measure.roundedBy) <= 0.2 * p.grams;
      }),
      { numRuns: 1000 },
    );
  });
  it("prints what it read as it was read", () => {
    fc.assert(
      fc.property(line, (text) => {
        const r = readLine(us, text);
        if (r.portion === undefined) return true;
        // What was said after the comma says how a cup was filled, and whether a can was drained
        const again = readLine(us, `${r.portion.measure.text} ${r.portion.name}, ${r.preparation}`);
        const meant = r.portion.grams + r.portion.measure.roundedBy;
        return again.portion !== undefined && Math.abs(again.portion.grams - meant) <= 0.3 + 0.02 * meant;
      }),
      { numRuns: 400 },
    );
  });
  it("prints any unit asked for that the food has", () => {
    fc.assert(
      fc.property(
        ingredient,
        grams,
        fc.constantFrom("g", "oz", "lb", "cup", "tbsp", "tsp", "piece", "ml"),
        (i, g, unit) => {
          const m = kitchenMeasure(storeOf(us), i, g, { unit });
          return m === undefined || (m.unit === unit && m.amount > 0 && Number.isFinite(m.roundedBy));
        },
      ),
    );
  });
});

describe("parsePortion and convert", () => {
  it("return sound data or throw a typed error", () => {
    fc.assert(
      fc.property(
        anyText,
        fc.oneof(fc.constantFrom("cooked", "edible portion", "ready", "fresh cod", ""), anyText),
        (text, to) => {
          for (const run of [
            () => parsePortion(us, text),
            () => convert(us, text, to),
            () => convert(us, text, { state: to }),
            () => convert(us, text, { unit: "g" }),
          ]) {
            try {
              const p = run();
              if (!(p.grams > 0) || !Number.isFinite(p.grams) || !Object.isFrozen(p)) return false;
            } catch (e) {
              if (!isSteadfareError(e)) return false;
            }
          }
          return true;
        },
      ),
      { numRuns: 1000 },
    );
  });
  it("come back to the grams they left from", () => {
    const pairs = fc.constantFrom(
      ["white rice", "cooked rice"],
      ["salt cod", "cod"],
      ["dried porcini", "porcini"],
      ["dried black beans", "canned black beans"],
    );
    fc.assert(
      fc.property(pairs, fc.integer({ min: 50, max: 2000 }), ([from, to], g) => {
        const there = convert(us, `${g} g ${from}`, to);
        const back = convert(us, `${there.grams} g ${to}`, from);
        return Math.abs(back.grams - g) <= 0.2;
      }),
    );
  });
  it("convert in proportion", () => {
    fc.assert(
      fc.property(fc.integer({ min: 10, max: 500 }), fc.integer({ min: 2, max: 9 }), (g, by) => {
        const one = convert(us, `${g} g salt cod`, { state: "cooked" }).grams;
        return Math.abs(convert(us, `${g * by} g salt cod`, { state: "cooked" }).grams - one * by) <= 0.05 * by + 0.06;
      }),
    );
  });
});
