/**
 * The supply and the regulator that makes the logic voltage of it (model, section 5). Plain SI numbers.
 */
import type { Supply } from "../door/door.ts";

/** Regulator temperatures that caution and that fail, °C (model, section 5). */
export const REGULATOR_CAUTION = 100;
export const REGULATOR_FAIL = 125;

/** Linear: the whole drop at the whole current, W: (V_in − V_out) I; 0 where there is no drop to burn. */
export function linearDissipation(inputVoltage: number, outputVoltage: number, current: number): number {
  return Math.max(0, inputVoltage - outputVoltage) * current;
}

/** Switching: what the efficiency loses, W: V_out I (1/η − 1). */
export function switchingDissipation(outputVoltage: number, current: number, efficiency: number): number {
  return outputVoltage * current * (1 / efficiency - 1);
}

/** Switching: input current, A: V_out I/(η V_in). A linear regulator passes its output current. */
export function switchingInput(
  inputVoltage: number,
  outputVoltage: number,
  current: number,
  efficiency: number,
): number {
  return (outputVoltage * current) / (efficiency * inputVoltage);
}

export interface SupplyResult {
  /** W. */
  readonly regulatorDissipation: number;
  /** T_a + P θ_JA, °C. */
  readonly regulatorTemperature: number;
  /** What the regulator takes from the supply, A. */
  readonly regulatorInput: number;
  /** The supply is above the logic voltage: a regulator that only steps down can work at all. */
  readonly regulates: boolean;
  /** Coil at ambient and regulator together, A; `null` where the coil's current is. */
  readonly current: number | null;
}

/** The supply of a door; `coilCurrent` is the coil's at its ambient, A, `null` without one. */
export function supplyResult(supply: Supply, coilCurrent: number | null): SupplyResult {
  const { voltage, logicVoltage, logicCurrent, efficiency } = supply;
  const linear = supply.regulator === "linear";
  const dissipation = linear
    ? linearDissipation(voltage, logicVoltage, logicCurrent)
    : switchingDissipation(logicVoltage, logicCurrent, efficiency);
  const input = linear ? logicCurrent : switchingInput(voltage, logicVoltage, logicCurrent, efficiency);
  return {
    regulatorDissipation: dissipation,
    regulatorTemperature: supply.ambient + dissipation * supply.thermalResistance,
    regulatorInput: input,
    regulates: voltage > logicVoltage,
    current: coilCurrent === null ? null : coilCurrent + input,
  };
}
