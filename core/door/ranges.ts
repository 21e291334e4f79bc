/**
 * Physical ranges of the door file's quantities, SI. The far ends are assumptions of this program: they lie a factor
 * of a hundred or more beyond any pet door, catch slipped prefixes (a flap of 390 m) and keep every formula finite.
 */
import type { Range } from "./field.ts";

const DEGREE = Math.PI / 180;

export const LENGTH: Range = { min: 1e-6, max: 100 };
export const LENGTH_OR_ZERO: Range = { min: 0, max: 100 };
export const LENGTH_EITHER_WAY: Range = { min: -100, max: 100 };
export const MASS: Range = { min: 1e-6, max: 10_000 };
export const MASS_OR_ZERO: Range = { min: 0, max: 10_000 };
export const TIME: Range = { min: 1e-3, max: 1e6 };
export const SPEED: Range = { min: 1e-3, max: 100 };
/** Strongest gust measured on the ground: 113 m/s (WMO, Barrow Island 1996). */
export const WIND: Range = { min: -150, max: 150 };
export const TORQUE_OR_ZERO: Range = { min: 0, max: 10_000 };
export const DAMPING_OR_ZERO: Range = { min: 0, max: 10_000 };
export const FORCE: Range = { min: 1e-6, max: 100_000 };
export const FORCE_OR_ZERO: Range = { min: 0, max: 100_000 };
export const PRESSURE_EITHER_WAY: Range = { min: -100_000, max: 100_000 };
/** Osmium, the densest element: 22 590 kg/m³ (handbook, from memory). */
export const SOLID_DENSITY: Range = { min: 0.1, max: 25_000 };
/** From a vacuum to water, for lessons. */
export const FLUID_DENSITY: Range = { min: 0, max: 1100 };
/** No permanent magnet reaches 2 T. */
export const REMANENCE: Range = { min: 1e-6, max: 2 };
/** Above absolute zero; NdFeB loses its magnetism near 310 °C (handbook, from memory). */
export const MAGNET_TEMPERATURE: Range = { min: -273, max: 310 };
/** Copper's linear law (IEC 60028) reaches zero resistance at −234 °C; no electronics is used beyond these. */
export const AMBIENT: Range = { min: -200, max: 200 };
export const VOLTAGE: Range = { min: 1e-3, max: 1000 };
export const VOLTAGE_OR_ZERO: Range = { min: 0, max: 1000 };
export const CURRENT: Range = { min: 1e-6, max: 1000 };
export const CURRENT_OR_ZERO: Range = { min: 0, max: 1000 };
export const RESISTANCE: Range = { min: 1e-6, max: 1e9 };
export const RESISTANCE_OR_ZERO: Range = { min: 0, max: 1e9 };
export const INDUCTANCE: Range = { min: 1e-9, max: 1000 };
export const CAPACITANCE: Range = { min: 1e-12, max: 10 };
export const THERMAL_RESISTANCE: Range = { min: 1e-3, max: 10_000 };
export const THERMAL_RESISTANCE_OR_ZERO: Range = { min: 0, max: 10_000 };
export const RELEASE_SPEED: Range = { min: -1000, max: 1000 };
/** Up to, and short of, straight up. */
export const STOP_ANGLE: Range = { min: 0.01 * DEGREE, max: Math.PI, maxOpen: true };
export const SWING_ANGLE: Range = { min: 0, max: Math.PI };
export const ANGLE_EITHER_WAY: Range = { min: -Math.PI, max: Math.PI };
export const PLUMB: Range = { min: -45 * DEGREE, max: 45 * DEGREE };
export const FRACTION: Range = { min: 0, max: 1 };
export const PART_OF_ONE: Range = { min: 0, max: 1, maxOpen: true };
