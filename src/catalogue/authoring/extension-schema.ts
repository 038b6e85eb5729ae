import * as z from "zod";
import { FoodRecord, KindRecord, ProcedureRecord, SwapRecord } from "./schema.js";
import { Sources } from "./terms.js";

/** A user's own file: foods, kinds, procedures and swaps as in data/, in one object. Sizes are bounded, since it may come from anywhere. */
export const ExtensionFile = z.strictObject({
  name: z.string().min(1).max(100),
  sources: Sources.optional(),
  kinds: z.array(KindRecord).max(1000).optional(),
  foods: z.array(FoodRecord).max(20_000).optional(),
  procedures: z.array(ProcedureRecord).max(1000).optional(),
  swaps: z.array(SwapRecord).max(50_000).optional(),
});
