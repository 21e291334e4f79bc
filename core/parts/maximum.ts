/**
 * The greatest value of a function of one variable that is smooth between known breaks (a seal's edge, the
 * angle at which a pressure has vented). Every piece is scanned and every peak of the scan narrowed by golden
 * section (Press et al., *Numerical Recipes*, §10.2, from memory), so a narrow magnet peak and a step at a seal's edge are both met.
 */

export interface Maximum {
  /** Where the greatest value is taken; the smallest such place that the scan met. */
  readonly at: number;
  readonly value: number;
}

type Curve = (x: number) => number;

/**
 * Scan points per piece. Spaced as the square of a uniform grid, closest near a piece's start: magnets peak
 * within a few hundredths of a radian of the centre, where a quarter-turn range is then sampled every 10⁻⁴ rad.
 */
const SCAN_POINTS = 1024;
const GOLDEN = (Math.sqrt(5) - 1) / 2;
/** Shrinks a bracket below 10⁻¹⁰ of itself; the value at a smooth peak is then right to rounding. */
const GOLDEN_STEPS = 48;

/**
 * The maximum of `curve` over [0, end]. `breaks` are the places where the curve may jump or have a kink; the
 * value at a break is the one the curve gives there, what follows starts at the next number after it.
 * `end` ≤ 0 leaves the single place 0.
 */
export function maximum(curve: Curve, end: number, breaks: readonly number[]): Maximum {
  let best: Maximum = { at: 0, value: curve(0) };
  if (!(end > 0)) return best;
  const inside = breaks.filter((x) => x > 0 && x < end).sort((a, b) => a - b);
  let start = 0;
  for (const stop of [...inside, end]) {
    best = better(best, pieceMaximum(curve, start, stop));
    start = stop * (1 + Number.EPSILON);
  }
  return best;
}

function pieceMaximum(curve: Curve, start: number, stop: number): Maximum {
  const x = (i: number) => (i === SCAN_POINTS ? stop : start + (stop - start) * (i / SCAN_POINTS) ** 2);
  let before = Number.NEGATIVE_INFINITY;
  let here = curve(start);
  let best: Maximum = { at: start, value: here };
  for (let i = 0; i <= SCAN_POINTS; i++) {
    const after = i < SCAN_POINTS ? curve(x(i + 1)) : Number.NEGATIVE_INFINITY;
    if (here >= before && here >= after) {
      best = better(best, { at: x(i), value: here });
      best = better(best, goldenSection(curve, x(Math.max(0, i - 1)), x(Math.min(SCAN_POINTS, i + 1))));
    }
    before = here;
    here = after;
  }
  return best;
}

/** The peak of a curve that rises, then falls, between `low` and `high`. */
export function goldenSection(curve: Curve, low: number, high: number): Maximum {
  let left = high - GOLDEN * (high - low);
  let right = low + GOLDEN * (high - low);
  let leftValue = curve(left);
  let rightValue = curve(right);
  for (let step = 0; step < GOLDEN_STEPS; step++) {
    if (leftValue >= rightValue) {
      high = right;
      right = left;
      rightValue = leftValue;
      left = high - GOLDEN * (high - low);
      leftValue = curve(left);
    } else {
      low = left;
      left = right;
      leftValue = rightValue;
      right = low + GOLDEN * (high - low);
      rightValue = curve(right);
    }
  }
  return leftValue >= rightValue ? { at: left, value: leftValue } : { at: right, value: rightValue };
}

function better(a: Maximum, b: Maximum): Maximum {
  return b.value > a.value ? b : a;
}
