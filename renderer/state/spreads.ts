/** What a study of this door spreads: every input with its usual spread and the reason, and what the file says in its place. */
import type { Door } from "../../core/door/door.ts";
import { type DoorFile, fileEntry } from "../../core/door/file.ts";
import { numericPaths } from "../../core/door/numeric-paths.ts";
import { getValue } from "../../core/door/path.ts";
import { fieldAt, isNumeric } from "../../core/door/schema.ts";
import { DEFAULT_TOLERANCES } from "../../core/study/default-tolerances.ts";
import { type StudyInput, studyInputs } from "../../core/study/inputs.ts";
import { keyText } from "../figures/format.ts";
import type { UnitSystem } from "./view.ts";

export interface SpreadRow {
  readonly key: string;
  /** As one would write it; "" where the key does not spread by itself. */
  readonly usual: string;
  /** Why it spreads so. */
  readonly reason: string;
  /** The file has a word of its own. */
  readonly own: boolean;
  /** Why the file's word has no effect on this door; `null` where it has. */
  readonly unused: string | null;
}

/** Inputs that spread by themselves first, in the study's order, then what else the file names. */
export function spreadRows(door: Door, file: DoorFile, units: UnitSystem): SpreadRow[] {
  const given = ownKeys(file);
  const { unused } = studyInputs(door);
  const row = (key: string, usual: string, reason: string): SpreadRow => ({
    key,
    usual,
    reason,
    own: given.includes(key),
    unused: unused.find((one) => one.key === key)?.why ?? null,
  });
  const usual = usualInputs(door).map((input) =>
    row(input.key, usualText(input, units), sentence(input.reason)),
  );
  const known = new Set(usual.map(({ key }) => key));
  return [...usual, ...given.filter((key) => !known.has(key)).map((key) => row(key, "", ""))];
}

function ownKeys(file: DoorFile): string[] {
  const own = fileEntry(file, "study.tolerances");
  return typeof own === "object" && own !== null && !Array.isArray(own) ? Object.keys(own) : [];
}

/** What the study would spread if the file said nothing. */
function usualInputs(door: Door): readonly StudyInput[] {
  return studyInputs({ ...door, study: { ...door.study, tolerances: new Map() } }).inputs;
}

function usualText({ key, spread, target }: StudyInput, units: UnitSystem): string {
  const field = fieldAt(key);
  const dimension = isNumeric(field) && field.kind === "quantity" ? field.dimension : null;
  if (target === "timer") return `± ${percent(spread.high - 1)}`;
  const listed = DEFAULT_TOLERANCES.find((one) => one.key === key.replace(/\.\d+\./, ".*."))?.tolerance;
  if (listed === undefined) {
    return `${keyText(spread.low, dimension, units)} to ${keyText(spread.high, dimension, units)}`;
  }
  const half = "twoSigma" in listed ? listed.twoSigma : listed.high;
  return `± ${listed.relative ? percent(half) : keyText(half, dimension, units)}`;
}

const percent = (share: number): string => `${Number((100 * share).toPrecision(3))} %`;

const sentence = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

/** Numbers of the door that could spread too: those it has, that are not whole and no aim of the study. */
export function moreKeys(door: Door, shown: readonly SpreadRow[]): string[] {
  const lengths: Readonly<Record<string, number>> = {
    animals: door.animals.length,
    "flap.extraMasses": door.flap.extraMasses.length,
    "solenoid.pull": 0,
  };
  const there = new Set(shown.map(({ key }) => key));
  return numericPaths((list) => lengths[list] ?? 1).filter((path) => {
    const field = fieldAt(path);
    const whole = isNumeric(field) && field.kind === "number" && field.whole;
    return !whole && !path.startsWith("study.") && !there.has(path) && getValue(door, path) !== null;
  });
}
