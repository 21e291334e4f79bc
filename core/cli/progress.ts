/** A progress bar with the time left, on a terminal only: a pipe or a file gets none. */

const WIDTH = 30;
/** Between two drawings, ms. */
const PAUSE = 100;

export interface Progress {
  update(done: number, of: number): void;
  /** Takes the bar away. */
  end(): void;
}

/** A bar on standard error where that is a terminal, else nothing. `now` is the clock in ms. */
export function progressBar(
  label: string,
  stream: NodeJS.WriteStream = process.stderr,
  now = Date.now,
): Progress {
  if (!stream.isTTY) return { update: () => undefined, end: () => undefined };
  const began = now();
  let drawn = Number.NEGATIVE_INFINITY;
  return {
    update(done, of) {
      if (now() - drawn < PAUSE && done < of) return;
      drawn = now();
      stream.write(`\r${barText(label, done, of, (drawn - began) / 1000)}\u001b[K`);
    },
    end() {
      stream.write("\r\u001b[K");
    },
  };
}

/** "hold ████░░░░ 40 %, 12 s left". `elapsed` in s. */
export function barText(label: string, done: number, of: number, elapsed: number): string {
  const share = of > 0 ? Math.min(1, done / of) : 1;
  const full = Math.round(share * WIDTH);
  const left = share > 0 && share < 1 ? `, ${Math.ceil((elapsed * (1 - share)) / share)} s left` : "";
  return `${label} ${"█".repeat(full)}${"░".repeat(WIDTH - full)} ${Math.floor(share * 100)} %${left}`;
}
