import { storeOf, type Ingredient, type Store } from "../catalogue/index.js";
import { fail } from "../errors.js";
import { findFood, readCuisine } from "../names/index.js";
import { parsePortion, portionOf, readLine, shareOf, wholeFish, usualGrams, weigh } from "../portion/index.js";
import { readQuantity } from "../quantity/index.js";
import { avoidSaid, mergeRules, readAvoid, type AvoidRules } from "../safety/index.js";
import type { Catalogue, Portion, RoleId, SwapRequest, TechniqueId } from "../types.js";
import { referenceDish, carrierOf } from "../dose/index.js";
import type { Stage } from "../likeness/index.js";
import { checkRequest } from "./request.js";
import { readJobs, techniqueOf, type Job } from "./setting.js";
import { PLATE } from "./eaten.js";
import { knownSwaps, type Known } from "./evidence.js";
import { nearestOf } from "../nearest.js";

export interface DishLine {
  readonly ingredient: Ingredient;
  readonly grams: number;
}
/** A request with every word looked up: what the rest of the room works on. */
export interface Ask {
  readonly catalogue: Catalogue;
  readonly store: Store;
  readonly missing: Portion;
  readonly item: Ingredient;
  /** Of what is eaten: where the job is to fill a plate, without the bones, shells and cobs that were weighed. */
  readonly grams: number;
  /** g eaten per g of the missing portion; 1 where the job is another. */
  readonly share: number;
  /** Whether the missing fish was whole: head, bones and all. */
  readonly whole: boolean;
  /** Asked by weight ("200 g", "8 oz"): the cook has a scale in hand. Else by the spoon, the cup or the piece. */
  readonly byWeight: boolean;
  /** The jobs that count, strongest first; weights are 0 to 1 and the first is 1. */
  readonly roles: readonly { readonly role: RoleId; readonly weight: number }[];
  readonly technique?: TechniqueId;
  readonly taste: "sweet" | "savoury" | "either";
  readonly stage: Stage;
  readonly dish: readonly DishLine[];
  /** True when dish.lines were given: then corrections never take more than is there. */
  readonly dishKnown: boolean;
  readonly dishGrams: number;
  /** The traditions of the dish's kitchen, as far as its words are known. */
  readonly cuisines?: readonly string[];
  readonly serves?: number;
  readonly rules: AvoidRules;
  readonly have?: ReadonlySet<string>;
  readonly onlyFromHave: boolean;
  readonly minutes?: number;
  readonly evidence: "all" | "computed";
  /** Published and common-practice swaps for this need; none when only computed answers are asked for. */
  readonly known: readonly Known[];
  readonly prefer?: "closest" | "quickest" | "cheapest";
  readonly prices?: Readonly<Record<string, number>>;
  readonly limit: number;
  readonly setting: string;
  readonly notUnderstood: readonly string[];
}

/** An unknown kitchen changes nothing and is told back. */
function cuisinesOf(store: Store, text: string | undefined, notUnderstood: string[]): { cuisines?: readonly string[] } {
  if (text === undefined) return {};
  const { traditions, unknown } = readCuisine(store, text);
  notUnderstood.push(...unknown);
  return traditions.length === 0 ? {} : { cuisines: traditions };
}

function rolesAsked(
  store: Store,
  item: Ingredient,
  request: SwapRequest,
  jobs: readonly Job[],
): { role: RoleId; weight: number }[] {
  const known = store.terms["role"] ?? [];
  const asked = request.role === undefined ? [] : typeof request.role === "string" ? [request.role] : request.role;
  for (const role of asked) {
    if (!known.includes(role))
      fail("unknown term", `"${role}" is no role. Nearest: ${nearestOf(role, known).join(", ")}.`, {
        kind: "role",
        input: role,
        nearest: nearestOf(role, known),
        accepted: [...known],
      });
  }
  if (asked.length > 0) return asked.map((role) => ({ role, weight: 1 }));
  const wanted = new Map<RoleId, number>();
  for (const job of jobs)
    for (const [role, weight] of Object.entries(job.roles ?? {}))
      wanted.set(role as RoleId, Math.max(weight, wanted.get(role as RoleId) ?? 0));
  // Jobs the ingredient cannot do at all say nothing of why it is in the dish.
  const own = new Map(item.roles.map((r) => [r.role, r.weight]));
  const possible = [...wanted].filter(([role]) => (own.get(role) ?? 0) > 0);
  if (possible.length > 0)
    return possible
      .map(([role, weight]) => ({ role, weight }))
      .sort((a, b) => b.weight - a.weight || (a.role < b.role ? -1 : 1));
  return item.roles
    .filter((r) => r.weight >= 0.2)
    .slice(0, 5)
    .map((r) => ({ role: r.role, weight: r.weight }));
}

const LONG: readonly string[] = ["braise", "stew", "slow cooker"];
const COLD: readonly string[] = ["raw", "whip", "set cold"];
const SWEET_ROLES: readonly string[] = ["sweetener"];
const SAVOURY_ROLES: readonly string[] = [
  "main protein",
  "leafy green",
  "crunchy stem",
  "bulk vegetable",
  "aromatic",
  "umami seasoning",
  "salt seasoning",
];

/** Whether the dish is sweet, from the words of the request, else from what the ingredient is bought for. */
function tasteOf(item: Ingredient, jobs: readonly Job[], roles: readonly { role: RoleId }[]): Ask["taste"] {
  for (const job of jobs) if (job.taste) return job.taste;
  const top = roles[0]?.role;
  if (top !== undefined && SAVOURY_ROLES.includes(top)) return "savoury";
  if (top !== undefined && SWEET_ROLES.includes(top)) return "sweet";
  return item.roles.some((r) => r.weight >= 0.7 && SAVOURY_ROLES.includes(r.role)) ? "savoury" : "either";
}

function readDish(c: Catalogue, store: Store, lines: readonly string[]): DishLine[] {
  return lines.flatMap((line) => {
    const { portion } = readLine(c, line);
    const ingredient = portion && store.byId.get(portion.id);
    return portion && ingredient ? [{ ingredient, grams: portion.grams * shareOf(ingredient, portion, line) }] : [];
  });
}

/** An id is taken as it stands; anything else is read as a recipe line. */
function portionMissing(c: Catalogue, store: Store, { missing, amount }: SwapRequest): Portion {
  const item = store.byId.get(store.tombstones.get(missing) ?? missing);
  if (!item) return parsePortion(c, missing, amount);
  const quantity = amount === undefined ? undefined : readQuantity(amount);
  const grams = quantity && weigh(store, item, quantity)?.grams;
  if (amount !== undefined && !(grams !== undefined && grams > 0))
    return fail(
      "unreadable amount",
      `"${amount.slice(0, 80)}" is no amount of ${store.nameOf(item)} that can be weighed. Try grams, or one of: ${[...new Set(item.measures.map((m) => m.unit))].join(", ")}.`,
      { input: amount.slice(0, 200), at: 0 },
    );
  return grams === undefined
    ? { ...portionOf(store, item, usualGrams(store, item)), assumed: true }
    : portionOf(store, item, grams);
}

const SCALE: readonly string[] = ["g", "kg", "oz", "lb"];
/** What is asked for by id has its amount apart; what is printed for it may be in another unit. */
function isByWeight(store: Store, { missing, amount }: SwapRequest, portion: Portion): boolean {
  const given = store.byId.has(store.tombstones.get(missing) ?? missing) ? amount : undefined;
  const unit = given === undefined ? undefined : readQuantity(given)?.unit;
  return unit ? unit.dimension === "mass" : SCALE.includes(portion.measure.unit);
}

const stageOf = (technique: TechniqueId | undefined): Stage =>
  technique === undefined ? "cooked" : LONG.includes(technique) ? "long" : COLD.includes(technique) ? "raw" : "cooked";

/** Looks every word of a request up. @throws `unknown food`, `ambiguous food`, `unreadable amount`, `unknown term`, `conflicting request`, `input too large` */
export function readAsk(c: Catalogue, request: SwapRequest): Ask {
  const store = storeOf(c);
  checkRequest(request);
  const limit = request.limit ?? 10;
  if (!Number.isInteger(limit) || limit < 1 || limit > 200)
    fail("input too large", `limit is ${String(limit)}; it is a whole number from 1 to 200.`, {
      limit: 200,
      size: Number(limit),
    });
  if (request.onlyFromHave === true && request.have === undefined)
    fail("conflicting request", "onlyFromHave needs `have`: list what is in the house.", {
      fields: ["onlyFromHave", "have"],
    });
  const missing = portionMissing(c, store, request);
  const item = store.byId.get(missing.id) as Ingredient;
  const notUnderstood: string[] = [];
  const setting = request.for ?? "";
  const read = readJobs(store, setting);
  const eaters = avoidSaid(store, setting);
  notUnderstood.push(...read.unknown.filter((w) => !w.split("-").every((part) => eaters.words.has(part))));
  const technique = techniqueOf(store, request, read.jobs, notUnderstood);
  const roles = rolesAsked(store, item, request, read.jobs);
  const taste = tasteOf(item, read.jobs, roles);
  const dish = readDish(c, store, request.dish?.lines ?? []);
  const top = roles[0]?.role ?? "main protein";
  const said = `${request.missing} ${request.amount ?? ""}`;
  const share = carrierOf(store, top) === PLATE ? shareOf(item, missing, said) : 1;
  const grams = missing.grams * share;
  const inDish = dish.reduce((sum, line) => sum + line.grams, 0);
  const dishGrams =
    request.dish?.grams ?? (inDish > 0 ? Math.max(inDish, grams) : referenceDish(store, item, top, grams));
  const asked = readAvoid(store, request.avoid, (text) =>
    findFood(c, text, { limit: 20 }).flatMap((m) => (m.confidence >= 0.9 ? (store.byId.get(m.id) ?? []) : [])),
  );
  // "Gluten-free cake" and "for babies" say who eats, wherever they are said.
  const rules = eaters.words.size === 0 ? asked : mergeRules([asked, eaters.rules]);
  const have =
    request.have === undefined
      ? undefined
      : new Set(request.have.slice(0, 1000).flatMap((text) => inTheHouse(c, store, text, notUnderstood)));
  const ask = {
    catalogue: c,
    store,
    missing,
    item,
    grams,
    share,
    whole: share < 1 && wholeFish(item, missing, said) !== undefined,
    byWeight: isByWeight(store, request, missing),
    roles,
    ...(technique === undefined ? {} : { technique }),
    taste,
    stage: stageOf(technique),
    dish,
    dishKnown: dish.length > 0,
    dishGrams,
    ...cuisinesOf(store, request.dish?.cuisine, notUnderstood),
    ...(request.dish?.serves === undefined ? {} : { serves: request.dish.serves }),
    rules,
    ...(have === undefined ? {} : { have }),
    onlyFromHave: request.onlyFromHave ?? false,
    ...(request.minutes === undefined ? {} : { minutes: request.minutes }),
    evidence: request.evidence ?? "all",

    ...(request.prefer === undefined ? {} : { prefer: request.prefer }),
    ...(request.prices === undefined ? {} : { prices: request.prices }),
    limit,
    setting,
    notUnderstood,
  } satisfies Omit<Ask, "known">;
  return { ...ask, known: knownSwaps(ask) };
}

/** An ambiguous word for something in the house means any of what it may be; one that is no food is said not to have been understood. */
function inTheHouse(c: Catalogue, store: Store, text: string, notUnderstood: string[]): string[] {
  if (store.byId.has(text)) return [text];
  const line = readLine(c, text);
  if (line.food) return [line.food.id];
  if (line.candidates.length > 0) return line.candidates.map((m) => m.id);
  const matches = findFood(c, text, { limit: 5 }).filter((m) => m.confidence >= 0.8);
  if (matches.length === 0) notUnderstood.push(text.slice(0, 100));
  return matches.filter((m) => m.confidence >= (matches[0]?.confidence ?? 1)).map((m) => m.id);
}

export const topCarrier = (ask: Pick<Ask, "store" | "roles">): string =>
  carrierOf(ask.store, ask.roles[0]?.role ?? "main protein");
