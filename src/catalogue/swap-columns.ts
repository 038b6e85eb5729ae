import { idsOf } from "./ids.js";
import type { Compiled, PackedSwap, SwapColumns } from "./packed.js";

export function encodeSwaps(swaps: readonly PackedSwap[], at: ReadonlyMap<string, number>): SwapColumns {
  const seen = new Map<string, number>();
  const of: Omit<PackedSwap, "id" | "replaces" | "uses" | "change">[] = [];
  const rest = swaps.map(({ id: _id, replaces: _replaces, uses: _uses, change: _change, ...other }) => {
    const key = JSON.stringify(other);
    const place = seen.get(key) ?? of.push(other) - 1;
    seen.set(key, place);
    return place;
  });
  const place = (id: string): number => at.get(id) ?? -1;
  return {
    replaces: swaps.map((s) => place(s.replaces.id)),
    amount: swaps.map((s) => s.replaces.amount ?? 0),
    uses: swaps.map((s) => s.uses.flatMap((u) => [place(u.id), u.amount ?? u.ratio ?? 0])),
    rest: { of, at: rest },
    change: swaps.map((s) => s.change ?? 0),
  };
}
/** The inverse: swaps as rows. */
export function decodeSwaps(compiled: Compiled): PackedSwap[] {
  const { replaces, amount, uses, rest, change } = compiled.swaps;
  const ids = idsOf(compiled);
  const rows = replaces.map((need, i) => {
    const pairs = uses[i] ?? [];
    return {
      replaces: { id: ids[need] ?? "", ...(amount[i] === 0 || amount[i] === undefined ? {} : { amount: amount[i] }) },
      uses: Array.from({ length: pairs.length / 2 }, (_, k) => {
        const given = pairs[2 * k + 1];
        return {
          id: ids[pairs[2 * k] as number] ?? "",
          ...(typeof given === "string"
            ? { amount: given }
            : typeof given === "number" && given > 0
              ? { ratio: given }
              : {}),
        };
      }),
      ...(rest.of[rest.at[i] ?? -1] as Omit<PackedSwap, "id" | "replaces" | "uses" | "change">),
      ...(change[i] === 0 || change[i] === undefined ? {} : { change: change[i] }),
    };
  });
  return nameSwaps(rows);
}
/** A swap is named by what it replaces and uses ("egg/fresh<flaxseed/dried-ground+water/pantry"); a second of the same is "#2". */
export function nameSwaps<T extends Omit<PackedSwap, "id">>(rows: readonly T[]): (T & { id: string })[] {
  const seen = new Map<string, number>();
  return rows.map((row) => {
    const base = `${row.replaces.id}<${row.uses.map((u) => u.id).join("+")}`;
    const n = (seen.get(base) ?? 0) + 1;
    seen.set(base, n);
    return { id: n === 1 ? base : `${base}#${n}`, ...row };
  });
}
