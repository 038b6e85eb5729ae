import fc from "fast-check";
import { expect, it } from "vitest";
import { isSteadfareError } from "../../src/errors.js";
import type { Ingredient } from "../../src/catalogue/store.js";
import {
  ALLERGENS,
  allergenFacts,
  DIETS,
  hazardsFor,
  mergeAllergens,
  mergeRules,
  readAvoid,
  refusalFor,
  type AvoidRules,
} from "../../src/safety/index.js";
import type { AllergenFacts, AllergenId, Avoid } from "../../src/types.js";
import { larder, tables } from "../helpers/safety.js";
import { usual } from "../helpers/safety-foods.js";

const l = larder();
const { store } = l;
const listed = Object.values(usual(l));
const lists = ["contains", "mayContain", "free", "unknown"] as const;

const allergen = fc.constantFrom(...ALLERGENS);
const some = <T>(of: fc.Arbitrary<T>): fc.Arbitrary<T[]> => fc.uniqueArray(of, { maxLength: 6 });
const words = (key: "origin" | "tags" | "kinds"): string[] => {
  const found = new Set<string>();
  const walk = (x: unknown): void => {
    if (Array.isArray(x)) for (const y of x) walk(y);
    else if (typeof x === "object" && x !== null) {
      const held = (x as Record<string, unknown>)[key];
      if (Array.isArray(held)) for (const w of held) found.add(String(w));
      Object.values(x).forEach(walk);
    }
  };
  walk(tables);
  return [...found];
};
/** Any ingredient the tables could speak of, and many they could not. */
const ingredient: fc.Arbitrary<Ingredient> = fc
  .record({
    contains: some<AllergenId>(allergen),
    may: some<AllergenId>(allergen),
    unknown: some<AllergenId>(allergen),
    origin: some(fc.constantFrom(...words("origin"))),
    tags: some(fc.constantFrom(...words("tags"))),
    kinds: some(fc.constantFrom(...words("kinds"))),
    sodium: fc.option(fc.integer({ min: 0, max: 40000 }), { nil: undefined }),
  })
  .map(({ sodium, ...said }) =>
    l.food("anything/fresh", { ...said, ...(sodium === undefined ? {} : { figures: { sodium } }) }),
  );
const anything = fc.oneof(ingredient, fc.constantFrom(...listed));
const ruled: fc.Arbitrary<AvoidRules> = fc
  .record({
    allergens: some<AllergenId>(allergen),
    diets: some(fc.constantFrom(...DIETS)),
    foods: some(fc.constantFrom("pork", "shellfish", "mushrooms", "dairy", "alcohol")),
  })
  .map((avoid) => readAvoid(store, avoid as Avoid, () => []));
const exact = (facts: AllergenFacts): void => {
  const all = lists.flatMap((list) => facts[list]);
  expect(all).toHaveLength(ALLERGENS.length);
  expect(new Set(all)).toEqual(new Set(ALLERGENS));
};

it("four lists cover the allergens exactly, of a thing and of a dish", () => {
  fc.assert(
    fc.property(fc.array(anything, { maxLength: 5 }), (things) => {
      for (const i of things) exact(allergenFacts(store, i));
      exact(mergeAllergens(store, things));
    }),
  );
});

it("what the record contains or does not know is never free, in a dish either", () => {
  fc.assert(
    fc.property(anything, anything, (a, b) => {
      const dish = mergeAllergens(store, [a, b]);
      for (const i of [a, b])
        for (const x of [...i.contains, ...i.mayContain, ...i.unknownAllergens]) expect(dish.free).not.toContain(x);
      for (const x of a.contains) expect(dish.contains).toContain(x);
    }),
  );
});

it("merging does not depend on order or on saying things twice", () => {
  fc.assert(
    fc.property(fc.array(anything, { minLength: 1, maxLength: 5 }), (things) => {
      expect(mergeAllergens(store, [...things].reverse())).toEqual(mergeAllergens(store, things));
      expect(mergeAllergens(store, [...things, ...things])).toEqual(mergeAllergens(store, things));
    }),
  );
});

it("asked to avoid an allergen, everything not free of it is refused", () => {
  fc.assert(
    fc.property(anything, allergen, (i, a) => {
      const refused =
        refusalFor(
          store,
          i,
          readAvoid(store, { allergens: [a] }, () => []),
        ) !== undefined;
      expect(refused).toBe(!allergenFacts(store, i).free.includes(a));
    }),
  );
});

it("adding an avoidance never removes a refusal", () => {
  fc.assert(
    fc.property(
      anything,
      ruled,
      ruled,
      fc.constantFrom(undefined, "raw", "bake", "whip", "slow cooker"),
      (i, few, more, technique) => {
        const options = technique === undefined ? {} : { technique };
        if (refusalFor(store, i, few, options))
          expect(refusalFor(store, i, mergeRules([few, more]), options)).toBeDefined();
      },
    ),
  );
});

it("a diner more at the table never lifts a stop that is not theirs, and never a refusal", () => {
  fc.assert(
    fc.property(
      anything,
      anything,
      ruled,
      ruled,
      fc.constantFrom("raw", "bake", "can", "slow cooker", "deep-fry", undefined),
      (missing, i, few, more, technique) => {
        const ask = (rules: AvoidRules): readonly string[] =>
          hazardsFor(store, {
            missing,
            use: [{ ingredient: i, grams: 50 }],
            rules,
            ...(technique === undefined ? {} : { technique }),
          })
            .stops.filter((s) => s.kind !== "unless")
            .map((s) => s.hazard);
        expect(ask(mergeRules([few, more]))).toEqual(expect.arrayContaining([...ask(few)]));
      },
    ),
  );
});

it("a hazard of kind unless always brings a step, and answers are frozen and repeatable", () => {
  fc.assert(
    fc.property(
      anything,
      anything,
      ruled,
      fc.constantFrom("raw", "bake", "slow cooker", undefined),
      (missing, i, rules, technique) => {
        const ask = (): ReturnType<typeof hazardsFor> =>
          hazardsFor(store, {
            missing,
            use: [{ ingredient: i, grams: 50 }],
            rules,
            ...(technique === undefined ? {} : { technique }),
          });
        const answer = ask();
        if (answer.stops.some((s) => s.kind === "unless")) expect(answer.required.length).toBeGreaterThan(0);
        for (const c of answer.cautions) expect(c.sources.length).toBeGreaterThan(0);
        expect(Object.isFrozen(answer.cautions)).toBe(true);
        expect(ask()).toEqual(answer);
      },
    ),
  );
});

it("a word is understood or refused, whatever it is, and always fast", () => {
  fc.assert(
    fc.property(
      fc.oneof(fc.string({ maxLength: 300 }), fc.string({ unit: "binary", maxLength: 300 })),
      fc.constantFrom("allergens", "diets", "foods"),
      (word, field) => {
        try {
          const rules = readAvoid(store, { [field]: [word] }, () => []);
          expect(rules.allergens.length + rules.diets.length + rules.groups.length).toBeGreaterThan(0);
        } catch (e) {
          expect(isSteadfareError(e)).toBe(true);
        }
      },
    ),
  );
});
