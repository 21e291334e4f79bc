/**
 * Counts over nominal timer settings: how many samples end in which way at each setting of a grid, and how many are caught
 * throughout each cell between two of them. Kept as differences from one setting to the next, so that a sample costs a few
 * additions, memory does not grow with the samples, and sums do not depend on their order.
 */

/** Finest spacing of settings, s: well below the 0.05 s that a curve may be apart. */
const FINEST_SPACING = 0.01;
/** Settings that a grid should do with: at the finest spacing, an hour and a half. */
const MOST_SETTINGS = 2 ** 19;

/** Spacing of the settings, s, for a study whose curve may end at `longest`: the finest, doubled until the grid is of bearable size. */
export function gridSpacing(longest: number): number {
  const doublings = Math.max(0, Math.ceil(Math.log2(longest / FINEST_SPACING / MOST_SETTINGS)));
  return FINEST_SPACING * 2 ** doublings;
}

/** Differences of a count along the grid. Grows as far as anything changes. */
export class GridCount {
  differences: Int32Array<ArrayBuffer>;

  constructor(differences = new Int32Array(256)) {
    this.differences = differences;
  }

  private change(index: number, by: number): void {
    if (index >= this.differences.length) this.growTo(index + 1);
    this.differences[index] += by;
  }

  private growTo(size: number): void {
    let length = this.differences.length;
    while (length < size) length *= 2;
    const longer = new Int32Array(length);
    longer.set(this.differences);
    this.differences = longer;
  }

  /** One more at settings `from` … `to` − 1; `to` may be infinite. */
  add(from: number, to: number): void {
    if (!(to > from)) return;
    this.change(from, 1);
    if (to !== Number.POSITIVE_INFINITY) this.change(to, -1);
  }

  merge(other: GridCount): void {
    const { differences } = other;
    if (differences.length > this.differences.length) this.growTo(differences.length);
    for (let i = 0; i < differences.length; i++) this.differences[i] += differences[i];
  }

  /** Counts at the first `size` settings. */
  counts(size: number): Int32Array {
    const counts = new Int32Array(size);
    for (let i = 0, sum = 0; i < size; i++) {
      if (i < this.differences.length) sum += this.differences[i];
      counts[i] = sum;
    }
    return counts;
  }

  /** Settings from which on the count no longer changes. */
  get length(): number {
    let end = this.differences.length;
    while (end > 0 && this.differences[end - 1] === 0) end--;
    return end;
  }
}

/** First setting of the grid at or after a time. */
export function settingFrom(time: number, spacing: number): number {
  return time === Number.POSITIVE_INFINITY ? time : Math.max(0, Math.ceil(time / spacing));
}

/** End of the cells that end at or before a time: cell i lies between settings i and i + 1. */
export function cellsUntil(time: number, spacing: number): number {
  return time === Number.POSITIVE_INFINITY ? time : Math.max(0, Math.floor(time / spacing));
}
