/** One bolt that rides on the flap's edge from a given state, and the way it took: which edges it passed, where it turned. */
import { boltAtMouth, type RideSystem } from "../passage/relatch.ts";
import type { Motion, StepObserver } from "../swing/motion.ts";
import type { FlapState } from "../swing/trace.ts";
import { CAUGHT, type OutcomeCode, SHUT_OUT, STUCK } from "./stretches.ts";

/** Ways are numbers in base 8; after this many events no more are told apart. */
const LONGEST_WAY = 8 ** 15;

export class RideWatch implements StepObserver {
  outcome: OutcomeCode = SHUT_OUT;
  /** Equal for rides that pass the same edges, turn in the same places and end the same. */
  way = 0;
  turns = 0;
  private low = 0;
  private high = 0;
  private centre = 0;
  private readonly motion: Motion;

  constructor(motion: Motion) {
    this.motion = motion;
  }

  /** Lets the bolt reach the mouth with the flap in `state`. */
  run(ride: RideSystem, state: FlapState): void {
    const { centre, capture } = ride.latch;
    this.centre = centre;
    this.low = centre - capture;
    this.high = centre + capture;
    this.way = 0;
    this.turns = 0;
    const { outcome } = boltAtMouth(ride, state, this.motion, this);
    this.outcome = outcome === "caught" ? CAUGHT : outcome === "stuck" ? STUCK : SHUT_OUT;
    this.way = wayOf(this.way, this.outcome);
  }

  /** Shut out without turning once: the flap was too fast for the bolt. */
  get direct(): boolean {
    return this.outcome === SHUT_OUT && this.turns === 0;
  }

  onStep(motion: Motion): void {
    if (motion.speed === 0) {
      this.turns++;
      this.note(motion.angle < this.centre ? 1 : 2);
    } else if (motion.angle === this.low) this.note(3);
    else if (motion.angle === this.high) this.note(4);
  }

  private note(event: number): void {
    if (this.way < LONGEST_WAY) this.way = this.way * 8 + event;
  }
}

/** A way with its end. */
export function wayOf(events: number, outcome: OutcomeCode): number {
  return events * 8 + 5 + outcome;
}
