// Every ingredient against everything that can be avoided, through the answers a caller gets. All pairs are asked of the gates; a fixed
// rotation of them end to end. `npm run cross` asks them all end to end.
import { describe, expect, it } from "vitest";
import { checkMeal, judgeSwap, pairingsFor, readRecipe, swapNotes, swapsFor } from "../../src/index.js";
import { allergenFacts, hazardsFor, refusalFor } from "../../src/safety/index.js";
import type { Swap } from "../../src/types.js";
import {
  all,
  asked,
  AVOIDABLE,
  c,
  forbidden,
  get,
  leftFor,
  offersFor,
  refusedFor,
  store,
  turn,
  type Avoidable,
} from "../helpers/safety-cross.js";

const LONG = 120_000;
/** Every so many-th ingredient, from a fixed start. */
const some = (every: number, start: number) => all.filter((_, n) => n % every === start);

describe("every ingredient, everything that can be avoided", () => {
  it("is refused when its record carries it", () => {
    const missed: string[] = [];
    for (const a of AVOIDABLE)
      for (const i of all) if (forbidden(i, a) && !refusedFor(a).has(i.id)) missed.push(`${a.name}: ${i.id}`);
    expect(missed).toEqual([]);
  });
  it("each thing to avoid refuses something, and none refuses everything but the unmeasured", () => {
    for (const a of AVOIDABLE) {
      expect(refusedFor(a).size, a.name).toBeGreaterThan(0);
      expect(refusedFor(a).size, a.name).toBeLessThan(0.8 * all.length);
    }
  });
});

describe("the answers", () => {
  it(
    "offered to one who avoids nothing: no absolute stop, none of the others without its step; and left for each diner, nothing carried",
    () => {
      const faults: string[] = [];
      for (const missing of some(40, 5)) {
        const offers = offersFor(missing);
        faults.push(...offers.faults);
        for (const a of AVOIDABLE)
          for (const o of leftFor(offers, a))
            for (const id of o.ids) if (forbidden(get(id), a)) faults.push(`${missing.id}: ${id} for ${a.name}`);
      }
      expect(faults).toEqual([]);
    },
    LONG,
  );
  it(
    "to one who avoids something are exactly what the gates leave, and mended with nothing avoided",
    () => {
      const faults: string[] = [];
      some(50, 17).forEach((missing, n) => {
        const offers = offersFor(missing);
        for (const shift of [0, 1]) faults.push(...asked(missing, offers, turn(n, shift)));
      });
      expect(faults).toEqual([]);
    },
    LONG,
  );
  it(
    "one more thing avoided adds no answer",
    () => {
      const key = (s: Swap): string => s.use.map((u) => u.id).join("+");
      some(61, 0).forEach((missing, n) => {
        const [first, more] = [turn(n, 2).avoid, turn(n, 5).avoid];
        const both = {
          allergens: [...(first.allergens ?? []), ...(more.allergens ?? [])],
          diets: [...(first.diets ?? []), ...(more.diets ?? [])],
          foods: [...(first.foods ?? []), ...(more.foods ?? [])],
        };
        const ask = (avoid: typeof both | typeof first): readonly Swap[] =>
          swapsFor(c, { missing: missing.id, amount: "100 g", limit: 200, avoid }).swaps;
        const few = ask(first);
        if (few.length === 200) return;
        const offered = new Set(few.map(key));
        for (const s of ask(both)) expect(offered.has(key(s)), `${missing.id}: ${key(s)}`).toBe(true);
      });
    },
    LONG,
  );
  it(
    "about what goes with what hold nothing avoided, and are what the gates leave",
    () => {
      some(41, 3).forEach((food, n) => {
        const a = turn(n, 3);
        const { pairings } = pairingsFor(c, { food: food.id, avoid: a.avoid, limit: 200 });
        const plain = pairingsFor(c, { food: food.id, limit: 200 }).pairings;
        const left = refusedFor(a).has(food.id) ? [] : plain.filter((p) => !refusedFor(a).has(p.with.id));
        const ids = pairings.map((p) => p.with.id);
        expect(ids.slice(0, left.length), `${food.id} avoiding ${a.name}`).toEqual(left.map((p) => p.with.id));
        for (const id of ids) expect(forbidden(get(id), a), `${food.id} with ${id} avoiding ${a.name}`).toBe(false);
      });
    },
    LONG,
  );
  it(
    "noted under a recipe hold nothing avoided",
    () => {
      let noted = 0;
      for (let n = 0; n < AVOIDABLE.length; n += 3) {
        const a = AVOIDABLE[n] as Avoidable;
        const lines = some(499, n).map((i) => `100 g ${store.nameOf(i)}`);
        const recipe = readRecipe(c, `Trial\n\nIngredients\n${lines.join("\n")}\n\nMethod\nCook it.`, "text");
        for (const note of swapNotes(c, recipe, { avoid: a.avoid }).notes) {
          const uses = note.swaps.flatMap((s) => s.use);
          noted += uses.length;
          for (const u of uses) expect(refusedFor(a).has(u.id), `${note.line} avoiding ${a.name}: ${u.id}`).toBe(false);
        }
      }
      expect(noted).toBeGreaterThan(20);
    },
    LONG,
  );
});

const NEVER: readonly [missing: string, use: string, technique?: string][] = [
  ["wakame/dried", "hijiki/dried"],
  ["salt/pantry", "curing-salt/pantry"],
  ["curing-salt/pantry", "salt/pantry"],
  ["baking-soda/pantry", "kansui/pantry"],
  ["white-vinegar/pantry", "lemon.juice/fresh", "can"],
  ["white-vinegar/pantry", "cider-vinegar/pantry", "pickle"],
  ["zucchini/fresh", "pumpkin/fresh", "can"],
  ["salmon/smoked", "chicken-breast/fresh", "raw"],
  ["salmon/fresh", "trout/fresh", "raw"],
  ["cremini/fresh", "morel/fresh", "raw"],
  ["jicama/fresh", "cassava/fresh", "raw"],
  ["vegetable-oil/pantry", "butter/fresh-unsalted", "deep-fry"],
];
const UNLESS: readonly [missing: string, use: string, technique: string, says: RegExp][] = [
  ["kidney-bean/canned", "kidney-bean/dried", "simmer", /boil hard/],
  ["kidney-bean/canned", "cannellini-bean/dried", "slow cooker", /boil hard.*slow cooker/],
  ["potato/fresh", "cassava/fresh", "boil", /throw the water away/],
  ["potato/fresh", "taro/fresh", "boil", /fully soft/],
  ["bamboo-shoots/canned", "bamboo-shoots/fresh", "stir-fry", /boil 10 minutes/],
  ["asparagus/fresh", "fiddleheads/fresh", "stir-fry", /boil 15 minutes/],
  ["cremini/fresh", "morel/fresh", "fry", /through/],
  ["prosciutto/cured", "bacon/cured", "fry", /°F/],
  ["stewing-beef/fresh", "boneless-chicken-thigh/fresh", "braise", /165 °F/],
  ["salmon/fresh", "cod/fresh", "cure", /-20 °C/],
];
describe("stops", () => {
  const favour = (use: string) =>
    [
      { have: [use], onlyFromHave: true },
      { have: [use], prefer: "cheapest" as const, prices: { [use]: 0 } },
      { prefer: "quickest" as const, evidence: "computed" as const },
      { prefer: "closest" as const, evidence: "all" as const },
    ] as const;
  it.each(NEVER)(
    "absolute, %s -> %s %s: not lifted by evidence, preference or what is in the house",
    (missing, use, t) => {
      const dish = t === undefined ? {} : { dish: { technique: t } };
      const role = t === "deep-fry" ? { role: "frying medium" as const } : {};
      for (const more of favour(use)) {
        const request = { missing, amount: "50 g", limit: 200, ...dish, ...role, ...more };
        expect(swapsFor(c, request).swaps.flatMap((s) => s.use.map((u) => u.id))).not.toContain(use);
        const judged = judgeSwap(c, { ...request, limit: 1, instead: use });
        expect(judged.swap).toBeUndefined();
        expect(["no", "only for"]).toContain(judged.verdict);
      }
    },
  );
  it.each(UNLESS)("conditional, %s -> %s to %s: always with its step", (missing, use, technique, says) => {
    for (const more of favour(use)) {
      const request = { missing, amount: "200 g", dish: { technique }, ...more };
      const { swap } = judgeSwap(c, { ...request, limit: 1, instead: use });
      const found = swapsFor(c, { ...request, limit: 200 }).swaps.filter((s) => s.use.some((u) => u.id === use));
      for (const s of swap ? [swap, ...found] : found) {
        const step = s.prep.find((p) => p.required && p.kind === "add" && says.test(p.text));
        expect(step, s.prep.map((p) => p.text).join(" | ")).toBeDefined();
        expect(s.cautions.some((x) => x.severity === "stop")).toBe(true);
      }
      expect(swap ?? found[0]).toBeDefined();
    }
  });
});

describe("what fills a meal", () => {
  it(
    "is nothing that anyone at the table avoids, nothing that is never eaten, no milk beside kosher meat",
    () => {
      const never = new Set(
        all
          .filter((i) =>
            hazardsFor(store, { use: [{ ingredient: i, grams: 1 }] }).stops.some((s) => s.kind === "never"),
          )
          .map((i) => i.id as string),
      );
      expect(never.size).toBeGreaterThan(0);
      AVOIDABLE.forEach(({ avoid, rules }, n) => {
        const have = all.filter((_, i) => i % 25 === n % 25).map((i) => i.id as string);
        const report = checkMeal(c, {
          serves: 4,
          dishes: [{ name: "tea", lines: ["1 tsp salt"] }],
          table: [{ avoid }],
          have: [...have, "hijiki/dried", "rhubarb/fresh"],
        });
        for (const gap of report.gaps)
          for (const f of gap.fill) {
            expect(refusalFor(store, get(f.id), rules), `${JSON.stringify(avoid)} ${f.id}`).toBeUndefined();
            expect(never.has(f.id)).toBe(false);
          }
      });
      const kosher = checkMeal(c, {
        serves: 2,
        dishes: [{ name: "roast", lines: ["400 g beef brisket"] }],
        table: [{ avoid: { diets: ["kosher"] } }],
        have: ["naan", "rice", "carrots", "brioche", "green beans"],
      });
      const fills = kosher.gaps.flatMap((g) => g.fill.map((f) => get(f.id)));
      expect(fills.length).toBeGreaterThan(0);
      for (const i of fills) expect(allergenFacts(store, i).contains).not.toContain("milk");
    },
    LONG,
  );
});
