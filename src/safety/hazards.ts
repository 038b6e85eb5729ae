import type { HazardRule, RequiredStep } from "../catalogue/safety-tables.js";
import type { Ingredient } from "../catalogue/store.js";
import { freeze } from "../errors.js";
import type { Caution, SourceRef } from "../types.js";
import { allergenFacts } from "./allergens.js";
import { dietAnswer } from "./diets.js";
import { donenessChange } from "./doneness.js";
import { matches } from "./match.js";
import { apartIn } from "./meal.js";
import { asked, brought, raised, type Asked, type HazardQuestion } from "./raise.js";
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
interface Notes {
  readonly stops: Stop[];
  readonly required: (RequiredStep & { readonly hazard: string })[];
  readonly cautions: Caution[];
}

const UNSOURCED = "No publication was read for this; it rests on common knowledge.";

function textOf(h: HazardRule): string {
  return [h.text, h.conflict, h.severity === "stop" && unsourced(h.sources) ? UNSOURCED : undefined]
    .filter((part) => part !== undefined)
    .join(" ");
}
const cautionOf = (h: HazardRule, severity: Caution["severity"]): Caution => ({
  hazard: h.id,
  severity,
  who: h.who,
  text: textOf(h),
  sources: refs(h.sources),
});
const stopOf = (h: HazardRule, kind: Stop["kind"], i: Ingredient): Stop => ({
  kind,
  hazard: h.id,
  because: "hazard",
  ingredient: i.id,
  detail: textOf(h),
  sources: refs(h.sources),
});

function require(notes: Notes, h: HazardRule, i: Ingredient): void {
  notes.stops.push(stopOf(h, "unless", i));
  if (h.step) notes.required.push({ ...h.step, hazard: h.id });
  notes.cautions.push(cautionOf(h, "stop"));
}

function judge(store: SafetyStore, h: HazardRule, q: Asked, i: Ingredient, notes: Notes): void {
  const present = h.diners?.some((d) => q.rules?.diets.includes(d)) === true;
  const speaks = h.always === true || brought(store, h, q);
  const cooked =
    h.unlessCooked === true &&
    q.technique !== undefined &&
    safetyTables(store).hazards.cookedThrough.includes(q.technique);
  if (h.stop === "never") notes.stops.push(stopOf(h, "never", i));
  else if (h.stop === "unless") {
    if (h.diners !== undefined && !present) {
      if (speaks) notes.cautions.push(cautionOf(h, "caution"));
    } else if (q.technique !== undefined && h.never?.includes(q.technique)) notes.stops.push(stopOf(h, "never", i));
    else require(notes, h, i);
  } else if (h.stop === "diner" && present) {
    if (cooked) require(notes, h, i);
    else notes.stops.push(stopOf(h, "diner", i));
  } else if (speaks) notes.cautions.push(cautionOf(h, h.stop === "diner" ? "caution" : h.severity));
}

/** Poultry for beef, mince for a whole cut, fresh for cured: the temperature the dish must now reach. */
function heat(store: SafetyStore, q: Asked, i: Ingredient, notes: Notes): void {
  const change =
    q.missing &&
    donenessChange(store, q.missing, i, q.jurisdiction === undefined ? {} : { jurisdiction: q.jurisdiction });
  if (!change) return;
  const caution = (severity: Caution["severity"]): Caution => ({
    hazard: "doneness",
    severity,
    who: "everyone",
    text: change.text,
    sources: change.to.sources,
  });
  const cooked = q.technique !== undefined && safetyTables(store).hazards.cookedThrough.includes(q.technique);
  if (change.to.kind === "egg") {
    // Egg stirred into what is cooked through anyway needs no word; raw egg has hazards of its own.
    if (!cooked && change.raised) notes.cautions.push(caution("note"));
  } else if (!change.raised) notes.cautions.push(caution("note"));
  else {
    notes.required.push({ ...change.step, hazard: "doneness" });
    notes.cautions.push(caution("stop"));
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
  const facts = allergenFacts(store, i);
  for (const c of safetyTables(store).allergens.cross) {
    const from = rules.allergens.find((a) => c.from.includes(a));
    if (from !== undefined && matches(store, i, facts, c.when))
      notes.cautions.push({
        hazard: `cross-reaction: ${c.id}`,
        severity: "caution",
        who: `allergic to ${from}`,
        text: c.text,
        sources: refs(c.sources),
      });
  }
  for (const diet of rules.diets) notes.cautions.push(...dietAnswer(store, i, diet, q.technique).cautions);
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
      notes.cautions.push({
        hazard: conflict.hazard,
        severity: conflict.severity,
        who: conflict.who,
        text: conflict.text,
        sources: conflict.sources,
      });
  }
}

const GRAVITY = { stop: 0, caution: 1, note: 2 } as const;
const minutes = (s: RequiredStep): number => s.active + s.waiting;

/** One step of a kind is enough: the longest, since it does what the shorter would; of equals the later, which is the more particular. */
function longest(steps: Notes["required"]): Notes["required"] {
  const kept = new Map<string, Notes["required"][number]>();
  for (const step of steps) {
    const key = step.hazard === "doneness" ? "cook-through" : step.procedure;
    const old = kept.get(key);
    if (!old || (old.hazard !== "doneness" && (step.hazard === "doneness" || minutes(step) >= minutes(old))))
      kept.set(key, step);
  }
  return [...kept.values()];
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
    for (const h of safetyTables(store).hazards.hazards)
      if (raised(store, h, q, ingredient, grams)) judge(store, h, q, ingredient, notes);
    heat(store, q, ingredient, notes);
    table(store, q, ingredient, notes);
  }
  const once = <T>(items: readonly T[], key: (item: T) => string): T[] =>
    [...new Map(items.map((item) => [key(item), item] as const).reverse()).values()].reverse();
  const cautions = once(notes.cautions, (c) => `${c.hazard}\n${c.severity}\n${c.text}`);
  return freeze({
    stops: once(notes.stops, (s) => `${s.kind}\n${s.hazard}\n${s.ingredient}`),
    required: longest(notes.required),
    cautions: cautions.sort((a, b) => GRAVITY[a.severity] - GRAVITY[b.severity]),
  });
}
