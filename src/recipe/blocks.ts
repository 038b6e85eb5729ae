import type { Block } from "./html.js";
import { MAX_BLOCKS, within } from "./limits.js";
import { clean, hasWord, leadOf, linesOf } from "./text.js";

/** Emphasis, code and links of Markdown taken out of one line; an image leaves its words. One pass, nothing nested is followed. */
export function inline(text: string): string {
  const out: string[] = [];
  for (let i = 0; i < text.length; i++) {
    const ch = text[i] ?? "";
    if (ch === "\\" && i + 1 < text.length && "\\`*_{}[]()#+-.!|>".includes(text[i + 1] ?? "")) {
      out.push(text[++i] ?? "");
    } else if (ch === "*" || ch === "`") continue;
    else if (ch === "_" && (!wordAt(text, i - 1) || !wordAt(text, i + 1))) continue;
    else if (ch === "]" && text[i + 1] === "(") {
      const close = near(text, ")", i, 300);
      // the address is no text of the recipe, but what is no address stays
      if (close > i && !text.slice(i + 2, close).includes(" ")) i = close;
      else out.push(ch);
    } else if (ch === "[" && linkAt(text, i)) continue;
    else if (ch === "!" && text[i + 1] === "[") continue;
    else out.push(ch);
  }
  return clean(out.join(""));
}
function wordAt(text: string, i: number): boolean {
  const ch = text[i];
  return ch !== undefined && ch !== " " && hasWord(ch);
}
/** Looks no further than `most`, so that a line of nothing but brackets stays cheap. */
function near(text: string, ch: string, from: number, most: number): number {
  const end = Math.min(text.length, from + most);
  for (let i = from; i < end; i++) if (text[i] === ch) return i;
  return -1;
}
function linkAt(text: string, i: number): boolean {
  const close = near(text, "]", i, 200);
  return close > i && text[close + 1] === "(";
}

function hashes(line: string): number {
  let n = 0;
  while (line[n] === "#") n++;
  return n > 0 && n <= 6 && (line[n] === " " || line[n] === undefined) ? n : 0;
}
function rule(line: string): "=" | "-" | "other" | undefined {
  const t = line.trim();
  if (t.length < 2 || hasWord(t)) return undefined;
  for (const ch of ["=", "-"] as const) if ([...t].every((c) => c === ch)) return ch;
  return t.length >= 3 && ["*", "_", "~"].some((m) => [...t].every((c) => c === m || c === " ")) ? "other" : undefined;
}

/** A text or a Markdown file as blocks, one a line; wrapped lines are joined later, where it is known what they are. */
export function blocksOf(text: string, markdown: boolean): Block[] {
  const out: Block[] = [];
  let after = false;
  let front = false;
  let first = true;
  for (const line of linesOf(text)) {
    const t = line.trim();
    if (markdown && first && t === "---") {
      front = true;
      first = false;
      continue;
    }
    if (t !== "") first = false;
    if (front && (t === "---" || t === "...")) {
      front = false;
      continue;
    }
    const mark = rule(t);
    if (mark !== undefined) {
      const last = out.at(-1);
      if (last !== undefined && !after && last.heading === undefined && last.item === undefined && mark !== "other")
        out[out.length - 1] = { ...last, heading: mark === "=" ? 1 : 2 };
      after = true;
      continue;
    }
    if (!hasWord(t)) {
      after ||= t === "";
      if (t !== "" && clean(t) !== "") push(out, { text: clean(t), ...(after ? { after: true as const } : {}) });
      continue;
    }
    const level = markdown ? hashes(t) : 0;
    if (level > 0) {
      let body = t.slice(level).trim();
      while (body.endsWith("#")) body = body.slice(0, -1).trim();
      push(out, { text: inline(body), heading: level, after: true });
      after = true;
      continue;
    }
    const quoted = markdown && t.startsWith(">") ? t.slice(1).trim() : t;
    const lead = leadOf(quoted);
    let body = quoted.slice(lead.at);
    const table = markdown && body.startsWith("|");
    if (table)
      body = body
        .split("|")
        .map((s) => s.trim())
        .filter((s) => s !== "")
        .join(", ");
    const strong = markdown && !lead.bullet && !lead.number && wrapped(body, "**");
    push(out, {
      text: markdown ? inline(body) : clean(body),
      ...(strong ? { heading: 4 } : {}),
      ...(lead.bullet || lead.number || table ? { item: true as const } : {}),
      ...(lead.number ? { numbered: true as const } : {}),
      ...(after ? { after: true as const } : {}),
    });
    after = false;
  }
  return out;
}
function wrapped(text: string, mark: string): boolean {
  const t = text.endsWith(":") ? text.slice(0, -1) : text;
  return t.length > 4 && t.length < 80 && t.startsWith(mark) && t.endsWith(mark) && !t.slice(2, -2).includes(mark);
}
function push(out: Block[], block: Block): void {
  within(out.length + 1, MAX_BLOCKS, "lines of text");
  out.push(block);
}

/** Does a text use Markdown's marks: a # heading, an underlined one, or bold? */
export function looksMarkdown(text: string): boolean {
  let before = "";
  for (const line of linesOf(text)) {
    const t = line.trim();
    if (hashes(t) > 0 && t.length > 2) return true;
    if (t.startsWith("**") && t.indexOf("**", 2) > 2) return true;
    const mark = rule(t);
    if (hasWord(before) && (mark === "=" || mark === "-") && t.length > 2) return true;
    before = t;
  }
  return false;
}
