/** The outcome for every hold time at once: the stretches on which a longer or shorter hold changes nothing. */
import type { LatchMechanics } from "../parts/latch.ts";
import { Motion } from "../swing/motion.ts";
import type { SwingSystem } from "../swing/system.ts";
import type { FlapState, Trace } from "../swing/trace.ts";
import { holdEnd, type Passage } from "./passage.ts";
import { type Outcome, relatch, rideSystem } from "./relatch.ts";

export interface OutcomeStretch {
  /** Hold times, s. */
  readonly from: number;
  readonly to: number;
  readonly outcome: Outcome;
}

export interface OutcomeSource {
  readonly passage: Passage;
  readonly system: SwingSystem;
  readonly trace: Trace;
  readonly latch: LatchMechanics;
  readonly retriggers: boolean;
  /** s. */
  readonly releaseTime: number;
}

/** Where one outcome gives way to the next is found to this, s. */
const SHARP = 1e-3;

/**
 * Stretches of holds from 0 to `longest` s, without gaps. Holds `step` apart are tried and the changes between them found
 * by halving; a stretch shorter than `step` that lies between two equal outcomes may be missed.
 */
export function outcomeStretches(source: OutcomeSource, longest: number, step: number): OutcomeStretch[] {
  const outcome = outcomeOf(source);
  const stretches: OutcomeStretch[] = [];
  let from = 0;
  let before = 0;
  let current = outcome(0);
  const tries = Math.ceil(longest / step);
  for (let i = 1; i <= tries; i++) {
    const hold = Math.min(longest, i * step);
    const next = outcome(hold);
    // More than one change may lie between two tries.
    while (current !== next) {
      before = changeBetween(outcome, before, hold, current);
      stretches.push({ from, to: before, outcome: current });
      from = before;
      current = outcome(before);
    }
    before = hold;
  }
  return [...stretches, { from, to: longest, outcome: current }];
}

function outcomeOf(source: OutcomeSource): (hold: number) => Outcome {
  const ride = rideSystem(source.system, source.latch);
  const motion = new Motion();
  const state: FlapState = { time: 0, angle: 0, speed: 0 };
  return (hold) => {
    const ends = holdEnd(source.passage, source.retriggers, hold);
    return relatch(ride, source.system, source.trace, ends, source.releaseTime, motion, state).outcome;
  };
}

/** The hold between two at which `outcome` stops being `left`. */
function changeBetween(outcome: (hold: number) => Outcome, from: number, to: number, left: Outcome): number {
  let low = from;
  let high = to;
  while (high - low > SHARP) {
    const middle = (low + high) / 2;
    if (outcome(middle) === left) low = middle;
    else high = middle;
  }
  return high;
}
