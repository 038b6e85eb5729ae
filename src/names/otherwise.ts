import { sortedKey } from "./fold.js";

/** The same for the same letters, whatever their order and the spaces among them. */
function sumOf(key: string): number {
  let sum = 0;
  for (let i = 0; i < key.length; i++) {
    const code = key.charCodeAt(i);
    if (code !== 32) sum = (sum + Math.imul(code, code + 7919)) | 0;
  }
  return sum;
}

/** Names of several words by their letters: cheaper to make for all of them than the words sorted, and compared by those only when asked. */
export class Otherwise {
  private readonly bySum = new Map<number, string | string[]>();
  constructor(keys: Iterable<string>) {
    for (const key of keys) {
      if (!key.includes(" ")) continue;
      const sum = sumOf(key);
      const old = this.bySum.get(sum);
      if (old === undefined) this.bySum.set(sum, key);
      else if (typeof old === "string") this.bySum.set(sum, [old, key]);
      else old.push(key);
    }
  }
  private of(key: string): readonly string[] {
    const found = this.bySum.get(sumOf(key));
    return found === undefined ? [] : typeof found === "string" ? [found] : found;
  }
  /** Keys of the same words, in whatever order. */
  inAnyOrder(key: string): readonly string[] {
    const sorted = sortedKey(key);
    return this.of(key).filter((k) => sortedKey(k) === sorted);
  }
  /** Keys that are this when written as one word. */
  together(joined: string): readonly string[] {
    return this.of(joined).filter((k) => k.replaceAll(" ", "") === joined);
  }
}
