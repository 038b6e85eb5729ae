import type { Flat, PackedSource } from "../compiled.js";
import type { Cited } from "./schema.js";

/** The sources of all figures, each kept once. */
export class Refs {
  readonly list: PackedSource[] = [];
  private readonly seen = new Map<string, number>();
  of(key: string, where?: string, grade?: string): number {
    // Why a figure was judged so is for those who edit the data; what ships says where a published figure can be found again.
    const at = key === "judgement" || key === "common practice" ? undefined : where;
    const source: PackedSource = grade !== undefined ? [key, at ?? "", grade] : at !== undefined ? [key, at] : [key];
    const text = JSON.stringify(source);
    let place = this.seen.get(text);
    if (place === undefined) {
      place = this.list.length;
      this.seen.set(text, place);
      this.list.push(source);
    }
    return place;
  }
  cited(c: Cited): readonly [number, number] {
    return [c.v, this.of(c.from, c.at, c.grade)];
  }
}

/** Sources numbered as the rows first cite them: neighbours then cite neighbours, which packs small, and the order of files says nothing. */
export function inOrder(flat: Flat): Flat {
  const refs: PackedSource[] = [];
  const moved = new Map<number, number>();
  const at = (old: number): number => {
    let now = moved.get(old);
    if (now === undefined) {
      now = refs.push(flat.commons.refs[old] as PackedSource) - 1;
      moved.set(old, now);
    }
    return now;
  };
  const cited = (c: readonly [number, number]): readonly [number, number] => [c[0], at(c[1])];
  const ingredients = flat.ingredients.map((row) => ({
    ...row,
    figures: Object.fromEntries(Object.entries(row.figures).map(([k, c]) => [k, cited(c)])),
    measures: row.measures.map(([unit, label, grams, source]) => [unit, label, grams, at(source)] as const),
    ...(row.cooked ? { cooked: cited(row.cooked) } : {}),
    ...(row.cookedBy
      ? { cookedBy: Object.fromEntries(Object.entries(row.cookedBy).map(([k, c]) => [k, cited(c)])) }
      : {}),
    ...(row.ready ? { ready: { ...row.ready, source: at(row.ready.source) } } : {}),
    becomes: row.becomes.map((b) => ({ ...b, source: at(b.source) })),
    minutes: Object.fromEntries(Object.entries(row.minutes).map(([k, c]) => [k, cited(c)])),
  }));
  const procedures = flat.commons.procedures.map((p) => ({ ...p, source: at(p.source) }));
  const swaps = flat.swaps.map((s) => ({ ...s, sources: s.sources.map(at) }));
  return { commons: { ...flat.commons, procedures, refs }, ingredients, swaps };
}
