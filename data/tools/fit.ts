// Fits the weights of the score (data/vocabulary/weights.yaml) to the published rows and says whether the fit holds on rows it has not
// seen: coordinate search from a fixed seed, each category left out in turn. Only the weights by class, and those of evidence, are
// looked at; no row, food or gate is. Writes nothing unless --write is given, and then only classes that were better on unseen rows.
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import {
  CLASSES,
  PARTS,
  caseOf,
  markCase,
  markKnown,
  markLeftOut,
  presentWeights,
  type Case,
  type Marks,
  type Weights,
} from "./fit-score.js";
import { byCode, DATA, publishedNeeds } from "./published.js";

const SEED = 20_260_101;
const FACTORS = [0.5, 0.8, 1.25, 2];
/** No part is ever thrown out, and none may decide alone. */
const LEAST = 0.02;
const MOST = 0.6;
const RESTARTS = 2;
/** A class is better on unseen rows when it wins by this much, in most categories, and in this share of resampled needs. */
const MARGIN = 0.01;
const SURE = 0.95;
const RESAMPLES = 1000;

/** A small generator of its own (mulberry32), so that every run searches the same way. */
function random(seed: number): () => number {
  let a = seed;
  return () => {
    a = (a + 0x6d2b79f5) | 0;
    let t = Math.imul(a ^ (a >>> 15), 1 | a);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296;
  };
}
const mean = (values: readonly number[]): number =>
  values.length === 0 ? 0 : values.reduce((s, v) => s + v, 0) / values.length;
const categoriesOf = (cases: readonly Case[]): string[] => [...new Set(cases.map((x) => x.need.category))].sort(byCode);

/** Each need counts once in its category and each category once: one long list of fish must not drown the rest. */
function byCategory(cases: readonly Case[], of: (x: Case) => number): number {
  return mean(categoriesOf(cases).map((c) => mean(cases.filter((x) => x.need.category === c).map(of))));
}
const goal = (cases: readonly Case[], w: Weights): number =>
  byCategory(cases, (x) => {
    const m = markCase(x, w);
    return x.need.set === "choice" ? m.precision : m.reciprocal;
  });
const normal = (w: Weights): number[] => {
  const sum = w.reduce((s, v) => s + v, 0);
  return w.map((v) => Math.min(MOST, Math.max(LEAST, v / sum)));
};

function search(cases: readonly Case[], start: Weights): number[] {
  const next = random(SEED);
  let best = normal(start);
  let mark = goal(cases, best);
  for (let round = 0; round <= RESTARTS; round++) {
    let w = round === 0 ? best : normal(start.map((v) => v * Math.exp(2 * next() - 1)));
    let here = goal(cases, w);
    for (let moved = true; moved;) {
      moved = false;
      const order = PARTS.map((_, k) => [next(), k] as const).sort((a, b) => a[0] - b[0]);
      for (const [, k] of order) {
        for (const factor of FACTORS) {
          const tried = normal(w.map((v, i) => (i === k ? v * factor : v)));
          const there = goal(cases, tried);
          if (there <= here + 1e-4) continue;
          w = tried;
          here = there;
          moved = true;
        }
      }
    }
    if (here <= mark + 1e-4) continue;
    best = w;
    mark = here;
  }
  return best;
}

const out = (line: string): void => void process.stdout.write(`${line}\n`);
const show = (w: Weights): string => PARTS.map((p, k) => `${p} ${(w[k] ?? 0).toFixed(3)}`).join(", ");
function scores(cases: readonly Case[], w: (x: Case) => Weights): string {
  const marks = cases.map((x) => ({ x, m: markCase(x, w(x)) }));
  const rows = marks.reduce((s, { m }) => s + m.rows, 0);
  const choices = marks.filter(({ x }) => x.need.set === "choice");
  return [
    `goal ${byCategory(cases, (x) => goal([x], w(x))).toFixed(4)}`,
    `mean of 1 / rank ${(marks.reduce((s, { m }) => s + m.reciprocal * m.rows, 0) / rows).toFixed(4)}`,
    `among 5: ${((100 * marks.reduce((s, { m }) => s + m.hits, 0)) / rows).toFixed(1)} %`,
    `precision of choices ${mean(choices.map(({ m }) => m.precision)).toFixed(4)}`,
  ].join("; ");
}

const GRID = (present: Marks): readonly Marks[] => [
  present,
  ...[0.4, 0.8, 1.4].flatMap((evidence) =>
    [0.8, 1.4, 2.6, 4].flatMap((published) => [0.1, 0.4].map((unlisted) => ({ evidence, published, unlisted }))),
  ),
];

const { catalogue, needs } = publishedNeeds(DATA);
const cases = needs.map((need) => caseOf(catalogue, need));
const { weights: present, marks } = presentWeights(catalogue);
const fitted = { ...present };
const unseen = new Map<Case, Weights>();
const better: string[] = [];
out(`${needs.length} needs, ${needs.reduce((s, n) => s + n.answers.length, 0)} rows, nothing looked up.`);
out("Goal: precision of a need of choices, mean of 1 / rank of a need of swaps; each category counts once.\n");
for (const name of CLASSES) {
  const mine = cases.filter((x) => x.class === name);
  const categories = categoriesOf(mine);
  fitted[name] = search(mine, present[name]);
  for (const c of categories) {
    const w = search(
      mine.filter((x) => x.need.category !== c),
      present[name],
    );
    for (const x of mine) if (x.need.category === c) unseen.set(x, w);
  }
  const before = goal(mine, present[name]);
  const on = byCategory(mine, (x) => goal([x], unseen.get(x) ?? present[name]));
  const gain = (list: readonly Case[]): number => byCategory(list, (x) => gains.get(x) ?? 0);
  const gains = new Map(mine.map((x) => [x, goal([x], unseen.get(x) ?? present[name]) - goal([x], present[name])]));
  const byEach = categories.map((c) => [c, gain(mine.filter((x) => x.need.category === c))] as const);
  const won = byEach.filter(([, g]) => g > 1e-4);
  const next = random(SEED);
  let wins = 0;
  for (let k = 0; k < RESAMPLES; k++)
    if (gain(mine.map(() => mine[Math.floor(next() * mine.length)] as Case)) > 0) wins++;
  const sure = wins / RESAMPLES;
  if (on > before + MARGIN && won.length * 2 > categories.length && sure >= SURE) better.push(name);
  out(`${name}: ${mine.length} needs in ${categories.length} categories (${categories.join(", ")})`);
  out(`  present: ${scores(mine, () => present[name])}`);
  out(`  fitted:  ${scores(mine, () => fitted[name])}`);
  out(`  unseen:  ${scores(mine, (x) => unseen.get(x) ?? present[name])}`);
  out(`  gain on unseen categories: ${byEach.map(([c, g]) => `${c} ${g >= 0 ? "+" : ""}${g.toFixed(3)}`).join(", ")}`);
  out(
    `  better in ${won.length} of ${categories.length} of them, and in ${(100 * sure).toFixed(0)} % of ${RESAMPLES} resamples of needs`,
  );
  out(`  present: ${show(normal(present[name]))}`);
  out(`  fitted:  ${show(fitted[name])}\n`);
}
out("all classes");
out(`  present: ${scores(cases, (x) => present[x.class])}`);
out(`  fitted:  ${scores(cases, (x) => fitted[x.class])}`);
out(`  unseen:  ${scores(cases, (x) => unseen.get(x) ?? present[x.class])}\n`);

// With its own row in the evidence nearly every answer is found; so each row is also struck out in turn and the rest looked up.
out("evidence, published and unlisted: mean of 1 / rank, each category once");
for (const m of GRID(marks)) {
  const struck = byCategory(cases, (x) => markLeftOut(x, present[x.class], m));
  const held = byCategory(cases, (x) => markKnown(x, present[x.class], m));
  out(
    `  evidence ${m.evidence}, published ${m.published}, unlisted ${m.unlisted}: row struck out ${struck.toFixed(4)}, looked up ${held.toFixed(4)}`,
  );
}
out(
  "  A row that is looked up is found by its own entry, and one struck out hardly moves: nothing here to fit the two on. They stay judgement.\n",
);

out(
  `Better on unseen rows by more than ${MARGIN}, in most categories and in ${100 * SURE} % of resamples: ${better.join(", ") || "no class"}.`,
);
if (process.argv.includes("--write")) {
  const file = join(DATA, "vocabulary/weights.yaml");
  let text = readFileSync(file, "utf8");
  for (const name of CLASSES) {
    if (!better.includes(name)) continue;
    const values = PARTS.map((p, k) => `${p}: ${Number((fitted[name][k] ?? 0).toFixed(2))}`).join(", ");
    text = text.replace(new RegExp(`^${name}:.*$`, "m"), `${`${name}:`.padEnd(10)} { ${values} }`);
  }
  writeFileSync(file, text);
  out(better.length > 0 ? "Written. Put the new weights into docs/method.md as well." : "Nothing to write.");
}
