import { MultiDirectedGraph } from "graphology";
import type { Flat } from "../compiled.js";

/** What a node is; the rest of its attributes depend on it. Plain data. */
export interface NodeAttributes {
  readonly type: "ingredient" | "food" | "kind" | "role" | "procedure" | "swap" | "aroma" | "source";
  readonly label: string;
  readonly [more: string]: unknown;
}
export interface EdgeAttributes {
  readonly type:
    "state of" | "is a" | "does" | "made ready by" | "becomes" | "smells of" | "replaces" | "uses" | "cited by";
  readonly [more: string]: unknown;
}
export type FoodGraph = MultiDirectedGraph<NodeAttributes, EdgeAttributes>;

/**
 * The typed graph: ingredients, foods, kinds, roles, aromas, procedures, swaps and sources as nodes. A swap is a node because nearly a
 * third of what handbooks list has two or more parts, which an edge cannot hold; a procedure is one because it leaves by-products.
 * Node keys are "type:id"; edge keys come from their content, so that two builds are equal.
 */
export function buildGraph(flat: Flat): FoodGraph {
  const graph: FoodGraph = new MultiDirectedGraph<NodeAttributes, EdgeAttributes>();
  const node = (key: string, attributes: NodeAttributes): void => {
    if (!graph.hasNode(key)) graph.addNode(key, attributes);
  };
  const edge = (
    type: EdgeAttributes["type"],
    from: string,
    to: string,
    more: Record<string, unknown> = {},
    mark = "",
  ): void => {
    const key = `${from}>${type}>${to}${mark === "" ? "" : `#${mark}`}`;
    if (graph.hasNode(from) && graph.hasNode(to) && !graph.hasEdge(key))
      graph.addEdgeWithKey(key, from, to, { type, ...more });
  };
  const { commons } = flat;
  for (const [key, source] of Object.entries(commons.sources))
    node(`source:${key}`, { type: "source", label: source.title });
  for (const [kind] of commons.kinds) node(`kind:${kind}`, { type: "kind", label: kind });
  for (const [kind, parent] of commons.kinds) if (parent !== "") edge("is a", `kind:${kind}`, `kind:${parent}`);
  for (const [role, { carrier, text }] of Object.entries(commons.roles))
    node(`role:${role}`, { type: "role", label: role, carrier, text });
  for (const aroma of commons.vocabulary["aroma"] ?? []) node(`aroma:${aroma}`, { type: "aroma", label: aroma });
  for (const p of commons.procedures)
    node(`procedure:${p.id}`, {
      type: "procedure",
      label: p.name,
      active: p.minutes.active,
      waiting: p.minutes.waiting,
    });
  for (const row of flat.ingredients) {
    node(`food:${row.food}`, { type: "food", label: row.food });
    const figures = Object.fromEntries(Object.entries(row.figures).map(([name, [value]]) => [name, value]));
    node(`ingredient:${row.id}`, {
      type: "ingredient",
      label: row.name[0],
      state: [...row.state],
      ...(row.part === undefined ? {} : { part: row.part }),
      figures,
    });
  }
  for (const row of flat.ingredients) {
    const me = `ingredient:${row.id}`;
    edge("state of", me, `food:${row.food}`, row.part === undefined ? {} : { part: row.part });
    edge("is a", me, `kind:${row.kind}`);
    for (const [role, weight] of Object.entries(row.roles)) edge("does", me, `role:${role}`, { weight });
    for (const [aroma, level] of Object.entries(row.aroma)) edge("smells of", me, `aroma:${aroma}`, { level });
    for (const p of row.ready?.by ?? []) edge("made ready by", me, `procedure:${p}`, { yield: row.ready?.yield });
    row.becomes.forEach((b, i) => edge("becomes", me, `ingredient:${b.to}`, { by: b.by, yield: b.yield }, String(i)));
  }
  for (const s of flat.swaps) {
    const me = `swap:${s.id}`;
    node(me, {
      type: "swap",
      label: s.id,
      ...(s.context === undefined ? {} : { context: s.context }),
      ...(s.role === undefined ? {} : { role: s.role }),
    });
    edge(
      "replaces",
      me,
      `ingredient:${s.replaces.id}`,
      s.replaces.amount === undefined ? {} : { amount: s.replaces.amount },
    );
    s.uses.forEach((u, i) =>
      edge(
        "uses",
        me,
        `ingredient:${u.id}`,
        {
          ...(u.amount === undefined ? {} : { amount: u.amount }),
          ...(u.ratio === undefined ? {} : { ratio: u.ratio }),
        },
        String(i),
      ),
    );
    for (const place of s.sources) edge("cited by", me, `source:${commons.refs[place]?.[0] ?? ""}`);
  }
  return graph;
}
