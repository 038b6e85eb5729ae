import * as z from "zod";
import type { Problem } from "../compile.js";

/** data/tools/exceptions.yaml: what a rule finds and why it may stand. */
export const Exceptions = z.array(
  z.strictObject({ rule: z.string().min(1), record: z.string().min(1), why: z.string().min(10) }),
);
export type Exceptions = z.infer<typeof Exceptions>;

/**
 * Takes out what is excepted. The list can only shrink: an exception that is not needed any more, is given twice or names no rule is a
 * problem of its own.
 */
export function except(
  problems: readonly Problem[],
  exceptions: Exceptions,
  file: string,
  rules: readonly string[],
): Problem[] {
  const key = (p: { rule: string; record: string }): string => JSON.stringify([p.rule, p.record]);
  const found = new Set(problems.map(key));
  const excepted = new Set<string>();
  const stale: Problem[] = [];
  for (const e of exceptions) {
    const say = (message: string): void => void stale.push({ file, record: e.record, rule: "exceptions", message });
    if (!rules.includes(e.rule)) say(`There is no rule "${e.rule}".`);
    else if (excepted.has(key(e))) say(`This exception from "${e.rule}" is given twice.`);
    else if (!found.has(key(e))) say(`Nothing breaks the rule "${e.rule}" here any more: take the exception out.`);
    excepted.add(key(e));
  }
  return [...problems.filter((p) => !excepted.has(key(p))), ...stale];
}
