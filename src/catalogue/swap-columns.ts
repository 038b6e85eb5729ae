import { idsOf } from "./ids.js";
import { packCoded, packInts, packSteps, placesOf, unpackInts, unpackSteps } from "./numbers.js";
import type { Compiled, Listed, PackedSwap, SwapColumns } from "./packed.js";

function listed<T>(values: readonly (T | undefined)[], first: readonly T[] = []): Listed<T> {
  const of = [...first];
  const seen = new Map(of.map((value, i) => [JSON.stringify(value), i + 1]));
  const at = values.map((value) => {
    if (value === undefined) return 0;
    const key = JSON.stringify(value);
    const place = seen.get(key) ?? of.push(value);
    seen.set(key, place);
    return place;
  });
  return { of, at: packInts(at) };
}
const unlisted = <T>({ of, at }: Listed<T>): (T | undefined)[] => Array.from(unpackInts(at), (place) => of[place - 1]);

export function encodeSwaps(swaps: readonly PackedSwap[], at: ReadonlyMap<string, number>): SwapColumns {
  const place = (id: string): number => at.get(id) ?? -1;
  const uses = swaps.flatMap((s) => s.uses);
  return {
    replaces: packSteps(swaps.map((s) => place(s.replaces.id))),
    amount: listed(swaps.map((s) => s.replaces.amount)),
    count: packInts(swaps.map((s) => s.uses.length)),
    uses: packInts(uses.map((u) => place(u.id) + 1)),
    usesAmount: listed<string | number>(uses.map((u) => u.amount ?? u.ratio)),
    role: listed(swaps.map((s) => s.role)),
    // Those that begin alike stand together: they pack to less.
    context: listed(
      swaps.map((s) => s.context),
      [...new Set(swaps.flatMap((s) => s.context ?? []))].sort(),
    ),
    techniques: listed(swaps.map((s) => s.techniques)),
    tradition: listed(swaps.map((s) => s.tradition)),
    sources: listed(swaps.map((s) => s.sources)),
    change: packCoded(swaps.map((s) => s.change)),
  };
}
/** A field that is left out when there is nothing in it. */
const given = <K extends string, V>(key: K, value: V | undefined): { [k in K]?: V } =>
  (value === undefined ? {} : { [key]: value }) as { [k in K]?: V };

/** The inverse: swaps as rows. */
export function decodeSwaps(compiled: Compiled): PackedSwap[] {
  const { swaps } = compiled;
  const ids = idsOf(compiled);
  const places = unpackInts(swaps.uses);
  const [amounts, usesAmounts] = [unlisted(swaps.amount), unlisted(swaps.usesAmount)];
  const [roles, contexts, techniques] = [unlisted(swaps.role), unlisted(swaps.context), unlisted(swaps.techniques)];
  const [traditions, sources] = [unlisted(swaps.tradition), unlisted(swaps.sources)];
  const changes = placesOf(swaps.change);
  const counts = unpackInts(swaps.count);
  let next = 0;
  const rows = Array.from(unpackSteps(swaps.replaces), (need, i) => {
    const uses = Array.from({ length: counts[i] as number }, () => {
      const amount = usesAmounts[next];
      const id = ids[(places[next++] as number) - 1] ?? "";
      return typeof amount === "number" ? { id, ratio: amount } : { id, ...given("amount", amount) };
    });
    const change = swaps.change.of[changes[i] as number];
    return {
      replaces: { id: ids[need] ?? "", ...given("amount", amounts[i]) },
      uses,
      ...given("role", roles[i]),
      ...given("context", contexts[i]),
      ...given("techniques", techniques[i]),
      ...given("tradition", traditions[i]),
      sources: sources[i] ?? [],
      ...(change === undefined ? {} : { change }),
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
