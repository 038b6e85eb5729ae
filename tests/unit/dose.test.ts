import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { openCatalogue, storeOf, type Ingredient } from "../../src/catalogue/index.js";
import {
  AT,
  AXES,
  NOTICEABLE,
  TASTES,
  WIDTH,
  carrierAmount,
  carrierDose,
  carrierOf,
  densityOf,
  dose,
  doseMatrix,
  perceived,
  referenceDish,
  SALT_PER_SODIUM_MG,
  umami,
} from "../../src/dose/index.js";
import type { RoleId } from "../../src/types.js";

const store = storeOf(openCatalogue());
const food = (id: string): Ingredient => {
  const i = store.byId.get(id);
  if (!i) throw new Error(`${id} is not in the catalogue`);
  return i;
};
const figure = (i: Ingredient, name: string): number => store.figure(i, name)?.value ?? Number.NaN;

describe("doses", () => {
  it("one row an ingredient, one column an axis, the same matrix every time", () => {
    const matrix = doseMatrix(store);
    expect(matrix.length).toBe(store.size * WIDTH);
    expect(doseMatrix(store)).toBe(matrix);
    expect(AXES.map((axis) => AT[axis])).toEqual(AXES.map((_, k) => k));
  });

  it("what was not measured is NaN, never zero", () => {
    const plain = [
      ["water", "water"],
      ["fat", "fat"],
      ["protein", "protein"],
      ["acid", "acid"],
      ["glutamate", "free glutamate"],
      ["thickening", "thickening"],
      ["lift", "carbon dioxide"],
      ["neutralising", "neutralising value"],
      ["gel", "gel"],
      ["aroma", "aroma strength"],
      ["binding", "binding"],
      ["colour", "colour strength"],
    ] as const;
    const wrong: string[] = [];
    for (const i of store.ingredients)
      for (const [axis, name] of plain)
        if (Number.isNaN(dose(store, i, axis)) !== Number.isNaN(figure(i, name))) wrong.push(`${i.id} ${axis}`);
    expect(wrong).toEqual([]);
  });
  it("salt unknown is NaN, unless soaking settles it", () => {
    for (const i of store.ingredients) {
      const known =
        !Number.isNaN(figure(i, "salt")) || !Number.isNaN(figure(i, "sodium")) || i.ready?.salt !== undefined;
      expect(Number.isNaN(dose(store, i, "salt")), i.id).toBe(!known);
    }
  });
  it("one nucleotide measured and the other not: what was measured counts", () => {
    const lost: string[] = [];
    for (const i of store.ingredients) {
      const measured = Math.max(figure(i, "inosinate") || 0, figure(i, "guanylate") || 0);
      if (measured > 0 && !(dose(store, i, "nucleotide") > 0)) lost.push(i.id);
    }
    expect(lost.length, `${lost.length} foods: ${lost.slice(0, 8).join(", ")} ...`).toBe(0);
  });
  it("none is below zero but the alkalis", () => {
    for (const i of store.ingredients)
      for (const axis of AXES)
        if (axis !== "neutralising") expect(dose(store, i, axis) < 0, `${i.id} ${axis}`).toBe(false);
    expect(dose(store, food("baking-soda/pantry"), "neutralising")).toBe(-1);
  });
  it("water, fat and protein never weigh more than what they are part of", () => {
    for (const i of store.ingredients) {
      const parts = (["water", "fat", "protein"] as const)
        .map((axis) => dose(store, i, axis))
        .filter((v) => !Number.isNaN(v));
      expect(
        parts.reduce((a, b) => a + b, 0),
        i.id,
      ).toBeLessThanOrEqual(1.03 * dose(store, i, "mass") + 0.02);
    }
  });
});

describe("single doses worked by hand", () => {
  it("salt is sodium x 2.542 (molar masses 58.44 and 22.99)", () => {
    expect(SALT_PER_SODIUM_MG * 1000).toBeCloseTo(2.542, 3);
    const soy = food("soy-sauce/pantry");
    expect(dose(store, soy, "salt")).toBeCloseTo((figure(soy, "sodium") * 2.542) / 100_000, 4);
  });
  it("salt cod brings the salt of what is left after desalting, in the weight it then has", () => {
    const cod = food("cod/salt-cured");
    const ready = cod.ready;
    expect(ready?.salt).toBeDefined();
    expect(dose(store, cod, "salt")).toBeCloseTo(((ready?.salt ?? 0) / 100) * (ready?.yield ?? 0), 6);
    expect(dose(store, cod, "mass")).toBe(ready?.yield);
  });
  it("soaking takes up water and nothing else", () => {
    const dried = food("shiitake/dried");
    const taken = dose(store, dried, "mass") - 1;
    expect(taken).toBeGreaterThan(2);
    expect(dose(store, dried, "water")).toBeCloseTo(figure(dried, "water") / 100 + taken, 6);
    expect(dose(store, dried, "dry weight")).toBeCloseTo(1 - figure(dried, "water") / 100, 6);
    expect(dose(store, dried, "protein")).toBeCloseTo(figure(dried, "protein") / 100, 6);
  });
  it("a drained can keeps its own makeup and loses weight", () => {
    const can = food("peach/canned");
    const mass = dose(store, can, "mass");
    expect(mass).toBeLessThan(1);
    expect(dose(store, can, "protein")).toBeCloseTo((figure(can, "protein") / 100) * mass, 6);
  });
  it("volume is the other way round of density, from the plain cup where there is one", () => {
    const milk = food("milk/fresh");
    expect(densityOf(store, milk)).toBeCloseTo(244 / 236.588, 2); // USDA SR28 01077: 1 cup is 244 g
    expect(dose(store, milk, "volume") * densityOf(store, milk)).toBeCloseTo(1, 9);
  });
});

describe("perceived strength", () => {
  it("nothing tastes of nothing, and what was not measured does not crash", () => {
    for (const taste of TASTES) {
      expect(perceived(taste, 0)).toBe(0);
      expect(perceived(taste, -1)).toBe(0);
      expect(perceived(taste, Number.NaN)).toBe(0);
    }
  });
  it("marked, 5, at the concentration the method page gives for each taste; never above 9", () => {
    const C5 = { salt: 1.2, sweetness: 12, acid: 0.6, umami: 0.6, pungency: 2000, bitter: 5, fat: 20, alcohol: 10 };
    expect(Object.keys(C5).sort()).toEqual([...TASTES].sort());
    for (const taste of TASTES) {
      expect(perceived(taste, C5[taste])).toBeCloseTo(5, 9);
      expect(perceived(taste, 1e9)).toBe(9);
    }
  });
  // Exponents of Stevens' power law: 1.3 sucrose, 1.4 salt (published Stevens tables, from memory): ten parts in a hundred more salt
  // tastes 14 in a hundred more.
  it.each([
    ["sweetness", 6, 1.3],
    ["salt", 0.6, 1.4],
  ] as const)("%s follows its exponent", (taste, c, n) => {
    expect(perceived(taste, c * 1.1) / perceived(taste, c)).toBeCloseTo(Math.pow(1.1, n), 6);
  });
  it("a usual dish's salt (0.9 g in 100 g, common practice) tastes between clear and marked, and a fifth more is noticed", () => {
    expect(perceived("salt", 0.9)).toBeGreaterThan(3);
    expect(perceived("salt", 0.9)).toBeLessThan(5);
    expect(perceived("salt", 0.9 * 1.2) - perceived("salt", 0.9)).toBeGreaterThan(NOTICEABLE);
  });
});

describe("carriers", () => {
  it("every role has one, and it is a dose or umami or the served weight", () => {
    for (const role of store.terms["role"] ?? []) {
      const carrier = carrierOf(store, role as RoleId);
      expect(
        carrier === "umami" || carrier === "served weight" || (AXES as readonly string[]).includes(carrier),
        `${role}: ${carrier}`,
      ).toBe(true);
    }
  });
  it("an unmeasured carrier gives no amount", () => {
    const water = food("water/pantry");
    expect(Number.isNaN(carrierDose(store, water, "thickening"))).toBe(true);
    expect(carrierAmount(store, food("cornstarch/pantry"), 10, water, "thickener", 300)).toBeNaN();
  });
  it("umami: the amount found satisfies the quadratic, and is no proportion", () => {
    const kombu = food("kombu/dried");
    const shiitake = food("shiitake/dried");
    const dish = 1000;
    const per = (i: Ingredient, axis: "glutamate" | "nucleotide", grams: number): number =>
      ((dose(store, i, axis) || 0) * grams * 100) / dish;
    const x = carrierAmount(store, kombu, 10, shiitake, "umami seasoning", dish);
    expect(umami(per(shiitake, "glutamate", x), per(shiitake, "nucleotide", x))).toBeCloseTo(
      umami(per(kombu, "glutamate", 10), per(kombu, "nucleotide", 10)),
      9,
    );
    const twice = carrierAmount(store, kombu, 20, shiitake, "umami seasoning", dish);
    expect(twice).toBeGreaterThan(x);
    if (dose(store, shiitake, "nucleotide") > 0) expect(twice).toBeLessThan(2 * x);
  });
  it("the reference dish: 0.9 g salt in 100 g for a salt seasoning, never lighter than 1.5 times what goes in", () => {
    const salt = food("salt/pantry");
    expect(referenceDish(store, salt, "salt seasoning", 9)).toBeCloseTo((9 * dose(store, salt, "salt") * 100) / 0.9, 3);
    for (const i of store.ingredients) {
      const dish = referenceDish(store, i, i.roles[0]?.role ?? "main protein", 100);
      expect(dish, i.id).toBeGreaterThanOrEqual(150);
      expect(dish, i.id).toBeLessThanOrEqual(200_000);
    }
  });
});

// The method page is written by hand; its tables must say what the code does.
describe("docs/method.md", () => {
  const read = (path: string): string => readFileSync(new URL(`../../${path}`, import.meta.url), "utf8");
  const page = read("docs/method.md");
  /** Rows of the tables of one section, cells trimmed, heads and rules left out. */
  const rows = (heading: string): string[][] => {
    const section = page.split(/^## /m).find((part) => part.startsWith(heading)) ?? "";
    const lines = section.split("\n").filter((line) => line.startsWith("|"));
    return lines
      .map((line) =>
        line
          .slice(1, -1)
          .split("|")
          .map((cell) => cell.trim()),
      )
      .filter((cells, k) => !/^:?-+:?$/.test(cells[0] ?? "") && !/^\| ?:?-/.test(lines[k + 1] ?? ""));
  };

  it("perceived strength: c5 and exponent of every taste", () => {
    const table = rows("Perceived strength");
    expect(table.map(([taste]) => taste).sort()).toEqual([...TASTES].sort());
    for (const taste of TASTES) {
      const [, c5, n] = table.find(([name]) => name === taste) ?? [];
      expect(perceived(taste, Number(c5)), taste).toBeCloseTo(5, 9);
      expect(perceived(taste, Number(c5) / 2), taste).toBeCloseTo(5 * Math.pow(0.5, Number(n)), 9);
    }
  });
  it("carriers: every role under its own, and the usual dose of the reference dish", () => {
    const table = rows("Carriers and reference dishes");
    const listed = table.flatMap(([carrier, roles]) =>
      (roles ?? "").split(", ").map((role) => [role, carrier] as const),
    );
    expect(listed.map(([role]) => role).sort()).toEqual([...(store.terms["role"] ?? [])].sort());
    for (const [role, carrier] of listed) expect(carrierOf(store, role as RoleId), role).toBe(carrier);
    const checked = new Set<string>();
    for (const [carrier, roles, usual] of table) {
      const role = (roles ?? "").split(", ")[0] as RoleId;
      for (const i of store.ingredients) {
        const dish = referenceDish(store, i, role, 100);
        const per = carrierDose(store, i, carrier ?? "");
        // neither clamped nor without a figure
        if (!(per > 0) || dish <= 150.001 || dish >= 199_999) continue;
        checked.add(carrier ?? "");
        expect((100 * per * 100) / dish, `${carrier}: ${i.id}`).toBeCloseTo(Number(usual), 6);
      }
    }
    expect([...checked].sort()).toEqual(table.map(([carrier]) => carrier).sort());
  });
  it("score weights: as in the data", () => {
    const weights = store.tables["weights"] as Readonly<Record<string, Readonly<Record<string, number>>>>;
    const marks = store.tables["weights"] as Readonly<Record<string, number>>;
    const table = rows("Score");
    expect(table).toHaveLength(3);
    for (const [head, ...cells] of table) {
      const name = (head ?? "").split(":")[0] ?? "";
      const { role, texture, flavour, handling, kin, custom } = weights[name] ?? {};
      expect(cells.map(Number), name).toEqual([role, texture, flavour, handling, kin, custom]);
    }
    for (const [name, value] of [
      ["published", "weighs on top:"],
      ["evidence", "published,"],
      ["unlisted", "u is"],
      ["twin", "(0.75 and more)"],
    ] as const)
      expect(page, name).toContain(`${value} ${marks[name]}`);
    const { bulk, seasoning, working } = weights["floor"] ?? {};
    expect(seasoning).toBe(bulk);
    expect(page).toContain(`floor of ${bulk} (${working} for working jobs)`);
  });
  it("steps of mixtures, of amounts and of corrections: as in the code", () => {
    const mixtures = read("src/swap/blend/vector.ts");
    const flat = rows("Mixtures").flatMap((cells) =>
      [0, 2, 4].map((k) => [cells[k] ?? "", cells[k + 1] ?? ""] as const),
    );
    const inCode = (mixtures.split("const STEP")[1] ?? "").split("};")[0] ?? "";
    const steps = new Map(
      [...inCode.matchAll(/^ {2}(\w+): ([\d.]+),$/gm)].map((m) => [m[1] ?? "", Number(m[2])] as const),
    );
    expect(new Map(flat.map(([axis, step]) => [axis, Number(step)] as const))).toEqual(steps);
    const amounts = (read("src/swap/amount.ts").split("const STEP")[1] ?? "").split("];")[0] ?? "";
    const printed = /Steps, g per 100 g dish \(judgement\): (.+?)\.\n/.exec(page)?.[1] ?? "";
    expect(printed.split(", ")).toEqual([...amounts.matchAll(/\["(\w+)", ([\d.]+)\]/g)].map((m) => `${m[1]} ${m[2]}`));
    const shares = rows("Amount").map(([by, share]) => [by ?? "", Number(share)] as const);
    const amount = read("src/swap/amount.ts");
    const same = (amount.split("const SAME")[1] ?? "").split("};")[0] ?? "";
    for (const [, carrier, share] of same.matchAll(/^ {2}"?([\w ]+)"?: ([\d.]+),$/gm))
      expect(shares.find(([by]) => by.split(", ").includes(carrier ?? ""))?.[1], carrier).toBe(Number(share));
    expect(shares[0]?.[1]).toBe(Number(/const FILL = ([\d.]+);/.exec(amount)?.[1]));
    const corrections = read("src/swap/corrections.ts");
    const rules = [...corrections.matchAll(/axis: "(\w+)",[^}]*?step: ([\d.]+),\s*least: ([\d.]+)/g)].map((m) =>
      m.slice(1),
    );
    expect(rows("Corrections").map(([axis, , step, least]) => [axis, step, least])).toEqual(rules);
  });
  it("names no constant of the mixtures that the code has otherwise", () => {
    const index = ["index", "pool", "vector"].map((f) => read(`src/swap/blend/${f}.ts`)).join("\n");
    const constant = (name: string): string => new RegExp(`const ${name} = ([\\d.]+);`).exec(index)?.[1] ?? "missing";
    const text = page.split(/^## /m).find((part) => part.startsWith("Mixtures")) ?? "";
    expect(text).toContain(`best ${constant("BEAM")} `);
    expect(text).toContain(`1 / ${constant("WORTH")} `);
    expect(text).toContain(`square root of ${constant("LEAST")} `);
    expect(text).toContain(`cost a part: ${constant("PLAIN_COST")}, `);
    expect(text).toContain(`at least ${constant("NOTICED")} squared step more`);
    expect(text).toContain(`at most ${constant("DILUTE")} of what there was`);
    expect(text).toContain(`acid are ${constant("SPICE_DILUTED")} times as long`);
    expect(text).toContain(`what is dry (under ${constant("DRY")})`);
    expect(text).toContain(`that job too (from ${constant("JOB")})`);
    expect(text).toContain(`\`${constant("FAR_COST")} x (1 - `);
  });
});
