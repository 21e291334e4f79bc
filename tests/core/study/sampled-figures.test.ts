import { describe, expect, test } from "vitest";
import type { Door } from "../../../core/door/index.ts";
import { studyView } from "../../../core/review/study-view.ts";
import { words } from "../../../core/review/words.ts";
import { doorMap, type MapValue } from "../../../core/study/map.ts";
import { parseAxis } from "../../../core/study/map-axis.ts";
import { DEFAULT_SAMPLES, DEFAULT_SEED } from "../../../core/study/request.ts";
import { sampledFigures, withSampled } from "../../../core/study/sampled-figures.ts";
import { SAMPLED_FIGURES } from "../../../core/study/sampled-names.ts";
import { runStudy } from "../../../core/study/study.ts";
import { pointPlan } from "../../../core/study/study-points.ts";
import { opened, referenceDoor, referenceJson } from "../doors.ts";

const PLAIN = referenceDoor("01-plain");

function figure(door: Door, name: string): number | null {
  const found = sampledFigures().find((one) => one.name === name);
  if (found === undefined) throw new Error(name);
  return found.value({ door, centring: null });
}

/** Values along a range of a reference door. */
function along(name: string, range: string, of: string): (MapValue | null)[] {
  const { file, door } = opened(referenceJson(name));
  const x = parseAxis(range, door);
  if (!x.ok) throw new Error(x.error.message);
  const request = { x: x.axis, y: null, of };
  const made = doorMap(file, door, request, withSampled(studyView(words("metric"))));
  if (!made.ok) throw new Error(made.errors.map((e) => e.message).join("\n"));
  return [...made.map.points()].sort((a, b) => a.x - b.x).map(({ value }) => value);
}

describe("estimates from 256 points", () => {
  const settles = referenceDoor("08-sill-two");
  const study = runStudy({ door: settles, samples: 3000, seed: 5 });

  test.each([
    ["sampled.settle50", study.settle["50"]],
    ["sampled.settle95", study.settle["95"]],
  ])("%s is near what a study of many samples says", (name, many) => {
    const ratio = (figure(settles, name) ?? Number.NaN) / (many ?? Number.NaN);
    expect(Math.abs(ratio - 1)).toBeLessThan(0.03);
  });

  test("the hold and the shares are those of the study's curve", () => {
    const hold = figure(settles, "sampled.hold95") ?? Number.NaN;
    const share = (setting: number) => study.curve.filter(([at]) => at <= setting).at(-1)?.[1] ?? Number.NaN;
    expect(Math.abs(share(hold) - 0.95)).toBeLessThan(0.02);
    const set = settles.timer?.holdTime ?? Number.NaN;
    expect(Math.abs((figure(settles, "sampled.caught") ?? Number.NaN) - share(set))).toBeLessThan(0.03);
    const strong = referenceDoor("14-strong-seal");
    const outside = runStudy({ door: strong, samples: 1000, seed: 2 }).causes;
    const share256 = figure(strong, "sampled.restsOutside") ?? Number.NaN;
    expect(Math.abs(share256 - outside["rests outside"] - outside["cannot work"])).toBeLessThan(0.08);
  });

  test("are the same again to the last bit", () => {
    for (const { name } of SAMPLED_FIGURES) expect(figure(PLAIN, name)).toBe(figure(PLAIN, name));
  });

  test("say how many points they are from", () => {
    const { size } = pointPlan({ door: PLAIN, samples: DEFAULT_SAMPLES, seed: DEFAULT_SEED });
    for (const { title } of SAMPLED_FIGURES) expect(title).toContain(`from ${size} scrambled Sobol' points`);
  });
});

describe("where a door cannot be studied", () => {
  test("there is no figure without a latch, and no share caught without a timer", () => {
    for (const { name } of SAMPLED_FIGURES) expect(figure(referenceDoor("02-bare"), name)).toBeNull();
    expect(figure({ ...PLAIN, timer: null }, "sampled.caught")).toBeNull();
    expect(figure({ ...PLAIN, timer: null }, "sampled.hold95")).not.toBeNull();
  });
});

describe("a map", () => {
  const RANGE = "hinge.frictionTorque=4 mN m..6 mN m:9";
  const steps = (values: readonly (MapValue | null)[]) =>
    values.slice(1).map((value, i) => (value as number) - (values[i] as number));

  test("of a sampled figure is smooth: more friction never settles later, where the one swing's time jumps", () => {
    const nominal = steps(along("01-plain", RANGE, "swing.settleTime"));
    const sampled = steps(along("01-plain", RANGE, "sampled.settle95"));
    const rough = (list: readonly number[]) => Math.max(...list) - Math.min(...list);
    expect(rough(sampled)).toBeLessThan(rough(nominal));
    for (const step of sampled) expect(step).toBeLessThanOrEqual(1e-3);
  });
});
