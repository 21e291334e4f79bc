/**
 * Legs of a walking animal as a function of where it is, never of time: a standing foot does not slide, and a film run
 * backwards walks backwards. Feet go over the sill or stand on it. No allocation after `newGait`.
 */
import { type AnimalBody, DUTY, type Limb } from "./animal-body.ts";

/** What the feet go over: the wall's foot, `half` to either side of the frame, `height` high. */
export interface Step {
  readonly half: number;
  readonly height: number;
}

/** Angles of each limb from straight down, rad, positive forwards: upper and lower part by turns. */
export interface Gait {
  readonly angles: Float64Array;
}

export function newGait(body: AnimalBody): Gait {
  return { angles: new Float64Array(body.limbs.length * 2) };
}

/** Room kept before and behind the step, m. */
const CLEAR = 0.03;
/** Distance over which a lifted foot comes up to the step, m. */
const RISE = 0.08;

/** Poses all limbs with the nose `nose` m past the frame. */
export function poseGait(body: AnimalBody, step: Step, nose: number, gait: Gait): void {
  for (let i = 0; i < body.limbs.length; i++) poseLimb(body, body.limbs[i], step, nose, gait.angles, 2 * i);
}

function poseLimb(
  body: AnimalBody,
  limb: Limb,
  step: Step,
  nose: number,
  angles: Float64Array,
  at: number,
): void {
  const { stride } = body;
  const hip = nose + limb.z;
  const cycle = hip / stride + limb.phase;
  const count = Math.floor(cycle);
  const part = cycle - count;
  const stand = footPlace(count, limb, stride, step);
  let place = stand;
  let lift = ground(stand, step);
  if (part > DUTY) {
    const moved = (part - DUTY) / (1 - DUTY);
    const next = footPlace(count + 1, limb, stride, step);
    const eased = moved * moved * (3 - 2 * moved);
    place = stand + (next - stand) * eased;
    const level = lift + (ground(next, step) - lift) * eased;
    const swing = level + 0.09 * body.shoulder * Math.sin(Math.PI * moved);
    lift = Math.max(swing, over(place, step));
  }
  reach(limb, place - hip, lift + limb.radius * 0.9 - limb.y, angles, at);
}

/** Where a foot stands for the count-th time: under the hip at half its stand, moved off the step's edges. */
function footPlace(count: number, limb: Limb, stride: number, step: Step): number {
  const place = (count + DUTY / 2 - limb.phase) * stride;
  const edge = step.half + CLEAR;
  if (step.height <= 0 || Math.abs(place) >= edge) return place;
  const inner = Math.max(0, step.half - CLEAR);
  if (Math.abs(place) > step.half) return Math.sign(place) * edge;
  return Math.min(inner, Math.max(-inner, place));
}

function ground(place: number, step: Step): number {
  return Math.abs(place) < step.half ? step.height : 0;
}

/** Least height of a lifted foot near the step. */
function over(place: number, step: Step): number {
  const away = (step.half + CLEAR + RISE - Math.abs(place)) / RISE;
  const near = Math.min(1, Math.max(0, away));
  return near * near * (3 - 2 * near) * (step.height + 0.01 * Math.sign(step.height));
}

/** Two-link reach to a foot `forward` and `up` from the hip (cosine rule); a foot too far away is reached for. */
function reach(limb: Limb, forward: number, up: number, angles: Float64Array, at: number): void {
  const { upper, lower, bend } = limb;
  const longest = (upper + lower) * 0.999;
  const distance = Math.min(longest, Math.max(Math.abs(upper - lower) + 1e-4, Math.hypot(forward, up)));
  const direct = Math.atan2(forward, -up);
  const cosine = (distance * distance + upper * upper - lower * lower) / (2 * distance * upper);
  const thigh = direct + bend * Math.acos(Math.min(1, Math.max(-1, cosine)));
  const footForward = distance * Math.sin(direct) - upper * Math.sin(thigh);
  const footUp = -distance * Math.cos(direct) + upper * Math.cos(thigh);
  angles[at] = thigh;
  angles[at + 1] = Math.atan2(footForward, -footUp);
}
