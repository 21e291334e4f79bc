/** An invented door with every section, and helpers to change one entry of it. */
import type { Door } from "../../../core/door/door.ts";
import type { DoorFault } from "../../../core/door/fault.ts";
import { editDoorFile, writeDoor } from "../../../core/door/file.ts";
import type { Json, JsonObject } from "../../../core/door/json.ts";
import { readDoor } from "../../../core/door/read-door.ts";

export const SAMPLE: JsonObject = {
  format: "swingstill-door",
  version: 1,
  name: "Kitchen door",
  animals: [
    {
      name: "Tilda",
      shoulderHeight: "28 cm",
      chestWidth: "14 cm",
      bodyLength: "46 cm",
      mass: "4.5 kg",
    },
  ],
  opening: { width: "22 cm", height: "31 cm", sillHeight: "12 cm" },
  flap: {
    width: "20 cm",
    height: "28 cm",
    thickness: "4 mm",
    hingeOffset: "10 mm",
    extraMasses: [{ name: "strike", mass: "20 g", distanceFromHinge: "28 cm" }],
  },
  hinge: { frictionTorque: "6 mN m", viscousDamping: "1 mN m s/rad" },
  seal: {},
  damper: {},
  air: {},
  magnets: {
    arrangement: "jamb",
    diameter: "10 mm",
    thickness: "5 mm",
    remanence: "1.3 T",
    gap: "5 mm",
    distanceFromHinge: "27 cm",
  },
  latch: {
    boltWidth: "8 mm",
    slotWidth: "14 mm",
    distanceFromHinge: "30 cm",
    tipGap: "2 mm",
    engagement: "6 mm",
    edgeHalfWidth: "10 mm",
    boltMass: "30 g",
    springForce: "1 N",
  },
  solenoid: {
    ratedVoltage: "24 V",
    ratedCurrent: "120 mA",
    inductance: "200 mH",
    stroke: "8 mm",
    pull: [
      ["0 mm", "6 N"],
      ["8 mm", "1.2 N"],
    ],
    thermalResistance: "20 K/W",
    thermalTimeConstant: "10 min",
  },
  driver: {},
  timer: { resistor: "110 kohm", capacitor: "100 uF" },
  supply: {},
  detection: {},
  release: { angle: "30 deg" },
  study: { tolerances: { "hinge.frictionTorque": "30 %" } },
};

export type Edit = readonly [path: string, entry: Json | undefined];

/** The sample's text with some entries replaced, or taken out with undefined. */
export function textWith(...edits: Edit[]): string {
  const file = edits.reduce((before, [path, entry]) => editDoorFile(before, path, entry), {
    text: null,
    root: SAMPLE,
  } as Parameters<typeof editDoorFile>[0]);
  return writeDoor(file);
}

export function doorWith(...edits: Edit[]): Door {
  const read = readDoor(textWith(...edits));
  if (!read.ok) throw new Error(read.errors.map(({ message }) => message).join("\n"));
  return read.door;
}

export function faultsWith(...edits: Edit[]): DoorFault[] {
  const read = readDoor(textWith(...edits));
  return read.ok ? [] : read.errors;
}

/** The one fault of the sample so edited; throws where there are none or several. */
export function faultWith(...edits: Edit[]): DoorFault {
  const faults = faultsWith(...edits);
  if (faults.length !== 1) {
    throw new Error(
      `${faults.length} faults, expected one: ${faults.map(({ message }) => message).join("\n")}`,
    );
  }
  return faults[0];
}
