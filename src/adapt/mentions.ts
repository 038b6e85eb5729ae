import type { Ingredient, Store } from "../catalogue/index.js";
import { findFood } from "../names/index.js";
import type { Catalogue, Recipe } from "../types.js";
import { placeOf, stem, stems, type Token } from "./words.js";

/** The words a step may call the food of a line by. */
export interface Called {
  /** As stems, longest first. */
  readonly names: readonly (readonly string[])[];
  /** The words of the line that name the food. */
  readonly asNamed: readonly string[];
}
const TOO_PLAIN: ReadonlySet<string> = new Set(
  "sauce paste powder juice water mixture seed spice fillet leaf piece slice clove head stalk stem whole fresh dried ground can tin large small mixed red green white black".split(
    " ",
  ),
);

const SMALL: ReadonlySet<string> = new Set(
  "the a an and or with in of to for on into over until from it is as at half some all".split(" "),
);

/** How a line's food may be called: as the line has it, its other names, and its last word. */
export function calledOf(store: Store, item: Ingredient, text: string): Called {
  const line = stems(text);
  const known = [store.nameOf(item), ...item.names.map((n) => n.text)].map((n) => stems(n)).filter((n) => n.length > 0);
  const inLine = known.filter((n) => placeOf(line, n) >= 0).sort((a, b) => b.length - a.length);
  const asNamed = inLine[0] ?? known[0] ?? [];
  const head = asNamed.at(-1);
  const all = [...known, ...(head !== undefined && head.length > 2 ? [[head]] : [])].filter(
    (n) => !(n.length === 1 && TOO_PLAIN.has(n[0] as string)),
  );
  const once = new Map(all.map((n) => [n.join(" "), n]));
  const names = [...once.values()].sort(
    (a, b) => b.length - a.length || (a.join(" ") < b.join(" ") ? -1 : a.join(" ") > b.join(" ") ? 1 : 0),
  );
  return { names, asNamed };
}

export interface Mention {
  readonly start: number;
  readonly end: number;
  readonly from: number;
  readonly to: number;
  readonly words: readonly string[];
  /** The last word is of more than one. */
  readonly many: boolean;
}
/** Where a sentence names the food: longest names first, whole words only, none inside another. */
export function mentionsIn(sentence: readonly Token[], names: readonly (readonly string[])[]): readonly Mention[] {
  const all = sentence.map((t) => t.stem);
  const out: Mention[] = [];
  for (const name of names) {
    for (let i = placeOf(all, name); i >= 0; i = placeOf(all, name, i + 1)) {
      const to = i + name.length;
      if (out.some((m) => i < m.to && to > m.from)) continue;
      const first = sentence[i] as Token;
      const last = sentence[to - 1] as Token;
      out.push({
        start: first.start,
        end: last.end,
        from: i,
        to,
        words: name,
        many: last.text !== last.stem || (last.text.endsWith("s") && stem(last.text) !== last.text),
      });
    }
  }
  return out.sort((a, b) => a.start - b.start);
}

/** Another line that the same words may mean: the text of it, or undefined. */
export function sharedWith(recipe: Recipe, index: number, words: readonly string[]): string | undefined {
  return recipe.lines.find((l, i) => i !== index && placeOf(stems(l.text), words) >= 0)?.text;
}

/** With the word before or after it the mention is the name of something else: "coconut milk" is no milk. */
export function partOfAnother(
  c: Catalogue,
  store: Store,
  item: Ingredient,
  sentence: readonly Token[],
  m: Mention,
): boolean {
  const before = sentence[m.from - 1];
  const after = sentence[m.to];
  const own = sentence.slice(m.from, m.to).map((t) => t.text);
  const near = (a: Token | undefined, b: Token | undefined): boolean =>
    a !== undefined && b !== undefined && b.start - a.end === 1;
  const tries = [
    near(before, sentence[m.from]) ? [before?.text, ...own] : undefined,
    near(sentence[m.to - 1], after) ? [...own, after?.text] : undefined,
  ];
  return tries.some((words) => {
    if (words === undefined) return false;
    if (words.some((w) => w !== undefined && SMALL.has(w))) return false;
    const found = findFood(c, words.join(" "), { limit: 1 })[0];
    if (found === undefined || found.confidence < 0.95) return false;
    // Words that were let go to find it are no part of a name
    if (stems(found.matched).length < words.length) return false;
    const other = store.byId.get(found.id);
    // Names with a describing word let go are still the same food
    return other !== undefined && (other.food !== item.food || other.part !== item.part);
  });
}
