/**
 * What a section starts with when it is added: ordinary values of the trade (common practice, no source), so that the door
 * can be computed at once and the person changes what is different.
 */

import { type DoorFile, fileEntry } from "../../core/door/file.ts";
import type { Json, JsonObject } from "../../core/door/json.ts";
import { fieldAt, sectionNamed } from "../../core/door/schema.ts";
import type { EntryChange } from "../state/entries.ts";

const TEMPLATES: Readonly<Record<string, JsonObject>> = {
  magnets: {
    arrangement: "jamb",
    diameter: "10 mm",
    thickness: "5 mm",
    remanence: "1.3 T",
    gap: "5 mm",
    distanceFromHinge: "25 cm",
  },
  latch: {
    boltWidth: "8 mm",
    slotWidth: "16 mm",
    distanceFromHinge: "25 cm",
    tipGap: "2 mm",
    engagement: "3 mm",
    edgeHalfWidth: "10 mm",
    boltMass: "20 g",
    springForce: "1.2 N",
  },
  solenoid: {
    ratedVoltage: "24 V",
    ratedCurrent: "120 mA",
    inductance: "350 mH",
    stroke: "8 mm",
    pull: [
      ["0 mm", "7 N"],
      ["8 mm", "2.4 N"],
    ],
    thermalResistance: "18 K/W",
    thermalTimeConstant: "6 min",
  },
  driver: { kind: "darlington", clamp: "diode" },
  timer: { holdTime: "12 s" },
  supply: { voltage: "24 V" },
};

/** Values a choice asks for that stand in no template of their own. */
const ON_CHOICE: Readonly<Record<string, string>> = { "driver.onResistance": "50 mohm" };

/** A new section; its magnets, bolt and slot sit near the flap's lower edge where the flap's size is plain. */
export function sectionTemplate(section: string): Json {
  return TEMPLATES[section] ?? {};
}

/** Entries that a choice makes necessary and that are not there: all of them belong to the choice's own step. */
export function neededBy(file: DoorFile, path: string, value: string): EntryChange[] {
  const [section, key] = path.split(".");
  const shape = sectionNamed(section)?.shape;
  if (shape?.kind !== "section") return [];
  return Object.keys(shape.fields).flatMap((other) => {
    const otherPath = `${section}.${other}`;
    const field = fieldAt(otherPath);
    if (field === undefined || !("default" in field) || field.default.kind !== "required") return [];
    const { when } = field.default;
    const asked = when?.key === key && when.is.includes(value);
    const template = ON_CHOICE[otherPath] ?? TEMPLATES[section]?.[other];
    if (!asked || template === undefined || fileEntry(file, otherPath) !== undefined) return [];
    return [{ path: otherPath, entry: template }];
  });
}

/** Keys that mean something only beside a certain choice: key, the choice's key, its values. */
const ONLY_WITH: readonly (readonly [path: string, choice: string, values: readonly string[]])[] = [
  ["driver.onResistance", "driver.kind", ["mosfet"]],
  ["driver.dropVoltage", "driver.kind", ["darlington"]],
  ["driver.baseEmitterVoltage", "driver.kind", ["darlington"]],
  ["driver.baseResistor", "driver.kind", ["darlington"]],
  ["driver.currentGain", "driver.kind", ["darlington"]],
  ["driver.clampVoltage", "driver.clamp", ["diode", "zener"]],
  ["supply.efficiency", "supply.regulator", ["switching"]],
];

/** Whether a key has a meaning for this door, or at least an entry to look after. */
export function isAsked(file: DoorFile, path: string): boolean {
  if (path.startsWith("magnets.") && path !== "magnets.arrangement") {
    return chosen(file, "magnets.arrangement") !== "none";
  }
  const rule = ONLY_WITH.find(([key]) => key === path);
  return rule === undefined || rule[2].includes(chosen(file, rule[1]));
}

function chosen(file: DoorFile, path: string): string {
  const entry = fileEntry(file, path);
  if (typeof entry === "string") return entry;
  const field = fieldAt(path);
  return field?.kind === "choice" && field.default.kind === "value" ? String(field.default.value) : "";
}
