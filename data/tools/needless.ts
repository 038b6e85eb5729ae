// Names a food file need not list, since the rules of naming understand them: a state word before or after a name of the food, a plural.
import { eachState, idOf } from "../../src/catalogue/authoring/compile.js";
import { foldText } from "../../src/names/index.js";
import type { Data } from "./coverage.js";

/** What shops and cooks say for a state word beside the word itself; kept to what data/vocabulary/names.yaml lists as plain. */
const SAID: Readonly<Record<string, readonly string[]>> = {
  "salt-cured": ["salted", "salt-cured", "salt cured"],
  canned: ["canned", "tinned"],
  powder: ["powder", "powdered"],
  puree: ["puree", "puréed"],
  "in-oil": ["in oil"],
};
/** Every reading of the words of a state, in their order. */
function readings(words: readonly string[]): string[] {
  return words.reduce<string[]>(
    (made, word) => made.flatMap((m) => (SAID[word] ?? [word]).map((w) => (m === "" ? w : `${m} ${w}`))),
    [""],
  );
}

/** English names of a state that are only its words and a name of the food. The state's first name is shown, so it may stand. */
export function needlessNames({ authored, flat }: Pick<Data, "authored" | "flat">): { id: string; name: string }[] {
  const rows = new Map(flat.ingredients.map((row) => [row.id, row]));
  const found: { id: string; name: string }[] = [];
  for (const slot of eachState(authored.foods)) {
    const row = rows.get(idOf(slot));
    if (!row || row.state[0] === "pantry") continue;
    const own = row.names.filter((n) => n.of !== "state" && n.tag.startsWith("en")).map((n) => n.text);
    const made = new Set(
      readings(row.state).flatMap((words) =>
        own.flatMap((name) => [foldText(`${words} ${name}`), foldText(`${name} ${words}`)]),
      ),
    );
    const shown = row.isDefault ? undefined : slot.state.names?.["en"]?.[0];
    for (const { tag, text, of } of row.names) {
      if (of === "state" && tag.startsWith("en") && text !== shown && made.has(foldText(text)))
        found.push({ id: row.id, name: text });
    }
    // A plural or a possessive of the name before it is understood without being listed.
    for (const of of row.isDefault ? (["food", "part", "state"] as const) : (["state"] as const)) {
      const seen = new Set<string>();
      for (const { text } of row.names.filter((n) => n.of === of && n.tag === "en")) {
        const folded = foldText(text);
        if (seen.has(folded)) found.push({ id: row.id, name: text });
        seen.add(folded);
      }
    }
  }
  return found.sort((a, b) => (a.id < b.id ? -1 : a.id > b.id ? 1 : a.name < b.name ? -1 : 1));
}
