import { examine, type Missed } from "./examine.js";

// Where the examination would also leave something out and the rule does not: one near at hand smells like it.
const NEAR: Missed = [
  ["in-asafoetida-dal", ["not left out"], "garlic, in every kitchen, has most of its smell"],
  ["in-kewra", ["not left out"], "orange blossom water is a flower water of the same kind with most of its smell"],
  ["vn-rice-paddy-herb", ["not left out"], "coriander leaf alone has two thirds of its smell"],
];

examine("the second examination", "second.yaml", 140, [
  ...NEAR,
  [
    "mx-tomatillo-house",
    ["poor above good"],
    "a lime in the house is not read as its juice, and cucumber is as like as tomato",
  ],
]);
