/** Small parts of the circuit that the door file does not name, chosen from the computed door. SI; each rule says whose it is. */
import { preferredAbove } from "../quantity/preferred.ts";
import type { Computed } from "../review/compute.ts";

/** Rated currents of fuse-links, one decade: R10 of ISO 3 as IEC 60127 has it (from memory). */
const FUSES = [1, 1.25, 1.6, 2, 2.5, 3.15, 4, 5, 6.3, 8] as const;
/** A fuse carries at most this part of its rating for good (common practice, no source). */
const FUSE_LOAD = 2 / 3;
/** Of an ordinary red LED (common practice, no source): V across it and A that are bright enough indoors. */
const LAMP_VOLTAGE = 2;
const LAMP_CURRENT = 5e-3;
/** Holds a gate at 0 V while a board starts up, ohm (common practice, no source). */
export const GATE_PULL_DOWN = 100e3;
/** Holds the trigger input high between pulses, ohm (common practice, no source). */
export const TRIGGER_PULL_UP = 10e3;
/** From the control pin of the common timer chip to 0 V, F (its published application). */
export const CONTROL_CAPACITOR = 10e-9;
/** Logic voltage where the file has no supply, V: the file's default. */
const LOGIC_VOLTAGE = 5;

/** Time-lag fuse between adapter and door, A: the least that carries the draw for good; `null` where the draw is not known. */
export function fuseRating(draw: number | null): number | null {
  if (draw === null || !(draw > 0)) return null;
  const least = draw / FUSE_LOAD;
  const decade = Math.floor(Math.log10(least));
  const ratings = [decade, decade + 1].flatMap((e) => FUSES.map((m) => Number(`${m}e${e}`)));
  return ratings.find((rating) => rating >= least * (1 - 1e-9)) ?? null;
}

export interface WiringValues {
  /** A. */
  readonly fuse: number | null;
  /** The adapter's limit is below the fuse: it lets go first, and the fuse never blows. */
  readonly fuseIdle: boolean;
  /** In series with the indicator, ohm (E12); `null` where the output is too low to light one. */
  readonly lampResistor: number | null;
  /** What drives transistor and indicator, V. */
  readonly driveVoltage: number;
}

export function wiringValues(computed: Computed): WiringValues {
  const { driver, supply } = computed.door;
  const fuse = fuseRating(computed.supply?.current ?? null);
  const driveVoltage = driver?.driveVoltage ?? supply?.logicVoltage ?? LOGIC_VOLTAGE;
  const spare = driveVoltage - LAMP_VOLTAGE;
  return {
    fuse,
    fuseIdle: fuse !== null && supply !== null && fuse > supply.currentLimit,
    lampResistor: spare >= 0.2 * LAMP_VOLTAGE ? preferredAbove(spare / LAMP_CURRENT, "E12") : null,
    driveVoltage,
  };
}
