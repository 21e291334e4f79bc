/**
 * What must hold between several keys of a door (model section 4, and the geometry of the magnets).
 * Every rule is written as the violation, so that a value that could not be read (NaN) breaks none.
 */
import { STANDARD_GRAVITY } from "../quantity/constants.ts";
import { formatQuantity } from "../quantity/format.ts";
import type { Door, Latch, Magnets } from "./door.ts";
import { type DoorFault, doorFault } from "./fault.ts";
import { blockSine, captureSine, netBoltForce } from "./latch-limits.ts";
import { edgeDip } from "./swept.ts";

/** The latch may sit this far below the flap's bottom edge, m (model section 4). */
const LATCH_BELOW_EDGE = 0.05;
/** Lengths that differ by less than this are meant to be equal, m: inches and millimetres of one drawing. */
const SAME_LENGTH = 1e-9;

/** Every fault between the keys of a door. */
export function crossFaults(door: Door): DoorFault[] {
  return [...latchFaults(door), ...magnetFaults(door), ...partFaults(door)];
}

const length = (metres: number) => formatQuantity(metres, "length", "metric", 6);

/** Faults for which the latch cannot work at all, model section 4; none without a latch. */
export function latchFaults(door: Door): DoorFault[] {
  const { latch } = door;
  if (latch === null) return [];
  return [
    ...slotFaults(latch),
    ...strokeFaults(door, latch),
    ...reachFaults(door, latch),
    ...boltForceFaults(latch),
  ];
}

/** Whether a latch has any of these faults: the same rules without the words, for studies. False without a latch. */
export function latchCannotWork(door: Door): boolean {
  const { latch, solenoid } = door;
  if (latch === null) return false;
  const r = latch.distanceFromHinge;
  return (
    latch.slotWidth <= latch.boltWidth ||
    latch.edgeHalfWidth < latch.slotWidth / 2 ||
    (solenoid !== null && latch.tipGap + latch.engagement > solenoid.stroke + SAME_LENGTH) ||
    r > flapReach(door) + LATCH_BELOW_EDGE + SAME_LENGTH ||
    captureOf(latch) >= 1 ||
    Math.abs(latch.offset) >= r ||
    blockOf(latch) >= 1 ||
    forceOf(latch) <= 0
  );
}

function flapReach({ flap }: Door): number {
  return flap.hingeOffset + flap.height;
}

/** Of a latch: its sines and its bolt's net force. */
const captureOf = ({ slotWidth, boltWidth, distanceFromHinge }: Latch) =>
  captureSine(slotWidth, boltWidth, distanceFromHinge);
const blockOf = ({ edgeHalfWidth, boltWidth, distanceFromHinge }: Latch) =>
  blockSine(edgeHalfWidth, boltWidth, distanceFromHinge);
const forceOf = ({ springForce, boltMass, boltPoints }: Latch) =>
  netBoltForce(springForce, boltMass, boltPoints);

function slotFaults({ slotWidth, boltWidth, edgeHalfWidth }: Latch): DoorFault[] {
  const faults: DoorFault[] = [];
  if (slotWidth <= boltWidth) {
    const expected = `a slot wider than the bolt's ${length(boltWidth)} (latch.boltWidth)`;
    faults.push(
      doorFault("latch.slotWidth", length(slotWidth), expected, "the bolt does not fit into the slot"),
    );
  }
  if (edgeHalfWidth < slotWidth / 2) {
    const expected = `at least half the slot's width, ${length(slotWidth / 2)} (latch.slotWidth)`;
    const problem = "the slot is wider than the edge it is cut in";
    faults.push(doorFault("latch.edgeHalfWidth", length(edgeHalfWidth), expected, problem));
  }
  return faults;
}

function strokeFaults({ solenoid }: Door, { tipGap, engagement }: Latch): DoorFault[] {
  if (solenoid === null || !(tipGap + engagement > solenoid.stroke + SAME_LENGTH)) return [];
  const expected = `at least tip gap and engagement together, ${length(tipGap + engagement)} (latch.tipGap, latch.engagement)`;
  return [
    doorFault(
      "solenoid.stroke",
      length(solenoid.stroke),
      expected,
      "the solenoid does not pull the bolt clear",
    ),
  ];
}

function reachFaults(door: Door, latch: Latch): DoorFault[] {
  const path = "latch.distanceFromHinge";
  const r = latch.distanceFromHinge;
  const given = length(r);
  const faults: DoorFault[] = [];
  const furthest = flapReach(door) + LATCH_BELOW_EDGE;
  if (r > furthest + SAME_LENGTH) {
    const expected = `at most 5 cm below the flap's bottom edge, ${length(furthest)} (flap.hingeOffset, flap.height)`;
    faults.push(doorFault(path, given, expected, "the latch lies out of the flap's reach"));
  }
  const near = (what: string, least: number) =>
    faults.push(
      doorFault(path, given, `more than ${length(least)}`, `the latch is too near the hinge for its ${what}`),
    );
  if (captureOf(latch) >= 1) near("slot", (latch.slotWidth - latch.boltWidth) / 2);
  if (blockOf(latch) >= 1) near("edge and bolt", latch.edgeHalfWidth + latch.boltWidth / 2);
  if (Math.abs(latch.offset) >= r) near("offset", Math.abs(latch.offset));
  return faults;
}

function boltForceFaults(latch: Latch): DoorFault[] {
  if (!(forceOf(latch) <= 0)) return [];
  const force = (newtons: number) => formatQuantity(newtons, "force", "metric");
  const up = latch.boltPoints === "up";
  const expected = up
    ? `more than the bolt's weight, ${force(latch.boltMass * STANDARD_GRAVITY)} (latch.boltMass)`
    : "a spring that pushes the bolt out";
  return [doorFault("latch.springForce", force(latch.springForce), expected, "the bolt never rises")];
}

/** Magnets that do not fit on the flap; `magnets` null has none. */
function magnetFaults(door: Door): DoorFault[] {
  const { magnets } = door;
  if (magnets === null) return [];
  return [...rowFaults(magnets), ...edgeFaults(magnets, flapReach(door)), ...strikeFaults(magnets)];
}

function rowFaults({ arrangement, sides, perSide, pitch, diameter }: Magnets): DoorFault[] {
  const faults: DoorFault[] = [];
  if (arrangement === "sill" && perSide > 1) {
    faults.push(
      doorFault(
        "magnets.perSide",
        String(perSide),
        "1 in the sill; more positions are counted by magnets.sides",
      ),
    );
  }
  if (arrangement === "jamb" && sides > 2) {
    faults.push(doorFault("magnets.sides", String(sides), "1 or 2: a flap has two side edges"));
  }
  if (arrangement === "jamb" && perSide > 1 && pitch < diameter - SAME_LENGTH) {
    const expected = `at least the magnets' diameter, ${length(diameter)} (magnets.diameter)`;
    faults.push(doorFault("magnets.pitch", length(pitch), expected, "the magnets overlap"));
  }
  return faults;
}

function edgeFaults({ arrangement, perSide, pitch, distanceFromHinge }: Magnets, reach: number): DoorFault[] {
  const path = "magnets.distanceFromHinge";
  const given = length(distanceFromHinge);
  if (distanceFromHinge > reach + SAME_LENGTH) {
    const expected = `at most the flap's reach, ${length(reach)} (flap.hingeOffset, flap.height)`;
    return [doorFault(path, given, expected, "the magnet lies below the flap's bottom edge")];
  }
  const above = (perSide - 1) * pitch;
  if (arrangement === "jamb" && distanceFromHinge - above <= 0) {
    const expected = `more than the ${length(above)} the row is long (magnets.perSide, magnets.pitch)`;
    return [doorFault(path, given, expected, "the row of magnets ends above the hinge")];
  }
  return [];
}

/** A magnet in the flap's lower edge swings past the one in the sill: its trailing edge comes lowest in the middle. */
function strikeFaults({ arrangement, gap, diameter, distanceFromHinge }: Magnets): DoorFault[] {
  const dip = edgeDip(diameter / 2, distanceFromHinge);
  if (arrangement !== "sill" || !(gap <= dip)) return [];
  const expected = `more than the ${length(dip)} that the flap magnet's edge dips as it swings (magnets.diameter, magnets.distanceFromHinge)`;
  return [doorFault("magnets.gap", length(gap), expected, "the flap's magnet strikes the sill's")];
}

function partFaults({ timer, driver, release, hinge }: Door): DoorFault[] {
  const faults: DoorFault[] = [];
  if (timer !== null && (timer.resistor === null) !== (timer.capacitor === null)) {
    const [missing, other] = timer.resistor === null ? ["resistor", "capacitor"] : ["capacitor", "resistor"];
    const expected = `a ${missing}, since a ${other} is given; both or neither`;
    faults.push(doorFault(`timer.${missing}`, "nothing", expected));
  }
  if (driver !== null && driver.clamp !== "none" && driver.clampVoltage <= 0) {
    const expected = `a voltage above 0 V, since the clamp is a ${driver.clamp}`;
    faults.push(doorFault("driver.clampVoltage", "0 V", expected));
  }
  if (release.angle !== null && Math.abs(release.angle) > hinge.stopAngle) {
    const angle = (radians: number) => formatQuantity(radians, "angle", "metric");
    const expected = `at most the stop angle, ${angle(hinge.stopAngle)} either way (hinge.stopAngle)`;
    faults.push(doorFault("release.angle", angle(release.angle), expected, "the flap cannot be there"));
  }
  return faults;
}
