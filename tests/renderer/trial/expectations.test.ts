import { expect, test } from "vitest";
import type { SampledLimits } from "../../../core/sheet/bench-limits.ts";
import { expectation, isOutside, sideOf } from "../../../renderer/trial/expectations.ts";
import { meaning } from "../../../renderer/trial/meanings.ts";
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
  push: {
    animal: "Ada",
    height: 0.3,
    force: 9.7,
    words: { metric: "9.7 N", inch: "2.18 lbf" },
    limit: 14,
    limitWords: { metric: "14 N", inch: "3.15 lbf" },
  },
  pull: { low: 22.8, atLow: true, from: 13.89 },
  coil: {
    ambient: 20,
    hot: 58.2,
    insulation: "B",
    limit: 130,
    touch: 60,
    thermalResistance: 15,
    measuredResistance: null,
  },
  hold: { nominal: 10, shortest: 9.5, longest: 10.6 },
};
const none = { p5: null, p50: null, p95: null };
const LIMITS = {
  passes: { p5: 10, p50: 13, p95: 20 },
  settle: { p5: 3.2, p50: 4.2, p95: null },
  still: none,
  offCentre: { p5: 0, p50: 0.001, p95: 0.003 },
  push: { p5: 9, p50: 9.7, p95: 10 },
  pullIn: { p5: 13, p50: 13.9, p95: 15 },
  pullsAtLowEnd: 0.995,
} as unknown as SampledLimits;

const due = (
  field: Parameters<typeof expectation>[0],
  limits: SampledLimits | null = LIMITS,
  expected = EXPECTED,
  units: "metric" | "inch" = "metric",
) => {
  const found = expectation(field, expected, limits, units);
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

test("bolt and coil: voltages, tries at the low end, the coil's heat with its class", () => {
  expect(due("pullIn")).toMatchObject({ says: "13.9 V; nine doors in ten 13 V to 15 V", from: 13, to: 15 });
  expect(due("lowEnd")).toMatchObject({ says: "10 of 10; 99.5 % of the doors drawn do", from: 10, to: null });
  expect(due("lowEnd").how).toContain("22.8 V, switched on 10 times");
  expect(due("coil")).toMatchObject({ says: "58.2 °C; class B ends at 130 °C", from: null, to: 130 });
  const hot = { ...EXPECTED, coil: { ...(EXPECTED.coil as NonNullable<Expected["coil"]>), hot: 75 } };
  expect(due("coil", null, hot).says).toBe(
    "75 °C; class B ends at 130 °C; above 60 °C too hot to touch: guard it",
  );
  const sure = { ...LIMITS, pullsAtLowEnd: 1 } as SampledLimits;
  expect(due("lowEnd", sure).says).toBe("10 of 10; every door drawn does");
  expect(due("room")).toMatchObject({ says: "Taken as 20 °C where you write none", plain: true });
  const weak = { ...EXPECTED, pull: { low: 11.4, atLow: false, from: null } };
  expect(due("lowEnd", null, weak)).toMatchObject({ says: "never", from: null, to: 0 });
  expect(due("pullIn", null, weak).says).toBe("never");
  const none = { ...EXPECTED, pull: null, coil: null };
  for (const field of ["lowEnd", "pullIn", "room", "coil"] as const)
    expect(expectation(field, none, LIMITS, "metric")).toBeNull();
});

test("in inches what a scale and a thermometer there show", () => {
  // 58.2 °C are 136.76 °F, 130 °C are 266 °F, 20 °C are 68 °F; 9 N are 2.023 lbf, 10 N 2.248 lbf.
  expect(due("coil", LIMITS, EXPECTED, "inch").says).toBe("137 °F; class B ends at 266 °F");
  expect(due("coil", LIMITS, EXPECTED, "inch").how).toContain("68 °F around it");
  expect(due("push", LIMITS, EXPECTED, "inch").says).toBe(
    "2.18 lbf; nine doors in ten 2.02 lbf to 2.25 lbf; Ada is at ease up to 3.15 lbf",
  );
});

test("outside, it says what that means, and what matters most first", () => {
  const said = (field: Parameters<typeof expectation>[0], value: number) => {
    const side = sideOf(due(field), value);
    return side === null ? null : meaning(field, side, value, EXPECTED);
  };
  expect(said("passes", 13)).toBeNull();
  expect(said("passes", 5)).toContain("loses more");
  expect(said("passes", 25)).toContain("loses less");
  expect(said("rest", 0.02)).toMatch(/^There the bolt does not find its slot/);
  expect(said("rest", 0.005)).not.toContain("slot");
  expect(said("push", 16)).toMatch(/^That is more than Ada is at ease with/);
  expect(said("pullIn", 23)).toMatch(/^The supply’s low end does not give that/);
  expect(said("pullIn", 16)).not.toContain("low end");
  expect(said("lowEnd", 9)).toContain("door locked");
  expect(said("lowEnd", 10)).toBeNull();
  expect(said("coil", 120)).toBeNull();
  expect(said("coil", 140)).toContain("switch it off");
});
