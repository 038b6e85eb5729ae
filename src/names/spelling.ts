// Rules of English writing, not facts of food: both sides of every comparison pass through them, so a stem need not be a
// word ("cooky", "sloe" -> "slo"); it only has to be the same for every way the word is written.

/** Plurals no rule reaches, and words that only look plural. */
const IRREGULAR: Readonly<Record<string, string>> = {
  leaves: "leaf",
  loaves: "loaf",
  halves: "half",
  calves: "calf",
  knives: "knife",
  shelves: "shelf",
  hooves: "hoof",
  feet: "foot",
  geese: "goose",
  bries: "brie",
  fungi: "fungus",
  octopi: "octopus",
  molasses: "molasses",
  brussels: "brussels",
  schnapps: "schnapps",
  anis: "anis",
  cassis: "cassis",
  pastis: "pastis",
  haggis: "haggis",
  menus: "menu",
  tofus: "tofu",
};

/** British, American and other spellings of one word, keyed by the stem. Names (aubergine, eggplant) are data, not spelling. */
const SPELLING: Readonly<Record<string, string>> = {
  flavour: "flavor",
  flavoured: "flavored",
  flavouring: "flavoring",
  colour: "color",
  coloured: "colored",
  colouring: "coloring",
  chilli: "chili",
  chilly: "chili",
  chily: "chili",
  chile: "chili",
  yoghurt: "yogurt",
  yogourt: "yogurt",
  yoghourt: "yogurt",
  soya: "soy",
  soybean: "soybean",
  fibre: "fiber",
  filet: "fillet",
  gelatine: "gelatin",
  licorice: "liquorice",
  doughnut: "donut",
  omelet: "omelette",
  whiskey: "whisky",
  whisk: "whisk",
  grey: "gray",
  castor: "caster",
  ketchup: "ketchup",
  catsup: "ketchup",
  houmou: "hummus",
  houmous: "hummus",
  hommus: "hummus",
  humus: "hummus",
  humous: "hummus",
  phyllo: "filo",
  fillo: "filo",
  bulghur: "bulgur",
  burghul: "bulgur",
  bulgar: "bulgur",
  kombu: "konbu",
  pimiento: "pimento",
  lite: "light",
  skimmed: "skim",
  sulphur: "sulfur",
  sulphured: "sulfured",
  unsulphured: "unsulfured",
  sulphite: "sulfite",
  mould: "mold",
  aluminium: "aluminum",
  caramelised: "caramelized",
  crystallised: "crystallized",
  desiccated: "desiccated",
  dessicated: "desiccated",
  pasteurised: "pasteurized",
  unpasteurised: "unpasteurized",
  homogenised: "homogenized",
  tinned: "canned",
  dry: "dried",
};
// "tinned" and "dry" read as "canned" and "dried" so that a listed "canned tomatoes" is also "tinned tomatoes".

/** One spelling for a lower-case word without marks: plural to singular, British and American alike. */
export function stem(word: string): string {
  let w = IRREGULAR[word];
  if (w === undefined) w = singular(word);
  return Object.hasOwn(SPELLING, w) ? (SPELLING[w] as string) : w;
}

function singular(word: string): string {
  if (word.length < 4) return word;
  if (Object.hasOwn(IRREGULAR, word)) return IRREGULAR[word] as string;
  let w = word;
  if (w.endsWith("s") && !w.endsWith("ss") && !w.endsWith("us")) w = w.slice(0, -1);
  return trailing(w);
}

/** Endings whose plural adds "es" lose their "e" in both numbers, so that neither form has to be recognised. */
function trailing(w: string): string {
  if (w.length >= 5 && w.endsWith("ie")) return `${w.slice(0, -2)}y`;
  if (w.length >= 4 && w.endsWith("oe")) return w.slice(0, -1);
  if (w.length >= 5 && w.endsWith("use")) return w.slice(0, -1);
  for (const end of ["che", "she", "xe", "sse", "zze"]) if (w.length > end.length + 1 && w.endsWith(end)) return w.slice(0, -1);
  return w;
}
