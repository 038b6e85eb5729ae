// Rules of English writing, not facts of food: both sides of every comparison pass through them, so a stem need not be a
// word ("cooky", "sloe" -> "slo"); it only has to be the same for every way the word is written.

/** Plurals no rule reaches, and words that only look plural. */
const IRREGULAR: ReadonlyMap<string, string> = new Map(
  Object.entries({
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
  }),
);

/** British, American and other spellings of one word, keyed by the stem. Names (aubergine, eggplant) are data, not spelling. */
const SPELLING: ReadonlyMap<string, string> = new Map(
  Object.entries({
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
    fibre: "fiber",
    filet: "fillet",
    gelatine: "gelatin",
    licorice: "liquorice",
    doughnut: "donut",
    omelet: "omelette",
    whiskey: "whisky",
    grey: "gray",
    castor: "caster",
    catsup: "ketchup",
    houmou: "hummus",
    houmous: "hummus",
    hommus: "hummus",
    humus: "hummus",
    humous: "hummus",
    phyllo: "filo",
    // as recipe cards shorten them
    bkg: "baking",
    pwdr: "powder",
    pdr: "powder",
    crm: "cream",
    evap: "evaporated",
    cond: "condensed",
    conf: "confectioner",
    br: "brown",
    grnd: "ground",
    frz: "frozen",
    froz: "frozen",
    jce: "juice",
    choc: "chocolate",
    mozz: "mozzarella",
    parm: "parmesan",
    gran: "granulated",
    veg: "vegetable",
    marg: "margarine",
    unsw: "unsweetened",
    chix: "chicken",
    chpd: "chopped",
    cr: "cream",
    brn: "brown",
    bak: "baking",
    pepp: "pepper",
    sug: "sugar",
    pwd: "powder",
    tom: "tomato",
    cabb: "cabbage",
    cinn: "cinnamon",
    nutm: "nutmeg",
    vanil: "vanilla",
    ched: "cheddar",
    chedd: "cheddar",
    ckn: "chicken",
    chkn: "chicken",
    bf: "beef",
    grd: "ground",
    grn: "green",
    blk: "black",
    pep: "pepper",
    cel: "celery",
    garl: "garlic",
    worc: "worcestershire",
    worch: "worcestershire",
    lem: "lemon",
    pineap: "pineapple",
    pnut: "peanut",
    btr: "butter",
    oatml: "oatmeal",
    flr: "flour",
    mlk: "milk",
    bmilk: "buttermilk",
    ckd: "cooked",
    crn: "corn",
    swt: "sweet",
    whl: "whole",
    rais: "raisin",
    oreg: "oregano",
    pars: "parsley",
    brocc: "broccoli",
    caulif: "cauliflower",
    mush: "mushroom",
    saus: "sausage",
    moz: "mozzarella",
    mayon: "mayonnaise",
    marshm: "marshmallow",
    drsg: "dressing",
    seas: "seasoning",
    tbl: "table",
    boullion: "bouillon",
    bullion: "bouillon",
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
    dessicated: "desiccated",
    pasteurised: "pasteurized",
    unpasteurised: "unpasteurized",
    homogenised: "homogenized",
    tinned: "canned",
  }),
);
// "tinned" reads as "canned" so that a listed "canned tomatoes" is also "tinned tomatoes".

/** Words that are more than their ending says: see {@link stem}. */
export const isOdd = (word: string): boolean => IRREGULAR.has(word) || SPELLING.has(word);

/** One spelling for a lower-case word without marks: plural to singular, British and American alike. */
export function stem(word: string): string {
  const w = word.length < 4 ? word : (IRREGULAR.get(word) ?? singular(word));
  return SPELLING.get(w) ?? w;
}

function singular(word: string): string {
  const last = word.charCodeAt(word.length - 1);
  if (last === 115 /* s */ && !word.endsWith("ss") && !word.endsWith("us")) return trailing(word.slice(0, -1));
  return last === 101 /* e */ ? trailing(word) : word;
}

/** Endings whose plural adds "es" lose their "e" in both numbers, so that neither form has to be recognised. */
function trailing(w: string): string {
  if (w.charCodeAt(w.length - 1) !== 101 || w.length < 4) return w;
  if (w.length >= 5 && w.endsWith("ie")) return `${w.slice(0, -2)}y`;
  const dropped =
    w.endsWith("oe") ||
    w.endsWith("xe") ||
    (w.length >= 5 &&
      (w.endsWith("use") || w.endsWith("che") || w.endsWith("she") || w.endsWith("sse") || w.endsWith("zze")));
  return dropped ? w.slice(0, -1) : w;
}
