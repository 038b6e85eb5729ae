// A recipe with other things in it: lines, amounts, steps, minutes; every change told, and nothing edited that cannot be edited safely.
import { storeOf, type Ingredient, type Store } from "../catalogue/index.js";
import { fail, freeze } from "../errors.js";
import { refusalFor } from "../safety/index.js";
import { portionOf } from "../portion/index.js";
import type { AdaptedRecipe, Catalogue, Change, Recipe, Refusal } from "../types.js";
import { choose, rulesOf, shown, type AdaptOptions, type Stand } from "./choose.js";
import { correct } from "./corrections.js";
import { NOTHING } from "./draft.js";
import { called, nameFor, readBack, saidOf, writeLine, type Line } from "./line.js";
import type { NewLine } from "./liquid.js";
import { calledOf, saidIn } from "./mentions.js";
import { totalMinutes } from "./minutes.js";
import { kindHolds } from "./rename.js";
import { amountsIn, setGrams } from "./scale.js";
import { adaptSteps } from "./steps.js";
import { namedOnlyInSteps } from "./unlisted.js";
import { MAX_STEP, placeOf, stems, tokens } from "./words.js";

export type { AdaptOptions } from "./choose.js";

/** What a reader worked out of lines and steps that are no longer these. */
const STALE: readonly string[] = ["understood", "dish", "foods", "times", "servesRange", "notUnderstood"];
const MAX_LINES = 1000;

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
  const newLine = (x: NewLine, group?: string): Line => {
    const portion = portionOf(store, store.byId.get(x.id) as Ingredient, x.grams);
    const bare = called({ measure: portion.measure, name: nameFor(c, store, portion) });
    const text = `${bare}, in place of the ${x.instead}`;
    changes.push({ where: "new line", before: NOTHING, after: text, why: `there is no ${x.instead}` });
    return { text, read: readBack(c, text, portion), ...(group === undefined ? {} : { group }) };
  };
  const steps = adaptSteps(c, store, recipe, chosen.stands, rules, factor);

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
      const old = saidIn(original.text, calledOf(store, stand.item, original.text).asNamed);
      why.push(reasonFor(stand, old));
      if (written.dropped.length > 0) why.push(`"${written.dropped.join(", ")}" was for the ${old}`);
    } else {
      if (mended !== undefined) why.push(mended.why);
      now = [mended?.line ?? base];
    }
    // An alternative the line offers must not be one that is avoided
    const offers = base.read.alternatives.some((a) => {
      const i = store.byId.get(a.id);
      return i !== undefined && refusalFor(store, i, rules) !== undefined;
    });
    const food = base.read.food && store.byId.get(base.read.food.id);
    if (
      stand === undefined &&
      offers &&
      food !== undefined &&
      base.read.portion !== undefined &&
      refusalFor(store, food, rules) === undefined
    ) {
      now = writeLine(c, store, base, food, [base.read.portion]).lines;
      why.push("the other choice in the line must be avoided");
    } else if (offers && stand === undefined)
      notes.push(`MIND: "${shown(original.text)}" offers something that must be avoided.`);
    const after = now.map((l) => l.text).join(" + ");
    if (after !== original.text)
      changes.push({ where: `line ${at + 1}`, before: original.text, after, why: why.join("; ") });
    lines.push(...now, ...steps.added.filter((x) => x.after === at).map((x) => newLine(x, original.group)));
  });
  for (const x of steps.added.filter((y) => y.after === undefined)) lines.push(newLine(x));

  changes.push(...steps.changes);
  notes.push(...chosen.notes, ...steps.notes, ...corrected.notes);
  notes.push(...namedOnlyInSteps(c, store, recipe, rules));
  for (const s of chosen.stands)
    for (const x of s.swap?.cautions ?? [])
      if (
        x.severity !== "note" &&
        !(s.swap?.prep ?? []).some((q) => x.text.startsWith(q.text.replace(/\.$/, ""))) &&
        !steps.steps.some((t) => t.text.includes(x.text))
      )
        notes.push(`For ${x.who.startsWith("allergic") ? "anyone " : ""}${x.who}: ${x.text}`);
  if (factor !== 1) {
    changes.push({ where: "serves", before: String(recipe.serves), after: String(choices.serves), why: "asked for" });
    notes.push(...scaledSteps(recipe, factor, choices.serves ?? 0, store.locale === "en-GB"));
  }
  const time = totalMinutes(store, recipe, chosen.stands, steps.skipped, steps.timed);
  if (time.minutes !== recipe.minutes && recipe.minutes !== undefined)
    changes.push({ where: "minutes", before: String(recipe.minutes), after: String(time.minutes), why: time.why });
  notes.push(...time.notes);
  notes.push(...inTitle(store, recipe, chosen.stands));
  const touched = changes.length > 0;
  const kept = Object.fromEntries(
    Object.entries(recipe).filter(([key]) => !touched || !STALE.includes(key)),
  ) as unknown as Recipe;
  const { source, ...made } = {
    ...kept,
    ...(factor === 1 || choices.serves === undefined ? {} : { serves: choices.serves }),
    ...(time.minutes === undefined ? {} : { minutes: time.minutes }),
    lines: touched ? lines.map((l) => ({ ...l })) : recipe.lines,
    steps: steps.changes.length > 0 ? steps.steps : recipe.steps,
    changes: [...(before.changes ?? []), ...changes],
    notes: [...new Set([...(before.notes ?? []), ...notes])],
    refused: once([...(before.refused ?? []), ...chosen.refused]),
  };
  // The source is the caller's own and is not frozen for him
  return Object.freeze({ ...freeze(made), source });
}

function reasonFor(stand: Stand, name: string): string {
  const use = saidOf(stand.use);
  const expect = (stand.swap?.shift ?? [])
    .filter((s) => s.strength > 1)
    .slice(0, 3)
    .map((s) => s.text);
  const notes = expect.filter((s) => s.startsWith("a "));
  const plain = expect.filter((s) => !s.startsWith("a "));
  const told = [...(plain.length > 0 ? [`expect it ${plain.join(", ")}`] : []), ...notes.map((s) => `expect ${s}`)];
  return [`${use} instead of ${name} (${stand.why})`, ...told].join("; ");
}
/** What the name of the recipe still says that is no longer in it. */
function inTitle(store: Store, recipe: Recipe, stands: readonly Stand[]): readonly string[] {
  const title = recipe.name.slice(0, 300);
  return stands.flatMap((s) => {
    const words = tokens(title);
    const all = words.map((t) => t.stem);
    const { names } = calledOf(store, s.item, recipe.lines[s.at]?.text ?? "");
    const name = names.find((n) => placeOf(all, n) >= 0);
    if (name === undefined) return [];
    // Still true of the stand-in: "kale" of frozen kale, "fish" of another fish
    if (
      kindHolds(
        name,
        s.use.flatMap((u) => store.byId.get(u.id) ?? []),
      )
    )
      return [];
    if (s.use.some((u) => placeOf(stems(u.name), name) >= 0)) return [];
    const at = placeOf(all, name);
    const said = title.slice(words[at]?.start, words[at + name.length - 1]?.end);
    return [`The name of the recipe still says "${said}".`];
  });
}
const once = (list: readonly Refusal[]): readonly Refusal[] => [
  ...new Map(list.map((r) => [`${r.id}\n${r.detail}`, r])).values(),
];

/** Amounts inside steps are not touched: the cook is told what each becomes. */
function scaledSteps(recipe: Recipe, factor: number, serves: number, imperial: boolean): readonly string[] {
  const out = recipe.steps.flatMap((s, i) => {
    const found = amountsIn(s.text.slice(0, MAX_STEP), factor, imperial);
    if (found.length === 0) return [];
    const list = found.map(([was, now]) => `${was} becomes ${now}`).join(", ");
    return [`Amounts inside the steps are as the recipe had them. For ${serves}, in its step ${i + 1}: ${list}.`];
  });
  return [...out, "Times are as for the first amount: a fuller pan takes longer, a smaller one less."];
}
