// Puts every published answer beside what the engine works out and what it looks up.
import { storeOf } from "../../src/catalogue/index.js";
import { readLine } from "../../src/portion/index.js";
import { dose } from "../../src/dose/index.js";
import { readAsk } from "../../src/swap/ask.js";
import { beforeOf, floorOf, weighOne } from "../../src/swap/candidates.js";
import { isBasic } from "../../src/swap/blend/index.js";
import { roleFit } from "../../src/swap/score.js";
import { swapsFor } from "../../src/swap/index.js";
import type { Catalogue, Swap } from "../../src/types.js";
import { BOILED_YIELDS, MEAT, SOAKED, type Yield } from "../../tests/published/yield-rows.js";
import { WEIGHTS } from "../../tests/published/weight-pairs.js";
import {
  MIXTURES,
  averagePrecision,
  keyOf,
  rankByKind,
  rankOf,
  type Answer,
  type Need,
  type Published,
} from "./published.js";

export interface Result {
  readonly need: Need;
  readonly answer: Answer;
  readonly computed?: number;
  readonly withEvidence?: number;
  /** Worked out, one of each kind counted. */
  readonly byKind?: number;
  /** Published against worked out, part by part, where the source prints amounts. `asked`: by name, since it is not among the answers. */
  readonly amounts: readonly {
    readonly published: number;
    readonly computed: number;
    readonly lookedUp?: number;
    readonly asked: boolean;
  }[];
  /** Why it is not among the computed answers. */
  readonly miss: string;
  readonly first: string;
}
export interface NeedResult {
  readonly need: Need;
  readonly precision: number;
  readonly precisionWith: number;
}

/** As the list of default length goes on: mixtures worked out beyond its share are not shown. */
function shown(swaps: readonly Swap[]): Swap[] {
  let mixtures = 0;
  return swaps.filter((s) => s.use.length === 1 || s.basis !== "computed" || mixtures++ < MIXTURES);
}
const keysOf = (swaps: readonly Swap[]): string[] => swaps.map((s) => keyOf(s.use.map((u) => u.id)));
const gramsIn = (swap: Swap | undefined, id: string): number | undefined => swap?.use.find((u) => u.id === id)?.grams;

export function compare({ catalogue: c, needs }: Published): { rows: Result[]; needs: NeedResult[] } {
  const store = storeOf(c);
  const rows: Result[] = [];
  const byNeed: NeedResult[] = [];
  for (const need of needs) {
    const list = (evidence: "all" | "computed"): Swap[] =>
      shown(swapsFor(c, { ...need.request, evidence, limit: 200 }).swaps);
    const computed = list("computed");
    const all = list("all");
    const keys = keysOf(computed);
    const keysWith = keysOf(all);
    const wanted = new Set(need.answers.map((a) => a.key));
    byNeed.push({
      need,
      precision: averagePrecision(keys, wanted),
      precisionWith: averagePrecision(keysWith, wanted),
    });
    const ask = readAsk(c, { ...need.request, evidence: "computed" });
    const before = beforeOf(ask);
    const kindOf = (key: string): string | undefined => {
      const item = store.byId.get(key);
      return item === undefined ? key : item.food === ask.item.food ? undefined : item.kind;
    };
    for (const answer of need.answers) {
      const rank = rankOf(keys, answer.key, need.named);
      const byKind = rankByKind(keys, answer.key, need.named, kindOf);
      const rankWith = rankOf(keysWith, answer.key, need.named);
      const found = computed[keys.indexOf(answer.key)];
      const looked = all[keysWith.indexOf(answer.key)];
      const only = answer.parts.length === 1 ? store.byId.get(answer.parts[0]?.id ?? "") : undefined;
      const byName = found === undefined && only ? weighOne(ask, only, before) : undefined;
      let miss = "";
      if (rank === undefined && byName && only) {
        if (byName.refusal) miss = byName.refusal.detail;
        else if (roleFit(ask, only) < 0.3) miss = `not its job (${ask.roles[0]?.role ?? ""})`;
        else if (byName.scored.base < floorOf(ask)) miss = `score ${byName.scored.base.toFixed(2)}, under the floor`;
        else miss = "amount not believable, or too far down";
      } else if (rank === undefined) {
        const lacking = answer.parts.filter((p) => {
          const i = store.byId.get(p.id);
          return i && !isBasic(ask, i);
        });
        miss =
          lacking.length > 0
            ? `no basic: ${lacking.map((p) => nameOf(c, p.id)).join(", ")}`
            : "mixture not found, or not worth its parts";
      }
      const amounts = answer.parts.flatMap((p) => {
        const mine = gramsIn(found, p.id) ?? byName?.uses[0]?.grams;
        if (p.grams === undefined || mine === undefined || !(mine > 0)) return [];
        const lookedUp = gramsIn(looked, p.id);
        return [
          {
            published: p.grams,
            computed: mine,
            ...(lookedUp === undefined ? {} : { lookedUp }),
            asked: found === undefined,
          },
        ];
      });
      rows.push({
        need,
        answer,
        ...(rank === undefined ? {} : { computed: rank }),
        ...(byKind === undefined ? {} : { byKind }),
        ...(rankWith === undefined ? {} : { withEvidence: rankWith }),
        amounts,
        miss,
        first: computed[0]?.use.map((u) => u.name).join(" + ") ?? "none",
      });
    }
  }
  return { rows, needs: byNeed };
}

export const nameOf = (c: Catalogue, id: string): string => {
  const item = storeOf(c).byId.get(id);
  return item ? storeOf(c).nameOf(item) : id;
};

export interface Figure {
  readonly what: string;
  readonly low: number;
  readonly high: number;
  readonly ours: number;
  /** Ours against the nearer end of the published range; 1 within it. */
  readonly ratio: number;
}
const figure = (what: string, low: number, high: number, ours: number): Figure => ({
  what,
  low,
  high,
  ours,
  ratio: ours < low ? ours / low : ours > high ? ours / high : 1,
});

/** Yields and measures kept beside the tests, against what the engine takes. `weights`: the published file of household weights. */
export function figures(c: Catalogue, weights: string): Readonly<Record<"cooked" | "soaked" | "measures", Figure[]>> {
  const store = storeOf(c);
  const yields = (list: readonly Yield[], axis: "served" | "mass"): Figure[] =>
    list.flatMap(([id, low, high]) => {
      const item = store.byId.get(id);
      return item ? [figure(store.nameOf(item), low, high ?? low, dose(store, item, axis))] : [];
    });
  const table = new Map(
    weights.split("\n").map((line) => {
      const [ndb, amount, measure, grams] = line.split("\t");
      return [`${ndb ?? ""}|${measure ?? ""}`, Number(grams) / Number(amount)] as const;
    }),
  );
  return {
    cooked: yields([...MEAT, ...BOILED_YIELDS], "served"),
    soaked: yields(SOAKED, "mass"),
    measures: WEIGHTS.map(([line, ndb, measure]) => {
      const published = table.get(`${ndb}|${measure}`) ?? Number.NaN;
      return figure(line, published, published, readLine(c, line).portion?.grams ?? Number.NaN);
    }),
  };
}
