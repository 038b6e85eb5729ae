import type { Ingredient } from "../catalogue/index.js";
import { profilesOf } from "../likeness/profiles.js";
import { TASTES, type Taste } from "../dose/index.js";
import type { Swap } from "../types.js";
import type { Ask } from "./ask.js";
import { gainedNotes } from "./gates.js";

type Shift = Swap["shift"][number];
const ADJECTIVE: Readonly<Record<Taste, readonly [more: string, less: string]>> = {
  salt: ["saltier", "less salty"],
  sweetness: ["sweeter", "less sweet"],
  acid: ["sharper", "less sharp"],
  umami: ["more savoury", "less savoury"],
  pungency: ["hotter", "milder"],
  bitter: ["more bitter", "less bitter"],
  fat: ["richer", "leaner"],
  alcohol: ["stronger in alcohol", "without the alcohol"],
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
  fattiness: ["fattier", "leaner to bite"],
};
const degree = (d: number): 1 | 2 | 3 => (d >= 4 ? 3 : d >= 2 ? 2 : 1);
const QUALIFY = ["", "a little ", "", "much "] as const;

/** What the swap does to the dish in plain words, strongest first, at most five. Salt that a correction mends is left out. */
export function shiftFor(
  ask: Ask,
  uses: readonly { ingredient: Ingredient; grams: number }[],
  before: Readonly<Record<Taste, number>>,
  after: Readonly<Record<Taste, number>>,
  mended: ReadonlySet<string>,
): Shift[] {
  const found: (Shift & { readonly size: number })[] = [];
  const push = (axis: string, d: number, words: readonly [string, string]): void => {
    const strength = degree(Math.abs(d));
    found.push({
      axis,
      direction: d > 0 ? "more" : "less",
      strength,
      text: `${QUALIFY[strength]}${d > 0 ? words[0] : words[1]}`,
      size: Math.abs(d),
    });
  };
  for (const taste of TASTES) {
    const d = after[taste] - before[taste];
    if (Number.isNaN(d) || Math.abs(d) < 0.8 || mended.has(taste)) continue;
    push(AXIS[taste], d, ADJECTIVE[taste]);
  }
  const only = uses.length === 1 ? uses[0] : undefined;
  if (only) {
    const { textures, texture } = profilesOf(ask.store);
    const rows = texture[ask.stage];
    textures.forEach((name, k) => {
      const a = rows[ask.item.index * textures.length + k] as number;
      const b = rows[only.ingredient.index * textures.length + k] as number;
      const words = TEXTURE[name];
      if (a < 0 || b < 0 || Math.abs(b - a) < 2 || !words) return;
      push(name, b - a, words);
    });
    for (const note of gainedNotes(ask, only.ingredient))
      found.push({ axis: `note: ${note}`, direction: "more", strength: 2, text: `a note of ${note}`, size: 2.5 });
    for (const note of ask.item.dominant)
      if (!only.ingredient.dominant.includes(note))
        found.push({
          axis: `note: ${note}`,
          direction: "less",
          strength: 1,
          text: `without the ${note} note`,
          size: 1.5,
        });
    const { colour } = only.ingredient;
    if (colour !== undefined && ask.item.colour !== undefined && colour !== ask.item.colour)
      found.push({
        axis: "colour",
        direction: "more",
        strength: 1,
        text: `${colour} rather than ${ask.item.colour}`,
        size: 1,
      });
  }
  found.sort((a, b) => Math.round((b.size - a.size) * 100) || (a.axis < b.axis ? -1 : a.axis > b.axis ? 1 : 0));
  return found.slice(0, 5).map(({ size: _size, ...shift }) => shift);
}
