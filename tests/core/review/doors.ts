/** One good door for the review's tests, to spoil. */
import type { Door } from "../../../core/door/index.ts";
import type { DoorEdit } from "../../../core/review/finding.ts";
import { doorOf } from "../doors.ts";

/** A door on which every finding is ok or a caution that always applies; invented. */
export const GOOD = {
  format: "swingstill-door",
  version: 1,
  name: "Good door",
  animals: [
    {
      name: "Mossy",
      shoulderHeight: "25 cm",
      chestWidth: "13 cm",
      bodyLength: "46 cm",
      mass: "4.5 kg",
      speed: "0.8 m/s",
    },
  ],
  opening: { width: "24 cm", height: "30 cm", sillHeight: "10 cm" },
  flap: {
    width: "23 cm",
    height: "28 cm",
    thickness: "4 mm",
    material: "polycarbonate",
    hingeOffset: "6 mm",
  },
  hinge: { frictionTorque: "2 mN m", viscousDamping: "1.5 mN m s/rad" },
  damper: { coefficient: "12 mN m s/rad" },
  magnets: {
    arrangement: "jamb",
    diameter: "6 mm",
    thickness: "2 mm",
    remanence: "1.2 T",
    gap: "5.5 mm",
    distanceFromHinge: "26 cm",
  },
  latch: {
    boltWidth: "8 mm",
    slotWidth: "14 mm",
    distanceFromHinge: "27 cm",
    tipGap: "2 mm",
    engagement: "3 mm",
    edgeHalfWidth: "9 mm",
    boltMass: "18 g",
    springForce: "0.6 N",
    frictionCoefficient: 0.15,
  },
  solenoid: {
    ratedVoltage: "24 V",
    ratedCurrent: "120 mA",
    inductance: "0.35 H",
    stroke: "6 mm",
    pull: [
      ["0 mm", "7 N"],
      ["2 mm", "4 N"],
      ["6 mm", "2.6 N"],
    ],
    thermalResistance: "12 K/W",
    thermalTimeConstant: "6 min",
  },
  driver: {},
  timer: { holdTime: "8 s", resistorTolerance: "1 %", capacitorTolerance: "5 %" },
  supply: { regulator: "switching" },
};

/** A copy of a file's data with entries changed by key path; `undefined` takes one out. */
export function withChanges(data: unknown, changes: Readonly<Record<string, unknown>>): unknown {
  const copy = structuredClone(data) as Record<string, unknown>;
  for (const [path, value] of Object.entries(changes)) put(copy, path.split("."), value);
  return copy;
}

/** The good door with changes. */
export function goodWith(changes: Readonly<Record<string, unknown>>): Door {
  return doorOf(withChanges(GOOD, changes));
}

function put(home: Record<string, unknown>, [step, ...rest]: string[], value: unknown): void {
  if (rest.length > 0) {
    home[step] ??= {};
    put(home[step] as Record<string, unknown>, rest, value);
  } else if (value === undefined) delete home[step];
  else home[step] = value;
}

/** Edits written into a file's data, as a person would: flags and plain numbers without quotes. */
export function edited(data: unknown, edits: readonly DoorEdit[]): unknown {
  const entry = (text: string) => (text === "true" ? true : /^-?[\d.]+$/.test(text) ? Number(text) : text);
  return withChanges(data, Object.fromEntries(edits.map(({ path, text }) => [path, entry(text)])));
}
