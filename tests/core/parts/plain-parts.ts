/** Plain parts for the tests of one part: round numbers, nothing that acts but what a test adds. */
import type { Animal, Driver, Hinge, Seal } from "../../../core/door/door.ts";
import type { FlapBody } from "../../../core/parts/flap.ts";
import { si } from "../../../core/quantity/brands.ts";

export const body: FlapBody = {
  plateMass: 0.6,
  mass: 0.6,
  firstMoment: 0.12,
  inertia: 0.032,
  reach: 0.4,
  hingeOffset: 0,
  width: 0.3,
  smallAnglePeriod: 1.04,
};

export const hinge: Hinge = {
  frictionTorque: si(0.01),
  viscousDamping: si(0),
  staticRatio: si(1.5),
  stopAngle: si(1.745),
  stopRestitution: si(0.3),
};

export const seal: Seal = { frictionTorque: si(0), contactAngle: si(0.07) };

export const dog: Animal = {
  name: "",
  shoulderHeight: si(0.45),
  chestWidth: si(0.18),
  bodyLength: si(0.6),
  mass: si(15),
  speed: si(0.8),
  stepRatio: si(0.45),
  pushHeight: si(0.405),
  comfortablePush: si(14.7),
};

export const darlington: Driver = {
  kind: "darlington",
  dropVoltage: si(1.2),
  onResistance: null,
  currentGain: si(1000),
  driveVoltage: si(3.3),
  baseEmitterVoltage: si(1.4),
  baseResistor: si(1000),
  clamp: "diode",
  clampVoltage: si(0.7),
};

export const mosfet: Driver = { ...darlington, kind: "mosfet", onResistance: si(0.5) };
