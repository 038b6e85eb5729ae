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

/** The dishes as they are written down: the lines above, and how they are cooked. */
export const STEPS: Readonly<Record<string, { readonly minutes: number; readonly steps: readonly string[] }>> = {
  "Salt cod with onions and eggs": {
    minutes: 1500,
    steps: [
      "Soak the salt cod overnight in plenty of cold water. Drain and pat dry.",
      "Boil the potatoes in their skins until tender, then peel and slice them.",
      "Simmer the cod for 15 minutes, lift it out and break it into flakes.",
      "Cook the onions gently in the oil until soft and golden, then fold in the cod and the potatoes.",
      "Boil the eggs for 9 minutes, peel and quarter them, and lay them over the dish. Season with the pepper.",
    ],
  },
  "Braised kale": {
    minutes: 25,
    steps: [
      "Warm the oil with the garlic in a wide pot until it smells sweet.",
      "Add the kale by the handful, turning it as it wilts, and season with the salt.",
      "Cover and braise the kale for 15 minutes with a splash of water.",
    ],
  },
  "White-bean and cabbage soup with smoked sausage": {
    minutes: 45,
    steps: [
      "Fry the sausage, sliced, in a large pot until it browns.",
      "Add the carrot, diced, the cabbage, shredded, and 1.2 l water. Bring to a boil and simmer for 20 minutes.",
      "Stir in the beans and the salt and simmer for 5 minutes more.",
    ],
  },
};

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
