import type { Ingredient, Procedure } from "../catalogue/index.js";
import type { Swap } from "../types.js";
import type { Ask } from "./ask.js";
import type { Known } from "./evidence.js";
import { portionFor } from "./measure.js";
import { FINE, toDo, unsaid, wanted, wetText } from "./steps.js";

export type Prep = Swap["prep"][number];
interface Use {
  readonly ingredient: Ingredient;
  readonly grams: number;
}
export interface PrepPlan {
  readonly prep: readonly Prep[];
  /** Minutes gained (negative) or lost against the recipe as written. */
  readonly active: number;
  readonly waiting: number;
}

const round = (v: number): number => Math.round(v * 10) / 10;
const clock = (p: Procedure): { active: number; waiting: number } => ({ active: p.active, waiting: p.waiting });

const HEATED: readonly string[] = ["canned", "cooked", "boiled", "roasted", "steamed", "fried"];
/** Sold cooked: it wants warming, not cooking. */
export const cookedAlready = (i: Ingredient): boolean => i.state.some((s) => HEATED.includes(s));
const EATEN: readonly string[] = ["main protein", "starch base", "leafy green", "crunchy stem", "bulk vegetable"];
/** True when the ingredient is eaten for itself, so that being cooked already makes a difference. */
const eaten = (ask: Ask): boolean => EATEN.includes(ask.roles[0]?.role ?? "");

/** One is sold cooked and the other is not: say when it goes in, or that it must be cooked first. */
function cookedDifference(
  ask: Ask,
  use: Ingredient,
  alone: boolean,
): { text: string; minutes: number; required: boolean } | undefined {
  if (!eaten(ask) || cookedAlready(ask.item) === cookedAlready(use)) return undefined;
  // Of a mixture, what only seasons it is cooked by the rest: nobody boils the oil first.
  if (!alone && !use.roles.some((r) => r.weight >= 0.5 && EATEN.includes(r.role))) return undefined;
  const own = cookedAlready(use) ? ask.item : use;
  const cold = ask.technique === "raw" || ask.technique === "set cold";
  const minutes = own.minutes[ask.technique ?? ""] ?? Object.values(own.minutes)[0] ?? 0;
  if (cookedAlready(use))
    return cold
      ? undefined
      : {
          text: "It is cooked already: add it near the end, just to heat through.",
          minutes: -minutes,
          required: false,
        };
  if (use.can.has("ready to eat")) return undefined;
  return {
    text: `Cook it first${minutes > 0 ? `, about ${minutes} ${minutes === 1 ? "minute" : "minutes"}` : ""}: what it stands in for was cooked already.`,
    minutes,
    required: true,
  };
}

/** Loose mince, raw or frozen; a sausage is made of it but is not it. */
export const isMince = (i: Ingredient): boolean => i.kinds.includes("minced meat");
const CUT_FINE: readonly string[] = ["grated", "puree", "minced", "ground"];
/** Cut so fine that it cannot be put together again: riced cauliflower is no head to roast, though a head can be riced. */
export const isFine = (i: Ingredient): boolean => i.state.some((s) => CUT_FINE.includes(s));
/** Mince where the recipe has pieces, or the other way round. */
function cutting(ask: Ask, use: Ingredient): Prep | undefined {
  if (!eaten(ask) || cookedAlready(use)) return undefined;
  const want = isMince(ask.item);
  if (want === isMince(use) || !FLESH.some((o) => use.origin.has(o))) return undefined;
  return want
    ? {
        kind: "add",
        procedure: "chop",
        minutes: { active: 5, waiting: 0 },
        required: true,
        text: "Mince it, or chop it fine with a knife.",
      }
    : {
        kind: "change",
        procedure: "shape",
        minutes: { active: 0, waiting: 0 },
        required: false,
        text: "It is minced: brown it loose or shape it, since it will not hold in pieces.",
      };
}
const FLESH: readonly string[] = ["beef", "pork", "lamb", "goat", "game", "poultry", "horse", "fish", "crustacean"];

const LONG: readonly string[] = ["braise", "stew", "slow cooker"];
/** Goes in late: a fish in a braise that was built on something which lasts. */
function late(ask: Ask, use: Ingredient): { text: string; minutes: number } | undefined {
  if (ask.technique === undefined || !LONG.includes(ask.technique) || !eaten(ask)) return undefined;
  if (!ask.item.can.has("survives long heat") || !use.cannot.has("survives long heat")) return undefined;
  const minutes = use.minutes[ask.technique] ?? use.minutes["simmer"] ?? use.minutes["boil"] ?? 8;
  return { text: `Add it for the last ${minutes} minutes only: long cooking breaks it up.`, minutes: 0 };
}

/** What is left unsaid by a technique when two foods eaten for themselves, or cooked down for aroma, take different times in it. */
function cooking(ask: Ask, use: Ingredient): { text: string; minutes: number } | undefined {
  const { item, technique } = ask;
  // An egg's own minutes say nothing of a cake's, nor a crumb's of what it coats; and powders are cooked with the dish.
  if (technique === undefined || !(eaten(ask) || ask.roles[0]?.role === "aromatic")) return undefined;
  if (FINE.some((w) => use.state.includes(w) || item.state.includes(w))) return undefined;
  const before = item.minutes[technique];
  const after = use.minutes[technique];
  if (before === undefined || after === undefined) return undefined;
  const d = after - before;
  if (Math.abs(d) < 2 || Math.abs(d) < 0.25 * before) return undefined;
  return {
    text: `${cap(technique)} for about ${after} ${after === 1 ? "minute" : "minutes"} instead of ${before}.`,
    minutes: d,
  };
}
const cap = (s: string): string => s.charAt(0).toUpperCase() + s.slice(1);

/** Steps that fall away, are added or change when `uses` stand in for the missing ingredient. */
export function prepFor(ask: Ask, uses: readonly Use[], known?: Known): PrepPlan {
  const { store, item } = ask;
  const prep: Prep[] = [];
  let active = 0;
  let waiting = 0;
  const before = (item.ready?.by ?? []).filter((id) => wanted(ask, id));
  const after = [...new Set(uses.flatMap((u) => toDo(ask, u, uses)))];
  for (const id of before) {
    if (after.includes(id)) continue;
    const p = store.procedures.get(id);
    if (!p) continue;
    prep.push({ kind: "skip", procedure: id, minutes: clock(p), required: false, text: p.skip });
    active -= p.active;
    waiting -= p.waiting;
    if (p.byProduct) prep.push(replaceByProduct(ask, p));
  }
  for (const id of after) {
    if (before.includes(id)) continue;
    const p = store.procedures.get(id);
    if (!p) continue;
    const quick =
      ask.minutes !== undefined && p.quick !== undefined && p.active + p.waiting > ask.minutes ? p.quick : undefined;
    const minutes = quick ? { active: quick.active, waiting: quick.waiting } : clock(p);
    prep.push({
      kind: "add",
      procedure: id,
      minutes,
      required: true,
      text: wetText(ask, id, quick?.text ?? p.add, uses),
    });
    active += minutes.active;
    waiting += minutes.waiting;
  }
  for (const { ingredient } of uses) {
    const cut = cutting(ask, ingredient);
    if (cut) {
      prep.push(cut);
      active += cut.minutes.active;
    }
    const heat = cookedDifference(ask, ingredient, uses.length === 1);
    if (heat && !prep.some((p) => p.text === heat.text)) {
      prep.push({
        kind: heat.required ? "add" : "change",
        procedure: "cook",
        minutes: { active: 0, waiting: round(Math.abs(heat.minutes)) },
        required: heat.required,
        text: heat.text,
      });
      waiting += heat.minutes;
      continue;
    }
    if (heat) continue;
    const change = late(ask, ingredient) ?? (uses.length === 1 ? cooking(ask, ingredient) : undefined);
    if (!change) continue;
    prep.push({
      kind: "change",
      procedure: "cook",
      minutes: { active: 0, waiting: round(Math.abs(change.minutes)) },
      required: true,
      text: change.text,
    });
    waiting += change.minutes;
  }
  if (ask.whole && uses.some((u) => u.ingredient.kinds.includes("finfish")))
    prep.push({ kind: "change", procedure: "weigh whole fish", minutes: NONE, required: false, text: OF_WHOLE });
  // What a cook adds to the swap, in the words of whoever wrote it down, less what the steps say already.
  const note = known?.edge.change === undefined ? "" : unsaid(known.edge.change, prep);
  if (note !== "")
    prep.push({
      kind: "change",
      procedure: "as noted",
      minutes: { active: 0, waiting: 0 },
      required: false,
      text: note,
    });
  return { prep, active: round(active), waiting: round(waiting) };
}

const NONE = { active: 0, waiting: 0 };
const OF_WHOLE = "The weight is of fillets; of whole fish take about twice as much.";

/** The soaking liquid goes with the soak: say what takes its place and how much. */
function replaceByProduct(ask: Ask, p: Procedure): Prep {
  const by = p.byProduct as NonNullable<Procedure["byProduct"]>;
  const stand = ask.store.byId.get(by.replaceWith);
  const measure = stand ? portionFor(ask, stand, ask.grams * by.gramsPerGram).measure.text : "";
  const name = stand ? ask.store.nameOf(stand) : by.replaceWith;
  return {
    kind: "change",
    procedure: p.id,
    minutes: { active: 0, waiting: 0 },
    required: false,
    text: `There is no ${by.name}: where the recipe uses it, put in ${measure} ${name} instead.`.replace(/ {2,}/g, " "),
  };
}
