import { freeze } from "../errors.js";
import { isDigit, type Quantity, readQuantity, skipWord } from "../quantity/index.js";
import type { FoodRef, Portion, ReadLine } from "../types.js";
import { measureAsRead } from "./asread.js";
import { beside, flagOnly, partAfter, sortSegments, trailingAmount } from "./beside.js";
import { countedAs } from "./counted.js";
import { findCanned, findFresh, type Found, isExact, type Lookup, shareTail } from "./food.js";
import { NOT_COUNTED, portionOf, publicGrams } from "./print.js";
import { afterOpener } from "./opener.js";
import { isPreparation, type Other, resolve } from "./resolve.js";
import { cutMarker, says, segments, shorten, stripLead, trimmed } from "./text.js";
import { measureWords } from "./rows.js";
import { weigh, type Weight } from "./weigh.js";

/** Longer lines are no recipe lines; they are refused before anything is read. */
export const MAX_LINE = 2000;

/** A line understood, before it is put in the public shape. */
export interface Draft {
  readonly line: string;
  /** What stood before the amount and is no part of it: "optional". */
  readonly lead: string;
  readonly found: Found | undefined;
  readonly quantity: Quantity | undefined;
  readonly weight: Weight | undefined;
  readonly words: ReadonlySet<string>;
  readonly others: readonly Other[];
  readonly preparation: string;
  readonly note: string;
  readonly ofWhole: boolean;
}

function heading(line: string): boolean {
  return line.endsWith(":") && !isDigit(line[0]);
}

/** "1 c. zucch., grated": the full stop behind a stretch of text may stand for the rest of its last word. */
const withStop = (lookup: Lookup, line: string): Lookup => ({
  store: lookup.store,
  nearest: lookup.nearest.bind(lookup),
  findFood: lookup.findFood.bind(lookup),
  findInPhrase: (text) =>
    lookup.findInPhrase(text) ?? (line.includes(`${text}.`) ? lookup.findInPhrase(`${text}.`) : undefined),
});

/** One line asks for the same stretch of text more than once: what was found is kept while it is read. */
function remembering(lookup: Lookup): Lookup {
  const foods = new Map<string, ReturnType<Lookup["findFood"]>>();
  const phrases = new Map<string, ReturnType<Lookup["findInPhrase"]>>();
  return {
    store: lookup.store,
    nearest: lookup.nearest.bind(lookup),
    findFood(text, limit) {
      const key = `${limit ?? 0} ${text}`;
      const found = foods.get(key) ?? lookup.findFood(text, limit);
      foods.set(key, found);
      return found;
    },
    findInPhrase(text) {
      if (!phrases.has(text)) phrases.set(text, lookup.findInPhrase(text));
      return phrases.get(text);
    },
  };
}

/** Reads a line into its parts. Never throws. */
export function draftOf(names: Lookup, text: string): Draft {
  const lookup = remembering(text.includes(".") ? withStop(names, text) : names);
  const line = stripLead(text);
  if (line === "" || heading(text.trimEnd())) return emptyDraft(line);
  const { lead, body } = afterOpener(line);
  const draft = body === line ? undefined : draftFrom(lookup, body, lead);
  // "Flour: 2 cups, sifted": what stood before the amount was the food
  return draft?.found === undefined ? draftFrom(lookup, line, "") : draft;
}
const emptyDraft = (line: string): Draft => ({
  line,
  lead: "",
  found: undefined,
  quantity: undefined,
  weight: undefined,
  words: new Set(),
  others: [],
  preparation: "",
  note: "",
  ofWhole: false,
});

function draftFrom(lookup: Lookup, line: string, lead: string): Draft {
  const imperial = lookup.store.locale === "en-GB";
  const leading = readQuantity(line, 0, { imperial });
  const seg = segments(leading === undefined ? line : line.slice(leading.end));
  let cut = cutMarker(seg.head);
  const open = openEnded(lookup, cut.head, cut.tail);
  if (open !== undefined) cut = { ...cut, head: open };
  const trailing = leading === undefined ? trailingAmount(cut.head, imperial) : undefined;
  const head = trailing?.head ?? cut.head;
  const first = leading ?? trailing?.quantity;
  const hit = resolve(lookup, line, head, seg.rest, seg.brackets, first, imperial);
  if (hit === undefined) return { ...emptyDraft(line), quantity: first };

  const said = sortSegments(
    lookup,
    seg.rest.slice(hit.used).filter((s) => !hit.consumed.includes(s)),
    seg.brackets,
    imperial,
  );
  const counted = hit.quantity ?? first;
  const asSold =
    counted?.unit?.name === "can"
      ? findCanned(lookup, hit.found)
      : counted !== undefined &&
          counted.each === undefined &&
          (counted.unit === undefined || ["cup", "tbsp", "tsp"].includes(counted.unit.name))
        ? findFresh(lookup, hit.found)
        : undefined;
  const preparation = [...hit.preparation];
  const notes = [...hit.notes];
  const told = leftOver((asSold ?? hit.found).rest, hit.found);
  if (told !== "") (isPreparation(told) ? preparation : notes).push(told);
  if (cut.tail !== "" && !flagOnly(cut.tail)) (cut.prepares ? preparation : notes).push(cut.tail);
  preparation.push(...said.preparation);
  notes.push(...said.notes);
  if (lead !== "" && !flagOnly(lead.toLowerCase())) notes.push(lead);

  const part = partAfter(lookup, hit, said.preparation);
  const found = part ?? asSold ?? hit.found;
  const ofWhole = hit.ofWhole === true || part !== undefined;
  const quantity = beside(
    hit.quantity ?? (hit.ofWhole ? undefined : first) ?? said.amounts[0]?.quantity,
    said.amounts,
    ofWhole,
  );
  const one = sized(quantity ?? (hit.ofWhole === true ? singular() : undefined), seg.rest);
  const amountText = line.slice(0, leading?.end ?? 0);
  const words = measureWords([amountText, head, ...said.preparation, ...preparation, ...seg.brackets].join(" "));
  const nouns = measureWords(head);
  if (says(amountText, "packed")) preparation.unshift("packed");
  const own = one === undefined ? undefined : weigh(lookup.store, found.ingredient, one, words, nouns);
  // A word of the line that chose the state ("ground cardamom") leaves no other
  const piece =
    one === undefined || own !== undefined || !isExact(found.match) || found.match.how !== "default"
      ? undefined
      : countedAs(lookup.store, found.ingredient, one, words);
  return {
    line,
    lead,
    found: piece === undefined ? found : { ...found, ingredient: piece.ingredient, candidates: [] },
    quantity: one,
    weight: own ?? piece?.weight,
    words,
    others: [...hit.others, ...said.others],
    preparation: preparation.join(", "),
    note: notes.join("; "),
    ofWhole,
  };
}

const COUNTED = new Set(["piece", "clove", "slice", "stick", "bunch"]);

/** What the name left of the head, without bare numbers and without the piece it is counted in ("2 garlic cloves"). */
function leftOver(rest: string, found: Found): string {
  const nouns = new Set(
    found.ingredient.measures.filter((r) => COUNTED.has(r.unit)).map((r) => (r.label === "" ? r.unit : r.label)),
  );
  const kept = rest.split(" ").filter((w) => {
    if (w === "" || [...w].every((ch) => isDigit(ch) || ch === "%")) return false;
    const word = w.toLowerCase();
    const one = word === "leaves" ? "leaf" : word.endsWith("s") ? word.slice(0, -1) : word;
    return !nouns.has(one) && !nouns.has(word);
  });
  return kept.join(" ");
}

function singular(): Quantity {
  return { value: 1, low: 1, high: 1, unit: undefined, size: "", approximate: false, end: 0, words: 0 };
}

const SIZES = new Set(["small", "medium", "large", "extra-large", "jumbo"]);
/** "1 egg, jumbo": the size may stand behind the name. */
function sized(q: Quantity | undefined, rest: readonly string[]): Quantity | undefined {
  if (q === undefined || q.unit !== undefined || q.each !== undefined || q.size !== "") return q;
  const size = rest.map((s) => trimmed(s).toLowerCase().replace(" ", "-")).find((s) => SIZES.has(s));
  return size === undefined ? q : { ...q, size };
}

/** "vegetable or other neutral oil": the first words need the last ones. */
function openEnded(lookup: Lookup, head: string, tail: string): string | undefined {
  const or = skipWord(tail, 0, "or");
  if (or === undefined || skipWord(tail, or, "other", "another", "any", "similar") === undefined) return undefined;
  return shareTail(lookup, head, tail.slice(or));
}

const refOf = (lookup: Lookup, found: Found): FoodRef => ({
  id: found.ingredient.id,
  name: lookup.store.nameOf(found.ingredient),
});

/** The public portion of a weighed quantity. */
export function readPortion(lookup: Lookup, found: Found, q: Quantity, w: Weight, ofWhole = false): Portion {
  const range = w.high > w.low ? { range: [publicGrams(w.low), publicGrams(w.high)] as const } : {};
  const grams = publicGrams(w.grams);
  const measure =
    ofWhole && NOT_COUNTED.has(found.ingredient.part ?? "") && (q.unit === undefined || q.unit.dimension === "count")
      ? portionOf(lookup.store, found.ingredient, grams).measure
      : measureAsRead(q, w);
  return { ...refOf(lookup, found), grams, ...range, measure };
}

/** Reads one line. See `readLine` in the index of this room. */
export function readLineWith(lookup: Lookup, text: string): ReadLine {
  const none = {
    candidates: [],
    alternatives: [],
    preparation: "",
    note: "",
    optional: false,
    divided: false,
  } as const;
  if (text.length > MAX_LINE)
    return freeze<ReadLine>({ ...none, status: "no food", unread: shorten(stripLead(text.slice(0, MAX_LINE))) });
  const d = draftOf(lookup, text);
  if (d.found === undefined) return freeze<ReadLine>({ ...none, status: "no food", unread: shorten(d.line) });
  const shared = {
    preparation: d.preparation,
    note: d.note,
    optional:
      says(`${d.lead} ${d.line}`, "optional") ||
      says(d.line, "if", "desired") ||
      says(d.line, "if", "you", "like") ||
      says(d.line, "if", "using"),
    divided: says(d.line, "divided"),
  };
  if (d.found.candidates.length > 1)
    return freeze<ReadLine>({ ...none, ...shared, status: "ambiguous", candidates: d.found.candidates });
  const food = refOf(lookup, d.found);
  const alternatives = d.others
    .filter((o) => o.found.candidates.length < 2 && o.found.ingredient !== d.found?.ingredient)
    .map((o) => {
      const q = o.quantity ?? d.quantity;
      const w = q === undefined ? undefined : weigh(lookup.store, o.found.ingredient, q, d.words);
      return {
        ...refOf(lookup, o.found),
        ...(q === undefined || w === undefined ? {} : { portion: readPortion(lookup, o.found, q, w) }),
      };
    });
  if (d.quantity === undefined || d.weight === undefined) {
    // An amount that nothing known of the food can weigh is told as unread, not lost
    const unread =
      d.quantity === undefined
        ? {}
        : { unread: shorten(trimmed(d.line.slice(0, Math.max(d.quantity.end, d.quantity.words)))) };
    return freeze<ReadLine>({
      ...none,
      ...shared,
      status: "food only",
      food,
      alternatives,
      ...(unread.unread === "" ? {} : unread),
    });
  }
  return freeze<ReadLine>({
    ...none,
    ...shared,
    status: "food and amount",
    food,
    alternatives,
    portion: readPortion(lookup, d.found, d.quantity, d.weight, d.ofWhole),
  });
}
