import type { Store } from "../catalogue/index.js";
import { durationsIn } from "../recipe/duration.js";
import { donenessFor } from "../safety/doneness.js";
import type { AvoidRules } from "../safety/index.js";
import type { Catalogue, Change, Recipe } from "../types.js";
import type { Stand } from "./choose.js";
import { aboutIt, doneness, keptBack, plain, time } from "./cooking.js";
import { readyFirst, stirIn } from "./noted.js";
import { append, end, here, label, settled, type Draft, type Work } from "./draft.js";
import { replaceLiquid, type NewLine } from "./liquid.js";
import { calledOf } from "./mentions.js";
import { lineNames, newNameOf, renameIn, stirredInLate, type Naming } from "./rename.js";
import { doesProcedure, goesOn, onlyCooks, onlyDoes, pointsBack, turnedTo } from "./skip.js";
import { lower, MAX_STEP, sentences, upper } from "./words.js";

export interface Steps {
  readonly steps: readonly { readonly text: string; readonly group?: string }[];
  readonly changes: readonly Change[];
  readonly notes: readonly string[];
  /** "at" of a stand and procedure, for those whose step was found. */
  readonly skipped: ReadonlySet<string>;
  /** Minutes the steps' own cooking times changed by, by the "at" of a stand. */
  readonly timed: ReadonlyMap<number, number>;
  /** Lines the replaced liquids need. */
  readonly added: readonly NewLine[];
}
type Prep = NonNullable<Stand["swap"]>["prep"][number];
const preps = (n: Naming): readonly Prep[] => n.stand.swap?.prep ?? [];
/** Characters of all steps that are edited; what comes after is left with a note. */
const MAX_TEXT = 200_000;
const COOKED = "It is cooked already";

/** Names, skips, additions, times and temperatures written into the steps; what cannot be written in safely becomes a note. */
export function adaptSteps(
  c: Catalogue,
  store: Store,
  recipe: Recipe,
  stands: readonly Stand[],
  rules: AvoidRules,
  factor: number,
): Steps {
  const items = recipe.lines.map((l) => l.read.food && store.byId.get(l.read.food.id));
  const w: Work = {
    c,
    store,
    recipe,
    lines: lineNames(store, recipe),
    namings: stands.map((stand) => ({
      stand,
      called: calledOf(
        store,
        stand.item,
        recipe.lines[stand.at]?.text ?? "",
        items.filter((_, i) => i !== stand.at),
      ),
      now: newNameOf(store, stand),
    })),
    drafts: recipe.steps.map((s, i) => ({
      text: s.text,
      original: s.text,
      was: i + 1,
      ...(s.group === undefined ? {} : { group: s.group }),
      why: new Set<string>(),
      uses: new Set<Naming>(),
      gone: false,
    })),
    notes: [],
    said: new Set(),
    left: new Set(),
    skipped: new Set(),
    timed: new Map(),
  };
  const gone = new Map<string, string[]>();
  const added: NewLine[] = [];
  if (w.namings.length > 0) {
    let budget = MAX_TEXT;
    for (const d of w.drafts) {
      budget -= d.text.length;
      if (d.text.length > MAX_STEP || budget < 0) {
        const all = w.namings.map((n) => label(w, n)).join(", ");
        w.notes.push({ draft: d, text: (step) => `Step ${step} is too long to edit: read it with ${all} in mind.` });
        continue;
      }
      skipIn(w, d, gone);
      if (!d.gone) renameAll(w, d);
    }
    for (const n of w.namings)
      for (const p of preps(n)) {
        const procedure = store.procedures.get(p.procedure);
        if (p.kind !== "skip" || procedure === undefined) continue;
        added.push(...replaceLiquid(w, n, procedure, gone.get(`${n.stand.at} ${p.procedure}`) ?? [], rules, factor));
      }
    for (const n of w.namings) addSteps(w, n);
    for (const n of w.namings) for (const p of preps(n)) write(w, n, p);
    for (const n of w.namings) {
      const heated = doneness(w, n);
      for (const p of preps(n)) if (p.procedure === "as noted") noted(w, n, p, heated);
      keptBack(w, n);
    }
  }
  return { ...settled(w), skipped: w.skipped, timed: w.timed, added };
}

function skipIn(w: Work, d: Draft, gone: Map<string, string[]>): void {
  const parts = [...sentences(d.text)];
  const out = new Map<number, { n: Naming; p: Prep }>();
  for (const n of w.namings)
    for (const p of preps(n)) {
      // What is cooked already needs no boiling of its own, where a later step uses it again
      const boils = p.kind === "change" && p.procedure === "cook" && p.text.startsWith(COOKED);
      if (p.kind !== "skip" && !boils) continue;
      parts.forEach((s, i) => {
        const only = boils
          ? onlyCooks(w.recipe, w.lines, s, n, d.was ?? 0)
          : onlyDoes(w.store, w.lines, s, n, p.procedure);
        if (only) out.set(i, { n, p });
        else if (out.has(i - 1) && !out.has(i) && goesOn(s)) out.set(i, out.get(i - 1) as { n: Naming; p: Prep });
        else if (!boils && !out.has(i) && doesProcedure(w.store, s, n, p.procedure)) {
          const text = `${lower(end(p.text))} (${label(w, n)})`;
          w.notes.push({ draft: d, text: (step) => `Step ${step}: ${text}` });
        }
      });
    }
  if (out.size === 0) return;
  const [first] = out.values();
  if (first === undefined) return;
  const at = parts.findIndex((s, i) => out.has(i - 1) && !out.has(i) && pointsBack(s));
  if (at >= 0) {
    const turned = turnedTo(parts[at] ?? "", first.n.now.text);
    if (turned === undefined) {
      w.notes.push({
        draft: d,
        text: (step) =>
          `Step ${step}: ${lower(end(first.p.text))} The rest of the step stands, with ${first.n.now.text}.`,
      });
      return;
    }
    parts[at] = turned;
    d.uses.add(first.n);
  }
  for (const [i, { n, p }] of out) {
    const key = `${n.stand.at} ${p.procedure}`;
    w.skipped.add(key);
    gone.set(key, [...(gone.get(key) ?? []), parts[i] ?? ""]);
    // Boiling that is no longer done: its own time is saved, not the catalogue's
    if (p.kind === "change") {
      const spans = durationsIn(parts[i] ?? "").reduce((sum, t) => sum + t.high, 0);
      w.timed.set(n.stand.at, (w.timed.get(n.stand.at) ?? 0) - spans);
    }
    d.why.add(`not needed with ${label(w, n)}`);
  }
  d.text = parts
    .filter((_, i) => !out.has(i))
    .join("")
    .trim();
  d.gone = d.text === "";
}

function renameAll(w: Work, d: Draft): void {
  let text = "";
  const left = new Set<string>();
  const kept = new Map<Naming, string>();
  for (const s of sentences(d.text)) {
    const r = renameIn(w.c, w.store, w.recipe, w.lines, s, w.namings, w.said);
    text += r.text;
    for (const n of r.names) {
      d.uses.add(n);
      if (r.text !== s && !r.left.some((l) => l.naming === n)) w.said.add(n);
    }
    if (r.text !== s) for (const n of r.names) if (!r.left.some((l) => l.naming === n)) d.why.add(label(w, n));
    for (const l of r.left) {
      w.left.add(l.naming);
      const now = l.naming.now.text;
      const key = `${l.naming.stand.at} ${l.mention.toLowerCase()}`;
      if (!left.has(key))
        w.notes.push({
          draft: d,
          text: (step) => `Step ${step} still says "${l.mention}": read ${now} (not edited, since ${l.why}).`,
        });
      left.add(key);
      if (l.naming.stand.avoided) kept.set(l.naming, l.mention);
    }
  }
  d.text = text;
  // A note under the recipe is too far away where somebody must not eat it
  for (const [n, mention] of kept) append(d, `Use the ${n.now.text} and not the ${mention}.`, label(w, n));
}

/** In the order a cook does them. */
const ORDER: readonly string[] = ["thaw", "wash", "soak", "desalt", "rinse", "drain", "boil-hard", "cook"];
const rank = (p: Prep): number => {
  const at = ORDER.findIndex((o) => p.procedure.startsWith(o));
  return at < 0 ? ORDER.length : at;
};
/** What must be done before the rest may begin goes to the front: a soak of hours is no business of step 4. */
const LONG = 20;
/** Steps the stand-in asks for, before the step that first uses it. */
function addSteps(w: Work, n: Naming): void {
  const wanted = preps(n)
    .filter(
      (p) => p.kind === "add" && p.procedure !== "cook-through" && p.procedure !== "drain" && p.procedure !== "rinse",
    )
    .filter((p) => !here(w).some((d) => doesProcedure(w.store, d.original ?? "", n, p.procedure)))
    .map((p, i) => ({ p, i }))
    .sort((a, b) => rank(a.p) - rank(b.p) || a.i - b.i)
    .map(({ p }) => p);
  if (wanted.length === 0) return;
  if (w.drafts.length === 0) {
    for (const p of wanted) w.notes.push({ text: () => aboutIt(p.text, n.now.text) });
    return;
  }
  const long = wanted.some((p) => p.minutes.waiting >= LONG);
  const first = w.drafts.findIndex((d) => !d.gone && d.uses.has(n));
  let at = long ? w.drafts.findIndex((d) => d.original !== undefined) : Math.max(0, first);
  const soaked = wanted.some((p) => p.procedure === "soak-beans");
  for (const p of wanted) {
    const text = orderFor(w, n, p, soaked);
    if (w.drafts.some((d) => d.original === undefined && d.text === text)) continue;
    const group = w.drafts[Math.min(at, w.drafts.length - 1)]?.group;
    w.drafts.splice(at++, 0, {
      text,
      ...(group === undefined ? {} : { group }),
      why: new Set([`needed with ${label(w, n)}`]),
      uses: new Set(),
      gone: false,
    });
  }
}

/** What a new step says. The hard boil's own soak is not said after the overnight one. */
function orderFor(w: Work, n: Naming, p: Prep, soaked: boolean): string {
  const name = n.now.text;
  const hard = /^Soak at least .{1,20}, throw the water away, and boil hard /.exec(p.text);
  if (soaked && hard !== null) return `Boil the ${name} hard ${p.text.slice(hard[0].length)}`;
  const first = /^Cook it first(, about \d+ minutes)?:/.exec(p.text);
  if (first === null) return aboutIt(p.text, name);
  const flesh = n.now.items.some((i) => donenessFor(w.store, i) !== undefined);
  const them = n.now.many === true ? "them" : "it";
  return `Cook the ${name} first, until ${flesh ? "cooked through" : "tender"}${first[1] ?? ""}${flesh ? "" : `, and drain ${them}`}.`;
}

function write(w: Work, n: Naming, p: Prep): void {
  if (p.kind === "skip" || p.procedure === "as noted") return;
  // Said by replaceLiquid where the steps use it
  if (p.text.startsWith("There is no")) return;
  if (p.kind === "add" && p.procedure !== "cook-through") return;
  if (p.text.startsWith(COOKED) && w.skipped.has(`${n.stand.at} ${p.procedure}`)) {
    // Its own boiling fell away: the later step heats it
    return;
  }
  if (p.kind === "change" && p.procedure === "cook") return time(w, n, p);
  plain(w, n, p);
}

/** What a cook adds to the swap in a few words: into the steps goes only what is done before anything else. */
function noted(w: Work, n: Naming, p: Prep, heated: boolean): void {
  if (heated && /cook (?:it )?through/i.test(p.text)) return;
  const late = stirredInLate(n.stand);
  if (late !== undefined && stirIn(w, n, `Stir in the ${late.name} ${late.how}.`)) return;
  const name = late?.name ?? n.stand.use.map((u) => u.name).join(" and ");
  const text = readyFirst(w, n, p.text).replace(/: /g, ", ");
  if (text === "") return;
  w.notes.push({ text: () => `${upper(name)}: ${lower(end(text))}` });
}
