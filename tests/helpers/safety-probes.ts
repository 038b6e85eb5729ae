// Asks the probes of tests/fixtures/safety-probes.yaml and says in words where the answer differs.
import { readFileSync } from "node:fs";
import { parse } from "yaml";
import { storeOf, type Ingredient } from "../../src/catalogue/index.js";
import { findFood, judgeSwap, openCatalogue } from "../../src/index.js";
import {
  allergenFacts,
  dietAnswer,
  DIETS,
  donenessChange,
  donenessFor,
  hazardsFor,
  readAvoid,
  readinessOf,
  refusalFor,
  type Place,
} from "../../src/safety/index.js";
import type { Avoid, RoleId } from "../../src/types.js";

export interface Probe {
  readonly source: string;
  readonly food?: string;
  readonly foods?: readonly string[];
  readonly [key: string]: unknown;
}
export type ProbeKind = "allergens" | "diets" | "heat" | "change" | "ready" | "swaps" | "words";
export const PROBES = parse(
  readFileSync(new URL("../fixtures/safety-probes.yaml", import.meta.url), "utf8"),
) as Readonly<Record<ProbeKind, readonly Probe[]>>;

const c = openCatalogue();
const store = storeOf(c);
function the(name: string): Ingredient {
  const id = store.byId.has(name) ? name : findFood(c, name)[0]?.id;
  const found = id === undefined ? undefined : store.byId.get(id);
  if (!found) throw new Error(`no food "${name}"`);
  return found;
}
const list = (p: Probe): readonly string[] => p.foods ?? (p.food === undefined ? [] : [p.food]);
const words = (p: Probe, key: string): readonly string[] => (p[key] ?? []) as readonly string[];
const text = (p: Probe, key: string): string | undefined => p[key] as string | undefined;
const rulesOf = (avoid: unknown) => readAvoid(store, avoid as Avoid | undefined, () => []);

function allergens(p: Probe): string[] {
  const faults: string[] = [];
  for (const name of list(p)) {
    const i = the(name);
    const facts = allergenFacts(store, i);
    const has = (where: readonly string[], a: string): boolean => where.includes(a);
    for (const a of words(p, "contains"))
      if (!has(facts.contains, a)) faults.push(`${i.id} is not said to contain ${a}`);
    for (const a of words(p, "doubt")) if (has(facts.free, a)) faults.push(`${i.id} is called free of ${a}`);
    for (const a of words(p, "free")) if (!has(facts.free, a)) faults.push(`${i.id} is not called free of ${a}`);
    for (const a of words(p, "not")) if (has(facts.contains, a)) faults.push(`${i.id} is said to contain ${a}`);
    if (p["answer"] === "warned") {
      const rules = rulesOf({ allergens: [p["avoid"]] });
      const said = hazardsFor(store, { use: [{ ingredient: i, grams: 5 }], rules }).cautions;
      if (!refusalFor(store, i, rules) && said.every((x) => !x.hazard.startsWith("cross-reaction")))
        faults.push(`${i.id} avoiding ${text(p, "avoid")}: no word`);
    }
  }
  return faults;
}

function diets(p: Probe): string[] {
  const diet = DIETS.find((d) => d === p["diet"]);
  if (!diet) throw new Error(`no diet ${text(p, "diet")}`);
  const each = (p["each"] ?? {}) as Readonly<Record<string, string>>;
  return list(p).flatMap((name) => {
    const i = the(name);
    const wanted = each[name] ?? text(p, "answer");
    const said = dietAnswer(store, i, diet, text(p, "technique"));
    const right = wanted === "not yes" ? said.answer !== "yes" : said.answer === wanted;
    const faults = right ? [] : [`${i.id} for ${diet}: ${said.answer} (${said.text}), expected ${wanted}`];
    const hazards = hazardsFor(store, { use: [{ ingredient: i, grams: 100 }], rules: rulesOf({ diets: [diet] }) });
    const all = [said.text, ...hazards.cautions.map((x) => x.text)].join(" ").toLowerCase();
    for (const w of words(p, "says"))
      if (!all.includes(w.toLowerCase())) faults.push(`${i.id} for ${diet}: does not say ${w}`);
    return faults;
  });
}

function heat(p: Probe): string[] {
  return list(p).flatMap((name) => {
    const i = the(name);
    const d = donenessFor(store, i, { jurisdiction: p["where"] as Place });
    const wanted = [p["celsius"], p["rest"] ?? d?.rest, p["hold"] ?? d?.hold];
    const said = d ? [d.celsius, d.rest, d.hold] : [];
    return JSON.stringify(said) === JSON.stringify(wanted)
      ? []
      : [`${i.id} in ${text(p, "where")}: ${said.join("/")}, expected ${wanted.join("/")}`];
  });
}

function change(p: Probe): string[] {
  const [from, to] = [the(text(p, "from") ?? ""), the(text(p, "to") ?? "")];
  const d = donenessChange(store, from, to, { jurisdiction: p["where"] as Place });
  const said = d === undefined ? "same" : d.raised ? "raised" : "lower";
  return said === p["answer"] && d?.to.celsius === p["celsius"]
    ? []
    : [`${from.id} -> ${to.id}: ${said} ${d?.to.celsius}, expected ${text(p, "answer")} ${String(p["celsius"])}`];
}

function ready(p: Probe): string[] {
  return Object.entries(p["each"] as Readonly<Record<string, string>>).flatMap(([name, wanted]) => {
    const said = readinessOf(store, the(name));
    return said === wanted ? [] : [`${name}: ${said}, expected ${wanted}`];
  });
}

/** The other ingredients as a caller gives them: recipe lines. */
const withLines = (p: Probe): { lines: readonly string[] } => ({
  lines: words(p, "dish").map((id) => `100 g ${store.nameOf(the(id))}`),
});

function swaps(p: Probe): string[] {
  const missing = the(text(p, "missing") ?? "");
  const use = the(text(p, "use") ?? "");
  const rules = rulesOf(p["avoid"]);
  const technique = text(p, "technique");
  const role = text(p, "role");
  const context = text(p, "context");
  const answer = hazardsFor(store, {
    missing,
    use: [{ ingredient: use, grams: (p["grams"] as number | undefined) ?? 100 }],
    rules,
    dish: words(p, "dish").map(the),
    ...(technique === undefined ? {} : { technique }),
    ...(role === undefined ? {} : { role }),
    ...(context === undefined ? {} : { context }),
    ...(p["serves"] === undefined ? {} : { serves: p["serves"] as number }),
  });
  const refused =
    answer.stops.some((s) => s.kind !== "unless") ||
    refusalFor(store, use, rules, technique === undefined ? {} : { technique }) !== undefined;
  const step = answer.required.length > 0;
  const about = text(p, "about");
  const cautions = answer.cautions.filter((x) => about === undefined || x.text.toLowerCase().includes(about));
  const name = `${missing.id} -> ${use.id}${technique === undefined ? "" : ` to ${technique}`}`;
  const said = [...answer.cautions.map((x) => x.text), ...answer.required.map((x) => x.text)];
  const faults: string[] = [];
  const wanted = text(p, "answer");
  const right = {
    refused,
    step: step && !refused,
    caution: cautions.length > 0 && !refused,
    quiet: !refused && !step && cautions.length === 0,
    "no step": !refused && !step,
  }[wanted ?? ""];
  if (right !== true)
    faults.push(
      `${name}: expected ${wanted}; ${refused ? "refused" : step ? "step" : "offered"}, says: ${said.join(" | ")}`,
    );
  for (const w of words(p, "says"))
    if (!said.some((s) => s.toLowerCase().includes(w.toLowerCase())))
      faults.push(`${name}: does not say ${w}: ${said.join(" | ")}`);
  // And as a caller gets it: what is refused has no swap, what needs a step has it.
  if (wanted === "refused") {
    const judged = judgeSwap(c, {
      missing: missing.id,
      instead: use.id,
      amount: `${(p["grams"] as number | undefined) ?? 100} g`,
      ...(role === undefined ? {} : { role: role as RoleId }),
      dish: {
        ...withLines(p),
        ...(technique === undefined ? {} : { technique }),
        ...(p["serves"] === undefined ? {} : { serves: p["serves"] as number }),
      },
      ...(p["avoid"] === undefined ? {} : { avoid: p["avoid"] as Avoid }),
    });
    if (judged.swap !== undefined) faults.push(`${name}: a caller is offered it`);
  }
  if (p["once"] === true && answer.cautions.length !== 1)
    faults.push(`${name}: ${answer.cautions.length} cautions: ${said.join(" | ")}`);
  return faults;
}

function wordsRead(p: Probe): string[] {
  const name = text(p, "name");
  if (name === undefined) {
    const said = rulesOf({ allergens: p["allergens"] ?? [], diets: p["diets"] ?? [] }).allergens;
    const wanted = words(p, "reads");
    return wanted.length === said.length && wanted.every((w) => (said as readonly string[]).includes(w))
      ? []
      : [`${JSON.stringify(p["allergens"] ?? p["diets"])}: read as ${said.join(", ")}`];
  }
  const never = p["never"] as { any?: boolean; origin?: readonly string[]; foods?: readonly string[] };
  return findFood(c, name).flatMap(({ id }) => {
    const i = the(id);
    const wrong =
      never.any === true ||
      never.origin?.some((o) => i.origin.has(o)) === true ||
      never.foods?.includes(i.food) === true;
    return wrong ? [`"${name}" is taken for ${id}`] : [];
  });
}

const ASK: Readonly<Record<ProbeKind, (p: Probe) => string[]>> = {
  allergens,
  diets,
  heat,
  change,
  ready,
  swaps,
  words: wordsRead,
};
/** Where the answers to one probe differ from its answer table; empty when none does. */
export function askProbe(kind: ProbeKind, probe: Probe): readonly string[] {
  return ASK[kind](probe);
}
