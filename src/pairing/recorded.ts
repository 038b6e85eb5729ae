import { recordedPairings, type Ingredient, type PairingRow, type Store } from "../catalogue/index.js";

/** One end of a record: a food or part in any state, or one ingredient. */
export interface Side {
  readonly key: string;
  readonly food: string;
  readonly part?: string;
  /** Only this state is meant. */
  readonly only?: string;
  /** What is shown for it: the ingredient named, else its usual state. */
  readonly shown: Ingredient;
}
export interface Recorded {
  readonly sides: readonly [Side, Side];
  readonly row: PairingRow;
}
const made = new WeakMap<Store, readonly Recorded[]>();
const keyOf = (i: Ingredient): string => (i.part === undefined ? i.food : `${i.food}.${i.part}`);

/** The records whose foods this catalogue has, with what is shown for each; made once a store, when first asked for. */
export function recordsOf(store: Store): readonly Recorded[] {
  const known = made.get(store);
  if (known) return known;
  const usual = new Map<string, Ingredient>();
  for (const i of store.ingredients) {
    const before = usual.get(keyOf(i));
    if (before === undefined || (i.isDefault && !before.isDefault)) usual.set(keyOf(i), i);
  }
  const side = (key: string): Side | undefined => {
    const one = store.byId.get(key);
    const shown = one ?? usual.get(key);
    if (shown === undefined) return undefined;
    const { food, part } = shown;
    return { key, food, shown, ...(part === undefined ? {} : { part }), ...(one === undefined ? {} : { only: key }) };
  };
  const records = recordedPairings().flatMap((row) => {
    const a = side(row.with[0]);
    const b = side(row.with[1]);
    return a && b ? [{ sides: [a, b] as const, row }] : [];
  });
  made.set(store, records);
  return records;
}

/** Whether an ingredient is what one end of a record means: 1 when it says so, less when the record is of its whole or of a part of it. */
export function means(side: Side, i: Ingredient): number {
  if (side.only !== undefined) return side.only === i.id ? 1 : 0;
  if (side.food !== i.food) return 0;
  if (side.part === i.part) return 1;
  return side.part === undefined || i.part === undefined ? 0.5 : 0;
}

/** A record of the whole may speak of a part in so many words; it then says nothing of another part. */
function speaksOfSibling(store: Store, record: Recorded, i: Ingredient): boolean {
  if (i.part === undefined) return false;
  const { why } = record.row;
  return partsOf(store, i.food).some((part) => part !== i.part && why.toLowerCase().includes(part));
}
const parts = new WeakMap<Store, ReadonlyMap<string, readonly string[]>>();
function partsOf(store: Store, food: string): readonly string[] {
  let known = parts.get(store);
  if (known === undefined) {
    const of = new Map<string, string[]>();
    for (const i of store.ingredients)
      if (i.part !== undefined && !of.get(i.food)?.includes(i.part))
        of.set(i.food, [...(of.get(i.food) ?? []), i.part]);
    parts.set(store, (known = of));
  }
  return known.get(food) ?? [];
}
/** The rest of a food is at hand when the food is bought fresh or as it usually is: no roe comes with salt cod. */
const bringsRest = (side: Side, i: Ingredient): boolean =>
  side.only === i.id || i.state.includes("fresh") || (i.isDefault && i.id === side.shown.id);

/** The other end of a record, and how well the record is meant of this ingredient; undefined when it is of other foods. */
export function otherEnd(
  store: Store,
  record: Recorded,
  i: Ingredient,
): { readonly other: Side; readonly fit: number } | undefined {
  const [a, b] = record.sides;
  const [x, y] = [means(a, i), means(b, i)];
  // Of two parts of what is asked for whole, the second is the rest that wants a use.
  const [mine, other, fit] = x > 0 && x >= y ? [a, b, x] : [b, a, y];
  if (fit === 0) return undefined;
  const rest = record.row.basis === "parts of one ingredient";
  if (rest ? !bringsRest(mine, i) : fit < 1 && speaksOfSibling(store, record, i)) return undefined;
  return { other, fit };
}

/** With what each food is recorded, by key. */
const company = new WeakMap<Store, ReadonlyMap<string, ReadonlySet<string>>>();
/** How much two keep the same company: partners both have, of those the less sociable has, 0 to 1. Few partners say little. */
export function sameCompany(store: Store, a: string, b: string): number {
  let known = company.get(store);
  if (known === undefined) {
    const of = new Map<string, Set<string>>();
    for (const { sides } of recordsOf(store))
      for (const [one, other] of [sides, [sides[1], sides[0]]] as const)
        of.set(one.key, (of.get(one.key) ?? new Set()).add(other.key));
    company.set(store, (known = of));
  }
  const x = known.get(a) ?? new Set<string>();
  const y = known.get(b) ?? new Set<string>();
  let common = 0;
  for (const key of x) if (y.has(key)) common++;
  return common / (Math.min(x.size, y.size) + 4);
}
