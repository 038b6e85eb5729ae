import type { Ingredient, Store } from "../catalogue/index.js";
import { readLine } from "../portion/index.js";
import { list, named } from "../swap/sentence.js";
import { plural } from "../swap/plural.js";
import type { Catalogue, Portion, ReadLine } from "../types.js";
import { stems } from "./words.js";

export interface Line {
  readonly text: string;
  readonly read: ReadLine;
  readonly group?: string;
}

const CUT =
  "chopped diced sliced minced grated shredded crushed halved quartered torn crumbled cubed cut julienned trimmed peeled cored seeded deseeded pitted".split(
    " ",
  );
const SOLID_NOT: readonly string[] = [
  "ground",
  "powder",
  "powdered",
  "paste",
  "minced",
  "juice",
  "puree",
  "sliced",
  "chopped",
  "diced",
  "flakes",
];
/** Preparation that holds for some foods only: what both foods must be, by the stem of a word. */
const FOR: Readonly<Record<string, readonly string[]>> = {
  stem: ["leafy green"],
  stemmed: ["leafy green"],
  stalk: ["leafy green"],
  rib: ["leafy green"],
  beaten: ["egg"],
  separated: ["egg"],
  melted: ["fat"],
  softened: ["fat"],
  drained: ["canned"],
  rinsed: ["canned", "cooking pulse", "leafy green"],
  skinned: ["finfish", "poultry"],
  boned: ["finfish", "meat"],
  flaked: ["finfish"],
  grated: ["cheese", "root vegetable"],
  peeled: ["root vegetable", "allium", "fruit"],
  pitted: ["fruit"],
  crumbled: ["cheese"],
  sifted: ["flour"],
  torn: ["leafy green", "herb"],
};
const ANYWAY: ReadonlySet<string> = new Set(
  "finely roughly thinly coarsely thickly into and or to at room temperature serve taste garnish large small bite sized size piece chunk wedge dice strip plus extra more for serving divided optional chilled cold warm cut cm inch lengthways across very then well".split(
    " ",
  ),
);
const is = (i: Ingredient, what: string): boolean =>
  i.kinds.includes(what) || i.state.includes(what) || i.roles.some((r) => r.role === what && r.weight >= 0.5);

/** Does a piece of preparation written for the old food hold for the new one? What is not known to hold does not. */
function holds(segment: string, old: Ingredient, now: Ingredient): boolean {
  const words = stems(segment);
  const solid =
    !SOLID_NOT.some((s) => now.state.includes(s)) &&
    now.part !== "juice" &&
    !is(now, "liquid") &&
    !is(now, "condiment");
  const kin =
    old.kinds[0] === now.kinds[0] && JSON.stringify(old.ready?.by ?? []) === JSON.stringify(now.ready?.by ?? []);
  return words.every((w) => {
    if (kin && solid) return true;
    const needs = Object.hasOwn(FOR, w) ? FOR[w] : undefined;
    if (needs !== undefined) return needs.some((n) => is(old, n) && is(now, n));
    if (CUT.includes(w)) return solid;
    return ANYWAY.has(w) || /^\d/.test(w) || w === "removed" || w === "discarded";
  });
}
const KEPT_NOTES: readonly string[] = ["serve", "garnish", "taste", "finish", "optional", "plus"];

/** A name for the line that is read back as this very ingredient, the display name if it is. */
export function nameFor(c: Catalogue, store: Store, p: Portion): string {
  const item = store.byId.get(p.id);
  const many = p.measure.unit === "piece" && p.measure.amount > 1;
  const names = [
    store.nameOf(item as Ingredient),
    ...(item?.names ?? []).filter((n) => n.tag.startsWith("en")).map((n) => n.text),
    `${(item?.state ?? []).join(" ")} ${p.name}`,
  ];
  const good = names.find((n) => readLine(c, named({ measure: p.measure, name: n })).food?.id === p.id) ?? p.name;
  return many && !/[a-z]/i.test(p.measure.text) ? plural(good) : good;
}

export interface Written {
  readonly lines: readonly Line[];
  /** Preparation that no longer applies. */
  readonly dropped: readonly string[];
}
/** The line with other food in it. Preparation and notes that still hold are kept; what was said of the old food's amount is not. */
export function writeLine(c: Catalogue, store: Store, line: Line, old: Ingredient, use: readonly Portion[]): Written {
  const dropped = new Set<string>();
  const lines = use.map((p, at): Line => {
    const now = store.byId.get(p.id) as Ingredient;
    const pieces = line.read.preparation
      .split(",")
      .map((s) => s.trim())
      .filter((s) => s !== "");
    const kept = pieces.filter((s) => {
      const ok = holds(s, old, now);
      if (!ok && at === 0) dropped.add(s);
      return ok;
    });
    const notes = line.read.note
      .split(";")
      .map((s) => s.trim())
      .filter((s) => KEPT_NOTES.some((w) => stems(s).includes(w)) && !/\d/.test(s) && !stems(s).includes("or"));
    const tail = [...kept, ...notes];
    for (const [flag, word] of [
      [line.read.optional, "optional"],
      [line.read.divided, "divided"],
    ] as const)
      if (flag && !tail.some((t) => t.includes(word))) tail.push(word);
    const text = [named({ measure: p.measure, name: nameFor(c, store, p) }), ...tail].join(", ");
    return { text, read: readBack(c, text, p), ...(line.group === undefined ? {} : { group: line.group }) };
  });
  return { lines, dropped: [...dropped] };
}

/** What the new text reads as; by hand where it would be read as something else. */
export function readBack(c: Catalogue, text: string, p: Portion): ReadLine {
  const read = readLine(c, text);
  if (read.food?.id === p.id && read.portion !== undefined) return read;
  return {
    status: "food and amount",
    food: { id: p.id, name: p.name },
    candidates: [],
    portion: p,
    alternatives: [],
    preparation: "",
    note: "",
    optional: read.optional,
    divided: read.divided,
  };
}
export const saidOf = (use: readonly Portion[]): string => list(use.map((u) => named(u)));
