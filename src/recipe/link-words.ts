import type { Store } from "../catalogue/index.js";
import { foldText } from "../names/index.js";
import { tokensOf } from "./text.js";

// Words of steps and lines that link the one to the other.

/** Words that tell foods of one name apart but name none. */
export const TELLING = new Set(
  "fresh dried dry ground large small medium red green white black brown yellow sweet hot sour whole plain raw cold warm baby young ripe light dark double single heavy all purpose self raising unsalted salted extra virgin free range low fat long short grain flat leaf hard soft thick thin canned tinned frozen smoked cured baking wild mixed new old spring piece fine coarse sea table instant active bay and or with in to for g ml kg".split(
    " ",
  ),
);
/** A name that ends so is made from what it begins with: "chicken" is no chicken stock, "olives" no olive oil. */
export const MADE = new Set(
  "stock broth bouillon oil sauce paste juice powder butter milk vinegar flour starch syrup cream water fat wine extract essence".split(
    " ",
  ),
);
/** Words of a step that name a kind, and the kind or role of the catalogue it is. */
const KINDS: Readonly<Record<string, { readonly kind?: string; readonly role?: string }>> = {
  fish: { kind: "fish" },
  meat: { kind: "meat" },
  vegetable: { kind: "vegetable" },
  bean: { kind: "bean" },
  pasta: { kind: "pasta" },
  noodle: { kind: "noodle" },
  cheese: { kind: "cheese" },
  mushroom: { kind: "mushroom" },
  poultry: { kind: "poultry" },
  nut: { kind: "nut" },
  seafood: { kind: "seafood" },
  green: { role: "leafy green" },
  herb: { role: "herb" },
  spice: { role: "spice" },
  sausage: { kind: "sausage" },
  chilli: { kind: "chilli" },
  oil: { kind: "oil" },
  stock: { kind: "stock" },
  flour: { kind: "flour" },
  sugar: { kind: "sugar" },
  vinegar: { kind: "vinegar" },
};

export const foldAll = (text: string): string[] =>
  tokensOf(text.slice(0, 400))
    .map((t) => foldText(t.text))
    .filter((k) => k !== "" && !(k >= "0" && k <= "9999"));

/** What the names and kinds of a food are in a step, worked out once for each food of a catalogue. */
interface FoodWords {
  readonly names: readonly (readonly string[])[];
  readonly kinds: readonly string[];
}
const foods = new WeakMap<Store, Map<string, FoodWords>>();
export function wordsOfFood(store: Store, id: string): FoodWords | undefined {
  const known = foods.get(store) ?? new Map<string, FoodWords>();
  foods.set(store, known);
  const had = known.get(id);
  if (had !== undefined) return had;
  const food = store.byId.get(id);
  if (food === undefined) return undefined;
  const names = new Set(
    [food.name.us, food.name.gb, ...food.names.map((n) => n.text)].map((n) => foldAll(n).join(" ")),
  );
  const kinds = new Set(food.kinds.flatMap(foldAll));
  const made: FoodWords = {
    names: [...names].filter((n) => n !== "").map((n) => n.split(" ")),
    kinds: Object.entries(KINDS)
      .filter(
        ([, { kind, role }]) =>
          (kind !== undefined && kinds.has(kind)) ||
          (role !== undefined && food.roles.some((r) => r.role === role && r.weight >= 0.5)),
      )
      .map(([word]) => word),
  };
  known.set(id, made);
  return made;
}
