import type { Ingredient } from "../catalogue/index.js";

/** How something is cooked, and whether the skin, bone and fat are taken off afterwards. */
export interface Style {
  /** undefined: cooked, no matter how. */
  readonly technique?: string;
  readonly meat: boolean;
}
/** A target in words taken apart: "duck meat, roasted, no skin" is duck, roasted, the meat alone. */
export interface Wish {
  /** What is left when the words of cooking and trimming are taken out, lower case. */
  readonly name: readonly string[];
  readonly cooked?: Style;
  /** Trimmed of what is not eaten. */
  readonly edible: boolean;
}

const by = (technique: string, words: string): (readonly [string, string])[] =>
  words.split(" ").map((w) => [w, technique]);
/** What a cook calls the done food, by the technique that made it. */
const DONE: ReadonlyMap<string, string> = new Map([
  ...by("roast", "roasted"),
  ...by("bake", "baked"),
  ...by("grill", "grilled broiled griddled barbecued barbequed charred chargrilled pan-grilled"),
  ...by("fry", "fried pan-fried pan-broiled pan-browned panfried browned sauteed sautéed seared sweated pan-seared"),
  ...by("deep-fry", "deep-fried"),
  ...by("stir-fry", "stir-fried"),
  ...by("braise", "braised pot-roasted"),
  ...by("stew", "stewed"),
  ...by("simmer", "simmered poached"),
  ...by("boil", "boiled blanched"),
  ...by("steam", "steamed microwaved"),
]);
const COOKED = new Set(["cooked", "done"]);
const TRIMMED = new Set(
  "edible trimmed peeled cleaned boned boneless deboned filleted shelled shucked pitted stoned seeded deseeded cored husked hulled stemmed topped podded skinned pared eaten".split(
    " ",
  ),
);
/** Taken off the cooked piece: what is left is the meat alone. */
const BARE = new Set(["lean", "skinless", "defatted"]);
/** What a cooked thing is shaped into, said of the same food. */
const SHAPES = new Set("patty patties burger burgers crumble crumbles mush porridge joint leftover".split(" "));
const SILENT = new Set(
  "a an and as by drained fat flesh for from from in is kernels no of off on only out part parts portion pulp removed skin the to weight whole with without bone bones bone-in bone-out rind shell heat dry moist method table uncooked raw fresh".split(
    " ",
  ),
);

const wordsOf = (text: string): string[] =>
  text
    .toLowerCase()
    .split(/[^\p{L}\p{N}-]/u)
    .filter((w) => w !== "" && w !== "-");

/** Reads a target phrase. Words said twice say nothing more; the longest technique said last wins. */
export function readWish(text: string): Wish {
  const words = wordsOf(text);
  const name: string[] = [];
  let technique: string | undefined;
  let cooked = false;
  let edible = false;
  let bare = false;
  let shape = false;
  let meat = false;
  words.forEach((w, at) => {
    // "deep fried", "stir fried", "pan broiled" written apart
    const pair = `${words[at - 1] ?? ""}-${w}`;
    const done = DONE.get(pair) ?? DONE.get(w);
    if (done !== undefined) technique = done;
    else if (COOKED.has(w)) cooked = true;
    else if (TRIMMED.has(w)) edible = true;
    else if (BARE.has(w) || (w === "skin" && ["no", "without"].includes(words[at - 1] ?? ""))) bare = true;
    else if (w === "only" && words[at - 1] === "meat") bare = true;
    else if (SHAPES.has(w)) shape = true;
    else if (w === "meat") meat = true;
    else if (!SILENT.has(w) && !["deep", "stir", "pan"].includes(w)) name.push(w);
  });
  // Chicken meat is meat without the skin, unless it says the skin is with it
  const alone = bare || (meat && !words.includes("skin"));
  const style = technique === undefined ? { meat: alone } : { technique, meat: alone };
  if (technique !== undefined || cooked || shape) return { name, edible, cooked: style };
  // "clam meat": the meat out of what it is sold in
  return { name, edible: edible || meat };
}

/** The state word of the vocabulary for what a technique made. */
export const stateOf = (technique: string): string | undefined => STATES[technique];
const STATES: Readonly<Record<string, string>> = {
  roast: "roasted",
  bake: "roasted",
  fry: "fried",
  "deep-fry": "fried",
  "stir-fry": "fried",
  boil: "boiled",
  steam: "steamed",
};

const singular = (w: string): string =>
  w.length > 3 && w.endsWith("s") && !w.endsWith("ss")
    ? w.endsWith("ies")
      ? `${w.slice(0, -3)}y`
      : w.slice(0, -1)
    : w;

/** Is every word of a target's name a word the source is called by too ("veal shank" of "veal shank, bone-in")? */
export function namesSame(wish: Wish, source: string, i: Ingredient): boolean {
  const known = new Set<string>();
  const add = (text: string): void => {
    for (const w of wordsOf(text)) for (const part of [w, ...w.split("-")]) known.add(singular(part));
  };
  add(source);
  for (const n of i.names) if (n.tag.startsWith("en")) add(n.text);
  add(i.food);
  i.kinds.forEach(add);
  i.origin.forEach(add);
  return wish.name.every((w) => known.has(singular(w)));
}

/** Techniques whose yields are near enough to stand for each other, nearest first. Common practice. */
const NEAR: Readonly<Record<string, readonly string[]>> = {
  roast: ["bake", "grill"],
  bake: ["roast", "grill"],
  grill: ["fry", "roast", "bake"],
  fry: ["grill", "stir-fry", "roast"],
  "stir-fry": ["fry", "grill"],
  "deep-fry": ["fry"],
  braise: ["stew", "simmer", "slow cooker"],
  stew: ["braise", "simmer", "slow cooker"],
  simmer: ["boil", "stew", "braise", "steam"],
  boil: ["simmer", "steam", "stew"],
  steam: ["boil", "simmer"],
};

/** What cooking in a style leaves, and by which technique it was measured; undefined where only the plain yield is known. */
export function styledYield(
  i: Ingredient,
  style: Style,
): { readonly technique: string; readonly row: Exclude<Ingredient["cookedBy"], undefined>[string] } | undefined {
  const rows = i.cookedBy ?? {};
  const order =
    style.technique === undefined
      ? Object.keys(rows).map((t) => (t.endsWith(" meat") ? t.slice(0, -5) : t))
      : [style.technique, ...(NEAR[style.technique] ?? [])];
  if (style.meat)
    for (const technique of order) {
      const row = rows[`${technique} meat`];
      if (row !== undefined) return { technique, row };
    }
  // "cooked" says no technique: the plain yield answers
  if (style.technique === undefined) return undefined;
  for (const technique of order) {
    const row = rows[technique];
    if (row !== undefined) return { technique, row };
  }
  return undefined;
}
