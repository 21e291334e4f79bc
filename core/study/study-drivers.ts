/** The drivers of a study: the inputs of its first samples, drawn again from the seed, against what those samples gave. */
import { MEASURE, midRanks, sensitivity } from "./drivers.ts";
import { studyInputs } from "./inputs.ts";
import type { StudyRequest } from "./request.ts";
import { ANIMAL_DRAW, DIRECTION_DRAW, FIRST_INPUT } from "./sampled-door.ts";
import { sampleStream } from "./stream.ts";

export interface Driver {
  /** The door file's key path; "passage.animal" and "passage.direction" for what differs from pass to pass by itself. */
  readonly key: string;
  readonly measure: string;
  /** Share of the variance, about 0 for an input that does nothing (it may come out slightly negative). */
  readonly value: number;
  /** One standard error; `null` with too few samples to tell. */
  readonly error: number | null;
}

/** Keys in the order of the draws. The animal is one only where there are several. */
function drawnKeys({ door }: StudyRequest): { readonly key: string; readonly draw: number }[] {
  const inputs = studyInputs(door).inputs.map(({ key }, i) => ({ key, draw: FIRST_INPUT + i }));
  const direction = { key: "passage.direction", draw: DIRECTION_DRAW };
  const animal = { key: "passage.animal", draw: ANIMAL_DRAW };
  return door.animals.length > 1 ? [animal, direction, ...inputs] : [direction, ...inputs];
}

/** One column of uniform numbers per draw, for samples 0 … count − 1. */
function drawnColumns(seed: number, draws: number, count: number): Float64Array[] {
  const columns = Array.from({ length: draws }, () => new Float64Array(count));
  for (let index = 0; index < count; index++) {
    const uniform = sampleStream(seed, index);
    for (const column of columns) column[index] = uniform();
  }
  return columns;
}

/** Drivers of each result, the strongest first. `results` holds one value per sample, infinite for never. */
export function studyDrivers(
  request: StudyRequest,
  results: readonly { readonly name: string; readonly values: Float64Array }[],
): Driver[][] {
  const keys = drawnKeys(request);
  const count = results[0].values.length;
  const draws = Math.max(...keys.map(({ draw }) => draw)) + 1;
  const columns = drawnColumns(request.seed, draws, count);
  return results.map(({ name, values }) => {
    const ranks = midRanks(values);
    if (ranks.every((rank) => rank === ranks[0])) return [];
    const drivers = keys.map(({ key, draw }) => ({
      key,
      measure: `${MEASURE} of ${name}`,
      ...sensitivity(columns[draw], ranks),
    }));
    return drivers.sort((a, b) => b.value - a.value);
  });
}
