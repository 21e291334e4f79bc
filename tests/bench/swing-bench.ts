/** One swing of the medium-dog example against odex and mathjs on the same equation at the same measured accuracy. */
import { readFileSync } from "node:fs";
import { readDoor } from "../../core/door/index.ts";
import { compute } from "../../core/review/compute.ts";
import { Motion } from "../../core/swing/motion.ts";
import { SwingRun } from "../../core/swing/swing.ts";
import { COARSE, type SwingSystem, swingSystem } from "../../core/swing/system.ts";
import { Trace } from "../../core/swing/trace.ts";
import { type PeerIntegrator, peerSettleTime } from "./peer-swing.ts";
import { mathjsAt, odexAt } from "./peers.ts";
import { report, timedTogether } from "./timing.ts";

/** What a settle time may be off by, s (the aim's own measure of "the same accuracy"). */
const ACCURACY = 1e-4;
const TOLERANCES = [1e-4, 1e-5, 1e-6, 1e-7, 1e-8, 1e-9, 1e-10, 1e-11];

export function mediumDog() {
  const read = readDoor(readFileSync("assets/examples/medium-dog.door.json", "utf8"));
  if (!read.ok) throw new Error(read.errors.map((e) => e.message).join("\n"));
  return read.door;
}

/** The loosest tolerance from which on every tighter one is accurate enough too: not one that is right by luck. */
function tuned(
  make: (tolerance: number) => PeerIntegrator,
  system: SwingSystem,
  angle: number,
  truth: number,
) {
  const errors = TOLERANCES.map((tolerance) =>
    Math.abs(peerSettleTime(system, angle, make(tolerance)) - truth),
  );
  let pick = TOLERANCES.length - 1;
  while (pick > 0 && errors[pick - 1] <= ACCURACY) pick--;
  return { integrate: make(TOLERANCES[pick]), tolerance: TOLERANCES[pick], error: errors[pick] };
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
  const odex = tuned(odexAt, fine, angle, truth);
  const stretch = computed.body.smallAnglePeriod / 16;
  const mathjs = tuned((t) => mathjsAt(t, stretch), fine, angle, truth);
  const [ownFine, own, byOdex] = timedTogether([
    () => run.run(fine, angle, 0),
    () => run.run(coarse, angle, 0),
    () => peerSettleTime(fine, angle, odex.integrate),
  ]);
  const [byMathjs] = timedTogether([() => peerSettleTime(fine, angle, mathjs.integrate)], 0.5, 2);
  const note = (peer: typeof odex) =>
    `its tolerance ${peer.tolerance}, off by ${peer.error.toExponential(1)} s`;
  report("one swing, coarse", "odex", own, byOdex, note(odex));
  report("one swing, fine", "odex", ownFine, byOdex, note(odex));
  report("one swing, coarse", "mathjs solveODE", own, byMathjs, note(mathjs));
}
