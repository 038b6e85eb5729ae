import type { Store } from "../catalogue/store.js";
import { foldText } from "./fold.js";

/** A word that chooses a state; see data/vocabulary/names.yaml for what each field means. */
export interface StateWord {
  readonly word: string;
  readonly terms: readonly string[];
  readonly none: readonly string[];
  readonly need: "must" | "soft" | "prep";
  readonly kept: boolean;
}
/** The words around names, folded. Phrases are keyed by their folded words joined by a space. */
export interface Words {
  readonly states: ReadonlyMap<string, StateWord>;
  readonly parts: ReadonlyMap<string, readonly string[]>;
  /** Words that mean several foods alike, with the food keys. */
  readonly bare: readonly (readonly [word: string, foods: readonly string[]])[];
  readonly describing: ReadonlySet<string>;
  /** Words that describe only before the name. */
  readonly before: ReadonlySet<string>;
  readonly counting: ReadonlySet<string>;
  readonly cutting: ReadonlySet<string>;
  readonly preparing: ReadonlySet<string>;
  readonly notes: ReadonlySet<string>;
  readonly joining: ReadonlySet<string>;
  readonly linking: ReadonlySet<string>;
  readonly changing: ReadonlySet<string>;
  readonly changingExceptions: ReadonlySet<string>;
  readonly generalHeads: ReadonlySet<string>;
  readonly telling: ReadonlySet<string>;
  readonly modifyingFoods: ReadonlySet<string>;
  /** Words that another order of a name does not end in. */
  readonly endings: ReadonlySet<string>;
  readonly notFood: ReadonlySet<string>;
  readonly leavable: ReadonlySet<string>;
  readonly ordinary: ReadonlySet<string>;
}

type Table = Readonly<Record<string, unknown>>;
type StateEntry = { terms: string[]; none?: string[]; need: StateWord["need"]; kept?: boolean };

const phrases = (table: Table, name: string): string[] => ((table[name] ?? []) as unknown[]).map(String);
const folded = (list: readonly string[]): ReadonlySet<string> => new Set(list.map(foldText).filter((w) => w !== ""));

/** Reads the table compiled from data/vocabulary/names.yaml. A catalogue without one has names and no words around them. */
export function wordsOf(store: Store): Words {
  const table = (store.tables["names"] ?? {}) as Table;
  const states = new Map<string, StateWord>();
  for (const [word, entry] of Object.entries((table["state words"] ?? {}) as Record<string, StateEntry>)) {
    const key = foldText(word);
    states.set(key, {
      word: key,
      terms: entry.terms,
      none: entry.none ?? [],
      need: entry.need,
      kept: entry.kept === true,
    });
  }
  const parts = Object.entries((table["part words"] ?? {}) as Record<string, string[]>);
  const describing = phrases(table, "describing").flatMap((line) => line.split(" "));
  return {
    states,
    bare: Object.entries((table["bare words"] ?? {}) as Record<string, string[]>),
    parts: new Map(parts.map(([part, list]) => [part, list.map(foldText)])),
    describing: folded([...describing, ...phrases(table, "describing phrases")]),
    before: folded([...phrases(table, "using"), ...phrases(table, "holding")]),
    counting: folded(phrases(table, "counting")),
    cutting: folded(phrases(table, "cutting")),
    preparing: folded(phrases(table, "preparing")),
    notes: folded(phrases(table, "notes")),
    joining: folded(phrases(table, "joining")),
    linking: folded(phrases(table, "linking")),
    changing: folded(phrases(table, "changing")),
    changingExceptions: folded(phrases(table, "changing exceptions")),
    generalHeads: folded(phrases(table, "general heads")),
    telling: folded(phrases(table, "telling")),
    modifyingFoods: folded(phrases(table, "modifying foods")),
    endings: folded([...phrases(table, "dishes"), ...phrases(table, "not food"), ...phrases(table, "holding")]),
    notFood: folded(phrases(table, "not food")),
    leavable: folded(phrases(table, "leavable heads")),
    ordinary: folded(
      ["ordinary words", "using", "holding", "counting", "cutting", "preparing", "not food", "dishes", "notes"]
        .flatMap((name) => phrases(table, name))
        .concat(describing),
    ),
  };
}
