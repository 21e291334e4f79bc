// Measured swings as files people have: header variants, units, dividers, gaps, and every bad line by its number.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type MeasuredRead, readMeasured } from "../../../../core/study/fit/measured.ts";
import { DEGREE } from "./helpers.ts";

function trace(text: string): { time: number[]; angle: number[]; gaps: number } {
  const read = readMeasured(text);
  if (!read.ok) throw new Error(read.errors.map((e) => e.message).join("\n"));
  if (read.measured.kind !== "trace") throw new Error(`read as ${read.measured.kind}`);
  const { time, angle } = read.measured.samples;
  return { time: [...time], angle: [...angle], gaps: read.gaps };
}

function turns(text: string) {
  const read = readMeasured(text);
  if (!read.ok) throw new Error(read.errors.map((e) => e.message).join("\n"));
  if (read.measured.kind !== "turns") throw new Error(`read as ${read.measured.kind}`);
  return read.measured.turns;
}

function errors(text: string): string[] {
  const read: MeasuredRead = readMeasured(text);
  return read.ok ? [] : read.errors.map(({ message }) => message);
}

const ROWS = [
  [0, 60],
  [0.1, 58.5],
  [0.2, 50],
  [0.35, 31],
  [0.4, 20],
];

describe("traces", () => {
  const wanted = { time: ROWS.map(([t]) => t), angle: ROWS.map(([, a]) => a * DEGREE), gaps: 0 };
  const lines = (row: (t: number, a: number) => string) => ROWS.map(([t, a]) => row(t, a)).join("\n");
  const german = (x: number) => String(x).replace(".", ",");

  test.each([
    ["as the contract has it", `time_s,angle_deg\n${lines((t, a) => `${t},${a}`)}\n`],
    [
      "a byte-order mark and Windows line ends",
      `\ufefftime_s,angle_deg\r\n${lines((t, a) => `${t},${a}`).replaceAll("\n", "\r\n")}\r\n`,
    ],
    ["units in brackets, capitals, blanks", `Time (s), Angle (deg)\n${lines((t, a) => `${t} ,  ${a}`)}`],
    ["milliseconds and radians", `t_ms,theta_rad\n${lines((t, a) => `${t * 1000},${a * DEGREE}`)}`],
    ["semicolons and decimal commas", `Zeit [s];Winkel [°]\n${lines((t, a) => `${german(t)};${german(a)}`)}`],
    ["tabs", `time\tangle\n${lines((t, a) => `${t}\t${a}`)}`],
    ["blanks alone, no names", lines((t, a) => `${t}   ${a}`)],
    ["no names", lines((t, a) => `${t},${a}`)],
    [
      "comments and blank lines",
      `# filmed by hand\n\n% second take\ntime_s,angle_deg\n${lines((t, a) => `${t},${a}`)}\n\n// end`,
    ],
    ["other columns, another order", `frame,angle_deg,x_px,time_s\n${lines((t, a) => `7,${a},311,${t}`)}`],
    ["quotes", `"time_s","angle_deg"\n${lines((t, a) => `"${t}","${a}"`)}`],
    [
      "what the swing command writes",
      `time_s,angle_rad,speed_rad_per_s\n${lines((t, a) => `${t},${a * DEGREE},0.1`)}`,
    ],
  ])("%s", (_, text) => {
    const read = trace(text);
    expect(read.time.map((t) => Number(t.toFixed(9)))).toEqual(wanted.time);
    read.angle.forEach((angle, i) => {
      expect(angle).toBeCloseTo(wanted.angle[i], 12);
    });
  });

  test("where nothing was seen is a gap, not an error", () => {
    const read = trace("time_s,angle_deg\n0,60\n0.1,\n0.2,NaN\n0.3,50\n0.4,40\n0.5,30");
    expect([read.time.length, read.gaps]).toEqual([4, 2]);
  });

  test("every bad line is told by its number, comments and blanks counted", () => {
    const text = "# take 3\ntime_s,angle_deg\n0,60\nxyz,58\n\n0.2,fifty\n0.1,40\n-,30\n0.4,900\n0.5,20";
    expect(errors(text)).toEqual([
      'Line 4: given "xyz", expected a number in the column of times.',
      'Line 6: given "fifty", expected a number in the column of angles.',
      'Line 8: given "-", expected a number in the column of times.',
      "Line 9: given an angle of 900°, expected at most a full turn.",
    ]);
    expect(errors("time_s,angle_deg\n0,60\n0.2,50\n0.1,40")).toEqual([
      "Line 4: time 0.1 s is before 0.2 s of line 3; expected times that rise.",
    ]);
    expect(errors("time_s,angle_deg\n0,60\n0.2")).toEqual([]);
  });

  test("many bad lines: the first twenty and how many more", () => {
    const told = errors(`time_s,angle_deg\n${"bad,1\n".repeat(50)}`);
    expect(told).toHaveLength(21);
    expect(told[20]).toBe("And 30 more bad lines.");
  });

  test.each([
    ["", "holds no readings"],
    ["# only a comment\n", "holds no readings"],
    ["time_s,angle_deg\n", "holds no readings"],
    ["time_s,voltage\n0,1\n", "no column of angles"],
    ["1,2,3\n4,5,6\n", "3 columns without names"],
  ])("%j", (text, says) => {
    expect(errors(text).join("\n")).toContain(says);
  });

  test("any text gives readings or errors that say something, never a throw", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary", maxLength: 200 }), (noise) => {
        for (const text of [noise, `time_s,angle_deg\n${noise}`]) {
          const read = readMeasured(text);
          expect(read.ok || read.errors.every(({ message }) => message.length > 10)).toBe(true);
        }
      }),
    );
  });
});

describe("turning points", () => {
  const angles = [60, -52.4, 46.2, -41];

  test("numbered, with or without times; numbers may start anywhere and leave some out", () => {
    expect(turns("turn,angle_deg\n0,60\n1,-52.4\n2,46.2\n3,-41")).toEqual({
      turn: [0, 1, 2, 3],
      angle: angles.map((a) => a * DEGREE),
      time: null,
    });
    expect(turns("turn;time_s;angle_deg\n0;0;60\n2;1,1;46,2\n3;1,6;-41").turn).toEqual([0, 2, 3]);
    expect(turns("turn;time_s;angle_deg\n0;0;60\n2;1,1;46,2\n3;1,6;-41").time).toEqual([0, 1.1, 1.6]);
  });

  test("a single column is successive turns", () => {
    expect(turns("angle_deg\n60\n-52.4\n46.2\n-41").turn).toEqual([0, 1, 2, 3]);
    expect(turns("60\n-52.4\n46.2\n-41").angle[1]).toBeCloseTo(-52.4 * DEGREE, 12);
  });

  test("times and angles that turn at every reading; a missed turn shows in the time", () => {
    expect(turns("time_s,angle_deg\n0,60\n0.55,-52.4\n1.1,46.2\n1.64,-41").turn).toEqual([0, 1, 2, 3]);
    const missed =
      "time_s,angle_deg\n0,60\n0.55,-52.4\n1.1,46.2\n1.64,-41\n2.17,36.7\n3.2,29.7\n3.7,-26.8\n4.25,24.3";
    expect(turns(missed).turn).toEqual([0, 1, 2, 3, 4, 6, 7, 8]);
  });

  test.each([
    ["turn,angle_deg\n0,60\n0,-52", "turns that rise"],
    ["turn,angle_deg\n0.5,60\n1,-52", "whole number from 0"],
    ["turn,angle_deg\n-1,60\n1,-52", "whole number from 0"],
  ])("%j", (text, says) => {
    expect(errors(text).join("\n")).toContain(says);
  });
});
