/** What a coil's temperature measured after ten minutes changes in the file. */
import { formatQuantity } from "../../core/quantity/format.ts";
import type { EntryChange } from "./entries.ts";

/** A thermometer taped to a coil is this wrong, K (assumption). */
export const THERMOMETER = 2;

export interface CoilMeasured {
  /** °C. */
  readonly hot: number;
  readonly measured: number;
  /** K/W; `null` where none reaches what was measured. */
  readonly resistance: number | null;
}

/**
 * Nothing where the thermometer could have shown the computed temperature. Else the thermal resistance that reaches the measured one
 * in the model, with the time constant as in the file.
 */
export function measuredCoil({ hot, measured, resistance }: CoilMeasured): EntryChange[] {
  if (resistance === null || Math.abs(measured - hot) <= THERMOMETER) return [];
  return [
    {
      path: "solenoid.thermalResistance",
      entry: formatQuantity(resistance, "thermalResistance", "metric", 3),
    },
  ];
}
