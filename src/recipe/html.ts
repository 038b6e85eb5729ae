import { Parser } from "htmlparser2";
import { MAX_BLOCKS, MAX_TAG_DEPTH, within } from "./limits.js";
import { clean, hasWord, leadOf, linesOf } from "./text.js";

/** A paragraph, a heading or an item of a list. */
export interface Block {
  readonly text: string;
  /** 1 to 6; absent when it is no heading. */
  readonly heading?: number;
  readonly item?: true;
  readonly numbered?: true;
  /** A blank line stands before it. */
  readonly after?: true;
}
export interface Page {
  readonly scripts: readonly string[];
  readonly blocks: readonly Block[];
  readonly items: readonly Readonly<Record<string, unknown>>[];
  readonly title: string;
}

const BLOCKS = new Set([
  "p",
  "div",
  "li",
  "h1",
  "h2",
  "h3",
  "h4",
  "h5",
  "h6",
  "tr",
  "dt",
  "dd",
  "section",
  "article",
  "header",
  "footer",
  "main",
  "ul",
  "ol",
  "dl",
  "table",
  "thead",
  "tbody",
  "blockquote",
  "pre",
  "figure",
  "figcaption",
  "aside",
  "nav",
  "body",
  "html",
  "address",
  "form",
  "fieldset",
  "details",
  "summary",
  "label",
  "option",
  "br",
  "hr",
]);
/** These stand in no heading: one left open ends before them. */
const AFTER = new Set(["ul", "ol", "li", "table", "p"]);
/** What they hold is no text of the page. */
const SILENT = new Set([
  "script",
  "style",
  "template",
  "noscript",
  "iframe",
  "svg",
  "head",
  "textarea",
  "select",
  "button",
  "object",
]);
const headingOf = (tag: string): number | undefined =>
  tag.length === 2 && tag[0] === "h" && tag[1] !== undefined && tag[1] >= "1" && tag[1] <= "6"
    ? Number(tag[1])
    : undefined;

interface Open {
  readonly depth: number;
  readonly names: readonly string[];
  readonly into: Record<string, unknown>;
  readonly from: number;
}

function add(into: Record<string, unknown>, name: string, value: unknown): void {
  if (name === "" || name.startsWith("@") || name === "__proto__") return;
  const had = Object.hasOwn(into, name) ? into[name] : undefined;
  if (had === undefined) into[name] = value;
  else if (Array.isArray(had)) had.push(value);
  else into[name] = [had, value];
}

/**
 * A page taken apart in one pass by an HTML parser: its JSON-LD scripts, its microdata recipes (schema.org's itemprop names),
 * and its text as blocks. Scripts are never run, addresses never fetched.
 */
export function readPage(html: string): Page {
  const scripts: string[] = [];
  const blocks: Block[] = [];
  const items: Record<string, unknown>[] = [];
  const scopes: { readonly depth: number; readonly node: Record<string, unknown> }[] = [];
  const props: Open[] = [];
  const ordered: boolean[] = [];
  let depth = 0;
  let silent = 0;
  let script: string[] | undefined;
  let title: string[] | undefined;
  let titleText = "";
  let text: string[] = [];
  let heading: number | undefined;
  let item = false;
  const flush = (): void => {
    const whole = clean(text.join(""));
    text = [];
    // "1. Boil" in a paragraph is numbered as an item of a list is
    const lead = leadOf(whole);
    const t = lead.number ? whole.slice(lead.at) : whole;
    if (!hasWord(t)) return;
    within(blocks.length + 1, MAX_BLOCKS, "blocks");
    blocks.push({
      text: t,
      ...(heading === undefined ? {} : { heading }),
      ...(item ? { item: true as const } : {}),
      ...((item && ordered.at(-1) === true) || lead.number ? { numbered: true as const } : {}),
    });
  };
  const closeProps = (): void => {
    for (let p = props.at(-1); p !== undefined && p.depth >= depth; p = props.at(-1)) {
      props.pop();
      flush();
      const inside = blocks.slice(p.from).map((b) => b.text);
      for (const name of p.names) add(p.into, name, inside.length === 1 ? inside[0] : inside);
    }
    while ((scopes.at(-1)?.depth ?? -1) >= depth) scopes.pop();
  };
  const parser = new Parser(
    {
      onopentag(tag, attributes) {
        depth++;
        within(depth, MAX_TAG_DEPTH, "levels of tags");
        if (tag === "script") script = isLd(attributes["type"]) ? [] : undefined;
        if (tag === "title" && titleText === "") title = [];
        if (SILENT.has(tag)) silent++;
        if (BLOCKS.has(tag)) flush();
        if (tag === "ol" || tag === "ul") ordered.push(tag === "ol");
        const level = headingOf(tag);
        if (level !== undefined) heading = level;
        else if (AFTER.has(tag)) heading = undefined;
        if (tag === "li") item = true;
        if (tag === "td" || tag === "th") text.push(" ");
        const names = clean(attributes["itemprop"] ?? "").split(" ");
        const scope = scopes.at(-1)?.node;
        if (attributes["itemscope"] !== undefined) {
          const node: Record<string, unknown> = { "@type": clean(attributes["itemtype"] ?? "") };
          if (scope !== undefined) for (const name of names) add(scope, name, node);
          else items.push(node);
          scopes.push({ depth, node });
        } else if (scope !== undefined && names[0] !== "") {
          const said =
            attributes["content"] ??
            attributes["datetime"] ??
            (tag === "img" ? attributes["src"] : tag === "link" ? attributes["href"] : undefined);
          if (said !== undefined) for (const name of names) add(scope, name, clean(said));
          else {
            flush();
            props.push({ depth, names, into: scope, from: blocks.length });
          }
        }
      },
      ontext(data) {
        if (script !== undefined) script.push(data);
        else if (title !== undefined) title.push(data);
        else if (silent === 0) text.push(data);
      },
      onclosetag(tag) {
        if (BLOCKS.has(tag)) flush();
        closeProps();
        if (tag === "script" && script !== undefined) {
          scripts.push(script.join(""));
          script = undefined;
        }
        if (tag === "title" && title !== undefined) {
          titleText = clean(title.join(""));
          title = undefined;
        }
        if (SILENT.has(tag)) silent--;
        if (tag === "ol" || tag === "ul") ordered.pop();
        if (headingOf(tag) !== undefined) heading = undefined;
        if (tag === "li") item = false;
        depth--;
      },
    },
    { decodeEntities: true },
  );
  parser.end(html);
  flush();
  return { scripts, blocks, items, title: titleText };
}
function isLd(type: string | undefined): boolean {
  return type !== undefined && (type.split(";")[0] ?? "").trim().toLowerCase() === "application/ld+json";
}

/** The blocks of a string that may hold HTML or line ends: what pages put in JSON. Without either it is one block. */
export function plainBlocks(text: string): { readonly text: string; readonly heading: boolean }[] {
  const out: { text: string; heading: boolean }[] = [];
  if (looksHtml(text)) {
    for (const b of readPage(text).blocks) out.push({ text: b.text, heading: b.heading !== undefined });
    return out;
  }
  const whole = text.includes("&") && text.length < 20_000 ? decoded(text) : text;
  for (const line of linesOf(whole)) {
    const t = clean(line);
    if (t !== "") out.push({ text: t, heading: false });
  }
  return out;
}
/** Entities in a string without tags. */
function decoded(text: string): string {
  const out: string[] = [];
  const parser = new Parser({ ontext: (data) => void out.push(data) }, { decodeEntities: true });
  parser.end(text);
  return out.join("");
}

const TAGS = [
  "<p",
  "<br",
  "<li",
  "<ol",
  "<ul",
  "<div",
  "<span",
  "<strong",
  "<b>",
  "<em",
  "<i>",
  "<a ",
  "<h1",
  "<h2",
  "<h3",
  "<h4",
  "<img",
  "<script",
  "<html",
  "<!doctype",
  "<body",
  "<article",
  "<section",
  "<main",
  "<table",
  "<head",
  "<meta",
  "</",
];
/** Does it hold a tag pages have? "<3 cloves" and "a < b" are no HTML. */
export function looksHtml(text: string): boolean {
  if (!text.includes("<")) return false;
  const lower = text.toLowerCase();
  return TAGS.some((t) => lower.includes(t));
}
