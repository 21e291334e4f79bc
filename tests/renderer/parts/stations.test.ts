import { describe, expect, test } from "vitest";
import { doorSchema, fieldAt } from "../../../core/door/schema.ts";
import type { PartName } from "../../../core/review/finding.ts";
import { FINDING_RULES } from "../../../core/review/findings.ts";
import { RESULTS, resultNamed } from "../../../core/review/results.ts";
import { labelInSentence, labelOf, optionLabel } from "../../../renderer/parts/labels.ts";
import { noteText } from "../../../renderer/parts/note.tsx";
import { STATIONS, stationOfPart, stationOfPath } from "../../../renderer/parts/stations.ts";

const groups = STATIONS.flatMap((station) => station.groups);

describe("every key of the door file has its place in a form, once", () => {
  test.each(doorSchema.map((section) => [section.key, section] as const))("%s", (key, { shape }) => {
    const own = groups.filter(({ section }) => section === key);
    expect(own).toHaveLength(1);
    if (shape.kind === "list") return;
    const shown = [...own[0].keys, ...own[0].more].sort();
    const asked = Object.entries(shape.fields).flatMap(([name, field]) =>
      field.kind === "tolerances" ? [] : [name],
    );
    expect(shown).toEqual(asked.sort());
  });
});

test("sections that may be left out can be, and no others", () => {
  for (const { key, presence } of doorSchema)
    expect([key, groups.find(({ section }) => section === key)?.optional]).toEqual([
      key,
      presence === "optional",
    ]);
});

test("figures are results that exist", () => {
  for (const name of STATIONS.flatMap(({ figures }) => figures)) expect(resultNamed(name)?.name).toBe(name);
});

test("every finding leads to a part", () => {
  for (const { part } of FINDING_RULES) expect(stationOfPart(part as PartName)).not.toBe("verdict");
});

test("paths lead to their station", () => {
  expect(stationOfPath("flap.extraMasses.0.mass")).toBe("flap");
  expect(stationOfPath("seal.contactAngle")).toBe("hinge");
  expect(stationOfPath("file")).toBeUndefined();
});

test("every key has a label that reads as words and a note", () => {
  for (const { keys, more, section } of groups)
    for (const key of [...keys, ...more]) {
      const path = `${section}.${key}`;
      expect(labelOf(path)).toMatch(/^[A-Z][A-Za-z’–\- ]+$/);
      if (fieldAt(path)?.kind !== "list") expect(noteText(path).length).toBeGreaterThan(10);
    }
});

test("labels in sentences name their owner; entries of lists are labelled as their form", () => {
  expect(labelInSentence("magnets.gap")).toBe("gap (magnets)");
  expect(labelOf("animals.3.speed")).toBe("Walking speed");
  expect(optionLabel("magnets.arrangement", "jamb")).toBe("in the jambs");
  expect(optionLabel("latch.boltPoints", "up")).toBe("up");
});

test("a result's inputs are keys or results that exist", () => {
  for (const { inputs } of RESULTS)
    for (const input of inputs) {
      if ("result" in input) expect(resultNamed(input.result)?.name).toBe(input.result);
      else expect(fieldAt(input.key.replace("animals.", "animals.0."))).toBeDefined();
    }
});
