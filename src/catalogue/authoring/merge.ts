import type { Cited, FoodRecord, KindRecord, StateRecord } from "./schema.js";

type Shared = Omit<KindRecord, "kind" | "parent" | "text">;
/** What kind, food, part and state say together of one ingredient. */
export interface Merged {
  roles: Record<string, number>;
  slot?: string;
  can: string[];
  cannot: string[];
  texture: Record<string, Record<string, number>>;
  flavour: Record<string, number>;
  aroma: Record<string, number>;
  dominant: string[];
  origin: string[];
  tags: string[];
  allergens: { contains: string[]; may: string[]; unknown: string[] };
  openRecipe: boolean;
  minutes: Record<string, Cited>;
  cookedBy: Record<string, Cited>;
  cost?: number;
  colour?: string;
  starchKind?: string;
  acidKind?: string;
  pungencyKind?: string;
}

const union = (a: readonly string[], b: readonly string[] = []): string[] => [...a, ...b.filter((x) => !a.includes(x))];
const without = (a: readonly string[], b: readonly string[] = []): string[] => a.filter((x) => !b.includes(x));

/** Tags that cannot both be true of one food: the nearer word wins, as with `can` and `cannot`. */
const OPPOSITE: Readonly<Record<string, string>> = {
  "low fodmap": "high fodmap",
  "high fodmap": "low fodmap",
  "low lactose": "high lactose",
  "high lactose": "low lactose",
};
const opposites = (tags: readonly string[] = []): string[] =>
  tags.flatMap((t) => (OPPOSITE[t] === undefined ? [] : [OPPOSITE[t]]));

/** Lays `over` on `base`: single facts replace, lists of what is in it add up, scales merge word by word. */
function lay(base: Merged, over: Partial<Shared>): Merged {
  const texture = { ...base.texture };
  for (const [stage, scale] of Object.entries(over.texture ?? {})) texture[stage] = { ...texture[stage], ...scale };
  const merged: Merged = {
    roles: over.roles ?? base.roles,
    can: union(without(base.can, over.cannot), over.can),
    cannot: union(without(base.cannot, over.can), over.cannot),
    texture,
    flavour: { ...base.flavour, ...over.flavour },
    aroma: { ...base.aroma, ...over.aroma },
    dominant: over.dominant ?? base.dominant,
    origin: union(base.origin, over.origin),
    tags: union(without(base.tags, opposites(over.tags)), over.tags),
    allergens: {
      contains: union(base.allergens.contains, over.allergens?.contains),
      may: union(base.allergens.may, over.allergens?.may),
      unknown: union(base.allergens.unknown, over.allergens?.unknown),
    },
    openRecipe: over.openRecipe ?? base.openRecipe,
    minutes: { ...base.minutes, ...over.minutes },
    cookedBy: { ...base.cookedBy, ...over.cookedBy },
  };
  for (const field of ["slot", "cost", "colour", "starchKind", "acidKind", "pungencyKind"] as const) {
    const value = over[field] ?? base[field];
    if (value !== undefined) Object.assign(merged, { [field]: value });
  }
  return merged;
}

/** The jobs that put food on the plate: bones, fat and scattered bits of the same kind fill no slot. */
const SERVED: Readonly<Record<string, readonly string[]>> = {
  starch: ["starch base"],
  protein: ["main protein"],
  vegetable: ["bulk vegetable", "leafy green", "crunchy stem"],
};
/** Below this a job is done by the way. */
const BY_THE_WAY = 0.3;
const fills = ({ slot, roles }: Merged): boolean =>
  slot === undefined || (SERVED[slot]?.some((role) => (roles[role] ?? 0) >= BY_THE_WAY) ?? true);

const NOTHING: Merged = {
  roles: {},
  can: [],
  cannot: [],
  texture: {},
  flavour: {},
  aroma: {},
  dominant: [],
  origin: [],
  tags: [],
  allergens: { contains: [], may: [], unknown: [] },
  openRecipe: false,
  minutes: {},
  cookedBy: {},
};

/** From the trunk of the kind tree down to the state: the nearest word wins. `kinds` lists the kind and its ancestors, nearest first. */
export function mergeFacts(
  kinds: readonly KindRecord[],
  food: FoodRecord,
  part: Partial<Shared> | undefined,
  state: StateRecord,
): Merged {
  let merged = NOTHING;
  for (const kind of [...kinds].reverse()) merged = lay(merged, kind);
  merged = lay(merged, food);
  if (part) merged = lay(merged, part);
  merged = lay(merged, state);
  const { contains } = merged.allergens;
  const may = without(merged.allergens.may, contains);
  const unknown = without(without(merged.allergens.unknown, contains), may);
  const aroma = Object.fromEntries(Object.entries(merged.aroma).filter(([, level]) => level > 0));
  // A slot the food itself names stands: only what a kind hands down is looked at.
  if ((food.slot ?? part?.slot ?? state.slot) === undefined && !fills(merged)) delete merged.slot;
  return { ...merged, aroma, allergens: { contains, may, unknown } };
}
