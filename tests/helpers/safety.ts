// A hand-made store for the safety room: the real tables, and ingredients said in a line.
import { readFileSync } from "node:fs";
import { parse } from "yaml";
import type { SafetyVocabulary } from "../../src/catalogue/safety-tables.js";
import type { Ingredient } from "../../src/catalogue/store.js";
import type { SafetyStore } from "../../src/safety/index.js";
import type { AllergenId, IngredientId } from "../../src/types.js";

const table = (name: string): unknown =>
  parse(readFileSync(new URL(`../../data/vocabulary/${name}.yaml`, import.meta.url), "utf8"));
export const tables = {
  allergens: table("allergens"),
  diets: table("diets"),
  hazards: table("hazards"),
  temperatures: table("temperatures"),
} as SafetyVocabulary;

interface Said {
  readonly name?: string;
  readonly kinds?: readonly string[];
  readonly origin?: readonly string[];
  readonly tags?: readonly string[];
  readonly contains?: readonly AllergenId[];
  readonly may?: readonly AllergenId[];
  readonly unknown?: readonly AllergenId[];
  readonly can?: readonly string[];
  readonly roles?: Ingredient["roles"];
  readonly figures?: Readonly<Record<string, number>>;
}

export interface Larder {
  readonly store: SafetyStore;
  readonly food: (id: string, said?: Said) => Ingredient;
}

/** `food("cod/salt-cured", {...})`: what is not said is empty. */
export function larder(locale: "en-US" | "en-GB" = "en-US"): Larder {
  const figures = new Map<Ingredient, Readonly<Record<string, number>>>();
  let index = 0;
  const food = (id: string, said: Said = {}): Ingredient => {
    const [whole = id, state = ""] = id.split("/");
    const [name = whole, part] = whole.split(".");
    const kinds = [...(said.kinds ?? []), "food"];
    const ingredient: Ingredient = {
      index: index++,
      id: id as IngredientId,
      food: name,
      ...(part === undefined ? {} : { part }),
      state: state.split("-"),
      isDefault: true,
      name: { us: said.name ?? whole, gb: said.name ?? whole },
      names: [],
      kind: kinds[0] as string,
      kinds,
      roles: said.roles ?? [],
      can: new Set(said.can),
      cannot: new Set(),
      texture: {},
      flavour: {},
      aroma: {},
      dominant: [],
      origin: new Set(said.origin),
      tags: new Set(said.tags),
      contains: said.contains ?? [],
      mayContain: said.may ?? [],
      unknownAllergens: said.unknown ?? [],
      measures: [],
      edible: 1,
      becomes: [],
      minutes: {},
      cost: 3,
      athand: 1,
      traditions: [],
    };
    figures.set(ingredient, said.figures ?? {});
    return ingredient;
  };
  const store: SafetyStore = {
    locale,
    tables: tables as unknown as Readonly<Record<string, unknown>>,
    figure(i, name) {
      const value = figures.get(i)?.[name];
      return value === undefined ? null : { value, source: { key: "judgement" } };
    },
    nameOf: (i) => (locale === "en-GB" ? i.name.gb : i.name.us),
  };
  return { store, food };
}
