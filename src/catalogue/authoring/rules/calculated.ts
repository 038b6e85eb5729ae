import { calculator, DEEPEST, recordNames } from "../calculated.js";
import { eachState, idOf } from "../compile.js";
import type { StateRecord } from "../schema.js";
import { hiddenAllergens, nearest, type Rule } from "./types.js";

/** Shares are written to a few places; a sum may be out by so much. */
const TOLERANCE = 0.002;
/** Weight out per weight in: dried mushrooms and leaves come down to a tenth, dried goods soaked to full go up to five times. */
const YIELDS: readonly [least: number, most: number] = [0.04, 6];
/** What the parts give, and would no longer add up if one of them were written by hand. */
const SUMMED = ["water", "protein", "fat", "carbohydrate"];

/** What is calculated is calculated from published records, of all its parts. */
export const calculated: Rule = {
  name: "calculated",
  text: "Shares of a calculated food sum to 1; its parts are ingredients or records with a published composition, or calculated from such themselves, and never in a circle; the water given makes a weight that drying, cooking or soaking can make; and whatever allergens its parts have it may have too.",
  check(input, say) {
    const { authored, look } = input;
    const calculate = calculator(authored, look);
    const rows = new Map(input.flat.ingredients.map((row) => [row.id, row]));
    const states = new Map(eachState(authored.foods).map((slot) => [idOf(slot), slot]));
    const hasRecord = (state: StateRecord): boolean => recordNames(state).some((r) => look(r) !== undefined);
    /** Steps from records, or what is in the way: a circle, or a part without figures. */
    const depth = (id: string, above: readonly string[]): number | string => {
      const state = states.get(id)?.state;
      if (state?.calculated === undefined || hasRecord(state)) return 0;
      if (above.includes(id)) return `goes in a circle: ${[...above, id].join(" < ")}`;
      let most = 0;
      for (const part of Object.keys(state.calculated.parts)) {
        const below = depth(part, [...above, id]);
        if (typeof below === "string") return below;
        most = Math.max(most, below);
      }
      return most + 1;
    };
    for (const [id, { state, file }] of states) {
      if (state.calculated === undefined) continue;
      const { parts, water, from } = state.calculated;
      const names = Object.keys(parts);
      if (recordNames(state).join() !== "none")
        say(file, id, "has records and is calculated too: a published record goes before a calculation; keep one.");
      const sum = Object.values(parts).reduce((a, b) => a + b, 0);
      if (Math.abs(sum - 1) > TOLERANCE)
        say(file, id, `shares sum to ${Math.round(sum * 1e4) / 1e4}; they are shares of the weight and make 1.`);
      if (names.length === 1 && water === undefined)
        say(file, id, "is calculated from one part: say how much water it holds, or take the record itself.");
      if (names.length > 1 && from === undefined) say(file, id, "mixes parts: say `from`, whose proportions they are.");
      if (water !== undefined && (water.v < 0 || water.v >= 100))
        say(file, id, `water is ${water.v} g per 100 g; it lies between 0 and 100.`);
      const had = water === undefined ? undefined : calculate({ parts })?.figures["water"];
      if (water !== undefined && had !== undefined && had < 100 && water.v < 100) {
        const out = (100 - had) / (100 - water.v);
        if (out < YIELDS[0] || out > YIELDS[1])
          say(
            file,
            id,
            `water goes from ${had} to ${water.v} g per 100 g, which makes ${Number(out.toPrecision(2))} g of each gram; ${YIELDS[0]} to ${YIELDS[1]} is what drying and soaking do.`,
          );
      }
      const hand = SUMMED.filter((name) => state.figures?.[name] !== undefined);
      if (hand.length > 0)
        say(
          file,
          id,
          `is calculated, yet ${hand.join(", ")} stand${hand.length > 1 ? "" : "s"} there by hand: they would not add up. A known water goes under \`calculated\`.`,
        );
      for (const name of names) {
        const hidden = hiddenAllergens(rows.get(id), rows.get(name));
        if (hidden.length > 0)
          say(
            file,
            id,
            `is made of ${name}, which contains ${hidden.join(", ")}, and does not say so: add it to its allergens.`,
          );
        const part = states.get(name)?.state;
        if (look(name) !== undefined || (part && (hasRecord(part) || part.calculated))) continue;
        say(
          file,
          id,
          part
            ? `part "${name}" has no published composition.`
            : input.alsoKnown
              ? `part "${name}" cannot be looked up here, since the tables are not shipped: give the figures by hand.`
              : `part "${name}" is neither an ingredient nor a record. Nearest: ${nearest(name, [...states.keys()])}.`,
        );
      }
      const steps = depth(id, []);
      if (typeof steps === "string") say(file, id, `${steps}.`);
      else if (steps > DEEPEST)
        say(
          file,
          id,
          `is ${steps} calculations away from records; ${DEEPEST} at most. Put the parts of its parts in their place.`,
        );
    }
  },
};
