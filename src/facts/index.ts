import { storeOf, type Ingredient, type Store } from "../catalogue/index.js";
import { fail, freeze } from "../errors.js";
import { nearestNames } from "../names/index.js";
import { nearestOf } from "../nearest.js";
import { allergenFacts, donenessFor, type Doneness, type Place } from "../safety/index.js";
import type { AllergenId, Catalogue, FoodFacts, FoodRef, RoleId } from "../types.js";

function byId(c: Catalogue, store: Store, id: string): Ingredient {
  const moved = store.tombstones.get(id);
  const found =
    store.byId.get(moved ?? id) ??
    store.ingredients.find((i) => i.isDefault && (i.part === undefined ? i.food : `${i.food}.${i.part}`) === id);
  if (found) return found;
  const nearest = nearestNames(c, id.replace(/[/.-]+/g, " "), 5);
  return fail(
    "unknown food",
    `No ingredient has the id "${id}". ${nearest.length > 0 ? `Nearest: ${nearest.map((m) => m.id).join(", ")}.` : "Find ids with findFood."}`,
    { input: id, nearest },
  );
}

/**
 * Everything known of one ingredient: names, roles, figures per 100 g with their sources, capabilities, allergens, household measures.
 * A figure that was not measured is null, never zero; a capability nobody judged is null.
 * @param id "cod/salt-cured"; a food alone ("cod") means its default state; former ids are followed
 * @throws `unknown food`
 */
export function foodFacts(c: Catalogue, id: string): FoodFacts {
  const store = storeOf(c);
  const i = byId(c, store, id);
  return freeze({
    id: i.id,
    name: store.nameOf(i),
    names: i.names.map(({ tag, text }) => ({ tag, text })),
    food: i.food,
    ...(i.part === undefined ? {} : { part: i.part }),
    state: i.state,
    roles: i.roles.map((r) => ({ ...r })),
    per100g: Object.fromEntries(
      Object.keys(store.columns).map((name) => {
        const figure = store.figure(i, name);
        return [
          name,
          figure === null ? null : { value: figure.value, unit: store.figureUnit(name), source: figure.source },
        ];
      }),
    ),
    can: Object.fromEntries(
      (store.terms["capability"] ?? []).map((can) => [can, i.can.has(can) ? true : i.cannot.has(can) ? false : null]),
    ),
    allergens: allergenFacts(store, i),
    measures: i.measures.map((m) => ({
      unit: m.label === "" ? m.unit : `${m.unit} ${m.label}`,
      grams: m.grams,
      source: m.source,
    })),
  });
}

/**
 * Ingredients by id order, all of them or those that do a job (weight of a half or more) and are free of allergens.
 * What may contain an allergen, or is not known to be free of it, is not listed as free.
 * @throws `unknown term`
 */
export function listFoods(
  c: Catalogue,
  where: { role?: RoleId; allergenFree?: readonly AllergenId[] } = {},
): readonly FoodRef[] {
  const store = storeOf(c);
  const check = (kind: "role" | "allergen", word: string): void => {
    const accepted = store.terms[kind] ?? [];
    if (!accepted.includes(word))
      fail("unknown term", `"${word}" is no ${kind}. Nearest: ${nearestOf(word, accepted).join(", ")}.`, {
        kind,
        input: word,
        nearest: nearestOf(word, accepted),
        accepted: [...accepted],
      });
  };
  const { role, allergenFree = [] } = where;
  if (role !== undefined) check("role", role);
  for (const a of allergenFree) check("allergen", a);
  return freeze(
    store.ingredients
      .filter((i) => role === undefined || i.roles.some((r) => r.role === role && r.weight >= 0.5))
      .filter((i) => {
        if (allergenFree.length === 0) return true;
        const { free } = allergenFacts(store, i);
        return allergenFree.every((a) => free.includes(a));
      })
      .map((i) => ({ id: i.id, name: store.nameOf(i) }))
      .sort((a, b) => (a.id < b.id ? -1 : 1)),
  );
}

/**
 * The least internal temperature an ingredient is cooked to, with rest and source; undefined when it is eaten as sold or has none.
 * @param options.jurisdiction whose figures: that of the catalogue's locale when left out; "strictest" for the highest of all
 * @throws `unknown food`
 */
export function donenessOf(
  c: Catalogue,
  id: string,
  options: { readonly jurisdiction?: Place } = {},
): Doneness | undefined {
  const store = storeOf(c);
  return donenessFor(store, byId(c, store, id), options);
}
