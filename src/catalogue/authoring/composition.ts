/** A published composition record: figures per 100 g edible portion, refuse in percent, household weights in grams of one. */
export interface CompositionRecord {
  readonly key: string;
  readonly record: string;
  readonly description: string;
  readonly figures: Readonly<Record<string, number>>;
  readonly refuse?: number;
  readonly weights: readonly { readonly measure: string; readonly grams: number }[];
  /** LanguaL codes of what was analysed: part (C), form (E), heat (F, G), treatment (H), preservation (J). Left out when the table has none. */
  readonly langual?: readonly string[];
}
/** Finds "usda-sr28:15015"; undefined when the table has no such record. */
export type CompositionLookup = (reference: string) => CompositionRecord | undefined;

const USDA: Readonly<Record<string, string>> = {
  energy_kcal: "energy",
  water_g: "water",
  protein_g: "protein",
  fat_g: "fat",
  sat_fat_g: "saturated fat",
  carbohydrate_g: "carbohydrate",
  fibre_g: "fibre",
  sugars_g: "sugars",
  sucrose_g: "sucrose",
  glucose_g: "glucose",
  fructose_g: "fructose",
  lactose_g: "lactose",
  maltose_g: "maltose",
  starch_g: "starch",
  alcohol_g: "alcohol",
  ash_g: "ash",
  sodium_mg: "sodium",
  potassium_mg: "potassium",
  glutamic_acid_total_g: "total glutamic acid",
  vitamin_k_ug: "vitamin k",
  cholesterol_mg: "cholesterol",
};
const MEXT: Readonly<Record<string, string>> = {
  water: "water",
  prot: "protein",
  fat: "fat",
  chocdf: "carbohydrate",
  fib: "fibre",
  ash: "ash",
  na: "sodium",
  alc: "alcohol",
};

function table(text: string): Record<string, string>[] {
  const [head = "", ...rows] = text.replace(/\n+$/, "").split("\n");
  const names = head.split("\t");
  return rows.map((row) => {
    const cells = row.split("\t");
    return Object.fromEntries(names.map((name, i) => [name, cells[i] ?? ""]));
  });
}

/** A blank or "-" was not measured and stays out; "Tr" is a trace, taken as 0; brackets mark an estimate of the table's own. */
function number(cell: string | undefined): number | undefined {
  const text = (cell ?? "").replace(/[()†]/g, "").trim();
  if (text === "" || text === "-" || text === "*") return undefined;
  if (text === "Tr") return 0;
  const value = Number(text);
  return Number.isFinite(value) ? value : undefined;
}

function pick(row: Record<string, string>, map: Readonly<Record<string, string>>): Record<string, number> {
  const figures: Record<string, number> = {};
  for (const [column, name] of Object.entries(map)) {
    const value = number(row[column]);
    if (value !== undefined) figures[name] = value;
  }
  return figures;
}

/** LanguaL codes of a cell; the table also holds bare numbers there, which are none. */
const codes = (cell: string | undefined): string[] =>
  (cell ?? "").split(" ").filter((c) => c.length === 5 && c.charAt(0) >= "A" && c.charAt(0) <= "Z");

/** Reads the open tables kept in data/composition (tab-separated text) into one lookup. */
export function compositionLookup(texts: { usda: string; weights: string; mext: string }): CompositionLookup {
  const weights = new Map<string, { measure: string; grams: number }[]>();
  for (const row of table(texts.weights)) {
    const amount = number(row["amount"]);
    const grams = number(row["grams"]);
    if (!amount || grams === undefined) continue;
    const list = weights.get(row["ndb"] ?? "") ?? [];
    list.push({ measure: row["measure"] ?? "", grams: grams / amount });
    weights.set(row["ndb"] ?? "", list);
  }
  const records = new Map<string, CompositionRecord>();
  for (const row of table(texts.usda)) {
    const record = row["ndb"] ?? "";
    const refuse = number(row["refuse_percent"]);
    const langual = codes(row["langual"]);
    records.set(`usda-sr28:${record}`, {
      key: "usda-sr28",
      record,
      description: row["description"] ?? "",
      figures: pick(row, USDA),
      ...(refuse === undefined ? {} : { refuse }),
      weights: weights.get(record) ?? [],
      ...(langual.length === 0 ? {} : { langual }),
    });
  }
  for (const row of table(texts.mext)) {
    const record = row["id"] ?? "";
    const refuse = number(row["refuse"]);
    records.set(`mext-2020:${record}`, {
      key: "mext-2020",
      record,
      description: row["name"] ?? "",
      figures: pick(row, MEXT),
      ...(refuse === undefined ? {} : { refuse }),
      weights: [],
    });
  }
  return (reference) => records.get(reference);
}
