import type { Store } from "../catalogue/index.js";
import { portionOf, readLine } from "../portion/index.js";
import { named } from "../swap/sentence.js";
import type { Catalogue } from "../types.js";
import type { Stand } from "./choose.js";
import type { Line } from "./line.js";
import { setGrams } from "./scale.js";

export interface Corrected {
  readonly lines: Map<number, { readonly line: Line; readonly why: string }>;
  readonly notes: readonly string[];
}
/** What the swaps leave over, all of them together, put right on the recipe's own lines; never below nothing. */
export function correct(
  c: Catalogue,
  store: Store,
  lines: readonly Line[],
  stands: readonly Stand[],
  given: ReadonlyMap<Stand, number>,
): Corrected {
  const sums = new Map<string, { grams: number; whys: Set<string> }>();
  for (const stand of stands)
    for (const x of stand.swap?.corrections ?? []) {
      const sum = sums.get(x.ingredient.id) ?? { grams: 0, whys: new Set<string>() };
      sum.grams += x.grams * (given.get(stand) ?? 1);
      sum.whys.add(x.why);
      sums.set(x.ingredient.id, sum);
    }
  const out: Corrected["lines"] = new Map();
  const notes: string[] = [];
  const taken = new Set(stands.map((s) => s.at));
  for (const [id, { grams, whys }] of [...sums].sort(([a], [b]) => (a < b ? -1 : 1))) {
    const item = store.byId.get(id);
    if (item === undefined || Math.abs(grams) < 0.3) continue;
    const name = store.nameOf(item);
    const why = [...whys].join(", ");
    const measure = named(portionOf(store, item, Math.abs(grams)));
    const at = lines
      .map((l, i) => ({ l, i }))
      .filter(
        ({ l, i }) =>
          !taken.has(i) &&
          l.read.portion !== undefined &&
          (l.read.food?.id === id || store.byId.get(l.read.food?.id ?? "")?.food === item.food),
      )
      .sort(
        (a, b) =>
          Number(b.l.read.food?.id === id) - Number(a.l.read.food?.id === id) ||
          (b.l.read.portion?.grams ?? 0) - (a.l.read.portion?.grams ?? 0) ||
          a.i - b.i,
      )[0];
    if (at === undefined) {
      notes.push(
        `${grams < 0 ? `Hold back ${measure} where the recipe seasons or adds it` : `Add about ${measure}, ${id.startsWith("water/") ? "a little at a time" : "tasting as you go"}`}: ${why}.`,
      );
      continue;
    }
    const line = at.l;
    const had = line.read.portion?.grams ?? 0;
    const now = had + grams;
    if (now < Math.max(0.3, had * 0.08)) {
      const text = `${name}, to taste`;
      out.set(at.i, {
        line: { ...line, text, read: readLine(c, text) },
        why: `${why}: there may be enough without it`,
      });
    } else
      out.set(at.i, {
        line: setGrams(c, store, line, now),
        why: `${grams < 0 ? "held back" : "added"} ${measure}: ${why}`,
      });
  }
  return { lines: out, notes };
}
