import { Rank, type NameIndex } from "./claims.js";

/** A key that shares letters with a text: how alike the two are, 0 to 1 (Dice of three-letter runs). */
export interface Alike {
  readonly key: string;
  readonly alike: number;
  /** No English name shares the key. */
  readonly foreign: boolean;
}

/** Space, a to z and the digits have numbers below this; what is left is rare and looked up by its text. */
const SIGNS = 37;
function signOf(code: number): number {
  if (code >= 97 && code <= 122) return code - 96;
  if (code >= 48 && code <= 57) return code - 21;
  return code === 32 ? 0 : -1;
}

/** Runs of three letters as numbers, given out as they come up. */
class Runs {
  private readonly plain = new Int32Array(SIGNS * SIGNS * SIGNS).fill(-1);
  private readonly other = new Map<string, number>();
  /** For each run the last text it was seen in, so that it counts once a text. */
  private readonly seen: number[] = [];
  private text = 0;
  get size(): number {
    return this.seen.length;
  }
  /** Calls for each run of the text, once each; those never seen are given a number or, when only looking, left out. */
  of(text: string, look: boolean, each: (run: number) => void): void {
    const at = ++this.text;
    const padded = ` ${text} `;
    let a = signOf(padded.charCodeAt(0));
    let b = signOf(padded.charCodeAt(1));
    for (let i = 2; i < padded.length; i++) {
      const c = signOf(padded.charCodeAt(i));
      const run = this.number(a, b, c, padded, i - 2, look);
      if (run >= 0 && this.seen[run] !== at) {
        this.seen[run] = at;
        each(run);
      }
      a = b;
      b = c;
    }
  }
  private number(a: number, b: number, c: number, text: string, at: number, look: boolean): number {
    if (a >= 0 && b >= 0 && c >= 0) {
      const place = (a * SIGNS + b) * SIGNS + c;
      const old = this.plain[place] as number;
      return old >= 0 || look ? old : (this.plain[place] = this.next());
    }
    const three = text.slice(at, at + 3);
    const old = this.other.get(three);
    if (old !== undefined) return old;
    if (look) return -1;
    const run = this.next();
    this.other.set(three, run);
    return run;
  }
  private next(): number {
    return this.seen.push(0) - 1;
  }
}
/** How many different runs of three a text has, known or not. */
function countRuns(text: string): number {
  const padded = ` ${text} `;
  const runs = new Set<string>();
  for (let i = 0; i + 3 <= padded.length; i++) runs.add(padded.slice(i, i + 3));
  return runs.size;
}

/** Keys and, for each run of three letters, which keys hold it. Names made by rule are left out. */
export class Shortlist {
  private readonly keys: string[] = [];
  private readonly foreign: Uint8Array;
  private readonly counts: Uint16Array;
  private readonly runs = new Runs();
  /** Where each run's keys start in `posts`. */
  private readonly starts: Uint32Array;
  private readonly posts: Uint32Array;
  /** First words of names with the food whose names alone start so, or null when several foods' do. */
  private readonly firsts = new Map<string, string | null>();

  constructor(index: NameIndex) {
    const foreign: number[] = [];
    index.byKey.forEach((key, rank, food) => {
      if (rank >= Rank.made) return;
      this.keys.push(key);
      foreign.push(rank >= Rank.foreign ? 1 : 0);
      const space = key.indexOf(" ");
      const first = space < 0 ? key : key.slice(0, space);
      const other = this.firsts.get(first);
      this.firsts.set(first, other === undefined || other === food ? food : null);
    });
    this.foreign = Uint8Array.from(foreign);
    this.counts = new Uint16Array(this.keys.length);
    const sizes: number[] = [];
    const all: number[] = [];
    this.keys.forEach((key, k) => {
      const before = all.length;
      this.runs.of(key, false, (run) => {
        sizes[run] = (sizes[run] ?? 0) + 1;
        all.push(run);
      });
      this.counts[k] = all.length - before;
    });
    this.starts = new Uint32Array(this.runs.size + 1);
    sizes.forEach((n, run) => (this.starts[run + 1] = (this.starts[run] as number) + n));
    this.posts = new Uint32Array(all.length);
    const next = this.starts.slice();
    for (let k = 0, at = 0; k < this.keys.length; k++)
      for (const end = at + (this.counts[k] as number); at < end; at++) {
        const run = all[at] as number;
        const place = next[run] as number;
        this.posts[place] = k;
        next[run] = place + 1;
      }
  }

  /** Whether the names of one food, and no other's, start with this word. */
  startsOne(word: string): boolean {
    return typeof this.firsts.get(word) === "string";
  }

  /** The keys that share most runs with a text, best first, of equals by code unit. */
  alike(text: string, most: number): readonly Alike[] {
    const { keys, counts, starts, posts } = this;
    const size = countRuns(text);
    const shared = new Uint16Array(keys.length);
    this.runs.of(text, true, (run) => {
      for (let p = starts[run] as number, end = starts[run + 1] as number; p < end; p++) {
        const k = posts[p] as number;
        shared[k] = (shared[k] as number) + 1;
      }
    });
    const best: Alike[] = [];
    /** Looks at the keys that share at least `from` runs and fewer than `below`. */
    const look = (from: number, below: number): void => {
      let need = Math.max(from, leastFor(best, most, size));
      for (let k = 0; k < keys.length; k++) {
        const n = shared[k] as number;
        if (n < need || n >= below) continue;
        const score = (2 * n) / (size + (counts[k] as number));
        const last = best.length < most ? undefined : best[most - 1];
        if (last && score < last.alike) continue;
        const key = keys[k] as string;
        let at = best.length;
        while (at > 0) {
          const other = best[at - 1] as Alike;
          if (other.alike > score || (other.alike === score && other.key < key)) break;
          at--;
        }
        if (at >= most) continue;
        best.splice(at, 0, { key, alike: score, foreign: this.foreign[k] === 1 });
        if (best.length > most) best.pop();
        need = Math.max(from, leastFor(best, most, size));
      }
    };
    // Those that share most first: nearly all of the thousands that share a little then cannot come up to the last of the best.
    const many = Math.max(1, Math.ceil(0.4 * size));
    look(many, Infinity);
    look(1, many);
    return best;
  }
}
/** How many runs a key must share to come up to the last of the best: it holds at least as many as it shares. */
function leastFor(best: readonly Alike[], most: number, size: number): number {
  const last = best.length < most ? undefined : best[most - 1];
  return last === undefined ? 1 : Math.ceil((last.alike * size) / (2 - last.alike) - 1e-9);
}

const lists = new WeakMap<NameIndex, Shortlist>();
/** The shortlist of an index, made at the first name that is not found as written. */
export function shortlistOf(index: NameIndex): Shortlist {
  let list = lists.get(index);
  if (list === undefined) lists.set(index, (list = new Shortlist(index)));
  return list;
}
