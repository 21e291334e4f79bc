/** One swing of the medium-dog example against odex, mathjs and C on the same equation at the same measured accuracy. */
import { readFileSync } from "node:fs";
import { readDoor } from "../../core/door/index.ts";
import { compute } from "../../core/review/compute.ts";
import { Motion } from "../../core/swing/motion.ts";
import { SwingRun } from "../../core/swing/swing.ts";
import { COARSE, type SwingSystem, swingSystem } from "../../core/swing/system.ts";
import { Trace } from "../../core/swing/trace.ts";
import { withCSwing } from "./c-swing.ts";
import { type PeerIntegrator, peerSettleTime } from "./peer-swing.ts";
import { mathjsAt, odexAt } from "./peers.ts";
import { loosest, report, type Timed, timedTogether } from "./timing.ts";

export function mediumDog() {
  const read = readDoor(readFileSync("assets/examples/medium-dog.door.json", "utf8"));
  if (!read.ok) throw new Error(read.errors.map((e) => e.message).join("\n"));
  return read.door;
}

function tuned(settleTime: (tolerance: number) => number, truth: number) {
  return loosest((tolerance) => Math.abs(settleTime(tolerance) - truth));
}

function note({ tolerance, error }: ReturnType<typeof tuned>): string {
  return `its tolerance ${tolerance}, off by ${error.toExponential(1)} s`;
}

/** Against C in turns, so that whatever else the machine does disturbs both alike. */
function againstC(own: () => void, fine: SwingSystem, angle: number, truth: number): void {
  const ran = withCSwing((ask) => {
    const peer = tuned((tolerance) => ask(fine, angle, tolerance, 0).settleTime, truth);
    const times = Array.from({ length: 5 }, () => ({
      own: timedTogether([own], 0.1, 3)[0],
      c: ask(fine, angle, peer.tolerance, 0.3).timed,
    }));
    const least = (timed: Timed[]) => timed.reduce((a, b) => (b.seconds < a.seconds ? b : a));
    const [mine, other] = [least(times.map((t) => t.own)), least(times.map((t) => t.c))];
    report("one swing, coarse", "C (gcc -O3, Dormand–Prince 5)", mine, other, note(peer));
  });
  if (!ran) console.log("one swing in C: no gcc here");
}

export function swingBench(): void {
  const door = mediumDog();
  const computed = compute(door);
  const fine = computed.system;
  const angle = computed.governing.release.angle;
  const truth = peerSettleTime(fine, angle, odexAt(1e-13));
  const run = new SwingRun(new Motion(), new Trace());
  const coarse = swingSystem(door, computed.body, fine.magnets, fine.capture, COARSE);
  for (const [name, system] of Object.entries({ fine, coarse })) {
    const swing = run.run(system, angle, 0);
    const off = Math.abs((swing.settleTime ?? -1) - truth).toExponential(1);
    console.log(
      `${name}: ${swing.steps} steps, ${swing.rejected} refused; settle time off a tight reference by ${off} s`,
    );
  }
  const stretch = computed.body.smallAnglePeriod / 16;
  const byPeer = (integrate: PeerIntegrator) => peerSettleTime(fine, angle, integrate);
  const odex = tuned((tolerance) => byPeer(odexAt(tolerance)), truth);
  const mathjs = tuned((tolerance) => byPeer(mathjsAt(tolerance, stretch)), truth);
  const [ownFine, own, byOdex] = timedTogether([
    () => run.run(fine, angle, 0),
    () => run.run(coarse, angle, 0),
    () => byPeer(odexAt(odex.tolerance)),
  ]);
  const [byMathjs] = timedTogether([() => byPeer(mathjsAt(mathjs.tolerance, stretch))], 0.5, 2);
  report("one swing, coarse", "odex", own, byOdex, note(odex));
  report("one swing, fine", "odex", ownFine, byOdex, note(odex));
  report("one swing, coarse", "mathjs solveODE", own, byMathjs, note(mathjs));
  againstC(() => run.run(coarse, angle, 0), fine, angle, truth);
}
