import { eachState } from "../compile.js";
import { inOrder, stateWords } from "../statename.js";
import { nearest, rows, type Rule } from "./types.js";

/** Every word from a closed list is in that list. */
export const knownWords: Rule = {
  name: "known words",
  text: "Roles, capabilities, textures, aromas, notes, origins, tags, allergens, units and states are words of the vocabulary.",
  check({ authored, flat }, say) {
    const { terms } = authored;
    const roles = flat.commons.vocabulary["role"] ?? [];
    const allergens = flat.commons.vocabulary["allergen"] ?? [];
    const within = (
      file: string,
      record: string,
      what: string,
      words: readonly string[],
      list: readonly string[],
    ): void => {
      for (const word of words)
        if (!list.includes(word))
          say(
            file,
            record,
            `"${word}" is no ${what}. Nearest: ${nearest(word, list)}. A new one goes in data/vocabulary/terms.yaml first.`,
          );
    };
    type Facts = Omit<(typeof authored.kinds)[number]["data"], "kind" | "parent" | "text">;
    const facts = (file: string, record: string, f: Facts): void => {
      within(file, record, "role", Object.keys(f.roles ?? {}), roles);
      within(file, record, "slot", f.slot === undefined ? [] : [f.slot], terms.slot);
      within(file, record, "capability", [...(f.can ?? []), ...(f.cannot ?? [])], terms.capability);
      within(file, record, "texture stage", Object.keys(f.texture ?? {}), terms["texture stage"]);
      for (const scale of Object.values(f.texture ?? {}))
        within(file, record, "texture attribute", Object.keys(scale), terms.texture);
      within(file, record, "judged flavour", Object.keys(f.flavour ?? {}), terms["judged flavour"]);
      within(file, record, "aroma family", Object.keys(f.aroma ?? {}), terms.aroma);
      for (const scale of [f.aroma ?? {}, ...Object.values(f.texture ?? {})])
        for (const [word, level] of Object.entries(scale))
          if (!Number.isInteger(level * 2))
            say(
              file,
              record,
              `${word} is ${level}: the scale goes from 0 to 9 in half steps, which is as fine as anyone judges.`,
            );
      within(file, record, "note", f.dominant ?? [], terms.note);
      within(file, record, "origin", f.origin ?? [], terms.origin);
      within(file, record, "tag", f.tags ?? [], Object.keys(terms.tag));
      const a = f.allergens;
      within(file, record, "allergen", [...(a?.contains ?? []), ...(a?.may ?? []), ...(a?.unknown ?? [])], allergens);
      within(file, record, "technique", Object.keys(f.minutes ?? {}), terms.technique);
      // "roast meat": the same without skin, bone and fat
      const techniques = Object.keys(f.cookedBy ?? {}).map((t) => (t.endsWith(" meat") ? t.slice(0, -5) : t));
      within(file, record, "technique", techniques, terms.technique);
      within(file, record, "starch kind", f.starchKind === undefined ? [] : [f.starchKind], terms["starch kind"]);
      within(file, record, "acid kind", f.acidKind === undefined ? [] : [f.acidKind], terms["acid kind"]);
      within(
        file,
        record,
        "pungency kind",
        f.pungencyKind === undefined ? [] : [f.pungencyKind],
        terms["pungency kind"],
      );
      const both = (f.can ?? []).filter((c) => f.cannot?.includes(c));
      if (both.length > 0) say(file, record, `says both can and cannot: ${both.join(", ")}.`);
    };
    for (const { file, data } of authored.kinds) facts(file, data.kind, data);
    for (const { file, data } of authored.foods) {
      facts(file, data.food, data);
      within(file, data.food, "tradition", data.traditions ?? [], terms.tradition);
      for (const [part, p] of Object.entries(data.parts ?? {})) facts(file, `${data.food}.${part}`, p);
    }
    for (const { file, data } of authored.pairings ?? [])
      within(
        file,
        data.with.join(" + "),
        "tradition",
        data.tradition === undefined ? [] : [data.tradition],
        terms.tradition,
      );
    for (const slot of eachState(authored.foods)) {
      const record = `${slot.food.food}${slot.partName ? `.${slot.partName}` : ""}/${slot.stateName}`;
      facts(slot.file, record, slot.state);
      const measured = slot.state.cooked?.technique;
      within(slot.file, record, "technique", measured === undefined ? [] : [measured], terms.technique);
      const words = stateWords(slot.stateName, terms);
      if (words === undefined)
        say(
          slot.file,
          record,
          `"${slot.stateName}" is not made of state words. Use preservation, then heat, then form from data/vocabulary/terms.yaml.`,
        );
      else if (!inOrder(words, terms))
        say(slot.file, record, `State words come preservation, then heat, then form: "${slot.stateName}" does not.`);
      within(slot.file, record, "figure", Object.keys(slot.state.figures ?? {}), Object.keys(terms.figure));
      within(
        slot.file,
        record,
        "unit",
        Object.keys(slot.state.measures ?? {}).map((m) => m.split(" ")[0] ?? m),
        terms.unit,
      );
      if (slot.state.usual !== undefined && !Object.hasOwn(slot.state.measures ?? {}, slot.state.usual))
        say(slot.file, record, `usual: "${slot.state.usual}" is not among its measures.`);
    }
  },
};

/** Whatever is pointed at is there. */
export const references: Rule = {
  name: "references",
  text: "Kinds, procedures, sources, composition records, becomes targets and swap ingredients exist.",
  check(input, say) {
    const { authored, flat, look } = input;
    const kinds = authored.kinds.map((k) => k.data.kind);
    const ids = new Set([...flat.ingredients.map((row) => row.id), ...(input.alsoKnown ?? [])]);
    const procedures = authored.procedures.map((p) => p.data.id);
    const keys = [...Object.keys(authored.sources), "judgement", "common practice"];
    const seen = new Map<string, string>();
    for (const { file, data } of authored.kinds) {
      const first = seen.get(data.kind);
      if (first !== undefined) say(file, data.kind, `This kind is already in ${first}.`);
      seen.set(data.kind, file);
      if (data.parent === undefined && data.kind !== "food") say(file, data.kind, "Every kind but food has a parent.");
      if (data.parent !== undefined && !kinds.includes(data.parent))
        say(file, data.kind, `Parent "${data.parent}" is no kind. Nearest: ${nearest(data.parent, kinds)}.`);
    }
    const parent = new Map(authored.kinds.map(({ data }) => [data.kind, data.parent]));
    for (const { file, data } of authored.kinds) {
      const line = [data.kind];
      for (let k = data.parent; k !== undefined; k = parent.get(k)) {
        if (line.includes(k)) {
          say(file, data.kind, `Kinds go in a circle: ${[...line, k].join(" < ")}.`);
          break;
        }
        line.push(k);
      }
    }
    const source = (file: string, record: string, key: string): void => {
      const bare = key.split(":")[0] ?? key;
      if (!keys.includes(bare))
        say(file, record, `Source "${bare}" is not in data/sources.yaml. Nearest: ${nearest(bare, keys)}.`);
    };
    for (const { file, data } of authored.kinds)
      for (const c of Object.values(data.cookedBy ?? {})) source(file, data.kind, c.from);
    for (const { file, data } of authored.foods) {
      for (const c of Object.values(data.cookedBy ?? {})) source(file, data.food, c.from);
      const parts = [data.kind, ...Object.values(data.parts ?? {}).flatMap((p) => p.kind ?? [])];
      for (const kind of parts)
        if (!kinds.includes(kind)) say(file, data.food, `Kind "${kind}" is unknown. Nearest: ${nearest(kind, kinds)}.`);
    }
    for (const { row, slot, file } of rows(input)) {
      const { state } = slot;
      if (state.kind !== undefined && !kinds.includes(state.kind))
        say(file, row.id, `Kind "${state.kind}" is unknown. Nearest: ${nearest(state.kind, kinds)}.`);
      const records = typeof state.composition === "string" ? [state.composition] : (state.composition ?? []);
      if (records.length === 0)
        say(file, row.id, "composition is missing: give a record, or `none` and the figures by hand.");
      for (const reference of records)
        if (reference !== "none" && !look(reference))
          say(
            file,
            row.id,
            `Composition record "${reference}" is in neither table (usda-sr28:NDB or mext-2020:number, with leading zeros, in quotes).`,
          );
      for (const c of Object.values(state.figures ?? {})) source(file, row.id, c.from);
      for (const m of Object.values(state.measures ?? {})) source(file, row.id, m.from);
      if (state.calculated?.from !== undefined) source(file, row.id, state.calculated.from);
      for (const c of [
        state.edible,
        state.cooked,
        state.ready?.yield,
        state.ready?.salt,
        ...(state.becomes ?? []).map((b) => b.yield),
        ...Object.values(state.minutes ?? {}),
        ...Object.values(state.cookedBy ?? {}),
        state.calculated?.water,
      ])
        if (c) source(file, row.id, c.from);
      for (const p of [...(state.ready?.by ?? []), ...(state.becomes ?? []).map((b) => b.by)])
        if (!procedures.includes(p))
          say(file, row.id, `Procedure "${p}" is unknown. Nearest: ${nearest(p, procedures)}.`);
      for (const b of row.becomes)
        if (!ids.has(b.to)) say(file, row.id, `becomes "${b.to}", which is not in the catalogue.`);
    }
    const procedureFiles = new Map<string, string>();
    for (const { file, data } of authored.procedures) {
      const first = procedureFiles.get(data.id);
      if (first !== undefined) say(file, data.id, `This procedure is already in ${first}.`);
      procedureFiles.set(data.id, file);
      source(file, data.id, data.minutes.from);
      if (data.byProduct && !ids.has(data.byProduct.replaceWith))
        say(file, data.id, `byProduct.replaceWith "${data.byProduct.replaceWith}" is not in the catalogue.`);
    }
    const swapIds = new Map<string, string>();
    for (const { file, data } of authored.swaps) {
      const first = swapIds.get(data.id);
      if (first !== undefined) say(file, data.id, `This swap is already in ${first}.`);
      swapIds.set(data.id, file);
      for (const id of [data.replaces.food, ...data.uses.map((u) => u.food)])
        if (!ids.has(id)) say(file, data.id, `"${id}" is not in the catalogue. Nearest: ${nearest(id, [...ids])}.`);
      for (const f of data.from) source(file, data.id, f);
    }
    const foods = new Set([...ids].map((id) => id.slice(0, id.indexOf("/"))));
    for (const { file, data } of authored.pairings ?? []) {
      const record = data.with.join(" + ");
      for (const key of data.with)
        if (!ids.has(key) && !foods.has(key))
          say(
            file,
            record,
            `"${key}" is neither a food, a part nor an ingredient. Nearest: ${nearest(key, [...foods])}.`,
          );
      for (const f of data.from) source(file, record, f);
    }
  },
};

const LONGEST_NAME = 120;
/** Bars and line breaks set names apart in the columns; other control characters are never part of a name. */
function plainName(text: string): boolean {
  if (text.length > LONGEST_NAME) return false;
  for (let i = 0; i < text.length; i++) {
    const code = text.charCodeAt(i);
    if (code < 32 || code === 124 || code === 127 || code === 0x2028 || code === 0x2029) return false;
  }
  return text.trim() !== "";
}

/** The food or part an id belongs to. */
const owner = (id: string): string => id.slice(0, id.indexOf("/"));

/** One food a file name, one default, a name to show. */
export const naming: Rule = {
  name: "naming",
  text: "Food ids are unique, at most one state of a food or part is its default, everything has an English name, names are plain text, and no name in one language means two things unless both say it is a variant.",
  check(input, say) {
    const { authored, flat } = input;
    const files = new Map<string, string>();
    for (const { file, data } of authored.foods) {
      const first = files.get(data.food);
      if (first !== undefined) say(file, data.food, `The food "${data.food}" is already in ${first}.`);
      files.set(data.food, file);
      const groups = [
        [data.food, data.names, data.states] as const,
        ...Object.entries(data.parts ?? {}).map(([part, p]) => [`${data.food}.${part}`, p.names, p.states] as const),
      ];
      for (const [key, names, states] of groups) {
        if (!names["en"]) say(file, key, "An `en` name is missing.");
        const defaults = Object.entries(states ?? {}).filter(([, s]) => s.default === true);
        if (defaults.length > 1)
          say(file, key, `Two defaults: ${defaults.map(([s]) => s).join(", ")}. A bare name can mean one state only.`);
      }
      if (!data.states && !data.parts) say(file, data.food, "A food needs states or parts.");
    }
    const claims = new Map<string, { id: string; file: string }>();
    const where = new Map([...rows(input)].map(({ row, file }) => [row.id, file]));
    for (const row of flat.ingredients) {
      for (const { text } of row.names)
        if (!plainName(text))
          say(
            where.get(row.id) ?? "",
            row.id,
            `The name ${JSON.stringify(text.slice(0, LONGEST_NAME))} holds a bar, a line break or another sign that is not text, is blank, or is longer than ${LONGEST_NAME} letters. Write it plainly.`,
          );
      for (const { tag, text, of } of row.names) {
        if (of !== "state" && !row.isDefault) continue;
        const key = `${tag}|${text.normalize("NFC").toLowerCase()}`;
        const first = claims.get(key);
        // Two defaults of one food share its names; that they are two was said above.
        const shared = of !== "state" && first !== undefined && owner(first.id) === owner(row.id);
        if (first !== undefined && first.id !== row.id && !shared)
          say(
            where.get(row.id) ?? "",
            row.id,
            `The ${tag} name "${text}" already means ${first.id} (${first.file}). Take it off one of them, or qualify it.`,
          );
        claims.set(key, { id: row.id, file: where.get(row.id) ?? "" });
      }
    }
  },
};
