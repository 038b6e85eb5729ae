/**
 * Edits (insert, delete, change, swap of neighbours) from one word to another, up to `most`.
 * Optimal string alignment over UTF-16 units; returns most + 1 as soon as it cannot be within it.
 */
export function editsWithin(a: string, b: string, most: number): number {
  if (a === b) return 0;
  if (Math.abs(a.length - b.length) > most) return most + 1;
  let before: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const now = [i];
    let least = i;
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1];
      let d = Math.min((last[j] as number) + 1, (now[j - 1] as number) + 1, (last[j - 1] as number) + (same ? 0 : 1));
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1])
        d = Math.min(d, (before[j - 2] as number) + 1);
      now.push(d);
      if (d < least) least = d;
    }
    if (least > most) return most + 1;
    before = last;
    last = now;
  }
  return Math.min(last[b.length] as number, most + 1);
}

/** How many letters may be wrong in a word and it still be that word: none in short ones, where a letter makes another word. */
export function allowedEdits(length: number): number {
  if (length < 5) return 0;
  return length < 8 ? 1 : length < 13 ? 2 : 3;
}

const VOWELS = "aeiouy";
const SOUND_ALIKE = ["ckqsxz", "fvw", "bp", "dt", "gj", "mn", "lr"];
const confusable = (a: string, b: string): boolean =>
  (VOWELS.includes(a) && VOWELS.includes(b)) || SOUND_ALIKE.some((set) => set.includes(a) && set.includes(b));

/**
 * True when one wrong letter looks like a misspelling and not like another word: in words of five and six letters a letter
 * may be left out, doubled, swapped with its neighbour or written as one that sounds alike (basel is not bagel, skate not stake).
 */
export function plausibleSlip(a: string, b: string): boolean {
  if (a.length !== b.length || Math.min(a.length, b.length) > 6) return true;
  const wrong: number[] = [];
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) wrong.push(i);
  if (wrong.length !== 1) return true;
  const at = wrong[0] as number;
  return confusable(a[at] as string, b[at] as string);
}
