/** What a suggestion costs elsewhere: the figures that get worse, before and after, and the cautions it brings. */
import type { Dimension } from "../quantity/dimensions.ts";
import type { Computed } from "./compute.ts";
import type { Rule, Verdict } from "./findings-rule.ts";
import { resultNamed } from "./results.ts";
import { listed, type Words } from "./words.ts";

interface Figure {
  readonly result: string;
  readonly words: string;
  readonly dimension: Dimension;
  /** The direction that is worse. */
  readonly worse: "rises" | "falls";
}

const FIGURES: readonly Figure[] = [
  { result: "push.force", words: "the push", dimension: "force", worse: "rises" },
  { result: "swing.settleTime", words: "the time to settle", dimension: "time", worse: "rises" },
  { result: "hold.required", words: "the hold needed", dimension: "time", worse: "rises" },
  {
    result: "timer.longest",
    words: "the time the door may stay unlocked",
    dimension: "time",
    worse: "rises",
  },
  {
    result: "swing.deadBand",
    words: "how far off the centre the flap can rest",
    dimension: "angle",
    worse: "rises",
  },
  {
    result: "wind.gustSpeed",
    words: "the wind that opens the unlatched flap",
    dimension: "speed",
    worse: "falls",
  },
  {
    result: "magnets.axialForce",
    words: "the magnets' pull on the hinge",
    dimension: "force",
    worse: "rises",
  },
  { result: "latch.boltRiseTime", words: "the bolt's rise time", dimension: "time", worse: "rises" },
  { result: "solenoid.releaseTime", words: "the coil's release time", dimension: "time", worse: "rises" },
  {
    result: "solenoid.pullInVoltage",
    words: "the voltage that withdraws the bolt",
    dimension: "voltage",
    worse: "rises",
  },
  {
    result: "solenoid.sideLoadLimit",
    words: "the side load the bolt stands",
    dimension: "force",
    worse: "falls",
  },
  {
    result: "solenoid.continuousTemperature",
    words: "the coil kept on",
    dimension: "temperature",
    worse: "rises",
  },
  { result: "regulator.temperature", words: "the regulator", dimension: "temperature", worse: "rises" },
  { result: "supply.current", words: "the supply's current", dimension: "current", worse: "rises" },
  { result: "flap.mass", words: "the flap's mass", dimension: "mass", worse: "rises" },
  { result: "fit.heightSpare", words: "the height to spare", dimension: "length", worse: "falls" },
];

/** A change below this part of a figure is not worth a word (assumption). */
const WORTH_A_WORD = 0.01;
/** Most figures named. */
const MOST_NAMED = 3;

interface Side {
  readonly computed: Computed;
}
interface Before extends Side {
  readonly before: ReadonlyMap<Rule, Verdict>;
  readonly words: Words;
}
interface After extends Side {
  readonly verdicts: ReadonlyMap<Rule, Verdict>;
}

/** The cost in words; `null` where nothing gets worse. */
export function costOf(before: Before, after: After): string | null {
  const figures = FIGURES.flatMap((figure) => worsened(figure, before, after)).slice(0, MOST_NAMED);
  const cautions = [...after.verdicts]
    .filter(([rule, { status }]) => status === "caution" && isOk(before.before.get(rule)))
    .map(([rule]) => `a caution about ${rule.concern}`);
  const all = cautions.length > 0 ? [...figures, `it brings ${listed(cautions)}`] : figures;
  if (all.length === 0) return null;
  const text = listed(all);
  return text[0].toUpperCase() + text.slice(1);
}

function isOk(verdict: Verdict | undefined): boolean {
  return verdict === undefined || verdict.status === "ok";
}

function worsened(figure: Figure, before: Before, after: After): readonly string[] {
  const definition = resultNamed(figure.result);
  const from = definition?.value(before.computed) ?? null;
  const to = definition?.value(after.computed) ?? null;
  // A pull that was a push is another thing, not a worse one.
  if (from === null || to === null || from * to < 0) return [];
  const change = figure.worse === "rises" ? to - from : from - to;
  if (!(change > WORTH_A_WORD * Math.abs(from))) return [];
  const [a, b] = before.words.pair(from, to, figure.dimension);
  return [`${figure.words} ${figure.worse} from ${a} to ${b}${limit(figure, after.computed, before.words)}`];
}

function limit(figure: Figure, computed: Computed, words: Words): string {
  if (figure.result === "push.force")
    return ` (at ease up to ${words.force(computed.pushes[computed.hardestPush].limit)})`;
  if (figure.result === "swing.deadBand" && computed.latch !== null)
    return ` (the bolt needs ${words.angle(computed.latch.capture)})`;
  return "";
}
