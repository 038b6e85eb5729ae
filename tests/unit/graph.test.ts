import { describe, expect, it } from "vitest";
import { decode, encode } from "../../src/catalogue/compiled.js";
import { buildGraph, type FoodGraph } from "../../src/catalogue/graph/build.js";
import { differences } from "../../src/catalogue/graph/compare.js";
import { storeOf } from "../../src/catalogue/index.js";
import { toGraph } from "../../src/graph.js";
import { openCatalogue } from "../../src/index.js";
import { clean, compiledOf } from "../helpers/records.js";
import { META, realFlat } from "../helpers/real.js";

const c = openCatalogue();
const store = storeOf(c);
const graph = toGraph(c);
const nodesOf = (g: FoodGraph, type: string): string[] => g.filterNodes((_, a) => a.type === type);
const edgesOf = (g: FoodGraph, type: string): string[] => g.filterEdges((_, a) => a.type === type);

describe("the graph of the catalogue", () => {
  it("is the one the data make: columns lose nothing of it (run `npm run data` when data/ is newer)", () => {
    const flat = realFlat();
    const made = buildGraph(flat);
    expect(differences(made, buildGraph(decode(encode(flat, META))))).toEqual([]);
    expect(differences(made, graph)).toEqual([]);
  });
  it("is a fresh copy each call", () => {
    const mine = toGraph(c);
    mine.dropNode("food:cod");
    mine.setNodeAttribute("ingredient:salt/pantry", "label", "mine");
    expect(differences(graph, mine).length).toBeGreaterThan(1);
    expect(differences(graph, toGraph(c))).toEqual([]);
  });
  it("has one node an ingredient, food, kind, role, aroma, procedure and swap", () => {
    const foods = new Set(store.ingredients.map((i) => i.food));
    expect(nodesOf(graph, "ingredient")).toHaveLength(c.size);
    expect(nodesOf(graph, "food")).toHaveLength(foods.size);
    expect(nodesOf(graph, "kind")).toHaveLength(store.flat().commons.kinds.length);
    expect(nodesOf(graph, "role")).toHaveLength(Object.keys(store.roles).length);
    expect(nodesOf(graph, "aroma")).toHaveLength(store.terms["aroma"]?.length ?? 0);
    expect(nodesOf(graph, "procedure")).toHaveLength(store.procedures.size);
    expect(nodesOf(graph, "swap")).toHaveLength(store.swaps.length);
    expect(nodesOf(graph, "source")).toHaveLength(Object.keys(store.sources).length);
  });
  it("has one edge for each role, state, use and change the rows have", () => {
    const sum = (count: (i: (typeof store.ingredients)[number]) => number): number =>
      store.ingredients.reduce((n, i) => n + count(i), 0);
    expect(edgesOf(graph, "state of")).toHaveLength(c.size);
    expect(edgesOf(graph, "is a")).toHaveLength(c.size + store.flat().commons.kinds.filter(([, p]) => p !== "").length);
    expect(edgesOf(graph, "does")).toHaveLength(sum((i) => i.roles.length));
    expect(edgesOf(graph, "smells of")).toHaveLength(sum((i) => Object.keys(i.aroma).length));
    expect(edgesOf(graph, "becomes")).toHaveLength(sum((i) => i.becomes.length));
    expect(edgesOf(graph, "made ready by")).toHaveLength(sum((i) => new Set(i.ready?.by ?? []).size));
    expect(edgesOf(graph, "replaces")).toHaveLength(store.swaps.length);
    expect(edgesOf(graph, "uses")).toHaveLength(store.swaps.reduce((n, s) => n + s.uses.length, 0));
  });
  it("holds swaps of several parts whole: one node, one `replaces`, as many `uses` as parts", () => {
    const several = store.swaps.filter((s) => s.uses.length > 1);
    expect(several.length).toBeGreaterThan(100);
    for (const swap of several) {
      const me = `swap:${swap.id}`;
      const out = graph.outEdges(me);
      const ends = (type: string): string[] =>
        out.filter((e) => graph.getEdgeAttribute(e, "type") === type).map((e) => graph.target(e));
      expect(ends("replaces")).toEqual([`ingredient:${swap.replaces.id}`]);
      expect(ends("uses").sort()).toEqual(swap.uses.map((u) => `ingredient:${u.id}`).sort());
    }
  });
  it("has kinds as one tree without circles: every kind leads to food", () => {
    for (const kind of nodesOf(graph, "kind")) {
      const seen: string[] = [];
      let at: string | undefined = kind;
      while (at !== undefined && !seen.includes(at)) {
        seen.push(at);
        const up: string[] = graph.outNeighbors(at).filter((n) => n.startsWith("kind:"));
        expect(up.length, at).toBe(at === "kind:food" ? 0 : 1);
        at = up[0];
      }
      expect(at, `circle at ${kind}`).toBeUndefined();
      expect(seen.at(-1)).toBe("kind:food");
    }
  });
});

describe("the graph of a small sample", () => {
  const { flat } = compiledOf(clean());
  const small = buildGraph(flat);
  it("carries amounts, sources and yields on its edges", () => {
    const swap = nodesOf(small, "swap")[0] as string;
    const edges = small.outEdges(swap).map((e) => [small.target(e), small.getEdgeAttributes(e)]);
    expect(edges).toContainEqual(["ingredient:cod/salt-cured", { type: "replaces", amount: "100 g" }]);
    expect(edges).toContainEqual(["ingredient:cod/fresh", { type: "uses", amount: "130 g" }]);
    expect(edges).toContainEqual(["ingredient:salt/pantry", { type: "uses", amount: "1/2 tsp" }]);
    expect(edges).toContainEqual(["source:handbook", { type: "cited by" }]);
    const [ready] = small.outEdges("ingredient:cod/salt-cured").filter((e) => small.target(e) === "procedure:desalt");
    expect(small.getEdgeAttribute(ready, "yield")).toBe(1.3);
  });
  it("says in what two graphs differ", () => {
    const other = buildGraph(flat);
    expect(differences(small, other)).toEqual([]);
    other.setNodeAttribute("food:cod", "label", "haddock");
    other.dropNode("food:salt");
    other.addNode("food:ling", { type: "food", label: "ling" });
    const found = differences(small, other);
    expect(found.some((d) => d.startsWith('node food:cod: {"label":"cod"') && d.includes("haddock"))).toBe(true);
    expect(found).toContain("node food:salt: only in the first");
    expect(found).toContain("edge ingredient:salt/pantry>state of>food:salt: only in the first");
    expect(found).toContain("node food:ling: only in the second");
  });
});
