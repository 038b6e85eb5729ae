import { describe, expect, it } from "vitest";
import {
  adaptRecipe,
  isSteadfareError,
  openCatalogue,
  readLine,
  swapsFor,
  type AdaptOptions,
  type AdaptedRecipe,
  type Recipe,
  type Swap,
} from "../../src/index.js";
import { adaptedMarkdown, adaptedText } from "../../src/cli/adapted.js";

const c = openCatalogue({ locale: "en-GB", measures: "metric" });
const recipeOf = (lines: readonly string[], steps: readonly string[], more: Partial<Recipe> = {}): Recipe => ({
  name: "Supper",
  serves: 4,
  minutes: 60,
  lines: lines.map((text) => ({ text, read: readLine(c, text) })),
  steps: steps.map((text) => ({ text })),
  unread: [],
  source: { from: "a test" },
  ...more,
});
/** The best stand-in from this house. */
function swapOf(missing: string, ...have: string[]): Swap {
  const [swap] = swapsFor(c, { missing, have, onlyFromHave: true, dish: { technique: "simmer" } }).swaps;
  if (swap === undefined) throw new Error(`nothing for ${missing}`);
  return swap;
}
const textsOf = (r: AdaptedRecipe): { lines: string[]; steps: string[] } => ({
  lines: r.lines.map((l) => l.text),
  steps: r.steps.map((s) => s.text),
});
const without = (r: Recipe, line: string, ...have: string[]): AdaptedRecipe =>
  adaptRecipe(c, r, { missing: [{ line, swap: swapOf(line, ...have) }] });

describe("what is left by a soak", () => {
  const lines = ["20 g dried porcini", "1 l vegetable stock", "300 g risotto rice"];
  const steps = [
    "Soak the porcini in 300 ml hot water for 20 minutes, then drain, reserving the soaking liquid.",
    "Simmer the rice with the porcini, the stock and the strained soaking liquid.",
  ];
  it("is replaced by more of the recipe's own stock, on a line of its own", () => {
    const made = without(recipeOf(lines, steps), "20 g dried porcini", "mushrooms");
    expect(textsOf(made).lines).toContain("300 ml vegetable stock, in place of the mushroom soaking liquid");
    expect(made.steps.map((s) => s.text).join(" ")).toContain("300 ml more stock");
    expect(made.steps.map((s) => s.text).join(" ")).not.toMatch(/soak/i);
    expect(made.minutes).toBeLessThan(60);
  });
  it("is rescaled with the rest", () => {
    const r = recipeOf(lines, steps);
    const swap = swapOf("20 g dried porcini", "mushrooms");
    const made = adaptRecipe(c, r, { missing: [{ line: "20 g dried porcini", swap }], serves: 8 });
    expect(textsOf(made).lines).toContain("600 ml vegetable stock, in place of the mushroom soaking liquid");
    expect(made.steps.map((s) => s.text).join(" ")).toContain("600 ml more stock");
  });
  it("is water where the recipe has no stock", () => {
    const made = without(
      recipeOf(["20 g dried porcini", "300 g risotto rice"], steps),
      "20 g dried porcini",
      "mushrooms",
    );
    expect(made.steps.map((s) => s.text).join(" ")).toContain("300 ml water");
  });
  it("of another food is left alone", () => {
    const r = recipeOf(
      ["15 g dried shiitake", "200 g udon noodles"],
      ["Soak the shiitake in warm water, reserving the soaking liquid.", "Simmer the soaking liquid with the noodles."],
    );
    const made = without(r, "200 g udon noodles", "rice noodles");
    expect(made.steps.map((s) => s.text).join(" ")).toMatch(/reserving the soaking liquid.*Simmer the soaking liquid/);
  });
});

describe("sentences", () => {
  it.each([
    ["Melt the butter in a pan.", "40 g butter", "olive oil", "Heat the olive oil in a pan."],
    [
      "Add the kale, turning it as it wilts.",
      "500 g kale",
      "collard greens",
      "Add the collard greens, turning them as they wilt.",
    ],
    ["Say “add the kale now” and wait.", "500 g kale", "spinach", "Say “add the kale now” and wait."],
    ["Stir in 2 tbsp of the honey.", "4 tbsp honey", "maple syrup", "Stir in 2 tbsp of the honey."],
    ["Crack in the eggs.", "4 eggs", "silken tofu", "Crack in the eggs."],
    ["Boil the eggs, peel and quarter them.", "4 eggs", "silken tofu", "Boil the eggs, peel and quarter them."],
    ["Brush with egg wash made from the eggs.", "4 eggs", "silken tofu", "Brush with egg wash made from the eggs."],
  ])("%s", (step, line, house, now) => {
    const made = without(recipeOf([line], [step]), line, house);
    const found = made.steps.find((s) => s.text.startsWith(now));
    expect(found, JSON.stringify(made.steps)).toBeDefined();
    // What was left as it was is told
    if (now === step) expect(made.notes.join("\n")).toMatch(/still says/);
  });
  it("says in the step itself what not to use, where it must be avoided and the sentence cannot be edited", () => {
    const choices: AdaptOptions = {
      missing: [{ line: "4 eggs", swap: swapOf("4 eggs", "silken tofu") }],
      avoid: { allergens: ["egg"] },
    };
    const made = adaptRecipe(c, recipeOf(["4 eggs"], ["Boil the eggs and peel them."]), choices);
    expect(made.steps[0]?.text).toBe("Boil the eggs and peel them. Use the silken tofu and not the eggs.");
  });
  it("names what another line is called by", () => {
    const r = recipeOf(
      ["1 onion", "2 spring onions", "1 tbsp fish sauce", "400 g cod"],
      ["Fry the onion. Scatter the spring onions. Season the fish with the fish sauce."],
    );
    const made = without(r, "400 g cod", "haddock");
    expect(made.steps[0]?.text).toContain("Season the fish with the fish sauce.");
    const two = without(r, "2 spring onions", "chives");
    expect(two.steps[0]?.text).toMatch(/^Fry the onion\. Scatter the chives\./);
  });
  it("a cut is known by its animal, and stays so named for another cut", () => {
    const line = "900 g chicken thighs, boneless";
    const r = recipeOf([line], ["Brown the chicken."]);
    expect(without(r, line, "chicken breast").steps[0]?.text).toMatch(/^Brown the chicken\./);
    expect(without(r, line, "pork shoulder").steps[0]?.text).toMatch(
      /^Brown the pork shoulder\. Cook the pork shoulder to/,
    );
  });
  it("each change has what was, what is and why", () => {
    const made = without(
      recipeOf(["450 g salt cod", "2 onions"], ["Soak the salt cod overnight.", "Simmer the cod with the onions."]),
      "450 g salt cod",
      "cod",
    );
    expect(made.changes.length).toBeGreaterThan(1);
    for (const ch of made.changes)
      for (const part of [ch.where, ch.before, ch.after, ch.why]) expect(part).not.toBe("");
    expect(made.steps.map((s) => s.text).join(" ")).not.toMatch(/soak/i);
  });
});

describe("times", () => {
  it("the step's own time is changed where it is for the food alone", () => {
    const made = without(recipeOf(["400 g cod"], ["Poach the cod for 6 minutes."]), "400 g cod", "chicken breast");
    expect(made.steps[0]?.text).not.toContain("6 minutes");
    expect(made.steps[0]?.text).toMatch(/^Poach the chicken breast for \d+ minutes\. Cook the chicken breast to 70 °C/);
  });
  it("never two times in one step", () => {
    const made = without(
      recipeOf(["250 g red lentils"], ["Simmer the lentils for 15 minutes."]),
      "250 g red lentils",
      "brown lentils",
    );
    expect((made.steps.at(-1)?.text.match(/minutes/g) ?? []).length).toBeLessThanOrEqual(1);
  });
});

describe("lines", () => {
  it.each([
    ["2 cans chickpeas, drained", 6, 2, "2/3 can chickpeas, drained"],
    ["1 (400 g) can white beans", 4, 8, "2 (400 g) cans white beans"],
    ["2-3 cloves garlic", 4, 8, "4-6 cloves garlic"],
    ["2 tsp ground cumin", 6, 2, "3/4 tsp ground cumin"],
    ["3 eggs", 6, 2, "1 egg"],
    ["500 g kale, chopped", 4, 8, "1 kg kale, chopped"],
    ["1 kg potatoes", 8, 2, "250 g potatoes"],
    ["1 l vegetable stock", 4, 6, "1.5 l vegetable stock"],
    ["salt, to taste", 4, 8, "salt, to taste"],
  ])("%s for %i people, for %i: %s", (line, from, to, now) => {
    const made = adaptRecipe(c, recipeOf([line], [], { serves: from }), { serves: to });
    expect(textsOf(made).lines).toEqual([now]);
  });
  it.each([
    ["500 g kale, stems removed, chopped", "frozen kale", /frozen kale$/],
    ["300 g firm tofu, cut into cubes", "chicken breast", /chicken breast, cut into cubes$/],
    ["2 tbsp soy sauce", "tamari", /tbsp tamari$/],
    ["a handful of parsley, chopped", "dried parsley", /dried parsley$/],
  ])("%s, %s instead", (line, house, now) => {
    expect(without(recipeOf([line], ["Cook it all."]), line, house).lines[0]?.text).toMatch(now);
  });
});

describe("when nothing stands in", () => {
  const r = recipeOf(["400 g cod", "1 onion"], ["Fry the onion and the cod."]);
  it("the line stays, loudly, and why is told", () => {
    const made = adaptRecipe(c, r, { missing: [{ line: "400 g cod" }], have: ["sugar"], onlyFromHave: true });
    expect(textsOf(made)).toEqual({ lines: ["400 g cod", "1 onion"], steps: ["Fry the onion and the cod."] });
    expect(made.notes[0]).toMatch(/^NOT REPLACED: "400 g cod" \(from the house only\)/);
    expect(made.changes).toEqual([]);
  });
  it("a swap that someone must avoid is refused", () => {
    const choices: AdaptOptions = {
      missing: [{ line: "400 g cod", swap: swapOf("400 g cod", "haddock") }],
      avoid: { allergens: ["fish"] },
    };
    const made = adaptRecipe(c, r, choices);
    expect(made.notes.join()).toMatch(/NOT REPLACED.*ruled out/);
    expect(made.refused[0]).toMatchObject({ because: "allergen", what: "fish" });
  });
  it("what only a step names is told", () => {
    const made = adaptRecipe(c, recipeOf(["1 onion"], ["Fry the onion in butter."]), {
      avoid: { allergens: ["milk"] },
    });
    expect(made.notes.join()).toMatch(/CHECK BY HAND: step 1 of the recipe names butter/);
  });
  it("a line that is not there, and one that cannot be read", () => {
    const made = adaptRecipe(c, recipeOf(["1 glorp of zzzxq"], []), {
      missing: [{ line: "nothing" }],
      avoid: { allergens: ["egg"] },
    });
    expect(made.notes.join("\n")).toMatch(/No line of the recipe reads "nothing"/);
    expect(made.notes.join("\n")).toMatch(/CHECK BY HAND: "1 glorp of zzzxq"/);
  });
});

it("a vegan reading has nothing of an animal in it", () => {
  const made = adaptRecipe(
    c,
    recipeOf(
      ["200 ml chicken stock", "40 g butter", "1 tbsp honey", "200 g chickpeas, canned"],
      ["Simmer everything."],
    ),
    {
      avoid: { diets: ["vegan"] },
    },
  );
  const told = made.notes.filter((n) => n.startsWith("NOT REPLACED")).join();
  for (const l of made.lines) if (!told.includes(l.text)) expect(l.text).not.toMatch(/chicken stock|butter$|honey/);
});

describe("hostile text", () => {
  const hostile = [
    "2 onions <script>alert(1)</script>",
    "[cod](javascript:alert(1))",
    "1 cup \u202esugar\u2066",
    "constructor __proto__ toString",
  ];
  const step = "Fry the cod <img src=x onerror=alert(1)>, add [kale](http://a.b) \u202enow\u202c.";
  it("comes through to the letter where it is not edited, and is harmless where it is printed", () => {
    const r = recipeOf([...hostile, "400 g cod"], [step, "Serve."]);
    const made = adaptRecipe(c, r, {
      missing: [{ line: "400 g cod", swap: swapOf("400 g cod", "haddock") }],
      serves: 4,
    });
    expect(textsOf(made).lines.slice(0, 4)).toEqual(hostile);
    expect(made.steps.map((s) => s.text).join()).toContain("<img src=x onerror=alert(1)>");
    const markdown = adaptedMarkdown(made);
    expect(markdown).not.toMatch(/<script|<img|[^\\]\]\(/);
    for (const out of [markdown, adaptedText(made)]) expect(out).not.toMatch(/[\u202a-\u202e\u2066-\u2069]/);
  });
  it("__proto__ is a word like any other", () => {
    const r = JSON.parse(
      '{"__proto__":{"polluted":1},"name":"__proto__","lines":[],"steps":[],"unread":[],"source":null}',
    ) as Recipe;
    const made = adaptRecipe(c, r, { missing: [{ line: "__proto__" }] });
    expect((made as { polluted?: unknown }).polluted).toBeUndefined();
    expect(({} as { polluted?: unknown }).polluted).toBeUndefined();
  });
  it("a line and a step of a megabyte are kept whole, and soon", () => {
    const long = "x ".repeat(500_000);
    const r = recipeOf([`400 g cod ${long}`, "400 g cod"], [`Add the cod. ${long}`, "Fry the cod."]);
    const from = performance.now();
    const made = adaptRecipe(c, r, {
      missing: [{ line: "400 g cod", swap: swapOf("400 g cod", "haddock") }],
      avoid: { allergens: ["egg"] },
    });
    expect(performance.now() - from).toBeLessThan(20_000);
    expect(made.lines[0]?.text).toBe(r.lines[0]?.text);
    expect(made.steps[0]?.text).toBe(r.steps[0]?.text);
    for (const n of made.notes) expect(n.length).toBeLessThan(1000);
  });
  it("too much is refused, and what is no recipe", () => {
    const code = (f: () => unknown): string => {
      try {
        f();
      } catch (e) {
        if (isSteadfareError(e)) return e.code;
        throw e;
      }
      return "nothing thrown";
    };
    const butter = readLine(c, "5 g butter");
    const many = recipeOf([], [], {
      lines: Array.from({ length: 200 }, (_, i) => ({ text: `${i} butter`, read: butter })),
    });
    expect(code(() => adaptRecipe(c, many, { avoid: { allergens: ["milk"] } }))).toBe("input too large");
    expect(code(() => adaptRecipe(c, recipeOf([], []), { serves: 0 }))).toBe("conflicting request");
    expect(code(() => adaptRecipe(c, {} as Recipe, {}))).toBe("conflicting request");
    const bad = { use: [{ id: "no/such" }] } as unknown as Swap;
    expect(
      code(() => adaptRecipe(c, recipeOf(["400 g cod"], []), { missing: [{ line: "400 g cod", swap: bad }] })),
    ).toBe("unknown food");
    expect(code(() => adaptRecipe(c, recipeOf([], []), { avoid: { allergens: ["moonlight"] } }))).toBe("unknown term");
  });
});

it("the result is frozen and the source is the caller's own", () => {
  const source = { mine: true };
  const made = adaptRecipe(c, recipeOf(["3 eggs"], ["Fry the eggs."], { source }), { serves: 8 });
  expect(Object.isFrozen(made) && Object.isFrozen(made.lines) && Object.isFrozen(made.changes)).toBe(true);
  expect(made.source).toBe(source);
  expect(Object.isFrozen(source)).toBe(false);
});

describe("read by a cook", () => {
  it("degrees inside a step are no cups, and what is counted stays counted", () => {
    const r = recipeOf(["6 limes, juiced", "1 lemon, zested"], ["Heat the oven to 180 C and bake with 200 ml water."]);
    const made = adaptRecipe(c, r, { serves: 6 });
    expect(textsOf(made).lines).toEqual(["9 limes, juiced", "1 1/2 lemons, zested"]);
    expect(made.notes.join("\n")).toContain("200 ml becomes 300 ml");
    expect(made.notes.join("\n")).not.toContain("180");
  });
  it("what is ordered before use is a step, and eggs are not named where tofu goes in", () => {
    const r = recipeOf(["3 eggs"], ["Whip the cream.", "Beat in the eggs one at a time."]);
    const tofu = swapOf("3 eggs", "silken tofu");
    const prep: Swap["prep"] = [
      {
        kind: "change",
        procedure: "as noted",
        minutes: { active: 0, waiting: 0 },
        required: false,
        text: "Blend smooth; dense and pale.",
      },
    ];
    const made = adaptRecipe(c, r, { missing: [{ line: "3 eggs", swap: { ...tofu, prep } }] });
    expect(textsOf(made).steps).toEqual(["Whip the cream.", "Silken tofu: blend smooth.", "Beat in the silken tofu."]);
    expect(made.notes.join("\n")).toContain("Silken tofu: dense and pale.");
  });
  it("dried beans for canned are soaked once, then boiled hard, then cooked", () => {
    const r = recipeOf(["1 (400 g) can kidney beans, drained"], ["Simmer the beans in the sauce for 10 minutes."]);
    const steps = textsOf(without(r, "1 (400 g) can kidney beans, drained", "dried kidney beans")).steps;
    expect(steps.filter((s) => /soak/i.test(s))).toHaveLength(1);
    expect(steps.join("\n")).toMatch(/Boil the kidney beans hard in fresh water for 30 minutes/);
    expect(steps.join("\n")).toMatch(/until tender, about \d+ minutes, and drain them\./);
  });
  it("the water begins the pot and the miso goes in off the boil", () => {
    const r = recipeOf(
      ["500 ml vegetable stock", "200 g carrots"],
      ["Bring the stock to a boil and simmer the carrots for 10 minutes. Serve hot."],
    );
    const stock = swapsFor(c, { missing: "500 ml vegetable stock", have: ["miso", "water"], onlyFromHave: true }).swaps;
    const swap = stock.find((s) => s.use.length === 2);
    if (swap === undefined) throw new Error("no miso and water");
    const made = adaptRecipe(c, r, { missing: [{ line: "500 ml vegetable stock", swap }] });
    expect(textsOf(made).steps).toEqual([
      "Bring the water to a boil and simmer the carrots for 10 minutes. Stir in the miso off the boil. Serve hot.",
    ]);
  });
  it("cheese or fish for meat that stews waits until the end; another stewing meat does not", () => {
    const r = recipeOf(["900 g lamb shoulder, diced"], ["Brown the lamb.", "Add the stock and simmer for 1 hour."]);
    const late = "Leave the paneer out until the pot has 10 minutes left to go.";
    expect(textsOf(without(r, "900 g lamb shoulder, diced", "paneer")).steps[1]).toContain(late);
    expect(textsOf(without(r, "900 g lamb shoulder, diced", "beef chuck")).steps.join(" ")).not.toContain("left to go");
  });
  it("a fish laid in foaming butter is cooked, one in lime juice is not", () => {
    const freeze = /frozen at -20/;
    const hot = recipeOf(["2 sole fillets"], ["Let the butter foam and leave the sole in it 3 minutes on each side."]);
    const cold = recipeOf(["2 sole fillets"], ["Toss the sole with the lime juice and leave for 15 minutes."]);
    const best = { missing: [{ line: "2 sole fillets" }] };
    expect(textsOf(adaptRecipe(c, hot, best)).steps.join(" ")).not.toMatch(freeze);
    expect(textsOf(adaptRecipe(c, cold, best)).steps.join(" ")).toMatch(freeze);
  });
  it("the pinch of salt is named once, and what was weighed is weighed", () => {
    const r = recipeOf(["50 g butter", "300 g rice"], ["Melt half the butter.", "Stir in the remaining butter."]);
    const made = without(r, "50 g butter", "unsalted butter", "salt");
    const lard = without(r, "50 g butter", "lard", "salt");
    for (const x of [made, lard]) {
      expect(x.steps[1]?.text).not.toContain("salt and");
      expect(x.steps[1]?.text).not.toContain("and salt");
      expect(x.lines[0]?.text).toMatch(/^\d+ g /);
    }
  });
});
