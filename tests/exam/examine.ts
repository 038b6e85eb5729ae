import { afterAll, describe, expect, it } from "vitest";
import { listFoods, openCatalogue } from "../../src/index.js";
import { foodOf, mark, questionsIn, type Fault } from "./marking.js";

/** What the library still gets wrong, and why. */
export type Missed = readonly (readonly [id: string, faults: readonly Fault[], why: string])[];

/**
 * An examination set before any answer was read (questions.yaml says how it is marked). What the library still gets wrong is listed and
 * may only shrink. Answers worked out without any table are marked too, for information.
 */
export function examine(title: string, file: string, atLeast: number, still: Missed): void {
  const c = openCatalogue();
  const questions = questionsIn(file);
  const missed = new Map(still.map(([id, faults]) => [id, faults]));
  const byAll = new Map(questions.map((q) => [q.id, mark(c, q, "all")]));

  function table(): string {
    const computed = new Map(questions.map((q) => [q.id, mark(c, q, "computed")]));
    const kitchens = [...new Set(questions.map((q) => q.kitchen))];
    const right = (marks: typeof byAll, kitchen?: string): string => {
      const asked = questions.filter((q) => kitchen === undefined || q.kitchen === kitchen);
      return `${asked.filter((q) => marks.get(q.id)?.faults.length === 0).length}/${asked.length}`;
    };
    const row = (a: string, b: string, d: string): string => `${a.padEnd(28)} ${b.padStart(7)} ${d.padStart(9)}`;
    return [
      row("kitchen", "all", "computed"),
      ...kitchens.map((k) => row(k, right(byAll, k), right(computed, k))),
      row("together", right(byAll), right(computed)),
      ...questions.flatMap((q) => {
        const faults = computed.get(q.id)?.faults ?? [];
        return faults.length === 0 ? [] : [`computed misses ${q.id}: ${faults.join(", ")}`];
      }),
    ].join("\n");
  }

  describe(`${title} (common practice, no source)`, () => {
    afterAll(() => {
      process.stdout.write(`${table()}\n`);
    });
    it(`asks ${atLeast} questions and more, of foods that are known`, () => {
      expect(questions.length).toBeGreaterThanOrEqual(atLeast);
      expect(new Set(questions.map((q) => q.id)).size).toBe(questions.length);
      const foods = new Set(listFoods(c).map((f) => foodOf(f.id)));
      const named = questions
        .flatMap((q) => [...q.good, ...q.poor, ...Object.keys(q.grams ?? {})])
        .flatMap((pattern) => pattern.split(" + "))
        .filter((name) => name !== "*");
      expect(named.filter((name) => !foods.has(name))).toEqual([]);
      expect([...missed.keys()].filter((id) => !byAll.has(id))).toEqual([]);
    });
    it.each(questions.filter((q) => !missed.has(q.id)).map((q) => [q.id, q.why] as const))("%s: %s", (id) => {
      const { faults, first } = byAll.get(id) as NonNullable<ReturnType<typeof byAll.get>>;
      expect(faults, first.join(" | ")).toEqual([]);
    });
    if (still.length > 0)
      it.each(still.map(([id, faults]) => [id, faults] as const))("still missed: %s", (id, faults) => {
        expect(byAll.get(id)?.faults).toEqual(faults);
      });
  });
}
