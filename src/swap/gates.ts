import type { Ingredient } from "../catalogue/index.js";
import type { Refusal, RoleId } from "../types.js";
import { dose } from "../dose/index.js";
import type { Ask } from "./ask.js";

/** What a job cannot do without: asked of a stand-in only when the missing ingredient has it. */
const NEEDS: Readonly<Partial<Record<RoleId, readonly string[]>>> = {
  foam: ["foams"],
  "gelling agent": ["gels"],
  leavener: ["lifts"],
  emulsifier: ["emulsifies"],
};
const SETS: readonly string[] = ["sets on heating", "gelatinises", "gels"];
/** What gels on cooling is a liquid in the oven. */
const SETS_HOT: readonly string[] = ["sets on heating", "gelatinises"];
/** Notes nobody wants in a savoury dish that had none, and in a sweet one. */
const NOT_SAVOURY: readonly string[] = ["banana", "vanilla", "chocolate", "coffee", "rose"];
const NOT_SWEET: readonly string[] = [
  "fish",
  "marine",
  "allium",
  "mustard heat",
  "cured pork",
  "meat",
  "liver",
  "game",
  "blue cheese",
  "smoke",
  "ferment",
  "chilli heat",
  "tomato",
];
const LONG: readonly string[] = ["braise", "stew", "slow cooker"];
const FAST: readonly string[] = ["stir-fry", "fry", "grill"];
const COLD: readonly string[] = ["raw", "set cold"];
const HOT: readonly string[] = ["simmer", "stew", "braise", "fry", "stir-fry", "deep-fry", "grill", "roast"];
const isHot = (technique: Ask["technique"]): boolean =>
  technique !== undefined && (HOT.includes(technique) || technique === "bake");
const THICK = "thickens cold";
const EATEN: readonly string[] = ["main protein", "bulk vegetable", "starch base"];
const DRY: readonly string[] = ["grill", "fry", "stir-fry", "roast"];
const CURED: readonly string[] = ["salt-cured", "cured"];
const MELT: readonly string[] = ["bake", "grill", "fry"];

export interface Gate {
  readonly because: Refusal["because"];
  readonly what: string;
  readonly detail: string;
}
const spoils = (what: string, detail: string): Gate => ({ because: "spoils the dish", what, detail });

/** The first yes/no fact that rules a stand-in out of this dish; undefined when none does. Scores come after. */
export function gateFor(ask: Ask, use: Ingredient): Gate | undefined {
  return unlessTold(ask, [use], cannotDo(ask, [use])) ?? unlessTold(ask, [use], unfit(ask, use));
}
/** What a table may overrule when it speaks of the very dish: what is safe, raw or of another kind is not among it. */
const TOLD: readonly string[] = ["sweet", "dry", "thickens cold", "emulsifies", "sets on heating"];
/**
 * Yogurt makes no emulsion, but dresses a salad in place of mayonnaise; orange with lime is sweet, but is what cooks marinate with when bitter
 * oranges are not to be had. Where a table names just this for just this dish, the general rule gives way.
 */
function unlessTold(ask: Ask, uses: readonly Ingredient[], gate: Gate | undefined): Gate | undefined {
  if (gate?.because !== "spoils the dish" || ask.setting === "" || !TOLD.includes(gate.what)) return gate;
  const setting = ask.setting.toLowerCase();
  const told = ask.known.some(
    (k) =>
      k.edge.context?.split(/[,;]/).some((dish) => dish.trim() !== "" && setting.includes(dish.trim().toLowerCase())) &&
      k.uses.length === uses.length &&
      k.uses.every((u) => uses.some((use) => use.id === u.ingredient.id)),
  );
  return told ? undefined : gate;
}
/** A part of a mixture lighter than this share gives it no body of its own: salt in shortening need not melt. */
const BODY = 0.15;
/** As {@link gateFor} for a mixture: one part able to do what the job needs is enough, but none may spoil the dish. */
export function gateForAll(
  ask: Ask,
  uses: readonly { readonly ingredient: Ingredient; readonly grams: number }[],
): Gate | undefined {
  const total = uses.reduce((sum, u) => sum + u.grams, 0);
  const parts = uses.map((u) => u.ingredient);
  const told = (gate: Gate | undefined): Gate | undefined => unlessTold(ask, parts, gate);
  return (
    told(cannotDo(ask, parts)) ??
    uses
      .map((u) =>
        told(uses.length > 1 && u.grams < BODY * total ? unsafeOrAlien(ask, u.ingredient) : unfit(ask, u.ingredient)),
      )
      .find((gate) => gate !== undefined)
  );
}

/** g water per g of what is dry, and of what is wet. */
const FLOUR = 0.2;
const EGG = 0.5;
/** g starch per g from which on what is wet is a dough or a mash. */
const MASH = 0.08;

function cannotDo(ask: Ask, uses: readonly Ingredient[]): Gate | undefined {
  const { item, store } = ask;
  const name = uses.map((use) => store.nameOf(use)).join(" with ");
  const none = (can: string): boolean => uses.every((use) => !use.can.has(can));
  // A cold dip of thin cream runs off what is dipped.
  if (ask.technique !== undefined && COLD.includes(ask.technique) && item.can.has(THICK) && none(THICK))
    return spoils(THICK, `${name} runs, where ${store.nameOf(item)} holds its own.`);
  for (const { role, weight } of ask.roles) {
    if (weight < (role === "leavener" ? 0.5 : 0.7)) continue;
    for (const need of NEEDS[role] ?? []) {
      if (item.can.has(need) && none(need)) return spoils(need, `${name} does not do what the ${role} must: ${need}.`);
    }
    // Yeast wants hours that a batter with powder is not given, and the other way round.
    const yeast = (i: Ingredient): boolean => i.origin.has("leavening yeast");
    if (role === "leavener" && role === ask.roles[0]?.role && yeast(item) !== uses.some(yeast))
      return spoils(
        "lifts",
        yeast(item) ? `${name} is no yeast: this dough rises slowly.` : `${name} needs time to rise.`,
      );
    // A custard is what it is because something in it sets.
    if (
      role === "structure" &&
      role === ask.roles[0]?.role &&
      item.can.has("sets on heating") &&
      !uses.some((use) => (isHot(ask.technique) ? SETS_HOT : SETS).some((can) => use.can.has(can)))
    )
      return spoils("sets on heating", `${name} does not set when heated.`);
    // Flour takes up what is wet in a dough; eggs would have to be eaten dry.
    if (
      role === "structure" &&
      role === ask.roles[0]?.role &&
      dose(store, item, "water") < FLOUR &&
      uses.every((use) => dose(store, use, "water") > EGG && !(dose(store, use, "starch") > MASH))
    )
      return spoils("dry", `${name} is wet: it takes up nothing, as ${store.nameOf(item)} must.`);
    if (
      role === "structure" &&
      item.can.has("forms gluten") &&
      uses.every((use) => use.cannot.has("forms gluten")) &&
      /\b(bread|pizza|pasta)\b/.test(ask.setting.toLowerCase())
    )
      return spoils("forms gluten", `${name} forms no gluten, which holds this dough.`);
  }
  return undefined;
}

function unfit(ask: Ask, use: Ingredient): Gate | undefined {
  const { item, technique, store } = ask;
  const name = store.nameOf(use);
  if (technique !== undefined) {
    if (
      HOT.includes(technique) &&
      item.can.has("holds shape") &&
      use.cannot.has("holds shape") &&
      EATEN.includes(ask.roles[0]?.role ?? "")
    )
      return spoils("holds shape", `${name} does not hold its shape.`);
    if (
      DRY.includes(technique) &&
      CURED.some((w) => use.state.includes(w)) &&
      !CURED.some((w) => item.state.includes(w)) &&
      !use.ready &&
      EATEN.includes(ask.roles[0]?.role ?? "")
    )
      return spoils("cured", `${name} is cured: a hot pan or grill makes it hard and far too salty.`);
    if (technique === "whip" && item.can.has("dissolves") && use.cannot.has("dissolves"))
      return spoils("dissolves", `${name} does not dissolve when whipped.`);
    if (FAST.includes(technique) && item.can.has("cooks in minutes") && use.cannot.has("cooks in minutes"))
      return { because: "technique", what: technique, detail: `${name} needs longer than a ${technique} gives it.` };
    if (MELT.includes(technique) && item.can.has("melts") && use.cannot.has("melts") && !isMain(ask))
      return spoils("melts", `${name} does not melt.`);
    const raw = unsafeOrAlien(ask, use);
    if (raw?.because === "technique") return raw;
    // Fish and other things done in minutes go in at the end (see prep); what is neither quick nor lasting has no place in a braise.
    if (
      LONG.includes(technique) &&
      item.can.has("survives long heat") &&
      use.cannot.has("survives long heat") &&
      !use.can.has("cooks in minutes") &&
      isMain(ask)
    )
      return {
        because: "technique",
        what: technique,
        detail: `${name} falls apart or toughens in a long ${technique}.`,
      };
  }
  // Steak for paneer is another dinner; whoever wants that has it in the house, or a table says so.
  const meat = (i: Ingredient): boolean => ANIMAL.some((o) => i.origin.has(o));
  if (
    ask.roles[0]?.role === "main protein" &&
    meat(use) &&
    !meat(item) &&
    ask.have?.has(use.id) !== true &&
    !ask.known.some((k) => k.uses.some((u) => u.ingredient.id === use.id))
  )
    return spoils("meat", `${name} would make another dish of it.`);
  // Egg poured in for cream sets into scraps; what foams and binds as egg does (bean liquid) is used where egg was.
  if (
    use.origin.has("egg") &&
    use.can.has("sets on heating") &&
    !item.can.has("sets on heating") &&
    !item.can.has("binds") &&
    RICH.includes(ask.roles[0]?.role ?? "")
  )
    return spoils("sets on heating", `${name} sets when heated, which ${store.nameOf(item)} does not.`);
  return alien(ask, use);
}
const ANIMAL: readonly string[] = [
  "beef",
  "pork",
  "lamb",
  "goat",
  "game",
  "poultry",
  "horse",
  "fish",
  "crustacean",
  "mollusc",
  "egg",
];
const RICH: readonly string[] = ["liquid", "enrichment", "foam"];

/** What no part may do, however little of it there is. */
function unsafeOrAlien(ask: Ask, use: Ingredient): Gate | undefined {
  const { item, technique, store } = ask;
  if (
    technique !== undefined &&
    COLD.includes(technique) &&
    use.cannot.has("edible uncooked") &&
    !item.cannot.has("edible uncooked")
  )
    return { because: "technique", what: technique, detail: `${store.nameOf(use)} is not eaten uncooked.` };
  return alien(ask, use);
}

const isMain = (ask: Ask): boolean => ask.roles[0]?.role === "main protein";

const FLESH: readonly string[] = ["beef", "pork", "lamb", "goat", "game", "poultry", "horse"];
/** Notes the stand-in would bring that neither the missing ingredient nor the rest of the dish has. */
export function gainedNotes(ask: Ask, use: Ingredient): string[] {
  // Meat for meat brings no new note, however the two are seasoned.
  const flesh = FLESH.some((o) => ask.item.origin.has(o));
  return use.dominant.filter(
    (note) =>
      !ask.item.dominant.includes(note) &&
      !(note === "meat" && flesh) &&
      !ask.dish.some((line) => line.ingredient.dominant.includes(note)),
  );
}

/** What would spoil the taste of the dish. */
export function alien(ask: Ask, use: Ingredient): Gate | undefined {
  const gained = gainedNotes(ask, use);
  const name = ask.store.nameOf(use);
  // A tray of fish for a tray of meat is a choice; fish in a cake is not.
  const list = ask.taste === "savoury" ? NOT_SAVOURY : ask.taste === "sweet" ? NOT_SWEET : [];
  const bad = gained.find((note) => list.includes(note));
  if (bad !== undefined) return spoils(bad, `${name} would make a ${ask.taste} dish taste of ${bad}.`);
  if (
    ask.taste === "savoury" &&
    gained.includes("sweet") &&
    ask.roles[0]?.role !== "sweetener" &&
    !use.roles.some((r) => r.role === ask.roles[0]?.role && r.weight >= 0.7)
  )
    return spoils("sweet", `${name} would make a savoury dish sweet.`);
  // A baked or sweet-leaning ingredient asked about with no dish: what is savoury by nature stays out.
  if (
    ask.taste === "either" &&
    !ask.item.dominant.some((n) => NOT_SWEET.includes(n)) &&
    ask.roles.some((r) => ["sweetener", "structure", "leavener"].includes(r.role) && r.weight >= 0.5)
  ) {
    const wrong = gained.find((note) => NOT_SWEET.includes(note) && note !== "smoke");
    if (wrong !== undefined && !use.roles.some((r) => r.role === ask.roles[0]?.role && r.weight >= 0.9))
      return spoils(wrong, `${name} would taste of ${wrong}.`);
  }
  return undefined;
}
