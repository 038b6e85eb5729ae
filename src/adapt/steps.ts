import type { Store } from "../catalogue/index.js";
import { donenessChange } from "../safety/index.js";
import type { Catalogue, Change, Recipe } from "../types.js";
import type { Stand } from "./choose.js";
import { calledOf } from "./mentions.js";
import { newNameOf, renameIn, type Naming } from "./rename.js";
import { doesProcedure, goesOn, onlyDoes, pointsBack } from "./skip.js";
import { lower, MAX_STEP, sentences, tokens, upper } from "./words.js";

export interface Steps {
  readonly steps: readonly { readonly text: string; readonly group?: string }[];
  readonly changes: readonly Change[];
  readonly notes: readonly string[];
  /** "at" of a stand and procedure, for those whose step was found. */
  readonly skipped: ReadonlySet<string>;
}
interface Draft {
  text: string;
  group?: string;
  readonly original: string;
  readonly why: Set<string>;
  readonly uses: Set<Naming>;
  whole: boolean;
}
type Prep = NonNullable<Stand["swap"]>["prep"][number];
const COOK: readonly string[] = ["cook", "cook-through"];
const end = (s: string): string => (/[.!?]\s*$/.test(s) ? s.trimEnd() : `${s.trimEnd()}.`);

/** Names, skips, additions and temperatures written into the steps; what cannot be written in safely becomes a note. */
export function adaptSteps(c: Catalogue, store: Store, recipe: Recipe, stands: readonly Stand[]): Steps {
  const namings: Naming[] = stands.map((stand) => ({
    stand,
    called: calledOf(store, stand.item, recipe.lines[stand.at]?.text ?? ""),
    now: newNameOf(store, stand),
  }));
  const notes: string[] = [];
  const skipped = new Set<string>();
  const added: { readonly before: number; readonly text: string; readonly why: string }[] = [];
  const label = (n: Naming): string => `${n.now.text} for ${store.nameOf(n.stand.item)}`;
  const drafts: Draft[] = recipe.steps.map((s) => ({
    text: s.text,
    original: s.text,
    ...(s.group === undefined ? {} : { group: s.group }),
    why: new Set<string>(),
    uses: new Set<Naming>(),
    whole: false,
  }));
  drafts.forEach((d, at) => {
    if (namings.length === 0) return;
    if (d.text.length > MAX_STEP) {
      notes.push(`Step ${at + 1} is too long to edit: read it with ${namings.map(label).join(", ")} in mind.`);
      return;
    }
    skipIn(d, at);
    if (!d.whole) renameAll(d, at);
  });
  for (const n of namings) for (const p of n.stand.swap?.prep ?? []) write(n, p);
  for (const n of namings) doneness(n);

  const out: { text: string; group?: string }[] = [];
  const changes: Change[] = [];
  drafts.forEach((d, at) => {
    for (const a of added.filter((x) => x.before === at)) put(a, at);
    out.push({ text: d.text, ...(d.group === undefined ? {} : { group: d.group }) });
    if (d.text !== d.original)
      changes.push({ where: `step ${at + 1}`, before: d.original, after: d.text, why: [...d.why].join("; ") });
  });
  return { steps: out, changes, notes, skipped };

  function put(a: { readonly text: string; readonly why: string }, at: number): void {
    const group = drafts[at]?.group;
    out.push({ text: a.text, ...(group === undefined ? {} : { group }) });
    changes.push({ where: `new step before step ${at + 1}`, before: "", after: a.text, why: a.why });
  }
  function skipIn(d: Draft, at: number): void {
    const parts = [...sentences(d.text)];
    const gone = new Map<number, { n: Naming; p: Prep }>();
    for (const n of namings)
      for (const p of n.stand.swap?.prep ?? []) {
        if (p.kind !== "skip") continue;
        parts.forEach((s, i) => {
          if (onlyDoes(store, recipe, s, n, p.procedure)) gone.set(i, { n, p });
          else if (gone.has(i - 1) && !gone.has(i) && goesOn(s)) gone.set(i, gone.get(i - 1) as { n: Naming; p: Prep });
          else if (doesProcedure(store, s, n, p.procedure) && !gone.has(i))
            notes.push(`Step ${at + 1}: ${lower(p.text)} (${label(n)})`);
        });
      }
    const first = gone.values().next().value;
    if (first === undefined) return;
    const unclear = parts.findIndex((s, i) => gone.has(i - 1) && !gone.has(i) && pointsBack(s));
    for (const { n, p } of gone.values()) skipped.add(`${n.stand.at} ${p.procedure}`);
    if (unclear >= 0) {
      notes.push(`Step ${at + 1}: ${lower(end(first.p.text))} The rest of the step stands, with ${first.n.now.text}.`);
      return;
    }
    const texts = new Set([...gone.values()].map(({ p }) => end(p.text)));
    const rest = parts.filter((_, i) => !gone.has(i)).join("");
    d.text = [...texts, rest.trim()].filter((s) => s !== "").join(" ");
    d.whole = rest.trim() === "";
    for (const { n } of gone.values()) d.why.add(`not needed with ${label(n)}`);
  }
  function renameAll(d: Draft, at: number): void {
    let text = "";
    const left = new Map<Naming, string>();
    for (const s of sentences(d.text)) {
      const r = renameIn(c, store, recipe, s, namings);
      text += r.text;
      for (const n of r.names) d.uses.add(n);
      if (r.text !== s) for (const n of r.names) if (!r.left.some((l) => l.naming === n)) d.why.add(label(n));
      for (const l of r.left)
        if (!left.has(l.naming))
          left.set(
            l.naming,
            `Step ${at + 1} still says "${l.mention}": read ${l.naming.now.text} (not edited, since ${l.why}).`,
          );
    }
    d.text = text;
    notes.push(...left.values());
  }
  function lastUse(n: Naming): Draft | undefined {
    return drafts.filter((d) => d.uses.has(n)).at(-1);
  }
  function append(d: Draft, sentence: string, why: string): void {
    if (d.text.includes(sentence)) return;
    d.text = `${end(d.text)} ${sentence}`;
    d.why.add(why);
  }
  function write(n: Naming, p: Prep): void {
    const name = n.now.text;
    if (p.kind === "skip") {
      // The name of what falls away says itself where a step has it; where none has, there is nothing to skip.
      return;
    }
    if (p.kind === "add" && p.procedure !== "cook-through") {
      if (drafts.some((d) => doesProcedure(store, d.original, n, p.procedure))) return;
      const first = drafts.findIndex((d) => d.uses.has(n));
      added.push({
        before: Math.max(0, first),
        text: `${upper(name)}: ${lower(p.text)}`,
        why: `needed with ${label(n)}`,
      });
      if (drafts.length === 0) notes.push(`${upper(name)}: ${lower(p.text)}`);
      return;
    }
    const byProduct = store.procedures.get(p.procedure)?.byProduct;
    if (p.kind === "change" && byProduct !== undefined && p.text.startsWith("There is no")) {
      replaceLiquid(p, byProduct.name, label(n));
      return;
    }
    const d = lastUse(n);
    if (p.procedure === "cook-through" && d !== undefined) {
      append(d, end(p.text).replace("Cook it", `Cook the ${name}`), `needed with ${label(n)}`);
      return;
    }
    const short = end((COOK.includes(p.procedure) ? p.text.split(" instead of")[0] : p.text) ?? p.text);
    const timed =
      d !== undefined && tokens(d.original).some((t) => t.text.startsWith("minute") || t.text.startsWith("hour"));
    if (d !== undefined && !timed && p.procedure !== "as noted")
      append(d, `For the ${name}: ${lower(short)}`, `changed by ${label(n)}`);
    else
      notes.push(
        `${upper(name)}: ${lower(end(p.text))}${d !== undefined && timed && COOK.includes(p.procedure) ? ` Go by the ${name} and not by the time in step ${drafts.indexOf(d) + 1}.` : ""}`,
      );
  }
  function replaceLiquid(p: Prep, byProduct: string, why: string): void {
    const from = p.text.indexOf("put in ");
    const to = p.text.lastIndexOf(" instead");
    const instead = from < 0 || to < 0 ? "" : p.text.slice(from + 7, to);
    const last = byProduct.split(" ").at(-1) ?? "liquid";
    let seen = false;
    drafts.forEach((d, at) => {
      if (d.whole) return;
      for (const phrase of [
        "soaking liquid",
        "soaking water",
        "soaking liquor",
        byProduct,
        `reserved ${last}`,
        "reserved liquid",
      ]) {
        const place = d.text.toLowerCase().indexOf(phrase);
        if (place < 0) continue;
        seen = true;
        // "and the reserved soaking liquid": the article and what was done to it go with the name
        const lead = d.text.slice(0, place);
        const words = tokens(lead);
        let k = words.length;
        while (
          k > 0 &&
          words.length - k < 5 &&
          ["the", "its", "their", "all", "reserved", "strained", "mushroom", "of", "saved"].includes(
            words[k - 1]?.text ?? "",
          )
        )
          k--;
        const start = k < words.length ? (words[k]?.start ?? place) : place;
        if (instead === "" || d.text.slice(start, place).includes(".")) notes.push(`Step ${at + 1}: ${lower(p.text)}`);
        else {
          d.text = d.text.slice(0, start) + instead + d.text.slice(place + phrase.length);
          d.why.add(`no ${byProduct} with ${why}`);
        }
        return;
      }
    });
    if (
      !seen &&
      drafts.some((d) => d.original.toLowerCase().includes(last) && d.original.toLowerCase().includes("soak"))
    )
      notes.push(p.text);
  }
  function doneness(n: Naming): void {
    for (const item of n.now.items) {
      const change = donenessChange(store, n.stand.item, item);
      if (change === undefined) continue;
      const d = lastUse(n);
      const own = n.stand.use.find((u) => u.id === item.id);
      const name = newNameOf(store, { ...n.stand, use: own === undefined ? n.stand.use : [own] }).text;
      if (change.raised && d !== undefined)
        append(
          d,
          change.step.text.replace("Cook it", `Cook the ${name}`),
          `${name} is cooked to a temperature of its own`,
        );
      else notes.push(`${upper(name)}: ${lower(change.text)}`);
    }
  }
}
