import { fail } from "../errors.js";

// No recipe comes near these; they keep the work bounded whatever is sent.

/** Characters of a source: a page with its scripts and styles. */
export const MAX_SOURCE = 5_000_000;
/** Levels of nesting in JSON and in HTML. Kitchen pages stay below 60. */
export const MAX_DEPTH = 64;
export const MAX_TAG_DEPTH = 1000;
/** Values in one JSON document. */
export const MAX_VALUES = 200_000;
/** Lines, steps and pieces of unread text of one recipe. */
export const MAX_LINES = 1000;
export const MAX_STEPS = 1000;
/** Blocks of a text, a Markdown file or a page without data. */
export const MAX_BLOCKS = 20_000;
/** Characters of a step that are understood; the text itself is kept whole. */
export const MAX_STEP = 5000;
/** Characters of all the steps of a recipe that are understood: a book chapter, and no recipe. */
export const MAX_STEPS_TEXT = 300_000;
/** Recipes read from one source. */
export const MAX_RECIPES = 50;

export function within(size: number, limit: number, what: string): void {
  if (size > limit)
    fail("input too large", `A recipe may have ${limit} ${what}; this one has ${size} or more.`, { limit, size });
}
