import { storeOf, type Ingredient, type Store } from "../catalogue/index.js";
import { fail } from "../errors.js";
import { findFood, requireFood, readCuisine } from "../names/index.js";
import { nearestOf } from "../nearest.js";
import { readLine } from "../portion/index.js";
import { readAvoid, type AvoidRules } from "../safety/index.js";
import type { Catalogue } from "../types.js";
import type { PairingRequest } from "./types.js";

/** A request with every word understood. */
export interface Ask {
  readonly store: Store;
  readonly item: Ingredient;
  readonly have: readonly Ingredient[];
  readonly rules: AvoidRules;
  /** Empty: none asked for. */
  readonly traditions: readonly string[];
  readonly limit: number;
  readonly notUnderstood: readonly string[];
}
const MOST = 200;
const USUAL = 12;
const LONGEST_LIST = 1000;
const FIELDS: readonly string[] = ["food", "have", "avoid", "cuisine", "limit"];

function check(request: unknown): asserts request is PairingRequest {
  const wrong = (field: string, want: string): never =>
    fail("conflicting request", `${field} must be ${want}.`, { fields: [field] });
  if (typeof request !== "object" || request === null || Array.isArray(request))
    return wrong("request", 'the name of a food or an object such as { "food": "kale" }');
  const given = request as Readonly<Record<string, unknown>>;
  const strange = Object.keys(given).filter((k) => !FIELDS.includes(k));
  if (strange.length > 0)
    return fail(
      "conflicting request",
      `A request has no ${strange.slice(0, 5).join(", ").slice(0, 200)}; it holds ${FIELDS.join(", ")}.`,
      { fields: strange },
    );
  const { food, have, cuisine, limit } = given;
  if (typeof food !== "string" || food.trim() === "") wrong("food", "the name of a food");
  if (have !== undefined && !(Array.isArray(have) && have.every((h) => typeof h === "string")))
    wrong("have", "a list of foods");
  if (cuisine !== undefined && typeof cuisine !== "string") wrong("cuisine", "a tradition");
  if (limit !== undefined && !(typeof limit === "number" && Number.isInteger(limit) && limit >= 1 && limit <= MOST))
    wrong("limit", `a whole number from 1 to ${MOST}`);
}

/** @throws `unknown term` when no word of it names a kitchen */
function traditionsOf(store: Store, text: string): readonly string[] {
  const { traditions } = readCuisine(store, text);
  if (traditions.length > 0) return traditions;
  const accepted = store.terms["tradition"] ?? [];
  const nearest = nearestOf(text.slice(0, 100), accepted);
  return fail("unknown term", `No tradition called "${text.slice(0, 100)}". Nearest: ${nearest.join(", ")}.`, {
    kind: "tradition",
    input: text,
    nearest,
    accepted: [...accepted],
  });
}

/** An ambiguous word for something in the house means any of what it may be. */
function inTheHouse(c: Catalogue, store: Store, text: string): readonly Ingredient[] {
  const known = store.byId.get(text);
  if (known) return [known];
  const line = readLine(c, text);
  const ids = line.food ? [line.food.id] : line.candidates.map((m) => m.id);
  const found =
    ids.length > 0 ? ids : findFood(c, text, { limit: 5 }).flatMap((m) => (m.confidence >= 0.9 ? m.id : []));
  return found.flatMap((id) => store.byId.get(id) ?? []);
}

/** @throws `unknown food`, `ambiguous food`, `unknown term`, `conflicting request`, `input too large` */
export function readAsk(c: Catalogue, request: string | PairingRequest): Ask {
  const asked: unknown = typeof request === "string" ? { food: request } : request;
  check(asked);
  const store = storeOf(c);
  const item = requireFood(c, asked.food);
  const { have = [], limit = USUAL, cuisine } = asked;
  if (have.length > LONGEST_LIST)
    return fail("input too large", `have holds ${have.length} foods; the most is ${LONGEST_LIST}.`, {
      limit: LONGEST_LIST,
      size: have.length,
    });
  const notUnderstood: string[] = [];
  const house = have.flatMap((text) => {
    const found = inTheHouse(c, store, text);
    if (found.length === 0) notUnderstood.push(text.slice(0, 100));
    return found;
  });
  const rules = readAvoid(store, asked.avoid, (text) =>
    findFood(c, text, { limit: 20 }).flatMap((m) => (m.confidence >= 0.9 ? (store.byId.get(m.id) ?? []) : [])),
  );
  return {
    store,
    item,
    have: house,
    rules,
    traditions: cuisine === undefined ? [] : traditionsOf(store, cuisine),
    limit,
    notUnderstood,
  };
}
