import type { Ingredient } from "../catalogue/index.js";
import {
  AT,
  NOTICEABLE,
  TASTES,
  WIDTH,
  carrierDose,
  carrierOf,
  dose,
  doseMatrix,
  perceived,
  umami,
  type Taste,
} from "../dose/index.js";
import { aromaLikeness, customLikeness, kinLikeness, textureLikeness } from "../likeness/index.js";
import type { RoleId, ScorePart } from "../types.js";
import type { Ask } from "./ask.js";
import { gainedNotes } from "./gates.js";
import { isCommonPractice, type Known } from "./evidence.js";
import { residualOf } from "./blend/index.js";
import { cookedAlready, isMince } from "./prep.js";

type PartName = ScorePart["name"];
type Weights = Readonly<Record<PartName, number>>;
interface WeightTable {
  readonly bulk: Weights;
  readonly seasoning: Weights;
  readonly working: Weights;
  readonly evidence: number;
  /** What a stand-in no table names gets under evidence when tables do speak of the need. */
  readonly unlisted: number;
  /** The same for a near twin of what is missing. */
  readonly twin: number;
  readonly floor: Readonly<Record<"bulk" | "seasoning" | "working", number>>;
}
export const weightsOf = (ask: Ask): WeightTable => ask.store.tables["weights"] as WeightTable;

const BULK: readonly string[] = ["served weight"];
const SEASONING: readonly string[] = ["salt", "acid", "umami", "pungency", "aroma"];
export function classOf(ask: Ask): "bulk" | "seasoning" | "working" {
  const carrier = carrierOf(ask.store, ask.roles[0]?.role ?? "main protein");
  return BULK.includes(carrier) ? "bulk" : SEASONING.includes(carrier) ? "seasoning" : "working";
}

/**
 * How well a stand-in does the jobs asked, 0 to 1: each job at most as well as the missing ingredient did, and at `grams` only as far as
 * it brings what carries the job: a third of the aroma is a third of a spice.
 */
export function roleFit(ask: Ask, use: Ingredient, grams?: number): number {
  // Lift without the acid that goes with it (or the other way round) leaves a soapy or sour crumb: soda alone is not baking powder.
  const unbalanced = lifts(ask) && Math.abs(balance(ask, use) - balance(ask, ask.item)) > 0.5 ? 0.6 : 1;
  return jobFit(ask, use, unbalanced, grams);
}
/** The same by its jobs alone; never less than {@link roleFit}. */
export function jobFit(ask: Ask, use: Ingredient, share = 1, grams?: number): number {
  let sum = 0;
  let total = 0;
  for (const { role, weight } of ask.roles) {
    const mine = weightIn(use, role) ?? 0;
    const theirs = weightIn(ask.item, role) ?? 1;
    sum += weight * weight * Math.min(1, mine / Math.max(theirs, 0.3)) * dosed(ask, use, role, grams);
    total += weight * weight;
  }
  return total === 0 ? 0 : (share * sum) / total;
}
function weightIn(i: Ingredient, role: string): number | undefined {
  for (const r of i.roles) if (r.role === role) return r.weight;
  return undefined;
}
/** Share of what carries a job that so many grams bring, at most 1; 1 where it was not measured. A tenth short is nobody's concern. */
function dosed(ask: Ask, use: Ingredient, role: RoleId, grams: number | undefined): number {
  if (grams === undefined) return 1;
  const carrier = carrierOf(ask.store, role);
  const share =
    (carrierDose(ask.store, use, carrier) * grams) / (carrierDose(ask.store, ask.item, carrier) * ask.grams);
  return share < 0.9 ? share : 1;
}
/** g soda neutralised per g of gas given off; 0 for what is balanced in itself, below for an alkali. */
const lifts = (ask: Ask): boolean => ask.roles.some((r) => r.role === "leavener" && r.weight >= 0.5);
const mixedBalance = (ask: Ask, uses: readonly { ingredient: Ingredient; grams: number }[]): number => {
  const sum = (axis: "lift" | "neutralising"): number =>
    uses.reduce((s, u) => s + (dose(ask.store, u.ingredient, axis) || 0) * u.grams, 0);
  return sum("lift") > 0 ? sum("neutralising") / sum("lift") : 0;
};
function balance(ask: Ask, i: Ingredient): number {
  const lift = dose(ask.store, i, "lift");
  const neutralising = dose(ask.store, i, "neutralising");
  return lift > 0 && !Number.isNaN(neutralising) ? neutralising / lift : 0;
}

/** Perceived strengths (0 to 9) of so many grams in the dish; NaN where not measured. */
export function strengths(
  ask: Ask,
  parts: readonly { ingredient: Ingredient; grams: number }[],
): Record<Taste, number> {
  const matrix = doseMatrix(ask.store);
  const to100 = 100 / ask.dishGrams;
  const sum = (axis: keyof typeof AT): number => {
    let s = 0;
    for (const p of parts) s += (matrix[p.ingredient.index * WIDTH + AT[axis]] as number) * p.grams;
    return s * to100;
  };
  const felt = { ...NOTHING };
  for (const taste of TASTES) {
    if (taste !== "umami") {
      felt[taste] = cap(taste, sum(taste));
      continue;
    }
    const nucleotide = sum("nucleotide");
    const glutamate = sum("glutamate");
    felt.umami = Number.isNaN(glutamate)
      ? Number.NaN
      : perceived("umami", umami(glutamate, Number.isNaN(nucleotide) ? 0 : nucleotide));
  }
  return felt;
}
const NOTHING: Readonly<Record<Taste, number>> = Object.fromEntries(TASTES.map((t) => [t, 0])) as Record<Taste, number>;
const cap = (taste: Taste, c: number): number => (Number.isNaN(c) ? Number.NaN : perceived(taste, c));

/** 1 when no taste differs noticeably. What can be added back (salt) costs less than what cannot be taken out. */
export function tasteLikeness(
  ask: Ask,
  before: Readonly<Record<Taste, number>>,
  after: Readonly<Record<Taste, number>>,
): number {
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

/** How likely it is at hand: surely when it was said to be in the house, else by whether kitchens have it or the shop round the corner. */
const AT_HAND = [0, 0.7, 1] as const;
function likelyAtHand(ask: Ask, use: Ingredient): number {
  if (ask.have?.has(use.id) === true) return 1;
  const usual = AT_HAND[use.athand as 0 | 1 | 2];
  // What a tradition cooks with is at hand where it is cooked.
  const own = ask.cuisine !== undefined && use.traditions.includes(ask.cuisine) ? 0.7 : 0;
  return Math.max(usual, own);
}

/** A mixture is judged by how far its makeup and aroma as a whole lie from what is missing, and by the kin of what gives it its taste. */
function mixture(
  ask: Ask,
  uses: readonly { ingredient: Ingredient; grams: number }[],
): { role: number; aroma: number; kin: number } {
  const residual = residualOf(ask, uses);
  // Water and salt are nobody's kin; everything else in a mixture says what it is like.
  const telling = uses.filter((u) => u.ingredient.id !== "water/pantry" && u.ingredient.id !== "salt/pantry");
  const counted = telling.length > 0 ? telling : uses;
  const grams = counted.reduce((s, u) => s + u.grams, 0);
  return {
    role: jobsDone(ask, uses),
    aroma: 1 / (1 + 0.6 * residual),
    kin: counted.reduce((s, u) => s + kinLikeness(ask.item, u.ingredient) * u.grams, 0) / grams,
  };
}

/** A mixture has about the body of its parts by weight: butter stirred into water is no milk. Undefined when no part can be compared. */
function mixedTexture(
  ask: Ask,
  uses: readonly { ingredient: Ingredient; grams: number }[],
  stage: Ask["stage"],
): number | undefined {
  let sum = 0;
  let grams = 0;
  for (const u of uses) {
    const alike = textureLikeness(ask.store, ask.item, u.ingredient, stage);
    if (alike === undefined) continue;
    sum += alike * u.grams;
    grams += u.grams;
  }
  return grams > 0 ? sum / grams : undefined;
}

/** Each job asked by how near the mixture's dose of its carrier comes, too much counting like too little; jobs without a figure count as done. */
function jobsDone(ask: Ask, uses: readonly { ingredient: Ingredient; grams: number }[]): number {
  let done = 0;
  let total = 0;
  for (const { role, weight } of ask.roles) {
    const carrier = carrierOf(ask.store, role);
    const want = carrierDose(ask.store, ask.item, carrier) * ask.grams;
    // The water a powder takes up is another part of the mixture.
    const soaked = (i: Ingredient): number => (carrier === "water" ? Math.max(0, (i.ready?.yield ?? 1) - 1) : 0);
    const have = uses.reduce(
      (s, u) => s + ((carrierDose(ask.store, u.ingredient, carrier) || 0) - soaked(u.ingredient)) * u.grams,
      0,
    );
    const match = want > 0 ? (have > 0 ? Math.min(have / want, want / have) : 0) : 1;
    done += weight * weight * match;
    total += weight * weight;
  }
  const off = lifts(ask) && Math.abs(mixedBalance(ask, uses) - balance(ask, ask.item)) > 0.5 ? 0.6 : 1;
  return total === 0 ? 1 : (off * done) / total;
}

const pct = (v: number): string => `${Math.round(v * 100)} of 100`;

type Mark = Omit<ScorePart, "text">;
export interface Scored {
  readonly score: number;
  /** The same without evidence: what the floor is held against. */
  readonly base: number;
  readonly marks: readonly Mark[];
  /** Notes the stand-in brings that were not there. */
  readonly notes: number;
  /** Minutes more (or, negative, fewer) of work and of waiting. */
  readonly active: number;
  readonly waiting: number;
  readonly fit: {
    readonly role: number;
    readonly texture: number;
    readonly flavour: number;
    readonly handling: number;
  };
}

/** Extra minutes to a mark of 0 to 1: half an hour more of work halves it; waiting counts a fifth, and each step of its own counts
 * two minutes even when time is saved on the whole. */
export const handlingMark = (active: number, waiting: number, steps = 0): number =>
  1 / (1 + (Math.max(0, active) + 0.2 * Math.max(0, waiting) + 2 * steps) / 30);

/** Kin from which on two are twins in a kitchen. */
const TWIN = 0.75;
/** So many answers named make half a case against what is not. */
const FEW = 2;
const meanOf = (parts: readonly Mark[]): number =>
  parts.reduce((s, p) => s + p.value * p.weight, 0) / parts.reduce((s, p) => s + p.weight, 0);
const round4 = (v: number): number => Math.round(v * 10_000) / 10_000;

interface Work {
  readonly active: number;
  readonly waiting: number;
  readonly prep: readonly { readonly kind: string }[];
}
/**
 * The most a single stand-in could score: no taste off, no more work. What takes longest to work out is then only
 * worked out for those that may come up. Every part of a score counts for more when it is higher, so this is never below the score.
 */
export const mostOf = (ask: Ask, ingredient: Ingredient, grams: number): Scored =>
  scoreOf(ask, [{ ingredient, grams }], undefined, undefined);

/**
 * The score of a stand-in at its amounts: the weighted mean of its parts, exactly as printed. A mixture is compared as a whole.
 * @param extra the work it asks for; without it the taste and the work are taken to be the best they can be
 */
export function scoreOf(
  ask: Ask,
  uses: readonly { ingredient: Ingredient; grams: number }[],
  extra: Work | undefined,
  known: Known | undefined,
  before: Readonly<Record<Taste, number>> = NOTHING,
): Scored {
  const w = weightsOf(ask)[classOf(ask)];
  const mixed = uses.length > 1 ? mixture(ask, uses) : undefined;
  const first = (uses[0] as { ingredient: Ingredient }).ingredient;
  const does = mixed ? mixed.role : roleFit(ask, first, known ? undefined : (uses[0] as { grams: number }).grams);
  // Whoever wrote a swap down says that it does the job: half the mark is theirs.
  const role = known ? (1 + does) / 2 : does;
  // Dry grain and raw beans are not compared dry for a salad: what is not eaten uncooked is compared cooked.
  const raw = ask.stage === "raw" && !ask.item.cannot.has("edible uncooked") && !first.cannot.has("edible uncooked");
  const stage = ask.stage === "raw" && !raw ? "cooked" : ask.stage;
  const alike = mixed ? mixedTexture(ask, uses, stage) : textureLikeness(ask.store, ask.item, first, stage);
  // What comes cooked out of a tin or pot does not take the sauce or hold its bite as the raw does, and the other way round.
  const cookedApart = cookedAlready(first) !== cookedAlready(ask.item);
  const minced = isMince(ask.item) !== isMince(first) && classOf(ask) === "bulk";
  const texture = alike !== undefined && classOf(ask) === "bulk" && (cookedApart || minced) ? alike * 0.65 : alike;
  const taste = extra ? tasteLikeness(ask, before, strengths(ask, uses)) : 1;
  const aroma = mixed ? mixed.aroma : aromaLikeness(ask.store, ask.item, first);
  const notes = uses.reduce((s, u) => s + gainedNotes(ask, u.ingredient).length, 0);
  // Sweet and sour are tastes, weighed above; the others are what the thing is known by.
  const lost = ask.item.dominant.filter(
    (n) => n !== "sweet" && n !== "sour" && !uses.some((u) => u.ingredient.dominant.includes(n)),
  ).length;
  const flavour = (0.55 * aroma + 0.45 * taste) / (1 + 0.25 * notes + 0.15 * lost);
  const handling = extra
    ? handlingMark(extra.active, extra.waiting, extra.prep.filter((p) => p.kind === "add").length)
    : 1;
  const kin = mixed ? mixed.kin : kinLikeness(ask.item, first) * (cookedApart ? 0.85 : 1);
  const atHand = uses.reduce((all, u) => all * likelyAtHand(ask, u.ingredient), 1);
  const custom = mixed ? 0.9 * atHand : 0.3 * customLikeness(ask.item, first, ask.cuisine) + 0.7 * atHand;
  const marks: Mark[] = [];
  const add = (name: PartName, value: number, weight: number): void => {
    if (weight > 0) marks.push({ name, value: round4(value), weight });
  };
  add("role", role, w.role);
  if (texture !== undefined) add("texture", texture, w.texture);
  add("flavour", flavour, w.flavour);
  add("handling", handling, w.handling);
  add("kin", kin, w.kin);
  add("custom", custom, w.custom);
  const base = meanOf(marks);
  const { evidence, unlisted, twin } = weightsOf(ask);
  // What tables leave out is the weaker answer, the more so the more they name; less so the nearer its kin, since nobody needs a table
  // to take basmati for long-grain rice. What they name for another dish is still no weaker than that.
  const named = ask.known.filter((k) => k.fits >= 0.6).length;
  const near = Math.min(1, Math.max(0, (kin - 0.45) / (TWIN - 0.45)));
  const left = 1 - ((1 - (unlisted + (twin - unlisted) * near)) * named) / (named + FEW);
  if (known) add("evidence", Math.max(known.fits, Math.min(0.88, left)), evidence);
  else if (named > 0) add("evidence", left, evidence);
  return {
    score: round4(meanOf(marks)),
    base: round4(base),
    marks,
    notes,
    active: extra?.active ?? 0,
    waiting: extra?.waiting ?? 0,
    fit: { role: round4(role), texture: round4(texture ?? 1), flavour: round4(flavour), handling: round4(handling) },
  };
}

const STAGE = { raw: "uncooked", cooked: "when cooked", long: "after long cooking" } as const;

/** The marks of a score with a few words each: made for what is shown, since thousands are weighed for every answer. */
export function explain(ask: Ask, scored: Scored, known: Known | undefined): ScorePart[] {
  const minutes = (m: number): number => Math.round(Math.max(0, m));
  const work =
    scored.active > 0 || scored.waiting > 0
      ? `asks for ${minutes(scored.active)} more minutes of work and ${minutes(scored.waiting)} of waiting`
      : "asks for no more work";
  const jobs = ask.roles
    .slice(0, 2)
    .map((r) => r.role)
    .join(", ");
  const say: Readonly<Record<PartName, (value: number) => string>> = {
    role: (v) => `does the job (${jobs}) at ${pct(v)}`,
    texture: (v) => `texture ${STAGE[ask.stage]}: ${pct(v)} alike`,
    flavour: (v) => `taste and aroma: ${pct(v)} alike${scored.notes > 0 ? ", brings a note of its own" : ""}`,
    handling: () => work,
    kin: (v) => `kin: ${pct(v)}`,
    custom: (v) => `at hand and used by the same cooks: ${pct(v)}`,
    evidence: () =>
      known ? (isCommonPractice(known.edge) ? "common practice" : "published") : "tables name others for this",
  };
  return scored.marks.map((m) => ({ ...m, text: say[m.name](m.value) }));
}
