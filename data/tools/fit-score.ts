// What the fit of the score's weights looks at: every candidate of every need with its parts, weighed once, ranked as often as asked.
import { storeOf } from "../../src/catalogue/index.js";
import { readAsk } from "../../src/swap/ask.js";
import { beforeOf, floorOf, weighAll, type Weighed } from "../../src/swap/candidates.js";
import { isCommonPractice } from "../../src/swap/evidence.js";
import { classOf } from "../../src/swap/score.js";
import type { WeightTable } from "../../src/swap/settled.js";
import type { Catalogue } from "../../src/types.js";
import { MIXTURES, averagePrecision, byCode, keyOf, rankOf, type Need } from "./published.js";

export const PARTS = ["role", "texture", "flavour", "handling", "kin", "custom"] as const;
export const CLASSES = ["bulk", "seasoning", "working"] as const;
export type ClassName = (typeof CLASSES)[number];
/** One weight a part, in the order of PARTS. */
export type Weights = readonly number[];
/** What is known weighs `evidence` as common practice and `published` as a publication's; what it leaves out is marked `unlisted`. */
export interface Marks {
  readonly evidence: number;
  readonly published: number;
  readonly unlisted: number;
}

interface Candidate {
  readonly key: string;
  /** As the engine orders equals: parts in their own order. */
  readonly order: string;
  readonly ids: readonly string[];
  /** NaN where the part does not apply (a mixture has no texture). */
  readonly values: readonly number[];
  /** What tables say of it: a mark, or that they name others for the need. */
  readonly evidence?: number | "unlisted";
  readonly known: boolean;
  /** Known from a publication, not from common practice alone. */
  readonly published: boolean;
}
export interface Case {
  readonly need: Need;
  readonly class: ClassName;
  readonly floor: number;
  readonly computed: readonly Candidate[];
  /** The same with evidence looked at. */
  readonly all: readonly Candidate[];
}

const candidateOf = (w: Weighed): Candidate => {
  const ids: string[] = w.uses.map((u) => u.ingredient.id);
  const at = new Map(w.scored.marks.map((p) => [p.name, p.value]));
  const evidence = at.get("evidence");
  return {
    key: keyOf(ids),
    order: ids.join("+"),
    ids,
    values: PARTS.map((name) => at.get(name) ?? Number.NaN),
    ...(evidence === undefined ? {} : { evidence: w.known ? evidence : ("unlisted" as const) }),
    known: w.known !== undefined,
    published: w.known !== undefined && !w.known.exchange && !isCommonPractice(w.known.edge),
  };
};

/** Weighs all candidates of a need, once. */
export function caseOf(c: Catalogue, need: Need): Case {
  const [computed, all] = (["computed", "all"] as const).map((evidence) => {
    const ask = readAsk(c, { ...need.request, evidence });
    return { ask, list: weighAll(ask, beforeOf(ask)).filter((w) => !w.refusal) };
  }) as [{ ask: ReturnType<typeof readAsk>; list: Weighed[] }, { ask: ReturnType<typeof readAsk>; list: Weighed[] }];
  return {
    need,
    class: classOf(computed.ask),
    floor: floorOf(computed.ask),
    computed: computed.list.map(candidateOf),
    all: all.list.map(candidateOf),
  };
}

/** Weights and marks as they stand in the data. */
export function presentWeights(c: Catalogue): { weights: Record<ClassName, number[]>; marks: Marks } {
  const table = storeOf(c).tables["weights"] as WeightTable;
  return {
    weights: Object.fromEntries(CLASSES.map((k) => [k, PARTS.map((p) => table[k][p])])) as Record<ClassName, number[]>,
    marks: { evidence: table.evidence, published: table.published, unlisted: table.unlisted },
  };
}

const round4 = (v: number): number => Math.round(v * 10_000) / 10_000;
/** Whether a publication, or only common practice, names others that fit: what is left out weighs as much. */
const fits = (x: Candidate): boolean => typeof x.evidence === "number" && x.evidence >= 0.6;
const spokenOf = (list: readonly Candidate[]): "published" | "evidence" | undefined =>
  list.some((x) => fits(x) && x.published) ? "published" : list.some(fits) ? "evidence" : undefined;

function scoreOf(
  x: Candidate,
  w: Weights,
  silence: "published" | "evidence" | undefined,
  marks?: Marks,
): { base: number; score: number } {
  let top = 0;
  let bottom = 0;
  for (let k = 0; k < w.length; k++) {
    const v = x.values[k] as number;
    if (Number.isNaN(v)) continue;
    top += v * (w[k] as number);
    bottom += w[k] as number;
  }
  const base = round4(top / bottom);
  if (!marks || x.evidence === undefined) return { base, score: base };
  const unlisted = x.evidence === "unlisted";
  const mark = unlisted ? marks.unlisted : x.evidence;
  const weight = marks[unlisted ? (silence ?? "evidence") : x.published ? "published" : "evidence"];
  return { base, score: round4((top + mark * weight) / (bottom + weight)) };
}

/** Keys in the order the engine would give, mixtures thinned out as it thins them. */
export function ranking(list: readonly Candidate[], floor: number, w: Weights, marks?: Marks): string[] {
  const silence = spokenOf(list);
  const scored = list
    .map((x) => ({ x, ...scoreOf(x, w, silence, marks) }))
    .filter(({ x, base }) => base >= floor || x.known)
    .sort((a, b) => b.score - a.score || a.x.ids.length - b.x.ids.length || byCode(a.x.order, b.x.order));
  const out: string[] = [];
  const seen: (readonly string[])[] = [];
  let mixtures = 0;
  for (const { x } of scored) {
    if (x.ids.length > 1 && !x.known) {
      if (mixtures >= MIXTURES) continue;
      const alike = seen.some(
        (s) => s.every((id) => x.ids.includes(id)) || (s.length > 1 && x.ids.every((id) => s.includes(id))),
      );
      seen.push(x.ids);
      if (alike || mixtures++ >= MIXTURES) continue;
    } else seen.push(x.ids);
    out.push(x.key);
  }
  return out;
}

export interface Marked {
  /** Mean of 1 / rank over its rows. */
  readonly reciprocal: number;
  readonly hits: number;
  readonly rows: number;
  readonly precision: number;
}
/** How the named answers of one need stand under given weights, nothing looked up. */
export function markCase(x: Case, w: Weights): Marked {
  const list = ranking(x.computed, x.floor, w);
  const ranks = x.need.answers.map((a) => rankOf(list, a.key, x.need.named) ?? Infinity);
  return {
    reciprocal: ranks.reduce((s, r) => s + 1 / r, 0) / ranks.length,
    hits: ranks.filter((r) => r <= 5).length,
    rows: ranks.length,
    precision: averagePrecision(list, new Set(x.need.answers.map((a) => a.key))),
  };
}

/** Mean of 1 / rank of each row when that row alone is struck from the evidence and everything else is looked up. */
export function markLeftOut(x: Case, w: Weights, marks: Marks): number {
  const computed = new Map(x.computed.map((y) => [y.key, y]));
  let sum = 0;
  for (const { key } of x.need.answers) {
    const own = computed.get(key);
    if (!own) continue;
    const others = x.all.filter((y) => y.key !== key);
    // Whether tables still speak of the need without this row, and it is no near twin.
    const spoken = spokenOf(others) !== undefined;
    const twin = (own.values[PARTS.indexOf("kin")] as number) >= 0.88;
    const row: Candidate = spoken && !twin ? { ...own, evidence: "unlisted" } : own;
    const rank = rankOf(ranking([...others, row], x.floor, w, marks), key, x.need.named);
    sum += rank === undefined ? 0 : 1 / rank;
  }
  return sum / x.need.answers.length;
}

/** Mean of 1 / rank of the rows with everything looked up. */
export function markKnown(x: Case, w: Weights, marks: Marks): number {
  const list = ranking(x.all, x.floor, w, marks);
  const sum = x.need.answers.reduce((s, a) => s + 1 / (rankOf(list, a.key, x.need.named) ?? Infinity), 0);
  return sum / x.need.answers.length;
}
