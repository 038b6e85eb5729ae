import type { ScorePart } from "../types.js";
import type { Ask } from "./ask.js";
import { isCommonPractice, type Known } from "./evidence.js";
import type { Scored } from "./score.js";
import type { PartName } from "./settled.js";

const STAGE = { raw: "uncooked", cooked: "when cooked", long: "after long cooking" } as const;
const pct = (v: number): string => `${Math.round(v * 100)} of 100`;

/** The marks of a score with a few words each: made for what is shown, since thousands are weighed for every answer. */
export function explain(ask: Ask, scored: Scored, known: Known | undefined): ScorePart[] {
  const minutes = (m: number): number => Math.round(Math.max(0, m));
  const work =
    scored.active > 0 || scored.waiting > 0
      ? `asks for ${minutes(scored.active)} more minutes of work and ${minutes(scored.waiting)} of waiting`
      : "asks for no more work";
  const jobs = ask.roles
    .slice(0, 2)
    .map((r) => r.role)
    .join(", ");
  const say: Readonly<Record<PartName, (value: number) => string>> = {
    role: (v) => `does the job (${jobs}) at ${pct(v)}`,
    texture: (v) => `texture ${STAGE[ask.stage]}: ${pct(v)} alike`,
    flavour: (v) => `taste and aroma: ${pct(v)} alike${scored.notes > 0 ? ", brings a note of its own" : ""}`,
    handling: (v) => (v < scored.fit.handling - 0.05 ? `${work}; comes in another form` : work),
    kin: (v) => `kin: ${pct(v)}`,
    custom: (v) => `at hand and used by the same cooks: ${pct(v)}`,
    evidence: () =>
      known === undefined
        ? "tables name others for this"
        : isCommonPractice(known.edge)
          ? "common practice"
          : known.exchange
            ? "published, one of a list"
            : "published",
  };
  return scored.marks.map((m) => ({ ...m, text: say[m.name](m.value) }));
}
