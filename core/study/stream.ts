/** One stream of random numbers per sample, from the seed and the sample's number alone: whoever computes a sample, gets the same. */
import { uniformFloat64 } from "pure-rand/distribution/uniformFloat64";
import { xoroshiro128plusFromState } from "pure-rand/generator/xoroshiro128plus";

/** A generator of uniform numbers, in (0, 1): never an end, so that every quantile is finite. */
export type Uniform = () => number;

/** Seeds run from 0 to this. */
export const LARGEST_SEED = Number.MAX_SAFE_INTEGER;

const HALF_STEP = 2 ** -54;

/** Finaliser of MurmurHash3 (Appleby, public domain): every bit of the word changes every other. */
function scrambled(word: number): number {
  let h = word;
  h = Math.imul(h ^ (h >>> 16), 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
  return h ^ (h >>> 16);
}

/** Four words of state from seed, sample and a lane: a chain of scramblings, each with an odd constant of its own. */
function stateOf(seed: number, index: number): [number, number, number, number] {
  const low = seed | 0;
  const high = Math.floor(seed / 2 ** 32) | 0;
  const word = (lane: number) => {
    let h = scrambled(low + Math.imul(lane, 0x9e3779b9));
    h = scrambled(h ^ Math.imul(high, 0x7feb352d));
    h = scrambled(h ^ Math.imul(index | 0, 0x846ca68b));
    return scrambled(h ^ Math.imul(Math.floor(index / 2 ** 32) + lane, 0xcc9e2d51));
  };
  return [word(1), word(2), word(3), word(4) | 1];
}

/** The stream of sample `index` (from 0) under a seed, 0 … `LARGEST_SEED`. */
export function sampleStream(seed: number, index: number): Uniform {
  const generator = xoroshiro128plusFromState(stateOf(seed, index));
  return () => uniformFloat64(generator) || HALF_STEP;
}
