import { ADVISING } from "./around.js";
import type { NameIndex } from "./claims.js";
import { keyOf, type Token } from "./fold.js";
import { byLetters } from "./fuzzy.js";
import { byName, order, SURE, type Found, type Hit } from "./lookup.js";
import { marksOf, type Mark } from "./marks.js";
import { mayFollow, mayPrecede } from "./neighbours.js";
import { settle, type Said } from "./settle.js";
import { partsOf, spansIn, type Part, type Span } from "./spans.js";

/** A food found in a phrase, before it is made public. */
export interface InPhrase {
  readonly hits: readonly Hit[];
  readonly from: number;
  readonly to: number;
  /** Words that belong to the name: its own and the state words that chose. */
  readonly owned: ReadonlySet<number>;
  readonly unmet: readonly string[];
  readonly unknown: readonly string[];
  readonly also: readonly InPhrase[];
}

const UNCOOKED: ReadonlySet<string> = new Set(["raw", "uncooked"]);
const HEATED: ReadonlySet<string> = new Set([
  "cooked",
  "boiled",
  "roasted",
  "toasted",
  "steamed",
  "fried",
  "parboiled",
]);

/** Reads one phrase. */
export class Reader {
  readonly marks: readonly Mark[];
  readonly parts: readonly Part[];
  private readonly spans = new Map<Part, Span[]>();
  constructor(
    readonly index: NameIndex,
    readonly tokens: readonly Token[],
  ) {
    this.marks = marksOf(index, tokens);
    this.parts = partsOf(this.marks);
  }

  private spansOf(part: Part): readonly Span[] {
    let spans = this.spans.get(part);
    if (spans === undefined) this.spans.set(part, (spans = spansIn(this.index, this.tokens, part.from, part.to)));
    return spans;
  }
  /** True when the part names a food with a word that does nothing else ("thyme", not "leaf" or "salt"). */
  private hasFood(part: Part): boolean {
    return this.spansOf(part).some((s) => this.marks.slice(s.from, s.to).some((m) => m.class === "unknown"));
  }

  read(): InPhrase | undefined {
    const raw = this.tokens.map((t) => t.text.toLowerCase()).join(" ");
    // "beans, black": only a comma says that the order is turned
    const turned = this.tokens.some((t) => t.breaks);
    const whole = byName(this.index, keyOf(this.tokens), raw, turned) ?? this.uncooked(raw, turned);
    if (whole)
      return this.made(
        { from: 0, to: this.tokens.length, size: this.tokens.length, found: whole },
        whole.top,
        [],
        [],
        [],
      );
    for (const part of [...this.parts.filter((p) => !p.bracket), ...this.parts.filter((p) => p.bracket)]) {
      const spans = this.spansOf(part);
      const found = spans.length > 0 ? this.readPart(part, spans) : undefined;
      const hit = found ?? this.misspelled(part);
      if (hit !== undefined) return hit;
      if (spans.length > 0 && !part.bracket) return this.namedAgain(part);
    }
    return undefined;
  }

  /** "pepper paste (biber salçası)", "rice cakes (nian gao)": what was not understood is named in brackets, word for word. */
  private namedAgain(refused: Part): InPhrase | undefined {
    const changed = this.marks.slice(refused.from, refused.to);
    if (changed.some((m) => m.class === "change" || m.class === "not food")) return undefined;
    for (const { from, to, bracket } of this.parts) {
      const row = this.tokens.slice(from, to);
      const found = bracket
        ? byName(this.index, keyOf(row), row.map((t) => t.text.toLowerCase()).join(" "), false)
        : undefined;
      if (found?.top[0]?.confidence === SURE.same)
        return this.made({ from, to, size: to - from, found }, found.top, [], [], []);
    }
    return undefined;
  }

  /** "raw bison, ground": said of what is not sold cooked, "raw" is no word of the turned name. */
  private uncooked(raw: string, turned: boolean): Found | undefined {
    const bare = this.tokens.filter((t) => !UNCOOKED.has(t.key));
    if (!turned || bare.length === this.tokens.length || bare.length < 2) return undefined;
    const found = byName(this.index, keyOf(bare), raw, true);
    return found?.top.every((h) => h.ingredient.state.every((s) => !HEATED.has(s))) ? found : undefined;
  }

  /** One part may hold several foods joined by "and" or "or": the first is the food, the others go along. */
  private readPart(part: Part, spans: readonly Span[]): InPhrase | undefined {
    if (this.changedElsewhere(part)) return undefined;
    const across = spans.find((s) => this.joinsIn(s.from, s.to).length > 0);
    if (across) return this.accept(across, part.from, part.to);
    const joins = this.joinsIn(part.from, part.to);
    const cuts = [part.from, ...joins.map((j) => j + 1)];
    const pieces = cuts.map((from, k) => ({ from, to: joins[k] ?? part.to }));
    const foods: InPhrase[] = [];
    pieces.forEach((piece, k) => {
      const inside = spans.filter((s) => s.from >= piece.from && s.to <= piece.to);
      const read = this.shared(piece, pieces[k + 1], spans) ?? this.best(inside, piece.from, piece.to);
      if (read) foods.push(read);
    });
    const unread = pieces.some((piece) => {
      const inside = spans.some((s) => s.from >= piece.from && s.to <= piece.to);
      return inside && !foods.some((f) => f.from >= piece.from && f.from < piece.to);
    });
    const [first, ...also] = foods;
    return first === undefined || unread ? undefined : { ...first, also };
  }

  private best(spans: readonly Span[], from: number, to: number): InPhrase | undefined {
    for (const span of spans) {
      const read = this.accept(span, from, to);
      if (read) return read;
    }
    return undefined;
  }

  /** "chicken or vegetable stock": the first shares the last word of the second when that is a name. */
  private shared(
    piece: { from: number; to: number },
    next: { from: number; to: number } | undefined,
    spans: readonly Span[],
  ): InPhrase | undefined {
    if (next === undefined) return undefined;
    const second = spans.find((s) => s.from >= next.from && s.to <= next.to && s.size > 1);
    if (!second || piece.to <= piece.from) return undefined;
    // the longest common ending first: "white or red wine vinegar" is white wine vinegar
    for (let tail = second.from + 1; tail < second.to; tail++) {
      for (let from = piece.from; from < piece.to; from++) {
        const key = keyOf([...this.tokens.slice(from, piece.to), ...this.tokens.slice(tail, second.to)]);
        const found = key.includes(" ") ? byName(this.index, key, key) : undefined;
        if (found === undefined) continue;
        return this.accept({ from, to: piece.to, size: 2, found }, piece.from, piece.to);
      }
    }
    return undefined;
  }

  private joinsIn(from: number, to: number): number[] {
    const at: number[] = [];
    for (let i = from; i < to; i++) if ((this.marks[i] as Mark).class === "join") at.push(i);
    return at;
  }

  /** A changing word in another part of the phrase speaks of this food too, unless it belongs to an alternative. */
  private changedElsewhere(here: Part): boolean {
    return this.parts.some(
      (p) =>
        p !== here &&
        !p.other &&
        !this.hasFood(p) &&
        !ADVISING.has(this.marks[p.to]?.token.key ?? "") &&
        this.marks.slice(p.from, p.to).some((m) => m.class === "change"),
    );
  }

  /** Reads a name in its surroundings [from, to), or refuses it when they make it something else. */
  private accept(span: Span, from: number, to: number): InPhrase | undefined {
    const unknown: number[] = [];
    if (!mayFollow(this, span, to) || !mayPrecede(this, span, from, unknown)) return undefined;
    const said = this.said(span, from, to);
    const settled = settle(
      this.index,
      span.found.top.map((h) => h.ingredient),
      said.map(([s]) => s),
    );
    if (settled === undefined) return undefined;
    // A state word that is a food itself ("salt") and chose nothing is a food named beside it.
    if (settled.unmet.some((s) => this.index.byKey.has(s.state.word) && s.state.need === "must")) return undefined;
    const hits = settled.ingredients.map((i) => span.found.top.find((h) => h.ingredient === i) ?? this.hit(span, i));
    const owned = said.filter(([s]) => settled.used.includes(s)).flatMap(([, at]) => at);
    return this.made(
      span,
      hits,
      owned,
      settled.unmet.map((s) => s.state.word),
      unknown,
    );
  }

  private hit(span: Span, ingredient: Hit["ingredient"]): Hit {
    const first = span.found.top[0] as Hit;
    const sure = first.confidence === SURE.same;
    return {
      ingredient,
      matched: first.matched,
      how: first.how === "fuzzy" ? "fuzzy" : sure ? "alias" : "folded",
      confidence: first.confidence,
    };
  }

  private made(
    span: Span,
    hits: readonly Hit[],
    owned: readonly number[],
    unmet: readonly string[],
    unknown: readonly number[],
  ): InPhrase {
    const doubt = unknown.length > 0 ? 0.8 : unmet.length > 0 ? 0.85 : 1;
    const all = new Set(owned);
    for (let i = span.from; i < span.to; i++) all.add(i);
    return {
      hits: hits
        .map((h): Hit => (doubt < 1 && h.confidence > doubt ? { ...h, how: "fuzzy", confidence: doubt } : h))
        .sort((a, b) => b.confidence - a.confidence || order(a.ingredient, b.ingredient)),
      from: span.from,
      to: span.to,
      owned: all,
      unmet,
      unknown: unknown.map((i) => (this.tokens[i] as Token).text),
      also: [],
    };
  }

  /** State words around the name, and ways of keeping in parts that hold no food of their own. */
  private said(span: Span, from: number, to: number): [Said, number[]][] {
    const out: [Said, number[]][] = [];
    const take = (lo: number, hi: number, loose: boolean): void => {
      for (let i = lo; i < hi; i++) {
        const mark = this.marks[i] as Mark;
        if (mark.said === undefined || (i >= span.from && i < span.to)) continue;
        if (loose && !mark.said.state.kept) continue;
        const at = [i];
        if (this.marks[i + 1]?.class === "state" && this.marks[i + 1]?.said === undefined) at.push(i + 1);
        out.push([loose ? { ...mark.said, loose } : mark.said, at]);
      }
    };
    take(from, to, false);
    for (const p of this.parts) {
      if (p.other || (p.from <= span.from && span.from < p.to)) continue;
      if (!this.hasFood(p)) take(p.from, p.to, true);
    }
    return out;
  }

  /** No name as written: the longest run of words that is one misspelled. */
  private misspelled(part: Part): InPhrase | undefined {
    if (this.changedElsewhere(part)) return undefined;
    const tried: Span[] = [];
    for (let i = part.from; i < part.to; i++) {
      for (let j = Math.min(part.to, i + 4); j > i; j--) {
        const row = this.marks.slice(i, j);
        if (
          !row.some((m) => m.class === "unknown") ||
          row.some((m) => m.class === "join" || m.class === "not food" || m.class === "number")
        )
          continue;
        if (row[0]?.class === "silent" || row.at(-1)?.class === "silent") continue;
        tried.push({ from: i, to: j, size: j - i, found: { top: [], behind: [] } });
      }
    }
    tried.sort((a, b) => b.size - a.size || b.to - a.to);
    for (const span of tried.slice(0, 12)) {
      const key = keyOf(this.tokens.slice(span.from, span.to));
      if (this.index.byKey.has(key)) continue; // written as listed, and refused above
      const found = byLetters(this.index, key);
      const read = found && this.accept({ ...span, found }, part.from, part.to);
      if (read && read.unknown.length === 0) return read;
    }
    return undefined;
  }
}
