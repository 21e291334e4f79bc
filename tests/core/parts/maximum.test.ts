import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { goldenSection, maximum } from "../../../core/parts/maximum.ts";

describe("the maximum over a range", () => {
  test("of a smooth curve is at its peak", () => {
    const found = maximum(Math.sin, 3, []);
    expect(found.value).toBeCloseTo(1, 14);
    expect(found.at).toBeCloseTo(Math.PI / 2, 7);
  });

  test("of a rising curve is at the end, of a falling one at 0", () => {
    expect(maximum((x) => x, 2, [])).toEqual({ at: 2, value: 2 });
    expect(maximum((x) => 3 - x, 2, [])).toEqual({ at: 0, value: 3 });
  });

  test("takes the upper value at a step, at the step itself", () => {
    const step = (x: number) => x + (x <= 0.07 ? 1 : 0);
    expect(maximum(step, 0.5, [0.07])).toEqual({ at: 0.07, value: 1.07 });
  });

  test("finds what rises again after a step", () => {
    const step = (x: number) => x + (x <= 0.07 ? 0.1 : 0);
    expect(maximum(step, 0.5, [0.07]).value).toBe(0.5);
  });

  test("finds a peak just after a step, below the first scan points", () => {
    const curve = (x: number) => (x <= 0.07 ? 0 : 1 - ((x - 0.0700001) / 1e-3) ** 2);
    expect(maximum(curve, 0.5, [0.07]).value).toBeCloseTo(1, 12);
  });

  test("of no range at all is the value at 0", () => {
    expect(maximum(Math.cos, 0, [0.1])).toEqual({ at: 0, value: 1 });
    expect(maximum(Math.cos, -1, [])).toEqual({ at: 0, value: 1 });
    expect(maximum(Math.cos, Number.NaN, [])).toEqual({ at: 0, value: 1 });
  });

  test("finds a narrow peak near the centre on a broad slope", () => {
    const peak = (x: number) => Math.exp(-(((x - 0.0123) / 0.004) ** 2)) + 0.2 * Math.sin(x);
    const found = maximum(peak, 1.5, []);
    let brute = 0;
    for (let i = 0; i <= 200_000; i++) brute = Math.max(brute, peak(0.01 + i * 2e-8));
    expect(found.value).toBeCloseTo(brute, 10);
  });
});

test("golden section closes in on the peak of any parabola", () => {
  const place = fc.double({ min: 0.01, max: 0.99, noNaN: true });
  fc.assert(
    fc.property(place, (peak) => {
      expect(Math.abs(goldenSection((x) => -((x - peak) ** 2), 0, 1).at - peak)).toBeLessThan(1e-7);
    }),
  );
});

test("no point of the range is higher", () => {
  const wave = fc.tuple(
    fc.double({ min: -1, max: 1, noNaN: true }),
    fc.double({ min: 1, max: 30, noNaN: true }),
  );
  fc.assert(
    fc.property(
      fc.array(wave, { minLength: 1, maxLength: 4 }),
      fc.double({ min: 0, max: 1, noNaN: true }),
      (waves, u) => {
        const curve = (x: number) => waves.reduce((sum, [size, rate]) => sum + size * Math.sin(rate * x), 0);
        const found = maximum(curve, 1.5, [0.3]);
        expect(found.value).toBeGreaterThanOrEqual(curve(1.5 * u) - 1e-9);
        expect(curve(found.at)).toBe(found.value);
      },
    ),
  );
});
