import { several } from "../swap/plural.js";
import { list, named } from "../swap/sentence.js";
import type { AllergenId, Portion, Swap, SwapNotes } from "../types.js";

/** One swap in words, in parts, so that each format may set them apart. Plain text, nothing escaped. */
export interface Said {
  readonly use: string;
  readonly how: string;
  readonly allergens: string;
  readonly cautions: readonly { readonly label: string; readonly text: string }[];
}
type Note = SwapNotes["notes"][number];

const cap = (s: string): string => s.charAt(0).toUpperCase() + s.slice(1);
const bare = (s: string): string => s.trim().replace(/[.;]$/, "");
const sentence = (s: string): string => (/[.!?]$/.test(s) ? cap(s) : `${cap(s)}.`);
const foodOf = (id: string): string => id.slice(0, id.indexOf("/"));

function useSaid(note: Note, use: Portion): string {
  // "Cod" for "salt cod" leaves a reader wondering which: the plain state is said when the food is the same.
  const same = note.missing !== undefined && foodOf(note.missing.id) === foodOf(use.id);
  const name = same && use.id.endsWith("/fresh") && !/fresh/i.test(use.name) ? `fresh ${use.name}` : use.name;
  if (note.missing?.assumed) return cap(name);
  return named({ measure: use.measure, name: several(name, use.measure.text) });
}

/** What can be said in one breath with other steps: an order without a stop inside. */
const short = (s: string): boolean => !/[,;:.]/.test(s) && !/^(it|there|what|this|not|no)\b/i.test(s);
const lower = (s: string): string => s.charAt(0).toLowerCase() + s.slice(1);

/** Steps run together while they are short orders: "Skip the soak, simmer for 8 minutes instead of 15 and add 1 tsp salt." */
function steps(texts: readonly string[]): string[] {
  const out: string[] = [];
  let run: string[] = [];
  const flush = (): void => {
    if (run.length > 0) out.push(sentence(list(run)));
    run = [];
  };
  for (const text of texts) {
    if (short(text)) {
      run.push(run.length === 0 ? cap(text) : lower(text));
      continue;
    }
    flush();
    out.push(sentence(text));
  }
  flush();
  return out;
}

const TEXTURES = ["hardness", "chewiness", "fracturability", "moistness", "viscosity", "adhesiveness", "fattiness"];
/** Grams below which nobody feels the texture of an ingredient, or sees its colour in the dish. */
const FELT = 20;
const SEEN = 100;
const SHOWN = ["colour", "garnish", "coating"];

const OF = "taste of ";
/** "a taste of fish and the sea and a smoky taste": what is tasted of several things is said once. */
function tastes(phrases: readonly string[], article: "a" | "the"): string {
  const of = phrases.filter((p) => p.startsWith(OF)).map((p) => p.slice(OF.length));
  const own = phrases.filter((p) => !p.startsWith(OF));
  return list([...(of.length > 0 ? [OF + list(of)] : []), ...own].map((p) => `${article} ${p}`));
}

/** "Comes out softer and a little saltier, with a smoky taste." Empty when little changes. */
function effect(note: Note, swap: Swap): string {
  const grams = swap.use.reduce((sum, u) => sum + u.grams, 0);
  const top = swap.shift
    .filter((s) => grams >= FELT || !TEXTURES.includes(s.axis))
    .filter(
      (s) =>
        s.axis !== "colour" || grams >= SEEN || (note.roles ?? []).slice(0, 2).some((role) => SHOWN.includes(role)),
    );
  const noteOf = (direction: "more" | "less", lead: string): string[] =>
    top
      .filter((s) => s.axis.startsWith("note: ") && s.direction === direction)
      .map((s) => (s.text.startsWith(lead) ? s.text.slice(lead.length) : OF + s.axis.slice(6)));
  const texts = (some: (axis: string) => boolean): string[] =>
    top.filter((s) => !s.axis.startsWith("note") && s.axis !== "colour" && some(s.axis)).map((s) => s.text);
  const without = top.some((s) => s.axis === "alcohol" && s.direction === "less");
  const plain = texts((axis) => !(without && axis === "alcohol")).slice(0, 3);
  const touched = texts((axis) => axis === "fatty" || TEXTURES.includes(axis)).length > 0;
  const colour = top.find((s) => s.axis === "colour")?.text;
  const gained = noteOf("more", "with a ");
  const lost = [...noteOf("less", "without the "), ...(without ? [`${OF}alcohol`] : [])];
  const rest = [
    ...(gained.length > 0 ? [`with ${tastes(gained, "a")}`] : []),
    ...(lost.length > 0 ? [`without ${tastes(lost, "the")}`] : []),
  ];
  if (plain.length > 0)
    return sentence(
      `${touched ? "comes out" : "tastes"} ${[list(plain), ...rest].join(", ")}${colour ? `; ${colour}` : ""}`,
    );
  if (gained.length > 0)
    return sentence(
      `brings ${tastes(gained, "a")}${lost.length > 0 ? ` and lacks ${tastes(lost, "the")}` : ""}${colour ? `; ${colour}` : ""}`,
    );
  if (lost.length > 0) return sentence(`lacks ${tastes(lost, "the")}${colour ? `; ${colour}` : ""}`);
  return colour ? sentence(colour) : "";
}

/** Minutes worth a word, as a cook says them; those a step already tells ("8 minutes instead of 15") are not said twice. */
function time(swap: Swap): string {
  const minutes = swap.time.active + swap.time.waiting;
  const told = swap.prep.some((p) => p.text.includes(" instead of "));
  const other = swap.prep.some((p) => p.kind !== "change" && p.minutes.active + p.minutes.waiting > 0);
  if (Math.abs(minutes) < 10 || (told && !other)) return "";
  const m = Math.abs(minutes);
  const hours = Math.round(m / 60);
  const days = Math.round(m / 1440);
  const span =
    m < 90 ? `${Math.round(m / 5) * 5} minutes` : hours < 20 ? `${hours} hours` : days <= 1 ? "a day" : `${days} days`;
  return minutes < 0 ? `Saves about ${span}.` : `Allow about ${span} more.`;
}

const GB: Readonly<Partial<Record<AllergenId, string>>> = { soy: "soya" };
/** Allergens as a reader knows them. Wheat is a gluten cereal and is said once. */
function allergenList(ids: readonly AllergenId[], locale: string): string {
  const words = locale === "en-GB" ? GB : {};
  const wheat = ids.includes("wheat");
  return list(
    ids.flatMap((id) => {
      if (id === "gluten cereals") return wheat ? [] : ["gluten"];
      if (id === "wheat") return [ids.includes("gluten cereals") ? "wheat (gluten)" : "wheat"];
      return [id === "crustacean shellfish" ? "crustaceans" : (words[id] ?? id)];
    }),
  );
}
/** More unknowns than this are not listed one by one: the label has them. */
const LISTED = 4;

function allergens(swap: Swap, locale: string): string {
  const { gained, lost, unknown } = swap.allergens;
  // Those only some makers use: the safety room marks them beside the fields every swap has.
  const label: readonly AllergenId[] = swap.allergens.label ?? [];
  const sure = gained.filter((a) => !label.includes(a));
  const may = gained.filter((a) => label.includes(a));
  const parts = [
    ...(sure.length > 0 ? [`adds ${allergenList(sure, locale)}`] : []),
    ...(may.length > 0 ? [`may add ${allergenList(may, locale)} (check the label)`] : []),
    ...(unknown.length > 0
      ? [
          unknown.length <= LISTED
            ? `check the label for ${allergenList(unknown, locale)}`
            : "recipes of makers differ, so check the label",
        ]
      : []),
    ...(lost.length > 0 ? [`takes out ${allergenList(lost, locale)}`] : []),
  ];
  return parts.length === 0 ? "" : sentence(lower(parts.join("; ")));
}

const warns = (hazard: string): boolean => hazard.includes("alcohol");
function cautions(swap: Swap): Said["cautions"] {
  return swap.cautions
    .filter((x) => x.severity !== "note" || warns(x.hazard))
    .filter((x) => !swap.prep.some((p) => x.text.includes(bare(p.text))))
    .map((x) => ({ label: x.who === "everyone" ? "Mind" : `For ${x.who}`, text: sentence(x.text) }));
}

/** A swap that changes little is called straight only when it is close. */
const CLOSE = 0.75;
/** Below this a swap is worth printing only with a word of warning. */
const PINCH = 0.62;
/** Grams of a correction nobody would taste. */
const TRIFLE = 1;

/** The words for one swap of a note. */
export function sayOf(note: Note, swap: Swap, locale = "en-US"): Said {
  const own = swap.prep.filter((p) => p.procedure !== "as noted").map((p) => bare(p.text));
  const noted = swap.prep.filter((p) => p.procedure === "as noted").map((p) => sentence(p.text.trim()));
  const mended = swap.corrections.filter((x) => x.grams < 0 || x.grams >= TRIFLE);
  const mends = (["hold back", "add"] as const).flatMap((verb) => {
    const some = mended.filter((x) => x.grams < 0 === (verb === "hold back"));
    const said = list(some.map((x) => named({ measure: x.measure, name: x.ingredient.name })));
    return some.length === 0 ? [] : [`${verb} ${said}`];
  });
  const guess = swap.basis === "computed" && swap.use.some((u) => u.range) ? ["Start with this much and taste."] : [];
  const changes = [...guess, ...steps([...own, ...mends]), ...noted, effect(note, swap), time(swap)].filter(
    (s) => s !== "",
  );
  const nothing = swap.score >= CLOSE ? "A straight swap." : "Not quite the same, but it does the job.";
  const spell = (text: string): string => (locale === "en-GB" ? text : american(text));
  return {
    use: spell(`${list(swap.use.map((u) => useSaid(note, u)))}${swap.score < PINCH ? " (at a pinch)" : ""}`),
    how: spell(changes.length === 0 ? nothing : changes.join(" ")),
    allergens: spell(allergens(swap, locale)),
    cautions: cautions(swap).map((x) => ({ label: spell(x.label), text: spell(x.text) })),
  };
}

/** The catalogue's own sentences are in British spelling. */
const SPELLINGS: readonly (readonly [british: RegExp, american: string])[] = [
  [/avour/g, "avor"],
  [/olour/g, "olor"],
  [/hilli(?!ng)/g, "hili"],
  [/ulph/g, "ulf"],
  [/enderise/g, "enderize"],
  [/ollusc/g, "ollusk"],
];
const american = (text: string): string => SPELLINGS.reduce((t, [from, to]) => t.replace(from, to), text);

/** "4 onions", when the recipe was scaled and the line still says what it said. */
export function scaledSaid(note: Note, serves: number | undefined): string {
  return serves === undefined || note.missing === undefined || note.missing.assumed
    ? ""
    : `${named(note.missing)} for ${serves}`;
}
