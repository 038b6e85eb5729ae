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
