import { strFromU8, unzipSync } from "fflate";
import { expect, test } from "vitest";
import { SheetDesk } from "../../../renderer/worker/sheet-desk.ts";
import type { SheetTask, SheetWant } from "../../../renderer/worker/sheet-messages.ts";
import { exampleText } from "../example.ts";

const TASK: SheetTask = {
  text: exampleText("medium-dog"),
  units: "metric",
  paper: "a4",
  symbols: "iec",
  study: null,
};
const desk = new SheetDesk();
const ask = (want: SheetWant, change: Partial<SheetTask> = {}) =>
  desk.answer({ id: 7, task: { ...TASK, ...change }, want });

test("the sheets of every document, the grounds of the hold, and what speaks against building", async () => {
  const answer = await ask({ kind: "sheets" });
  if (answer.kind !== "sheets") throw new Error(answer.kind);
  expect(answer.id).toBe(7);
  expect(answer.view).toMatchObject({ fails: [], hold: "first setting" });
  expect(
    answer.view.documents.map(({ sheets }) => sheets.every(({ svg }) => svg.startsWith("<svg "))),
  ).toEqual(Array(5).fill(true));
  const never = await ask({ kind: "sheets" }, { text: exampleText("never-latches") });
  if (never.kind !== "sheets") throw new Error(never.kind);
  expect(never.view.hold).toBeNull();
  expect(never.view.fails.length).toBeGreaterThan(0);
});

test("another paper, other units and symbols are another set", async () => {
  const answer = await ask({ kind: "sheets" }, { paper: "letter", units: "inch", symbols: "ieee" });
  if (answer.kind !== "sheets") throw new Error(answer.kind);
  const [build, , wiring] = answer.view.documents;
  expect(build.sheets[0].widthMm).toBe(215.9);
  expect(wiring.sheets[0].svg).toContain("IEEE 315");
});

test("a file, a sheet, and the archive with the files of that paper and those symbols", async () => {
  const file = await ask({ kind: "file", name: "wiring.svg" }, { symbols: "ieee" });
  if (file.kind !== "bytes") throw new Error(file.kind);
  expect(strFromU8(file.bytes)).toContain("IEEE 315");
  const sheet = await ask({ kind: "sheet", document: "bench-card", sheet: "2", outlined: false });
  if (sheet.kind !== "bytes") throw new Error(sheet.kind);
  expect(strFromU8(sheet.bytes)).toMatch(/^<\?xml .*@font-face.*2 of 2/s);
  const dots = await ask({ kind: "sheet", document: "bench-card", sheet: "2", outlined: true });
  if (dots.kind !== "bytes") throw new Error(dots.kind);
  expect(strFromU8(dots.bytes)).not.toMatch(/<text|@font-face/);
  const zip = await ask({ kind: "archive", folder: "mine" });
  if (zip.kind !== "bytes") throw new Error(zip.kind);
  expect(Object.keys(unzipSync(zip.bytes))).toContain("mine/build-sheet.pdf");
});

test("what is not there, and a door that cannot be read, are refused in words", async () => {
  expect(await ask({ kind: "file", name: "nothing.pdf" })).toEqual({
    id: 7,
    kind: "refused",
    reasons: ["This door has no nothing.pdf."],
  });
  const wrong = await ask({ kind: "sheets" }, { text: TASK.text.replace('"6 mm"', '"wide"') });
  expect(wrong).toMatchObject({ kind: "refused", reasons: [expect.stringContaining("magnets.gap")] });
});
