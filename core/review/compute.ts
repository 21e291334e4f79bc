/**
 * The whole door, computed once: every part, the swing of every animal, the hold and the relatch. Results, findings, the
 * sheet and the app read from this; nothing is computed twice and nothing is printed here.
 */
import type { Animal, Door } from "../door/door.ts";
import { type Centring, centring } from "../parts/centring.ts";
import { type DriverResult, driverResult } from "../parts/driver.ts";
import { type FlapBody, flapBody } from "../parts/flap.ts";
import { type GustResult, gustResult } from "../parts/gust.ts";
import { type LatchMechanics, latchMechanics } from "../parts/latch.ts";
import { magnetMasses } from "../parts/magnets.ts";
import { type FitResult, fitResult, hingeHeight } from "../parts/opening.ts";
import { hardestPush, type Push, push, type Resistance } from "../parts/push.ts";
import { type SolenoidResult, solenoidResult } from "../parts/solenoid.ts";
import { type SupplyResult, supplyResult } from "../parts/supply.ts";
import { type TimerResult, timerResult } from "../parts/timer.ts";
import { tableTorque } from "../parts/torque-table.ts";
import {
  governing,
  type HoldResult,
  holdEnd,
  holdNeeded,
  holdResult,
  type Passage,
  passage,
  type ReleaseState,
  releaseState,
} from "../passage/passage.ts";
import { type Relatch, relatch, rideSystem } from "../passage/relatch.ts";
import { Motion } from "../swing/motion.ts";
import { deadBand, type RestSet, restSets, setsOutside } from "../swing/rest.ts";
import { laterSwing, type Swing, SwingRun } from "../swing/swing.ts";
import { isSymmetric, type SwingSystem, swingSystem } from "../swing/system.ts";
import { Trace } from "../swing/trace.ts";

/** One animal's way through the door, and the swing it leaves behind. */
export interface Crossing {
  readonly animal: Animal;
  readonly passage: Passage;
  readonly release: ReleaseState;
  readonly swing: Swing;
  /** s, margin not included; `null` where no hold is sure. */
  readonly need: number | null;
}

/** The relatch at the timer's nominal hold. */
export interface HoldRelatch extends Relatch {
  /** s after let-go; negative is before it. */
  readonly holdEnds: number;
}

export interface Computed {
  readonly door: Door;
  readonly body: FlapBody;
  /** Hinge axis above the floor, m. */
  readonly hingeHeight: number;
  readonly centring: Centring | null;
  readonly latch: LatchMechanics | null;
  readonly system: SwingSystem;
  readonly restSets: readonly RestSet[];
  /** rad, about the slot's centre. */
  readonly deadBand: number;
  /** Rest positions from which the bolt does not find its slot; empty without a latch. */
  readonly restsOutside: readonly RestSet[];
  readonly crossings: readonly Crossing[];
  /** The crossing that needs the longest hold: all results of passage, swing and hold are its. */
  readonly governing: Crossing;
  /** The governing swing, to be read at any moment. */
  readonly trace: Trace;
  readonly fit: FitResult;
  /** One per animal. */
  readonly pushes: readonly Push[];
  /** The animal with the least room between force and comfort. */
  readonly hardestPush: number;
  readonly gust: GustResult | null;
  readonly timer: TimerResult | null;
  readonly solenoid: SolenoidResult | null;
  readonly driver: DriverResult | null;
  readonly supply: SupplyResult | null;
  /** s, margin included; without a timer section the one with the default, a retriggered one, is meant. */
  readonly holdRequired: number | null;
  /** That against the timer; `null` without one. */
  readonly hold: HoldResult | null;
  readonly relatch: HoldRelatch | null;
}

/** The mechanics of a door without any swing: what the equation of motion needs. */
export interface Mechanics {
  readonly body: FlapBody;
  readonly centring: Centring | null;
  readonly latch: LatchMechanics | null;
  readonly system: SwingSystem;
}

/** A door computed before: its magnet table and rest sets serve a door with the very same parts. */
export type Known = Pick<Computed, "door" | "centring"> & Partial<Pick<Computed, "restSets">>;

/** Sections that say where a flap rests; damping, the slot and all electrics do not. */
const RESTING = ["opening", "flap", "hinge", "seal", "air", "magnets"] as const;

/** The angle at which a damper cuts the swing in two, rad: the search for rest positions starts anew there. */
function damperEdge({ damper, hinge }: Door): number {
  return damper.coefficient > 0 ? Math.min(damper.withinAngle, hinge.stopAngle) : hinge.stopAngle;
}

/** Where the flap rests; as known from a door computed before where its sections are the very same. */
export function restSetsOf(door: Door, system: SwingSystem, known: Known | null): readonly RestSet[] {
  const alike = (section: (typeof RESTING)[number]) => door[section] === known?.door[section];
  const same = RESTING.every(alike) && damperEdge(door) === damperEdge(known?.door ?? door);
  return (same ? known?.restSets : undefined) ?? restSets(system);
}

/** The magnets' table and figures; those of a door computed before where its magnets and stops are the very same. */
export function centringOf(door: Door, known: Known | null): Centring | null {
  if (door.magnets === null) return null;
  const same = known?.door.magnets === door.magnets && known.door.hinge.stopAngle === door.hinge.stopAngle;
  return same ? known.centring : centring(door.magnets, door.hinge.stopAngle);
}

/** Parts to equation of motion. */
export function mechanics(door: Door, known: Known | null = null): Mechanics {
  const magnets = door.magnets;
  const body = flapBody(door.flap, magnets === null ? [] : magnetMasses(magnets));
  const pull = centringOf(door, known);
  const latch = door.latch === null ? null : latchMechanics(door.latch);
  const capture = latch === null ? null : { centre: latch.centre, half: latch.capture };
  return { body, centring: pull, latch, system: swingSystem(door, body, pull?.table ?? null, capture) };
}

/** What resists a slow push, still air. */
export function resistanceOf(door: Door, parts: Pick<Mechanics, "body" | "centring">): Resistance {
  const table = parts.centring?.table ?? null;
  return {
    body: parts.body,
    hinge: door.hinge,
    seal: door.seal,
    outOfPlumb: door.opening.outOfPlumb,
    magnetTorque: table === null ? () => 0 : (angle) => tableTorque(table, angle),
  };
}

/** Computes all of a valid door. Never throws; what does not exist for this door is `null`. */
export function compute(door: Door, known: Known | null = null): Computed {
  const parts = mechanics(door, known);
  const { body, latch, system } = parts;
  const height = hingeHeight(door.opening.sillHeight, door.flap.bottomClearance, body.reach);
  const sets = restSetsOf(door, system, known);
  const centre = latch?.centre ?? 0;
  const outside = latch === null ? [] : setsOutside(sets, centre, latch.capture);
  const run = new SwingRun(new Motion(), new Trace());
  const retriggers = door.timer?.retriggers ?? true;
  const cross = (animal: Animal) =>
    crossing(door, system, animal, height, run, outside.length > 0, retriggers);
  const crossings = door.animals.map(cross);
  const longest = governing(crossings.map((c) => c.need));
  if (longest !== crossings.length - 1) cross(door.animals[longest]);
  const chief = crossings[longest];
  const resistance = resistanceOf(door, parts);
  const pushes = crossings.map((c) => push(c.animal, resistance, height, c.passage.letGoAngle));
  const electrics = computeElectrics(door);
  const timer = electrics.timer === null ? null : { ...electrics.timer, retriggers };
  const { pulseInterval } = door.detection;
  const { margin } = door.study;
  const settle = outside.length > 0 ? null : chief.swing.settleTime;
  return {
    door,
    ...parts,
    hingeHeight: height,
    restSets: sets,
    deadBand: deadBand(sets, centre),
    restsOutside: outside,
    crossings,
    governing: chief,
    trace: run.trace,
    fit: fitResult(door.opening, door.animals),
    pushes,
    hardestPush: hardestPush(pushes),
    gust: latch === null ? null : gustResult(resistance, door.air, latch.capture, latch.centre),
    ...electrics,
    holdRequired: chief.need === null ? null : (1 + margin) * chief.need,
    hold: timer === null ? null : holdResult(chief.passage, settle, timer, pulseInterval, margin),
    relatch: relatchAtNominal(door, parts, chief, electrics, run),
  };
}

function crossing(
  door: Door,
  system: SwingSystem,
  animal: Animal,
  height: number,
  run: SwingRun,
  canRestOutside: boolean,
  retriggers: boolean,
): Crossing {
  const reach = system.air.outer;
  const passed = passage(animal, door.detection, height, reach, door.hinge.stopAngle);
  const release = releaseState(passed.letGoAngle, door.release, door.hinge.stopAngle);
  const swing = laterSwing(run, system, release.angle, release.speed, isSymmetric(system));
  const settle = canRestOutside ? null : swing.settleTime;
  const need = holdNeeded(passed, settle, retriggers, door.detection.pulseInterval);
  return { animal, passage: passed, release, swing, need };
}

export interface Electrics {
  readonly timer: TimerResult | null;
  readonly solenoid: SolenoidResult | null;
  readonly driver: DriverResult | null;
  readonly supply: SupplyResult | null;
}

/** Timer, coil, driver and supply. */
export function computeElectrics(door: Door): Electrics {
  const timer = door.timer === null ? null : timerResult(door.timer, door.supply?.logicVoltage ?? null);
  const solenoid =
    door.solenoid === null
      ? null
      : solenoidResult(door.solenoid, door.driver, door.supply, door.latch, timer?.nominal ?? null);
  const current = solenoid?.coil?.current ?? null;
  const driver =
    door.driver === null || door.supply === null || current === null
      ? null
      : driverResult(door.driver, door.supply.voltage, current);
  const supply = door.supply === null ? null : supplyResult(door.supply, current);
  return { timer, solenoid, driver, supply };
}

/** Relatch of the governing swing at the timer's nominal hold; `null` without latch or timer. */
function relatchAtNominal(
  door: Door,
  parts: Mechanics,
  chief: Crossing,
  electrics: Electrics,
  run: SwingRun,
): HoldRelatch | null {
  if (door.timer === null || electrics.timer === null) return null;
  return relatchAt(door, parts, chief, run.trace, electrics.timer.nominal, electrics.solenoid);
}

/** The relatch of a crossing's swing at any hold, s; `null` without a latch. A coil without a clamp counts as released at once. */
export function relatchAt(
  door: Door,
  parts: Mechanics,
  chief: Crossing,
  trace: Trace,
  hold: number,
  solenoid: SolenoidResult | null,
): HoldRelatch | null {
  if (parts.latch === null) return null;
  const holdEnds = holdEnd(chief.passage, door.timer?.retriggers ?? true, hold);
  const release = solenoid?.bolt?.releaseTime ?? 0;
  const ride = rideSystem(parts.system, parts.latch);
  const state = { time: 0, angle: 0, speed: 0 };
  const result = relatch(ride, parts.system, trace, holdEnds, release, new Motion(), state);
  return { holdEnds, ...result };
}
