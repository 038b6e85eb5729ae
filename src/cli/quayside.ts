import type { Meal } from "../index.js";

// The quayside supper: a harbour community kitchen cooks for six on a weeknight. All names and quantities are invented.
export const SUPPER = {
  serves: 6,
  dishes: [
    {
      name: "Tomato rice",
      lines: [
        "450 g long-grain white rice",
        "400 g can chopped tomatoes",
        "1 onion, chopped",
        "2 cloves garlic",
        "2 tbsp olive oil",
        "1 tsp salt",
      ],
    },
    {
      name: "Salt cod with onions and eggs",
      lines: [
        "450 g salt cod",
        "2 onions, sliced",
        "4 eggs",
        "400 g potatoes",
        "3 tbsp olive oil",
        "1/4 tsp white pepper",
      ],
    },
    { name: "Braised kale", lines: ["500 g kale", "2 cloves garlic", "1 tbsp olive oil", "1/4 tsp salt"] },
    {
      name: "White-bean and cabbage soup with smoked sausage",
      liquid: "1.2 l",
      lines: [
        "1 (15 oz) can white beans, drained",
        "300 g green cabbage",
        "200 g smoked sausage",
        "1 carrot",
        "1 tsp salt",
      ],
    },
  ],
} satisfies Meal;

export const TABLE = [
  { name: "the guest who eats no pork", avoid: { foods: ["pork"] } },
  { name: "the guest allergic to eggs", avoid: { allergens: ["egg"] } },
];
export const HOUSE = [
  "frozen cod",
  "chard",
  "spring greens",
  "cabbage",
  "chicken thighs",
  "canned chickpeas",
  "firm tofu",
  "black pepper",
];
