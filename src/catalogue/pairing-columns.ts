/** Why two go together, in the order the codes count them. */
export const PAIRING_BASES = [
  "tradition",
  "shared aroma",
  "contrast",
  "cut richness",
  "same season",
  "parts of one ingredient",
] as const;
export type PairingBase = (typeof PAIRING_BASES)[number];

/** One recorded pairing; foods by key ("kale", "chard.stem") or ingredient id. Of two parts the usual one is first, the rest second. */
export interface PairingRow {
  readonly with: readonly [string, string];
  readonly basis: PairingBase;
  readonly tradition?: string;
  readonly why: string;
  readonly sources: readonly { readonly key: string; readonly at?: string }[];
}
/**
 * Pairings by column, in the order of the first food: `first` is how many keys on the first food lies, `second` the
 * place of the other, `basis` and `tradition` one character a record, `why` one line a record. Sets of sources are listed once; `from`
 * names the set of each record and is empty when all have the same.
 */
export interface PackedPairings {
  readonly keys: string;
  readonly traditions: readonly string[];
  readonly sources: readonly (readonly string[])[];
  readonly first: readonly number[];
  readonly second: readonly number[];
  readonly basis: string;
  readonly tradition: string;
  readonly from: readonly number[];
  readonly why: string;
}

const FROM = 40; // the first character used for a code: "("
const char = (n: number): string => String.fromCharCode(FROM + n);
const number = (text: string, i: number): number => text.charCodeAt(i) - FROM;
const code = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

export function encodePairings(rows: readonly PairingRow[]): PackedPairings {
  const keys = [...new Set(rows.flatMap((r) => r.with))].sort(code);
  const place = new Map(keys.map((k, i) => [k, i]));
  const traditions = [...new Set(rows.flatMap((r) => r.tradition ?? []))].sort(code);
  const sets: string[] = [];
  const setOf = (r: PairingRow): number => {
    const text = JSON.stringify(r.sources.map((s) => (s.at === undefined ? s.key : `${s.key}:${s.at}`)));
    const at = sets.indexOf(text);
    return at < 0 ? sets.push(text) - 1 : at;
  };
  const at = (k: string): number => place.get(k) ?? -1;
  const sorted = [...rows].sort(
    (a, b) =>
      at(a.with[0]) - at(b.with[0]) || at(a.with[1]) - at(b.with[1]) || code(a.tradition ?? "", b.tradition ?? ""),
  );
  const from = sorted.map(setOf);
  return {
    keys: keys.join(" "),
    traditions,
    sources: sets.map((s) => JSON.parse(s) as string[]),
    // Steps, not places: most are 0, which packs to almost nothing.
    first: sorted.map((r, i) => at(r.with[0]) - at(sorted[i - 1]?.with[0] ?? keys[0] ?? "")),
    second: sorted.map((r) => at(r.with[1])),
    basis: sorted.map((r) => char(PAIRING_BASES.indexOf(r.basis))).join(""),
    tradition: sorted.map((r) => char(r.tradition === undefined ? 0 : traditions.indexOf(r.tradition) + 1)).join(""),
    from: from.every((f) => f === 0) ? [] : from,
    why: sorted.map((r) => r.why).join("\n"),
  };
}

/** The inverse. */
export function decodePairings(packed: PackedPairings): PairingRow[] {
  const keys = packed.keys.split(" ");
  const why = packed.why.split("\n");
  const sets = packed.sources.map((set) =>
    set.map((text) => {
      const colon = text.indexOf(":");
      return colon < 0 ? { key: text } : { key: text.slice(0, colon), at: text.slice(colon + 1) };
    }),
  );
  let first = 0;
  return packed.second.map((second, i) => {
    first += packed.first[i] ?? 0;
    const tradition = packed.traditions[number(packed.tradition, i) - 1];
    return {
      with: [keys[first] ?? "", keys[second] ?? ""],
      basis: PAIRING_BASES[number(packed.basis, i)] ?? "tradition",
      ...(tradition === undefined ? {} : { tradition }),
      why: why[i] ?? "",
      sources: sets[packed.from[i] ?? 0] ?? [],
    };
  });
}
