import type { Matches, SafetyDietId } from "../catalogue/safety-tables.js";
import type { Ingredient } from "../catalogue/store.js";
import { ALLERGENS, DIETS } from "../catalogue/words.js";
import { fail, freeze } from "../errors.js";
import type { AllergenId, Avoid } from "../types.js";
import { safetyTables, type SafetyStore } from "./tables.js";
import { allergenWord, bareForms, dietWord, foldWord, readList, readWord, unknownWord } from "./words.js";

/** What a diner or a table avoids, with every word understood. Plain data. */
export interface AvoidRules {
  readonly allergens: readonly AllergenId[];
  readonly diets: readonly SafetyDietId[];
  /** Groups of foods by a word: "pork", "shellfish". */
  readonly groups: readonly { readonly word: string; readonly when: Matches }[];
  /** Single foods, in every state; with a part, that part and the whole that holds it. */
  readonly foods: readonly { readonly word: string; readonly food: string; readonly part?: string }[];
}

const NOTHING: AvoidRules = freeze({ allergens: [], diets: [], groups: [], foods: [] });
const FIELDS = ["allergens", "diets", "foods"];

/** Rules of several diners as one: what any of them avoids. */
export function mergeRules(list: readonly AvoidRules[]): AvoidRules {
  const allergens = new Set(list.flatMap((r) => r.allergens));
  const diets = new Set(list.flatMap((r) => r.diets));
  const once = <T extends { readonly word: string }>(items: readonly T[], key: (item: T) => string): T[] => [
    ...new Map(items.map((item) => [key(item), item])).values(),
  ];
  return freeze({
    allergens: ALLERGENS.filter((a) => allergens.has(a)),
    diets: DIETS.filter((d) => diets.has(d)),
    groups: once(
      list.flatMap((r) => r.groups),
      (g) => g.word,
    ),
    foods: once(
      list.flatMap((r) => r.foods),
      (f) => `${f.word}\n${f.food}.${f.part ?? ""}`,
    ),
  });
}

/**
 * Reads what is to be avoided. Every word is understood or refused, never ignored.
 *
 * Allergens: the fifteen ids and their plain names ("dairy", "nuts", "shellfish", "gluten", "soya", "egg-free"). Diets: the
 * ids and their plain names ("celiac", "plant-based", "no pork"); a word for an allergen among the diets ("dairy-free") is
 * read as that allergen. Foods: group words ("pork", "mushrooms"), else whatever `resolveFood` finds, all of it.
 * @param resolveFood the foods a text names; none is an error
 * @throws `unknown term`, `unknown food`, `conflicting request` (an unknown field or something that is no word), `input too large`
 */
export function readAvoid(
  store: SafetyStore,
  avoid: Avoid | undefined,
  resolveFood: (text: string) => readonly Ingredient[],
): AvoidRules {
  if (avoid === undefined) return NOTHING;
  if (typeof avoid !== "object" || avoid === null || Array.isArray(avoid))
    return fail("conflicting request", "avoid must hold lists: allergens, diets, foods.", { fields: ["avoid"] });
  const strange = Object.keys(avoid).filter((key) => !FIELDS.includes(key));
  if (strange.length > 0)
    return fail("conflicting request", `avoid has no ${strange.join(", ")}; it holds allergens, diets and foods.`, {
      fields: strange.map((key) => `avoid.${key}`),
    });
  const tables = safetyTables(store);
  const allergens: AllergenId[] = [];
  const diets: SafetyDietId[] = [];
  const groups: { word: string; when: Matches }[] = [];
  const foods: { word: string; food: string; part?: string }[] = [];

  for (const word of readList(avoid.allergens, "allergens")) {
    const folded = readWord(word, "allergen");
    allergens.push(...(allergenWord(tables, folded) ?? unknownWord(tables, "allergen", word as string)));
  }
  for (const word of readList(avoid.diets, "diets")) {
    const folded = readWord(word, "diet");
    const diet = dietWord(tables, folded);
    const meant = diet === undefined ? allergenWord(tables, folded) : undefined;
    if (diet !== undefined) diets.push(diet);
    else allergens.push(...(meant ?? unknownWord(tables, "diet", word as string)));
  }
  for (const word of readList(avoid.foods, "foods")) {
    const forms = bareForms(readWord(word, "food"));
    const group = tables.diets.groups.find(({ names }) => forms.some((form) => names.includes(form)));
    const found = group ? [] : resolveFood(forms.at(-1) === forms[0] ? (word as string) : (forms.at(-1) as string));
    if (group) groups.push({ word: word as string, when: group.when });
    else if (found.length === 0)
      return fail("unknown food", `No food called "${word as string}" to avoid.`, {
        input: word as string,
        nearest: [],
      });
    for (const { food, part } of found)
      foods.push({ word: word as string, food, ...(part === undefined ? {} : { part }) });
  }
  return mergeRules([{ allergens, diets, groups, foods }]);
}

/** Single names of diets that are as often a word of the dish: "kidney bean chili", "baby spinach", "grapefruit salad". */
const DISH_WORDS = new Set(
  "baby kidney renal grapefruit gluten lactose expecting jewish hindu muslim islamic buddhist veggie statins tyramine".split(
    " ",
  ),
);
/** Words that make a food's name one of what is left out. */
const LEFT_OUT = ["free", "allergy", "allergic", "intolerance", "intolerant"];
const LEAVES_OUT = ["no", "without", "avoid", "allergic", "allergy"];
const LONGEST_SAID = 4;

/**
 * Who eats, said in passing: "vegan brownies", "gluten-free cake", "cookies without nuts", "for babies". A bare food is no allergen here
 * ("milk bread"), and a word that is as often part of a dish is none ("kidney bean chili").
 * @returns the rules, and the words that said so, in lower case
 */
export function avoidSaid(
  store: SafetyStore,
  text: string,
): { readonly rules: AvoidRules; readonly words: ReadonlySet<string> } {
  const said = foldWord(text.slice(0, 500).replaceAll(/[.,;:!?()/]/g, " "))
    .split(" ")
    .filter((w) => w !== "");
  const tables = safetyTables(store);
  const allergens: AllergenId[] = [];
  const diets: SafetyDietId[] = [];
  const words = new Set<string>();
  for (let i = 0; i < said.length; i++)
    for (let n = Math.min(LONGEST_SAID, said.length - i); n > 0; n--) {
      const some = said.slice(i, i + n);
      const phrase = some.join(" ");
      const leaves = LEAVES_OUT.includes(some[0] as string) || LEFT_OUT.includes(some.at(-1) as string);
      const diet = n === 1 && DISH_WORDS.has(phrase) ? undefined : dietWord(tables, phrase);
      const means = diet === undefined && n > 1 && leaves ? allergenWord(tables, phrase) : undefined;
      if (diet === undefined && means === undefined) continue;
      if (diet !== undefined) diets.push(diet);
      allergens.push(...(means ?? []));
      for (const w of some) words.add(w);
      i += n - 1;
      break;
    }
  return { rules: mergeRules([{ allergens, diets, groups: [], foods: [] }]), words };
}
