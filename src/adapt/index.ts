// A recipe with other things in it: lines, amounts, steps, minutes; every change told, and nothing edited that cannot be edited safely.
import { storeOf } from "../catalogue/index.js";
import { fail, freeze } from "../errors.js";
import { refusalFor } from "../safety/index.js";
import type { AdaptedRecipe, Catalogue, Change, Recipe, Refusal } from "../types.js";
import { choose, rulesOf, type AdaptOptions, type Stand } from "./choose.js";
import { correct } from "./corrections.js";
import { saidOf, writeLine, type Line } from "./line.js";
import { totalMinutes } from "./minutes.js";
import { setGrams } from "./scale.js";
import { adaptSteps } from "./steps.js";
import { placeOf, stems, tokens } from "./words.js";

export type { AdaptOptions } from "./choose.js";

/** What a reader worked out of lines and steps that are no longer these. */
const STALE: readonly string[] = ["understood", "dish", "foods", "times", "servesRange", "notUnderstood"];
const MAX_LINES = 500;

function check(choices: AdaptOptions, recipe: Recipe): void {
  if (typeof choices !== "object" || choices === null || Array.isArray(choices))
    fail("conflicting request", "Choices are { missing, avoid, serves }.", { fields: ["choices"] });
  if (typeof recipe !== "object" || recipe === null || !Array.isArray(recipe.lines) || !Array.isArray(recipe.steps))
    fail("conflicting request", "A recipe is what readRecipe gives: it has lines and steps.", { fields: ["recipe"] });
  const { serves, missing } = choices;
  if (serves !== undefined && !(typeof serves === "number" && serves > 0 && serves <= 10_000))
    fail("conflicting request", "serves must be a number above 0, and no more than 10,000.", { fields: ["serves"] });
  if (missing !== undefined && !Array.isArray(missing))
    fail("conflicting request", "missing is a list of { line }, the text of a line each.", { fields: ["missing"] });
  const size = Math.max(recipe.lines.length, recipe.steps.length, missing?.length ?? 0);
  if (size > MAX_LINES)
    fail("input too large", `A recipe may have ${MAX_LINES} lines and steps; this one has ${size}.`, {
      limit: MAX_LINES,
      size,
    });
}

/**
 * The recipe with stand-ins for what is missing or must be avoided, or for another number of people.
 *
 * Lines are matched to `missing` by their text. Each gets the swap given, else the best of `swapsFor` in this dish; with `avoid` every
 * line that must be avoided is replaced too. Lines, later mentions, skipped and added steps, corrections and minutes follow. A sentence
 * that cannot be edited safely is left as it is with a note; a line nothing can stand in for is left with a loud note and its refusals.
 * Every change lists before, after and why. The source is passed on untouched. Adapting again with the same choices changes nothing.
 * @param choices.serves people, above 0 and up to 10,000: all amounts are rescaled from `recipe.serves`
 * @throws `unknown term`, `unknown food`, `conflicting request`, `input too large`
 */
export function adaptRecipe(c: Catalogue, recipe: Recipe, choices: AdaptOptions = {}): AdaptedRecipe {
  check(choices, recipe);
  const store = storeOf(c);
  const before = recipe as Partial<AdaptedRecipe>;
  const notes: string[] = [];
  const changes: Change[] = [];

  let factor = 1;
  if (choices.serves !== undefined && choices.serves !== recipe.serves) {
    if (recipe.serves === undefined || !(recipe.serves > 0))
      notes.push("The recipe does not say how many it serves, so its amounts were not changed.");
    else factor = choices.serves / recipe.serves;
  }
  const scaled: Line[] = recipe.lines.map((l) =>
    factor === 1 || l.read.portion === undefined ? l : setGrams(c, store, l, l.read.portion.grams * factor),
  );
  const chosen = choose(c, recipe, scaled, choices, factor);
  const given = new Map<Stand, number>();
  for (const s of chosen.stands)
    if ((choices.missing ?? []).some((m) => m.swap !== undefined && m.swap === s.swap)) given.set(s, factor);
  const corrected = correct(c, store, scaled, chosen.stands, given);
  const rules = rulesOf(c, choices);

  const lines: Line[] = [];
  recipe.lines.forEach((original, at) => {
    const why: string[] = [];
    const base = scaled[at] as Line;
    let now: readonly Line[] = [base];
    if (base.text !== original.text) why.push(`for ${choices.serves ?? ""} instead of ${recipe.serves ?? ""}`);
    const stand = chosen.stands.find((s) => s.at === at);
    const mended = corrected.lines.get(at);
    if (stand !== undefined) {
      const written = writeLine(c, store, base, stand.item, stand.use);
      now = written.lines;
      why.push(reasonFor(stand, store.nameOf(stand.item)));
      if (written.dropped.length > 0)
        why.push(`"${written.dropped.join(", ")}" was for the ${store.nameOf(stand.item)}`);
    } else if (mended !== undefined) {
      now = [mended.line];
      why.push(mended.why);
    }
    // An alternative the line offers must not be one that is avoided
    const offers =
      stand === undefined &&
      base.read.alternatives.some((a) => {
        const i = store.byId.get(a.id);
        return i !== undefined && refusalFor(store, i, rules) !== undefined;
      });
    const food = base.read.food && store.byId.get(base.read.food.id);
    if (
      offers &&
      food !== undefined &&
      base.read.portion !== undefined &&
      refusalFor(store, food, rules) === undefined
    ) {
      now = writeLine(c, store, base, food, [base.read.portion]).lines;
      why.push("the other choice in the line must be avoided");
    } else if (offers && stand === undefined)
      notes.push(`MIND: "${original.text}" offers something that must be avoided.`);
    const after = now.map((l) => l.text).join(" + ");
    if (after !== original.text)
      changes.push({ where: `line ${at + 1}`, before: original.text, after, why: why.join("; ") });
    lines.push(...now);
  });

  const steps = adaptSteps(c, store, recipe, chosen.stands);
  changes.push(...steps.changes);
  notes.push(...chosen.notes, ...steps.notes, ...corrected.notes);
  for (const s of chosen.stands)
    for (const x of s.swap?.cautions ?? [])
      if (
        x.severity !== "note" &&
        !(s.swap?.prep ?? []).some((q) => x.text.startsWith(q.text.replace(/\.$/, ""))) &&
        !steps.steps.some((t) => t.text.includes(x.text))
      )
        notes.push(`${x.who}: ${x.text}`);
  if (factor !== 1) {
    changes.push({ where: "serves", before: String(recipe.serves), after: String(choices.serves), why: "asked for" });
    notes.push(...scaledSteps(recipe, factor));
  }
  const time = totalMinutes(store, recipe, chosen.stands, steps.skipped);
  if (time.minutes !== recipe.minutes && recipe.minutes !== undefined)
    changes.push({ where: "minutes", before: String(recipe.minutes), after: String(time.minutes), why: time.why });
  notes.push(...time.notes);
  for (const s of chosen.stands) {
    const name = stems(recipe.lines[s.at]?.read.food?.name ?? "");
    if (placeOf(stems(recipe.name), name) >= 0)
      notes.push(`The name of the recipe still says ${store.nameOf(s.item)}.`);
  }
  const touched = changes.length > 0;
  const kept = Object.fromEntries(
    Object.entries(recipe).filter(([key]) => !touched || !STALE.includes(key)),
  ) as unknown as Recipe;
  return freeze({
    ...kept,
    ...(factor === 1 || choices.serves === undefined ? {} : { serves: choices.serves }),
    ...(time.minutes === undefined ? {} : { minutes: time.minutes }),
    lines: touched ? lines : recipe.lines,
    steps: steps.changes.length > 0 ? steps.steps : recipe.steps,
    changes: [...(before.changes ?? []), ...changes],
    notes: [...new Set([...(before.notes ?? []), ...notes])],
    refused: once([...(before.refused ?? []), ...chosen.refused]),
  });
}

function reasonFor(stand: Stand, name: string): string {
  const use = saidOf(stand.use);
  const expect = (stand.swap?.shift ?? [])
    .filter((s) => s.strength > 1)
    .slice(0, 3)
    .map((s) => s.text);
  const text = expect.length > 0 ? `; expect it ${expect.join(", ")}` : "";
  return `${use} instead of ${name} (${stand.why})${text}`;
}
const once = (list: readonly Refusal[]): readonly Refusal[] => [
  ...new Map(list.map((r) => [`${r.id}\n${r.detail}`, r])).values(),
];

/** Amounts inside steps are not touched: where there are any, the cook is told by how much to multiply. */
function scaledSteps(recipe: Recipe, factor: number): readonly string[] {
  const units = new Set("g kg ml l tsp tbsp cup cups oz lb teaspoon teaspoons tablespoon tablespoons".split(" "));
  const at = recipe.steps.flatMap((s, i) => {
    const words = tokens(s.text.slice(0, 5000));
    return words.some((t, k) => /^[\d½¼¾⅓⅔⅛]/.test(t.text) && units.has(words[k + 1]?.text ?? "")) ? [i + 1] : [];
  });
  const times = Math.round(factor * 100) / 100;
  const amounts =
    at.length > 0 ? [`Amounts inside step ${at.join(", ")} are as the recipe had them: multiply by ${times}.`] : [];
  return [...amounts, "Times are as for the first amount: a fuller pan takes longer, a smaller one less."];
}
