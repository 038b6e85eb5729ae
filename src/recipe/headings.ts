import { isDigit, readQuantity } from "../quantity/index.js";
import { clean, tokensOf } from "./text.js";

export type Section = "ingredients" | "method" | "other";

// How writers head the parts of a recipe; English first, and the word itself in a few neighbours' languages.
const INGREDIENTS = [
  "ingredients",
  "ingredient list",
  "ingredients list",
  "the ingredients",
  "what you need",
  "what you ll need",
  "you will need",
  "you ll need",
  "shopping list",
  "zutaten",
  "ingrédients",
  "ingredientes",
  "ingredienti",
];
const METHOD = [
  "method",
  "directions",
  "instructions",
  "preparation",
  "steps",
  "procedure",
  "how to make it",
  "how to make",
  "how to cook it",
  "the method",
  "cooking instructions",
  "cooking method",
  "what to do",
  "making it",
  "to make",
  "zubereitung",
  "préparation",
  "preparación",
  "elaboración",
  "preparazione",
  "modo de preparo",
  "preparação",
];
const OTHER = [
  "notes",
  "note",
  "tips",
  "tip",
  "cook s notes",
  "cook s note",
  "recipe notes",
  "storage",
  "to store",
  "storing",
  "equipment",
  "tools",
  "nutrition",
  "nutrition facts",
  "nutritional information",
  "variations",
  "about",
  "description",
  "introduction",
  "faq",
  "comments",
  "source",
  "make ahead",
  "leftovers",
  "substitutions",
  "serving suggestions",
  "video",
  "keywords",
];
const BY_TEXT: ReadonlyMap<string, Section> = new Map<string, Section>([
  ...INGREDIENTS.map((w) => [w, "ingredients"] as const),
  ...METHOD.map((w) => [w, "method"] as const),
  ...OTHER.map((w) => [w, "other"] as const),
]);

const words = (text: string): string =>
  tokensOf(text.length > 120 ? "" : text)
    .map((t) => t.text)
    .join(" ");

/** The section a heading opens. "Ingredients (serves 4)" and "Ingredients for 6 people" do too. */
export function sectionOf(text: string): Section | undefined {
  const all = words(text);
  const hit = BY_TEXT.get(all);
  if (hit !== undefined) return hit;
  const first = all.split(" ")[0] ?? "";
  if (first === "ingredients" || first === "zutaten" || first === "ingrédients" || first === "ingredientes") {
    const rest = all.slice(first.length + 1).split(" ");
    if (rest.some((w) => isDigit(w[0])) || ["serves", "makes"].includes(rest[0] ?? "")) return "ingredients";
  }
  return undefined;
}

/** "For the sauce", "Dressing:", "TO SERVE": names a group of lines. A line that begins with an amount never does. */
export function isGroupHeading(text: string): boolean {
  const t = bare(text);
  if (t === "" || t.length > 80) return false;
  const colon = t.endsWith(":");
  const first = tokensOf(t).map((w) => w.text);
  if (first.length === 0 || first.length > 9) return false;
  if (readQuantity(t, 0) !== undefined && isDigit(t[0])) return false;
  if (colon) return true;
  if (t.endsWith(".") || t.includes(",")) return false;
  if (first.length === 2 && first[0] === "to" && ENDS.has(first[1] ?? "")) return true;
  return first[0] === "for" && first.length > 1 && first.length <= 6 && !first.some((w) => isDigit(w[0]));
}

/** "To serve" on a line of its own heads what follows. */
const ENDS = new Set(["serve", "finish", "garnish", "decorate", "assemble"]);

/** Stars and the like around a heading in plain strings. */
function bare(text: string): string {
  let t = clean(text);
  for (const mark of ["**", "__", "*", "=", "--", "#"]) {
    while (t.startsWith(mark)) t = t.slice(mark.length);
    while (t.endsWith(mark)) t = t.slice(0, -mark.length);
    t = t.trim();
  }
  return t;
}

/** "For the sauce:" → "For the sauce". */
export function headingText(text: string): string {
  const t = bare(text);
  return (t.endsWith(":") ? t.slice(0, -1) : t).trim();
}
