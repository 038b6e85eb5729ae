import type { Ingredient } from "../catalogue/index.js";
import { fail, freeze, isSteadfareError } from "../errors.js";
import { UNIT_IDS, findUnit, unitWords, usMassFor, metricMassFor, measureText, roundTo } from "../quantity/index.js";
import {
  kitchenMeasure,
  isCountedWhole,
  type Lookup,
  parsePortionWith,
  portionOf,
  publicGrams,
  quantityOfText,
  saysTrimmed,
  unitsOf,
  wholeFish,
} from "../portion/index.js";
import type { Conversion, Measure, Portion, SourceRef, UnitId } from "../types.js";
import { middleOf } from "./alike.js";
import { ANYHOW, type Edge, findPath, isHeated, type Node, sameFood, siblingsOf, type Stage } from "./graph.js";
import { namesSame, readWish, stateOf, type Style, type Wish } from "./wish.js";

const EDIBLE = new Set(["edible portion", "edible part", "edible", "trimmed", "peeled", "as eaten", "cleaned"]);
const READY = new Set([
  "ready",
  "ready to use",
  "soaked",
  "rehydrated",
  "desalted",
  "thawed",
  "prepared",
  "reconstituted",
]);

/** Any of these will do. */
type Target = readonly Node[];

const nodes = (ingredients: readonly Ingredient[], ...stages: readonly Stage[]): Target =>
  ingredients.flatMap((ingredient) => stages.map((stage) => ({ ingredient, stage })));

/** See `convert` in the index of this room. */
export function convertWith(
  lookup: Lookup,
  amount: string,
  to: string | { unit: UnitId } | { state: string },
): Conversion {
  try {
    return convertOne(lookup, amount, to);
  } catch (e) {
    if (!isSteadfareError(e, "ambiguous food")) throw e;
    const ids = new Set(e.data.candidates.map((m) => m.id));
    const middle = middleOf(lookup, ids, (only) => convertOne(only, amount, to));
    if (middle === undefined) throw e;
    return middle;
  }
}

function convertOne(lookup: Lookup, amount: string, to: string | { unit: UnitId } | { state: string }): Conversion {
  const bought = parsePortionWith(lookup, amount);
  const i = lookup.store.byId.get(bought.id) as Ingredient;
  const read = quantityOfText(lookup, amount);
  if (typeof to === "object" && "unit" in to) return freeze(toUnit(lookup, bought, i, to.unit, read.source));
  // What a fish turns into is told of its flesh.
  const flesh = wholeFish(i, bought, amount);
  const source = flesh === undefined ? bought : { ...bought, grams: publicGrams(bought.grams * flesh) };
  const wish = typeof to === "string" ? to : to.state;
  const asked = readWish(wish);
  const style = asked.cooked ?? ANYHOW;
  // A weight is of the thing as sold; cups and pieces are weighed without what is thrown away, and so is what is called boneless
  const trimmed = (read.byMeasure && !isCountedWhole(i, source)) || saysTrimmed(amount);
  const from: Node = { ingredient: i, stage: "sold" };
  for (const target of targets(lookup, i, amount, to, asked)) {
    const path = findPath(lookup.store, from, (n) => wants(target, n), trimmed, style);
    if (path !== undefined) return freeze(along(lookup, source, i, path, read.source));
  }
  return none(lookup, i, wish);
}

/** What the words may mean, the surest first; each is tried until there is a way to it. */
function* targets(
  lookup: Lookup,
  i: Ingredient,
  amount: string,
  to: string | { state: string } | { unit: UnitId },
  asked: Wish,
): Generator<Target> {
  const wish = typeof to === "string" ? to : "state" in to ? to.state : to.unit;
  const { cooked } = asked;
  const how = cooked?.technique !== undefined || cooked?.meat === true;
  if (how && namesSame(asked, amount, i)) yield* done(lookup, i, cooked);
  const known = (typeof to === "string" ? foodTarget(lookup, i, to) : undefined) ?? stateTarget(lookup, i, wish);
  if (known !== undefined) yield known;
  if (cooked === undefined && !asked.edible) return;
  const kin =
    asked.name.length === 0 ||
    namesSame(asked, amount, i) ||
    foodsOf(lookup, asked.name.join(" ")).some((f) => alikeIn(f, i));
  if (!kin) return;
  if (cooked !== undefined) yield* done(lookup, i, cooked);
  else yield nodes([i], "edible");
}

/** This food cooked in a style: the state that is so cooked where it is sold, else the raw one cooked. */
function* done(lookup: Lookup, i: Ingredient, style: Style): Generator<Target> {
  const kin = siblingsOf(lookup.store, i);
  const state = style.technique === undefined || style.meat ? undefined : stateOf(style.technique);
  const sold = kin.filter((s) => state !== undefined && s.state.includes(state));
  if (sold.length > 0) yield nodes(sold, "sold", "edible");
  yield nodes(
    kin.filter((s) => !isHeated(s)),
    "cooked",
  );
}
/** Another cut of the same animal, another bean: kin near enough to be what a table calls by its general name. */
const alikeIn = (a: Ingredient, b: Ingredient): boolean =>
  a.slot !== undefined && a.slot === b.slot && (a.kind === b.kind || [...a.origin].some((o) => b.origin.has(o)));

function wants(t: Target, n: Node): boolean {
  return t.some((w) => w.ingredient === n.ingredient && w.stage === n.stage);
}

function toUnit(lookup: Lookup, source: Portion, i: Ingredient, wish: string, from: SourceRef | undefined): Conversion {
  const unit = UNIT_IDS.find((u) => u === wish) ?? findUnit(wish, lookup.store.locale === "en-GB")?.id;
  if (unit === undefined) {
    const nearest = unitWords()
      .filter((u) => u.startsWith(wish.slice(0, 1).toLowerCase()) && u.length <= wish.length + 2)
      .slice(0, 3);
    return fail("unknown term", `"${wish.slice(0, 40)}" is not a unit.`, {
      kind: "unit",
      input: wish,
      nearest,
      accepted: UNIT_IDS,
    });
  }
  const measure = kitchenMeasure(lookup.store, i, source.grams, { unit });
  if (measure === undefined) return none(lookup, i, unit);
  return { ...source, measure, steps: [], byProducts: [], sources: from === undefined ? [] : [from] };
}

/** "cooked", "edible portion", "dried", "salt-cured": a state of the same food. */
function stateTarget(lookup: Lookup, i: Ingredient, wish: string): Target | undefined {
  const text = wish.trim().toLowerCase();
  if (EDIBLE.has(text)) return nodes([i], "edible");
  if (READY.has(text) && !siblingsOf(lookup.store, i).some((s) => s !== i && s.state.includes(text)))
    return nodes([i], "ready");
  const words = text.split(/[ -]/u).filter((w) => w !== "");
  const all = siblingsOf(lookup.store, i);
  const has = (s: Ingredient) => words.every((w) => s.state.some((t) => t === w || t.split("-").includes(w)));
  const fit = text === "" ? [] : all.filter((s) => s.state.join("-") === text || has(s));
  const exact = fit.filter((s) => s.state.join("-") === text);
  if (text === "cooked")
    return [...nodes(fit.filter(isHeated), "sold"), ...nodes([i], isHeated(i) ? "sold" : "cooked")];
  return fit.length === 0 ? undefined : nodes(exact.length > 0 ? exact : fit, "sold", "edible");
}

/** "beans, cooked", "potato, edible portion", "white rice": a food, with or without how far it has come. */
function foodTarget(lookup: Lookup, i: Ingredient, wish: string): Target | undefined {
  const comma = wish.lastIndexOf(",");
  const tail =
    comma < 0
      ? ""
      : wish
          .slice(comma + 1)
          .trim()
          .toLowerCase();
  if (EDIBLE.has(tail) || READY.has(tail)) {
    const named = foodsOf(lookup, wish.slice(0, comma)).filter((f) => f.food === i.food);
    return named.length === 0 ? undefined : stateTarget(lookup, named.includes(i) ? i : (named[0] as Ingredient), tail);
  }
  const cooked = tail === "cooked" || wish.toLowerCase().startsWith("cooked ");
  const named = foodsOf(lookup, wish);
  if (named.length === 0) return undefined;
  // "Clam meat" of clams: what is left of the very thing without its shell.
  if (named.includes(i) && wish.trim().toLowerCase().endsWith(" meat")) return nodes([i], "edible");
  const kin = named.filter((f) => sameFood(f, i));
  const wanted = kin.length > 0 ? kin : named;
  if (!cooked) return nodes(wanted, "sold", "edible");
  const heated = wanted.filter(isHeated);
  if (heated.length > 0) return nodes(heated, "sold", "edible");
  return kin.length > 0 ? stateTarget(lookup, i, "cooked") : nodes(wanted, "cooked");
}

function foodsOf(lookup: Lookup, text: string): readonly Ingredient[] {
  const found = lookup.findFood(text, 50).filter((m) => m.confidence >= 0.9);
  const best = found.filter((m) => m.confidence === found[0]?.confidence);
  const all = best.length > 0 ? best : (lookup.findInPhrase(text)?.candidates ?? []);
  return all.flatMap((m) => lookup.store.byId.get(m.id) ?? []);
}

function along(
  lookup: Lookup,
  source: Portion,
  i: Ingredient,
  path: readonly Edge[],
  from: SourceRef | undefined,
): Conversion {
  const { store } = lookup;
  let grams = source.grams;
  let scale = 1;
  const steps: Conversion["steps"][number][] = [];
  const byProducts: Portion[] = [];
  const sources: SourceRef[] = from === undefined ? [] : [from];
  for (const e of path) {
    for (const by of e.by) {
      const p = store.procedures.get(by);
      const minutes = e.minutes ?? { active: p?.active ?? 0, waiting: p?.waiting ?? 0 };
      steps.push({ procedure: by, minutes: { active: minutes.active, waiting: minutes.waiting } });
      if (p !== undefined) sources.push(p.source);
      const left = e.back === true || p?.byProduct === undefined ? undefined : byProductOf(lookup, p.byProduct, grams);
      if (left !== undefined) byProducts.push(left);
    }
    if (e.source !== undefined) sources.push(e.source);
    grams *= e.factor;
    scale *= e.factor;
  }
  // What was undone is told in the order it would be done
  if (path.length > 0 && path.every((e) => e.back === true)) steps.reverse();
  const last = path.at(-1)?.to ?? { ingredient: i, stage: "sold" as const };
  const g = publicGrams(grams);
  const range =
    source.range === undefined
      ? {}
      : { range: [publicGrams(source.range[0] * scale), publicGrams(source.range[1] * scale)] as const };
  const same = path.length === 0 || scale === 1;
  const measure = same && last.ingredient === i ? source.measure : measureAt(lookup, last, g);
  const assumed = source.assumed === true ? { assumed: true as const } : {};
  return {
    id: last.ingredient.id,
    name: store.nameOf(last.ingredient),
    grams: g,
    ...range,
    measure,
    ...assumed,
    steps,
    byProducts,
    sources: distinct(sources),
  };
}

/** What has been soaked or cooked no longer fills its own cups: it is told by weight. */
function measureAt(lookup: Lookup, n: Node, grams: number): Measure {
  const { store } = lookup;
  const changed = n.stage === "cooked" || (n.stage === "ready" && n.ingredient.ready !== undefined);
  if (!changed) return kitchenMeasure(store, n.ingredient, grams);
  const m = (store.measures === "us" ? usMassFor(grams) : undefined) ?? metricMassFor(grams);
  return {
    amount: roundTo(m.amount, 4),
    unit: m.unit,
    text: measureText(m.amount, m.unit),
    roundedBy: roundTo(m.base - grams, 1),
  };
}

function byProductOf(
  lookup: Lookup,
  b: { readonly name: string; readonly replaceWith: string; readonly gramsPerGram: number },
  grams: number,
): Portion | undefined {
  const own = lookup.findFood(b.name, 1)[0];
  const id =
    own !== undefined && own.confidence >= 0.9
      ? own.id
      : (lookup.store.byId.get(b.replaceWith)?.id ?? lookup.findFood(b.replaceWith, 1)[0]?.id);
  const i = id === undefined ? undefined : lookup.store.byId.get(id);
  const made = grams * b.gramsPerGram;
  if (i === undefined || !(made > 0)) return undefined;
  return { ...portionOf(lookup.store, i, made), name: b.name };
}

function distinct(sources: readonly SourceRef[]): readonly SourceRef[] {
  const seen = new Set<string>();
  return sources.filter((s) => {
    const key = `${s.key}|${s.at ?? ""}`;
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}

/** What this ingredient can be converted to: units, then states and foods on its paths. */
export function knownTargets(lookup: Lookup, i: Ingredient): readonly string[] {
  const out: string[] = [...unitsOf(lookup.store, i), "edible portion"];
  if (i.ready !== undefined) out.push("ready");
  if (
    findPath(
      lookup.store,
      { ingredient: i, stage: "sold" },
      (n) => n.stage === "cooked" || (n.ingredient !== i && isHeated(n.ingredient) && sameFood(n.ingredient, i)),
      false,
    )
  )
    out.push("cooked");
  for (const s of siblingsOf(lookup.store, i))
    if (s !== i && findPath(lookup.store, { ingredient: i, stage: "sold" }, (n) => n.ingredient === s, false))
      out.push(s.id);
  for (const b of i.becomes) if (!out.includes(b.to)) out.push(b.to);
  return out;
}

function none(lookup: Lookup, i: Ingredient, wish: string): never {
  const known = knownTargets(lookup, i);
  return fail(
    "no conversion",
    `No way is known from ${lookup.store.nameOf(i)} to "${wish.slice(0, 80)}". Known: ${known.join(", ")}.`,
    { from: i.id, to: wish, known },
  );
}
