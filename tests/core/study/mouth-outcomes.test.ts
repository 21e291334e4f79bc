import { describe, expect, test } from "vitest";
import type { Door } from "../../../core/door/index.ts";
import { boltAtMouth, rideSystem } from "../../../core/passage/relatch.ts";
import { mechanics } from "../../../core/review/compute.ts";
import { MouthOutcomes } from "../../../core/study/mouth-outcomes.ts";
import { sampleStream } from "../../../core/study/stream.ts";
import { CAUGHT, SHUT_OUT, STUCK } from "../../../core/study/stretches.ts";
import { Motion } from "../../../core/swing/motion.ts";
import { SwingRun } from "../../../core/swing/swing.ts";
import { Trace } from "../../../core/swing/trace.ts";
import { REFERENCE_DOORS, referenceDoor } from "../doors.ts";
import { stirredDoor } from "./doors.ts";

const SHARP = 1e-6;
const CODES = { caught: CAUGHT, stuck: STUCK, "shut out": SHUT_OUT, "under the animal": -1 };

/** Compares the stretches with the relatch rule itself at many moments; returns the moments that disagree away from an edge. */
function disagreements(door: Door, angle: number, moments: number) {
  const { system, latch } = mechanics(door);
  if (latch === null) throw new Error("a door with a latch is wanted");
  const run = new SwingRun(new Motion(), new Trace());
  run.run(system, angle, 0);
  const ride = rideSystem(system, latch);
  const outcomes = new MouthOutcomes(run.trace, new Motion());
  const stretches = outcomes.find(system, ride, SHARP);
  const edges = [...stretches.from.slice(0, stretches.count), ...stretches.to.slice(0, stretches.count)];
  const motion = new Motion();
  const state = { time: 0, angle: 0, speed: 0 };
  const wrong: string[] = [];
  const longest = run.trace.endTime + 0.5;
  for (let i = 0; i < moments; i++) {
    const time = (longest * (i + 0.37)) / moments;
    if (edges.some((edge) => Math.abs(edge - time) < 3 * SHARP)) continue;
    run.trace.at(system, time, state);
    const { outcome } = boltAtMouth(ride, state, motion);
    if (CODES[outcome] !== stretches.at(time))
      wrong.push(`${time.toFixed(6)} s: ${outcome}, read as ${stretches.at(time)}`);
  }
  return { wrong, rides: outcomes.rides, stretches };
}

const withLatch = REFERENCE_DOORS.filter((name) => referenceDoor(name).latch !== null);

describe("the outcome at every moment the bolt may reach the mouth", () => {
  test.each(withLatch)("agrees with the relatch rule carried out: %s", (name) => {
    for (const angle of [1.1, -0.6]) {
      const { wrong } = disagreements(referenceDoor(name), angle, 700);
      expect(wrong).toEqual([]);
    }
  });

  test("agrees on doors stirred at random", () => {
    const uniform = sampleStream(20, 0);
    let tried = 0;
    const kinds = new Set<number>();
    while (tried < 60) {
      const name = withLatch[Math.floor(uniform() * withLatch.length)];
      const door = stirredDoor(referenceDoor(name), uniform);
      if (door === null) continue;
      tried++;
      const angle = (uniform() - 0.5) * 2.4;
      const { wrong, stretches } = disagreements(door, angle, 400);
      expect(wrong, `${name} ${tried} at ${angle}`).toEqual([]);
      for (let i = 0; i < stretches.count; i++) kinds.add(stretches.code[i]);
    }
    expect([...kinds].sort()).toEqual([CAUGHT, STUCK]);
  });
});
