/**
 * The study of the medium-dog example with every swing and every ride of the bolt carried by odex: the same draws, tables, rides
 * and counts. Its tolerance is the loosest at which its settle times are as exact as is asked of the study's own.
 */
import { MouthOutcomes } from "../../core/study/mouth-outcomes.ts";
import type { SampleRun } from "../../core/study/sample-run.ts";
import { sampleStream } from "../../core/study/stream.ts";
import { emptyTally } from "../../core/study/tally.ts";
import { Motion } from "../../core/swing/motion.ts";
import { SwingRun } from "../../core/swing/swing.ts";
import { Trace } from "../../core/swing/trace.ts";
import { PeerRide } from "./peer-ride.ts";
import { peerSettleTime } from "./peer-swing.ts";
import { odexAt } from "./peers.ts";
import { ACCURACY, loosest, type Timed } from "./timing.ts";

const PEER_SAMPLES = 40;
const ROUNDS = 7;
/** As in the study's own samples, s. */
const SHARP = 1e-3;
const TIGHT = 1e-12;

/** Time of one sample of the study's own and of the peer, and how exact their swings are. */
export function peerStudy(run: SampleRun, seed: number, animals: number) {
  const { sampled } = run;
  const swings = new SwingRun(new Motion(), new Trace());
  const draw = (index: number) => sampled.draw(sampleStream(seed, index));
  const settleTimes = (settle: () => number) =>
    Array.from({ length: PEER_SAMPLES }, (_, index) => {
      draw(index);
      return settle();
    });
  const byPeer = (tolerance: number) =>
    settleTimes(() => peerSettleTime(sampled.system, sampled.angle, odexAt(tolerance)));
  const truth = byPeer(TIGHT);
  const worst = (times: readonly number[]) => Math.max(...times.map((t, i) => Math.abs(t - truth[i])));
  const off = worst(
    settleTimes(() => swings.run(sampled.system, sampled.angle, sampled.speed).settleTime ?? -1),
  );
  const { tolerance, error } = loosest((t) => worst(byPeer(t)));
  const tally = emptyTally(0, PEER_SAMPLES, animals);
  const [own, peer] = inTurns([
    { sample: (index) => seconds(() => run.add(index, tally)), repeats: 10 },
    { sample: peerSample(sampled, draw, swings, tolerance), repeats: 1 },
  ]);
  const note = `settle times off by at most ${off.toExponential(1)} s against ${error.toExponential(1)} s at its tolerance ${tolerance}; at most ${ACCURACY} s asked`;
  return { own, peer, note };
}

function seconds(work: () => void): number {
  const start = performance.now();
  work();
  return (performance.now() - start) / 1000;
}

interface Work {
  /** Does one sample and returns its time, s. */
  readonly sample: (index: number) => number;
  /** Passes over all samples at a turn, so that both are at work for like times. */
  readonly repeats: number;
}

/** Least time of each sample in several rounds, in turns; their means. */
function inTurns(works: readonly Work[]): Timed[] {
  const least = works.map(() => new Array<number>(PEER_SAMPLES).fill(Number.POSITIVE_INFINITY));
  for (let round = 0; round < ROUNDS; round++) {
    works.forEach(({ sample, repeats }, i) => {
      for (let pass = 0; pass < repeats * PEER_SAMPLES; pass++) {
        const index = pass % PEER_SAMPLES;
        least[i][index] = Math.min(least[i][index], sample(index));
      }
    });
  }
  return least.map((times) => ({
    seconds: times.reduce((a, b) => a + b) / PEER_SAMPLES,
    calls: PEER_SAMPLES,
  }));
}

/** The bolt's rides start from the trace of the study's own swing, which is not in the time. */
function peerSample(
  sampled: SampleRun["sampled"],
  draw: (index: number) => void,
  swings: SwingRun,
  tolerance: number,
): (index: number) => number {
  const integrate = odexAt(tolerance);
  const motion = new Motion();
  const outcomes = new MouthOutcomes(swings.trace, motion, new PeerRide(motion, integrate));
  return (index) => {
    const swung = seconds(() => {
      draw(index);
      peerSettleTime(sampled.system, sampled.angle, integrate);
    });
    swings.run(sampled.system, sampled.angle, sampled.speed);
    return swung + seconds(() => outcomes.find(sampled.system, sampled.ride, SHARP));
  };
}
