// Composition in the coverage report: how much is published, calculated or neither, and how far what we calculate is off where a record says.
import { calculator } from "../../src/catalogue/authoring/calculated.js";
import type { Authored } from "../../src/catalogue/authoring/compile.js";
import type { CompositionLookup } from "../../src/catalogue/authoring/composition.js";
import { COOKED_DOWN, CURED, FORMS, RECIPES, type Pair } from "../../tests/published/calculated-pairs.js";

/** Foods with a record that are calculated all the same, by how that is done. */
export const GROUPS: Readonly<Record<string, readonly Pair[]>> = {
  "another form of the same food": FORMS,
  "cured and smoked": CURED,
  recipes: RECIPES,
};
/** The figures amounts and corrections are worked out from; g per 100 g, sodium mg. */
export const COMPARED = ["water", "protein", "fat", "carbohydrate", "sugars", "fibre", "sodium"] as const;

/** Water is given where drying, curing or cooking drives it off: then it is the record's own and no test. */
const given = (pairs: readonly Pair[], record: string): boolean => pairs !== RECIPES || COOKED_DOWN.includes(record);

export interface Miss {
  readonly what: string;
  readonly by: number;
  readonly record: number;
}
/** How far each food is off in one figure, compared with the record of the one `shift` places further on. */
export function misses(
  { authored, look }: { authored: Authored; look: CompositionLookup },
  pairs: readonly Pair[],
  figure: string,
  shift = 0,
): Miss[] {
  const calculate = calculator(authored, look);
  return pairs.flatMap(([own, what, parts], k) => {
    if (figure === "water" && given(pairs, own)) return [];
    const record = look(pairs[(k + shift) % pairs.length]?.[0] ?? "")?.figures[figure];
    const water = look(own)?.figures["water"] ?? 0;
    const made = calculate({ parts, ...(given(pairs, own) ? { water: { v: water, from: "record" } } : {}) });
    const value = made?.figures[figure];
    return value === undefined || record === undefined ? [] : [{ what, by: Math.abs(value - record), record }];
  });
}
/** The smallest value that `share` of them do not exceed. */
export const quantile = (list: readonly number[], share: number): number =>
  [...list].sort((a, b) => a - b)[Math.max(0, Math.ceil(share * list.length) - 1)] ?? Number.NaN;

const table = (head: readonly string[], rows: readonly (readonly (string | number)[])[]): string =>
  [head, head.map((_, i) => (i === 0 ? "---" : "--:")), ...rows].map((row) => `| ${row.join(" | ")} |`).join("\n");
const shown = (v: number): string => (v >= 100 ? v.toFixed(0) : v.toFixed(1));

function offBy(data: { authored: Authored; look: CompositionLookup }, pairs: readonly Pair[]): string {
  return table(
    ["figure", "foods", "half of the records above", "half within", "nine in ten within", "worst", "which"],
    COMPARED.flatMap((figure) => {
      const list = misses(data, pairs, figure);
      const by = list.map((m) => m.by);
      const worst = [...list].sort((a, b) => b.by - a.by)[0];
      if (worst === undefined || list.every((m) => m.record === 0 && m.by < 1)) return [];
      const middle = quantile(
        list.map((m) => m.record),
        0.5,
      );
      return [
        [
          figure === "sodium" ? "sodium, mg" : `${figure}, g`,
          list.length,
          ...[middle, quantile(by, 0.5), quantile(by, 0.9), worst.by].map(shown),
          worst.what,
        ],
      ];
    }),
  );
}

/**
 * Shares of the three kinds of composition, and the distribution of errors.
 * @param kinds for every ingredient, how its composition was come by
 */
export function composition(
  data: { authored: Authored; look: CompositionLookup },
  kinds: readonly ("published" | "calculated" | "judged")[],
): string {
  const all = kinds.length;
  const row = (text: string, ...of: string[]): (string | number)[] => {
    const n = kinds.filter((k) => of.includes(k)).length;
    return [text, n, ((100 * n) / all).toFixed(1)];
  };
  const foods = Object.values(GROUPS).flat().length;
  return [
    table(
      ["composition", "ingredients", "percent"],
      [
        row("published record", "published"),
        row("calculated from published records", "calculated"),
        row("published or calculated", "published", "calculated"),
        row("none: what is known is judged", "judged"),
      ],
    ),
    `How far calculated figures are off, per 100 g, over ${foods} foods that have a record and were calculated all the same (\`tests/published/calculated-pairs.ts\`). Proportions were written down before any result was looked at and never changed after one. Where drying, curing or cooking changes the water, it is the record's own, so it is no test and not listed. A recipe here is what such a product is usually made of, not what was in the sample: the error holds both what the method does and what proportions nobody told.`,
    ...Object.entries(GROUPS).flatMap(([title, pairs]) => [
      `### Calculated: ${title} (${pairs.length})`,
      offBy(data, pairs),
    ]),
  ].join("\n\n");
}
