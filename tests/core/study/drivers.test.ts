import { describe, expect, test } from "vitest";
import {
  firstOrder,
  firstOrders,
  meanOf,
  midRanks,
  rankIn,
  totalOrder,
  varianceOf,
} from "../../../core/study/drivers.ts";
import { SobolPoints } from "../../../core/study/sobol.ts";
import { sampleStream } from "../../../core/study/stream.ts";

/** A function of uniform numbers in so many dimensions, with its indices known. */
interface KnownFunction {
  readonly at: (u: Float64Array) => number;
  readonly first: readonly number[];
  readonly total: readonly number[];
}

/** Ishigami and Homma 1990, a = 7, b = 0.1: V1 = (1 + bπ⁴/5)²/2, V2 = a²/8, V13 = 8b²π⁸/225, V = V1 + V2 + V13. */
const ISHIGAMI: KnownFunction = (() => {
  const [a, b] = [7, 0.1];
  const [v1, v2, v13] = [
    (1 + (b * Math.PI ** 4) / 5) ** 2 / 2,
    a ** 2 / 8,
    (8 * b ** 2 * Math.PI ** 8) / 225,
  ];
  const v = v1 + v2 + v13;
  const angle = (u: number) => Math.PI * (2 * u - 1);
  return {
    at: (u) =>
      Math.sin(angle(u[0])) + a * Math.sin(angle(u[1])) ** 2 + b * angle(u[2]) ** 4 * Math.sin(angle(u[0])),
    first: [v1 / v, v2 / v, 0],
    total: [(v1 + v13) / v, v2 / v, v13 / v],
  };
})();

/** Saltelli and Sobol's g function, Π (|4u − 2| + a)/(1 + a), a = 0, 1, 4.5, 9, 99: Vᵢ = 1/(3(1 + aᵢ)²). */
const G_FUNCTION: KnownFunction = (() => {
  const a = [0, 1, 4.5, 9, 99];
  const parts = a.map((x) => 1 / (3 * (1 + x) ** 2));
  const product = parts.reduce((p, v) => p * (1 + v), 1);
  return {
    at: (u) => a.reduce((p, x, i) => (p * (Math.abs(4 * u[i] - 2) + x)) / (1 + x), 1),
    first: parts.map((v) => v / (product - 1)),
    total: parts.map((v) => ((v / (1 + v)) * product) / (product - 1)),
  };
})();

const REPLICATES = 8;

/** Estimates of all indices from scrambled Sobol' points, or plain ones. */
function estimates(known: KnownFunction, seed: number, size: number, moved: number, plain = false) {
  const d = known.first.length;
  const count = REPLICATES * size;
  const inputs = Array.from({ length: 2 * d }, () => new Float64Array(count));
  const values = new Float64Array(count);
  const numbers = new Float64Array(2 * d);
  const again = inputs.slice(0, d).map(() => new Float64Array(REPLICATES * moved));
  for (let r = 0; r < REPLICATES; r++) {
    const net = new SobolPoints(2 * d, sampleStream(seed, r));
    for (let i = 0; i < size; i++) {
      const place = r * size + i;
      const uniform = sampleStream(seed, 1000 + place);
      if (plain) for (let k = 0; k < numbers.length; k++) numbers[k] = uniform();
      else net.point(i, numbers);
      for (let k = 0; k < 2 * d; k++) inputs[k][place] = numbers[k];
      values[place] = known.at(numbers);
      if (i >= moved) continue;
      again.forEach((column, k) => {
        const changed = numbers.slice();
        changed[k] = numbers[d + k];
        column[r * moved + i] = known.at(changed);
      });
    }
  }
  const results = { replicates: REPLICATES, values };
  const places = Array.from({ length: REPLICATES * moved }, (_, i) => {
    return Math.floor(i / moved) * size + (i % moved);
  });
  const pick = (column: Float64Array) => Float64Array.from(places, (place) => column[place]);
  const together = firstOrders(inputs.slice(0, d), results);
  return again.map((after, k) => {
    const [from, to, before] = [inputs[k], inputs[d + k], values].map(pick);
    const pairs = { replicates: REPLICATES, from, to, before, after };
    return {
      single: firstOrder(inputs[k], results),
      first: together[k],
      total: totalOrder(pairs, inputs[k], results),
    };
  });
}

test("the known indices of Ishigami's function are the published 0.3139, 0.4424, 0 and 0.5576, 0.4424, 0.2437", () => {
  [0.3139, 0.4424, 0].forEach((value, i) => {
    expect(ISHIGAMI.first[i]).toBeCloseTo(value, 4);
  });
  [0.5576, 0.4424, 0.2437].forEach((value, i) => {
    expect(ISHIGAMI.total[i]).toBeCloseTo(value, 4);
  });
});

describe.each([
  ["Ishigami", ISHIGAMI],
  ["g", G_FUNCTION],
] as const)("on the function of name %s", (_, known) => {
  const RUNS = 40;
  const runs = Array.from({ length: RUNS }, (__, seed) => estimates(known, seed, 256, 16));

  test.each(["first", "total"] as const)(
    "%s order: every index comes out within its error's size",
    (order) => {
      known[order].forEach((exact, i) => {
        const found = runs.map((run) => run[i][order]);
        const misses = found.map(({ value }) => value - exact);
        const stated = Math.sqrt(meanOf(found.map(({ error }) => (error ?? Number.NaN) ** 2)));
        const actual = Math.sqrt(meanOf(misses.map((miss) => miss ** 2)));
        // The bias is that of the bins (1/bins² of the index), the error honest.
        expect(Math.abs(meanOf(misses))).toBeLessThan(
          (3.5 * actual) / Math.sqrt(RUNS) + 0.004 * exact + 1e-4,
        );
        expect((stated + 1e-4) / (actual + 1e-4)).toBeGreaterThan(0.6);
        expect((stated + 1e-4) / (actual + 1e-4)).toBeLessThan(1.7);
      });
    },
  );

  test("taking the strong effects out first leaves less error than looking at each input by itself", () => {
    const spread = (order: "single" | "first") =>
      meanOf(
        known.first.map((exact, i) =>
          Math.sqrt(meanOf(runs.map((run) => (run[i][order].value - exact) ** 2))),
        ),
      );
    expect(spread("first")).toBeLessThan(spread("single"));
  });

  test("Sobol' points tell first-order indices better than as many plain ones", () => {
    const spread = (results: ReturnType<typeof estimates>[], i: number) =>
      Math.sqrt(meanOf(results.map((run) => (run[i].first.value - known.first[i]) ** 2)));
    const plain = Array.from({ length: 20 }, (__, seed) => estimates(known, seed, 256, 1, true));
    const [ours, theirs] = [runs, plain].map((results) =>
      meanOf(known.first.map((___, i) => spread(results, i))),
    );
    expect(ours).toBeLessThan(0.6 * theirs);
  });
});

describe("on ranks", () => {
  const count = 4096;
  const uniform = sampleStream(9, 0);
  const [x, other] = [0, 1].map(() => Float64Array.from({ length: count }, () => uniform()));

  test("an input that decides everything has index 1, one that decides nothing 0, never included", () => {
    const y = x.map((u) => (u > 0.9 ? Number.POSITIVE_INFINITY : Math.exp(20 * u)));
    const results = { replicates: 16, values: midRanks(y) };
    expect(firstOrder(x, results).value).toBeGreaterThan(0.995);
    const nothing = firstOrder(other, results);
    expect(Math.abs(nothing.value)).toBeLessThan(4 * (nothing.error ?? 0));
  });

  test("a result that does not vary has indices 0 ± 0", () => {
    const results = { replicates: 16, values: new Float64Array(count) };
    expect(firstOrder(x, results)).toEqual({ value: 0, error: 0 });
    const pairs = { replicates: 2, from: x, to: other, before: results.values, after: results.values };
    expect(totalOrder(pairs, x, results)).toEqual({ value: 0, error: 0 });
  });

  test("equal values share theirs", () => {
    expect([...midRanks(Float64Array.of(3, 1, 3, Number.POSITIVE_INFINITY, 2))]).toEqual([3.5, 1, 3.5, 5, 2]);
  });

  test("of a value among others are the mean of what lies below it and what not above", () => {
    const sorted = Float64Array.of(1, 2, 2, 3, Number.POSITIVE_INFINITY);
    expect([0, 2, 2.5, Number.POSITIVE_INFINITY].map((value) => rankIn(sorted, value))).toEqual([
      0, 2, 3, 4.5,
    ]);
  });

  test("no error is stated from two batches", () => {
    expect(firstOrder(x, { replicates: 2, values: x }).error).toBeNull();
    expect(varianceOf(x)).toBeCloseTo(1 / 12, 2);
  });
});
