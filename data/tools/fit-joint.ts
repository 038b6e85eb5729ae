// Fits the constants of the ranking together: those of data/vocabulary/weights.yaml that count without evidence. What is asked is how far
// they carry to foods they were not fitted on, so each shelf (fish, dairy, herbs ...) is left out in turn. Looked at are the published
// rows and the first examination; the second examination and what else cooks are known to do are only counted at the end and choose
// nothing. Writes nothing.
import { storeOf } from "../../src/catalogue/index.js";
import { swapsFor } from "../../src/index.js";
import type { WeightTable } from "../../src/swap/settled.js";
import type { Swap, SwapRequest } from "../../src/types.js";
import { foodOf, mark, questionsIn, requestOf } from "../../tests/exam/marking.js";
import { CLASSES, PARTS } from "./fit-score.js";
import { DATA, SHELF, byCode, keyOf, openData, publishedNeeds, rankOf } from "./published.js";

const FACTORS = [0.6, 0.8, 1.25, 1.6];
const ROUNDS = 2;
/** Less than this is chance. */
const STEP = 0.002;
const LONG = 20;

/** One thing asked: how well the list answers it, 0 to 1. */
interface Asked {
  readonly shelf: string;
  readonly set: "published" | "first";
  readonly of: () => number;
}
const out = (line: string): void => void process.stdout.write(`${line}\n`);
const mean = (values: readonly number[]): number => values.reduce((s, v) => s + v, 0) / Math.max(1, values.length);

const { catalogue, needs } = publishedNeeds(DATA);
const { authored } = openData(DATA);
const store = storeOf(catalogue);
const families = new Map(authored.foods.map(({ file, data }) => [data.food, file.split("/").at(-2) ?? ""]));
const shelfOf = (id: string): string => {
  const family = families.get(foodOf(id).split(".")[0] as string) ?? "other";
  return SHELF[family] ?? family;
};

const present = store.tables["weights"] as WeightTable;
let table: WeightTable = present;
Object.defineProperty(store, "tables", { value: { ...store.tables } });
Object.defineProperty(store.tables, "weights", { get: () => table });

const idsOf = (s: Swap): string[] => s.use.map((u) => u.id);
const listed = (request: SwapRequest): readonly Swap[] =>
  swapsFor(catalogue, { ...request, evidence: "computed", limit: LONG }).swaps;
const published: readonly Asked[] = needs.map((need) => ({
  shelf: need.category,
  set: "published",
  of: () => {
    const keys = listed(need.request).map((s) => keyOf(idsOf(s)));
    return mean(
      need.answers.map((a) => {
        const rank = rankOf(keys, a.key, need.named) ?? Infinity;
        return ((rank <= 5 ? 1 : 0) + 1 / rank) / 2;
      }),
    );
  },
}));
/** The first examination by the place of the first good answer, none counted that stands below a poor one. */
const first: readonly Asked[] = questionsIn("questions.yaml")
  .filter((q) => q.expect !== "none")
  .map((q) => {
    const request = requestOf(q, "computed");
    const missing = swapsFor(catalogue, request).missing.id;
    return {
      shelf: shelfOf(missing),
      set: "first",
      of: () => (mark(catalogue, q, "computed").faults.filter((f) => f !== "amount").length === 0 ? 1 : 0),
    };
  });
const asked = [...published, ...first];
const shelves = [...new Set(asked.map((a) => a.shelf))].sort(byCode);

/** What may be moved: a weight of a part in a class, or what of a weight goes by use and by form. */
const CONSTANTS: readonly (readonly [string, (w: WeightTable, factor: number) => WeightTable])[] = [
  ...CLASSES.flatMap((c) =>
    PARTS.map(
      (p) => [`${c} ${p}`, (w: WeightTable, f: number) => ({ ...w, [c]: { ...w[c], [p]: w[c][p] * f } })] as const,
    ),
  ),
  ["use", (w, f) => ({ ...w, use: { ...w.use, working: w.use.working * f } })],
  ["form", (w, f) => ({ ...w, form: w.form * f })],
];

const kept = new Map<string, readonly number[]>();
function marksOf(w: WeightTable): readonly number[] {
  const key = JSON.stringify(w);
  let marks = kept.get(key);
  if (!marks) {
    table = w;
    kept.set(key, (marks = asked.map((a) => a.of())));
    table = present;
  }
  return marks;
}
/** Each shelf counts once, and in it the rows and the examination by their number. */
const goal = (marks: readonly number[], on: (a: Asked) => boolean): number =>
  mean(
    shelves.flatMap((shelf) => {
      const own = marks.filter((_, k) => asked[k]?.shelf === shelf && on(asked[k]));
      return own.length === 0 ? [] : [mean(own)];
    }),
  );

interface Fitted {
  readonly table: WeightTable;
  readonly moved: readonly string[];
}
function fit(on: (a: Asked) => boolean): Fitted {
  let best: Fitted = { table: present, moved: [] };
  for (let round = 0; round < ROUNDS; round++) {
    const here = goal(marksOf(best.table), on);
    const tried = CONSTANTS.flatMap(([name, move]) =>
      FACTORS.map((f) => ({ table: move(best.table, f), moved: [...best.moved, `${name} x ${f}`] })),
    ).map((t) => ({ ...t, goal: goal(marksOf(t.table), on) }));
    const top = tried.reduce((a, b) => (b.goal > a.goal + 1e-9 ? b : a));
    if (top.goal <= here + STEP) break;
    best = top;
  }
  return best;
}

const all = (): boolean => true;
const was = marksOf(present);
out(
  `${published.length} published needs and ${first.length} questions on ${shelves.length} shelves, nothing looked up.`,
);
out(`present: ${goal(was, all).toFixed(4)}`);
/** Use and form at other weights, those of the jobs and of the work as they are. */
const withOther = (use: WeightTable["use"], form: number): WeightTable => ({
  ...present,
  use,
  form,
  ...Object.fromEntries(
    CLASSES.map((c) => {
      const { role, handling, ...rest } = present[c];
      return [c, { ...rest, role: role - present.use[c] + use[c], handling: handling - present.form + form }];
    }),
  ),
});
const NONE = { bulk: 0, seasoning: 0, working: 0 };
const NEITHER = withOther(NONE, 0);
const neither = marksOf(NEITHER);
for (const [name, w] of [
  ["neither use nor form", NEITHER],
  ["no use", withOther(NONE, present.form)],
  ["no form", withOther(present.use, 0)],
  [
    "use in every class",
    withOther(
      { bulk: present.use.working, seasoning: present.use.working, working: present.use.working },
      present.form,
    ),
  ],
  ["both doubled", withOther({ ...NONE, working: present.use.working * 2 }, present.form * 2)],
] as const)
  out(`${name}: ${goal(marksOf(w), all).toFixed(4)}`);
const won = shelves.filter((s) => goal(was, (a) => a.shelf === s) > goal(neither, (a) => a.shelf === s) + 1e-9);
const lost = shelves.filter((s) => goal(was, (a) => a.shelf === s) < goal(neither, (a) => a.shelf === s) - 1e-9);
out(`present against neither: better on ${won.join(", ") || "none"}; worse on ${lost.join(", ") || "none"}\n`);

const unseen = [...was];
for (const shelf of shelves) {
  const { table: w, moved } = fit((a) => a.shelf !== shelf);
  const marks = marksOf(w);
  asked.forEach((a, k) => {
    if (a.shelf === shelf) unseen[k] = marks[k] as number;
  });
  const on = (a: Asked): boolean => a.shelf === shelf;
  out(
    `without ${shelf}: ${moved.join(", ") || "nothing moved"}; on it ${goal(was, on).toFixed(4)} -> ${goal(marks, on).toFixed(4)}`,
  );
}
const fitted = fit(all);
out(`\nfitted on all: ${fitted.moved.join(", ") || "nothing moved"}`);
out(
  `goal: present ${goal(was, all).toFixed(4)}, fitted ${goal(marksOf(fitted.table), all).toFixed(4)}, unseen ${goal(unseen, all).toFixed(4)}`,
);

// Held out: chooses nothing.
const rows = new Set(needs.flatMap((n) => n.answers.map((a) => a.id)));
const known = new Map<string, Set<string>>();
for (const e of store.swaps) {
  if (rows.has(e.id)) continue;
  const set = known.get(e.replaces.id) ?? new Set<string>();
  known.set(e.replaces.id, set.add(keyOf(e.uses.map((u) => u.id))));
}
/** How near a list of ten comes to having what cooks take on top (discounted by the logarithm of the place). */
function near(keys: readonly string[], good: ReadonlySet<string>): number {
  const gain = (k: number): number => 1 / Math.log2(k + 2);
  const best = [...good].slice(0, 10).reduce((s, _, k) => s + gain(k), 0);
  return keys.slice(0, 10).reduce((s, key, k) => s + (good.has(key) ? gain(k) : 0), 0) / best;
}
for (const [name, w] of [
  ["neither use nor form", NEITHER],
  ["present", present],
  ["fitted", fitted.table],
] as const) {
  table = w;
  const right = (file: string, evidence: "all" | "computed"): string => {
    const questions = questionsIn(file);
    return `${questions.filter((q) => mark(catalogue, q, evidence).faults.length === 0).length}/${questions.length}`;
  };
  const practice = mean(
    [...known].map(([missing, good]) =>
      near(
        listed({ missing }).map((s) => keyOf(idsOf(s))),
        good,
      ),
    ),
  );
  out(
    `${name}: second examination ${right("second.yaml", "computed")} computed, ${right("second.yaml", "all")} with evidence; first ${right("questions.yaml", "computed")} and ${right("questions.yaml", "all")}; common practice of ${known.size} ingredients ${practice.toFixed(4)}`,
  );
}
