import { describe, expect, it } from "vitest";
import { checkMeal, isSteadfareError, openCatalogue } from "../../src/index.js";
import type { ErrorData, Meal, MealReport } from "../../src/index.js";
import { storeOf } from "../../src/catalogue/index.js";
import { dose } from "../../src/dose/index.js";

const c = openCatalogue();
const store = storeOf(c);
const served = (id: string): number => {
  const i = store.byId.get(id);
  return i ? dose(store, i, "served") : Number.NaN;
};
const meal = (lines: readonly string[], more: Partial<Meal> = {}): Meal => ({
  serves: 4,
  dishes: [{ name: "Dish", lines }],
  ...more,
});
const check = (lines: readonly string[], more: Partial<Meal> = {}): MealReport => checkMeal(c, meal(lines, more));
const codeOf = (run: () => unknown): keyof ErrorData | undefined => {
  try {
    run();
  } catch (e) {
    if (isSteadfareError(e)) return e.code;
    throw e;
  }
  return undefined;
};

describe("slots a person, by hand", () => {
  it("dry rice counts as it is on the plate", () => {
    const { starch } = check(["300 g white rice"]).slots;
    expect(starch.perPerson).toBeCloseTo((300 * served("white-rice/pantry")) / 4, 1);
    expect(starch.covered).toBe(true);
    expect(starch.from.map((p) => p.id)).toEqual(["white-rice/pantry"]);
    expect(starch.sources.length).toBeGreaterThan(0);
  });
  it("meat counts cooked", () => {
    expect(check(["600 g chicken breast"]).slots.protein.perPerson).toBeCloseTo(
      (600 * served("chicken-breast/fresh")) / 4,
      1,
    );
  });
  // MyPlate: 1 egg, or 1/4 cup cooked beans, counts as an ounce of meat; portions.yaml takes 150 g egg and 130 g pulses for 85 g
  it("eggs and pulses count as less protein than their weight", () => {
    expect(check(["8 eggs"]).slots.protein.perPerson).toBeCloseTo(((8 * 50 * served("egg/fresh")) / 4) * (85 / 150), 0);
    const beans = check(["400 g cooked chickpeas"]).slots.protein.perPerson;
    expect(beans).toBeCloseTo(((400 * served("chickpea/fresh-cooked")) / 4) * (85 / 130), 0);
  });
  it("what only seasons fills nothing", () => {
    const report = check(["1 tbsp soy sauce", "1 tsp black pepper", "2 tbsp olive oil"]);
    for (const slot of ["starch", "protein", "vegetable", "soup"] as const)
      expect(report.slots[slot].perPerson, slot).toBe(0);
  });
  it("twice the guests, half as much each", () => {
    const four = check(["300 g white rice", "500 g kale"]);
    const eight = check(["300 g white rice", "500 g kale"], { serves: 8 });
    expect(eight.slots.starch.perPerson).toBeCloseTo(four.slots.starch.perPerson / 2, 0);
    expect(eight.slots.vegetable.perPerson).toBeCloseTo(four.slots.vegetable.perPerson / 2, 0);
    expect(four.slots.starch.covered).toBe(true);
    expect(eight.slots.starch.covered).toBe(false);
  });
  it("nine tenths of a portion passes for one, less does not (portions.yaml, tolerance)", () => {
    const grams = (perPerson: number): string =>
      `${((perPerson * 4) / served("white-rice/pantry")).toFixed(1)} g white rice`;
    expect(check([grams(127)]).slots.starch.covered).toBe(true);
    expect(check([grams(125)]).slots.starch.covered).toBe(false);
  });
});

describe("soup", () => {
  const soup = (liquid: string, lines: readonly string[]): number =>
    checkMeal(c, { serves: 4, dishes: [{ name: "Soup", liquid, lines }] }).slots.soup.perPerson;
  it("is what was poured and what swims in it", () => {
    const tofu = 200 * served("firm-tofu/fresh");
    expect(soup("1 l", ["200 g firm tofu"])).toBeCloseTo((1000 + tofu) / 4, 0);
  });
  it("pasta drinks of it: the volume stays, the free liquid shrinks", () => {
    expect(soup("500 ml", ["200 g spaghetti"])).toBe(0); // nothing left to call soup
  });
  it("a splash of liquid makes a sauce, no soup", () => expect(soup("200 ml", ["500 g carrots"])).toBe(0));
  it("stock among the lines counts as liquid", () => {
    const report = check(["1.2 l chicken stock", "200 g carrots"]);
    expect(report.slots.soup.perPerson).toBeGreaterThan(290);
    expect(report.slots.soup.covered).toBe(true);
  });
  it("is asked for unless the meal says it is optional", () => {
    expect(check(["300 g white rice"]).gaps.map((g) => g.slot)).toContain("soup");
    expect(check(["300 g white rice"], { soup: "optional" }).gaps.map((g) => g.slot)).not.toContain("soup");
  });
});

describe("gaps", () => {
  it("an empty meal lacks everything, by the whole portion", () => {
    const report = checkMeal(c, { serves: 2, dishes: [] });
    expect(report.gaps.map((g) => g.slot)).toEqual(["starch", "protein", "vegetable", "soup"]);
    for (const g of report.gaps) expect(g.short).toBe(report.slots[g.slot].target[0]);
  });
  it("what the house would close it with does close it", () => {
    const have = ["chicken breast", "white rice", "kale", "carrots", "canned chickpeas"];
    const report = check(["1 tsp salt"], { have, soup: "optional" });
    expect(report.gaps.length).toBe(3);
    for (const gap of report.gaps) {
      expect(gap.fill.length, gap.slot).toBeGreaterThan(0);
      expect(gap.fill.length).toBeLessThanOrEqual(5);
      for (const fill of gap.fill) {
        const closed = check([`${fill.grams} g ${fill.name}`], { soup: "optional" });
        expect(closed.slots[gap.slot].covered, `${fill.grams} g ${fill.name}`).toBe(true);
      }
    }
  });
  it("nothing that a guest must avoid is offered to close a gap", () => {
    const have = ["chicken breast", "eggs", "firm tofu"];
    const all = check([], { have });
    const some = check([], { have, table: [{ avoid: { diets: ["vegan"] } }] });
    const of = (r: MealReport): string[] => r.gaps.find((g) => g.slot === "protein")?.fill.map((p) => p.id) ?? [];
    expect(of(all)).toContain("chicken-breast/fresh");
    expect(of(some)).toEqual(["firm-tofu/fresh"]);
  });
  it("what is not in the house is never offered", () =>
    expect(check([], { have: [] }).gaps.every((g) => g.fill.length === 0)).toBe(true));
});

describe("salt, allergens, guests", () => {
  it("sodium a person: a teaspoon of salt among four (USDA SR28 02047: 6 g, 38,758 mg sodium per 100 g)", () => {
    const { sodiumPerPerson } = check(["1 tsp salt"]);
    expect(Math.abs(sodiumPerPerson.milligrams - (6 * 387.58) / 4)).toBeLessThan(3);
    expect(sodiumPerPerson.atLeast).toBe(false);
  });
  it("a line that cannot be read makes it at least, is named, and counts for nothing", () => {
    const report = check(["1 tsp salt", "a flumph of zorkmid"]);
    expect(report.sodiumPerPerson.atLeast).toBe(true);
    expect(report.text).toContain("zorkmid");
  });
  it("allergens of all lines together", () => {
    const report = check(["4 eggs", "100 g wheat flour", "2 tbsp soy sauce"]);
    expect(report.allergens.contains).toEqual(expect.arrayContaining(["egg", "wheat", "soy"]));
    const four = [
      report.allergens.contains,
      report.allergens.mayContain,
      report.allergens.free,
      report.allergens.unknown,
    ];
    const total = four.flat();
    expect(new Set(total).size).toBe(total.length);
  });
  it("a guest is told dish and food; one without a name has a number", () => {
    const report = check(["4 eggs"], { table: [{ name: "Ada", avoid: {} }, { avoid: { allergens: ["egg"] } }] });
    const stops = report.cautions.filter((x) => x.severity === "stop");
    expect(stops).toHaveLength(1);
    expect(stops[0]?.who).toBe("guest 2");
    expect(stops[0]?.text).toContain("Dish: egg");
  });
});

describe("balance", () => {
  it.each([
    [["400 g chicken breast", "500 g kale", "300 g carrots"], /in balance/],
    [["1 kg chicken breast", "200 g kale"], /More protein/],
    [["100 g chicken breast", "1.5 kg carrots"], /far outweigh/],
    [["500 g kale"], /no protein/],
    [["500 g chicken breast"], /no vegetables/],
  ] as const)("%j", (lines, says) => expect(check(lines).balance.text).toMatch(says));
});

describe("what it is and what it refuses", () => {
  it("is frozen through, survives JSON and is the same again", () => {
    const report = check(["300 g white rice", "4 eggs"], { have: ["kale"] });
    expect(Object.isFrozen(report) && Object.isFrozen(report.slots.starch.from) && Object.isFrozen(report.gaps)).toBe(
      true,
    );
    expect(JSON.parse(JSON.stringify(report))).toEqual(report);
    expect(JSON.stringify(check(["300 g white rice", "4 eggs"], { have: ["kale"] }))).toBe(JSON.stringify(report));
  });
  it.each([0, -2, Number.NaN, Number.POSITIVE_INFINITY, 100_001])("serves %d is refused", (serves) =>
    expect(codeOf(() => check(["300 g rice"], { serves }))).toBe("conflicting request"),
  );
  it("a liquid that is no volume is refused", () => {
    expect(codeOf(() => checkMeal(c, { serves: 4, dishes: [{ name: "Soup", liquid: "plenty", lines: [] }] }))).toBe(
      "unreadable amount",
    );
  });
  it("an allergen or diet nobody knows is an error, never ignored", () => {
    expect(codeOf(() => check([], { table: [{ avoid: { allergens: ["glooten"] } }] }))).toBe("unknown term");
    expect(codeOf(() => check([], { table: [{ avoid: { diets: ["moonlight"] } }] }))).toBe("unknown term");
  });
});
