import type { Ingredient } from "../catalogue/index.js";
import { profilesOf } from "../likeness/profiles.js";
import { TASTES, carrierOf, type Taste } from "../dose/index.js";
import type { Swap } from "../types.js";
import type { Ask } from "./ask.js";
import { gainedNotes } from "./gates.js";

type Shift = Swap["shift"][number];
type Uses = readonly { readonly ingredient: Ingredient; readonly grams: number }[];
type Found = Shift & { readonly size: number };
const ADJECTIVE: Readonly<Record<Taste, readonly [more: string, less: string]>> = {
  salt: ["saltier", "less salty"],
  sweetness: ["sweeter", "less sweet"],
  acid: ["sharper", "less sharp"],
  umami: ["more savoury", "less savoury"],
  pungency: ["hotter", "milder"],
  bitter: ["more bitter", "less bitter"],
  fat: ["richer", "leaner"],
  alcohol: ["stronger in alcohol", "weaker in alcohol"],
};
const AXIS: Readonly<Record<Taste, string>> = {
  salt: "salty",
  sweetness: "sweet",
  acid: "sour",
  umami: "umami",
  pungency: "pungent",
  bitter: "bitter",
  fat: "fatty",
  alcohol: "alcohol",
};
const TEXTURE: Readonly<Record<string, readonly [string, string]>> = {
  hardness: ["firmer", "softer"],
  chewiness: ["chewier", "more tender"],
  fracturability: ["crisper", "less crisp"],
  moistness: ["juicier", "drier"],
  viscosity: ["thicker", "thinner"],
  adhesiveness: ["stickier", "less sticky"],
  fattiness: ["richer", "leaner"],
};
/** Jobs in which the thing itself is felt in the mouth; a flour or a spice is not met again in the dish. */
const FELT: readonly string[] = ["coating", "garnish", "enrichment", "liquid"];
/** Of a liquid only how thick it is. */
const POURED: readonly string[] = ["liquid", "enrichment"];
/** Strewn or fried on as it is, so compared as it is, not boiled. */
const AS_IT_IS: readonly string[] = ["coating", "garnish"];
/** Share of the dish from which a colour is seen, and of a mixture from which a part's own taste is. */
const SEEN = 0.08;
const TASTED = 0.2;
/** Levels (0 to 9) from which an aroma is what a thing is known by, and up to which it is hardly there. */
const STRONG = 5;
const KNOWN_BY = 4;
const PLAIN = 3;
const HARDLY = 1;
/** Colours a cook would not tell apart in a dish. */
const ALIKE: readonly (readonly string[])[] = [
  ["white", "cream", "clear", "ivory", "pale yellow", "pale gold"],
  ["yellow", "gold", "golden", "golden yellow", "amber", "pale gold", "pale yellow"],
];
/** Jobs whose colour is seen: an egg's yellow in a meatloaf is not. */
const SHOWN: readonly string[] = ["garnish", "coating", "colour", "enrichment", "liquid"];

const degree = (d: number): 1 | 2 | 3 => (d >= 4 ? 3 : d >= 2 ? 2 : 1);
const QUALIFY = ["", "a little ", "", "much "] as const;
const BLAND: readonly string[] = ["water/pantry", "salt/pantry"];
const wordsOf = (ask: Ask): Readonly<Record<string, string>> =>
  (ask.store.tables["notes"] ?? {}) as Readonly<Record<string, string>>;
/** A note or a family of aroma as a cook says it: "taste of the sea". */
const said = (ask: Ask, note: string): string => wordsOf(ask)[note] ?? `taste of ${note}`;

const smells = new WeakMap<Ask["store"], Map<string, readonly number[]>>();
/** The aromas that a cook calls by the same words as a note. */
function smelt(ask: Ask, note: string): readonly number[] {
  let all = smells.get(ask.store);
  if (all === undefined) smells.set(ask.store, (all = new Map<string, readonly number[]>()));
  let of = all.get(note);
  if (of === undefined) {
    const words = said(ask, note);
    of = profilesOf(ask.store).aromas.flatMap((a, k) => (said(ask, a) === words ? [k] : []));
    all.set(note, of);
  }
  return of;
}

function stepped(axis: string, d: number, words: readonly [string, string]): Found {
  const strength = degree(Math.abs(d));
  return {
    axis,
    direction: d > 0 ? "more" : "less",
    strength,
    text: `${QUALIFY[strength]}${d > 0 ? words[0] : words[1]}`,
    size: Math.abs(d),
  };
}

function tastes(
  before: Readonly<Record<Taste, number>>,
  after: Readonly<Record<Taste, number>>,
  mended: ReadonlySet<string>,
): Found[] {
  return TASTES.flatMap((taste) => {
    const d = after[taste] - before[taste];
    if (Number.isNaN(d) || Math.abs(d) < 0.8 || mended.has(taste)) return [];
    const found = stepped(AXIS[taste], d, ADJECTIVE[taste]);
    return taste === "alcohol" && after.alcohol < 0.5 ? [{ ...found, text: "without the alcohol" }] : [found];
  });
}

/** Texture at the stage it is eaten at: the mean of the parts by weight, where nearly all of it was judged. */
function textures(ask: Ask, telling: Uses, watery: boolean): Found[] {
  const top = ask.roles[0]?.role ?? "main protein";
  const bulk = carrierOf(ask.store, top) === "served weight";
  if ((!bulk && !FELT.includes(top)) || watery) return [];
  const { textures: names, texture } = profilesOf(ask.store);
  const rows = texture[AS_IT_IS.includes(top) ? "raw" : ask.stage];
  const total = telling.reduce((s, u) => s + u.grams, 0);
  const out: Found[] = [];
  names.forEach((name, k) => {
    const words = TEXTURE[name];
    const a = rows[ask.item.index * names.length + k] as number;
    if (!words || a < 0 || (POURED.includes(top) && name !== "viscosity")) return;
    const judged = telling.filter((u) => (rows[u.ingredient.index * names.length + k] as number) >= 0);
    const weight = judged.reduce((s, u) => s + u.grams, 0);
    if (weight < 0.8 * total) return;
    const b =
      judged.reduce((s, u) => s + (rows[u.ingredient.index * names.length + k] as number) * u.grams, 0) / weight;
    if (Math.abs(b - a) >= 2) out.push(stepped(name, b - a, words));
  });
  return out;
}

/** Tastes a cook can name that come or go: notes by themselves, aromas where they are what the thing is known by. */
function notes(ask: Ask, telling: Uses): Found[] {
  const total = telling.reduce((s, u) => s + u.grams, 0);
  const out: Found[] = [];
  const told = new Set<string>();
  const push = (note: string, direction: "more" | "less", strength: 1 | 2, size: number): void => {
    const phrase = said(ask, note);
    if (told.has(phrase)) return;
    told.add(phrase);
    const text = direction === "more" ? `with a ${phrase}` : `without the ${phrase}`;
    out.push({ axis: `note: ${note}`, direction, strength, text, size });
  };
  // Sweet and sour are told as tastes.
  const tasted = (note: string): boolean => note !== "sweet" && note !== "sour" && note !== "bitter";
  const { aromas, aroma } = profilesOf(ask.store);
  const level = (i: Ingredient, k: number): number => aroma[i.index * aromas.length + k] as number;
  /** A note is there when it is named of the food, and also when its aroma of the same words is plain. */
  const smells = (i: Ingredient, note: string): boolean =>
    i.dominant.includes(note) || smelt(ask, note).some((k) => level(i, k) >= PLAIN);
  for (const { ingredient } of telling)
    for (const note of gainedNotes(ask, ingredient))
      if (tasted(note) && !smells(ask.item, note)) push(note, "more", 2, 2.5);
  for (const note of ask.item.dominant)
    if (tasted(note) && !telling.some((u) => smells(u.ingredient, note))) push(note, "less", 1, 1.9);
  const main = telling.filter((u) => u.grams >= TASTED * total);
  let lost = -1;
  let gained = -1;
  const elsewhere = (k: number): boolean =>
    ask.dish.some((l) => level(l.ingredient, k) >= STRONG && l.ingredient.id !== ask.item.id);
  for (let k = 0; k < aromas.length; k++) {
    const had = level(ask.item, k);
    if (had >= KNOWN_BY) {
      if (lost >= 0 && had <= level(ask.item, lost)) continue;
      if (telling.every((u) => level(u.ingredient, k) <= HARDLY) && !elsewhere(k)) lost = k;
    } else if (had <= HARDLY && gained < 0 && main.some((u) => level(u.ingredient, k) >= STRONG) && !elsewhere(k))
      gained = k;
  }
  if (gained >= 0) push(aromas[gained] as string, "more", 1, 1.6);
  if (lost >= 0) push(aromas[lost] as string, "less", 1, 1.7);
  return out;
}

/** The colour of the largest part, where there is enough of it to be seen. */
function colours(ask: Ask, telling: Uses): Found[] {
  const top = ask.roles[0]?.role ?? "main protein";
  const shown = SHOWN.includes(top) || carrierOf(ask.store, top) === "served weight";
  const seen =
    (shown && ask.grams >= SEEN * ask.dishGrams) || ask.roles.some((r) => r.role === "colour" && r.weight >= 0.3);
  const most = telling.reduce((a, b) => (b.grams > a.grams ? b : a), telling[0] as Uses[number]);
  const { colour } = most.ingredient;
  const was = ask.item.colour;
  if (!seen || colour === undefined || was === undefined || colour === was) return [];
  if (ALIKE.some((group) => group.includes(colour) && group.includes(was))) return [];
  return [{ axis: "colour", direction: "more", strength: 1, text: `${colour} rather than ${was}`, size: 1 }];
}

/** What the swap does to the dish in plain words, strongest first, at most five. Salt that a correction mends is left out. */
export function shiftFor(
  ask: Ask,
  uses: Uses,
  before: Readonly<Record<Taste, number>>,
  after: Readonly<Record<Taste, number>>,
  mended: ReadonlySet<string>,
): Shift[] {
  const own = uses.filter((u) => !BLAND.includes(u.ingredient.id));
  const telling = own.length > 0 ? own : uses;
  const wet = uses.filter((u) => u.ingredient.id === "water/pantry").reduce((s, u) => s + u.grams, 0);
  const watery = wet >= 0.3 * uses.reduce((s, u) => s + u.grams, 0);
  const found = [
    ...tastes(before, after, mended),
    ...textures(ask, telling, watery),
    ...notes(ask, telling),
    ...colours(ask, telling),
  ].filter((f, _, all) => f.axis !== "note: alcohol" || !all.some((g) => g.axis === "alcohol"));
  found.sort((a, b) => Math.round((b.size - a.size) * 100) || (a.axis < b.axis ? -1 : a.axis > b.axis ? 1 : 0));
  // "Richer" to taste and richer to bite are one thing to a cook, and "richer" beside "leaner" is none.
  const once = found.filter(
    (f, k) =>
      !(f.axis === "fattiness" || f.axis === "fatty") || found.findIndex((g) => g.axis.startsWith("fatt")) === k,
  );
  return once.slice(0, 5).map(({ size: _size, ...shift }) => shift);
}
