import type { Measure, Portion, Swap } from "../types.js";
import { plural, several } from "./plural.js";

const lower = (s: string): string => s.charAt(0).toLowerCase() + s.slice(1).replace(/\.$/, "");
const upper = (s: string): string => s.charAt(0).toUpperCase() + s.slice(1);
/** "a", "a and b", "a, b and c". */
export const list = (items: readonly string[]): string =>
  items.length < 2 ? (items[0] ?? "") : `${items.slice(0, -1).join(", ")} and ${items[items.length - 1] ?? ""}`;
/** "450 g salt cod", "4 eggs", "1 can white beans", "1 cup almonds": the measure and the name as a cook says them. */
export function named(p: {
  readonly measure: Pick<Measure, "amount" | "unit" | "text">;
  readonly name: string;
}): string {
  const { text, amount, unit } = p.measure;
  if (text.includes(p.name)) return text;
  const bare = unit === "piece" && !/[a-z]/i.test(text);
  const counted = unit === "piece" ? piecesNamed(p.name, text) : undefined;
  if (counted !== undefined) return counted;
  if (bare) return `${text} ${amount > 1 ? plural(p.name) : p.name}`;
  if (text === "a pinch" || text.endsWith("pinches") || text.endsWith(" pinch")) return `${text} of ${p.name}`;
  return `${text} ${unit === "piece" ? p.name : several(p.name, text)}`;
}

/** "15 leaves" of curry leaf are "15 curry leaves". */
function piecesNamed(name: string, text: string): string | undefined {
  const space = text.lastIndexOf(" ");
  const noun = text.slice(space + 1);
  const many = plural(name);
  const ends = (whole: string): boolean => whole === noun || whole.endsWith(` ${noun}`);
  if (space < 0) return undefined;
  return ends(many) ? `${text.slice(0, space)} ${many}` : ends(name) ? `${text.slice(0, space)} ${name}` : undefined;
}

function span(minutes: number): string {
  const m = Math.abs(minutes);
  if (m < 90) return `${Math.round(m)} minutes`;
  const hours = Math.round((m / 60) * 2) / 2;
  return `${hours} hours`;
}

/** One plain sentence, one for what changes in the work, what cooks note of it, and one for what to expect. */
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
  const noted = swap.prep.filter((p) => p.procedure === "as noted").map((p) => upper(p.text.replace(/\.$/, "")));
  const steps = swap.prep.filter((p) => p.procedure !== "as noted").map((p) => lower(p.text));
  const mend = (verb: string, those: Swap["corrections"]): string[] =>
    those.length === 0
      ? []
      : [`${verb} ${list(those.map((c) => named({ measure: c.measure, name: c.ingredient.name })))}`];
  const doing = [
    ...steps,
    ...mend(
      "hold back",
      swap.corrections.filter((c) => c.grams < 0),
    ),
    ...mend(
      "add",
      swap.corrections.filter((c) => c.grams > 0),
    ),
  ];
  const minutes = swap.time.active + swap.time.waiting;
  const when =
    Math.abs(minutes) >= 5
      ? `${minutes < 0 ? "Saves" : "Takes"} about ${span(minutes)}${minutes > 0 ? " more" : ""}.`
      : "";
  const out = [
    first,
    doing.length > 0 ? `${upper(doing.join("; "))}.` : "",
    ...noted.map((n) => `${n}.`),
    expectation(swap, noted.join(" ")),
    when,
  ];
  return out.filter((part) => part !== "").join(" ");
}

/** Marks from which a cook would call two things much the same; texture counts where what is swapped is eaten for itself. */
const ALIKE = { score: 0.8, flavour: 0.75, texture: 0.75, kin: 0.75, twin: 0.9, different: 0.65 };
const EATEN = 0.15;

/** The words that carry a shift: "hotter" of "much hotter", "smok" of "with a smoky taste". */
const gist = (s: Swap["shift"][number]): string =>
  s.axis.startsWith("note: ") ? s.axis.slice(6, 10) : (s.text.split(" ").pop() ?? "");

/** "Expect it saltier and softer, with a taste of smoke, without the alcohol." What a cook has noted is not said again, nor that it matters little. */
function expectation(swap: Omit<Swap, "text">, noted: string): string {
  const low = noted.toLowerCase();
  const top = swap.shift.filter((s) => noted === "" || !low.includes(gist(s).trim()));
  const words = (starts: string): string[] =>
    top.filter((s) => s.text.startsWith(starts)).map((s) => s.text.slice(starts.length));
  const plain = top.filter((s) => s.axis !== "colour" && !/^with(out)? /.test(s.text)).slice(0, 3);
  const gained = words("with ").slice(0, 2);
  const lost = words("without ").slice(0, 2);
  const colour = top.find((s) => s.axis === "colour");
  const out: string[] = [];
  if (plain.length > 0) out.push(list(plain.map((s) => s.text)));
  if (gained.length > 0) out.push(`with ${list(gained)}`);
  if (lost.length > 0) out.push(`without ${list(lost)}`);
  if (colour) out.push(colour.text);
  if (out.length > 0) return `Expect it ${out.join(", ")}.`;
  if (noted !== "") return "";
  const { score, fit, parts } = swap;
  const kin = parts.find((p) => p.name === "kin")?.value ?? 1;
  const felt = (parts.find((p) => p.name === "texture")?.weight ?? 0) >= EATEN;
  const texture = felt ? fit.texture : 1;
  const near = score >= ALIKE.twin || (score >= ALIKE.score && kin >= ALIKE.kin);
  if (near && fit.flavour >= ALIKE.flavour && texture >= ALIKE.texture) return "Expect little difference.";
  const much = score < ALIKE.different ? "" : " a little";
  if (fit.flavour < ALIKE.flavour) return `Expect it to taste${much} different.`;
  if (texture < ALIKE.texture) return `Expect it to feel${much} different.`;
  return `Expect it to differ${much}.`;
}
