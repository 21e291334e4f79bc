/**
 * The fit of a trace: rough values first, then the swing followed further and further, then one parameter after the other let
 * go, then all samples with the robust loss. Each stage starts where the last ended, so that no swing is ever out of step.
 */
import { type Fitted, fitted, type Options } from "./least-squares.ts";
import type { SwingModel } from "./model.ts";
import type { ParameterName, Values } from "./parameters.ts";
import { decrements, type FirstLook, halfWayTime } from "./start.ts";
import { type Samples, TraceProblem } from "./trace-problem.ts";
import { tiesTo } from "./vector.ts";
import { lastFreeTime } from "./well.ts";

/** Samples per small swing that the rough stages look at. */
const ROUGH_SAMPLES = 16;
/** Swings that the first rough stage follows, and how many more each next one does. */
const FIRST_STAGE = 2;
const STAGE_FACTOR = 1.5;
/** The first samples after let-go are left out: hands and strings are in them. In swings. */
const AFTER_LET_GO = 0.02;
const LOOK_AHEAD = 20;

export interface TraceFit {
  readonly values: Values;
  readonly fit: Fitted;
  /** The samples that were fitted. */
  readonly used: Samples;
}

/** First values from a look at the trace, the rest from `base`; `null` where the door does not swing back like that. */
export function startValues(model: SwingModel, look: FirstLook, base: Values, zeroIsTrue = false): Values[] {
  const found = decrements(look.turns.angles, model);
  const plumb = zeroIsTrue ? look.centre : base["opening.outOfPlumb"];
  const centred = {
    ...base,
    "opening.outOfPlumb": plumb,
    release: look.amplitude + plumb,
    zero: look.centre - plumb,
  };
  const blends = [
    { dry: found.dry, viscous: found.viscous, air: found.air },
    {
      dry: base["hinge.frictionTorque"],
      viscous: base["hinge.viscousDamping"],
      air: base["air.swingFactor"],
    },
  ];
  return blends.flatMap(({ dry, viscous, air }) => {
    const values = {
      ...centred,
      "hinge.frictionTorque": dry,
      "hinge.viscousDamping": viscous,
      "air.swingFactor": air,
    };
    const half = halfWayTime(model, values, LOOK_AHEAD * model.body.smallAnglePeriod);
    return half === null ? [] : [{ ...values, start: look.halfTime - half * values.pace }];
  });
}

/** The samples after let-go: the part of a trace that the model describes. */
export function afterLetGo({ time, angle }: Samples, start: number, period: number): Samples {
  const from = time.findIndex((t) => t >= start + AFTER_LET_GO * period);
  return from < 0
    ? { time: new Float64Array(0), angle: new Float64Array(0) }
    : { time: time.slice(from), angle: angle.slice(from) };
}

/** Samples up to a time, thinned to about `spacing` apart. */
function thinned({ time, angle }: Samples, until: number, spacing: number): Samples {
  const kept: number[] = [];
  let next = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < time.length && time[i] <= until; i++) {
    if (time[i] < next) continue;
    kept.push(i);
    next = Math.max(next + spacing, time[i] + spacing / 2);
  }
  return {
    time: Float64Array.from(kept, (i) => time[i]),
    angle: Float64Array.from(kept, (i) => angle[i]),
  };
}

const PLAIN: Options = { spread: Number.POSITIVE_INFINITY };

/** The samples before a time. */
function before({ time, angle }: Samples, end: number): Samples {
  const count = time.findIndex((t) => t > end);
  return count < 0 ? { time, angle } : { time: time.slice(0, count), angle: angle.slice(0, count) };
}

/** Values after the rough stages from one start, and their mean square. */
function roughFit(
  model: SwingModel,
  samples: Samples,
  free: readonly ParameterName[],
  start: Values,
): { values: Values; cost: number } {
  const period = model.body.smallAnglePeriod;
  const first = samples.time[0];
  const last = samples.time[samples.time.length - 1];
  const ties = tiesTo(start, model);
  let values = start;
  let cost = Number.POSITIVE_INFINITY;
  if (lastFreeTime(model, start) <= first + period / 2) return { values, cost };
  for (let swings = FIRST_STAGE; ; swings *= STAGE_FACTOR) {
    const until = Math.min(last, first + swings * period, lastFreeTime(model, values));
    const some = thinned(samples, until, period / ROUGH_SAMPLES);
    const problem = new TraceProblem(model, some, free, values, ties);
    const fit = fitted(problem, problem.parameters.vector(values), {
      ...PLAIN,
      iterations: 8,
      tolerance: 1e-3,
    });
    values = problem.parameters.values(fit.p);
    cost = fit.cost / some.time.length;
    if (until < first + swings * period) return { values, cost };
  }
}

/** Fewest samples of a fit. */
export const FEWEST_SAMPLES = 12;

/** The best fit of the samples after let-go from several starts; `null` where the magnets catch the flap at once. */
export function traceFit(
  model: SwingModel,
  samples: Samples,
  free: readonly ParameterName[],
  starts: readonly Values[],
): TraceFit | null {
  const rough = starts.map((start) => roughFit(model, samples, free, start));
  const best = rough.reduce((a, b) => (b.cost < a.cost ? b : a));
  const used = before(samples, lastFreeTime(model, best.values));
  if (!Number.isFinite(best.cost) || used.time.length < Math.max(FEWEST_SAMPLES, 2 * free.length))
    return null;
  const problem = new TraceProblem(model, used, free, best.values);
  const plain = fitted(problem, problem.parameters.vector(best.values), PLAIN);
  const fit = fitted(problem, plain.p);
  return { values: problem.parameters.values(fit.p), fit, used };
}
