import { ML_PER_CUP, ML_PER_TBSP, ML_PER_TSP } from "../../../quantity/index.js";
import { calculator, recordNames } from "../calculated.js";
import { rows, type Rule } from "./types.js";

const value = (
  row: { figures: Readonly<Record<string, readonly [number, number]>> },
  name: string,
): number | undefined => row.figures[name]?.[0];

/** Figures, shares and yields lie where food lies. */
export const ranges: Rule = {
  name: "ranges",
  text: "Every figure is within the believable range the vocabulary gives for it; edible share is 0 to 1; yields are 0.1 to 20.",
  check(input, say) {
    for (const { row, slot, file } of rows(input)) {
      for (const [name, [v]] of Object.entries(row.figures)) {
        const range = input.authored.terms.figure[name];
        if (range && (v < range.min || v > range.max))
          say(
            file,
            row.id,
            `${name} is ${v} ${range.unit}; believable is ${range.min} to ${range.max}. Check the unit and the place of the point.`,
          );
      }
      if (!(row.edible > 0 && row.edible <= 1))
        say(file, row.id, `edible is ${row.edible}; it is a share between 0 and 1.`);
      if (row.cooked && (row.cooked[0] < 0.2 || row.cooked[0] > 6))
        say(file, row.id, `cooked is ${row.cooked[0]}; grams served per gram ready to cook lie between 0.2 and 6.`);
      for (const [by, [v]] of Object.entries(row.cookedBy ?? {}))
        if (v < 0.2 || v > 6)
          say(file, row.id, `cookedBy ${by} is ${v}; grams served per gram ready to cook lie between 0.2 and 6.`);
      for (const y of [slot.state.ready?.yield, ...(slot.state.becomes ?? []).map((b) => b.yield)])
        if (y && (y.v < 0.05 || y.v > 20))
          say(file, row.id, `a yield of ${y.v} is not believable (0.05 to 20 g per g).`);
    }
  },
};

/** The parts add up to the whole. */
export const sums: Rule = {
  name: "sums",
  text: "Water, protein, fat, carbohydrate, ash and alcohol make 100 g within 8 when all the large ones were measured; sugars and starch are no more than the carbohydrate.",
  check(input, say) {
    const calculated = calculator(input.authored, input.look);
    for (const { row, slot, file } of rows(input)) {
      const ash =
        slot.state.figures?.["ash"]?.v ??
        recordNames(slot.state)
          .map((r) => input.look(r)?.figures["ash"])
          .find((v) => v !== undefined) ??
        calculated(row.id)?.figures["ash"] ??
        0;
      const parts = ["water", "protein", "fat", "carbohydrate"].map((n) => value(row, n));
      if (parts.every((p) => p !== undefined)) {
        const total = parts.reduce<number>((a, b) => a + (b ?? 0), ash + (value(row, "alcohol") ?? 0));
        // Salt given by hand for a mineral is not in the record's ash twice; acids and ethanol of some records are left out of carbohydrate.
        if (Math.abs(total - 100) > 8)
          say(
            file,
            row.id,
            `water + protein + fat + carbohydrate + ash + alcohol = ${total.toFixed(1)} g of 100. Check the record, or the figures written by hand.`,
          );
      }
      const carbohydrate = value(row, "carbohydrate");
      for (const name of ["sugars", "starch"]) {
        const v = value(row, name);
        if (carbohydrate !== undefined && v !== undefined && v > carbohydrate + 6)
          say(file, row.id, `${name} (${v}) is more than carbohydrate (${carbohydrate}).`);
      }
    }
  },
};

/** kcal in a gram, the least and the most that tables of composition reckon with. */
const KCAL: readonly (readonly [figure: string, least: number, most: number])[] = [
  ["fat", 9, 9.2],
  ["protein", 3.2, 4.4],
  ["carbohydrate", 3.4, 4.2],
  ["alcohol", 6.9, 7.1],
  ["acid", 0, 3.2],
];
/** Energy is what fat, protein, carbohydrate and alcohol make. */
export const energy: Rule = {
  name: "energy",
  text: "Energy agrees with fat, protein, carbohydrate and alcohol within a fifth: a figure given by hand leaves the record's energy behind.",
  check(input, say) {
    for (const { row, file } of rows(input)) {
      const given = value(row, "energy");
      // Salts and bulk sweeteners are carbohydrate by difference only.
      if (given === undefined || given === 0 || (row.roles["leavener"] ?? 0) > 0.5) continue;
      if (["fat", "protein", "carbohydrate"].some((name) => value(row, name) === undefined)) continue;
      const fibre = value(row, "fibre") ?? 0;
      const sum = (side: 1 | 2): number =>
        KCAL.reduce((total, kcal) => total + kcal[side] * (value(row, kcal[0]) ?? 0), 0);
      const least = sum(1) - 3.4 * fibre;
      const most = sum(2);
      if (given < 0.82 * least - 8 || given > 1.12 * most + 8)
        say(
          file,
          row.id,
          `energy is ${given} kcal, but its fat, protein, carbohydrate and alcohol make ${Math.round(least)} to ${Math.round(most)}: give energy by hand with them, or mend the one that is wrong.`,
        );
    }
  },
};

/** Weights of measures agree with the table they cite and with each other. */
export const measures: Rule = {
  name: "measures",
  text: "A measure cited from USDA SR28 is in that table; spoons and cups of one food agree in density and lie between 0.02 and 1.7 g/ml.",
  check(input, say) {
    const ML: Readonly<Record<string, number>> = { tsp: ML_PER_TSP, tbsp: ML_PER_TBSP, cup: ML_PER_CUP };
    for (const { row, slot, file } of rows(input)) {
      const own = recordNames(slot.state);
      for (const [unit, m] of Object.entries(slot.state.measures ?? {})) {
        const bare = unit.split(" ")[0] ?? unit;
        if (bare in ML) {
          const density = m.g / (ML[bare] ?? 1);
          if (density < 0.02 || density > 1.7)
            say(file, row.id, `${unit} = ${m.g} g is ${density.toFixed(2)} g/ml; food lies between 0.02 and 1.7.`);
        }
        if (m.from !== "usda-sr28") continue;
        const cited = m.at?.match(/\b\d{5}\b/)?.[0];
        const references = cited === undefined ? own.filter((r) => r.startsWith("usda-sr28:")) : [`usda-sr28:${cited}`];
        const weights = references.flatMap((r) => input.look(r)?.weights ?? []);
        if (weights.length === 0)
          say(
            file,
            row.id,
            `${unit} cites usda-sr28, but the record it points to has no household weights. Put the NDB number in \`at\`, or another source.`,
          );
        else if (
          !weights.some(
            (w) =>
              Math.abs(w.grams - m.g) <= Math.max(0.06, 0.015 * w.grams) ||
              (bare in ML &&
                Object.values(ML).some(
                  (ml) => Math.abs((w.grams * (ML[bare] ?? 1)) / ml - m.g) <= Math.max(0.06, 0.03 * m.g),
                )),
          )
        )
          say(
            file,
            row.id,
            `${unit} = ${m.g} g is not a household weight of ${references.join(", ")} (${weights
              .slice(0, 6)
              .map((w) => `1 ${w.measure} = ${Math.round(w.grams * 100) / 100} g`)
              .join("; ")}).`,
          );
      }
    }
  },
};

/** Roles and the figures of which one decides how much is needed; each group must have one. */
export const NEEDS: Readonly<Record<string, readonly (readonly string[])[]>> = {
  acid: [["acid"]],
  "salt seasoning": [["sodium", "salt"]],
  "umami seasoning": [["free glutamate", "inosinate", "guanylate"]],
  sweetener: [["sugars", "sweetness"]],
  fat: [["fat"]],
  "frying medium": [["fat"]],
  enrichment: [["fat"]],
  thickener: [["thickening"]],
  leavener: [["carbon dioxide"]],
  binder: [["binding"]],
  "gelling agent": [["gel"]],
  heat: [["pungency"]],
  herb: [["aroma strength"]],
  spice: [["aroma strength"]],
  aromatic: [["aroma strength"]],
  colour: [["colour strength"]],
  liquid: [["water"]],
};
/** A role comes with the figure that carries it. */
export const carriers: Rule = {
  name: "carriers",
  text: "A role of weight 0.5 or more has the figure that decides its amount; whatever fills a slot says what it weighs when served.",
  check(input, say) {
    for (const { row, file } of rows(input)) {
      for (const [role, weight] of Object.entries(row.roles)) {
        if (weight < 0.5) continue;
        for (const any of NEEDS[role] ?? [])
          if (!any.some((name) => value(row, name) !== undefined))
            say(
              file,
              row.id,
              `has the role ${role} (${weight}) but no figure for ${any.join(" or ")}. Give one with its source, or judge it and say so.`,
            );
      }
      if (Object.keys(row.roles).length === 0)
        say(file, row.id, "has no role: say what a cook buys it for, here or in its kind.");
      if (row.slot !== undefined && row.slot !== "soup" && !row.cooked)
        say(
          file,
          row.id,
          `fills the ${row.slot} slot but \`cooked\` is missing: grams served per gram ready to cook (1 when eaten as it is).`,
        );
      if (row.contains.includes("wheat") && !row.contains.includes("gluten cereals"))
        say(file, row.id, "contains wheat but not gluten cereals: wheat is one of them.");
      if (row.origin.length === 0) say(file, row.id, "has no origin: what is it made from?");
      if (Object.keys(row.texture).length === 0 && Object.keys(row.aroma).length === 0)
        say(file, row.id, "has neither texture nor aroma, its own or its kind's.");
    }
  },
};
