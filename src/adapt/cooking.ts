import type { Ingredient } from "../catalogue/index.js";
import { durationsIn } from "../recipe/duration.js";
import { temperaturesIn } from "../recipe/temperatures.js";
import { donenessFor, heatOf } from "../safety/doneness.js";
import { append, here, label, type Draft, type Work } from "./draft.js";
import { mentionsIn } from "./mentions.js";
import { newNameOf, type Naming } from "./rename.js";
import { lower, placeOf, quoted, sentences, stems, tokens, upper } from "./words.js";

type Prep = NonNullable<Naming["stand"]["swap"]>["prep"][number];
/** Words by which a step says that it cooks something. */
const HEAT: ReadonlySet<string> = new Set(
  (
    "cook simmer boil braise stew bake roast grill broil barbecue griddle steam fry saute sear brown poach toss heat reheat sizzle " +
    "sweat soften caramelise caramelize stir-fry wok oven microwave scramble"
  ).split(" "),
);
const FRIED: readonly string[] = ["fry", "saute", "sear", "brown", "sizzle", "cook"];
const SAME: Readonly<Record<string, readonly string[]>> = {
  simmer: ["simmer", "poach", "cook"],
  boil: ["boil", "simmer", "cook"],
  fry: FRIED,
  "stir-fry": ["fry", "toss", "cook"],
  braise: ["braise", "simmer", "cook"],
  stew: ["stew", "simmer", "cook"],
  roast: ["roast", "bake", "cook"],
  bake: ["bake", "roast", "cook"],
  grill: ["grill", "broil", "barbecue", "griddle", "cook"],
  steam: ["steam", "cook"],
};
export const heats = (text: string): boolean => stems(text).some((w) => HEAT.has(w) || HEAT.has(w.replace(/ing$/, "")));
const names = (text: string, n: Naming): boolean => mentionsIn(tokens(text), n.called.names).length > 0;

/** The step the food is cooked in: by this technique, else by any, else the last that names it. */
export function cookedIn(w: Work, n: Naming, technique?: string): Draft | undefined {
  const mine = here(w).filter((d) => d.uses.has(n));
  const words = technique === undefined ? undefined : SAME[technique];
  const by = words && mine.find((d) => stems(d.original ?? "").some((s) => words.includes(s)));
  return by ?? mine.filter((d) => heats(d.original ?? "")).at(-1) ?? mine.at(-1);
}

/** Another line of the recipe is named in the text. */
function othersIn(w: Work, text: string, n: Naming): boolean {
  const words = stems(text);
  return w.lines.named.some((name, i) => i !== n.stand.at && name.length > 0 && placeOf(words, name.slice(-1)) >= 0);
}

/** "Simmer for about 40 minutes instead of 15." put into the step that says how long, or said beside it. */
export function time(w: Work, n: Naming, p: Prep): void {
  const found = /^([\w-]+(?: [\w-]+)?) for about (\d+(?:\.\d+)?) minutes instead of/.exec(p.text);
  if (found === null) return plain(w, n, p);
  const technique = lower(found[1] ?? "");
  const minutes = Number(found[2]);
  const d = cookedIn(w, n, technique);
  const order = `For the ${n.now.text}: ${technique} for about ${found[2] ?? ""} minutes.`;
  if (d === undefined) return;
  const takes = (by: number): unknown => w.timed.set(n.stand.at, (w.timed.get(n.stand.at) ?? 0) + by);
  const inQuotes = quoted(d.original ?? "");
  const said = sentences(d.original ?? "");
  const at = said.findIndex((s) => names(s, n) && durationsIn(s).length > 0);
  const sentence = said[at];
  if (sentence === undefined) {
    const next = nextTime(w, n);
    if (next === undefined)
      append(d, order, `${n.now.text} ${n.now.many === true ? "take a time of their own" : "takes a time of its own"}`);
    else if (minutes >= next.low * 0.8 && minutes <= next.high * 1.25) takes(0);
    else {
      takes(Math.max(0, minutes - next.high));
      const goes = n.now.many === true ? "take" : "takes";
      w.notes.push({
        draft: next.draft,
        text: (step) => `Step ${step} says ${next.text}: ${n.now.text} ${goes} about ${found[2] ?? ""} in all.`,
      });
    }
    return;
  }
  const times = durationsIn(sentence);
  const [one] = times;
  if (one === undefined || times.length > 1 || inQuotes(d.original?.indexOf(sentence) ?? 0)) {
    w.notes.push({ draft: d, text: (step) => `Step ${step} gives other times. ${order}` });
    return;
  }
  if (minutes >= one.low * 0.8 && minutes <= one.high * 1.25) return void takes(0);
  const old = sentence.slice(one.start, one.end);
  const shorter = minutes < one.low;
  if (d.text.split(old).length !== 2 || (shorter && othersIn(w, sentence, n))) {
    w.notes.push({ draft: d, text: (step) => `Step ${step} gives a time for what else is in it. ${order}` });
    return void takes(Math.max(0, minutes - one.high));
  }
  takes(minutes - one.high);
  d.text = d.text.replace(old, () => `${found[2] ?? ""} minutes`);
  d.why.add(`${n.now.text} ${n.now.many === true ? "take" : "takes"} about ${found[2] ?? ""} minutes`);
}

/** The first time said after the food went in, in a sentence that does not name it: for all that is in the pot. */
function nextTime(
  w: Work,
  n: Naming,
): { readonly draft: Draft; readonly text: string; readonly low: number; readonly high: number } | undefined {
  const all = here(w);
  const first = all.findIndex((d) => d.uses.has(n));
  if (first < 0) return undefined;
  for (let i = first; i < all.length; i++) {
    const draft = all[i] as Draft;
    const said = sentences(draft.original ?? "");
    const from = i === first ? said.findIndex((s) => names(s, n)) : 0;
    for (const s of said.slice(Math.max(0, from))) {
      const [time] = durationsIn(s);
      // Longer than an hour or so is rest, not heat, where no word says that it cooks
      if (time !== undefined && heats(s))
        return { draft, text: s.slice(time.start, time.end), low: time.low, high: time.high };
    }
    if (i > first && draft.uses.has(n)) return undefined;
  }
  return undefined;
}

/** Another change of how it is cooked: "Add it for the last 8 minutes only", "It is cooked already: add it near the end". */
export function plain(w: Work, n: Naming, p: Prep): void {
  const d = cookedIn(w, n);
  const text = aboutIt(p.text, n.now.text);
  if (d === undefined) w.notes.push({ text: () => text });
  else append(d, text, `needed with ${label(w, n)}`);
}
/** "Cook it first" of the turkey: "Cook the turkey first". The first "it" only: what follows may speak of other things. */
export function aboutIt(text: string, name: string): string {
  const words = tokens(text);
  const at = words.findIndex((t) => t.text === "it" || t.text === "them");
  const it = words[at];
  const full = /[.!?]$/.test(text) ? text : `${text}.`;
  if (it === undefined || at > 2)
    return words[1]?.text === "the" || words[0]?.text === "the" ? full : `${upper(name)}: ${lower(full)}`;
  if (at > 0) return `${full.slice(0, it.start)}the ${name}${full.slice(it.end)}`;
  const many = / and |s$/.test(name) && words[1]?.text === "is";
  return `The ${name}${many ? full.slice(it.end).replace(" is ", " are ") : full.slice(it.end)}`;
}

/**
 * The safe temperature of flesh that is of another kind than before, or that was no flesh before. True when one was printed or the
 * step's own is high enough.
 */
export function doneness(w: Work, n: Naming): boolean {
  let done = false;
  const before = donenessFor(w.store, n.stand.item);
  for (const item of n.now.items) {
    const now = donenessFor(w.store, item);
    if (now === undefined || now.kind === before?.kind) continue;
    done = true;
    const name = partName(w, n, item);
    const rest = now.rest > 0 ? `, and rest it ${now.rest} minutes` : "";
    const order = `Cook the ${name} ${heatOf(w.store, item)}${rest}.`;
    const d = cookedIn(w, n);
    const stated = here(w).flatMap((x) =>
      x.uses.has(n) ? temperaturesIn(x.text.slice(0, 5000)).filter((t) => t.of === "inside") : [],
    );
    const [own] = stated;
    if (own !== undefined && own.celsius > now.celsius + 1)
      w.notes.push({ text: () => `${order} The ${own.text} the recipe gives was for what it had before.` });
    else if (own !== undefined && own.celsius >= now.celsius - 1) continue;
    else if (d === undefined) w.notes.push({ text: () => order });
    else append(d, order, `${name} is cooked to a temperature of its own`);
  }
  return done;
}
/** Minutes in a pot from which on what cooks in minutes is better kept back. */
const LONG = 30;
const QUICK = 10;
const STEWS: ReadonlySet<string> = new Set("simmer braise stew boil cook".split(" "));
/** Paneer or fish in the place of meat that stews for an hour: it goes in at the end. */
export function keptBack(w: Work, n: Naming): void {
  const soft = n.now.main.filter(
    (i) => i.kinds.includes("cheese") || i.kinds.includes("finfish") || i.kinds.includes("crustacean"),
  );
  if (soft.length === 0 || soft.length < n.now.main.length) return;
  const { item } = n.stand;
  const lasts = item.cannot.has("cooks in minutes") || item.can.has("survives long heat");
  if (!lasts || (n.stand.swap?.prep ?? []).some((p) => p.text.startsWith("Add it for the last"))) return;
  const all = here(w);
  const first = all.findIndex((d) => d.uses.has(n));
  if (first < 0) return;
  const long = all
    .slice(first)
    .filter((d) =>
      sentences(d.original ?? "").some(
        (s) => stems(s).some((t) => STEWS.has(t)) && durationsIn(s).some((t) => t.low >= LONG),
      ),
    )[0];
  if (long === undefined) return;
  append(
    long,
    `Leave the ${n.now.text} out until the pot has ${QUICK} minutes left to go.`,
    `${n.now.text} would fall apart or toughen`,
  );
}
/** What one of several stand-ins is called. */
function partName(w: Work, n: Naming, item: Ingredient): string {
  const own = n.stand.use.find((u) => u.id === item.id);
  return own === undefined ? n.now.text : newNameOf(w.store, { ...n.stand, use: [own] }).text;
}
