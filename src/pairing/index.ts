import type { Ingredient } from "../catalogue/index.js";
import { freeze } from "../errors.js";
import { allergenFacts, refusalFor } from "../safety/index.js";
import type { Catalogue, Refusal } from "../types.js";
import { readAsk, type Ask } from "./ask.js";
import { byKin, compute, lower, sharedAroma, type Computed } from "./computed.js";
import { means, otherEnd, recordsOf, sameCompany, type Recorded, type Side } from "./recorded.js";
import type { Pairing, PairingAdvice, PairingRequest } from "./types.js";

interface Ranked {
  readonly with: Ingredient;
  readonly score: number;
  readonly basis: Pairing["basis"];
  readonly tradition?: string;
  readonly why: string;
  readonly sources: Pairing["sources"];
}
const round = (v: number): number => Math.round(v * 10_000) / 10_000;
const code = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** What of the house a pairing means: the very ingredient, else the same food or part in the state it is there. */
function atHome(ask: Ask, i: Ingredient): Ingredient | undefined {
  return (
    ask.have.find((h) => h.id === i.id) ??
    ask.have.find((h) => h.food === i.food && (h.part === i.part || h.part === undefined || i.part === undefined))
  );
}

/**
 * Recorded pairings are above 0.6 whatever speaks for computed ones (at most 0.6). Judgement: the tradition asked for weighs most, then
 * what is in the house, then how often the pair is recorded, how exactly it is meant, and whether the two keep the same company.
 */
function rankRecorded(ask: Ask, found: readonly { record: Recorded; other: Side; fit: number }[]): Ranked {
  const asked = (r: Recorded): number =>
    ask.traditions.length === 0
      ? r.row.tradition === undefined
        ? 0
        : 0.02
      : r.row.tradition !== undefined && ask.traditions.includes(r.row.tradition)
        ? 0.18
        : 0;
  const rest = (r: Recorded): number => (r.row.basis === "parts of one ingredient" ? 0.13 : 0);
  const [best] = [...found].sort(
    (a, b) =>
      b.fit - a.fit ||
      asked(b.record) + rest(b.record) - asked(a.record) - rest(a.record) ||
      code(a.record.row.tradition ?? "", b.record.row.tradition ?? "") ||
      code(a.record.row.why, b.record.row.why),
  );
  const { record, other, fit } = best as (typeof found)[number];
  const { row } = record;
  const mine = record.sides[0] === other ? record.sides[1] : record.sides[0];
  const home = atHome(ask, other.shown);
  const strength = Math.max(...found.map((f) => asked(f.record) + rest(f.record)));
  const often = Math.min(3, found.length - 1) * 0.015;
  const company = 0.05 * sameCompany(ask.store, mine.key, other.key);
  const aroma = 0.02 * sharedAroma(ask.item, other.shown).share;
  const score = 0.61 + strength + (home ? 0.09 : 0) + often + 0.03 * fit + company + aroma;
  return {
    with: home ?? other.shown,
    score: round(Math.min(1, score)),
    basis: row.basis,
    ...(row.tradition === undefined ? {} : { tradition: row.tradition }),
    why: row.basis === "parts of one ingredient" ? `Use the rest: ${lower(row.why)}` : row.why,
    sources: row.sources,
  };
}

function rankComputed(ask: Ask, found: Computed): Ranked {
  const home = atHome(ask, found.with);
  return {
    with: home ?? found.with,
    score: round(0.5 * Math.min(1, found.value) + (home ? 0.09 : 0)),
    basis: "computed",
    why: found.why,
    sources: [],
  };
}

/** Everything that goes with it, one line a food, best first. */
function rank(ask: Ask): readonly Ranked[] {
  const { store, item } = ask;
  const records = recordsOf(store);
  const apart = new Set<string>();
  const known = new Map<string, { record: Recorded; other: Side; fit: number }[]>();
  for (const record of records) {
    const end = otherEnd(store, record, item);
    if (end === undefined) {
      // A rest that does not come with this state is no news either.
      for (const side of record.sides) if (means(side, item) > 0) for (const s of record.sides) apart.add(s.shown.id);
      continue;
    }
    const entry = { record, other: end.other, fit: end.fit };
    known.set(end.other.key, [...(known.get(end.other.key) ?? []), entry]);
  }
  const recorded = [...known.values()].map((found) => rankRecorded(ask, found));
  const named = new Set([...known.values()].flatMap((found) => found.map((f) => f.other.shown.id)));
  // Candidates are what cooks pair at all, by any record, and what is in the house: not every jar in the catalogue.
  const candidates = new Set([...records.flatMap((r) => r.sides.map((s) => s.shown)), ...ask.have]);
  const best = new Map<string, Computed>();
  const offer = (found: Computed | undefined): void => {
    if (found === undefined || named.has(found.with.id) || apart.has(found.with.id)) return;
    const before = best.get(found.with.id);
    const better =
      before === undefined || found.value > before.value || (found.value === before.value && found.why < before.why);
    if (better) best.set(found.with.id, found);
  };
  for (const found of byKin(store, item, records, ask.traditions)) offer(found);
  for (const candidate of candidates) offer(compute(store, item, candidate));
  const all = [...recorded, ...[...best.values()].map((found) => rankComputed(ask, found))].sort(
    (a, b) => b.score - a.score || code(a.with.id, b.with.id),
  );
  // The whole and its part, or what of the house stands for both, is one line.
  const seen = new Set<string>();
  return all.filter(({ with: { id } }) => !seen.has(id) && seen.add(id));
}

/**
 * What goes with what: recorded pairings first (those of the tradition asked for before the rest), then computed ones, each with why,
 * and parts left over from the food itself as a use for the rest. Whoever avoids something is never shown it; if that is the food
 * itself, nothing is.
 * @param request a food ("kale") or a {@link PairingRequest}
 * @throws `unknown food`, `ambiguous food`, `unknown term`, `conflicting request`, `input too large`
 */
export function pairingsFor(c: Catalogue, request: string | PairingRequest): PairingAdvice {
  const ask = readAsk(c, request);
  const { store, item } = ask;
  const ref = (i: Ingredient): { id: Ingredient["id"]; name: string } => ({ id: i.id, name: store.nameOf(i) });
  const pairings: Pairing[] = [];
  const refused: Refusal[] = [];
  const self = refusalFor(store, item, ask.rules);
  if (self) refused.push({ ...ref(item), ...self });
  else
    for (const { with: other, ...rest } of rank(ask)) {
      if (pairings.length >= ask.limit) break;
      const no = refusalFor(store, other, ask.rules);
      if (no) refused.push({ ...ref(other), ...no });
      else pairings.push({ with: ref(other), ...rest, allergens: allergenFacts(store, other) });
    }
  return freeze({ food: ref(item), pairings, refused: refused.slice(0, 50), notUnderstood: ask.notUnderstood });
}
export type { Pairing, PairingAdvice, PairingBasis, PairingRequest } from "./types.js";
