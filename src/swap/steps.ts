import type { Ingredient } from "../catalogue/index.js";
import { dose } from "../dose/index.js";
import type { Swap } from "../types.js";
import type { Ask } from "./ask.js";
import { portionFor } from "./measure.js";

interface Use {
  readonly ingredient: Ingredient;
  readonly grams: number;
}
type Prep = Swap["prep"][number];

/** Forms that are in small pieces already. */
export const FINE: readonly string[] = [
  "ground",
  "powder",
  "granules",
  "flakes",
  "crumbs",
  "paste",
  "puree",
  "minced",
  "grated",
  "instant",
  "concentrate",
];
const GROUND: readonly string[] = ["ground", "powder"];
const LIFT = "lift-out-leaf";
const isFine = (i: Ingredient): boolean => FINE.some((w) => i.state.includes(w));

const SLURRY = "make-slurry";
const POT: readonly string[] = ["simmer", "stew", "braise", "stir-fry", "boil", "slow cooker"];
/** Whether something wet is thickened: only there does a starch meet a hot liquid. */
const thickens = (ask: Ask): boolean =>
  (ask.technique === undefined ? ask.roles[0]?.role === "thickener" : POT.includes(ask.technique)) &&
  ask.roles.some((r) => r.role === "thickener" && r.weight >= 0.5);

/** A procedure that belongs to the job as well as to the food. */
export const wanted = (ask: Ask, procedure: string): boolean => procedure !== SLURRY || thickens(ask);

/** Procedures that make a dry thing up with water, and the words of each that say so. */
const MADE_UP: Readonly<Record<string, readonly [words: string, water: string]>> = {
  dilute: ["with water to ordinary strength", "with {} water"],
  "dissolve-powder": ["a little hot water", "{} hot water"],
  "mix-dried-milk": ["cold water", "{} cold water"],
  "wet-dried-egg": ["the water", "{} water"],
};
const GEL = "soak-in-water-to-gel";
const WATER = "water/pantry";
const DRY = 0.25;
const dry = (ask: Ask): boolean =>
  GROUND.some((w) => ask.item.state.includes(w)) || !(dose(ask.store, ask.item, "water") >= DRY);

/** What a part must go through before use. Water of the mixture's own makes a powder up, and dry for dry needs none. */
export function toDo(ask: Ask, use: Use, uses: readonly Use[]): readonly string[] {
  const i = use.ingredient;
  const wetted = uses.some((u) => u.ingredient.id === WATER);
  const grind = grinds(ask, i);
  const own = (i.ready?.by ?? []).filter((id) => {
    if (!wanted(ask, id)) return false;
    if (Object.hasOwn(MADE_UP, id)) return !wetted && !dry(ask);
    return !(grind && id === LIFT);
  });
  return grind ? ["grind", ...own] : own;
}

/** Whole seed, bark or root where the recipe has it ground: it must be ground, or nobody tastes it and somebody bites on it. */
function grinds(ask: Ask, use: Ingredient): boolean {
  const spice = (i: Ingredient): boolean => i.roles.some((r) => r.role === "spice" && r.weight >= 0.5);
  return (
    GROUND.some((w) => ask.item.state.includes(w)) &&
    spice(ask.item) &&
    spice(use) &&
    use.state[0] === "dried" &&
    !isFine(use) &&
    // Saffron is bloomed and a vanilla bean scraped, not ground.
    (use.ready?.by ?? []).every((id) => id === LIFT) &&
    !(dose(ask.store, use, "water") >= DRY)
  );
}

/** The text of a step with the water it takes, as a cook would measure it. */
export function wetText(ask: Ask, id: string, text: string, uses: readonly Use[]): string {
  // The seeds swell in the water that is measured with them.
  if (id === GEL && uses.some((u) => u.ingredient.id === WATER))
    return text.replace("three times its volume of water", "the water");
  const words = Object.hasOwn(MADE_UP, id) ? MADE_UP[id] : undefined;
  const water = ask.store.byId.get(WATER);
  const use = uses.find((u) => u.ingredient.ready?.by.includes(id) === true);
  if (!words || !water || !use) return text;
  const grams = use.grams * ((use.ingredient.ready?.yield ?? 1) - 1);
  if (!(grams > 0)) return text;
  const { measure } = portionFor(ask, water, grams);
  return text.replace(words[0], words[1].replace("{}", measure.text));
}

/** Words for handling: a short clause of one of these that a step says already says nothing more. */
const VERBS: readonly string[] = [
  "soak",
  "rinse",
  "drain",
  "thaw",
  "squeeze",
  "grate",
  "crush",
  "grind",
  "press",
  "peel",
  "strip",
  "toast",
  "dissolve",
  "crumble",
  "bloom",
  "stand",
];
const SHORT = 5;

/** A cook's note without the clauses that the added steps say already; whole when none is, empty when all are. */
export function unsaid(note: string, prep: readonly Prep[]): string {
  const done = prep
    .filter((p) => p.kind === "add")
    .map((p) => p.text.toLowerCase().replace("leave", "stand"))
    .join(" ");
  const clauses = note.split(/[.;,]| and /).map((c) => c.trim());
  const kept = clauses.filter((c) => {
    const words = c.toLowerCase().split(" ");
    const verb = VERBS.find((v) => words.includes(v));
    return c !== "" && !(verb !== undefined && words.length <= SHORT && done.includes(verb));
  });
  if (kept.length === clauses.filter((c) => c !== "").length) return note;
  const rest = kept.join(", ");
  return rest === "" ? "" : `${rest.charAt(0).toUpperCase()}${rest.slice(1)}.`;
}
