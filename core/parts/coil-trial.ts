/** What a coil's measured temperature tells of it: the inverse of `temperatureAfter` in the thermal resistance. */
import { type HeatedCoil, temperatureAfter } from "./coil-heating.ts";

/** Time a coil stays on for its temperature to be taken, s (choice: ten minutes). */
export const HEATING_TIME = 600;

/** Bisections: a relative 10⁻¹². */
const HALVINGS = 80;
/** No coil is insulated better, K/W. */
const MOST = 1e6;

/**
 * The thermal resistance, K/W, with which the coil would be at `temperature`, °C, after `time` s on from its ambient; its own
 * `thermalResistance` is not read, its time constant is taken as it stands. `null` where there is none: not warmer than its
 * surroundings, or hotter than any coil gets on that voltage.
 *
 * More resistance means more heat at every moment (model, section 5), so there is exactly one.
 */
export function thermalResistanceFrom(coil: HeatedCoil, time: number, temperature: number): number | null {
  if (!(temperature > coil.ambient && time > 0)) return null;
  const at = (thermalResistance: number) => temperatureAfter({ ...coil, thermalResistance }, time);
  let high = 1;
  while (at(high) < temperature) {
    high *= 2;
    if (high > MOST) return null;
  }
  let low = high === 1 ? 0 : high / 2;
  for (let i = 0; i < HALVINGS && high - low > 1e-12 * high; i++) {
    const middle = (low + high) / 2;
    if (at(middle) < temperature) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
