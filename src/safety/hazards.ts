import type { HazardRule, RequiredStep } from "../catalogue/safety-tables.js";
import type { Ingredient } from "../catalogue/store.js";
import { freeze } from "../errors.js";
import type { Caution, SourceRef } from "../types.js";
import { dietAnswer, dietEntry } from "./diets.js";
import { donenessChange, heatOf } from "./doneness.js";
import { fits, hazardsOf } from "./fits.js";
import { apartIn } from "./meal.js";
import { asked, brought, keepsSafe, raised, type Asked, type HazardQuestion } from "./raise.js";
import { refs, safetyTables, unsourced, type SafetyStore } from "./tables.js";

/**
 * A hazard that stops. `never`: refuse. `unless`: offer with the required step. `diner`: refuse for this table.
 * Nothing a ranking does can lift one.
 */
export interface Stop {
  readonly kind: "never" | "unless" | "diner";
  readonly hazard: string;
  readonly because: "hazard" | "diet";
  readonly ingredient: string;
  readonly detail: string;
  readonly sources: readonly SourceRef[];
}
export interface HazardAnswer {
  readonly stops: readonly Stop[];
  /** Steps that go into the swap's prep as required. */
  readonly required: readonly (RequiredStep & { readonly hazard: string })[];
  /** Gravest first. */
  readonly cautions: readonly Caution[];
}
type Step = RequiredStep & { readonly hazard: string };
/** Something said of one ingredient. Of those under one word (`alike`) the one of least rank is kept, of equals the later. */
interface Said<T> {
  readonly what: T;
  readonly of: string;
  readonly rank: number;
  readonly alike?: string;
}
interface Notes {
  readonly stops: Stop[];
  readonly required: Said<Step>[];
  readonly cautions: Said<Caution>[];
}

const GRAVITY = { stop: 0, caution: 1, note: 2 } as const;
/** The word under which everything stands that asks for a food to be cooked before it is eaten. */
const COOK_THROUGH = "cook through";
/** Techniques after which nothing is heated any more: to ask for heat would be no help. */
const STAYS_RAW: readonly string[] = ["raw", "set cold", "whip", "marinate"];
const UNSOURCED = "No publication was read for this; it rests on common knowledge.";

/** A rule's words for this ingredient: `{heat}` is its own temperature, and a diner who is not at the table is "those at risk". */
function textOf(store: SafetyStore, h: HazardRule, q: Asked, i: Ingredient): string {
  const parts = [h.text, h.conflict, h.severity === "stop" && unsourced(h.sources) ? UNSOURCED : undefined];
  const text = withHeat(store, parts.filter((part) => part !== undefined).join(" "), q, i);
  return present(h, q) ? text : text.replace("this diner", "those at risk");
}
const HEAT = "{heat}";
const withHeat = (store: SafetyStore, text: string, q: Asked, i: Ingredient): string =>
  text.includes(HEAT) ? text.replace(HEAT, heatOf(store, i, q.jurisdiction)) : text;
const present = (h: HazardRule, q: Asked): boolean => h.diners?.some((d) => q.rules?.diets.includes(d)) === true;

function caution(
  store: SafetyStore,
  h: HazardRule,
  q: Asked,
  i: Ingredient,
  severity: Caution["severity"],
): Said<Caution> {
  return {
    what: { hazard: h.id, severity, who: h.who, text: textOf(store, h, q, i), sources: refs(h.sources) },
    of: i.id,
    // What is said to a diner at the table first, then the graver; of equals the later in the table, which is the more particular.
    rank: present(h, q) ? -1 : GRAVITY[severity],
    ...(h.alike === undefined ? {} : { alike: h.alike }),
  };
}
const stopOf = (store: SafetyStore, h: HazardRule, q: Asked, i: Ingredient, kind: Stop["kind"]): Stop => ({
  kind,
  hazard: h.id,
  because: "hazard",
  ingredient: i.id,
  detail: textOf(store, h, q, i),
  sources: refs(h.sources),
});

function require(store: SafetyStore, notes: Notes, h: HazardRule, q: Asked, i: Ingredient): void {
  notes.stops.push(stopOf(store, h, q, i, "unless"));
  if (h.step) {
    const text = withHeat(store, h.step.text, q, i);
    notes.required.push({ what: { ...h.step, text, hazard: h.id }, of: i.id, rank: present(h, q) ? -1 : 1 });
  }
  notes.cautions.push(caution(store, h, q, i, "stop"));
}

function judge(store: SafetyStore, h: HazardRule, q: Asked, i: Ingredient, notes: Notes): void {
  const here = present(h, q);
  const cooked =
    h.unlessCooked === true &&
    q.technique !== undefined &&
    safetyTables(store).hazards.cookedThrough.includes(q.technique);
  const say = (severity: Caution["severity"]): void => {
    // What the dish is cooked through takes away need not be said to those who are not at the table.
    if (cooked) return;
    if (h.always === true || brought(store, h, q)) notes.cautions.push(caution(store, h, q, i, severity));
  };
  if (h.stop === "never") notes.stops.push(stopOf(store, h, q, i, "never"));
  else if (h.stop === "unless") {
    if (h.diners !== undefined && !here) say("caution");
    else if (q.technique !== undefined && h.never?.includes(q.technique))
      notes.stops.push(stopOf(store, h, q, i, "never"));
    else require(store, notes, h, q, i);
  } else if (h.stop === "diner" && here) {
    if (cooked) require(store, notes, h, q, i);
    else notes.stops.push(stopOf(store, h, q, i, "diner"));
  } else say(h.stop === "diner" ? "caution" : h.severity);
}

/** Poultry for beef, mince for a whole cut, fresh for cured: the temperature the dish must now reach. */
function heat(store: SafetyStore, q: Asked, i: Ingredient, notes: Notes): void {
  const change =
    q.missing &&
    donenessChange(store, q.missing, i, q.jurisdiction === undefined ? {} : { jurisdiction: q.jurisdiction });
  if (!change) return;
  const said = (severity: Caution["severity"]): Said<Caution> => ({
    what: { hazard: "doneness", severity, who: "everyone", text: change.text, sources: change.to.sources },
    of: i.id,
    // Behind a rule that gives the same temperature and says why.
    rank: GRAVITY[severity] + 0.5,
    alike: COOK_THROUGH,
  });
  const cooked = q.technique !== undefined && safetyTables(store).hazards.cookedThrough.includes(q.technique);
  if (change.to.kind === "egg") {
    // Egg stirred into what is cooked through anyway needs no word; raw egg has hazards of its own.
    if (!cooked && change.raised && !(q.technique !== undefined && STAYS_RAW.includes(q.technique)))
      notes.cautions.push(said("note"));
  } else if (!change.raised) notes.cautions.push(said("note"));
  else {
    notes.required.push({ what: { ...change.step, hazard: "doneness" }, of: i.id, rank: 0 });
    notes.cautions.push(said("stop"));
    notes.stops.push({
      kind: "unless",
      hazard: "doneness",
      because: "hazard",
      ingredient: i.id,
      detail: change.text,
      sources: change.to.sources,
    });
  }
}

/** What the diners' own allergies and diets add: relatives of an allergen, buying halal, meat beside milk. */
function table(store: SafetyStore, q: Asked, i: Ingredient, notes: Notes): void {
  const { rules } = q;
  if (!rules) return;
  const say = (what: Caution, alike?: string): void => {
    notes.cautions.push({ what, of: i.id, rank: -1, ...(alike === undefined ? {} : { alike }) });
  };
  for (const c of safetyTables(store).allergens.cross) {
    const from = rules.allergens.find((a) => c.from.includes(a));
    if (from !== undefined && fits(store, i, c.when))
      say({
        hazard: `cross-reaction: ${c.id}`,
        severity: "caution",
        who: `allergic to ${from}`,
        text: c.text,
        sources: refs(c.sources),
      });
  }
  for (const diet of rules.diets) {
    const said = dietEntry(store, diet).rules;
    for (const what of dietAnswer(store, i, diet, q.technique).cautions)
      say(what, said.find((rule) => rule.id === what.hazard)?.alike);
  }
  const others = [...(q.dish ?? []), ...q.use.map((u) => u.ingredient)].filter(
    (o) => o.id !== i.id && o.id !== q.missing?.id,
  );
  for (const conflict of apartIn(store, [i, ...others], rules)) {
    if (!conflict.between.includes(i.id)) continue;
    if (conflict.severity === "stop")
      notes.stops.push({
        kind: "diner",
        hazard: conflict.hazard,
        because: "diet",
        ingredient: i.id,
        detail: conflict.text,
        sources: conflict.sources,
      });
    else
      say({
        hazard: conflict.hazard,
        severity: conflict.severity,
        who: conflict.who,
        text: conflict.text,
        sources: conflict.sources,
      });
  }
}

const minutes = (s: RequiredStep): number => s.active + s.waiting;

/** Of steps of one kind for one ingredient: a diner's first, then the one with the food's own temperature, then the longest, which does what the shorter would. */
function oneOfAKind(steps: Notes["required"]): Step[] {
  const kept = new Map<string, Said<Step>>();
  for (const step of steps) {
    const key = `${step.of}\n${step.what.procedure}`;
    const old = kept.get(key);
    if (!old || step.rank < old.rank || (step.rank === old.rank && minutes(step.what) >= minutes(old.what)))
      kept.set(key, step);
  }
  return [...new Map([...kept.values()].map(({ what }) => [`${what.procedure}\n${what.text}`, what])).values()];
}

/** Of cautions that say much the same of one ingredient, the one that counts. */
function gravest(said: Notes["cautions"]): Caution[] {
  const best = new Map<string, Said<Caution>>();
  for (const s of said) {
    const key = `${s.of}\n${s.alike ?? ""}`;
    const old = best.get(key);
    if (s.alike !== undefined && (!old || s.rank <= old.rank)) best.set(key, s);
  }
  return said.filter((s) => s.alike === undefined || best.get(`${s.of}\n${s.alike}`) === s).map((s) => s.what);
}

/**
 * The hazards of using these in place of what is missing: raised by the swap (what the stand-in brings and the missing had
 * not), the technique, the role, the amount, the rest of the dish, or who is at the table.
 * @returns stops (of kind never and diner to be refused, of kind unless to be offered with `required`), steps and cautions
 */
export function hazardsFor(store: SafetyStore, question: HazardQuestion): HazardAnswer {
  const q = asked(question);
  const notes: Notes = { stops: [], required: [], cautions: [] };
  for (const { ingredient, grams } of q.use) {
    for (const h of hazardsOf(store, ingredient))
      if (raised(store, h, q, ingredient, grams)) judge(store, h, q, ingredient, notes);
    heat(store, q, ingredient, notes);
    table(store, q, ingredient, notes);
  }
  const once = <T>(items: readonly T[], key: (item: T) => string): T[] =>
    [...new Map(items.map((item) => [key(item), item] as const).reverse()).values()].reverse();
  const cautions = once(gravest(notes.cautions), (c) => `${c.hazard}\n${c.severity}\n${c.text}`);
  return freeze({
    stops: once(notes.stops, (s) => `${s.kind}\n${s.hazard}\n${s.ingredient}`),
    required: oneOfAKind(notes.required),
    cautions: cautions.sort((a, b) => GRAVITY[a.severity] - GRAVITY[b.severity]),
  });
}

/**
 * Why the missing ingredient may not be left out: acid in a canned recipe, salt in a ferment, curing salt. Undefined when leaving it out
 * harms nobody.
 */
export function neverWithout(store: SafetyStore, question: Omit<HazardQuestion, "use">): string | undefined {
  const { missing } = question;
  if (missing === undefined) return undefined;
  const q = asked({ ...question, use: [] });
  // The later in the table is the more particular.
  const rule = safetyTables(store).hazards.hazards.findLast((h) => keepsSafe(store, h, q, missing));
  return rule && textOf(store, rule, q, missing);
}
