/** Progress of a long run, on one line of a terminal; nothing is written anywhere else. */
export interface Progress {
  bytes(count: number): void;
  record(ok: boolean): void;
  end(): void;
}
interface Screen {
  readonly isTTY?: boolean | undefined;
  readonly columns?: number | undefined;
  write(text: string): unknown;
}
const BAR = 24;
/** Milliseconds between two looks: more often nobody can read it. */
const EVERY = 200;
const QUIET: Progress = { bytes: () => undefined, record: () => undefined, end: () => undefined };

/** @param total bytes of the whole input, when known: then there is a bar */
export function progressOn(screen: Screen, total: number | undefined, now = (): number => performance.now()): Progress {
  if (screen.isTTY !== true) return QUIET;
  const start = now();
  let read = 0;
  let done = 0;
  let bad = 0;
  let last = -Infinity;
  const draw = (): void => {
    const seconds = Math.max((now() - start) / 1000, 0.001);
    const share = total === undefined || total === 0 ? undefined : Math.min(1, read / total);
    const filled = Math.round((share ?? 0) * BAR);
    const bar =
      share === undefined ? "" : `[${"#".repeat(filled)}${".".repeat(BAR - filled)}] ${Math.floor(share * 100)}% `;
    const failed = bad > 0 ? `, ${bad} not read` : "";
    const text = `${bar}${done} recipes${failed}, ${(done / seconds).toFixed(1)} a second`;
    screen.write(`\r${text.slice(0, Math.max(20, (screen.columns ?? 80) - 1))}\u001b[K`);
  };
  const look = (): void => {
    if (now() - last < EVERY) return;
    last = now();
    draw();
  };
  return {
    bytes: (count) => void (read += count),
    record: (ok) => {
      done++;
      if (!ok) bad++;
      look();
    },
    end: () => {
      draw();
      screen.write("\n");
    },
  };
}
