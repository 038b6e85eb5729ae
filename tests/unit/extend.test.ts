import { describe, expect, it } from "vitest";
import { storeOf } from "../../src/catalogue/index.js";
import { readExtension } from "../../src/extend.js";
import { findFood, foodFacts, isSteadfareError, openCatalogue, swapsFor } from "../../src/index.js";

type Json = Record<string, unknown>;
/** A food with figures by hand, a kind of its own, and a swap for something of the catalogue. */
const good = (): Json => ({
  name: "garden",
  sources: { "seed-packet": { title: "The seed packet", year: 2020 } },
  kinds: [{ kind: "velvet green", parent: "leaf vegetable", text: "leaves with a nap" }],
  foods: [
    {
      food: "velvet-spinach",
      kind: "velvet green",
      names: { en: ["velvet spinach"], fr: ["épinard velours"] },
      roles: { "leafy green": 1 },
      origin: ["plant"],
      slot: "vegetable",
      aroma: { grassy: 3 },
      formerIds: { "felt-spinach/fresh": "velvet-spinach/fresh" },
      states: {
        fresh: {
          composition: "none",
          figures: {
            water: { v: 91, from: "seed-packet", at: "table on the back" },
            protein: { v: 2.5, from: "judgement" },
            sodium: { v: 60, from: "judgement" },
          },
          measures: { cup: { g: 30, from: "judgement" } },
          cooked: { v: 0.75, from: "judgement" },
        },
      },
    },
  ],
  swaps: [
    {
      id: "velvet-for-spinach",
      replaces: { food: "spinach/fresh", amount: "100 g" },
      uses: [{ food: "velvet-spinach/fresh", ratio: 1.1 }],
      change: "Strip the ribs.",
      from: ["common practice"],
    },
  ],
});
const foodOf = (json: Json): Json => (json["foods"] as Json[])[0] as Json;
const stateOf = (json: Json): Json => (foodOf(json)["states"] as Record<string, Json>)["fresh"] as Json;

/** The problems of a file, as "path: message". */
function problems(json: unknown): string[] {
  try {
    readExtension(json);
  } catch (e) {
    if (!isSteadfareError(e, "invalid extension")) throw e;
    return e.data.issues.map((i) => `${i.path}: ${i.message}`);
  }
  return [];
}

describe("a good extension", () => {
  const extension = readExtension(good());
  const c = openCatalogue({ extensions: [extension] });
  const base = openCatalogue();
  it("is taken, frozen, and its name kept", () => {
    expect(extension).toEqual({ kind: "steadfare/extension@1", name: "garden" });
    expect(Object.isFrozen(extension)).toBe(true);
    expect(c.meta.extensions).toEqual(["garden"]);
    expect(c.size).toBe(base.size + 1);
  });
  it("is found by its names, as the catalogue's own", () => {
    expect(findFood(c, "velvet spinach")[0]).toMatchObject({ id: "velvet-spinach/fresh", how: "exact" });
    expect(findFood(c, "épinard velours")[0]?.id).toBe("velvet-spinach/fresh");
    expect(findFood(base, "velvet spinach")[0]?.how).not.toBe("exact");
  });
  it("keeps figures with their sources, and facts of the built-in kinds", () => {
    const store = storeOf(c);
    const item = store.byId.get("velvet-spinach/fresh");
    if (!item) throw new Error("not there");
    expect(store.figure(item, "water")).toEqual({ value: 91, source: { key: "seed-packet", at: "table on the back" } });
    expect(store.figure(item, "fat")).toBeNull();
    expect(store.sources["seed-packet"]?.title).toBe("The seed packet");
    expect(item.kinds.slice(0, 2)).toEqual(["velvet green", "leaf vegetable"]);
    expect(item.kinds.at(-1)).toBe("food");
    expect(item.athand).toBe(1);
    expect(foodFacts(c, "felt-spinach/fresh").id).toBe("velvet-spinach/fresh");
  });
  it("answers: its swap is offered, its food can be missing", () => {
    const offered = swapsFor(c, { missing: "spinach/fresh", amount: "200 g", limit: 40 }).swaps;
    const mine = offered.find((s) => s.use.length === 1 && s.use[0]?.id === "velvet-spinach/fresh");
    expect(mine?.use[0].grams).toBeCloseTo(220, 0);
    expect(swapsFor(c, { missing: "velvet spinach", amount: "100 g" }).swaps.length).toBeGreaterThan(0);
  });
  it("changes nothing for those who open without it", () => {
    expect(storeOf(openCatalogue()).byId.has("velvet-spinach/fresh")).toBe(false);
    expect(openCatalogue().size).toBe(base.size);
  });
  it("leaves the file it was given as it was", () => {
    const json = good();
    readExtension(json);
    expect(json).toEqual(good());
    Object.assign(foodOf(json), { note: "still mine" });
    foodOf(json)["kind"] = 5;
    expect(problems(json)).toHaveLength(1);
    foodOf(json)["kind"] = "velvet green";
    expect(problems(json)).toEqual([]);
  });
  it("may add a state to a food there is: its names are shared, the bare name means what it meant", () => {
    const json: Json = {
      name: "larder",
      foods: [
        {
          food: "spinach",
          kind: "tender cooking leaf",
          names: { en: ["spinach", "popeye greens"] },
          states: {
            "fermented-chopped": {
              composition: "none",
              figures: { water: { v: 90, from: "judgement" } },
              measures: { cup: { g: 150, from: "judgement" } },
              cooked: { v: 0.9, from: "judgement" },
            },
          },
        },
      ],
    };
    (foodOf(json) as { kind: string }).kind = storeOf(base).byId.get("spinach/fresh")?.kind ?? "";
    const with_ = openCatalogue({ extensions: [readExtension(json)] });
    expect(findFood(with_, "spinach")[0]?.id).toBe(findFood(base, "spinach")[0]?.id);
    expect(findFood(with_, "popeye greens")[0]?.id).toBe(findFood(base, "spinach")[0]?.id);
    expect(foodFacts(with_, "spinach/fermented-chopped").name).toBe("fermented chopped spinach");
    expect(findFood(with_, "fermented chopped spinach")[0]?.id).toBe("spinach/fermented-chopped");
  });
});

describe("a bad extension", () => {
  it("is told every problem of shape, each with its path", () => {
    const json = good();
    stateOf(json)["figures"] = { water: { v: "ninety", from: "judgement" } };
    foodOf(json)["names"] = { english: ["velvet spinach"] };
    (json["swaps"] as Json[])[0] = {
      id: "x",
      replaces: { food: "spinach/fresh" },
      uses: [],
      from: ["common practice"],
    };
    json["extra"] = true;
    const found = problems(json);
    expect(found).toHaveLength(4);
    expect(found.some((p) => p.startsWith("foods.0.states.fresh.figures.water.v: ") && p.includes("number"))).toBe(
      true,
    );
    expect(found.some((p) => p.startsWith("foods.0.names"))).toBe(true);
    expect(found.some((p) => p.startsWith("swaps.0.uses: "))).toBe(true);
    expect(found.some((p) => p.includes('"extra"'))).toBe(true);
  });
  it("is told every problem of sense, each with its record and the mend", () => {
    const json = good();
    foodOf(json)["roles"] = { "leafy gren": 1 };
    foodOf(json)["kind"] = "velvet gren";
    delete stateOf(json)["cooked"];
    (json["swaps"] as Json[]).push({
      id: "y",
      replaces: { food: "spinach/frsh" },
      uses: [{ food: "velvet-spinach/fresh" }],
      from: ["hearsay"],
    });
    const found = problems(json);
    const has = (...parts: string[]): boolean => found.some((p) => parts.every((part) => p.includes(part)));
    expect(has("garden velvet-spinach: ", '"leafy gren" is no role', "leafy green")).toBe(true);
    expect(has("garden velvet-spinach: ", 'Kind "velvet gren" is unknown', "velvet green")).toBe(true);
    expect(has("garden velvet-spinach/fresh: ", "`cooked` is missing")).toBe(true);
    expect(has("garden y: ", '"spinach/frsh" is not in the catalogue', "spinach/fresh")).toBe(true);
    expect(has("garden y: ", 'Source "hearsay"')).toBe(true);
    expect(has("garden velvet green: ", "neither members nor kinds under it")).toBe(true);
    expect(found).toHaveLength(6);
  });
  it.each([
    ["nothing", undefined],
    ["null", null],
    ["a text", "foods"],
    ["a list", []],
    ["no name", { foods: [] }],
    ["a name too long", { name: "x".repeat(101) }],
  ])("%s is refused as such", (_what, json) => {
    expect(problems(json).length).toBeGreaterThan(0);
  });
  it("is told what was received, short, and without freezing the caller's objects", () => {
    const inner = { deep: { er: 1 } };
    try {
      readExtension({ name: inner, foods: "x".repeat(5000) });
      expect.unreachable();
    } catch (e) {
      if (!isSteadfareError(e, "invalid extension")) throw e;
      const received = e.data.issues.map((i) => i.received);
      expect(received).toContain("an object");
      expect(received.every((r) => typeof r !== "string" || r.length <= 401)).toBe(true);
    }
    expect(Object.isFrozen(inner)).toBe(false);
    expect(Object.isFrozen(inner.deep)).toBe(false);
  });
});

describe("hostile input", () => {
  const pristine = (): void => {
    expect(Object.keys(Object.prototype)).toEqual([]);
    expect(({} as Json)["polluted"]).toBeUndefined();
    expect(Object.getPrototypeOf({})).toBe(Object.prototype);
  };
  /** Wherever a record takes keys of its own: the key is refused or comes to nothing, and no prototype is touched. */
  it.each(["__proto__", "constructor", "prototype", "toString"])("the key %s does no harm anywhere", (key) => {
    const planted: readonly [string, (json: Json, value: string) => string][] = [
      ["figures", (json, v) => JSON.stringify(json).replace('"figures":{', `"figures":{"${key}":${v},`)],
      ["measures", (json, v) => JSON.stringify(json).replace('"measures":{', `"measures":{"${key}":${v},`)],
      ["states", (json, v) => JSON.stringify(json).replace('"states":{', `"states":{"${key}":${v},`)],
      ["names", (json, v) => JSON.stringify(json).replace('"names":{', `"names":{"${key}":${v},`)],
      ["roles", (json, v) => JSON.stringify(json).replace('"roles":{', `"roles":{"${key}":${v},`)],
      ["aroma", (json, v) => JSON.stringify(json).replace('"aroma":{', `"aroma":{"${key}":${v},`)],
      ["sources", (json, v) => JSON.stringify(json).replace('"sources":{', `"sources":{"${key}":${v},`)],
      ["formerIds", (json, v) => JSON.stringify(json).replace('"formerIds":{', `"formerIds":{"${key}":${v},`)],
      ["the file", (json, v) => JSON.stringify(json).replace("{", `{"${key}":${v},`)],
      ["a food", (json, v) => JSON.stringify(json).replace('"foods":[{', `"foods":[{"${key}":${v},`)],
    ];
    const values = [
      '{"polluted":true}',
      '{"v":1,"from":"judgement"}',
      '{"g":1,"from":"judgement"}',
      '["polluted"]',
      "1",
      '"polluted"',
      '{"title":"polluted"}',
    ];
    for (const [where, plant] of planted) {
      const accepted: ReturnType<typeof readExtension>[] = [];
      for (const value of values) {
        const text = plant(good(), value);
        expect(text, where).toContain(`"${key}"`);
        try {
          accepted.push(readExtension(JSON.parse(text)));
        } catch (e) {
          expect(isSteadfareError(e, "invalid extension"), `${where} ${value}: ${String(e)}`).toBe(true);
        }
        pristine();
      }
      const [first] = accepted;
      if (first === undefined) continue;
      expect(foodFacts(openCatalogue({ extensions: [first] }), "velvet-spinach/fresh").name).toBe("velvet spinach");
      pristine();
    }
  });
  it("a food called like a built-in property is a food like another", () => {
    const json = good();
    foodOf(json)["food"] = "constructor";
    foodOf(json)["names"] = { en: ["constructor"] };
    delete foodOf(json)["formerIds"];
    delete json["swaps"];
    const c = openCatalogue({ extensions: [readExtension(json)] });
    expect(foodFacts(c, "constructor/fresh").name).toBe("constructor");
    expect(findFood(c, "constructor")[0]?.id).toBe("constructor/fresh");
    pristine();
  });
  it("names that would upset the columns are refused", () => {
    for (const name of ["a|b", "a\nb", "\u0000", " "]) {
      const json = good();
      foodOf(json)["names"] = { en: ["velvet spinach", name] };
      expect(problems(json).length, JSON.stringify(name)).toBeGreaterThan(0);
    }
  });
  it("lists beyond what anyone writes by hand are refused at once", () => {
    expect(
      problems({ name: "x", foods: Array.from({ length: 20_001 }, () => foodOf(good())) }).some((p) =>
        p.startsWith("foods: "),
      ),
    ).toBe(true);
    expect(
      problems({ name: "x", kinds: Array.from({ length: 1001 }, () => ({ kind: "k" })) }).some((p) =>
        p.startsWith("kinds: "),
      ),
    ).toBe(true);
    expect(
      problems({ name: "x", procedures: Array.from({ length: 1001 }, () => ({})) }).some((p) =>
        p.startsWith("procedures: "),
      ),
    ).toBe(true);
    const swap = (good()["swaps"] as Json[])[0];
    expect(
      problems({ name: "x", swaps: Array.from({ length: 50_001 }, () => swap) }).some((p) => p.startsWith("swaps: ")),
    ).toBe(true);
  });
  it("words of a million letters and objects nested ten thousand deep give an answer, and a short one", () => {
    const long = "a".repeat(1_000_000);
    for (const change of [
      (json: Json) => void (foodOf(json)["kind"] = long),
      (json: Json) => void (foodOf(json)["food"] = long),
      (json: Json) => void (foodOf(json)["origin"] = [long]),
      (json: Json) => void (foodOf(json)["names"] = { en: [long] }),
      (json: Json) => void (stateOf(json)["composition"] = long),
      (json: Json) => void (foodOf(json)["states"] = { [long]: stateOf(json) }),
      (json: Json) =>
        void ((json["swaps"] as Json[])[0] = {
          id: long,
          replaces: { food: long },
          uses: [{ food: long }],
          from: [long],
        }),
    ]) {
      const json = good();
      change(json);
      const found = problems(json);
      expect(found.length).toBeGreaterThan(0);
      for (const p of found) expect(p.length).toBeLessThan(2000);
    }
    let deep: unknown = 1;
    for (let i = 0; i < 10_000; i++) deep = { name: deep };
    expect(problems(deep).length).toBeGreaterThan(0);
    expect(problems({ name: "x", foods: [deep] }).length).toBeGreaterThan(0);
  });
  it("figures that are no numbers are refused", () => {
    for (const v of [Number.NaN, Number.POSITIVE_INFINITY, "1", null, -1, 1e300]) {
      const json = good();
      (stateOf(json)["figures"] as Json)["water"] = { v, from: "judgement" };
      expect(problems(json).length, String(v)).toBeGreaterThan(0);
    }
  });
});

describe("a swap that contradicts one that is there", () => {
  // The catalogue says 1 cup of dried pigeon peas is 1 cup of dried pinto beans, in rice and stew.
  const saying = (amount: string, context?: string): Json => ({
    name: "my kitchen",
    swaps: [
      {
        id: "my-pigeon-peas",
        replaces: { food: "pigeon-pea/dried", amount: "1 cup" },
        uses: [{ food: "pinto-bean/dried", amount }],
        ...(context === undefined ? {} : { context }),
        from: ["common practice"],
      },
    ],
  });
  const open = (json: Json, onConflict: "error" | "replace" = "error"): ReturnType<typeof openCatalogue> =>
    openCatalogue({ extensions: [readExtension(json)], onConflict });
  it("is an error that names both sides and both amounts", () => {
    let said: unknown;
    try {
      open(saying("2 cups"));
    } catch (e) {
      said = e;
    }
    if (!isSteadfareError(said, "extension conflict")) throw new Error("no conflict was told");
    expect(said.message).toContain(
      'The extension "my kitchen" swaps 2 cups pinto-bean/dried for 1 cup pigeon-pea/dried',
    );
    expect(said.message).toContain("the catalogue swaps 1 cup pinto-bean/dried for 1 cup pigeon-pea/dried");
    expect(said.data).toEqual({ id: "pigeon-pea/dried<pinto-bean/dried", first: "catalogue", second: "my kitchen" });
  });
  it("is told apart from one that says the same in other words", () => {
    const message = (json: Json): string => {
      try {
        open(json);
      } catch (e) {
        return (e as Error).message;
      }
      return "";
    };
    expect(message(saying("16 tbsp"))).toContain('is in the catalogue and in the extension "my kitchen"');
    expect(message(saying("3 cups", "stew"))).toContain("the catalogue swaps 1 cup");
    expect(message(saying("3 cups", "salad"))).not.toContain("the catalogue swaps");
  });
  it("takes the other's place when asked to", () => {
    const before = storeOf(openCatalogue()).swaps.length;
    const after = storeOf(open(saying("2 cups"), "replace")).swaps;
    expect(after.length).toBe(before);
    expect(after.find((s) => s.id === "pigeon-pea/dried<pinto-bean/dried")?.uses[0]?.amount).toBe("2 cups");
  });
});
