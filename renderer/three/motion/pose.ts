/** From the replay's numbers to places of things. Angles in rad, lengths in m. */

/**
 * Turn about the x axis that puts a flap at `angle`: the flap hangs along −y, outdoors is +z, and a right-handed turn by φ
 * takes (0, −r, 0) to (0, −r cos φ, −r sin φ).
 */
export function flapTurn(angle: number): number {
  return -angle;
}

/** How far the bolt has moved from its withdrawn place, along y: out of the solenoid in its direction. */
export function boltShift(extension: number, direction: 1 | -1): number {
  return direction * extension;
}

/** Where the nose is, along z. */
export function nosePlace(nose: number, direction: 1 | -1): number {
  return direction * nose;
}

/** How much the animal is seen at a nose place: it comes out of nothing at the edge of the floor, 0 to 1. */
export function animalPresence(nose: number, bodyLength: number, floorDepth: number): number {
  const beforeEdge = floorDepth + nose;
  const afterEdge = floorDepth - (nose - bodyLength);
  return Math.min(1, Math.max(0, Math.min(beforeEdge, afterEdge) / FADE));
}

/** Length of path over which the animal appears, m. */
const FADE = 0.25;
