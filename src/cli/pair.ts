import { pairingsFor, type Pairing, type PairingAdvice } from "../index.js";
import { open } from "./open.js";
import { listed, number, UsageError, type Values } from "./options.js";
import { avoidOf } from "./swap.js";

function line(p: Pairing): string {
  const basis =
    p.tradition === undefined ? p.basis : p.basis === "tradition" ? p.tradition : `${p.tradition}, ${p.basis}`;
  const brings = p.allergens.contains.length > 0 ? ` Brings: ${p.allergens.contains.join(", ")}.` : "";
  return `  ${p.with.name} (${basis}): ${p.why}${brings}`;
}
export function pairingsText(advice: PairingAdvice): string {
  const out = [`With ${advice.food.name}:`, "", ...advice.pairings.map(line)];
  if (advice.pairings.length === 0) out.push("  Nothing is known to go with it.");
  if (advice.refused.length > 0) {
    out.push("", "Not offered:");
    for (const r of advice.refused.slice(0, 6)) out.push(`  - ${r.name}: ${r.detail}`);
    if (advice.refused.length > 6) out.push(`  and ${advice.refused.length - 6} more`);
  }
  if (advice.notUnderstood.length > 0)
    out.push("", `Not understood, and so not used: ${advice.notUnderstood.join(", ")}.`);
  return out.join("\n");
}

/** Ends with 1 when nothing goes with it. */
export function pairCommand(positionals: readonly string[], values: Values): number {
  const food = positionals.join(" ").trim();
  if (food === "") throw new UsageError('Say what is to be paired: steadfare pair "kale".');
  const c = open(values);
  const have = listed(values.have);
  const avoid = avoidOf(c, listed(values.avoid));
  const limit = number(values, "limit");
  const advice = pairingsFor(c, {
    food,
    ...(have === undefined ? {} : { have }),
    ...(avoid === undefined ? {} : { avoid }),
    ...(values.cuisine === undefined ? {} : { cuisine: values.cuisine }),
    ...(limit === undefined ? {} : { limit }),
  });
  process.stdout.write(`${values.json ? JSON.stringify(advice, undefined, 2) : pairingsText(advice)}\n`);
  return advice.pairings.length === 0 ? 1 : 0;
}
