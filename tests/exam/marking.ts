import { readFileSync } from "node:fs";
import { parse } from "yaml";
import { swapsFor } from "../../src/index.js";
import type { Catalogue, Swap, SwapAdvice, SwapRequest } from "../../src/index.js";

export interface Question {
  readonly id: string;
  readonly kitchen: string;
  readonly missing: string;
  readonly for?: string;
  readonly technique?: string;
  readonly cuisine?: string;
  readonly lines?: readonly string[];
  readonly have?: readonly string[];
  readonly onlyFromHave?: boolean;
  readonly avoid?: NonNullable<SwapRequest["avoid"]>;
  readonly expect?: "none" | "leave out";
  /** Leaving it out is a good answer beside those named. */
  readonly or?: "leave out";
  readonly good: readonly string[];
  readonly poor: readonly string[];
  readonly grams?: Readonly<Record<string, readonly [low: number, high: number]>>;
  readonly why: string;
}

/** What was wrong with an answer; none when it passes. */
export type Fault = "no good one in three" | "poor above good" | "amount" | "not left out" | "something offered";

export const questionsIn = (file: string): readonly Question[] =>
  parse(readFileSync(new URL(file, import.meta.url), "utf8")) as Question[];

export function requestOf(q: Question, evidence: "all" | "computed"): SwapRequest {
  return {
    missing: q.missing,
    evidence,
    limit: 20,
    dish: {
      ...(q.technique === undefined ? {} : { technique: q.technique }),
      ...(q.cuisine === undefined ? {} : { cuisine: q.cuisine }),
      ...(q.lines === undefined ? {} : { lines: q.lines }),
    },
    ...(q.for === undefined ? {} : { for: q.for }),
    ...(q.have === undefined ? {} : { have: q.have }),
    ...(q.onlyFromHave === undefined ? {} : { onlyFromHave: q.onlyFromHave }),
    ...(q.avoid === undefined ? {} : { avoid: q.avoid }),
  };
}

export const foodOf = (id: string): string => id.split("/")[0] as string;

/** "a + b" asks for both; water and salt may stand beside them, and " + *" lets anything. */
function isThe(swap: Swap, pattern: string): boolean {
  const asked = pattern.split(" + ");
  const foods = swap.use.map((u) => foodOf(u.id));
  const named = asked.filter((a) => a !== "*");
  if (!named.every((a) => foods.includes(a))) return false;
  return asked.includes("*") || foods.every((f) => named.includes(f) || f === "water" || f === "salt");
}

/** What one answer earned, and what its first five were. */
export interface Mark {
  readonly faults: readonly Fault[];
  readonly first: readonly string[];
}

export function mark(c: Catalogue, q: Question, evidence: "all" | "computed"): Mark {
  const advice = swapsFor(c, requestOf(q, evidence));
  return { faults: faultsOf(q, advice), first: advice.swaps.slice(0, 5).map(said) };
}

const said = (s: Swap): string => s.use.map((u) => `${u.measure.text} ${u.id} (${u.grams} g)`).join(" + ");

function faultsOf(q: Question, { swaps, goWithout, mustStay }: SwapAdvice): readonly Fault[] {
  if (q.expect === "none")
    return swaps.length === 0 && (goWithout ?? mustStay) !== undefined ? [] : ["something offered"];
  const at = swaps.findIndex((s) => q.good.some((g) => isThe(s, g)));
  const left = (q.expect ?? q.or) === "leave out" && goWithout !== undefined;
  const faults: Fault[] = [];
  if (q.expect === "leave out" && goWithout === undefined) faults.push("not left out");
  if (!left && (at === -1 || at > 2)) faults.push("no good one in three");
  const before = swaps.slice(0, at === -1 ? 3 : at);
  if (before.some((s) => !q.good.some((g) => isThe(s, g)) && q.poor.some((p) => isThe(s, p)))) {
    faults.push("poor above good");
  }
  const chosen = at === -1 || at > 2 ? undefined : swaps[at];
  if (chosen !== undefined && !amountIsRight(q, chosen)) faults.push("amount");
  return faults;
}

function amountIsRight(q: Question, swap: Swap): boolean {
  return swap.use.every((u) => {
    const bounds = q.grams?.[foodOf(u.id)];
    return bounds === undefined || (u.grams >= bounds[0] && u.grams <= bounds[1]);
  });
}
