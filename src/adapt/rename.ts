import type { Store } from "../catalogue/index.js";
import { list } from "../swap/sentence.js";
import { plural } from "../swap/plural.js";
import type { Catalogue, Recipe } from "../types.js";
import { unsafe, type NewName } from "./agree.js";
import type { Stand } from "./choose.js";
import { mentionsIn, partOfAnother, sharedWith, type Called, type Mention } from "./mentions.js";
import { placeOf, quoted, stem, stems, tokens, upper } from "./words.js";

const STATE_WORDS: ReadonlySet<string> = new Set(["frozen", "canned", "tinned", "fresh", "dried", "dry", "raw"]);
const ONE: ReadonlySet<string> = new Set(["couscous", "molasses", "asparagus", "hummus"]);

/** What the steps call the stand-in: its name without how it is kept. */
export function newNameOf(store: Store, stand: Stand): NewName {
  const names = stand.use.map((u) => {
    const words = u.name.replace(/ ?\([^()]*\)/g, "").split(" ");
    while (words.length > 1 && STATE_WORDS.has((words[0] as string).toLowerCase())) words.shift();
    const name = words.join(" ");
    return u.measure.unit === "piece" && u.measure.amount > 1 && !/[a-z]/i.test(u.measure.text) ? plural(name) : name;
  });
  const last = (names[0] ?? "").split(" ").at(-1)?.toLowerCase() ?? "";
  const many = names.length > 1 || (stem(last) !== last && !ONE.has(last));
  return { text: list(names), many, items: stand.use.flatMap((u) => store.byId.get(u.id) ?? []) };
}

export interface Naming {
  readonly stand: Stand;
  readonly called: Called;
  readonly now: NewName;
}
export interface Renamed {
  readonly text: string;
  /** Namings whose words could not be put in, and why. */
  readonly left: readonly { readonly naming: Naming; readonly mention: string; readonly why: string }[];
  /** Namings whose food this sentence names, edited or not. */
  readonly names: readonly Naming[];
}

/** One sentence with every old name replaced where that is safe. Each food is settled by itself on the sentence as written. */
export function renameIn(
  c: Catalogue,
  store: Store,
  recipe: Recipe,
  sentence: string,
  namings: readonly Naming[],
): Renamed {
  const words = tokens(sentence);
  const inQuotes = quoted(sentence);
  const edits: { start: number; end: number; text: string }[] = [];
  const left: { naming: Naming; mention: string; why: string }[] = [];
  const names: Naming[] = [];
  for (const naming of namings) {
    const { stand, called, now } = naming;
    const own = mentionsIn(words, called.names).filter(
      (m) => !inQuotes(m.start) && !within(recipe, stand.at, words, m),
    );
    const mine = own.filter((m) => !partOfAnother(c, store, stand.item, words, m));
    if (mine.length === 0) continue;
    names.push(naming);
    const same = now.items.every((i) => i.food === stand.item.food && i.part === stand.item.part);
    const nowWords = stems(now.text);
    const open = mine.filter((m) => !(same && placeOf(nowWords, m.words) >= 0));
    const first = open
      .map((m) => ({ m, why: reason(recipe, stand, sentence, words, m, now) }))
      .find((r) => r.why !== undefined);
    if (first?.why !== undefined)
      left.push({ naming, mention: sentence.slice(first.m.start, first.m.end), why: first.why });
    else
      for (const m of open) {
        const old = sentence.slice(m.start, m.end);
        const starts = old.charAt(0) !== old.charAt(0).toLowerCase();
        edits.push({ start: m.start, end: m.end, text: starts ? upper(now.text) : now.text });
      }
  }
  edits.sort((a, b) => b.start - a.start);
  let text = sentence;
  for (const e of edits) text = text.slice(0, e.start) + e.text + text.slice(e.end);
  return { text, left, names };
}

function reason(
  recipe: Recipe,
  stand: Stand,
  sentence: string,
  words: ReturnType<typeof tokens>,
  m: Mention,
  now: NewName,
): string | undefined {
  const other = sharedWith(recipe, stand.at, m.words);
  if (other !== undefined) return `it may also mean "${other}"`;
  return unsafe(sentence, words, m, stand.item, now);
}

/** The mention is part of the longer name another line has: "spring onions" when the onion is missing. */
function within(recipe: Recipe, at: number, words: ReturnType<typeof tokens>, m: Mention): boolean {
  const all = words.map((w) => w.stem);
  return recipe.lines.some((l, i) => {
    if (i === at || l.read.food === undefined) return false;
    const line = stems(l.text);
    for (const [from, to] of [
      [m.from - 1, m.to],
      [m.from, m.to + 1],
    ] as const) {
      if (from < 0 || to > all.length) continue;
      const phrase = all.slice(from, to);
      if (["the", "and", "or", "with", "a", "of"].some((w) => phrase.includes(w))) continue;
      if (placeOf(line, phrase) >= 0) return true;
    }
    return false;
  });
}
