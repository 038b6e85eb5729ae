import { hiddenAllergens, nearest, type Rule } from "./types.js";

const MAKEUP = "vocabulary/makeup.yaml";
/** Shares are written to a few places; a sum may be out by so much. */
const TOLERANCE = 0.002;

const isShare = (share: unknown): share is number => typeof share === "number" && share > 0 && share < 1;

/** What made things are stirred together from is in the catalogue, adds up, goes in no circle, and hides no allergen. */
export const makeup: Rule = {
  name: "makeup",
  text: "What a made thing is stirred together from are two or more other ingredients; their shares are above 0 and sum to 1; never in a circle; and whatever allergens they have it may have too.",
  check({ authored, flat }, say) {
    const table = (authored.tables["makeup"] ?? {}) as Readonly<Record<string, unknown>>;
    const rows = new Map(flat.ingredients.map((row) => [row.id, row]));
    const known = [...rows.keys()];
    const partsOf = (id: string): readonly [string, unknown][] =>
      Object.hasOwn(table, id) && typeof table[id] === "object" && table[id] !== null ? Object.entries(table[id]) : [];
    /** The way back to where it began, if there is one. */
    const circle = (id: string, above: readonly string[]): readonly string[] | undefined => {
      if (above.includes(id)) return [...above, id];
      for (const [part] of partsOf(id)) {
        const found = circle(part, [...above, id]);
        if (found) return found;
      }
      return undefined;
    };
    for (const id of Object.keys(table)) {
      const row = rows.get(id);
      if (row === undefined) say(MAKEUP, id, `"${id}" is not in the catalogue. Nearest: ${nearest(id, known)}.`);
      const parts = partsOf(id);
      if (parts.length < 2) say(MAKEUP, id, "names fewer than two parts: what is no mixture does not stand here.");
      const sum = parts.reduce((all, [, share]) => all + (isShare(share) ? share : Number.NaN), 0);
      for (const [part, share] of parts) {
        const other = rows.get(part);
        if (other === undefined)
          say(MAKEUP, id, `part "${part}" is not in the catalogue. Nearest: ${nearest(part, known)}.`);
        if (!isShare(share)) say(MAKEUP, id, `${part} is ${JSON.stringify(share)}; a share is above 0 and below 1.`);
        const hidden = hiddenAllergens(row, other);
        if (hidden.length > 0)
          say(
            MAKEUP,
            id,
            `is made with ${part}, which contains ${hidden.join(", ")}, and does not say so: add it to its allergens.`,
          );
      }
      if (parts.length >= 2 && Math.abs(sum - 1) > TOLERANCE)
        say(MAKEUP, id, `shares sum to ${Math.round(sum * 1e4) / 1e4}; they are shares of the weight and make 1.`);
      const way = circle(id, []);
      if (way) say(MAKEUP, id, `goes in a circle: ${way.join(" < ")}.`);
    }
  },
};
