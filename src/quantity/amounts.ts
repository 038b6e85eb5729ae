import { readNumeral } from "./numbers.js";
import { isDash, isLetter, isSpace, readWord, skipSpace, skipWord, type Word } from "./scan.js";
import { readUnit, type Unit, unitOf } from "./units.js";

// The pieces an amount is made of: a number or a range, size words, a unit, a sum of two, a bracket.

/** So many of a unit. Without a unit, so many pieces. Values are finite and above 0. */
export interface Amount {
  readonly value: number;
  /** "2-3": low and high; equal to value when exact. */
  readonly low: number;
  readonly high: number;
  readonly unit: Unit | undefined;
}
const ABOUT = new Set([
  "about",
  "approx",
  "approximately",
  "around",
  "roughly",
  "circa",
  "ca",
  "nearly",
  "almost",
  "just",
  "over",
  "under",
  "exactly",
]);
/** What a spoon so filled holds against a level one: common practice, no standard. "Scant" and "generous" only say about. */
const FILL: Readonly<Record<string, number>> = {
  heaped: 1.5,
  heaping: 1.5,
  rounded: 1.25,
  generous: 1,
  good: 1,
  scant: 1,
  level: 1,
};
/** A cup is wide: heaped it holds half as much more as a spoon does. */
export function filled(unit: Unit, fill: number): number {
  if (unit.dimension !== "volume") return 1;
  return unit.factor > 100 ? 1 + (fill - 1) / 2 : fill;
}
const SIZES: Readonly<Record<string, string>> = {
  small: "small",
  little: "small",
  medium: "medium",
  large: "large",
  big: "large",
  xl: "extra-large",
  jumbo: "jumbo",
  thick: "thick",
  thin: "thin",
  fat: "large",
  packed: "",
};
const AFTER_BRACKET = new Set([
  "each",
  "total",
  "in",
  "all",
  "drained",
  "net",
  "weight",
  "wt",
  "approx",
  "apiece",
  "or",
  "so",
  "size",
  "about",
  "altogether",
]);
const EACH = new Set(["each", "apiece"]);

export const MAX = 1_000_000;

export interface Span {
  value: number;
  low: number;
  high: number;
  end: number;
  /** "1 - 15 oz can": what stood after a dash, in case it is a container's size. */
  dashed?: number;
  article?: boolean;
}

export function span(text: string, at: number): Span | undefined {
  const first = readNumeral(text, at);
  if (first === undefined || first.value > MAX) return undefined;
  const [low, high] = first.spread ?? [first.value, first.value];
  const one: Span = { value: first.value, low, high, end: first.end, article: first.article === true };
  if (first.spread !== undefined || first.article === true) return one;
  const second = rangeEnd(text, first.end);
  if (second === undefined || second.value > MAX) return one;
  const pair = [first.value, second.value].sort((a, b) => a - b) as [number, number];
  const dashed = isDash(text[skipSpace(text, first.end)]);
  return {
    value: (pair[0] + pair[1]) / 2,
    low: pair[0],
    high: pair[1],
    end: second.end,
    ...(dashed ? { dashed: second.value } : {}),
  };
}

export function rangeEnd(text: string, at: number): { value: number; end: number } | undefined {
  const p = skipSpace(text, at);
  const dash = isDash(text[p]) || text[p] === "~";
  // "a 3- to 4-pound chicken": the first dash only hangs
  const word = skipWord(text, dash ? p + 1 : p, "to", "or");
  const next = word ?? (dash ? p + 1 : undefined);
  if (next === undefined) return undefined;
  const n = readNumeral(text, next);
  // "1 or a few", "2 to a pan": an article is no upper end
  return n === undefined || n.article === true || n.spread !== undefined ? undefined : n;
}

/** "about", "~", "a generous": words before the number. */
export function skipAbout(text: string, at: number): { at: number; about: boolean; fill: number } {
  let p = skipSpace(text, at);
  let fill = 1;
  let about = false;
  for (let i = 0; i < 4; i++) {
    if (text[p] === "~" || text[p] === "\u2248") p = skipSpace(text, p + 1);
    else {
      const w = fillBefore(text, p) ?? readWord(text, p);
      if (w === undefined || !(ABOUT.has(w.text) || FILL[w.text] !== undefined)) break;
      // "heaped tsp" without a number is read with its unit
      if (FILL[w.text] !== undefined && readNumeral(text, w.end) === undefined) break;
      fill = FILL[w.text] ?? fill;
      p = skipSpace(text, text[w.end] === "." ? w.end + 1 : w.end);
    }
    about = true;
  }
  return { at: p, about, fill };
}
/** "a scant 1/2 teaspoon": the article before a filling word says nothing. */
function fillBefore(text: string, at: number): Word | undefined {
  const a = skipWord(text, at, "a", "an");
  const w = a === undefined ? undefined : readWord(text, a);
  return w !== undefined && FILL[w.text] !== undefined && readNumeral(text, w.end) !== undefined ? w : undefined;
}

/** Size and filling words between a number and its unit. */
export function sizes(text: string, at: number): { end: number; size: string; fill: number; about: boolean } {
  let end = at;
  let size = "";
  let fill = 1;
  let about = false;
  for (let i = 0; i < 4; i++) {
    const from = isDash(text[end]) ? end + 1 : end;
    const w = readWord(text, from);
    if (w === undefined) break;
    let next = w.end;
    if (
      w.text === "extra" &&
      (text[next] === " " || isDash(text[next])) &&
      skipWord(text, next + 1, "large") !== undefined
    ) {
      size = "extra-large";
      next = skipWord(text, next + 1, "large") ?? next;
    } else if (FILL[w.text] !== undefined) {
      // "good" and "generous" before a food ("1 good tomato") only say it is a nice one
      fill = FILL[w.text] ?? 1;
      about = true;
      if (isDash(text[next])) next = skipWord(text, next + 1, "sized", "size") ?? next;
    } else {
      const s = SIZES[w.text];
      if (s === undefined) break;
      // "thin-skinned", "large-flake": part of the food's name
      if (isDash(text[next])) {
        const sized = skipWord(text, next + 1, "sized", "size");
        if (sized === undefined && isLetter(text[next + 1])) break;
        next = sized ?? next;
      } else next = skipWord(text, next, "sized", "size") ?? next;
      size = s === "" ? size : s;
    }
    end = next;
    if (text[end] === ",") end++;
  }
  return { end, size, fill, about };
}

export function amountOf(s: Span, unit: Unit | undefined, by = 1): Amount {
  return { value: s.value * by, low: s.low * by, high: s.high * by, unit };
}

/** A plain number and unit, no brackets: "400 g", "14.5-ounce", "1lb 2oz". */
export function plainAmount(
  text: string,
  at: number,
  imperial: boolean,
): (Amount & { end: number; about: boolean; joined: boolean }) | undefined {
  const lead = skipAbout(text, at);
  const s = span(text, lead.at);
  if (s === undefined || s.article === true) return undefined;
  const z = sizes(text, s.end);
  const u = readUnit(text, z.end, imperial);
  if (u === undefined) return undefined;
  const joined = !isSpace(text[s.end]);
  const sum = compound(text, u.end, amountOf(s, u.unit, filled(u.unit, z.fill)), imperial);
  return { ...sum.amount, end: sum.end, about: lead.about, joined };
}

export const measured = (u: Unit | undefined): boolean => u !== undefined && u.dimension !== "count";

/** "1 lb 2 oz", "1 cup plus 2 tbsp", "1 cup minus 1 tbsp": one amount in the first unit. */
export function compound(text: string, at: number, first: Amount, imperial: boolean): { amount: Amount; end: number } {
  const unit = first.unit;
  if (unit?.name === "stick") return sticks(text, at, first, imperial) ?? { amount: first, end: at };
  if (unit === undefined || !measured(unit) || unit.dimension === "length") return { amount: first, end: at };
  let p = skipSpace(text, at);
  let sign = 1;
  const join = text[p] === "+" || text[p] === "&" ? p + 1 : skipWord(text, p, "plus", "and");
  const less = skipWord(text, p, "minus", "less");
  if (less !== undefined) sign = -1;
  p = join ?? less ?? p;
  const part = join === undefined ? undefined : halfMore(text, join);
  if (part !== undefined)
    return {
      amount: { value: first.value + part.value, low: first.low + part.value, high: first.high + part.value, unit },
      end: part.end,
    };
  const n = readNumeral(text, p);
  if (n === undefined || n.article === true || n.spread !== undefined) return { amount: first, end: at };
  const z = sizes(text, n.end);
  const u = readUnit(text, z.end, imperial);
  if (u === undefined || u.unit.dimension !== unit.dimension) return { amount: first, end: at };
  // Without a joining word only a smaller unit is a second half: "1 lb 2 oz", but not "1 tin 400 g"
  if (join === undefined && less === undefined && u.unit.factor >= unit.factor) return { amount: first, end: at };
  const extra = (sign * n.value * z.fill * u.unit.factor) / unit.factor;
  if (first.low + extra <= 0) return { amount: first, end: at };
  return { amount: { value: first.value + extra, low: first.low + extra, high: first.high + extra, unit }, end: u.end };
}

/** "a cup and a half of rice": half of the unit said. Another unit after it would be an amount of its own. */
function halfMore(text: string, at: number): { value: number; end: number } | undefined {
  const a = skipWord(text, at, "a", "one");
  const w = a === undefined ? undefined : readWord(text, a);
  const value = w === undefined ? undefined : { half: 1 / 2, third: 1 / 3, quarter: 1 / 4 }[w.text];
  if (w === undefined || value === undefined || skipWord(text, w.end, "of", "a") === undefined) return undefined;
  return { value, end: w.end };
}

/** Tablespoons of a stick: what its wrapper marks. */
const STICK = 8;
/** "1 stick plus 2 tablespoons butter", in the spoons it ends in. */
function sticks(
  text: string,
  at: number,
  first: Amount,
  imperial: boolean,
): { amount: Amount; end: number } | undefined {
  const p = skipSpace(text, at);
  const join = text[p] === "+" || text[p] === "&" ? p + 1 : skipWord(text, p, "plus", "and");
  const n = join === undefined ? undefined : readNumeral(text, join);
  const u = n === undefined || n.article === true ? undefined : readUnit(text, n.end, imperial);
  const spoon = unitOf("tbsp");
  if (n === undefined || u?.unit.dimension !== "volume" || spoon === undefined) return undefined;
  const one = (STICK * spoon.factor) / u.unit.factor;
  const of = (v: number): number => v * one + n.value;
  return { amount: { value: of(first.value), low: of(first.low), high: of(first.high), unit: u.unit }, end: u.end };
}

/** An amount that fills a bracket: "(14.5 oz)", "(about 120 g each)", "(8 oz/225 g)". */
export function bracket(
  text: string,
  at: number,
  imperial: boolean,
): { amount: Amount; also?: Amount; each: boolean; end: number } | undefined {
  const open = skipSpace(text, at);
  if (text[open] !== "(" && text[open] !== "[") return undefined;
  const inner = plainAmount(text, open + 1, imperial);
  if (inner === undefined) return undefined;
  let p = skipSpace(text, inner.end);
  let also: Amount | undefined;
  if (text[p] === "/" || text[p] === ";" || text[p] === "," || text[p] === "|") {
    const second = plainAmount(text, p + 1, imperial);
    if (second === undefined) return undefined;
    also = second;
    p = skipSpace(text, second.end);
  }
  let each = false;
  for (let i = 0; i < 4; i++) {
    const w = readWord(text, p);
    if (w === undefined || !AFTER_BRACKET.has(w.text)) break;
    each ||= EACH.has(w.text);
    p = skipSpace(text, w.end);
  }
  if (text[p] !== ")" && text[p] !== "]") return undefined;
  const amount = { value: inner.value, low: inner.low, high: inner.high, unit: inner.unit };
  return { amount, ...(also === undefined ? {} : { also }), each, end: p + 1 };
}

export function clean(a: Amount): Amount {
  return { value: a.value, low: a.low, high: a.high, unit: a.unit };
}
