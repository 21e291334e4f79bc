/** What keys of the door file are called on the page. */
import { TOLERANCES } from "../state/spread-text.ts";

const LABELS: Readonly<Record<string, string>> = {
  "animals.name": "Name",
  "animals.shoulderHeight": "Shoulder height",
  "animals.chestWidth": "Chest width",
  "animals.bodyLength": "Body length",
  "animals.mass": "Weight",
  "animals.speed": "Walking speed",
  "animals.stepRatio": "Step ratio",
  "animals.pushHeight": "Pushes at height",
  "animals.comfortablePush": "Comfortable push",
  "opening.sillHeight": "Sill above floor",
  "opening.outOfPlumb": "Out of plumb",
  "opening.heightMargin": "Air above the back",
  "opening.widthMargin": "Air beside the chest",
  "flap.hingeOffset": "Hinge to top edge",
  "flap.bottomClearance": "Gap at the bottom",
  "flap.extraMasses.distanceFromHinge": "Below the hinge",
  "hinge.frictionTorque": "Dry friction",
  "hinge.viscousDamping": "Damping",
  "hinge.staticRatio": "Static ratio",
  "hinge.stopAngle": "Stops at",
  "hinge.stopRestitution": "Bounce of the stops",
  "seal.frictionTorque": "Dry friction",
  "seal.contactAngle": "Seal touches up to",
  "damper.coefficient": "Damping",
  "damper.withinAngle": "Damper acts up to",
  "air.density": "Air density",
  "air.dragCoefficient": "Drag coefficient",
  "air.swingFactor": "Swing factor",
  "air.windSpeed": "Wind",
  "air.pressureDifference": "Pressure difference",
  "magnets.arrangement": "Where",
  "magnets.perSide": "Per side",
  "magnets.polarity": "Neighbours",
  "magnets.force": "Facing pairs",
  "magnets.distanceFromHinge": "Below the hinge",
  "latch.distanceFromHinge": "Below the hinge",
  "latch.engagement": "Least engagement",
  "latch.edgeHalfWidth": "Half width of edge",
  "latch.frictionCoefficient": "Friction coefficient",
  "latch.offset": "Slot off centre",
  "latch.boltPoints": "Bolt points",
  "solenoid.pull": "Pull curve",
  "solenoid.thermalTimeConstant": "Heating time constant",
  "driver.kind": "Transistor",
  "driver.dropVoltage": "Voltage drop",
  "driver.baseEmitterVoltage": "Base–emitter voltage",
  "timer.holdTime": "Hold time",
  "timer.retriggers": "Each pulse restarts it",
  "timer.resistorTolerance": "Resistor tolerance",
  "timer.capacitorTolerance": "Capacitor tolerance",
  "supply.logicVoltage": "Electronics’ voltage",
  "supply.logicCurrent": "Electronics’ current",
  "detection.range": "Notices from",
  "detection.farSideRange": "Notices behind up to",
  "detection.pulseInterval": "Between pulses",
  "release.angle": "Let go at",
  "release.speed": "Let-go speed",
  "study.reliability": "Reliability wanted",
  "study.margin": "Margin on the hold",
};

/** Words of a section in a sentence: "the magnets’ gap". */
const OWNERS: Readonly<Record<string, string>> = {
  animals: "animal",
  opening: "opening",
  flap: "flap",
  hinge: "hinge",
  seal: "seal",
  damper: "damper",
  air: "air",
  magnets: "magnets",
  latch: "latch",
  solenoid: "coil",
  driver: "driver",
  timer: "timer",
  supply: "supply",
  detection: "detection",
  release: "let-go",
  study: "study",
};

const OPTIONS: Readonly<Record<string, string>> = {
  "magnets.arrangement.none": "no magnets",
  "magnets.arrangement.jamb": "in the jambs",
  "magnets.arrangement.sill": "in the sill",
  "magnets.polarity.like": "point alike",
  "magnets.polarity.alternating": "alternate",
  "driver.kind.darlington": "Darlington",
  "driver.kind.mosfet": "MOSFET",
  "driver.clamp.none": "none (fails)",
};

const withoutIndices = (path: string): string => path.replace(/\.\d+(?=\.|$)/g, "");

/** "Tip gap" for "latch.tipGap". */
export function labelOf(path: string): string {
  const bare = withoutIndices(path);
  const known = LABELS[bare];
  if (known !== undefined) return known;
  const key = bare.slice(bare.lastIndexOf(".") + 1);
  const words = key.replace(/([a-z])([A-Z])/g, (_, a: string, b: string) => `${a} ${b.toLowerCase()}`);
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** "gap (magnets)", for names of steps and lists of inputs. */
export function labelInSentence(path: string): string {
  if (path.startsWith(TOLERANCES)) return `spread of ${labelInSentence(path.slice(TOLERANCES.length))}`;
  const owner = OWNERS[path.split(".")[0]];
  const label = labelOf(path);
  const low = /^[A-Z][a-z]/.test(label) ? label.charAt(0).toLowerCase() + label.slice(1) : label;
  return owner === undefined ? low : `${low} (${owner})`;
}

export function optionLabel(path: string, option: string): string {
  return OPTIONS[`${withoutIndices(path)}.${option}`] ?? option;
}
