import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { meanOf } from "../../../core/study/drivers.ts";
import { SOBOL_DIMENSIONS, SobolPoints, sobolDirections } from "../../../core/study/sobol.ts";
import { sampleStream } from "../../../core/study/stream.ts";

function points(net: SobolPoints, count: number, from = 0): Float64Array[] {
  return Array.from({ length: count }, (_, i) => {
    const out = new Float64Array(net.dimensions);
    net.point(from + i, out);
    return out;
  });
}

/** scipy 1.17.1: Sobol(d=128, scramble=False, bits=32), point 123456, its last eight coordinates. */
const FAR = {
  index: 123456,
  last: [
    0.12084197998046875, 0.6954269409179688, 0.5849685668945312, 0.07701873779296875, 0.35108184814453125,
    0.35144805908203125, 0.24707794189453125, 0.5796127319335938,
  ],
};

const PUBLISHED = new SobolPoints(SOBOL_DIMENSIONS, null);
const scrambled = (seed: number, dimensions = 40) => new SobolPoints(dimensions, sampleStream(seed, 0));

describe("the sequence", () => {
  test("starts with the published points", () => {
    // scipy 1.17.1, scipy.stats.qmc.Sobol(d=8, scramble=False).random(10): Joe and Kuo's numbers in Bratley and Fox's order.
    const known = [
      [0, 0, 0, 0, 0, 0, 0, 0],
      [0.5, 0.5, 0.5, 0.5, 0.5, 0.5, 0.5, 0.5],
      [0.75, 0.25, 0.25, 0.25, 0.75, 0.75, 0.25, 0.75],
      [0.25, 0.75, 0.75, 0.75, 0.25, 0.25, 0.75, 0.25],
      [0.375, 0.375, 0.625, 0.875, 0.375, 0.125, 0.375, 0.875],
      [0.875, 0.875, 0.125, 0.375, 0.875, 0.625, 0.875, 0.375],
      [0.625, 0.125, 0.875, 0.625, 0.625, 0.875, 0.125, 0.125],
      [0.125, 0.625, 0.375, 0.125, 0.125, 0.375, 0.625, 0.625],
      [0.1875, 0.3125, 0.9375, 0.4375, 0.5625, 0.3125, 0.4375, 0.9375],
      [0.6875, 0.8125, 0.4375, 0.9375, 0.0625, 0.8125, 0.9375, 0.4375],
    ];
    expect(points(PUBLISHED, 10).map((point) => [...point.subarray(0, 8)])).toEqual(known);
  });

  test("has the published points far on, in the last dimensions", () => {
    expect([...points(PUBLISHED, 1, FAR.index)[0].subarray(-8)]).toEqual(FAR.last);
  });

  test("has direction numbers of which each is odd and below 2^i", () => {
    for (let d = 0; d < SOBOL_DIMENSIONS; d++) {
      sobolDirections(d).forEach((v, i) => {
        const m = v / 2 ** (31 - i);
        expect(m % 2).toBe(1);
        expect(m).toBeLessThan(2 ** (i + 1));
      });
    }
  });
});

describe.each([
  ["published", () => PUBLISHED],
  ["scrambled", () => scrambled(4, SOBOL_DIMENSIONS)],
] as const)("%s points", (_, make) => {
  test("lie one in each of 2^k equal parts of every dimension, in every block of 2^k", () => {
    const net = make();
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 9 }), fc.nat(50), fc.nat(SOBOL_DIMENSIONS - 1), (k, block, d) => {
        const size = 2 ** k;
        const parts = points(net, size, block * size).map((point) => Math.floor(point[d] * size));
        expect(new Set(parts).size).toBe(size);
      }),
    );
  });

  test("lie one in each elementary box of the first two dimensions, which are a (0, 2)-sequence", () => {
    const net = make();
    for (let a = 0; a <= 8; a++) {
      const boxes = points(net, 256, 512).map(
        (point) => Math.floor(point[0] * 2 ** a) * 2 ** (8 - a) + Math.floor(point[1] * 2 ** (8 - a)),
      );
      expect(new Set(boxes).size).toBe(256);
    }
  });
});

describe("scrambling", () => {
  test("is the same again from the same seed and another from another, never at an end", () => {
    const [one, same, other] = [3, 3, 4].map((seed) => points(scrambled(seed), 64));
    expect(one).toEqual(same);
    expect(one).not.toEqual(other);
    for (const u of one.flatMap((point) => [...point])) {
      expect(u).toBeGreaterThan(0);
      expect(u).toBeLessThan(1);
    }
  });

  test("makes each single point uniform and its dimensions independent", () => {
    const firsts = Array.from({ length: 2000 }, (_, seed) => points(scrambled(seed, 3), 1, 5)[0]);
    for (let d = 0; d < 3; d++) {
      const u = firsts.map((point) => point[d]);
      expect(Math.abs(meanOf(u) - 1 / 2)).toBeLessThan(4 / Math.sqrt(12 * 2000));
      expect(Math.abs(meanOf(u.map((x) => x * x)) - 1 / 3)).toBeLessThan(4 * Math.sqrt(4 / 45 / 2000));
      const product = firsts.map((point) => (point[d] - 0.5) * (point[(d + 1) % 3] - 0.5));
      expect(Math.abs(meanOf(product))).toBeLessThan(4 / 12 / Math.sqrt(2000));
    }
  });

  /** Error of the mean of a smooth function of five inputs, exactly 1, over twenty seeds. */
  function meanError(
    count: number,
    uniforms: (seed: number) => (index: number) => ArrayLike<number>,
  ): number {
    const errors = Array.from({ length: 20 }, (_, seed) => {
      const at = uniforms(seed);
      let sum = 0;
      for (let i = 0; i < count; i++) {
        const u = at(i);
        let product = 1;
        for (let d = 0; d < 5; d++) product *= 1 + (u[d] - 0.5) / (d + 1);
        sum += product / count;
      }
      return (sum - 1) ** 2;
    });
    return Math.sqrt(meanOf(errors));
  }

  const sobol = (seed: number) => {
    const net = scrambled(seed, 5);
    const out = new Float64Array(5);
    return (index: number) => {
      net.point(index, out);
      return out;
    };
  };
  const plain = (seed: number) => (index: number) => {
    const uniform = sampleStream(seed, index);
    return [0, 1, 2, 3, 4].map(() => uniform());
  };

  test("leaves a mean's error far below that of plain samples, and falling faster", () => {
    expect(meanError(256, sobol)).toBeLessThan(meanError(256, plain) / 10);
    expect(meanError(4096, sobol)).toBeLessThan(meanError(4096, plain) / 40);
    // Plain samples gain a factor of 4 from 16 times as many.
    expect(meanError(256, sobol) / meanError(4096, sobol)).toBeGreaterThan(10);
  });
});
