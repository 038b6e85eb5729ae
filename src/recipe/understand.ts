import type { Store } from "../catalogue/index.js";
import type { TechniqueId } from "../types.js";
import { type Kept, keepsIn, usesIn } from "./byproducts.js";
import { durationsIn } from "./duration.js";
import { MAX_STEP, MAX_STEPS_TEXT } from "./limits.js";
import { Links, type LineWords } from "./links.js";
import { temperaturesIn } from "./temperatures.js";
import { hasWord, sentencesOf, tokensOf } from "./text.js";
import type { NotUnderstood, RawText, StepReading, TechniqueUse } from "./types.js";
import { kindOfTime, proceduresIn, techniquesIn } from "./verbs.js";

export interface Understood {
  readonly steps: readonly StepReading[];
  readonly notUnderstood: readonly NotUnderstood[];
}

/** "until soft and add the peas": what is to be done next is no part of the cue. */
const NEXT = new Set(
  "add drain stir pour serve set remove take transfer turn lower reduce cover season mix fold return put leave let lift reserve discard scatter sprinkle then".split(
    " ",
  ),
);
function upToNextVerb(cue: string): string {
  const tokens = tokensOf(cue);
  for (const [i, t] of tokens.entries())
    if ((t.text === "and" || t.text === "then") && NEXT.has(tokens[i + 1]?.text ?? "")) return cue.slice(0, t.start);
  return cue;
}
const CUES = new Set(["until", "till"]);
/** "until golden and crisp": from the word to the end of the clause. */
function cuesIn(sentence: string): string[] {
  const out: string[] = [];
  for (const t of tokensOf(sentence)) {
    if (!CUES.has(t.text)) continue;
    let p = t.end;
    while (
      p < sentence.length &&
      !(
        ",;(".includes(sentence[p] ?? "") ||
        (sentence[p] === "." && sentence[p + 1] !== undefined && sentence[p + 1] !== " " ? false : sentence[p] === ".")
      )
    )
      p++;
    const text = upToNextVerb(sentence.slice(t.start, p)).trim();
    if (out.length < 10 && text.length > t.text.length) out.push(text);
  }
  return out;
}

function merge(into: TechniqueUse[], more: readonly TechniqueUse[]): void {
  for (const t of more) {
    const had = into.findIndex((o) => o.technique === t.technique);
    if (had < 0) into.push(t);
    else if ((into[had]?.confidence ?? 1) < t.confidence) into[had] = t;
  }
}

function readStep(
  links: Links,
  raw: RawText,
  step: number,
  kept: readonly Kept[],
  before: readonly ReadonlySet<string>[],
): StepReading {
  const { text } = raw;
  const all = tokensOf(text);
  const techniques: TechniqueUse[] = [];
  const times: StepReading["times"][number][] = [];
  const temperatures: StepReading["temperatures"][number][] = [];
  const doneness: string[] = [];
  const keeps: { what: string; text: string }[] = [];
  for (const sentence of sentencesOf(text)) {
    const tokens = tokensOf(sentence);
    merge(techniques, techniquesIn(sentence, tokens));
    temperatures.push(...temperaturesIn(sentence));
    doneness.push(...cuesIn(sentence));
    keeps.push(...keepsIn(sentence, tokens).map(({ what, text: said }) => ({ what, text: said })));
    for (const d of durationsIn(sentence))
      times.push({
        minutes: d.high,
        ...(d.high > d.low ? { range: [d.low, d.high] as const } : {}),
        kind: kindOfTime(tokens, d.start, d.high),
        text: sentence.slice(d.start, d.end),
      });
  }
  return {
    step,
    uses: links.read(text, all, raw.group),
    techniques,
    times,
    temperatures,
    doneness,
    procedures: proceduresIn(all),
    keeps,
    usesByProducts: usesIn(all, kept, before).filter((u) => !keeps.some((k) => k.what === u.what)),
  };
}

/** Reads every step against the lines, and tells what it did not understand. */
export function understand(store: Store, lines: readonly LineWords[], steps: readonly RawText[]): Understood {
  const links = new Links(
    store,
    lines,
    steps.some((x) => x.group !== undefined),
  );
  const kept: Kept[] = [];
  const before: ReadonlySet<string>[] = [];
  const notUnderstood: NotUnderstood[] = [];
  let left = MAX_STEPS_TEXT;
  const out = steps.map((raw, i) => {
    const most = Math.min(MAX_STEP, left);
    const text = raw.text.slice(0, most);
    left -= text.length;
    const read = readStep(links, { ...raw, text }, i, kept, before);
    for (const k of read.keeps) kept.push({ step: i, what: k.what, noun: k.what.split(" ").at(-1) ?? "" });
    if (kept.length > 200) kept.length = 200;
    before.push(new Set(tokensOf(text).map((t) => t.text)));
    if (raw.text.length > most)
      notUnderstood.push({
        where: "step",
        at: i,
        text: raw.text.slice(most, most + 200),
        why:
          most === MAX_STEP
            ? `only the first ${MAX_STEP} characters were read`
            : `only the first ${MAX_STEPS_TEXT} characters of the steps were read`,
      });
    else if (empty(read) && hasWord(raw.text))
      notUnderstood.push({
        where: "step",
        at: i,
        text: raw.text.slice(0, 200),
        why: "no line, technique, time or temperature",
      });
    return read;
  });
  if (steps.length > 0)
    lines.forEach((l, i) => {
      if (!links.used.has(i))
        notUnderstood.push({ where: "line", at: i, text: l.text.slice(0, 200), why: "no step names it" });
    });
  return { steps: out, notUnderstood };
}
function empty(r: StepReading): boolean {
  return [r.uses, r.techniques, r.times, r.temperatures, r.doneness, r.procedures].every((a) => a.length === 0);
}

/** Of techniques with as much time, the one that says most of what happens to the food. */
const WEIGHT: readonly TechniqueId[] = [
  "slow cooker",
  "can",
  "braise",
  "stew",
  "bake",
  "roast",
  "deep-fry",
  "grill",
  "stir-fry",
  "steam",
  "simmer",
  "boil",
  "fry",
  "ferment",
  "pickle",
  "cure",
  "set cold",
  "marinate",
  "whip",
  "raw",
];
const COLD: readonly TechniqueId[] = ["marinate", "ferment", "pickle", "cure", "set cold", "whip"];

/**
 * The technique of the whole dish: the one the most cooking minutes belong to; soaking and marinating count only where nothing
 * is cooked. Undefined when no step names one.
 */
export function mainTechnique(steps: readonly StepReading[]): TechniqueId | undefined {
  const minutes = new Map<TechniqueId, number>();
  for (const s of steps) {
    const sure = s.techniques.filter((t) => t.confidence >= 0.7);
    const time = Math.min(
      600,
      s.times.reduce((sum, t) => sum + t.minutes, 0),
    );
    for (const t of sure) minutes.set(t.technique, (minutes.get(t.technique) ?? 0) + time / sure.length);
  }
  const hot = [...minutes].filter(([t]) => !COLD.includes(t));
  const all = hot.length > 0 ? hot : [...minutes];
  return all.sort((a, b) => b[1] - a[1] || WEIGHT.indexOf(a[0]) - WEIGHT.indexOf(b[0]))[0]?.[0];
}
