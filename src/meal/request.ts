import { fail } from "../errors.js";
import type { Meal } from "../types.js";

const record = (v: unknown): v is Record<string, unknown> => typeof v === "object" && v !== null && !Array.isArray(v);
const texts = (v: unknown): boolean => v === undefined || (Array.isArray(v) && v.every((x) => typeof x === "string"));
const wrong = (field: string, want: string): never =>
  fail("conflicting request", `${field} must be ${want}.`, { fields: [field] });

/** Meals come from JSON as often as from typed code: a field that is not what it should be is named, with what would work. */
export function checkMealShape(meal: unknown): asserts meal is Meal {
  if (!record(meal)) wrong("meal", "an object with `serves` and `dishes`");
  const { serves, dishes, table, have, soup } = meal as Record<string, unknown>;
  if (!(typeof serves === "number" && Number.isFinite(serves) && serves > 0 && serves <= 100_000))
    wrong("serves", "a number of people above 0");
  if (!Array.isArray(dishes))
    return wrong("dishes", 'a list of dishes, each { "name": "...", "lines": ["500 g rice"] }');
  dishes.forEach((dish: unknown, i) => {
    if (!record(dish)) return wrong(`dishes[${i}]`, 'a dish, { "name": "...", "lines": ["500 g rice"] }');
    if (typeof dish["name"] !== "string") wrong(`dishes[${i}].name`, "a name");
    const lines = dish["lines"];
    const ok =
      Array.isArray(lines) && lines.every((l) => typeof l === "string" || (record(l) && typeof l["text"] === "string"));
    if (!ok) wrong(`dishes[${i}].lines`, "a list of recipe lines");
    if (dish["liquid"] !== undefined && typeof dish["liquid"] !== "string")
      wrong(`dishes[${i}].liquid`, 'a volume such as "1.5 l"');
  });
  if (!texts(have)) wrong("have", "a list of foods");
  if (soup !== undefined && soup !== "expected" && soup !== "optional") wrong("soup", '"expected" or "optional"');
  if (table === undefined) return;
  if (!Array.isArray(table)) return wrong("table", "a list of guests, each with `avoid`");
  table.forEach((guest: unknown, i) => {
    const avoid = record(guest) ? guest["avoid"] : undefined;
    if (!record(avoid) || ![avoid["allergens"], avoid["diets"], avoid["foods"]].every(texts))
      wrong(`table[${i}].avoid`, "an object with lists of allergens, diets or foods");
  });
}
