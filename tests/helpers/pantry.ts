// A small catalogue made by hand, so that the rules of naming are tested apart from the data.
import { readFileSync } from "node:fs";
import { parse } from "yaml";
import type { Ingredient, Store } from "../../src/catalogue/store.js";
import type { Catalogue } from "../../src/types.js";

interface Shelf {
  readonly food: string;
  readonly names: Readonly<Record<string, readonly string[]>>;
  /** state -> names of that state; a "*" after the state makes it the default. Parts as "juice:fresh*". */
  readonly states: Readonly<Record<string, readonly string[]>>;
  readonly parts?: Readonly<Record<string, readonly string[]>>;
  readonly tags?: readonly string[];
}
const f = (food: string, en: string, states: Shelf["states"], more: Partial<Shelf> = {}): Shelf => ({
  food,
  names: { en: en.split(", ") },
  states,
  ...more,
});
const plain = { "pantry*": [] };
const fresh = { "fresh*": [] };

export const SHELVES: readonly Shelf[] = [
  f(
    "cod",
    "cod, Atlantic cod",
    { "fresh*": ["cod fillet"], frozen: [], "salt-cured": ["salt cod"] },
    { names: { en: ["cod", "Atlantic cod"], fr: ["cabillaud"], ja: ["タラ"] } },
  ),
  f("tomato", "tomato", {
    "fresh*": [],
    canned: [],
    "canned-chopped": [],
    dried: [],
    "canned-paste": ["tomato paste"],
  }),
  f(
    "chard",
    "Swiss chard, chard",
    { "fresh*": [], "leaf:fresh*": [], "stem:fresh*": [] },
    { parts: { leaf: ["chard leaves"], stem: ["chard stems"] } },
  ),
  f(
    "lemon",
    "lemon",
    { "fresh*": [], "juice:fresh*": [], "zest:fresh*": [] },
    { parts: { juice: ["lemon juice"], zest: ["lemon zest"] } },
  ),
  f(
    "egg",
    "egg",
    { "fresh*": [], "white:fresh*": [], "yolk:fresh*": [] },
    { parts: { white: ["egg white"], yolk: ["egg yolk"] } },
  ),
  f("chicken", "chicken", { "fresh*": ["whole chicken"] }),
  f("chicken-thigh", "chicken thigh", fresh),
  f("chicken-stock", "chicken stock, chicken broth", plain),
  f("vegetable-stock", "vegetable stock, vegetable broth", plain),
  f("black-pepper", "black pepper, pepper", { "dried*": ["peppercorns"], "dried-ground": [] }),
  f("bell-pepper", "bell pepper, pepper", fresh, { names: { en: ["bell pepper"], "en-GB": ["pepper"] } }),
  f("salt", "salt, table salt", plain),
  f("white-rice", "white rice, rice", { "dried*": [], "fresh-cooked": [] }),
  f("black-bean", "black bean", { dried: [], canned: [], "dried-cooked": [] }),
  f("olive-oil", "olive oil, extra-virgin olive oil", plain),
  f("dark-chocolate", "dark chocolate, bittersweet chocolate", plain),
  f("milk", "milk, whole milk", { "fresh*": [], dried: ["milk powder"] }),
  f("butter", "butter", { "fresh-unsalted*": [], "fresh-salted": [] }),
  f("vegan-butter", "vegan butter", plain),
  f("soy-sauce", "soy sauce, shoyu", plain),
  f("worcestershire-sauce", "Worcestershire sauce", plain),
  f("cinnamon", "cinnamon", { "dried*": ["cinnamon stick"], "dried-ground": [] }),
  f("turmeric", "turmeric", { "dried-ground*": [], fresh: [] }),
  f(
    "chilli",
    "chili pepper",
    { "fresh*": [], dried: [], "dried-ground": [], "dried-smoked-ground": [] },
    { names: { en: ["chili pepper"], "en-GB": ["chilli"] } },
  ),
  f("broccoli", "broccoli", { "fresh*": [], frozen: [] }),
  f("parmesan", "Parmesan, Parmigiano", { "aged*": [], "aged-grated": [] }),
  f("cornstarch", "cornstarch", plain, { names: { en: ["cornstarch"], "en-GB": ["cornflour"] } }),
  f("corn-flour", "corn flour", plain),
  f("breadcrumb", "bread crumbs", plain),
  f("bread", "bread", plain),
  f("cream-of-tartar", "cream of tartar", plain),
  f("half-and-half", "half-and-half", fresh),
  f("parsley", "parsley", { "fresh*": [], dried: [] }),
  f("clove", "clove", { "dried*": [], "dried-ground": [] }),
  f("garlic", "garlic", { "fresh*": [], "dried-powder": [] }),
  f("white-wine", "white wine", plain, { tags: ["alcohol"] }),
  f("onion", "onion", fresh),
  f("mushroom", "mushroom", fresh),
  f("eggplant", "eggplant", fresh, { names: { en: ["eggplant"], "en-GB": ["aubergine"] } }),
  f("yogurt", "yogurt", fresh),
  f("potato", "potato", fresh),
  f("anchovy", "anchovy", { "canned-in-oil*": [], "salt-cured": [] }),
  f("bay-leaf", "bay leaf", { "dried*": [], fresh: [] }),
  f("pea", "peas", { "fresh*": [], dried: [] }),
  f("oats", "rolled oats, oats", plain),
  f("beef", "beef", { "fresh*": [], "fresh-ground": ["ground beef"] }, { names: { en: ["beef"] } }),
  f("grape", "grape", fresh),
  f("goat", "goat", fresh),
  f("snail", "snail", fresh),
  f("naan", "naan", fresh),
  f("soup", "soup", fresh),
  f("apple", "apple", fresh),
  f("cheese", "cheese", fresh),
  f("pain-de-mie", "sandwich loaf", plain, { names: { en: ["sandwich loaf"], fr: ["pain", "coriandre"] } }),
  f("crisps", "potato chips", plain, { names: { en: ["potato chips", "chips"], "en-GB": ["crisps"] } }),
  f("fries", "French fries", { "frozen*": [] }, { names: { en: ["French fries"], "en-GB": ["chips"] } }),
  f("mustard", "mustard", plain),
  f("bokkum", "pain relish", plain, { names: { en: ["pain"] } }),
  f("katakana-ka", "ka", fresh, { names: { en: ["kaki thing"], ja: ["かき"] } }),
  f("katakana-ga", "ga", fresh, { names: { en: ["oyster thing"], ja: ["がき"] } }),
];

const words = parse(readFileSync(new URL("../../data/vocabulary/names.yaml", import.meta.url), "utf8")) as unknown;
const STATES = ["salt-cured", "in-oil"];

function statesOf(state: string): string[] {
  for (const long of STATES) {
    const at = state.indexOf(long);
    if (at >= 0)
      return [...statesOf(state.slice(0, Math.max(0, at - 1))), long, ...statesOf(state.slice(at + long.length + 1))];
  }
  return state === "" ? [] : state.split("-");
}

/** The names of these as a catalogue holds them in columns. */
export const namesOf = (all: readonly Ingredient[]): Store["names"] => ({
  eachShared: (at, each) => {
    const { food, part } = all[at] ?? {};
    const seen = new Set<string>();
    for (const n of all.flatMap((i) => (i.food === food && i.part === part ? i.names : []))) {
      if (n.of === "state" || seen.has(`${n.tag} ${n.text}`)) continue;
      seen.add(`${n.tag} ${n.text}`);
      each(n.text, n.tag);
    }
  },
  ownOf: (at) => ({ en: (all[at]?.names ?? []).filter((n) => n.of === "state").map((n) => n.text) }),
  unlisted: (at) => [all[at]?.name.us ?? "", all[at]?.name.gb ?? ""],
});

/** A catalogue of these shelves, in the shape the rooms read. */
export function catalogueOf(
  shelves: readonly Shelf[],
  locale: "en-US" | "en-GB" = "en-US",
  moved: Readonly<Record<string, string>> = {},
): Catalogue {
  const ingredients = shelves.flatMap((shelf) =>
    Object.entries(shelf.states).map(([written, own]) => {
      const isDefault = written.endsWith("*");
      const bare = written.replace("*", "");
      const [part, state] = bare.includes(":") ? (bare.split(":") as [string, string]) : [undefined, bare];
      const above = part === undefined ? shelf.names : { en: shelf.parts?.[part] ?? [] };
      const of = part === undefined ? ("food" as const) : ("part" as const);
      const us =
        (isDefault ? above["en"]?.[0] : own[0]) ?? `${state.replaceAll("-", " ")} ${above["en"]?.[0] ?? shelf.food}`;
      return {
        id: `${part === undefined ? shelf.food : `${shelf.food}.${part}`}/${state}`,
        food: shelf.food,
        ...(part === undefined ? {} : { part }),
        state: statesOf(state),
        isDefault,
        name: { us, gb: (isDefault && above["en-GB"]?.[0]) || us },
        names: [
          ...own.map((text) => ({ tag: "en", text, of: "state" as const })),
          ...Object.entries(above).flatMap(([tag, list]) => list.map((text) => ({ tag, text, of }))),
        ],
        tags: new Set(shelf.tags ?? []),
        origin: new Set<string>(),
        kinds: [],
        contains: ({ milk: ["milk"], bread: ["wheat"] } as Record<string, string[]>)[shelf.food] ?? [],
      };
    }),
  );
  ingredients.sort((a, b) => (a.id < b.id ? -1 : 1));
  const full = ingredients.map((i, index) => ({ ...i, index })) as unknown as Ingredient[];
  const store = {
    size: full.length,
    locale,
    ingredients: full,
    byId: new Map(full.map((i) => [i.id, i])),
    names: namesOf(full),
    tombstones: new Map(Object.entries(moved)),
    nameOf: (i: Ingredient) => (locale === "en-GB" ? i.name.gb : i.name.us),
    tables: { names: words },
  } as unknown as Store;
  const catalogue = { size: full.length, locale } as unknown as Catalogue;
  Object.defineProperty(catalogue, Symbol.for("steadfare.store"), { value: store });
  return catalogue;
}
