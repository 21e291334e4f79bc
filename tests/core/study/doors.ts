/** Doors for the study's tests: random changes to others. */
import type { Door, Tolerance } from "../../../core/door/index.ts";
import { latchCannotWork, setValue, valueFits } from "../../../core/door/index.ts";
import { si } from "../../../core/quantity/brands.ts";
import { studyInputs } from "../../../core/study/inputs.ts";

/** The door with numbers replaced; paths are known to be there. */
export function changed(door: Door, values: Readonly<Record<string, number>>): Door {
  let result = door;
  for (const [path, value] of Object.entries(values)) {
    const set = setValue(result, path, value);
    if (!set.ok) throw new Error(set.error.message);
    result = set.door;
  }
  return result;
}

const STIRRED = [
  ["hinge.frictionTorque", 0.2, 3],
  ["hinge.viscousDamping", 0, 3],
  ["seal.frictionTorque", 0, 2],
  ["opening.outOfPlumb", -3, 3],
  ["latch.offset", -2, 2],
  ["latch.slotWidth", 0.9, 2],
  ["latch.edgeHalfWidth", 1, 4],
  ["latch.springForce", 0.7, 2.5],
  ["latch.frictionCoefficient", 0, 3],
  ["latch.engagement", 0.5, 4],
  ["hinge.staticRatio", 1, 1.6],
] as const;

/** A door like `door` with its swing and latch stirred by uniform numbers; `null` where its latch could not work. */
export function stirredDoor(door: Door, uniform: () => number): Door | null {
  const values: Record<string, number> = {};
  for (const [path, low, high] of STIRRED) {
    const base = path === "opening.outOfPlumb" ? 0.005 : path === "latch.offset" ? 0.001 : null;
    const nominal = base ?? (setValue(door, path, 0).ok ? numberAt(door, path) : null);
    if (nominal === null) return null;
    const value = nominal * (low + uniform() * (high - low));
    if (valueFits(path, value)) values[path] = value;
  }
  const stirred = changed(door, values);
  return latchCannotWork(stirred) ? null : stirred;
}

function numberAt(door: Door, path: string): number {
  const [section, key] = path.split(".");
  return (door as unknown as Record<string, Record<string, number>>)[section][key];
}

/** The door with these tolerances and no others. */
export function withTolerances(door: Door, tolerances: Record<string, Tolerance>): Door {
  return { ...door, study: { ...door.study, tolerances: new Map(Object.entries(tolerances)) } };
}

/** The door with nothing spreading at all: every default set to nothing, the timer exact. */
export function withoutSpread(door: Door): Door {
  const exact = {
    ...door,
    timer: door.timer && { ...door.timer, resistorTolerance: si<"1">(0), capacitorTolerance: si<"1">(0) },
  };
  const none: Tolerance = { shape: "normal", twoSigma: 0, relative: true };
  const keys = studyInputs(exact).inputs.map(({ key }) => key);
  return withTolerances(exact, Object.fromEntries(keys.map((key) => [key, none])));
}
