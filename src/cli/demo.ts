import {
  adaptRecipe,
  checkMeal,
  openCatalogue,
  readRecipe,
  STANDING_NOTICE,
  swapsFor,
  type Meal,
  type Swap,
  type SwapRequest,
} from "../index.js";
import { HOUSE, STEPS, SUPPER, TABLE } from "./quayside.js";
import { adaptedText } from "./adapted.js";
import { adviceText, mealText, said } from "./text.js";

// Plays the quayside supper through the public API: what is missing, what stands in, what changes, and the meal before and after.
const c = openCatalogue({ locale: "en-GB", measures: "metric" });
const say = (text = ""): void => void process.stdout.write(`${text}\n`);
const title = (text: string): void => say(`\n${text}\n${"-".repeat(text.length)}`);

const linesOf = (dish: string): string[] => SUPPER.dishes.find((d) => d.name.startsWith(dish))?.lines ?? [];
const gone = new Map<string, Swap>();
function gap(heading: string, dish: string, line: string, request: SwapRequest): void {
  title(heading);
  const advice = swapsFor(c, {
    ...request,
    missing: line,
    dish: { ...request.dish, serves: SUPPER.serves, lines: linesOf(dish).filter((l) => l !== line) },
  });
  say(adviceText(advice));
  const best = advice.swaps[0];
  if (best) gone.set(line, best);
}

say("The quayside supper: six people, four dishes, a shop out of salt cod and kale.");
title("The meal as planned");
const planned: Meal = { ...SUPPER, table: TABLE, have: HOUSE };
say(mealText(checkMeal(c, planned)));

// What stands in must suit everyone at the table.
const avoid = { foods: ["pork"], allergens: ["egg"] };
gap("No salt cod", "Salt cod", "450 g salt cod", { missing: "", dish: { technique: "simmer" }, avoid, limit: 5 });
gap("No kale, and only what is in the house", "Braised", "500 g kale", {
  missing: "",
  dish: { technique: "braise" },
  have: HOUSE,
  onlyFromHave: true,
  avoid,
  limit: 3,
});
gap("One guest eats no pork: the smoked sausage", "White-bean", "200 g smoked sausage", {
  missing: "",
  dish: { technique: "simmer" },
  avoid,
  limit: 4,
});
gap("One guest is allergic to eggs: the eggs in the salt cod", "Salt cod", "4 eggs", {
  missing: "",
  role: "main protein",
  dish: { technique: "fry" },
  have: HOUSE,
  onlyFromHave: true,
  avoid,
  limit: 3,
});

title("The meal as it is cooked: the first stand-in of each");
const printed = (s: Swap): string[] => s.use.map((u) => `${u.grams} g ${u.name}`);
const cooked: Meal = {
  ...planned,
  dishes: SUPPER.dishes.map((d) => ({
    ...d,
    lines: d.lines.flatMap((l) => (gone.has(l) ? printed(gone.get(l) as Swap) : [l])),
  })),
};
for (const [line, swap] of gone) say(`  ${line}  ->  ${swap.use.map(said).join(" + ")}`);
say();
say(mealText(checkMeal(c, cooked)));
title("The recipes rewritten, for everyone at the table");
for (const [name, how] of Object.entries(STEPS)) {
  const dish = SUPPER.dishes.find((d) => d.name === name);
  if (!dish) continue;
  const recipe = readRecipe(c, {
    "@type": "Recipe",
    name,
    recipeYield: `${SUPPER.serves} servings`,
    totalTime: `PT${how.minutes}M`,
    recipeIngredient: dish.lines,
    recipeInstructions: how.steps,
  });
  const missing = dish.lines.filter((l) => gone.has(l));
  const adapted = adaptRecipe(c, recipe, {
    missing: missing.map((line) => ({ line, swap: gone.get(line) as Swap })),
    avoid,
    have: HOUSE,
  });
  say(adaptedText(adapted));
  say();
}
say(STANDING_NOTICE);
