import type { Ingredient, Store } from "../catalogue/index.js";
import { kitchenMeasure, portionOf, readLine } from "../portion/index.js";
import { amountText, fractionText, readQuantity } from "../quantity/index.js";
import { temperaturesIn } from "../recipe/temperatures.js";
import { plural } from "../swap/plural.js";
import type { Catalogue, Measure, UnitId } from "../types.js";
import { nameFor, RANGE, readBack, type Line } from "./line.js";
import { singular, stems, tokens } from "./words.js";

const exact = (m: Measure, grams: number): boolean => Math.abs(m.roundedBy) <= 0.06 * grams;
const WHOLE: ReadonlySet<string> = new Set(["piece", "clove", "slice", "packet", "can", "stick", "bunch"]);
const PARTS: readonly number[] = [0, 1 / 4, 1 / 3, 1 / 2, 2 / 3, 3 / 4, 1];
/** How far a count may be from what was asked for. */
const NEAR = 0.06;

/** A count as a cook can divide: halves, thirds and quarters up to 4, halves above; undefined when none is near. */
function countNear(n: number): number | undefined {
  const whole = Math.floor(n);
  // Whole ones where that is near enough, then halves: nobody wants a third of an onion for half of one
  if (n >= 5 && Math.abs(Math.round(n) / n - 1) < NEAR) return Math.round(n);
  const half = Math.round(n * 2) / 2;
  if (n >= 2 && Math.abs(half / n - 1) < NEAR) return half;
  const parts = n < 4 ? PARTS : [0, 1 / 2, 1];
  const best = parts.map((p) => whole + p).reduce((a, b) => (Math.abs(b - n) < Math.abs(a - n) ? b : a));
  return best > 0 && Math.abs(best / n - 1) < NEAR ? best : undefined;
}

/** The line with so much of its food: in its own unit where that still makes a measure, else in one a kitchen has. */
export function setGrams(c: Catalogue, store: Store, line: Line, grams: number): Line {
  const { portion } = line.read;
  const item = portion && store.byId.get(portion.id);
  if (!portion || !item || !(grams > 0) || Math.abs(grams - portion.grams) < 0.05) return line;
  return (
    inPlace(c, store, line, item, grams) ?? measured(c, store, line, item, grams) ?? anew(c, store, line, item, grams)
  );
}

/** Only the number is changed, and the noun beside it when one becomes many; undefined when that cannot be done with certainty. */
function inPlace(c: Catalogue, store: Store, line: Line, item: Ingredient, grams: number): Line | undefined {
  const { text } = line;
  const { portion } = line.read;
  const q = readQuantity(text, 0, { imperial: store.locale === "en-GB" });
  if (q === undefined || portion === undefined || q.also !== undefined || q.implied === true) return undefined;
  const { unit } = portion.measure;
  const factor = grams / portion.grams;
  // "6 limes, juiced" is counted, though what is meant is poured
  const counts = WHOLE.has(unit) || q.each !== undefined || q.unit === undefined;
  if (/\d/.test(text.slice(q.end).replace(/\d+ ?(?:cm|mm|-?inch|in)\b/g, ""))) return undefined;
  // A length is cut, not counted: "a 1-inch piece"
  if (q.each !== undefined && (q.each.unit === undefined || q.each.unit.dimension === "length")) return undefined;
  const one = (value: number): number | undefined => {
    if (counts) return countNear(value * factor);
    const range = RANGE[unit];
    // The unit as written may be another one (a quart): then the number is not the measure's
    if (range === undefined || Math.abs(portion.measure.amount - q.value) > 0.001) return undefined;
    const part = (grams * value) / q.value;
    const m = kitchenMeasure(store, item, part, { unit });
    if (m === undefined || m.amount < range[0] || m.amount > range[1] || !exact(m, part)) return undefined;
    const steps = STEPS[unit] ?? [];
    if (steps.length > 0 && !steps.some((n) => Math.abs(m.amount * n - Math.round(m.amount * n)) < 0.01))
      return undefined;
    if (unit === "g" || unit === "ml") return asRead(m.amount);
    return unit === "kg" || unit === "l" ? Math.max(0.05, Math.round(m.amount * 20) / 20) : m.amount;
  };
  const low = one(q.low);
  const high = q.high === q.low ? low : one(q.high);
  if (low === undefined || high === undefined) return undefined;
  const said = (n: number): string => amountText(n, counts ? "piece" : unit);
  const number = low === high ? said(low) : `${said(low)}-${said(high)}`;
  const gap = /\s/.test(text[q.words - 1] ?? " ") ? " " : "";
  let out = `${number}${gap}${text.slice(q.words)}`;
  // "2 x 400 g cans": what stands between the number and its size goes with it
  if (q.each !== undefined) out = `${number}${text.slice(numberEnd(text))}`;
  const head = out.length - (text.length - q.end);
  if (q.high > 1 !== high > 1) {
    const noun = inflect(
      out,
      number.length,
      head,
      q.unit !== undefined && q.size === "",
      high > 1,
      counts && q.unit === undefined ? "piece" : unit,
    );
    if (noun === undefined) return undefined;
    out = noun;
  }
  const read = readLine(c, out);
  if (read.food?.id !== item.id || read.portion === undefined || Math.abs(read.portion.grams / grams - 1) > 0.08)
    return undefined;
  return { ...line, text: out, read };
}
const STEPS: Readonly<Partial<Record<UnitId, readonly number[]>>> = {
  tsp: [8],
  tbsp: [2],
  cup: [4, 3],
  oz: [4],
  lb: [4, 3],
};
/** Grams and millilitres as a scale or jug is read. */
function asRead(x: number): number {
  const step = x < 20 ? 1 : x < 100 ? 5 : 10;
  return Math.max(1, Math.round(x / step) * step);
}
/** Past the number a line begins with. */
function numberEnd(text: string): number {
  let p = 0;
  while (p < text.length && /[\d½¼¾⅓⅔⅛./ ⁄]/.test(text[p] ?? "")) p++;
  while (p > 0 && text[p - 1] === " ") p--;
  return p;
}

/** Makes the counted word one or many: the unit, or for things counted by themselves the last word before a comma. */
function inflect(
  text: string,
  from: number,
  head: number,
  unitWord: boolean,
  many: boolean,
  unit: UnitId,
): string | undefined {
  if (!WHOLE.has(unit) && unit !== "cup") return text;
  // The unit stands last before the food; a bracket may part it from the number
  const before = tokens(text.slice(from, head)).filter((t) => UNIT_WORDS.has(t.stem));
  const t = unitWord ? before[0] : tokens(text.slice(from).split(/[,(]/)[0] ?? "").at(-1);
  if (t === undefined) return undefined;
  const at = from + t.start;
  const word = text.slice(at, from + t.end);
  const lower = word.toLowerCase();
  const now = many
    ? singular(lower) === lower
      ? plural(word)
      : word
    : singular(lower) === lower
      ? word
      : singular(lower);
  return text.slice(0, at) + now + text.slice(from + t.end);
}
const UNIT_WORDS: ReadonlySet<string> = new Set(
  "can tin jar packet pack package bag bunch clove slice stick cup piece sprig handful head stalk rib sheet rasher fillet".split(
    " ",
  ),
);

/** What is weighed stays weighed, what is poured stays poured: "1 kg" of what were 500 g, never "4 bunches". */
function besideIt(store: Store, item: Ingredient, grams: number, unit: UnitId | undefined): Measure | undefined {
  const pair = PAIRS.find((p) => unit !== undefined && p.includes(unit));
  if (pair === undefined) return undefined;
  const [small, big] = pair;
  const m = kitchenMeasure(store, item, grams, { unit: small });
  if (m === undefined) return undefined;
  const value = asRead(m.amount);
  if (value < 1000) return { ...m, amount: value, text: `${value} ${small}` };
  const large = Math.round(value / 10) / 100;
  return { ...m, amount: large, unit: big, text: `${large} ${big}` };
}
const PAIRS: readonly (readonly [UnitId, UnitId])[] = [
  ["g", "kg"],
  ["ml", "l"],
];

/** In another measure, with the words after it as they were: "3/4 tsp ground cumin". */
function measured(c: Catalogue, store: Store, line: Line, item: Ingredient, grams: number): Line | undefined {
  const q = readQuantity(line.text, 0, { imperial: store.locale === "en-GB" });
  if (q === undefined || q.unit === undefined || q.each !== undefined || q.also !== undefined) return undefined;
  if (q.unit.dimension === "count") return undefined;
  const rest = line.text.slice(q.end).trimStart();
  if (rest === "" || /\d/.test(rest)) return undefined;
  const measure =
    besideIt(store, item, grams, line.read.portion?.measure.unit) ?? portionOf(store, item, grams).measure;
  if (WHOLE.has(measure.unit)) return undefined;
  const text = `${measure.text} ${rest}`;
  const read = readLine(c, text);
  if (read.food?.id !== item.id || read.portion === undefined || Math.abs(read.portion.grams / grams - 1) > 0.2)
    return undefined;
  return { ...line, text, read };
}

/** Written again: measure, name, and what is done with it. */
function anew(c: Catalogue, store: Store, line: Line, item: Ingredient, grams: number): Line {
  const portion = portionOf(store, item, grams);
  const name = nameFor(c, store, portion);
  const bare = portion.measure.text.includes(name) ? portion.measure.text : `${portion.measure.text} ${name}`;
  const { preparation, note, optional } = line.read;
  const plain = /\d/.test(note) ? "" : note;
  const known = stems(name);
  // "tinned chopped tomatoes, chopped" says it twice
  const prep = preparation
    .split(",")
    .map((s) => s.trim())
    .filter((s) => s !== "" && !stems(s).every((w) => known.includes(w)));
  const tail = [...prep, plain, optional && !`${preparation} ${note}`.includes("optional") ? "optional" : ""].filter(
    (s) => s !== "",
  );
  const text = [bare, ...tail].join(", ");
  return { ...line, text, read: readBack(c, text, portion) };
}

/** Amounts inside a step for so many times the food: "300 ml" and what it becomes. At most 10. */
export function amountsIn(
  text: string,
  factor: number,
  imperial: boolean,
): readonly (readonly [was: string, now: string])[] {
  const out: (readonly [string, string])[] = [];
  // "180 C" is no 180 cups
  const degrees = temperaturesIn(text);
  for (let p = 0; p < text.length && out.length < 10; p++) {
    const ch = text[p] ?? "";
    if (!/[\d½¼¾⅓⅔⅛]/.test(ch) || /[\d./,½]/.test(text[p - 1] ?? "")) continue;
    if (degrees.some((d) => text.startsWith(d.text, p))) continue;
    const q = readQuantity(text.slice(p, p + 60), 0, { imperial });
    if (q === undefined) continue;
    const { unit } = q;
    if (unit !== undefined && unit.dimension !== "count" && unit.dimension !== "length" && q.low === q.high) {
      const value = q.value * factor;
      const metric = ["g", "ml"].includes(unit.id) && unit.scale === 1;
      const number = metric ? String(asRead(value)) : fractionText(Math.round(value * 8) / 8 || 1 / 8);
      const was = text.slice(p, p + q.end).trim();
      out.push([was, `${number}${was.slice(numberEnd(was))}`]);
    }
    p += Math.max(0, Math.min(q.words, q.end) - 1);
  }
  return out;
}
