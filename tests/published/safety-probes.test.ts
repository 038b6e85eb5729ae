// Probes of our own: answers written down from published sources and the trade before the code was asked.
import { describe, expect, it } from "vitest";
import { askProbe, PROBES, type Probe, type ProbeKind } from "../helpers/safety-probes.js";

const KEYS = ["diet", "missing", "use", "name", "technique", "where", "allergens", "diets"] as const;
const about = (p: Probe): string =>
  [p.food, p.foods?.slice(0, 3).join(", "), ...KEYS.map((key) => p[key] as string | readonly string[] | undefined)]
    .filter((word) => word !== undefined)
    .map((word) => (typeof word === "string" ? word : word.join(", ")))
    .join(" / ");

it("there are at least 120, and each says where its answer comes from", () => {
  const all = Object.values(PROBES).flat();
  expect(all.length).toBeGreaterThanOrEqual(120);
  for (const probe of all) expect(probe.source.length, about(probe)).toBeGreaterThanOrEqual(10);
});

describe.each(Object.keys(PROBES) as ProbeKind[])("%s", (kind) => {
  it.each(PROBES[kind].map((probe) => [`${about(probe)} (${probe.source})`, probe] as const))("%s", (_name, probe) => {
    expect(askProbe(kind, probe)).toEqual([]);
  });
});
