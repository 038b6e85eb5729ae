import { fail } from "../errors.js";
import type { SwapRequest } from "../types.js";

const text = (v: unknown): boolean => v === undefined || typeof v === "string";
const texts = (v: unknown): boolean => v === undefined || (Array.isArray(v) && v.every((x) => typeof x === "string"));
const number = (v: unknown): boolean => v === undefined || (typeof v === "number" && Number.isFinite(v) && v > 0);
const one =
  (...words: readonly string[]) =>
  (v: unknown): boolean =>
    v === undefined || (typeof v === "string" && words.includes(v));
const record = (v: unknown): v is Record<string, unknown> => typeof v === "object" && v !== null && !Array.isArray(v);

/** What each field of a request must be, in words for whoever sent it. */
const FIELDS: readonly (readonly [path: string, ok: (v: unknown) => boolean, want: string])[] = [
  ["missing", (v) => typeof v === "string" && v.trim() !== "", 'a line such as "450 g salt cod"'],
  ["amount", text, 'an amount such as "1 cup"'],
  ["instead", text, "the name of a food"],
  ["role", (v) => text(v) || texts(v), "a role or a list of roles"],
  ["for", text, 'words such as "binding"'],
  ["have", texts, "a list of foods"],
  ["onlyFromHave", (v) => v === undefined || typeof v === "boolean", "true or false"],
  ["minutes", (v) => v === 0 || number(v), "a number of minutes"],
  ["evidence", one("all", "computed"), '"all" or "computed"'],
  ["prefer", one("closest", "quickest", "cheapest"), '"closest", "quickest" or "cheapest"'],
  ["prices", (v) => v === undefined || record(v), "prices by ingredient id"],
  ["dish", (v) => v === undefined || record(v), "an object"],
  ["dish.technique", text, 'a technique such as "braise"'],
  ["dish.cuisine", text, "a tradition"],
  ["dish.serves", number, "a number above 0"],
  ["dish.grams", number, "grams above 0"],
  ["dish.lines", texts, "a list of recipe lines"],
  ["avoid", (v) => v === undefined || record(v), "an object with allergens, diets or foods"],
  ["avoid.allergens", texts, "a list of allergens"],
  ["avoid.diets", texts, "a list of diets"],
  ["avoid.foods", texts, "a list of foods"],
];

/** Requests come from JSON as often as from typed code: a field that is not what it should be is named, with what would work. */
export function checkRequest(request: unknown): asserts request is SwapRequest {
  if (!record(request))
    fail(
      "conflicting request",
      'A request is a line of text or an object with `missing`, such as { "missing": "450 g salt cod" }.',
      { fields: ["missing"] },
    );
  const at = (path: string): unknown => {
    const [first = "", second] = path.split(".");
    const value = Object.hasOwn(request, first) ? request[first] : undefined;
    return second === undefined ? value : record(value) && Object.hasOwn(value, second) ? value[second] : undefined;
  };
  const wrong = FIELDS.filter(([path, ok]) => !ok(at(path)));
  const [first] = wrong;
  if (first) fail("conflicting request", `${first[0]} must be ${first[2]}.`, { fields: wrong.map(([path]) => path) });
}
