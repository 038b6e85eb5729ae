// What kitchens are short of, and whether the data answer it: one paragraph of the coverage report.
import type { Flat } from "../../src/catalogue/compiled.js";
import type { Data } from "./coverage.js";

/** How many swaps of common practice that say what they are for each ingredient has. */
function answered(flat: Flat): Map<string, number> {
  const count = new Map<string, number>();
  for (const { context, sources, replaces } of flat.swaps)
    if (context !== undefined && sources.some((p) => flat.commons.refs[p]?.[0] === "common practice"))
      count.set(replaces.id, (count.get(replaces.id) ?? 0) + 1);
  return count;
}

export function lacking({ flat, lacked = [] }: Data): string {
  const count = answered(flat);
  const few = lacked.filter((id) => (count.get(id) ?? 0) < 3).map((id) => `${id} (${count.get(id) ?? 0})`);
  const fewer = few.length === 0 ? "" : ` Fewer: ${few.join(", ")}.`;
  return `${lacked.length} ingredients are listed in \`data/vocabulary/lacked.yaml\` as what home kitchens are most often short of; that list is judgement. ${lacked.length - few.length} of them have three or more swaps of common practice that say what they are for.${fewer}`;
}
