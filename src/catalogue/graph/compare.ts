import type { FoodGraph } from "./build.js";

const shown = (value: unknown): string => JSON.stringify(value, (_key, v: unknown) => (isPlain(v) ? sorted(v) : v));
const isPlain = (v: unknown): v is Record<string, unknown> => typeof v === "object" && v !== null && !Array.isArray(v);
const sorted = (o: Record<string, unknown>): Record<string, unknown> =>
  Object.fromEntries(Object.entries(o).sort(([a], [b]) => (a < b ? -1 : 1)));

/** Every node and edge as a line of text: its key, its ends, its attributes in order of their names. */
function linesOf(graph: FoodGraph): Map<string, string> {
  const lines = new Map<string, string>();
  graph.forEachNode((key, attributes) => void lines.set(`node ${key}`, shown(attributes)));
  graph.forEachEdge((key, attributes, from, to) => void lines.set(`edge ${key}`, shown({ from, to, ...attributes })));
  return lines;
}

/**
 * In what two graphs differ: one line a node or edge, first those of `a` that `b` lacks or has otherwise, then what only `b` has.
 * Empty when they are equal. Order of insertion says nothing.
 */
export function differences(a: FoodGraph, b: FoodGraph): string[] {
  const mine = linesOf(a);
  const theirs = linesOf(b);
  const found: string[] = [];
  for (const [key, line] of mine) {
    const other = theirs.get(key);
    if (other === undefined) found.push(`${key}: only in the first`);
    else if (other !== line) found.push(`${key}: ${line} against ${other}`);
  }
  for (const key of theirs.keys()) if (!mine.has(key)) found.push(`${key}: only in the second`);
  return found;
}
