/** How low a part of the flap comes as it swings: a corner off the flap's middle plane passes the middle last, and lowest. */

/** Lowest way of a corner below the hinge, m: √(r² + h²), r down the flap and h off its middle plane. */
export function sweptDepth(distance: number, half: number): number {
  return Math.sqrt(distance * distance + half * half);
}

/** How far a face's trailing edge dips below where the face is when closed, m. */
export function edgeDip(half: number, distance: number): number {
  return sweptDepth(distance, half) - distance;
}
