// Ranks of published answers by category as stacked bars. Text in, text out: no clock, no fonts but what the reader has.
const ESCAPES: Readonly<Record<string, string>> = {
  "&": "&amp;",
  "<": "&lt;",
  ">": "&gt;",
  '"': "&quot;",
  "'": "&#39;",
};
const escape = (text: string): string => text.replace(/[&<>"']/g, (ch) => ESCAPES[ch] ?? "");
/** Dark for first, pale for far down, red for not offered; told apart without colour by their order and the legend. */
const FILLS: readonly string[] = ["#0b4f6c", "#2f86a6", "#7fb9cc", "#c9dfe6", "#efe3c8", "#c8553d"];

export interface Bar {
  readonly label: string;
  readonly counts: readonly number[];
}

/** @param buckets names of the counts, in the order of every bar's counts */
export function rankChart(title: string, buckets: readonly string[], bars: readonly Bar[]): string {
  const [left, width, row, top] = [170, 520, 26, 74];
  const height = top + row * bars.length + 14;
  const total = (b: Bar): number => b.counts.reduce((s, n) => s + n, 0);
  const out = [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${left + width + 70} ${height}" role="img" aria-label="${escape(title)}" font-family="sans-serif" font-size="13">`,
    `<title>${escape(title)}</title>`,
    `<rect width="100%" height="100%" fill="#ffffff"/>`,
    `<text x="12" y="24" font-size="15">${escape(title)}</text>`,
  ];
  buckets.forEach((name, k) => {
    const x = 12 + k * 122;
    out.push(`<rect x="${x}" y="40" width="14" height="14" fill="${FILLS[k] ?? "#888888"}"/>`);
    out.push(`<text x="${x + 20}" y="52">${escape(name)}</text>`);
  });
  bars.forEach((bar, i) => {
    const y = top + i * row;
    const all = total(bar);
    out.push(`<text x="${left - 10}" y="${y + 14}" text-anchor="end">${escape(bar.label)}</text>`);
    let x = left;
    bar.counts.forEach((n, k) => {
      const w = all === 0 ? 0 : Math.round((width * n * 100) / all) / 100;
      if (n > 0)
        out.push(
          `<rect x="${x.toFixed(2)}" y="${y}" width="${w.toFixed(2)}" height="18" fill="${FILLS[k] ?? "#888888"}"><title>${escape(`${bar.label}, ${buckets[k] ?? ""}: ${n} of ${all}`)}</title></rect>`,
        );
      x += w;
    });
    out.push(`<text x="${left + width + 10}" y="${y + 14}">${all}</text>`);
  });
  return `${out.join("\n")}\n</svg>\n`;
}
