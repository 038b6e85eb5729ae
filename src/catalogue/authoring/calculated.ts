import type { Authored } from "./compile.js";
import type { CompositionLookup, CompositionRecord } from "./composition.js";
import type { Calculated, StateRecord } from "./schema.js";
import { eachState, idOf } from "./row.js";

/** Of what a food's figures were calculated: 1 is from records alone, 2 from something that was calculated from records itself. */
export const DEEPEST = 2;
/** Parts without a figure may make up so much of the weight (of the carbohydrate, for what is one); the rest then speaks for them. */
const LACKING = 0.05;
const OF_CARBOHYDRATE = ["sugars", "sucrose", "glucose", "fructose", "lactose", "maltose", "starch", "fibre"];
/** Tables that leave this out found none to look for. */
const NONE_UNLESS_SAID = "alcohol";
/** Two digits, and none after the first place, say as much as a calculation knows; water as it was given or came out. */
const DIGITS = 2;
const PLACES = 1;

/** Figures per 100 g worked out from records, and the records: what `composition` gives where a record is published. */
export interface CalculatedRecord {
  readonly figures: Figures;
  /** The records behind it, the one that weighs most first; each once. */
  readonly from: readonly CompositionRecord[];
}
/** What an ingredient was calculated to hold, by its id, or what a recipe comes to. */
export type Calculator = (what: string | Calculated) => CalculatedRecord | undefined;

type Figures = Readonly<Record<string, number>>;
/** How much of a part's weight, or of its carbohydrate, has no such figure. */
function without(name: string, figures: Figures): number {
  if (name === NONE_UNLESS_SAID) return 0;
  return OF_CARBOHYDRATE.includes(name) ? Math.max(0, figures["carbohydrate"] ?? 100) : 1;
}

const round = (v: number, digits = DIGITS): number => Number(Number(v.toPrecision(digits)).toFixed(PLACES));

/**
 * Recipe calculation and calculation from another form: each figure is the sum of what the parts bring; where the finished food holds
 * more or less water than they do together, the rest is spread over the weight that makes. Nothing but water is taken to be lost or won.
 * @param parts shares of the weight (they sum to 1) with figures per 100 g
 * @param water g per 100 g of the finished food; that of the parts when left out
 */
export function mix(
  parts: readonly { readonly share: number; readonly figures: Figures }[],
  water?: number,
): Record<string, number> {
  const raw: Record<string, number> = {};
  const names = new Set(parts.flatMap((p) => Object.keys(p.figures)));
  for (const name of names) {
    let sum = 0;
    let lacking = 0;
    let all = 0;
    for (const { share, figures } of parts) {
      const v = figures[name];
      if (v !== undefined) sum += share * v;
      else lacking += share * without(name, figures);
      all += share * without(name, figures);
    }
    const rest = all === 0 ? 0 : lacking / all;
    if (rest <= LACKING) raw[name] = sum / (1 - rest);
  }
  const had = raw["water"];
  const scale = water === undefined || had === undefined || had >= 100 ? 1 : (100 - water) / (100 - had);
  return Object.fromEntries(
    Object.entries(raw)
      .map(([name, v]) => [name, name === "water" ? round(water ?? v, 3) : round(v * scale)] as const)
      .filter(([name, v]) => v > 0 || name !== NONE_UNLESS_SAID),
  );
}

export const recordNames = (state: StateRecord): readonly string[] =>
  typeof state.composition === "string" ? [state.composition] : (state.composition ?? []);

/** Figures of a state with records: the first record before the next, and over them what was written by hand of the same figures. */
function published(state: StateRecord, records: readonly CompositionRecord[]): Record<string, number> {
  const figures: Record<string, number> = {};
  for (const record of records) for (const [name, v] of Object.entries(record.figures)) figures[name] ??= v;
  for (const [name, { v }] of Object.entries(state.figures ?? {})) if (name in figures) figures[name] = v;
  return figures;
}

/** Answers for every ingredient that is calculated; undefined for all others, and where a part is missing or goes in a circle. */
export function calculator(authored: Authored, look: CompositionLookup): Calculator {
  const states = new Map(eachState(authored.foods).map((slot) => [idOf(slot), slot.state]));
  const made = new Map<string, CalculatedRecord | undefined>();
  const partOf = (name: string): CalculatedRecord | undefined => {
    const record = look(name);
    if (record) return { figures: record.figures, from: [record] };
    const state = states.get(name);
    const records = state ? recordNames(state).flatMap((r) => look(r) ?? []) : [];
    if (state === undefined || records.length === 0) return calculate(name);
    return { figures: published(state, records), from: records.slice(0, 1) };
  };
  const work = ({ parts, water }: Calculated): CalculatedRecord | undefined => {
    const known = Object.entries(parts)
      .sort(([, a], [, b]) => b - a)
      .flatMap(([name, share]) => {
        const part = partOf(name);
        return part === undefined ? [] : [{ ...part, share }];
      });
    if (known.length < Object.keys(parts).length) return undefined;
    return { figures: mix(known, water?.v), from: [...new Set(known.flatMap((part) => part.from))] };
  };
  const calculate = (id: string): CalculatedRecord | undefined => {
    const recipe = states.get(id)?.calculated;
    if (recipe === undefined || made.has(id)) return made.get(id);
    made.set(id, undefined); // what is being worked out is no part of itself
    const result = work(recipe);
    made.set(id, result);
    return result;
  };
  return (what) => (typeof what === "string" ? calculate(what) : work(what));
}

/** How the source of calculated figures is written: under the table of the heaviest part, all record numbers, other tables named. */
export function sourceOf(from: readonly CompositionRecord[]): readonly [key: string, at: string] {
  const key = from[0]?.key ?? "judgement";
  return [key, from.map((r) => (r.key === key ? r.record : `${r.key} ${r.record}`)).join(" ")];
}
