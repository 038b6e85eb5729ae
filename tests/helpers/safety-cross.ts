// Every ingredient against everything that can be avoided. One question without anything avoided gives all that could be offered; what is
// left of it for each diner follows from the gates, and must be the very list a caller gets who avoids it.
import { storeOf, type Ingredient } from "../../src/catalogue/index.js";
import { openCatalogue, swapsFor } from "../../src/index.js";
import {
  ALLERGENS,
  allergenFacts,
  DIETS,
  hazardsFor,
  readAvoid,
  refusalFor,
  type AvoidRules,
  type Stop,
} from "../../src/safety/index.js";
import { safetyTables } from "../../src/safety/tables.js";
import type { AllergenId, Avoid, Swap } from "../../src/types.js";

export const c = openCatalogue();
export const store = storeOf(c);
export const all = store.ingredients;
const tables = safetyTables(store);

export interface Avoidable {
  readonly name: string;
  readonly avoid: Avoid;
  readonly rules: AvoidRules;
}
const avoidable = (name: string, avoid: Avoid): Avoidable => ({
  name,
  avoid,
  rules: readAvoid(store, avoid, () => []),
});
/** Fifteen allergens, every diet and condition, every group word. */
export const AVOIDABLE: readonly Avoidable[] = [
  ...ALLERGENS.map((a) => avoidable(a, { allergens: [a] })),
  ...DIETS.map((d) => avoidable(d, { diets: [d] })),
  ...tables.diets.groups.map(({ names: [word] }) => avoidable(`the food ${word ?? ""}`, { foods: [word ?? ""] })),
];
export const get = (id: string): Ingredient => {
  const i = store.byId.get(id);
  if (!i) throw new Error(`no ${id}`);
  return i;
};

const FLESH = ["beef", "pork", "lamb", "goat", "horse", "game", "poultry"];
const SEA = ["fish", "crustacean", "mollusc", "sea creature"];
const SEA_ALLERGENS: AllergenId[] = ["fish", "crustacean shellfish", "molluscs"];
/** What each diet or word forbids, said a second time and without the tables: origins and allergens nobody disputes. */
const FORBIDDEN: Readonly<Record<string, { origin?: readonly string[]; contains?: readonly AllergenId[] }>> = {
  vegan: {
    origin: [...FLESH, ...SEA, "dairy", "egg", "honey", "gelatin", "animal fat", "insect", "animal rennet"],
    contains: ["milk", "egg", ...SEA_ALLERGENS],
  },
  vegetarian: { origin: [...FLESH, ...SEA, "gelatin", "animal fat", "animal rennet"], contains: SEA_ALLERGENS },
  "lacto-vegetarian": { origin: [...FLESH, ...SEA, "gelatin", "egg"], contains: ["egg", ...SEA_ALLERGENS] },
  "ovo-vegetarian": { origin: [...FLESH, ...SEA, "gelatin", "dairy"], contains: ["milk", ...SEA_ALLERGENS] },
  pescatarian: { origin: FLESH },
  halal: { origin: ["pork", "alcohol"] },
  kosher: {
    origin: ["pork", "crustacean", "mollusc", "sea creature"],
    contains: ["crustacean shellfish", "molluscs"],
  },
  jain: { origin: [...FLESH, ...SEA, "egg", "honey", "allium", "alcohol"], contains: ["egg", ...SEA_ALLERGENS] },
  buddhist: { origin: [...FLESH, ...SEA, "egg", "allium", "alcohol"], contains: ["egg", ...SEA_ALLERGENS] },
  coeliac: { contains: ["wheat", "gluten cereals"] },
  infant: { origin: ["honey"] },
  "no mammal meat": { origin: ["beef", "pork", "lamb", "goat", "horse"] },
  "no pork": { origin: ["pork"] },
  "no beef": { origin: ["beef"] },
  "the food pork": { origin: ["pork"] },
  "the food beef": { origin: ["beef"] },
  "the food meat": { origin: FLESH },
  "the food poultry": { origin: ["poultry"] },
  "the food fish": { origin: ["fish"], contains: ["fish"] },
  "the food shellfish": { origin: ["crustacean", "mollusc"], contains: ["crustacean shellfish", "molluscs"] },
  "the food egg": { origin: ["egg"], contains: ["egg"] },
  "the food dairy": { origin: ["dairy"], contains: ["milk"] },
  "the food gluten": { contains: ["wheat", "gluten cereals"] },
  "the food nuts": { contains: ["tree nuts"] },
  "the food honey": { origin: ["honey"] },
  "the food gelatin": { origin: ["gelatin"] },
  "the food alcohol": { origin: ["alcohol"] },
  "the food alliums": { origin: ["allium"] },
};
/** Vinegar is made from alcohol and holds none. */
const vinegar = (i: Ingredient): boolean => i.kinds.includes("vinegar");
/** Whether an ingredient's record carries what is avoided, by the second statement. */
export function forbidden(i: Ingredient, { name }: Avoidable): boolean {
  const facts = allergenFacts(store, i);
  if ((ALLERGENS as readonly string[]).includes(name)) return !facts.free.includes(name as AllergenId);
  const rule = FORBIDDEN[name];
  if (!rule) return false;
  return (
    (rule.origin ?? []).some(
      (o) => i.origin.has(o) && !(o === "alcohol" && name !== "the food alcohol" && vinegar(i)),
    ) || (rule.contains ?? []).some((a) => facts.contains.includes(a))
  );
}

const gates = new Map<Avoidable, ReadonlySet<string>>();
/** Ids of everything a diner who avoids this is refused. */
export function refusedFor(a: Avoidable): ReadonlySet<string> {
  let ids = gates.get(a);
  if (!ids)
    gates.set(
      a,
      (ids = new Set(all.filter((i) => refusalFor(store, i, a.rules) !== undefined).map((i) => i.id as string))),
    );
  return ids;
}

export interface Offer {
  readonly swap: Swap;
  readonly ids: readonly string[];
  readonly stops: readonly Stop[];
}
export interface Offers {
  readonly list: readonly Offer[];
  /** False when more could have come: then only the beginning of an answer is known. */
  readonly whole: boolean;
  readonly faults: readonly string[];
}
const MOST = 200;
const EVERY_DIET = readAvoid(store, { diets: [...DIETS] }, () => []);
const name = (missing: Ingredient, ids: readonly string[]): string => `${missing.id} -> ${ids.join("+")}`;

/** All that is offered for a missing ingredient when nothing is avoided, with what would stop it for some diner; and what is wrong with it. */
export function offersFor(missing: Ingredient): Offers {
  const advice = swapsFor(c, { missing: missing.id, amount: "100 g", limit: MOST });
  const [first] = advice.roles;
  const faults: string[] = [];
  const list = advice.swaps.map((swap): Offer => {
    const ids = swap.use.map((u) => u.id as string);
    const question = {
      missing,
      use: swap.use.map((u) => ({ ingredient: get(u.id), grams: u.grams })),
      ...(first ? { role: first.role } : {}),
    };
    const plain = hazardsFor(store, question);
    for (const stop of plain.stops) {
      if (stop.kind !== "unless") faults.push(`${name(missing, ids)}: ${stop.hazard} offered`);
      else if (!swap.cautions.some((x) => x.severity === "stop"))
        faults.push(`${name(missing, ids)}: ${stop.hazard} unsaid`);
    }
    const added = swap.prep.filter((p) => p.kind === "add" && p.required);
    for (const step of plain.required)
      if (!added.some((p) => p.procedure === step.procedure || p.text.endsWith(step.text.replace("Cook it ", ""))))
        faults.push(`${name(missing, ids)}: no step ${step.hazard}`);
    if (new Set(swap.cautions.map((x) => x.text)).size !== swap.cautions.length)
      faults.push(`${name(missing, ids)}: says a thing twice`);
    return { swap, ids, stops: hazardsFor(store, { ...question, rules: EVERY_DIET }).stops };
  });
  return { list, whole: list.length < MOST, faults };
}

/** Whether a stop found with every diet at the table stands for this one. */
function stands(stop: Stop, { rules: { diets } }: Avoidable): boolean {
  if (stop.kind === "unless") return false;
  const rule = tables.hazards.hazards.find((h) => h.id === stop.hazard);
  if (rule) return rule.diners === undefined || rule.diners.some((d) => diets.includes(d));
  return tables.diets.diets.some((d) => diets.includes(d.id) && d.apart?.some((p) => p.id === stop.hazard) === true);
}

/** What must be left of the offers for one who avoids this. */
export function leftFor(offers: Offers, a: Avoidable): readonly Offer[] {
  const refused = refusedFor(a);
  return offers.list.filter((o) => !o.ids.some((id) => refused.has(id)) && !o.stops.some((s) => stands(s, a)));
}

/** Where the answer to one who avoids this is not what the gates leave; and what of it is carried or mended with. */
export function asked(missing: Ingredient, offers: Offers, a: Avoidable): readonly string[] {
  const { swaps } = swapsFor(c, { missing: missing.id, amount: "100 g", limit: MOST, avoid: a.avoid });
  const faults: string[] = [];
  const got = swaps.map((s) => s.use.map((u) => u.id).join("+"));
  const due = leftFor(offers, a).map((o) => o.ids.join("+"));
  const same = offers.whole ? got.join() === due.join() : due.every((ids, n) => n >= got.length || got[n] === ids);
  if (!same) {
    const more = got.filter((ids) => !due.includes(ids));
    const less = due.filter((ids) => !got.includes(ids));
    faults.push(`${missing.id} avoiding ${a.name}: more ${more.join(" ")}; less ${less.join(" ")}`);
  }
  for (const s of swaps) {
    const ids = s.use.map((u) => u.id as string);
    for (const id of ids)
      if (forbidden(get(id), a)) faults.push(`${name(missing, ids)} avoiding ${a.name}: carries it`);
    for (const x of s.corrections)
      if (x.grams > 0 && refusedFor(a).has(x.ingredient.id))
        faults.push(`${name(missing, ids)} avoiding ${a.name}: mended with ${x.ingredient.id}`);
  }
  return faults;
}

/** The n-th of a fixed rotation: the same on every run, and every pair once in `of` runs of different `shift`. */
export const turn = (n: number, shift: number): Avoidable =>
  AVOIDABLE[(n * 29 + shift * 7) % AVOIDABLE.length] as Avoidable;
