/**
 * Text of a door file to a `Door`, or to every fault in it at once. The way: JSON, envelope and migrations, sections
 * with their defaults, checks across keys, tolerances.
 */
import { crossFaults } from "./checks.ts";
import type { Door } from "./door.ts";
import { type DoorFault, doorFault, givenWords, WHOLE_FILE } from "./fault.ts";
import type { SectionSchema } from "./field.ts";
import { words } from "./field.ts";
import type { DoorFile } from "./file.ts";
import { type JsonFault, type JsonObject, parseJson } from "./json.ts";
import { MATERIALS, materialNamed } from "./materials.ts";
import { doorMigrations, type Migration, migrate } from "./migrate.ts";
import { isSection, readList, readSection, refuseUnknownKeys, type Values } from "./read-section.ts";
import { readLeaf } from "./read-value.ts";
import { DOOR_VERSION, doorSchema, envelopeKeys } from "./schema.ts";
import { type ListLengths, readTolerances } from "./tolerances.ts";

export type DoorRead =
  | { readonly ok: true; readonly door: Door; readonly file: DoorFile }
  | { readonly ok: false; readonly errors: DoorFault[] };

/** Longest text read, in characters: a thousand times a door file. */
export const LONGEST_FILE = 4_000_000;

/** Reads a door file's text. Never throws. `present` and `chain` are arguments for the migrations' tests. */
export function readDoor(
  text: string,
  present: number = DOOR_VERSION,
  chain: readonly Migration[] = doorMigrations,
): DoorRead {
  if (text.length > LONGEST_FILE) {
    const given = `${text.length} characters`;
    return refused([
      doorFault(WHOLE_FILE, given, `at most ${LONGEST_FILE}`, "the file is too large for a door"),
    ]);
  }
  const json = parseJson(text);
  const faults = json.ok ? [] : json.faults.map(jsonFault);
  if (json.value === undefined) return refused(faults);
  if (!isSection(json.value)) {
    return refused([
      ...faults,
      doorFault(WHOLE_FILE, givenWords(json.value), 'a door file: { "format": "swingstill-door", … }'),
    ]);
  }
  const migrated = migrate(json.value, present, chain);
  if (!migrated.ok) return refused([...faults, ...migrated.faults]);
  const file: DoorFile = { text: migrated.changed ? null : text, root: migrated.root };
  const read = readRoot(file);
  return faults.length === 0 ? read : refused([...faults, ...(read.ok ? [] : read.errors)]);
}

function refused(errors: DoorFault[]): DoorRead {
  return { ok: false, errors };
}

function jsonFault({ path, line, column, problem, given, expected }: JsonFault): DoorFault {
  const where = path === "" ? `line ${line}, column ${column}: ${problem}` : problem;
  return doorFault(path === "" ? WHOLE_FILE : path, given, expected, where);
}

/** The door of a file already parsed: what `readDoor` does after the envelope, and what every edit runs. */
export function readRoot(file: DoorFile): DoorRead {
  const { root } = file;
  const faults: DoorFault[] = [];
  refuseUnknownKeys(root, [...envelopeKeys, ...doorSchema.map(({ key }) => key)], "", faults);
  const values: Values = {
    name: readEnvelopeText(root, "name", "Unnamed door", faults),
    notes: readEnvelopeText(root, "notes", "", faults),
  };
  for (const schema of doorSchema) values[schema.key] = readPart(schema, root, faults);
  refuseUnknownMaterial(root, values.flap as Values, faults);
  const door = withTolerances(values as unknown as Door, root, faults);
  const errors = [...faults, ...crossFaults(door)];
  return errors.length > 0 ? refused(errors) : { ok: true, door, file };
}

function readEnvelopeText(root: JsonObject, key: string, fallback: string, faults: DoorFault[]): unknown {
  return Object.hasOwn(root, key) ? readLeaf(words(fallback, ""), root[key], key, faults) : fallback;
}

function readPart({ key, presence, shape }: SectionSchema, root: JsonObject, faults: DoorFault[]): unknown {
  const given = Object.hasOwn(root, key);
  if (!given && presence === "optional") return null;
  if (!given && presence === "required") {
    faults.push(
      doorFault(
        key,
        "nothing",
        shape.kind === "list" ? "a list [ … ]" : "a section { … }",
        "this section is required",
      ),
    );
    return shape.kind === "list" ? [] : readSection(shape.fields, {}, key, []);
  }
  const raw = given ? root[key] : {};
  if (shape.kind === "list") return readList(shape, raw, key, faults);
  const values = readSection(shape.fields, raw, key, faults);
  return key === "magnets" && values.arrangement === "none" ? null : values;
}

/** A material stands for its density, so it must be known unless a density is given. */
function refuseUnknownMaterial(root: JsonObject, flap: Values, faults: DoorFault[]): void {
  const raw = root.flap;
  const material = flap.material;
  if (!isSection(raw) || Object.hasOwn(raw, "density") || typeof material !== "string") return;
  if (!Object.hasOwn(raw, "material") || typeof raw.material !== "string" || materialNamed(material)) return;
  const known = MATERIALS.map(({ name }) => name).join(", ");
  const expected = `one of ${known}, or a flap.density`;
  faults.push(doorFault("flap.material", givenWords(raw.material), expected, "the material is not known"));
}

function withTolerances(door: Door, root: JsonObject, faults: DoorFault[]): Door {
  const raw = root.study;
  if (!isSection(raw) || !Object.hasOwn(raw, "tolerances")) return door;
  const tolerances = readTolerances(raw.tolerances, "study.tolerances", listLengths(door), faults);
  return { ...door, study: { ...door.study, tolerances } };
}

function listLengths({ animals, flap, solenoid }: Door): ListLengths {
  const lengths = new Map([
    ["animals", animals.length],
    ["flap.extraMasses", flap.extraMasses.length],
  ]);
  if (solenoid !== null) lengths.set("solenoid.pull", solenoid.pull.length);
  return lengths;
}
