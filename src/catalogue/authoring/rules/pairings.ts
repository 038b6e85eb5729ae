import type { FlatIngredient } from "../../compiled.js";
import type { Rule } from "./types.js";

/** "chard.stem" of "chard.stem/fresh". */
const keyOf = (row: FlatIngredient): string => row.id.slice(0, row.id.indexOf("/"));
const foodOf = (key: string): string => key.split(/[./]/)[0] ?? key;
/** Below this a note is barely there, and nobody pairs by it. */
const CLEAR = 2;

/** What a record of data/pairings claims can be seen from the foods. */
export const pairings: Rule = {
  name: "pairings",
  text: "A pairing is of two, is recorded once a tradition, says the tradition when that is its basis, shares a clear aroma family when that is its basis, and is of parts when both are one food; its reason is one sentence.",
  check({ authored, flat }, say) {
    const rows = new Map<string, FlatIngredient[]>();
    for (const row of flat.ingredients)
      for (const key of [row.id, keyOf(row)]) rows.set(key, [...(rows.get(key) ?? []), row]);
    const seen = new Map<string, string>();
    for (const { file, data } of authored.pairings ?? []) {
      const [a, b] = data.with;
      const record = `${a} + ${b}`;
      if (a === b) say(file, record, "A food is not paired with itself.");
      const pair = `${[a, b].sort().join("|")}|${data.tradition ?? ""}`;
      const first = seen.get(pair);
      if (first !== undefined)
        say(file, record, `This pairing is already in ${first}; one record serves both, so take one out.`);
      seen.set(pair, file);
      const parts = data.basis === "parts of one ingredient";
      if (foodOf(a) === foodOf(b) && !parts)
        say(file, record, 'Both are of one food: the basis is "parts of one ingredient".');
      if (data.basis === "tradition" && data.tradition === undefined)
        say(file, record, "The basis is tradition: say which, under tradition.");
      if (!data.why.endsWith(".") || data.why.includes("\n"))
        say(file, record, "why is one sentence on one line and ends with a full stop.");
      if (data.basis !== "shared aroma") continue;
      const clear = (key: string): Set<string> =>
        new Set(
          (rows.get(key) ?? []).flatMap((r) =>
            Object.entries(r.aroma).flatMap(([word, level]) => (level >= CLEAR ? [word] : [])),
          ),
        );
      const other = clear(b);
      if (![...clear(a)].some((word) => other.has(word)))
        say(
          file,
          record,
          "The two share no aroma family at 2 or more: give one its aroma, or name what they go together by.",
        );
    }
  },
};
