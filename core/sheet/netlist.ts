/**
 * The coil's circuit as a netlist (`.cir`) for general circuit simulators of the SPICE family, so that current, pull-in,
 * release and dissipation can be checked without this program. The timer is a pulse source; the coil is L and R at its
 * ambient; what the door's model idealises stays ideal: a Darlington is a switch with a constant drop, a MOSFET a switch
 * with its on-resistance, a clamp a constant voltage behind an ideal diode (model, section 5).
 */
import type { Computed } from "../review/compute.ts";
import { resultNamed } from "../review/results.ts";
import { type Circuit, circuitOf } from "./netlist-values.ts";

/** A measure the simulator makes, and what the core says it is. */
export interface Measure {
  /** Name in the simulator's output. */
  readonly name: string;
  /** Result of the review it checks; `null` for one the review does not list. */
  readonly result: string | null;
  readonly value: number;
  readonly unit: string;
  /** What is measured, after `.meas tran name`. */
  readonly how: string;
}

export interface Netlist {
  readonly text: string;
  readonly measures: readonly Measure[];
  /** Measures that do not exist for this door, each with its reason. */
  readonly absent: readonly string[];
}

/** Where a timer's pulse starts, and how long the run goes on after it, in time constants of the coil. */
const LEAD = 5;
const TAIL = 12;
/** Longest step, and the pulse's edges, in time constants. */
const STEP = 0.1;
const EDGE = 1e-4;
/** Closed and open switch against the coil's resistance: nothing, and no connection. */
const CLOSED = 1e-6;
const OPEN = 1e7;

/** A number as every simulator of the family reads it: no unit letters, an exponent where needed. */
export function spiceNumber(value: number): string {
  return String(Number(value.toPrecision(9)));
}
const n = spiceNumber;

/** The netlist of a door; `null` without solenoid, driver or supply (`netlistLacks` names them). */
export function netlist(computed: Computed): Netlist | null {
  const circuit = circuitOf(computed);
  if (circuit === null) return null;
  const { measures, absent } = measuresOf(circuit, computed);
  const text = [
    ...heading(circuit, computed.door.name),
    ...parts(circuit),
    ...run(circuit),
    ...expectations(measures, absent),
    ".end",
    "",
  ].join("\n");
  return { text, measures, absent };
}

function heading({ holdIs, hold }: Circuit, name: string): string[] {
  const holds = {
    "the timer's": "The timer's nominal hold.",
    stretched: "The timer's nominal hold is too short for a steady current; the pulse is stretched.",
    "cut short": "The timer's nominal hold is cut short: the current has long been steady.",
    "without a timer": "The door file has no timer; the pulse is long enough for a steady current.",
  };
  return [
    `* ${oneLine(name)}: coil, driver and supply`,
    "* Volts, amperes, ohms, henries, seconds. Coil at its ambient temperature.",
    `* Pulse of ${n(hold)} s. ${holds[holdIs]}`,
    "",
  ];
}

/** A line of a netlist ends where the file's line ends, so a name must not. */
function oneLine(words: string): string {
  return words.replace(/\p{Cc}+/gu, " ").trim();
}

function parts(c: Circuit): string[] {
  return [
    "* supply, and the regulator as the current it takes",
    `Vsupply in 0 DC ${n(c.supply.voltage)}`,
    "Vin in vcc DC 0",
    `Iregulator vcc 0 DC ${n(c.regulatorInput)}`,
    "",
    "* timer",
    `Vtimer drive 0 ${pulse(c)}`,
    "",
    "* coil with its ammeter",
    "Vcoil vcc coil DC 0",
    `Rcoil coil winding ${n(c.resistance)}`,
    `Lcoil winding switch ${n(c.solenoid.inductance)}`,
    "",
    ...driverParts(c),
    "",
    ...clampParts(c),
    "",
  ];
}

/** Without a clamp the coil stays on: what switching it off would do is no business of an ideal switch. */
function pulse(c: Circuit): string {
  const { timeConstant: tau, driver } = c;
  const [start, edge] = [LEAD * tau, EDGE * tau];
  if (driver.clamp === "none") return `PWL(0 0 ${n(start)} 0 ${n(start + edge)} ${n(driver.driveVoltage)})`;
  const period = 2 * stopTime(c);
  return `PULSE(0 ${n(driver.driveVoltage)} ${n(start)} ${n(edge)} ${n(edge)} ${n(c.hold)} ${n(period)})`;
}

function driverParts(c: Circuit): string[] {
  const { driver, resistance } = c;
  const on = Math.max(driver.kind === "mosfet" ? (driver.onResistance ?? 0) : 0, CLOSED * resistance);
  const off = OPEN * Math.max(on, resistance);
  const lines = [
    `Sdriver switch emitter drive 0 driver`,
    `.model driver SW(VT=${n(driver.driveVoltage / 2)} VH=0 RON=${n(on)} ROFF=${n(off)})`,
  ];
  if (driver.kind === "mosfet") {
    return ["* MOSFET: a switch with its on-resistance, and an ammeter", ...lines, "Vdriver emitter 0 DC 0"];
  }
  return [
    "* Darlington: a switch, and in series the voltage it keeps, which is its ammeter too",
    ...lines,
    `Vdriver emitter 0 DC ${n(c.drop)}`,
    "* its base, driven through the base resistor; the gain is not modelled, compare base_current with the coil's over h_FE",
    `Rbase drive base ${n(driver.baseResistor)}`,
    "Dbase base junction ideal",
    `Vbase junction 0 DC ${n(driver.baseEmitterVoltage)}`,
    IDEAL_DIODE,
  ];
}

/** Less than a millivolt at any current a coil takes. */
const IDEAL_DIODE = ".model ideal D(IS=1e-12 N=0.001)";

function clampParts({ driver }: Circuit): string[] {
  if (driver.clamp === "none") {
    return ["* NO CLAMP across the coil: add one. It is left switched on here."];
  }
  const what = driver.clamp === "diode" ? "flyback diode" : "zener and diode in series";
  return [
    `* clamp across the coil: ${what}, ${n(driver.clampVoltage)} V in all`,
    "Dclamp switch clamp ideal",
    `Vclamp clamp vcc DC ${n(driver.clampVoltage)}`,
    ...(driver.kind === "darlington" ? [] : [IDEAL_DIODE]),
  ];
}

const stopTime = ({ timeConstant, hold }: Circuit) => (LEAD + TAIL) * timeConstant + hold;

function run(c: Circuit): string[] {
  const step = n(STEP * c.timeConstant);
  return [
    "* heat in the driver, W as volts",
    "Bheat heat 0 V=V(switch)*I(Vdriver)",
    "",
    ".options reltol=1e-5",
    `.tran ${step} ${n(stopTime(c))} 0 ${step}`,
    "",
  ];
}

interface Measures {
  readonly measures: readonly Measure[];
  readonly absent: readonly string[];
}

function measuresOf(c: Circuit, computed: Computed): Measures {
  const at = `AT=${n((LEAD - 1) * c.timeConstant + c.hold)}`;
  const found = (name: string) => `FIND ${name} ${at}`;
  const steady: Measure[] = [
    listed("coil_current", "solenoid.current", found("I(Vcoil)"), computed),
    listed("supply_current", "supply.current", found("I(Vin)"), computed),
    listed("driver_dissipation", "driver.dissipation", found("V(heat)"), computed),
  ];
  const base = computed.driver?.baseCurrent ?? null;
  if (base !== null)
    steady.push({ name: "base_current", result: null, value: base, unit: "A", how: found("I(Vbase)") });
  const pull = pullInMeasure(c, computed);
  const release = releaseMeasure(c, computed);
  const moving = [pull, release];
  return {
    measures: [...steady, ...moving.filter((one) => typeof one !== "string")],
    absent: moving.filter((one) => typeof one === "string"),
  };
}

function listed(name: string, result: string, how: string, computed: Computed): Measure {
  const definition = resultNamed(result);
  const value = definition?.value(computed) ?? null;
  if (definition === undefined || value === null) {
    throw new Error(`Input result of a measure must exist for this door; received ${result}`);
  }
  return { name, result, value, unit: definition.unit, how };
}

/** From the middle of the drive's edge to the current: the edge is short against everything else. */
function between(c: Circuit, edge: "RISE" | "FALL", current: number): string {
  const half = n(c.driver.driveVoltage / 2);
  return `TRIG V(drive) VAL=${half} ${edge}=1 TARG I(Vcoil) VAL=${n(current)} ${edge}=1`;
}

function pullInMeasure(c: Circuit, computed: Computed): Measure | string {
  const name = "pull_in_time";
  const { pullInCurrent: needed, current } = c;
  if (c.latch === null) return `${name}: the door file has no latch to pull`;
  if (needed === null) return `${name}: no current withdraws the bolt`;
  if (needed === 0) return `${name}: the bolt needs no pull`;
  if (needed >= current)
    return `${name}: ${n(needed)} A withdraw the bolt, the coil takes ${n(current)} A: it does not pull in`;
  return listed(name, "solenoid.pullInTime", between(c, "RISE", needed), computed);
}

function releaseMeasure(c: Circuit, computed: Computed): Measure | string {
  const name = "release_time";
  const { releaseCurrent: least, current } = c;
  if (c.latch === null) return `${name}: the door file has no latch to let go`;
  if (c.driver.clamp === "none") return `${name}: no clamp, the energy of the coil goes into the transistor`;
  if (least === null) return `${name}: the bolt does not rise by itself`;
  if (current <= least) {
    const held = Number.isFinite(least) ? `${n(least)} A hold the bolt in` : "no current holds the bolt in";
    return `${name}: ${held}, the coil takes ${n(current)} A: the bolt is free at once`;
  }
  return listed(name, "solenoid.releaseTime", between(c, "FALL", least), computed);
}

function expectations(measures: readonly Measure[], absent: readonly string[]): string[] {
  return [
    "* what to expect",
    ...measures.map(({ name, value, unit }) => `*   ${name} = ${n(value)} ${unit}`),
    ...absent.map((why) => `*   no ${why}`),
    ...measures.map(({ name, how }) => `.meas tran ${name} ${how}`),
  ];
}
