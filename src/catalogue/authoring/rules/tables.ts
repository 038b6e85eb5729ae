import { nearest, rows, type Rule } from "./types.js";

const BASICS = "vocabulary/basics.yaml";
const CUISINES = "vocabulary/cuisines.yaml";
const EVERYDAY = "vocabulary/everyday.yaml";
const JOBS = "vocabulary/jobs.yaml";
const PORTIONS = "vocabulary/portions.yaml";

type Plain = Readonly<Record<string, unknown>>;
const plain = (value: unknown): Plain | undefined =>
  typeof value === "object" && value !== null && !Array.isArray(value) ? (value as Plain) : undefined;
/** A word, or whatever stands in its place as it would be written. */
const word = (value: unknown): string => (typeof value === "string" ? value : JSON.stringify(value));
const strings = (value: unknown): readonly string[] =>
  Array.isArray(value) ? value.filter((v): v is string => typeof v === "string") : [];

/** What fills a slot can be counted. */
export const portionClasses: Rule = {
  name: "portion classes",
  text: "Every slot an ingredient fills has a portion, and portion classes name kinds that exist.",
  check(input, say) {
    const table = plain(input.authored.tables["portions"]);
    if (table === undefined) return;
    const counted = Object.keys(table).filter((key) => typeof plain(table[key])?.["portion"] === "number");
    for (const { row, file } of rows(input)) {
      if (row.slot !== undefined && !counted.includes(row.slot))
        say(
          file,
          row.id,
          `fills the slot "${row.slot}", which has no portion. Portions are given for ${counted.join(", ")} (data/${PORTIONS}).`,
        );
    }
    const kinds = input.authored.kinds.map(({ data }) => data.kind);
    for (const slot of counted) {
      const classes = plain(table[slot])?.["classes"];
      for (const kind of Array.isArray(classes) ? classes.flatMap((c) => strings(plain(c)?.["kinds"])) : []) {
        if (!kinds.includes(kind)) say(PORTIONS, slot, `Kind "${kind}" is unknown. Nearest: ${nearest(kind, kinds)}.`);
      }
    }
  },
};

/** Words for jobs lead to words of the vocabulary. */
export const jobs: Rule = {
  name: "jobs",
  text: "Jobs weigh roles of the vocabulary from 0 to 1 and name a technique of it; a taste is sweet or savoury.",
  check({ authored, flat }, say) {
    const roles = flat.commons.vocabulary["role"] ?? [];
    const { technique } = authored.terms;
    for (const [job, value] of Object.entries(plain(authored.tables["jobs"]) ?? {})) {
      const { roles: weighed, technique: by, taste, ...more } = plain(value) ?? {};
      for (const [role, weight] of Object.entries(plain(weighed) ?? {})) {
        if (!roles.includes(role)) say(JOBS, job, `"${role}" is no role. Nearest: ${nearest(role, roles)}.`);
        if (typeof weight !== "number" || !(weight > 0 && weight <= 1))
          say(JOBS, job, `${role} weighs ${word(weight)}; a weight is above 0 and at most 1.`);
      }
      if (by !== undefined && !technique.includes(word(by)))
        say(JOBS, job, `"${word(by)}" is no technique. Nearest: ${nearest(word(by), technique)}.`);
      if (taste !== undefined && taste !== "sweet" && taste !== "savoury")
        say(JOBS, job, `taste is "${word(taste)}"; it is sweet or savoury.`);
      for (const key of Object.keys(more)) say(JOBS, job, `"${key}" says nothing here: roles, technique and taste do.`);
    }
  },
};

/** Words for kitchens lead to traditions of the vocabulary. */
export const cuisines: Rule = {
  name: "cuisines",
  text: "Words for kitchens stand under a tradition of the vocabulary, each once there, in lower-case Latin letters without marks.",
  check({ authored }, say) {
    const traditions = authored.terms.tradition;
    for (const [tradition, listed] of Object.entries(plain(authored.tables["cuisines"]) ?? {})) {
      if (!traditions.includes(tradition))
        say(CUISINES, tradition, `"${tradition}" is no tradition. Nearest: ${nearest(tradition, traditions)}.`);
      const seen = new Set<unknown>();
      for (const name of Array.isArray(listed) ? (listed as unknown[]) : [listed]) {
        if (typeof name !== "string" || [...name].some((ch) => ch !== " " && ch !== "-" && (ch < "a" || ch > "z")))
          say(CUISINES, tradition, `${word(name)} is no word for a kitchen: write it in the letters a to z.`);
        if (seen.has(name)) say(CUISINES, tradition, `"${word(name)}" is listed twice.`);
        seen.add(name);
      }
    }
  },
};

/** What every kitchen has is in the catalogue. */
export const basics: Rule = {
  name: "basics",
  text: "The basics of a kitchen are ingredients of the catalogue, each named once, and the plain ones are among them.",
  check({ authored, flat }, say) {
    const table = plain(authored.tables["basics"]);
    if (table === undefined) return;
    const ids = flat.ingredients.map((row) => row.id);
    const lists = { basics: strings(table["basics"]), plain: strings(table["plain"]) };
    for (const [name, list] of Object.entries(lists)) {
      const seen = new Set<string>();
      for (const id of list) {
        if (seen.has(id)) say(BASICS, name, `"${id}" is listed twice.`);
        else if (!ids.includes(id)) say(BASICS, name, `"${id}" is not in the catalogue. Nearest: ${nearest(id, ids)}.`);
        seen.add(id);
      }
    }
    for (const id of lists.plain)
      if (!lists.basics.includes(id)) say(BASICS, "plain", `"${id}" is plain but no basic: list it there too.`);
  },
};

/** What kitchens and supermarkets have is in the catalogue, and in one place only. */
export const everyday: Rule = {
  name: "everyday",
  text: "What kitchens and supermarkets have are ingredients of the catalogue, each in one of the two lists, once.",
  check({ authored, flat }, say) {
    const table = plain(authored.tables["everyday"]);
    if (table === undefined) return;
    const ids = flat.ingredients.map((row) => row.id);
    const known = new Set(ids);
    const seen = new Map<string, string>();
    for (const [name, list] of Object.entries(table)) {
      if (name !== "kitchen" && name !== "supermarket")
        say(EVERYDAY, name, `"${name}" says nothing here: kitchen and supermarket do.`);
      for (const id of strings(list)) {
        const before = seen.get(id);
        if (before === name) say(EVERYDAY, name, `"${id}" is listed twice.`);
        else if (before !== undefined) say(EVERYDAY, name, `"${id}" is under ${before} already: keep it in one list.`);
        else if (!known.has(id)) say(EVERYDAY, name, `"${id}" is not in the catalogue. Nearest: ${nearest(id, ids)}.`);
        seen.set(id, name);
      }
    }
  },
};
