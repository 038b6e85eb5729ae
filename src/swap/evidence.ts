import type { Ingredient, Store, SwapEdge } from "../catalogue/index.js";
import { shareOfRow, weigh } from "../portion/index.js";
import { readQuantity } from "../quantity/index.js";
import type { Ask } from "./ask.js";
import { fillsPlate, shareFor } from "./eaten.js";

type Question = Omit<Ask, "known">;

/** A published or common-practice swap for the missing ingredient, with amounts per gram of it where the source gives them. */
export interface Known {
  readonly edge: SwapEdge;
  readonly uses: readonly { readonly ingredient: Ingredient; readonly perGram?: number }[];
  /** 1 when its setting is the one asked for or it has none, less when it was meant for another. */
  readonly fits: number;
  /** From an exchange list: {@link isExchange}. */
  readonly exchange: boolean;
}

const byNeed = new WeakMap<Store, Map<string, SwapEdge[]>>();
function edgesFor(store: Store, id: string): readonly SwapEdge[] {
  let index = byNeed.get(store);
  if (!index) {
    index = new Map();
    for (const edge of store.swaps) {
      const list = index.get(edge.replaces.id) ?? [];
      list.push(edge);
      index.set(edge.replaces.id, list);
    }
    byNeed.set(store, index);
  }
  return index.get(id) ?? [];
}

/** An edge with what of it is the same for every question: its amounts as they weigh, and the words of its setting. */
interface Read {
  readonly edge: SwapEdge;
  /** Undefined when the catalogue has not all of it. `eaten` per g of the need, and of the use, as their amounts were given. */
  readonly uses: readonly (Known["uses"][number] & { readonly eaten?: readonly [number, number] })[] | undefined;
  readonly common: boolean;
  readonly exchange: boolean;
  readonly meant: readonly string[];
}
const read = new WeakMap<Store, Map<string, readonly Read[]>>();
function readFor(store: Store, item: Ingredient): readonly Read[] {
  let all = read.get(store);
  if (all === undefined) read.set(store, (all = new Map<string, readonly Read[]>()));
  let edges = all.get(item.id);
  if (edges === undefined)
    all.set(item.id, (edges = edgesFor(store, item.id).map((edge) => readEdge(store, item, edge))));
  return edges;
}
function readEdge(store: Store, item: Ingredient, edge: SwapEdge): Read {
  const need = edge.replaces.amount === undefined ? undefined : gramsOf(store, item, edge.replaces.amount);
  const uses = edge.uses.flatMap((use) => {
    const ingredient = store.byId.get(use.id);
    if (!ingredient) return [];
    const given = use.amount === undefined || need === undefined ? undefined : gramsOf(store, ingredient, use.amount);
    if (use.ratio !== undefined || given === undefined || need === undefined)
      return [{ ingredient, ...(use.ratio === undefined ? {} : { perGram: use.ratio }) }];
    return [{ ingredient, perGram: given.grams / need.grams, eaten: [need.eaten, given.eaten] as const }];
  });
  return {
    edge,
    uses: uses.length === edge.uses.length ? uses : undefined,
    common: isCommonPractice(edge),
    exchange: isExchange(store, edge),
    meant: edge.context === undefined ? [] : words(edge.context),
  };
}

/** "cakes" and "cake" are one word. */
const words = (text: string): string[] =>
  text
    .toLowerCase()
    .split(/[^\p{L}]+/u)
    .filter((w) => w.length > 2)
    .map((w) => (w.endsWith("s") && !w.endsWith("ss") ? w.slice(0, -1) : w));

/** "roasting" and "roast", "baking" and "bake", "grilling" and "grill" are one word: what is left when how it is said is taken off. */
function stemOf(word: string): string {
  const end = ["ing", "ed", "e"].find((e) => word.endsWith(e) && word.length > e.length + 2);
  const stem = end === undefined ? word : word.slice(0, -end.length);
  return stem.length > 3 && stem.at(-1) === stem.at(-2) ? stem.slice(0, -1) : stem;
}
/** Whether a setting speaks of a technique by its own name. */
const names = (meant: readonly string[], technique: string): boolean =>
  technique
    .split(/[^a-z]/)
    .map(stemOf)
    .every((part) => meant.some((w) => stemOf(w) === part));

function fitOf({ edge, meant, common }: Read, ask: Question, asked: () => readonly string[]): number {
  if (edge.role !== undefined && !ask.roles.some((r) => r.role === edge.role)) return 0.5;
  if (edge.techniques && ask.technique !== undefined) return edge.techniques.includes(ask.technique) ? 1 : 0.5;
  if (edge.context === undefined) return 0.95;
  // The technique is all that was asked, or was asked in so many words: a dish that is named is closer than how it is cooked.
  const spoken = ask.technique !== undefined && names(meant, ask.technique);
  if (spoken && (ask.setting === "" || names(asked(), ask.technique))) return 1;
  // Muffins and scones are both baking: what holds for one mostly holds for the other.
  const jobs = (ask.store.tables["jobs"] ?? {}) as Readonly<Record<string, { technique?: string }>>;
  const technique = (w: string): string | undefined =>
    (Object.hasOwn(jobs, w) ? jobs[w] : Object.hasOwn(jobs, `${w}s`) ? jobs[`${w}s`] : undefined)?.technique;
  const same = spoken || (ask.technique !== undefined && meant.some((w) => technique(w) === ask.technique));
  if (ask.setting === "") return same ? 0.9 : edge.techniques ? 0.8 : common ? 0.85 : 0.7;
  if (meant.some((w) => asked().includes(w))) return 1;
  return same ? 0.9 : 0.7;
}

export const isCommonPractice = (edge: SwapEdge): boolean => edge.sources.every((s) => s.key === "common practice");

/** So many foods of which each is named for each other are a list of what may be exchanged. */
const LIST = 4;
/**
 * Whether a swap is one pair of an exchange list: a publication that names a group of foods, each for each of the others. It says that any of
 * them will do, not which is best, and not that nothing outside the group would: a fish market's list leaves out what the market has not.
 */
function isExchange(store: Store, edge: SwapEdge): boolean {
  const [only] = edge.uses;
  if (edge.uses.length !== 1 || only === undefined || isCommonPractice(edge)) return false;
  const both = edgesFor(store, edge.replaces.id).filter(
    (e) => e.uses.length === 1 && sameWord(e, edge) && namedBack(store, e),
  );
  return both.length >= LIST - 1 && both.includes(edge);
}
const namedBack = (store: Store, edge: SwapEdge): boolean =>
  edgesFor(store, (edge.uses[0] as { id: string }).id).some(
    (back) => back.uses.length === 1 && back.uses[0]?.id === edge.replaces.id && sameWord(back, edge),
  );
/** Said by the same source of the same setting. */
const sameWord = (a: SwapEdge, b: SwapEdge): boolean =>
  a.context === b.context && a.sources.some((s) => b.sources.some((t) => s.key === t.key));

function gramsOf(store: Store, i: Ingredient, amount: string): { grams: number; eaten: number } | undefined {
  const quantity = readQuantity(amount);
  const weight = quantity && weigh(store, i, quantity);
  return weight && { grams: weight.grams, eaten: shareOfRow(i, weight.unit, weight.label) };
}

/**
 * Amounts per gram that is eaten, where plates are filled: a table means things as it measures them. A ratio means the same measure of
 * both, whichever the question uses.
 */
function asEaten(ask: Question, uses: NonNullable<Read["uses"]>): Known["uses"] {
  if (!fillsPlate(ask)) return uses;
  return uses.map(({ ingredient, perGram, eaten }) => {
    if (perGram === undefined) return { ingredient };
    // Tables weigh fish by the fillet.
    if (ask.whole) return { ingredient, perGram };
    const own = shareFor(ask, ingredient);
    const of =
      eaten === undefined ? (ask.byWeight ? own / ask.share : 1) : eaten[1] === 1 ? 1 / eaten[0] : own / eaten[0];
    return { ingredient, perGram: perGram * of };
  });
}

/** All known swaps for what is missing, none when only computed answers are asked for. */
export function knownSwaps(ask: Question): Known[] {
  if (ask.evidence === "computed") return [];
  let setting: readonly string[] | undefined;
  const asked = (): readonly string[] => (setting ??= words(ask.setting));
  return readFor(ask.store, ask.item).flatMap((of) => {
    const { edge, uses } = of;
    if (uses === undefined) return [];
    // A publication weighs a little more than what cooks are known to do,
    // and both for less where the shops have none of it and the dish is not of those who cook with it.
    const strange = uses.some(
      ({ ingredient: i }) =>
        i.athand === 0 && ask.have?.has(i.id) !== true && !ask.cuisines?.some((t) => i.traditions.includes(t)),
    );
    const weight = (of.common ? 0.88 : 1) * (strange ? 0.85 : 1);
    return [{ edge, uses: asEaten(ask, uses), fits: fitOf(of, ask, asked) * weight, exchange: of.exchange }];
  });
}
