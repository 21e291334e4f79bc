/** The app expects what the bench card on paper says: one source for every figure. */
import { expect, test } from "vitest";
import { writeDoor } from "../../../core/door/file.ts";
import { readDoor } from "../../../core/door/index.ts";
import { benchCard } from "../../../core/sheet/bench-card.ts";
import { sheetInput } from "../../../core/sheet/sheet-input.ts";
import { changeEntries } from "../../../renderer/state/entries.ts";
import { openText } from "../../../renderer/state/open-text.ts";
import { NO_TEXTS, type TrialTexts } from "../../../renderer/state/trial-readings.ts";
import { expectation } from "../../../renderer/trial/expectations.ts";
import { benchTrial } from "../../../renderer/worker/bench-trial.ts";
import type { Expected, FitAnswer } from "../../../renderer/worker/fit-messages.ts";
import { exampleText } from "../example.ts";

const TEXT = exampleText("medium-dog");

function answers(text: string, texts: Partial<TrialTexts>, limits = false): FitAnswer[] {
  return [...benchTrial({ text, texts: { ...NO_TEXTS, ...texts }, csv: null, fit: false, limits })];
}

function expectedOf(text: string, texts: Partial<TrialTexts> = {}): Expected {
  const first = answers(text, texts)[0];
  if (first.kind !== "expected") throw new Error(first.kind);
  return first.expected;
}

test.each(["metric", "inch"] as const)("%s: pull, coil and push read as on the card", (units) => {
  const read = readDoor(TEXT);
  if (!read.ok) throw new Error("the example does not read");
  const card = benchCard(sheetInput(read.door, read.file, units));
  const rows = card.blocks.flatMap((block) => (block.kind === "table" ? block.rows : []));
  const row = (words: string) => rows.find(([what]) => what.includes(words)) ?? [];
  const all = answers(TEXT, {}, true);
  const limits = all.flatMap((one) => (one.kind === "limits" ? [one.limits] : []))[0];
  const due = (field: "pullIn" | "coil" | "push" | "lowEnd") =>
    expectation(field, expectedOf(TEXT), limits, units)?.says ?? "";
  const plain = (text: string) => text.replaceAll("\u00a0", " ");
  expect(due("pullIn")).toContain(
    `${plain(row("from nothing")[1])}; nine doors in ten ${plain(row("from nothing")[2])}`,
  );
  expect(due("coil").split(";")[0]).toBe(plain(row("ten minutes")[1]));
  expect(due("push")).toContain(plain(row("kitchen scale")[1]));
  expect([due("lowEnd").startsWith("10 of 10; every door drawn does"), row("low end")[1]]).toEqual([
    true,
    "drawn back fully, ten of ten",
  ]);
});

test("the room counts for the coil: what is added to it is the same within the copper's own change", () => {
  const [cool, warm] = [expectedOf(TEXT, { room: "10 °C" }), expectedOf(TEXT, { room: "50 °F" })];
  expect(cool.coil?.ambient).toBe(10);
  expect(warm.coil?.ambient).toBeCloseTo(10, 12);
  expect(cool.coil?.hot).toBeLessThan(expectedOf(TEXT).coil?.hot ?? 0);
});

test("a measured coil gives the thermal resistance that, put into the door, makes the card expect what was measured", () => {
  const found = expectedOf(TEXT, { coil: "70 °C" }).coil?.measuredResistance ?? Number.NaN;
  const opened = openText(TEXT);
  if (!opened.ok) throw new Error("the example does not open");
  const entry = { path: "solenoid.thermalResistance", entry: `${found} K/W` };
  const changed = writeDoor(changeEntries("", opened.file, [entry]).apply(opened.file));
  expect(expectedOf(changed).coil?.hot).toBeCloseTo(70, 6);
  expect(expectedOf(TEXT, { coil: "15 °C" }).coil?.measuredResistance).toBeNull();
});

test("a door without a circuit expects nothing of one", () => {
  const { solenoid: _s, supply: _p, driver: _d, ...bare } = JSON.parse(TEXT);
  expect(expectedOf(JSON.stringify(bare))).toMatchObject({ pull: null, coil: null });
});
