import type { Ingredient, Store } from "../catalogue/index.js";
import { findInPhrase } from "../names/index.js";
import type { Catalogue, Recipe } from "../types.js";
import { placeOf, singular, stems, tokens, type Token } from "./words.js";

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

/** What a food may be called by its kind, as stems, when nothing else in the recipe is of that kind. */
const KIND_WORDS: readonly (readonly [kind: string, words: readonly string[]])[] = [
  ["finfish", ["fish"]],
  ["mushroom", ["mushroom"]],
  ["cheese", ["cheese"]],
  ["common bean", ["bean"]],
  ["pasta or noodle", ["pasta", "noodle"]],
  ["meat", ["meat"]],
  ["poultry", ["meat", "bird"]],
  ["nut", ["nut"]],
  ["stock", ["stock", "broth"]],
  ["chilli", ["chilli", "chili", "chile"]],
  ["cooking oil", ["oil"]],
  ["sugar", ["sugar"]],
  ["flour", ["flour"]],
  ["crustacean", ["shellfish"]],
];
/** A head noun that makes another thing of the word before it: "fish sauce" is no fish. */
const OTHER_THING: ReadonlySet<string> = new Set(
  "sauce paste oil stock broth milk juice powder vinegar cream butter flour sugar cheese syrup zest leaf seed".split(
    " ",
  ),
);

/** Words for a part of an animal or plant, after its name. */
export const CUTS: ReadonlySet<string> = new Set(
  (
    "breast thigh leg drumstick wing fillet filet loin tenderloin steak chop shoulder mince cutlet belly rib shank neck rump cheek tail " +
    "leaf stalk stem floret kernel"
  ).split(" "),
);
const UNITS: ReadonlySet<string> = new Set("stalk can tin head bunch clove stick slice piece sprig".split(" "));
const SMALL: ReadonlySet<string> = new Set(
  "the a an and or with in of to for on into over until from it is as at half some all".split(" "),
);

/** How a line's food may be called: as the line has it, its other names, and its last word. */
export function calledOf(
  store: Store,
  item: Ingredient,
  text: string,
  others: readonly (Ingredient | undefined)[] = [],
): Called {
  const line = stems(text.slice(0, 500));
  const known = [store.nameOf(item), ...item.names.map((n) => n.text)].map((n) => stems(n)).filter((n) => n.length > 0);
  const inLine = known.filter((n) => placeOf(line, n) >= 0).sort((a, b) => b.length - a.length);
  let asNamed = inLine[0] ?? known[0] ?? [];
  while (asNamed.length > 1 && UNITS.has(asNamed[0] ?? "")) asNamed = asNamed.slice(1);
  const head = asNamed.at(-1);
  const kinds = KIND_WORDS.filter(
    ([k]) => others.length > 0 && item.kinds.includes(k) && !others.some((o) => o?.kinds.includes(k) === true),
  ).flatMap(([, words]) => words.map((w) => [w]));
  // "the curry paste" of a red curry paste
  const shorter = asNamed.length > 2 ? asNamed.slice(1, -1).map((_, i) => asNamed.slice(i + 1)) : [];
  // "the chicken" of a chicken breast
  const whole = asNamed.length > 1 && CUTS.has(head ?? "") ? [asNamed.slice(0, -1), asNamed.slice(-2, -1)] : [];
  const all = [
    ...known,
    ...shorter,
    ...whole,
    ...(head !== undefined && head.length > 2 ? [[head]] : []),
    ...kinds,
  ].filter((n) => !(n.length === 1 && TOO_PLAIN.has(n[0] as string)));
  const once = new Map(all.map((n) => [n.join(" "), n]));
  const names = [...once.values()].sort(
    (a, b) => b.length - a.length || (a.join(" ") < b.join(" ") ? -1 : a.join(" ") > b.join(" ") ? 1 : 0),
  );
  return { names, asNamed };
}

/** One and many alike. */
export const EITHER: ReadonlySet<string> = new Set(["porcini", "fish", "shrimp", "squid", "fungi", "chilies"]);
/** No sentence a cook writes names one food more often. */
const MAX_MENTIONS = 30;

export interface Mention {
  readonly start: number;
  readonly end: number;
  readonly from: number;
  readonly to: number;
  readonly words: readonly string[];
  /** The last word is of more than one; undefined for a word that is both. */
  readonly many: boolean | undefined;
}
/** Where a sentence names the food: longest names first, whole words only, none inside another. */
export function mentionsIn(sentence: readonly Token[], names: readonly (readonly string[])[]): readonly Mention[] {
  const all = sentence.map((t) => t.stem);
  const out: Mention[] = [];
  for (const name of names) {
    for (let i = placeOf(all, name); i >= 0 && out.length < MAX_MENTIONS; i = placeOf(all, name, i + 1)) {
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
        many: EITHER.has(last.stem) ? undefined : last.text !== singular(last.text),
      });
    }
  }
  return out.sort((a, b) => a.start - b.start);
}

/** The food's name as the line writes it. */
export function saidIn(text: string, asNamed: readonly string[]): string {
  const line = text.slice(0, 500);
  const words = tokens(line);
  const at = placeOf(
    words.map((t) => t.stem),
    asNamed,
  );
  const [first, last] = [words[at], words[at + asNamed.length - 1]];
  return at < 0 || first === undefined || last === undefined ? asNamed.join(" ") : line.slice(first.start, last.end);
}

/** Another line that the same words may mean: the text of it, or undefined. `names` has the words each line is named by. */
export function sharedWith(
  recipe: Recipe,
  names: readonly (readonly string[])[],
  index: number,
  words: readonly string[],
): string | undefined {
  const at = names.findIndex((other, i) => {
    if (i === index) return false;
    const place = placeOf(other, words);
    if (place < 0) return false;
    const next = other[place + words.length];
    return next === undefined || !OTHER_THING.has(next);
  });
  return at < 0 ? undefined : recipe.lines[at]?.text.slice(0, 200);
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
    const found = findInPhrase(c, words.join(" "))?.match;
    if (found === undefined || found.confidence < 0.95) return false;
    // Words that were let go to find it are no part of a name
    if (stems(found.matched).length < words.length) return false;
    const other = store.byId.get(found.id);
    // Names with a describing word let go are still the same food
    return other !== undefined && (other.food !== item.food || other.part !== item.part);
  });
}
