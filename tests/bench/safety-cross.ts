// Every ingredient against everything that can be avoided, end to end: swaps, mixtures, pairings, what fills a meal, and notes.
//   npm run cross                    all of it: over an hour on one core
//   npm run cross -- --turns 4       each ingredient with four of the things to avoid, in a fixed rotation
//   npm run cross -- --turns 4 --from 4    the next four
// Prints what is wrong and the counts; exits 1 when anything is.
import { parseArgs } from "node:util";
import { checkMeal, pairingsFor, readRecipe, swapNotes } from "../../src/index.js";
import {
  all,
  asked,
  AVOIDABLE,
  c,
  forbidden,
  get,
  leftFor,
  offersFor,
  refusedFor,
  store,
  turn,
} from "../helpers/safety-cross.js";

const { values } = parseArgs({
  options: {
    turns: { type: "string", default: String(AVOIDABLE.length) },
    from: { type: "string", default: "0" },
  },
});
const turns = Array.from({ length: Number(values.turns) }, (_, k) => Number(values.from) + k);
const faults: string[] = [];
const counts = { gates: 0, offers: 0, left: 0, swaps: 0, pairings: 0, fills: 0, notes: 0 };
const started = Date.now();
const say = (text: string): void => console.log(`${Math.round((Date.now() - started) / 1000)} s  ${text}`);

for (const a of AVOIDABLE)
  for (const i of all) {
    counts.gates += 1;
    if (forbidden(i, a) && !refusedFor(a).has(i.id)) faults.push(`${i.id} is not refused for ${a.name}`);
  }
say(`gates: ${counts.gates} pairs`);

all.forEach((missing, n) => {
  const offers = offersFor(missing);
  faults.push(...offers.faults);
  counts.offers += offers.list.length;
  for (const a of AVOIDABLE)
    for (const o of leftFor(offers, a)) {
      counts.left += 1;
      for (const id of o.ids) if (forbidden(get(id), a)) faults.push(`${missing.id}: ${id} for ${a.name}`);
    }
  const plain = pairingsFor(c, { food: missing.id, limit: 200 }).pairings.map((p) => p.with.id as string);
  for (const shift of turns) {
    const a = turn(n, shift);
    faults.push(...asked(missing, offers, a));
    counts.swaps += 1;
    const got = pairingsFor(c, { food: missing.id, avoid: a.avoid, limit: 200 }).pairings.map(
      (p) => p.with.id as string,
    );
    const left = refusedFor(a).has(missing.id) ? [] : plain.filter((id) => !refusedFor(a).has(id));
    if (left.some((id, k) => got[k] !== id) || got.some((id) => refusedFor(a).has(id)))
      faults.push(`what goes with ${missing.id} for ${a.name}: ${got.join(" ")}; due ${left.join(" ")}`);
    counts.pairings += 1;
  }
  if (n % 250 === 249) say(`${n + 1} of ${all.length} ingredients, ${faults.length} faults`);
});

for (const a of AVOIDABLE)
  for (let at = 0; at < all.length; at += 25) {
    const have = all.slice(at, at + 25).map((i) => i.id as string);
    const { gaps } = checkMeal(c, {
      serves: 4,
      dishes: [{ name: "tea", lines: ["1 tsp salt"] }],
      table: [{ avoid: a.avoid }],
      have,
    });
    for (const f of gaps.flatMap((gap) => gap.fill)) {
      counts.fills += 1;
      if (refusedFor(a).has(f.id)) faults.push(`the meal is filled with ${f.id} for ${a.name}`);
    }
  }
say(`meals: ${counts.fills} fills`);

AVOIDABLE.forEach((a, n) => {
  const lines = all.filter((_, k) => k % 307 === (n * 13) % 307).map((i) => `100 g ${store.nameOf(i)}`);
  const recipe = readRecipe(c, `Trial\n\nIngredients\n${lines.join("\n")}\n\nMethod\nCook it.`, "text");
  for (const note of swapNotes(c, recipe, { avoid: a.avoid }).notes)
    for (const u of note.swaps.flatMap((s) => s.use)) {
      counts.notes += 1;
      if (refusedFor(a).has(u.id)) faults.push(`the note on ${note.line} for ${a.name}: ${u.id}`);
    }
});
say(`notes: ${counts.notes} uses`);

for (const fault of faults.slice(0, 200)) console.log(fault);
console.log(JSON.stringify({ ...counts, ingredients: all.length, avoidable: AVOIDABLE.length, faults: faults.length }));
process.exitCode = faults.length > 0 ? 1 : 0;
