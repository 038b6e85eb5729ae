import type { FlatIngredient } from "../../compiled.js";
import { lineage } from "../row.js";
import { rows, type Rule } from "./types.js";

const figure = (row: FlatIngredient, name: string): number | undefined => row.figures[name]?.[0];

/** g NaCl per mg sodium. */
const SALT_PER_SODIUM_MG = 2.542 / 1000;
/**
 * How many times what tastes "marked" (the concentrations of the rule of strength: 12 g sugar, 0.6 g acid, 1.2 g salt in 100 g) a food holds,
 * so that its own tastes can be set against each other.
 */
const STRENGTH: Readonly<Record<string, (row: FlatIngredient) => number | undefined>> = {
  sweetener: (row) => {
    const given = figure(row, "sweetness");
    const sugars = given === undefined ? figure(row, "sugars") : given * 100;
    return sugars === undefined ? undefined : sugars / 12;
  },
  acid: (row) => {
    const acid = figure(row, "acid");
    return acid === undefined ? undefined : acid / 0.6;
  },
  "salt seasoning": (row) => {
    const sodium = figure(row, "sodium");
    const salt = figure(row, "salt") ?? (sodium === undefined ? undefined : sodium * SALT_PER_SODIUM_MG);
    return salt === undefined ? undefined : salt / 1.2;
  },
};
const TASTE: Readonly<Record<string, string>> = { sweetener: "sweet", acid: "sour", "salt seasoning": "salty" };

/** A sauce seasons with what it tastes of most. */
export const tastes: Rule = {
  name: "tastes",
  text: "What seasons by taste is used first for the taste it has most of: a sour sauce is no sweetener.",
  check(input, say) {
    for (const { row, file } of rows(input)) {
      for (const [role, weight] of Object.entries(row.roles)) {
        const own = STRENGTH[role]?.(row);
        if (own === undefined || weight < 0.3) continue;
        if (weight >= 0.5 && own < 0.2)
          say(
            file,
            row.id,
            `is used as ${role} (${weight}) and hardly tastes ${TASTE[role] ?? ""}: lower the weight, or mend the figure.`,
          );
        for (const [other, strength] of Object.entries(STRENGTH)) {
          const theirs = strength(row) ?? 0;
          const beside = row.roles[other] ?? 0;
          if (other !== role && theirs > 1 && theirs > 2.5 * own && weight > beside + 0.1)
            say(
              file,
              row.id,
              `weighs ${role} ${weight} above ${other} ${beside}, yet it is ${(theirs / own).toFixed(1)} times as ${TASTE[other] ?? ""} as ${TASTE[role] ?? ""}: order the roles by what it tastes of, or mend the figures.`,
            );
        }
      }
    }
  },
};

/** Richness is fat. */
export const richness: Rule = {
  name: "richness",
  text: "What enriches a dish (0.5 or more) holds at least 2 g fat in 100 g: the amount of a stand-in is found by its fat.",
  check(input, say) {
    for (const { row, file } of rows(input)) {
      const weight = row.roles["enrichment"] ?? 0;
      const fat = figure(row, "fat");
      if (weight >= 0.5 && fat !== undefined && fat < 2)
        say(
          file,
          row.id,
          `weighs enrichment ${weight} and holds ${fat} g fat: give it roles of its own with enrichment below 0.5, or a stand-in will be measured by next to nothing.`,
        );
    }
  },
};

const GROWN: readonly string[] = ["plant", "allium", "root"];
/** Thawed fruit and leaves are limp and weep. */
export const thawed: Rule = {
  name: "thawed",
  text: "Frozen fruit, vegetables and leaves thaw limp and wet: they are no garnish above 0.3, unless they are dry.",
  check(input, say) {
    for (const { row, slot, file } of rows(input)) {
      const garnish = row.roles["garnish"] ?? 0;
      if (!slot.stateName.startsWith("frozen") || garnish <= 0.3) continue;
      if (!row.origin.every((o) => GROWN.includes(o))) continue;
      if ((row.texture["raw"]?.["moistness"] ?? 9) <= 3) continue;
      say(
        file,
        row.id,
        `is frozen and weighs garnish ${garnish}: give the state roles of its own with garnish at most 0.3 (it goes limp as it thaws), or a dry raw texture.`,
      );
    }
  },
};

/** What melts softens. */
export const melting: Rule = {
  name: "melting",
  text: "What melts is softer when cooked than it was.",
  check(input, say) {
    for (const { row, file } of rows(input)) {
      const raw = row.texture["raw"]?.["hardness"];
      const cooked = row.texture["cooked"]?.["hardness"];
      if (row.can.includes("melts") && raw !== undefined && cooked !== undefined && raw > 1 && cooked >= raw)
        say(
          file,
          row.id,
          `melts, yet its hardness is ${raw} raw and ${cooked} cooked: judge the cooked texture of this food, or the kind is the wrong one.`,
        );
    }
  },
};

/** What is made of curd or soured milk: its sugars are what is left of the milk's own. */
const OF_MILK: readonly string[] = ["cheese", "soured dairy"];
/** The milk sugar of cheese is what its tag says. */
export const milkSugar: Rule = {
  name: "milk sugar",
  text: "Cheese and soured milk tagged low in lactose hold at most 2 g sugars in 100 g, those tagged high at least 0.4 g.",
  check(input, say) {
    const kinds = new Map(input.authored.kinds.map(({ data }) => [data.kind, data]));
    for (const { row, file } of rows(input)) {
      const sugars = figure(row, "sugars");
      if (sugars === undefined || !lineage(row.kind, kinds).some((k) => OF_MILK.includes(k.kind))) continue;
      if (row.tags.includes("low lactose") && sugars > 2)
        say(
          file,
          row.id,
          `is low in lactose and holds ${sugars} g sugars: some tables put all carbohydrate there. Give sugars by hand, or take the tag off.`,
        );
      if (row.tags.includes("high lactose") && sugars < 0.4)
        say(file, row.id, `is high in lactose and holds ${sugars} g sugars: give sugars by hand, or take the tag off.`);
    }
  },
};
