/** Whether the closed flap, and what hangs on it, swings over the sill. Plain SI numbers, depths from the hinge axis down. */
import type { Door, Latch } from "../door/door.ts";
import { edgeDip, sweptDepth } from "../door/swept.ts";

/** What of the flap may come lowest. */
export type LowPart = "flap" | "strike" | "bolt";

export interface LowPoint {
  readonly part: LowPart;
  /** Lowest it comes as it swings through the middle, m. */
  readonly depth: number;
}

/** The sill below the hinge, m: reach and bottom clearance. */
export function sillDepth({ flap }: Door): number {
  return flap.hingeOffset + flap.height + flap.bottomClearance;
}

/**
 * The lowest point that swings: the plate's lower edge; the strike's mouth where the bolt points up, as thick as the edge
 * that carries the slot; the tip drawn back of a bolt that hangs on the flap and points down, as thick as it is wide.
 */
export function lowestPoint({ flap, latch }: Door): LowPoint {
  const edge: LowPoint = {
    part: "flap",
    depth: sweptDepth(flap.hingeOffset + flap.height, flap.thickness / 2),
  };
  if (latch === null) return edge;
  const { boltPoints, distanceFromHinge, tipGap, edgeHalfWidth, boltWidth } = latch;
  const own: LowPoint =
    boltPoints === "up"
      ? { part: "strike", depth: sweptDepth(distanceFromHinge, edgeHalfWidth) }
      : { part: "bolt", depth: sweptDepth(distanceFromHinge - tipGap, boltWidth / 2) };
  return own.depth > edge.depth ? own : edge;
}

/**
 * Room between the bolt's tip, drawn back, and the strike it swings past, m; negative where one hits the other. Bolt up: the
 * strike's edges dip towards the tip; bolt down: the tip's own edges dip towards the strike.
 */
export function tipRoom({ boltPoints, distanceFromHinge, tipGap, edgeHalfWidth, boltWidth }: Latch): number {
  return boltPoints === "up"
    ? tipGap - edgeDip(edgeHalfWidth, distanceFromHinge)
    : distanceFromHinge - sweptDepth(distanceFromHinge - tipGap, boltWidth / 2);
}

/** Distance that is left when a corner's offset is taken off a depth, m: the inverse of `sweptDepth`; NaN where there is none. */
function withoutSweep(depth: number, half: number): number {
  return Math.sqrt(depth * depth - half * half);
}

/** The furthest a latch may be from the hinge to swing over the sill, m; NaN where none may. */
export function furthestLatch(door: Door, { boltPoints, tipGap, edgeHalfWidth, boltWidth }: Latch): number {
  const sill = sillDepth(door);
  return boltPoints === "up" ? withoutSweep(sill, edgeHalfWidth) : tipGap + withoutSweep(sill, boltWidth / 2);
}

/** The least tip gap with which the tip clears, m. */
export function leastTipGap({ boltPoints, distanceFromHinge, edgeHalfWidth, boltWidth }: Latch): number {
  return boltPoints === "up"
    ? edgeDip(edgeHalfWidth, distanceFromHinge)
    : distanceFromHinge - withoutSweep(distanceFromHinge, boltWidth / 2);
}

/** The thickest strike, as the edge's half-width, that clears a bolt pointing up, m. */
export function thickestEdge({ distanceFromHinge, tipGap }: Latch): number {
  return withoutSweep(distanceFromHinge + tipGap, distanceFromHinge);
}
