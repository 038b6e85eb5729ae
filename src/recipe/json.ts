import { fail } from "../errors.js";
import { MAX_DEPTH, MAX_SOURCE, MAX_VALUES, within } from "./limits.js";

export type Node = Readonly<Record<string, unknown>>;
export const isNode = (v: unknown): v is Node => typeof v === "object" && v !== null && !Array.isArray(v);
/** A field of its own; never one inherited, so "constructor" and "__proto__" reach nothing. */
export function own(node: Node, key: string): unknown {
  if (Object.hasOwn(node, key)) return node[key];
  for (const prefix of ["schema:", "https://schema.org/", "http://schema.org/"])
    if (Object.hasOwn(node, prefix + key)) return node[prefix + key];
  return undefined;
}

/** Depth is counted before parsing, so that no parser meets more than it can bear. */
function depthOf(text: string): number {
  let depth = 0;
  let most = 0;
  let quoted = false;
  for (let i = 0; i < text.length; i++) {
    const ch = text[i];
    if (quoted) {
      if (ch === "\\") i++;
      else if (ch === '"') quoted = false;
    } else if (ch === '"') quoted = true;
    else if (ch === "{" || ch === "[") most = Math.max(most, ++depth);
    else if (ch === "}" || ch === "]") depth--;
  }
  return most;
}

/** JSON as pages carry it: comment and CDATA wrappers and a trailing semicolon let go, raw line ends inside strings made spaces. */
export function parseJson(text: string): { readonly value: unknown } | undefined {
  let s = text.trim();
  for (const open of ["<!--", "//<![CDATA[", "<![CDATA["]) if (s.startsWith(open)) s = s.slice(open.length).trim();
  for (const close of ["-->", "//]]>", "]]>", ";"]) if (s.endsWith(close)) s = s.slice(0, -close.length).trim();
  if (s[0] === "\ufeff") s = s.slice(1);
  if (s[0] !== "{" && s[0] !== "[" && s[0] !== '"') return undefined;
  within(depthOf(s), MAX_DEPTH, "levels");
  for (const tried of [s, undefined]) {
    try {
      return { value: JSON.parse(tried ?? withoutControls(s)) as unknown };
    } catch {
      continue;
    }
  }
  return undefined;
}
function withoutControls(s: string): string {
  const out: string[] = [];
  let from = 0;
  for (let i = 0; i < s.length; i++) {
    if (s.charCodeAt(i) >= 0x20) continue;
    out.push(s.slice(from, i), " ");
    from = i + 1;
  }
  out.push(s.slice(from));
  return out.join("");
}

/**
 * A frozen copy of plain data, so that the caller's object stays as it is. A key named "__proto__" stays a key.
 * Functions and symbols are no data and are left out; so is a value met again inside itself.
 */
export function copyOf(value: unknown): unknown {
  let count = 0;
  let size = 0;
  const open = new Set<object>();
  const copy = (v: unknown, depth: number): unknown => {
    within(++count, MAX_VALUES, "values");
    if (typeof v === "string") within((size += v.length), MAX_SOURCE, "characters");
    if (typeof v === "bigint") return String(v);
    if (typeof v === "function" || typeof v === "symbol") return undefined;
    if (typeof v !== "object" || v === null) return v;
    if (v instanceof Date) return Number.isNaN(v.getTime()) ? null : v.toISOString();
    if (open.has(v)) return undefined;
    within(depth, MAX_DEPTH, "levels");
    open.add(v);
    let out: unknown;
    if (Array.isArray(v)) out = (v as unknown[]).map((x) => copy(x, depth + 1));
    else {
      const made = {};
      for (const key of Object.keys(v)) {
        const inside = copy((v as Record<string, unknown>)[key], depth + 1);
        if (inside !== undefined)
          Object.defineProperty(made, key, { value: inside, enumerable: true, writable: true, configurable: true });
      }
      out = made;
    }
    open.delete(v);
    return Object.freeze(out);
  };
  return copy(value, 1);
}

function typesOf(node: Node): string[] {
  const type = own(node, "@type") ?? own(node, "type");
  const all = Array.isArray(type) ? (type as unknown[]) : [type];
  return all
    .filter((t) => typeof t === "string")
    .map((t) => t.slice(Math.max(t.lastIndexOf("/"), t.lastIndexOf(":"), t.lastIndexOf("#")) + 1).toLowerCase());
}
export const isType = (node: Node, ...types: readonly string[]): boolean =>
  typesOf(node).some((t) => types.includes(t));

export interface Found {
  readonly recipes: readonly Node[];
  /** Nodes by "@id", for those that are only pointed at. */
  readonly byId: ReadonlyMap<string, Node>;
}

/** Every recipe in a document, in its order. A node without a type that has ingredients or instructions is one too. */
export function recipesIn(value: unknown): Found {
  const recipes: Node[] = [];
  const byId = new Map<string, Node>();
  const stack: unknown[] = [value];
  // data that holds itself, or a value twice, is looked at once
  const seen = new Set<object>();
  let count = 0;
  while (stack.length > 0) {
    const v = stack.pop();
    if (typeof v !== "object" || v === null || seen.has(v)) continue;
    seen.add(v);
    within(++count, MAX_VALUES, "values");
    if (Array.isArray(v)) {
      for (let i = v.length - 1; i >= 0; i--) stack.push(v[i]);
      continue;
    }
    const node = v as Node;
    const id = own(node, "@id");
    if (typeof id === "string" && Object.keys(node).length > 1) byId.set(id, node);
    const typed = typesOf(node).length > 0;
    const like =
      !typed && ["recipeIngredient", "recipeInstructions", "ingredients"].some((k) => own(node, k) !== undefined);
    if (isType(node, "recipe") || like) {
      recipes.push(node);
      continue;
    }
    const keys = Object.keys(node);
    for (let i = keys.length - 1; i >= 0; i--) stack.push(node[keys[i] ?? ""]);
  }
  return { recipes, byId };
}

/** Every text in a document, for one that holds no recipe: nothing is lost. */
export function textsIn(value: unknown): string[] {
  const out: string[] = [];
  const stack: unknown[] = [value];
  while (stack.length > 0) {
    const v = stack.pop();
    if (typeof v === "string") out.push(v);
    else if (typeof v === "number" || typeof v === "boolean") out.push(String(v));
    else if (typeof v === "object" && v !== null) {
      const inside = Object.entries(v as Record<string, unknown>).filter(([k]) => !k.startsWith("@"));
      for (let i = inside.length - 1; i >= 0; i--) stack.push(inside[i]?.[1]);
    }
    if (out.length > MAX_VALUES) fail("input too large", "Too many values.", { limit: MAX_VALUES, size: out.length });
  }
  return out;
}
