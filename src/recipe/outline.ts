import { isDigit, readQuantity } from "../quantity/index.js";
import type { Block } from "./html.js";
import { headingText, isGroupHeading, sectionOf, type Section } from "./headings.js";
import { minutesOf } from "./duration.js";
import { hasWord, tokensOf } from "./text.js";
import { emptyRaw, type Raw } from "./types.js";
import { readYield } from "./yields.js";

const PREP = new Set(["prep", "preparation", "hands", "active"]);
const COOK = new Set(["cook", "cooking", "baking", "chilling", "inactive"]);
const TOTAL = new Set(["total", "ready", "time", "takes", "duration"]);
const YIELD = new Set(["serves", "makes", "servings", "yield", "yields", "feeds", "portions", "for"]);

/** "Serves 4 | Prep time: 10 min": reads one piece of such a line. Text that is more than that is left alone. */
function readMeta(raw: Raw, text: string): boolean {
  const words = tokensOf(text).map((t) => t.text);
  const [first = ""] = words;
  if (words.length === 0 || words.length > 12) return false;
  if (YIELD.has(first) || words.at(-1) === "servings" || words[1] === "servings" || words.at(-1) === "portions") {
    if (first === "for" && !words.some((w) => w === "people" || w === "persons")) return false;
    if (readYield(text) === undefined) return false;
    raw.yields.push(text);
    return true;
  }
  // "Prep 10 min", "Cook time: 1 hour"; "Cook for 10 minutes in the oil" is a step
  const short = words.length <= 4 && words[1] !== "for" && words[1] !== "until";
  const timed = words.slice(0, 3).includes("time") || (TOTAL.has(first) && words.length <= 6) || short;
  const key = PREP.has(first) ? "prep" : COOK.has(first) ? "cook" : TOTAL.has(first) ? "total" : undefined;
  if (!timed || key === undefined) return false;
  const minutes = minutesOf(text.includes(":") ? text.slice(text.indexOf(":") + 1).trim() : text);
  if (minutes === undefined || minutes === 0) return false;
  raw[key] = raw[key] === undefined || key === "total" ? minutes : raw[key] + minutes;
  return true;
}

/** Pieces of a line set apart by bars and dots: "Serves 4 · 30 minutes". */
function pieces(text: string): string[] {
  const out: string[] = [];
  let part = "";
  for (const ch of text) {
    if (ch === "|" || ch === "·" || ch === "•" || ch === ";" || ch === "—") {
      out.push(part.trim());
      part = "";
    } else part += ch;
  }
  out.push(part.trim());
  return out.filter(hasWord);
}
/** A line of servings and times: all its pieces are read, or at least one, and what is not stays as unread. */
function metaLine(raw: Raw, text: string): boolean {
  if (text.length > 300) return false;
  const all = pieces(text);
  const left = all.filter((p) => !readMeta(raw, p));
  if (left.length === all.length) {
    // "Serves 4, 30 minutes in all": commas part pieces too
    const parts = text.split(",").map((s) => s.trim());
    if (parts.length < 2 || parts.length > 6) return false;
    const rest = parts.filter((p) => !readMeta(raw, p));
    if (rest.length === parts.length) return false;
    raw.unread.push(...rest.filter(hasWord));
    return true;
  }
  raw.unread.push(...left);
  return true;
}

/** Does a block look like an ingredient where no heading says so: short, and with an amount first? */
function likeIngredient(b: Block): boolean {
  if (b.heading !== undefined || b.numbered === true || b.text.length > 160) return false;
  const q = readQuantity(b.text, 0);
  if (q !== undefined && (isDigit(b.text[0]) || q.unit !== undefined || b.text.charCodeAt(0) > 0x7f)) return true;
  return b.item === true && !b.text.endsWith(".") && tokensOf(b.text).length <= 8;
}

/** A wrapped line of a paragraph goes on in the next when it ended in the middle of a sentence. */
function goesOn(before: Block, b: Block): boolean {
  if (b.after === true || b.item === true || b.heading !== undefined || before.heading !== undefined) return false;
  const end = before.text.at(-1) ?? "";
  return !".!?:".includes(end) && before.text.length > 40;
}

/** Blocks with wrapped lines made whole. */
function unwrapped(blocks: readonly Block[], from: (i: number) => boolean): Block[] {
  const out: Block[] = [];
  let parts: string[] = [];
  let last: Block | undefined;
  const close = (): void => {
    if (last !== undefined) out.push({ ...last, text: parts.join(" ") });
    parts = [];
  };
  let before: Block | undefined;
  blocks.forEach((b, i) => {
    if (before !== undefined && from(i) && goesOn(before, b)) parts.push(b.text);
    else {
      close();
      last = b;
      parts = [b.text];
    }
    before = b;
  });
  close();
  return out;
}

/** The section a block opens, when it is a heading or stands alone as one. */
function opens(b: Block): Section | undefined {
  if (b.item === true) return undefined;
  return sectionOf(b.text);
}

/**
 * Blocks of a text, a Markdown file or a page to a recipe. The first heading (or line) is its name; the headings of
 * ingredients and method open their parts, others inside them are groups. Without such headings a line that begins with an
 * amount is an ingredient and what follows is the method. What is neither goes to `unread`, in order.
 */
export function outline(all: readonly Block[], title: string): Raw {
  const raw = emptyRaw();
  const headed = all.some((b) => opens(b) === "ingredients" || opens(b) === "method");
  let at: Section | undefined;
  const blocks = unwrapped(all, (i) => {
    const b = all[i - 1];
    const s = b === undefined ? undefined : opens(b);
    at = s ?? at;
    return at !== "ingredients" && !(b !== undefined && !headed && likeIngredient(b));
  });
  const first = headed ? blocks.findIndex((b) => opens(b) === "ingredients" || opens(b) === "method") : blocks.length;
  const named = nameAt(blocks, first);
  raw.name = named === undefined ? title : (blocks[named]?.text ?? title);

  let section: Section | undefined;
  let level = 7;
  let group = "";
  let used = true;
  const open = (text: string): void => {
    if (!used && group !== "") raw.unread.push(group);
    group = text;
    used = text === "";
  };
  const put = (to: "lines" | "steps", text: string): void => {
    used = true;
    raw[to].push(group === "" ? { text } : { text, group });
  };
  // an amount on a line of its own, as cells and boxes of a page hold it, belongs to the food in the next
  let amount = "";
  const settle = (): void => {
    if (amount !== "") put("lines", amount);
    amount = "";
  };
  blocks.forEach((b, i) => {
    if (i === named) return;
    if (!hasWord(b.text)) return;
    if (b.heading !== undefined || opens(b) !== undefined) settle();
    const s = opens(b);
    if (s !== undefined) {
      open("");
      section = s;
      level = b.heading ?? 7;
      return;
    }
    if (
      b.heading !== undefined &&
      b.heading <= level &&
      section !== undefined &&
      b.heading < 3 &&
      !isGroupHeading(b.text)
    ) {
      // a heading of the same rank that is no part of a recipe ends the part it stands after
      open("");
      section = "other";
      raw.unread.push(b.text);
      return;
    }
    const grouping = b.heading !== undefined || (b.item !== true && isGroupHeading(b.text) && section !== "other");
    if (section === "ingredients") {
      if (grouping || isGroupHeading(b.text)) {
        settle();
        open(headingText(b.text));
      } else if (bareAmount(b.text)) {
        settle();
        amount = b.text;
      } else if (amount !== "" && readQuantity(b.text, 0) === undefined) {
        put("lines", `${amount} ${b.text}`);
        amount = "";
      } else {
        settle();
        if (b.item === true || !metaLine(raw, b.text)) put("lines", b.text);
      }
      return;
    }
    if (section === "method") {
      if (grouping && b.numbered !== true) open(headingText(b.text));
      else put("steps", b.text);
      return;
    }
    if (metaLine(raw, b.text)) return;
    if (headed || section === "other") {
      raw.unread.push(b.text);
      return;
    }
    if (grouping && (raw.lines.length > 0 || isGroupHeading(b.text))) open(headingText(b.text));
    else if (likeIngredient(b) && !raw.steps.some((x) => x.text.length > 160)) put("lines", b.text);
    else if (raw.lines.length > 0 || b.numbered === true) {
      if (raw.steps.length === 0 && group !== "" && raw.lines.at(-1)?.group === group) open("");
      put("steps", b.text);
    } else raw.unread.push(b.text);
  });
  settle();
  open("");
  return raw;
}
/** "150 ml", "2": an amount and nothing else. */
function bareAmount(text: string): boolean {
  const q = text.length > 40 ? undefined : readQuantity(text, 0);
  return q !== undefined && q.implied !== true && q.end >= text.length;
}

/** The first heading of the highest rank before the parts begin, else the first line when it is short. */
function nameAt(blocks: readonly Block[], before: number): number | undefined {
  let best: number | undefined;
  for (let i = 0; i < before; i++) {
    const b = blocks[i];
    if (b?.heading === undefined || sectionOf(b.text) !== undefined) continue;
    if (best === undefined || b.heading < (blocks[best]?.heading ?? 7)) best = i;
  }
  if (best !== undefined) return best;
  const first = blocks[0];
  if (first === undefined || before === 0 || first.item === true || first.text.length > 120) return undefined;
  if (sectionOf(first.text) !== undefined || isGroupHeading(first.text) || likeIngredient(first)) return undefined;
  return readMeta(emptyRaw(), first.text) || first.text.endsWith(".") ? undefined : 0;
}
