/**
 * The door file as data: every section and key with its kind, range, default and meaning (contract: "The door file").
 *
 * Key paths are those of the file: "opening.width", "animals.0.speed", "flap.extraMasses.1.mass",
 * "solenoid.pull.0.1" (the second entry of the first pair).
 */
import type { Field, Fields, LeafField, NumericField, SectionSchema } from "./field.ts";
import * as body from "./schema-flap.ts";
import * as lock from "./schema-lock.ts";

export const DOOR_FORMAT = "swingstill-door";
export const DOOR_VERSION = 1;

/** Keys of the file beside its sections. */
export const envelopeKeys = ["format", "version", "name", "notes"] as const;

export const doorSchema: readonly SectionSchema[] = [
  { key: "animals", presence: "required", doc: body.animals.doc, shape: body.animals },
  section("opening", "required", body.opening, "The hole in the wall or door leaf."),
  section("flap", "required", body.flap, "The swinging plate, hung from its top edge."),
  section("hinge", "required", body.hinge, "The hinge and the stops."),
  section("seal", "default", body.seal, "The brush or lip seal around the flap."),
  section("damper", "default", body.damper, "A damper that acts near the closed position or all the way."),
  section("air", "default", body.air, "The air the flap moves in."),
  section("magnets", "optional", body.magnets, "Magnets that centre the flap."),
  section("latch", "optional", lock.latch, "The spring bolt and its slot."),
  section("solenoid", "optional", lock.solenoid, "The coil that pulls the bolt."),
  section("driver", "optional", lock.driver, "The transistor that switches the coil."),
  section("timer", "optional", lock.timer, "What holds the door unlocked."),
  section("supply", "optional", lock.supply, "The power supply and the electronics' regulator."),
  section("detection", "default", lock.detection, "How the animal is noticed."),
  section(
    "release",
    "default",
    lock.release,
    "A let-go state that replaces the passage's, as in a swing by hand.",
  ),
  section("study", "default", lock.study, "What the tolerance study and the review aim at."),
];

function section(
  key: string,
  presence: SectionSchema["presence"],
  fields: Fields,
  doc: string,
): SectionSchema {
  return { key, presence, doc, shape: { kind: "section", fields } };
}

const sectionByKey: ReadonlyMap<string, SectionSchema> = new Map(
  doorSchema.map((entry) => [entry.key, entry]),
);

/** The section of that name; undefined where there is none. */
export function sectionNamed(key: string): SectionSchema | undefined {
  return sectionByKey.get(key);
}

/** What the schema says about a key path; undefined where no such key can be. Indices are not held against a door. */
export function fieldAt(path: string): Field | undefined {
  const [head, ...rest] = path.split(".");
  const shape = sectionByKey.get(head)?.shape;
  if (shape === undefined) return undefined;
  return shape.kind === "list" ? fieldIn(shape, rest) : memberOf(shape.fields, rest);
}

function memberOf(fields: Fields, [key, ...rest]: readonly string[]): Field | undefined {
  if (key === undefined || !Object.hasOwn(fields, key)) return undefined;
  return fieldIn(fields[key], rest);
}

function fieldIn(field: Field, steps: readonly string[]): Field | undefined {
  if (steps.length === 0) return field;
  const [step, ...rest] = steps;
  if (!isIndex(step)) return undefined;
  if (field.kind === "list") return rest.length === 0 ? undefined : memberOf(field.fields, rest);
  if (field.kind === "curve" && rest.length === 1 && isIndex(rest[0]))
    return field.columns[Number(rest[0])]?.field;
  return undefined;
}

/** Whether a path's step counts an entry of a list: "0", "12". */
export function isIndex(step: string): boolean {
  return /^(0|[1-9]\d{0,5})$/.test(step);
}

export function isNumeric(field: Field | undefined): field is NumericField {
  return field?.kind === "quantity" || field?.kind === "number";
}

export function isLeaf(field: Field): field is LeafField {
  return field.kind !== "list" && field.kind !== "curve" && field.kind !== "tolerances";
}
