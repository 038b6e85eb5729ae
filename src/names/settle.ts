import type { Ingredient } from "../catalogue/store.js";
import { groupOf, type NameIndex } from "./claims.js";
import type { StateWord } from "./words.js";

/** A state word met in a text. `loose`: it stands where it may choose but not refuse (after a comma, in brackets). */
export interface Said {
  readonly state: StateWord;
  readonly loose?: boolean;
}
export interface Settled {
  readonly ingredients: readonly Ingredient[];
  /** Words that chose or agreed with the state; they belong to the name. */
  readonly used: readonly Said[];
  /** Words that no state of this food satisfies and that were let go. */
  readonly unmet: readonly Said[];
}

// A food that keeps in the cupboard as sold is already dry, bottled or powdered: saying so adds nothing.
const TRUE_OF_PANTRY: ReadonlySet<string> = new Set([
  "dried",
  "dry",
  "canned",
  "jarred",
  "bottled",
  "powdered",
  "granulated",
  "powder",
  "granule",
  "fresh",
  "aged",
]);
/** State words nobody says: what is not said about them does not count against a state. */
const UNSAID: ReadonlySet<string> = new Set(["fresh", "pantry"]);

function place(i: Ingredient, w: StateWord): number {
  const at = w.terms.findIndex((t) => i.state.includes(t));
  if (at >= 0) return at;
  return w.none.length > 0 && !w.none.some((t) => i.state.includes(t)) ? w.terms.length : -1;
}
const satisfies = (i: Ingredient, w: StateWord): boolean => place(i, w) >= 0;

/** Low for the state that says just what was said: each state word not asked for counts one, a second-best reading a half. */
function distance(i: Ingredient, said: readonly Said[], asked: ReadonlySet<string>): number {
  const met = new Set(said.flatMap((s) => s.state.terms));
  const extra = i.state.filter((t) => !UNSAID.has(t) && !met.has(t) && !asked.has(t)).length;
  const second = said.reduce((sum, s) => sum + Math.min(1, Math.max(0, place(i, s.state))) / 2, 0);
  return extra + second;
}

/**
 * Chooses among the states of a food by the state words said around its name.
 * @param base what the name alone means
 * @returns undefined when a word that cannot be let go is satisfied by no state
 */
export function settle(index: NameIndex, base: readonly Ingredient[], said: readonly Said[]): Settled | undefined {
  if (said.length === 0) return { ingredients: base, used: [], unmet: [] };
  const used: Said[] = [];
  const unmet: Said[] = [];
  let pool = [...new Set(base.flatMap((i) => index.siblings.get(groupOf(i)) ?? [i]))];
  const firm = said.filter((s) => s.state.need !== "prep");
  for (const s of [...firm.filter((x) => !x.loose), ...firm.filter((x) => x.loose)]) {
    const left = pool.filter((i) => satisfies(i, s.state));
    if (left.length > 0) {
      pool = left;
      used.push(s);
      continue;
    }
    const pantry = base.some((i) => i.state.includes("pantry")) && TRUE_OF_PANTRY.has(s.state.word);
    const dryDrink = s.state.word === "dry" && base.every((i) => i.tags.has("alcohol"));
    if (pantry || dryDrink) used.push(s);
    else if (s.loose !== true && s.state.need === "must") return undefined;
    else unmet.push(s);
  }
  const own = base.filter((i) => pool.includes(i));
  const chosen = used.length === 0 ? base : nearest(own.length > 0 ? own : pool, used, base);
  return prepare(index, chosen, said, { used, unmet });
}

function nearest(
  pool: readonly Ingredient[],
  used: readonly Said[],
  base: readonly Ingredient[],
): readonly Ingredient[] {
  const asked = new Set(base.length === 1 ? (base[0] as Ingredient).state : []);
  const scored = pool.map((i) => [i, distance(i, used, asked)] as const);
  const best = Math.min(...scored.map(([, d]) => d));
  const top = scored.filter(([, d]) => d === best).map(([i]) => i);
  const stated = top.filter((i) => i.isDefault);
  return stated.length > 0 ? stated : top;
}

/** Words of preparation ("chopped", "grated") choose only between states kept the same way: chopped tomatoes are not canned. */
function prepare(
  index: NameIndex,
  chosen: readonly Ingredient[],
  said: readonly Said[],
  so: { used: Said[]; unmet: Said[] },
): Settled {
  let now = chosen;
  for (const s of said) {
    if (s.state.need !== "prep" || s.loose) continue;
    const keeps = s.state.terms.includes("canned");
    if (now.some((i) => satisfies(i, s.state))) {
      now = now.filter((i) => satisfies(i, s.state));
      if (!keeps) so.used.push(s);
      continue;
    }
    const next = now.flatMap((i) =>
      (index.siblings.get(groupOf(i)) ?? []).filter(
        (x) =>
          satisfies(x, s.state) &&
          (keeps
            ? x.state.length === 1
            : x.state.length === i.state.length + 1 && i.state.every((t) => x.state.includes(t))),
      ),
    );
    if (next.length === 0) continue;
    now = [...new Set(next)];
    if (!keeps) so.used.push(s);
  }
  return { ingredients: now, ...so };
}
