import { openCatalogue, storeOf } from "../catalogue/index.js";
import type { SafetyDietId, SafetyVocabulary } from "../catalogue/safety-tables.js";
import { ALLERGENS, DIETS } from "../catalogue/words.js";
import { fail, freeze } from "../errors.js";
import { nearestOf } from "../nearest.js";
import type { AllergenId } from "../types.js";
import { safetyTables } from "./tables.js";

/** Longest word and most words a request may hold. */
const LONGEST = 100;
const MOST = 200;
/** Said around a word without changing what is left out. */
const BEFORE = ["no ", "without ", "avoid ", "allergic to ", "allergy to "];
const AFTER = [" free", " allergy", " allergic", " intolerance", " intolerant", " diet"];

/** Lower case, hyphens and runs of space made one space. Linear, whatever comes in. */
export function foldWord(text: string): string {
  const words: string[] = [];
  let word = "";
  for (const c of text.normalize("NFKC").toLowerCase()) {
    if (c === " " || c === "-" || c === "_" || c === "\u2010" || c === "\u2011" || c.trim() === "") {
      if (word !== "") words.push(word);
      word = "";
    } else word += c === "’" ? "'" : c;
  }
  if (word !== "") words.push(word);
  return words.join(" ");
}

/** What is left of "no pork", "egg-free", "nut allergy": the word itself first, then bare of what stands around it. */
export function bareForms(folded: string): readonly string[] {
  const forms = [folded];
  for (const start of BEFORE) if (folded.startsWith(start)) forms.push(folded.slice(start.length));
  for (const end of AFTER) if (folded.endsWith(end)) forms.push(folded.slice(0, -end.length));
  return forms;
}

interface Lists {
  readonly allergens: ReadonlyMap<string, readonly AllergenId[]>;
  readonly diets: ReadonlyMap<string, SafetyDietId>;
}
const lists = new WeakMap<object, Lists>();
function listsOf(tables: SafetyVocabulary): Lists {
  const before = lists.get(tables);
  if (before) return before;
  const allergens = new Map<string, readonly AllergenId[]>();
  for (const { names, means } of tables.allergens.groups) for (const n of names) allergens.set(foldWord(n), means);
  for (const { id, names } of tables.allergens.allergens)
    for (const n of [id, ...names]) allergens.set(foldWord(n), id === "wheat" ? ["wheat"] : [id]);
  const diets = new Map<string, SafetyDietId>();
  for (const { id, names } of tables.diets.diets) for (const n of [id, ...names]) diets.set(foldWord(n), id);
  const made = { allergens, diets };
  lists.set(tables, made);
  return made;
}

/** The word checked for kind and length and folded. */
export function readWord(word: unknown, kind: "allergen" | "diet" | "food"): string {
  if (typeof word !== "string")
    return fail("conflicting request", `avoid.${kind}s holds something that is not a word: ${typeof word}.`, {
      fields: [`avoid.${kind}s`],
    });
  if (word.length > LONGEST)
    return fail("input too large", `A word in avoid.${kind}s has ${word.length} characters; ${LONGEST} are read.`, {
      limit: LONGEST,
      size: word.length,
    });
  return foldWord(word);
}

/** A list of words, which must be a list and not too long. */
export function readList(list: unknown, field: string): readonly unknown[] {
  if (list === undefined) return [];
  if (!Array.isArray(list))
    return fail("conflicting request", `avoid.${field} must be a list of words.`, { fields: [`avoid.${field}`] });
  if (list.length > MOST)
    return fail("input too large", `avoid.${field} has ${list.length} words; ${MOST} are read.`, {
      limit: MOST,
      size: list.length,
    });
  return list as readonly unknown[];
}

/** The allergens a word stands for, if it stands for any. */
export function allergenWord(tables: SafetyVocabulary, folded: string): readonly AllergenId[] | undefined {
  const { allergens } = listsOf(tables);
  for (const form of bareForms(folded)) {
    const means = allergens.get(form);
    if (means) return means;
  }
  return undefined;
}

/** The diet a word stands for, if any. "No pork" is looked up whole before "pork". */
export function dietWord(tables: SafetyVocabulary, folded: string): SafetyDietId | undefined {
  const { diets } = listsOf(tables);
  for (const form of bareForms(folded)) {
    const diet = diets.get(form);
    if (diet) return diet;
  }
  return undefined;
}

/** Refuses a word nobody knows, with the nearest ones and all that are accepted. @throws `unknown term` */
export function unknownWord(tables: SafetyVocabulary, kind: "allergen" | "diet", word: string): never {
  const { allergens, diets } = listsOf(tables);
  const accepted = [...(kind === "allergen" ? allergens.keys() : diets.keys())].sort();
  const nearest = nearestOf(foldWord(word), accepted);
  return fail("unknown term", `Unknown ${kind} "${word}". Did you mean ${nearest.join(", ")}?`, {
    kind,
    input: word,
    nearest,
    accepted,
  });
}

function lazily<K extends string>(
  ids: readonly K[],
  names: (id: K) => readonly string[],
): Readonly<Record<K, readonly string[]>> {
  const words = {} as Record<K, readonly string[]>;
  for (const id of ids) {
    let held: readonly string[] | undefined;
    Object.defineProperty(words, id, { enumerable: true, get: () => (held ??= freeze([...names(id)])) });
  }
  return Object.freeze(words);
}
const builtIn = (): SafetyVocabulary => safetyTables(storeOf(openCatalogue()));

/** The plain names accepted for each allergen, beside its id. "-free", "no …" and "… allergy" are understood around them. */
export const ALLERGEN_WORDS: Readonly<Record<AllergenId, readonly string[]>> = lazily(
  ALLERGENS,
  (id) => builtIn().allergens.allergens.find((a) => a.id === id)?.names ?? [],
);
/** The plain names accepted for each diet and condition, beside its id. */
export const DIET_WORDS: Readonly<Record<SafetyDietId, readonly string[]>> = lazily(
  DIETS,
  (id) => builtIn().diets.diets.find((d) => d.id === id)?.names ?? [],
);
