/** Most characters of one text that are printed; the rest is cut with an ellipsis. A recipe line is read to the same length. */
export const MAX_TEXT = 2000;

const between = (n: number, low: number, high: number): boolean => n >= low && n <= high;

/** Controls, marks that turn the direction of text, and characters that show nothing: none of them is part of a recipe. */
function hidden(n: number): boolean {
  return (
    between(n, 0, 0x1f) ||
    between(n, 0x7f, 0x9f) ||
    n === 0xad ||
    n === 0x61c ||
    n === 0x180e ||
    n === 0x200b ||
    between(n, 0x200e, 0x200f) ||
    between(n, 0x202a, 0x202e) ||
    between(n, 0x2060, 0x206f) ||
    n === 0xfeff ||
    between(n, 0xfff9, 0xfffb) ||
    between(n, 0xfdd0, 0xfdef) ||
    between(n, 0xe0000, 0xe00ff) ||
    (n & 0xfffe) === 0xfffe
  );
}
const space = (n: number): boolean =>
  between(n, 9, 13) || n === 0x20 || n === 0x85 || n === 0x2028 || n === 0x2029 || n === 0xa0;

/**
 * Text from a recipe made fit to print in any format: one line, single spaces, no controls, no direction marks, nothing unseen; a lone
 * surrogate becomes the replacement character. Joiners inside words and emoji stay. At most {@link MAX_TEXT} characters.
 */
export function clean(text: unknown): string {
  if (typeof text !== "string") return "";
  let out = "";
  let gap = false;
  let size = 0;
  for (const ch of text) {
    const n = ch.codePointAt(0) as number;
    if (space(n)) {
      gap = out !== "";
      continue;
    }
    if (hidden(n)) continue;
    if (size >= MAX_TEXT) return `${out}…`;
    out += `${gap ? " " : ""}${between(n, 0xd800, 0xdfff) ? "\ufffd" : ch}`;
    size += gap ? 2 : 1;
    gap = false;
  }
  return out;
}

const HTML: Readonly<Record<string, string>> = {
  "&": "&amp;",
  "<": "&lt;",
  ">": "&gt;",
  '"': "&quot;",
  "'": "&#39;",
  "`": "&#96;",
  "=": "&#61;",
  // Publishing tools read these in a page before a browser does: shortcodes and templates.
  "[": "&#91;",
  "{": "&#123;",
};
/** For element content and quoted attribute values alike. */
export const escapeHtml = (text: unknown): string => clean(text).replace(/[&<>"'`=[{]/g, (ch) => HTML[ch] as string);

const MARKED = "\\`*_{}[]#|~$^=@%";
const letter = (ch: string | undefined): boolean => ch !== undefined && /[\p{L}\p{N}]/u.test(ch);

/**
 * For running text anywhere in Markdown. Angle brackets and ampersands become entities, so that no reader of Markdown takes them for
 * HTML; marks are escaped; addresses are broken up, so that none becomes a link; a list or heading mark at the start is only text.
 */
export function escapeMarkdown(text: unknown): string {
  const chars = [...clean(text)];
  let out = "";
  let digits = 0; // of a number that begins the text: "1." would begin a list
  chars.forEach((ch, i) => {
    const next = chars[i + 1];
    if (digits === i && ch >= "0" && ch <= "9") digits++;
    if (ch === "&" || ch === "<" || ch === ">") out += HTML[ch] as string;
    else if (MARKED.includes(ch)) out += `\\${ch}`;
    else if (ch === "!" && next === "[") out += "\\!";
    else if (ch === ":" && (next === "/" || letter(next))) out += "\\:";
    else if (ch === "." && letter(chars[i - 1]) && /\p{L}/u.test(next ?? "")) out += "\\.";
    else if ((ch === "-" || ch === "+") && i === 0) out += `\\${ch}`;
    else if ((ch === "." || ch === ")") && i === digits && i > 0 && (next === undefined || next === " "))
      out += `\\${ch}`;
    else out += ch;
  });
  return out;
}

/**
 * JSON that may stand inside a script element: the same data, with `<`, `>`, `&` and the two line separators as escapes, so that no
 * string in it can end the element.
 */
export const jsonForPage = (value: unknown): string =>
  JSON.stringify(value, undefined, 2).replace(
    /[<>&\u2028\u2029]/g,
    (ch) => `\\u${ch.charCodeAt(0).toString(16).padStart(4, "0")}`,
  );
