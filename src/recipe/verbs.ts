import type { TechniqueId } from "../types.js";
import { isDash } from "../quantity/index.js";
import type { Token } from "./text.js";
import type { ProcedureId, TechniqueUse } from "./types.js";

const VERBS: readonly (readonly [TechniqueId, string])[] = [
  ["boil", "boil boils boiling parboil parboiling blanch blanching"],
  ["simmer", "simmer simmers simmering poach poaching"],
  ["braise", "braise braises braising"],
  ["stew", "stew stewing"],
  ["steam", "steam steaming"],
  ["fry", "fry fries frying saute sauté sauteing sautéing sear searing brown browning sweat sweating"],
  ["roast", "roast roasting"],
  ["grill", "grill grilling broil broiling barbecue barbecuing char charring chargrill"],
  ["bake", "bake bakes baking"],
  ["marinate", "marinate marinating marinade"],
  ["whip", "whip whips whipping"],
  ["pickle", "pickle pickling"],
  ["ferment", "ferment ferments fermenting"],
  ["cure", "cure curing"],
];
const BY_WORD: ReadonlyMap<string, TechniqueId> = new Map(
  VERBS.flatMap(([id, words]) => words.split(" ").map((w) => [w, id] as const)),
);
const PAST: ReadonlyMap<string, TechniqueId> = new Map([
  ["boiled", "boil"],
  ["simmered", "simmer"],
  ["poached", "simmer"],
  ["braised", "braise"],
  ["stewed", "stew"],
  ["steamed", "steam"],
  ["fried", "fry"],
  ["sauteed", "fry"],
  ["seared", "fry"],
  ["roasted", "roast"],
  ["grilled", "grill"],
  ["baked", "bake"],
  ["marinated", "marinate"],
  ["whipped", "whip"],
  ["pickled", "pickle"],
  ["fermented", "ferment"],
  ["cured", "cure"],
]);
/** After these forms stands a thing, not what is done: "baking tray", "boiling water", "whipping cream", "a roast potato". */
const THINGS = new Set(
  "pan pans sheet sheets tray trays dish dishes tin tins powder soda paper stone parchment rack basket water stock salted oil liquid hot beef meat steak cream milk juices brine syrup bag mixture sauce rice onions lentils bread sugar butter pot kettle time seeds".split(
    " ",
  ),
);
const DENIES = new Set(["not", "never", "don", "without", "avoid"]);
const BEFORE = new Set("and then to or until gently slowly briefly lightly quickly now let bring also".split(" "));

/** The techniques one sentence names. An imperative is sure; a noun or a form in "-ing" less so. */
export function techniquesIn(sentence: string, tokens: readonly Token[]): TechniqueUse[] {
  const out: TechniqueUse[] = [];
  const put = (technique: TechniqueId, word: string, confidence: number): void => {
    const had = out.findIndex((t) => t.technique === technique);
    if (had < 0) out.push({ technique, word, confidence });
    else if ((out[had]?.confidence ?? 1) < confidence) out[had] = { technique, word, confidence };
  };
  const said = (w: string): boolean => tokens.some((t) => t.text === w);
  tokens.forEach((t, i) => {
    const next = tokens[i + 1]?.text ?? "";
    const before = tokens[i - 1];
    const id = BY_WORD.get(t.text);
    if (t.text === "stir" && /^fr(y|ies|ying)$/.test(next)) put("stir-fry", `stir-${next}`, 1);
    if (t.text === "slow" && (next === "cooker" || next === "cook")) put("slow cooker", `slow ${next}`, 1);
    if (t.text === "deep" && next.startsWith("fry")) put("deep-fry", `deep-${next}`, 1);
    if ((t.text === "canner" || t.text === "jars") && said("process")) put("can", t.text, 0.8);
    if ((t.text === "set" || t.text === "firm") && ["chill", "refrigerate", "fridge", "refrigerator"].some(said))
      put("set cold", t.text, t.text === "set" ? 0.8 : 0.6);
    if (id === undefined) return;
    if (before?.text === "stir" || before?.text === "deep") return;
    // "do not let it boil", "until steaming" say how it should look, not what is done
    if (tokens.slice(Math.max(0, i - 4), i).some((x) => DENIES.has(x.text))) return;
    if (t.text.endsWith("ing") && (before?.text === "until" || before?.text === "till")) return;
    if (t.text.endsWith("ing") && (THINGS.has(next) || isDash(sentence[t.end]))) return;
    if (
      t.text === "brown" &&
      (next === "" || THINGS.has(next) || before?.text === "golden" || before?.text === "until")
    )
      return;
    if (t.text === "char" && before !== undefined && !BEFORE.has(before.text)) return;
    const free = before === undefined || BEFORE.has(before.text) || ".,;:(".includes(sentence[t.start - 2] ?? "-");
    const noun = before !== undefined && ["the", "this", "your", "a", "rolling", "of"].includes(before.text);
    const bringTo = noun && (tokens[i - 2]?.text === "to" || before.text === "rolling");
    put(id, t.text, bringTo ? 1 : noun ? 0.5 : free && !t.text.endsWith("ing") ? 1 : 0.8);
  });
  if (out.length === 0 && said("oven") && (said("cook") || said("minutes")) && !said("preheat"))
    put("bake", "oven", 0.7);
  return out;
}

/** Techniques a name or a stated method names: "Braised kale", "Fish stew". */
export function techniqueOfName(tokens: readonly Token[]): TechniqueId | undefined {
  for (const [i, t] of tokens.entries()) {
    const next = tokens[i + 1]?.text ?? "";
    if (t.text === "stir" && next.startsWith("fr")) return "stir-fry";
    if (t.text === "deep" && next.startsWith("fr")) return "deep-fry";
    if (t.text === "slow" && next.startsWith("cook")) return "slow cooker";
    const id = PAST.get(t.text) ?? BY_WORD.get(t.text);
    if (id !== undefined && t.text !== "brown" && t.text !== "char" && t.text !== "marinade") return id;
  }
  return undefined;
}

const PROCEDURES: ReadonlyMap<string, ProcedureId> = new Map([
  ...["soak", "soaking", "desalt", "rehydrate", "steep"].map((w) => [w, "soak"] as const),
  ...["drain", "draining", "strain"].map((w) => [w, "drain"] as const),
  ...["rinse", "rinsing"].map((w) => [w, "rinse"] as const),
  ...["marinate", "marinating"].map((w) => [w, "marinate"] as const),
  ...["thaw", "thawing", "defrost", "defrosting"].map((w) => [w, "thaw"] as const),
]);
const LIQUIDS = new Set(["liquid", "water", "milk"]);
export function proceduresIn(tokens: readonly Token[]): { procedure: ProcedureId; word: string }[] {
  const out: { procedure: ProcedureId; word: string }[] = [];
  tokens.forEach((t, i) => {
    const procedure = PROCEDURES.get(t.text);
    if (procedure === undefined || out.some((o) => o.procedure === procedure)) return;
    // "the soaking liquid" is what soaking left, no soaking
    if (t.text.endsWith("ing") && LIQUIDS.has(tokens[i + 1]?.text ?? "")) return;
    out.push({ procedure, word: t.text });
  });
  return out;
}

const WAITING = new Set(
  "simmer simmering boil bake roast braise stew steam poach rest resting stand sit chill cool freeze refrigerate soak marinate rise prove proof infuse steep ferment cure leave cook cover covered set dry drain slow reduce thaw ripen".split(
    " ",
  ),
);
const ACTIVE = new Set(
  "stir stirring knead whisk beat fry saute sauté sear brown toast stir-fry whip cream fold mix blend grind chop roll shape massage sweat toss turning turn squeeze".split(
    " ",
  ),
);
/** Longer than this nobody stands over a pot, if no verb says which it is. */
const STAND = 15;

/** Is the cook busy all that time? Told by the verb nearest before the time, else by its length. */
export function kindOfTime(tokens: readonly Token[], start: number, minutes: number): "active" | "waiting" {
  const text = tokens.map((t) => t.text);
  const constant = ["constantly", "continuously"].some((w) => text.includes(w)) && text.includes("stirring");
  if (constant) return "active";
  for (let i = tokens.length - 1; i >= 0; i--) {
    const t = tokens[i];
    if (t === undefined || t.start >= start) continue;
    if (WAITING.has(t.text)) return "waiting";
    if (ACTIVE.has(t.text)) return minutes > 2 * STAND ? "waiting" : "active";
  }
  return minutes > STAND ? "waiting" : "active";
}
