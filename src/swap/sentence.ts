import type { Measure, Portion, Swap } from "../types.js";
import { plural } from "./plural.js";

const lower = (s: string): string => s.charAt(0).toLowerCase() + s.slice(1).replace(/\.$/, "");
/** "a", "a and b", "a, b and c". */
export const list = (items: readonly string[]): string =>
  items.length < 2 ? (items[0] ?? "") : `${items.slice(0, -1).join(", ")} and ${items[items.length - 1] ?? ""}`;
/** "450 g salt cod", "4 eggs", "1 can white beans": the measure and the name as a cook says them. */
export function named(p: {
  readonly measure: Pick<Measure, "amount" | "unit" | "text">;
  readonly name: string;
}): string {
  const { text, amount, unit } = p.measure;
  if (text.includes(p.name)) return text;
  const bare = unit === "piece" && !/[a-z]/i.test(text);
  return `${text} ${bare && amount > 1 ? plural(p.name) : p.name}`;
}

function span(minutes: number): string {
  const m = Math.abs(minutes);
  if (m < 90) return `${Math.round(m)} minutes`;
  const hours = Math.round((m / 60) * 2) / 2;
  return `${hours} hours`;
}

/** One plain sentence, then one for what changes. */
export function sentence(missing: Portion, swap: Omit<Swap, "text">): string {
  // "cod" for "salt cod" leaves a reader wondering which: the plain state is said when the food is the same.
  const food = (id: string): string => id.slice(0, id.indexOf("/"));
  const use = list(
    swap.use.map((u) =>
      named(
        food(u.id) === food(missing.id) && u.id.endsWith("/fresh") && !/fresh/i.test(u.name)
          ? { ...u, name: `fresh ${u.name}` }
          : u,
      ),
    ),
  );
  const approximate = swap.basis === "computed" && swap.use.some((u) => u.range) ? "Start with" : "Use";
  const first = `${approximate} ${use} for the ${named(missing)}.`;
  const steps = swap.prep.map((p) => lower(p.text));
  const mends = swap.corrections.map(
    (c) => `${c.grams < 0 ? "hold back" : "add"} ${named({ measure: c.measure, name: c.ingredient.name })}`,
  );
  const doing = [...steps, ...mends];
  const how =
    doing.length > 0
      ? ` ${doing.map((d, i) => (i === 0 ? d.charAt(0).toUpperCase() + d.slice(1) : d)).join("; ")}.`
      : "";
  const what = ` ${expectation(swap.shift)}`;
  const minutes = swap.time.active + swap.time.waiting;
  const when =
    Math.abs(minutes) >= 5
      ? ` ${minutes < 0 ? "Saves" : "Takes"} about ${span(minutes)}${minutes > 0 ? " more" : ""}.`
      : "";
  return `${first}${how}${what}${when}`;
}

/** "Expect it saltier and softer, with a note of smoke, but without the fish." */
function expectation(shift: Swap["shift"]): string {
  const top = shift.slice(0, 4);
  const plain = top.filter((s) => !s.axis.startsWith("note") && s.axis !== "colour").slice(0, 3);
  const gained = top.filter((s) => s.axis.startsWith("note") && s.direction === "more").map((s) => s.axis.slice(6));
  const lost = top.filter((s) => s.axis.startsWith("note") && s.direction === "less").map((s) => s.axis.slice(6));
  const colour = top.find((s) => s.axis === "colour");
  const out: string[] = [];
  if (plain.length > 0) out.push(list(plain.map((s) => s.text)));
  if (gained.length > 0) out.push(`with a note of ${list(gained)}`);
  if (lost.length > 0) out.push(`without the ${list(lost)}`);
  if (colour) out.push(colour.text);
  return out.length === 0 ? "Expect little difference." : `Expect it ${out.join(", ")}.`;
}
