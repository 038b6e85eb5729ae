import { checkMeal, type Meal } from "../index.js";
import { open, readData } from "./open.js";
import { UsageError, type Values } from "./options.js";
import { mealText } from "./text.js";

export function mealCommand(positionals: readonly string[], values: Values): number {
  const file = positionals[0];
  if (file === undefined) throw new UsageError("Say which file holds the meal, or - for standard input.");
  const meal = readData(file) as Meal | null;
  if (typeof meal !== "object" || meal === null || !Array.isArray(meal.dishes))
    throw new UsageError(
      'A meal is { "serves": 6, "dishes": [{ "name": "...", "lines": ["500 g rice"] }] }, with "table", "have" and "soup" if you like.',
    );
  const report = checkMeal(open(values), meal);
  process.stdout.write(`${values.json ? JSON.stringify(report, undefined, 2) : mealText(report)}\n`);
  return report.gaps.length > 0 || report.cautions.some((x) => x.severity === "stop") ? 1 : 0;
}
