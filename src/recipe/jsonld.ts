import { isNode, isType, type Node, own } from "./json.js";
import { plainBlocks } from "./html.js";
import { isGroupHeading, headingText } from "./headings.js";
import { isoMinutes, minutesOf } from "./duration.js";
import { clean, hasWord, leadOf } from "./text.js";
import { emptyRaw, type Raw } from "./types.js";

// Property names and types: schema.org, Recipe, HowToSection, HowToStep, HowToDirection, ItemList, QuantitativeValue, Duration.

class Reader {
  readonly raw: Raw = emptyRaw();
  /** Headings met among the steps; those no step stands under are told as unread. */
  readonly headings = new Set<string>();
  private head(text: string): string {
    const heading = headingText(text);
    this.headings.add(heading);
    return heading;
  }
  constructor(readonly byId: ReadonlyMap<string, Node>) {}

  private node(v: Node): Node {
    const id = own(v, "@id");
    return Object.keys(v).length === 1 && typeof id === "string" ? (this.byId.get(id) ?? v) : v;
  }

  /** Texts of a value: strings, numbers, "@value", and the names of things; arrays flattened. */
  texts(v: unknown): string[] {
    if (typeof v === "string") return plainBlocks(v).map((b) => b.text);
    if (typeof v === "number") return Number.isFinite(v) ? [String(v)] : [];
    if (Array.isArray(v)) return v.flatMap((x) => this.texts(x));
    if (!isNode(v)) return [];
    const node = this.node(v);
    for (const key of ["@value", "text", "name", "headline", "url", "contentUrl"]) {
      const inside = own(node, key);
      if (typeof inside === "string" || typeof inside === "number") return this.texts(inside);
    }
    return [];
  }
  first(v: unknown): string {
    return this.texts(v)[0] ?? "";
  }

  /** An ingredient as an object: PropertyValue, or name beside amount and unit. */
  private ingredient(v: Node): string[] {
    const node = this.node(v);
    const items = own(node, "itemListElement") ?? own(node, "item");
    if (items !== undefined) return this.ingredients(items);
    const amount = own(node, "amount") ?? own(node, "value") ?? own(node, "quantity") ?? own(node, "requiredQuantity");
    const inner = isNode(amount) ? amount : undefined;
    const value = inner === undefined ? amount : (own(inner, "value") ?? own(inner, "minValue"));
    const unit =
      own(node, "unitText") ?? own(node, "unit") ?? (inner && (own(inner, "unitText") ?? own(inner, "unitCode")));
    const name =
      this.first(own(node, "text")) || this.first(own(node, "name") ?? own(node, "ingredient") ?? own(node, "item"));
    const note = this.first(own(node, "notes") ?? own(node, "note"));
    const head = [this.first(value), this.first(unit), name].filter((s) => s !== "").join(" ");
    return head === "" ? [] : [note === "" ? head : `${head}, ${note}`];
  }
  private ingredients(v: unknown): string[] {
    if (Array.isArray(v)) return v.flatMap((x) => this.ingredients(x));
    if (isNode(v)) {
      const read = this.ingredient(v);
      return read.length > 0 ? read : this.lost(v);
    }
    return this.texts(v);
  }
  /** Texts of an object nothing is known of go to `unread`. */
  private lost(v: Node): string[] {
    for (const [key, x] of Object.entries(v))
      if (!key.startsWith("@")) for (const t of this.texts(x)) if (hasWord(t)) this.raw.unread.push(t);
    return [];
  }

  lines(v: unknown): void {
    let group = "";
    let used = true;
    for (const text of this.ingredients(v)) {
      if (!hasWord(text)) {
        if (text !== "") this.raw.unread.push(text);
        continue;
      }
      if (isGroupHeading(text)) {
        if (!used) this.raw.unread.push(group);
        group = headingText(text);
        used = false;
        continue;
      }
      used = true;
      this.raw.lines.push(group === "" ? { text } : { text, group });
    }
    if (!used) this.raw.unread.push(group);
  }

  steps(v: unknown, group: string): void {
    const push = (text: string): void => {
      if (!hasWord(text)) return;
      this.raw.steps.push(group === "" ? { text } : { text, group });
    };
    if (typeof v === "string") {
      for (const s of stepTexts(v)) {
        if ("heading" in s) group = this.head(s.heading);
        else push(s.text);
      }
    } else if (Array.isArray(v)) {
      for (const x of v) {
        if (typeof x === "string" && isGroupHeading(clean(x)) && v.length > 1) group = this.head(clean(x));
        else this.steps(x, group);
      }
    } else if (isNode(v)) this.step(this.node(v), group, push);
    else for (const t of this.texts(v)) push(t);
  }
  private step(node: Node, group: string, push: (text: string) => void): void {
    const name = this.first(own(node, "name"));
    const items = own(node, "itemListElement") ?? own(node, "steps") ?? own(node, "step");
    const text = this.texts(own(node, "text") ?? own(node, "description")).join(" ");
    if (isType(node, "howtotip")) {
      this.raw.unread.push(...[name, text].filter((t) => t !== ""));
      return;
    }
    if (items !== undefined && (isType(node, "howtosection", "itemlist", "howto") || text === "")) {
      const before = this.raw.steps.length;
      // a step made of directions keeps its own name as part of the text
      const inner = isType(node, "howtostep") && name !== "" ? group : name === "" ? group : headingText(name);
      if (isType(node, "howtostep") && name !== "") push(name);
      if (text !== "") this.steps(text, inner);
      this.steps(items, inner);
      if (this.raw.steps.length === before && name !== "") this.raw.unread.push(name);
      return;
    }
    const item = own(node, "item");
    if (text === "" && item !== undefined) {
      this.steps(item, group);
      return;
    }
    if (text === "") {
      if (name !== "") push(name);
      else this.lost(node);
    } else push(name === "" || starts(text, name) ? text : `${ended(name)} ${text}`);
  }

  time(node: Node, key: string): number | undefined {
    const v = own(node, key);
    if (v === undefined || v === null) return undefined;
    const inner = isNode(v) ? (own(v, "@value") ?? own(v, "maxValue") ?? own(v, "value") ?? own(v, "name")) : v;
    if (typeof inner === "number" && Number.isFinite(inner) && inner >= 0) return inner; // some pages write plain minutes
    for (const text of this.texts(inner)) {
      const minutes = isoMinutes(text) ?? minutesOf(text);
      if (minutes !== undefined) return minutes;
      if (hasWord(text)) {
        this.raw.unread.push(text);
        this.raw.notUnderstood.push({ where: "time", text, why: `${key} is no duration of days, hours, minutes` });
      }
    }
    return undefined;
  }

  yieldsOf(v: unknown): string[] {
    if (Array.isArray(v)) return v.flatMap((x) => this.yieldsOf(x));
    if (!isNode(v)) return this.texts(v);
    const low = this.first(own(v, "minValue"));
    const high = this.first(own(v, "maxValue"));
    const value = low !== "" && high !== "" ? `${low}-${high}` : this.first(own(v, "value")) || low || high;
    const unit = this.first(own(v, "unitText"));
    const text = `${value} ${unit}`.trim();
    return text === "" ? this.texts(v) : [text];
  }
}

/** The name is often the first words of the text, cut with dots. */
function starts(text: string, name: string): boolean {
  let n = name.toLowerCase();
  while (n.endsWith(".") || n.endsWith("…") || n.endsWith(":")) n = n.slice(0, -1);
  return text.toLowerCase().startsWith(n.trim()) || (n.startsWith("step ") && leadOf(n).number);
}
const ended = (name: string): string => (".!?:".includes(name.slice(-1)) ? name : `${name}:`);

/** A text of instructions: HTML or lines; each block a step. Numbers at the head of a step are taken off. */
function stepTexts(text: string): ({ readonly text: string } | { readonly heading: string })[] {
  return plainBlocks(text).flatMap((b): ({ readonly text: string } | { readonly heading: string })[] => {
    const t = clean(b.text.slice(leadOf(b.text).at));
    if (t === "") return [];
    return b.heading || isGroupHeading(t) ? [{ heading: headingText(t) }] : [{ text: t }];
  });
}

/** A schema.org Recipe in any shape pages give it. */
export function readNode(node: Node, byId: ReadonlyMap<string, Node>): Raw {
  const r = new Reader(byId);
  const { raw } = r;
  raw.name = r.first(own(node, "name")) || r.first(own(node, "headline"));
  const ingredients = own(node, "recipeIngredient") ?? own(node, "ingredients");
  if (typeof ingredients === "string") r.lines(plainBlocks(ingredients).map((b) => b.text.slice(leadOf(b.text).at)));
  else r.lines(ingredients);
  r.steps(own(node, "recipeInstructions") ?? own(node, "instructions") ?? own(node, "step"), "");
  for (const h of r.headings) if (h !== "" && !raw.steps.some((x) => x.group === h)) raw.unread.push(h);
  raw.yields = r.yieldsOf(own(node, "recipeYield") ?? own(node, "yield")).filter(hasWord);
  const prep = r.time(node, "prepTime");
  const cook = r.time(node, "cookTime") ?? r.time(node, "performTime");
  const total = r.time(node, "totalTime");
  if (prep) raw.prep = prep;
  if (cook) raw.cook = cook;
  if (total) raw.total = total;
  raw.method = r.texts(own(node, "cookingMethod")).join(" ");
  raw.cuisine = r.first(own(node, "recipeCuisine"));
  raw.images = images(own(node, "image"), 0);
  raw.node = node;
  return raw;
}

/** An address, an ImageObject, or lists of them. */
function images(v: unknown, depth: number): string[] {
  if (typeof v === "string") return v.trim() === "" ? [] : [clean(v)];
  if (Array.isArray(v)) return v.flatMap((x) => images(x, depth + 1));
  if (!isNode(v) || depth > 8) return [];
  return images(own(v, "url") ?? own(v, "contentUrl") ?? own(v, "@id"), depth + 1);
}
