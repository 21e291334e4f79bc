/**
 * The solenoid that pulls the bolt back (model, section 5): current, pull, pull-in, release and heat.
 * Plain SI numbers, temperatures in °C. Electrical times only: the plunger's motion adds milliseconds.
 * "Full stroke" is the plunger's gap with the bolt fully extended (`solenoid.stroke`), where pull is least;
 * stroke 0 is seated.
 */
import type { Driver, InsulationClass, Latch, PullPoint, Solenoid, Supply } from "../door/door.ts";
import { netBoltForce } from "../door/latch-limits.ts";
import { continuousTemperature, type HeatedCoil, resistanceAt, temperatureAfter } from "./coil-heating.ts";
import { type DriveCircuit, driveCircuit } from "./driver.ts";

/** Hottest-spot limits of the insulation classes, °C (IEC 60085). */
export const CLASS_LIMIT: Readonly<Record<InsulationClass, number>> = {
  A: 105,
  E: 120,
  B: 130,
  F: 155,
  H: 180,
};

/** A surface people or animals touch is cautioned above this, °C (model, section 5). */
export const TOUCH_CAUTION = 60;

/** The supply's low end as a part of its rated voltage (model, section 5: −5 %). */
export const SUPPLY_LOW_END = 0.95;

/** Rated pull at a stroke, N: straight lines between the points of the curve, flat beyond its ends. */
export function ratedForce(pull: readonly PullPoint[], stroke: number): number {
  const next = pull.findIndex((point) => point.stroke >= stroke);
  if (next === -1) return pull[pull.length - 1].force;
  const high = pull[next];
  if (next === 0) return high.force;
  const low = pull[next - 1];
  const share = (stroke - low.stroke) / (high.stroke - low.stroke);
  return low.force + share * (high.force - low.force);
}

/** Pull at a current, N: F(x)(i/I_r)², an unsaturated core (Roters, *Electromagnetic Devices*, from memory). */
export function forceAt(rated: number, current: number, ratedCurrent: number): number {
  return rated * (current / ratedCurrent) ** 2;
}

/** Coil current in a drive circuit, A. */
export function coilCurrent(circuit: DriveCircuit, resistance: number): number {
  return circuit.voltage / (resistance + circuit.resistance);
}

/** Force needed to withdraw the bolt against a side load N, N: net bolt force + k_g μ N. */
export function withdrawForce(
  netBolt: number,
  guideFactor: number,
  friction: number,
  sideLoad: number,
): number {
  return netBolt + guideFactor * friction * sideLoad;
}

/**
 * i_p = I_r √(F_needed/F(full stroke)), A. 0 where nothing needs to be pulled (a bolt that falls back by
 * itself), `null` where the coil has no pull at full stroke.
 */
export function pullInCurrent(ratedCurrent: number, needed: number, ratedFull: number): number | null {
  if (needed <= 0) return 0;
  return ratedFull > 0 ? ratedCurrent * Math.sqrt(needed / ratedFull) : null;
}

/** Supply voltage at which the pull-in current flows, V: i_p (R + R_on) + V_drop. */
export function pullInVoltage(current: number, resistance: number, circuit: DriveCircuit): number {
  return current * (resistance + circuit.resistance) + circuit.drop;
}

/** −τ ln(1 − i_p/i), s; `null` if the current never gets there. */
export function pullInTime(timeConstant: number, pullIn: number, current: number): number | null {
  return pullIn < current ? -timeConstant * Math.log1p(-pullIn / current) : null;
}

/** Current below which the seated plunger lets go, A: F(0)(i_r/I_r)² = net bolt force; `null` if F ≤ 0. */
export function releaseCurrent(ratedCurrent: number, netBolt: number, ratedSeated: number): number | null {
  if (netBolt <= 0) return null;
  return ratedSeated > 0 ? ratedCurrent * Math.sqrt(netBolt / ratedSeated) : Number.POSITIVE_INFINITY;
}

/**
 * τ ln((i + V_f/R)/(i_r + V_f/R)), s: a current that decays towards −V_f/R through the clamp.
 * 0 if i ≤ i_r: the coil could not keep the bolt in, so the bolt is free the moment the hold ends.
 */
export function releaseTime(
  inductance: number,
  resistance: number,
  clampVoltage: number,
  current: number,
  release: number,
): number {
  if (current <= release) return 0;
  const clampCurrent = clampVoltage / resistance;
  return (inductance / resistance) * Math.log((current + clampCurrent) / (release + clampCurrent));
}

/**
 * The side load at which a pull just fails, N: (pull − net bolt force)/(k_g μ); negative where the coil
 * fails unloaded, `null` without friction.
 */
export function sideLoadLimit(
  pull: number,
  netBolt: number,
  guideFactor: number,
  friction: number,
): number | null {
  return friction > 0 ? (pull - netBolt) / (guideFactor * friction) : null;
}

/** Whether the coil pulls the bolt in, at one temperature and one supply voltage. */
export interface PullIn {
  readonly supplyVoltage: number;
  /** Of the coil, °C. */
  readonly temperature: number;
  /** Of the coil there, ohm. */
  readonly resistance: number;
  /** In the steady state, A. */
  readonly current: number;
  /** Pull at full stroke at that current, N. */
  readonly force: number;
  /** Needed to withdraw, side load included, N. */
  readonly needed: number;
  /** i_p, A. */
  readonly pullInCurrent: number | null;
  /** V. */
  readonly pullInVoltage: number | null;
  /** s; `null` if it never pulls in. */
  readonly time: number | null;
  readonly pullsIn: boolean;
}

/** Pull-in at a coil temperature, °C, and a supply voltage, V. */
export function pullIn(
  solenoid: Solenoid,
  driver: Driver,
  latch: Latch,
  supplyVoltage: number,
  temperature: number,
): PullIn {
  const circuit = driveCircuit(driver, supplyVoltage);
  const resistance = resistanceAt(ratedResistance(solenoid), temperature);
  const current = coilCurrent(circuit, resistance);
  const full = ratedForce(solenoid.pull, solenoid.stroke);
  const needed = neededForce(latch);
  const least = pullInCurrent(solenoid.ratedCurrent, needed, full);
  const time = least === null ? null : pullInTime(solenoid.inductance / resistance, least, current);
  return {
    supplyVoltage,
    temperature,
    resistance,
    current,
    force: forceAt(full, current, solenoid.ratedCurrent),
    needed,
    pullInCurrent: least,
    pullInVoltage: least === null ? null : pullInVoltage(least, resistance, circuit),
    time,
    pullsIn: time !== null,
  };
}

/** V_r/I_r, ohm: the coil at 20 °C. */
export function ratedResistance(solenoid: Solenoid): number {
  return solenoid.ratedVoltage / solenoid.ratedCurrent;
}

/** The force a latch needs to withdraw under its own `sideLoad`, N. */
export function neededForce(latch: Latch): number {
  const net = netBoltForce(latch.springForce, latch.boltMass, latch.boltPoints);
  return withdrawForce(net, latch.guideFactor, latch.frictionCoefficient, latch.sideLoad);
}

/** The coil as the heating model takes it. */
export function heatedCoil(solenoid: Solenoid, driver: Driver, supplyVoltage: number): HeatedCoil {
  const circuit = driveCircuit(driver, supplyVoltage);
  return {
    resistance20: ratedResistance(solenoid),
    voltage: circuit.voltage,
    seriesResistance: circuit.resistance,
    ambient: solenoid.ambient,
    thermalResistance: solenoid.thermalResistance,
    timeConstant: solenoid.thermalTimeConstant,
  };
}

/** Time from the end of the drive to the free bolt, s, coil at ambient; `null` without a clamp or a net bolt force. */
export function coilReleaseTime(
  solenoid: Solenoid,
  driver: Driver,
  latch: Latch,
  supplyVoltage: number,
): number | null {
  if (driver.clamp === "none") return null;
  const net = netBoltForce(latch.springForce, latch.boltMass, latch.boltPoints);
  const release = releaseCurrent(solenoid.ratedCurrent, net, ratedForce(solenoid.pull, 0));
  if (release === null) return null;
  const resistance = resistanceAt(ratedResistance(solenoid), solenoid.ambient);
  const current = coilCurrent(driveCircuit(driver, supplyVoltage), resistance);
  return releaseTime(solenoid.inductance, resistance, driver.clampVoltage, current, release);
}

/** What the coil does on one supply with one driver. */
export interface PoweredCoil {
  /** A, coil at ambient. */
  readonly current: number;
  /** °C, after one hold of the timer from ambient; `null` without a timer. */
  readonly holdTemperature: number | null;
  /** °C, never switched off. */
  readonly continuousTemperature: number;
}

/** What the coil does to the bolt of one latch. */
export interface CoilAndBolt {
  /** Coil at ambient, rated supply. */
  readonly pullIn: PullIn;
  /** Coil at its continuous temperature, rated supply. */
  readonly pullInHot: PullIn;
  /** Coil at ambient, supply at its low end. */
  readonly pullInLow: PullIn;
  /** Coil as hot as the rated supply makes it, then the supply at its low end (assumption, on the safe side). */
  readonly pullInHotLow: PullIn;
  /** s; `null` without a clamp, or where the bolt never rises. */
  readonly releaseTime: number | null;
  /** N at which the coil at its continuous temperature just fails at full stroke; `null` without friction. */
  readonly sideLoadLimit: number | null;
}

export interface SolenoidResult {
  /** At 20 °C, ohm. */
  readonly resistance: number;
  /** Coil at ambient, V, whatever the supply is; `null` without driver or latch, or where no current withdraws the bolt. */
  readonly pullInVoltage: number | null;
  /** `null` without driver or supply. */
  readonly coil: PoweredCoil | null;
  /** `null` without driver, supply or latch. */
  readonly bolt: CoilAndBolt | null;
}

/** The solenoid of a door. `holdTime` is timer.nominal, s, `null` without a timer. */
export function solenoidResult(
  solenoid: Solenoid,
  driver: Driver | null,
  supply: Supply | null,
  latch: Latch | null,
  holdTime: number | null,
): SolenoidResult {
  const resistance = ratedResistance(solenoid);
  const least = driver === null || latch === null ? null : leastSupply(solenoid, driver, latch);
  const unpowered = { resistance, pullInVoltage: least, coil: null, bolt: null };
  if (driver === null || supply === null) return unpowered;
  const coil = poweredCoil(solenoid, driver, supply.voltage, holdTime);
  if (latch === null) return { ...unpowered, coil };
  return { ...unpowered, coil, bolt: coilAndBolt(solenoid, driver, latch, supply.voltage, coil) };
}

/** The pull-in voltage of the coil at its ambient, V: no figure of the supply is in it. */
function leastSupply(solenoid: Solenoid, driver: Driver, latch: Latch): number | null {
  return pullIn(solenoid, driver, latch, 0, solenoid.ambient).pullInVoltage;
}

function poweredCoil(
  solenoid: Solenoid,
  driver: Driver,
  supplyVoltage: number,
  holdTime: number | null,
): PoweredCoil {
  const heated = heatedCoil(solenoid, driver, supplyVoltage);
  const resistance = resistanceAt(heated.resistance20, solenoid.ambient);
  return {
    current: coilCurrent(driveCircuit(driver, supplyVoltage), resistance),
    holdTemperature: holdTime === null ? null : temperatureAfter(heated, holdTime),
    continuousTemperature: continuousTemperature(heated),
  };
}

function coilAndBolt(
  solenoid: Solenoid,
  driver: Driver,
  latch: Latch,
  voltage: number,
  coil: PoweredCoil,
): CoilAndBolt {
  const at = (supplyVoltage: number, temperature: number) =>
    pullIn(solenoid, driver, latch, supplyVoltage, temperature);
  const hot = at(voltage, coil.continuousTemperature);
  const net = netBoltForce(latch.springForce, latch.boltMass, latch.boltPoints);
  return {
    pullIn: at(voltage, solenoid.ambient),
    pullInHot: hot,
    pullInLow: at(voltage * SUPPLY_LOW_END, solenoid.ambient),
    pullInHotLow: at(voltage * SUPPLY_LOW_END, coil.continuousTemperature),
    releaseTime: coilReleaseTime(solenoid, driver, latch, voltage),
    sideLoadLimit: sideLoadLimit(hot.force, net, latch.guideFactor, latch.frictionCoefficient),
  };
}
