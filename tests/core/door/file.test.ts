import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { editDoorFile, fileEntry, writeDoor } from "../../../core/door/file.ts";
import { type Migration, migrate } from "../../../core/door/migrate.ts";
import { readDoor, readRoot } from "../../../core/door/read-door.ts";
import { SAMPLE, textWith } from "./sample.ts";

function fileOf(text: string) {
  const read = readDoor(text);
  if (!read.ok) throw new Error(read.errors.map(({ message }) => message).join("\n"));
  return read.file;
}

describe("the file as the person wrote it", () => {
  it("saves byte for byte as read while nothing changes", () => {
    const text = `\ufeff${textWith().replaceAll("  ", "\t").replaceAll('"22 cm"', '"22.0  cm"')}\n\n`;
    expect(writeDoor(fileOf(text))).toBe(text);
  });

  it("changes one entry and keeps the rest, the order of keys too", () => {
    const text = textWith();
    const edited = editDoorFile(fileOf(text), "opening.width", "9 in");
    expect(writeDoor(edited)).toBe(text.replace('"width": "22 cm"', '"width": "9 in"'));
    expect(fileEntry(edited, "opening.width")).toBe("9 in");
  });

  it("leaves the file before the edit alone, and an edit to the same words is none", () => {
    const file = fileOf(textWith());
    const frozen = writeDoor(file);
    editDoorFile(file, "animals.0.mass", "5 kg");
    expect(writeDoor(file)).toBe(frozen);
    expect(editDoorFile(file, "animals.0.mass", "4.5 kg")).toBe(file);
  });

  it("adds, makes the way, and takes out", () => {
    const file = fileOf(textWith(["release", undefined]));
    const added = editDoorFile(file, "release.angle", "20 deg");
    expect(fileEntry(added, "release")).toEqual({ angle: "20 deg" });
    expect(fileEntry(editDoorFile(added, "release", undefined), "release")).toBeUndefined();
    expect(editDoorFile(file, "release.angle", undefined)).toBe(file);
    const second = editDoorFile(file, "animals.1", fileEntry(file, "animals.0"));
    expect(readRoot(second)).toMatchObject({ ok: true });
    expect(fileEntry(editDoorFile(second, "animals.0", undefined), "animals.1")).toBeUndefined();
  });

  it("reaches tolerances by their key paths", () => {
    const file = editDoorFile(fileOf(textWith()), "study.tolerances.magnets.gap", "0.2 mm");
    expect(fileEntry(file, "study.tolerances")).toEqual({
      "hinge.frictionTorque": "30 %",
      "magnets.gap": "0.2 mm",
    });
    expect(fileEntry(file, "study.tolerances.magnets.gap")).toBe("0.2 mm");
    const ends = editDoorFile(file, "study.tolerances.air.swingFactor.low", 0);
    expect(fileEntry(ends, "study.tolerances")).toMatchObject({ "air.swingFactor": { low: 0 } });
  });

  it.each(["animals.5", "animals.name", "name.first", "opening.width.unit"])("cannot edit %s", (path) => {
    expect(() => editDoorFile(fileOf(textWith()), path, "x")).toThrow(RangeError);
  });

  it("written after an edit reads to the same data", () => {
    const paths = fc.constantFrom(
      "name",
      "opening.width",
      "animals.0.mass",
      "flap.extraMasses.0.mass",
      "solenoid.pull.1.0",
      "notes",
      "study.tolerances.latch.offset",
    );
    fc.assert(
      fc.property(paths, fc.string(), (path, words) => {
        const edited = editDoorFile({ text: null, root: SAMPLE }, path, words);
        expect(JSON.parse(writeDoor(edited))).toEqual(JSON.parse(JSON.stringify(edited.root)));
        expect(fileEntry(edited, path)).toBe(words);
      }),
    );
  });
});

describe("migrations", () => {
  const old = textWith(
    ["version", 0],
    ["opening", undefined],
    ["hole", { width: "22 cm", height: "31 cm", sillHeight: "12 cm" }],
  );
  const renamed: Migration = {
    from: 0,
    apply: ({ hole, ...rest }) => ({ ...rest, opening: hole }),
  };

  it("bring an old file up to the present", () => {
    const read = readDoor(old, 1, [renamed]);
    if (!read.ok) throw new Error(read.errors[0].message);
    expect(read.door.opening.width).toBe(0.22);
    expect(writeDoor(read.file)).toContain('"version": 1');
    expect(read.file.text).toBeNull();
  });

  it("run one after the other, in order", () => {
    const step = (from: number): Migration => ({
      from,
      apply: (root) => ({ ...root, name: `${root.name}${from}` }),
    });
    const done = migrate({ format: "swingstill-door", version: 1, name: "" }, 4, [step(3), step(1), step(2)]);
    expect(done).toEqual({
      ok: true,
      changed: true,
      root: { format: "swingstill-door", version: 4, name: "123" },
    });
  });

  it("refuse a version no step starts from, and a newer one by name", () => {
    const refused = readDoor(old);
    expect(refused.ok ? "" : refused.errors[0].message).toContain("files this old cannot be read");
    const newer = readDoor(textWith(["version", 2], ["opening", 7]));
    expect(newer.ok ? [] : newer.errors.map(({ path }) => path)).toEqual(["version"]);
    expect(newer.ok ? "" : newer.errors[0].message).toContain("made by a newer Swingstill");
  });
});
