/**
 * The numbers a netlist of the coil's circuit stands on, all from the door and the core's formulas. SI throughout.
 */
import type { Door, Driver, Latch, Solenoid, Supply } from "../door/door.ts";
import { netBoltForce } from "../door/latch-limits.ts";
import { resistanceAt } from "../parts/coil-heating.ts";
import { driveCircuit } from "../parts/driver.ts";
import { coilCurrent, ratedForce, ratedResistance, releaseCurrent } from "../parts/solenoid.ts";
import type { Computed } from "../review/compute.ts";

/** The sections without which there is no circuit to simulate. */
export const NEEDED = ["solenoid", "driver", "supply"] as const;

/** A door that has a circuit. */
export interface Circuit {
  readonly solenoid: Solenoid;
  readonly driver: Driver;
  readonly supply: Supply;
  readonly latch: Latch | null;
  /** Of the coil at its ambient, ohm. */
  readonly resistance: number;
  /** L/R, s. */
  readonly timeConstant: number;
  /** Steady coil current, A. */
  readonly current: number;
  /** What the switch keeps whatever the current, V; never more than there is. */
  readonly drop: number;
  /** What the regulator takes, A. */
  readonly regulatorInput: number;
  /** i_p, A; `null` without a latch or where no current withdraws the bolt. */
  readonly pullInCurrent: number | null;
  /** i_r, A; `null` without a latch or where the bolt does not rise by itself. */
  readonly releaseCurrent: number | null;
  /** Length of the timer's pulse as simulated, s. */
  readonly hold: number;
  readonly holdIs: "the timer's" | "stretched" | "cut short" | "without a timer";
}

/** A steady current is one after this many time constants: within e^−20 of its end. */
const STEADY = 20;
/** A hold is not simulated for longer than this many time constants: nothing happens any more. */
const LONGEST = 10_000;

/** The circuit of a door; `null` where a section of `NEEDED` is missing. */
export function circuitOf(computed: Computed): Circuit | null {
  const { solenoid, driver, supply, latch } = computed.door;
  if (solenoid === null || driver === null || supply === null) return null;
  const resistance = resistanceAt(ratedResistance(solenoid), solenoid.ambient);
  const circuit = driveCircuit(driver, supply.voltage);
  const timeConstant = solenoid.inductance / resistance;
  return {
    solenoid,
    driver,
    supply,
    latch,
    resistance,
    timeConstant,
    current: coilCurrent(circuit, resistance),
    drop: circuit.drop === 0 ? 0 : supply.voltage - circuit.voltage,
    regulatorInput: computed.supply?.regulatorInput ?? 0,
    pullInCurrent: computed.solenoid?.bolt?.pullIn.pullInCurrent ?? null,
    releaseCurrent: latch === null ? null : releaseCurrentOf(solenoid, latch),
    ...simulatedHold(computed.timer?.nominal ?? null, timeConstant),
  };
}

function releaseCurrentOf(solenoid: Solenoid, latch: Latch): number | null {
  const net = netBoltForce(latch.springForce, latch.boltMass, latch.boltPoints);
  return releaseCurrent(solenoid.ratedCurrent, net, ratedForce(solenoid.pull, 0));
}

function simulatedHold(nominal: number | null, timeConstant: number): Pick<Circuit, "hold" | "holdIs"> {
  const least = STEADY * timeConstant;
  const most = LONGEST * timeConstant;
  if (nominal === null) return { hold: least, holdIs: "without a timer" };
  if (nominal < least) return { hold: least, holdIs: "stretched" };
  if (nominal > most) return { hold: most, holdIs: "cut short" };
  return { hold: nominal, holdIs: "the timer's" };
}

/** The sections a door lacks for a netlist, by their names in the door file. */
export function netlistLacks(door: Door): readonly string[] {
  return NEEDED.filter((section) => door[section] === null);
}
