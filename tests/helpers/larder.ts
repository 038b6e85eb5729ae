// A larder made by hand: foods with measures, yields and procedures, so that reading, weighing and converting are tested
// apart from the data. The grams are round figures made up for the tests. Naming is the real room of names.
import { readFileSync } from "node:fs";
import { parse } from "yaml";
import type { Figure, Ingredient, Procedure, Store } from "../../src/catalogue/store.js";
import { type Lookup, lookupOf } from "../../src/portion/index.js";
import { namesOf } from "./pantry.js";
import type { Catalogue, IngredientId, RoleId, SourceRef } from "../../src/types.js";

const made: SourceRef = { key: "judgement", at: "made up for tests" };

interface Row {
  readonly names?: string;
  readonly part?: string;
  readonly kinds?: string;
  readonly role?: RoleId;
  readonly m?: Readonly<Record<string, number>>;
  readonly usual?: string;
  readonly edible?: number;
  readonly cooked?: number;
  readonly ready?: readonly [by: string, factor: number];
  readonly becomes?: readonly (readonly [to: string, by: string, factor: number])[];
  readonly minutes?: Readonly<Record<string, number>>;
  readonly density?: number;
  readonly other?: true;
}
const cup = (g: number, more: Readonly<Record<string, number>> = {}) => ({ cup: g, ...more });

/** id → what is known. The first listed state of a food is its default unless `other`. */
const ROWS: Readonly<Record<string, Row>> = {
  "onion/fresh": {
    names: "onion, yellow onion",
    role: "aromatic",
    m: { piece: 110, "piece large": 150, "piece small": 70, "cup chopped": 160, "cup sliced": 115 },
    usual: "piece",
    edible: 0.9,
    cooked: 0.9,
  },
  "shallot/fresh": { names: "shallot", role: "aromatic", m: { piece: 30, "tbsp chopped": 10 } },
  "scallion/fresh": {
    names: "scallion, spring onion",
    role: "aromatic",
    m: { piece: 15, bunch: 100, "cup chopped": 100 },
  },
  "garlic/fresh": {
    names: "garlic",
    role: "aromatic",
    m: { clove: 3, "piece head": 45, tsp: 2.8, cup: 136 },
    usual: "clove",
  },
  "ginger/fresh": {
    names: "ginger, fresh ginger, root ginger",
    role: "aromatic",
    m: { "piece inch": 15, tbsp: 6, tsp: 2 },
  },
  "carrot/fresh": {
    names: "carrot",
    role: "bulk vegetable",
    m: { piece: 61, "cup chopped": 128, "cup grated": 110, "cup sliced": 122 },
    usual: "piece",
    edible: 0.89,
    cooked: 0.9,
  },
  "celery/fresh": {
    names: "celery",
    role: "crunchy stem",
    m: { "piece stalk": 40, "piece head": 450, "cup chopped": 101 },
  },
  "potato/fresh": {
    names: "potato, floury potato",
    role: "starch base",
    m: { piece: 173, "piece large": 300, "piece small": 138, "cup chopped": 150 },
    usual: "piece",
    edible: 0.75,
    cooked: 0.98,
    minutes: { boil: 20 },
  },
  "tomato/fresh": {
    names: "tomato",
    role: "bulk vegetable",
    m: { piece: 123, "piece large": 182, "piece small": 91, "cup chopped": 180 },
    usual: "piece",
  },
  "tomato/canned": { names: "canned tomatoes", other: true, m: { can: 400, cup: 240, "can drained": 240 } },
  "tomato/canned-chopped": {
    names: "chopped canned tomatoes, tinned chopped tomatoes",
    other: true,
    m: { can: 400, cup: 240 },
    usual: "can",
  },
  "tomato-paste/pantry": { names: "tomato paste, tomato puree", m: { tbsp: 16, can: 170 } },
  "red-bell-pepper/fresh": {
    names: "red bell pepper, red pepper",
    m: { piece: 119, "cup chopped": 149 },
    usual: "piece",
  },
  "kale/fresh": {
    names: "kale, curly kale",
    role: "leafy green",
    m: { bunch: 250, "cup chopped": 67, "piece leaf": 20 },
    usual: "bunch",
    edible: 0.72,
    cooked: 0.8,
    minutes: { braise: 20 },
  },
  "spinach/fresh": { names: "spinach, baby spinach", role: "leafy green", m: { cup: 30, bunch: 340, packet: 284 } },
  "white-cabbage/fresh": {
    names: "cabbage, white cabbage",
    role: "leafy green",
    m: { "piece head": 900, "cup chopped": 89, "cup shredded": 70 },
    usual: "piece head",
  },
  "cauliflower/fresh": {
    names: "cauliflower",
    role: "bulk vegetable",
    m: { "piece head": 588, "cup chopped": 107 },
    usual: "piece head",
  },
  "corn/fresh": { names: "corn, sweetcorn, corn on the cob", m: { "piece ear": 100, cup: 154 } },
  "avocado/fresh": { names: "avocado", m: { piece: 150, "cup mashed": 230 } },
  "mushroom/fresh": { names: "mushroom, button mushroom", m: { piece: 18, "cup sliced": 70 }, role: "umami seasoning" },
  "porcini/fresh": { names: "porcini, porcini mushroom", m: { piece: 40 } },
  "porcini/dried": {
    names: "dried porcini",
    other: true,
    role: "umami seasoning",
    m: { cup: 28 },
    ready: ["soak-mushrooms", 4],
  },
  "parsley/fresh": {
    names: "parsley, flat-leaf parsley",
    kinds: "herb,plant,food",
    role: "herb",
    m: { bunch: 60, "piece sprig": 1, cup: 30, "tbsp chopped": 3.8 },
  },
  "thyme/fresh": {
    names: "thyme",
    kinds: "herb,plant,food",
    role: "herb",
    m: { "piece sprig": 0.8, tsp: 0.8, bunch: 25 },
  },
  "thyme/dried": { names: "dried thyme", other: true, role: "herb", m: { tsp: 1, tbsp: 2.7 } },
  "coriander/fresh": {
    names: "cilantro, coriander leaves",
    kinds: "herb,plant,food",
    role: "herb",
    m: { bunch: 60, cup: 16 },
  },
  "bay-leaf/dried": { names: "bay leaf", role: "herb", m: { "piece leaf": 0.2, piece: 0.2 } },
  "mint/fresh": { names: "mint", kinds: "herb,plant,food", role: "herb", m: { bunch: 50, "piece leaf": 0.1, cup: 25 } },
  "lemon/fresh": { names: "lemon", m: { piece: 100, "piece wedge": 8 }, usual: "piece" },
  "lemon.juice/fresh": { names: "lemon juice", part: "juice", role: "acid", m: { tbsp: 15, cup: 244, piece: 48 } },
  "lemon.zest/fresh": { names: "lemon zest", part: "zest", m: { tbsp: 6, tsp: 2, piece: 6 } },
  "lime/fresh": { names: "lime", m: { piece: 67 } },
  "lime.juice/fresh": { names: "lime juice", part: "juice", role: "acid", m: { tbsp: 15, piece: 44 } },
  "lime.zest/fresh": { names: "lime zest", part: "zest", m: { tsp: 2, piece: 4 } },
  "orange/fresh": { names: "orange", m: { piece: 140 } },
  "orange.zest/fresh": { names: "orange zest", part: "zest", m: { tbsp: 6, piece: 9 } },
  "orange.juice/fresh": { names: "orange juice", part: "juice", m: { cup: 248, piece: 86 } },
  "apple/fresh": { names: "apple", m: { piece: 182, "cup sliced": 109 } },
  "banana/fresh": { names: "banana", m: { piece: 118, "cup mashed": 225 } },
  "raisin/dried": { names: "raisins, raisin", m: { cup: 145, "cup packed": 165 } },
  "egg/fresh": {
    names: "egg",
    kinds: "egg,animal,food",
    role: "binder",
    m: { piece: 50, "piece large": 50, "piece extra-large": 56, "piece small": 38 },
    usual: "piece large",
  },
  "egg.white/fresh": { names: "egg white", part: "white", kinds: "egg,animal,food", m: { piece: 33, tbsp: 15 } },
  "egg.yolk/fresh": { names: "egg yolk", part: "yolk", kinds: "egg,animal,food", m: { piece: 17, tbsp: 15 } },
  "milk/fresh": { names: "milk, whole milk", role: "liquid", m: cup(244) },
  "cream/fresh": { names: "heavy cream, double cream, cream", role: "enrichment", m: cup(238, { tbsp: 15 }) },
  "half-and-half/fresh": { names: "half-and-half", role: "liquid", m: cup(242) },
  "butter/fresh": {
    names: "butter, unsalted butter",
    role: "fat",
    m: { stick: 113, tbsp: 14.2, cup: 227 },
    usual: "tbsp",
  },
  "buttermilk/fresh": { names: "buttermilk", role: "liquid", m: cup(245) },
  "yogurt/fresh": { names: "plain yogurt, yogurt, natural yoghurt", m: cup(245) },
  "parmesan/aged": {
    names: "parmesan, parmesan cheese",
    role: "umami seasoning",
    m: { "cup grated": 100, "tbsp grated": 5 },
  },
  "cheddar/aged": { names: "cheddar, cheddar cheese", m: { "cup grated": 113, slice: 28 } },
  "flour/pantry": { names: "all-purpose flour, plain flour, flour", role: "structure", m: cup(125) },
  "sugar/pantry": { names: "sugar, granulated sugar", role: "sweetener", m: cup(200, { tsp: 4.2 }) },
  "brown-sugar/pantry": { names: "brown sugar", role: "sweetener", m: { "cup packed": 220, cup: 145 } },
  "honey/pantry": { names: "honey", role: "sweetener", m: { cup: 339, tbsp: 21 } },
  "salt/pantry": {
    names: "salt, fine salt, sea salt",
    role: "salt seasoning",
    m: { tsp: 6, tbsp: 18, cup: 292 },
    usual: "tsp",
  },
  "black-pepper/dried-ground": {
    names: "black pepper, ground black pepper, pepper",
    role: "spice",
    m: { tsp: 2.3, tbsp: 6.9 },
  },
  "cumin/dried-ground": { names: "ground cumin, cumin", role: "spice", m: { tsp: 2.2, tbsp: 6 } },
  "clove/dried": { names: "clove, whole clove", role: "spice", m: { piece: 0.1, tsp: 2.1 } },
  "cinnamon/dried": { names: "cinnamon stick, cinnamon", role: "spice", m: { stick: 3 } },
  "chilli/dried-flakes": { names: "chilli flakes, red pepper flakes", role: "heat", m: { tsp: 1.8 } },
  "saffron/dried": { names: "saffron", role: "spice", m: { tsp: 0.7, tbsp: 2.1 } },
  "baking-powder/pantry": { names: "baking powder", role: "leavener", m: { tsp: 4.6 } },
  "yeast/dried": {
    names: "active dry yeast, dried yeast",
    role: "leavener",
    m: { packet: 7, tsp: 3.1 },
    usual: "packet",
  },
  "gelatin/pantry": { names: "powdered gelatin, gelatin, gelatine", role: "gelling agent", m: { packet: 7, tbsp: 9 } },
  "gelatin/sheet": {
    names: "leaf gelatine, gelatin sheet",
    other: true,
    role: "gelling agent",
    m: { "piece sheet": 2.5 },
  },
  "cornstarch/pantry": { names: "cornstarch, cornflour", role: "thickener", m: { tbsp: 8, cup: 128 } },
  "olive-oil/pantry": {
    names: "olive oil, extra-virgin olive oil",
    kinds: "oil,fat,food",
    role: "frying medium",
    m: { tbsp: 13.5, cup: 216 },
  },
  "vegetable-oil/pantry": {
    names: "vegetable oil, oil, neutral oil",
    kinds: "oil,fat,food",
    role: "frying medium",
    m: { tbsp: 13.6, cup: 218 },
  },
  "soy-sauce/pantry": { names: "soy sauce", role: "umami seasoning", m: { tbsp: 16, tsp: 5.3 } },
  "fish-sauce/pantry": { names: "fish sauce", role: "umami seasoning", m: { tbsp: 18 } },
  "red-wine-vinegar/pantry": { names: "red wine vinegar", kinds: "vinegar,acid,food", role: "acid", m: { tbsp: 14.9 } },
  "white-wine-vinegar/pantry": {
    names: "white wine vinegar",
    kinds: "vinegar,acid,food",
    role: "acid",
    m: { tbsp: 14.9 },
  },
  "red-wine/pantry": { names: "red wine", kinds: "drink,food", role: "liquid", m: cup(236) },
  "white-wine/pantry": { names: "white wine, dry white wine", kinds: "drink,food", role: "liquid", m: cup(235) },
  "water/pantry": { names: "water", kinds: "drink,food", role: "liquid", m: cup(237) },
  "chicken-stock/pantry": { names: "chicken stock, chicken broth", kinds: "stock,food", role: "liquid", m: cup(240) },
  "vegetable-stock/pantry": {
    names: "vegetable stock, vegetable broth",
    kinds: "stock,food",
    role: "liquid",
    m: cup(240),
  },
  "stock-cube/pantry": { names: "stock cube, bouillon cube", m: { piece: 10, "piece cube": 10 } },
  "coconut-milk/canned": { names: "coconut milk", role: "liquid", m: { can: 400, cup: 226 } },
  "white-rice/pantry": {
    names: "white rice, rice, long-grain rice",
    role: "starch base",
    m: cup(185),
    cooked: 2.8,
    becomes: [["white-rice/fresh-cooked", "simmer", 2.8]],
  },
  "white-rice/fresh-cooked": { names: "cooked rice", other: true, m: cup(158) },
  "pasta/dried": {
    names: "pasta, dried pasta, spaghetti",
    role: "starch base",
    m: { cup: 100, packet: 500 },
    cooked: 2.2,
    minutes: { boil: 10 },
  },
  "white-bread/fresh": { names: "bread, white bread", m: { slice: 29, "cup cubed": 35 }, usual: "slice" },
  "breadcrumbs/dried": { names: "breadcrumbs, dry breadcrumbs", m: cup(108) },
  "black-bean/dried": {
    names: "dried black beans",
    other: true,
    role: "main protein",
    m: cup(194),
    ready: ["soak-beans", 2],
    cooked: 1.2,
    minutes: { simmer: 90 },
    becomes: [["black-bean/canned", "boil-beans", 2.5]],
  },
  "black-bean/canned": {
    names: "black beans, canned black beans",
    role: "main protein",
    m: { can: 425, "can drained": 255, cup: 172 },
  },
  "chickpea/canned": {
    names: "chickpeas, canned chickpeas",
    role: "main protein",
    m: { can: 400, "can drained": 240, cup: 164 },
  },
  "pea/frozen": { names: "frozen peas, peas", role: "bulk vegetable", m: cup(134) },
  "chicken-thigh/fresh": {
    names: "chicken thigh, boneless skinless chicken thigh",
    kinds: "poultry,animal,food",
    role: "main protein",
    m: { piece: 110 },
  },
  "chicken/fresh": {
    names: "chicken, whole chicken",
    kinds: "poultry,animal,food",
    role: "main protein",
    m: { piece: 1500 },
  },
  "ground-beef/fresh": {
    names: "ground beef, minced beef",
    kinds: "beef,meat,animal,food",
    role: "main protein",
    m: cup(225),
  },
  "cube-steak/fresh": { names: "cube steak", kinds: "beef,meat,animal,food", role: "main protein", m: { piece: 115 } },
  "bacon/cured": { names: "bacon, streaky bacon", kinds: "pork,meat,animal,food", m: { slice: 28 }, usual: "slice" },
  "cod/fresh": {
    names: "cod, cod fillet",
    kinds: "white fish,finfish,animal,food",
    role: "main protein",
    m: { piece: 231, "piece portion": 150 },
    usual: "piece portion",
    cooked: 0.78,
    minutes: { simmer: 8 },
  },
  "cod/frozen": {
    names: "frozen cod",
    other: true,
    kinds: "white fish,finfish,animal,food",
    role: "main protein",
    m: { piece: 115 },
    ready: ["thaw", 0.95],
    cooked: 0.76,
    minutes: { simmer: 8 },
  },
  "cod/salt-cured": {
    names: "salt cod",
    other: true,
    kinds: "white fish,finfish,animal,food",
    role: "main protein",
    m: { piece: 80 },
    ready: ["desalt-fish", 1.3],
    cooked: 0.8,
    minutes: { simmer: 15 },
  },
  "salmon/fresh": {
    names: "salmon, salmon fillet",
    kinds: "oily fish,finfish,animal,food",
    role: "main protein",
    m: { piece: 170, "piece fillet": 170 },
  },
  "anchovy/canned-in-oil": {
    names: "anchovies, anchovy, anchovy fillet",
    kinds: "oily fish,finfish,animal,food",
    role: "umami seasoning",
    m: { piece: 4, can: 45, tbsp: 16 },
  },
  "almond/pantry": { names: "almonds, almond", kinds: "nut,plant,food", m: { cup: 143, "cup sliced": 92 } },
  "walnut/pantry": { names: "walnuts, walnut", kinds: "nut,plant,food", m: { "cup chopped": 117, "cup halves": 100 } },
  "vegan-butter/pantry": { names: "vegan butter", role: "fat", m: { tbsp: 14, cup: 227 } },
  "maple-syrup/pantry": { names: "maple syrup", role: "sweetener", density: 1.32 },
  "nori/dried": { names: "nori", m: { "piece sheet": 2.5 } },
  "radish/fresh": { names: "radish", role: "crunchy stem", m: {} },
  "five-spice/dried-ground": { names: "five-spice powder, five spice", role: "spice", m: { tsp: 2 } },
};

const procedure = (
  id: string,
  active: number,
  waiting: number,
  byProduct?: Procedure["byProduct"],
): [string, Procedure] => [
  id,
  {
    id,
    name: id,
    skip: `Skip: ${id}.`,
    add: `Do: ${id}.`,
    active,
    waiting,
    source: made,
    ...(byProduct === undefined ? {} : { byProduct }),
  },
];
const PROCEDURES = new Map([
  procedure("trim", 3, 0),
  procedure("thaw", 2, 600),
  procedure("simmer", 3, 17),
  procedure("soak-beans", 2, 480),
  procedure("boil-beans", 5, 90),
  procedure("desalt-fish", 10, 1440),
  procedure("soak-mushrooms", 2, 30, {
    name: "mushroom soaking liquid",
    replaceWith: "vegetable-stock/pantry",
    gramsPerGram: 8,
    role: "umami seasoning",
  }),
]);
const LONG_STATES = ["salt-cured", "in-oil"];
function statesOf(state: string): readonly string[] {
  const long = LONG_STATES.find((l) => state.includes(l));
  if (long === undefined) return state.split("-").filter((s) => s !== "");
  return state
    .split(long)
    .flatMap((s, n) => [
      ...(n > 0 ? [long] : []),
      ...statesOf(s.startsWith("-") ? s.slice(1) : s.endsWith("-") ? s.slice(0, -1) : s),
    ]);
}

function build(id: string, row: Row, index: number): Ingredient & { density?: number } {
  const [head = "", state = ""] = id.split("/");
  const [food = "", part] = head.split(".");
  const names = (row.names ?? food).split(", ");
  const name = names[0] ?? food;
  return {
    index,
    id: id as IngredientId,
    food,
    ...(part === undefined ? {} : { part }),
    state: statesOf(state),
    isDefault: row.other !== true,
    name: { us: name, gb: name },
    names: names.map((text) => ({
      tag: "en",
      text,
      of: part !== undefined ? ("part" as const) : row.other === true ? ("state" as const) : ("food" as const),
    })),
    kind: (row.kinds ?? "food").split(",")[0] ?? "food",
    kinds: (row.kinds ?? "food").split(","),
    roles: row.role === undefined ? [] : [{ role: row.role, weight: 1 }],
    can: new Set<string>(),
    cannot: new Set<string>(),
    texture: {},
    flavour: {},
    aroma: {},
    dominant: [],
    origin: new Set<string>(),
    tags: new Set<string>(),
    contains: [],
    mayContain: [],
    unknownAllergens: [],
    measures: Object.entries(row.m ?? {}).map(([key, grams]) => {
      const [unit = "", ...label] = key.split(" ");
      return { unit, label: label.join(" "), grams, source: made };
    }),
    ...(row.usual === undefined ? {} : { usual: row.usual }),
    edible: row.edible ?? 1,
    ...(row.cooked === undefined ? {} : { cooked: row.cooked }),
    ...(row.ready === undefined ? {} : { ready: { by: [row.ready[0]], yield: row.ready[1], source: made } }),
    becomes: (row.becomes ?? []).map(([to, by, factor]) => ({
      to: to as IngredientId,
      by,
      yield: factor,
      source: made,
    })),
    minutes: row.minutes ?? {},
    cost: 3,
    athand: 1,
    traditions: [],
    ...(row.density === undefined ? {} : { density: row.density }),
  };
}

const words = parse(readFileSync(new URL("../../data/vocabulary/names.yaml", import.meta.url), "utf8")) as unknown;

/** The larder as an opened catalogue. */
export function larder(
  locale: "en-US" | "en-GB" = "en-US",
  measures: "us" | "metric" = locale === "en-GB" ? "metric" : "us",
): Catalogue {
  const ingredients = Object.keys(ROWS)
    .sort()
    .map((id, index) => build(id, ROWS[id] as Row, index));
  const store = {
    size: ingredients.length,
    locale,
    measures,
    ingredients,
    byId: new Map(ingredients.map((i) => [i.id as string, i as Ingredient])),
    procedures: PROCEDURES,
    swaps: [],
    columns: {},
    figure: (i: Ingredient, name: string): Figure | null => {
      const { density } = i as { density?: number };
      return name === "density" && density !== undefined ? { value: density, source: made } : null;
    },
    tombstones: new Map(),
    names: namesOf(ingredients),
    nameOf: (i: Ingredient) => (locale === "en-GB" ? i.name.gb : i.name.us),
    tables: { names: words },
  } as unknown as Store;
  const catalogue = { size: store.size, locale, measures } as unknown as Catalogue;
  Object.defineProperty(catalogue, Symbol.for("steadfare.store"), { value: store });
  return catalogue;
}
export const larderLookup = (locale: "en-US" | "en-GB" = "en-US", measures?: "us" | "metric"): Lookup =>
  lookupOf(larder(locale, measures));
