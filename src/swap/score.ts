import type { Ingredient } from "../catalogue/index.js";
import { AT, NOTICEABLE, TASTES, WIDTH, carrierOf, doseMatrix, perceived, umami, type Taste } from "../dose/index.js";
import { aromaLikeness, customLikeness, kinLikeness, textureLikeness } from "../likeness/index.js";
import type { ScorePart } from "../types.js";
import type { Ask } from "./ask.js";
import { gainedNotes } from "./gates.js";
import type { Known } from "./evidence.js";
import { cookedAlready } from "./prep.js";

type PartName = ScorePart["name"];
type Weights = Readonly<Record<PartName, number>>;
interface WeightTable {
  readonly bulk: Weights;
  readonly seasoning: Weights;
  readonly working: Weights;
  readonly evidence: number;
  readonly floor: number;
}
export const weightsOf = (ask: Ask): WeightTable => ask.store.tables["weights"] as WeightTable;

const BULK: readonly string[] = ["served weight"];
const SEASONING: readonly string[] = ["salt", "acid", "umami", "pungency", "aroma"];
export function classOf(ask: Ask): "bulk" | "seasoning" | "working" {
  const carrier = carrierOf(ask.store, ask.roles[0]?.role ?? "main protein");
  return BULK.includes(carrier) ? "bulk" : SEASONING.includes(carrier) ? "seasoning" : "working";
}

/** How well a stand-in does the jobs asked, 0 to 1: each job at most as well as the missing ingredient did. */
export function roleFit(ask: Ask, use: Ingredient): number {
  let sum = 0;
  let total = 0;
  for (const { role, weight } of ask.roles) {
    const mine = use.roles.find((r) => r.role === role)?.weight ?? 0;
    const theirs = ask.item.roles.find((r) => r.role === role)?.weight ?? 1;
    sum += weight * weight * Math.min(1, mine / Math.max(theirs, 0.3));
    total += weight * weight;
  }
  return total === 0 ? 0 : sum / total;
}

/** Perceived strengths (0 to 9) of so many grams in the dish; NaN where not measured. */
export function strengths(ask: Ask, parts: readonly { ingredient: Ingredient; grams: number }[]): Record<Taste, number> {
  const matrix = doseMatrix(ask.store);
  const to100 = 100 / ask.dishGrams;
  const sum = (axis: keyof typeof AT): number => parts.reduce((s, p) => s + (matrix[p.ingredient.index * WIDTH + AT[axis]] as number) * p.grams, 0) * to100;
  return Object.fromEntries(
    TASTES.map((taste) => {
      if (taste !== "umami") return [taste, cap(taste, sum(taste))];
      const nucleotide = sum("nucleotide");
      const glutamate = sum("glutamate");
      return [taste, Number.isNaN(glutamate) ? Number.NaN : perceived("umami", umami(glutamate, Number.isNaN(nucleotide) ? 0 : nucleotide))];
    }),
  ) as Record<Taste, number>;
}
const cap = (taste: Taste, c: number): number => (Number.isNaN(c) ? Number.NaN : perceived(taste, c));

/** 1 when no taste differs noticeably. What can be added back (salt) costs less than what cannot be taken out. */
export function tasteLikeness(ask: Ask, before: Readonly<Record<Taste, number>>, after: Readonly<Record<Taste, number>>): number {
  let cost = 0;
  for (const taste of TASTES) {
    const d = after[taste] - before[taste];
    if (Number.isNaN(d)) continue;
    const beyond = Math.abs(d) - NOTICEABLE;
    if (beyond <= 0) continue;
    const mendable = d < 0 && (taste === "salt" || taste === "sweetness" || taste === "acid");
    cost += beyond * (d > 0 ? 1.6 : mendable ? 0.4 : 1);
  }
  return 1 / (1 + cost / 6);
}

const pct = (v: number): string => `${Math.round(v * 100)} of 100`;

export interface Scored {
  readonly score: number;
  readonly parts: readonly ScorePart[];
  readonly fit: { readonly role: number; readonly texture: number; readonly flavour: number; readonly handling: number };
}

/** Extra minutes to a mark of 0 to 1: half an hour more of work halves it; waiting counts a fifth, and each step of its own counts
 * two minutes even when time is saved on the whole. */
export const handlingMark = (active: number, waiting: number, steps = 0): number => 1 / (1 + (Math.max(0, active) + 0.2 * Math.max(0, waiting) + 2 * steps) / 30);

const round4 = (v: number): number => Math.round(v * 10_000) / 10_000;

/**
 * The score of a stand-in at its amounts: the weighted mean of its parts, exactly as printed. For a mixture, likeness of texture, aroma
 * and kin is the mean of its members by weight.
 */
export function scoreOf(ask: Ask, uses: readonly { ingredient: Ingredient; grams: number }[], extra: { active: number; waiting: number; prep: readonly { kind: string }[] }, known: Known | undefined, before: Readonly<Record<Taste, number>>): Scored {
  const w = weightsOf(ask)[classOf(ask)];
  const total = uses.reduce((s, u) => s + u.grams, 0);
  const mean = (of: (i: Ingredient) => number): number => uses.reduce((s, u) => s + of(u.ingredient) * u.grams, 0) / total;
  const relative = classOf(ask) === "seasoning";
  const role = uses.length > 1 && known ? 1 : Math.max(...uses.map((u) => roleFit(ask, u.ingredient)));
  // What comes cooked out of a tin or pot does not take the sauce or hold its bite as the raw does, and the other way round.
  const textures = uses.map((u) => {
    const t = textureLikeness(ask.store, ask.item, u.ingredient, ask.stage);
    return t !== undefined && classOf(ask) === "bulk" && cookedAlready(u.ingredient) !== cookedAlready(ask.item) ? t * 0.65 : t;
  });
  const texture = textures.every((t) => t === undefined) ? undefined : uses.reduce((s, u, i) => s + (textures[i] ?? 0.6) * u.grams, 0) / total;
  const taste = tasteLikeness(ask, before, strengths(ask, uses));
  const aroma = mean((i) => aromaLikeness(ask.store, ask.item, i, relative));
  const notes = uses.reduce((s, u) => s + gainedNotes(ask, u.ingredient).length, 0);
  const flavour = (0.55 * aroma + 0.45 * taste) / (1 + 0.25 * notes);
  const handling = handlingMark(extra.active, extra.waiting, extra.prep.filter((p) => p.kind === "add").length);
  const kin = mean((i) => kinLikeness(ask.item, i) * (cookedAlready(i) === cookedAlready(ask.item) ? 1 : 0.85));
  const custom = mean((i) => customLikeness(ask.item, i, ask.cuisine));
  const parts: ScorePart[] = [];
  const add = (name: PartName, value: number, weight: number, text: string): void => {
    if (weight > 0) parts.push({ name, value: round4(value), weight, text });
  };
  add("role", role, w.role, `does the job (${ask.roles.slice(0, 2).map((r) => r.role).join(", ")}) at ${pct(role)}`);
  if (texture !== undefined) add("texture", texture, w.texture, `texture ${ask.stage === "raw" ? "uncooked" : ask.stage === "long" ? "after long cooking" : "when cooked"}: ${pct(texture)} alike`);
  add("flavour", flavour, w.flavour, `taste and aroma: ${pct(flavour)} alike${notes > 0 ? ", brings a note of its own" : ""}`);
  add("handling", handling, w.handling, extra.active > 0 || extra.waiting > 0 ? `asks for ${Math.round(Math.max(0, extra.active))} more minutes of work and ${Math.round(Math.max(0, extra.waiting))} of waiting` : "asks for no more work");
  add("kin", kin, w.kin, `kin: ${pct(kin)}`);
  add("custom", custom, w.custom, `used by the same cooks: ${pct(custom)}`);
  if (known) add("evidence", known.fits, weightsOf(ask).evidence, known.edge.sources.every((s) => s.key === "common practice") ? "common practice" : "published");
  const weight = parts.reduce((s, p) => s + p.weight, 0);
  const score = parts.reduce((s, p) => s + p.value * p.weight, 0) / weight;
  return { score: round4(score), parts, fit: { role: round4(role), texture: round4(texture ?? 1), flavour: round4(flavour), handling: round4(handling) } };
}
