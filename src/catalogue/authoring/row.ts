import type { FlatIngredient, NameRow } from "../compiled.js";
import type { Authored, From } from "./compile.js";
import { sourceOf, type Calculator } from "./calculated.js";
import type { CompositionLookup, CompositionRecord } from "./composition.js";
import { mergeFacts, type Merged } from "./merge.js";
import type { Refs } from "./refs.js";
import type { Cited, FoodRecord, KindRecord, StateRecord } from "./schema.js";
import { stateAdjective, stateWords } from "./statename.js";
import type { Terms } from "./terms.js";

/** The kind and its ancestors, nearest first. Stops at a loop or an unknown parent (both are reported by rules). */
export function lineage(kind: string, kinds: ReadonlyMap<string, KindRecord>): KindRecord[] {
  const line: KindRecord[] = [];
  for (let k = kinds.get(kind); k && !line.includes(k); k = k.parent === undefined ? undefined : kinds.get(k.parent))
    line.push(k);
  return line;
}

interface Slot {
  readonly food: FoodRecord;
  readonly file: string;
  readonly partName?: string;
  readonly stateName: string;
  readonly state: StateRecord;
}

/** Every (food, part, state) of the authored foods, in file order. */
export function eachState(foods: readonly From<FoodRecord>[]): Slot[] {
  const slots: Slot[] = [];
  for (const { file, data: food } of foods) {
    for (const [stateName, state] of Object.entries(food.states ?? {})) slots.push({ food, file, stateName, state });
    for (const [partName, part] of Object.entries(food.parts ?? {})) {
      for (const [stateName, state] of Object.entries(part.states))
        slots.push({ food, file, partName, stateName, state });
    }
  }
  return slots;
}

/** What tables of composition lack and freezing leaves as it was: said of the fresh food, it holds for the frozen one. */
const KEPT_FROZEN = ["acid", "free glutamate", "inosinate", "guanylate", "pungency", "aroma strength"];

const foodKey = (slot: Slot): string =>
  slot.partName === undefined ? slot.food.food : `${slot.food.food}.${slot.partName}`;
export const idOf = (slot: Slot): string => `${foodKey(slot)}/${slot.stateName}`;

function namesOf(slot: Slot): NameRow[] {
  const rows: NameRow[] = [];
  const part = slot.partName === undefined ? undefined : slot.food.parts?.[slot.partName];
  const add = (names: Record<string, string[]> | undefined, of: NameRow["of"]): void => {
    for (const tag of Object.keys(names ?? {}).sort())
      for (const text of names?.[tag] ?? []) rows.push({ tag, text, of });
  };
  add(slot.state.names, "state");
  add(part ? part.names : slot.food.names, part ? "part" : "food");
  return rows;
}

function displayName(slot: Slot, isDefault: boolean, terms: Terms): readonly [string, string] {
  const { state } = slot;
  if (state.display) return [state.display["en-US"], state.display["en-GB"] ?? state.display["en-US"]];
  const base = (slot.partName === undefined ? undefined : slot.food.parts?.[slot.partName]?.names) ?? slot.food.names;
  const us = base["en"]?.[0] ?? base["en-US"]?.[0] ?? slot.food.food;
  const gb = base["en-GB"]?.[0] ?? us;
  if (isDefault) return [us, gb];
  const own = state.names?.["en"]?.[0] ?? state.names?.["en-US"]?.[0];
  if (own !== undefined) return [own, state.names?.["en-GB"]?.[0] ?? own];
  const words = stateWords(slot.stateName, terms) ?? [slot.stateName];
  const with_ = (adjective: string, name: string): string => (adjective === "" ? name : `${adjective} ${name}`);
  return [with_(stateAdjective(words, false), us), with_(stateAdjective(words, true), gb)];
}

function recordsOf(state: StateRecord, look: CompositionLookup): CompositionRecord[] {
  const list = typeof state.composition === "string" ? [state.composition] : (state.composition ?? []);
  return list.flatMap((reference) => look(reference) ?? []);
}

/** Stages and attributes in the vocabulary's order; empty stages left out, as the columns give them back. */
function orderedTexture(texture: Merged["texture"], names: readonly string[]): Merged["texture"] {
  const stages: Merged["texture"] = {};
  for (const stage of ["raw", "cooked", "long"]) {
    const scale = texture[stage];
    const kept = names
      .filter((n) => scale?.[n] !== undefined)
      .map((n) => [n, Math.round((scale?.[n] ?? 0) * 2) / 2] as const);
    if (kept.length > 0) stages[stage] = Object.fromEntries(kept);
  }
  return stages;
}

/** Figures the rules look at in the table itself; nothing at run time asks for them, so they are not shipped. */
const CHECK_ONLY: readonly string[] = ["ash", "total glutamic acid", "saturated fat", "cholesterol", "potassium"];

function figuresOf(
  slot: Slot,
  records: readonly CompositionRecord[],
  calculated: Calculator,
  refs: Refs,
): Record<string, readonly [number, number]> {
  const figures: Record<string, readonly [number, number]> = {};
  const add = (from: Readonly<Record<string, number>>, ...source: Parameters<Refs["of"]>): void => {
    for (const [name, value] of Object.entries(from))
      if (!CHECK_ONLY.includes(name)) figures[name] ??= [value, refs.of(...source)];
  };
  for (const record of records) add(record.figures, record.key, record.record);
  const made = records.length === 0 ? calculated(idOf(slot)) : undefined;
  if (made) add(made.figures, ...sourceOf(made.from), "calculated");
  for (const [name, cited] of Object.entries(slot.state.figures ?? {})) figures[name] = refs.cited(cited);
  if (slot.stateName.startsWith("frozen")) {
    const states = slot.partName === undefined ? slot.food.states : slot.food.parts?.[slot.partName]?.states;
    const fresh = states?.["fresh"]?.figures ?? {};
    for (const name of KEPT_FROZEN) {
      const cited = fresh[name];
      if (cited) figures[name] ??= refs.cited(cited);
    }
  }
  return figures;
}

/** A household weight is found by its record; the measure's own words are the record's. */
const weightRecord = (
  key: string,
  at: string | undefined,
  records: readonly CompositionRecord[],
): string | undefined =>
  key === "usda-sr28" ? (at?.match(/\b\d{5}\b/)?.[0] ?? records.find((r) => r.key === key)?.record ?? at) : at;

function unknownAllergens(facts: Merged, all: readonly string[]): string[] {
  const { contains, may, unknown } = facts.allergens;
  if (!facts.openRecipe) return unknown;
  return all.filter((a) => !contains.includes(a) && !may.includes(a));
}

/** Yields by technique: what kind and food say, over them the state's plain yield when it says what it was measured by, over that its own. */
function cookedByOf(facts: Merged, state: StateRecord, refs: Refs): Pick<FlatIngredient, "cookedBy"> {
  const plain = state.cooked?.technique;
  const by = {
    ...facts.cookedBy,
    ...(plain === undefined ? {} : { [plain]: state.cooked as Cited }),
    ...state.cookedBy,
  };
  const rows = Object.entries(by).sort(([a], [b]) => (a < b ? -1 : 1));
  return rows.length === 0 ? {} : { cookedBy: Object.fromEntries(rows.map(([t, c]) => [t, refs.cited(c)])) };
}

export function flatIngredient(
  slot: Slot,
  ctx: {
    authored: Authored;
    kinds: ReadonlyMap<string, KindRecord>;
    look: CompositionLookup;
    calculated: Calculator;
    refs: Refs;
    allergens: readonly string[];
    known: ReadonlySet<string>;
    athand: (id: string) => number;
  },
): FlatIngredient {
  const { food, state, partName } = slot;
  const { refs } = ctx;
  const part = partName === undefined ? undefined : food.parts?.[partName];
  const kind = state.kind ?? part?.kind ?? food.kind;
  const partFacts = part ? (({ names: _names, kind: _kind, states: _states, ...rest }) => rest)(part) : undefined;
  const facts = mergeFacts(lineage(kind, ctx.kinds), food, partFacts, state);
  const siblings = Object.keys((part ?? food).states ?? {});
  const isDefault = state.default === true || (siblings.length === 1 && !ctx.known.has(foodKey(slot)));
  const records = recordsOf(state, ctx.look);
  const refuse = records[0]?.refuse;
  const sortKeys = <T>(o: Readonly<Record<string, T>>): Record<string, T> =>
    Object.fromEntries(Object.entries(o).sort(([a], [b]) => (a < b ? -1 : 1)));
  return {
    id: idOf(slot),
    food: food.food,
    ...(partName === undefined ? {} : { part: partName }),
    state: stateWords(slot.stateName, ctx.authored.terms) ?? [slot.stateName],
    isDefault,
    name: displayName(slot, isDefault, ctx.authored.terms),
    names: namesOf(slot),
    kind,
    roles: facts.roles,
    ...(facts.slot === undefined ? {} : { slot: facts.slot }),
    can: [...facts.can].sort(),
    cannot: [...facts.cannot].sort(),
    texture: orderedTexture(facts.texture, ctx.authored.terms.texture),
    flavour: sortKeys(facts.flavour),
    aroma: sortKeys(Object.fromEntries(Object.entries(facts.aroma).map(([k, v]) => [k, Math.round(v * 2) / 2]))),
    dominant: facts.dominant,
    origin: [...facts.origin].sort(),
    tags: [...facts.tags].sort(),
    contains: facts.allergens.contains,
    may: facts.allergens.may,
    unknown: unknownAllergens(facts, ctx.allergens),
    figures: figuresOf(slot, records, ctx.calculated, refs),
    measures: Object.entries(state.measures ?? {}).map(([unit, m]) => {
      const space = unit.indexOf(" ");
      return [
        space < 0 ? unit : unit.slice(0, space),
        space < 0 ? "" : unit.slice(space + 1),
        m.g,
        refs.of(m.from, weightRecord(m.from, m.at, records)),
      ] as const;
    }),
    ...(state.usual === undefined ? {} : { usual: state.usual }),
    edible: state.edible?.v ?? (refuse === undefined ? 1 : Math.round(100 - refuse) / 100),
    ...(state.cooked ? { cooked: refs.cited(state.cooked) } : {}),
    ...cookedByOf(facts, state, refs),
    ...(state.ready
      ? {
          ready: {
            by: state.ready.by,
            yield: state.ready.yield.v,
            ...(state.ready.salt ? { salt: state.ready.salt.v } : {}),
            source: refs.of(state.ready.yield.from, state.ready.yield.at, state.ready.yield.grade),
          },
        }
      : {}),
    becomes: (state.becomes ?? []).map((b) => ({
      to: b.to.includes("/") ? b.to : `${foodKey(slot)}/${b.to}`,
      by: b.by,
      yield: b.yield.v,
      ...(b.minutes ? { minutes: b.minutes } : {}),
      source: refs.of(b.yield.from, b.yield.at, b.yield.grade),
    })),
    minutes: Object.fromEntries(Object.entries(facts.minutes).map(([technique, c]) => [technique, refs.cited(c)])),
    cost: facts.cost ?? 4,
    athand: ctx.athand(idOf(slot)),
    ...(facts.colour === undefined ? {} : { colour: facts.colour }),
    ...(facts.starchKind === undefined ? {} : { starchKind: facts.starchKind }),
    ...(facts.acidKind === undefined ? {} : { acidKind: facts.acidKind }),
    ...(facts.pungencyKind === undefined ? {} : { pungencyKind: facts.pungencyKind }),
    traditions: food.traditions ?? [],
  };
}
