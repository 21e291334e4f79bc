/**
 * A count of times in bins of half a millisecond, for quantiles from any number of samples in the same memory. Merging is
 * exact whatever the order.
 */

/** Width of a bin, s: the resolution of every quantile. */
export const BIN_WIDTH = 0.5e-3;

export class TimeHistogram {
  bins = new Int32Array(1024);
  /** Times that are infinite: never. */
  never = 0;
  total = 0;

  /** Counts a time ≥ 0; infinite is never. */
  add(time: number): void {
    this.total++;
    if (time === Number.POSITIVE_INFINITY) {
      this.never++;
      return;
    }
    const bin = Math.floor(time / BIN_WIDTH);
    if (bin >= this.bins.length) this.growTo(bin + 1);
    this.bins[bin]++;
  }

  private growTo(size: number): void {
    let length = this.bins.length;
    while (length < size) length *= 2;
    const longer = new Int32Array(length);
    longer.set(this.bins);
    this.bins = longer;
  }

  /** Bins up to the last one that holds anything. */
  get length(): number {
    let end = this.bins.length;
    while (end > 0 && this.bins[end - 1] === 0) end--;
    return end;
  }

  merge(other: TimeHistogram): void {
    if (other.bins.length > this.bins.length) this.growTo(other.bins.length);
    for (let i = 0; i < other.bins.length; i++) this.bins[i] += other.bins[i];
    this.never += other.never;
    this.total += other.total;
  }

  /** The order statistic of rank ⌈p n⌉, s; `null` where that one is never, or nothing was counted. */
  quantile(p: number): number | null {
    return this.total === 0 ? null : weighedQuantile([{ times: this, weight: 1 }], p);
  }

  /** Share of all that lie in the bin of a time or below; in any bin at all where the time is `null`. */
  shareUntil(time: number | null): number {
    if (time === null) return (this.total - this.never) / this.total;
    const last = Math.floor(time / BIN_WIDTH);
    let sum = 0;
    for (let bin = 0; bin <= Math.min(last, this.bins.length - 1); bin++) sum += this.bins[bin];
    return sum / this.total;
  }
}

/** Times, and what they count beside others: a weight of them all. */
export interface WeighedTimes {
  readonly times: TimeHistogram;
  readonly weight: number;
}

/** Binary fractions of shares. */
const DUST = 1e-12;

/**
 * Time by which a share p of several sets has come, each counted by its weight, s: the order statistic of rank ⌈p n⌉ of one set.
 * The middle of its bin, 0 for the first bin, where a flap that never left lies; `null` where that one is never.
 */
export function weighedQuantile(sets: readonly WeighedTimes[], p: number): number | null {
  const whole = sets.reduce((sum, { weight }) => sum + weight, 0);
  const counts = sets.map(() => 0);
  const length = Math.max(0, ...sets.map(({ times }) => times.length));
  for (let bin = 0; bin < length; bin++) {
    let share = 0;
    sets.forEach(({ times, weight }, i) => {
      counts[i] += times.bins[bin] ?? 0;
      share += (weight / whole) * (counts[i] / times.total);
    });
    if (share > 0 && share >= Math.min(p, 1) - DUST) return bin === 0 ? 0 : middleOf(bin);
  }
  return null;
}

function middleOf(bin: number): number {
  return Number(((bin + 0.5) * BIN_WIDTH).toFixed(6));
}
