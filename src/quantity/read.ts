import { readNumeral } from "./numbers.js";
import { isDash, isDigit, isLetter, isSpace, readWord, skipSpace, skipWord } from "./scan.js";
import { readUnit, type Unit, unitOf } from "./units.js";

/** So many of a unit. Without a unit, so many pieces. Values are finite and above 0. */
export interface Amount {
  readonly value: number;
  /** "2-3": low and high; equal to value when exact. */
  readonly low: number;
  readonly high: number;
  readonly unit: Unit | undefined;
}
/** An amount as a recipe line writes it. */
export interface Quantity extends Amount {
  /** "large", "small", "medium" ...; "" when not said. */
  readonly size: string;
  /** What one of them holds or weighs: "2 x 400 g", "1 (15 oz) can", "a 2-inch piece". */
  readonly each?: Amount;
  /** The same amount said in another unit: "200 g / 7 oz", "1 cup (240 ml)". */
  readonly also?: Amount;
  /** "about", "scant", "heaped" and the like. */
  readonly approximate: boolean;
  /** No number stood there: "pinch of salt". */
  readonly implied?: true;
  /** Where the text after the amount begins. */
  readonly end: number;
  /** Where the words after the number begin: size, unit, food. A unit may turn out to be part of the food ("4 cloves"). */
  readonly words: number;
}
export interface ReadOptions {
  /** Pints, quarts, gallons and fluid ounces are imperial unless the text says otherwise. */
  readonly imperial?: boolean;
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
/** What a spoon so filled holds against a level one: common practice, no standard. */
const FILL: Readonly<Record<string, number>> = {
  heaped: 1.5,
  heaping: 1.5,
  rounded: 1.25,
  generous: 1.1,
  good: 1.1,
  scant: 0.9,
  level: 1,
};
const SIZES: Readonly<Record<string, string>> = {
  small: "small",
  little: "small",
  medium: "medium",
  large: "large",
  big: "large",
  xl: "extra-large",
  jumbo: "extra-large",
  thick: "thick",
  thin: "thin",
  fat: "large",
  packed: "",
};
/** Units that are an amount with no number before them. */
const LONE = new Set([
  "pinch",
  "dash",
  "smidgen",
  "splash",
  "glug",
  "handful",
  "knob",
  "bunch",
  "sprig",
  "drop",
  "squeeze",
]);
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

const MAX = 1_000_000;

/** The amount that begins at `at`, or undefined when none does. Reads forward only; never throws. */
export function readQuantity(text: string, at = 0, o: ReadOptions = {}): Quantity | undefined {
  return quantity(text, at, o.imperial === true, 0);
}

interface Span {
  value: number;
  low: number;
  high: number;
  end: number;
  /** "1 - 15 oz can": what stood after a dash, in case it is a container's size. */
  dashed?: number;
  article?: boolean;
}

function span(text: string, at: number): Span | undefined {
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

function rangeEnd(text: string, at: number): { value: number; end: number } | undefined {
  const p = skipSpace(text, at);
  const dash = isDash(text[p]) || text[p] === "~";
  const next = dash ? p + 1 : skipWord(text, p, "to", "or");
  if (next === undefined) return undefined;
  const n = readNumeral(text, next);
  // "1 or a few", "2 to a pan": an article is no upper end
  return n === undefined || n.article === true || n.spread !== undefined ? undefined : n;
}

/** "about", "~", "a generous": words before the number. */
function skipAbout(text: string, at: number): { at: number; about: boolean } {
  let p = skipSpace(text, at);
  let about = false;
  for (let i = 0; i < 4; i++) {
    if (text[p] === "~" || text[p] === "\u2248") p = skipSpace(text, p + 1);
    else {
      const w = readWord(text, p);
      if (w === undefined || !ABOUT.has(w.text)) break;
      p = skipSpace(text, text[w.end] === "." ? w.end + 1 : w.end);
    }
    about = true;
  }
  return { at: p, about };
}

/** Size and filling words between a number and its unit. */
function sizes(text: string, at: number): { end: number; size: string; fill: number; about: boolean } {
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

function amountOf(s: Span, unit: Unit | undefined, by = 1): Amount {
  return { value: s.value * by, low: s.low * by, high: s.high * by, unit };
}

/** A plain number and unit, no brackets: "400 g", "14.5-ounce", "1lb 2oz". */
function plainAmount(
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
  const sum = compound(text, u.end, amountOf(s, u.unit, z.fill), imperial);
  return { ...sum.amount, end: sum.end, about: lead.about, joined };
}

const measured = (u: Unit | undefined): boolean => u !== undefined && u.dimension !== "count";

/** "1 lb 2 oz", "1 cup plus 2 tbsp", "1 cup minus 1 tbsp": one amount in the first unit. */
function compound(text: string, at: number, first: Amount, imperial: boolean): { amount: Amount; end: number } {
  const unit = first.unit;
  if (unit === undefined || !measured(unit) || unit.dimension === "length") return { amount: first, end: at };
  let p = skipSpace(text, at);
  let sign = 1;
  const join = text[p] === "+" || text[p] === "&" ? p + 1 : skipWord(text, p, "plus", "and");
  const less = skipWord(text, p, "minus", "less");
  if (less !== undefined) sign = -1;
  p = join ?? less ?? p;
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

/** An amount that fills a bracket: "(14.5 oz)", "(about 120 g each)", "(8 oz/225 g)". */
function bracket(
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

function quantity(text: string, at: number, imperial: boolean, depth: number): Quantity | undefined {
  const lead = skipAbout(text, at);
  const s = span(text, lead.at);
  if (s === undefined) return depth === 0 ? lone(text, lead.at, lead.about, imperial) : undefined;
  // "5-spice powder", "7-grain bread": a number tied to a word that is no unit belongs to the name
  const tied = isDash(text[s.end]) && isLetter(text[s.end + 1]);
  const packs = container(text, s, imperial);
  if (packs !== undefined) return { ...packs, approximate: packs.approximate || lead.about };
  const z = sizes(text, s.end);
  const u = readUnit(text, z.end, imperial);
  if (u === undefined) {
    if ((tied && z.end === s.end) || skipWord(text, s.end, "spice") !== undefined) return undefined;
    return finish(
      text,
      { ...amountOf(s, undefined), size: z.size, approximate: lead.about || z.about, end: z.end, words: s.end },
      imperial,
    );
  }
  if (u.unit.dimension === "length") return piecesOfLength(text, s, u, lead.about, imperial);
  const by = u.unit.dimension === "volume" ? z.fill : 1;
  const range = unitRange(text, u.end, s, u.unit, imperial);
  const sum = compound(text, range?.end ?? u.end, range?.amount ?? amountOf(s, u.unit, by), imperial);
  const about = lead.about || z.about;
  return finish(text, { ...sum.amount, size: z.size, approximate: about, end: sum.end, words: s.end }, imperial);
}

/** "100 g to 150 g", "1 tsp - 1 tbsp". */
function unitRange(
  text: string,
  at: number,
  s: Span,
  unit: Unit,
  imperial: boolean,
): { amount: Amount; end: number } | undefined {
  const n = rangeEnd(text, at);
  if (n === undefined || s.low !== s.high) return undefined;
  const u = readUnit(text, n.end, imperial);
  if (u === undefined || u.unit.dimension !== unit.dimension || u.unit.label !== unit.label) return undefined;
  if (u.unit.dimension === "count" && u.unit.name !== unit.name) return undefined;
  const other = (n.value * u.unit.factor) / unit.factor;
  if (other > MAX || Math.abs(other - s.value) < 0.02 * s.value) return undefined;
  const low = Math.min(s.value, other);
  const high = Math.max(s.value, other);
  return { amount: { value: (low + high) / 2, low, high, unit }, end: u.end };
}

/** The forms with a size of one: "2 x 400 g tins", "2 (14.5 oz) cans", "1 15-oz can", "a 400 g tin", "1 - 15 oz can". */
function container(text: string, s: Span, imperial: boolean): Quantity | undefined {
  let p = skipSpace(text, s.end);
  const ch = text[p];
  const times =
    ch === "×" || ch === "*" || ((ch === "x" || ch === "X") && (isSpace(text[p + 1]) || isDigit(text[p + 1])));
  if (times) p = skipSpace(text, p + 1);
  const inBracket = times ? undefined : bracket(text, p, imperial);
  // the size words of "2 large (400 g) tins" stand before the size
  const lead = times || inBracket !== undefined ? undefined : sizes(text, s.end);
  const late = lead !== undefined && lead.end > s.end ? bracket(text, lead.end, imperial) : undefined;
  const size = inBracket ?? late;
  if (size !== undefined) {
    if (!measured(size.amount.unit)) return undefined;
    const each =
      size.also !== undefined && size.also.unit?.dimension === "mass" && size.amount.unit?.dimension !== "mass"
        ? size.also
        : size.amount;
    return packed(text, s, each, size.end, lead?.size ?? "", true, imperial);
  }
  if (s.dashed !== undefined && Number.isInteger(s.low) && s.low <= 12 && s.high >= 4 * s.low) {
    const u = readUnit(text, s.end, imperial);
    if (u !== undefined && measured(u.unit)) {
      const one: Span = { value: s.low, low: s.low, high: s.low, end: s.end };
      const each: Amount = { value: s.dashed, low: s.dashed, high: s.dashed, unit: u.unit };
      return packed(text, one, each, u.end, "", false, imperial);
    }
  }
  const each = plainAmount(text, p, imperial);
  if (each === undefined || !measured(each.unit)) return undefined;
  const whole = Number.isInteger(s.low) || s.low === 0.5;
  if (!times && !whole) return undefined;
  const each2 = dual(text, each.end, each, imperial);
  return packed(text, s, each2.amount, each2.end, "", times || each.joined, imperial);
}

/** "400 g/14 oz": the weight when one of the two is a weight. */
function dual(text: string, at: number, amount: Amount, imperial: boolean): { amount: Amount; end: number } {
  const p = skipSpace(text, at);
  const second = text[p] === "/" ? plainAmount(text, p + 1, imperial) : undefined;
  const inBracket = second === undefined ? bracket(text, p, imperial) : undefined;
  const other: Amount | undefined = second ?? inBracket?.amount;
  if (other === undefined || !measured(other.unit)) return { amount, end: at };
  const end = second?.end ?? inBracket?.end ?? at;
  const better = amount.unit?.dimension !== "mass" && other.unit?.dimension === "mass";
  return { amount: better ? { value: other.value, low: other.low, high: other.high, unit: other.unit } : amount, end };
}

/** So many containers (or pieces) of a known size. `loose`: a container word is not needed. */
function packed(
  text: string,
  s: Span,
  each: Amount,
  at: number,
  size: string,
  loose: boolean,
  imperial: boolean,
): Quantity | undefined {
  const z = sizes(text, at);
  const u = readUnit(text, z.end, imperial);
  const unit = u !== undefined && u.unit.dimension === "count" ? u.unit : undefined;
  if (unit === undefined && !loose && each.unit?.dimension !== "length") return undefined;
  if (each.unit?.dimension === "length" && unit === undefined && !loose) return undefined;
  const clean: Amount = { value: each.value, low: each.low, high: each.high, unit: each.unit };
  const end = unit === undefined || u === undefined ? z.end : u.end;
  return {
    ...amountOf(s, unit),
    size: z.size === "" ? size : z.size,
    each: clean,
    approximate: false,
    end: skipOf(text, end),
    words: at,
  };
}

/** "2-inch piece", "5 cm piece": one piece so long. Without such a word the length describes something else. */
function piecesOfLength(
  text: string,
  s: Span,
  u: { unit: Unit; end: number },
  about: boolean,
  imperial: boolean,
): Quantity | undefined {
  const next = readUnit(text, sizes(text, u.end).end, imperial);
  if (next === undefined || next.unit.dimension !== "count") return undefined;
  const one = { value: 1, low: 1, high: 1, unit: next.unit };
  return { ...one, size: "", each: amountOf(s, u.unit), approximate: about, end: skipOf(text, next.end), words: u.end };
}

/** "pinch of salt", "handful of parsley", "a large bunch of kale" without its "a". */
function lone(text: string, at: number, about: boolean, imperial: boolean): Quantity | undefined {
  const z = sizes(text, at);
  const u = readUnit(text, z.end, imperial);
  if (u === undefined || readWord(text, z.end)?.raw.length === 1) return undefined;
  const of = skipWord(text, u.end, "of");
  if (!LONE.has(u.unit.name) && (of === undefined || u.unit.dimension === "length")) return undefined;
  const base: Quantity = {
    value: 1,
    low: 1,
    high: 1,
    unit: u.unit,
    size: z.size,
    approximate: about,
    implied: true,
    end: u.end,
    words: at,
  };
  return finish(text, base, imperial);
}

/** What may follow an amount: the same in another unit, a container after a weight, "of". */
function finish(text: string, q: Quantity, imperial: boolean): Quantity {
  let out = q;
  const p = skipSpace(text, q.end);
  const slash = text[p] === "/" || text[p] === "=" || text[p] === "|" ? plainAmount(text, p + 1, imperial) : undefined;
  const or = skipWord(text, p, "or");
  const orAmount = or === undefined || q.unit === undefined ? undefined : plainAmount(text, or, imperial);
  const round = bracket(text, p, imperial);
  if (slash !== undefined && slash.unit !== undefined) out = { ...out, also: clean(slash), end: slash.end };
  else if (orAmount !== undefined && sameAmount(q, orAmount))
    out = { ...out, also: clean(orAmount), end: orAmount.end };
  else if (round !== undefined && measured(round.amount.unit) && round.amount.unit?.dimension !== "length") {
    const pick =
      round.also?.unit?.dimension === "mass" && round.amount.unit?.dimension !== "mass" ? round.also : round.amount;
    const perOne = round.each || (q.unit?.dimension === "count" && ["can", "packet"].includes(q.unit.id));
    out = { ...out, ...(perOne ? { each: clean(pick) } : { also: clean(pick) }), end: round.end };
  }
  // "400 g tin of tomatoes": the weight is what one container holds
  if (out.unit?.dimension === "mass" || out.unit?.dimension === "volume") {
    const c = readUnit(text, sizes(text, out.end).end, imperial);
    if (c !== undefined && ["can", "packet"].includes(c.unit.id) && out.implied !== true) {
      const each =
        out.also !== undefined && out.unit.dimension === "volume" && out.also.unit?.dimension === "mass"
          ? out.also
          : clean(out);
      out = {
        value: 1,
        low: 1,
        high: 1,
        unit: c.unit,
        size: out.size,
        each,
        approximate: out.approximate,
        end: c.end,
        words: out.end,
      };
    }
  }
  return { ...out, end: skipOf(text, out.end) };
}

/** "1 cup or 240 ml" is one amount said twice; "2 tsp or 1 tbsp" is a choice. */
function sameAmount(a: Amount, b: Amount): boolean {
  if (a.unit === undefined || b.unit === undefined || !measured(a.unit) || !measured(b.unit)) return false;
  if (a.unit.dimension !== b.unit.dimension) return true;
  const ratio = (a.value * a.unit.factor) / (b.value * b.unit.factor);
  return ratio > 0.85 && ratio < 1.18;
}

function clean(a: Amount): Amount {
  return { value: a.value, low: a.low, high: a.high, unit: a.unit };
}
function skipOf(text: string, at: number): number {
  const of = skipWord(text, at, "of");
  if (of === undefined) return at;
  return skipWord(text, of, "the") ?? of;
}

/** A quantity of one plain unit, for callers that have numbers and no text. */
export function quantityOf(value: number, unit: Unit | undefined = unitOf("piece")): Quantity {
  return { value, low: value, high: value, unit, size: "", approximate: false, end: 0, words: 0 };
}
