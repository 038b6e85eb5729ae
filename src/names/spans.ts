import type { NameIndex } from "./claims.js";
import { keyOf, type Token } from "./fold.js";
import { byName, type Found } from "./lookup.js";
import type { Mark } from "./marks.js";

/** Words between two breaks, up to where a note begins. */
export interface Part {
  readonly from: number;
  readonly to: number;
  readonly bracket: boolean;
  /** Starts with "or": what it holds is an alternative. */
  readonly other: boolean;
}
export interface Span {
  readonly from: number;
  readonly to: number;
  readonly size: number;
  readonly found: Found;
}

/** Cuts a phrase at commas, dashes and brackets; each part ends where a note begins. */
export function partsOf(marks: readonly Mark[]): Part[] {
  const parts: Part[] = [];
  let from = 0;
  const close = (end: number): void => {
    if (end <= from) return;
    let to = from;
    while (to < end && (marks[to] as Mark).class !== "note") to++;
    const first = marks[from] as Mark;
    parts.push({ from, to, bracket: first.token.depth > 0, other: first.token.key === "or" });
    from = end;
  };
  marks.forEach((m, i) => {
    if (m.token.breaks) close(i);
  });
  close(marks.length);
  return parts;
}

/** Every run of words in [from, to) that is a listed name; longest first, of equals the one nearest the end. */
export function spansIn(index: NameIndex, tokens: readonly Token[], from: number, to: number): Span[] {
  const spans: Span[] = [];
  for (let i = from; i < to; i++) {
    if ((tokens[i] as Token).key === "") continue;
    for (let j = i + 1; j <= to && j - i <= index.longest + 3; j++) {
      if ((tokens[j - 1] as Token).key === "") continue;
      const row = tokens.slice(i, j);
      const found = nameOf(index, row);
      if (found) spans.push({ from: i, to: j, size: row.filter((t) => t.key !== "").length, found });
    }
  }
  return spans.sort((a, b) => b.size - a.size || b.to - a.to);
}

/**
 * A row of words that is a name. Inside a phrase the order of words is kept ("chocolate milk"), unless they are joined by
 * "of" or begin with a piece: "juice of lemon", "sprigs rosemary".
 */
function nameOf(index: NameIndex, row: readonly Token[]): Found | undefined {
  const { linking, counting, cutting } = index.words;
  const first = (row[0] as Token).key;
  const reorder =
    counting.has(first) || cutting.has(first) || row.some((t) => t.breaks || t.key === "" || linking.has(t.key));
  const raw = row.map((t) => t.text.toLowerCase()).join(" ");
  const found = byName(index, keyOf(row), raw, reorder);
  if (found !== undefined || row.length < 3) return found;
  // "juice of 1 lemon", "zest from 2 limes": a count inside does not break the name
  const bare = row.filter((t) => !linking.has(t.key) && !(t.key.length < 3 && t.key >= "0" && t.key <= "99"));
  return bare.length === row.length || bare.length < 2 ? undefined : byName(index, keyOf(bare), raw, reorder);
}
