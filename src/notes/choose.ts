import { storeOf } from "../catalogue/index.js";
import type { Catalogue, Swap, SwapAdvice } from "../types.js";

/** Swaps people make are printed from a lower mark on than those only worked out, which nobody may have tried. */
const FLOOR: Readonly<Record<Swap["basis"], number>> = { published: 0.55, "common practice": 0.55, computed: 0.72 };
/** Of two about as good, the one cooks make comes first. */
const CUSTOM = 0.12;
/** A swap this much below the best of its line is not worth the paper. */
const GAP = 0.3;

const ALWAYS_THERE: readonly string[] = ["water", "salt", "ice"];
const OILS: readonly string[] = ["fat", "frying medium"];

/** Water, salt and plain oil: every kitchen has them, and no reader needs to be told what else would do. */
export function worthAsking(c: Catalogue, id: string): boolean {
  const item = storeOf(c).byId.get(id);
  if (!item) return false;
  if (ALWAYS_THERE.includes(item.food)) return false;
  if (item.roles[0]?.role === "salt seasoning" && /(^|-)salt$/.test(item.food)) return false;
  const oil = /(^|-)oil$/.test(item.food) && OILS.includes(item.roles[0]?.role ?? "");
  // An oil with a taste of its own (toasted sesame, chilli) is an ingredient like another.
  return !(oil && item.dominant.length === 0);
}

const foodOf = (id: string): string => id.split("/")[0]?.split(".")[0] ?? id;

/** The few to print, best first: above the floor, near the best, each of another food, and those in the house before others. */
export function worthPrinting(advice: SwapAdvice, perLine: number, have: ReadonlySet<string>): readonly Swap[] {
  const mark = (s: Swap): number =>
    s.score + (s.basis === "computed" ? 0 : CUSTOM) + (s.use.every((u) => have.has(u.id)) ? 1 : 0);
  const ranked = advice.swaps
    .filter((s) => s.score >= FLOOR[s.basis])
    .map((swap, i) => ({ swap, i, mark: Math.round(mark(swap) * 10_000) }))
    .sort((a, b) => b.mark - a.mark || a.i - b.i)
    .map(({ swap }) => swap);
  const best = ranked.reduce((top, s) => Math.max(top, s.score), 0);
  const seen = new Set<string>();
  const near = ranked.filter((swap) => {
    const key = foodOf(swap.use[0].id);
    if (seen.has(key) || swap.score < best - GAP) return false;
    seen.add(key);
    return true;
  });
  const out = near.slice(0, perLine);
  // Many a reader looks for the swap that takes an allergen out: when there is one and room for it, it has the last place.
  const frees = (s: Swap): boolean => s.allergens.lost.length > 0 && s.allergens.gained.length === 0;
  const free = near.find(frees);
  if (perLine > 1 && free && !out.some((s) => s.allergens.lost.length > 0)) out[out.length - 1] = free;
  return out;
}
