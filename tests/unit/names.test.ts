import { describe, expect, it } from "vitest";
import { isSteadfareError } from "../../src/errors.js";
import { editsWithin } from "../../src/names/distance.js";
import { foldText } from "../../src/names/fold.js";
import { findFood, findInPhrase, nearestNames, phraseWords, requireFood } from "../../src/names/index.js";
import { catalogueOf, SHELVES } from "../helpers/pantry.js";

const us = catalogueOf(SHELVES, "en-US", { "codfish/fresh": "cod/fresh" });
const gb = catalogueOf(SHELVES, "en-GB");
const ids = (text: string, c = us): string[] => findFood(c, text).map((m) => m.id);

describe("folding", () => {
  it.each([
    ["tomatoes", "tomato"],
    ["Potatoes", "potato"],
    ["leaves", "leaf"],
    ["loaves", "loaf"],
    ["anchovies", "anchovy"],
    ["radishes", "radish"],
    ["peaches", "peach"],
    ["cherries", "cherry"],
    ["berries", "berry"],
    ["brownies", "brownie"],
    ["cookies", "cookie"],
    ["quiches", "quiche"],
    ["olives", "olive"],
    ["chives", "chive"],
    ["peas", "pea"],
    ["oats", "oat"],
    ["zucchinis", "zucchini"],
    ["chillies", "chili"],
    ["chilies", "chilli"],
    ["chiles", "chili"],
    ["yoghurt", "yogurt"],
    ["flavour", "flavor"],
    ["colouring", "coloring"],
    ["gelatine", "gelatin"],
    ["fillets", "filet"],
    ["crème fraîche", "creme fraiche"],
    ["bœuf", "boeuf"],
    ["smørrebrød", "smorrebrod"],
    ["Weißwurst", "weisswurst"],
    ["chłodnik", "chlodnik"],
    ["baker's yeast", "bakers yeast"],
    ["all-purpose flour", "all purpose flour"],
    ["half & half", "half and half"],
    ["leaf of the bay", "leaf bay"],
    ["ＳＡＬＴ", "salt"],
    ["cre\u0301me", "crème"],
  ])("%s and %s are one name", (a, b) => {
    expect(foldText(a)).toBe(foldText(b));
    expect(foldText(a)).not.toBe("");
  });
  it.each(["molasses", "couscous", "asparagus", "hummus", "swiss", "brussels", "watercress", "citrus"])(
    "%s is not a plural",
    (word) => {
      expect(foldText(word)).toBe(word);
    },
  );
  it.each([
    ["か", "が"],
    ["क", "क़"],
    ["и", "й"],
    ["aubergine", "eggplant"],
    ["savory", "savoury"],
  ])("%s and %s stay two names", (a, b) => {
    expect(foldText(a)).not.toBe(foldText(b));
  });
});

describe("findFood", () => {
  it.each([
    // text, id, how
    ["cod", "cod/fresh", "default"],
    ["Cod", "cod/fresh", "default"],
    ["Atlantic cod", "cod/fresh", "default"],
    ["salt cod", "cod/salt-cured", "exact"],
    ["soy sauce", "soy-sauce/pantry", "exact"],
    ["shoyu", "soy-sauce/pantry", "alias"],
    ["cabillaud", "cod/fresh", "default"],
    ["タラ", "cod/fresh", "default"],
    ["cod/salt-cured", "cod/salt-cured", "exact"],
    ["chard.stem/fresh", "chard.stem/fresh", "exact"],
    ["frozen cod", "cod/frozen", "exact"],
    ["canned tomato", "tomato/canned", "exact"],
    ["rolled oats", "oats/pantry", "exact"],
    ["dried parsley", "parsley/dried", "exact"],
    ["milk powder", "milk/dried", "exact"],
    ["powdered milk", "milk/dried", undefined],
  ])("%s is %s for certain", (text, id, how) => {
    if (how === undefined) return expect(ids(text)).toEqual([]); // "dried" is not "powder" until the data says so
    expect(findFood(us, text)).toMatchObject([{ id, how, confidence: 1 }]);
  });
  it.each([
    ["cods", "cod/fresh"],
    ["SWISS CHARDS", "chard/fresh"],
    ["chard greens", "chard.leaf/fresh"],
    ["cod, salt", "cod/salt-cured"],
    ["cod fillets", "cod/fresh"],
    ["tomatoes", "tomato/fresh"],
    ["canned tomatoes", "tomato/canned"],
    ["tinned tomatoes", "tomato/canned"],
    ["tomatoes, canned, chopped", "tomato/canned-chopped"],
    ["beans, black, canned", "black-bean/canned"],
    ["black beans, cooked", "black-bean/dried-cooked"],
    ["juice of lemon", "lemon.juice/fresh"],
    ["lemon rind", "lemon.zest/fresh"],
    ["whites of egg", "egg.white/fresh"],
    ["stems of chard", "chard.stem/fresh"],
    ["ground cinnamon", "cinnamon/dried-ground"],
    ["powdered cinnamon", "cinnamon/dried-ground"],
    ["ground turmeric", "turmeric/dried-ground"],
    ["fresh turmeric", "turmeric/fresh"],
    ["smoked ground chili pepper", "chilli/dried-smoked-ground"],
    ["ground chilli peppers", "chilli/dried-ground"],
    ["dried chile peppers", "chilli/dried"],
    ["fresh chilli", "chilli/fresh"],
    ["corn starch", "cornstarch/pantry"],
    ["breadcrumbs", "breadcrumb/pantry"],
    ["half and half", "half-and-half/fresh"],
    ["cream tartar", "cream-of-tartar/pantry"],
    ["dry white wine", "white-wine/pantry"],
    ["anchovies in oil", "anchovy/canned-in-oil"],
    ["salted anchovies", "anchovy/salt-cured"],
    ["salted butter", "butter/fresh-salted"],
    ["unsalted butter", "butter/fresh-unsalted"],
    ["grated parmesan", "parmesan/aged-grated"],
    ["garlic powder", "garlic/dried-powder"],
    ["dried bay leaves", "bay-leaf/dried"],
  ])("%s folds to %s", (text, id) => {
    const found = findFood(us, text);
    expect(found.map((m) => m.id)).toEqual([id]);
    expect(found[0]?.confidence).toBeGreaterThanOrEqual(0.9);
  });
  it.each([
    ["tumeric", "turmeric/dried-ground"],
    ["brocolli", "broccoli/fresh"],
    ["parmesean", "parmesan/aged"],
    ["worchestershire", "worcestershire-sauce/pantry"],
    ["worchestershire sauce", "worcestershire-sauce/pantry"],
    ["cinammon", "cinnamon/dried"],
    ["parsely", "parsley/fresh"],
    ["chiken stock", "chicken-stock/pantry"],
    ["ground tumeric", "turmeric/dried-ground"],
    ["mushrom", "mushroom/fresh"],
  ])("%s is a misspelt %s", (text, id) => {
    const found = findFood(us, text);
    expect(found[0]?.id).toBe(id);
    expect(found[0]?.how).toBe("fuzzy");
    expect(found[0]?.confidence).toBeGreaterThanOrEqual(0.6);
    expect(found[0]?.confidence).toBeLessThan(0.9);
  });
  it.each(
    [
      "",
      " ",
      "the",
      "of",
      "a",
      "foil",
      "rope",
      "nail",
      "soap",
      "coat",
      "pan",
      "bowl",
      "plate",
      "thermometer",
      "string",
      "toothpick",
      "7",
      "1234",
      "12 g",
    ].concat([
      "https://example.com/cod",
      "qwertyuiop",
      "🍅",
      "???",
      "union",
      "honey bee",
      "grade",
      "smoked tofu",
      "cod liver oil",
      "x".repeat(501),
      "cod ".repeat(200),
    ]),
  )("%j is no food", (text) => {
    expect(findFood(us, text)).toEqual([]);
  });

  it("answers with every reading when no default is stated", () => {
    expect(ids("black bean")).toEqual(["black-bean/canned", "black-bean/dried", "black-bean/dried-cooked"]);
    expect(findFood(us, "black beans").every((m) => m.confidence === findFood(us, "black beans")[0]?.confidence)).toBe(
      true,
    );
  });
  it("prefers the reader's own English, and offers the other meaning behind it", () => {
    expect(findFood(us, "chips")).toMatchObject([
      { id: "crisps/pantry", confidence: 1 },
      { id: "fries/frozen", confidence: 0.9 },
    ]);
    expect(findFood(gb, "chips")).toMatchObject([
      { id: "fries/frozen", confidence: 1 },
      { id: "crisps/pantry", confidence: 0.9 },
    ]);
    expect(ids("cornflour", gb)[0]).toBe("cornstarch/pantry");
    expect(findFood(gb, "aubergine")).toMatchObject([{ id: "eggplant/fresh", name: "aubergine", how: "exact" }]);
  });
  it("prefers English to a word of another language spelled alike", () => {
    expect(findFood(us, "pain")).toMatchObject([
      { id: "bokkum/pantry", confidence: 1 },
      { id: "pain-de-mie/pantry", confidence: 0.9 },
    ]);
  });
  it("follows a former id and says so", () => {
    expect(findFood(us, "codfish/fresh")).toEqual([
      {
        id: "cod/fresh",
        name: "cod",
        matched: "codfish/fresh",
        confidence: 1,
        how: "exact",
        formerId: "codfish/fresh",
      },
    ]);
  });
  it("keeps voiced kana apart", () => {
    expect(ids("かき")).toEqual(["katakana-ka/fresh"]);
    expect(ids("がき")).toEqual(["katakana-ga/fresh"]);
  });
  it("limits and freezes", () => {
    expect(findFood(us, "black beans", { limit: 2 })).toHaveLength(2);
    expect(Object.isFrozen(findFood(us, "cod"))).toBe(true);
    expect(Object.isFrozen(findFood(us, "cod")[0])).toBe(true);
  });
});

describe("findInPhrase", () => {
  it.each([
    // phrase, ids, rest
    ["large ripe tomatoes finely chopped", "tomato/fresh", "large ripe finely chopped"],
    ["boneless skinless chicken thighs", "chicken-thigh/fresh", "boneless skinless"],
    ["freshly ground black pepper", "black-pepper/dried-ground", "freshly"],
    ["low-sodium chicken broth", "chicken-stock/pantry", "low sodium"],
    ["dried salt cod fillet", "cod/salt-cured", ""],
    ["salt cod fillet", "cod/salt-cured", ""],
    ["cooked white rice", "white-rice/fresh-cooked", ""],
    ["white rice, cooked", "white-rice/dried", "cooked"],
    ["tinned chopped tomatoes", "tomato/canned-chopped", ""],
    ["tomatoes, canned, drained", "tomato/canned", "drained"],
    ["extra-virgin olive oil", "olive-oil/pantry", ""],
    ["good quality dark chocolate", "dark-chocolate/pantry", "good quality"],
    ["juice of 1 lemon", "lemon.juice/fresh", ""],
    ["zest from 2 lemons", "lemon.zest/fresh", ""],
    ["garlic cloves, minced", "garlic/fresh", "cloves minced"],
    ["cloves garlic", "garlic/fresh", "cloves"],
    ["ground cloves", "clove/dried-ground", ""],
    ["potatoes, peeled and diced", "potato/fresh", "peeled and diced"],
    ["onion, sliced, plus parsley to serve", "onion/fresh", "sliced plus parsley to serve"],
    ["fresh flat-leaf parsley leaves, roughly chopped", "parsley/fresh", "flat leaf leaves roughly chopped"],
    ["butter, softened", "butter/fresh-unsalted", "softened"],
    ["half-and-half", "half-and-half/fresh", ""],
    ["free-range eggs, beaten", "egg/fresh", "free range beaten"],
    ["vegan butter", "vegan-butter/pantry", ""],
    ["can of tomatoes", "tomato/canned", "can of"],
    ["can tomato paste", "tomato/canned-paste", "can"],
    ["chopped fresh tomatoes", "tomato/fresh", "chopped"],
    ["olive oil for frying", "olive-oil/pantry", "for frying"],
    ["butter or vegan substitute", "butter/fresh-unsalted", "or vegan substitute"],
    ["salt to taste", "salt/pantry", "to taste"],
    ["dried lemon thyme, parsley", "parsley/fresh", undefined],
  ])("%s is %s", (phrase, id, rest) => {
    const found = findInPhrase(us, phrase);
    if (rest === undefined) return expect(found?.match.id ?? "none").not.toBe("lemon/fresh");
    expect(found?.candidates.map((m) => m.id)).toEqual([id]);
    expect(found?.rest).toBe(rest);
    expect(found?.match.confidence).toBeGreaterThanOrEqual(0.9);
  });
  it.each(
    [
      "vegan milk, plant-based milk, dairy-free milk, milk (dairy-free), non-dairy milk, gluten-free bread, egg-free mayonnaise, imitation cod, mock goat, lemon-flavored butter, lemon flavoured butter",
      "butter substitute, egg replacement, egg replacer, Greek-style yogurt, chicken wire, egg timer, butter dish, apple corer, lemon squeezer, rice cooker, cheese cloth, cheesecloth, baking sheet",
      "aluminium foil, parchment paper, meat thermometer, wooden skewers, toothpicks, garlic press, potato masher, shea butter, motor oil, lemon cake, tomato rice, oat milk, chicken soup mix, smoked mushrooms",
      "dark bread, sweet milk, egg cup, egg carton, potato salad, egg salad, body butter, salt-packed capers, lemon-roasted potato slices bowl, soy yogurt, muffin tin, egg wash, apple tin",
      "salt water taffy, cod liver oil, butter lettuce, goat cheese, milk chocolate, tomato and potato curry, smoked salmon, apple tree",
    ].flatMap((line) => line.split(", ")),
  )("%s is refused", (phrase) => {
    expect(findInPhrase(us, phrase)).toBeUndefined();
  });
  it("names every reading", () => {
    expect(findInPhrase(us, "large black beans")?.candidates).toHaveLength(3);
    expect(findInPhrase(us, "large canned black beans")?.candidates).toMatchObject([{ id: "black-bean/canned" }]);
  });
  it("takes the first of several foods and says which go along", () => {
    const found = findInPhrase(us, "salt and freshly ground black pepper");
    expect(found?.match.id).toBe("salt/pantry");
    expect(found?.also).toMatchObject([{ id: "black-pepper/dried-ground" }]);
    expect(findInPhrase(us, "butter or olive oil")).toMatchObject({
      match: { id: "butter/fresh-unsalted" },
      also: [{ id: "olive-oil/pantry" }],
    });
  });
  it("shares the last word", () => {
    expect(findInPhrase(us, "chicken or vegetable stock")).toMatchObject({
      match: { id: "chicken-stock/pantry" },
      also: [{ id: "vegetable-stock/pantry" }],
    });
  });
  it("reads juice and zest of one fruit", () => {
    expect(findInPhrase(us, "juice and zest of 1 lemon")).toMatchObject({
      match: { id: "lemon.juice/fresh" },
      also: [{ id: "lemon.zest/fresh" }],
    });
  });
  it("says what it let go, and is less sure", () => {
    expect(findInPhrase(us, "frozen potatoes")).toMatchObject({
      match: { id: "potato/fresh", how: "fuzzy", confidence: 0.85 },
      unmet: ["frozen"],
    });
    expect(findInPhrase(us, "Quayside potatoes")).toMatchObject({
      match: { id: "potato/fresh", how: "fuzzy", confidence: 0.8 },
      unknown: ["Quayside"],
    });
  });
  it("reads misspellings last and less surely", () => {
    const found = findInPhrase(us, "large brocolli florets, steamed");
    expect(found).toMatchObject({ match: { id: "broccoli/fresh", how: "fuzzy" } });
    expect(found?.match.confidence).toBeLessThan(0.9);
  });
  it("points at the words of the name", () => {
    const phrase = "2 large, ripe tomatoes (about 1 lb), diced";
    const found = findInPhrase(us, phrase);
    expect(phraseWords(phrase).slice(...(found?.words ?? [0, 0]))).toEqual(["tomatoes"]);
  });
});

describe("one food or an error", () => {
  it("returns the ingredient", () => {
    expect(requireFood(us, "salt cod").id).toBe("cod/salt-cured");
    expect(requireFood(us, "large ripe tomatoes").id).toBe("tomato/fresh");
  });
  it("throws unknown food with the nearest names", () => {
    const e = caught(() => requireFood(us, "brocolli"));
    expect(isSteadfareError(e, "unknown food") && e.data.nearest[0]?.id).toBe("broccoli/fresh");
    expect(
      isSteadfareError(
        caught(() => requireFood(us, "chicken wire")),
        "unknown food",
      ),
    ).toBe(true);
  });
  it("throws ambiguous food with the candidates", () => {
    const e = caught(() => requireFood(us, "black beans"));
    expect(isSteadfareError(e, "ambiguous food") && e.data.candidates).toHaveLength(3);
  });
  it("names the nearest even when far", () => {
    expect(nearestNames(us, "chocolates dark bitter", 3).length).toBeGreaterThan(0);
    expect(nearestNames(us, "zzzz", 3)).toEqual([]);
    expect(nearestNames(us, "brocolli", 1)).toHaveLength(1);
  });
});

describe("edits", () => {
  it.each([
    ["form", "from", 1],
    ["kitten", "sitting", 3],
    ["", "ab", 2],
    ["ca", "abc", 3], // optimal string alignment: no edit inside a swapped pair
    ["same", "same", 0],
  ])("%j to %j is %i", (a, b, n) => {
    expect(editsWithin(a, b, 5)).toBe(n);
    expect(editsWithin(b, a, 5)).toBe(n);
    if (n > 0) expect(editsWithin(a, b, n - 1)).toBe(n);
  });
});

function caught(run: () => unknown): unknown {
  try {
    run();
  } catch (e) {
    return e;
  }
  return undefined;
}
