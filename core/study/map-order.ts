/** The order in which a grid is computed: coarse first, then what lies between, so that a picture is there early. */

export interface GridPoint {
  /** Place along x and y, from 0. */
  readonly x: number;
  readonly y: number;
  /** Side of the block of the grid that this point stands for until the ones between are there. */
  readonly block: number;
}

/** First blocks hold at least ten points, so that the first picture is there within a tenth of the whole. */
const FIRST_LINE_BLOCK = 16;
const FIRST_PLANE_BLOCK = 4;
/** A coarse picture has at least this many points along an axis. */
const FEWEST = 4;

function firstBlock(countX: number, countY: number): number {
  const most = countY === 1 ? FIRST_LINE_BLOCK : FIRST_PLANE_BLOCK;
  const shorter = countY === 1 ? countX : Math.min(countX, countY);
  let block = most;
  while (block > 1 && shorter / block < FEWEST) block /= 2;
  return block;
}

/** Every point of a countX × countY grid once, blocks halving from pass to pass; `countY` 1 is a line. */
export function gridOrder(countX: number, countY: number): GridPoint[] {
  const order: GridPoint[] = [];
  const first = firstBlock(countX, countY);
  for (let block = first; block >= 1; block /= 2) {
    for (let y = 0; y < countY; y += block) {
      for (let x = 0; x < countX; x += block) {
        const seen = block < first && x % (2 * block) === 0 && y % (2 * block) === 0;
        if (!seen) order.push({ x, y, block });
      }
    }
  }
  return order;
}
