/** The door's own swing as a function of what a fit adjusts: the exact integrator, no approximation of it. */
import type { Door } from "../../door/door.ts";
import { type Centring, centring } from "../../parts/centring.ts";
import { type FlapBody, flapBody } from "../../parts/flap.ts";
import { magnetMasses } from "../../parts/magnets.ts";
import { si } from "../../quantity/brands.ts";
import {
  advance,
  Motion,
  OUT_OF_WORK,
  place,
  REACHED_CUT,
  REACHED_TIME,
  REACHED_TURN,
  type StepObserver,
  startFromRest,
} from "../../swing/motion.ts";
import { bounce, passCut, pressesStop } from "../../swing/stops.ts";
import { type SwingSystem, swingSystem } from "../../swing/system.ts";
import { type FlapState, Trace } from "../../swing/trace.ts";
import type { Values } from "./parameters.ts";

/** Turning points kept of one swing. */
const MOST_TURNS = 4000;

/** A door's swing from a let-go at rest, with the fitted values put in. One at a time: the next run overwrites it. */
export class SwingModel implements StepObserver {
  readonly door: Door;
  readonly body: FlapBody;
  readonly centring: Centring | null;
  /** The last run: turning points, the let-go as the first; where the flap rests is the last, if it does. */
  readonly turnTimes: number[] = [];
  readonly turnAngles: number[] = [];
  rests = false;
  runs = 0;
  private readonly motion = new Motion();
  private readonly trace = new Trace();
  private readonly state: FlapState = { time: 0, angle: 0, speed: 0 };
  private current: SwingSystem | null = null;

  constructor(door: Door) {
    this.door = door;
    this.body = flapBody(door.flap, door.magnets === null ? [] : magnetMasses(door.magnets));
    this.centring = door.magnets === null ? null : centring(door.magnets, door.hinge.stopAngle);
  }

  /** The door with the fitted values in it. */
  doorWith(values: Values): Door {
    const { door } = this;
    return {
      ...door,
      hinge: {
        ...door.hinge,
        frictionTorque: si(values["hinge.frictionTorque"]),
        viscousDamping: si(values["hinge.viscousDamping"]),
      },
      seal: { ...door.seal, frictionTorque: si(values["seal.frictionTorque"]) },
      air: { ...door.air, swingFactor: si(values["air.swingFactor"]) },
      opening: { ...door.opening, outOfPlumb: si(values["opening.outOfPlumb"]) },
    };
  }

  system(values: Values): SwingSystem {
    return swingSystem(this.doorWith(values), this.body, this.centring?.table ?? null, null);
  }

  /** Swings from `values.release` to rest or to `end`, s after let-go. */
  run(values: Values, end: number): void {
    const { motion, trace } = this;
    const system = this.system(values);
    const { stopAngle } = system;
    const angle = Math.max(-stopAngle, Math.min(stopAngle, values.release));
    this.current = system;
    this.turnTimes.length = 0;
    this.turnAngles.length = 0;
    this.turned(0, angle);
    this.runs++;
    place(motion, system, 0, angle, 0);
    trace.begin(0, angle, 0);
    this.rests = this.carry(system, end);
    if (this.rests && motion.time > 0) this.turned(motion.time, motion.angle);
  }

  onStep(motion: Motion): void {
    this.trace.add(motion);
  }

  /** Angle and speed of the last run, s after let-go; before it the flap is held. */
  at(time: number): FlapState {
    const { trace, state, current } = this;
    if (current !== null && time > 0) return trace.at(current, time, state);
    state.angle = this.turnAngles[0];
    state.speed = 0;
    return state;
  }

  private turned(time: number, angle: number): void {
    if (this.turnTimes.length >= MOST_TURNS) return;
    this.turnTimes.push(time);
    this.turnAngles.push(angle);
  }

  /** Drives the placed motion; true where it comes to rest before `end`. */
  private carry(system: SwingSystem, end: number): boolean {
    const { motion } = this;
    if (!startFromRest(motion, system)) return true;
    for (;;) {
      const reached = advance(motion, system, end, this);
      if (reached === REACHED_TIME || reached === OUT_OF_WORK) return false;
      if (reached === REACHED_CUT) {
        if (this.cut(system)) return true;
      } else if (reached === REACHED_TURN) {
        const { time, angle } = motion;
        if (!startFromRest(motion, system)) return true;
        this.turned(time, angle);
      }
    }
  }

  /** Past a cut, or off a stop, where the flap turns; true where it rests there. */
  private cut(system: SwingSystem): boolean {
    const { motion } = this;
    if (!pressesStop(motion, system)) return passCut(motion, system);
    const { time, angle } = motion;
    if (bounce(motion, system)) return true;
    this.turned(time, angle);
    return false;
  }
}
