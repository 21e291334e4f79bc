/** What a hold measured by stopwatch changes in the file. */
import type { Timer } from "../../core/door/door.ts";
import { LN_3 } from "../../core/parts/timer.ts";
import { formatQuantity } from "../../core/quantity/format.ts";
import type { EntryChange } from "./entries.ts";

/** A stopwatch in a hand is this wrong, s (assumption, as on the bench card). */
export const STOPWATCH = 0.3;

/**
 * Nothing where the stopwatch could have shown the computed hold. With R and C the capacitor takes the difference: it is the part
 * that strays (assumption).
 */
export function measuredHold(timer: Timer, nominal: number, measured: number): EntryChange[] {
  if (Math.abs(measured - nominal) <= STOPWATCH) return [];
  const hold = { path: "timer.holdTime", entry: `${Number(measured.toFixed(2))} s` };
  if (timer.resistor === null || timer.capacitor === null) return [hold];
  const capacitor = measured / (timer.resistor * LN_3);
  return [hold, { path: "timer.capacitor", entry: formatQuantity(capacitor, "capacitance", "metric", 4) }];
}
