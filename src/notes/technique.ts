import type { Recipe, TechniqueId } from "../types.js";

/** Words of a method and the technique they speak of. "Can" and "set" alone are everyday words and say nothing. */
const WORDS: Readonly<Record<string, TechniqueId>> = {
  bake: "bake",
  baked: "bake",
  bakes: "bake",
  baking: "bake",
  roast: "roast",
  roasted: "roast",
  roasting: "roast",
  simmer: "simmer",
  simmers: "simmer",
  simmered: "simmer",
  simmering: "simmer",
  poach: "simmer",
  boil: "boil",
  boils: "boil",
  boiled: "boil",
  braise: "braise",
  braised: "braise",
  braising: "braise",
  stew: "stew",
  stewed: "stew",
  stewing: "stew",
  steam: "steam",
  steamed: "steam",
  steaming: "steam",
  fry: "fry",
  fried: "fry",
  frying: "fry",
  saute: "fry",
  sauté: "fry",
  sautéed: "fry",
  sauteed: "fry",
  sear: "fry",
  brown: "fry",
  stirfry: "stir-fry",
  deepfry: "deep-fry",
  deepfried: "deep-fry",
  grill: "grill",
  grilled: "grill",
  grilling: "grill",
  broil: "grill",
  barbecue: "grill",
  marinate: "marinate",
  marinade: "marinate",
  whip: "whip",
  whipped: "whip",
  pickle: "pickle",
  ferment: "ferment",
};
/** "Baking powder", "a baking sheet", "a frying pan", "brown sugar": things, not techniques. */
const THINGS: readonly string[] = [
  "powder",
  "soda",
  "sheet",
  "tray",
  "dish",
  "paper",
  "pan",
  "tin",
  "sugar",
  "rice",
  "bread",
  "lentils",
  "cream",
  "water",
];
const MOST_STEPS = 200;
const MOST_WORDS = 400;

const wordsOf = (text: string): string[] =>
  text
    .slice(0, 4000)
    .toLowerCase()
    .replaceAll("stir-fry", "stirfry")
    .replaceAll("deep-fry", "deepfry")
    .replaceAll("deep-fried", "deepfried")
    .replaceAll("slow cooker", "slowcooker")
    .split(/[^\p{L}]+/u)
    .filter((w) => w !== "")
    .slice(0, MOST_WORDS);

function techniquesIn(words: readonly string[]): TechniqueId[] {
  return words.flatMap((word, i): TechniqueId[] => {
    if (word === "slowcooker") return ["slow cooker"];
    const technique = Object.hasOwn(WORDS, word) ? WORDS[word] : undefined;
    return technique === undefined || THINGS.includes(words[i + 1] ?? "") ? [] : [technique];
  });
}
const stem = (word: string): string => (word.length > 3 && word.endsWith("s") ? word.slice(0, -1) : word);

/** From a recipe's steps, the technique each of its ingredients goes through: told by the step that names it, else by the whole. */
export function techniqueGuess(recipe: Recipe): (name: string) => TechniqueId | undefined {
  const steps = recipe.steps.slice(0, MOST_STEPS).map((s) => {
    const words = wordsOf(s.text);
    return { stems: new Set(words.map(stem)), found: techniquesIn(words) };
  });
  const all = steps.flatMap((s) => s.found);
  const count = (t: TechniqueId): number => all.filter((x) => x === t).length;
  // What is said most often; of those said as often, what is said last, since a dish ends as it is served.
  const whole = all.reduce<TechniqueId | undefined>(
    (best, t) => (best === undefined || count(t) >= count(best) ? t : best),
    undefined,
  );
  return (name) => {
    const head = stem(wordsOf(name).at(-1) ?? "");
    if (head.length < 3) return whole;
    const own = steps.find((s) => s.stems.has(head) && s.found.length > 0);
    return own?.found.at(-1) ?? whole;
  };
}
