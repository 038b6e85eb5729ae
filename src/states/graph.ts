import type { Ingredient, Store } from "../catalogue/index.js";
import type { SourceRef } from "../types.js";
import { type Style, styledYield } from "./wish.js";

/**
 * How far an ingredient has come: as it is sold, its edible part, made ready to use ("soaked"), or cooked for serving.
 * Only the first is an ingredient of the catalogue; the others are the same ingredient further on.
 */
export type Stage = "sold" | "edible" | "ready" | "cooked";
export interface Node {
  readonly ingredient: Ingredient;
  readonly stage: Stage;
}
/** One way on: `factor` g out per g in; `by` the procedures done, none when it only is called by another name. */
export interface Edge {
  readonly from: Node;
  readonly to: Node;
  readonly by: readonly string[];
  readonly factor: number;
  readonly minutes?: { readonly active: number; readonly waiting: number };
  readonly source?: SourceRef;
  /** Walked against its direction: how much to start from. */
  readonly back?: true;
  readonly cost: number;
}

export const keyOfNode = (n: Node): string => `${n.ingredient.index}#${n.stage}`;

const HEATED = new Set(["cooked", "boiled", "roasted", "steamed", "fried", "parboiled", "toasted"]);
export const isHeated = (i: Ingredient): boolean => i.state.some((s) => HEATED.has(s));
export const sameFood = (a: Ingredient, b: Ingredient): boolean => a.food === b.food && a.part === b.part;

/** Ways of cooking in the order a plain answer names them. */
const PLAIN = ["boil", "simmer", "steam", "bake", "roast", "braise", "stew", "fry", "grill", "stir-fry", "deep-fry"];

interface Index {
  readonly incoming: ReadonlyMap<
    number,
    readonly { readonly from: Ingredient; readonly row: Ingredient["becomes"][number] }[]
  >;
  readonly siblings: ReadonlyMap<string, readonly Ingredient[]>;
}
const indexes = new WeakMap<Store, Index>();

function indexOf(store: Store): Index {
  const known = indexes.get(store);
  if (known !== undefined) return known;
  const incoming = new Map<number, { from: Ingredient; row: Ingredient["becomes"][number] }[]>();
  const siblings = new Map<string, Ingredient[]>();
  for (const i of store.ingredients) {
    const group = `${i.food}.${i.part ?? ""}`;
    const list = siblings.get(group);
    if (list === undefined) siblings.set(group, [i]);
    else list.push(i);
    for (const row of i.becomes) {
      const to = store.byId.get(row.to);
      if (to === undefined || !(row.yield > 0)) continue;
      const rows = incoming.get(to.index);
      if (rows === undefined) incoming.set(to.index, [{ from: i, row }]);
      else rows.push({ from: i, row });
    }
  }
  const made = { incoming, siblings };
  indexes.set(store, made);
  return made;
}

/** The states of the same food and part, in catalogue order. */
export function siblingsOf(store: Store, i: Ingredient): readonly Ingredient[] {
  return indexOf(store).siblings.get(`${i.food}.${i.part ?? ""}`) ?? [i];
}

/** The state a made-ready one is used like: the fresh one, unless it is that itself. */
function usedLike(store: Store, i: Ingredient): Ingredient | undefined {
  if (i.ready === undefined) return undefined;
  const raw = siblingsOf(store, i).filter((s) => s !== i && !isHeated(s) && s.ready === undefined);
  return raw.find((s) => s.state.length === 1 && s.state[0] === "fresh") ?? raw.find((s) => s.isDefault);
}

/** Cooked, no matter how. */
export const ANYHOW: Style = { meat: false };

function forward(store: Store, n: Node, trimmed: boolean, style: Style): Edge[] {
  const { ingredient: i, stage } = n;
  const at = (s: Stage, ingredient = i): Node => ({ ingredient, stage: s });
  const edges: Edge[] = [];
  if (stage === "sold") {
    for (const row of i.becomes) {
      const to = store.byId.get(row.to);
      if (to !== undefined && row.yield > 0) edges.push(becomes(n, at("sold", to), row, trimmed));
    }
    const whole = trimmed || i.edible >= 1 || !(i.edible > 0);
    edges.push({
      from: n,
      to: at("edible"),
      by: whole ? [] : ["trim"],
      factor: whole ? 1 : i.edible,
      cost: whole ? 0.01 : 0.3,
    });
  }
  if (stage === "edible") {
    if (i.ready === undefined) edges.push({ from: n, to: at("ready"), by: [], factor: 1, cost: 0.01 });
    else if (i.ready.yield > 0)
      edges.push({ from: n, to: at("ready"), by: i.ready.by, factor: i.ready.yield, source: i.ready.source, cost: 1 });
  }
  if (stage === "ready") {
    const like = usedLike(store, i);
    if (like !== undefined) edges.push({ from: n, to: at("edible", like), by: [], factor: 1, cost: 0.2 });
    const styled = isHeated(i) ? undefined : styledYield(i, style);
    const factor = styled?.row.yield ?? (isHeated(i) ? undefined : i.cooked);
    if (factor !== undefined && factor > 0) {
      const technique = styled?.technique ?? PLAIN.find((t) => i.minutes[t] !== undefined);
      edges.push({
        from: n,
        to: at("cooked"),
        by: [technique ?? "cook"],
        factor,
        ...(styled === undefined ? {} : { source: styled.row.source }),
        minutes: { active: 0, waiting: technique === undefined ? 0 : (i.minutes[technique] ?? 0) },
        cost: 1.1,
      });
    }
  }
  if (stage === "cooked") {
    const like = siblingsOf(store, i).find(
      (s) => isHeated(s) && s.state.length === 2 && s.state[0] === "fresh" && s.state[1] === "cooked",
    );
    if (like !== undefined) edges.push({ from: n, to: at("sold", like), by: [], factor: 1, cost: 0.2 });
  }
  return edges;
}

/** A yield is told per gram of the edible part, as cups and pieces are weighed; a weight as sold has the trimming in it too. */
function becomes(from: Node, to: Node, row: Ingredient["becomes"][number], trimmed: boolean): Edge {
  const { edible } = from.ingredient;
  const share = trimmed || edible >= 1 || !(edible > 0) ? 1 : edible;
  const minutes =
    row.active === undefined && row.waiting === undefined
      ? {}
      : { minutes: { active: row.active ?? 0, waiting: row.waiting ?? 0 } };
  return { from, to, by: [row.by], factor: row.yield * share, ...minutes, source: row.source, cost: 1 };
}

const STAGES: readonly Stage[] = ["sold", "edible", "ready", "cooked"];

/** Everything one step away, forwards and back. Going back costs more: what is done is seldom undone in words. */
export function edgesFrom(store: Store, n: Node, trimmed: boolean, style: Style = ANYHOW): readonly Edge[] {
  const out = forward(store, n, trimmed, style);
  const back = (e: Edge): Edge => ({
    ...e,
    from: e.to,
    to: e.from,
    factor: 1 / e.factor,
    back: true,
    cost: e.cost + 0.5,
  });
  for (const s of siblingsOf(store, n.ingredient))
    for (const stage of STAGES) {
      if (s === n.ingredient && stage === n.stage) continue;
      for (const e of forward(store, { ingredient: s, stage }, trimmed, style))
        if (keyOfNode(e.to) === keyOfNode(n) && !out.some((o) => o.to === e.from)) out.push(back(e));
    }
  if (n.stage === "sold")
    for (const { from, row } of indexOf(store).incoming.get(n.ingredient.index) ?? [])
      if (!sameFood(from, n.ingredient)) out.push(back(becomes({ ingredient: from, stage: "sold" }, n, row, trimmed)));
  return out;
}

/** The least costly way from one node to any that is wanted; ties by catalogue order. At most 400 nodes are looked at. */
export function findPath(
  store: Store,
  from: Node,
  wanted: (n: Node) => boolean,
  trimmed: boolean,
  style: Style = ANYHOW,
): readonly Edge[] | undefined {
  const best = new Map<string, { cost: number; via?: Edge; node: Node; done: boolean }>();
  best.set(keyOfNode(from), { cost: 0, node: from, done: false });
  for (let turn = 0; turn < 400; turn++) {
    let next: { cost: number; via?: Edge; node: Node; done: boolean } | undefined;
    for (const b of best.values()) if (!b.done && (next === undefined || b.cost < next.cost)) next = b;
    if (next === undefined) return undefined;
    next.done = true;
    if (wanted(next.node)) return trace(best, next.node);
    for (const e of edgesFrom(store, next.node, trimmed, style)) {
      const cost = next.cost + e.cost;
      const known = best.get(keyOfNode(e.to));
      if (known === undefined || (!known.done && cost < known.cost - 1e-9))
        best.set(keyOfNode(e.to), { cost, via: e, node: e.to, done: false });
    }
  }
  return undefined;
}
function trace(best: ReadonlyMap<string, { via?: Edge; node: Node }>, to: Node): readonly Edge[] {
  const path: Edge[] = [];
  let at = best.get(keyOfNode(to));
  while (at?.via !== undefined) {
    path.push(at.via);
    at = best.get(keyOfNode(at.via.from));
  }
  return path.reverse();
}
