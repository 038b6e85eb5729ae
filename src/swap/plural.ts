// For printing counts: "4 eggs", "2 tomatoes". Rules for the head word, which in kitchen names stands last ("egg white", "hot dog").
const O_ES: readonly string[] = ["tomato", "potato", "mango", "jalapeno"];
const SAME: readonly string[] = [
  "fish",
  "shrimp",
  "squid",
  "cod",
  "trout",
  "salmon",
  "asparagus",
  "couscous",
  "molasses",
  "tuna",
  "halibut",
  "venison",
];
const ODD: Readonly<Record<string, string>> = {
  leaf: "leaves",
  loaf: "loaves",
  half: "halves",
  anchovy: "anchovies",
  radish: "radishes",
  goose: "geese",
};

/** The name as said of more than one. Names that are plural already, or of things not counted, stay. */
export function plural(name: string): string {
  const space = name.lastIndexOf(" ");
  const head = name.slice(space + 1);
  const lead = name.slice(0, space + 1);
  const low = head.toLowerCase();
  if (SAME.includes(low) || /\d|\)$/.test(head) || (low.endsWith("s") && !low.endsWith("ss") && !low.endsWith("us")))
    return name;
  const odd = ODD[low];
  if (odd !== undefined) return lead + odd;
  if (/[^aeiou]y$/.test(low)) return `${lead}${head.slice(0, -1)}ies`;
  if (/(s|x|z|ch|sh)$/.test(low) || O_ES.includes(low)) return `${lead}${head}es`;
  return `${lead}${head}s`;
}

/** What is weighed or spooned by the many, by the last word of its name. */
const SEVERAL: ReadonlySet<string> = new Set(
  (
    "mushroom bean chickpea lentil pea potato tomato nut almond walnut cashew hazelnut peanut pecan pistachio olive prawn caper raisin " +
    "date sausage clam mussel scallop apricot apple carrot onion shallot leek berry strawberry raspberry blueberry cherry seed noodle " +
    "sprout chestnut parsnip turnip drumstick thigh wing chop fig prune cockle oyster whelk hen artichoke peach pear plum grape"
  ).split(" "),
);
/** Done to it already, so it is one stuff: "1 cup chopped onion". */
const CUT: readonly string[] = [
  "chopped",
  "sliced",
  "shredded",
  "grated",
  "ground",
  "diced",
  "minced",
  "crushed",
  "mashed",
];
const MANY: readonly string[] =
  "cup cups g kg oz lb tbsp ml l can cans tin tins jar jars packet packets bunch bunches".split(" ");
/** The name as said after a measure of many small ones: "1 cup almonds", but "1 cup chopped onion". */
export function several(name: string, measure: string): string {
  const words = measure.split(" ");
  const unit = words[words.length - 1] ?? "";
  const many = MANY.includes(unit);
  const last = name.slice(name.lastIndexOf(" ") + 1).toLowerCase();
  return many && !CUT.some((w) => words.includes(w)) && SEVERAL.has(last) ? plural(name) : name;
}
