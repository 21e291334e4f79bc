/** Times of repeated work, as the best of several rounds: the one least disturbed by what else the machine does. */

export interface Timed {
  /** Seconds per call. */
  readonly seconds: number;
  readonly calls: number;
}

/** What a settle time may be off by, s (the aim's own measure of "the same accuracy"). */
export const ACCURACY = 1e-4;
const TOLERANCES = [1e-4, 1e-5, 1e-6, 1e-7, 1e-8, 1e-9, 1e-10, 1e-11];

/** The loosest tolerance from which on every tighter one is accurate enough too: not one that is right by luck. */
export function loosest(errorAt: (tolerance: number) => number): { tolerance: number; error: number } {
  const errors = TOLERANCES.map(errorAt);
  let pick = TOLERANCES.length - 1;
  while (pick > 0 && errors[pick - 1] <= ACCURACY) pick--;
  return { tolerance: TOLERANCES[pick], error: errors[pick] };
}

/**
 * Best time per call of each piece of work, taken in turns so that whatever else the machine does disturbs all of them alike:
 * `rounds` turns of about `budget` seconds a piece.
 */
export function timedTogether(works: readonly (() => void)[], budget = 0.1, rounds = 9): Timed[] {
  const calls = works.map((work) => {
    work();
    return Math.max(1, Math.min(20000, Math.round(budget / Math.max(lasting(work, 1), 1e-7))));
  });
  const best = works.map(() => Number.POSITIVE_INFINITY);
  for (let round = 0; round < rounds; round++) {
    works.forEach((work, i) => {
      best[i] = Math.min(best[i], lasting(work, calls[i]) / calls[i]);
    });
  }
  return best.map((seconds, i) => ({ seconds, calls: calls[i] }));
}

function lasting(work: () => void, calls: number): number {
  const start = performance.now();
  for (let i = 0; i < calls; i++) work();
  return (performance.now() - start) / 1000;
}

/** "412 µs". */
export function shortTime(seconds: number): string {
  if (seconds >= 1) return `${seconds.toPrecision(3)} s`;
  if (seconds >= 1e-3) return `${(seconds * 1e3).toPrecision(3)} ms`;
  return `${(seconds * 1e6).toPrecision(3)} µs`;
}

/** One line of the report: what, against what, how many times as fast, and the two times. */
export function report(what: string, peer: string, own: Timed, other: Timed, note = ""): void {
  const ratio = (other.seconds / own.seconds).toPrecision(3);
  const times = `${shortTime(own.seconds)} against ${shortTime(other.seconds)}`;
  console.log(`${what}: ${ratio} × as fast as ${peer} (${times})${note === "" ? "" : `; ${note}`}`);
}
