/**
 * Short text for values that only hold vocabulary words and levels. Words stand by their place in the vocabulary (one character each),
 * levels of 0 to 9 as a digit, half steps as a letter; what is absent as a point. Used for columns with thousands of values.
 */
type Vocabulary = Readonly<Record<string, readonly string[]>>;
export interface Codec {
  pack(value: unknown, vocabulary: Vocabulary): string;
  unpack(text: string, vocabulary: Vocabulary): unknown;
}
type Scale = Readonly<Record<string, number>>;
const STAGES: readonly string[] = ["raw", "cooked", "long"];

const level = (v: number | undefined): string =>
  v === undefined ? "." : Number.isInteger(v) ? String(v) : String.fromCharCode(97 + Math.round(v * 2));
const unlevel = (c: string): number | undefined =>
  c === "." ? undefined : c >= "a" ? (c.charCodeAt(0) - 97) / 2 : Number(c);
const word = (list: readonly string[], w: string): string => String.fromCharCode(48 + list.indexOf(w));
const unword = (list: readonly string[], c: string): string => list[c.charCodeAt(0) - 48] ?? "";

const texture: Codec = {
  pack: (value, { texture: names = [] }) =>
    STAGES.map((s) => names.map((n) => level((value as Readonly<Record<string, Scale>>)[s]?.[n])).join("")).join("/"),
  unpack: (text, { texture: names = [] }) => {
    const stages: Record<string, Record<string, number>> = {};
    text.split("/").forEach((chars, s) => {
      const scale: Record<string, number> = {};
      names.forEach((name, k) => {
        const v = unlevel(chars[k] ?? ".");
        if (v !== undefined) scale[name] = v;
      });
      if (Object.keys(scale).length > 0) stages[STAGES[s] ?? ""] = scale;
    });
    return stages;
  },
};
const aroma: Codec = {
  pack: (value, { aroma: names = [] }) =>
    Object.entries(value as Scale)
      .map(([name, v]) => word(names, name) + level(v))
      .join(""),
  unpack: (text, { aroma: names = [] }) => {
    const scale: Record<string, number> = {};
    for (let i = 0; i < text.length; i += 2) scale[unword(names, text[i] ?? "")] = unlevel(text[i + 1] ?? ".") ?? 0;
    return scale;
  },
};
const traditions: Codec = {
  pack: (value, { tradition: names = [] }) => (value as readonly string[]).map((n) => word(names, n)).join(""),
  unpack: (text, { tradition: names = [] }) => Array.from(text, (c) => unword(names, c)),
};
export const CODECS: Readonly<Record<string, Codec>> = { texture, aroma, traditions };
