// Counts what the data hold and what they lack. Pure: rows in, Markdown out.
import { eachState, idOf, type Authored } from "../../src/catalogue/authoring/compile.js";
import type { CompositionLookup } from "../../src/catalogue/authoring/composition.js";
import { NEEDS } from "../../src/catalogue/authoring/rules/index.js";
import type { Flat, FlatIngredient } from "../../src/catalogue/compiled.js";
import { foldText } from "../../src/names/index.js";
import { composition } from "./calculated.js";
import { lacking } from "./lacking.js";
import { needlessNames } from "./needless.js";

const GRADES = [
  "published",
  "secondary",
  "derived",
  "from memory",
  "calculated",
  "common practice",
  "judgement",
] as const;
type Grade = (typeof GRADES)[number];
const BY_MARK: Readonly<Record<string, Grade>> = {
  "read-secondary": "secondary",
  derived: "derived",
  memory: "from memory",
  calculated: "calculated",
};

const byCode = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
const percent = (part: number, whole: number): string => (whole === 0 ? "" : `${Math.round((100 * part) / whole)}`);
const tally = (words: Iterable<string>): Map<string, number> => {
  const count = new Map<string, number>();
  for (const word of words) count.set(word, (count.get(word) ?? 0) + 1);
  return new Map([...count].sort(([a], [b]) => byCode(a, b)));
};
const table = (head: readonly string[], rows: readonly (readonly (string | number)[])[]): string =>
  [
    `| ${head.join(" | ")} |`,
    `| ${head.map((_, i) => (i === 0 ? "---" : "--:")).join(" | ")} |`,
    ...rows.map((row) => `| ${row.join(" | ")} |`),
  ].join("\n");

interface Entry {
  readonly row: FlatIngredient;
  readonly family: string;
  readonly composition: "published" | "calculated" | "judged";
  readonly edible: "cited" | "record" | "none";
}

export interface Data {
  readonly authored: Authored;
  readonly flat: Flat;
  readonly look: CompositionLookup;
  /** Ids of what kitchens are most often short of (data/vocabulary/lacked.yaml). */
  readonly lacked?: readonly string[];
}

function entriesOf({ authored, flat, look }: Data): Entry[] {
  const rows = new Map(flat.ingredients.map((row) => [row.id, row]));
  return eachState(authored.foods)
    .flatMap((slot): Entry[] => {
      const row = rows.get(idOf(slot));
      if (!row) return [];
      const { composition, edible } = slot.state;
      const records = (typeof composition === "string" ? [composition] : (composition ?? [])).flatMap(
        (r) => look(r) ?? [],
      );
      return [
        {
          row,
          family: slot.file.split("/").at(-2) ?? "",
          composition: records.length > 0 ? "published" : slot.state.calculated === undefined ? "judged" : "calculated",
          edible: edible ? "cited" : records[0]?.refuse === undefined ? "none" : "record",
        },
      ];
    })
    .sort((a, b) => byCode(a.row.id, b.row.id));
}

const gradeOf = (flat: Flat, source: number): Grade => {
  const [key, , mark] = flat.commons.refs[source] ?? ["judgement"];
  if (key === "judgement" || key === "common practice") return key;
  return BY_MARK[mark ?? ""] ?? "published";
};
/** Read at a publication, whichever copy of it. */
const isPublished = (grade: Grade): boolean => GRADES.indexOf(grade) < 4;

/** What decides the amount of an ingredient in one of its roles: the best source it has, or that it has none. */
function carrierOf(flat: Flat, row: FlatIngredient, role: string): Grade | "missing" | undefined {
  const needs = NEEDS[role];
  if (needs === undefined) return undefined;
  const grades = needs.flat().flatMap((name) => {
    const figure = row.figures[name];
    return figure ? [gradeOf(flat, figure[1])] : [];
  });
  return grades.sort((a, b) => GRADES.indexOf(a) - GRADES.indexOf(b))[0] ?? "missing";
}
const mainRoles = (row: FlatIngredient): string[] =>
  Object.keys(row.roles).filter((role) => (row.roles[role] ?? 0) >= 0.5);

function families(flat: Flat, entries: readonly Entry[]): string {
  const line = (name: string, list: readonly Entry[]): (string | number)[] => {
    const count = (test: (e: Entry) => boolean): string => percent(list.filter(test).length, list.length);
    const slots = list.filter(({ row }) => row.slot !== undefined && row.slot !== "soup");
    const carriers = list.flatMap(({ row }) => mainRoles(row).flatMap((role) => carrierOf(flat, row, role) ?? []));
    return [
      name,
      new Set(list.map(({ row }) => row.food)).size,
      list.length,
      count((e) => e.composition === "published"),
      count((e) => e.composition === "calculated"),
      count((e) => e.composition === "judged"),
      count((e) => e.composition !== "judged"),
      count(({ row }) => row.measures.length > 0),
      count(({ row }) => row.measures.some(([, , , source]) => isPublished(gradeOf(flat, source)))),
      count((e) => e.edible !== "none"),
      percent(slots.filter(({ row }) => row.cooked !== undefined).length, slots.length),
      percent(carriers.filter((c) => c !== "missing").length, carriers.length),
      percent(carriers.filter((c) => c !== "missing" && isPublished(c)).length, carriers.length),
    ];
  };
  const names = [...new Set(entries.map((e) => e.family))].sort(byCode);
  return table(
    [
      "family",
      "foods",
      "ingredients",
      "composition published",
      "calculated from records",
      "judged",
      "published or calculated",
      "measures",
      "measures published",
      "edible share",
      "cooked yield",
      "carriers",
      "carriers published",
    ],
    [
      ...names.map((name) =>
        line(
          name,
          entries.filter((e) => e.family === name),
        ),
      ),
      line("**all**", entries),
    ],
  );
}

/** What is cited, by kind of fact and by how it was come by. */
function evidence(flat: Flat, entries: readonly Entry[]): string {
  const kinds: readonly (readonly [string, (row: FlatIngredient) => readonly number[]])[] = [
    ["figures per 100 g", (row) => Object.values(row.figures).map(([, s]) => s)],
    ["measures", (row) => row.measures.map(([, , , s]) => s)],
    ["cooked yields", (row) => (row.cooked ? [row.cooked[1]] : [])],
    ["ready yields", (row) => (row.ready ? [row.ready.source] : [])],
    ["state changes", (row) => row.becomes.map((b) => b.source)],
    ["cooking minutes", (row) => Object.values(row.minutes).map(([, s]) => s)],
  ];
  return table(
    ["fact", ...GRADES, "all"],
    kinds.map(([name, sources]) => {
      const grades = tally(entries.flatMap(({ row }) => sources(row).map((s) => gradeOf(flat, s))));
      return [name, ...GRADES.map((g) => grades.get(g) ?? 0), [...grades.values()].reduce((a, b) => a + b, 0)];
    }),
  );
}

function roles(flat: Flat, entries: readonly Entry[]): string {
  return table(
    ["role", "ingredients at 0.5 or more", "carrier", ...GRADES, "missing"],
    Object.keys(flat.commons.roles)
      .sort(byCode)
      .map((role) => {
        const list = entries.filter(({ row }) => (row.roles[role] ?? 0) >= 0.5);
        const got = tally(list.flatMap(({ row }) => carrierOf(flat, row, role) ?? []));
        const cells =
          NEEDS[role] === undefined
            ? [...GRADES, "missing"].map(() => "")
            : [...GRADES, "missing"].map((g) => got.get(g) ?? 0);
        return [role, list.length, flat.commons.roles[role]?.carrier ?? "", ...cells];
      }),
  );
}

function counts({ authored, flat }: Data, entries: readonly Entry[]): string {
  const names = flat.ingredients.flatMap((row) => row.names.filter((n) => n.of === "state" || row.isDefault));
  const both = authored.swaps.filter(({ data }) => data.both === true).length;
  const common = flat.swaps.filter((s) =>
    s.sources.every((p) => flat.commons.refs[p]?.[0] === "common practice"),
  ).length;
  const amounts = flat.swaps.filter((s) => s.uses.every((u) => u.amount !== undefined || u.ratio !== undefined)).length;
  const rows: (readonly [string, number])[] = [
    ["foods", authored.foods.length],
    ["foods with parts", authored.foods.filter(({ data }) => data.parts !== undefined).length],
    ["ingredients", flat.ingredients.length],
    ["ingredients that are parts", flat.ingredients.filter((row) => row.part !== undefined).length],
    ["states in use", new Set(flat.ingredients.map((row) => row.state.join("-"))).size],
    ["kinds", authored.kinds.length],
    ["procedures", authored.procedures.length],
    ["sources", Object.keys(authored.sources).length],
    ["sources cited by figures, measures, yields and swaps", new Set(flat.commons.refs.map(([key]) => key)).size],
    [
      "ingredients with a household measure, percent",
      Number(percent(flat.ingredients.filter((r) => r.measures.length > 0).length, flat.ingredients.length)),
    ],
    ["figures per 100 g", entries.reduce((n, { row }) => n + Object.keys(row.figures).length, 0)],
    ["names as written", new Set(names.map((n) => `${n.tag} ${n.text}`)).size],
    ["names that stay apart after folding", new Set(names.map((n) => foldText(n.text))).size],
    ["languages and scripts", new Set(names.map((n) => n.tag)).size],
    ["swaps as written", authored.swaps.length],
    ["swaps written to hold both ways", both],
    ["swaps, one for each way", flat.swaps.length],
    ["swaps from publications", flat.swaps.length - common],
    ["swaps of common practice", common],
    ["swaps with two or more parts", flat.swaps.filter((s) => s.uses.length > 1).length],
    ["swaps that say how much of everything", amounts],
  ];
  return table(["what", "how many"], rows);
}

function languages(flat: Flat): string {
  const names = new Set(flat.ingredients.flatMap((row) => row.names.map((n) => `${n.tag}|${n.text}`)));
  return table(["language", "names"], [...tally([...names].map((n) => n.slice(0, n.indexOf("|"))))]);
}

function states(flat: Flat): string {
  return table(["state", "ingredients"], [...tally(flat.ingredients.map((row) => row.state.join("-")))]);
}

function traditions({ authored, flat }: Data): string {
  const foods = tally(authored.foods.flatMap(({ data }) => data.traditions ?? []));
  const swaps = tally(flat.swaps.flatMap((s) => s.tradition ?? []));
  const pairings = tally((authored.pairings ?? []).flatMap(({ data }) => data.tradition ?? []));
  return table(
    ["tradition", "foods", "swaps", "pairings"],
    [...authored.terms.tradition]
      .sort(byCode)
      .map((t) => [t, foods.get(t) ?? 0, swaps.get(t) ?? 0, pairings.get(t) ?? 0]),
  );
}

function missing(data: Data, entries: readonly Entry[]): string {
  const { authored, flat } = data;
  const byFamily = (list: readonly Entry[]): string => {
    const groups = new Map<string, string[]>();
    for (const e of list) groups.set(e.family, [...(groups.get(e.family) ?? []), e.row.id]);
    return [...groups]
      .sort(([a], [b]) => byCode(a, b))
      .map(([family, ids]) => `- ${family} (${ids.length}): ${ids.join(", ")}`)
      .join("\n");
  };
  const swapped = new Set(flat.swaps.flatMap((s) => [s.replaces.id, ...s.uses.map((u) => u.id)]));
  const section = (title: string, list: readonly Entry[]): string =>
    `### ${title}: ${list.length}\n\n${list.length === 0 ? "None." : byFamily(list)}`;
  const needless = needlessNames(data);
  const plain = authored.foods
    .filter(({ data: f }) => (f.traditions ?? []).length === 0)
    .map(({ data: f }) => f.food)
    .sort(byCode);
  return [
    section(
      "No published composition, calculated from published records",
      entries.filter((e) => e.composition === "calculated"),
    ),
    section(
      "No published composition, judged",
      entries.filter((e) => e.composition === "judged"),
    ),
    section(
      "No household measure",
      entries.filter(({ row }) => row.measures.length === 0),
    ),
    section(
      "Fills a slot, and no cooked yield",
      entries.filter(({ row }) => row.slot !== undefined && row.slot !== "soup" && !row.cooked),
    ),
    section(
      "Edible share taken to be all of it, for want of a figure",
      entries.filter((e) => e.edible === "none"),
    ),
    section(
      "A main role without its carrier",
      entries.filter(({ row }) => mainRoles(row).some((role) => carrierOf(flat, row, role) === "missing")),
    ),
    section(
      "No swap names it",
      entries.filter(({ row }) => !swapped.has(row.id)),
    ),
    `### Foods of no tradition: ${plain.length}\n\n${plain.length === 0 ? "None." : plain.join(", ")}`,
    `### Names the rules would make anyway: ${needless.length}\n\n${needless.length === 0 ? "None." : needless.map((n) => `- ${n.id}: ${n.name}`).join("\n")}`,
  ].join("\n\n");
}

/** The report as Markdown, the same for the same data. */
export function coverage(data: Data): string {
  const entries = entriesOf(data);
  const { flat } = data;
  return [
    "# Coverage",
    "What the data hold and what they lack, counted from `data/` by `data/tools/report.ts`. Do not edit.",
    "## Counts",
    counts(data, entries),
    "## Composition",
    composition(
      data,
      entries.map((e) => e.composition),
    ),
    "## Families",
    "Percent of the ingredients of each family in `data/foods`. _Published_ means read at a publication or a copy of it, against calculated, judged or common practice. _Calculated_ means a recipe or another form of the same food, worked out from published records (see the data guide); _judged_ is what has neither. _Edible share_ is given by hand or by the record's refuse. _Cooked yield_ counts what fills a slot. _Carriers_ are the figures that decide the amount in a main role (0.5 or more).",
    families(flat, entries),
    "## Evidence",
    evidence(flat, entries),
    "## Roles and what carries them",
    "How the best figure for the role was come by. Roles counted by weight or volume need no figure.",
    roles(flat, entries),
    "## What kitchens are short of",
    lacking(data),
    "## Traditions",
    traditions(data),
    "## Names by language",
    languages(flat),
    "## States",
    states(flat),
    "## Missing",
    "Nothing here is an error. Blank is never taken for zero.",
    missing(data, entries),
    "",
  ].join("\n\n");
}
