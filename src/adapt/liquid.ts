import type { Procedure } from "../catalogue/index.js";
import { gramsPer, portionOf } from "../portion/index.js";
import { readQuantity } from "../quantity/index.js";
import { refusalFor, type AvoidRules } from "../safety/index.js";
import { here, label, type Draft, type Work } from "./draft.js";
import type { Naming } from "./rename.js";
import { stems, tokens } from "./words.js";

const NAMES: readonly string[] = ["soaking liquid", "soaking water", "soaking liquor", "soaking juice"];
const KEPT: readonly string[] = ["reserved liquid", "reserved water", "reserved liquor"];
const LEAD: ReadonlySet<string> = new Set(
  "the its their all reserved strained saved mushroom mushrooms porcini chilli chile of some hot warm".split(" "),
);
const KEEP: ReadonlySet<string> = new Set("reserve reserving save saving keep keeping retain retaining".split(" "));
/** Procedures that leave a liquid in which something lay. */
const SOAKS: readonly string[] = ["soak", "rehydrate", "desalt", "steep", "plump"];
const VOLUME: ReadonlySet<string> = new Set(["ml", "l", "cup", "tbsp", "tsp"]);

/** A line of its own for what takes the place of a liquid. */
export interface NewLine {
  readonly id: string;
  readonly grams: number;
  /** The index of the line it stands after; at the end when it belongs to none. */
  readonly after?: number;
  readonly instead: string;
}

/** How much liquid the steps that fall away made: said in them, or the line of water they used. Millilitres. */
function made(w: Work, n: Naming, gone: readonly string[]): number | undefined {
  for (const text of gone) {
    for (let p = 0; p < text.length && p < 2000; p++) {
      if (!/[\d½¼¾⅓⅔]/.test(text[p] ?? "") || /[\d./]/.test(text[p - 1] ?? "")) continue;
      const q = readQuantity(text.slice(p, p + 60), 0, { imperial: w.store.locale === "en-GB" });
      if (q?.unit !== undefined && VOLUME.has(q.unit.id) && q.unit.dimension === "volume")
        return q.value * q.unit.factor;
    }
    const words = stems(text);
    for (const [i, l] of w.recipe.lines.entries())
      if (i !== n.stand.at && l.read.food?.name === "water" && words.includes("water")) return l.read.portion?.grams;
  }
  return undefined;
}

/** What is left by a soak that is not done is replaced wherever the steps use it: by the recipe's own stock, else by what the procedure says. */
export function replaceLiquid(
  w: Work,
  n: Naming,
  p: Procedure,
  gone: readonly string[],
  rules: AvoidRules,
  factor: number,
): readonly NewLine[] {
  if (!SOAKS.some((id) => p.id.startsWith(id))) return [];
  const spots = here(w).flatMap((d) => {
    const at = find(d, p.byProduct?.name);
    return at === undefined ? [] : [{ d, at }];
  });
  if (spots.length === 0) return [];
  // Two things are soaked: which of the liquids is meant cannot be told
  const soaked = w.recipe.lines.filter((l, i) => {
    const item = l.read.food && w.store.byId.get(l.read.food.id);
    return i !== n.stand.at && (item?.ready?.by ?? []).some((id) => SOAKS.some((k) => id.startsWith(k)));
  });
  if (soaked.length > 0) {
    for (const { d } of spots)
      w.notes.push({
        draft: d,
        text: (step) => `Step ${step}: there is no ${p.byProduct?.name ?? "soaking liquid"} with ${label(w, n)}.`,
      });
    return [];
  }
  const measured = made(w, n, gone);
  const amount = Math.min(
    2000,
    measured ??
      (p.byProduct === undefined
        ? 120
        : Math.max(15, (w.recipe.lines[n.stand.at]?.read.portion?.grams ?? 20) * p.byProduct.gramsPerGram)),
  );
  const water = w.store.byId.get("water/pantry");
  const savoury = p.byProduct?.role === "umami seasoning";
  const stock = savoury
    ? w.recipe.lines.findIndex((l, i) => {
        const item = l.read.food && w.store.byId.get(l.read.food.id);
        if (item === undefined || l.read.portion === undefined) return false;
        if (w.namings.some((x) => x.stand.at === i)) return false;
        return item.kinds.includes("stock") && refusalFor(w.store, item, rules) === undefined;
      })
    : -1;
  const own = p.byProduct && w.store.byId.get(p.byProduct.replaceWith);
  const stand = own !== undefined && refusalFor(w.store, own, rules) === undefined ? own : water;
  const added: NewLine[] = [];
  const stockItem = w.store.byId.get(w.recipe.lines[stock]?.read.food?.id ?? "");
  // What was measured is millilitres of water; stock may weigh a little else
  const per = stockItem === undefined ? undefined : gramsPer(w.store, stockItem, "ml")?.grams;
  const grams = amount * (per ?? 1) * factor;
  let text: string;
  const left = p.byProduct?.name ?? "soaking liquid";
  if (stock >= 0) {
    const name = w.lines.named[stock]?.at(-1) ?? "stock";
    text = `${jug(w, stock, grams)} more ${name}`;
    if (stockItem !== undefined) added.push({ id: stockItem.id, grams, after: stock, instead: left });
  } else {
    text = stand === undefined ? "water" : `${portionOf(w.store, stand, grams).measure.text} ${w.store.nameOf(stand)}`;
    if (stand !== undefined && stand !== water) added.push({ id: stand.id, grams, instead: left });
  }
  for (const { d, at } of spots) put(w, n, d, at, text, left);
  return added;
}
function jug(w: Work, stock: number, grams: number): string {
  const item = w.store.byId.get(w.recipe.lines[stock]?.read.food?.id ?? "");
  return item === undefined ? `${Math.round(grams)} ml` : portionOf(w.store, item, grams).measure.text;
}

interface Spot {
  readonly start: number;
  readonly end: number;
  /** From here on a clause keeps it: ", saving half a cup of the soaking water". */
  readonly clause?: number;
  readonly keeps: boolean;
  /** "a little of the", "1/2 cup of the": the amount stays, what it is of changes. */
  readonly part: boolean;
}
function find(d: Draft, name: string | undefined): Spot | undefined {
  const low = d.text.toLowerCase();
  const phrases = [...(name === undefined ? [] : [name.toLowerCase()]), ...NAMES, ...KEPT];
  for (const phrase of phrases) {
    const at = low.indexOf(phrase);
    if (at < 0 || low.length !== d.text.length) continue;
    const words = tokens(d.text.slice(0, at));
    let k = words.length;
    let of = false;
    while (k > 0 && words.length - k < 5 && LEAD.has(words[k - 1]?.text ?? "")) {
      if (words[k - 1]?.text === "of") {
        of = true;
        break;
      }
      k--;
    }
    const start = k < words.length ? (words[k]?.start ?? at) : at;
    const before = words.slice(Math.max(0, k - 8), k);
    const keep = before.findLast((t) => KEEP.has(t.text));
    const comma = keep === undefined ? -1 : d.text.lastIndexOf(",", keep.start);
    const clause =
      keep !== undefined && comma >= 0 && d.text.slice(comma + 1, keep.start).trim() === "" ? comma : undefined;
    return {
      start,
      end: at + phrase.length,
      ...(clause === undefined ? {} : { clause }),
      keeps: keep !== undefined,
      part: of,
    };
  }
  return undefined;
}
function put(w: Work, n: Naming, d: Draft, s: Spot, text: string, left: string): void {
  const why = `there is no ${left} with ${label(w, n)}`;
  const after = d.text.slice(s.end);
  if (s.keeps) {
    if (s.clause !== undefined && /^\s*(?:[.!;]|$)/.test(after)) {
      d.text = d.text.slice(0, s.clause) + after;
      d.why.add(why);
    } else w.notes.push({ draft: d, text: (step) => `Step ${step} keeps the ${left}: there is none.` });
    return;
  }
  // Of a part of it the amount is already said; only water and stock are named
  d.text = d.text.slice(0, s.start) + (s.part ? bare(text) : text) + after;
  d.why.add(why);
}
/** "120 ml more stock" as "stock". */
const bare = (text: string): string =>
  text.split(" ").at(-1) === "stock" ? "the stock" : (text.split(" ").at(-1) ?? text);
