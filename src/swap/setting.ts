import type { Store } from "../catalogue/index.js";
import type { SwapRequest, TechniqueId } from "../types.js";

/** A word of a setting. */
export interface Job {
  readonly roles?: Readonly<Record<string, number>>;
  readonly technique?: TechniqueId;
  readonly taste?: "sweet" | "savoury";
}

/** Reads "moisture (quick breads, pancakes)" word by word, longest phrases first. Punctuation separates; what nothing knows is returned. */
export function readJobs(store: Store, text: string): { jobs: Job[]; unknown: string[] } {
  const table = (store.tables["jobs"] ?? {}) as Readonly<Record<string, Job>>;
  const jobs: Job[] = [];
  const unknown: string[] = [];
  for (const chunk of text
    .slice(0, 500)
    .toLowerCase()
    .split(/[,;:()/]|\band\b|\bor\b/)) {
    const words = chunk
      .split(/\s+/)
      .filter((w) => w !== "" && !["a", "an", "the", "for", "in", "of", "it", "to"].includes(w));
    for (let i = 0; i < words.length;) {
      let found = 0;
      for (let n = Math.min(3, words.length - i); n > 0 && found === 0; n--) {
        const job = Object.hasOwn(table, words.slice(i, i + n).join(" "))
          ? table[words.slice(i, i + n).join(" ")]
          : undefined;
        if (job) {
          jobs.push(job);
          found = n;
        }
      }
      if (found === 0) unknown.push(words[i] as string);
      i += Math.max(1, found);
    }
  }
  return { jobs, unknown };
}

const PRESERVING: readonly TechniqueId[] = ["can", "pickle", "ferment", "cure"];
export function techniqueOf(
  store: Store,
  request: SwapRequest,
  jobs: readonly Job[],
  notUnderstood: string[],
): TechniqueId | undefined {
  const known = store.terms["technique"] ?? [];
  // Whoever says canning is canning, however the pot is heated: what keeps harm out is asked of it first.
  const kept = jobs.find((job) => job.technique !== undefined && PRESERVING.includes(job.technique));
  if (kept?.technique) return kept.technique;
  const given = request.dish?.technique;
  if (given !== undefined) {
    const word = given.trim().toLowerCase();
    if (known.includes(word)) return word as TechniqueId;
    const read = readJobs(store, word).jobs.find((job) => job.technique);
    if (read?.technique) return read.technique;
    notUnderstood.push(given);
  }
  return jobs.find((job) => job.technique)?.technique;
}
