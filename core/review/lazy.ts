/**
 * The door of `compute`, each part of it computed when it is first read: for maps of one figure over thousands of doors.
 * Every figure is that of `compute` to the last bit.
 */
import type { Animal, Door } from "../door/door.ts";
import { flapBody } from "../parts/flap.ts";
import { type GustResult, gustResult } from "../parts/gust.ts";
import { type LatchMechanics, latchMechanics } from "../parts/latch.ts";
import { magnetMasses } from "../parts/magnets.ts";
import { fitResult, hingeHeight } from "../parts/opening.ts";
import { hardestPush, type Push, push } from "../parts/push.ts";
import {
  governing,
  type HoldResult,
  holdNeeded,
  holdResult,
  passage,
  releaseState,
} from "../passage/passage.ts";
import { Motion } from "../swing/motion.ts";
import { deadBand, setsOutside } from "../swing/rest.ts";
import { laterSwing, type Swing, SwingRun } from "../swing/swing.ts";
import { type CaptureBand, isSymmetric, swingSystem } from "../swing/system.ts";
import { Trace } from "../swing/trace.ts";
import {
  type Computed,
  type Crossing,
  centringOf,
  computeElectrics,
  type Electrics,
  type Known,
  relatchAt,
  resistanceOf,
  restSetsOf,
} from "./compute.ts";

/** An object whose members are worked out when they are first read, and kept. */
function lazyObject<T extends object>(makers: { readonly [K in keyof T]: () => T[K] }): T {
  const object = {} as T;
  for (const key of Object.keys(makers) as (keyof T)[]) {
    const get = () => {
      const value = makers[key]();
      Object.defineProperty(object, key, { value, enumerable: true });
      return value;
    };
    Object.defineProperty(object, key, { get, enumerable: true, configurable: true });
  }
  return object;
}

/** A swing's workspace, for `computeLazily` to use door after door. */
export function swingRun(): SwingRun {
  return new SwingRun(new Motion(), new Trace());
}

/**
 * Like `compute`, but works out each part when it is first read. `run` holds the trace of the governing swing: what this
 * door tells is good until the next door is computed with the same run.
 */
export function computeLazily(door: Door, known: Known | null = null, run: SwingRun = swingRun()): Computed {
  const electrics = lazyObject<{ all: Electrics }>({ all: () => computeElectrics(door) });
  const c: Computed = lazyObject<Computed>({
    door: () => door,
    body: () => flapBody(door.flap, door.magnets === null ? [] : magnetMasses(door.magnets)),
    hingeHeight: () => hingeHeight(door.opening.sillHeight, door.flap.bottomClearance, c.body.reach),
    centring: () => centringOf(door, known),
    latch: () => (door.latch === null ? null : latchMechanics(door.latch)),
    system: () => swingSystem(door, c.body, c.centring?.table ?? null, captureOf(c.latch)),
    restSets: () => restSetsOf(door, c.system, known),
    deadBand: () => deadBand(c.restSets, c.latch?.centre ?? 0),
    restsOutside: () => (c.latch === null ? [] : setsOutside(c.restSets, c.latch.centre, c.latch.capture)),
    crossings: () => door.animals.map((animal) => lazyCrossing(c, animal, run)),
    governing: () => governingCrossing(c, run),
    trace: () => traceAfter(c.governing.swing, run),
    fit: () => fitResult(door.opening, door.animals),
    pushes: () => pushesOf(c),
    hardestPush: () => hardestPush(c.pushes),
    gust: () => gustOf(c),
    timer: () => electrics.all.timer,
    solenoid: () => electrics.all.solenoid,
    driver: () => electrics.all.driver,
    supply: () => electrics.all.supply,
    holdRequired: () => (c.governing.need === null ? null : (1 + door.study.margin) * c.governing.need),
    hold: () => holdOf(c),
    relatch: () =>
      c.timer === null ? null : relatchAt(door, c, c.governing, c.trace, c.timer.nominal, c.solenoid),
  });
  return c;
}

function captureOf(latch: LatchMechanics | null): CaptureBand | null {
  return latch === null ? null : { centre: latch.centre, half: latch.capture };
}

function lazyCrossing(c: Computed, animal: Animal, run: SwingRun): Crossing {
  const { detection, hinge, release, timer } = c.door;
  const one: Crossing = lazyObject<Crossing>({
    animal: () => animal,
    passage: () => passage(animal, detection, c.hingeHeight, c.body.reach, hinge.stopAngle),
    release: () => releaseState(one.passage.letGoAngle, release, hinge.stopAngle),
    swing: () => laterSwing(run, c.system, one.release.angle, one.release.speed, isSymmetric(c.system)),
    need: () =>
      holdNeeded(one.passage, settleTime(c, one), timer?.retriggers ?? true, detection.pulseInterval),
  });
  return one;
}

/** s; `null` where the flap can rest outside the bolt's play, however this swing ends. */
function settleTime(c: Computed, crossing: Crossing): number | null {
  return c.restsOutside.length > 0 ? null : crossing.swing.settleTime;
}

/** A single animal governs whatever it needs; the chief of several is swung again, last, so that the run holds its trace. */
function governingCrossing(c: Computed, run: SwingRun): Crossing {
  const { crossings } = c;
  if (crossings.length === 1) return crossings[0];
  const longest = governing(crossings.map((x) => x.need));
  return lazyCrossing(c, crossings[longest].animal, run);
}

/** The run's trace after a swing: reading the swing has run it. */
function traceAfter(_swing: Swing, run: SwingRun): Trace {
  return run.trace;
}

function pushesOf(c: Computed): Push[] {
  const resistance = resistanceOf(c.door, c);
  return c.crossings.map((x) => push(x.animal, resistance, c.hingeHeight, x.passage.letGoAngle));
}

function gustOf(c: Computed): GustResult | null {
  if (c.latch === null) return null;
  return gustResult(resistanceOf(c.door, c), c.door.air, c.latch.capture, c.latch.centre);
}

function holdOf(c: Computed): HoldResult | null {
  const { timer, door, governing: chief } = c;
  if (timer === null) return null;
  const retriggers = door.timer?.retriggers ?? true;
  const settle = settleTime(c, chief);
  return holdResult(
    chief.passage,
    settle,
    { ...timer, retriggers },
    door.detection.pulseInterval,
    door.study.margin,
  );
}
