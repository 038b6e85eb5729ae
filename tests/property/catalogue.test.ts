import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { decode, encode, type Compiled, type Flat } from "../../src/catalogue/compiled.js";
import { differences } from "../../src/catalogue/graph/compare.js";
import { buildGraph } from "../../src/catalogue/graph/build.js";
import { catalogueOf } from "../../src/catalogue/open.js";
import { storeOf } from "../../src/catalogue/index.js";
import { FIGURES, flat } from "../helpers/rows.js";

const META = { version: "1.2.3", data: "1", hash: "abc" };
const runs = { numRuns: 150, seed: 20261125 };
const packed = (f: Flat): Compiled => JSON.parse(JSON.stringify(encode(f, META))) as Compiled;

describe("columns, for any rows", () => {
  it("give back the rows they were made of, after a way through JSON", () => {
    fc.assert(
      fc.property(flat, (f) => {
        const back = decode(packed(f));
        expect(back.ingredients).toEqual(f.ingredients);
        expect(back.swaps).toEqual(f.swaps);
        expect(back.commons).toEqual(f.commons);
      }),
      runs,
    );
  });
  it("make the same graph as the rows", () => {
    fc.assert(
      fc.property(flat, (f) => {
        expect(differences(buildGraph(f), buildGraph(decode(packed(f))))).toEqual([]);
      }),
      runs,
    );
  });
  it("open to a store that says what the rows say", () => {
    fc.assert(
      fc.property(flat, (f) => {
        const store = storeOf(catalogueOf(packed(f), { locale: "en-US", measures: "us", extensions: [] }));
        expect(store.size).toBe(f.ingredients.length);
        f.ingredients.forEach((row, i) => {
          const item = store.ingredients[i];
          if (item === undefined) throw new Error("a row is missing");
          expect(store.byId.get(row.id)).toBe(item);
          expect([item.id, item.food, item.part, item.kind, item.usual]).toEqual([
            row.id,
            row.food,
            row.part,
            row.kind,
            row.usual,
          ]);
          expect(item.names).toEqual(row.names);
          expect([item.name.us, item.name.gb]).toEqual(row.name);
          expect(item.texture).toEqual(row.texture);
          expect(item.aroma).toEqual(row.aroma);
          expect(item.measures.map((m) => [m.unit, m.label, m.grams, m.source.key])).toEqual(
            row.measures.map(([unit, label, g, s]) => [unit, label, g, `k${s}`]),
          );
          for (const name of FIGURES) {
            const figure = store.figure(item, name);
            const [value, place] = row.figures[name] ?? [];
            expect(figure?.value).toBe(value);
            expect(figure?.source.key).toBe(place === undefined ? undefined : `k${place}`);
          }
        });
      }),
      runs,
    );
  });
  it("are the same text whatever was packed before", () => {
    fc.assert(
      fc.property(flat, flat, (f, other) => {
        const first = JSON.stringify(encode(f, META));
        encode(other, META);
        expect(JSON.stringify(encode(f, META))).toBe(first);
      }),
      { ...runs, numRuns: 40 },
    );
  });
});
