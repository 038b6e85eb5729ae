import fc from "fast-check";
import { expect, it } from "vitest";
import { adaptRecipe, foodFacts, openCatalogue, readRecipe, type AllergenId, type Recipe } from "../../src/index.js";
import { DISHES, essence, FORMS, pinnedChoices } from "../helpers/adapt.js";

const c = openCatalogue({ locale: "en-GB", measures: "metric" });
const recipes = DISHES.map((d) => readRecipe(c, FORMS["json-ld object"]?.(d) ?? ""));
const recipe = fc.constantFrom(...recipes);
/** What is cooked; notes may differ, since a second reading finds less to say. */
const cooked = (r: Recipe): object => ({
  serves: r.serves,
  minutes: r.minutes,
  lines: r.lines.map((l) => l.text),
  steps: r.steps.map((s) => s.text),
});
const missing = fc
  .tuple(recipe, fc.array(fc.nat(), { minLength: 1, maxLength: 3 }))
  .map(([r, at]) => ({ r, lines: [...new Set(at.map((i) => r.lines[i % r.lines.length]?.text ?? ""))] }));
const slow = { numRuns: 12 };

it("nothing chosen changes nothing", () => {
  fc.assert(
    fc.property(recipe, (r) => {
      const a = adaptRecipe(c, r, {});
      expect(cooked(a)).toEqual(cooked(r));
      expect(a.lines).toEqual(r.lines);
      expect([a.changes, a.notes, a.refused]).toEqual([[], [], []]);
    }),
  );
});

it("adapting twice is adapting once", () => {
  const choices = fc.oneof(
    missing.map(({ r, lines }) => ({ r, choices: { missing: lines.map((line) => ({ line })) } })),
    fc
      .tuple(
        recipe,
        fc.constantFrom<AllergenId>("milk", "egg", "fish", "soy", "gluten cereals"),
        fc.integer({ min: 1, max: 12 }),
      )
      .map(([r, a, serves]) => ({ r, choices: { avoid: { allergens: [a] }, serves } })),
  );
  fc.assert(
    fc.property(choices, ({ r, choices: k }) => {
      const once = adaptRecipe(c, r, k);
      const twice = adaptRecipe(c, once, k);
      expect(cooked(twice)).toEqual(cooked(once));
      expect(twice.changes).toEqual(once.changes);
    }),
    slow,
  );
});
it("adapting the reviewed ones twice is adapting them once", () => {
  DISHES.forEach((d, i) => {
    for (const k of d.cases) {
      const choices = pinnedChoices(d, k);
      const once = adaptRecipe(c, recipes[i] as Recipe, choices);
      expect(cooked(adaptRecipe(c, once, choices)), `${d.id} ${k.id}`).toEqual(cooked(once));
    }
  });
});

it("the order of what is missing does not matter", () => {
  fc.assert(
    fc.property(missing, ({ r, lines }) => {
      const of = (list: readonly string[]): object =>
        essence(adaptRecipe(c, r, { missing: list.map((line) => ({ line })) }));
      expect(of([...lines].reverse())).toEqual(of(lines));
    }),
    slow,
  );
});

it("what is avoided is in no line of an adapted recipe, unless it is said loudly", () => {
  fc.assert(
    fc.property(
      recipe,
      fc.constantFrom<AllergenId>("milk", "egg", "fish", "soy", "peanuts", "wheat", "crustacean shellfish", "celery"),
      (r, allergen) => {
        const a = adaptRecipe(c, r, { avoid: { allergens: [allergen] } });
        for (const l of a.lines) {
          const told = a.notes.some((n) => /^(?:NOT REPLACED|CHECK BY HAND)/.test(n) && n.includes(l.text));
          if (l.read.food === undefined) expect(told, l.text).toBe(true);
          else if (!told)
            expect(foodFacts(c, l.read.food.id).allergens.free, `${l.text} in ${a.name}`).toContain(allergen);
        }
      },
    ),
    slow,
  );
});

it("amounts follow the number of people, within what a kitchen measures", () => {
  fc.assert(
    fc.property(recipe, fc.integer({ min: 1, max: 30 }), (r, serves) => {
      const factor = serves / (r.serves ?? 1);
      const a = adaptRecipe(c, r, { serves });
      expect(a.lines).toHaveLength(r.lines.length);
      expect(a.serves).toBe(serves);
      a.lines.forEach((l, i) => {
        const before = r.lines[i]?.read.portion;
        if (before === undefined) return expect(l.text).toBe(r.lines[i]?.text);
        const exact = before.grams * factor;
        expect(l.read.food?.id).toBe(before.id);
        // Spoons are rounded to spoons there are, and nothing is weighed finer than half a gram
        expect(Math.abs((l.read.portion?.grams ?? 0) - exact), `${l.text} for ${serves}`).toBeLessThanOrEqual(
          Math.max(0.6, exact * 0.21),
        );
      });
    }),
    { numRuns: 60 },
  );
});

it("no text makes it throw, and what it does not edit comes through to the letter", () => {
  const text = fc.string({ unit: "grapheme", maxLength: 200 });
  fc.assert(
    fc.property(text, text, (line, step) => {
      const r: Recipe = {
        ...(recipes[0] as Recipe),
        lines: [...(recipes[0] as Recipe).lines.slice(0, 2), { text: line, read: { ...none, unread: line } }],
        steps: [{ text: step }, { text: "Fry the onions." }],
      };
      const a = adaptRecipe(c, r, { serves: 8 });
      expect(a.lines[2]?.text).toBe(line);
      expect(a.steps[0]?.text).toBe(step);
    }),
  );
});
const none = {
  status: "no food",
  candidates: [],
  alternatives: [],
  preparation: "",
  note: "",
  optional: false,
  divided: false,
} as const;
