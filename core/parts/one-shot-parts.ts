/**
 * R, trimmer and C of a one-shot from preferred numbers (IEC 60063), so that the trimmer reaches the wanted
 * hold whatever the parts' tolerances made of their values (model, section 5).
 */
import { preferredAbove, preferredBelow, preferredWithin, type Series } from "../quantity/preferred.ts";
import { type LeakageCheck, LN_3, leakageCheck, oneShotTime } from "./timer.ts";

/** What to choose from. */
export interface Stock {
  readonly resistors: Series;
  readonly trimmers: Series;
  readonly capacitors: Series;
}

export interface OneShotRequest {
  /** The hold to trim to, s. */
  readonly holdTime: number;
  readonly logicVoltage: number;
  /** Maker's limits, as parts of 1. */
  readonly resistorTolerance: number;
  readonly capacitorTolerance: number;
}

export interface OneShotParts {
  /** Fixed resistor, ohm. */
  readonly resistor: number;
  /** Trimmer in series with it, end to end, ohm. */
  readonly trimmer: number;
  /** Farad. */
  readonly capacitor: number;
  /** Where the trimmer stands if every part has its printed value, ohm. */
  readonly trimmerSetting: number;
  /** The range every set of parts within tolerance can be trimmed over: from the longest shortest, s … */
  readonly trimsFrom: number;
  /** … to the shortest longest, s. */
  readonly trimsTo: number;
  /** At the printed values, trimmed to the hold. */
  readonly leakage: LeakageCheck;
}

/** Trimmers' end-to-end tolerance (common practice, no source). */
const TRIMMER_TOLERANCE = 0.2;
/** Timing resistors a common timer chip is happy with, ohm (common practice, no source). */
const LEAST_RESISTANCE = 10e3;
const GREATEST_RESISTANCE = 1e6;
/** How near to the best leakage ratio is good enough for a smaller capacitor, where none reaches the limit. */
const NEARLY_BEST = 0.9;

/**
 * The parts for a hold: the smallest capacitor whose leakage leaves the charging current its ratio, or, where
 * an electrolytic can't, the smallest one near the best ratio there is (`leakage.enough` is then false).
 * `null` where no parts do: a hold that is not positive and finite, a tolerance of 100 % or more.
 */
export function oneShotParts(request: OneShotRequest, stock: Stock): OneShotParts | null {
  const { holdTime, resistorTolerance, capacitorTolerance } = request;
  if (!(holdTime > 0 && Number.isFinite(holdTime))) return null;
  if (!(resistorTolerance < 1 && capacitorTolerance < 1)) return null;
  const product = holdTime / LN_3;
  const [least, greatest] = [product / GREATEST_RESISTANCE, product / LEAST_RESISTANCE];
  const capacitors = preferredWithin(least, greatest, stock.capacitors);
  const choices = capacitors.map((capacitor) => partsWith(capacitor, request, stock));
  if (choices.length === 0) return null;
  const best = Math.max(...choices.map((choice) => choice.leakage.ratio));
  const good = choices.find((choice) => choice.leakage.enough);
  return good ?? choices.find((choice) => choice.leakage.ratio >= NEARLY_BEST * best) ?? null;
}

/** Resistor and trimmer for one capacitor: low enough with the largest capacitor, high enough with the smallest. */
function partsWith(capacitor: number, request: OneShotRequest, stock: Stock): OneShotParts {
  const { holdTime, logicVoltage, resistorTolerance: r, capacitorTolerance: c } = request;
  const wanted = holdTime / (capacitor * LN_3);
  const resistor = preferredBelow(wanted / (1 + c) / (1 + r), stock.resistors);
  const span = wanted / (1 - c) - resistor * (1 - r);
  const trimmer = preferredAbove(span / (1 - TRIMMER_TOLERANCE), stock.trimmers);
  const reach = resistor * (1 - r) + trimmer * (1 - TRIMMER_TOLERANCE);
  return {
    resistor,
    trimmer,
    capacitor,
    trimmerSetting: wanted - resistor,
    trimsFrom: oneShotTime(resistor * (1 + r), capacitor * (1 + c)),
    trimsTo: oneShotTime(reach, capacitor * (1 - c)),
    leakage: leakageCheck(logicVoltage, wanted, capacitor),
  };
}
