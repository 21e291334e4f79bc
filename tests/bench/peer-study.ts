/**
 * The study of the medium-dog example with every swing and every ride of the bolt carried by odex: the same draws, tables, rides
 * and counts. Its tolerance is the loosest at which its settle times are as exact as is asked of the study's own.
 */
import { MouthOutcomes } from "../../core/study/mouth-outcomes.ts";
import type { SampleRun } from "../../core/study/sample-run.ts";
import { sampleStream } from "../../core/study/stream.ts";
import { Motion } from "../../core/swing/motion.ts";
import { SwingRun } from "../../core/swing/swing.ts";
import { Trace } from "../../core/swing/trace.ts";
import { PeerRide } from "./peer-ride.ts";
import { peerSettleTime } from "./peer-swing.ts";
import { odexAt } from "./peers.ts";
import { ACCURACY, loosest, type Timed } from "./timing.ts";

const PEER_SAMPLES = 40;
const ROUNDS = 3;
/** As in the study's own samples, s. */
const SHARP = 1e-3;
const TIGHT = 1e-12;

/** Time of one sample of the peer, and how exact it and the study's own swing are. */
export function peerStudy({ sampled }: SampleRun, seed: number): { timed: Timed; note: string } {
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
  const own = worst(
    settleTimes(() => swings.run(sampled.system, sampled.angle, sampled.speed).settleTime ?? -1),
  );
  const { tolerance, error } = loosest((t) => worst(byPeer(t)));
  const timed = timedSamples(sampled, draw, swings, tolerance);
  const note = `settle times off by at most ${own.toExponential(1)} s against ${error.toExponential(1)} s at its tolerance ${tolerance} (at most ${ACCURACY} s asked)`;
  return { timed, note };
}

/** The bolt's rides start from the trace of the study's own swing, which is not in the time. */
function timedSamples(
  sampled: SampleRun["sampled"],
  draw: (index: number) => void,
  swings: SwingRun,
  tolerance: number,
): Timed {
  const integrate = odexAt(tolerance);
  const motion = new Motion();
  const outcomes = new MouthOutcomes(swings.trace, motion, new PeerRide(motion, integrate));
  const least = new Array<number>(PEER_SAMPLES).fill(Number.POSITIVE_INFINITY);
  for (let round = 0; round < ROUNDS; round++) {
    for (let index = 0; index < PEER_SAMPLES; index++) {
      const start = performance.now();
      draw(index);
      peerSettleTime(sampled.system, sampled.angle, integrate);
      const swung = performance.now();
      swings.run(sampled.system, sampled.angle, sampled.speed);
      const traced = performance.now();
      outcomes.find(sampled.system, sampled.ride, SHARP);
      const spent = swung - start + (performance.now() - traced);
      least[index] = Math.min(least[index], spent / 1000);
    }
  }
  return { seconds: least.reduce((a, b) => a + b) / PEER_SAMPLES, calls: PEER_SAMPLES };
}
