/**
 * What a finished door should show on the bench, with limits: the door's own toleranced inputs drawn as the tolerance study draws
 * them, each sample let go by hand at one angle instead of by an animal.
 */
import type { Door } from "../door/door.ts";
import { setValue } from "../door/path.ts";
import { flapBody } from "../parts/flap.ts";
import { magnetMasses } from "../parts/magnets.ts";
import { type Push, push, type Resistance } from "../parts/push.ts";
import { pullIn, SUPPLY_LOW_END } from "../parts/solenoid.ts";
import { tableTorque } from "../parts/torque-table.ts";
import type { Computed } from "../review/compute.ts";
import { type StudyInput, studyInputs } from "../study/inputs.ts";
import { FIRST_INPUT, SampledDoor } from "../study/sampled-door.ts";
import { spreadValue } from "../study/spread.ts";
import { sampleStream } from "../study/stream.ts";
import { Motion } from "../swing/motion.ts";
import { deadBand, restSets } from "../swing/rest.ts";
import { type Swing, SwingRun } from "../swing/swing.ts";
import type { SwingSystem } from "../swing/system.ts";
import { Trace } from "../swing/trace.ts";

/** Let go by hand at this, rad, or this much short of the stops where they are nearer (assumption). */
const HAND_ANGLE = Math.PI / 3;
const SHORT_OF_STOP = Math.PI / 36;

export const BENCH_SAMPLES = 400;
/** Rest positions are searched in one sample of so many: the search costs as much as ten swings. */
const REST_EVERY = 5;
const SEED = 1;

/** Nine doors in ten lie between the 5 % and the 95 % value; `null` is never. */
export interface Spread {
  readonly p5: number | null;
  readonly p50: number | null;
  readonly p95: number | null;
}

export interface BenchLimits {
  readonly samples: number;
  readonly seed: number;
  /** rad. */
  readonly letGo: number;
  /** Of the door exactly as the file has it: settle, rest, s; passes. */
  readonly nominal: {
    readonly settle: number | null;
    readonly still: number | null;
    readonly passes: number;
  };
  /** `null` where nothing can be sampled: without a latch. */
  readonly sampled: SampledLimits | null;
}

export interface SampledLimits {
  /** Share of samples that can come to rest outside the bolt's play. */
  readonly restsOutside: number;
  /** Share whose latch cannot work at all as drawn. */
  readonly cannotWork: number;
  /** s, from let-go. */
  readonly settle: Spread;
  readonly still: Spread;
  readonly passes: Spread;
  /** Largest distance from the slot's centre at which friction can hold the flap, rad. */
  readonly offCentre: Spread;
  /** N, of the animal with the least to spare. */
  readonly push: Spread;
  /** Supply voltage that draws the bolt back with a cold coil, V; `null` without the circuit. */
  readonly pullIn: Spread | null;
  /** Share that draws the bolt back at the supply's low end, coil cold; `null` without the circuit. */
  readonly pullsAtLowEnd: number | null;
}

/** The hand's let-go angle, rad, whole steps of 5°. */
export function handAngle(stopAngle: number): number {
  const most = Math.min(HAND_ANGLE, stopAngle - SHORT_OF_STOP);
  const steps = Math.floor((most * 36) / Math.PI + 1e-9);
  return steps >= 1 ? (steps * Math.PI) / 36 : stopAngle / 2;
}

/** Draws `samples` doors and lets each go from the hand's angle. */
export function benchLimits(computed: Computed, samples = BENCH_SAMPLES, seed = SEED): BenchLimits {
  const { door, system } = computed;
  const letGo = handAngle(door.hinge.stopAngle);
  const run = new SwingRun(new Motion(), new Trace());
  const swing = run.run(system, letGo, 0);
  const nominal = { settle: swing.settleTime, still: stillTime(swing), passes: swing.centrePasses };
  const { inputs, faults } = studyInputs(door);
  const possible = door.latch !== null && faults.length === 0;
  const sampled = possible ? sampledLimits(computed, inputs, run, letGo, samples, seed) : null;
  return { samples, seed, letGo, nominal, sampled };
}

/** When a person sees no more motion, s: at rest, or faded where no dry friction stops the flap; `null` is never. */
function stillTime(swing: Swing): number | null {
  if (swing.restTime !== null) return swing.restTime;
  return swing.status === "faded" ? swing.endTime : null;
}

interface Row {
  readonly settle: number;
  readonly still: number;
  readonly passes: number;
  readonly offCentre: number | null;
  readonly push: number;
  readonly pullIn: number;
  readonly pullsIn: boolean;
}

function sampledLimits(
  computed: Computed,
  inputs: readonly StudyInput[],
  run: SwingRun,
  letGo: number,
  samples: number,
  seed: number,
): SampledLimits {
  const sampled = new SampledDoor(computed.door, inputs);
  const rows: Row[] = [];
  for (let i = 0; i < samples; i++) {
    sampled.draw(sampleStream(seed, i));
    if (sampled.works) rows.push(sampleRow(computed, sampled, inputs, run, letGo, i % REST_EVERY === 0));
  }
  const { solenoid, driver, supply } = computed.door;
  const circuit = solenoid !== null && driver !== null && supply !== null;
  const share = (count: number) => (rows.length === 0 ? 0 : count / rows.length);
  return {
    cannotWork: (samples - rows.length) / samples,
    restsOutside: share(rows.filter(({ settle }) => settle === Number.POSITIVE_INFINITY).length),
    settle: spreadOf(rows.map(({ settle }) => settle)),
    still: spreadOf(rows.map(({ still }) => still)),
    passes: spreadOf(rows.map(({ passes }) => passes)),
    offCentre: spreadOf(rows.flatMap(({ offCentre }) => offCentre ?? [])),
    push: spreadOf(rows.map((row) => row.push)),
    pullIn: circuit ? spreadOf(rows.map((row) => row.pullIn)) : null,
    pullsAtLowEnd: circuit ? share(rows.filter(({ pullsIn }) => pullsIn).length) : null,
  };
}

function sampleRow(
  computed: Computed,
  sampled: SampledDoor,
  inputs: readonly StudyInput[],
  run: SwingRun,
  letGo: number,
  searchRest: boolean,
): Row {
  const { system } = sampled;
  const door = drawnDoor(computed.door, inputs, sampled.draws);
  const swing = run.run(system, Math.sign(sampled.angle || 1) * letGo, 0);
  const drawn = lowEnd(door);
  return {
    settle: swing.settleTime ?? Number.POSITIVE_INFINITY,
    still: stillTime(swing) ?? Number.POSITIVE_INFINITY,
    passes: swing.centrePasses,
    offCentre: searchRest ? deadBand(restSets(system), system.capture?.centre ?? 0) : null,
    push: pushOf(computed, door, system).force ?? Number.POSITIVE_INFINITY,
    pullIn: drawn?.pullInVoltage ?? Number.POSITIVE_INFINITY,
    pullsIn: drawn?.pullsIn ?? false,
  };
}

/** The door with the sample's numbers in it: what is not part of the swing is worked out from it. */
function drawnDoor(door: Door, inputs: readonly StudyInput[], draws: Float64Array): Door {
  return inputs.reduce((made, input, i) => {
    if (input.target !== "door") return made;
    const set = setValue(made, input.key, spreadValue(input.spread, draws[FIRST_INPUT + i]));
    return set.ok ? set.door : made;
  }, door);
}

function pushOf(computed: Computed, door: Door, system: SwingSystem): Push {
  const { crossings, hardestPush, hingeHeight } = computed;
  const table = system.magnets;
  const resistance: Resistance = {
    body: flapBody(door.flap, door.magnets === null ? [] : magnetMasses(door.magnets)),
    hinge: door.hinge,
    seal: door.seal,
    outOfPlumb: door.opening.outOfPlumb,
    magnetTorque: table === null ? () => 0 : (angle) => tableTorque(table, angle),
  };
  const { passage } = crossings[hardestPush];
  return push(door.animals[hardestPush], resistance, hingeHeight, passage.letGoAngle);
}

function lowEnd({ solenoid, driver, supply, latch }: Door) {
  if (solenoid === null || driver === null || supply === null || latch === null) return null;
  return pullIn(solenoid, driver, latch, SUPPLY_LOW_END * supply.voltage, solenoid.ambient);
}

/** Order statistics. */
function spreadOf(values: readonly number[]): Spread {
  const sorted = [...values].sort((a, b) => a - b);
  const at = (share: number) => {
    const value = sorted[Math.min(sorted.length - 1, Math.max(0, Math.ceil(share * sorted.length) - 1))];
    return value === undefined || !Number.isFinite(value) ? null : value;
  };
  return { p5: at(0.05), p50: at(0.5), p95: at(0.95) };
}
