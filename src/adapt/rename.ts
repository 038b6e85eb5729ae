import type { Ingredient, Store } from "../catalogue/index.js";
import { list } from "../swap/sentence.js";
import { plural } from "../swap/plural.js";
import { severalOf } from "./line.js";
import type { Catalogue, Portion, Recipe } from "../types.js";
import { fitting, type Edit, type NewName, type Verdict } from "./agree.js";
import type { Stand } from "./choose.js";
import { CUTS, EITHER, mentionsIn, partOfAnother, sharedWith, type Called, type Mention } from "./mentions.js";
import { placeOf, quoted, singular, stems, tokens, upper } from "./words.js";

const STATE_WORDS: ReadonlySet<string> = new Set(
  "frozen canned tinned fresh dried dry raw cooked fried chopped sliced diced crushed".split(" "),
);
const ONE: ReadonlySet<string> = new Set(["couscous", "molasses", "asparagus", "hummus"]);

/** What the steps call the stand-in: its name without how it is kept. */
export function newNameOf(store: Store, stand: Stand): NewName {
  const names = stand.use.map((u) => {
    const words = u.name.replace(/ ?\([^()]*\)/g, "").split(" ");
    while (words.length > 1 && STATE_WORDS.has((words[0] as string).toLowerCase())) words.shift();
    const name = words.join(" ");
    const counted = u.measure.unit === "piece" && u.measure.amount > 1 && !/[a-z]/i.test(u.measure.text);
    return counted ? plural(name) : severalOf(name, u);
  });
  const last = (names[0] ?? "").split(" ").at(-1)?.toLowerCase() ?? "";
  const many = names.length > 1 || (EITHER.has(last) ? undefined : singular(last) !== last && !ONE.has(last));
  const most = Math.max(...stand.use.map((u) => u.grams));
  // The pot is begun with the water; what goes in off the boil has a sentence of its own
  const pot = stirredInLate(stand) === undefined ? undefined : stand.use.findIndex((u) => u.grams === most);
  if (pot !== undefined)
    return {
      ...newNameOf(store, { ...bareOf(stand), use: [stand.use[pot] as Portion] }),
      items: items(store, stand.use),
    };
  const main = stand.use.filter((u) => u.grams >= most * 0.2);
  // Said in full once; after that the pinch of salt and the spoon of water went in with it
  const trifle = (u: Stand["use"][number]): boolean =>
    u.id.startsWith("salt/") || (u.id.startsWith("water/") && u.grams < most);
  const left = names.filter((_, i) => !trifle(stand.use[i] as Stand["use"][number]));
  const one = left.length === 1 && names.length > 1 ? left[0] : undefined;
  const later = one ?? (left.length === 0 ? list(names) : list(left));
  const tail = one?.split(" ").at(-1)?.toLowerCase() ?? "";
  return {
    text: list(names),
    later,
    many: one === undefined ? many : singular(tail) !== tail && !ONE.has(tail),
    items: items(store, stand.use),
    main: items(store, main),
  };
}

const items = (store: Store, use: Stand["use"]): Ingredient[] => use.flatMap((u) => store.byId.get(u.id) ?? []);
const bareOf = ({ swap: _swap, ...rest }: Stand): Stand => rest;
/** The miso of "miso and water" that is stirred in off the boil; undefined where nothing is said to go in so late. */
export function stirredInLate(stand: Stand): { readonly name: string; readonly how: string } | undefined {
  const note = (stand.swap?.prep ?? []).find((p) => p.procedure === "as noted")?.text ?? "";
  const how = /^Stir in (off the boil|off the heat|at the end)\b/.exec(note)?.[1];
  const [one, ...more] = stand.use.filter((u) => !u.id.startsWith("water/"));
  const water = stand.use.find((u) => u.id.startsWith("water/"));
  if (how === undefined || one === undefined || more.length > 0 || water === undefined) return undefined;
  return water.grams > one.grams ? { name: one.name, how } : undefined;
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

/** The words each line is named by, and of each its last; worked out once for all steps. */
export interface LineNames {
  readonly texts: readonly (readonly string[])[];
  readonly named: readonly (readonly string[])[];
}
export function lineNames(store: Store, recipe: Recipe): LineNames {
  const texts = recipe.lines.map((l) => stems(l.text.slice(0, 500)));
  const named = recipe.lines.map((l, i) => {
    const item = l.read.food && store.byId.get(l.read.food.id);
    const known = item && [store.nameOf(item), ...item.names.map((n) => n.text)].map((n) => stems(n));
    const inLine = known?.filter((n) => placeOf(texts[i] ?? [], n) >= 0).sort((a, b) => b.length - a.length)[0];
    return inLine ?? (item ? stems(store.nameOf(item)) : (texts[i] ?? []));
  });
  return { texts, named };
}
const headsBut = (names: LineNames, at: number): ReadonlySet<string> =>
  new Set(
    names.named.flatMap((n, i) => {
      const last = n.at(-1);
      if (i === at || last === undefined) return [];
      // "the lamb" of a lamb shoulder
      const animal = n.at(-2);
      return CUTS.has(last) && animal !== undefined ? [last, animal] : [last];
    }),
  );

/** One sentence with every old name replaced where that is safe. Each food is settled by itself on the sentence as written. */
export function renameIn(
  c: Catalogue,
  store: Store,
  recipe: Recipe,
  lines: LineNames,
  sentence: string,
  namings: readonly Naming[],
  seen: ReadonlySet<Naming> = new Set(),
): Renamed {
  const words = tokens(sentence);
  const inQuotes = quoted(sentence);
  const edits: Edit[] = [];
  const left: { naming: Naming; mention: string; why: string }[] = [];
  const names: Naming[] = [];
  for (const naming of namings) {
    const { stand, called } = naming;
    const now = seen.has(naming) ? { ...naming.now, text: naming.now.later } : naming.now;
    const all = mentionsIn(words, called.names).filter((m) => !within(lines, stand.at, words, m));
    const whole = all.filter((m) => !partOfAnother(c, store, stand.item, words, m));
    const mine = whole.filter((m) => !inQuotes(m.start));
    const spoken = whole.find((m) => inQuotes(m.start));
    if (spoken !== undefined)
      left.push({ naming, mention: sentence.slice(spoken.start, spoken.end), why: "it is quoted" });
    if (mine.length === 0) continue;
    names.push(naming);
    const open = mine.filter((m) => !stillRight(naming, m));
    const settled: Edit[] = [];
    let why: string | undefined;
    for (const m of open) {
      const verdict = judge(recipe, lines, stand, sentence, words, m, now);
      const mention = sentence.slice(m.start, m.end);
      if ("why" in verdict) {
        why = verdict.why;
        left.push({ naming, mention, why });
        break;
      }
      const starts = mention.charAt(0) !== mention.charAt(0).toLowerCase();
      settled.push({ start: m.start, end: m.end, text: starts ? upper(now.text) : now.text }, ...verdict.edits);
    }
    if (why === undefined) edits.push(...settled);
  }
  // The same word may be mended for two foods; what overlaps otherwise is left to the first
  const kept: Edit[] = [];
  for (const e of edits.sort((a, b) => a.start - b.start || a.end - b.end))
    if (!kept.some((k) => e.start < k.end && e.end > k.start)) kept.push(e);
  let text = sentence;
  for (const e of kept.reverse()) text = text.slice(0, e.start) + e.text + text.slice(e.end);
  return { text, left, names };
}

/** The words are right for the stand-in too: "the tofu" of a firmer tofu. What must be avoided is always named anew. */
function stillRight({ stand, now }: Naming, m: Mention): boolean {
  const words = stems(now.text);
  const same = now.items.every((i) => i.food === stand.item.food && i.part === stand.item.part);
  if (same && placeOf(words, m.words) >= 0) return true;
  if (stand.avoided || now.items.length > 1) return false;
  const place = placeOf(words, m.words);
  if (place >= 0 && place + m.words.length === words.length) return true;
  // "the chicken" of another cut of it
  if (place >= 0 && CUTS.has(words[place + m.words.length] ?? "")) return true;
  return kindHolds(m.words, now.items);
}
/** "the fish" where another fish stands in. */
export function kindHolds(words: readonly string[], items: readonly Ingredient[]): boolean {
  const word = words.join(" ");
  const kind = Object.hasOwn(KIND_OF, word) ? KIND_OF[word] : undefined;
  return kind !== undefined && items.every((i) => i.kinds.includes(kind));
}
const KIND_OF: Readonly<Record<string, string>> = {
  fish: "finfish",
  mushroom: "mushroom",
  cheese: "cheese",
  bean: "common bean",
  pasta: "pasta or noodle",
  noodle: "pasta or noodle",
  meat: "meat",
  nut: "nut",
  stock: "stock",
  oil: "cooking oil",
};

function judge(
  recipe: Recipe,
  lines: LineNames,
  stand: Stand,
  sentence: string,
  words: ReturnType<typeof tokens>,
  m: Mention,
  now: NewName,
): Verdict {
  const other = sharedWith(recipe, lines.named, stand.at, m.words);
  if (other !== undefined) return { why: `it may also mean "${other}"` };
  return fitting(sentence, words, m, stand.item, now, headsBut(lines, stand.at));
}

/** The mention is part of the longer name another line has: "spring onions" when the onion is missing. */
function within(lines: LineNames, at: number, words: ReturnType<typeof tokens>, m: Mention): boolean {
  const all = words.map((w) => w.stem);
  return lines.texts.some((line, i) => {
    if (i === at || line.length === 0) return false;
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
