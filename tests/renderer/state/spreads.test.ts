import { expect, test } from "vitest";
import { readDoor } from "../../../core/door/index.ts";
import { studyInputs } from "../../../core/study/inputs.ts";
import { moreKeys, spreadRows } from "../../../renderer/state/spreads.ts";
import { exampleText } from "../example.ts";

function opened(tolerances: Readonly<Record<string, unknown>>) {
  const raw = JSON.parse(exampleText("medium-dog"));
  const read = readDoor(JSON.stringify({ ...raw, study: { ...raw.study, tolerances } }));
  if (!read.ok) throw new Error(read.errors[0].message);
  return read;
}

test("every input of the study has its row, with the usual spread and the reason", () => {
  const { door, file } = opened({});
  const rows = spreadRows(door, file, "metric");
  expect(rows.map(({ key }) => key)).toEqual(studyInputs(door).inputs.map(({ key }) => key));
  expect(
    rows.every(({ own, unused, usual, reason }) => !own && unused === null && usual !== "" && reason !== ""),
  ).toBe(true);
  const usual = Object.fromEntries(rows.map((row) => [row.key, row.usual]));
  expect(usual).toMatchObject({
    "hinge.frictionTorque": "± 40 %",
    "magnets.gap": "± 0.5 mm",
    "air.swingFactor": "1 to 3",
    "opening.outOfPlumb": "± 0.5°",
    "animals.0.speed": "± 30 %",
    "timer.capacitor": "± 1 %",
  });
  expect(spreadRows(door, file, "inch").find(({ key }) => key === "magnets.gap")?.usual).toMatch(
    /^± [\d.]+ in$/,
  );
});

test("the file's own word is marked, keeps the usual one beside it, and adds a row where there was none", () => {
  const { door, file } = opened({
    "magnets.gap": "1 mm",
    "flap.thickness": "5 %",
    "timer.resistorTolerance": "1 %",
  });
  const rows = spreadRows(door, file, "metric");
  expect(rows.find(({ key }) => key === "magnets.gap")).toMatchObject({ own: true, usual: "± 0.5 mm" });
  expect(rows.find(({ key }) => key === "flap.thickness")).toMatchObject({
    own: true,
    usual: "",
    unused: null,
  });
  expect(rows.find(({ key }) => key === "timer.resistorTolerance")?.unused).toContain("does not spread");
  const more = moreKeys(door, rows);
  expect(more).toContain("opening.width");
  for (const key of [
    "flap.thickness",
    "magnets.gap",
    "magnets.perSide",
    "study.margin",
    "damper.withinAngle.0",
  ])
    expect(more).not.toContain(key);
});
