import type { Ingredient } from "../catalogue/index.js";
import type { Mention } from "./mentions.js";
import type { Token } from "./words.js";

/** What a sentence does to the food that not every food can have done to it, and the kinds or capabilities that can. */
const ONLY: Readonly<Record<string, readonly string[]>> = {
  beat: ["egg", "cream", "dairy fat", "butter", "melts"],
  beaten: ["egg"],
  whisk: ["egg", "cream", "milk", "yogurt", "vinegar", "sauce", "liquid", "condiment", "dissolves", "sweetener"],
  crack: ["egg"],
  // What is done to an egg in its shell or whole; other foods are boiled and peeled in their own way
  boil: ["egg"],
  poach: ["egg"],
  quarter: ["egg"],
  halve: ["egg"],
  sunny: ["egg"],
  runny: ["egg"],
  peel: ["egg", "root vegetable", "allium", "fruit", "crustacean", "fruiting vegetable"],
  separate: ["egg"],
  scramble: ["egg"],
  flake: ["finfish"],
  flakes: ["finfish"],
  flaked: ["finfish"],
  fillet: ["finfish"],
  skin: ["finfish", "poultry"],
  bones: ["finfish", "poultry", "meat"],
  bone: ["finfish", "poultry", "meat"],
  devein: ["crustacean"],
  shell: ["egg", "crustacean", "mollusc"],
  melt: ["melts"],
  melts: ["melts"],
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
/** What may be said of any fat instead. */
const REWORDED: Readonly<Record<string, string>> = { melt: "heat", melted: "", beat: "stir" };
/** How the cook sees that flesh is done; said of other flesh there is a word that fits all. */
const DONE: ReadonlySet<string> = new Set(["flake", "flakes", "opaque", "set"]);
const FLESH: readonly string[] = ["meat", "poultry", "finfish", "crustacean", "mollusc"];
/** What may follow a name without saying whether it is one or many. */
const NEUTRAL: ReadonlySet<string> = new Set(
  (
    "and or with in into to for until over from on onto at then but together well gently under through as by along mixture pieces " +
    "between while when before after if so too again around out up off aside back evenly slowly lightly all cut side down a the"
  ).split(" "),
);
const AGREES: ReadonlySet<string> = new Set("is are was were has have looks look becomes become".split(" "));
const POINTS: ReadonlySet<string> = new Set("they these those this each both every".split(" "));
const TURNED: Readonly<Record<string, string>> = { it: "them", them: "it", its: "their", their: "its" };
const AMOUNT: ReadonlySet<string> = new Set(
  "one two three four five six eight ten dozen g kg oz lb ml l tsp tbsp cup cups teaspoon teaspoons tablespoon tablespoons clove cloves slice slices can tin cans tins".split(
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
  /** What it is called once it has been said in full: without the pinch of salt and the spoon of water. */
  readonly later: string;
  /** Undefined for a word that is both ("porcini"). */
  readonly many: boolean | undefined;
  readonly items: readonly Ingredient[];
  /** Without the pinch of salt that goes with it: what a sentence says must hold for these. */
  readonly main: readonly Ingredient[];
}
export interface Edit {
  readonly start: number;
  readonly end: number;
  readonly text: string;
}
/** Either why the sentence is left as it is, or what else must change in it for the new name to fit. */
export type Verdict = { readonly why: string } | { readonly edits: readonly Edit[] };

/** Said of eggs; what is spooned goes in as it comes. */
const ONE_BY_ONE = " one at a time";

const isNumber = (t: Token | undefined): boolean => t !== undefined && /^[\d½¼¾⅓⅔⅛]/.test(t.text);

/**
 * Whether the new name can stand in the place of a mention.
 * @param others stems of the heads of the other lines: a pronoun after one of them may speak of that
 */
export function fitting(
  sentence: string,
  words: readonly Token[],
  m: Mention,
  old: Ingredient,
  now: NewName,
  others: ReadonlySet<string>,
): Verdict {
  const before = words[m.from - 1];
  const after = words[m.to];
  const two = words[m.from - 2];
  if ("-'’".includes(sentence[m.start - 1] ?? " ") || "-'’".includes(sentence[m.end] ?? " "))
    return { why: "it is part of a longer word" };
  if (before !== undefined && (isNumber(before) || AMOUNT.has(before.text)))
    return { why: "it gives an amount of the old one" };
  const counted = before?.text === "of" ? two : before?.text === "the" && two?.text === "of" ? words[m.from - 3] : two;
  if (counted !== undefined && (before?.text === "of" || two?.text === "of"))
    if (isNumber(counted) || AMOUNT.has(counted.text)) return { why: "it gives an amount of the old one" };
  if (before !== undefined && SINGLE.has(before.text)) return { why: "it speaks of a single one" };
  const joined = after !== undefined && /^\s+$/.test(sentence.slice(m.end, after.start)) ? after : undefined;
  if (joined !== undefined && MADE.has(joined.text)) return { why: "it speaks of what is made of it" };

  const edits: Edit[] = [];
  for (const [at, t] of words.entries()) {
    const needs = Object.hasOwn(ONLY, t.text) ? ONLY[t.text] : undefined;
    if (needs === undefined || (t.start >= m.start && t.start < m.end)) continue;
    // "Beat in": anything can be beaten into a batter
    if (t.text === "beat" && ["in", "into"].includes(words[at + 1]?.text ?? "")) continue;
    const misfit = needs.some((n) => can(old, n)) && !now.main.every((i) => needs.some((n) => can(i, n)));
    // What another food beside it is for is no hindrance
    if (!misfit || words.slice(at + 1, m.from).some((w) => others.has(w.stem))) continue;
    const fix = cue(sentence, words, at, now) ?? reword(sentence, words, at, m, now);
    if (fix === undefined) return { why: `"${t.text}" does not suit ${now.text}` };
    edits.push(fix);
  }
  const each = old.kinds.some((k) => k === "egg" || k === "eggs") && now.main.some((i) => !can(i, "egg"));
  const one = each ? sentence.indexOf(ONE_BY_ONE, m.end) : -1;
  if (one >= 0) edits.push({ start: one, end: one + ONE_BY_ONE.length, text: "" });
  if (now.many === undefined || m.many === undefined || m.many === now.many) return { edits };
  if (
    joined !== undefined &&
    !(one >= 0 && joined.start > one) &&
    !NEUTRAL.has(joined.text) &&
    !joined.text.endsWith("ly")
  )
    return { why: "the grammar would break" };
  if (before !== undefined && (AGREES.has(before.text) || POINTS.has(before.text)))
    return { why: "the grammar would break" };
  for (let i = m.to; i < words.length; i++) {
    const t = words[i] as Token;
    if (others.has(t.stem)) break;
    if (edits.some((e) => t.start >= e.start && t.end <= e.end)) continue;
    if ((AGREES.has(t.text) && words[i - 1]?.text !== "it") || POINTS.has(t.text))
      return { why: "the grammar would break" };
    const turned = Object.hasOwn(TURNED, t.text) ? TURNED[t.text] : undefined;
    if (turned === undefined) continue;
    const next = words[i + 1];
    if (t.text === "it" && next !== undefined && SUBJECT.has(words[i - 1]?.text ?? "")) {
      const verb = unS(next.text);
      if (verb !== undefined && /^\s+$/.test(sentence.slice(t.end, next.start))) {
        edits.push({ start: t.start, end: next.end, text: `they ${verb}` });
        continue;
      }
    }
    const close = next === undefined || sentence.slice(t.end, next.start).trim() !== "";
    const possessive = t.text === "its" || t.text === "their";
    if (!close && !possessive && !NEUTRAL.has(next.text) && !next.text.endsWith("ly"))
      return { why: "the grammar would break" };
    edits.push({ start: t.start, end: t.end, text: turned });
  }
  return { edits };
}

const SUBJECT: ReadonlySet<string> = new Set("as until when if once before after while that".split(" "));
const IRREGULAR: Readonly<Record<string, string>> = { is: "are", has: "have", was: "were", does: "do", goes: "go" };
/** "wilts" as "wilt": the verb as said of more than one. */
function unS(verb: string): string | undefined {
  if (Object.hasOwn(IRREGULAR, verb)) return IRREGULAR[verb];
  if (verb.length < 4 || !verb.endsWith("s") || verb.endsWith("ss") || verb.endsWith("us")) return undefined;
  if (/(?:ch|sh|x|ss|zz)es$/.test(verb)) return verb.slice(0, -2);
  return verb.endsWith("ies") ? `${verb.slice(0, -3)}y` : verb.slice(0, -1);
}

/** "until it flakes" for what does not flake: the whole cue is put another way. */
function cue(sentence: string, words: readonly Token[], at: number, now: NewName): Edit | undefined {
  const t = words[at] as Token;
  if (!DONE.has(t.text)) return undefined;
  let from = at;
  while (from >= 0 && at - from < 6 && words[from]?.text !== "until") from--;
  const start = words[from];
  if (start?.text !== "until" || /[,;:.]/.test(sentence.slice(start.start, t.start))) return undefined;
  const rest = sentence.slice(t.end);
  // Only where the cue ends with the word: what follows it may say more
  const next = words[at + 1];
  if (next !== undefined && /^\s*$/.test(sentence.slice(t.end, next.start)) && !["and", "then"].includes(next.text))
    return undefined;
  if (/^\s+(?:and|then) (?:is|are|the|its|firm|white|tender|easily)\b/.test(rest)) return undefined;
  const flesh = now.items.some((i) => FLESH.some((k) => i.kinds.includes(k)));
  return {
    start: start.start,
    end: t.end,
    text: flesh ? "until cooked through" : t.text === "set" ? "until warm all through" : "until hot all through",
  };
}

/** "Melt the butter" for an oil: "heat". */
function reword(sentence: string, words: readonly Token[], at: number, m: Mention, now: NewName): Edit | undefined {
  const t = words[at] as Token;
  const other = Object.hasOwn(REWORDED, t.text) ? REWORDED[t.text] : undefined;
  if (other === undefined || !now.main.every((i) => can(i, "fat") || can(i, "frying medium"))) return undefined;
  if (at > m.from || m.from - at > 5) return undefined;
  if (other !== "") {
    const upperCase = sentence.charAt(t.start) !== t.text.charAt(0);
    return { start: t.start, end: t.end, text: upperCase ? other.charAt(0).toUpperCase() + other.slice(1) : other };
  }
  return at === m.from - 1 ? { start: t.start, end: m.start, text: "" } : undefined;
}
