/**
 * One door after the other, each with its inputs drawn at random: a copy of the door whose numbers are overwritten in
 * place, and what the swing and the relatch need of it. One per worker.
 */

import { latchCannotWork } from "../door/checks.ts";
import type { Animal, Door } from "../door/door.ts";
import { flapBody } from "../parts/flap.ts";
import { type LatchMechanics, latchMechanics } from "../parts/latch.ts";
import {
  emptyTable,
  fillTorqueTable,
  type GapRange,
  type TorqueFamily,
  torqueFamily,
  torqueTable,
} from "../parts/magnet-family.ts";
import { magnetMasses } from "../parts/magnets.ts";
import { hingeHeight } from "../parts/opening.ts";
import { coilReleaseTime } from "../parts/solenoid.ts";
import type { TorqueTable } from "../parts/torque-table.ts";
import { holdStart, passage, releaseState } from "../passage/passage.ts";
import { type RideSystem, rideSystem } from "../passage/relatch.ts";
import { COARSE, type SwingSystem, swingSystem } from "../swing/system.ts";
import type { StudyInput } from "./inputs.ts";
import { type Spread, spreadValue } from "./spread.ts";
import type { Uniform } from "./stream.ts";

/** The draws that every sample has before its inputs: which animal, and which way it goes. */
export const ANIMAL_DRAW = 0;
export const DIRECTION_DRAW = 1;
export const FIRST_INPUT = 2;

/** Place of a sample's animal in the door's list. */
export function drawnAnimal(draws: Float64Array, animals: number): number {
  return Math.min(animals - 1, Math.floor(draws[ANIMAL_DRAW] * animals));
}

/** Normal spreads reach this many times their ± 2 σ for the magnets' tables: ± 5 σ. */
const TABLE_REACH = 2.5;
/** Magnet keys that a table follows without being integrated anew. */
const CHEAP_MAGNETS = new Set(["magnets.gap", "magnets.remanence", "magnets.temperature"]);

interface Place {
  readonly input: StudyInput;
  readonly target: Record<string, number>;
  readonly key: string;
}

/** Everything of one sample that its swing, its bolt and its timer need. */
export class SampledDoor {
  /** The uniform numbers drawn: animal, direction, then one per input. */
  readonly draws: Float64Array;
  /** Place of the animal in the door's list. */
  animal = 0;
  /** Whether the latch can work at all; nothing below is set where it cannot. */
  works = false;
  /** Signed let-go state, rad and rad/s. */
  angle = 0;
  speed = 0;
  /** Let-go less the hold's time zero, s. */
  lag = 0;
  /** Coil's release and the bolt's way to the mouth, s: from the end of the hold to the tip at the mouth. */
  delay = 0;
  /** What this timer holds over what is set. */
  timerFactor = 1;
  private readonly door: Door;
  private readonly places: Place[];
  private readonly magnets: SampledMagnets | null;
  private letGoShare = 1;
  private letGoOffset = 0;
  private current: { system: SwingSystem; ride: RideSystem } | null = null;

  constructor(door: Door, inputs: readonly StudyInput[]) {
    this.door = structuredClone(door);
    this.draws = new Float64Array(FIRST_INPUT + inputs.length);
    this.places = inputs.map((input) => placeOf(this.door, input));
    this.magnets = this.door.magnets === null ? null : new SampledMagnets(this.door, inputs);
  }

  /** Free swing of the present sample. */
  get system(): SwingSystem {
    return (this.current as { system: SwingSystem }).system;
  }

  /** The same with the bolt riding on the flap's edge. */
  get ride(): RideSystem {
    return (this.current as { ride: RideSystem }).ride;
  }

  get latch(): LatchMechanics {
    return this.ride.latch;
  }

  /** Draws a sample: the same number of uniform numbers whatever comes of it. */
  draw(uniform: Uniform): void {
    const { draws } = this;
    for (let i = 0; i < draws.length; i++) draws[i] = uniform();
    this.take();
  }

  /** Sets up the sample of the present `draws`. */
  take(): void {
    const { door, draws, places } = this;
    this.timerFactor = 1;
    this.letGoShare = 1;
    this.letGoOffset = 0;
    for (let i = 0; i < places.length; i++) this.set(places[i], draws[FIRST_INPUT + i]);
    this.animal = drawnAnimal(draws, door.animals.length);
    this.works = !latchCannotWork(door);
    if (this.works) this.assemble(draws[DIRECTION_DRAW] < 0.5 ? 1 : -1);
  }

  private set(place: Place, u: number): void {
    const value = spreadValue(place.input.spread, u);
    switch (place.input.target) {
      case "door":
        place.target[place.key] = value;
        break;
      case "timer":
        this.timerFactor *= value;
        break;
      case "let-go share":
        this.letGoShare = value;
        break;
      case "let-go offset":
        this.letGoOffset = value;
        break;
    }
  }

  private assemble(direction: number): void {
    const { door, magnets } = this;
    if (door.latch === null) return;
    const latch = latchMechanics(door.latch);
    const body = flapBody(door.flap, magnets === null ? [] : magnets.masses());
    const table = magnets === null ? null : magnets.table();
    const capture = { centre: latch.centre, half: latch.capture };
    const system = swingSystem(door, body, table, capture, COARSE);
    this.current = { system, ride: rideSystem(system, latch) };
    this.delay = this.releaseTime() + latch.toMouth;
    this.pass(door.animals[this.animal], body.reach, direction);
  }

  /** Coil's release time, s; 0 without a coil or a clamp, as in the review. */
  private releaseTime(): number {
    const { solenoid, driver, supply, latch } = this.door;
    if (solenoid === null || driver === null || supply === null || latch === null) return 0;
    return coilReleaseTime(solenoid, driver, latch, supply.voltage) ?? 0;
  }

  /** The animal's passage: when the flap is let go, and from where. The let-go angle's spread is the swing's alone. */
  private pass(animal: Animal, reach: number, direction: number): void {
    const { door } = this;
    const { stopAngle } = door.hinge;
    const height = hingeHeight(door.opening.sillHeight, door.flap.bottomClearance, reach);
    const passed = passage(animal, door.detection, height, reach, stopAngle);
    this.lag = passed.letGoTime - holdStart(passed, door.timer?.retriggers ?? true);
    const nominal = door.release.angle ?? passed.letGoAngle;
    const size = Math.max(0, Math.abs(nominal) * this.letGoShare + this.letGoOffset);
    const state = releaseState(nominal < 0 ? -size : size, { ...door.release, angle: null }, stopAngle);
    this.angle = direction * state.angle;
    this.speed = direction * state.speed;
  }
}

/** The object and key that an input's value is written to. Curve points go by their place in the pair. */
function placeOf(door: Door, input: StudyInput): Place {
  const steps = input.key.split(".");
  const last = steps[steps.length - 1];
  let target = door as unknown as Record<string, unknown>;
  if (input.target === "door") {
    for (const step of steps.slice(0, -1)) target = target[step] as Record<string, unknown>;
  }
  const key = /^\d+$/.test(last) ? Object.keys(target)[Number(last)] : last;
  return { input, target: target as Record<string, number>, key };
}

/** The magnets' torque of each sample: one family of tables, or a table integrated anew where their geometry spreads. */
class SampledMagnets {
  private readonly door: Door;
  private readonly family: TorqueFamily | null;
  private readonly scratch: TorqueTable | null;
  private readonly fixedMasses: ReturnType<typeof magnetMasses> | null;

  constructor(door: Door, inputs: readonly StudyInput[]) {
    this.door = door;
    const keys = inputs.filter(({ target }) => target === "door").map(({ key }) => key);
    const cheap = keys.every((key) => !key.startsWith("magnets.") || CHEAP_MAGNETS.has(key));
    const magnets = this.magnets;
    const gap = inputs.find(({ key }) => key === "magnets.gap")?.spread;
    const stopAngle = keys.includes("hinge.stopAngle") ? Math.PI : door.hinge.stopAngle;
    this.family = cheap ? torqueFamily(magnets, stopAngle, gapRangeOf(magnets.gap, gap)) : null;
    this.scratch = this.family === null ? null : emptyTable(this.family);
    this.fixedMasses = cheap ? magnetMasses(magnets) : null;
  }

  private get magnets() {
    return this.door.magnets as NonNullable<Door["magnets"]>;
  }

  masses() {
    return this.fixedMasses ?? magnetMasses(this.magnets);
  }

  table(): TorqueTable {
    const { magnets, family, scratch } = this;
    if (family === null || scratch === null) return torqueTable(magnets, this.door.hinge.stopAngle);
    fillTorqueTable(family, magnets.gap, magnets.remanence, magnets.temperature, scratch);
    return scratch;
  }
}

/** Gaps that samples are all but sure to stay within; a rarer one is integrated by itself. */
function gapRangeOf(nominal: number, spread: Spread | undefined): GapRange {
  if (spread === undefined) return { low: nominal, high: nominal };
  const middle = (spread.low + spread.high) / 2;
  const half = ((spread.high - spread.low) / 2) * (spread.shape === "normal" ? TABLE_REACH : 1);
  return {
    low: Math.max(spread.limits.low, nominal / 8, middle - half),
    high: Math.min(spread.limits.high, middle + half),
  };
}
