// The twenty requests of tests/exam/twenty.yaml with the answers of today and what a cook who read them would say.
import { parse } from "yaml";
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { openCatalogue, swapsFor, type Catalogue, type Swap, type SwapAdvice } from "../../src/index.js";

interface Reading {
  /** The foods of the three answers that were read, in order; what was said of them holds for no others. */
  readonly of: readonly string[];
  readonly followed: "yes" | "partly" | "no";
  readonly why: string;
}
export interface Request {
  readonly id: string;
  readonly kitchen: string;
  readonly missing: string;
  readonly for: string;
  readonly technique?: string;
  readonly cuisine: string;
  /** What the first reading said, before anything was mended. */
  readonly first: Omit<Reading, "of">;
  /** What a cook says of the answers with evidence, and of those without where they are other ones. */
  readonly read: Reading;
  readonly computed?: Reading;
}

export const FILE = new URL("../../tests/exam/twenty.yaml", import.meta.url);
export const requests = (): readonly Request[] => parse(readFileSync(fileURLToPath(FILE), "utf8")) as Request[];

export const adviceFor = (c: Catalogue, q: Request, evidence: "all" | "computed"): SwapAdvice =>
  swapsFor(c, {
    missing: q.missing,
    for: q.for,
    evidence,
    limit: 20,
    dish: { cuisine: q.cuisine, ...(q.technique === undefined ? {} : { technique: q.technique }) },
  });
/** "coconut-cream + water" */
export const foodsOf = (s: Swap): string => s.use.map((u) => u.id.split("/")[0]).join(" + ");
/** What was read is what is answered today. */
export const stillRead = (swaps: readonly Swap[], reading: Reading): boolean =>
  swaps.slice(0, 3).map(foodsOf).join("; ") === reading.of.join("; ");

const said = (s: Swap): string => s.use.map((u) => `${u.measure.text} ${u.name}`).join(" + ");
const three = (advice: SwapAdvice): string =>
  [
    ...advice.swaps.slice(0, 3).map((s, k) => `${k + 1}. ${said(s)}`),
    ...(advice.goWithout === undefined ? [] : ["or go without"]),
  ].join("; ");

const WORDS = ["yes", "partly", "no"] as const;
const counted = (list: readonly { readonly followed: string }[]): string =>
  `${list.filter((r) => r.followed === "yes").length} followed, ${list.filter((r) => r.followed === "partly").length} in part, ${list.filter((r) => r.followed === "no").length} not`;

/** The section of docs/accuracy.md. */
export function twenty(): string {
  const c = openCatalogue();
  const list = requests();
  const verdict = (advice: SwapAdvice, reading: Reading | undefined): string =>
    reading === undefined
      ? "not read"
      : stillRead(advice.swaps, reading)
        ? `**${reading.followed}**: ${reading.why}`
        : "other answers than those read";
  const cell = (text: string): string => text.replace(/\|/g, "\\|");
  const rows = list.map((q) => {
    const all = adviceFor(c, q, "all");
    const computed = adviceFor(c, q, "computed");
    const same = three(all) === three(computed);
    return [
      `${q.missing}, ${q.for}`,
      three(all),
      verdict(all, q.read),
      same ? "the same" : three(computed),
      same ? "" : verdict(computed, q.computed),
    ].map(cell);
  });
  const refusedFirst = [...list]
    .filter((q) => q.first.followed !== "yes")
    .sort((a, b) => WORDS.indexOf(b.first.followed) - WORDS.indexOf(a.first.followed))
    .map((q) => `- **${q.missing}** (${q.first.followed === "no" ? "not followed" : "in part"}): ${q.first.why}.`);
  return [
    "## Twenty requests, read as a cook reads them",
    "Three kitchens on which no figure, rule or weight had been chosen: Sri Lankan, Georgian and Dutch. What a good answer is was written down before any was seen (`tests/exam/twenty.yaml`); then the answers were read. One cook's judgement, no source.",
    `At the first reading: ${counted(list.map((q) => q.first))}. What was not followed, and why it came out:`,
    refusedFirst.join("\n"),
    `Most of that has been mended since, so what follows is no blind reading any more: ${counted(list.map((q) => q.read))} (without evidence, of those that answer otherwise: ${counted(list.flatMap((q) => q.computed ?? []))}). What is said of an answer stands here only while it is still the answer.`,
    [
      "| asked for | answered | followed? | worked out without evidence | followed? |",
      "| --- | --- | --- | --- | --- |",
      ...rows.map((r) => `| ${r.join(" | ")} |`),
    ].join("\n"),
  ].join("\n\n");
}
