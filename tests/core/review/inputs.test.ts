/**
 * The inputs a result lists are all there are and all matter: each key of a door is changed, and what changes with it is
 * held against the lists. Doors of one animal: which of several animals a result is of is no input of it.
 */
import { beforeAll, expect, test } from "vitest";
import {
  crossFaults,
  type Door,
  doorSchema,
  fieldAt,
  getValue,
  numericPaths,
  setValue,
  valueFits,
} from "../../../core/door/index.ts";
import { type Computed, compute } from "../../../core/review/compute.ts";
import { keysOf } from "../../../core/review/result-keys.ts";
import { RESULTS, resultNamed, resultValues } from "../../../core/review/results.ts";
import { doorOf, referenceDoor } from "../doors.ts";
import { GOOD, goodWith, withChanges } from "./doors.ts";

/** Seal, damper edge, stops, two alternating magnets a side and a kick: all that can be met on the way. */
const EVERYTHING = {
  "magnets.sides": 1,
  "magnets.perSide": 2,
  "magnets.pitch": "9 mm",
  "magnets.polarity": "alternating",
  "magnets.gap": "3 mm",
  "hinge.stopAngle": "70 deg",
  "hinge.staticRatio": 1.3,
  "damper.withinAngle": "50 deg",
  seal: { frictionTorque: "12 mN m", contactAngle: "30 deg" },
  release: { angle: "0.5 deg", speed: "16 rad/s" },
};

const DOORS: readonly Door[] = [
  referenceDoor("15-damper"),
  referenceDoor("32-pinned-at-stop"),
  goodWith(EVERYTHING),
  goodWith({
    ...EVERYTHING,
    "magnets.gap": "9 mm",
    "hinge.frictionTorque": "6 mN m",
    release: { angle: "45 deg" },
  }),
  goodWith({
    "hinge.stopAngle": "1 deg",
    "magnets.gap": "3 mm",
    "magnets.perSide": 2,
    "magnets.pitch": "8 mm",
  }),
  goodWith({
    "hinge.stopAngle": "40 deg",
    "air.windSpeed": "1 m/s",
    "air.pressureDifference": "0.2 Pa",
    seal: { frictionTorque: "5 mN m", contactAngle: "0.3 deg" },
    "hinge.staticRatio": 1.3,
  }),
  goodWith({
    "latch.sideLoad": "1 N",
    "supply.regulator": "linear",
    driver: { kind: "mosfet", onResistance: "3 ohm", clamp: "zener", clampVoltage: "25 V" },
    seal: { frictionTorque: "80 mN m", contactAngle: "55 deg" },
  }),
  goodWith({
    magnets: undefined,
    "latch.offset": "-1 mm",
    "damper.withinAngle": "15 deg",
    "opening.outOfPlumb": "0.3 deg",
    seal: { frictionTorque: "1 mN m", contactAngle: "0.2 deg" },
    "flap.extraMasses": [{ mass: "80 g", distanceFromHinge: "25 cm" }],
  }),
  goodWith({
    "magnets.arrangement": "sill",
    "magnets.distanceFromHinge": "285 mm",
    "timer.retriggers": false,
    "detection.farSideRange": "0.4 m",
  }),
  goodWith({
    "magnets.perSide": 2,
    "magnets.pitch": "9 mm",
    "magnets.force": "repel",
    "timer.resistor": "120 kohm",
    "timer.capacitor": "47 uF",
    "solenoid.stroke": "5.5 mm",
  }),
];

/** "animals.0.speed" is listed as "animals.speed"; lists of masses and pull points as a whole. */
function listed(path: string): string {
  return path.replace(/^animals\.\d+/, "animals").replace(/^(flap\.extraMasses|solenoid\.pull)\..*/, "$1");
}

function lengthOf(door: Door, path: string): number {
  if (path === "animals") return door.animals.length;
  return path === "flap.extraMasses" ? door.flap.extraMasses.length : (door.solenoid?.pull.length ?? 0);
}

interface Change {
  readonly key: string;
  readonly door: Door;
}

/** Every number of the door times a factor, counts one up, a nought made a little. */
function numberChanges(door: Door, factor: number): Change[] {
  return numericPaths((list) => lengthOf(door, list)).flatMap((path) => {
    const value = getValue(door, path);
    if (value === null) return [];
    const field = fieldAt(path);
    const count = field?.kind === "number" && field.whole;
    const next = count ? value + 1 : value === 0 ? 0.01 : value * factor;
    const set = setValue(door, path, next);
    const valid = set.ok && valueFits(path, next) && crossFaults(set.door).length === 0;
    return valid ? [{ key: listed(path), door: set.door }] : [];
  });
}

/** Every choice made otherwise, every flag turned. */
function choiceChanges(door: Door): Change[] {
  return doorSchema.flatMap(({ key, shape }) => {
    const section = door[key as keyof Door] as unknown as Record<string, unknown> | null;
    if (shape.kind !== "section" || section === null) return [];
    return Object.entries(shape.fields).flatMap(([name, field]) => {
      const options: readonly unknown[] =
        field.kind === "choice"
          ? field.options.filter((o) => o !== "none" || key === "driver")
          : field.kind === "flag"
            ? [true, false]
            : [];
      return options
        .filter((option) => option !== section[name])
        .map((option) => ({
          key: `${key}.${name}`,
          door: { ...door, [key]: { ...section, [name]: option } } as Door,
        }))
        .filter((change) => crossFaults(change.door).length === 0);
    });
  });
}

/** How far a result may move without having changed: the integrator's and the magnet table's accuracy. */
function moved(name: string, a: number | null, b: number | null, scale: number): boolean {
  if (a === null || b === null) return a !== b;
  const absolute = name.startsWith("energy.")
    ? 1e-6 * scale
    : resultNamed(name)?.unit === "rad"
      ? 1e-6
      : 1e-12;
  return Math.abs(a - b) > 1e-6 * Math.max(Math.abs(a), Math.abs(b)) + absolute;
}

function changedResults(base: Computed, values: ReturnType<typeof resultValues>, door: Door): string[] {
  const after = resultValues(compute(door, base));
  const scale = Math.max(Math.abs(values["energy.initial"].value ?? 0), 1e-3);
  return Object.keys(values).filter((name) => moved(name, values[name].value, after[name].value, scale));
}

/** What each change of a door's keys moved: "RESULT by KEY". */
interface Observed {
  /** By changes of a few per cent. */
  readonly little: ReadonlySet<string>;
  /** By these and by large ones. */
  readonly any: ReadonlySet<string>;
}

function observe(door: Door): Observed {
  const base = compute(door);
  const values = resultValues(base);
  const moves = (changes: readonly Change[]) =>
    changes.flatMap(({ key, door: changed }) =>
      changedResults(base, values, changed).map((name) => `${name} by ${key}`),
    );
  const little = moves([...numberChanges(door, 1.07), ...choiceChanges(door)]);
  const large = moves([...numberChanges(door, 2.5), ...numberChanges(door, 0.6)]);
  return { little: new Set(little), any: new Set([...little, ...large]) };
}

const OBSERVED: Observed[] = [];
beforeAll(() => {
  for (const door of DOORS) OBSERVED.push(observe(door));
}, 300_000);

test("no unlisted key changes a result", () => {
  const unlisted = OBSERVED.flatMap(({ little }) => [...little]).filter((move) => {
    const [name, key] = move.split(" by ");
    return !keysOf(name).has(key);
  });
  expect([...new Set(unlisted)]).toEqual([]);
});

/** Keys that stand for others: what the file's reader fills in from them is a number of the door of its own. */
const BY_DEFAULT: readonly (readonly [string, Readonly<Record<string, unknown>>])[] = [
  ["animals.shoulderHeight", { "animals.0.shoulderHeight": "28 cm" }],
  ["animals.mass", { "animals.0.mass": "6 kg" }],
  ["flap.material", { "flap.material": "birch plywood" }],
  ["release.angle", { release: { angle: "30 deg" } }],
];

/** A count and the few hits at a stop are too coarse to show every key of the motion: the rest time shows it for them. */
const COARSE: Readonly<Record<string, string>> = {
  "swing.centrePasses": "swing.restTime",
  "energy.stops": "swing.restTime",
};

test("every listed key changes its result on some door", () => {
  const alive = new Set(OBSERVED.flatMap(({ any }) => [...any]));
  const good = compute(doorOf(GOOD));
  for (const [key, changes] of BY_DEFAULT) {
    const changed = changedResults(good, resultValues(good), doorOf(withChanges(GOOD, changes)));
    for (const name of changed) alive.add(`${name} by ${key}`);
  }
  const listedMoves = RESULTS.flatMap(({ name, inputs }) =>
    inputs.flatMap((input) => ("key" in input ? [`${name} by ${input.key}`] : [])),
  );
  const shown = (move: string) => {
    const [name, key] = move.split(" by ");
    return alive.has(move) || alive.has(`${COARSE[name]} by ${key}`);
  };
  expect(listedMoves.filter((move) => !shown(move))).toEqual([]);
});

test("keys and results that inputs name exist", () => {
  for (const { name, inputs } of RESULTS) {
    for (const input of inputs) {
      if ("result" in input) expect(resultNamed(input.result), `${name}: ${input.result}`).toBeDefined();
      else
        expect(fieldAt(input.key.replace(/^animals\./, "animals.0.")), `${name}: ${input.key}`).toBeDefined();
    }
  }
});
