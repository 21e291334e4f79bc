/** Pulses as a bouncing contact gives them, and when each must be counted. Times in ms. */

/** A time and the input's level from then on. */
export type Edge = readonly [number, 0 | 1];

/** A train of pulses with bounce at both edges, and when a patient reader counts each. */
export interface Train {
  readonly edges: readonly Edge[];
  readonly triggers: readonly number[];
}

export interface Press {
  readonly gap: number;
  readonly width: number;
  readonly bounceOn: readonly number[];
  readonly bounceOff: readonly number[];
}

/** Six gaps below the greatest debounce, ms. */
const LONGEST_BOUNCE = 120;

export function trainOf(presses: readonly Press[], debounce: number, interval: number): Train {
  const edges: Edge[] = [];
  const triggers: number[] = [];
  let now = 0;
  for (const press of presses) {
    now += 2 * debounce + press.gap;
    const settled = bounce(edges, now, press.bounceOn, 1, debounce);
    const off = settled + debounce + press.width;
    // A level that stays on counts once an interval, until it goes.
    let due = settled + debounce;
    for (; due < off; due += interval) triggers.push(due);
    // No bounce where the next count would fall into it: it is for the program to say whether that is still on.
    now = bounce(edges, off, due < off + LONGEST_BOUNCE ? [] : press.bounceOff, 0, debounce);
  }
  return { edges, triggers };
}

/** Edges that end at a level, each closer to the last than the debounce; returns the last one's time. */
function bounce(
  edges: Edge[],
  from: number,
  gaps: readonly number[],
  level: 0 | 1,
  debounce: number,
): number {
  let now = from;
  const flips = gaps.length % 2 === 0 ? gaps : gaps.slice(1);
  edges.push([now, level]);
  for (const [i, gap] of flips.entries()) {
    now += 1 + (gap % Math.max(1, debounce - 2));
    edges.push([now, i % 2 === 0 ? ((1 - level) as 0 | 1) : level]);
  }
  return now;
}
