import type { Ingredient, Store } from "../catalogue/index.js";
import { kitchenMeasure, readLine } from "../portion/index.js";
import { list, named } from "../swap/sentence.js";
import { plural, several } from "../swap/plural.js";
import type { Catalogue, Measure, Portion, ReadLine, UnitId } from "../types.js";
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
const TRIMMED: readonly string[] = ["stem", "stemmed", "stalk", "rib", "skinned", "boned", "bruised"];
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
  softened: ["butter", "margarine"],
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
  "finely roughly thinly coarsely thickly into and or to at room temperature serve taste garnish large small plus extra more for serving divided optional chilled cold warm cut cm inch lengthways across very then well".split(
    " ",
  ),
);
/** Cut into what shape. */
const SHAPES =
  "cube matchstick stick round ring ribbon floret half quarter shred segment bite sized size piece chunk wedge dice strip slice square".split(
    " ",
  );
/** What is sold kept like this comes trimmed and cut, or is too small to cut. */
const COMES_CUT: readonly string[] = ["frozen", "dried", "canned"];
const FLESH: readonly string[] = ["meat", "poultry", "finfish", "crustacean", "mollusc"];
const is = (i: Ingredient, what: string): boolean =>
  i.kinds.includes(what) || i.state.includes(what) || i.roles.some((r) => r.role === what && r.weight >= 0.5);

/** Does a piece of preparation written for the old food hold for the new one? What is not known to hold does not. */
function holds(segment: string, old: Ingredient, now: Ingredient): boolean {
  const words = stems(segment);
  const name = stems(`${now.name.us} ${now.name.gb} ${now.state.join(" ")}`);
  const isCut = (w: string): boolean => CUT.includes(w) || TRIMMED.includes(w) || SHAPES.includes(w);
  const comesCut =
    COMES_CUT.some((s) => now.state.includes(s) && !old.state.includes(s)) && !FLESH.some((k) => now.kinds.includes(k));
  if (words.some((w) => isCut(w) && (comesCut || name.includes(w)))) return false;
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
    if (CUT.includes(w) || SHAPES.includes(w)) return solid;
    return ANYWAY.has(w) || /^\d/.test(w) || w === "removed" || w === "discarded";
  });
}
const KEPT_NOTES: readonly string[] = ["serve", "garnish", "taste", "finish", "optional", "plus"];

/** What is weighed by the many beside what several() knows, by the last word of its name. */
const SEVERAL: ReadonlySet<string> = new Set("shrimp chilli green flake breadcrumb aubergine courgette oat".split(" "));
/** "100 g button mushrooms": more than one where the amount is of many. */
export function severalOf(name: string, p: Portion): string {
  const many = ["g", "kg", "oz", "lb", "ml", "l", "cup"].includes(p.measure.unit);
  const last = name.split(" ").at(-1) ?? "";
  return many && SEVERAL.has(last.toLowerCase()) ? plural(name) : several(name, p.measure.text);
}

/** A name for the line that is read back as this very ingredient, the display name if it is. */
export function nameFor(c: Catalogue, store: Store, p: Portion): string {
  const item = store.byId.get(p.id);
  const many = p.measure.unit === "piece" && p.measure.amount > 1;
  const names = [
    severalOf(store.nameOf(item as Ingredient), p),
    store.nameOf(item as Ingredient),
    ...(item?.names ?? []).filter((n) => n.tag.startsWith("en")).map((n) => n.text),
    `${(item?.state ?? []).join(" ")} ${p.name}`,
  ];
  const good = names.find((n) => readLine(c, named({ measure: p.measure, name: n })).food?.id === p.id) ?? p.name;
  return many && !/[a-z]/i.test(p.measure.text) ? plural(good) : good;
}

const OWN_UNIT: readonly string[] = ["tsp", "tbsp", "cup", "ml", "l", "g", "kg", "oz", "lb"];
const WEIGHED: readonly string[] = ["g", "kg", "oz", "lb"];
const SPOONED: readonly string[] = ["tsp", "tbsp"];
/** In the unit the line had, where the stand-in makes a measure in it: two tablespoons of another oil are tablespoons too. */
export function likeBefore(store: Store, p: Portion, before: Portion | undefined): Portion {
  const unit = before?.measure.unit;
  const item = store.byId.get(p.id);
  if (
    before === undefined ||
    item === undefined ||
    unit === undefined ||
    unit === p.measure.unit ||
    !OWN_UNIT.includes(unit)
  )
    return p;
  if (!["g", "ml", "kg", "l", "oz", "lb", "tsp", "tbsp", "cup", "packet"].includes(p.measure.unit)) return p;
  // What is spooned is not put on the scale for the sake of what was weighed
  if (WEIGHED.includes(unit) && SPOONED.includes(p.measure.unit)) return p;
  const m = kitchenMeasure(store, item, p.grams, { unit });
  const range = RANGE[unit];
  // The spoonful of miso that goes with the water is no measure of stock
  if (m !== undefined && (m.amount < before.measure.amount / 6 || m.amount > before.measure.amount * 3)) return p;
  if (m === undefined || range === undefined || m.amount < range[0] || m.amount > range[1]) return p;
  const step = unit === "tsp" ? 4 : unit === "tbsp" ? 2 : unit === "cup" ? 12 : 1;
  if (Math.abs(m.amount * step - Math.round(m.amount * step)) > 0.01 && unit !== "ml" && unit !== "l") return p;
  return Math.abs(m.roundedBy) > 0.1 * p.grams ? p : { ...p, measure: unit === "ml" || unit === "g" ? rounded(m) : m };
}
function rounded(m: Measure): Measure {
  const step = m.amount < 20 ? 1 : m.amount < 100 ? 5 : m.amount < 500 ? 10 : 25;
  const amount = Math.max(1, Math.round(m.amount / step) * step);
  return { ...m, amount, text: m.text.replace(/^[\d.]+/, String(amount)) };
}
/** What a cook still counts or spoons out in one unit: above or below another unit is the better one. */
export const RANGE: Readonly<Partial<Record<UnitId, readonly [number, number]>>> = {
  tsp: [0.125, 3],
  tbsp: [0.5, 6],
  cup: [0.25, 12],
  g: [1, 999],
  ml: [1, 999],
  oz: [0.25, 24],
  kg: [0.5, 99],
  l: [0.5, 99],
  lb: [0.25, 99],
};

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
    const own = (now.ready?.by ?? []).filter((id) => id === "drain" || id === "rinse");
    const drained = own.map((id) => (id === "drain" ? "drained" : "rinsed")).join(" and ");
    const said = stems(tail.join(" "));
    if (drained !== "" && !said.includes("drained") && !said.includes("rinsed")) tail.unshift(drained);
    const text = [called({ measure: p.measure, name: nameFor(c, store, p) }), ...tail].join(", ");
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
/** As a cook says it: "a pinch of salt". */
export function called(p: { readonly measure: Measure; readonly name: string }): string {
  const { text } = p.measure;
  return /(?:pinch|pinches|dash|handful|handfuls|knob)$/.test(text) ? `${text} of ${p.name}` : named(p);
}
export const saidOf = (use: readonly Portion[]): string =>
  list(use.map((u) => called({ ...u, name: severalOf(u.name, u) })));
