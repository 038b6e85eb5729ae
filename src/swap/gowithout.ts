import { aromaLikeness, kinLikeness } from "../likeness/index.js";
import { neverWithout } from "../safety/index.js";
import type { Swap } from "../types.js";
import type { Ask } from "./ask.js";
import { plural, several } from "./plural.js";

/** Jobs a dish stands without, and what it then lacks. */
const SPARE: Readonly<Record<string, string>> = {
  garnish: "the dish only loses a finish",
  colour: "only the colour suffers",
  herb: "the dish is plainer but sound",
  spice: "the dish is plainer but sound",
  aromatic: "the dish is plainer but sound",
  heat: "the dish is milder",
  enrichment: "the dish is less rich",
  "umami seasoning": "the dish has less depth; a little more salt helps",
};
/** In a pot fat carries taste and holds nothing up: a batter or a crust is another matter. */
const SPARE_IN_A_POT: Readonly<Record<string, string>> = { ...SPARE, fat: "the dish is less rich" };
const POT: readonly string[] = ["boil", "simmer", "braise", "stew", "slow cooker"];
/** Of these, jobs that are one taste or one look: where nothing alike stands in, none is the honest answer beside the rest. */
const ITS_OWN: readonly string[] = ["herb", "spice", "aromatic", "fat", "garnish", "colour"];
/** What is only looked at. */
const LOOKS: readonly string[] = ["garnish", "colour"];
/** Share of what is asked of it from which on that is what it is there for. */
const MOSTLY = 2 / 3;
/** A fifth of the dish is no accent: the dish is made of it. */
const ACCENT = 0.2;
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
const AROMATIC: readonly string[] = ["herb", "spice", "aromatic"];
/** Answers a cook reads before giving up. */
const READ = 3;
/** A swap below this is worth less than leaving it out. */
const CLOSE = 0.62;
/** A recipe's own words for a stand-in that is another thing. */
const OTHER = ["another taste", "another flavour", "its own taste", "different taste"] as const;

/** The jobs that count in this dish: nothing stays crisp in a pot. */
function jobsOf(ask: Ask): Ask["roles"] {
  const left = inAPot(ask) ? ask.roles.filter((r) => r.role !== "crunchy stem") : ask.roles;
  return left.length > 0 ? left : ask.roles;
}
const inAPot = (ask: Ask): boolean => ask.technique !== undefined && POT.includes(ask.technique);
/** How much of what is asked is asked for these jobs, each weighed as the score weighs it. */
function shareOf(jobs: Ask["roles"], of: (role: string) => boolean): number {
  const counts = (some: Ask["roles"]): number => some.reduce((sum, r) => sum + r.weight * r.weight, 0);
  return counts(jobs.filter((r) => of(r.role))) / counts(jobs);
}

/** Only looked at: asked for as a finish and for nothing else. */
const isLooks = (jobs: Ask["roles"]): boolean => jobs.every((r) => LOOKS.includes(r.role));

/** Whether a swap tastes and smells like the missing thing: by weight, of what is not water or salt. */
function alike(ask: Ask, swap: Swap, jobs: Ask["roles"]): boolean {
  if (swap.score < CLOSE) return false;
  if (swap.prep.some((p) => p.procedure === "as noted" && OTHER.some((w) => p.text.toLowerCase().includes(w))))
    return false;
  const looks = isLooks(jobs);
  const parts = swap.use.filter((u) => u.id !== "water/pantry" && u.id !== "salt/pantry");
  const grams = parts.reduce((s, u) => s + u.grams, 0);
  let aroma = 0;
  let kin = 0;
  for (const u of parts) {
    const i = ask.store.byId.get(u.id);
    if (!i) continue;
    // Whoever lacks curry leaves lacks dried ones too: what no shop round the corner has is no comfort. And nobody goes out for a finish,
    // unless for nearly the same.
    const close = kinLikeness(ask.item, i);
    if (ask.have?.has(i.id) !== true && i.athand < (looks && close < KIN ? 2 : 1)) return false;
    aroma += (aromaLikeness(ask.store, ask.item, i) * u.grams) / grams;
    kin += (close * u.grams) / grams;
  }
  // Any crunch will garnish. But two of one kind may smell quite unlike, as leaves do; the same food in another state is itself.
  if (!AROMATIC.includes(jobs[0]?.role ?? "")) return aroma >= LOOSE || kin >= LOOSE;
  if (kin >= SAME || aroma >= SAME) return true;
  // What people name a thing by has to be there: without its rose no one takes it for rose water.
  const named = ask.item.dominant.filter((n) => n !== "sweet" && n !== "sour");
  if (named.some((n) => !parts.some((u) => ask.store.byId.get(u.id)?.dominant.includes(n)))) return false;
  return aroma >= ALIKE && (kin >= KIN || aroma >= NEAR);
}

/** Its own other form may be as hard to find, but it would be wrong to say that nothing is like it. */
function but(ask: Ask, swaps: readonly Swap[]): string {
  const own = swaps
    .slice(0, READ)
    .flatMap((s) => (s.use.length === 1 ? [s.use[0]] : []))
    .find((u) => ask.store.byId.get(u.id)?.food === ask.item.food);
  return own === undefined ? "Nothing here" : `Apart from ${own.name}, nothing here`;
}

/** Why it may not be left out, where it keeps harm out; undefined when nobody is hurt without it. */
export function mustStay(ask: Ask): string | undefined {
  const why = neverWithout(ask.store, {
    missing: ask.item,
    ...(ask.technique === undefined ? {} : { technique: ask.technique }),
    ...(ask.roles[0] ? { role: ask.roles[0].role } : {}),
    ...(ask.setting === "" ? {} : { context: ask.setting }),
  });
  return why && `Do not leave the ${several(ask.missing.name, ask.missing.measure.text)} out. ${why}`;
}

/** When leaving it out is the better answer, the only one, or the honest one beside the rest: what is lost. Undefined when a stand-in is
 * worth the trouble. */
export function goWithoutFor(ask: Ask, swaps: readonly Swap[]): string | undefined {
  const { name: one, measure } = ask.missing;
  const many = measure.amount > 1 && measure.unit === "piece";
  const name = many ? plural(one) : several(one, measure.text);
  const it = name === one && !/[^su]s$/.test(one) ? "it" : "them";
  const best = swaps[0]?.score ?? 0;
  const jobs = jobsOf(ask);
  const top = jobs[0]?.role;
  const lost = inAPot(ask) ? SPARE_IN_A_POT : SPARE;
  const spare = top === undefined ? undefined : lost[top];
  const accent = !ask.dishKnown || ask.grams < ACCENT * ask.dishGrams;
  if (spare !== undefined && accent && !jobs.some((r) => r.weight >= 0.6 && VITAL.includes(r.role))) {
    if (best < CLOSE) return `No stand-in comes close: leave the ${name} out; ${spare}.`;
    const own = ITS_OWN.includes(top ?? "") && shareOf(jobs, (r) => lost[r] !== undefined) >= MOSTLY;
    if (own && !swaps.slice(0, READ).some((s) => alike(ask, s, jobs))) {
      if (swaps.length > 0 && isLooks(jobs))
        return `Nobody goes out for a finish: leaving the ${name} off is as good an answer; ${spare}.`;
      return `${but(ask, swaps)} is quite like ${name}: leaving ${it} out is as good an answer; ${spare}.`;
    }
  }
  if (swaps.length === 0) {
    if (!accent)
      return `Nothing here stands in for the ${name}, and the dish is made of ${it}: cook another dish, or buy ${it}.`;
    return top !== undefined && VITAL.includes(top)
      ? `Nothing here stands in for the ${name} as ${top}: cook another dish, or buy it.`
      : `Nothing here stands in for the ${name}: leave ${it} out, and taste before serving.`;
  }
  return undefined;
}
