import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { openCatalogue, readLine } from "../../src/index.js";

// Household weights as a recipe line is weighed, against the published table itself: USDA National Nutrient Database for Standard
// Reference, Release 28, file WEIGHT. Each row: a line as cooks write it, the NDB number, and the measure of that record word for word.
// Pairs were chosen so that line and measure say the same thing. Left out where they do not: a spoon of dry yeast (the table has 12 g a
// tablespoon and 7.2 g a packet of 2 1/4 tsp, which cannot both be), a cup of whipped cream, a lemon without its peel.
const PAIRS: readonly (readonly [line: string, ndb: string, measure: string])[] = [
  ["1 cup all-purpose flour", "20081", "cup"],
  ["1 cup granulated sugar", "19335", "cup"],
  ["1 tsp sugar", "19335", "tsp"],
  ["1 cup packed brown sugar", "19334", "cup packed"],
  ["1 cup powdered sugar", "19336", "cup unsifted"],
  ["1 tbsp honey", "19296", "tbsp"],
  ["1 cup honey", "19296", "cup"],
  ["1 cup molasses", "19304", "cup"],
  ["1 cup maple syrup", "19353", "cup"],
  ["1 tsp salt", "02047", "tsp"],
  ["1 tbsp salt", "02047", "tbsp"],
  ["1 tsp baking soda", "18372", "tsp"],
  ["1 tsp baking powder", "18369", "tsp"],
  ["1 tsp cream of tartar", "18373", "tsp"],
  ["1 cup cornmeal", "20020", "cup"],
  ["1 cup cornstarch", "20027", "cup"],
  ["1 cup long-grain white rice", "20444", "cup"],
  ["1 cup brown rice", "20036", "cup"],
  ["1 cup quinoa", "20035", "cup"],
  ["1 cup whole wheat flour", "20080", "cup"],
  ["1 cup rye flour", "20064", "cup"],
  ["1 cup semolina", "20466", "cup"],
  ["1 cup dried lentils", "16069", "cup"],
  ["1 cup dried black beans", "16014", "cup"],
  ["1 cup dried chickpeas", "16056", "cup"],
  ["1 cup dried kidney beans", "16032", "cup"],
  ["1 cup dried split peas", "16085", "cup"],
  ["1 cup dried navy beans", "16037", "cup"],
  ["1 cup dried pinto beans", "16042", "cup"],
  ["1 cup whole milk", "01077", "cup"],
  ["1 cup buttermilk", "01088", "cup"],
  ["1 tbsp heavy cream", "01053", "tbsp"],
  ["1 cup sour cream", "01056", "cup"],
  ["1 cup plain yogurt", "01116", "cup (8 fl oz)"],
  ["1 tbsp butter", "01001", "tbsp"],
  ["1 stick butter", "01001", "stick"],
  ["1 cup shredded cheddar", "01009", "cup, shredded"],
  ["1 cup ricotta", "01036", "cup"],
  ["1 cup cottage cheese", "01012", "cup, small curd (not packed)"],
  ["1 large egg", "01123", "large"],
  ["1 large egg white", "01124", "large"],
  ["1 large egg yolk", "01125", "large"],
  ["1 tbsp olive oil", "04053", "tablespoon"],
  ["1 cup olive oil", "04053", "cup"],
  ["1 tbsp lard", "04002", "tbsp"],
  ["1 cup mayonnaise", "04025", "cup"],
  ["1 tbsp soy sauce", "16123", "tbsp"],
  ["1 tbsp fish sauce", "06179", "tbsp"],
  ["1 tbsp ketchup", "11935", "tbsp"],
  ["1 tsp yellow mustard", "02046", "tsp or 1 packet"],
  ["1 cup vinegar", "02053", "cup"],
  ["1 tbsp cider vinegar", "02048", "tbsp"],
  ["1 tbsp tomato paste", "11546", "tbsp"],
  ["1 cup tomato sauce", "11549", "cup"],
  ["1 cup chopped onion", "11282", "cup, chopped"],
  ["1 medium onion", "11282", 'medium (2-1/2" dia)'],
  ["1 clove garlic", "11215", "clove"],
  ["1 tsp garlic powder", "02020", "tsp"],
  ["1 tsp onion powder", "02026", "tsp"],
  ["1 medium carrot", "11124", "medium"],
  ["1 cup chopped carrot", "11124", "cup chopped"],
  ["1 medium stalk celery", "11143", 'stalk, medium (7-1/2" - 8" long)'],
  ["1 cup chopped celery", "11143", "cup chopped"],
  ["1 cup shredded green cabbage", "11109", "cup, shredded"],
  ["1 cup chopped broccoli", "11090", "cup chopped"],
  ["1 cup raw spinach", "11457", "cup"],
  ["1 cup sliced mushrooms", "11260", "cup, pieces or slices"],
  ["1 medium tomato", "11529", 'medium whole (2-3/5" dia)'],
  ["1 cup chopped tomatoes", "11529", "cup, chopped or sliced"],
  ["1 medium potato", "11354", 'medium (2+-1/4" to 3-1/4" dia.)'],
  ["1 medium zucchini", "11477", "medium"],
  ["1 medium cucumber", "11205", 'cucumber (8-1/4")'],
  ["1 avocado", "09038", "fruit, without skin and seed"],
  ["1 medium apple", "09003", 'medium (3" dia)'],
  ["1 medium banana", "09040", 'medium (7" to 7-7/8" long)'],
  ["1 cup lemon juice", "09152", "cup"],
  ["1 cup orange juice", "09206", "cup"],
  ["1 cup raisins", "09298", "cup (not packed)"],
  ["1 cup almonds", "12061", "cup, whole"],
  ["1 cup chopped walnuts", "12155", "cup, chopped"],
  ["1 cup pecans", "12142", "cup, halves"],
  ["1 cup peanuts", "16087", "cup"],
  ["1 tbsp peanut butter", "16098", "tbsp"],
  ["1 tbsp sesame seeds", "12201", "tbsp"],
  ["1 tbsp tahini", "12698", "tbsp"],
  ["1 tsp ground cinnamon", "02010", "tsp"],
  ["1 tsp cumin seeds", "02014", "tsp, whole"],
  ["1 tsp paprika", "02028", "tsp"],
  ["1 tsp ground turmeric", "02043", "tsp"],
  ["1 tsp ground ginger", "02021", "tsp"],
  ["1 tsp dried oregano", "02027", "tsp, leaves"],
  ["1 tsp dried thyme", "02042", "tsp, leaves"],
  ["1 tsp dried basil", "02003", "tsp, leaves"],
  ["1 tsp ground black pepper", "02030", "tsp, ground"],
  ["1 tsp cayenne pepper", "02031", "tsp"],
  ["1 tsp curry powder", "02015", "tsp"],
  ["1 tsp ground nutmeg", "02025", "tsp"],
  ["1 tsp ground cloves", "02011", "tsp"],
  ["1 cup chopped parsley", "11297", "cup chopped"],
  ["1 tbsp cocoa powder", "19165", "tbsp"],
  ["1 cup breadcrumbs", "18079", "cup"],
  ["1 cup canned coconut milk", "12118", "cup"],
  ["1 cup evaporated milk", "01153", "cup"],
  ["1 packet active dry yeast", "18375", "packet"],
  ["1 tbsp capers", "02054", "tbsp, drained"],
  ["1 slice bacon", "10123", "slice raw"],
  ["1 tsp vanilla extract", "02050", "tsp"],
  ["1 tbsp prepared horseradish", "02055", "tbsp"],
  ["1 cup canned pumpkin puree", "11424", "cup"],
  ["1 cup frozen peas", "11312", "cup"],
  ["1 cup corn kernels", "11167", "cup"],
  ["1 cup bulgur", "20012", "cup"],
  ["1 cup pearl barley", "20005", "cup"],
  ["1 cup couscous", "20028", "cup"],
];

const table = new Map<string, number>();
for (const row of readFileSync(
  new URL("../../data/composition/usda-sr28-household-weights.tsv", import.meta.url),
  "utf8",
).split("\n")) {
  const [ndb, amount, measure, grams] = row.split("\t");
  if (ndb !== undefined && measure !== undefined) table.set(`${ndb}|${measure}`, Number(grams) / Number(amount));
}
const c = openCatalogue();
const gramsOf = (line: string): number => readLine(c, line).portion?.grams ?? Number.NaN;

describe("household weights, USDA SR28", () => {
  it("names at least 40 different records", () => {
    expect(new Set(PAIRS.map(([, ndb]) => ndb)).size).toBeGreaterThanOrEqual(40);
  });
  // The table rounds a spoon to 0.1 g and a cup to 1 g, so its own tsp, tbsp and cup differ by a few in a hundred; grams print to 0.1.
  it.each(PAIRS)("%s (NDB %s, 1 %s)", (line, ndb, measure) => {
    const published = table.get(`${ndb}|${measure}`) ?? Number.NaN;
    const grams = gramsOf(line);
    expect(Math.abs(grams - published), `${grams} g against ${published} g`).toBeLessThanOrEqual(
      0.05 * published + 0.051,
    );
  });
  it("two and a half times as much weighs two and a half times as much", () => {
    for (const [line] of PAIRS) {
      const more = line.replace(/^1 /, "2 1/2 ");
      // both are rounded to 0.1 g, so the single one may be 0.05 off before it is multiplied
      expect(Math.abs(gramsOf(more) - 2.5 * gramsOf(line)), more).toBeLessThanOrEqual(0.05 + 2.5 * 0.05 + 1e-9);
    }
  });
});
