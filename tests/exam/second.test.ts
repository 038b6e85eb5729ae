import { examine, type Missed } from "./examine.js";

const NEAR =
  "going without is offered only where nothing that stands in smells or tastes like it: here something fair does";
const misses = (ids: readonly string[], why: string): Missed => ids.map((id) => [id, ["not left out"], why] as const);

examine("the second examination", "second.yaml", 140, [
  ...misses(
    [
      "it-pancetta-none-veg",
      "lv-pomegranate-seeds",
      "ir-rose-water-dessert",
      "in-asafoetida-dal",
      "in-asafoetida-jain",
      "in-kewra",
      "jp-shiso-garnish",
      "vn-rice-paddy-herb",
      "day-onion-fodmap",
      "day-celery-soup",
      "day-pine-nuts-pesto-allergy",
    ],
    NEAR,
  ),
  [
    "day-egg-cake-allergy",
    ["no good one in three", "poor above good"],
    "published tables name baking powder with vinegar, gelatin and beans for any cake, which outweighs common practice",
  ],
  [
    "mx-tomatillo-house",
    ["poor above good"],
    "a lime in the house is not read as its juice, and cucumber is as like as tomato",
  ],
]);
