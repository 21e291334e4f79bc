/** What the door as computed would show on the bench, in words, and whether what was measured lies within. */
import type { SampledLimits, Spread } from "../../core/sheet/bench-limits.ts";
import { figureText } from "../figures/format.ts";
import { STOPWATCH } from "../state/trial-hold.ts";
import type { TrialField } from "../state/trial-readings.ts";
import type { UnitSystem } from "../state/view.ts";
import type { Expected } from "../worker/fit-messages.ts";

export interface Expectation {
  /** How it is measured, where the label cannot say. */
  readonly how?: string;
  readonly says: string;
  /** Between which nine finished doors in ten lie, or the timer's ends; `null` where that is not known. */
  readonly from: number | null;
  readonly to: number | null;
}

export function expectation(
  field: TrialField,
  expected: Expected,
  limits: SampledLimits | null,
  units: UnitSystem,
): Expectation | null {
  const sampled = expected.asOnCard ? limits : null;
  switch (field) {
    case "letGo":
      return null;
    case "passes":
      return {
        how: `Both ways, until it ${expected.capture === null ? "is still" : "stays in the bolt’s play"}:`,
        ...spread(String(expected.passes), sampled?.passes, String),
      };
    case "settle":
      return spread(timeOr(expected.settle, "never"), sampled?.settle, seconds);
    case "still":
      return spread(timeOr(expected.still, "never quite"), sampled?.still, seconds);
    case "rest":
      return rest(expected, limits, units);
    case "push":
      return push(expected, limits, units);
    case "hold":
      return hold(expected);
  }
}

/** Whether a reading lies outside what is expected; `false` where nothing says. */
export function isOutside({ from, to }: Expectation, value: number): boolean {
  const size = Math.abs(value);
  return (from !== null && size < from) || (to !== null && size > to);
}

const seconds = (time: number): string => `${time.toFixed(1)} s`;
const timeOr = (time: number | null, never: string): string => (time === null ? never : seconds(time));

function spread(nominal: string, limits: Spread | undefined, write: (value: number) => string): Expectation {
  const { p5 = null, p95 = null } = limits ?? {};
  if (p5 === null) return { says: nominal, from: null, to: null };
  const ends = p95 === null ? `${write(p5)} or more` : `${write(p5)} to ${write(p95)}`;
  return { says: `${nominal}; nine doors in ten ${ends}`, from: p5, to: p95 };
}

function rest(
  { offCentre, capture, reach }: Expected,
  limits: SampledLimits | null,
  units: UnitSystem,
): Expectation {
  const edge = (angle: number) => upTo(reach * Math.sin(angle), units);
  const most = limits?.offCentre.p95 ?? null;
  const parts = [
    `at most ${edge(offCentre)} at the lower edge`,
    ...(most === null ? [] : [`nine doors in ten at most ${edge(most)}`]),
    ...(capture === null ? [] : [`the bolt finds its slot within ${edge(capture)}`]),
  ];
  return { says: parts.join("; "), from: null, to: most };
}

/** Rounded up to what a rule shows: half a millimetre, or a 64th of an inch. */
function upTo(length: number, units: UnitSystem): string {
  const step = units === "metric" ? 0.5e-3 : 0.0254 / 64;
  return figureText(Math.max(1, Math.ceil(length / step - 1e-9)) * step, "m", units, 2);
}

function push({ push: one }: Expected, limits: SampledLimits | null, units: UnitSystem): Expectation | null {
  if (one === null) return null;
  const { p5 = null, p95 = null } = limits?.push ?? {};
  const write = (force: number) => figureText(force, "N", units, 2);
  const says = [
    one.words,
    ...(p5 === null || p95 === null ? [] : [`nine doors in ten ${write(p5)} to ${write(p95)}`]),
    `${one.animal} is at ease up to ${one.limitWords}`,
  ];
  return {
    how: `The most it shows, pushing slowly ${figureText(one.height, "m", units)} above the floor:`,
    says: says.join("; "),
    from: p5,
    to: p95,
  };
}

function hold({ hold: timer }: Expected): Expectation | null {
  if (timer === null) return null;
  const from = Math.max(0, timer.shortest - STOPWATCH);
  const to = timer.longest + STOPWATCH;
  return {
    says: `${seconds(timer.nominal)}; ${seconds(from)} to ${seconds(to)}, the stopwatch included`,
    from,
    to,
  };
}
