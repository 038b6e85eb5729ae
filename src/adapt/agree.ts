import type { Ingredient } from "../catalogue/index.js";
import type { Mention } from "./mentions.js";
import type { Token } from "./words.js";

/** What a sentence does to the food that not every food can have done to it, and the kinds or capabilities that can. */
const ONLY: Readonly<Record<string, readonly string[]>> = {
  beat: ["egg", "cream", "dairy fat", "butter"],
  beaten: ["egg"],
  whisk: ["egg", "cream", "milk", "yogurt", "vinegar", "sauce"],
  crack: ["egg"],
  separate: ["egg"],
  scramble: ["egg"],
  flake: ["finfish"],
  flaked: ["finfish"],
  fillet: ["finfish"],
  skin: ["finfish", "poultry"],
  bones: ["finfish", "poultry", "meat"],
  bone: ["finfish", "poultry", "meat"],
  devein: ["crustacean"],
  shell: ["egg", "crustacean", "mollusc"],
  melt: ["melts"],
  melted: ["melts"],
  cream: ["melts"],
  whip: ["foams", "egg"],
  stems: ["leafy green"],
  ribs: ["leafy green"],
  set: ["sets on heating"],
  opaque: ["finfish", "crustacean", "mollusc"],
  knead: ["forms gluten"],
  soak: ["soaks"],
  soaked: ["soaks"],
  desalt: ["soaks"],
  shred: ["meat", "poultry", "finfish", "leaf vegetable", "vegetable", "cheese"],
  tear: ["leafy green", "herb"],
  wilt: ["leafy green", "herb"],
  wilted: ["leafy green", "herb"],
  wilts: ["leafy green", "herb"],
};
/** What may follow a name without saying whether it is one or many. */
const NEUTRAL: ReadonlySet<string> = new Set(
  (
    "and or with in into to for until over from on onto at then but together well gently under through as by along mixture pieces " +
    "between while when before after if so too again around out up off aside back evenly slowly lightly all cut side down"
  ).split(" "),
);
const NUMBERED: ReadonlySet<string> = new Set(
  "is are was were has have them they it its their these those this each both every".split(" "),
);
const AMOUNT: ReadonlySet<string> = new Set(
  "one two three four five six eight ten dozen half quarter g kg oz lb ml l tsp tbsp cup cups teaspoon teaspoons tablespoon tablespoons clove cloves slice slices can tin cans tins".split(
    " ",
  ),
);
const SINGLE: ReadonlySet<string> = new Set(["a", "an", "each", "every", "another", "per"]);
/** Made of the food and no longer it. */
const MADE: ReadonlySet<string> = new Set(
  "wash batter water liquid stock broth sauce white whites yolk yolks shells skins bones juice oil".split(" "),
);

const can = (i: Ingredient, what: string): boolean =>
  i.kinds.includes(what) ||
  i.can.has(what) ||
  i.roles.some((r) => r.role === what && r.weight >= 0.5) ||
  (what === "soaks" && (i.ready?.by ?? []).some((p) => p.startsWith("soak") || p.startsWith("desalt"))) ||
  (what === "egg" && i.kinds.some((k) => k === "egg" || k === "eggs"));

export interface NewName {
  readonly text: string;
  readonly many: boolean;
  readonly items: readonly Ingredient[];
}

/** Why a sentence cannot be edited by putting the new name in the place of a mention; undefined when it can. */
export function unsafe(
  sentence: string,
  words: readonly Token[],
  m: Mention,
  old: Ingredient,
  now: NewName,
): string | undefined {
  const before = words[m.from - 1];
  const after = words[m.to];
  if ("-'’".includes(sentence[m.start - 1] ?? " ") || "-'’".includes(sentence[m.end] ?? " "))
    return "it is part of a longer word";
  if (before !== undefined && (/^[\d½¼¾⅓⅔⅛]/.test(before.text) || AMOUNT.has(before.text) || before.text === "of")) {
    const two = words[m.from - 2];
    const amount = before.text === "of" ? two : before;
    if (amount !== undefined && (/^[\d½¼¾⅓⅔⅛]/.test(amount.text) || AMOUNT.has(amount.text)))
      return "it gives an amount of the old one";
  }
  if (before !== undefined && SINGLE.has(before.text)) return "it speaks of a single one";
  const joined = after !== undefined && /^\s+$/.test(sentence.slice(m.end, after.start)) ? after : undefined;
  if (joined !== undefined && MADE.has(joined.text)) return "it speaks of what is made of it";
  const misfit = words.find((t) => {
    const needs = Object.hasOwn(ONLY, t.text) ? ONLY[t.text] : undefined;
    if (needs === undefined || (t.start >= m.start && t.start < m.end)) return false;
    return needs.some((n) => can(old, n)) && !now.items.every((i) => needs.some((n) => can(i, n)));
  });
  if (misfit !== undefined) return `"${misfit.text}" does not suit ${now.text}`;
  if (m.many !== now.many) {
    if (joined !== undefined && !NEUTRAL.has(joined.text) && !joined.text.endsWith("ly"))
      return "the grammar would break";
    if (words.slice(m.to).some((t) => NUMBERED.has(t.text))) return "the grammar would break";
    if (before !== undefined && NUMBERED.has(before.text)) return "the grammar would break";
  }
  return undefined;
}
