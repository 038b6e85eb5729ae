import { nameSwaps, type Commons, type Flat, type PackedProcedure, type PackedSwap } from "../compiled.js";
import { calculator } from "./calculated.js";
import type { CompositionLookup } from "./composition.js";
import type { FoodRecord, KindRecord, PairingRecord, ProcedureRecord, SwapRecord } from "./schema.js";
import { encodePairings, type PackedPairings } from "../pairing-columns.js";
import { Refs, inOrder } from "./refs.js";
import { eachState, flatIngredient, lineage } from "./row.js";
import type { Sources, Terms } from "./terms.js";

/** A record with the file it was read from, so that a message can name both. */
export interface From<T> {
  readonly file: string;
  readonly data: T;
}
export interface Authored {
  readonly terms: Terms;
  readonly sources: Sources;
  readonly kinds: readonly From<KindRecord>[];
  readonly foods: readonly From<FoodRecord>[];
  readonly procedures: readonly From<ProcedureRecord>[];
  readonly swaps: readonly From<SwapRecord>[];
  /** Left out where there are none: a user's own file holds no pairings. */
  readonly pairings?: readonly From<PairingRecord>[];
  readonly tables: Readonly<Record<string, unknown>>;
}
/** What is wrong, where, and what would mend it. */
export interface Problem {
  readonly file: string;
  readonly record: string;
  readonly rule: string;
  readonly message: string;
}
export { eachState, idOf, lineage } from "./row.js";

/**
 * Records in, rows out. `known` are foods and parts that have their states already: a single state added to one is not its default.
 * Never throws on well-shaped records; what does not fit together is for the rules to say.
 */
export function compile(
  authored: Authored,
  look: CompositionLookup,
  allergens: readonly string[],
  known: ReadonlySet<string> = new Set(),
): Flat {
  const refs = new Refs();
  const kinds = new Map(authored.kinds.map(({ data }) => [data.kind, data]));
  // Said once in the rows, so the lists themselves are not shipped.
  const { everyday, ...tables } = authored.tables;
  const calculated = calculator(authored, look);
  const ctx = { authored, kinds, look, calculated, refs, allergens, known, athand: atHand(everyday) };
  const place = new Map(
    [...kinds.keys()].map((kind) => [
      kind,
      lineage(kind, kinds)
        .map((k) => k.kind)
        .reverse()
        .join(">"),
    ]),
  );
  const ingredients = eachState(authored.foods)
    .map((slot) => flatIngredient(slot, ctx))
    .sort((a, b) => {
      // Kin beside kin: neighbours share most of what the columns hold, which then packs far smaller.
      const x = place.get(a.kind) ?? a.kind;
      const y = place.get(b.kind) ?? b.kind;
      return x < y ? -1 : x > y ? 1 : a.id < b.id ? -1 : a.id > b.id ? 1 : 0;
    });
  const procedures: PackedProcedure[] = authored.procedures
    .map(({ data: { minutes, quick, byProduct, safety, ...p } }) => ({
      ...p,
      minutes: { active: minutes.active, waiting: minutes.waiting },
      source: refs.of(minutes.from),
      ...(quick ? { quick: { text: quick.text, active: quick.minutes.active, waiting: quick.minutes.waiting } } : {}),
      ...(byProduct
        ? {
            byProduct: {
              name: byProduct.name,
              replaceWith: byProduct.replaceWith,
              gramsPerGram: byProduct.gramsPerGram,
              role: byProduct.role,
            },
          }
        : {}),
      ...(safety === undefined ? {} : { safety }),
    }))
    .sort((a, b) => (a.id < b.id ? -1 : 1));
  const order = new Map(ingredients.map((row, i) => [row.id, i]));
  const swaps: PackedSwap[] = nameSwaps(
    authored.swaps
      .flatMap(({ data }) => packSwap(data, refs))
      .sort((a, b) => (order.get(a.replaces.id) ?? -1) - (order.get(b.replaces.id) ?? -1) || (a.id < b.id ? -1 : 1))
      .map(({ id: _id, ...swap }) => swap),
  );
  const { terms } = authored;
  const commons: Commons = {
    roles: { ...terms.role, ...terms["extra role"] },
    vocabulary: {
      role: [...Object.keys(terms.role), ...Object.keys(terms["extra role"])],
      technique: terms.technique,
      allergen: allergens,
      preservation: Object.keys(terms.preservation),
      heat: Object.keys(terms.heat),
      form: Object.keys(terms.form),
      unit: terms.unit,
      slot: terms.slot,
      texture: terms.texture,
      aroma: terms.aroma,
      note: terms.note,
      capability: terms.capability,
      origin: terms.origin,
      tradition: terms.tradition,
    },
    figures: Object.fromEntries(Object.entries(terms.figure).map(([name, f]) => [name, { unit: f.unit }])),
    tags: terms.tag,
    // Titles of what is cited here; who published it and when stays with the data.
    sources: Object.fromEntries(
      Object.entries(authored.sources)
        .filter(([key]) => refs.list.some(([cited]) => cited === key))
        .map(([key, s]) => [key, { title: s.title }]),
    ),
    refs: refs.list,
    kinds: authored.kinds
      .map(({ data }) => [data.kind, data.parent ?? ""] as const)
      .sort(([a], [b]) => (a < b ? -1 : 1)),
    procedures,
    tombstones: Object.fromEntries(
      authored.foods.flatMap(({ data }) => Object.entries(data.formerIds ?? {})).sort(([a], [b]) => (a < b ? -1 : 1)),
    ),
    tables,
  };
  return inOrder({ commons, ingredients, swaps });
}

/** How likely a kitchen has an ingredient, by the two lists. Where nothing is said, as of an extension's foods: as a supermarket has it. */
function atHand(everyday: unknown): (id: string) => number {
  if (everyday === undefined) return () => 1;
  const { kitchen, supermarket } = everyday as Readonly<Record<string, unknown>>;
  const set = (list: unknown): ReadonlySet<unknown> => new Set(Array.isArray(list) ? list : []);
  const [most, shops] = [set(kitchen), set(supermarket)];
  return (id) => (most.has(id) ? 2 : shops.has(id) ? 1 : 0);
}

/** The settings of a swap in order of the alphabet: which comes first says nothing, and what is alike packs to less. */
const settings = (context: string): string =>
  context.includes("(") ? context : [...new Set(context.split(", "))].sort().join(", ");

/** `both` writes the swap the other way round too, without amounts, which do not invert. */
function packSwap(s: SwapRecord, refs: Refs): PackedSwap[] {
  const common = {
    ...(s.role === undefined ? {} : { role: s.role }),
    ...(s.context === undefined ? {} : { context: settings(s.context) }),
    ...(s.techniques === undefined ? {} : { techniques: s.techniques }),
    ...(s.tradition === undefined ? {} : { tradition: s.tradition }),
    ...(s.change === undefined ? {} : { change: s.change }),
    sources: s.from.map((f) => {
      const colon = f.indexOf(":");
      return colon < 0 ? refs.of(f) : refs.of(f.slice(0, colon), f.slice(colon + 1));
    }),
  };
  const use = (u: SwapRecord["uses"][number]): PackedSwap["uses"][number] => ({
    id: u.food,
    ...(u.amount === undefined ? {} : { amount: u.amount }),
    ...(u.ratio === undefined ? {} : { ratio: u.ratio }),
  });
  const forward: PackedSwap = {
    id: s.id,
    replaces: { id: s.replaces.food, ...(s.replaces.amount === undefined ? {} : { amount: s.replaces.amount }) },
    uses: s.uses.map(use),
    ...common,
  };
  if (s.both !== true) return [forward];
  return [
    forward,
    ...s.uses.map((u) => ({
      id: `${s.id}--back-${u.food}`,
      replaces: { id: u.food },
      uses: [{ id: s.replaces.food }],
      ...common,
    })),
  ];
}

/** Pairings as the columns that ship beside the foods. */
export const packPairings = (authored: Authored): PackedPairings =>
  encodePairings(
    (authored.pairings ?? []).map(({ data: { from, ...p } }) => ({
      with: p.with,
      basis: p.basis,
      ...(p.tradition === undefined ? {} : { tradition: p.tradition }),
      why: p.why,
      sources: from.map((f) => {
        const colon = f.indexOf(":");
        return colon < 0 ? { key: f } : { key: f.slice(0, colon), at: f.slice(colon + 1) };
      }),
    })),
  );
