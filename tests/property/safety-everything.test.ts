// Every ingredient against everything that can be avoided, through the answers a caller gets.
import { describe, expect, it } from "vitest";
import { storeOf, type Ingredient } from "../../src/catalogue/index.js";
import { checkMeal, judgeSwap, openCatalogue, swapsFor } from "../../src/index.js";
import { ALLERGENS, allergenFacts, DIETS, hazardsFor, readAvoid, refusalFor } from "../../src/safety/index.js";
import type { AllergenId, Avoid, Swap } from "../../src/types.js";

const c = openCatalogue();
const store = storeOf(c);
const all = store.ingredients;
const FOODS = ["pork", "beef", "meat", "shellfish", "egg", "dairy", "nuts", "honey", "gelatin", "alcohol", "mushrooms"];
const AVOIDABLE: readonly { name: string; avoid: Avoid }[] = [
  ...ALLERGENS.map((a) => ({ name: a, avoid: { allergens: [a] } })),
  ...DIETS.map((d) => ({ name: d, avoid: { diets: [d] } })),
  ...FOODS.map((f) => ({ name: `the food ${f}`, avoid: { foods: [f] } })),
];
const rulesOf = (avoid: Avoid) => readAvoid(store, avoid, () => []);
const get = (id: string): Ingredient => {
  const i = store.byId.get(id);
  if (!i) throw new Error(`no ${id}`);
  return i;
};
const LONG = 180_000;

const FLESH = ["beef", "pork", "lamb", "goat", "horse", "game", "poultry"];
const SEA = ["fish", "crustacean", "mollusc"];
const SEA_ALLERGENS: AllergenId[] = ["fish", "crustacean shellfish", "molluscs"];
/** What each diet forbids, said a second time and without the tables: origins and allergens nobody disputes. */
const FORBIDDEN: Readonly<Record<string, { origin?: readonly string[]; contains?: readonly AllergenId[] }>> = {
  vegan: {
    origin: [...FLESH, ...SEA, "dairy", "egg", "honey", "gelatin", "animal fat", "insect"],
    contains: ["milk", "egg", ...SEA_ALLERGENS],
  },
  vegetarian: { origin: [...FLESH, ...SEA, "gelatin", "animal fat"], contains: SEA_ALLERGENS },
  "lacto-vegetarian": { origin: [...FLESH, ...SEA, "gelatin", "egg"], contains: ["egg", ...SEA_ALLERGENS] },
  "ovo-vegetarian": { origin: [...FLESH, ...SEA, "gelatin", "dairy"], contains: ["milk", ...SEA_ALLERGENS] },
  pescatarian: { origin: FLESH },
  halal: { origin: ["pork", "alcohol"] },
  kosher: { origin: ["pork", "crustacean", "mollusc"], contains: ["crustacean shellfish", "molluscs"] },
  jain: { origin: [...FLESH, ...SEA, "egg", "honey", "allium", "alcohol"], contains: ["egg", ...SEA_ALLERGENS] },
  buddhist: { origin: [...FLESH, ...SEA, "egg", "allium", "alcohol"], contains: ["egg", ...SEA_ALLERGENS] },
  coeliac: { contains: ["wheat", "gluten cereals"] },
  infant: { origin: ["honey"] },
  "no mammal meat": { origin: ["beef", "pork", "lamb", "goat", "horse"] },
  "no pork": { origin: ["pork"] },
  "no beef": { origin: ["beef"] },
};
/** Vinegar is made from alcohol and holds none. */
const vinegar = (i: Ingredient): boolean => i.kinds.includes("vinegar");
function forbidden(i: Ingredient, name: string): boolean {
  if ((ALLERGENS as readonly string[]).includes(name))
    return !allergenFacts(store, i).free.includes(name as AllergenId);
  const rule = FORBIDDEN[name];
  if (!rule) return false;
  return (
    (rule.origin ?? []).some((o) => i.origin.has(o) && !(o === "alcohol" && vinegar(i))) ||
    (rule.contains ?? []).some((a) => allergenFacts(store, i).contains.includes(a))
  );
}

describe("every ingredient, everything that can be avoided", () => {
  it(
    "is refused when its record carries it",
    () => {
      const missed: string[] = [];
      for (const { name, avoid } of AVOIDABLE) {
        const rules = rulesOf(avoid);
        for (const i of all) if (forbidden(i, name) && !refusalFor(store, i, rules)) missed.push(`${name}: ${i.id}`);
      }
      expect(missed).toEqual([]);
    },
    LONG,
  );
  it("each thing to avoid refuses something, and none refuses everything but the unmeasured", () => {
    for (const { name, avoid } of AVOIDABLE) {
      const rules = rulesOf(avoid);
      const refused = all.filter((i) => refusalFor(store, i, rules) !== undefined).length;
      expect(refused, name).toBeGreaterThan(0);
      expect(refused, name).toBeLessThan(0.8 * all.length);
    }
  });
});

/** Uses of one swap with what the answer says of it. */
const uses = (s: Swap): Ingredient[] => s.use.map((u) => get(u.id));
const unsafe = (missing: Ingredient, s: Swap, avoid: Avoid): string[] => {
  const rules = rulesOf(avoid);
  const faults: string[] = [];
  const name = `${missing.id} -> ${s.use.map((u) => u.id).join("+")} avoiding ${JSON.stringify(avoid)}`;
  for (const i of uses(s)) if (refusalFor(store, i, rules)) faults.push(`${name}: carries it`);
  for (const x of s.corrections)
    if (x.grams > 0 && refusalFor(store, get(x.ingredient.id), rules))
      faults.push(`${name}: mended with ${x.ingredient.id}`);
  const answer = hazardsFor(store, {
    missing,
    use: s.use.map((u) => ({ ingredient: get(u.id), grams: u.grams })),
    rules,
  });
  for (const stop of answer.stops) {
    if (stop.kind !== "unless") faults.push(`${name}: ${stop.hazard} offered`);
    else if (!s.cautions.some((x) => x.severity === "stop")) faults.push(`${name}: ${stop.hazard} unsaid`);
  }
  const added = s.prep.filter((p) => p.kind === "add" && p.required);
  for (const step of answer.required)
    if (!added.some((p) => p.procedure === step.procedure || p.text.endsWith(step.text.replace("Cook it ", ""))))
      faults.push(`${name}: no step ${step.hazard}`);
  const said = s.cautions.map((x) => x.text);
  if (new Set(said).size !== said.length) faults.push(`${name}: says a thing twice`);
  return faults;
};

describe("the answers", () => {
  it(
    "for every ingredient carry nothing avoided, no absolute stop, and no conditional one without its step",
    () => {
      const faults: string[] = [];
      all.forEach((missing, n) => {
        const { avoid } = AVOIDABLE[n % AVOIDABLE.length] as { avoid: Avoid };
        const { swaps } = swapsFor(c, { missing: missing.id, amount: "100 g", limit: 5, avoid });
        for (const s of swaps) faults.push(...unsafe(missing, s, avoid));
      });
      expect(faults).toEqual([]);
    },
    LONG,
  );
  it(
    "one more thing avoided adds no answer",
    () => {
      const key = (s: Swap): string => s.use.map((u) => u.id).join("+");
      for (let n = 0; n < all.length; n += 61) {
        const missing = (all[n] as Ingredient).id;
        const first = AVOIDABLE[(n * 7) % AVOIDABLE.length]?.avoid as Avoid;
        const more = AVOIDABLE[(n * 11 + 3) % AVOIDABLE.length]?.avoid as Avoid;
        const both = {
          allergens: [...(first.allergens ?? []), ...(more.allergens ?? [])],
          diets: [...(first.diets ?? []), ...(more.diets ?? [])],
          foods: [...(first.foods ?? []), ...(more.foods ?? [])],
        };
        const few = swapsFor(c, { missing, amount: "100 g", limit: 200, avoid: first }).swaps;
        if (few.length === 200) continue;
        const offered = new Set(few.map(key));
        for (const s of swapsFor(c, { missing, amount: "100 g", limit: 200, avoid: both }).swaps)
          expect(offered.has(key(s)), `${missing}: ${key(s)}`).toBe(true);
      }
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
      AVOIDABLE.forEach(({ avoid }, n) => {
        const rules = rulesOf(avoid);
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
