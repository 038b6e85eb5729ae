/** One line of a stream. `over` has its bytes when it is longer than the limit, `broken` says that it is no UTF-8. */
export interface Line {
  readonly number: number;
  readonly text: string;
  readonly over?: number;
  readonly broken?: true;
}
/** Bytes of one line: the largest recipe that is read, four bytes a character. */
export const MAX_LINE = 20_000_000;
const END = 0x0a;

/**
 * Lines of a stream of bytes, each with its number from 1. Only one line is ever held: of one that is longer than `limit` nothing is kept
 * but how long it is.
 */
export async function* linesIn(
  input: AsyncIterable<Uint8Array>,
  seen: (bytes: number) => void = () => undefined,
  limit = MAX_LINE,
): AsyncGenerator<Line> {
  let parts: Uint8Array[] = [];
  let size = 0;
  let number = 0;
  const take = (): Line => {
    number++;
    const whole = parts.length === 1 ? (parts[0] as Uint8Array) : Buffer.concat(parts);
    const over = size > limit ? size : undefined;
    parts = [];
    size = 0;
    if (over !== undefined) return { number, text: "", over };
    try {
      // a byte order mark at the head of the file is dropped by the decoder, and so is a carriage return by trim
      return { number, text: new TextDecoder("utf-8", { fatal: true }).decode(whole).trim() };
    } catch {
      return { number, text: "", broken: true };
    }
  };
  for await (const chunk of input) {
    seen(chunk.length);
    let from = 0;
    for (let at = chunk.indexOf(END); at >= 0; at = chunk.indexOf(END, from)) {
      size += at - from;
      if (size <= limit) parts.push(chunk.subarray(from, at));
      yield take();
      from = at + 1;
    }
    if (from === chunk.length) continue;
    size += chunk.length - from;
    if (size <= limit) parts.push(chunk.subarray(from));
    else parts = [];
  }
  if (size > 0) yield take();
}
