/** What the door as computed would show on the bench, in words, whether what was measured lies within, and what it means where not. */
import type { SampledLimits, Spread } from "../../core/sheet/bench-limits.ts";
import { figureText } from "../figures/format.ts";
import { STOPWATCH } from "../state/trial-hold.ts";
import { LOW_END_TRIES, type TrialField } from "../state/trial-readings.ts";
import type { UnitSystem } from "../state/view.ts";
import type { Expected } from "../worker/fit-messages.ts";

export interface Expectation {
  /** How it is measured, where the label cannot say. */
  readonly how?: string;
  readonly says: string;
  /** A sentence of its own, in which nothing is expected. */
  readonly plain?: boolean;
  /** Between which nine finished doors in ten lie, or the timer's ends; `null` where that is not known. */
  readonly from: number | null;
  readonly to: number | null;
}

/** What a page knows of the door for the words. */
interface Known {
  readonly expected: Expected;
  /** `null` where they are not of this let-go, or not there yet. */
  readonly sampled: SampledLimits | null;
  readonly limits: SampledLimits | null;
  readonly units: UnitSystem;
}

const EXPECTATIONS: Readonly<Record<TrialField, (known: Known) => Expectation | null>> = {
  letGo: () => null,
  passes: ({ expected, sampled }) => ({
    how: `Both ways, until it ${expected.capture === null ? "is still" : "stays in the bolt’s play"}:`,
    ...spread(String(expected.passes), sampled?.passes, String),
  }),
  settle: ({ expected, sampled }) => spread(timeOr(expected.settle, "never"), sampled?.settle, seconds),
  still: ({ expected, sampled }) => spread(timeOr(expected.still, "never quite"), sampled?.still, seconds),
  rest,
  push,
  lowEnd,
  pullIn,
  room: ({ expected, units }) =>
    expected.coil === null
      ? null
      : {
          says: `Taken as ${degrees(expected.coil.ambient, units)} where you write none`,
          plain: true,
          from: null,
          to: null,
        },
  coil,
  hold,
};

export function expectation(
  field: TrialField,
  expected: Expected,
  limits: SampledLimits | null,
  units: UnitSystem,
): Expectation | null {
  return EXPECTATIONS[field]({ expected, limits, sampled: expected.asOnCard ? limits : null, units });
}

/** Whether a reading lies outside what is expected; `false` where nothing says. */
export function isOutside(due: Expectation, value: number): boolean {
  return sideOf(due, value) !== null;
}

export type Side = "below" | "above";

export function sideOf({ from, to }: Expectation, value: number): Side | null {
  const size = Math.abs(value);
  if (from !== null && size < from) return "below";
  return to !== null && size > to ? "above" : null;
}

const seconds = (time: number): string => `${time.toFixed(1)} s`;
const timeOr = (time: number | null, never: string): string => (time === null ? never : seconds(time));
const volts = (voltage: number, units: UnitSystem): string => figureText(voltage, "V", units);
const degrees = (temperature: number, units: UnitSystem): string => figureText(temperature, "degC", units);

function spread(nominal: string, limits: Spread | undefined, write: (value: number) => string): Expectation {
  const { p5 = null, p95 = null } = limits ?? {};
  if (p5 === null) return { says: nominal, from: null, to: null };
  const ends = p95 === null ? `${write(p5)} or more` : `${write(p5)} to ${write(p95)}`;
  return { says: `${nominal}; nine doors in ten ${ends}`, from: p5, to: p95 };
}

function rest({ expected, limits, units }: Known): Expectation {
  const { offCentre, capture, reach } = expected;
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

function push({ expected, limits, units }: Known): Expectation | null {
  const one = expected.push;
  if (one === null) return null;
  const { p5 = null, p95 = null } = limits?.push ?? {};
  const write = (force: number) => figureText(force, "N", units);
  const says = [
    one.words[units],
    ...(p5 === null || p95 === null ? [] : [`nine doors in ten ${write(p5)} to ${write(p95)}`]),
    `${one.animal} is at ease up to ${one.limitWords[units]}`,
  ];
  return {
    how: `The most it shows, pushing slowly ${figureText(one.height, "m", units)} above the floor:`,
    says: says.join("; "),
    from: p5,
    to: p95,
  };
}

function lowEnd({ expected, limits, units }: Known): Expectation | null {
  const { pull } = expected;
  if (pull === null) return null;
  const share = limits?.pullsAtLowEnd ?? null;
  const ten = `${LOW_END_TRIES} of ${LOW_END_TRIES}`;
  return {
    how: `An adjustable supply at ${volts(pull.low, units)}, switched on ${LOW_END_TRIES} times; the bolt drawn back fully:`,
    says: `${pull.atLow ? ten : "never"}${share === null ? "" : `; ${doorsThatDo(share)}`}`,
    from: pull.atLow ? LOW_END_TRIES : null,
    to: pull.atLow ? null : 0,
  };
}

function doorsThatDo(share: number): string {
  return share === 1
    ? "every door drawn does"
    : `${Number((100 * share).toFixed(1))} % of the doors drawn do`;
}

function pullIn({ expected, limits, units }: Known): Expectation | null {
  const { pull } = expected;
  if (pull === null) return null;
  const nominal = pull.from === null ? "never" : volts(pull.from, units);
  const due = spread(nominal, limits?.pullIn ?? undefined, (value) => volts(value, units));
  return { ...due, how: "Turned up from nothing until the bolt is drawn back:" };
}

function coil({ expected, units }: Known): Expectation | null {
  const { coil: one } = expected;
  if (one === null) return null;
  const guard = one.hot > one.touch ? `; above ${degrees(one.touch, units)} too hot to touch: guard it` : "";
  return {
    how: `On for ten minutes, ${degrees(one.ambient, units)} around it:`,
    says: `${degrees(one.hot, units)}; class ${one.insulation} ends at ${degrees(one.limit, units)}${guard}`,
    from: null,
    to: one.limit,
  };
}

function hold({ expected }: Known): Expectation | null {
  const timer = expected.hold;
  if (timer === null) return null;
  const from = Math.max(0, timer.shortest - STOPWATCH);
  const to = timer.longest + STOPWATCH;
  return {
    says: `${seconds(timer.nominal)}; ${seconds(from)} to ${seconds(to)}, the stopwatch included`,
    from,
    to,
  };
}
