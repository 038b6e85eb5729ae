// Speed by plain performance.now: no framework, no thresholds, since a clock proves nothing on a shared machine. Each figure is given
// as the least and the median of its runs; the least is what a machine with nothing else to do needs. `npm run bench`.
import { execFileSync } from "node:child_process";
import { checkMeal, findFood, openCatalogue, readLine, swapsFor } from "../../src/index.js";
import type { Catalogue } from "../../src/index.js";
import { storeOf } from "../../src/catalogue/index.js";
import { catalogueOf } from "../../src/catalogue/open.js";
import { makeExtension } from "../../src/catalogue/overlay.js";
import { encode, type Flat, type FlatIngredient } from "../../src/catalogue/compiled.js";
import { WIDTH, doseMatrix } from "../../src/dose/index.js";
import { readAsk } from "../../src/swap/ask.js";
import { blendsFor } from "../../src/swap/blend/index.js";
import { SUPPER, HOUSE, TABLE } from "../../src/cli/quayside.js";
import { recipeTimes } from "./recipes.js";

interface Timing {
  readonly least: number;
  readonly median: number;
}
/** Runs until `budget` ms are spent, at least three times. */
function time(work: () => unknown, budget = 600): Timing {
  const runs: number[] = [];
  const end = performance.now() + budget;
  while (runs.length < 3 || (performance.now() < end && runs.length < 20_000)) {
    const start = performance.now();
    work();
    runs.push(performance.now() - start);
  }
  return timing(runs);
}
function timing(runs: number[]): Timing {
  runs.sort((a, b) => a - b);
  return { least: runs[0] ?? Number.NaN, median: runs[runs.length >> 1] ?? Number.NaN };
}
const once = (work: () => unknown): number => {
  const start = performance.now();
  work();
  return performance.now() - start;
};
const ms = (v: number): string => (v < 0.1 ? v.toFixed(4) : v < 10 ? v.toFixed(2) : v.toFixed(0));

function table(head: readonly string[], rows: readonly (readonly string[])[]): void {
  const widths = head.map((h, k) => Math.max(h.length, ...rows.map((r) => (r[k] ?? "").length)));
  const line = (cells: readonly string[]): string =>
    cells.map((s, k) => (k === 0 ? s.padEnd(widths[k] ?? 0) : s.padStart(widths[k] ?? 0))).join("  ");
  for (const row of [head, widths.map((w) => "-".repeat(w)), ...rows]) process.stdout.write(`${line(row)}\n`);
  process.stdout.write("\n");
}

/** The least any answer over the whole catalogue must do: one pass over the matrix of doses, a weighted distance a row. */
function bareScan(matrix: Float64Array, from: number): number {
  const size = matrix.length / WIDTH;
  let best = Infinity;
  let at = -1;
  for (let i = 0; i < size; i++) {
    if (i === from) continue;
    let d = 0;
    for (let k = 0; k < WIDTH; k++) {
      const v = (matrix[i * WIDTH + k] as number) - (matrix[from * WIDTH + k] as number);
      if (!Number.isNaN(v)) d += v * v;
    }
    if (d < best) {
      best = d;
      at = i;
    }
  }
  return at;
}

/** A catalogue of about `size` ingredients, fewer than there are: whole foods spread over all, kale always, and the swaps among them. */
function shrunk(size: number): Catalogue {
  const base = storeOf(openCatalogue()).flat();
  const foods = [...new Set(base.ingredients.map((i) => i.food))];
  const share = size / base.ingredients.length;
  const kept = new Set(
    foods.filter((food, k) => food === "kale" || Math.floor((k + 1) * share) > Math.floor(k * share)),
  );
  const ingredients = base.ingredients.filter((i) => kept.has(i.food)).map((i) => ({ ...i, becomes: [] }));
  const ids = new Set(ingredients.map((i) => i.id));
  const swaps = base.swaps.filter((s) => ids.has(s.replaces.id) && s.uses.every((u) => ids.has(u.id)));
  const compiled = encode({ ...base, ingredients, swaps }, { version: "0", data: "0", hash: "0" });
  return catalogueOf(compiled, { locale: "en-US", measures: "us", extensions: [] });
}

/** A catalogue of `size` ingredients: every row again under new ids and names until there are enough, laid over as an extension. */
function grown(size: number): Catalogue {
  const base = storeOf(openCatalogue()).flat();
  const rows: FlatIngredient[] = [];
  for (let copy = 1; rows.length + base.ingredients.length < size; copy++) {
    for (const row of base.ingredients) {
      if (rows.length + base.ingredients.length >= size) break;
      const food = `${row.food}-copy${copy}`;
      const id = `${food}${row.id.slice(row.food.length)}`;
      const renamed = (text: string): string => `${text} no ${copy}`;
      rows.push({
        ...row,
        id,
        food,
        name: [renamed(row.name[0]), renamed(row.name[1])],
        names: row.names.map((n) => ({ ...n, text: renamed(n.text) })),
        becomes: [],
      });
    }
  }
  const content: Flat = { commons: { ...base.commons, procedures: [] }, ingredients: rows, swaps: [] };
  return rows.length === 0 ? openCatalogue() : openCatalogue({ extensions: [makeExtension("copies", content)] });
}

const KALE = { missing: "500 g kale", dish: { technique: "braise" } };
function catalogueTimes(): void {
  const first = once(() => openCatalogue());
  const c = openCatalogue();
  const index = once(() => findFood(c, "cod"));
  const doses = once(() => doseMatrix(storeOf(c)));
  const query = once(() => swapsFor(c, KALE));
  process.stdout.write(`${c.size} ingredients, Node ${process.version}\n\n`);
  table(
    ["first time", "ms"],
    [
      ["open (parses the data)", ms(first)],
      ["first name found (makes the index)", ms(index)],
      ["doses of every ingredient", ms(doses)],
      ["first swap asked for", ms(query)],
    ],
  );
  const row = (what: string, work: () => unknown): string[] => {
    const t = time(work);
    return [what, ms(t.least), ms(t.median), (t.least / bare.least).toFixed(0)];
  };
  const request = { missing: "240 g buttermilk", for: "pancakes" };
  const matrix = doseMatrix(storeOf(c));
  const bare = time(() => bareScan(matrix, 0));
  table(
    ["every time after", "least ms", "median ms", "bare scans"],
    [
      row("bare scan of a typed array of the same size", () => bareScan(matrix, 0)),
      row("open", () => openCatalogue()),
      row("findFood, exact", () => findFood(c, "aubergine")),
      row("findFood, folded", () => findFood(c, "Crème Fraîche")),
      row("findFood, misspelt", () => findFood(c, "parmezan chese")),
      row("findFood, nonsense", () => findFood(c, "qwrtzp")),
      row("readLine", () => readLine(c, "1 (15 oz) can black beans, drained and rinsed")),
      row("swapsFor, eaten for itself", () => swapsFor(c, KALE)),
      row("swapsFor, with mixtures", () => swapsFor(c, request)),
      row("mixtures alone", () => blendsFor(readAsk(c, request))),
      row("checkMeal, the quayside supper", () => checkMeal(c, { ...SUPPER, table: TABLE, have: HOUSE })),
    ],
  );
}

/** What a process that has just started pays: the built package, as many processes as runs. */
function freshTimes(runs: number): void {
  const script = `
    const t0 = performance.now();
    const { openCatalogue, findFood, swapsFor } = await import(${JSON.stringify(new URL("../../dist/index.js", import.meta.url).href)});
    const t1 = performance.now();
    const c = openCatalogue();
    const t2 = performance.now();
    findFood(c, "cod");
    const t3 = performance.now();
    swapsFor(c, { missing: "500 g kale", dish: { technique: "braise" } });
    console.log(JSON.stringify([t1 - t0, t2 - t1, t3 - t2, performance.now() - t3]));`;
  const all = Array.from(
    { length: runs },
    () =>
      JSON.parse(
        execFileSync(process.execPath, ["--input-type=module", "-e", script], { encoding: "utf8" }),
      ) as number[],
  );
  const names = ["import", "openCatalogue", "first findFood (makes the name index)", "first swapsFor"];
  table(
    [`in a fresh process (${runs})`, "least ms", "median ms"],
    names.map((name, k) => {
      const t = timing(all.map((run) => run[k] ?? Number.NaN));
      return [name, ms(t.least), ms(t.median)];
    }),
  );
}

function growth(sizes: readonly number[]): void {
  const rows: string[][] = [];
  for (const size of sizes) {
    let c = openCatalogue();
    const open = once(() => (c = size > 0 && size < c.size ? shrunk(size) : grown(size)));
    const index = once(() => findFood(c, "cod"));
    const matrix = doseMatrix(storeOf(c));
    const from = storeOf(c).ingredients.find((i) => i.id === "kale/fresh")?.index ?? 0;
    swapsFor(c, KALE);
    const query = time(() => swapsFor(c, KALE), 1500);
    const bare = time(() => bareScan(matrix, from), 400);
    const exact = time(() => findFood(c, "aubergine"), 200);
    const fuzzy = time(() => findFood(c, "parmezan chese"), 400);
    const line = time(() => readLine(c, "2 cups chopped onion"), 200);
    rows.push([
      String(c.size),
      ms(open),
      ms(index),
      ms(exact.least),
      ms(fuzzy.least),
      ms(line.least),
      ms(query.least),
      ms(bare.least),
      (query.least / bare.least).toFixed(0),
    ]);
  }
  table(
    ["ingredients", "grow and open", "name index", "exact", "misspelt", "readLine", "swap query", "bare scan", "ratio"],
    rows,
  );
  process.stdout.write(
    "ms, least of the runs; ratio: a whole swap query against one pass over a typed array of the same size in the same run\n",
  );
}

const quick = process.argv.includes("--quick");
freshTimes(quick ? 5 : 15);
catalogueTimes();
growth(quick ? [1000, 0, 10_000] : [1000, 0, 10_000, 30_000, 100_000]);
await recipeTimes(process.argv.includes("--quick") ? 1000 : 5000);
