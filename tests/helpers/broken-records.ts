// What breaks one rule each: a change to the clean sample, and the one problem it must lead to.
import type { Records } from "./records.js";

export type Loose = Record<string, never>;
export const food = (records: Records, id: string): Loose => records.foods.find((f) => f["food"] === id) as Loose;
export const state = (records: Records, id: string): Loose => {
  const [name = "", key = ""] = id.split("/");
  return (food(records, name)["states"] as unknown as Record<string, Loose>)[key] as Loose;
};
export const set = (at: Loose, fields: Record<string, unknown>): void => void Object.assign(at, fields);

export interface Case {
  /** What is wrong, for the title. */
  readonly when: string;
  readonly breaks: (records: Records) => void;
  /** file and record of the one problem. */
  readonly at: readonly [file: string, record: string];
  /** What the message must say: the trouble and the mend. */
  readonly says: readonly string[];
}
const foodCase = (when: string, id: string, breaks: Case["breaks"], ...says: string[]): Case => ({
  when,
  breaks,
  at: [`${id.split("/")[0] ?? ""}.yaml`, id],
  says,
});

const DRIED = { parts: { "cod/fresh": 1 }, water: { v: 16, from: "judgement" } };
/** Dried cod, calculated as said. */
const calculatedCase = (when: string, calculated: Record<string, unknown>, ...says: string[]): Case =>
  foodCase(
    when,
    "cod/dried",
    (r) => {
      addState(r, "dried", "none");
      set(state(r, "cod/dried"), { calculated });
    },
    ...says,
  );

const PARTS = "parts of one ingredient";
const pairingCase = (when: string, fields: Record<string, unknown>, record: string, ...says: string[]): Case => ({
  when,
  breaks: (r) => void Object.assign(r.pairings[0] as object, fields),
  at: ["pairings.yaml", record],
  says,
});

const MADE = "cod/salt-cured";
const BRINE = { "salt/pantry": 0.2, "cod/fresh": 0.8 };
const makeupCase = (when: string, table: Record<string, unknown>, record: string, ...says: string[]): Case => ({
  when,
  breaks: (r) => void (r.tables["makeup"] = table),
  at: ["vocabulary/makeup.yaml", record],
  says,
});

export const CASES: Readonly<Record<string, readonly Case[]>> = {
  "known words": [
    pairingCase(
      "a pairing names a tradition nobody has",
      { tradition: "Iberan" },
      "cod + white-vinegar",
      '"Iberan" is no tradition',
      "Nearest: Iberian",
    ),
    foodCase(
      "a capability is misspelled",
      "cod/fresh",
      (r) => set(state(r, "cod/fresh"), { can: ["meltz"] }),
      '"meltz" is no capability',
      "Nearest: melts",
      "data/vocabulary/terms.yaml",
    ),
    foodCase(
      "a level is finer than anyone judges",
      "cod",
      (r) => set(food(r, "cod"), { aroma: { fishy: 3.3 } }),
      "fishy is 3.3",
      "half steps",
    ),
    foodCase(
      "a state is not made of state words",
      "salt/pantry-lumpy",
      (r) => {
        const states = food(r, "salt")["states"] as unknown as Record<string, unknown>;
        states["pantry-lumpy"] = { ...(states["pantry"] as object) };
      },
      '"pantry-lumpy" is not made of state words',
      "preservation, then heat, then form",
    ),
    foodCase(
      "it both can and cannot",
      "cod",
      (r) => set(food(r, "cod"), { can: ["melts"], cannot: ["melts"] }),
      "says both can and cannot: melts",
    ),
    foodCase(
      "`usual` is no measure of it",
      "cod/fresh",
      (r) => set(state(r, "cod/fresh"), { usual: "cup" }),
      'usual: "cup" is not among its measures',
    ),
  ],
  references: [
    pairingCase(
      "a pairing names a food that is not there",
      { with: ["cod", "white-vinegr"] },
      "cod + white-vinegr",
      '"white-vinegr" is neither a food, a part nor an ingredient',
      "Nearest: white-vinegar",
    ),
    pairingCase(
      "a pairing cites what is not listed",
      { from: ["handbok"] },
      "cod + white-vinegar",
      'Source "handbok"',
      "Nearest: handbook",
    ),
    foodCase(
      "a composition record does not exist",
      "cod/salt-cured",
      (r) => set(state(r, "cod/salt-cured"), { composition: "usda-sr28:99999" }),
      '"usda-sr28:99999" is in neither table',
      "with leading zeros, in quotes",
    ),
    foodCase(
      "a source is unknown",
      "white-vinegar/pantry",
      (r) => set(state(r, "white-vinegar/pantry"), { figures: { acid: { v: 5, from: "handbok" } } }),
      'Source "handbok" is not in data/sources.yaml',
      "Nearest: handbook",
    ),
    foodCase(
      "it becomes what is not there",
      "cod/fresh",
      (r) =>
        set(state(r, "cod/fresh"), { becomes: [{ to: "dried", by: "desalt", yield: { v: 0.3, from: "judgement" } }] }),
      'becomes "cod/dried", which is not in the catalogue',
    ),
    {
      when: "a swap uses what is not there",
      breaks: (r) => set(r.swaps[0] as Loose, { uses: [{ food: "cod/fresk" }] }),
      at: ["swaps.yaml", "cod-for-salt-cod"],
      says: ['"cod/fresk" is not in the catalogue', "Nearest: cod/fresh"],
    },
    {
      when: "a procedure is written twice",
      breaks: (r) => void r.procedures.push({ ...(r.procedures[0] as object) }),
      at: ["procedures.yaml", "desalt"],
      says: ["already in procedures.yaml"],
    },
  ],
  naming: [
    foodCase(
      "a name means two things",
      "white-vinegar/pantry",
      (r) => set(food(r, "white-vinegar"), { names: { en: ["white vinegar", "Table salt"] } }),
      'The en name "Table salt" already means salt/pantry (salt.yaml)',
      "Take it off one of them, or qualify it",
    ),
    foodCase(
      "a name holds a bar",
      "salt/pantry",
      (r) => set(food(r, "salt"), { names: { en: ["salt", "fine|coarse"] } }),
      'The name "fine|coarse" holds a bar',
      "Write it plainly",
    ),
    foodCase(
      "a name holds a line break",
      "salt/pantry",
      (r) => set(state(r, "salt/pantry"), { names: { fr: ["sel\nfin"] } }),
      'The name "sel\\nfin" holds a bar, a line break',
    ),
    foodCase(
      "the English name is missing",
      "salt",
      (r) => set(food(r, "salt"), { names: { fr: ["sel"] } }),
      "An `en` name is missing",
    ),
    foodCase(
      "two states are the default",
      "cod",
      (r) => set(state(r, "cod/salt-cured"), { default: true }),
      "Two defaults: fresh, salt-cured",
      "one state only",
    ),
  ],
  ranges: [
    foodCase(
      "a figure is out of the believable",
      "white-vinegar/pantry",
      (r) => set(state(r, "white-vinegar/pantry"), { figures: { acid: { v: 530, from: "judgement" } } }),
      "acid is 530 g; believable is 0 to 100",
      "Check the unit",
    ),
    foodCase(
      "more than all of it is edible",
      "salt/pantry",
      (r) => set(state(r, "salt/pantry"), { edible: { v: 1.2, from: "judgement" } }),
      "edible is 1.2",
      "between 0 and 1",
    ),
    foodCase(
      "it grows past belief in the pot",
      "cod/fresh",
      (r) => set(state(r, "cod/fresh"), { cooked: { v: 9, from: "judgement" } }),
      "cooked is 9",
      "between 0.2 and 6",
    ),
  ],
  calculated: [
    calculatedCase(
      "shares do not make the whole",
      { parts: { "cod/fresh": 0.9, "salt/pantry": 0.05 }, from: "judgement" },
      "shares sum to 0.95",
    ),
    calculatedCase(
      "a part is not in the catalogue",
      { parts: { "cod/frsh": 0.9, "salt/pantry": 0.1 }, from: "judgement" },
      '"cod/frsh" is neither an ingredient nor a record',
      "Nearest: cod/fresh",
    ),
    foodCase(
      "a part has no published composition",
      "cod/dried",
      (r) => {
        addState(r, "smoked", "none");
        addState(r, "dried", "none");
        set(state(r, "cod/dried"), {
          calculated: { parts: { "cod/smoked": 0.9, "salt/pantry": 0.1 }, from: "judgement" },
        });
      },
      'part "cod/smoked" has no published composition',
    ),
    calculatedCase(
      "one part is the record under another name",
      { parts: { "usda-sr28:15015": 1 } },
      "say how much water it holds, or take the record itself",
    ),
    calculatedCase(
      "nobody says whose proportions they are",
      { parts: { "cod/fresh": 0.9, "salt/pantry": 0.1 } },
      "say `from`, whose proportions they are",
    ),
    calculatedCase(
      "it would be all water",
      { parts: { "cod/fresh": 1 }, water: { v: 100, from: "judgement" } },
      "it lies between 0 and 100",
    ),
    calculatedCase(
      "no soaking takes up so much water",
      { parts: { "cod/fresh": 1 }, water: { v: 98, from: "judgement" } },
      "water goes from 81.2 to 98 g per 100 g, which makes 9.4 g of each gram",
    ),
    foodCase(
      "a record was published",
      "cod/dried",
      (r) => {
        addState(r, "dried", "usda-sr28:15904");
        set(state(r, "cod/dried"), { calculated: DRIED });
      },
      "has records and is calculated too",
      "keep one",
    ),
    foodCase(
      "part of the sum stands there by hand",
      "cod/dried",
      (r) => {
        addState(r, "dried", "none");
        set(state(r, "cod/dried"), { calculated: DRIED, figures: { protein: { v: 79, from: "judgement" } } });
      },
      "protein stands there by hand",
      "would not add up",
    ),
    foodCase(
      "it is part of itself",
      "cod/dried",
      (r) => {
        addState(r, "dried", "none");
        set(state(r, "cod/dried"), { calculated: { parts: { "cod/dried": 1 }, water: DRIED.water } });
      },
      "goes in a circle: cod/dried < cod/dried",
    ),
    foodCase(
      "it is too many steps from records",
      "cod/canned",
      (r) => {
        for (const [name, part] of [
          ["dried", "cod/fresh"],
          ["frozen", "cod/dried"],
          ["canned", "cod/frozen"],
        ] as const) {
          addState(r, name, "none");
          set(state(r, `cod/${name}`), { calculated: { parts: { [part]: 1 }, water: DRIED.water } });
        }
      },
      "is 3 calculations away from records; 2 at most",
      "Put the parts of its parts in their place",
    ),
  ],
  sums: [
    foodCase(
      "the parts do not make the whole",
      "cod/fresh",
      (r) => set(state(r, "cod/fresh"), { figures: { water: { v: 60, from: "judgement" } } }),
      "= 79.6 g of 100",
      "Check the record, or the figures written by hand",
    ),
    foodCase(
      "there is more sugar than carbohydrate",
      "white-vinegar/pantry",
      (r) =>
        set(state(r, "white-vinegar/pantry"), {
          figures: { acid: { v: 5, from: "judgement" }, sugars: { v: 12, from: "judgement" } },
        }),
      "sugars (12) is more than carbohydrate (0.04)",
    ),
  ],
  energy: [
    foodCase(
      "energy of another food",
      "cod/fresh",
      (r) => set(state(r, "cod/fresh"), { figures: { energy: { v: 200, from: "judgement" } } }),
      "energy is 200 kcal, but its fat, protein, carbohydrate and alcohol make 63 to 85",
      "give energy by hand",
    ),
  ],
  measures: [
    foodCase(
      "a cited weight is not in the table",
      "cod/fresh",
      (r) => set(state(r, "cod/fresh"), { measures: { piece: { g: 180, from: "usda-sr28" } } }),
      "piece = 180 g is not a household weight of usda-sr28:15015",
      "1 fillet = 231 g",
    ),
    foodCase(
      "a cup weighs more than any food",
      "white-vinegar/pantry",
      (r) => set(state(r, "white-vinegar/pantry"), { measures: { cup: { g: 800, from: "judgement" } } }),
      "cup = 800 g is 3.38 g/ml",
      "between 0.02 and 1.7",
    ),
  ],
  carriers: [
    foodCase(
      "the figure a role needs is missing",
      "white-vinegar/pantry",
      (r) => set(state(r, "white-vinegar/pantry"), { figures: {} }),
      "has the role acid (1) but no figure for acid",
      "judge it and say so",
    ),
    foodCase(
      "it fills a slot and nobody knows its served weight",
      "cod/fresh",
      (r) => delete (state(r, "cod/fresh") as Record<string, unknown>)["cooked"],
      "fills the protein slot but `cooked` is missing",
      "1 when eaten as it is",
    ),
    foodCase(
      "wheat without its cereal",
      "cod/fresh",
      (r) => set(state(r, "cod/fresh"), { allergens: { contains: ["wheat"] } }),
      "contains wheat but not gluten cereals",
    ),
  ],
  treatment: [
    foodCase(
      "canned, from a raw record",
      "cod/canned",
      (r) => addState(r, "canned", "usda-sr28:15015"),
      'is canned, but usda-sr28:15015 ("Fish, cod, raw") was raw',
      "Take the record of this state, or rename the state",
    ),
    ...(
      [
        ["fresh", "15900", "canned"],
        ["fresh", "15901", "frozen"],
        ["fresh", "15902", "smoked"],
        ["fresh", "15903", "cooked"],
        ["fresh", "15904", "dried"],
        ["frozen", "15904", "dried"],
        ["frozen", "15903", "cooked"],
        ["frozen-cooked", "15015", "raw"],
        ["canned", "15901", "raw"],
        ["canned", "15904", "raw"],
        ["dried", "15015", "not dried"],
        ["dried", "15900", "canned"],
        ["dried", "15901", "frozen"],
        ["smoked", "15903", "not smoked"],
        ["salt-cured", "15903", "not salted"],
        ["pickled", "15903", "not pickled"],
      ] as const
    ).map(([name, record, was]) =>
      foodCase(
        `${name}, from a record that was ${was}`,
        `cod/${name}`,
        (r) => addState(r, name, `usda-sr28:${record}`),
        `was ${was} when it was analysed`,
      ),
    ),
  ],
  tastes: [
    foodCase(
      "a vinegar salts",
      "white-vinegar/pantry",
      (r) => set(state(r, "white-vinegar/pantry"), { roles: { acid: 1, "salt seasoning": 0.5 } }),
      "is used as salt seasoning (0.5) and hardly tastes salty",
      "lower the weight",
    ),
    foodCase(
      "a vinegar with a little salt salts first",
      "white-vinegar/pantry",
      (r) =>
        set(state(r, "white-vinegar/pantry"), {
          roles: { "salt seasoning": 0.9, acid: 0.5 },
          figures: { acid: { v: 5.3, from: "judgement" }, sodium: { v: 500, from: "judgement" } },
        }),
      "weighs salt seasoning 0.9 above acid 0.5, yet it is 8.3 times as sour as salty",
      "order the roles by what it tastes of",
    ),
  ],
  richness: [
    foodCase(
      "what holds no fat enriches",
      "white-vinegar/pantry",
      (r) => set(state(r, "white-vinegar/pantry"), { roles: { acid: 1, enrichment: 0.5 } }),
      "weighs enrichment 0.5 and holds 0 g fat",
      "enrichment below 0.5",
    ),
  ],
  thawed: [
    foodCase(
      "what was frozen garnishes",
      "white-vinegar/frozen",
      (r) => {
        const states = food(r, "white-vinegar")["states"] as unknown as Record<string, Loose>;
        states["frozen"] = { ...states["pantry"], roles: { acid: 1, garnish: 0.5 } } as unknown as Loose;
        set(states["pantry"] as Loose, { default: true });
      },
      "is frozen and weighs garnish 0.5",
      "garnish at most 0.3",
    ),
  ],
  melting: [
    foodCase(
      "what melts stays as hard",
      "cod/fresh",
      (r) => set(state(r, "cod/fresh"), { can: ["melts"], texture: { raw: { hardness: 3 }, cooked: { hardness: 3 } } }),
      "its hardness is 3 raw and 3 cooked",
      "judge the cooked texture",
    ),
  ],
  "milk sugar": [
    ...(
      [
        ["low lactose", 4, "is low in lactose and holds 4 g sugars"],
        ["high lactose", 0.1, "is high in lactose and holds 0.1 g sugars"],
      ] as const
    ).map(([tag, v, says]) =>
      foodCase(
        `a cheese tagged ${tag}`,
        "white-vinegar/pantry",
        (r) => {
          r.kinds.push({ kind: "cheese", parent: "vinegar" });
          set(food(r, "white-vinegar"), { kind: "cheese", tags: [tag] });
          set(state(r, "white-vinegar/pantry"), {
            figures: { acid: { v: 5.3, from: "judgement" }, sugars: { v, from: "judgement" } },
          });
        },
        says,
        "take the tag off",
      ),
    ),
  ],
  salt: [
    foodCase(
      "salt by hand is not what the sodium makes",
      "cod/salt-cured",
      (r) => set(state(r, "cod/salt-cured"), { figures: { salt: { v: 8, from: "judgement" } } }),
      "salt is 8 g, but its sodium (7027 mg) makes 17.85 g",
      "Leave salt out",
    ),
  ],
  orphans: [
    {
      when: "a kind has no members",
      breaks: (r) => void r.kinds.push({ kind: "blue fish", parent: "white fish" }),
      at: ["kinds.yaml", "blue fish"],
      says: ["neither members nor kinds under it", "take it out"],
    },
  ],
  "idle procedures": [
    {
      when: "nothing asks for a procedure",
      breaks: (r) => void r.procedures.push({ ...(r.procedures[0] as object), id: "whistle" }),
      at: ["procedures.yaml", "whistle"],
      says: ["Name it under `ready` or `becomes` of a food, or take it out"],
    },
  ],
  "portion classes": [
    {
      when: "a class names a kind that is not there",
      breaks: (r) =>
        void (r.tables["portions"] = { protein: { portion: 85, classes: [{ kinds: ["whitefish"], per: 85 }] } }),
      at: ["vocabulary/portions.yaml", "protein"],
      says: ['Kind "whitefish" is unknown', "Nearest: white fish"],
    },
  ],
  jobs: [
    {
      when: "a role is unknown",
      breaks: (r) => void (r.tables["jobs"] = { frying: { roles: { acidity: 1 } } }),
      at: ["vocabulary/jobs.yaml", "frying"],
      says: ['"acidity" is no role', "Nearest: acid"],
    },
    {
      when: "a technique is unknown",
      breaks: (r) => void (r.tables["jobs"] = { frying: { technique: "frying" } }),
      at: ["vocabulary/jobs.yaml", "frying"],
      says: ['"frying" is no technique', "Nearest: fry"],
    },
    {
      when: "a weight is no share",
      breaks: (r) => void (r.tables["jobs"] = { souring: { roles: { acid: 3 } } }),
      at: ["vocabulary/jobs.yaml", "souring"],
      says: ["acid weighs 3", "at most 1"],
    },
    {
      when: "a key means nothing",
      breaks: (r) => void (r.tables["jobs"] = { souring: { role: { acid: 1 } } }),
      at: ["vocabulary/jobs.yaml", "souring"],
      says: ['"role" says nothing here'],
    },
    {
      when: "a taste is neither",
      breaks: (r) => void (r.tables["jobs"] = { souring: { taste: "sour" } }),
      at: ["vocabulary/jobs.yaml", "souring"],
      says: ["sweet or savoury"],
    },
  ],
  cuisines: [
    {
      when: "a tradition is unknown",
      breaks: (r) => void (r.tables["cuisines"] = { Iberrian: ["spain"] }),
      at: ["vocabulary/cuisines.yaml", "Iberrian"],
      says: ['"Iberrian" is no tradition', "Nearest: Iberian"],
    },
    {
      when: "a word is written with marks",
      breaks: (r) => void (r.tables["cuisines"] = { Iberian: ["basqué"] }),
      at: ["vocabulary/cuisines.yaml", "Iberian"],
      says: ["basqué is no word for a kitchen", "letters a to z"],
    },
    {
      when: "a word stands twice",
      breaks: (r) => void (r.tables["cuisines"] = { Iberian: ["spain", "spain"] }),
      at: ["vocabulary/cuisines.yaml", "Iberian"],
      says: ['"spain" is listed twice'],
    },
  ],
  basics: [
    {
      when: "a basic is not in the catalogue",
      breaks: (r) => void (r.tables["basics"] = { basics: ["salt/pantri"], plain: [] }),
      at: ["vocabulary/basics.yaml", "basics"],
      says: ['"salt/pantri" is not in the catalogue', "Nearest: salt/pantry"],
    },
    {
      when: "a basic is listed twice",
      breaks: (r) => void (r.tables["basics"] = { basics: ["salt/pantry", "salt/pantry"], plain: [] }),
      at: ["vocabulary/basics.yaml", "basics"],
      says: ["listed twice"],
    },
    {
      when: "a plain one is no basic",
      breaks: (r) => void (r.tables["basics"] = { basics: [], plain: ["salt/pantry"] }),
      at: ["vocabulary/basics.yaml", "plain"],
      says: ['"salt/pantry" is plain but no basic', "list it there too"],
    },
  ],
  everyday: [
    {
      when: "an ingredient is not in the catalogue",
      breaks: (r) => void (r.tables["everyday"] = { kitchen: [], supermarket: ["salt/pantri"] }),
      at: ["vocabulary/everyday.yaml", "supermarket"],
      says: ['"salt/pantri" is not in the catalogue', "Nearest: salt/pantry"],
    },
    {
      when: "an ingredient is in both lists",
      breaks: (r) => void (r.tables["everyday"] = { kitchen: ["salt/pantry"], supermarket: ["salt/pantry"] }),
      at: ["vocabulary/everyday.yaml", "supermarket"],
      says: ['"salt/pantry" is under kitchen already', "one list"],
    },
    {
      when: "an ingredient is listed twice",
      breaks: (r) => void (r.tables["everyday"] = { kitchen: ["salt/pantry", "salt/pantry"], supermarket: [] }),
      at: ["vocabulary/everyday.yaml", "kitchen"],
      says: ["listed twice"],
    },
    {
      when: "a list means nothing",
      breaks: (r) => void (r.tables["everyday"] = { kitchen: [], supermarket: [], shed: [] }),
      at: ["vocabulary/everyday.yaml", "shed"],
      says: ['"shed" says nothing here'],
    },
  ],
  makeup: [
    makeupCase("a made thing is not in the catalogue", { "brine/fresh": BRINE }, "brine/fresh", "not in the catalogue"),
    makeupCase(
      "a part is not in the catalogue",
      { [MADE]: { "salt/pantri": 0.2, "cod/fresh": 0.8 } },
      MADE,
      'part "salt/pantri" is not in the catalogue',
      "Nearest: salt/pantry",
    ),
    makeupCase("it names one part", { [MADE]: { "salt/pantry": 0.5 } }, MADE, "fewer than two parts"),
    makeupCase(
      "a share is no share",
      { [MADE]: { "salt/pantry": -0.2, "cod/fresh": 0.9 } },
      MADE,
      "a share is above 0",
    ),
    makeupCase("shares do not make 1", { [MADE]: { "salt/pantry": 0.2, "cod/fresh": 0.7 } }, MADE, "sum to 0.9"),
    makeupCase("it is made of itself", { [MADE]: { [MADE]: 0.2, "cod/fresh": 0.8 } }, MADE, "goes in a circle"),
    makeupCase(
      "it hides what is in it",
      { "white-vinegar/pantry": BRINE },
      "white-vinegar/pantry",
      "contains fish",
      "add it to its allergens",
    ),
  ],
  repeats: [
    {
      when: "a swap is there again, its parts the other way round",
      breaks: (r) => {
        const [swap] = r.swaps as unknown as [{ uses: unknown[] }];
        r.swaps.push({ ...swap, id: "again", uses: [...swap.uses].reverse() });
      },
      at: ["swaps.yaml", "again"],
      says: ["repeats cod-for-salt-cod (swaps.yaml)", "what sets them apart"],
    },
    {
      when: "a swap both ways says what one of them says already",
      breaks: (r) => {
        const common = { context: "stews", from: ["common practice"] };
        r.swaps.push({ ...common, id: "there", replaces: { food: "cod/fresh" }, uses: [{ food: "cod/salt-cured" }] });
        r.swaps.push({
          ...common,
          id: "back",
          context: "soup, stew",
          replaces: { food: "cod/salt-cured" },
          uses: [{ food: "cod/fresh" }],
          both: true,
        });
      },
      at: ["swaps.yaml", "back"],
      says: ["repeats there"],
    },
  ],
  pairings: [
    pairingCase(
      "one is paired with itself",
      { with: ["cod/fresh", "cod/fresh"], basis: PARTS },
      "cod/fresh + cod/fresh",
      "not paired with itself",
    ),
    {
      when: "a pairing is there twice, the other way round",
      breaks: (r) => void r.pairings.push({ ...r.pairings[0], with: ["white-vinegar", "cod"] }),
      at: ["pairings.yaml", "white-vinegar + cod"],
      says: ["already in pairings.yaml", "one record serves both"],
    },
    pairingCase(
      "parts of one food go by another basis",
      { with: ["cod/fresh", "cod/salt-cured"], basis: "contrast" },
      "cod/fresh + cod/salt-cured",
      "of one food",
      PARTS,
    ),
    pairingCase("it goes by no tradition in particular", { tradition: undefined }, "cod + white-vinegar", "say which"),
    pairingCase("the reason is no sentence", { why: "vinegar on fried fish" }, "cod + white-vinegar", "full stop"),
    pairingCase(
      "the two share no aroma",
      { basis: "shared aroma" },
      "cod + white-vinegar",
      "share no aroma family at 2 or more",
    ),
  ],
};
/** Gives the cod a further state, taken from a record. */
export function addState(records: Records, name: string, composition: string): void {
  const states = food(records, "cod")["states"] as unknown as Record<string, unknown>;
  const { ready } = (states[name] ?? {}) as { ready?: unknown };
  const more = ready === undefined ? {} : { ready };
  states[name] = { composition, cooked: { v: 0.9, from: "judgement" }, default: name === "fresh", ...more };
}
