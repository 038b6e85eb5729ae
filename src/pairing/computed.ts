import type { Ingredient, Store } from "../catalogue/index.js";
import { aromaLikeness, customLikeness, kinLikeness } from "../likeness/index.js";
import { otherEnd, type Recorded } from "./recorded.js";

/** Judgement, all of it: what counts as fat, sour, sweet, salt and fresh at the table. */
const RICH = 12; // g fat per 100 g
const SOUR = 0.8; // g acid as citric per 100 g
const SWEET = 8; // g sugars per 100 g
const SALT = 700; // mg sodium per 100 g
const BITTER = 4; // of 9
const FRESH: readonly string[] = ["grassy", "citrus", "mint", "cucumber", "herbal", "celery"];
/** Notes of the savoury kitchen that nobody wants beside those of the sweet one. */
const SAVOURY: readonly string[] = [
  "fish",
  "marine",
  "allium",
  "mustard heat",
  "cured pork",
  "meat",
  "liver",
  "game",
  "goat",
  "ferment",
  "egg",
  "tomato",
];
const PUDDING: readonly string[] = ["banana", "vanilla", "chocolate", "coffee", "rose"];
/** Jobs of the larder: what does nothing else goes with everything and with nothing. */
const LARDER: readonly string[] = [
  "leavener",
  "gelling agent",
  "thickener",
  "structure",
  "binder",
  "emulsifier",
  "salt seasoning",
  "frying medium",
  "liquid",
  "coating",
];
/** Below this a computed pairing is not worth a line. */
const FLOOR = 0.45;
/** How near kin must be in kind and in smell at once (kin times aroma): shallot is to onion, walnut to almond, thigh to the whole bird. */
const KIN = 0.53;
const NAMED = 0.9;

const per = (store: Store, i: Ingredient, figure: string): number => {
  const v = store.columns[figure]?.[i.index];
  return v === undefined || Number.isNaN(v) ? 0 : v;
};
const does = (i: Ingredient, ...roles: readonly string[]): boolean =>
  i.roles.some((r) => r.weight >= 0.6 && roles.includes(r.role));

/** Whether one never belongs beside the other: the same food or kind, the same job, or a savoury note beside a pudding's. */
export function gated(a: Ingredient, b: Ingredient): boolean {
  if (a.food === b.food || a.kind === b.kind) return true;
  const larder = (i: Ingredient): boolean => i.roles.length === 0 || LARDER.includes(i.roles[0]?.role ?? "");
  if (larder(a) || larder(b)) return true;
  const job = (i: Ingredient): string[] => i.roles.filter((r) => r.weight >= 0.7).map((r) => r.role);
  if (a.roles[0]?.role === b.roles[0]?.role || job(a).some((r) => job(b).includes(r))) return true;
  const has = (i: Ingredient, notes: readonly string[]): boolean => i.dominant.some((n) => notes.includes(n));
  return (has(a, SAVOURY) && has(b, PUDDING)) || (has(a, PUDDING) && has(b, SAVOURY));
}

/** Aroma families both have clearly, and how much of the fainter profile is in the other, 0 to 1. */
export function sharedAroma(a: Ingredient, b: Ingredient): { readonly share: number; readonly families: string[] } {
  const sum = (i: Ingredient): number => Object.values(i.aroma).reduce((s, v) => s + v, 0);
  const common = Object.entries(a.aroma)
    .map(([family, level]) => ({ family, level: Math.min(level, b.aroma[family] ?? 0) }))
    .filter((x) => x.level >= 2)
    .sort((x, y) => y.level - x.level || (x.family < y.family ? -1 : 1));
  const total = common.reduce((s, x) => s + x.level, 0);
  return { share: Math.min(1, total / Math.max(6, Math.min(sum(a), sum(b)))), families: common.map((x) => x.family) };
}

/** What the two balance, in words; undefined when neither has what the other lacks. */
function contrast(
  store: Store,
  a: Ingredient,
  b: Ingredient,
): { readonly value: number; readonly text: string } | undefined {
  const rich = (i: Ingredient): boolean =>
    per(store, i, "fat") >= RICH && does(i, "main protein", "enrichment", "fat", "garnish");
  const sour = (i: Ingredient): boolean =>
    does(i, "acid") || i.dominant.includes("sour") || per(store, i, "acid") >= SOUR;
  const fresh = (i: Ingredient): boolean =>
    per(store, i, "fat") < RICH &&
    does(i, "herb", "leafy green", "crunchy stem", "garnish") &&
    FRESH.some((f) => (i.aroma[f] ?? 0) >= 3);
  const sweet = (i: Ingredient): boolean => per(store, i, "sugars") >= SWEET;
  const salt = (i: Ingredient): boolean => per(store, i, "sodium") >= SALT && i.can.has("ready to eat");
  const bitter = (i: Ingredient): boolean => (i.flavour["bitter"] ?? 0) >= BITTER;
  const pairs: readonly (readonly [typeof rich, typeof rich, number, string, string])[] = [
    [sour, rich, 1, "acid", "fat"],
    [fresh, rich, 0.8, "freshness", "richness"],
    [salt, sweet, 0.7, "salt", "sweetness"],
    [bitter, rich, 0.7, "bitterness", "richness"],
    [bitter, sweet, 0.6, "bitterness", "sweetness"],
  ];
  for (const [one, other, value, is, against] of pairs) {
    const [x, y] = one(a) && other(b) ? [a, b] : one(b) && other(a) ? [b, a] : [];
    if (x && y) return { value, text: `the ${is} of ${store.nameOf(x)} against the ${against} of ${store.nameOf(y)}` };
  }
  return undefined;
}

export interface Computed {
  readonly with: Ingredient;
  /** 0 to 1 */
  readonly value: number;
  readonly why: string;
}
/** Within a sentence, unless it starts with a name. */
export const lower = (text: string): string =>
  /^(New Year|Sicilian|Welsh|Cuban|Easter|Andean)/.test(text) ? text : text.charAt(0).toLowerCase() + text.slice(1);
const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** What near kin is paired with, by record: broccolini goes with what broccoli goes with. */
export function byKin(
  store: Store,
  item: Ingredient,
  records: readonly Recorded[],
  traditions: readonly string[],
): Computed[] {
  const near = new Map<Ingredient, number>();
  for (const { sides } of records)
    for (const { shown } of sides) {
      if (near.has(shown) || shown.food === item.food) continue;
      const kin = kinLikeness(item, shown);
      const value = kin < KIN ? 0 : kin * aromaLikeness(store, item, shown);
      // "chicken" in "chicken-thigh": what is named after it is nearer than other kin.
      const named = item.food.split("-").includes(shown.food);
      near.set(shown, value < KIN ? 0 : named ? Math.max(value, NAMED) : value);
    }
  const out: Computed[] = [];
  for (const [kin, value] of near) {
    if (value === 0) continue;
    for (const record of records) {
      const end = record.row.basis === "parts of one ingredient" ? undefined : otherEnd(store, record, kin);
      if (end?.fit !== 1 || gated(item, end.other.shown)) continue;
      out.push({
        with: end.other.shown,
        value:
          0.85 * value + (record.row.tradition !== undefined && traditions.includes(record.row.tradition) ? 0.1 : 0),
        why: `As with ${store.nameOf(kin)}, its near kin: ${lower(record.row.why)}`,
      });
    }
  }
  return out;
}

/** Two that no record names: shared aroma families, a contrast and common custom. Undefined when they are gated or too little speaks for them. */
export function compute(store: Store, item: Ingredient, other: Ingredient): Computed | undefined {
  if (gated(item, other)) return undefined;
  const { share, families } = sharedAroma(item, other);
  const against = contrast(store, item, other);
  if (share < 0.3 && against === undefined) return undefined;
  const value = 0.4 * share + 0.35 * (against?.value ?? 0) + 0.25 * customLikeness(item, other);
  if (value < FLOOR) return undefined;
  const notes = families.slice(0, 2).join(" and ");
  const shared = share >= 0.3 && notes !== "" ? `both smell of ${notes}` : "";
  const why = [against?.text ?? "", shared].filter((t) => t !== "").join("; ");
  return { with: other, value, why: `${capital(why)}.` };
}
