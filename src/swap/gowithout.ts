import { aromaLikeness, kinLikeness } from "../likeness/index.js";
import type { Swap } from "../types.js";
import type { Ask } from "./ask.js";
import { plural, several } from "./plural.js";

/** Jobs a dish stands without, and what it then lacks. */
const SPARE: Readonly<Record<string, string>> = {
  garnish: "the dish only loses a finish",
  colour: "only the colour suffers",
  herb: "the dish is plainer but sound",
  spice: "the dish is plainer but sound",
  heat: "the dish is milder",
  enrichment: "the dish is less rich",
  "umami seasoning": "the dish has less depth; a little more salt helps",
};
/** Of these, jobs that are one taste or one look: where nothing alike stands in, none is the honest answer beside the rest. */
const ITS_OWN: readonly string[] = ["herb", "spice", "garnish", "colour"];
/** Jobs a dish fails without. */
const VITAL: readonly string[] = [
  "leavener",
  "structure",
  "binder",
  "gelling agent",
  "thickener",
  "foam",
  "starch base",
  "main protein",
];
/** Likeness of aroma, and of kin, from which on a stand-in passes for the missing one. */
const ALIKE = 0.5;
const NEAR = 0.6;
const KIN = 0.85;
const SAME = 0.93;
const LOOSE = 0.4;
const AROMATIC: readonly string[] = ["herb", "spice"];
/** Answers a cook reads before giving up. */
const READ = 3;
/** A swap below this is worth less than leaving it out. */
const CLOSE = 0.62;
/** A recipe's own words for a stand-in that is another thing. */
const OTHER = ["another taste", "another flavour", "its own taste", "different taste"] as const;

/** Whether a swap tastes and smells like the missing thing: by weight, of what is not water or salt. */
function alike(ask: Ask, swap: Swap): boolean {
  if (swap.prep.some((p) => p.procedure === "as noted" && OTHER.some((w) => p.text.toLowerCase().includes(w))))
    return false;
  const parts = swap.use.filter((u) => u.id !== "water/pantry" && u.id !== "salt/pantry");
  const grams = parts.reduce((s, u) => s + u.grams, 0);
  let aroma = 0;
  let kin = 0;
  for (const u of parts) {
    const i = ask.store.byId.get(u.id);
    if (!i) continue;
    // Whoever lacks curry leaves lacks dried ones too: what no shop round the corner has is no comfort.
    if (i.athand === 0 && ask.have?.has(i.id) !== true) return false;
    aroma += (aromaLikeness(ask.store, ask.item, i) * u.grams) / grams;
    kin += (kinLikeness(ask.item, i) * u.grams) / grams;
  }
  // Any crunch will garnish. But two of one kind may smell quite unlike, as leaves do; the same food in another state is itself.
  if (!AROMATIC.includes(ask.roles[0]?.role ?? "")) return aroma >= LOOSE || kin >= LOOSE;
  return kin >= SAME || (aroma >= ALIKE && (kin >= KIN || aroma >= NEAR));
}

/** Its own other form may be as hard to find, but it would be wrong to say that nothing is like it. */
function but(ask: Ask, swaps: readonly Swap[]): string {
  const own = swaps
    .slice(0, READ)
    .flatMap((s) => (s.use.length === 1 ? [s.use[0]] : []))
    .find((u) => ask.store.byId.get(u.id)?.food === ask.item.food);
  return own === undefined ? "Nothing here" : `Apart from ${own.name}, nothing here`;
}

/** When leaving it out is the better answer, the only one, or the honest one beside the rest: what is lost. Undefined when a stand-in is
 * worth the trouble. */
export function goWithoutFor(ask: Ask, swaps: readonly Swap[]): string | undefined {
  const { name: one, measure } = ask.missing;
  const many = measure.amount > 1 && measure.unit === "piece";
  const name = many ? plural(one) : several(one, measure.text);
  const it = name === one && !/[^su]s$/.test(one) ? "it" : "them";
  const best = swaps[0]?.score ?? 0;
  const top = ask.roles[0]?.role;
  const spare = top === undefined ? undefined : SPARE[top];
  if (spare !== undefined && !ask.roles.some((r) => r.weight >= 0.6 && VITAL.includes(r.role))) {
    if (best < CLOSE) return `No stand-in comes close: leave the ${name} out; ${spare}.`;
    if (ITS_OWN.includes(top ?? "") && !swaps.slice(0, READ).some((s) => alike(ask, s)))
      return `${but(ask, swaps)} is quite like ${name}: leaving ${it} out is as good an answer; ${spare}.`;
  }
  if (swaps.length === 0) {
    return top !== undefined && VITAL.includes(top)
      ? `Nothing here stands in for the ${name} as ${top}: cook another dish, or buy it.`
      : `Nothing here stands in for the ${name}: leave ${it} out, and taste before serving.`;
  }
  return undefined;
}
