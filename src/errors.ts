import type { ErrorData, SteadfareError } from "./types.js";

const MARK = Symbol.for("steadfare.error");

/** Recursively freezes plain data and returns it. Everything public passes through here once. */
export function freeze<T>(value: T): T {
  if (typeof value === "object" && value !== null && !Object.isFrozen(value)) {
    Object.freeze(value);
    for (const key of Object.keys(value)) freeze((value as Record<string, unknown>)[key]);
  }
  return value;
}

/** Builds the one error shape the library throws: `code` to switch on, `data` typed by it. */
export function failure<C extends keyof ErrorData>(code: C, message: string, data: ErrorData[C]): SteadfareError<C> {
  const error = new Error(message);
  Object.defineProperty(error, MARK, { value: true });
  error.name = "SteadfareError";
  return Object.assign(error, { code, data: freeze(data) }) as unknown as SteadfareError<C>;
}

/** Throws it. */
export function fail<C extends keyof ErrorData>(code: C, message: string, data: ErrorData[C]): never {
  throw failure(code, message, data);
}

/**
 * True for errors this library threw, from whichever copy of it (ESM, CommonJS, another realm).
 * @param code when given, true only for that code
 */
export function isSteadfareError<C extends keyof ErrorData>(e: unknown, code?: C): e is SteadfareError<C> {
  return (
    typeof e === "object" &&
    e !== null &&
    (e as Record<symbol, unknown>)[MARK] === true &&
    (code === undefined || (e as { code?: unknown }).code === code)
  );
}
