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

  /**
   * The order statistic of rank ⌈p n⌉, s, as the middle of its bin (0 for the first bin, where a flap that never left lies);
   * `null` where that one is never, or nothing was counted.
   */
  quantile(p: number): number | null {
    const rank = Math.max(1, Math.ceil(p * this.total - 1e-9));
    let sum = 0;
    for (let bin = 0; bin < this.bins.length; bin++) {
      sum += this.bins[bin];
      if (sum >= rank) return bin === 0 ? 0 : Number(((bin + 0.5) * BIN_WIDTH).toFixed(6));
    }
    return null;
  }
}
