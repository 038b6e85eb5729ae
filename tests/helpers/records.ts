// A data folder of a few records made by hand, for what compiles and checks data: clean as it stands, so that one change breaks one rule.
import { compile, type Authored, type Problem } from "../../src/catalogue/authoring/compile.js";
import { compositionLookup } from "../../src/catalogue/authoring/composition.js";
import { checkAll } from "../../src/catalogue/authoring/rules/index.js";
import {
  FoodRecord,
  KindRecord,
  PairingRecord,
  ProcedureRecord,
  SwapRecord,
} from "../../src/catalogue/authoring/schema.js";
import { Sources, Terms } from "../../src/catalogue/authoring/terms.js";
import type { Flat } from "../../src/catalogue/compiled.js";

const scale = { unit: "g", min: 0, max: 100 };
export const TERMS: Terms = Terms.parse({
  role: {
    "main protein": { carrier: "served weight", text: "the protein the dish is built on" },
    "salt seasoning": { carrier: "salt", text: "saltiness" },
    acid: { carrier: "acid", text: "sourness" },
    garnish: { carrier: "volume", text: "finish for looks" },
    enrichment: { carrier: "fat", text: "richness" },
  },
  "extra role": {},
  technique: ["boil", "fry"],
  preservation: {
    fresh: "J0003",
    pantry: "J0003",
    frozen: "J0136",
    dried: "J0116",
    "salt-cured": "H0173",
    canned: "J0123",
    smoked: "H0172",
    pickled: "H0190",
  },
  heat: { cooked: "F0014" },
  form: { ground: "E0106" },
  unit: ["g", "cup", "tsp", "piece"],
  slot: ["protein"],
  texture: ["hardness"],
  "texture stage": ["raw", "cooked"],
  "judged flavour": ["bitter"],
  aroma: ["fishy", "vinegar"],
  note: ["fish"],
  capability: ["melts", "ready to eat"],
  origin: ["fish", "mineral", "plant"],
  "starch kind": ["wheat"],
  "acid kind": ["acetic"],
  "pungency kind": ["capsaicin"],
  tradition: ["Iberian"],
  tag: { liver: "rich in vitamin A", "low lactose": "a trace", "high lactose": "more" },
  figure: {
    energy: { unit: "kcal", min: 0, max: 910 },
    water: scale,
    protein: scale,
    fat: scale,
    carbohydrate: scale,
    sugars: scale,
    ash: scale,
    alcohol: scale,
    salt: scale,
    acid: scale,
    sodium: { unit: "mg", min: 0, max: 45000 },
    potassium: { unit: "mg", min: 0, max: 60000 },
    "carbon dioxide": { unit: "g", min: 0, max: 60 },
  },
});
export const SOURCES: Sources = Sources.parse({
  "usda-sr28": { title: "A table of composition", publisher: "An agency", year: 2016 },
  handbook: { title: "A handbook" },
});

const USDA = [
  "ndb\tdescription\trefuse_percent\twater_g\tprotein_g\tfat_g\tcarbohydrate_g\tsugars_g\tash_g\tsodium_mg\tpotassium_mg\tlangual",
  "15015\tFish, cod, raw\t0\t81.22\t17.81\t0.67\t0\t0\t1.16\t54\t413\tF0003 G0003 H0003 J0001",
  "15018\tFish, cod, dried and salted\t0\t16.14\t62.82\t2.37\t0\t0\t21.9\t7027\t1458\tF0003 G0003 H0173 J0116",
  "15900\tFish, cod, canned\t0\t78\t20\t0.8\t0\t0\t1.2\t400\t300\tF0014 G0003 H0367 J0123",
  "15901\tFish, cod, frozen\t0\t81\t18\t0.7\t0\t0\t1.2\t60\t400\tF0003 G0003 H0003 J0136",
  "15902\tFish, cod, smoked\t0\t70\t25\t1\t0\t0\t3\t800\t400\tF0003 G0003 H0172 J0001",
  "15903\tFish, cod, boiled\t0\t76\t22\t0.9\t0\t0\t1.2\t78\t244\tF0014 G0014 H0003 J0001",
  "15904\tFish, cod, dried\t0\t16\t80\t2\t0\t0\t2\t300\t1400\tF0003 G0003 H0003 J0116",
  "02047\tSalt, table\t0\t0.2\t0\t0\t0\t0\t99.8\t38758\t8\t",
  "02053\tVinegar, distilled\t0\t94.78\t0\t0\t0.04\t0.04\t0.02\t2\t2\t",
].join("\n");
const WEIGHTS = ["ndb\tamount\tmeasure\tgrams", "15015\t1\tfillet\t231", "02047\t1\ttsp\t6", "02053\t1\tcup\t238"].join(
  "\n",
);
export const look = compositionLookup({ usda: USDA, weights: WEIGHTS, mext: "id\tname\trefuse\twater" });

const fish = { origin: ["fish"], allergens: { contains: ["fish"] }, roles: { "main protein": 1 }, aroma: { fishy: 3 } };
export interface Records {
  kinds: Record<string, unknown>[];
  foods: Record<string, unknown>[];
  procedures: Record<string, unknown>[];
  swaps: Record<string, unknown>[];
  pairings: Record<string, unknown>[];
  tables: Record<string, unknown>;
}
/** The clean sample, fresh each time: change what the test is about. */
export const clean = (): Records => ({
  kinds: [
    { kind: "food" },
    { kind: "white fish", parent: "food", slot: "protein", ...fish },
    {
      kind: "salt",
      parent: "food",
      origin: ["mineral"],
      roles: { "salt seasoning": 1 },
      texture: { raw: { hardness: 5 } },
    },
    {
      kind: "vinegar",
      parent: "food",
      origin: ["plant"],
      roles: { acid: 1 },
      acidKind: "acetic",
      aroma: { vinegar: 6 },
    },
  ],
  foods: [
    {
      food: "cod",
      kind: "white fish",
      names: { en: ["cod"], pt: ["bacalhau fresco"] },
      states: {
        fresh: {
          default: true,
          composition: "usda-sr28:15015",
          measures: { piece: { g: 231, from: "usda-sr28", at: "1 fillet" } },
          usual: "piece",
          cooked: { v: 0.78, from: "judgement" },
        },
        "salt-cured": {
          names: { en: ["salt cod"] },
          composition: "usda-sr28:15018",
          cooked: { v: 0.9, from: "judgement" },
          ready: { by: ["desalt"], yield: { v: 1.3, from: "judgement" }, salt: { v: 2.5, from: "judgement" } },
        },
      },
    },
    {
      food: "salt",
      kind: "salt",
      names: { en: ["salt", "table salt"] },
      states: {
        pantry: { composition: "usda-sr28:02047", measures: { tsp: { g: 6, from: "usda-sr28", at: "1 tsp" } } },
      },
    },
    {
      food: "white-vinegar",
      kind: "vinegar",
      names: { en: ["white vinegar"], "en-GB": ["distilled vinegar"] },
      formerIds: { "spirit-vinegar/pantry": "white-vinegar/pantry" },
      states: {
        pantry: {
          composition: "usda-sr28:02053",
          figures: { acid: { v: 5.3, from: "judgement" } },
          measures: { cup: { g: 238, from: "usda-sr28", at: "1 cup" } },
        },
      },
    },
  ],
  procedures: [
    {
      id: "desalt",
      name: "desalting",
      skip: "Skip the soak.",
      add: "Soak it.",
      minutes: { active: 5, waiting: 1440, from: "common practice" },
    },
  ],
  swaps: [
    {
      id: "cod-for-salt-cod",
      replaces: { food: "cod/salt-cured", amount: "100 g" },
      uses: [
        { food: "cod/fresh", amount: "130 g" },
        { food: "salt/pantry", amount: "1/2 tsp" },
      ],
      from: ["handbook:page 3"],
    },
  ],
  pairings: [
    {
      with: ["cod", "white-vinegar"],
      basis: "tradition",
      tradition: "Iberian",
      why: "Vinegar goes over the fried fish.",
      from: ["common practice"],
    },
  ],
  tables: {
    portions: { protein: { portion: 85, classes: [{ kinds: ["white fish"], per: 85 }] }, tolerance: 0.9 },
    jobs: { frying: { roles: { "main protein": 1 }, technique: "fry", taste: "savoury" } },
    basics: { basics: ["salt/pantry", "white-vinegar/pantry"], plain: ["salt/pantry"] },
    everyday: { kitchen: ["salt/pantry"], supermarket: ["white-vinegar/pantry"] },
  },
});

/** Parsed as the compiler parses files, each kind of record in a file of its own. */
export function authoredOf(records: Records): Authored {
  return {
    terms: TERMS,
    sources: SOURCES,
    kinds: records.kinds.map((k) => ({ file: "kinds.yaml", data: KindRecord.parse(k) })),
    foods: records.foods.map((f) => ({ file: `${String(f["food"])}.yaml`, data: FoodRecord.parse(f) })),
    procedures: records.procedures.map((p) => ({ file: "procedures.yaml", data: ProcedureRecord.parse(p) })),
    swaps: records.swaps.map((s) => ({ file: "swaps.yaml", data: SwapRecord.parse(s) })),
    pairings: records.pairings.map((p) => ({ file: "pairings.yaml", data: PairingRecord.parse(p) })),
    tables: records.tables,
  };
}
export const ALLERGEN_LIST = ["fish", "wheat", "gluten cereals"];
export const compiledOf = (records: Records): { authored: Authored; flat: Flat } => {
  const authored = authoredOf(records);
  return { authored, flat: compile(authored, look, ALLERGEN_LIST) };
};
/** What all rules find. */
export const problemsOf = (records: Records): Problem[] => checkAll({ ...compiledOf(records), look });
