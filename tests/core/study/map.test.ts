// Maps: ranges as text, the order of the grid, and values against the review of the edited file at random points.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type DoorFile, editDoorFile, readDoor, writeDoor } from "../../../core/door/index.ts";
import { compute } from "../../../core/review/compute.ts";
import { findings } from "../../../core/review/findings.ts";
import { resultNamed } from "../../../core/review/results.ts";
import { studyView } from "../../../core/review/study-view.ts";
import { words } from "../../../core/review/words.ts";
import { doorMap, type MapPoint, type MapRequest } from "../../../core/study/map.ts";
import { axisValue, type MapAxis, parseAxis } from "../../../core/study/map-axis.ts";
import { gridOrder } from "../../../core/study/map-order.ts";
import { addPoint, emptyMapTable, mapCsv } from "../../../core/study/map-table.ts";
import { opened, referenceJson } from "../doors.ts";
import { GOOD } from "../review/doors.ts";

const METRIC = words("metric");

const good = opened(GOOD);

function axis(text: string, door = good.door): MapAxis {
  const read = parseAxis(text, door);
  if (!read.ok) throw new Error(read.error.message);
  return read.axis;
}

function problem(text: string, door = good.door): string {
  const read = parseAxis(text, door);
  return read.ok ? "" : read.error.message;
}

function made(of: string, x: string, y: string | null, data: unknown = GOOD) {
  const { file, door } = opened(data);
  const request = { x: axis(x, door), y: y === null ? null : axis(y, door), of };
  const map = doorMap(file, door, request, studyView(METRIC));
  if (!map.ok) throw new Error(map.errors.map((e) => e.message).join("\n"));
  return { map: map.map, file, request };
}

describe("ranges as text", () => {
  test("exact in any unit: 3/8 in is 9.525 mm, 15.875 mm is 5/8 in", () => {
    const range = axis("latch.slotWidth = 3/8 in..5/8 in : 9");
    expect(range).toEqual({ key: "latch.slotWidth", from: 0.009525, to: 0.015875, count: 9 });
    expect(axisValue(range, 4)).toBeCloseTo(0.0127, 15);
    expect(axis("magnets.gap=2 mm..8 mm:13")).toEqual({
      key: "magnets.gap",
      from: 0.002,
      to: 0.008,
      count: 13,
    });
    expect(axis("magnets.temperature=14 degF..104 degF:3").from).toBeCloseTo(-10, 12);
    expect(axis("air.swingFactor=.5..3:6")).toEqual({ key: "air.swingFactor", from: 0.5, to: 3, count: 6 });
    expect(axis("opening.outOfPlumb=-2 deg..2 deg:5").from).toBeCloseTo(-Math.PI / 90, 15);
    expect(axis("latch.boltMass=10 g..1e-2 lb:4").to).toBeCloseTo(0.0045359237, 15);
  });

  test("the ends to the last bit, in either order", () => {
    const range = axis("magnets.gap=0.8 cm..2 mm:7");
    expect([axisValue(range, 0), axisValue(range, 6)]).toEqual([0.008, 0.002]);
    expect(axisValue(range, 3)).toBeCloseTo(0.005, 15);
  });

  test.each([
    ["magnets.gap", 'the "=" between key and range is missing'],
    ["magnets.gap=2 mm:5", 'the ".." between the ends is missing'],
    ["magnets.gap=2 mm..8 mm", 'the ":" before the number of values is missing'],
    ["magnets.gape=2 mm..8 mm:13", 'the nearest is "magnets.gap"'],
    ["magnets.polarity=2 mm..8 mm:13", "not a number"],
    ["animals.3.speed=1 m/s..2 m/s:3", 'there is no "animals.3"'],
    ["magnets.gap=2 g..8 mm:13", "a mass, not a length"],
    ["magnets.gap=2..8 mm:13", "the unit is missing"],
    ["magnets.gap=2 mm..8 furl:13", 'the unit "furl" is not known'],
    ["magnets.gap=-2 mm..8 mm:13", "outside the key's range"],
    ["magnets.gap=2 mm..8 mm:1", "from 2 to 10000"],
    ["magnets.gap=2 mm..8 mm:2.5", "whole number of values"],
    ["magnets.gap=2 mm..8 mm:many", "whole number of values"],
    ["magnets.gap=2 mm..8 mm:20000", "from 2 to 10000"],
    ["magnets.gap=2 mm..0.2 cm:5", "two equal ends"],
    ["air.swingFactor=1 m..3 m:5", "without a unit"],
    ["magnets.perSide=1..4:3", "whole numbers"],
    ["", 'the "=" between key and range is missing'],
  ])("%s", (text, says) => {
    expect(problem(text)).toContain(says);
  });

  test("a key of a section the door lacks", () => {
    const { door } = opened({ ...GOOD, magnets: undefined });
    expect(problem("magnets.gap=2 mm..8 mm:13", door)).toContain('the door has no "magnets"');
  });

  test("any text gives an axis or an error that says something, never a throw", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary" }), (noise) => {
        for (const text of [noise, `magnets.gap=${noise}`, `magnets.gap=2 mm..${noise}:3`]) {
          const read = parseAxis(text, good.door);
          expect(read.ok || read.error.message.length > 10).toBe(true);
        }
      }),
    );
  });
});

describe("the order of a grid", () => {
  test("every point once, coarse blocks first", () => {
    fc.assert(
      fc.property(fc.integer({ min: 2, max: 70 }), fc.integer({ min: 1, max: 70 }), (nx, ny) => {
        const order = gridOrder(nx, ny);
        expect(new Set(order.map(({ x, y }) => y * nx + x)).size).toBe(nx * ny);
        expect(order.length).toBe(nx * ny);
        expect(order.every(({ x, y }) => x < nx && y < ny)).toBe(true);
        const blocks = order.map(({ block }) => block);
        expect(blocks).toEqual([...blocks].sort((a, b) => b - a));
      }),
    );
  });

  test("the first picture of 60 × 60, and of a line of 200, is there within a tenth, and has no holes", () => {
    for (const [nx, ny] of [
      [60, 60],
      [200, 1],
    ]) {
      const order = gridOrder(nx, ny);
      const first = order.filter(({ block }) => block === order[0].block);
      expect(first.length).toBeLessThanOrEqual((nx * ny) / 10);
      const covered = new Set<number>();
      for (const { x, y, block } of first) {
        for (let i = x; i < Math.min(nx, x + block); i++)
          for (let j = y; j < Math.min(ny, y + block); j++) covered.add(j * nx + i);
      }
      expect(covered.size).toBe(nx * ny);
    }
  });
});

/** The review of the file edited to a point's inputs: text, reader, compute, the whole way. */
function reviewed(file: DoorFile, inputs: readonly { key: string; text: string | number }[], of: string) {
  let edited = file;
  for (const { key, text } of inputs) edited = editDoorFile(edited, key, text);
  const read = readDoor(writeDoor(edited));
  if (!read.ok) return "invalid";
  const computed = compute(read.door);
  const result = resultNamed(of);
  return result === undefined
    ? (findings(computed, METRIC).find(({ id }) => id === of)?.status ?? null)
    : result.value(computed);
}

const UNITS: Readonly<Record<string, string>> = {
  "magnets.gap": "m",
  "magnets.remanence": "T",
  "magnets.temperature": "degC",
  "magnets.diameter": "m",
  "latch.slotWidth": "m",
  "hinge.frictionTorque": "N m",
  "animals.0.shoulderHeight": "m",
  "animals.0.mass": "kg",
  "timer.holdTime": "s",
  "flap.density": "kg/m^3",
};

/** That a point of a map is what the review of the edited file says; `tolerance` relative. */
function expectReviewed(file: DoorFile, { x, y, of }: MapRequest, point: MapPoint, tolerance: number): void {
  const entry = (axis: MapAxis, index: number) => {
    const value = axisValue(axis, index);
    return { key: axis.key, text: axis.key in UNITS ? `${value} ${UNITS[axis.key]}` : value };
  };
  const wanted = reviewed(file, [entry(x, point.x), ...(y === null ? [] : [entry(y, point.y)])], of);
  if (typeof wanted === "number") {
    const miss = Math.abs((point.value as number) - wanted) / Math.abs(wanted);
    expect([of, point.x, point.y, miss <= tolerance, miss]).toEqual([of, point.x, point.y, true, miss]);
  } else if (wanted === "invalid") expect(point.invalid).not.toBeNull();
  else
    expect([of, point.x, point.y, point.value, point.invalid]).toEqual([of, point.x, point.y, wanted, null]);
}

describe("a point of a map is the review of the edited file", () => {
  // The family's tables are good to 4·10⁻⁷ of the peak torque; a settle time magnifies that where its last pass is a near miss.
  const MAGNETS = 2e-5;
  const EXACT = 1e-12;

  test.each([
    ["swing.settleTime", "magnets.gap=2 mm..8 mm:13", "latch.slotWidth=9 mm..16 mm:8", MAGNETS],
    ["hold.required", "magnets.remanence=0.9 T..1.4 T:6", "magnets.temperature=-20 degC..60 degC:5", MAGNETS],
    ["push.force", "magnets.gap=2 mm..8 mm:7", "magnets.diameter=4 mm..10 mm:4", MAGNETS],
    ["magnets.fluxIndex", "magnets.gap=2 mm..8 mm:7", "magnets.diameter=4 mm..10 mm:4", EXACT],
    ["swing.settleTime", "hinge.frictionTorque=0 N m..0.01 N m:11", "air.swingFactor=0..3:4", EXACT],
    ["swing.restAngle", "hinge.frictionTorque=0 N m..0.01 N m:11", null, EXACT],
    ["push.limit", "animals.0.mass=2 kg..9 kg:8", null, EXACT],
    ["push.force", "animals.0.shoulderHeight=15 cm..45 cm:9", null, EXACT],
    ["swing.releaseAngle", "animals.0.shoulderHeight=15 cm..45 cm:9", null, EXACT],
    ["timer.nominal", "timer.holdTime=5 s..10 s:3", null, EXACT],
    ["wind.gust", "magnets.gap=2 mm..8 mm:7", "flap.density=300 kg/m^3..1500 kg/m^3:4", 0],
    ["hold.enough", "magnets.gap=2 mm..8 mm:7", "hinge.frictionTorque=0 N m..0.01 N m:4", 0],
  ] as const)("%s over %s", (of, x, y, tolerance) => {
    const { map, file, request } = made(of, x, y);
    const points = [...map.points()];
    fc.assert(
      fc.property(fc.integer({ min: 0, max: points.length - 1 }), (place) => {
        expectReviewed(file, request, points[place], tolerance);
      }),
      { numRuns: 12, seed: 20_260_412 },
    );
  });

  test("several animals, wind: the governing one is found anew at every point", () => {
    for (const file of ["20-family", "10-wind-out"]) {
      const map = made("hold.required", "hinge.frictionTorque=1 mN m..9 mN m:5", null, referenceJson(file));
      for (const point of map.map.points()) expectReviewed(map.file, map.request, point, 1e-12);
    }
  });
});

describe("what a map keeps", () => {
  test("a slot narrower than the bolt is no door, and the reason stands there", () => {
    const { map } = made("swing.settleTime", "latch.slotWidth=6 mm..10 mm:5", null);
    const points = [...map.points()].sort((a, b) => a.x - b.x);
    expect(points.map(({ invalid }) => invalid === null)).toEqual([false, false, false, true, true]);
    expect(points[0].invalid).toContain("latch.slotWidth: the bolt does not fit into the slot");
    expect(points[0].value).toBeNull();
  });

  test("a figure that does not exist is absent, not invalid", () => {
    const { map } = made("swing.restTime", "hinge.frictionTorque=0 N m..4 mN m:3", null);
    const [none, some] = [...map.points()].sort((a, b) => a.x - b.x);
    expect([none.value, none.invalid]).toEqual([null, null]);
    expect(some.value).toBeGreaterThan(0);
  });

  test("parts of the order together are the whole, whoever computes them", () => {
    const request = ["push.force", "magnets.gap=2 mm..8 mm:9", "latch.slotWidth=9 mm..16 mm:5"] as const;
    const whole = [...made(...request).map.points()];
    const [one, two] = [made(...request).map, made(...request).map];
    expect([...one.points(0, 17), ...two.points(17)]).toEqual(whole);
  });

  test("it is computed only as far as it is asked for", () => {
    const { map } = made("timer.nominal", "timer.holdTime=5 s..10 s:3", null);
    const points = map.points();
    expect(points.next().value).toMatchObject({ x: 0, value: 5 });
    points.return();
    expect(points.next().done).toBe(true);
  });

  test("CSV: units in the header, SI, x fastest, notes quoted, absent left empty", () => {
    const { map, request } = made(
      "latch.captureAngle",
      "latch.slotWidth=8 mm..10 mm:2",
      "air.swingFactor=1..2:2",
    );
    const table = emptyMapTable(request, map.subject);
    expect(mapCsv(table).split("\n")[1]).toBe("0.008,1,,");
    for (const point of map.points()) addPoint(table, point);
    const [header, first, second, third] = mapCsv(table).split("\n");
    expect(header).toBe("latch.slotWidth (m),air.swingFactor,latch.captureAngle (rad),note");
    expect(first).toMatch(/^0\.008,1,,"?latch\.slotWidth: /);
    expect(second).toBe(`0.01,1,${Number(Math.asin(0.001 / 0.27).toPrecision(12))},`);
    expect(third).toMatch(/^0\.008,2,/);
    expect(mapCsv(table).endsWith("\n")).toBe(true);
  });
});

describe("requests that make no map", () => {
  const request = (changes: Partial<MapRequest>) => {
    const x = axis("magnets.gap=2 mm..8 mm:13");
    const made = doorMap(
      good.file,
      good.door,
      { x, y: null, of: "swing.settleTime", ...changes },
      studyView(METRIC),
    );
    return made.ok ? [] : made.errors.map(({ message }) => message);
  };

  test("each with what is wrong, all at once", () => {
    expect(request({})).toEqual([]);
    expect(request({ of: "swing.setleTime" })[0]).toContain('the nearest is "swing.settleTime"');
    expect(request({ y: axis("magnets.gap=2 mm..3 mm:5") })[0]).toContain("two different inputs");
    const x = axis("magnets.gap=2 mm..8 mm:9999");
    expect(request({ x, y: axis("latch.slotWidth=9 mm..16 mm:9999") })[0]).toContain("at most 1000000");
    expect(request({ x: { key: "flap.shape", from: 0, to: 1, count: 1 }, of: "?" })).toHaveLength(2);
  });
});
