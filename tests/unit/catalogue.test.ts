import { join } from "node:path";
import { isDeepStrictEqual } from "node:util";
import { build } from "esbuild";
import { beforeAll, describe, expect, it } from "vitest";
import { compile } from "../../src/catalogue/authoring/compile.js";
import { decode, encode, type Compiled } from "../../src/catalogue/compiled.js";
import { catalogueOf } from "../../src/catalogue/open.js";
import { storeOf } from "../../src/catalogue/index.js";
import { makeExtension } from "../../src/catalogue/overlay.js";
import { ALLERGENS } from "../../src/catalogue/words.js";
import { findFood, foodFacts, isSteadfareError, openCatalogue, swapsFor } from "../../src/index.js";
import type { SteadfareError } from "../../src/index.js";
import { clean, compiledOf, type Records } from "../helpers/records.js";
import { META, real, realFlat, withoutSwaps } from "../helpers/real.js";

const ROOT = join(import.meta.dirname, "../..");

/** Modules the public face pulls in, paths from the root of the project; packages too. */
async function modulesOf(entry: string): Promise<string[]> {
  const result = await build({
    entryPoints: [join(ROOT, entry)],
    absWorkingDir: ROOT,
    bundle: true,
    write: false,
    metafile: true,
    format: "esm",
    platform: "neutral",
    mainFields: ["module", "main"],
    logLevel: "silent",
  });
  return Object.keys(result.metafile.inputs);
}

describe("columns", () => {
  it("give back the rows they were made of, for the whole catalogue", () => {
    const flat = realFlat();
    const back = decode(JSON.parse(JSON.stringify(encode(flat, META))) as Compiled);
    expect(back.commons).toEqual(flat.commons);
    expect(back.swaps).toHaveLength(flat.swaps.length);
    back.swaps.forEach((swap, i) => expect(swap).toEqual(flat.swaps[i]));
    expect(back.ingredients).toHaveLength(flat.ingredients.length);
    back.ingredients.forEach((row, i) => expect(row).toEqual(flat.ingredients[i]));
  });
  it("are the same text for the same data, and the same rows when they are packed again", () => {
    const same = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);
    const again = compile(real.authored, real.look, ALLERGENS);
    expect(same(encode(realFlat(), META), encode(again, META))).toBe(true);
    const once = decode(encode(again, META));
    const twice = decode(encode(once, META));
    expect(twice.ingredients.filter((row, i) => !isDeepStrictEqual(row, once.ingredients[i]))).toEqual([]);
    expect(twice.swaps.filter((row, i) => !isDeepStrictEqual(row, once.swaps[i]))).toEqual([]);
  });
  it("of another format are refused, saying which", () => {
    const compiled = encode(compiledOf(clean()).flat, META);
    expect(() => decode({ ...compiled, format: 99 })).toThrow(/format 99.*reads format \d/);
  });
});

describe("opening", () => {
  let modules: string[] = [];
  beforeAll(async () => {
    modules = await modulesOf("src/index.ts");
  });
  it("imports neither zod nor graphology nor anything of node", () => {
    expect(modules.filter((m) => /node_modules\/(zod|graphology)/.test(m))).toEqual([]);
    expect(modules.filter((m) => m.startsWith("node:"))).toEqual([]);
    expect(modules.filter((m) => m.includes("catalogue/authoring/") || m.includes("catalogue/graph/"))).toEqual([]);
  });
  it("would be caught if it did: the entries that may, do", async () => {
    expect((await modulesOf("src/extend.ts")).some((m) => m.includes("node_modules/zod/"))).toBe(true);
    expect((await modulesOf("src/graph.ts")).some((m) => m.includes("node_modules/graphology/"))).toBe(true);
  });
  it("gives a frozen catalogue with frozen meta", () => {
    const c = openCatalogue();
    expect(Object.isFrozen(c)).toBe(true);
    expect(Object.isFrozen(c.meta)).toBe(true);
    expect(Object.isFrozen(c.meta.extensions)).toBe(true);
    expect(() => Object.assign(c.meta, { hash: "mine" })).toThrow(TypeError);
    expect(c.meta.hash).toMatch(/^[0-9a-f]{16}$/);
    expect(JSON.parse(JSON.stringify(c))).toEqual({ size: c.size, locale: "en-US", measures: "us", meta: c.meta });
  });
  it("follows the locale in names and measures", () => {
    const gb = openCatalogue({ locale: "en-GB" });
    expect([gb.locale, gb.measures]).toEqual(["en-GB", "metric"]);
    expect(openCatalogue({ locale: "en-GB", measures: "us" }).measures).toBe("us");
    const names = (c: typeof gb): string => foodFacts(c, "cilantro/fresh").name;
    expect(names(gb)).not.toBe(names(openCatalogue()));
  });
  it("refuses a locale it does not know, saying which it does", () => {
    expect(() => openCatalogue({ locale: "de-DE" as "en-US" })).toThrow(/de-DE.*en-US or en-GB/);
  });
  it("refuses what is no catalogue and what is no extension", () => {
    expect(() => storeOf({ ...openCatalogue() })).toThrow(/openCatalogue/);
    const forged = { kind: "steadfare/extension@1" as const, name: "forged" };
    expect(() => openCatalogue({ extensions: [forged] })).toThrow(/"forged" was not made by readExtension/);
  });
});

describe("what is at hand", () => {
  const store = storeOf(openCatalogue());
  const at = (id: string): number | undefined => store.byId.get(id)?.athand;
  // Common practice, no source.
  it("is 2 for a kitchen, 1 for a supermarket, 0 for a specialist", () => {
    expect(["egg/fresh", "salt/pantry", "butter/fresh-unsalted", "lemon/fresh"].map(at)).toEqual([2, 2, 2, 2]);
    expect(["sugar/pantry-cubes", "buttermilk/fresh", "tahini/pantry"].map(at)).toEqual([1, 1, 1]);
    expect(["goose-egg/fresh", "quail-egg/fresh", "korerima/dried", "egg/dried-powder"].map(at)).toEqual([0, 0, 0, 0]);
  });
  it("is said in the rows: the lists themselves are not shipped", () => {
    expect(store.tables).not.toHaveProperty("everyday");
    expect(store.tables).toHaveProperty("basics");
  });
});

describe("former ids", () => {
  const records = clean();
  const { flat } = compiledOf(records);
  // The tables of the real catalogue, since names are read with their words.
  const tables = storeOf(openCatalogue()).tables;
  const c = catalogueOf(encode({ ...flat, commons: { ...flat.commons, tables } }, META), {
    locale: "en-US",
    measures: "us",
    extensions: [],
  });
  it("are kept and lead to what they became", () => {
    expect(storeOf(c).tombstones.get("spirit-vinegar/pantry")).toBe("white-vinegar/pantry");
    expect(foodFacts(c, "spirit-vinegar/pantry").id).toBe("white-vinegar/pantry");
  });
  it("of the shipped catalogue lead to ingredients, never to another former id or a living one", () => {
    const store = storeOf(openCatalogue());
    for (const [former, now] of store.tombstones) {
      expect(store.byId.has(now), `${former} > ${now}`).toBe(true);
      expect(store.byId.has(former), former).toBe(false);
    }
  });
});

/** What a sample makes, as an extension. */
const extension = (
  name: string,
  change: (records: Records) => void = () => undefined,
): ReturnType<typeof makeExtension> => {
  const records = clean();
  change(records);
  return makeExtension(name, compiledOf(records).flat);
};
const thrown = (open: () => unknown): SteadfareError<"extension conflict"> => {
  try {
    open();
  } catch (e) {
    if (isSteadfareError(e, "extension conflict")) return e;
    throw e;
  }
  throw new Error("nothing was thrown");
};
const only =
  (...foods: string[]) =>
  (r: Records): void => {
    r.foods = r.foods.filter((f) => foods.includes(String(f["food"])));
    r.swaps = [];
  };

describe("an extension that says what the catalogue says", () => {
  it("is refused, naming both sides", () => {
    const e = thrown(() => openCatalogue({ extensions: [extension("my larder", only("salt"))] }));
    expect(e.message).toContain('"salt/pantry" is in the catalogue and in the extension "my larder"');
    expect(e.message).toContain('onConflict: "replace"');
    expect(e.data).toEqual({ id: "salt/pantry", first: "catalogue", second: "my larder" });
  });
  it("is refused for another extension's sake too, naming that one", () => {
    const rename = (r: Records): void => {
      only("salt")(r);
      Object.assign(r.foods[0] as object, { food: "cave-salt", names: { en: ["cave salt"] } });
    };
    const e = thrown(() => openCatalogue({ extensions: [extension("first", rename), extension("second", rename)] }));
    expect(e.message).toContain('"cave-salt/pantry" is in the extension "first" and in the extension "second"');
    expect(e.data).toEqual({ id: "cave-salt/pantry", first: "first", second: "second" });
  });
  it("wins when asked to", () => {
    const heavier = (r: Records): void => {
      only("salt")(r);
      const states = (r.foods[0] as { states: { pantry: object } }).states;
      Object.assign(states.pantry, { measures: { tsp: { g: 7.5, from: "judgement" } } });
    };
    const c = openCatalogue({ extensions: [extension("my larder", heavier)], onConflict: "replace" });
    expect(c.size).toBe(openCatalogue().size);
    expect(c.meta.extensions).toEqual(["my larder"]);
    const salt = storeOf(c).byId.get("salt/pantry");
    expect(salt?.measures.map((m) => [m.unit, m.grams])).toEqual([["tsp", 7.5]]);
    expect(salt?.measures[0]?.source.key).toBe("judgement");
  });
  it("leaves the sources of everything else as they were", () => {
    const before = storeOf(openCatalogue());
    const after = storeOf(openCatalogue({ extensions: [extension("my larder", only("salt"))], onConflict: "replace" }));
    for (const i of before.ingredients.filter((_, k) => k % 7 === 0 && before.ingredients[k]?.id !== "salt/pantry")) {
      const other = after.byId.get(i.id);
      if (!other) throw new Error(`${i.id} is gone`);
      expect(after.figure(other, "water")).toEqual(before.figure(i, "water"));
      expect(other.measures).toEqual(i.measures);
      expect(other.becomes).toEqual(i.becomes);
      expect(other.names).toEqual(i.names);
    }
    expect(after.swaps.map((s) => s.id)).toEqual(before.swaps.map((s) => s.id));
  });
  it("may take the bare name of a food over only when asked to", () => {
    const pickled = (r: Records): void => {
      only("cod")(r);
      const food = r.foods[0] as { states: Record<string, { default?: boolean }> };
      food.states = { pickled: { ...food.states["fresh"], default: true } };
    };
    const e = thrown(() => openCatalogue({ extensions: [extension("my larder", pickled)] }));
    expect(e.message).toContain("A default state of");
    expect(e.data).toEqual({ id: "cod", first: "catalogue", second: "my larder" });
    const c = openCatalogue({ extensions: [extension("my larder", pickled)], onConflict: "replace" });
    expect(findFood(c, "cod")[0]?.id).toBe("cod/pickled");
    expect(storeOf(c).byId.get("cod/fresh")?.isDefault).toBe(false);
  });
});

describe("computed answers", () => {
  it("are the same to the byte with the folder of swaps emptied", () => {
    const open = (compiled: Compiled): ReturnType<typeof openCatalogue> =>
      catalogueOf(compiled, { locale: "en-US", measures: "us", extensions: [] });
    const full = open(encode(realFlat(), META));
    const bare = open(encode(withoutSwaps(), META));
    expect(storeOf(full).swaps.length).toBeGreaterThan(1000);
    expect(storeOf(bare).swaps).toEqual([]);
    const { ingredients } = storeOf(full);
    const forty = Array.from(
      { length: 40 },
      (_, k) => ingredients[Math.floor((k * ingredients.length) / 40)]?.id ?? "",
    );
    let said = 0;
    for (const missing of forty) {
      const ask = { missing, amount: "100 g", evidence: "computed", limit: 12 } as const;
      const [one, other] = [full, bare].map((c) => JSON.stringify(swapsFor(c, ask)));
      if (one !== other) expect(other?.slice(0, 2000), missing).toBe(one?.slice(0, 2000));
      expect(one === other, missing).toBe(true);
      said += swapsFor(full, ask).swaps.length;
    }
    expect(said).toBeGreaterThan(100);
  });
});
