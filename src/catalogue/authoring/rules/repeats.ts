import type { SwapRecord } from "../schema.js";
import type { Rule } from "./types.js";

/** One direction of a swap, and what sets it apart from others of the same pair. */
interface Setting {
  readonly role: string | undefined;
  readonly words: ReadonlySet<string>;
  readonly techniques: readonly string[] | undefined;
  readonly published: boolean;
  readonly amounts: string;
  readonly record: string;
  readonly file: string;
}

/** "cakes" and "cake" are one word, as they are when a request is matched with a swap. */
const wordsOf = (text: string): ReadonlySet<string> =>
  new Set(
    text
      .toLowerCase()
      .split(/[^\p{L}]+/u)
      .filter((w) => w.length > 2)
      .map((w) => (w.endsWith("s") && !w.endsWith("ss") ? w.slice(0, -1) : w)),
  );

function sameSetting(a: Setting, b: Setting): boolean {
  if (a.role !== b.role) return false;
  if (a.techniques && b.techniques && !a.techniques.some((t) => b.techniques?.includes(t))) return false;
  // Two tables may print different amounts; both stand as printed.
  if (a.published && b.published && a.amounts !== b.amounts) return false;
  return a.words.size === 0 ? b.words.size === 0 : [...a.words].some((w) => b.words.has(w));
}

function* directions(data: SwapRecord): Generator<{ pair: string; amounts: string }> {
  const parts = data.uses.map((u) => `${u.food} ${u.amount ?? u.ratio ?? ""}`).sort();
  const uses = data.uses.map((u) => u.food).sort();
  yield {
    pair: `${data.replaces.food}<${uses.join("+")}`,
    amounts: `${data.replaces.amount ?? ""}<${parts.join("+")}`,
  };
  if (data.both === true) for (const use of uses) yield { pair: `${use}<${data.replaces.food}`, amounts: "" };
}

/** One pair in one setting is said once. */
export const repeats: Rule = {
  name: "repeats",
  text: "No two swaps put the same in the place of the same in one setting: for one role, by one technique and with a word of the context in common, or with no context at all. Publications that print different amounts may stand side by side.",
  check({ authored }, say) {
    const seen = new Map<string, Setting[]>();
    for (const { file, data } of authored.swaps) {
      for (const { pair, amounts } of directions(data)) {
        const setting: Setting = {
          role: data.role,
          words: wordsOf(data.context ?? ""),
          techniques: data.techniques,
          published: !data.from.includes("common practice"),
          amounts,
          record: data.id,
          file,
        };
        const others = seen.get(pair) ?? [];
        const first = others.find((other) => sameSetting(other, setting));
        if (first)
          say(
            file,
            data.id,
            `This repeats ${first.record} (${first.file}) in the same setting. Make one of them, with the better amounts and both sources, or say in their contexts what sets them apart.`,
          );
        seen.set(pair, [...others, setting]);
      }
    }
  },
};
