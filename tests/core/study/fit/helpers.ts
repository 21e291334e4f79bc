/** A bare door for measured swings, and swings of it made up with known values. */
import type { Door } from "../../../../core/door/index.ts";
import type { Fit, FitDone } from "../../../../core/study/fit/fit-types.ts";
import { SwingModel } from "../../../../core/study/fit/model.ts";
import type { FitKey, Values } from "../../../../core/study/fit/parameters.ts";
import { normalQuantile } from "../../../../core/study/normal.ts";
import { sampleStream } from "../../../../core/study/stream.ts";
import { doorOf } from "../../doors.ts";

export const DEGREE = Math.PI / 180;

/** A flap by itself: no magnets, no latch, values as a person would guess them. */
export const BARE = {
  format: "swingstill-door",
  version: 1,
  name: "Flap on the bench",
  animals: [{ shoulderHeight: "25 cm", chestWidth: "13 cm", bodyLength: "46 cm", mass: "4.5 kg" }],
  opening: { width: "24 cm", height: "30 cm", sillHeight: "10 cm" },
  flap: { width: "23 cm", height: "28 cm", thickness: "4 mm", hingeOffset: "6 mm" },
  hinge: { frictionTorque: "1 mN m", viscousDamping: "1 mN m s/rad" },
};

export const MAGNETS = {
  arrangement: "jamb",
  diameter: "10 mm",
  thickness: "4 mm",
  remanence: "1.25 T",
  gap: "4 mm",
  distanceFromHinge: "27 cm",
};

export function door(changes: Readonly<Record<string, unknown>> = {}): Door {
  return doorOf({ ...BARE, ...changes });
}

export const TRUTH: Values = {
  "hinge.frictionTorque": 2.5e-3,
  "hinge.viscousDamping": 1.5e-3,
  "air.swingFactor": 1.8,
  "seal.frictionTorque": 0,
  "opening.outOfPlumb": 0,
  release: 60 * DEGREE,
  start: 0.3,
  zero: 0.02,
  pace: 1,
};

/** Normal noise of a seed. */
export function noise(seed: number, sigma: number): () => number {
  const uniform = sampleStream(20_251, seed);
  return () => sigma * normalQuantile(uniform());
}

/** What a camera sees of a swing with known values; the flap is held before its let-go. */
export function filmed(of: Door, truth: Values, times: readonly number[], read: () => number) {
  const model = new SwingModel(of);
  model.run(truth, 1000);
  const angle = times.map((time) => model.at((time - truth.start) / truth.pace).angle + truth.zero + read());
  return {
    kind: "trace",
    samples: { time: Float64Array.from(times), angle: Float64Array.from(angle) },
  } as const;
}

export function every(interval: number, until: number): number[] {
  return Array.from({ length: Math.floor(until / interval) + 1 }, (_, i) => i * interval);
}

export function done(fit: Fit): FitDone {
  if (!fit.ok) throw new Error(fit.says);
  return fit;
}

export function fittedValue(fit: Fit, key: FitKey) {
  const found = done(fit).values.find((value) => value.key === key);
  if (found === undefined) throw new Error(`${key} was refused: ${done(fit).says.join("\n")}`);
  return found;
}
