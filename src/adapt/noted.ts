import { aboutIt, heats } from "./cooking.js";
import { end, here, label, type Work } from "./draft.js";
import { severalOf } from "./line.js";
import type { Naming } from "./rename.js";
import { doesProcedure } from "./skip.js";
import { sentences, tokens, upper } from "./words.js";

/** Orders that make a food ready before it is used, by their first word. */
const READY: ReadonlySet<string> = new Set(
  "blend grind grate crush soak mash crumble squeeze sieve toast pound dissolve thaw pulse steep".split(" "),
);
/** What is ordered by the first words of a note ("Blend smooth; dense and pale.") becomes a step before the food is used. The rest of the
 * note is returned. */
export function readyFirst(w: Work, n: Naming, note: string): string {
  const [order = "", ...rest] = note.split(/; |\. /);
  const verb = tokens(order)[0]?.text ?? "";
  const at = w.drafts.findIndex((d) => !d.gone && d.uses.has(n));
  // A step that does not fit the new name may not fit the order either: blended tofu for eggs to be peeled
  const [use] = n.stand.use;
  if (use === undefined || w.left.has(n) || n.stand.use.length > 1 || !READY.has(verb) || at < 0) return note;
  // The step that uses it may do this already
  if (here(w).some((d) => doesProcedure(w.store, d.original ?? "", n, verb))) return rest.map(upper).join(". ");
  const group = w.drafts[at]?.group;
  w.drafts.splice(at, 0, {
    text: end(aboutIt(order, severalOf(use.name, use))),
    ...(group === undefined ? {} : { group }),
    why: new Set([`needed with ${label(w, n)}`]),
    uses: new Set(),
    gone: false,
  });
  return upper(rest.join("; "));
}

/** The sentence right after the last that heats the pot the food is in; false where no step does. */
export function stirIn(w: Work, n: Naming, order: string): boolean {
  const all = here(w);
  const first = all.findIndex((d) => d.uses.has(n));
  if (first < 0) return false;
  const d = all.slice(first).findLast((x) => heats(x.text));
  if (d === undefined) return false;
  const said = [...sentences(d.text)];
  const at = said.findLastIndex((s) => heats(s));
  said[at] = `${end(said[at] ?? "")} ${order}${at < said.length - 1 ? " " : ""}`;
  d.text = said.join("");
  d.why.add(label(w, n));
  return true;
}
