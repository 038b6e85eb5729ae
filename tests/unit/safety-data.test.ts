// The safety tables against the words they use: a rule that names a tag, kind or food nobody has would never speak.
import { readdirSync, readFileSync } from "node:fs";
import { parse } from "yaml";
import { describe, expect, it } from "vitest";
import { SafetyTables } from "../../src/catalogue/authoring/safety-schema.js";
import { openCatalogue, storeOf } from "../../src/catalogue/index.js";
import { tables } from "../helpers/safety.js";

const store = storeOf(openCatalogue());
const read = (file: string): Record<string, unknown> =>
  parse(readFileSync(new URL(`../../data/${file}`, import.meta.url), "utf8")) as Record<string, unknown>;
const terms = read("vocabulary/terms.yaml");
const listed = (name: string): string[] => {
  const list = terms[name];
  return Array.isArray(list) ? (list as string[]) : Object.keys(list as object);
};

/** Every word under a key, wherever a rule describes an ingredient. */
function words(key: string): Set<string> {
  const found = new Set<string>();
  const walk = (x: unknown): void => {
    if (Array.isArray(x)) for (const y of x) walk(y);
    else if (typeof x === "object" && x !== null) {
      const held = (x as Record<string, unknown>)[key];
      if (Array.isArray(held)) for (const w of held) found.add(String(w));
      Object.values(x).forEach(walk);
    }
  };
  for (const { words: _words, ...table } of Object.values(tables) as { words?: unknown }[]) walk(table);
  return found;
}
const missing = (key: string, known: Iterable<string>): string[] => {
  const has = new Set(known);
  return [...words(key)].filter((w) => !has.has(w)).sort();
};

describe("the safety tables", () => {
  it.each(Object.entries(SafetyTables))("%s fits its schema", (name, schema) => {
    const result = schema.safeParse(tables[name as keyof typeof tables]);
    expect(result.error?.issues ?? []).toEqual([]);
  });
  it("use only words of the vocabulary", () => {
    expect(missing("tags", listed("tag"))).toEqual([]);
    expect(missing("origin", listed("origin"))).toEqual([]);
    expect(missing("can", listed("capability"))).toEqual([]);
    expect(missing("cannot", listed("capability"))).toEqual([]);
    expect(missing("techniques", listed("technique"))).toEqual([]);
    expect(missing("jobs", [...listed("role"), ...listed("extra role")])).toEqual([]);
    expect(missing("states", [...listed("preservation"), ...listed("heat"), ...listed("form")])).toEqual([]);
  });
  it("name kinds of the kind tree", () => {
    const folder = new URL("../../data/vocabulary/kinds/", import.meta.url);
    const kinds = readdirSync(folder).flatMap(
      (file) => parse(readFileSync(new URL(file, folder), "utf8")) as { kind: string }[],
    );
    expect(
      missing(
        "kinds",
        kinds.map((k) => k.kind),
      ),
    ).toEqual([]);
  });
  it("name foods of the catalogue, or things it leaves out that a user's own file may bring", () => {
    const ids = store.ingredients.flatMap((i) => [i.food, i.id, `${i.food}.${i.part ?? ""}`]);
    const leftOut = [
      [
        "aconite",
        "apricot-kernel",
        "bitter-almond",
        "daylily",
        "doubanjiang",
        "elderberry",
        "escolar",
        "grass-pea",
        "oilfish",
        "puffer-fish",
        "tonka-bean",
      ],
      [
        "alligator",
        "crocodile",
        "frog",
        "frog-legs",
        "grasshopper",
        "hare",
        "kangaroo",
        "locust",
        "ostrich",
        "snake",
        "turtle",
        "boar",
      ],
      ["barracuda", "burbot", "dogfish", "lamprey", "lumpfish", "ray"],
      ["aspartame", "chicory-root", "inulin", "maltitol", "mannitol", "sorbitol", "alum", "pickling-lime", "cassia"],
      [
        "celery-salt",
        "chili-crisp",
        "chili-oil",
        "cranberry-juice",
        "falafel",
        "ginger",
        "grana-padano",
        "grape-juice",
        "nut-brittle",
        "ranch-dressing",
        "romesco",
        "tangelo",
      ],
    ].flat();
    expect(missing("foods", [...ids, ...leftOut])).toEqual([]);
  });
  it("cite sources the project lists", () => {
    const known = new Set([...Object.keys(read("sources.yaml")), "judgement", "common practice"]);
    const keys = new Set<string>();
    const walk = (x: unknown): void => {
      if (Array.isArray(x)) for (const y of x) walk(y);
      else if (typeof x === "object" && x !== null) {
        if ("key" in x) keys.add(String(x.key));
        Object.values(x).forEach(walk);
      }
    };
    walk(tables);
    expect([...keys].filter((key) => !known.has(key))).toEqual([]);
  });
  it("give each rule an id of its own", () => {
    const ids = [
      ...tables.hazards.hazards.map((h) => h.id),
      ...tables.diets.diets.flatMap((d) => [...d.rules, ...(d.apart ?? [])].map((r) => r.id)),
    ];
    expect(ids.filter((id, i) => ids.indexOf(id) !== i)).toEqual([]);
  });
  it("are documented: every id and accepted name stands in docs/safety.md", () => {
    const page = readFileSync(new URL("../../docs/safety.md", import.meta.url), "utf8");
    for (const { id, names } of [...tables.allergens.allergens, ...tables.diets.diets])
      for (const word of [`\`${id}\``, ...names]) expect(page).toContain(word);
  });
});
