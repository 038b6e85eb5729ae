import { STANDING_NOTICE } from "../safety/index.js";
import type { SwapNotes } from "../types.js";
import { clean, escapeHtml, escapeMarkdown } from "./escape.js";
import { sayOf, scaledSaid } from "./words.js";

const TITLE = "Substitutions";
const localeOf = (notes: SwapNotes): "en-GB" | "en-US" => (notes.locale === "en-GB" ? "en-GB" : "en-US");

/** "Substitutions", or "Substitutions for Miso soup". */
const titleOf = (notes: SwapNotes): string => {
  const name = clean(notes.recipe);
  return name === "" ? TITLE : `${TITLE} for ${name}`;
};

export function renderMarkdown(notes: SwapNotes): string {
  if (notes.notes.length === 0) return "";
  const e = escapeMarkdown;
  const out = [`## ${e(titleOf(notes))}`];
  for (const note of notes.notes) {
    const scaled = scaledSaid(note, notes.serves);
    out.push("", `**Instead of ${e(note.line)}**${scaled === "" ? "" : ` (${e(scaled)})`}`, "");
    for (const swap of note.swaps) {
      const said = sayOf(note, swap, localeOf(notes));
      const allergens = said.allergens === "" ? "" : ` *Allergens:* ${e(said.allergens)}`;
      const cautions = said.cautions.map((x) => ` *${e(x.label)}:* ${e(x.text)}`).join("");
      out.push(`- **${e(said.use)}.** ${e(said.how)}${allergens}${cautions}`);
    }
  }
  out.push("", `*${e(STANDING_NOTICE)}*`, "");
  return out.join("\n");
}

/** A fragment with classes of its own (`steadfare-…`), no style and no script: how it looks is for the page's own CSS. */
export function renderHtml(notes: SwapNotes): string {
  if (notes.notes.length === 0) return "";
  const e = escapeHtml;
  // What the recipe wrote may run either way; its direction ends where it ends.
  const name = clean(notes.recipe);
  const title = name === "" ? TITLE : `${TITLE} for <bdi>${e(name)}</bdi>`;
  const out = [`<section class="steadfare-notes" lang="${localeOf(notes)}">`, `  <h2>${title}</h2>`];
  for (const note of notes.notes) {
    const scaled = scaledSaid(note, notes.serves);
    out.push(
      `  <section class="steadfare-note">`,
      `    <h3>Instead of <bdi class="steadfare-line">${e(note.line)}</bdi>${scaled === "" ? "" : ` <span class="steadfare-scaled">(${e(scaled)})</span>`}</h3>`,
      `    <ul>`,
    );
    for (const swap of note.swaps) {
      const said = sayOf(note, swap, localeOf(notes));
      out.push(`      <li class="steadfare-swap">`, `        <strong class="steadfare-use">${e(said.use)}.</strong>`);
      out.push(`        <span class="steadfare-how">${e(said.how)}</span>`);
      if (said.allergens !== "")
        out.push(`        <span class="steadfare-allergens"><b>Allergens:</b> ${e(said.allergens)}</span>`);
      for (const x of said.cautions)
        out.push(`        <span class="steadfare-caution"><b>${e(x.label)}:</b> ${e(x.text)}</span>`);
      out.push(`      </li>`);
    }
    out.push(`    </ul>`, `  </section>`);
  }
  out.push(`  <p class="steadfare-notice"><small>${e(STANDING_NOTICE)}</small></p>`, `</section>`, "");
  return out.join("\n");
}

const WIDTH = 78;
/** Broken between words at {@link WIDTH}, the first line with its own mark. */
function wrapped(text: string, first: string, rest: string): string[] {
  const lines: string[] = [];
  let line = first;
  let empty = true;
  for (const word of text.split(" ")) {
    if (!empty && line.length + 1 + word.length > WIDTH) {
      lines.push(line);
      line = rest;
      empty = true;
    }
    line += `${empty ? "" : " "}${word}`;
    empty = false;
  }
  return [...lines, line];
}

/** Plain text: what the recipe wrote stands on a line of its own, unbroken. */
export function renderText(notes: SwapNotes): string {
  if (notes.notes.length === 0) return "";
  const title = titleOf(notes);
  const out = [title, "=".repeat(Math.min(title.length, WIDTH))];
  for (const note of notes.notes) {
    const scaled = scaledSaid(note, notes.serves);
    out.push("", `Instead of ${clean(note.line)}${scaled === "" ? "" : ` (${clean(scaled)})`}:`);
    for (const swap of note.swaps) {
      const said = sayOf(note, swap, localeOf(notes));
      out.push(...wrapped(clean(`${said.use}. ${said.how}`), "  - ", "    "));
      if (said.allergens !== "") out.push(...wrapped(clean(`Allergens: ${said.allergens}`), "    ", "    "));
      for (const x of said.cautions) out.push(...wrapped(clean(`${x.label}: ${x.text}`), "    ", "    "));
    }
  }
  out.push("", ...wrapped(STANDING_NOTICE, "", ""), "");
  return out.join("\n");
}
