import fc from "fast-check";
import { expect, test } from "vitest";
import type { Replay } from "../../../../core/passage/replay.ts";
import { emptySample, sampleReplay } from "../../../../renderer/three/motion/sampler.ts";

const count = 11;
const interval = 0.1;

function replayOf(angle: (i: number) => number): Replay {
  const column = (of: (i: number) => number) => Float64Array.from({ length: count }, (_, i) => of(i));
  return {
    interval,
    time: column((i) => i * interval),
    angle: column(angle),
    speed: column(() => 0),
    bolt: column((i) => i * 0.001),
    coil: Uint8Array.from({ length: count }, (_, i) => (i < 5 ? 1 : 0)),
    nose: column((i) => i - 5),
    direction: 1,
    marks: {
      arrival: 0.5,
      unlocked: null,
      letGo: 1,
      holdStarts: null,
      holdEnds: null,
      mouth: null,
      decided: null,
      settled: null,
      rest: null,
    },
    outcome: null,
  };
}

const film = replayOf((i) => i * i);

test("at a sample it is the sample", () => {
  const out = emptySample();
  for (let i = 0; i < count; i++) {
    sampleReplay(film, film.time[i], out);
    expect(out.angle).toBeCloseTo(film.angle[i], 9);
    expect(out.bolt).toBeCloseTo(film.bolt[i], 12);
    expect(out.nose).toBeCloseTo(film.nose[i], 9);
  }
});

test("between two it lies on the line through both", () => {
  const out = sampleReplay(film, 0.325, emptySample());
  expect(out.angle).toBeCloseTo(9 + 0.25 * (16 - 9), 9);
  expect(out.nose).toBeCloseTo(-1.75, 9);
});

test("before the film and after it the picture stands still", () => {
  expect(sampleReplay(film, -3, emptySample()).angle).toBe(0);
  expect(sampleReplay(film, 99, emptySample()).angle).toBe(100);
});

test("the coil is on until the sample at which it is off", () => {
  expect(sampleReplay(film, 0.49, emptySample()).coil).toBe(true);
  expect(sampleReplay(film, 0.501, emptySample()).coil).toBe(false);
});

test("it never leaves the span of the film, and writes into what it is given", () => {
  fc.assert(
    fc.property(fc.double({ min: -1, max: 2, noNaN: true }), (time) => {
      const out = emptySample();
      expect(sampleReplay(film, time, out)).toBe(out);
      expect(out.angle).toBeGreaterThanOrEqual(0);
      expect(out.angle).toBeLessThanOrEqual(100);
    }),
  );
});

test("a film of one picture is that picture", () => {
  const one = {
    ...film,
    time: Float64Array.of(0),
    angle: Float64Array.of(0.3),
    bolt: Float64Array.of(0),
    nose: Float64Array.of(1),
    coil: Uint8Array.of(1),
  };
  expect(sampleReplay(one, 5, emptySample())).toEqual({ angle: 0.3, bolt: 0, nose: 1, coil: true });
});
