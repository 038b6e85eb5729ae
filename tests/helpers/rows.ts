// Rows of a catalogue at random, as data that pass the rules may be.
import fc from "fast-check";
import { nameSwaps, type Commons, type Flat, type FlatIngredient, type NameRow } from "../../src/catalogue/compiled.js";
import { clean, compiledOf } from "./records.js";

const REFS = 40;

const base = compiledOf(clean()).flat.commons;
export const FIGURES = Object.keys(base.figures);
const commons: Commons = {
  ...base,
  refs: Array.from({ length: REFS }, (_, i) => (i % 3 === 0 ? [`k${i}`] : [`k${i}`, `page ${i}`])),
  tables: {},
};
const list = (name: string): readonly string[] => base.vocabulary[name] ?? [];

// What data may hold: the rules see to the rest (names without bars, levels in half steps, sources that exist).
const source = fc.nat({ max: REFS - 1 });
const amount = fc.double({ min: 0.001, max: 1e6, noNaN: true });
const level = fc.integer({ min: 0, max: 18 }).map((n) => n / 2);
const cited = fc.tuple(amount, source);
const words = (from: readonly string[]) => fc.subarray([...from]);
const scale = <T>(keys: readonly string[], value: fc.Arbitrary<T>) =>
  fc
    .subarray([...keys])
    .chain((some) =>
      fc.tuple(...some.map(() => value)).map((vs) => Object.fromEntries(some.map((k, i) => [k, vs[i] as T]))),
    );
const text = fc
  .oneof(
    fc.string({ minLength: 1, maxLength: 20, unit: "grapheme" }),
    fc.constantFrom("cod", "Stück", "タラ", '"quoted"', "it's", "\\", "__proto__", "constructor", " "),
  )
  .filter((s) => !/[|\u0000-\u001f\u007f\u2028\u2029]/.test(s));
const tags = fc.subarray(["en", "en-GB", "fr", "ja", "zh-Hant"], { minLength: 1 });
const names = tags.chain((some) =>
  fc
    .tuple(...some.map(() => fc.array(text, { minLength: 1, maxLength: 3 })))
    .map((texts) => some.map((tag, i) => [tag, texts[i] ?? []] as const)),
);
const slug = fc.oneof(
  { weight: 9, arbitrary: fc.stringMatching(/^[a-z]{1,6}(-[a-z0-9]{1,4})?$/) },
  { weight: 1, arbitrary: fc.constantFrom("constructor", "valueof") },
);
const rowsFrom = (pairs: readonly (readonly [string, readonly string[]])[], of: NameRow["of"]): NameRow[] =>
  pairs.flatMap(([tag, texts]) => texts.map((t) => ({ tag, text: t, of })));

const facts = fc.record(
  {
    isDefault: fc.boolean(),
    name: fc.tuple(text, text),
    kind: fc.constantFrom(...base.kinds.map(([k]) => k)),
    roles: scale(
      list("role"),
      fc.double({ min: 0, max: 1, noNaN: true }).map((v) => v + 0),
    ),
    slot: fc.constantFrom(...list("slot")),
    can: words(list("capability")),
    cannot: words(list("capability")),
    texture: scale(
      ["raw", "cooked", "long"],
      scale(list("texture"), level).filter((s) => Object.keys(s).length > 0),
    ),
    flavour: scale(["bitter", "salty"], level),
    aroma: scale(list("aroma"), level),
    dominant: words(list("note")),
    origin: words(list("origin")),
    tags: words(["liver", "raw egg"]),
    contains: words(list("allergen")),
    may: words(list("allergen")),
    unknown: words(list("allergen")),
    figures: scale(FIGURES, cited),
    measures: fc.array(
      fc.tuple(
        fc.constantFrom(...list("unit")),
        fc.constantFrom("", "chopped", "large", "well packed"),
        amount,
        source,
      ),
      { maxLength: 4 },
    ),
    usual: fc.constantFrom("cup", "piece large"),
    edible: amount,
    cooked: cited,
    ready: fc.record(
      { by: words(["desalt", "rinse"]), yield: amount, salt: amount, source },
      { requiredKeys: ["by", "yield", "source"] },
    ),
    minutes: scale(list("technique"), cited),
    cost: fc.integer({ min: 1, max: 9 }),
    athand: fc.integer({ min: 0, max: 2 }),
    colour: text,
    starchKind: text,
    acidKind: text,
    pungencyKind: text,
    traditions: words(list("tradition")),
  },
  {
    requiredKeys: [
      "isDefault",
      "name",
      "kind",
      "roles",
      "can",
      "cannot",
      "texture",
      "flavour",
      "aroma",
      "dominant",
      "origin",
      "tags",
      "contains",
      "may",
      "unknown",
      "figures",
      "measures",
      "edible",
      "minutes",
      "cost",
      "athand",
      "traditions",
    ],
  },
);
const state = fc
  .tuple(
    fc.constantFrom(...list("preservation")),
    fc.constantFrom("", ...list("heat")),
    fc.constantFrom("", ...list("form")),
  )
  .map((parts) => parts.filter((w) => w !== ""));

/** A few foods, some with a part, each with a few states; changes and swaps among them. */
export const flat: fc.Arbitrary<Flat> = fc
  .uniqueArray(
    fc.record({
      food: slug,
      part: fc.constantFrom(undefined, "stem", "juice"),
      names,
      states: fc.uniqueArray(fc.tuple(state, fc.option(names, { nil: [] }), facts), {
        minLength: 1,
        maxLength: 3,
        selector: ([s]) => s.join("-"),
      }),
    }),
    { minLength: 1, maxLength: 5, selector: (f) => `${f.food}.${f.part ?? ""}` },
  )
  .chain((foods) => {
    const rows = foods.flatMap(({ food, part, names: shared, states }) => {
      const key = part === undefined ? food : `${food}.${part}`;
      return states.map(([words_, own, rest]) => ({
        ...rest,
        id: `${key}/${words_.join("-")}`,
        food,
        ...(part === undefined ? {} : { part }),
        state: words_,
        names: [...rowsFrom(own, "state"), ...rowsFrom(shared, part === undefined ? "food" : "part")],
      }));
    });
    const id = fc.constantFrom(...rows.map((r) => r.id));
    const becomes = fc.array(
      fc.record(
        {
          to: id,
          by: fc.constant("desalt"),
          yield: amount,
          minutes: fc.record({ active: amount, waiting: amount }),
          source,
        },
        { requiredKeys: ["to", "by", "yield", "source"] },
      ),
      { maxLength: 2 },
    );
    const said = fc.constantFrom("1 cup", "1/2 tsp", "100 g");
    const use = fc.oneof(fc.record({ id }), fc.record({ id, amount: said }), fc.record({ id, ratio: amount }));
    const swap = fc.record(
      {
        replaces: fc.record({ id, amount: said }, { requiredKeys: ["id"] }),
        uses: fc.array(use, { minLength: 1, maxLength: 4 }),
        role: fc.constantFrom(...list("role")),
        context: text,
        techniques: words(list("technique")),
        tradition: fc.constantFrom(...list("tradition")),
        change: text,
        sources: fc.array(source, { minLength: 1, maxLength: 3 }),
      },
      { requiredKeys: ["replaces", "uses", "sources"] },
    );
    return fc.tuple(fc.tuple(...rows.map(() => becomes)), fc.array(swap, { maxLength: 8 })).map(([ways, swaps]) => ({
      commons,
      ingredients: rows.map((row, i): FlatIngredient => ({ ...row, becomes: ways[i] ?? [] })),
      swaps: nameSwaps(swaps),
    }));
  });
