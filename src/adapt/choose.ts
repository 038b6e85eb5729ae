import { storeOf, type Ingredient, type Store } from "../catalogue/index.js";
import { fail } from "../errors.js";
import { findFood } from "../names/index.js";
import { MAX_LINE, portionOf } from "../portion/index.js";
import { keepingOfLines, kitchenOf } from "../recipe/index.js";
import { readAvoid, refusalFor, type AvoidRules } from "../safety/index.js";
import { swapsFor } from "../swap/index.js";
import type { AdaptChoices, Catalogue, Portion, Recipe, Refusal, Swap } from "../types.js";
import { likeBefore, type Line } from "./line.js";
import { calledOf } from "./mentions.js";
import { techniqueOf } from "./technique.js";

/** Lines stand-ins are looked for, and lines of the dish they are looked at with: a recipe has fewer. */
const MAX_CHOSEN = 50;
const MAX_DISH = 100;

export interface AdaptOptions extends AdaptChoices {
  /** What is in the house: stand-ins are taken from it only when `onlyFromHave` is true. */
  have?: readonly string[];
  onlyFromHave?: boolean;
}
/** What stands in for one line. `swap` is missing when the line itself offers it ("butter or margarine"). */
export interface Stand {
  readonly at: number;
  readonly item: Ingredient;
  readonly use: readonly Portion[];
  readonly swap?: Swap;
  readonly why: string;
  /** The old food is kept out for somebody: its name must not stand where it can be avoided. */
  readonly avoided: boolean;
}
export interface Chosen {
  readonly stands: readonly Stand[];
  readonly notes: readonly string[];
  readonly refused: readonly Refusal[];
}
const plain = (text: string): string => text.normalize("NFC").trim().replace(/\s+/g, " ").toLowerCase();

export function rulesOf(c: Catalogue, choices: AdaptOptions): AvoidRules {
  const store = storeOf(c);
  return readAvoid(store, choices.avoid, (text) =>
    findFood(c, text, { limit: 50 })
      .filter((m) => m.confidence >= 0.9)
      .flatMap((m) => store.byId.get(m.id) ?? []),
  );
}

/**
 * For every line that is missing or must be avoided: what stands in. Each is chosen against the recipe as it was, in the order of its
 * lines, so that the order of the choices does not matter; what is missing itself is never offered for another.
 * @param lines the recipe's lines, rescaled; texts to match are the recipe's own
 */
export function choose(
  c: Catalogue,
  recipe: Recipe,
  lines: readonly Line[],
  choices: AdaptOptions,
  factor: number,
): Chosen {
  const store = storeOf(c);
  const rules = rulesOf(c, choices);
  const notes: string[] = [];
  const refused: Refusal[] = [];
  const wanted = new Map<number, { swap?: Swap; why: string }>();
  const earlier = (recipe as { changes?: readonly { before: string }[] }).changes ?? [];
  for (const { line, swap } of choices.missing ?? []) {
    if (typeof line !== "string")
      fail("conflicting request", "Each missing line is { line: text of the line }.", { fields: ["missing"] });
    const at = recipe.lines.findIndex((l, i) => plain(l.text) === plain(line) && !wanted.has(i));
    if (at >= 0) wanted.set(at, { ...(swap === undefined ? {} : { swap }), why: "missing" });
    else if (
      !earlier.some((ch) => plain(ch.before) === plain(line)) &&
      !recipe.lines.some((l) => plain(l.text) === plain(line))
    )
      notes.push(`No line of the recipe reads "${line.slice(0, 200)}": nothing was replaced for it.`);
  }
  lines.forEach((l, at) => {
    const item = l.read.food && store.byId.get(l.read.food.id);
    const reason = item && refusalFor(store, item, rules);
    if (reason) wanted.set(at, { ...wanted.get(at), why: lowerEnd(reason.detail) });
    const asked = rules.allergens.length + rules.diets.length + rules.groups.length + rules.foods.length > 0;
    if (asked && item === undefined && !wanted.has(at))
      notes.push(
        `CHECK BY HAND: "${shown(l.text)}" could not be read for certain, so nobody has checked whether it must be avoided.`,
      );
  });
  const gone = new Set([...wanted.keys()].map((at) => lines[at]?.read.food?.id));
  const limits = constraintsOf(choices);
  const stands: Stand[] = [];
  const asked = [...wanted.values()].filter((x) => x.swap === undefined).length;
  if (asked > MAX_CHOSEN)
    fail("input too large", `Stand-ins are looked for ${MAX_CHOSEN} lines at most; here ${asked} want one.`, {
      limit: MAX_CHOSEN,
      size: asked,
    });
  const keepingOf = keepingOfLines(c, recipe);
  const dishLines = lines.map((l) => (l.text.length <= MAX_LINE ? l.text : ""));
  for (const at of [...wanted.keys()].sort((a, b) => a - b)) {
    const { swap: given, why } = wanted.get(at) as { swap?: Swap; why: string };
    const line = lines[at] as Line;
    const original = recipe.lines[at]?.text ?? "";
    const item = line.read.food && store.byId.get(line.read.food.id);
    const avoided = item !== undefined && refusalFor(store, item, rules) !== undefined;
    const loud = `NOT REPLACED: "${shown(original)}"${limits}.`;
    const before = (recipe as { notes?: readonly string[] }).notes ?? [];
    if (given === undefined && before.some((n) => n.startsWith(loud))) continue;
    if (item === undefined) {
      notes.push(
        `${loud} It could not be read as one food, so nothing was put in its place. It is still in the recipe.`,
      );
      continue;
    }
    const fits = (use: readonly Portion[]): Refusal | undefined => {
      for (const u of use) {
        const i = store.byId.get(u.id);
        const no = i && refusalFor(store, i, rules);
        if (no) return { id: u.id, name: u.name, ...no };
      }
      return undefined;
    };
    if (given !== undefined) {
      checkSwap(store, given);
      const no = fits(given.use);
      if (no !== undefined) {
        refused.push(no);
        notes.push(
          `${loud} The swap given for it is ruled out. ${no.name}: ${no.detail} The line is still in the recipe.`,
        );
      } else
        stands.push({
          at,
          item,
          swap: given,
          use: scaled(given.use).map((u) => likeBefore(store, u, line.read.portion)),
          why,
          avoided,
        });
      continue;
    }
    const own = line.read.alternatives.find(
      (a) => a.portion !== undefined && !gone.has(a.id) && fits([a.portion]) === undefined,
    );
    if (own?.portion !== undefined && choices.onlyFromHave !== true) {
      stands.push({ at, item, use: [own.portion], why: `${why}; the line itself offers it`, avoided });
      continue;
    }
    const called = calledOf(store, item, original);
    const technique = keepingOf(at) ?? techniqueOf(recipe, called.names);
    const advice = swapsFor(c, {
      missing: item.id,
      ...(line.read.portion === undefined ? {} : { amount: `${line.read.portion.grams} g` }),
      dish: {
        lines: dishLines.filter((l, i) => i !== at && l !== "").slice(0, MAX_DISH),
        ...(technique === undefined ? {} : { technique }),
        ...(recipe.serves === undefined ? {} : { serves: recipe.serves * factor }),
        ...kitchenOf(recipe),
      },
      ...(choices.avoid === undefined ? {} : { avoid: choices.avoid }),
      ...(choices.have === undefined ? {} : { have: choices.have }),
      ...(choices.onlyFromHave === true ? { onlyFromHave: true } : {}),
      limit: 20,
    });
    const able = advice.swaps.filter((s) => !s.use.some((u) => gone.has(u.id)) && fits(s.use) === undefined);
    // Nearly as good without hours of waiting, or without meat that wants stewing where fish cooks in minutes, is the better choice
    const quick = item.can.has("cooks in minutes");
    const awkward = (s: Swap): boolean =>
      s.time.active + s.time.waiting > Math.max(30, (recipe.minutes ?? 0) / 2) ||
      (quick && s.use.some((u) => !store.byId.get(u.id)?.can.has("cooks in minutes")));
    const best = able.find((s) => !awkward(s) && s.score >= (able[0]?.score ?? 0) - 0.15) ?? able[0];
    if (best === undefined) {
      refused.push(...advice.refused.slice(0, 10));
      notes.push(
        `${loud} Nothing fit to stand in was found. ${advice.mustStay ?? advice.goWithout ?? ""} The line is still in the recipe.`.replace(
          / {2,}/g,
          " ",
        ),
      );
    } else
      stands.push({
        at,
        item,
        swap: best,
        use: best.use.map((u) => likeBefore(store, u, line.read.portion)),
        why,
        avoided,
      });
  }
  return { stands, notes, refused };

  function scaled(use: readonly Portion[]): readonly Portion[] {
    if (factor === 1) return use;
    return use.map((u) => {
      const i = store.byId.get(u.id);
      return i === undefined ? u : portionOf(store, i, u.grams * factor);
    });
  }
}
/** A stored swap may come from elsewhere: what it uses must be known here and have an amount. */
function checkSwap(store: Store, swap: Swap): void {
  const { use } = swap as { use?: unknown };
  if (!Array.isArray(use) || use.length === 0 || use.length > 10)
    fail("conflicting request", "A swap is what swapsFor gives: it has a list of what to use.", { fields: ["swap"] });
  for (const u of use as readonly (Partial<Portion> | null)[]) {
    const id = String(u?.id ?? "").slice(0, 200);
    if (!store.byId.has(id)) fail("unknown food", `No food "${id}" is known here.`, { input: id, nearest: [] });
    const grams = u?.grams;
    if (typeof grams !== "number" || !(grams > 0) || !(grams <= 1_000_000) || typeof u?.measure?.text !== "string")
      fail("conflicting request", `The swap gives no amount of ${id}.`, { fields: ["swap.use"] });
  }
}
export const shown = (text: string): string => (text.length > 200 ? `${text.slice(0, 200)}…` : text);
/** The first sentence of a detail, to stand in brackets. */
const lowerEnd = (s: string): string =>
  (s.charAt(0).toLowerCase() + s.slice(1)).split(". ")[0]?.replace(/\.$/, "") ?? "";
function constraintsOf(choices: AdaptOptions): string {
  const avoid = [...(choices.avoid?.allergens ?? []), ...(choices.avoid?.diets ?? []), ...(choices.avoid?.foods ?? [])];
  const parts = [
    ...(avoid.length > 0 ? [`avoiding ${avoid.join(", ")}`] : []),
    ...(choices.onlyFromHave === true ? ["from the house only"] : []),
  ];
  return parts.length > 0 ? ` (${parts.join("; ")})` : "";
}
