import type { Ingredient } from "../catalogue/index.js";
import type { Taste } from "../dose/index.js";
import type { ScorePart } from "../types.js";
import type { Ask } from "./ask.js";
import type { Known } from "./evidence.js";
import { strengths, tasteLikeness } from "./felt.js";
import { fetched, mixedTexture, mixture } from "./mixed.js";
import { traitsOf } from "./traits.js";
import { balance, settledOf, type PartName, type Settled, type WeightTable } from "./settled.js";

export const weightsOf = (ask: Ask): WeightTable => settledOf(ask).table;
export const classOf = (ask: Ask): "bulk" | "seasoning" | "working" => settledOf(ask).klass;

/**
 * How well a stand-in does the jobs asked, 0 to 1: each job at most as well as the missing ingredient did, and at `grams` only as far as
 * it brings what carries the job: a third of the aroma is a third of a spice.
 */
export function roleFit(ask: Ask, use: Ingredient, grams?: number): number {
  const settled = settledOf(ask);
  // Lift without the acid that goes with it (or the other way round) leaves a soapy or sour crumb: soda alone is not baking powder.
  const unbalanced = settled.lifts && Math.abs(balance(ask, use) - settled.balance) > 0.5 ? 0.6 : 1;
  return settled.jobFit(use, unbalanced, grams);
}

/** How likely it is at hand: surely when it was said to be in the house, else by whether kitchens have it or the shop round the corner. */
const AT_HAND = [0, 0.7, 1] as const;
function likelyAtHand(ask: Ask, use: Ingredient): number {
  if (ask.have?.has(use.id) === true) return 1;
  const usual = AT_HAND[traitsOf(ask.store).atHand[use.index] as 0 | 1 | 2];
  // What a tradition cooks with is at hand where it is cooked.
  const own = ask.cuisines?.some((t) => use.traditions.includes(t)) === true ? 0.7 : 0;
  return Math.max(usual, own);
}

/** Each further part to be fetched may be the one that has run out. */
const ONE_MORE = 0.9;

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
function meanOf(parts: readonly Mark[]): number {
  let sum = 0;
  let total = 0;
  for (const p of parts) {
    sum += p.value * p.weight;
    total += p.weight;
  }
  return sum / total;
}
const round4 = (v: number): number => Math.round(v * 10_000) / 10_000;

interface Work {
  readonly active: number;
  readonly waiting: number;
  readonly prep: readonly { readonly kind: string }[];
}
/** Sold cooked against raw, or minced against whole: its bite is another. */
function apart(settled: Settled, first: Ingredient, alike: number | undefined): number | undefined {
  if (alike === undefined || settled.klass !== "bulk") return alike;
  return settled.cookedApart(first) || settled.cutApart(first) ? alike * 0.65 : alike;
}
const textureOf = (settled: Settled, use: Ingredient): number | undefined =>
  apart(settled, use, settled.texture[settled.stage(use)](use));
const flavourOf = (aroma: number, taste: number, notes: number, lost: number): number =>
  (0.55 * aroma + 0.45 * taste) / (1 + 0.25 * notes + 0.15 * lost);
const kinOf = (settled: Settled, use: Ingredient): number => settled.kin(use) * (settled.cookedApart(use) ? 0.85 : 1);
const customOf = (settled: Settled, use: Ingredient, atHand: number): number =>
  0.3 * settled.custom(use) + 0.7 * atHand;

/**
 * What tables leave out is the weaker answer, the more so the more they name; less so the nearer its kin, since nobody needs a table
 * to take basmati for long-grain rice.
 */
export function unlistedMark({ table: { unlisted, twin }, named }: Settled, kin: number): number {
  const near = Math.min(1, Math.max(0, (kin - 0.45) / (TWIN - 0.45)));
  return 1 - ((1 - (unlisted + (twin - unlisted) * near)) * named) / (named + FEW);
}

/**
 * The most a single stand-in could score: no taste off, no more work. What takes longest to work out is then only
 * worked out for those that may come up. Every part of a score counts for more when it is higher, so this is never below the score.
 * Summed as {@link scoreOf} sums, part by part in its order, since the two are compared to the last digit.
 * @returns `base` without evidence and the whole, both as rounded as a score
 */
export function mostOf(ask: Ask, use: Ingredient, grams: number): { readonly base: number; readonly score: number } {
  const settled = settledOf(ask);
  const w = settled.weights;
  let sum = 0;
  let total = 0;
  const add = (value: number, weight: number): void => {
    if (!(weight > 0)) return;
    sum += round4(value) * weight;
    total += weight;
  };
  const uses = [{ ingredient: use, grams }];
  add(settled.roleMark(roleFit(ask, use, grams), uses), w.role);
  const texture = textureOf(settled, use);
  if (texture !== undefined) add(texture, w.texture);
  let lost = 0;
  for (const n of settled.notes) if (!use.dominant.includes(n)) lost++;
  add(flavourOf(settled.smell(use), 1, settled.gained(use), lost), w.flavour);
  add(settled.handlingMark(1, uses), w.handling);
  const kin = kinOf(settled, use);
  add(kin, w.kin);
  add(customOf(settled, use, likelyAtHand(ask, use)), w.custom);
  const base = round4(sum / total);
  if (settled.named > 0) add(unlistedMark(settled, kin), settled.silence);
  return { base, score: round4(sum / total) };
}

/**
 * The score of a stand-in at its amounts: the weighted mean of its parts, exactly as printed. A mixture is compared as a whole.
 * @param extra the work it asks for
 */
export function scoreOf(
  ask: Ask,
  uses: readonly { ingredient: Ingredient; grams: number }[],
  extra: Work,
  known: Known | undefined,
  before: Readonly<Record<Taste, number>>,
): Scored {
  const settled = settledOf(ask);
  const w = settled.weights;
  const mixed = uses.length > 1 ? mixture(ask, uses, known !== undefined) : undefined;
  const { ingredient: first, grams } = uses[0] as { ingredient: Ingredient; grams: number };
  const does = mixed ? mixed.role : roleFit(ask, first, known ? undefined : grams);
  // Whoever wrote a swap down says that it does the job: half the mark is theirs.
  const role = known ? (1 + does) / 2 : does;
  const texture = mixed
    ? apart(settled, first, mixedTexture(ask, uses, settled.stage(first)))
    : textureOf(settled, first);
  const taste = tasteLikeness(ask, before, strengths(ask, uses));
  const notes = uses.reduce((s, u) => s + settled.gained(u.ingredient), 0);
  const lost = settled.notes.filter((n) => !uses.some((u) => u.ingredient.dominant.includes(n))).length;
  const flavour = flavourOf(mixed ? mixed.aroma : settled.smell(first), taste, notes, lost);
  const handling = handlingMark(extra.active, extra.waiting, extra.prep.filter((p) => p.kind === "add").length);
  const kin = mixed ? mixed.kin : kinOf(settled, first);
  const atHand = Math.min(...uses.map((u) => likelyAtHand(ask, u.ingredient)));
  const custom = mixed ? atHand * ONE_MORE ** Math.max(1, fetched(uses) - 1) : customOf(settled, first, atHand);
  const marks: Mark[] = [];
  const add = (name: PartName, value: number, weight: number): void => {
    if (weight > 0) marks.push({ name, value: round4(value), weight });
  };
  add("role", settled.roleMark(role, uses), w.role);
  if (texture !== undefined) add("texture", texture, w.texture);
  add("flavour", flavour, w.flavour);
  add("handling", settled.handlingMark(handling, uses), w.handling);
  add("kin", kin, w.kin);
  add("custom", custom, w.custom);
  const base = round4(meanOf(marks));
  const parts = marks.length;
  const left = unlistedMark(settled, kin);
  // What tables name for another dish is still no weaker than what they leave out.
  if (known) add("evidence", Math.max(known.fits, Math.min(0.88, left)), settled.evidenceOf(known));
  else if (settled.named > 0) add("evidence", left, settled.silence);
  return {
    score: marks.length > parts ? round4(meanOf(marks)) : base,
    base,
    marks,
    notes,
    active: extra.active,
    waiting: extra.waiting,
    fit: { role: round4(role), texture: round4(texture ?? 1), flavour: round4(flavour), handling: round4(handling) },
  };
}
