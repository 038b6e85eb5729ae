import type { Ingredient } from "../catalogue/index.js";
import { AT, WIDTH, doseMatrix, type Axis } from "../dose/index.js";
import { refusalFor } from "../safety/index.js";
import type { Swap } from "../types.js";
import type { Ask } from "./ask.js";
import { portionFor } from "./measure.js";

type Correction = Swap["corrections"][number];
type Uses = readonly { readonly ingredient: Ingredient; readonly grams: number }[];
interface Rule {
  readonly axis: Axis;
  /** Ids tried in turn for what to add or hold back. */
  readonly with: readonly string[];
  /** Below this share of the dish (g per 100 g) and below these grams nobody would notice. */
  readonly step: number;
  readonly least: number;
  /** Only for these jobs or techniques; always when neither is given. */
  readonly when: (ask: Ask) => boolean;
  /** Whether a dish whose lines nobody told surely has some to hold back. */
  readonly there: (ask: Ask) => boolean;
  readonly more: string;
  readonly less: string;
}
const BATTER: readonly string[] = ["bake", "whip", "set cold"];
const batter = (ask: Ask): boolean => ask.technique !== undefined && BATTER.includes(ask.technique);
/** Where fat is weighed against flour: elsewhere a leaner sauce is a leaner sauce, and no cook stirs butter into a salad to mend it. */
const crumb = (ask: Ask): boolean => ask.technique === "bake" && ask.taste !== "savoury";
const has = (ask: Ask, roles: readonly string[]): boolean =>
  ask.roles.some((r) => r.weight >= 0.5 && roles.includes(r.role));

const RULES: readonly Rule[] = [
  {
    axis: "salt",
    with: ["salt/pantry"],
    step: 0.25,
    least: 1.4,
    // Bread is salted in its dough: nobody sprinkles a tortilla for want of it.
    when: (ask) => !ask.item.kinds.includes("bread"),
    there: () => true,
    more: "the stand-in brings salt of its own",
    less: "the missing one would have salted the dish",
  },
  {
    axis: "water",
    with: ["water/pantry"],
    step: 3,
    least: 12,
    when: (ask) => batter(ask) || (ask.technique === undefined && has(ask, ["liquid", "sweetener"])),
    there: () => true,
    more: "the stand-in is wetter",
    less: "the stand-in is drier",
  },
  {
    axis: "sweetness",
    with: ["sugar/pantry"],
    step: 1.5,
    least: 4,
    when: (ask) =>
      !has(ask, ["sweetener", "bulk vegetable", "starch base", "main protein", "leafy green", "crunchy stem"]),
    there: (ask) => ask.taste === "sweet",
    more: "the stand-in is sweeter",
    less: "the missing one was sweeter",
  },
  {
    axis: "fat",
    with: ["butter/fresh-unsalted", "vegetable-oil/pantry"],
    step: 2.5,
    least: 7,
    when: (ask) => has(ask, ["enrichment", "fat"]) && (crumb(ask) || fatOf(ask) !== undefined),
    there: crumb,
    more: "the stand-in is richer",
    less: "the stand-in is leaner",
  },
  {
    axis: "acid",
    with: ["lemon.juice/fresh", "white-vinegar/pantry"],
    step: 0.12,
    least: 0.25,
    when: (ask) => !has(ask, ["acid", "main protein", "bulk vegetable", "leafy green"]),
    there: () => false,
    more: "the stand-in is sharper",
    less: "the missing one was sharper",
  },
];

/** Where salt and acid keep harm out, neither is changed to taste. */
const KEEPS: readonly string[] = ["can", "pickle", "ferment", "cure"];

/** The fat the dish itself is made with, as far as its lines were told. */
const fatOf = (ask: Ask): Ingredient | undefined =>
  ask.dish.find(
    (l) => l.ingredient.id !== ask.item.id && l.ingredient.roles.some((r) => r.role === "fat" && r.weight >= 0.7),
  )?.ingredient;

const AS_GROWN: readonly string[] = ["fresh", "frozen", "dried"];
const GROWN: readonly string[] = ["main protein", "bulk vegetable", "leafy green", "crunchy stem", "starch base"];
/** g per g: more than flesh and leaves hold of themselves. */
const SALTED = 0.015;
/** Raw flesh, roots and leaves hold some sodium, and nobody salts a dish less for it. */
function unsalted(i: Ingredient, salt: number): boolean {
  return salt < SALTED && AS_GROWN.includes(i.state[0] ?? "") && GROWN.includes(i.roles[0]?.role ?? "");
}

function sum(ask: Ask, uses: Uses, axis: Axis): number {
  const matrix = doseMatrix(ask.store);
  return uses.reduce((s, u) => {
    const dose = matrix[u.ingredient.index * WIDTH + AT[axis]] as number;
    return axis === "salt" && unsalted(u.ingredient, dose) ? s : s + dose * u.grams;
  }, 0);
}

/** What to add or hold back: the dish's own fat before any other, and nothing that someone at the table avoids. */
function standFor(ask: Ask, rule: Rule, more: boolean): Ingredient | undefined {
  const own = rule.axis === "fat" ? fatOf(ask) : undefined;
  const options = ask.technique === undefined ? {} : { technique: ask.technique };
  // A dish told line by line and without dairy is not mended with butter.
  const dairy =
    !ask.dishKnown || ask.item.origin.has("dairy") || ask.dish.some((l) => l.ingredient.origin.has("dairy"));
  return [own, ...rule.with.map((id) => ask.store.byId.get(id))].find(
    (i) =>
      i !== undefined &&
      (dairy || !i.origin.has("dairy")) &&
      (more || !ask.dishKnown || gramsThere(ask, i) > 0) &&
      refusalFor(ask.store, i, ask.rules, options) === undefined,
  );
}
/** Grams of a food in the lines of the dish, the missing ingredient left out. */
const gramsThere = (ask: Ask, i: Ingredient): number =>
  ask.dish.reduce((s, l) => (l.ingredient.food === i.food && l.ingredient.id !== ask.item.id ? s + l.grams : s), 0);

/**
 * What the best amount leaves over, as changes to other lines. Grams are what to add; negative is what to hold back, never more than
 * the dish has when its lines are known.
 */
export function correctionsFor(ask: Ask, uses: Uses): Correction[] {
  const missing = [{ ingredient: ask.item, grams: ask.grams }];
  return RULES.flatMap((rule) => {
    if (!rule.when(ask)) return [];
    if ((rule.axis === "salt" || rule.axis === "acid") && KEEPS.includes(ask.technique ?? "")) return [];
    const d = sum(ask, uses, rule.axis) - sum(ask, missing, rule.axis);
    if (Number.isNaN(d) || Math.abs(d) < Math.max(rule.least, (rule.step * ask.dishGrams) / 100)) return [];
    if (d > 0 && !ask.dishKnown && !rule.there(ask)) return [];
    const stand = standFor(ask, rule, d < 0);
    if (!stand) return [];
    // What is mended with must not be what is missing, nor what stands in.
    if (stand.id === ask.item.id || uses.some((u) => u.ingredient.id === stand.id)) return [];
    const per = doseMatrix(ask.store)[stand.index * WIDTH + AT[rule.axis]] as number;
    if (!(per > 0)) return [];
    let grams = -d / per;
    if (grams < 0 && ask.dishKnown) grams = Math.max(grams, -gramsThere(ask, stand));
    // With no lines told, more liquid than the missing thing weighed is a guess too far.
    if (rule.axis === "water" && grams < -ask.grams && !ask.dishKnown) return [];
    if (Math.abs(grams) < 0.3) return [];
    const portion = portionFor(ask, stand, Math.abs(grams));
    return [
      {
        ingredient: { id: stand.id, name: ask.store.nameOf(stand) },
        grams: Math.sign(grams) * portion.grams,
        measure: portion.measure,
        why: grams < 0 ? rule.more : rule.less,
      },
    ];
  });
}
