import { AUTHORED } from "./authored.generated.js";
import type { KindRecord, ProcedureRecord } from "./schema.js";
import type { Sources, Terms } from "./terms.js";

/** What a user's own foods may refer to: the built-in vocabulary, publications, kinds with their facts, procedures and ids. */
export interface BuiltIn {
  readonly terms: Terms;
  readonly sources: Sources;
  readonly kinds: readonly KindRecord[];
  readonly procedures: readonly ProcedureRecord[];
  readonly allergens: readonly string[];
  readonly ids: readonly string[];
}
let parsed: BuiltIn | undefined;
export function builtIn(): BuiltIn {
  parsed ??= JSON.parse(AUTHORED) as BuiltIn;
  return parsed;
}
