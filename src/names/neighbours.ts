import { FLAVORED, isKindOf, isMaker, mayBeChance, neverHad } from "./around.js";
import type { NameIndex } from "./claims.js";
import type { Token } from "./fold.js";
import type { Mark } from "./marks.js";
import type { Span } from "./spans.js";

// Whether the words beside a name leave it what it is.

/** A phrase cut into words, each with what it does. */
export interface Phrase {
  readonly index: NameIndex;
  readonly tokens: readonly Token[];
  readonly marks: readonly Mark[];
}

/** After the name only plain words may follow; a word nobody knows is the real noun ("chicken wire"). */
export function mayFollow(at: Phrase, span: Span, to: number): boolean {
  let done = false;
  for (let i = span.to; i < to; i++) {
    const mark = at.marks[i] as Mark;
    if (mark.class === "join") return true;
    if (mark.class === "not food" || mark.class === "change" || (mark.class === "before" && !done)) return false;
    // "penne pasta", "tuna fish": what kind of thing it is
    if (mark.class === "unknown" && !mark.token.breaks && isKindOf(span, mark.token.key)) continue;
    // "salt-packed", "honey-roasted": the name only describes
    if (i === span.to && mark.token.joined) return false;
    if (mark.class === "unknown" && !done) return false;
    if (mark.done || (mark.class === "state" && mark.said?.state.need === "prep")) done = true;
  }
  return true;
}

/** Before the name: no changing word, no other food used to describe it, nothing unknown before a word too general. Words let go are added to `unknown`. */
export function mayPrecede(at: Phrase, span: Span, from: number, unknown: number[]): boolean {
  const general = span.size === 1 && at.index.words.generalHeads.has((at.tokens[span.to - 1] as Token).key);
  for (let i = span.from - 1; i >= from; i--) {
    const mark = at.marks[i] as Mark;
    if (mark.class === "join") return true;
    if (mark.class === "change") {
      const what = at.marks[i - 1];
      if (!general && isMaker(at.index, what, mark)) unknown.push(i - 1);
      else if (!neverHad(span, what, mark)) return false;
      i--;
      continue;
    }
    if (general && at.index.words.telling.has(mark.token.key)) return false;
    if (mark.class !== "unknown") continue;
    // "strawberry-flavored gelatin": the name itself says that a flavour stands before it
    if (i === span.from - 1 && FLAVORED.has((at.tokens[span.from] as Token).key)) continue;
    // "beef tri-tip", "lamb leg steak": the animal it is of
    const { key } = mark.token;
    if (!general && span.found.top.every((h) => h.ingredient.origin.has(key) || h.ingredient.kinds.includes(key)))
      continue;
    if (general || at.index.byKey.has(mark.token.key) || at.index.words.modifyingFoods.has(mark.token.key))
      return false;
    unknown.push(i);
  }
  const words = unknown.some((i) => (at.tokens[i] as Token).plain.length > 2);
  return !words || !mayBeChance(at.index, span, at.tokens[span.from] as Token);
}
