// Writes down the stand-ins the twelve recipes get now: npx tsx tests/helpers/pin-adapted.ts [dish]. Then read every text again.
import { writeFileSync } from "node:fs";
import { choose } from "../../src/adapt/choose.js";
import { openCatalogue, readRecipe, type Swap } from "../../src/index.js";
import { choicesOf, DISHES, FIXTURES, FORMS } from "./adapt.js";

const c = openCatalogue({ locale: "en-GB", measures: "metric" });
/** What adapting uses of a swap; the rest is marks and sources. */
const short = ({ use, score, prep, corrections, time, shift, cautions }: Swap): object => ({
  use,
  score,
  prep,
  corrections,
  time,
  shift: shift.filter((s) => s.strength > 1),
  cautions: cautions.map(({ hazard, severity, who, text }) => ({ hazard, severity, who, text, sources: [] })),
});
for (const dish of DISHES.filter((d) => process.argv[2] === undefined || d.id === process.argv[2])) {
  const recipe = readRecipe(c, (FORMS["json-ld object"] as (d: typeof dish) => object)(dish));
  const out: Record<string, object[]> = {};
  for (const k of dish.cases) {
    const { stands } = choose(c, recipe, recipe.lines, choicesOf(k), 1);
    out[k.id] = stands.flatMap((s) =>
      s.swap === undefined ? [] : [{ line: recipe.lines[s.at]?.text, swap: short(s.swap) }],
    );
  }
  writeFileSync(new URL(`${dish.id}.swaps.json`, FIXTURES), `${JSON.stringify(out, undefined, 1)}\n`);
}
