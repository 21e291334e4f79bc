/** A tally as plain data: what crosses from a worker, and what a part file holds. Trimmed to what is not zero. */
import { GridCount } from "./grid.ts";
import { AnimalTally, type Ends, type Tally } from "./tally.ts";

export interface PackedAnimal {
  readonly samples: number;
  readonly cannotWork: number;
  readonly restsOutside: number;
  /** Differences along the grid of settings: caught, under the animal, stuck, shut out, caught throughout. */
  readonly grids: readonly Int32Array[];
  readonly settleBins: Int32Array;
  readonly settleNever: number;
  readonly atNominal: Ends;
  readonly latest: number;
}

export interface PackedTally {
  readonly from: number;
  readonly to: number;
  readonly animals: readonly PackedAnimal[];
  readonly rowsFrom: number;
  readonly needed: Float64Array;
  readonly pointsFrom: number;
  readonly points: Float64Array;
}

export function packTally(tally: Tally): PackedTally {
  const { from, to, rows, points } = tally;
  return {
    from,
    to,
    animals: tally.animals.map(packAnimal),
    rowsFrom: rows.from,
    needed: rows.needed,
    pointsFrom: points.from,
    points: points.settle,
  };
}

function packAnimal(animal: AnimalTally): PackedAnimal {
  return {
    samples: animal.samples,
    cannotWork: animal.cannotWork,
    restsOutside: animal.restsOutside,
    grids: animal.grids.map((grid) => grid.differences.slice(0, grid.length)),
    settleBins: animal.settle.bins.slice(0, animal.settle.length),
    settleNever: animal.settle.never,
    atNominal: { ...animal.atNominal },
    latest: animal.latest,
  };
}

export function unpackTally(packed: PackedTally): Tally {
  const { from, to, rowsFrom, needed, pointsFrom, points } = packed;
  return {
    from,
    to,
    animals: packed.animals.map(unpackAnimal),
    rows: { from: rowsFrom, needed },
    points: { from: pointsFrom, settle: points },
  };
}

function unpackAnimal(packed: PackedAnimal): AnimalTally {
  const animal = new AnimalTally(packed.grids.map((differences) => new GridCount(atLeastOne(differences))));
  animal.samples = packed.samples;
  animal.cannotWork = packed.cannotWork;
  animal.restsOutside = packed.restsOutside;
  animal.settle.bins = atLeastOne(packed.settleBins);
  animal.settle.never = packed.settleNever;
  animal.settle.total = packed.samples;
  Object.assign(animal.atNominal, packed.atNominal);
  animal.latest = packed.latest;
  return animal;
}

/** Arrays grow by doubling, so none is empty. */
function atLeastOne(array: Int32Array): Int32Array<ArrayBuffer> {
  return array.length > 0 ? Int32Array.from(array) : new Int32Array(1);
}
