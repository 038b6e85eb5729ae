import type { Recipe } from "../types.js";
import { temperaturesIn } from "./temperatures.js";
import { tokensOf } from "./text.js";

/** Words that only a warm kitchen says. To take a hot dish for a raw one would have fish frozen for nothing, so there are many. */
const HEAT: ReadonlySet<string> = new Set(
  (
    "cook cooked cooking heat heated oven melt melted toast toasted warm warmed hot pan pot microwave skillet casserole saucepan wok hob " +
    "stove tray gas flame fire coals embers preheat char charred blister render reduce bubble bubbling foam foams foaming golden tender done flakes " +
    "opaque flip degrees caramelise caramelize scramble poached grilled fried baked roasted"
  ).split(" "),
);

/** Whether nothing in the steps says warmth: then what goes in is eaten as it is. False without steps. */
export function isUncooked(recipe: Recipe): boolean {
  const texts = recipe.steps.map((s) => s.text.slice(0, 5000));
  const warm = (text: string): boolean =>
    temperaturesIn(text).length > 0 ||
    /\b(?:skin|cut|each|other|both|per) sides?\b/i.test(text) ||
    tokensOf(text).some((t) => HEAT.has(t.text));
  return texts.length > 0 && !texts.some(warm);
}
