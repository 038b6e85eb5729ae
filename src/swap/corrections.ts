import type { Ingredient } from "../catalogue/index.js";
import { AT, WIDTH, doseMatrix, type Axis } from "../dose/index.js";
import { portionOf } from "../portion/index.js";
import { refusalFor } from "../safety/index.js";
import type { Swap } from "../types.js";
import type { Ask } from "./ask.js";

type Correction = Swap["corrections"][number];
interface Rule {
  readonly axis: Axis;
  /** Ids tried in turn for what to add or hold back. */
  readonly with: readonly string[];
  /** Below this share of the dish (g per 100 g) and below these grams nobody would notice. */
  readonly step: number;
  readonly least: number;
  /** Only for these jobs or techniques; always when neither is given. */
  readonly when: (ask: Ask) => boolean;
  readonly more: string;
  readonly less: string;
}
const BATTER: readonly string[] = ["bake", "whip", "set cold"];
const batter = (ask: Ask): boolean => ask.technique !== undefined && BATTER.includes(ask.technique);
const has = (ask: Ask, roles: readonly string[]): boolean =>
  ask.roles.some((r) => r.weight >= 0.5 && roles.includes(r.role));

const RULES: readonly Rule[] = [
  {
    axis: "salt",
    with: ["salt/pantry"],
    step: 0.12,
    least: 0.7,
    when: () => true,
    more: "the stand-in brings salt of its own",
    less: "the missing one would have salted the dish",
  },
  {
    axis: "water",
    with: ["water/pantry"],
    step: 3,
    least: 12,
    when: (ask) => batter(ask) || has(ask, ["liquid", "sweetener"]),
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
    more: "the stand-in is sweeter",
    less: "the missing one was sweeter",
  },
  {
    axis: "fat",
    with: ["butter/fresh-unsalted", "vegetable-oil/pantry"],
    step: 2.5,
    least: 7,
    when: (ask) => has(ask, ["enrichment", "fat"]),
    more: "the stand-in is richer",
    less: "the stand-in is leaner",
  },
  {
    axis: "acid",
    with: ["lemon.juice/fresh", "white-vinegar/pantry"],
    step: 0.12,
    least: 0.25,
    when: (ask) => !has(ask, ["acid", "main protein", "bulk vegetable", "leafy green"]),
    more: "the stand-in is sharper",
    less: "the missing one was sharper",
  },
];

/** Where salt and acid keep harm out, neither is changed to taste. */
const KEEPS: readonly string[] = ["can", "pickle", "ferment", "cure"];

const sum = (ask: Ask, uses: readonly { ingredient: Ingredient; grams: number }[], axis: Axis): number => {
  const matrix = doseMatrix(ask.store);
  return uses.reduce((s, u) => s + (matrix[u.ingredient.index * WIDTH + AT[axis]] as number) * u.grams, 0);
};

/**
 * What the best amount leaves over, as changes to other lines. Grams are what to add; negative is what to hold back, never more than
 * the dish has when its lines are known.
 */
export function correctionsFor(ask: Ask, uses: readonly { ingredient: Ingredient; grams: number }[]): Correction[] {
  const missing = [{ ingredient: ask.item, grams: ask.grams }];
  return RULES.flatMap((rule) => {
    if (!rule.when(ask)) return [];
    if ((rule.axis === "salt" || rule.axis === "acid") && KEEPS.includes(ask.technique ?? "")) return [];
    const d = sum(ask, uses, rule.axis) - sum(ask, missing, rule.axis);
    if (Number.isNaN(d) || Math.abs(d) < Math.max(rule.least, (rule.step * ask.dishGrams) / 100)) return [];
    // Nothing is mended with what someone at the table avoids.
    const options = ask.technique === undefined ? {} : { technique: ask.technique };
    const stand = rule.with
      .map((id) => ask.store.byId.get(id))
      .find((i) => i !== undefined && refusalFor(ask.store, i, ask.rules, options) === undefined);
    if (!stand) return [];
    // What is mended with must not be what is missing, nor what stands in.
    if (stand.id === ask.item.id || uses.some((u) => u.ingredient.id === stand.id)) return [];
    const per = doseMatrix(ask.store)[stand.index * WIDTH + AT[rule.axis]] as number;
    if (!(per > 0)) return [];
    let grams = -d / per;
    if (grams < 0 && ask.dishKnown) {
      const there = ask.dish
        .filter(
          (l) =>
            l.ingredient.roles.some((r) => r.weight >= 0.7) &&
            (l.ingredient.food === stand.food || rule.axis === "water"),
        )
        .reduce((s, l) => s + (l.ingredient.food === stand.food ? l.grams : 0), 0);
      grams = Math.max(grams, -there);
    }
    if (Math.abs(grams) < 0.3) return [];
    const portion = portionOf(ask.store, stand, Math.abs(grams));
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
