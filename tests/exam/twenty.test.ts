import { examine, type Missed } from "./examine.js";

// Followed as they are read (see docs/accuracy.md), but not in the words the list of good answers was written in, which stays as it was.
const OTHERWISE: Missed = [
  ["ge-tkemali-pork", ["no good one in three"], "pomegranate molasses comes let down with water and garlic"],
  [
    "nl-smoked-sausage-pea-soup",
    ["no good one in three"],
    "beef smoked sausage; the frankfurters come with smoked paprika",
  ],
  [
    "nl-apple-syrup-stew",
    ["no good one in three", "poor above good"],
    "date syrup, a dark fruit syrup; maple syrup third",
  ],
];

examine("twenty requests", "twenty.yaml", 20, OTHERWISE);
