import { describe, expect, it } from "vitest";
import { openCatalogue, swapsFor } from "../../src/index.js";
import type { SwapRequest } from "../../src/index.js";

// Kitchen sense: what no cook would put first (1) or name at all among the first five (5). Common practice, no source.
// A table to grow. What the library still gets wrong stands in KNOWN_MISSES, which may only shrink.
const c = openCatalogue();
type Evidence = "all" | "computed";
type Case = readonly [missing: string, setting: string, never: string, within: 1 | 5, more?: Partial<SwapRequest>];

/** `never` is a food ("banana"), a part of one ("egg.white") or an ingredient with its state ("kidney-bean/dried"). */
const CASES: readonly Case[] = [
  // sweet things where meat, stock or vegetables belong
  ["1 egg", "meatballs", "banana", 5],
  ["1 egg", "meatloaf", "applesauce", 5],
  ["1 egg", "burgers", "sugar", 5],
  ["1 cup yogurt", "sauce", "vanilla-yogurt", 5],
  ["1 cup yogurt", "curry", "vanilla-yogurt", 5],
  ["1 cup greek yogurt", "dip, salad", "fruit-yogurt", 5],
  ["1 cup milk", "soup", "condensed-milk", 5],
  ["1 cup milk", "soup", "chocolate-milk", 5],
  ["1 cup milk", "gravy", "eggnog", 5],
  ["1 cup heavy cream", "soup", "whipped-topping", 5],
  ["1 cup heavy cream", "soup", "ice-cream", 5],
  ["1 cup heavy cream", "soup", "whipped-cream", 5],
  ["1 cup sour cream", "dip, salad", "vanilla-yogurt", 5],
  ["1 cup chicken stock", "soup", "apple", 5],
  ["1 cup chicken stock", "soup", "cola", 5],
  ["1 cup breadcrumbs", "meatballs", "graham-crackers", 5],
  ["1 cup breadcrumbs", "breading", "digestive-biscuits", 5],
  ["1 tbsp ketchup", "burgers", "strawberry-jam", 5],
  ["2 tbsp tomato paste", "stew", "jam", 5],
  ["1 cup mayonnaise", "sandwich", "whipped-cream", 5],
  ["1 cup mayonnaise", "salad", "vanilla-yogurt", 5],
  ["8 oz cream cheese", "dip, salad", "marshmallow", 5],
  ["1 cup onion", "soup", "apple", 5],
  ["500 g potato", "soup", "banana", 5],
  ["200 g peanut butter", "sandwich", "chocolate-syrup", 5],
  // savoury things where sweet ones belong
  ["1 cup sugar", "cake", "salt", 5],
  ["1 cup sugar", "cake", "garlic", 5],
  ["1 tsp vanilla extract", "cake", "garlic", 5],
  ["1 tsp vanilla extract", "cake", "soy-sauce", 5],
  ["1 tsp cinnamon", "cake", "garlic", 5],
  ["1 tsp cinnamon", "cake", "black-pepper", 5],
  ["1 tsp ground ginger", "cookies", "garlic", 5],
  ["1 tsp ground ginger", "cookies", "horseradish", 5],
  ["300 g strawberry", "dessert", "ketchup", 5],
  ["300 g strawberry", "dessert", "tomato", 5],
  ["1 cup butter", "cookies", "bacon-fat", 5],
  ["1 cup butter", "cake", "chicken-fat", 5],
  ["1 cup shortening", "cookies", "mayonnaise", 5],
  ["1 cup honey", "cake", "ketchup", 5],
  ["1 cup honey", "cake", "barbecue-sauce", 5],
  ["8 oz mascarpone", "dessert", "blue-cheese", 5],
  ["8 oz mascarpone", "dessert", "feta", 5],
  ["1 cup heavy cream", "whipping, dessert", "sour-cream", 5],
  ["1 cup milk", "cake", "chicken-stock", 5],
  ["1 cup milk", "custard", "tomato-juice", 5],
  ["1 cup raisins", "cookies", "ripe-olive", 5],
  ["1 cup raisins", "cookies", "tomato", 5],
  ["1 cup applesauce", "cake", "tomato-sauce", 5],
  ["6 oz chocolate chips", "cookies", "chicken-bouillon", 5],
  ["2 tbsp rum", "dessert", "shaoxing-wine", 5],
  ["2 tbsp brandy", "dessert", "beer", 5],
  ["1 cup caster sugar", "meringue", "molasses", 5],
  ["1 cup powdered sugar", "cakes", "all-purpose-flour", 5],
  // one word, another thing
  ["1 tsp salt", "soup", "baking-soda", 5],
  ["1 tsp salt", "baking", "baking-soda", 5],
  ["1 tsp salt", "soup", "curing-salt", 5],
  ["1 tsp salt", "salad", "curing-salt", 5],
  ["1 tsp baking powder", "cake", "salt", 5],
  ["1 tsp baking powder", "cake", "cornstarch", 1],
  ["1 cup almonds", "salad", "almond-extract", 5],
  ["1 cup almonds", "cake", "almond-milk", 5],
  ["1 cup coconut milk", "curry", "coconut-extract", 1],
  ["1 cup coconut milk", "curry", "coconut-water", 5],
  ["1 tbsp lemon juice", "dressing", "lemon-extract", 5],
  ["1 tbsp lemon juice", "dressing", "lemonade", 5],
  ["1 cup buttermilk", "pancakes", "butter", 5],
  ["1 cup cornstarch", "thickening", "cornmeal", 5],
  ["1 tbsp cornstarch", "sauce, thickening", "baking-powder", 5],
  ["1 tbsp cornstarch", "sauce, thickening", "powdered-sugar", 5],
  ["1 cup flour", "bread", "powdered-sugar", 5],
  ["1 cup bread flour", "bread", "coconut-flour", 5],
  ["1 cup bread flour", "bread", "rice-flour", 5],
  ["2 1/4 tsp active dry yeast", "bread", "nutritional-yeast", 5],
  ["2 1/4 tsp active dry yeast", "bread", "yeast-extract", 5],
  ["1 tbsp gelatin", "jelly", "cornstarch", 5],
  ["1 oz dutch cocoa", "cake", "coffee", 5],
  ["3 tbsp cocoa powder", "cake", "coffee", 5],
  ["3 tbsp cocoa powder", "cake", "cinnamon", 5],
  ["1 cup olive oil", "dressing", "chili-oil", 5],
  ["1 cup vegetable oil", "deep frying", "butter", 5],
  ["1 cup vegetable oil", "deep frying", "sesame-oil", 5],
  ["1 cup vegetable oil", "cake", "truffle-oil", 5],
  // herbs and spices
  ["1/4 cup basil", "pasta", "peppermint", 5],
  ["1/4 cup basil", "pizza", "peppermint-extract", 5],
  ["1/4 cup basil", "sauce", "lavender", 5],
  ["1/4 cup parsley", "stew", "mint", 5],
  ["1/4 cup parsley", "stew", "lavender", 5],
  ["1/4 cup parsley", "soup", "peppermint", 5],
  ["1 tbsp oregano", "pizza", "mint", 1],
  ["1 tbsp cilantro", "salad", "rosemary", 5],
  ["1 tsp paprika", "stew", "turmeric", 1],
  ["1 tsp cumin", "chili", "cinnamon", 5],
  ["1 tsp cumin", "chili", "cocoa-powder", 5],
  ["1 tsp turmeric", "curry", "cinnamon", 5],
  ["1 tsp black pepper", "soup", "clove", 5],
  ["1 clove garlic", "sauce", "vanilla-extract", 5],
  ["1 clove garlic", "sauce", "ginger", 5],
  ["1 bay leaf", "stew", "mint", 5],
  ["1 tbsp dijon mustard", "dressing", "wasabi", 1],
  ["1 tsp nutmeg", "custard", "cumin", 5],
  // cheese, meat, fish
  ["1 cup ricotta", "pasta, casserole", "blue-cheese", 5],
  ["1 cup ricotta", "pasta, casserole", "parmesan", 5],
  ["8 oz mozzarella", "pizza", "cream-cheese", 5],
  ["8 oz mozzarella", "pizza", "limburger", 5],
  ["1/2 cup grated parmesan", "pasta", "brie", 5],
  ["4 oz cheddar", "sandwich", "whipped-cream", 5],
  ["500 g cooked chicken", "pastry", "tuna", 1],
  ["500 g cooked chicken", "casserole", "chicken-liver", 5],
  ["500 g chicken breast", "curry", "anchovy", 5],
  ["500 g chicken breast", "stir-fry", "oxtail", 5],
  ["500 g ground beef", "burgers", "beef-liver", 5],
  ["500 g ground beef", "chili", "surimi", 5],
  ["500 g ground beef", "burgers", "stewing-beef", 5],
  ["500 g cod", "frying", "anchovy", 5],
  ["500 g cod", "frying", "caviar", 5],
  ["500 g salmon", "grilling", "cod-liver", 5],
  ["200 g bacon", "sandwich", "chocolate-chips", 5],
  ["200 g firm tofu", "stir-fry", "cream-cheese", 5],
  // vegetables, pulses, grains, fruit
  ["1 can kidney beans", "salad", "kidney-bean/dried", 5],
  ["1 can kidney beans", "chili", "kidney-bean/dried", 5],
  ["1 can chickpeas", "salad", "chickpea/dried", 5],
  ["300 g cooked rice", "salad", "potato/fresh", 5],
  ["300 g pasta", "soup", "puffed-rice", 5],
  ["300 g pasta", "casserole", "cornflakes", 5],
  ["300 g grapes", "salad", "kalamata-olive", 5],
  ["300 g grapes", "dessert", "green-olive", 5],
  ["300 g apple", "pastry, dessert", "onion", 5],
  ["300 g apple", "pastry, dessert", "potato", 5],
  ["300 g tomato", "dessert", "ketchup", 5],
  ["300 g tomato", "salad", "ketchup", 5],
  ["300 g tomato", "salad", "tomato-paste", 5],
  ["300 g cucumber", "salad", "dill-pickle", 1],
  ["300 g lettuce", "salad", "sauerkraut", 5],
  ["300 g romaine", "salad", "rhubarb", 5],
  ["300 g spinach", "salad", "cassava-leaves", 5],
  ["300 g spinach", "salad", "taro-leaves", 5],
  ["300 g carrots", "salad", "cassava", 5],
  ["300 g mushrooms", "salad", "morel", 5],
  ["300 g green beans", "salad", "kidney-bean/dried", 5],
  ["1 avocado", "salad", "durian", 5],
  ["300 g peas", "soup", "edamame", 1],
  ["1 cup walnuts", "salad", "chestnut", 1],
  ["1 cup walnuts", "cookies", "peanut-butter", 5],
  ["1 cup white wine", "sauce", "rum", 5],
  ["1 cup white wine", "sauce", "peppermint-extract", 5],
  ["1 cup red wine", "stew", "cola", 5],
  ["1 cup water", "bread", "white-vinegar", 5],
  ["1 tbsp soy sauce", "stir-fry", "chocolate-syrup", 5],
  ["1 tbsp soy sauce", "stir-fry", "coffee", 5],
  ["1 tbsp fish sauce", "stir-fry", "vanilla-extract", 5],
  ["1 tbsp capers", "pasta", "raisin", 5],
  // mixtures that only add up on paper, and things of the same family that do another job
  ["1 cup greek yogurt", "dip, salad", "vegetable-oil", 5],
  ["1 cup greek yogurt", "dip, salad", "butter", 5],
  ["1 cup sour cream", "dip, salad", "vegetable-oil", 5],
  ["1 cup sour cream", "dip, salad", "butter", 5],
  ["8 oz cream cheese", "dip, salad", "evaporated-milk", 5],
  ["8 oz cream cheese", "cake", "cheddar", 5],
  ["8 oz cream cheese", "cake", "mexican-cheese-blend", 5],
  ["8 oz cream cheese", "cake", "egg.white", 5],
  ["8 oz mascarpone", "dessert", "butter", 5],
  ["8 oz mascarpone", "dessert", "burrata", 5],
  ["1 cup milk", "cake", "cream-cheese", 5],
  ["1 cup butter", "cake", "cream-cheese", 5],
  ["1 cup heavy cream", "whipping, dessert", "egg", 5],
  ["1 egg yolk", "custard", "mayonnaise", 5],
  ["1 cup coconut milk", "curry", "apple.juice", 5],
  ["1 tbsp ketchup", "burgers", "cola", 5],
  ["1 tsp celery seed", "soup", "cinnamon", 5],
  ["1 tsp celery seed", "salad", "nutmeg", 5],
  ["1 tbsp lemongrass", "curry", "carrot", 5],
  ["1 cup sour cream", "dip", "single-cream", 5],
  ["1 cup sour cream", "dip", "evaporated-milk", 5],
  ["8 oz cream cheese", "dip", "light-whipping-cream", 5],
  ["8 oz cream cheese", "dip", "nonfat-dry-milk", 5],
  ["1 cup pesto", "pasta", "mayonnaise", 1],
  ["1 cup pesto", "pasta", "msg", 5],
  ["1 cup mayonnaise", "sandwich", "margarine", 5],
  ["1 cup mayonnaise", "salad", "shortening", 5],
  ["1 cup self-rising flour", "cake", "egg", 5],
  ["1 cup self-rising cornmeal", "baking", "egg-substitute", 5],
  ["1 tbsp garam masala", "curry", "vanilla-sugar", 5],
  ["1 tsp baking powder", "cake", "instant-yeast", 5],
  ["1 tsp baking powder", "cake", "bakers-ammonia", 5],
  ["1 tsp baking soda", "cookies", "instant-yeast", 5],
  ["2 1/4 tsp active dry yeast", "bread", "baking-soda", 5],
  ["2 1/4 tsp active dry yeast", "bread", "baking-powder", 5],
  ["1 cup water", "soup", "cola", 5],
  ["1 cup water", "soup", "ginger-ale", 5],
  ["1 cup water", "bread", "lemon-lime-soda", 5],
  ["1 cup water", "bread", "non-alcoholic-wine", 5],
  ["1 cup coffee", "drink", "non-alcoholic-beer", 5],
  ["1 cup beer", "stew", "green-tea", 5],
  ["1 cup applesauce", "cake", "fruit-cocktail", 5],
  ["1 cup oats", "cookies", "steel-cut-oats", 1],
  ["1 cup oats", "cookies", "cornmeal", 5],
  ["1 cup caster sugar", "meringue", "sugar-cubes", 1],
  ["1 cup caster sugar", "meringue", "pearl-sugar", 5],
  ["200 g firm tofu", "stir-fry", "sundubu", 5],
  ["200 g bacon", "sandwich", "smoked-paprika", 5],
  ["1 cup black olives", "pizza", "pomegranate.juice", 5],
  ["500 g salmon", "grilling", "salmon/salt-cured", 5],
  ["300 g peas", "soup", "okra", 5],
  // what does not set where the egg must
  ["3 eggs", "omelette", "black-turtle-bean", 5],
  ["3 eggs", "omelette", "pumpkin", 5],
  ["3 eggs", "quiche", "gelatin", 5],
  ["3 eggs", "custard", "gelatin", 5],
  // what was cut too fine to be put together again
  ["1 head cauliflower", "roast", "cauliflower/fresh-grated", 1],
  ["1 zucchini", "stir-fry", "zucchini/fresh-grated", 1],
  ["1 avocado", "salad", "avocado/fresh-puree", 1],
];

/** Still wrong, each with why it is absurd. The library has learned a row when its test fails: then the row goes. */
const KNOWN_MISSES: readonly (readonly [key: string, why: string])[] = [
  ["8 oz cream cheese | cake | cheddar | computed", "a ripened cheese has no note that bars it from a cake"],
  ["1 cup water | bread | non-alcoholic-wine | all", "wine for water"],
  ["1 cup water | bread | non-alcoholic-wine | computed", "wine for water"],
  ["1 cup coffee | drink | non-alcoholic-beer | computed", "only the water is matched"],
  ["1 cup applesauce | cake | fruit-cocktail | computed", "pieces of fruit in syrup are no puree"],
  ["300 g peas | soup | okra | computed", "slimy where peas are mealy"],
];
const missed = new Set(KNOWN_MISSES.map(([key]) => key));

const keyOf = ([missing, setting, never]: Case, evidence: Evidence): string =>
  `${missing} | ${setting} | ${never} | ${evidence}`;

function isOf(id: string, never: string): boolean {
  if (never.includes("/")) return id === never;
  const food = id.split("/")[0] as string;
  return never.includes(".") ? food === never : food.split(".")[0] === never;
}

function names([missing, setting, never, within, more]: Case, evidence: Evidence): readonly string[] {
  const { swaps } = swapsFor(c, { missing, for: setting, evidence, limit: 5, ...more });
  // An answer of nothing would pass every row.
  expect(swaps.length).toBeGreaterThan(0);
  return swaps
    .slice(0, within)
    .filter((s) => s.use.some((u) => isOf(u.id, never)))
    .map((s) => s.use.map((u) => u.id).join(" + "));
}

const BOTH: readonly Evidence[] = ["all", "computed"];
const rows = CASES.flatMap((row) => BOTH.map((evidence) => ({ row, evidence, key: keyOf(row, evidence) })));

describe("what no cook would answer (common practice, no source)", () => {
  it("is a table of distinct cases, and every known miss is one of them", () => {
    const keys = rows.map((r) => r.key);
    expect(new Set(keys).size).toBe(keys.length);
    expect(CASES.length).toBeGreaterThanOrEqual(80);
    expect([...missed].filter((k) => !keys.includes(k))).toEqual([]);
    expect(missed.size).toBe(KNOWN_MISSES.length);
  });
  it.each(rows.filter((r) => !missed.has(r.key)).map((r) => [r.key, r] as const))(
    "not %s",
    (_key, { row, evidence }) => {
      expect(names(row, evidence)).toEqual([]);
    },
  );
  it.each(rows.filter((r) => missed.has(r.key)).map((r) => [r.key, r] as const))(
    "still missed: %s",
    (_key, { row, evidence }) => {
      expect(names(row, evidence)).not.toEqual([]);
    },
  );
});
