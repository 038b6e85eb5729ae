// Writes docs/accuracy.md and docs/accuracy.svg. With --check it writes nothing and exits 1 when either is out of date.
import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { rankChart } from "./accuracy-chart.js";
import { compare, figures, nameOf, type Figure, type NeedResult, type Result } from "./accuracy-rows.js";
import { page } from "./page.js";
import { byCode, DATA, publishedNeeds } from "./published.js";
import { twenty } from "./twenty.js";

const BUCKETS = ["1", "2 or 3", "4 or 5", "6 to 10", "11 and on", "not offered"] as const;
const bucketOf = (rank: number | undefined): number =>
  rank === undefined ? 5 : rank === 1 ? 0 : rank <= 3 ? 1 : rank <= 5 ? 2 : rank <= 10 ? 3 : 4;
const cell = (text: string): string => text.replace(/\|/g, "\\|");
const table = (head: readonly string[], rows: readonly (readonly (string | number)[])[], words = 1): string =>
  [
    `| ${head.join(" | ")} |`,
    `| ${head.map((_, i) => (i < words ? "---" : "--:")).join(" | ")} |`,
    ...rows.map((row) => `| ${row.map((v) => cell(String(v))).join(" | ")} |`),
  ].join("\n");
const percent = (part: number, whole: number): string => (whole === 0 ? "" : `${Math.round((100 * part) / whole)} %`);
const mean = (values: readonly number[]): string =>
  values.length === 0 ? "" : (values.reduce((s, v) => s + v, 0) / values.length).toFixed(2);
const grams = (g: number): string => (g < 10 ? g.toFixed(1) : g.toFixed(0));
const upTo = (rows: readonly Result[], n: number, of: (r: Result) => number | undefined): string =>
  percent(rows.filter((r) => (of(r) ?? Infinity) <= n).length, rows.length);

const { catalogue, needs } = publishedNeeds(DATA);
const { rows, needs: byNeed } = compare({ catalogue, needs });
const name = (id: string): string => nameOf(catalogue, id);
const published = rows.filter((r) => !r.answer.common);
const sets: readonly (readonly [string, readonly Result[]])[] = [
  ["swaps, published with amounts", published.filter((r) => r.need.set === "swap")],
  ["choices, published without", published.filter((r) => r.need.set === "choice")],
  ["choices of common practice", rows.filter((r) => r.answer.common)],
  ["all", rows],
];

const summary = (of: (r: Result) => number | undefined): string =>
  table(
    ["rows", "how many", "offered", "first", "among 3", "among 5", "among 10", "mean of 1 / rank"],
    sets.map(([what, list]) => [
      what,
      list.length,
      upTo(list, 1e9, of),
      ...[1, 3, 5, 10].map((n) => upTo(list, n, of)),
      mean(list.map((r) => 1 / (of(r) ?? Infinity))),
    ]),
  );

const categories = [...new Set(rows.map((r) => r.need.category))].sort(byCode);
const inCategory = <T extends { need: { category: string } }>(list: readonly T[], category: string): T[] =>
  list.filter((r) => r.need.category === category);
const counts = (list: readonly Result[]): number[] =>
  BUCKETS.map((_, k) => list.filter((r) => bucketOf(r.computed) === k).length);
const precision = (list: readonly NeedResult[], of: (n: NeedResult) => number): string =>
  mean(list.filter((n) => n.need.set === "choice").map(of));

const byCategory = table(
  ["category", "needs", "rows", ...BUCKETS, "precision", "with evidence"],
  [
    ...categories.map((c) => [c, inCategory(rows, c), inCategory(byNeed, c)] as const),
    ["**all**", rows, byNeed] as const,
  ].map(([what, list, asked]) => [
    what,
    asked.length,
    list.length,
    ...counts(list),
    precision(asked, (n) => n.precision),
    precision(asked, (n) => n.precisionWith),
  ]),
);

const off = (ratio: number): number => Math.max(ratio, 1 / ratio) - 1;
const spread = (what: string, ratios: readonly number[]): (string | number)[] => {
  const sorted = [...ratios].sort((a, b) => a - b);
  const within = (x: number): string => percent(ratios.filter((r) => off(r) <= x + 1e-9).length, ratios.length);
  return [
    what,
    ratios.length,
    within(0.1),
    within(0.25),
    within(0.5),
    sorted.length === 0 ? "" : (sorted[Math.floor((sorted.length - 1) / 2)] ?? 0).toFixed(2),
  ];
};
const amounts = rows.flatMap((r) => r.amounts.map((a) => ({ ...a, many: r.answer.parts.length > 1 })));
const ratio = (a: { computed: number; published: number }): number => a.computed / a.published;
const measured = figures(catalogue, readFileSync(join(DATA, "composition/usda-sr28-household-weights.tsv"), "utf8"));
const HEAD = ["what", "how many", "within 10 %", "within 25 %", "within 50 %", "median ratio"];
const amountTable = table(HEAD, [
  spread("worked out: one for one, offered", amounts.filter((a) => !a.asked && !a.many).map(ratio)),
  spread("worked out: one for one, asked for by name", amounts.filter((a) => a.asked && !a.many).map(ratio)),
  spread("worked out: parts of mixtures", amounts.filter((a) => a.many).map(ratio)),
  spread("worked out: all", amounts.map(ratio)),
  spread(
    "looked up: all of these",
    amounts.flatMap((a) => (a.lookedUp === undefined ? [] : [a.lookedUp / a.published])),
  ),
]);
const figureTable = table(HEAD, [
  spread(
    "yields on cooking",
    measured.cooked.map((f) => f.ratio),
  ),
  spread(
    "yields on soaking",
    measured.soaked.map((f) => f.ratio),
  ),
  spread(
    "household measures",
    measured.measures.map((f) => f.ratio),
  ),
]);

const rank = (r: number | undefined): string => (r === undefined ? "none" : String(r));
function rowsOf(category: string): string {
  const lines = inCategory(rows, category).map((r) => [
    name(r.need.missing),
    r.need.setting,
    `${r.answer.parts.map((p) => name(p.id)).join(" + ")}${r.answer.common ? " (common practice)" : ""}`,
    rank(r.computed),
    rank(r.withEvidence),
    r.amounts.map((a) => grams(a.published)).join(" + "),
    r.amounts.map((a) => (a.asked ? `(${grams(a.computed)})` : grams(a.computed))).join(" + "),
    r.amounts.map((a) => ratio(a).toFixed(2)).join(", "),
    r.miss,
  ]);
  return `### ${category}\n\n${table(["missing", "for", "named", "worked out", "with evidence", "g printed", "g worked out", "ratio", "why not offered"], lines, 3)}`;
}
const figureRows = (list: readonly Figure[], digits: number): string =>
  table(
    ["what", "published", "ours", "ratio"],
    list.map((f) => [
      f.what,
      f.low === f.high ? f.low.toFixed(digits) : `${f.low.toFixed(digits)} to ${f.high.toFixed(digits)}`,
      f.ours.toFixed(digits),
      f.ratio.toFixed(2),
    ]),
  );

const text = [
  "# Accuracy",
  "Every swap and choice of `data/swaps/handbook-tables.yaml`, and the yields and measures kept in `tests/published`, beside what the engine says. Counted by `data/tools/accuracy.ts` (`npm run accuracy`). Do not edit.",
  [
    '- **Worked out** is `evidence: "computed"`: no swap of any table is looked at. This is how good the engine is on what nobody wrote down.',
    "- **With evidence** is the answer as given by default. The project holds these very rows, so here that column is look-up: it shows that a row is found and ranked, and nothing about a need that no table names.",
    "- The rows were chosen and entered before they were counted, but the facts they are worked out from were judged by people who knew such tables. Rows of one table are not independent witnesses: the fish all come from one list, the vegetables from another.",
    "- A rank is the place in the list of default length, going on; other answers named for the same need do not count against it. A table's answer that is not there at all is a miss and counts as 0 in a mean of 1 / rank. The very ingredient in its very state is asked for: thyme fresh for thyme dried is a miss.",
    "- Precision is the average precision over the choices of a need: 1 when all that tables name stand before anything else. What tables do not name may still be right.",
  ].join("\n"),
  "## Worked out",
  summary((r) => r.computed),
  "The same, counted as a cook reads a list: other states of the missing food are passed over, and of each kind only the first counts. Much of the distance is varieties standing before a different food.",
  summary((r) => r.byKind),
  "## With evidence (look-up)",
  summary((r) => r.withEvidence),
  "## Ranks by category, worked out",
  "![Ranks of published answers by category](accuracy.svg)",
  byCategory,
  "## Amounts",
  "Grams against grams, part by part, for the amount of the missing ingredient the table gives. Asked for by name: not among the answers, yet the engine says how much it would take; in brackets below. A mixture that is not found has no amounts to compare.",
  amountTable,
  "## Yields and measures",
  "Against the nearer end of a published range. Most of ours cite the same tables, so this checks the copying and the way from figure to answer.",
  figureTable,
  twenty(),
  "## Rows",
  ...categories.map(rowsOf),
  "### Yields on cooking, g on the plate per g as sold",
  figureRows(measured.cooked, 2),
  "### Yields on soaking, g in the dish per g as sold",
  figureRows(measured.soaked, 2),
  "### Household measures, g",
  figureRows(measured.measures, 1),
  "",
].join("\n\n");
const chart = rankChart("Ranks of published answers, worked out without looking them up", BUCKETS, [
  ...categories.map((c) => ({ label: c, counts: counts(inCategory(rows, c)) })),
  { label: "all", counts: counts(rows) },
]);

const check = process.argv.includes("--check");
const docs = join(DATA, "../docs");
const chartFile = join(docs, "accuracy.svg");
let same = existsSync(chartFile) && readFileSync(chartFile, "utf8") === chart;
if (!same && !check) {
  writeFileSync(chartFile, chart);
  same = true;
}
if (!(await page(join(docs, "accuracy.md"), text, "markdown", check)) || !same) {
  console.error("docs/accuracy.md or docs/accuracy.svg is out of date: run `npm run accuracy`.");
  process.exitCode = 1;
}
