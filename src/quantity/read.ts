import {
  MAX,
  type Amount,
  amountOf,
  bracket,
  clean,
  measured,
  plainAmount,
  rangeEnd,
  compound,
  filled,
  sizes,
  skipAbout,
  type Span,
  span,
} from "./amounts.js";
import { isDash, isDigit, isLetter, isSpace, readWord, skipSpace, skipWord } from "./scan.js";
import { readUnit, type Unit, unitOf } from "./units.js";

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
/** The amount that begins at `at`, or undefined when none does. Reads forward only; never throws. */
export function readQuantity(text: string, at = 0, o: ReadOptions = {}): Quantity | undefined {
  return quantity(text, at, o.imperial === true, 0);
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
  // "a thumb-sized piece of ginger" is a thumb of ginger
  const sized = u.unit.name === "knob" && isDash(text[u.end]) ? skipWord(text, u.end + 1, "sized", "size") : undefined;
  if (sized !== undefined) {
    const knob = { ...amountOf(s, u.unit), size: z.size, approximate: true, words: s.end };
    return { ...knob, end: skipOf(text, skipWord(text, sized, "piece", "pieces", "knob", "chunk") ?? sized) };
  }
  const by = filled(u.unit, z.fill * lead.fill);
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
    ...amountOf(s, each.unit?.dimension === "length" && unit?.name === "knob" ? unitOf("piece") : unit),
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
  // "a 2-inch knob" is a piece so long
  const one = { value: 1, low: 1, high: 1, unit: next.unit.name === "knob" ? unitOf("piece") : next.unit };
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
  if (slash !== undefined && slash.unit !== undefined) {
    // "200 g/7 oz/1 cup": a third way of saying it adds nothing
    const q2 = skipSpace(text, slash.end);
    const third = text[q2] === "/" ? plainAmount(text, q2 + 1, imperial) : undefined;
    out = { ...out, also: clean(slash), end: third?.end ?? slash.end };
  } else if (orAmount !== undefined && sameAmount(q, orAmount))
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

function skipOf(text: string, at: number): number {
  // "1 tbsp each parsley and chives"; at the end of a text "each" says more ("6 oz each")
  const word = skipWord(text, at, "each");
  const each = word !== undefined && readWord(text, word) !== undefined ? word : at;
  const of = skipWord(text, each, "of");
  if (of === undefined) return each;
  return skipWord(text, of, "the") ?? of;
}

/** A quantity of one plain unit, for callers that have numbers and no text. */
export function quantityOf(value: number, unit: Unit | undefined = unitOf("piece")): Quantity {
  return { value, low: value, high: value, unit, size: "", approximate: false, end: 0, words: 0 };
}
