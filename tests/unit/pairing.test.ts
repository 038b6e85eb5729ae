import { describe, expect, it } from "vitest";
import { recordedPairings, storeOf } from "../../src/catalogue/index.js";
import { packPairings } from "../../src/catalogue/authoring/compile.js";
import { decodePairings, encodePairings } from "../../src/catalogue/pairing-columns.js";
import { isSteadfareError, openCatalogue, pairingsFor } from "../../src/index.js";
import { gated } from "../../src/pairing/computed.js";
import { MOST_USED } from "../helpers/most-used.js";
import { real } from "../helpers/real.js";

const c = openCatalogue();
const store = storeOf(c);
const rows = recordedPairings();
const withIds = (request: Parameters<typeof pairingsFor>[1]): string[] =>
  pairingsFor(c, request).pairings.map((p) => p.with.id);

describe("what is recorded", () => {
  it("the list of most used ingredients holds at least 150, each once", () => {
    expect(new Set(MOST_USED).size).toBe(MOST_USED.length);
    expect(MOST_USED.length).toBeGreaterThanOrEqual(150);
  });
  it.each(MOST_USED)("%s has at least four pairings", (key) => {
    const partners = new Set(rows.filter((r) => r.with.includes(key)).map((r) => r.with.find((k) => k !== key)));
    expect(partners.size).toBeGreaterThanOrEqual(4);
  });
  it.each([...(store.terms["tradition"] ?? [])])("the %s kitchen has at least ten", (tradition) => {
    expect(rows.filter((r) => r.tradition === tradition).length).toBeGreaterThanOrEqual(10);
  });
  it("columns give back the records as they were written, in the order of their foods", () => {
    const key = (r: { with: readonly string[]; tradition?: string | undefined }): string =>
      `${r.with.join("+")}|${r.tradition ?? ""}`;
    const written = (real.authored.pairings ?? []).map(({ data: { from, ...p } }) => ({
      ...p,
      sources: from.map((f) => ({ key: f })),
    }));
    const back = decodePairings(packPairings(real.authored));
    const sort = <T extends Parameters<typeof key>[0]>(list: readonly T[]): T[] =>
      [...list].sort((a, b) => (key(a) < key(b) ? -1 : 1));
    expect(sort(back)).toEqual(sort(written));
    expect(encodePairings(back)).toEqual(packPairings(real.authored));
  });
  it("sources with a place, and records of different sources, survive the columns", () => {
    const list = [
      { with: ["a", "b"], basis: "contrast", why: "One.", sources: [{ key: "handbook", at: "page 3" }] },
      { with: ["a", "c"], basis: "tradition", tradition: "T", why: "Two.", sources: [{ key: "common practice" }] },
    ] as const;
    expect(decodePairings(encodePairings(list))).toEqual(list);
    expect(decodePairings(encodePairings([]))).toEqual([]);
  });
});

describe("pairingsFor", () => {
  it("a name alone is enough; the answer is frozen plain data", () => {
    const advice = pairingsFor(c, "kale");
    expect(advice.food).toEqual({ id: "kale/fresh", name: "kale" });
    expect(advice.pairings).toHaveLength(12);
    expect(Object.isFrozen(advice.pairings[0]?.allergens.contains)).toBe(true);
    expect(JSON.parse(JSON.stringify(advice))).toEqual(advice);
    for (const p of advice.pairings) {
      expect(p.why).not.toBe("");
      const { contains, mayContain, free, unknown } = p.allergens;
      expect(contains.length + mayContain.length + free.length + unknown.length).toBe(15);
    }
  });
  it("a recorded pairing cites its source; a computed one cites none", () => {
    const { pairings } = pairingsFor(c, { food: "gooseberries", limit: 30 });
    expect(pairings[0]).toMatchObject({ basis: "cut richness", sources: [{ key: "common practice" }] });
    const computed = pairings.filter((p) => p.basis === "computed");
    expect(computed.length).toBeGreaterThan(0);
    for (const p of computed) expect(p.sources).toEqual([]);
  });
  // common practice, no source
  it.each([
    ["tomato", "Italian", "basil/fresh"],
    ["egg", "Chinese", "tomato/fresh"],
    ["salmon", "Nordic and Baltic", "dill/fresh"],
    ["lamb shoulder", "Persian", "dried-lime/dried"],
    ["black beans", "Caribbean", "cumin/dried-ground"],
    ["napa cabbage", "Korean", "gochugaru/dried-flakes"],
  ])("%s in the %s kitchen: %s among the first five", (food, cuisine, other) => {
    const first = pairingsFor(c, { food, cuisine, limit: 5 }).pairings;
    expect(first.map((p) => p.with.id)).toContain(other);
    expect(first[0]?.tradition).toBe(cuisine);
  });
  it("a tradition may be named by a word of it; one nobody knows is refused with the nearest", () => {
    expect(withIds({ food: "kale", cuisine: "italian" })).toEqual(withIds({ food: "kale", cuisine: "Italian" }));
    expect(pairingsFor(c, { food: "potato", cuisine: "indian", limit: 1 }).pairings[0]?.tradition).toMatch(
      /^South Asian/,
    );
    try {
      pairingsFor(c, { food: "kale", cuisine: "Itallian" });
      expect.unreachable();
    } catch (e) {
      expect(isSteadfareError(e, "unknown term") && e.data.kind).toBe("tradition");
      expect(isSteadfareError(e, "unknown term") && e.data.nearest).toContain("Italian");
    }
  });
  it("what is in the house comes before its like, in the state it is there", () => {
    const [first] = pairingsFor(c, { food: "basil", have: ["canned tomatoes"] }).pairings;
    expect(first?.with.id).toBe("tomato/canned");
    expect(pairingsFor(c, { food: "basil", have: ["qqqqzzzz"] }).notUnderstood).toEqual(["qqqqzzzz"]);
  });
  it("whole, then the rest: parts of one ingredient are answered as a use for it", () => {
    // common practice, no source
    for (const [food, rest] of [
      ["chard", "chard.stem/fresh"],
      ["chard leaves", "chard.stem/fresh"],
      ["chard stems", "chard.leaf/fresh"],
      ["leek.white/fresh", "leek.green/fresh"],
      ["lemon juice", "lemon.zest/fresh"],
      ["egg yolk", "egg.white/fresh"],
    ] as const) {
      const found = pairingsFor(c, food).pairings.find((p) => p.with.id === rest);
      expect(found, food).toMatchObject({ basis: "parts of one ingredient" });
      expect(found?.why).toMatch(/^Use the rest: /);
    }
  });
  it("no rest comes with what was cured without it", () => {
    expect(withIds({ food: "salt cod", limit: 200 })).not.toContain("cod-roe/fresh");
    expect(withIds({ food: "cod/fresh", limit: 200 })).toContain("cod-roe/fresh");
  });
  it("a record that speaks of the yolk is not told of the white", () => {
    for (const p of pairingsFor(c, { food: "egg white", limit: 200 }).pairings)
      if (p.basis !== "parts of one ingredient") expect(p.why.toLowerCase()).not.toContain("yolk");
  });
  it("what has no record of its own goes by near kin, and says whose", () => {
    const { pairings } = pairingsFor(c, "chicken thigh");
    expect(pairings.length).toBeGreaterThan(4);
    expect(pairings.some((p) => p.basis === "computed" && p.why.startsWith("As with chicken, "))).toBe(true);
  });
  it("avoided foods are refused with the reason; when the food itself is avoided, nothing is offered", () => {
    const advice = pairingsFor(c, { food: "spinach", avoid: { allergens: ["milk"], diets: ["vegan"] }, limit: 30 });
    expect(advice.refused).toContainEqual(expect.objectContaining({ id: "ricotta/fresh", because: "allergen" }));
    expect(advice.refused).toContainEqual(expect.objectContaining({ id: "egg/fresh", because: "diet" }));
    const self = pairingsFor(c, { food: "shrimp", avoid: { allergens: ["crustacean shellfish"] } });
    expect(self.pairings).toEqual([]);
    expect(self.refused).toEqual([expect.objectContaining({ id: self.food.id, because: "allergen" })]);
  });
  it("what does a job of the larder alone goes with nothing", () => {
    expect(pairingsFor(c, "baking powder").pairings).toEqual([]);
  });
  it.each([
    ["no food", {}, "conflicting request"],
    ["a blank food", { food: " " }, "conflicting request"],
    ["a field it does not have", { food: "kale", tecnique: "braise" }, "conflicting request"],
    ["a limit of none", { food: "kale", limit: 0 }, "conflicting request"],
    ["a limit with a fraction", { food: "kale", limit: 1.5 }, "conflicting request"],
    ["a list that is none", { food: "kale", have: "potato" }, "conflicting request"],
    ["an allergen nobody knows", { food: "kale", avoid: { allergens: ["mlik"] } }, "unknown term"],
    ["a food nobody knows", { food: "qqqqzzzz" }, "unknown food"],
    ["more in the house than anyone has", { food: "kale", have: Array(1001).fill("salt") }, "input too large"],
    ["nothing at all", null, "conflicting request"],
  ] as const)("%s is refused", (_what, request, code) => {
    try {
      pairingsFor(c, request as never);
      expect.unreachable();
    } catch (e) {
      expect(isSteadfareError(e, code)).toBe(true);
    }
  });
});

describe("computed pairings", () => {
  const one = (id: string) => {
    const found = store.byId.get(id);
    if (!found) throw new Error(id);
    return found;
  };
  it.each([
    ["two of one job", "lemon/fresh", "white-wine-vinegar/pantry"],
    ["two states of one food", "tomato/fresh", "tomato/canned"],
    ["fish and vanilla", "salmon/fresh", "vanilla-bean/dried"],
    ["onion and chocolate", "onion/fresh", "dark-chocolate/pantry"],
    ["a leavener", "baking-powder/pantry", "lemon/fresh"],
  ])("%s never meet", (_what, a, b) => {
    expect(gated(one(a), one(b))).toBe(true);
    expect(gated(one(b), one(a))).toBe(true);
  });
  it("say what they go by", () => {
    const { pairings } = pairingsFor(c, { food: "salami", limit: 20 });
    expect(pairings.length).toBeGreaterThan(3);
    for (const p of pairings)
      if (p.basis === "computed") expect(p.why).toMatch(/ against the |[Bb]oth smell of |^As with /);
  });
});
