import type { Portion, Swap } from "../types.js";

const lower = (s: string): string => s.charAt(0).toLowerCase() + s.slice(1).replace(/\.$/, "");
/** "a", "a and b", "a, b and c". */
export const list = (items: readonly string[]): string => (items.length < 2 ? (items[0] ?? "") : `${items.slice(0, -1).join(", ")} and ${items[items.length - 1] ?? ""}`);
export const named = (p: { readonly measure: { readonly text: string }; readonly name: string }): string => {
  const { text } = p.measure;
  return text.includes(p.name) ? text : `${text} ${p.name}`;
};

function span(minutes: number): string {
  const m = Math.abs(minutes);
  if (m < 90) return `${Math.round(m)} minutes`;
  const hours = Math.round((m / 60) * 2) / 2;
  return `${hours} hours`;
}

/** One plain sentence, then one for what changes. */
export function sentence(missing: Portion, swap: Omit<Swap, "text">): string {
  const use = list(swap.use.map(named));
  const approximate = swap.basis === "computed" && swap.use.some((u) => u.range) ? "Start with" : "Use";
  const first = `${approximate} ${use} for the ${named(missing)}.`;
  const steps = swap.prep.map((p) => lower(p.text));
  const mends = swap.corrections.map((c) => `${c.grams < 0 ? "hold back" : "add"} ${named({ measure: c.measure, name: c.ingredient.name })}`);
  const doing = [...steps, ...mends];
  const how = doing.length > 0 ? ` ${doing.map((d, i) => (i === 0 ? d.charAt(0).toUpperCase() + d.slice(1) : d)).join("; ")}.` : "";
  const change = swap.shift.slice(0, 3).map((s) => s.text);
  const what = change.length > 0 ? ` Expect it ${list(change)}.` : " Expect little difference.";
  const minutes = swap.time.active + swap.time.waiting;
  const when = Math.abs(minutes) >= 5 ? ` ${minutes < 0 ? "Saves" : "Takes"} about ${span(minutes)}${minutes > 0 ? " more" : ""}.` : "";
  return `${first}${how}${what}${when}`;
}
