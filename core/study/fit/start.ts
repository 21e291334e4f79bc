/**
 * First values of a trace fit: where the swing's centre reads, when and from where the flap was let go, and what its turning
 * points say about friction.
 */
import type { SwingModel } from "./model.ts";
import type { Values } from "./parameters.ts";
import type { Samples } from "./trace-problem.ts";

/** Turning points read off a trace: times, s, and angles as read, rad; the let-go or the first turn seen is the first. */
export interface SeenTurns {
  readonly times: readonly number[];
  readonly angles: readonly number[];
}

export interface FirstLook {
  /** Reading at the swing's centre, rad. */
  readonly centre: number;
  /** Greatest deviation from it, with its sign: the let-go, rad. */
  readonly amplitude: number;
  /** When the flap first is half way back, s. */
  readonly halfTime: number;
  /** Noise of one reading, rad. */
  readonly noise: number;
  readonly turns: SeenTurns;
}

function median(values: readonly number[] | Float64Array): number {
  const sorted = Float64Array.from(values).sort();
  const middle = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2;
}

/** Each reading replaced by the median of itself and its neighbours: single stray readings are gone. */
function despiked(angle: Float64Array): Float64Array {
  return angle.map((here, i) => {
    if (i === 0 || i === angle.length - 1) return here;
    const [a, b] = [angle[i - 1], angle[i + 1]];
    return Math.max(Math.min(a, b), Math.min(Math.max(a, b), here));
  });
}

/** Noise from how far each reading is off the line through its neighbours: √(3/2) σ where they are equally far. */
function noiseOf({ time, angle }: Samples): number {
  const misses: number[] = [];
  for (let i = 1; i < angle.length - 1; i++) {
    const span = time[i + 1] - time[i - 1];
    if (span <= 0) continue;
    const line = angle[i - 1] + ((angle[i + 1] - angle[i - 1]) * (time[i] - time[i - 1])) / span;
    misses.push(Math.abs(angle[i] - line));
  }
  return misses.length === 0 ? 0 : (1.4826 * median(misses)) / Math.sqrt(1.5);
}

/** Looks a trace over; `null` where nothing swings back. */
export function firstLook(samples: Samples): FirstLook | null {
  const { time } = samples;
  const angle = despiked(samples.angle);
  const last = angle.length - 1;
  const centre = median(angle.slice(last >> 1));
  let peak = 0;
  for (let i = 1; i <= last; i++) if (Math.abs(angle[i] - centre) > Math.abs(angle[peak] - centre)) peak = i;
  const amplitude = angle[peak] - centre;
  const sign = Math.sign(amplitude);
  let half = peak;
  while (half <= last && sign * (angle[half] - centre) > Math.abs(amplitude) / 2) half++;
  if (half > last || half === 0 || amplitude === 0) return null;
  const above = angle[half - 1] - centre;
  const below = angle[half] - centre;
  const share = above === below ? 0 : (above - amplitude / 2) / (above - below);
  const halfTime = time[half - 1] + share * (time[half] - time[half - 1]);
  const noise = noiseOf(samples);
  const turns = seenTurns(
    time,
    angle,
    half,
    amplitude,
    centre,
    Math.max(5 * noise, 0.02 * Math.abs(amplitude)),
  );
  return { centre, amplitude, halfTime, noise, turns };
}

/** Turning points after the flap was half way back: a turn counts once the flap has come back from it by `least`. */
function seenTurns(
  time: Float64Array,
  angle: Float64Array,
  from: number,
  amplitude: number,
  centre: number,
  least: number,
): SeenTurns {
  const times = [Number.NaN];
  const angles = [centre + amplitude];
  let direction = -Math.sign(amplitude);
  let extreme = from;
  for (let i = from; i < angle.length; i++) {
    if (direction * (angle[i] - angle[extreme]) > 0) extreme = i;
    else if (direction * (angle[extreme] - angle[i]) > least) {
      times.push(time[extreme]);
      angles.push(angle[extreme]);
      direction = -direction;
      extreme = i;
    }
  }
  return { times, angles };
}

/** What each law of damping takes off the amplitude in half a swing, and hence the values that the turns ask for. */
export interface Decrements {
  readonly dry: number;
  readonly viscous: number;
  readonly air: number;
}

/**
 * Dry friction τ takes 2τ/(S g) off each half swing, viscous damping c the share πc/(2 I ω₀), still air (4/3)(k/I) A²
 * (Thomson, Theory of Vibration; Nelson and Olsson, Am. J. Phys. 54 (1986) 112; model page, values to test against): least
 * squares over what the turns lost, none negative. `angles`: readings at successive turns.
 */
export function decrements(angles: readonly number[], model: SwingModel): Decrements {
  const swings = angles.slice(1).map((angle, i) => Math.abs(angle - angles[i]) / 2);
  const rows = swings.slice(1).map((half, i) => ({ lost: swings[i] - half, size: (swings[i] + half) / 2 }));
  const best = bestSubset(rows.map(({ lost, size }) => ({ y: lost, x: [1, size, size * size] })));
  const { inertia, firstMoment } = model.body;
  const weightMoment = firstMoment * 9.80665;
  const stillDrag = model.system(NO_LOSS).air.stillDrag;
  return {
    dry: (best[0] * weightMoment) / 2,
    viscous: (best[1] * 2 * Math.sqrt(inertia * weightMoment)) / Math.PI,
    air: stillDrag > 0 ? (best[2] * 0.75 * inertia) / stillDrag : 0,
  };
}

const NO_LOSS: Values = {
  "hinge.frictionTorque": 0,
  "hinge.viscousDamping": 0,
  "air.swingFactor": 1,
  "seal.frictionTorque": 0,
  "opening.outOfPlumb": 0,
  release: 0,
  start: 0,
  zero: 0,
  pace: 1,
};

interface Row {
  readonly y: number;
  readonly x: readonly number[];
}

/** Least squares with no negative coefficient, over every choice of columns: three of them make seven. */
function bestSubset(rows: readonly Row[]): number[] {
  const size = 3;
  let best = new Array<number>(size).fill(0);
  let least = rows.reduce((sum, { y }) => sum + y * y, 0);
  for (let set = 1; set < 1 << size; set++) {
    const columns = [0, 1, 2].filter((i) => (set >> i) & 1);
    if (rows.length < columns.length) continue;
    const solution = smallSolve(rows, columns);
    if (solution.some((v) => !(v >= 0))) continue;
    const cost = rows.reduce((sum, { y, x }) => {
      const miss = y - columns.reduce((s, c, k) => s + solution[k] * x[c], 0);
      return sum + miss * miss;
    }, 0);
    if (cost < least) {
      least = cost;
      best = new Array<number>(size).fill(0);
      columns.forEach((c, k) => {
        best[c] = solution[k];
      });
    }
  }
  return best;
}

/** Normal equations of a few columns by elimination. */
function smallSolve(rows: readonly Row[], columns: readonly number[]): number[] {
  const a = columns.map((i) => [
    ...columns.map((j) => rows.reduce((sum, { x }) => sum + x[i] * x[j], 0)),
    rows.reduce((sum, { x, y }) => sum + x[i] * y, 0),
  ]);
  const n = columns.length;
  for (let k = 0; k < n; k++) {
    if (a[k][k] === 0) return new Array(n).fill(Number.NaN);
    for (let i = 0; i < n; i++) {
      if (i === k) continue;
      const factor = a[i][k] / a[k][k];
      for (let j = k; j <= n; j++) a[i][j] -= factor * a[k][j];
    }
  }
  return a.map((row, k) => row[n] / row[k]);
}

/** Computed time from let-go until the flap is half way back, s; `null` where it does not get there within `end`. */
export function halfWayTime(model: SwingModel, values: Values, end: number): number | null {
  model.run(values, end);
  const goal = values["opening.outOfPlumb"] + (values.release - values["opening.outOfPlumb"]) / 2;
  const sign = Math.sign(values.release - goal);
  const step = model.body.smallAnglePeriod / 64;
  let time = step;
  while (time < end && sign * (model.at(time).angle - goal) > 0) time += step;
  if (time >= end) return null;
  let [low, high] = [time - step, time];
  for (let i = 0; i < 30; i++) {
    const middle = (low + high) / 2;
    if (sign * (model.at(middle).angle - goal) > 0) low = middle;
    else high = middle;
  }
  return high;
}
