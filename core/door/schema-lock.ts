/** The schema's second half: the latch and all that drives it, detection, and what is asked of the computation. */
import type { Detection, Driver, Latch, Release, Solenoid, Study, Supply, Timer } from "./door.ts";
import { choice, type Field, flag, number, quantity, required, requiredWhen } from "./field.ts";
import * as R from "./ranges.ts";

export const latch = {
  boltWidth: quantity("length", R.LENGTH, required, "Width of the bolt along the swing."),
  slotWidth: quantity(
    "length",
    R.LENGTH,
    required,
    "Width of the slot along the swing; wider than the bolt.",
  ),
  distanceFromHinge: quantity("length", R.LENGTH, required, "From the hinge axis to the latch."),
  tipGap: quantity(
    "length",
    R.LENGTH_OR_ZERO,
    required,
    "From the withdrawn bolt's tip to the slot's mouth.",
  ),
  engagement: quantity(
    "length",
    R.LENGTH,
    required,
    "Least depth in the slot at which the bolt holds the flap.",
  ),
  edgeHalfWidth: quantity(
    "length",
    R.LENGTH,
    required,
    "Half the width of flap edge and strike along the swing.",
  ),
  boltMass: quantity("mass", R.MASS, required, "Mass of bolt, plunger and link."),
  springForce: quantity(
    "force",
    R.FORCE_OR_ZERO,
    required,
    "Force of the bolt's spring, mean over the stroke.",
  ),
  frictionCoefficient: number(
    { min: 0, max: 100 },
    0.2,
    "Friction coefficient of the bolt on the strike and in its guide.",
  ),
  guideFactor: number(
    { min: 1, max: 1000 },
    2,
    "Factor on the side load for the guide's reaction on an overhung bolt (common practice).",
  ),
  sideLoad: quantity(
    "force",
    R.FORCE_OR_ZERO,
    "0 N",
    "Push on the bolt from an animal or the wind leaning on the latched flap.",
  ),
  offset: quantity(
    "length",
    R.LENGTH_EITHER_WAY,
    "0 mm",
    "Slot centre from the closed flap's plane, positive towards outdoors.",
  ),
  boltPoints: choice(["up", "down"], "Which way the bolt points."),
} satisfies Record<keyof Latch, Field>;

export const solenoid = {
  ratedVoltage: quantity("voltage", R.VOLTAGE, required, "Rated voltage of the coil."),
  ratedCurrent: quantity("current", R.CURRENT, required, "Current at the rated voltage, coil at 20 °C."),
  inductance: quantity("inductance", R.INDUCTANCE, required, "Inductance of the coil."),
  stroke: quantity("length", R.LENGTH, required, "Stroke from the withdrawn to the fully extended bolt."),
  pull: {
    kind: "curve",
    doc: "Rated pull over stroke, stroke 0 seated; linear between the points.",
    columns: [
      { key: "stroke", field: quantity("length", R.LENGTH_OR_ZERO, required, "Stroke, 0 seated.") },
      { key: "force", field: quantity("force", R.FORCE, required, "Pull at the rated current.") },
    ],
    fewest: 2,
    most: 1000,
  },
  thermalResistance: quantity(
    "thermalResistance",
    R.THERMAL_RESISTANCE,
    required,
    "Temperature rise of the coil per watt, steady.",
  ),
  thermalTimeConstant: quantity(
    "time",
    R.TIME,
    required,
    "Time in which the coil makes 63 % of its temperature rise.",
  ),
  insulationClass: {
    kind: "choice",
    options: ["A", "E", "B", "F", "H"],
    default: { kind: "value", value: "B" },
    doc: "Insulation class of the coil (IEC 60085: A 105, E 120, B 130, F 155, H 180 °C).",
  },
  ambient: quantity("temperature", R.AMBIENT, "20 degC", "Temperature around the coil."),
} satisfies Record<keyof Solenoid, Field>;

export const driver = {
  kind: choice(["darlington", "mosfet"], "The transistor that switches the coil."),
  dropVoltage: quantity(
    "voltage",
    R.VOLTAGE_OR_ZERO,
    "1.2 V",
    "Voltage a Darlington keeps (1–2 V, common practice).",
  ),
  onResistance: quantity(
    "resistance",
    R.RESISTANCE_OR_ZERO,
    requiredWhen("kind", "mosfet"),
    "On-resistance of a MOSFET.",
  ),
  currentGain: number({ min: 1e-3, max: 1e9 }, 1000, "Current gain of the transistor."),
  driveVoltage: quantity("voltage", R.VOLTAGE, "3.3 V", "Voltage that drives the transistor's base or gate."),
  baseEmitterVoltage: quantity("voltage", R.VOLTAGE_OR_ZERO, "1.4 V", "Base-emitter voltage when on."),
  baseResistor: quantity("resistance", R.RESISTANCE, "1 kohm", "Resistor in the base lead."),
  clamp: choice(["diode", "zener", "none"], "What takes the coil's current when it is switched off."),
  clampVoltage: quantity(
    "voltage",
    R.VOLTAGE_OR_ZERO,
    "0.7 V",
    "Total clamp voltage: the diode's, or the zener's plus its diode's.",
  ),
} satisfies Record<keyof Driver, Field>;

const untilMeasured = "no resistor and capacitor; the hold time stands alone";

export const timer = {
  holdTime: quantity("time", R.TIME, "12 s", "The hold time the builder set."),
  retriggers: flag(true, "Whether each detection pulse starts the hold anew."),
  resistor: quantity(
    "resistance",
    R.RESISTANCE,
    { kind: "absent", words: untilMeasured },
    "Timing resistor of the one-shot.",
  ),
  capacitor: quantity(
    "capacitance",
    R.CAPACITANCE,
    { kind: "absent", words: untilMeasured },
    "Timing capacitor of the one-shot.",
  ),
  resistorTolerance: quantity("ratio", R.PART_OF_ONE, "5 %", "The resistor maker's tolerance, a limit."),
  capacitorTolerance: quantity("ratio", R.PART_OF_ONE, "20 %", "The capacitor maker's tolerance, a limit."),
} satisfies Record<keyof Timer, Field>;

export const supply = {
  voltage: quantity("voltage", R.VOLTAGE, "24 V", "Voltage of the power supply."),
  currentLimit: quantity("current", R.CURRENT, "500 mA", "Most current the supply gives."),
  logicVoltage: quantity("voltage", R.VOLTAGE, "5 V", "Voltage of the electronics."),
  logicCurrent: quantity("current", R.CURRENT_OR_ZERO, "40 mA", "Current of the electronics."),
  regulator: choice(["linear", "switching"], "How the electronics' voltage is made."),
  efficiency: number({ min: 0.01, max: 1 }, 0.85, "Efficiency of a switching regulator."),
  thermalResistance: quantity(
    "thermalResistance",
    R.THERMAL_RESISTANCE_OR_ZERO,
    "65 K/W",
    "Temperature rise of the regulator per watt, junction to ambient.",
  ),
  ambient: quantity("temperature", R.AMBIENT, "25 degC", "Temperature around the regulator."),
} satisfies Record<keyof Supply, Field>;

export const detection = {
  range: quantity("length", R.LENGTH_OR_ZERO, "3 m", "Distance at which the animal is noticed."),
  farSideRange: quantity(
    "length",
    R.LENGTH_OR_ZERO,
    "0 m",
    "Distance up to which it is still noticed behind the door; 0 gives no credit for it.",
  ),
  pulseInterval: quantity("time", R.TIME, "1 s", "Time between two detection pulses."),
} satisfies Record<keyof Detection, Field>;

export const release = {
  angle: quantity(
    "angle",
    R.ANGLE_EITHER_WAY,
    { kind: "absent", words: "the angle at which the animal's back lets the flap go" },
    "Angle at which the flap is let go; it overrides the passage's.",
  ),
  speed: quantity("angularSpeed", R.RELEASE_SPEED, "0 rad/s", "Angular speed at which the flap is let go."),
} satisfies Record<keyof Release, Field>;

export const study = {
  reliability: number(
    { min: 0.5, max: 1, maxOpen: true },
    0.999,
    "Probability of being caught that the hold is to reach.",
  ),
  margin: number({ min: 0, max: 100 }, 0.2, "Margin of the review on the needed hold."),
  tolerances: {
    kind: "tolerances",
    doc: "How inputs spread, by key path: a text is ± two standard deviations, an object gives offsets and a shape.",
  },
} satisfies Record<keyof Study, Field>;
