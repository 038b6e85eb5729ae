import { list, named } from "../swap/sentence.js";
import type { Judgement, MealReport, Portion, Swap, SwapAdvice } from "../types.js";

/** A portion as a cook says it. */
export const said = (p: Portion): string => named(p);
const wrap = (text: string, indent: string, width = 96): string => {
  const lines: string[] = [];
  let line = "";
  for (const word of text.split(/\s+/)) {
    if (line !== "" && indent.length + line.length + 1 + word.length > width) {
      lines.push(line);
      line = word;
    } else line = line === "" ? word : `${line} ${word}`;
  }
  if (line !== "") lines.push(line);
  return lines.map((l) => indent + l).join("\n");
};

function swapText(swap: Swap, place: number, why: boolean): string {
  const basis = swap.basis === "computed" ? "worked out" : swap.basis;
  const out = [
    `${String(place).padStart(2)}. ${swap.use.map(said).join(" + ")}   (${swap.score.toFixed(2)}, ${basis})`,
    wrap(swap.text, "    "),
  ];
  const { gained, label = [] } = swap.allergens;
  const sure = gained.filter((a) => !label.includes(a));
  const may = gained.filter((a) => label.includes(a));
  if (sure.length > 0) out.push(`    Brings: ${sure.join(", ")}.`);
  if (may.length > 0) out.push(wrap(`May bring ${may.join(", ")}: check the label.`, "    "));
  if (swap.allergens.unknown.length > 0)
    out.push(
      `    Check the label for: ${swap.allergens.unknown.slice(0, 6).join(", ")}${swap.allergens.unknown.length > 6 ? " ..." : ""}.`,
    );
  for (const c of swap.cautions.filter(
    (x) => x.severity !== "note" && !swap.prep.some((p) => x.text.startsWith(p.text.replace(/\.$/, ""))),
  ))
    out.push(wrap(`${c.severity === "stop" ? "Needed" : "Caution"} (${c.who}): ${c.text}`, "    "));
  if (why)
    for (const p of swap.parts) out.push(`      ${p.name.padEnd(9)} ${p.value.toFixed(2)} x ${p.weight}  ${p.text}`);
  return out.join("\n");
}

export function adviceText(advice: SwapAdvice, why = false): string {
  const out = [
    `Instead of ${said(advice.missing)} (${Math.round(advice.missing.grams)} g) as ${advice.roles
      .slice(0, 3)
      .map((r) => r.role)
      .join(", ")}:`,
    "",
  ];
  advice.swaps.forEach((s, i) => out.push(swapText(s, i + 1, why)));
  if (advice.swaps.length === 0) out.push("  No good stand-in.");
  if (advice.goWithout !== undefined) out.push("", wrap(advice.goWithout, ""));
  if (advice.mustStay !== undefined) out.push("", wrap(advice.mustStay, ""));
  const absent = advice.refused.filter((r) => r.because === "not in the house");
  const refused = advice.refused.filter((r) => r.because !== "not in the house");
  if (refused.length > 0) {
    out.push("", "Not offered:");
    for (const r of refused.slice(0, 6)) out.push(wrap(`- ${r.name}: ${r.detail}`, "  "));
    if (refused.length > 6) out.push(`  and ${refused.length - 6} more`);
  }
  if (absent.length > 0)
    out.push(
      "",
      wrap(
        `Not in the house: ${list(absent.slice(0, 5).map((r) => r.name))}${absent.length > 5 ? `, and ${absent.length - 5} more` : ""}.`,
        "",
      ),
    );
  if (advice.notUnderstood.length > 0)
    out.push("", `Not understood, and so not used: ${advice.notUnderstood.join(", ")}.`);
  return out.join("\n");
}

const VERDICT: Readonly<Record<Judgement["verdict"], string>> = {
  yes: "Yes.",
  "with changes": "Yes, with changes.",
  "only for": "Only for some of it.",
  no: "No.",
};
export function judgementText(j: Judgement): string {
  const out = [`${VERDICT[j.verdict]} ${j.why}`];
  if (j.swap)
    for (const c of j.swap.cautions.filter((x) => x.severity !== "note"))
      out.push(wrap(`Caution (${c.who}): ${c.text}`, "  "));
  if (j.better.length > 0) out.push(`Better: ${j.better.map((s) => s.use.map(said).join(" + ")).join("; ")}.`);
  return out.join("\n");
}

export function mealText(report: MealReport): string {
  const out: string[] = [];
  for (const [slot, r] of Object.entries(report.slots)) {
    const mark = r.covered ? "enough" : report.gaps.some((g) => g.slot === slot) ? "short" : "none, and none asked for";
    out.push(
      `  ${slot.padEnd(10)} ${String(Math.round(r.perPerson)).padStart(4)} ${r.unit} a person (${r.target[0]} to ${r.target[1]}): ${mark}`,
    );
  }
  out.push(
    `  ${report.balance.text} Sodium ${report.sodiumPerPerson.atLeast ? "at least " : ""}${report.sodiumPerPerson.milligrams} mg a person.`,
  );
  if (report.allergens.contains.length > 0)
    out.push(
      `  Contains: ${report.allergens.contains.join(", ")}.${report.allergens.mayContain.length > 0 ? ` May contain: ${report.allergens.mayContain.join(", ")}.` : ""}`,
    );
  for (const g of report.gaps)
    out.push(
      `  ${g.slot} is short by ${Math.round(g.short)} ${g.unit} a person${g.fill.length > 0 ? `; from the house: ${g.fill.map(said).join(", or ")}` : ""}.`,
    );
  for (const c of report.cautions)
    out.push(wrap(`${c.severity === "stop" ? "Not for" : "Mind"} ${c.who}: ${c.text}`, "  "));
  out.push(wrap(report.text, "  "));
  return out.join("\n");
}
