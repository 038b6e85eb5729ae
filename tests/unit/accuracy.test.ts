import { describe, expect, it } from "vitest";
import { rankChart } from "../../data/tools/accuracy-chart.js";
import { averagePrecision, keyOf, rankByKind, rankOf } from "../../data/tools/published.js";

describe("where a published answer stands", () => {
  const list = ["a", "x", "b", "y", "c"];
  it("others named for the same need do not count against it", () => {
    const named = new Set(["a", "b", "c"]);
    expect(rankOf(list, "a", named)).toBe(1);
    expect(rankOf(list, "b", named)).toBe(2);
    expect(rankOf(list, "c", named)).toBe(3);
    expect(rankOf(list, "c", new Set(["c"]))).toBe(5);
  });
  it("one of a kind is counted, and states of the missing food are not", () => {
    const kinds: Readonly<Record<string, string>> = { a: "rice", x: "rice", b: "pasta", y: "pasta" };
    const kindOf = (key: string): string | undefined => kinds[key];
    expect(rankByKind(list, "b", new Set(["b"]), kindOf)).toBe(2);
    expect(rankByKind(list, "c", new Set(["c"]), kindOf)).toBe(3);
    expect(rankByKind(list, "c", new Set(["b", "y", "c"]), kindOf)).toBe(2);
    expect(rankByKind(list, "z", new Set(["z"]), kindOf)).toBeUndefined();
  });
  it("what is not in the list has no rank", () => expect(rankOf(list, "z", new Set(["z"]))).toBeUndefined());
  it("a mixture is the same in any order of its parts", () => expect(keyOf(["milk", "lemon"])).toBe("lemon+milk"));
  it("average precision, by hand", () => {
    expect(averagePrecision(list, new Set(["a", "x"]))).toBe(1);
    expect(averagePrecision(list, new Set(["x", "c"]))).toBeCloseTo((1 / 2 + 2 / 5) / 2, 12);
    // one of the two is nowhere
    expect(averagePrecision(list, new Set(["a", "z"]))).toBe(0.5);
  });
});

describe("the chart of ranks", () => {
  it("escapes whatever a label holds", () => {
    const svg = rankChart(`<b>"t" & 'u'`, ["one"], [{ label: "</text><script>", counts: [1] }]);
    expect(svg).not.toContain("<script>");
    expect(svg).not.toContain("<b>");
    expect(svg).toContain("&lt;b&gt;&quot;t&quot; &amp; &#39;u&#39;");
  });
  it("bars fill the same width whatever they count, and none has no bar", () => {
    const svg = rankChart(
      "t",
      ["one", "two"],
      [
        { label: "x", counts: [1, 3] },
        { label: "y", counts: [0, 0] },
      ],
    );
    expect([...svg.matchAll(/width="([\d.]+)" height="18"/g)].map((m) => Number(m[1]))).toEqual([130, 390]);
    expect(svg).not.toContain("NaN");
  });
});
