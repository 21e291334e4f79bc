/**
 * The transistor that switches the coil (model, section 5): what it leaves of the supply, whether its base is
 * driven hard enough, what it heats. Plain SI numbers.
 */
import type { Driver } from "../door/door.ts";

/** The coil's supply as the coil sees it: a voltage behind a resistance. */
export interface DriveCircuit {
  /** Volts left for resistance: V_s − V_drop (Darlington) or V_s (MOSFET), never below 0. */
  readonly voltage: number;
  /** In series with the coil, ohm: 0 (Darlington) or R_on (MOSFET). */
  readonly resistance: number;
  /** Volts the switch takes whatever the current: V_drop, or 0. */
  readonly drop: number;
}

/** Base current over what the coil's current needs: at least this (model, section 5; common practice, no source). */
export const LEAST_OVERDRIVE = 2;

/** A Darlington takes a fixed voltage, a MOSFET a fixed resistance (Horowitz and Hill, *The Art of Electronics*). */
export function driveCircuit(driver: Driver, supplyVoltage: number): DriveCircuit {
  if (driver.kind === "mosfet") {
    return { voltage: supplyVoltage, resistance: driver.onResistance ?? 0, drop: 0 };
  }
  return {
    voltage: Math.max(0, supplyVoltage - driver.dropVoltage),
    resistance: 0,
    drop: driver.dropVoltage,
  };
}

/** (V_drive − V_BE)/R_b, A; 0 where the drive does not reach the base-emitter voltage. */
export function baseCurrent(driveVoltage: number, baseEmitterVoltage: number, baseResistor: number): number {
  return Math.max(0, driveVoltage - baseEmitterVoltage) / baseResistor;
}

/** Power in the switch with the coil on, W: V_drop I or I² R_on. */
export function switchDissipation(circuit: DriveCircuit, coilCurrent: number): number {
  return circuit.drop * coilCurrent + circuit.resistance * coilCurrent * coilCurrent;
}

export interface DriverResult {
  /** What the drive pushes into the base, A; `null` for a MOSFET, whose gate takes none. */
  readonly baseCurrent: number | null;
  /** I/h_FE, the least base current that carries the coil's, A; `null` for a MOSFET. */
  readonly neededBaseCurrent: number | null;
  /** baseCurrent over neededBaseCurrent; `null` for a MOSFET and where no current flows in the coil. */
  readonly overdrive: number | null;
  /** W, at the coil's current at its ambient. */
  readonly dissipation: number;
}

/** The driver at a coil current, A (the coil's at its ambient: `SolenoidResult.current`). */
export function driverResult(driver: Driver, supplyVoltage: number, coilCurrent: number): DriverResult {
  const dissipation = switchDissipation(driveCircuit(driver, supplyVoltage), coilCurrent);
  if (driver.kind === "mosfet") {
    return { baseCurrent: null, neededBaseCurrent: null, overdrive: null, dissipation };
  }
  const base = baseCurrent(driver.driveVoltage, driver.baseEmitterVoltage, driver.baseResistor);
  const needed = coilCurrent / driver.currentGain;
  const overdrive = needed > 0 ? base / needed : null;
  return { baseCurrent: base, neededBaseCurrent: needed, overdrive, dissipation };
}

/** The largest base resistor that still gives the asked overdrive, ohm; `null` where no resistor does. */
export function baseResistorFor(
  driver: Driver,
  coilCurrent: number,
  overdrive = LEAST_OVERDRIVE,
): number | null {
  const spare = driver.driveVoltage - driver.baseEmitterVoltage;
  if (driver.kind === "mosfet" || !(coilCurrent > 0) || !(spare > 0)) return null;
  return spare / ((overdrive * coilCurrent) / driver.currentGain);
}
