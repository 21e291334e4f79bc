/**
 * The door as everything past the reader sees it: SI numbers, every default filled in, every range checked.
 * Field names are those of the door file (`*.door.json`), so that `flap.extraMasses.0.mass` names the same
 * thing in a file, in an error, in a tolerance and in code. A section the person left out is `null`.
 */
import type {
  Amperes,
  Celsius,
  Farads,
  Henries,
  KelvinsPerWatt,
  Kilograms,
  KilogramsPerCubicMetre,
  Metres,
  MetresPerSecond,
  NewtonMetreSeconds,
  NewtonMetres,
  Newtons,
  Ohms,
  Pascals,
  Radians,
  RadiansPerSecond,
  Ratio,
  Seconds,
  Teslas,
  Volts,
} from "../quantity/brands.ts";

export interface Animal {
  readonly name: string;
  readonly shoulderHeight: Metres;
  readonly chestWidth: Metres;
  /** Nose to tail base, standing. */
  readonly bodyLength: Metres;
  readonly mass: Kilograms;
  readonly speed: MetresPerSecond;
  readonly stepRatio: Ratio;
  /** Default 0.9 × shoulder height, filled in by the reader. */
  readonly pushHeight: Metres;
  /** Default 10 % of body weight, filled in by the reader. */
  readonly comfortablePush: Newtons;
}

export interface Opening {
  readonly width: Metres;
  readonly height: Metres;
  readonly sillHeight: Metres;
  /** Positive: the flap hangs towards the outdoor side. */
  readonly outOfPlumb: Radians;
  readonly heightMargin: Metres;
  readonly widthMargin: Metres;
}

export interface ExtraMass {
  readonly name: string;
  readonly mass: Kilograms;
  readonly distanceFromHinge: Metres;
}

export interface Flap {
  readonly width: Metres;
  readonly height: Metres;
  readonly thickness: Metres;
  /** Name of a known material, or "" where only a density was given. */
  readonly material: string;
  readonly density: KilogramsPerCubicMetre;
  readonly hingeOffset: Metres;
  readonly bottomClearance: Metres;
  readonly extraMasses: readonly ExtraMass[];
}

export interface Hinge {
  readonly frictionTorque: NewtonMetres;
  readonly viscousDamping: NewtonMetreSeconds;
  /** Static over kinetic friction, at least 1. */
  readonly staticRatio: Ratio;
  readonly stopAngle: Radians;
  readonly stopRestitution: Ratio;
}

export interface Seal {
  readonly frictionTorque: NewtonMetres;
  readonly contactAngle: Radians;
}

export interface Damper {
  readonly coefficient: NewtonMetreSeconds;
  readonly withinAngle: Radians;
}

export interface Air {
  readonly density: KilogramsPerCubicMetre;
  readonly dragCoefficient: Ratio;
  readonly swingFactor: Ratio;
  /** Positive from indoors to outdoors. */
  readonly windSpeed: MetresPerSecond;
  /** Indoor minus outdoor. */
  readonly pressureDifference: Pascals;
}

/** Centring magnets; `arrangement: "none"` in the file reads as no magnets at all (`door.magnets === null`). */
export interface Magnets {
  readonly arrangement: "jamb" | "sill";
  readonly sides: number;
  readonly perSide: number;
  readonly pitch: Metres;
  readonly polarity: "like" | "alternating";
  readonly force: "attract" | "repel";
  readonly diameter: Metres;
  readonly thickness: Metres;
  /** At 20 °C. */
  readonly remanence: Teslas;
  readonly gap: Metres;
  /** Jamb: centre of the lowest magnet. Sill: lower pole face of the flap's magnet. */
  readonly distanceFromHinge: Metres;
  readonly temperature: Celsius;
}

export interface Latch {
  readonly boltWidth: Metres;
  readonly slotWidth: Metres;
  readonly distanceFromHinge: Metres;
  readonly tipGap: Metres;
  readonly engagement: Metres;
  readonly edgeHalfWidth: Metres;
  readonly boltMass: Kilograms;
  readonly springForce: Newtons;
  readonly frictionCoefficient: Ratio;
  readonly guideFactor: Ratio;
  readonly sideLoad: Newtons;
  /** Slot centre from the closed flap's plane, positive towards outdoors. */
  readonly offset: Metres;
  readonly boltPoints: "up" | "down";
}

/** One point of a solenoid's rated pull curve. Stroke 0 is seated. */
export interface PullPoint {
  readonly stroke: Metres;
  readonly force: Newtons;
}

export type InsulationClass = "A" | "E" | "B" | "F" | "H";

export interface Solenoid {
  readonly ratedVoltage: Volts;
  readonly ratedCurrent: Amperes;
  readonly inductance: Henries;
  /** Full stroke: plunger from withdrawn bolt to fully extended bolt. */
  readonly stroke: Metres;
  /** At least two points, stroke strictly rising. */
  readonly pull: readonly PullPoint[];
  readonly thermalResistance: KelvinsPerWatt;
  readonly thermalTimeConstant: Seconds;
  readonly insulationClass: InsulationClass;
  readonly ambient: Celsius;
}

export interface Driver {
  readonly kind: "darlington" | "mosfet";
  readonly dropVoltage: Volts;
  /** Required for a MOSFET, else `null`. */
  readonly onResistance: Ohms | null;
  readonly currentGain: Ratio;
  readonly driveVoltage: Volts;
  readonly baseEmitterVoltage: Volts;
  readonly baseResistor: Ohms;
  readonly clamp: "diode" | "zener" | "none";
  /** Total clamp voltage: the diode's, or the zener's plus its diode's. */
  readonly clampVoltage: Volts;
}

export interface Timer {
  readonly holdTime: Seconds;
  readonly retriggers: boolean;
  /** Resistor and capacitor come together or not at all. */
  readonly resistor: Ohms | null;
  readonly capacitor: Farads | null;
  readonly resistorTolerance: Ratio;
  readonly capacitorTolerance: Ratio;
}

export interface Supply {
  readonly voltage: Volts;
  readonly currentLimit: Amperes;
  readonly logicVoltage: Volts;
  readonly logicCurrent: Amperes;
  readonly regulator: "linear" | "switching";
  readonly efficiency: Ratio;
  readonly thermalResistance: KelvinsPerWatt;
  readonly ambient: Celsius;
}

export interface Detection {
  readonly range: Metres;
  readonly farSideRange: Metres;
  readonly pulseInterval: Seconds;
}

/** Replaces the passage's let-go as the swing's initial state; `angle` `null` keeps the passage's angle. */
export interface Release {
  readonly angle: Radians | null;
  readonly speed: RadiansPerSecond;
}

/**
 * How one input spreads, in the input's own SI unit, as an offset from its nominal value.
 * `spread` is relative to the nominal where `relative` is true (a file's "30 %").
 */
export type Tolerance =
  | { readonly shape: "normal"; readonly twoSigma: number; readonly relative: boolean }
  | {
      readonly shape: "uniform" | "normal" | "triangular";
      /** Offsets from the nominal, SI; for "normal" they are the ±2 σ points. */
      readonly low: number;
      readonly high: number;
      readonly relative: boolean;
    };

export interface Study {
  /** Target probability of being caught, 0.5 to below 1. */
  readonly reliability: Ratio;
  /** The review's margin on the needed hold. */
  readonly margin: Ratio;
  /** Only what the file says; the defaults per key belong to the study. */
  readonly tolerances: ReadonlyMap<string, Tolerance>;
}

export interface Door {
  readonly name: string;
  readonly notes: string;
  readonly animals: readonly Animal[];
  readonly opening: Opening;
  readonly flap: Flap;
  readonly hinge: Hinge;
  readonly seal: Seal;
  readonly damper: Damper;
  readonly air: Air;
  readonly magnets: Magnets | null;
  readonly latch: Latch | null;
  readonly solenoid: Solenoid | null;
  readonly driver: Driver | null;
  readonly timer: Timer | null;
  readonly supply: Supply | null;
  readonly detection: Detection;
  readonly release: Release;
  readonly study: Study;
}
