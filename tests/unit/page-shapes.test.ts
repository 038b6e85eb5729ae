// Six shapes of page, of our own making, with the faults pages have: cards with the data beside the words, amounts in spans, lines parted by
// <br>, tables, data that is not quite JSON, a story before and comments after.
import { describe, expect, it } from "vitest";
import { openCatalogue } from "../../src/catalogue/index.js";
import { readRecipe, type ReadRecipe } from "../../src/recipe/index.js";

const c = openCatalogue();
const read = (html: string): ReadRecipe => readRecipe(c, html);
const foods = (r: ReadRecipe): (string | undefined)[] => r.lines.map((l) => l.read.food?.id);
const grams = (r: ReadRecipe): (number | undefined)[] => r.lines.map((l) => l.read.portion?.grams);

describe("a card with its data in a graph", () => {
  const data = {
    "@context": "https://schema.org",
    "@graph": [
      { "@type": "WebPage", "@id": "#page", name: "A page", primaryImageOfPage: { "@id": "#image" } },
      { "@type": "BreadcrumbList", itemListElement: [{ "@type": "ListItem", position: 1, name: "Home" }] },
      {
        "@type": ["Recipe"],
        "@id": "#recipe",
        name: "Lemon &amp; Leek Tart",
        recipeYield: ["6", "6 servings"],
        prepTime: "PT20M",
        cookTime: "PT45M",
        totalTime: "PT1H5M",
        recipeIngredient: [
          "For the filling:",
          "2 leeks, white part only, sliced ((rinse well))",
          "&frac12; to &frac34; cup cream",
          "3 large eggs",
          "For the crust:",
          "1 sheet puff pastry, thawed",
          "  salt &amp; pepper , to taste",
        ],
        recipeInstructions: [
          {
            "@type": "HowToSection",
            name: "Filling",
            itemListElement: [
              { "@type": "HowToStep", text: "Fry the leeks for 10 minutes.", url: "#s1", image: "x.jpg" },
            ],
          },
          { "@type": "HowToStep", name: "Bake", text: "<p>Bake at 200&deg;C for 35&nbsp;minutes.</p>" },
        ],
      },
    ],
  };
  const r = read(
    `<!doctype html><html><head><title>Tart - A page</title><script type="application/ld+json" class="g">${JSON.stringify(data)}</script></head><body><nav><ul><li>Home<li>Recipes</ul></nav><h1>Tart</h1><p>My neighbour grows leeks.</p><div class="card"><h2>Ingredients</h2><ul><li><input type="checkbox"> 2 leeks</ul></div></body></html>`,
  );
  it("is read from its data alone", () => {
    expect([r.name, r.serves, r.minutes]).toEqual(["Lemon & Leek Tart", 6, 65]);
    expect(r.lines.map((l) => l.group)).toEqual([
      ...new Array<string>(3).fill("For the filling"),
      "For the crust",
      "For the crust",
    ]);
    expect(foods(r).slice(0, 4)).toEqual([
      "leek/fresh",
      expect.stringMatching(/cream\//),
      "egg/fresh",
      "puff-pastry/frozen",
    ]);
    expect(r.lines[4]?.read.food?.id).toBe("salt/pantry");
    expect(r.steps.map((s) => s.text)).toEqual(["Fry the leeks for 10 minutes.", "Bake at 200°C for 35 minutes."]);
    expect(r.document).toEqual(data);
  });
});

describe("microdata with the amount in spans", () => {
  const r = read(`<div itemscope itemtype="http://schema.org/Recipe"><h1 itemprop="name">Millet porridge</h1>
<meta itemprop="recipeYield" content="4 servings"><time itemprop="totalTime" datetime="PT30M">half an hour</time>
<ul><li itemprop="recipeIngredient"><span class="amount">1</span> <span class="unit">cup</span>
   <span class="name">millet</span><span class="notes">, rinsed</span></li>
<li itemprop="recipeIngredient"><span>500</span><span>&nbsp;ml</span> <a href="/milk">milk</a></li>
<li itemprop="recipeIngredient">2 tbsp honey <em>(or maple syrup)</em></li></ul>
<div itemprop="recipeInstructions"><ol><li>Toast the millet.</li><li>Simmer in the milk for 20 minutes.</li></ol></div>
<div itemprop="author" itemscope itemtype="http://schema.org/Person"><span itemprop="name">A cook</span></div></div>`);
  it("is read line by line", () => {
    expect([r.name, r.serves, r.minutes]).toEqual(["Millet porridge", 4, 30]);
    expect(r.lines.map((l) => l.text)).toEqual([
      "1 cup millet, rinsed",
      "500 ml milk",
      "2 tbsp honey (or maple syrup)",
    ]);
    expect(foods(r)).toEqual(["millet/pantry", "milk/fresh", "honey/pantry"]);
    expect(r.steps.map((s) => s.text)).toEqual(["Toast the millet.", "Simmer in the milk for 20 minutes."]);
  });
});

describe("no data at all: a story, check boxes, bold groups, comments", () => {
  const r = read(`<html><head><title>Greens | A page</title><style>li{color:red}</style></head><body>
<header><nav><a href="/">Home</a> <a href="/about">About</a></nav></header><article><h1>Braised greens with a sauce</h1>
<p>It rained for a week, and 2 cups of tea did not help.</p><figure><img src="a.jpg" alt="greens"><figcaption>Greens</figcaption></figure>
<h3>Ingredients</h3><p><strong>For the greens:</strong></p><ul>
<li><label><input type="checkbox"> 1 lb kale, stems removed</label></li><li><label><input type="checkbox"> 2 cloves garlic</label></li></ul>
<p><strong>For the sauce:</strong></p><ul><li>¼ cup tahini</li><li>juice of 1 lemon</li></ul>
<h3>Instructions</h3><ol><li><p>Braise the kale for 20 minutes.</p></li><li><p>Stir the tahini with the lemon juice.</p></li></ol>
<h3>Notes</h3><p>Chard does too.</p></article>
<section id="comments"><h2>3 comments</h2><p>I used 3 eggs!</p></section><script>track("1 cup sugar")</script></body></html>`);
  it("finds the lines, keeps groups, and leaves story and comments unread, not lost", () => {
    expect(r.name).toBe("Braised greens with a sauce");
    expect(r.lines.map((l) => [l.text, l.group])).toEqual([
      ["1 lb kale, stems removed", "For the greens"],
      ["2 cloves garlic", "For the greens"],
      ["¼ cup tahini", "For the sauce"],
      ["juice of 1 lemon", "For the sauce"],
    ]);
    expect(foods(r)).toEqual(["kale/fresh", "garlic/fresh", "tahini/pantry", "lemon.juice/fresh"]);
    expect(r.steps).toHaveLength(2);
    for (const kept of ["It rained for a week, and 2 cups of tea did not help.", "Chard does too.", "I used 3 eggs!"])
      expect(r.unread).toContain(kept);
    expect(JSON.stringify(r.unread)).not.toContain("track");
  });
});

describe("an old page: lines parted by <br>, nothing closed, capitals", () => {
  const r = read(`<HTML><BODY BGCOLOR=#FFFFFF><CENTER><H1>BARLEY SOUP</H1></CENTER><FONT SIZE=2>
<P><B>INGREDIENTS</B><P>1 cup pearl barley<BR>2 carrots, diced<BR>1 (14.5-ounce) can diced tomatoes<BR>6 cups water<BR>
<P><B>DIRECTIONS</B><P>1. Simmer the barley in the water for 45 minutes.<BR>2. Add the carrots and tomatoes; cook 15 minutes more.
<HR><FONT SIZE=1>Copyright nobody</BODY>`);
  it("is read all the same", () => {
    expect(r.name).toBe("BARLEY SOUP");
    expect(foods(r)).toEqual(["pearl-barley/pantry", "carrot/fresh", "tomato/canned-chopped", "water/pantry"]);
    expect(grams(r).every((g) => g !== undefined)).toBe(true);
    expect(r.steps.map((s) => s.text).slice(0, 2)).toEqual([
      "Simmer the barley in the water for 45 minutes.",
      "Add the carrots and tomatoes; cook 15 minutes more.",
    ]);
  });
});

describe("data that is not quite JSON, among other scripts", () => {
  const r = read(`<script>var recipe = {"@type":"Recipe","name":"no"};</script>
<script type="application/ld+json">{"@context":"https://schema.org","@type":"Organization","name":"A page"}</script>
<script type='application/ld+json; charset=utf-8'>
<!--
[[{"@context":"https://schema.org/","@type":"recipe","name":"Rice
and peas","recipeIngredient":"1 cup long-grain white rice\\n1 (15 oz) can kidney beans, drained\\n1 cup coconut milk",
"recipeInstructions":"Step 1: Boil the rice.\\nStep 2: Add the beans.","recipeYield":{"@type":"QuantitativeValue","value":"4"}}]];
-->
</script>`);
  it("is read round the faults", () => {
    expect([r.name, r.serves]).toEqual(["Rice and peas", 4]);
    expect(foods(r)).toEqual(["white-rice/pantry", "kidney-bean/canned", "coconut-milk/canned"]);
    expect(r.steps.map((s) => s.text)).toEqual(["Boil the rice.", "Add the beans."]);
  });
});

describe("a table of amounts, in two systems", () => {
  const r = read(`<h1>Flatbread</h1><h2>Ingredients (serves 4)</h2><table><thead><tr><th></th><th></th></tr></thead>
<tr><td>250 g / 2 cups</td><td>all-purpose flour</td></tr><tr><td>1 tsp</td><td>salt</td></tr>
<tr><td>150 ml<br></td><td>warm water</td></tr><tr><td><div>3</div><div>eggs</div></td></tr><tr><td>2 tbsp</td><td>olive oil, plus more for the pan</td></tr></table>
<h2>Method</h2><p>Knead for 10 minutes.</p><p>Fry on both sides.</p>`);
  it("each row is a line", () => {
    expect(r.lines.map((l) => l.text)).toEqual([
      "250 g / 2 cups all-purpose flour",
      "1 tsp salt",
      "150 ml warm water",
      "3 eggs",
      "2 tbsp olive oil, plus more for the pan",
    ]);
    expect(foods(r)).toEqual([
      "all-purpose-flour/pantry",
      "salt/pantry",
      "water/pantry",
      "egg/fresh",
      "olive-oil/pantry",
    ]);
    expect(r.steps).toHaveLength(2);
  });
});
