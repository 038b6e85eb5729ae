// The temperature an adapted recipe prints for flesh of another kind, against published charts; the source stands beside each row.
import { expect, it } from "vitest";
import { adaptRecipe, openCatalogue, readRecipe, swapsFor } from "../../src/index.js";

const CHART = "FoodSafety.gov chart, reproduced 2013; Mississippi State Extension 2016";
const HELD = "University of Nottingham: 70 °C for 2 minutes";
/** Missing line, what the recipe calls it, what is in the house, degrees Celsius, source. */
const rows: readonly (readonly ["en-US" | "en-GB", string, string, string, number, string])[] = [
  ["en-US", "1 lb cod", "cod", "chicken breast", 74, CHART],
  ["en-US", "1 lb cod", "cod", "turkey cutlet", 74, CHART],
  ["en-US", "1 lb ground beef", "beef", "ground turkey", 74, CHART],
  ["en-US", "1 lb chicken breast", "chicken", "pork loin", 63, CHART],
  ["en-US", "1 lb chicken breast", "chicken", "cod", 63, CHART],
  ["en-US", "1 lb ground turkey", "turkey", "ground beef", 71, CHART],
  ["en-GB", "450 g cod", "cod", "turkey steak", 70, HELD],
  ["en-GB", "450 g firm tofu", "tofu", "chicken breast", 70, HELD],
];
it.each(rows)("%s: %s (%s), %s instead: %i °C", (locale, line, called, house, celsius) => {
  const c = openCatalogue({ locale });
  const recipe = readRecipe(
    c,
    `Pot\n\nServes 4\n\nIngredients\n\n${line}\n1 onion\n\nMethod\n\nFry the onion with the ${called} until done.\n\nServe at once.`,
    "text",
  );
  const request = { missing: line, have: [house], onlyFromHave: true, dish: { technique: "fry" }, limit: 1 } as const;
  const [swap] = swapsFor(c, request).swaps;
  if (swap === undefined) throw new Error(`nothing for ${line}`);
  const { steps, notes } = adaptRecipe(c, recipe, { missing: [{ line, swap }] });
  // In the step it is cooked in, not where it is served
  const said = [...(steps[steps.length - 2]?.text ?? "").matchAll(/(\d+) °C/g)].map((m) => Number(m[1]));
  expect(said, `${steps.map((s) => s.text).join(" / ")} ${notes.join(" / ")}`).toContain(celsius);
});
it("says nothing of a temperature where a fish stands in for a fish", () => {
  const c = openCatalogue();
  const recipe = readRecipe(c, "Pot\n\nIngredients\n\n1 lb cod\n\nMethod\n\nFry the cod until it flakes.", "text");
  const [swap] = swapsFor(c, { missing: "1 lb cod", have: ["haddock"], onlyFromHave: true }).swaps;
  if (swap === undefined) throw new Error("no haddock");
  const made = adaptRecipe(c, recipe, { missing: [{ line: "1 lb cod", swap }] });
  expect(made.steps.map((s) => s.text)).toEqual(["Fry the haddock until it flakes."]);
});
