import { clean, escapeMarkdown } from "../notes/escape.js";
import type { AdaptedRecipe } from "../types.js";

const WIDTH = 96;
function wrapped(text: string, first: string, rest: string): string {
  const out: string[] = [];
  let line = first;
  let empty = true;
  for (const word of clean(text)
    .split(" ")
    .filter((w) => w !== "")) {
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
const minutesText = (m: number): string =>
  m < 120 ? `${m} minutes` : `${Math.floor(m / 60)} hours${m % 60 === 0 ? "" : ` ${m % 60} minutes`}`;
const factsOf = (r: AdaptedRecipe): readonly string[] => [
  ...(r.serves === undefined ? [] : [`Serves ${r.serves}`]),
  ...(r.minutes === undefined ? [] : [minutesText(r.minutes)]),
];

/** The recipe as plain text to cook from, then what was changed and what to mind. */
export function adaptedText(r: AdaptedRecipe): string {
  const name = clean(r.name);
  const out: string[] = [name, "=".repeat(Math.min(WIDTH, Math.max(3, name.length)))];
  const facts = factsOf(r);
  if (facts.length > 0) out.push(facts.join(". ") + ".");
  out.push("");
  let group: string | undefined;
  for (const l of r.lines) {
    if (l.group !== group && l.group !== undefined) out.push(`${clean(l.group)}:`);
    group = l.group;
    out.push(wrapped(l.text, "- ", "  "));
  }
  out.push("");
  group = undefined;
  r.steps.forEach((s, i) => {
    if (s.group !== group && s.group !== undefined) out.push(`${clean(s.group)}:`);
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
    out.push(clean(ch.where));
    out.push(wrapped(ch.before, "  was: ", "       "));
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

/** The same as Markdown; what the recipe says can be no mark, link or HTML in it. */
export function adaptedMarkdown(r: AdaptedRecipe, level = 1): string {
  const e = escapeMarkdown;
  const head = (n: number, text: string): string => `${"#".repeat(Math.min(6, level + n))} ${text}`;
  const out: string[] = [head(0, e(r.name)), ""];
  const facts = factsOf(r);
  if (facts.length > 0) out.push(`*${facts.join(". ")}.*`, "");
  out.push(head(1, "Ingredients"), "");
  let group: string | undefined;
  r.lines.forEach((l, i) => {
    if (l.group !== group && l.group !== undefined) out.push(...(i > 0 ? [""] : []), `**${e(l.group)}**`, "");
    group = l.group;
    out.push(`- ${e(l.text)}`);
  });
  out.push("", head(1, "Method"), "");
  group = undefined;
  r.steps.forEach((s, i) => {
    if (s.group !== group && s.group !== undefined) out.push(...(i > 0 ? [""] : []), `**${e(s.group)}**`, "");
    group = s.group;
    out.push(`${i + 1}. ${e(s.text)}`);
  });
  if (r.notes.length > 0) out.push("", head(1, "Mind"), "", ...r.notes.map((n) => `- ${e(n)}`));
  if (r.changes.length > 0) {
    out.push("", head(1, "What was changed"), "");
    for (const ch of r.changes) out.push(`- **${e(ch.where)}**: ${e(ch.before)} → ${e(ch.after)} *Why:* ${e(ch.why)}`);
  }
  if (r.refused.length > 0) {
    out.push("", head(1, "Ruled out"), "");
    for (const x of r.refused.slice(0, 6)) out.push(`- ${e(x.name)}: ${e(x.detail)}`);
    if (r.refused.length > 6) out.push(`- and ${r.refused.length - 6} more`);
  }
  return `${out.join("\n")}\n`;
}
