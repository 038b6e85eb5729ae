// Golden queries on the shipped catalogue: what cooks type, and what they must never be told is a food.
import { describe, expect, it } from "vitest";
import { openCatalogue, storeOf } from "../../src/catalogue/index.js";
import { findFood, findInPhrase } from "../../src/names/index.js";

const us = openCatalogue();
const gb = openCatalogue({ locale: "en-GB" });
const lines = (text: string): string[] => text.split("\n").flatMap((l) => (l.trim() === "" ? [] : [l.trim()]));

describe("names cooks use", () => {
  it.each([
    ["cod", "cod/fresh"],
    ["bacalhau", "cod/salt-cured"],
    ["Tomatoes", "tomato/fresh"],
    ["kale", "kale/fresh"],
    ["potatoes", "potato/fresh"],
    ["onion", "onion/fresh"],
    ["garlic", "garlic/fresh"],
    ["garlic powder", "garlic/dried-powder"],
    ["butter, unsalted", "butter/fresh-unsalted"],
    ["half & half", "half-and-half/fresh"],
    ["egg whites", "egg.white/fresh"],
    ["whites of eggs", "egg.white/fresh"],
    ["cornstarch", "cornstarch/pantry"],
    ["corn-starch", "cornstarch/pantry"],
    ["zucchini", "zucchini/fresh"],
    ["courgettes", "zucchini/fresh"],
    ["aubergine", "eggplant/fresh"],
    ["coriander leaves", "cilantro/fresh"],
    ["ground coriander", "coriander-seed/dried-ground"],
    ["thyme, dried", "thyme/dried"],
    ["frozen spinach", "spinach/frozen"],
    ["tinned chickpeas", "chickpea/canned"],
    ["cooked rice", "white-rice/fresh-cooked"],
    ["crème fraîche", "creme-fraiche/fresh"],
    ["creme fraiche", "creme-fraiche/fresh"],
    ["yoghurt", "yogurt/fresh"],
    ["bicarbonate of soda", "baking-soda/pantry"],
    ["Worcestershire sauce", "worcestershire-sauce/pantry"],
    ["icing sugar", "powdered-sugar/pantry"],
    ["spring onions", "scallion/fresh"],
    ["dry white wine", "white-wine/pantry"],
    ["anchovies", "anchovy/cured-in-oil"],
  ])("%s is %s", (text, id) => {
    const found = findFood(us, text);
    expect(found[0]).toMatchObject({ id });
    expect(found[0]?.confidence).toBeGreaterThanOrEqual(0.9);
    expect(found[1]?.confidence ?? 0).toBeLessThan(found[0]?.confidence ?? 0);
  });
  it("settles false friends by the reader's English", () => {
    expect(findFood(us, "cornflour")[0]?.id).toBe("cornstarch/pantry");
    expect(findFood(gb, "cornflour")[0]?.id).toBe("cornstarch/pantry");
    expect(findFood(gb, "tomato purée")[0]?.id).toBe("tomato-paste/canned");
    expect(findFood(us, "tomato purée")[0]?.id).toBe("tomato-puree/canned");
  });
});

describe("misspellings", () => {
  it.each([
    ["tumeric", "turmeric"],
    ["brocolli", "broccoli"],
    ["parmesean", "parmesan"],
    ["worchestershire", "worcestershire-sauce"],
    ["cinammon", "cinnamon"],
    ["mozarella", "mozzarella"],
    ["mayonaise", "mayonnaise"],
    ["zuchini", "zucchini"],
    ["avacado", "avocado"],
    ["bannana", "banana"],
    ["cauliflour", "cauliflower"],
    ["asparagas", "asparagus"],
    ["rasberries", "raspberry"],
    ["vinagar", undefined],
    ["parsely", "parsley"],
    ["rosemarry", "rosemary"],
    ["oregeno", "oregano"],
    ["marscapone", "mascarpone"],
    ["letuce", undefined],
    ["cabage", undefined],
    ["chedder", "cheddar"],
    ["shrmip", "shrimp"],
    ["yougurt", "yogurt"],
    ["buter", "butter"],
    ["onoin", "onion"],
  ])("%s", (text, food) => {
    const best = findFood(us, text)[0];
    expect(best?.how).toBe("fuzzy");
    expect(best?.confidence).toBeLessThan(0.9);
    if (food !== undefined) expect(best?.id.split("/")[0]?.split(".")[0]).toBe(food);
  });
});

describe("no food", () => {
  it.each(
    "foil rope nail soap coat pan bowl plate thermometer string toothpick the of and 12 wire money beach paper floor grade stake table candle brush magazine sofa carpet window printer engine qwertyuiop lorem".split(
      " ",
    ),
  )("%s", (text) => {
    expect(findFood(us, text)).toEqual([]);
  });
  it.each(
    lines(`
      chicken wire
      egg timer
      egg cup
      butter dish
      apple corer
      lemon squeezer
      rice cooker
      cheese cloth
      cheesecloth
      baking sheet
      aluminium foil
      parchment paper
      meat thermometer
      wooden skewers
      toothpicks
      butcher's twine
      muffin tin
      garlic press
      potato peeler
      salad spinner
      pepper mill
      bread knife
      motor oil
      shea butter
      bath salts
      dairy-free ricotta
      imitation lobster
      mock turtle soup
      lemon-flavoured olive oil
      chocolate-flavored syrup
      butter substitute
      milk alternative
      chicken curry
      lemon cake
      potato salad
    `),
  )("%s", (phrase) => {
    expect(findInPhrase(us, phrase)).toBeUndefined();
  });
});

describe("phrases of recipes", () => {
  it.each([
    ["large ripe tomatoes, finely chopped", "tomato/fresh"],
    // never had egg, and made as somewhere it is made
    ["egg-free pasta", "pasta/dried"],
    ["country-style bread", "italian-bread/fresh"],
    ["boneless skinless chicken thighs", "boneless-chicken-thigh/fresh"],
    ["chicken thighs, bone-in, skin-on", "chicken-thigh/fresh"],
    ["freshly ground black pepper", "black-pepper/dried-ground"],
    ["low-sodium chicken broth", "chicken-stock/canned-unsalted"],
    ["dried salt cod fillet", "cod/salt-cured"],
    ["cooked white rice", "white-rice/fresh-cooked"],
    ["tinned chopped tomatoes", "tomato/canned-chopped"],
    ["extra-virgin olive oil, plus more for drizzling", "olive-oil/pantry"],
    ["good quality dark chocolate", "dark-chocolate/pantry"],
    ["can cannellini beans, drained and rinsed", "cannellini-bean/canned"],
    ["dried white beans, soaked overnight", "cannellini-bean/dried"],
    ["bunch curly kale, stems removed, leaves torn", "kale/fresh"],
    ["cloves of garlic, crushed", "garlic/fresh"],
    ["juice of 1 lemon", "lemon.juice/fresh"],
    ["lemon, cut into wedges", "lemon/fresh"],
    ["kosher salt and freshly ground black pepper", "kosher-salt/pantry-flakes"],
    ["white or red wine vinegar", "white-wine-vinegar/pantry"],
    ["light brown sugar, packed", "brown-sugar/pantry"],
    ["roasted red peppers, drained", "red-bell-pepper/canned-roasted"],
    ["frozen peas, thawed", "green-peas/frozen"],
    ["imitation crab", "crab-stick/frozen"],
    ["vegan butter", "vegan-butter/pantry"],
  ])("%s is %s", (phrase, id) => {
    const found = findInPhrase(us, phrase);
    expect(found?.candidates.map((m) => m.id)).toEqual([id]);
    expect(found?.match.confidence).toBeGreaterThanOrEqual(0.9);
  });
});

describe("bare words that honestly mean several foods", () => {
  const table = (storeOf(us).tables["names"] as { "bare words": Record<string, string[]> })["bare words"];
  it.each(Object.entries(table))("%s is any of %j, and says so", (word, foods) => {
    const found = findFood(us, word, { limit: 20 });
    expect(found.map((m) => m.id.slice(0, m.id.indexOf("/"))).sort()).toEqual([...foods].sort());
    expect(new Set(found.map((m) => m.confidence)).size).toBe(1);
  });
  it("leave fuller names alone", () => {
    expect(findFood(us, "black beans").length).toBe(1);
    expect(findFood(us, "white wine")[0]?.id).toBe("white-wine/pantry");
    expect(findFood(us, "maple syrup")[0]?.id).toBe("maple-syrup/pantry");
  });
});

// Common practice, no source: what two kitchens call by two names, and what only sounds alike.
describe("one food or two", () => {
  const foodOf = (text: string): string | undefined => findFood(us, text)[0]?.id.split("/")[0];
  const pairs = (text: string): [string, string][] =>
    text.split(";").map((pair) => pair.trim().split(" = ") as [string, string]);
  it.each(
    pairs(`
      coriander leaves = cilantro; rocket = arugula; swede = rutabaga; mangetout = snow peas; spring onion = scallion;
      beetroot = beet; garbanzo beans = chickpeas; broad beans = fava beans; haricot beans = navy beans;
      icing sugar = confectioners sugar; bicarb = baking soda; wholemeal flour = whole wheat flour;
      strong flour = bread flour; desiccated coconut = dried coconut; brinjal = aubergine; bhindi = okra;
      rajma = kidney beans; besan = gram flour; rava = sooji; dahi = yogurt; hing = asafoetida; haldi = turmeric;
      carom seeds = ajwain; imli = tamarind; kumara = sweet potato; silverbeet = Swiss chard; eschalot = shallot;
      calamari = squid; pepitas = pumpkin seeds; mooli = daikon; pak choi = bok choy; vanilla essence = vanilla extract;
      kadi patta = curry leaves; wombok = napa cabbage; rock sugar = sugar cubes
    `),
  )("%s is %s", (a, b) => {
    expect(foodOf(a)).toBeDefined();
    expect(foodOf(a)).toBe(foodOf(b));
  });
  it.each(
    pairs(`
      yam = sweet potato; celeriac = celery; parsley root = parsley; cornmeal = cornstarch; baking soda = baking powder;
      cream of coconut = coconut cream; coconut milk = coconut water; condensed milk = evaporated milk;
      apple cider = cider vinegar; rice vinegar = sake; water chestnut = chestnut; ginger ale = ginger;
      crab stick = crab; lemongrass = lemon; dill pickle = dill; sherry vinegar = sherry; smoked paprika = paprika;
      garlic salt = garlic; plantain = banana; horseradish = radish; goat cheese = goat; almond milk = milk;
      tamari = soy sauce; wild rice = rice; oyster sauce = oyster; lime leaf = lime; black cumin = cumin
    `),
  )("%s is not %s", (a, b) => {
    expect(foodOf(a) ?? foodOf(b)).toBeDefined();
    expect(findFood(us, a)[0]?.id).not.toBe(findFood(us, b)[0]?.id);
  });
  it.each(
    "baking parchment, pudding basin, cocktail sticks, jam jars, piping bag, muslin square, pie weights, egg poacher, butter knife, cheese board, fish kettle, rice paddle, tea towel, coffee filter paper, cake stand, salt shaker, cherry pitter, oyster knife, lolly sticks, silicone mat, milk frother, melon baller, dog biscuits, bird seed, hand soap".split(
      ", ",
    ),
  )("%s is none", (text) => {
    expect(findFood(us, text)).toEqual([]);
    expect(findInPhrase(us, text)).toBeUndefined();
  });
});
