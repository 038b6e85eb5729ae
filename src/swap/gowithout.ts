import type { Swap } from "../types.js";
import type { Ask } from "./ask.js";

/** Jobs a dish stands without, and what it then lacks. */
const SPARE: Readonly<Record<string, string>> = {
  garnish: "the dish only loses a finish",
  colour: "only the colour suffers",
  herb: "the dish is plainer but sound",
  spice: "the dish is plainer but sound",
  heat: "the dish is milder",
  enrichment: "the dish is less rich",
  "umami seasoning": "the dish has less depth; a little more salt helps",
};
/** Jobs a dish fails without. */
const VITAL: readonly string[] = [
  "leavener",
  "structure",
  "binder",
  "gelling agent",
  "thickener",
  "foam",
  "starch base",
  "main protein",
];

/** When leaving it out is the better answer, or the only one: what is lost. Undefined when a stand-in is worth the trouble. */
export function goWithoutFor(ask: Ask, swaps: readonly Swap[]): string | undefined {
  const name = ask.missing.name;
  const best = swaps[0]?.score ?? 0;
  const top = ask.roles[0]?.role;
  const spare = top === undefined ? undefined : SPARE[top];
  if (spare !== undefined && !ask.roles.some((r) => r.weight >= 0.6 && VITAL.includes(r.role)) && best < 0.62)
    return `No stand-in comes close: leave the ${name} out; ${spare}.`;
  if (swaps.length === 0) {
    return top !== undefined && VITAL.includes(top)
      ? `Nothing here stands in for the ${name} as ${top}: cook another dish, or buy it.`
      : `Nothing here stands in for the ${name}: leave it out, and taste before serving.`;
  }
  return undefined;
}
