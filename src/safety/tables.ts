import type { RuleSource, SafetyVocabulary } from "../catalogue/safety-tables.js";
import type { Figure, Ingredient } from "../catalogue/store.js";
import type { FoodRef, SourceRef } from "../types.js";

/** As much of the store as this room needs: the tables and how to name and measure an ingredient. */
export interface SafetyStore {
  readonly locale: "en-US" | "en-GB";
  readonly tables: Readonly<Record<string, unknown>>;
  figure(i: Ingredient, name: string): Figure | null;
  nameOf(i: Ingredient): string;
}

/** The four safety tables of an opened catalogue. They are part of every build, so their absence is a broken build. */
export function safetyTables(store: SafetyStore): SafetyVocabulary {
  const { allergens, diets, hazards, temperatures } = store.tables;
  if (!allergens || !diets || !hazards || !temperatures)
    throw new Error("This catalogue was built without its safety tables.");
  return store.tables as unknown as SafetyVocabulary;
}

const GRADES = { read: "", "read-secondary": "read second-hand", derived: "derived", memory: "from memory" } as const;

/** Sources as they are handed out: how well a publication was read stands in `at`. */
export function refs(sources: readonly RuleSource[]): readonly SourceRef[] {
  return sources.map(({ key, at, grade }) => {
    const how = grade === undefined ? "" : GRADES[grade];
    const place = [at, how].filter((part) => part !== undefined && part !== "").join("; ");
    return place === "" ? { key } : { key, at: place };
  });
}

/** True when no publication stands behind a rule, only memory and the trade. */
export function unsourced(sources: readonly RuleSource[]): boolean {
  return sources.every(({ key, grade }) => key === "judgement" || key === "common practice" || grade === "memory");
}

export const refOf = (store: SafetyStore, i: Ingredient): FoodRef => ({ id: i.id, name: store.nameOf(i) });
