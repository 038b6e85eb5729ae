import type { Token } from "./text.js";
import type { ByProductUse } from "./types.js";

const KEEP = new Set(["reserve", "reserving", "save", "saving", "keep", "keeping", "retain", "retaining"]);
/** What cooking leaves that a cook keeps. */
const LEFT = new Set(
  "liquid liquor water stock juice juices fat dripping drippings syrup brine marinade whey oil shells shell bones bone peel peelings rind skins cream seeds trimmings zest milk".split(
    " ",
  ),
);
const SILENT = new Set([
  "the",
  "a",
  "an",
  "of",
  "some",
  "all",
  "its",
  "their",
  "about",
  "any",
  "cup",
  "cups",
  "ml",
  "tablespoons",
  "tbsp",
  "litre",
  "and",
]);
/** "the soaking liquid": left by a step that soaked, kept or not. */
const BY: Readonly<Record<string, readonly string[]>> = {
  soaking: ["soak", "soaking", "steep", "rehydrate"],
  cooking: ["boil", "cook", "simmer", "poach"],
  poaching: ["poach", "simmer"],
  boiling: ["boil"],
  pasta: ["pasta", "spaghetti", "boil", "cook"],
  bean: ["beans", "simmer"],
  steaming: ["steam"],
};

export interface Kept {
  readonly step: number;
  readonly what: string;
  readonly noun: string;
}

/** "reserve the soaking liquid", "saving 1 cup of the pasta water". */
export function keepsIn(sentence: string, tokens: readonly Token[]): { what: string; noun: string; text: string }[] {
  const out: { what: string; noun: string; text: string }[] = [];
  tokens.forEach((t, i) => {
    const aside = t.text === "set" && tokens.slice(i + 1, i + 10).some((x) => x.text === "aside");
    if (!KEEP.has(t.text) && !aside) return;
    const at = tokens.findIndex((x, k) => k > i && k < i + 9 && LEFT.has(x.text));
    // "save the peel": but nothing past the end of the clause
    const noun = tokens[at];
    if (noun === undefined || sentence.slice(t.end, noun.start).includes(",")) return;
    // the liquid, not the first of its words: "pasta water"
    const words = tokens
      .slice(i + 1, at + 1)
      .filter((x) => !SILENT.has(x.text) && !(x.text >= "0" && x.text <= "9999"));
    if (words.some((w) => w.text === "warm" || w.text === "until")) return;
    out.push({
      what: words.map((w) => w.text).join(" "),
      noun: noun.text,
      text: sentence.slice(t.start, noun.end),
    });
  });
  return out.slice(0, 5);
}

/** By-products of earlier steps this one uses. `before` has the words of those steps. */
export function usesIn(
  tokens: readonly Token[],
  kept: readonly Kept[],
  before: readonly ReadonlySet<string>[],
): ByProductUse[] {
  const out: ByProductUse[] = [];
  const put = (u: ByProductUse): void => {
    if (!out.some((o) => o.from === u.from && o.what === u.what)) out.push(u);
  };
  const alike = new Map<string, readonly Kept[]>();
  const left = new Map<string, number>();
  tokens.forEach((t, i) => {
    if (!LEFT.has(t.text)) return;
    const prior = tokens.slice(Math.max(0, i - 4), i).map((x) => x.text);
    if (prior.some((w) => KEEP.has(w))) return;
    const reserved = prior.includes("reserved") || prior.includes("saved") || tokens[i + 1]?.text === "reserved";
    const last = prior.at(-1) ?? "";
    // worked out once for each word, however often a step says it
    const ones =
      alike.get(t.text) ??
      kept.filter((k) => k.noun === t.text || `${k.noun}s` === t.text || k.noun === `${t.text}s`).slice(-1);
    alike.set(t.text, ones);
    const same = ones[0];
    if (same !== undefined) {
      const full = same.what.split(" ").every((w) => w === t.text || w === same.noun || prior.includes(w));
      const confidence = reserved ? 0.95 : full && same.what.includes(" ") ? 0.9 : prior.includes("the") ? 0.6 : 0;
      if (confidence > 0) {
        put({ what: same.what, from: same.step, confidence });
        return;
      }
    }
    const signs =
      Object.hasOwn(BY, last) && ["liquid", "water", "liquor", "juices"].includes(t.text) ? BY[last] : undefined;
    if (signs === undefined) return;
    const from = left.get(last) ?? before.findLastIndex((words) => signs.some((w) => words.has(w)));
    left.set(last, from);
    if (from >= 0) put({ what: `${last} ${t.text}`, from, confidence: 0.7 });
  });
  return out;
}
