import { rows, type Rule, type RuleInput } from "./types.js";

/** Records lent to an extension for it to point at; whether anything uses them is not the extension's affair. */
const lent = (input: RuleInput, file: string): boolean => input.alsoKnown !== undefined && file === "catalogue";

/** No branch of the kind tree without a leaf. */
export const orphans: Rule = {
  name: "orphans",
  text: "Every kind has an ingredient or a further kind under it.",
  check(input, say) {
    const used = new Set([
      ...input.flat.ingredients.map((row) => row.kind),
      ...input.authored.kinds.map(({ data }) => data.parent ?? ""),
    ]);
    for (const { file, data } of input.authored.kinds) {
      if (!used.has(data.kind) && !lent(input, file))
        say(file, data.kind, "This kind has neither members nor kinds under it. Give it one, or take it out.");
    }
  },
};

/** Every value of a key called "procedure", however deep in a table. */
function* proceduresIn(value: unknown): Generator<string> {
  if (typeof value !== "object" || value === null) return;
  for (const [key, inner] of Object.entries(value)) {
    if (key === "procedure" && typeof inner === "string") yield inner;
    else yield* proceduresIn(inner);
  }
}

/** No procedure that nothing asks for. */
export const idle: Rule = {
  name: "idle procedures",
  text: "Every procedure is what some ingredient needs or becomes by, a step of a safety table, or a technique.",
  check(input, say) {
    const used = new Set([
      "trim", // the way from what is bought to its edible part
      ...input.authored.terms.technique,
      ...proceduresIn(input.authored.tables),
      ...input.flat.ingredients.flatMap((row) => [...(row.ready?.by ?? []), ...row.becomes.map((b) => b.by)]),
    ]);
    for (const { file, data } of input.authored.procedures) {
      if (!used.has(data.id) && !lent(input, file))
        say(
          file,
          data.id,
          "Nothing is made ready or becomes anything by this procedure. Name it under `ready` or `becomes` of a food, or take it out.",
        );
    }
  },
};

const G_SALT_PER_MG_SODIUM = 2.54 / 1000;
/** Figures that tell sodium which is not table salt: leaveners and alkalis, glutamates and nucleotides, potassium salts. */
const OTHER_SODIUM: Readonly<Record<string, number>> = {
  "carbon dioxide": 0.1,
  "free glutamate": 5000,
  inosinate: 2000,
  guanylate: 2000,
  potassium: 5000,
};
const TOLERANCE = 0.3;

/** Salt written by hand agrees with the sodium. */
export const salt: Rule = {
  name: "salt",
  text: "A salt figure written by hand is within 30 % of sodium x 2.54, unless the sodium is of something else than table salt.",
  check(input, say) {
    for (const { row, slot, file } of rows(input)) {
      const written = slot.state.figures?.["salt"]?.v;
      const sodium = row.figures["sodium"]?.[0];
      if (written === undefined || sodium === undefined) continue;
      // Some figures are looked at here and not shipped: those are in the record only.
      const { composition } = slot.state;
      const records = typeof composition === "string" ? [composition] : (composition ?? []);
      const published = (name: string): number | undefined =>
        records.map((r) => input.look(r)?.figures[name]).find((v) => v !== undefined);
      const figure = (name: string): number => row.figures[name]?.[0] ?? published(name) ?? 0;
      const alkaline = figure("neutralising value") < 0;
      if (alkaline || Object.entries(OTHER_SODIUM).some(([name, least]) => figure(name) >= least)) continue;
      const told = sodium * G_SALT_PER_MG_SODIUM;
      if (Math.abs(written - told) > TOLERANCE * Math.max(written, told))
        say(
          file,
          row.id,
          `salt is ${written} g, but its sodium (${sodium} mg) makes ${Math.round(told * 100) / 100} g. Leave salt out when the sodium is table salt, or give the figure that shows it is not (leavening, glutamate, potassium).`,
        );
    }
  },
};
