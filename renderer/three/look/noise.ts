/** Numbers that look like chance and are the same each time: a picture of one door is always the same picture. */
export type Chance = () => number;

/** Mulberry32 (Tommy Ettinger, public domain): 0 ≤ value < 1. */
export function chance(seed: number): Chance {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}
