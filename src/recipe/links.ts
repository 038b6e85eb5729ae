import type { Store } from "../catalogue/index.js";
import { foldText } from "../names/index.js";
import type { ReadLine } from "../types.js";
import { foldAll, MADE, TELLING, wordsOfFood } from "./link-words.js";
import type { Token } from "./text.js";
import { tokensOf } from "./text.js";
import type { LineUse } from "./types.js";

// Which lines a step uses. Every line has a few phrases (its food's names); a step is scanned once for the longest of them.

interface Hit {
  readonly line: number;
  readonly confidence: number;
  readonly how: LineUse["how"];
}
/** Phrases as a tree of their words, so that a step is read in one walk however many lines there are. */
interface Node {
  readonly next: Map<string, Node>;
  readonly hits: Map<number, Hit>;
  /** Worked out when a step first says it. */
  meant?: Meant;
}
interface Meant {
  readonly hits: readonly Hit[];
  /** Lines by the group they stand in, lower case. */
  readonly groups: ReadonlyMap<string, readonly number[]>;
}
/** Lines of one name that a step is linked to: no cook writes as many, and of more none is meant more than another. */
const MAX_SHARED = 30;
/** Links of a whole recipe. Steps beyond are read for everything else. */
const MAX_USES = 20_000;
export interface LineWords {
  readonly text: string;
  readonly read: ReadLine;
  readonly group?: string;
}

/** The words that may name the food of a line nothing is known of: up to the first comma or bracket. */
function headOf(text: string): string[] {
  let end = 0;
  while (end < text.length && end < 200 && !",;(".includes(text[end] ?? "")) end++;
  return foldAll(text.slice(0, end)).filter((k) => !TELLING.has(k) && k.length > 2);
}

const fresh = (): Node => ({ next: new Map(), hits: new Map() });

export class Links {
  private readonly root = fresh();
  private readonly kinds = new Map<string, Set<number>>();
  private readonly folded = new Map<string, string>();
  private uses = 0;
  readonly used = new Set<number>();

  constructor(
    store: Store,
    readonly lines: readonly LineWords[],
    /** Only then does a step without a group say something. */
    readonly stepsGrouped: boolean,
  ) {
    lines.forEach((l, i) => {
      const ids = l.read.food ? [l.read.food.id] : l.read.candidates.map((m) => m.id);
      const also = l.read.alternatives.map((a) => a.id);
      const said = new Set(foldAll(l.text));
      if (ids.length === 0) this.unknown(headOf(l.text), i);
      for (const id of [...ids, ...also]) {
        const food = wordsOfFood(store, id);
        if (food === undefined) continue;
        const sure = also.includes(id) || ids.length > 1 ? 0.8 : 1;
        for (const name of food.names) this.name(name, i, said, sure);
        for (const word of food.kinds) {
          const lines = this.kinds.get(word) ?? new Set();
          this.kinds.set(word, lines.add(i));
        }
      }
    });
  }

  private put(keys: readonly string[], hit: Hit): void {
    let at = this.root;
    for (const key of keys) {
      const next = at.next.get(key) ?? fresh();
      at.next.set(key, next);
      at = next;
    }
    const had = at.hits.get(hit.line);
    if (had === undefined || had.confidence < hit.confidence) at.hits.set(hit.line, hit);
  }
  private name(keys: readonly string[], line: number, said: ReadonlySet<string>, sure: number): void {
    const whole = keys.every((k) => said.has(k));
    this.put(keys, { line, confidence: whole ? sure : 0.85 * sure, how: "named" });
    if (!whole) return;
    keys.forEach((k, i) => {
      const last = i === keys.length - 1;
      if (keys.length === 1 || TELLING.has(k) || (!last && MADE.has(keys.at(-1) ?? ""))) return;
      this.put([k], { line, confidence: (last ? 0.85 : 0.7) * sure, how: "part of the name" });
    });
  }
  private unknown(keys: readonly string[], line: number): void {
    if (keys.length === 0) return;
    this.put(keys, { line, confidence: 0.9, how: "named" });
    keys.forEach((k, i) => {
      if (keys.length > 1)
        this.put([k], { line, confidence: i === keys.length - 1 ? 0.7 : 0.55, how: "part of the name" });
    });
  }
  private fold(word: string): string {
    const had = this.folded.get(word);
    if (had !== undefined) return had;
    const made = foldText(word);
    if (this.folded.size < 20_000) this.folded.set(word, made);
    return made;
  }

  /** The lines a step uses, in the order of the lines. */
  read(text: string, tokens: readonly Token[], group: string | undefined): LineUse[] {
    const out = new Map<number, LineUse>();
    const put = (use: LineUse): void => {
      const had = out.get(use.line);
      if (had === undefined || had.confidence < use.confidence) out.set(use.line, use);
    };
    const keys = tokens.map((t) => this.fold(t.text));
    const words = (from: number, to: number): string => text.slice(tokens[from]?.start ?? 0, tokens[to - 1]?.end ?? 0);
    // the same words mean the same lines however often a step says them
    const seen = new Set<Node | string>();
    for (let i = 0; i < keys.length;) {
      const key = keys[i] ?? "";
      const found = key === "" ? undefined : this.longest(keys, i);
      const size = found?.size ?? 1;
      const said = found?.node ?? key;
      if (!seen.has(said)) {
        seen.add(said);
        if (found === undefined) this.byKind(key, words(i, i + 1), put);
        else
          for (const { line, how, confidence } of this.shared(meantBy(found.node, this.lines), group))
            put({ line, confidence: round(confidence), how, words: words(i, i + size) });
      }
      i += size;
    }
    this.everything(tokens, group, out, put);
    for (const line of out.keys()) this.used.add(line);
    this.uses += out.size;
    if (this.uses > MAX_USES) return [];
    return [...out.values()].sort((a, b) => a.line - b.line);
  }

  private longest(keys: readonly string[], at: number): { readonly node: Node; readonly size: number } | undefined {
    let node: Node | undefined = this.root;
    let best: { node: Node; size: number } | undefined;
    for (let i = at; i < keys.length; i++) {
      node = node.next.get(keys[i] ?? "");
      if (node === undefined) break;
      if (node.hits.size > 0) best = { node, size: i - at + 1 };
    }
    return best;
  }
  /** Several lines of one name: the one in the step's own group is meant, else all are, and none is sure. */
  private shared({ hits, groups }: Meant, group: string | undefined): readonly Hit[] {
    if (hits.length < 2) return hits;
    const here = this.stepsGrouped ? (groups.get((group ?? "").toLowerCase()) ?? []) : [];
    const own = here.length === 1 ? here[0] : undefined;
    // of more than a step can mean, those of its own group, else the first; the others are named as much
    if (hits.length > MAX_SHARED) for (const h of hits) this.used.add(h.line);
    const few =
      hits.length <= MAX_SHARED
        ? hits
        : own !== undefined
          ? hits.filter((h) => h.line === own)
          : hits.slice(0, MAX_SHARED);
    return few.map((h) => ({
      ...h,
      confidence: h.confidence * (own === undefined ? 0.6 : h.line === own ? 0.95 : 0.4),
    }));
  }
  private sameGroup(line: number, group: string): boolean {
    return (this.lines[line]?.group ?? "").toLowerCase() === group.toLowerCase();
  }
  private byKind(key: string, words: string, put: (use: LineUse) => void): void {
    const lines = this.kinds.get(key);
    if (lines === undefined || lines.size > MAX_SHARED) return;
    for (const line of lines) put({ line, confidence: lines.size === 1 ? 0.7 : 0.55, how: "kind", words });
  }

  /** "all the ingredients", "the remaining ingredients", "the dressing ingredients". */
  private everything(
    tokens: readonly Token[],
    group: string | undefined,
    out: ReadonlyMap<number, LineUse>,
    put: (use: LineUse) => void,
  ): void {
    const beside = (i: number): string[] => tokens.slice(Math.max(0, i - 4), i).map((x) => x.text);
    // one such phrase a step is read: more would say the same
    const at = tokens.findIndex(
      (t, i) =>
        t.text === "everything" || (t.text === "ingredients" && beside(i).some((w) => w === "all" || w === "the")),
    );
    const t = tokens[at];
    if (t === undefined) return;
    {
      const before = beside(at);
      const rest = before.some((w) => ["remaining", "rest", "other"].includes(w));
      const named = new Set(
        this.lines
          .map((l) => l.group ?? "")
          .filter(
            (g) =>
              g !== "" && before.some((w) => tokensOf(g).some((x) => x.text === w && !TELLING.has(w) && w !== "the")),
          ),
      );
      // "dry ingredients" says which only to a cook
      if (before.at(-1) === "dry" || before.at(-1) === "wet") return;
      const grouped = named.size === 0 && group !== undefined && this.lines.some((_, k) => this.sameGroup(k, group));
      this.lines.forEach((l, line) => {
        if (named.size > 0 && !named.has(l.group ?? "")) return;
        if (grouped && !this.sameGroup(line, group)) return;
        if (rest && (this.used.has(line) || out.has(line))) return;
        put({ line, confidence: rest ? 0.7 : 0.8, how: rest ? "the rest" : "everything", words: t.text });
      });
    }
  }
}
/** "onion" is the onion of the line called so before it is part of "spring onion". */
function meantBy(node: Node, lines: readonly LineWords[]): Meant {
  if (node.meant !== undefined) return node.meant;
  let hits = [...node.hits.values()];
  let best = 0;
  for (const h of hits) if (h.how === "named" && h.confidence > best) best = h.confidence;
  if (best >= 0.8) hits = hits.filter((h) => h.how === "named" && h.confidence >= best - 0.2);
  const groups = new Map<string, number[]>();
  for (const h of hits) {
    const group = (lines[h.line]?.group ?? "").toLowerCase();
    const had = groups.get(group);
    if (had) had.push(h.line);
    else groups.set(group, [h.line]);
  }
  node.meant = { hits, groups };
  return node.meant;
}
const round = (v: number): number => Math.round(v * 100) / 100;
