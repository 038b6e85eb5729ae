// The twelve recipes adapted, as texts to be read through: would one cook from it? A wrong one is mended in src/adapt, never here. The
// stand-ins are pinned (tests/helpers/pin-adapted.ts), so that a better ranking does not change the texts.
import { describe, expect, it } from "vitest";
import { adaptedMarkdown } from "../../src/cli/adapted.js";
import { adaptRecipe, openCatalogue, readRecipe } from "../../src/index.js";
import { DISHES, essence, FORMS, pinnedChoices, pinnedOf } from "../helpers/adapt.js";

const c = openCatalogue({ locale: "en-GB", measures: "metric" });

it("there are twelve, over at least six traditions, each without something three times", () => {
  expect(DISHES).toHaveLength(12);
  expect(new Set(DISHES.map((d) => d.tradition)).size).toBeGreaterThanOrEqual(6);
  for (const d of DISHES) expect(d.cases).toHaveLength(3);
});

describe.each(DISHES.map((d) => [d.id, d] as const))("%s", (id, dish) => {
  const pinned = pinnedOf(dish);
  const adapted = Object.fromEntries(
    Object.entries(FORMS).map(([form, write]) => {
      const recipe = readRecipe(c, write(dish));
      return [form, dish.cases.map((k) => adaptRecipe(c, recipe, pinnedChoices(dish, k, pinned)))] as const;
    }),
  );
  it("reads as reviewed", async () => {
    const text = dish.cases
      .map((k, i) => {
        const made = adapted["markdown"]?.[i];
        if (made === undefined) throw new Error(`no ${k.id}`);
        return `<!-- ${k.id} -->\n\n${adaptedMarkdown(made)}`;
      })
      .join("\n");
    await expect(text).toMatchFileSnapshot(`../fixtures/adapt/${id}.md`);
  });
  it.each(Object.keys(FORMS))("is the same from %s", (form) => {
    expect(adapted[form]?.map(essence)).toEqual(adapted["markdown"]?.map(essence));
  });
});
