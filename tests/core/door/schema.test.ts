import { describe, expect, it } from "vitest";
import type { Field, Fields } from "../../../core/door/field.ts";
import { inRange } from "../../../core/door/field.ts";
import { MATERIALS, materialNamed } from "../../../core/door/materials.ts";
import { nearestName } from "../../../core/door/nearest.ts";
import { numericPaths } from "../../../core/door/numeric-paths.ts";
import { getValue, setValue } from "../../../core/door/path.ts";
import { doorSchema, fieldAt, isLeaf, isNumeric } from "../../../core/door/schema.ts";
import { parseQuantity } from "../../../core/quantity/quantity.ts";
import { doorWith } from "./sample.ts";

/** Every field with a path, one entry of each list. */
function everyField(): [string, Field][] {
  const inFields = (fields: Fields, path: string): [string, Field][] =>
    Object.entries(fields).flatMap(([key, field]) => [
      [`${path}.${key}`, field] as [string, Field],
      ...(field.kind === "list" ? inFields(field.fields, `${path}.${key}.0`) : []),
    ]);
  return doorSchema.flatMap(({ key, shape }) =>
    shape.kind === "list" ? inFields(shape.fields, `${key}.0`) : inFields(shape.fields, key),
  );
}

// The contract's keys without a default (""), with their sections.
const REQUIRED = `animals.0.shoulderHeight animals.0.chestWidth animals.0.bodyLength animals.0.mass
opening.width opening.height opening.sillHeight flap.width flap.height flap.thickness flap.hingeOffset
flap.extraMasses.0.mass flap.extraMasses.0.distanceFromHinge hinge.frictionTorque hinge.viscousDamping
magnets.diameter magnets.thickness magnets.remanence magnets.gap magnets.distanceFromHinge
latch.boltWidth latch.slotWidth latch.distanceFromHinge latch.tipGap latch.engagement latch.edgeHalfWidth latch.boltMass
latch.springForce solenoid.ratedVoltage solenoid.ratedCurrent solenoid.inductance solenoid.stroke
solenoid.thermalResistance solenoid.thermalTimeConstant driver.onResistance`.split(/\s+/);

describe("the schema", () => {
  it("requires what the contract requires, and nothing else", () => {
    const asked = everyField().filter(([, field]) => isLeaf(field) && field.default.kind === "required");
    expect(asked.map(([path]) => path).sort()).toEqual([...REQUIRED].sort());
  });

  it("has sections in the contract's order, four of them required", () => {
    expect(doorSchema.map(({ key }) => key).join(" ")).toBe(
      "animals opening flap hinge seal damper air magnets latch solenoid driver timer supply detection release study",
    );
    expect(doorSchema.filter(({ presence }) => presence === "required").map(({ key }) => key)).toEqual([
      "animals",
      "opening",
      "flap",
      "hinge",
    ]);
  });

  it("explains every key in a sentence", () => {
    for (const { key, doc } of doorSchema) expect(doc, key).toMatch(/^[A-Z].*\.$/s);
    for (const [path, field] of everyField()) expect(field.doc, path).toMatch(/^[A-Z].*\.$/s);
  });

  it("finds every field by its path", () => {
    for (const [path, field] of everyField()) expect(fieldAt(path), path).toBe(field);
    expect(fieldAt("solenoid.pull.3.1")).toMatchObject({ dimension: "force" });
    expect(fieldAt("solenoid.pull.3.0")).toMatchObject({ dimension: "length" });
  });

  it.each([
    "",
    "opening",
    "opening.",
    "opening.width.x",
    "animals.speed",
    "animals.x.speed",
    "animals.0",
    "animals.01.speed",
    "solenoid.pull.0",
    "solenoid.pull.0.2",
    "opening.__proto__",
    "__proto__",
    "constructor.name",
    "flap.extraMasses.0",
  ])("has no field at %j", (path) => expect(fieldAt(path)).toBeUndefined());

  it("has defaults that its own ranges allow", () => {
    for (const [path, field] of everyField()) {
      if (!isNumeric(field) || field.default.kind !== "value") continue;
      const { value } = field.default;
      const read =
        field.kind === "quantity"
          ? parseQuantity(String(value), field.dimension)
          : { ok: true as const, value };
      expect(read.ok && inRange(Number(read.value), field.range), path).toBe(true);
    }
  });
});

describe("numbers by path", () => {
  const door = doorWith();

  it("are all there to get and set, sharing what is untouched", () => {
    const paths = numericPaths((list) => (list === "solenoid.pull" ? 2 : 1));
    expect(paths).toContain("solenoid.pull.1.1");
    expect(paths.length).toBeGreaterThan(90);
    for (const path of paths) {
      const set = setValue(door, path, 0.123);
      if (!set.ok) throw new Error(set.error.message);
      expect(getValue(set.door, path), path).toBe(0.123);
      const section = path.split(".")[0] as keyof typeof door;
      for (const key of Object.keys(door) as (keyof typeof door)[]) {
        expect(set.door[key] === door[key], `${path}: ${key}`).toBe(key !== section);
      }
      const back = setValue(set.door, path, getValue(door, path) ?? Number.NaN);
      if (getValue(door, path) !== null) expect(back.ok && back.door, path).toEqual(door);
    }
  });

  it("read the file's words", () => {
    expect(getValue(door, "flap.extraMasses.0.mass")).toBe(0.02);
    expect(getValue(door, "solenoid.pull.1.1")).toBe(1.2);
    expect(getValue(door, "driver.onResistance")).toBeNull();
    expect(getValue(door, "flap.material")).toBeNull();
    expect(getValue(door, "animals.1.mass")).toBeNull();
    expect(getValue(door, "animals.length")).toBeNull();
  });

  it("leave values worked out from them as they are", () => {
    const set = setValue(door, "animals.0.shoulderHeight", 1);
    expect(set.ok && set.door.animals[0].pushHeight).toBe(door.animals[0].pushHeight);
  });

  it.each(["magnets.gap", "latch.offset", "timer.holdTime"])(
    "%s of a section left out is an error value",
    (path) => {
      const bare = doorWith(["magnets", undefined], ["latch", undefined], ["timer", undefined]);
      const set = setValue(bare, path, 1);
      expect(set.ok ? null : set.error.path).toBe(path);
      expect(getValue(bare, path)).toBeNull();
    },
  );

  it.each([
    "flap.material",
    "animals.7.speed",
    "nonsense",
    "latch",
    "flap.extraMasses.1.mass",
    "__proto__.x",
  ])("%s cannot be set", (path) => expect(setValue(door, path, 1).ok).toBe(false));
});

describe("materials and names", () => {
  it("are known with the model's densities", () => {
    expect(Object.fromEntries(MATERIALS.map(({ name, density }) => [name, density]))).toEqual({
      polycarbonate: 1200,
      acrylic: 1185,
      PVC: 1400,
      ABS: 1050,
      "birch plywood": 690,
      oak: 720,
      aluminium: 2700,
      glass: 2500,
      "EPDM rubber": 1200,
    });
    expect(materialNamed("pvc")?.density).toBe(1400);
    expect(materialNamed("balsa")).toBeUndefined();
  });

  it("are guessed from near misses only", () => {
    expect(nearestName("shoulderheight", ["shoulderHeight", "pushHeight"])).toBe("shoulderHeight");
    expect(nearestName("frictionTorqe", ["frictionTorque", "viscousDamping"])).toBe("frictionTorque");
    expect(nearestName("colour", ["width", "height"])).toBeUndefined();
  });
});
