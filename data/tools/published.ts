// The published swaps of data/swaps/handbook-tables.yaml as questions and answers: what is missing, for what, and what tables name for it.
import { join } from "node:path";
import { compile, type Authored } from "../../src/catalogue/authoring/compile.js";
import { encode } from "../../src/catalogue/compiled.js";
import type { Flat } from "../../src/catalogue/compiled.js";
import { storeOf, type Store } from "../../src/catalogue/index.js";
import { catalogueOf } from "../../src/catalogue/open.js";
import { ALLERGENS } from "../../src/catalogue/words.js";
import { weigh } from "../../src/portion/index.js";
import { readQuantity } from "../../src/quantity/index.js";
import type { Catalogue, RoleId, SwapRequest } from "../../src/types.js";
import { readData } from "./read.js";

/** A list as long as what the engine shows by default holds at most so many mixtures. */
export const LIST = 10;
export const MIXTURES = Math.ceil(LIST / 3);

export interface Answer {
  readonly id: string;
  /** Sorted and joined by a plus: how a mixture is told from another. */
  readonly key: string;
  readonly parts: readonly { readonly id: string; readonly grams?: number }[];
  readonly common: boolean;
}
export interface Need {
  readonly missing: string;
  readonly category: string;
  readonly setting: string;
  readonly request: SwapRequest;
  /** Amounts are printed with a swap; a choice only says what would do. */
  readonly set: "swap" | "choice";
  readonly answers: readonly Answer[];
  /** What tables name for this missing ingredient in this setting: none counts against another. */
  readonly named: ReadonlySet<string>;
}
export interface Published {
  readonly catalogue: Catalogue;
  readonly needs: readonly Need[];
}

export const byCode = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
export const keyOf = (ids: readonly string[]): string => [...ids].sort(byCode).join("+");

const gramsOf = (store: Store, id: string, amount: string | undefined): number | undefined => {
  const item = store.byId.get(id);
  const quantity = amount === undefined ? undefined : readQuantity(amount);
  return item && quantity ? weigh(store, item, quantity)?.grams : undefined;
};

/** The data opened as they stand in `root`, whatever was built before. @throws when the data have problems */
export function openData(root: string): { authored: Authored; flat: Flat; catalogue: Catalogue } {
  const { authored, look, problems } = readData(root);
  if (problems.length > 0) throw new Error(`${problems.length} problems in data/: mend them first (npm run data).`);
  const flat = compile(authored, look, ALLERGENS);
  const compiled = encode(flat, { version: "0", data: "1", hash: "" });
  return { authored, flat, catalogue: catalogueOf(compiled, { locale: "en-US", measures: "us", extensions: [] }) };
}

/** Families of data/foods that are one shelf to a cook, so that no category is a single row. */
export const SHELF: Readonly<Record<string, string>> = {
  leafy: "vegetables",
  cabbage: "vegetables",
  stems: "vegetables",
  fruiting: "vegetables",
  roots: "vegetables",
  allium: "vegetables",
  pulses: "grains and pulses",
  grains: "grains and pulses",
  noodles: "grains and pulses",
  spices: "spices and chillies",
  chillies: "spices and chillies",
  thickeners: "baking",
  leaveners: "baking",
  chocolate: "baking",
  sweeteners: "sweeteners",
  meat: "meat and poultry",
  poultry: "meat and poultry",
  fats: "fats",
  soy: "seasonings",
  acids: "seasonings",
  seasonings: "seasonings",
  stocks: "seasonings",
  alcohol: "drinks",
  drinks: "drinks",
};

export function publishedNeeds(root: string): Published {
  const { authored, catalogue } = openData(root);
  const store = storeOf(catalogue);
  const shelf = new Map(
    authored.foods.map(({ file, data }) => {
      const family = file.split("/").at(-2) ?? "";
      return [data.food, SHELF[family] ?? family] as const;
    }),
  );
  const rows = authored.swaps
    .filter(({ file }) => file.endsWith("handbook-tables.yaml"))
    .map(({ data }) => ({
      ...data,
      complete: data.replaces.amount !== undefined && data.uses.every((u) => u.amount !== undefined),
    }));
  const settingOf = (r: (typeof rows)[number]): string => `${r.replaces.food}|${r.context ?? ""}|${r.role ?? ""}`;
  const named = new Map<string, Set<string>>();
  for (const r of rows) {
    const set = named.get(settingOf(r)) ?? new Set<string>();
    named.set(settingOf(r), set.add(keyOf(r.uses.map((u) => u.food))));
  }
  const needs = new Map<string, Need & { answers: Answer[] }>();
  for (const r of rows) {
    const missing = r.replaces.food;
    const amount = r.complete ? r.replaces.amount : undefined;
    const id = `${settingOf(r)}|${amount ?? ""}`;
    const need: Need & { answers: Answer[] } = needs.get(id) ?? {
      missing,
      category: shelf.get(missing.split("/")[0]?.split(".")[0] ?? "") ?? "other",
      setting: r.context ?? "",
      request: {
        missing,
        ...(amount === undefined ? {} : { amount }),
        ...(r.context === undefined ? {} : { for: r.context }),
        ...(r.role === undefined ? {} : { role: r.role as RoleId }),
      },
      set: r.complete ? "swap" : "choice",
      answers: [],
      named: named.get(settingOf(r)) ?? new Set(),
    };
    needs.set(id, need);
    need.answers.push({
      id: r.id,
      key: keyOf(r.uses.map((u) => u.food)),
      parts: r.uses.map((u) => {
        const grams = r.complete ? gramsOf(store, u.food, u.amount) : undefined;
        return { id: u.food, ...(grams === undefined ? {} : { grams }) };
      }),
      common: r.from.every((f) => f === "common practice"),
    });
  }
  return {
    catalogue,
    needs: [...needs.values()].sort(
      (a, b) => byCode(a.category, b.category) || byCode(a.missing, b.missing) || byCode(a.setting, b.setting),
    ),
  };
}

/** Rank in a list of keys, best first, others named for the same need not counted; undefined when it is not there. */
export function rankOf(list: readonly string[], key: string, named: ReadonlySet<string>): number | undefined {
  let rank = 1;
  for (const other of list) {
    if (other === key) return rank;
    if (!named.has(other)) rank++;
  }
  return undefined;
}

/**
 * The same as a cook reads a list: other states of what is missing are passed over, and of each kind (twelve rices, nine white fishes)
 * only the first is counted. `kindOf` gives the kind of a single food and what else stands for a mixture; undefined is passed over.
 */
export function rankByKind(
  list: readonly string[],
  key: string,
  named: ReadonlySet<string>,
  kindOf: (key: string) => string | undefined,
): number | undefined {
  const seen = new Set<string>();
  for (const other of list) {
    if (other === key) return seen.size + 1;
    const kind = kindOf(other);
    if (kind !== undefined && !named.has(other)) seen.add(kind);
  }
  return undefined;
}

/** Mean over the named answers of how many of those ranked up to each are named: 1 when all stand before anything else. */
export function averagePrecision(list: readonly string[], named: ReadonlySet<string>): number {
  let found = 0;
  let sum = 0;
  list.forEach((key, i) => {
    if (named.has(key)) sum += ++found / (i + 1);
  });
  return named.size === 0 ? 0 : sum / named.size;
}

export const DATA = join(import.meta.dirname, "..");
