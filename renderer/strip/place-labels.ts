/**
 * Labels of marks along an axis, side by side without overlap and as near to their marks as that allows: the least sum of
 * squared moves, found by pooling neighbours that push each other (isotonic regression, pool-adjacent-violators; Best &
 * Chakravarti, Math. Programming 47 (1990) 425).
 */

export interface LabelWish {
  /** Where the mark is, px. */
  readonly x: number;
  /** Width of the label, px. */
  readonly width: number;
  /** Which labels go first where there is no room for all: the greater stays. */
  readonly weight: number;
}

/** Left edges in the order of the wishes; `null` where a label had to be left out. */
export function placeLabels(
  wishes: readonly LabelWish[],
  from: number,
  to: number,
  gap: number,
): (number | null)[] {
  const kept = thatFit(wishes, to - from, gap);
  const lefts: (number | null)[] = wishes.map(() => null);
  const places = spread(
    kept.map((i) => wishes[i]),
    from,
    to,
    gap,
  );
  kept.forEach((wish, i) => {
    lefts[wish] = places[i];
  });
  return lefts;
}

/** Indices of the weightiest labels that fit side by side, in rising x. */
function thatFit(wishes: readonly LabelWish[], room: number, gap: number): number[] {
  const byWeight = wishes.map((_, i) => i).sort((a, b) => wishes[b].weight - wishes[a].weight || a - b);
  const kept: number[] = [];
  let used = -gap;
  for (const i of byWeight) {
    const needed = used + gap + wishes[i].width;
    if (needed > room) continue;
    kept.push(i);
    used = needed;
  }
  return kept.sort((a, b) => wishes[a].x - wishes[b].x || a - b);
}

/** Labels in rising x that fit: each centred on its mark, then pushed apart and into `from`…`to`. */
function spread(wishes: readonly LabelWish[], from: number, to: number, gap: number): number[] {
  const before = offsets(wishes, gap);
  const total = before.length === 0 ? 0 : before[before.length - 1] + wishes[wishes.length - 1].width;
  const free = isotonic(wishes.map(({ x, width }, i) => x - width / 2 - before[i]));
  return free.map((value, i) => Math.min(Math.max(value, from), Math.max(from, to - total)) + before[i]);
}

/** What lies left of each label when all stand side by side. */
function offsets(wishes: readonly LabelWish[], gap: number): number[] {
  let sum = 0;
  return wishes.map(({ width }) => {
    const here = sum;
    sum += width + gap;
    return here;
  });
}

/** The nearest rising sequence in least squares. */
function isotonic(values: readonly number[]): number[] {
  const blocks: { mean: number; count: number }[] = [];
  for (const value of values) {
    let block = { mean: value, count: 1 };
    let last = blocks[blocks.length - 1];
    while (last !== undefined && last.mean > block.mean) {
      blocks.pop();
      const count = last.count + block.count;
      block = { mean: (last.mean * last.count + block.mean * block.count) / count, count };
      last = blocks[blocks.length - 1];
    }
    blocks.push(block);
  }
  return blocks.flatMap(({ mean, count }) => Array.from({ length: count }, () => mean));
}
