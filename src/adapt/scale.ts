import type { Ingredient, Store } from "../catalogue/index.js";
import { kitchenMeasure, portionOf, readLine } from "../portion/index.js";
import { amountText, readQuantity } from "../quantity/index.js";
import { plural } from "../swap/plural.js";
import type { Catalogue, Measure, UnitId } from "../types.js";
import { nameFor, readBack, type Line } from "./line.js";
import { stem, tokens } from "./words.js";

/** What a cook still counts or spoons out in one unit: above or below another unit is the better one. */
const RANGE: Readonly<Partial<Record<UnitId, readonly [number, number]>>> = {
  tsp: [0.125, 3],
  tbsp: [0.5, 6],
  cup: [0.25, 12],
  g: [1, 999],
  ml: [1, 999],
  oz: [0.25, 24],
  kg: [0.5, 99],
  l: [0.5, 99],
  lb: [0.25, 99],
};
const exact = (m: Measure, grams: number): boolean => Math.abs(m.roundedBy) <= 0.06 * grams;
const WHOLE: ReadonlySet<string> = new Set(["piece", "clove", "slice", "packet", "can", "stick", "bunch"]);
const nearHalf = (x: number): boolean => Math.abs(x * 2 - Math.round(x * 2)) < 0.02 && x >= 0.48;

/** The line with so much of its food: in its own unit where that still makes a measure, else in one a kitchen has. */
export function setGrams(c: Catalogue, store: Store, line: Line, grams: number): Line {
  const { portion } = line.read;
  const item = portion && store.byId.get(portion.id);
  if (!portion || !item || !(grams > 0) || Math.abs(grams - portion.grams) < 0.05) return line;
  return inPlace(c, store, line, item, grams) ?? anew(c, store, line, item, grams);
}

/** Only the number is changed, and the noun beside it when one becomes many; undefined when that cannot be done with certainty. */
function inPlace(c: Catalogue, store: Store, line: Line, item: Ingredient, grams: number): Line | undefined {
  const { text } = line;
  const { portion } = line.read;
  const q = readQuantity(text, 0, { imperial: store.locale === "en-GB" });
  if (q === undefined || portion === undefined || q.also !== undefined || q.implied === true || q.low !== q.high)
    return undefined;
  const { unit } = portion.measure;
  const factor = grams / portion.grams;
  let amount: number;
  if (WHOLE.has(unit) || q.each !== undefined) {
    // A count is a count: it is scaled as it stands, to halves
    const n = q.value * factor;
    if (!nearHalf(n)) return undefined;
    amount = Math.round(n * 2) / 2;
  } else {
    const range = RANGE[unit];
    const m = kitchenMeasure(store, item, grams, { unit });
    if (m === undefined || range === undefined || m.amount < range[0] || m.amount > range[1] || !exact(m, grams))
      return undefined;
    const steps =
      unit === "tsp"
        ? [8]
        : unit === "tbsp"
          ? [2]
          : unit === "cup"
            ? [4, 3]
            : unit === "oz" || unit === "lb"
              ? [4]
              : [];
    if (steps.length > 0 && !steps.some((n) => Math.abs(m.amount * n - Math.round(m.amount * n)) < 0.01))
      return undefined;
    const coarse = unit === "g" || unit === "ml" ? portionLike(m.amount) : m.amount;
    // The unit as written may be another one (a quart): then the number is not the measure's
    if (Math.abs(portion.measure.amount - q.value) > 0.001) return undefined;
    amount = coarse;
  }
  const rest = text.slice(q.end);
  if (/\d/.test(rest.replace(/\d+ ?(?:cm|mm|-?inch|in)\b/g, ""))) return undefined;
  const number = amountText(amount, WHOLE.has(unit) || q.each !== undefined ? "piece" : unit);
  const gap = /\s/.test(text[q.words - 1] ?? " ") ? " " : "";
  let out = `${number}${gap}${text.slice(q.words)}`;
  if (q.each === undefined && q.value > 1 !== amount > 1) {
    const noun = inflect(
      out,
      number.length,
      q.words < q.end && q.size === "" && q.unit !== undefined,
      amount > 1,
      unit,
    );
    if (noun === undefined) return undefined;
    out = noun;
  } else if (q.each !== undefined && q.value > 1 !== amount > 1) return undefined;
  const read = readLine(c, out);
  if (read.food?.id !== item.id || read.portion === undefined || Math.abs(read.portion.grams / grams - 1) > 0.08)
    return undefined;
  return { ...line, text: out, read };
}
/** Grams and millilitres as a scale or jug is read. */
function portionLike(x: number): number {
  const step = x < 20 ? 1 : x < 100 ? 5 : x < 500 ? 10 : 25;
  return Math.max(1, Math.round(x / step) * step);
}

/** Makes the counted word one or many: the unit, or for things counted by themselves the last word before a comma. */
function inflect(text: string, from: number, unitWord: boolean, many: boolean, unit: UnitId): string | undefined {
  if (!WHOLE.has(unit) && unit !== "cup") return text;
  const head = tokens(text.slice(from).split(/[,(]/)[0] ?? "");
  const t = unitWord || unit === "cup" ? head[0] : head.at(-1);
  if (t === undefined) return undefined;
  const at = from + t.start;
  const word = text.slice(at, from + t.end);
  const now = many ? plural(word) : stem(word.toLowerCase()) === word.toLowerCase() ? word : stem(word.toLowerCase());
  return text.slice(0, at) + now + text.slice(from + t.end);
}

/** Written again: measure, name, and what is done with it. */
function anew(c: Catalogue, store: Store, line: Line, item: Ingredient, grams: number): Line {
  const portion = portionOf(store, item, grams);
  const name = nameFor(c, store, portion);
  const bare = portion.measure.text.includes(name) ? portion.measure.text : `${portion.measure.text} ${name}`;
  const { preparation, note, optional } = line.read;
  const plain = /\d/.test(note) ? "" : note;
  const tail = [
    preparation,
    plain,
    optional && !`${preparation} ${note}`.includes("optional") ? "optional" : "",
  ].filter((s) => s !== "");
  const text = [bare, ...tail].join(", ");
  return { ...line, text, read: readBack(c, text, portion) };
}
