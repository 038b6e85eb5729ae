import * as z from "zod";

/** data/vocabulary/terms.yaml: the words data may use. */
export const Terms = z.strictObject({
  role: z.record(z.string(), z.strictObject({ carrier: z.string(), text: z.string() })),
  "extra role": z.record(z.string(), z.strictObject({ carrier: z.string(), text: z.string() })),
  technique: z.array(z.string()),
  preservation: z.record(z.string(), z.string()),
  heat: z.record(z.string(), z.string()),
  form: z.record(z.string(), z.string()),
  unit: z.array(z.string()),
  slot: z.array(z.string()),
  texture: z.array(z.string()),
  "texture stage": z.array(z.string()),
  "judged flavour": z.array(z.string()),
  aroma: z.array(z.string()),
  note: z.array(z.string()),
  capability: z.array(z.string()),
  origin: z.array(z.string()),
  "starch kind": z.array(z.string()),
  "acid kind": z.array(z.string()),
  "pungency kind": z.array(z.string()),
  tradition: z.array(z.string()),
  tag: z.record(z.string(), z.string()),
  figure: z.record(z.string(), z.strictObject({ unit: z.string(), min: z.number(), max: z.number() })),
});
export type Terms = z.infer<typeof Terms>;

/** data/sources.yaml: every publication by key. */
export const Sources = z.record(
  z.string(),
  z.strictObject({
    title: z.string(),
    publisher: z.string().optional(),
    author: z.string().optional(),
    year: z.union([z.number(), z.string(), z.null()]).optional(),
    url: z.string().optional(),
    licence: z.string().optional(),
    access: z.string().optional(),
    note: z.string().optional(),
  }),
);
export type Sources = z.infer<typeof Sources>;
