/** The words of a list most like one that is not in it; shared letter pairs, ties by code unit. */
export function nearestOf(word: string, list: readonly string[], n = 3): string[] {
  const pairs = (s: string): Set<string> =>
    new Set(Array.from({ length: Math.max(1, s.length - 1) }, (_, i) => s.slice(i, i + 2)));
  const mine = pairs(word.slice(0, 60).toLowerCase());
  return list
    .map((w) => {
      const theirs = pairs(w);
      let common = 0;
      for (const p of mine) if (theirs.has(p)) common++;
      return { w, score: (2 * common) / (mine.size + theirs.size) };
    })
    .sort((a, b) => b.score - a.score || (a.w < b.w ? -1 : 1))
    .slice(0, n)
    .map((s) => s.w);
}
