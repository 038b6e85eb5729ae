import type { AdaptedRecipe } from "../types.js";

const WIDTH = 96;
function wrapped(text: string, first: string, rest: string): string {
  const out: string[] = [];
  let line = first;
  let empty = true;
  for (const word of text.split(/\s+/).filter((w) => w !== "")) {
    if (!empty && line.length + 1 + word.length > WIDTH) {
      out.push(line);
      line = rest + word;
    } else {
      line += empty ? word : ` ${word}`;
      empty = false;
    }
  }
  out.push(line);
  return out.join("\n");
}

/** The recipe as plain text to cook from, then what was changed and what to mind. */
export function adaptedText(r: AdaptedRecipe): string {
  const out: string[] = [r.name, "=".repeat(Math.min(WIDTH, Math.max(3, r.name.length)))];
  const facts = [
    ...(r.serves === undefined ? [] : [`Serves ${r.serves}`]),
    ...(r.minutes === undefined ? [] : [`${r.minutes} minutes`]),
  ];
  if (facts.length > 0) out.push(facts.join(". ") + ".");
  out.push("");
  let group: string | undefined;
  for (const l of r.lines) {
    if (l.group !== group && l.group !== undefined) out.push(`${l.group}:`);
    group = l.group;
    out.push(wrapped(l.text, "- ", "  "));
  }
  out.push("");
  group = undefined;
  r.steps.forEach((s, i) => {
    if (s.group !== group && s.group !== undefined) out.push(`${s.group}:`);
    group = s.group;
    out.push(wrapped(s.text, `${i + 1}. `, "   "));
  });
  if (r.notes.length > 0) {
    out.push("", "Mind", "----");
    for (const n of r.notes) out.push(wrapped(n, "- ", "  "));
  }
  out.push("", "Changes", "-------");
  if (r.changes.length === 0) out.push("None.");
  for (const ch of r.changes) {
    out.push(`${ch.where}`);
    if (ch.before !== "") out.push(wrapped(ch.before, "  was: ", "       "));
    out.push(wrapped(ch.after, "  now: ", "       "));
    if (ch.why !== "") out.push(wrapped(ch.why, "  why: ", "       "));
  }
  if (r.refused.length > 0) {
    out.push("", "Ruled out", "---------");
    for (const x of r.refused.slice(0, 6)) out.push(wrapped(`${x.name}: ${x.detail}`, "- ", "  "));
    if (r.refused.length > 6) out.push(`- and ${r.refused.length - 6} more`);
  }
  return out.join("\n");
}
