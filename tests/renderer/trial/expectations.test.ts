import { expect, test } from "vitest";
import type { SampledLimits } from "../../../core/sheet/bench-limits.ts";
import { expectation, isOutside } from "../../../renderer/trial/expectations.ts";
import type { Expected } from "../../../renderer/worker/fit-messages.ts";

const EXPECTED: Expected = {
  letGo: Math.PI / 3,
  asOnCard: true,
  passes: 13,
  settle: 4.4,
  still: null,
  offCentre: 0.0002,
  capture: 0.01,
  reach: 0.4,
  push: { animal: "Ada", height: 0.3, force: 9.7, words: "9.7 N", limit: 14, limitWords: "14 N" },
  hold: { nominal: 10, shortest: 9.5, longest: 10.6 },
};
const none = { p5: null, p50: null, p95: null };
const LIMITS = {
  passes: { p5: 10, p50: 13, p95: 20 },
  settle: { p5: 3.2, p50: 4.2, p95: null },
  still: none,
  offCentre: { p5: 0, p50: 0.001, p95: 0.003 },
  push: { p5: 9, p50: 9.7, p95: 10 },
} as unknown as SampledLimits;

const due = (
  field: Parameters<typeof expectation>[0],
  limits: SampledLimits | null = LIMITS,
  expected = EXPECTED,
) => {
  const found = expectation(field, expected, limits, "metric");
  if (found === null) throw new Error("nothing is expected");
  return found;
};

test("what to expect, with the limits of nine doors in ten", () => {
  expect(due("passes").says).toBe("13; nine doors in ten 10 to 20");
  expect(due("settle").says).toBe("4.4 s; nine doors in ten 3.2 s or more");
  expect(due("still").says).toBe("never quite");
  expect(due("rest").says).toBe(
    "at most 0.5 mm at the lower edge; nine doors in ten at most 1.5 mm; the bolt finds its slot within 4 mm",
  );
  expect(due("push").says).toBe("9.7 N; nine doors in ten 9 N to 10 N; Ada is at ease up to 14 N");
  expect(due("hold").says).toBe("10.0 s; 9.2 s to 10.9 s, the stopwatch included");
});

test("a reading outside its limits is told; where there are none, nothing is", () => {
  expect(isOutside(due("passes"), 25)).toBe(true);
  expect(isOutside(due("passes"), 20)).toBe(false);
  expect(isOutside(due("settle"), 3)).toBe(true);
  expect(isOutside(due("settle"), 30)).toBe(false);
  expect(isOutside(due("rest"), -0.004)).toBe(true);
  expect(isOutside(due("hold"), 11)).toBe(true);
  expect(isOutside(due("passes", null), 99)).toBe(false);
});

test("another let-go than the card's has no limits of its own", () => {
  expect(due("passes", LIMITS, { ...EXPECTED, asOnCard: false }).says).toBe("13");
  expect(expectation("letGo", EXPECTED, LIMITS, "metric")).toBeNull();
  expect(expectation("hold", { ...EXPECTED, hold: null }, LIMITS, "metric")).toBeNull();
});
