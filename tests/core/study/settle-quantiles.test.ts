import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { meanOf } from "../../../core/study/drivers.ts";
import { TimeHistogram, weighedQuantile } from "../../../core/study/histogram.ts";
import { pointTimes, settleFigures } from "../../../core/study/settle-quantiles.ts";
import { SobolPoints } from "../../../core/study/sobol.ts";
import { sampleStream } from "../../../core/study/stream.ts";
import { pointPlan } from "../../../core/study/study-points.ts";
import { referenceDoor } from "../doors.ts";

function histogram(times: Iterable<number>): TimeHistogram {
  const made = new TimeHistogram();
  for (const time of times) made.add(time);
  return made;
}

/** Sum of three uniform numbers (Irwin and Hall): the share x³/6 lies below x ≤ 1, and symmetric about 1.5. */
const EXACT = { "5": 0.3 ** (1 / 3), "50": 1.5, "95": 3 - 0.3 ** (1 / 3), "99": 3 - 0.06 ** (1 / 3) };
const SHARES = ["5", "50", "95", "99"] as const;
const sum = (u: ArrayLike<number>) => u[0] + u[1] + u[2];

function plainTimes(seed: number, count: number): TimeHistogram {
  const uniform = sampleStream(seed, 7);
  return histogram(Array.from({ length: count }, () => sum([uniform(), uniform(), uniform()])));
}

function replicates(seed: number, count: number, size: number): TimeHistogram[] {
  const u = new Float64Array(3);
  return Array.from({ length: count }, (_, r) => {
    const net = new SobolPoints(3, sampleStream(seed, 2 ** 32 + r));
    return histogram(
      Array.from({ length: size }, (__, i) => {
        net.point(i, u);
        return sum(u);
      }),
    );
  });
}

describe("quantiles of times whose distribution is known", () => {
  const RUNS = 100;
  const runs = Array.from({ length: RUNS }, (_, seed) => {
    const [plain, points] = [plainTimes(seed, 4000), replicates(seed, 7, 128)];
    return { both: settleFigures(plain, points), plain: settleFigures(plain, []) };
  });
  const misses = (which: "both" | "plain", share: (typeof SHARES)[number]) =>
    runs.map((run) => (run[which].settle[share] ?? Number.NaN) - EXACT[share]);
  const rms = (values: readonly number[]) => Math.sqrt(meanOf(values.map((x) => x * x)));

  test.each(SHARES)("at %s per cent lie within the stated error's size", (share) => {
    for (const which of ["both", "plain"] as const) {
      const stated = rms(runs.map((run) => run[which].settleError[share] ?? Number.NaN));
      expect(stated / rms(misses(which, share))).toBeGreaterThan(0.65);
      expect(stated / rms(misses(which, share))).toBeLessThan(1.5);
    }
  });

  test("are better with 896 points beside 4000 samples than without", () => {
    const ratios = SHARES.map((share) => rms(misses("both", share)) / rms(misses("plain", share)));
    expect(meanOf(ratios)).toBeLessThan(0.9);
  });
});

describe("quantiles of Sobol' points alone", () => {
  test("have less than half the error of as many plain samples", () => {
    const error = (times: (seed: number) => TimeHistogram) =>
      Math.sqrt(
        meanOf(
          Array.from({ length: 30 }, (_, seed) => ((times(seed).quantile(0.5) ?? Number.NaN) - 1.5) ** 2),
        ),
      );
    const points = (seed: number) => replicates(seed, 1, 1024)[0];
    expect(error(points)).toBeLessThan(error((seed) => plainTimes(seed, 1024)) / 2);
  });
});

describe("several sets of times", () => {
  const times = fc.array(fc.double({ min: 0, max: 20, noNaN: true }), { minLength: 1, maxLength: 40 });
  const weight = fc.double({ min: 0.1, max: 10, noNaN: true });

  test("have the quantile of their weighed shares", () => {
    fc.assert(
      fc.property(times, weight, times, weight, fc.constantFrom(0.05, 0.5, 0.95), (one, a, two, b, p) => {
        const sets = [
          { times: histogram(one), weight: a },
          { times: histogram(two), weight: b },
        ];
        const share = (until: number) =>
          (a * (one.filter((t) => t <= until).length / one.length) +
            b * (two.filter((t) => t <= until).length / two.length)) /
          (a + b);
        const exact = [...one, ...two].sort((x, y) => x - y).find((t) => share(t) >= p - 1e-12);
        const found = weighedQuantile(sets, p) ?? Number.NaN;
        expect(Math.abs(found - (exact ?? Number.NaN))).toBeLessThanOrEqual(0.5e-3 * 1.001);
      }),
    );
  });

  test("are never settled where the weighed share is not, and have no error where that is near", () => {
    const half = histogram([...Array(50).fill(2), ...Array(50).fill(Number.POSITIVE_INFINITY)]);
    const { settle, settleError } = settleFigures(half, [half, half]);
    expect(settle["95"]).toBeNull();
    expect(settleError["95"]).toBeNull();
    expect(settle["5"]).toBeCloseTo(2, 3);
    expect(settleError["5"]).toBe(0);
    expect(settleError["50"]).toBeNull();
  });

  test("are the plain ones alone where no point is of that animal, and none where nothing was drawn", () => {
    const plain = plainTimes(1, 500);
    const none = settleFigures(plain, [new TimeHistogram(), new TimeHistogram()]);
    expect(none).toEqual(settleFigures(plain, []));
    expect(none.settle["50"]).toBe(plain.quantile(0.5));
    expect(settleFigures(new TimeHistogram(), []).settle["50"]).toBeNull();
  });
});

test("points are counted for the animal that they draw, evenly", () => {
  const request = { door: referenceDoor("20-family"), samples: 900, seed: 1 };
  const plan = pointPlan(request);
  const times = pointTimes(request, new Float64Array(plan.count).fill(1));
  expect(times.length).toBe(3);
  for (const animal of times) {
    for (const replicate of animal) expect(Math.abs(replicate.total - plan.size / 3)).toBeLessThanOrEqual(2);
  }
});
