/**
 * What a stretch is measured by: u from 0 to 1, and the share of the way that is done at u.
 *
 * A way of even acceleration has the number p, its start's share of the speeds at both ends: u is then the time that a flap
 * with an even acceleration would take, so that its speed changes evenly with u, also where it starts (p = 0) or ends (p = 1)
 * at rest. A half swing from rest to rest has the sine's rise for its way.
 */

/** In place of p: from rest to rest. */
export const HALF_SWING = -1;

/** p of a way from one speed to another, of which at most one is 0. */
export function evenWay(start: number, end: number): number {
  return start / (start + end);
}

export function endsAtRest(way: number): boolean {
  return way === 1 || way === HALF_SWING;
}

/** Share of a way of even acceleration that is done at u. */
export function evenShare(way: number, u: number): number {
  return u * (2 * way + (1 - 2 * way) * u);
}

/** Its derivative. */
export function evenSlope(way: number, u: number): number {
  return 2 * (way + (1 - 2 * way) * u);
}

/** Share of any way that is done at u. */
export function shareAt(way: number, u: number): number {
  return way === HALF_SWING ? Math.sin((Math.PI / 2) * u) ** 2 : evenShare(way, u);
}

/** Its derivative. */
export function slopeAt(way: number, u: number): number {
  return way === HALF_SWING ? (Math.PI / 2) * Math.sin(Math.PI * u) : evenSlope(way, u);
}

/** u at which a share from 0 to 1 of the way is done. */
export function placeOf(way: number, share: number): number {
  if (way === HALF_SWING) return (2 / Math.PI) * Math.asin(Math.sqrt(share));
  const root = Math.sqrt(way * way + (1 - 2 * way) * share);
  return share === 0 ? 0 : share / (way + root);
}

/**
 * Integral from 0 to u of the slope times a torque that changes evenly with u: what viscous damping takes on a way of even
 * acceleration.
 */
export function evenLoss(way: number, u: number, start: number, end: number): number {
  const bend = 1 - 2 * way;
  const rise = end - start;
  return u * (2 * way * start + u * (bend * start + way * rise + u * (2 / 3) * bend * rise));
}
