/** The fit of turning points. */
import { type Fitted, fitted } from "./least-squares.ts";
import type { SwingModel } from "./model.ts";
import type { ParameterName, Values } from "./parameters.ts";
import { decrements } from "./start.ts";
import { type TurnReadings, TurnsProblem } from "./turns-problem.ts";
import { tiesTo } from "./vector.ts";
import { lastFreeTurn } from "./well.ts";

export interface TurnsFit {
  readonly values: Values;
  readonly fit: Fitted;
}

/** Fewest turning points of a fit. */
export const FEWEST_TURNS = 4;

/** The readings before the magnets catch the flap, by the start that sees that first. */
export function freeTurns(
  model: SwingModel,
  { turn, angle }: TurnReadings,
  starts: readonly Values[],
): TurnReadings {
  const last = Math.min(...starts.map((start) => lastFreeTurn(model, start)));
  const count = turn.filter((place) => place <= last).length;
  return { turn: turn.slice(0, count), angle: angle.slice(0, count) };
}

/** First values: the let-go is the first turn, the zero what successive turns have in common. */
export function turnsStart(
  model: SwingModel,
  { turn, angle }: TurnReadings,
  base: Values,
  zeroIsTrue = false,
): Values[] {
  const every = everyTurn(turn, angle);
  const centre = every.length < 3 ? 0 : (every[0] + 2 * every[1] + every[2]) / 4;
  const plumb = zeroIsTrue ? centre : base["opening.outOfPlumb"];
  const centred = {
    ...base,
    "opening.outOfPlumb": plumb,
    zero: centre - plumb,
    release: angle[0] - centre + plumb,
  };
  const found = decrements(every, model);
  return [
    centred,
    {
      ...centred,
      "hinge.frictionTorque": found.dry,
      "hinge.viscousDamping": found.viscous,
      "air.swingFactor": found.air,
    },
  ];
}

/** Readings at every turn: those left out lie between their neighbours of the same side. */
function everyTurn(turn: readonly number[], angle: readonly number[]): number[] {
  const zero = (Math.max(...angle) + Math.min(...angle)) / 2;
  const every: number[] = [];
  for (let i = 0; i < turn.length; i++) {
    while (every.length < turn[i]) {
      const gap = turn[i] - turn[i - 1];
      const share = (every.length - turn[i - 1]) / gap;
      const from = Math.abs(angle[i - 1] - zero);
      const size = from + share * (Math.abs(angle[i] - zero) - from);
      const side = Math.sign(angle[i - 1] - zero) * ((every.length - turn[i - 1]) % 2 === 1 ? -1 : 1);
      every.push(zero + side * size);
    }
    every.push(angle[i]);
  }
  return every;
}

/** The best fit from several starts, the rough ones tied. Squares, not a robust loss: turns are few. */
export function turnsFit(
  model: SwingModel,
  readings: TurnReadings,
  free: readonly ParameterName[],
  starts: readonly Values[],
): TurnsFit {
  const plain = { spread: Number.POSITIVE_INFINITY };
  const fits = starts.map((start) => {
    const tied = new TurnsProblem(model, readings, free, start, tiesTo(start, model));
    const rough = fitted(tied, tied.parameters.vector(start), { ...plain, iterations: 15 });
    const problem = new TurnsProblem(model, readings, free, start);
    const fit = fitted(problem, rough.p, plain);
    return { values: problem.parameters.values(fit.p), fit };
  });
  return fits.reduce((a, b) => (b.fit.cost < a.fit.cost ? b : a));
}
