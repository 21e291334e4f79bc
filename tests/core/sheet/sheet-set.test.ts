/** The whole set: names, packing, tables and data as other programs read them. */
import { unzipSync } from "fflate";
import { describe, expect, test } from "vitest";
import { RESULTS } from "../../../core/review/results.ts";
import { PAPERS } from "../../../core/sheet/paper.ts";
import { sheetInput } from "../../../core/sheet/sheet-input.ts";
import { sheetSet, zipFile } from "../../../core/sheet/sheet-set.ts";
import { runStudy } from "../../../core/study/study.ts";
import { EXAMPLES, exampleJson } from "../doors.ts";
import { exampleInput, inputOf } from "./sample.ts";

const text = (bytes: Uint8Array) => new TextDecoder().decode(bytes);

/** Comma-separated text by RFC 4180. */
function rowsOf(csv: string): string[][] {
  return csv
    .trimEnd()
    .split("\n")
    .map((line) =>
      [...line.matchAll(/(?:^|,)(?:"((?:[^"]|"")*)"|([^,]*))/g)].map(([, quoted, plain]) =>
        quoted === undefined ? plain : quoted.replaceAll('""', '"'),
      ),
    );
}

describe("the set", () => {
  test.each(EXAMPLES)("%s: plain names, no two alike, none empty", async (name) => {
    const files = await sheetSet(exampleInput(name), PAPERS.a4);
    for (const { name: file, bytes, what } of files) {
      expect(file).toMatch(/^[a-z][a-z-]*\.(html|pdf|svg|dxf|csv|json|cir|c|ino)$/);
      expect(bytes.length).toBeGreaterThan(100);
      expect(what).not.toBe("");
    }
    expect(new Set(files.map((one) => one.name)).size).toBe(files.length);
    const wanted = [
      "build-sheet.html",
      "build-sheet.pdf",
      "bench-card.html",
      "bench-card.pdf",
      "drill-template.pdf",
    ];
    const drawings = ["flap", "frame", "solenoid"].flatMap((one) => [
      `template-${one}.svg`,
      `template-${one}.dxf`,
    ]);
    const names = files.map((one) => one.name);
    for (const one of [...wanted, ...drawings, "results.csv", "swing.csv", "data.json"])
      expect(names).toContain(one);
  });

  test("the same door gives the same bytes, packed too, and the zip holds every file", async () => {
    const once = async () => sheetSet(inputOf(exampleJson("cat")), PAPERS.a4);
    const [first, second] = [await once(), await once()];
    expect(zipFile("door", first)).toEqual(zipFile("door", second));
    const inside = unzipSync(zipFile("door", first));
    expect(Object.keys(inside).sort()).toEqual(first.map(({ name }) => `door/${name}`).sort());
    for (const { name, bytes } of first) expect(inside[`door/${name}`]).toEqual(bytes);
  });
});

describe("data", () => {
  test("results, swing and JSON carry the very numbers, each with its unit", async () => {
    const input = exampleInput("medium-dog");
    const files = new Map((await sheetSet(input, PAPERS.a4)).map(({ name, bytes }) => [name, text(bytes)]));
    const [head, ...results] = rowsOf(files.get("results.csv") ?? "");
    expect(head).toEqual(["name", "value", "unit", "what it is"]);
    expect(results.length).toBe(RESULTS.length);
    RESULTS.forEach(({ name, unit, value, title }, i) => {
      const number = value(input.computed);
      expect(results[i]).toEqual([name, number === null ? "" : String(number), unit, title]);
    });
    const [columns, ...trace] = rowsOf(files.get("swing.csv") ?? "");
    expect(columns).toEqual(["time_s", "angle_rad", "speed_rad_per_s"]);
    const { swing } = input.computed.governing;
    expect(trace[0].map(Number)).toEqual([0, swing.releaseAngle, 0]);
    // Rows come every 5 ms; the last one is the last before the end.
    expect(swing.endTime - Number(trace.at(-1)?.[0])).toBeGreaterThanOrEqual(0);
    expect(swing.endTime - Number(trace.at(-1)?.[0])).toBeLessThanOrEqual(0.005);
    const json = JSON.parse(files.get("data.json") ?? "");
    expect(json.results["swing.settleTime"]).toEqual({ value: swing.settleTime, unit: "s" });
    expect(json.findings.length).toBe(input.findings.length);
    expect(json.trace.time_s.length).toBe(trace.length);
    expect(json.study).toBeNull();
    expect(files.has("study.csv")).toBe(false);
  });

  test("where a study ran its curve goes along and its hold governs", async () => {
    const input = exampleInput("cat");
    const study = runStudy({ door: input.door, samples: 40, seed: 1 });
    const recommended = { ...study, recommended: 7.25, probability: 1, lowerBound: 0.999 };
    const withStudy = sheetInput(input.door, input.file, "metric", recommended, input.computed);
    const files = new Map(
      (await sheetSet(withStudy, PAPERS.a4)).map(({ name, bytes }) => [name, text(bytes)]),
    );
    const [head, ...curve] = rowsOf(files.get("study.csv") ?? "");
    expect(head).toEqual(["setting_s", "probability_1", "lower95_1"]);
    expect(curve.map((row) => row.map(Number))).toEqual(study.curve.map((point) => [...point]));
    expect(JSON.parse(files.get("data.json") ?? "").study.results["hold.recommended"]).toEqual({
      value: 7.25,
      unit: "s",
    });
    const html = files.get("build-sheet.html") ?? "";
    expect(html).toContain("7.25 s");
    expect(html).toContain("caught in 40 sampled doors");
  });
});
