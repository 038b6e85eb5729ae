import type { Store } from "../catalogue/index.js";
import { foldText } from "../names/index.js";
import type { ReadLine } from "../types.js";
import type { Token } from "./text.js";
import { tokensOf } from "./text.js";
import type { LineUse } from "./types.js";

// Which lines a step uses. Every line has a few phrases (its food's names); a step is scanned once for the longest of them.

interface Phrase {
  readonly keys: readonly string[];
  readonly line: number;
  readonly confidence: number;
  readonly how: LineUse["how"];
}
export interface LineWords {
  readonly text: string;
  readonly read: ReadLine;
  readonly group?: string;
}

/** Words that tell foods of one name apart but name none. */
const TELLING = new Set(
  "fresh dried dry ground large small medium red green white black brown yellow sweet hot sour whole plain raw cold warm baby young ripe light dark double single heavy all purpose self raising unsalted salted extra virgin free range low fat long short grain flat leaf hard soft thick thin canned tinned frozen smoked cured baking wild mixed new old spring piece fine coarse sea table instant active bay and or with in to for g ml kg".split(
    " ",
  ),
);
/** A name that ends so is made from what it begins with: "chicken" is no chicken stock, "olives" no olive oil. */
const MADE = new Set(
  "stock broth bouillon oil sauce paste juice powder butter milk vinegar flour starch syrup cream water fat wine extract essence".split(
    " ",
  ),
);
/** Words of a step that name a kind, and the kind or role of the catalogue it is. */
const KINDS: Readonly<Record<string, { readonly kind?: string; readonly role?: string }>> = {
  fish: { kind: "fish" },
  meat: { kind: "meat" },
  vegetable: { kind: "vegetable" },
  bean: { kind: "bean" },
  pasta: { kind: "pasta" },
  noodle: { kind: "noodle" },
  cheese: { kind: "cheese" },
  mushroom: { kind: "mushroom" },
  poultry: { kind: "poultry" },
  nut: { kind: "nut" },
  seafood: { kind: "seafood" },
  green: { role: "leafy green" },
  herb: { role: "herb" },
  spice: { role: "spice" },
  sausage: { kind: "sausage" },
  chilli: { kind: "chilli" },
  oil: { kind: "oil" },
  stock: { kind: "stock" },
  flour: { kind: "flour" },
  sugar: { kind: "sugar" },
  vinegar: { kind: "vinegar" },
};

const foldAll = (text: string): string[] =>
  tokensOf(text.slice(0, 400))
    .map((t) => foldText(t.text))
    .filter((k) => k !== "" && !(k >= "0" && k <= "9999"));

/** The words that may name the food of a line nothing is known of: up to the first comma or bracket. */
function headOf(text: string): string[] {
  let end = 0;
  while (end < text.length && end < 200 && !",;(".includes(text[end] ?? "")) end++;
  return foldAll(text.slice(0, end)).filter((k) => !TELLING.has(k) && k.length > 2);
}

export class Links {
  private readonly byFirst = new Map<string, Phrase[]>();
  private readonly kinds = new Map<string, number[]>();
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
        const food = store.byId.get(id);
        if (food === undefined) continue;
        const names = new Set(
          [food.name.us, food.name.gb, ...food.names.map((n) => n.text)].map((n) => foldAll(n).join(" ")),
        );
        const sure = also.includes(id) || ids.length > 1 ? 0.8 : 1;
        for (const name of names) if (name !== "") this.name(name.split(" "), i, said, sure);
        for (const [word, { kind, role }] of Object.entries(KINDS)) {
          const fits =
            (kind !== undefined && food.kinds.some((k) => foldAll(k).includes(kind))) ||
            (role !== undefined && food.roles.some((r) => r.role === role && r.weight >= 0.5));
          if (fits) this.kinds.set(word, [...new Set([...(this.kinds.get(word) ?? []), i])]);
        }
      }
    });
  }

  private put(p: Phrase): void {
    const first = p.keys[0] ?? "";
    const list = this.byFirst.get(first) ?? [];
    const had = list.findIndex((o) => o.line === p.line && o.keys.join(" ") === p.keys.join(" "));
    if (had < 0) list.push(p);
    else if ((list[had]?.confidence ?? 1) < p.confidence) list[had] = p;
    this.byFirst.set(first, list);
  }
  private name(keys: readonly string[], line: number, said: ReadonlySet<string>, sure: number): void {
    const whole = keys.every((k) => said.has(k));
    this.put({ keys, line, confidence: whole ? sure : 0.85 * sure, how: "named" });
    if (!whole) return;
    keys.forEach((k, i) => {
      const last = i === keys.length - 1;
      if (keys.length === 1 || TELLING.has(k) || (!last && MADE.has(keys.at(-1) ?? ""))) return;
      this.put({ keys: [k], line, confidence: (last ? 0.85 : 0.7) * sure, how: "part of the name" });
    });
  }
  private unknown(keys: readonly string[], line: number): void {
    if (keys.length === 0) return;
    this.put({ keys, line, confidence: 0.9, how: "named" });
    keys.forEach((k, i) => {
      if (keys.length > 1)
        this.put({ keys: [k], line, confidence: i === keys.length - 1 ? 0.7 : 0.55, how: "part of the name" });
    });
  }

  /** The lines a step uses, in the order of the lines. */
  read(text: string, tokens: readonly Token[], group: string | undefined): LineUse[] {
    const out = new Map<number, LineUse>();
    const put = (use: LineUse): void => {
      const had = out.get(use.line);
      if (had === undefined || had.confidence < use.confidence) out.set(use.line, use);
    };
    const keys = tokens.map((t) => foldText(t.text));
    const words = (from: number, to: number): string => text.slice(tokens[from]?.start ?? 0, tokens[to - 1]?.end ?? 0);
    // the same words mean the same lines however often a step says them
    const seen = new Map<string, number>();
    for (let i = 0; i < keys.length;) {
      const key = keys[i] ?? "";
      const ahead = keys.slice(i, i + 6).join(" ");
      const known = seen.get(ahead);
      if (known !== undefined) {
        i += known;
        continue;
      }
      const hits = key === "" ? [] : this.longest(keys, i);
      const size = hits[0]?.keys.length ?? 1;
      seen.set(ahead, size);
      const lines = [...new Set(hits.map((h) => h.line))];
      const here = lines.length > 1 && this.stepsGrouped ? lines.filter((l) => this.sameGroup(l, group ?? "")) : [];
      for (const h of hits) {
        const confidence = round(this.shared(h, lines.length, here));
        put({ line: h.line, confidence, how: h.how, words: words(i, i + size) });
      }
      if (hits.length === 0) this.byKind(key, words(i, i + 1), put);
      i += size;
    }
    this.everything(tokens, group, out, put);
    for (const line of out.keys()) this.used.add(line);
    return [...out.values()].sort((a, b) => a.line - b.line);
  }

  private longest(keys: readonly string[], at: number): Phrase[] {
    let hits: Phrase[] = [];
    let size = 0;
    for (const p of this.byFirst.get(keys[at] ?? "") ?? []) {
      if (p.keys.length < size || !p.keys.every((k, j) => keys[at + j] === k)) continue;
      if (p.keys.length > size) hits = [];
      size = p.keys.length;
      hits.push(p);
    }
    // "onion" is the onion of the line called so before it is part of "spring onion"
    const best = Math.max(0, ...hits.map((h) => (h.how === "named" ? h.confidence : 0)));
    return best >= 0.8 ? hits.filter((h) => h.how === "named" && h.confidence >= best - 0.2) : hits;
  }
  /** Several lines of one name: the one in the step's own group is meant, else all are, and none is sure. */
  private shared(h: Phrase, lines: number, here: readonly number[]): number {
    if (lines < 2) return h.confidence;
    if (here.length === 1) return here[0] === h.line ? h.confidence * 0.95 : h.confidence * 0.4;
    return h.confidence * 0.6;
  }
  private sameGroup(line: number, group: string): boolean {
    return (this.lines[line]?.group ?? "").toLowerCase() === group.toLowerCase();
  }
  private byKind(key: string, words: string, put: (use: LineUse) => void): void {
    const lines = this.kinds.get(key) ?? [];
    if (lines.length > 30) return;
    for (const line of lines) put({ line, confidence: lines.length === 1 ? 0.7 : 0.55, how: "kind", words });
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
const round = (v: number): number => Math.round(v * 100) / 100;
