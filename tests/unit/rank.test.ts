import { describe, expect, it } from "vitest";
import { openCatalogue, swapsFor } from "../../src/index.js";
import { readAsk } from "../../src/swap/ask.js";
import { Prospects } from "../../src/swap/bound.js";
import { beforeOf, floorOf, weighAll, weighSingle, fieldOf, type Weighed } from "../../src/swap/candidates.js";
import { order, ranked } from "../../src/swap/rank.js";
import type { SwapRequest } from "../../src/types.js";

const c = openCatalogue();
const REQUESTS: readonly SwapRequest[] = [
  { missing: "500 g kale", dish: { technique: "braise" } },
  { missing: "240 g buttermilk", for: "pancakes" },
  { missing: "2 eggs", for: "cake", prefer: "cheapest" },
  { missing: "1 tsp baking powder", evidence: "computed" },
  { missing: "450 g salt cod", prefer: "quickest" },
  { missing: "1 tbsp soy sauce", evidence: "computed", prefer: "quickest" },
  { missing: "1 celery stalk", dish: { technique: "raw" } },
  { missing: "30 g anchovies", role: "umami seasoning", dish: { cuisine: "Italian" } },
];
const shown = (w: Weighed): string =>
  `${w.uses.map((u) => `${u.ingredient.id} ${u.grams}`).join("+")} ${w.scored.score}`;

describe("ranking one at a time", () => {
  it.each(REQUESTS)("gives the order that weighing everything gives: $missing", (request) => {
    const ask = readAsk(c, request);
    const before = beforeOf(ask);
    const all = weighAll(ask, before)
      .filter((w) => w.scored.base >= floorOf(ask) || w.known !== undefined)
      .sort(order(ask));
    expect(all.length).toBeGreaterThan(3);
    expect([...ranked(ask, before, () => false)].map(shown)).toEqual(all.map(shown));
  });
  it.each(REQUESTS)("no stand-in scores more than was held possible: $missing", (request) => {
    const ask = readAsk(c, request);
    const before = beforeOf(ask);
    for (const single of fieldOf(ask, before, -Infinity).singles) {
      const { scored } = weighSingle(ask, single, before);
      expect(scored.score).toBeLessThanOrEqual(single.most);
    }
  });
  it.each(REQUESTS)("none could score more than by jobs and kin alone: $missing", (request) => {
    const ask = readAsk(c, request);
    const prospects = new Prospects<never>(ask, -Infinity);
    const bounds = new Map<number, number>();
    for (let most = prospects.most; most !== undefined; most = prospects.most) bounds.set(prospects.take().index, most);
    const { singles } = fieldOf(ask, beforeOf(ask), -Infinity);
    expect(singles.length).toBeGreaterThan(2);
    for (const { ingredient, most } of singles)
      expect(bounds.get(ingredient.index), ingredient.id).toBeGreaterThanOrEqual(most);
  });
  it("passes over what is to be skipped and nothing else", () => {
    const ask = readAsk(c, REQUESTS[0] as SwapRequest);
    const before = beforeOf(ask);
    const kind = ask.item.kind;
    const skipped = [...ranked(ask, before, (i) => i.kind === kind)].filter((w) => w.known === undefined);
    const all = [...ranked(ask, before, () => false)].filter((w) => w.known === undefined);
    expect(skipped.map(shown)).toEqual(all.filter((w) => w.uses[0]?.ingredient.kind !== kind).map(shown));
  });
});

describe("a setting that names a technique", () => {
  const mark = (request: Omit<SwapRequest, "missing">): number | undefined =>
    swapsFor(c, { missing: "1 tsp dried rosemary", ...request })
      .swaps.find((s) => s.use[0].id === "sage/dried")
      ?.parts.find((p) => p.name === "evidence")?.value;
  it("is the technique asked for, however it is said", () => {
    // "roasting" in the table, `roast` in the vocabulary.
    const said = mark({ for: "roasting" });
    expect(said).toBeGreaterThan(0.8);
    expect(mark({ dish: { technique: "roast" } })).toBe(said);
    expect(mark({ for: "roast" })).toBe(said);
    expect(mark({ dish: { technique: "simmer" } })).toBeLessThan(said as number);
  });
});

describe("a list of what may be exchanged", () => {
  const names = (request: SwapRequest): readonly string[] =>
    swapsFor(c, { limit: 20, ...request }).swaps.map((s) => s.use.map((u) => u.id.split("/")[0]).join("+"));
  const before = (list: readonly string[], first: string, then: string): void => {
    expect(list).toContain(first);
    expect(list).toContain(then);
    expect(list.indexOf(first)).toBeLessThan(list.indexOf(then));
  };
  // Iowa State University Extension and Outreach, "Overcoming food shortages with substitutions" (2020): ten vegetables for mixed dishes.
  it("says that any will do in its setting", () => {
    const list = names({ missing: "2 carrots", for: "mixed dishes" });
    for (const one of ["green-peas", "celery", "green-beans", "broccoli", "cauliflower"])
      expect(list.slice(0, 12)).toContain(one);
  });
  it("does not come before what is nearer where another setting or none is asked for (common practice, no source)", () => {
    before(names({ missing: "2 carrots" }), "parsnip", "green-peas");
    before(names({ missing: "2 carrots", for: "stew" }), "parsnip", "green-peas");
    before(names({ missing: "1 bunch kale" }), "lacinato-kale", "broccoli");
  });
  // North Carolina Sea Grant, "Fish Flavors and Substitutions": fifteen white or light fish. Trout is none of its market.
  it("says nothing against what is not on it", () => {
    const list = names({ missing: "300 g salmon" });
    before(list, "trout", "snapper");
    expect(list.slice(0, 10)).toContain("snapper");
  });
  // Utah State and Nebraska Extension, "Create a Casserole": pasta, noodles, potatoes or tortillas in place of rice.
  it("a table for one dish is no answer to who names none", () => {
    expect(names({ missing: "1 cup rice", for: "casserole" }).slice(0, 3)).toContain("pasta");
    before(names({ missing: "1 cup rice" }), "basmati-rice", "pasta");
  });
  it("is told as what it is", () => {
    const told = swapsFor(c, { missing: "300 g salmon", limit: 20 }).swaps.find((s) =>
      s.use[0].id.startsWith("snapper/"),
    );
    expect(told?.basis).toBe("published");
    expect(told?.parts.find((p) => p.name === "evidence")?.text).toBe("published, one of a list");
  });
});
