import { storeOf, type Ingredient, type Store } from "../catalogue/index.js";
import { fail, freeze } from "../errors.js";
import { dose, SALT_PER_SODIUM_MG } from "../dose/index.js";
import { findFood } from "../names/index.js";
import { eatenShare, portionOf, readLine, shareOf } from "../portion/index.js";
import { readQuantity } from "../quantity/index.js";
import { hazardsFor, mealConflicts, mergeAllergens, readAvoid, refusalFor, type AvoidRules } from "../safety/index.js";
import type { Catalogue, Caution, Meal, MealReport, Portion, SlotId, SlotReport } from "../types.js";
import { checkMealShape } from "./request.js";
import { fills, portionTable, slotYield } from "./slots.js";
import { soupVolume } from "./soup.js";

interface Line {
  readonly ingredient: Ingredient;
  /** Of what is eaten: shells, cobs and pods off. */
  readonly grams: number;
  readonly portion: Portion;
}
interface DishRead {
  readonly name: string;
  readonly lines: readonly Line[];
  readonly unread: readonly string[];
  readonly soup: number;
}
const SLOTS: readonly SlotId[] = ["starch", "protein", "vegetable", "soup"];
const round1 = (v: number): number => Math.round(v * 10) / 10;

/**
 * What is thrown away counts where it is most of the weight: shells, cobs, pods. Bones are let pass: cuts are sold with and without, and
 * few lines say which.
 */
const mostly = (eaten: number): number => (eaten < 0.5 ? eaten : 1);

function readDish(c: Catalogue, store: Store, dish: Meal["dishes"][number], serves: number): DishRead {
  const texts = dish.lines.map((l) => (typeof l === "string" ? l : l.text));
  const lines: Line[] = [];
  const unread: string[] = [];
  for (const text of texts) {
    const { portion } = readLine(c, text);
    const ingredient = portion && store.byId.get(portion.id);
    if (portion && ingredient)
      lines.push({ ingredient, grams: portion.grams * mostly(shareOf(ingredient, portion, text)), portion });
    else unread.push(text);
  }
  const share = "serves" in dish && dish.serves !== undefined && dish.serves > 0 ? serves / dish.serves : 1;
  const scaled = lines.map((l) => ({ ...l, grams: l.grams * share }));
  const poured = "liquid" in dish && typeof dish.liquid === "string" ? volumeOf(c, dish.liquid) : 0;
  return { name: dish.name, lines: scaled, unread, soup: soupVolume(store, scaled, poured, serves) };
}

/** "1.5 l", "6 cups water": ml. */
function volumeOf(c: Catalogue, text: string): number {
  const quantity = readQuantity(text);
  if (quantity?.unit?.dimension === "volume") return quantity.value * quantity.unit.factor;
  const line = readLine(c, text);
  if (line.portion) return line.portion.grams;
  return fail(
    "unreadable amount",
    `The liquid "${text.slice(0, 80)}" is no volume: write it like "1.5 l" or "6 cups".`,
    { input: text.slice(0, 200), at: 0 },
  );
}

/** Ingredients of the house that would close a gap, those that need least first; at most five. */
function fillFrom(
  store: Store,
  have: readonly Ingredient[],
  slot: SlotId,
  short: number,
  serves: number,
  allowed: (i: Ingredient) => boolean,
): Portion[] {
  return have
    .filter((i) => (slot === "soup" ? i.slot === "soup" || i.kinds.includes("stock") : fills(i, slot)) && allowed(i))
    .map((i) => ({
      i,
      grams:
        (short * serves) / (slot === "soup" ? Math.max(0.01, dose(store, i, "volume")) : slotYield(store, i, slot)),
    }))
    .filter(({ grams }) => Number.isFinite(grams) && grams > 0)
    .sort((a, b) => Math.round(a.grams - b.grams) || (a.i.id < b.i.id ? -1 : 1))
    .slice(0, 5)
    .map(({ i, grams }) => portionOf(store, i, grams, { eaten: mostly(eatenShare(i)) }));
}

/**
 * Whether a meal adds up: starch, protein, vegetable and soup a person against published portions, what is short and what in the house
 * would close it, the balance of protein to vegetable, allergens, sodium and what is unsafe for someone at the table.
 * @throws `unreadable amount`, `unknown term`, `unknown food`, `conflicting request`
 */
export function checkMeal(c: Catalogue, meal: Meal): MealReport {
  const store = storeOf(c);
  checkMealShape(meal);
  const { serves } = meal;
  const table = portionTable(store);
  const dishes = meal.dishes.map((d) => readDish(c, store, d, serves));
  const lines = dishes.flatMap((d) => d.lines);
  const resolve = (text: string): Ingredient[] =>
    findFood(c, text, { limit: 20 }).flatMap((m) => (m.confidence >= 0.9 ? (store.byId.get(m.id) ?? []) : []));
  const guests = (meal.table ?? []).map((g, i) => ({
    name: g.name ?? `guest ${i + 1}`,
    rules: readAvoid(store, g.avoid, resolve),
  }));
  const have = (meal.have ?? []).flatMap((text) => {
    const food = readLine(c, text).food ?? findFood(c, text, { limit: 1 })[0];
    const i = food && store.byId.get(food.id);
    return i ? [i] : [];
  });
  const cooked = lines.map((l) => l.ingredient);
  const apart = (i: Ingredient, rules: AvoidRules): boolean =>
    mealConflicts(store, [...cooked, i], rules).some((m) => m.severity === "stop" && m.between.includes(i.id));
  // What is never eaten closes no gap.
  const safe = (i: Ingredient): boolean =>
    !hazardsFor(store, { use: [{ ingredient: i, grams: 1 }] }).stops.some((s) => s.kind === "never");
  const allowed = (i: Ingredient): boolean =>
    safe(i) && guests.every((g) => refusalFor(store, i, g.rules) === undefined && !apart(i, g.rules));

  const reports = Object.fromEntries(
    SLOTS.map((slot): [SlotId, SlotReport] => {
      const from = slot === "soup" ? [] : lines.filter((l) => fills(l.ingredient, slot));
      const total =
        slot === "soup"
          ? dishes.reduce((s, d) => s + d.soup, 0)
          : from.reduce((s, l) => s + l.grams * slotYield(store, l.ingredient, slot), 0);
      const perPerson = round1(total / serves);
      const rule = table[slot];
      return [
        slot,
        {
          covered: perPerson >= rule.target[0] * table.tolerance,
          perPerson,
          unit: rule.unit,
          target: rule.target,
          from: from.map((l) => l.portion),
          sources: rule.sources,
        },
      ];
    }),
  ) as Record<SlotId, SlotReport>;

  const gaps = SLOTS.filter((slot) => !reports[slot].covered && !(slot === "soup" && meal.soup === "optional")).map(
    (slot) => {
      const short = round1(reports[slot].target[0] - reports[slot].perPerson);
      return { slot, short, unit: reports[slot].unit, fill: fillFrom(store, have, slot, short, serves, allowed) };
    },
  );

  const cautions: Caution[] = [];
  for (const guest of guests) {
    for (const dish of dishes) {
      for (const line of dish.lines) {
        const no = refusalFor(store, line.ingredient, guest.rules);
        if (no)
          cautions.push({
            hazard: `${no.because}: ${no.what}`,
            severity: "stop",
            who: guest.name,
            text: `${dish.name}: ${store.nameOf(line.ingredient)}. ${no.detail}`,
            sources: [],
          });
      }
    }
    cautions.push(
      ...mealConflicts(
        store,
        lines.map((l) => l.ingredient),
        guest.rules,
      ),
    );
  }
  const sodium = lines.map((l) => dose(store, l.ingredient, "salt") * l.grams);
  const milligrams = sodium.reduce((s, g) => s + (Number.isNaN(g) ? 0 : g), 0) / SALT_PER_SODIUM_MG / serves;
  const protein = reports.protein.perPerson;
  const vegetable = reports.vegetable.perPerson;
  const ratio = vegetable === 0 ? 0 : protein / vegetable;
  const unread = dishes.flatMap((d) => d.unread);
  return freeze({
    slots: reports,
    gaps,
    balance: {
      proteinToVegetable: Math.round(ratio * 100) / 100,
      text: balanceText(protein, vegetable, table.balance.vegetableToProtein),
    },
    allergens: mergeAllergens(
      store,
      lines.map((l) => l.ingredient),
    ),
    sodiumPerPerson: {
      milligrams: Math.round(milligrams),
      atLeast: unread.length > 0 || sodium.some((g) => Number.isNaN(g)),
    },
    cautions,
    text: mealText(serves, reports, gaps, unread),
  });
}

function balanceText(protein: number, vegetable: number, [low, high]: readonly [number, number]): string {
  if (vegetable === 0) return "There are no vegetables.";
  if (protein === 0) return "There is no protein.";
  const ratio = vegetable / protein;
  if (ratio < low) return "More protein than vegetables: a plate is better with vegetables in the lead.";
  if (ratio > high) return "Vegetables far outweigh the protein.";
  return "Protein and vegetables are in balance.";
}

function mealText(
  serves: number,
  slots: Readonly<Record<SlotId, SlotReport>>,
  gaps: MealReport["gaps"],
  unread: readonly string[],
): string {
  const each = SLOTS.map((slot) => `${slot} ${Math.round(slots[slot].perPerson)} ${slots[slot].unit}`).join(", ");
  const short = gaps.map((g) => {
    const fill = g.fill[0];
    return `${g.slot} is short by ${Math.round(g.short)} ${g.unit} a person${fill ? `: ${fill.measure.text} ${fill.name} would close it` : ""}`;
  });
  const verdict = short.length === 0 ? "The meal adds up." : `Not yet: ${short.join("; ")}.`;
  const left =
    unread.length > 0
      ? ` Not counted, since no amount or food could be read: ${unread.map((u) => `"${u.slice(0, 60)}"`).join(", ")}.`
      : "";
  return `For ${serves}, each gets ${each}. ${verdict}${left}`;
}
