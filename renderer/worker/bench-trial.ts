/** A trial on the bench as the worker answers it: what to expect, what the measured swing tells, the limits. */
import type { Door } from "../../core/door/door.ts";
import { readDoor } from "../../core/door/read-door.ts";
import { temperatureAfter } from "../../core/parts/coil-heating.ts";
import { HEATING_TIME, thermalResistanceFrom } from "../../core/parts/coil-trial.ts";
import { CLASS_LIMIT, heatedCoil, TOUCH_CAUTION } from "../../core/parts/solenoid.ts";
import { type Computed, compute } from "../../core/review/compute.ts";
import { forceWords } from "../../core/sheet/bench-card.ts";
import { benchLimits, handAngle } from "../../core/sheet/bench-limits.ts";
import { fitSwing } from "../../core/study/fit/fit.ts";
import type { Count } from "../../core/study/fit/fit-types.ts";
import { readMeasured } from "../../core/study/fit/measured.ts";
import { Motion } from "../../core/swing/motion.ts";
import { SwingRun } from "../../core/swing/swing.ts";
import { Trace } from "../../core/swing/trace.ts";
import { countOf, readTrial, type TrialReadings } from "../state/trial-readings.ts";
import type {
  Expected,
  ExpectedCoil,
  ExpectedPull,
  ExpectedPush,
  FitAnswer,
  FitOrder,
} from "./fit-messages.ts";

/** What is quick comes first. */
export function* benchTrial(order: FitOrder): Generator<FitAnswer> {
  const read = readDoor(order.text);
  if (!read.ok) return yield { kind: "refused", reasons: read.errors.map(({ message }) => message) };
  const computed = compute(read.door);
  const bench = { reach: computed.body.reach, latch: computed.latch !== null };
  const readings = readTrial(order.texts, bench);
  const expected = expectedOf(computed, readings.values);
  yield { kind: "expected", expected, readings };
  if (order.fit) yield* fitOf(read.door, order.csv, countOf(readings, expected.letGo, bench));
  if (order.limits && expected.asOnCard) yield { kind: "limits", limits: benchLimits(computed).sampled };
  yield { kind: "done" };
}

function* fitOf(door: Door, csv: string | null, count: Count | null): Generator<FitAnswer> {
  if (csv !== null) {
    const read = readMeasured(csv);
    if (!read.ok) return yield { kind: "unreadable", reasons: read.errors.map(({ message }) => message) };
    yield { kind: "fit", fit: fitSwing(door, read.measured), gaps: read.gaps };
  } else if (count !== null) yield { kind: "fit", fit: fitSwing(door, { kind: "count", count }), gaps: 0 };
}

/** A let-go beyond the stops is not computed: the fit says what is wrong with it. */
function expectedOf(computed: Computed, measured: TrialReadings["values"]): Expected {
  const { door, system, deadBand, latch, body, timer } = computed;
  const card = handAngle(door.hinge.stopAngle);
  const asked = measured.letGo;
  const letGo = asked !== undefined && asked <= door.hinge.stopAngle ? asked : card;
  const swing = new SwingRun(new Motion(), new Trace()).run(system, letGo, 0);
  return {
    letGo,
    asOnCard: Math.abs(Math.abs(letGo) - card) < 1e-6,
    passes: swing.centrePasses,
    settle: swing.settleTime,
    // Faded is as still as a person sees.
    still: swing.restTime ?? (swing.status === "faded" ? swing.endTime : null),
    offCentre: deadBand,
    capture: latch?.capture ?? null,
    reach: body.reach,
    push: expectedPush(computed),
    pull: expectedPull(computed),
    coil: expectedCoil(computed, measured),
    hold:
      timer === null ? null : { nominal: timer.nominal, shortest: timer.shortest, longest: timer.longest },
  };
}

function expectedPush({ door, pushes, hardestPush }: Computed): ExpectedPush | null {
  const { force, limit } = pushes[hardestPush];
  const { name, pushHeight } = door.animals[hardestPush];
  if (force === null) return null;
  return {
    animal: name,
    height: pushHeight,
    force,
    words: inBoth(force),
    limit,
    limitWords: inBoth(limit),
  };
}

const inBoth = (force: number) => ({ metric: forceWords(force, "metric"), inch: forceWords(force, "inch") });

function expectedPull({ door, solenoid }: Computed): ExpectedPull | null {
  const bolt = solenoid?.bolt ?? null;
  if (bolt === null || door.supply === null) return null;
  const { pullInLow } = bolt;
  return { low: pullInLow.supplyVoltage, atLow: pullInLow.pullsIn, from: solenoid?.pullInVoltage ?? null };
}

function expectedCoil(
  { door }: Computed,
  { room, coil: read }: TrialReadings["values"],
): ExpectedCoil | null {
  const { solenoid, driver, supply } = door;
  if (solenoid === null || driver === null || supply === null) return null;
  const heated = { ...heatedCoil(solenoid, driver, supply.voltage), ambient: room ?? solenoid.ambient };
  return {
    ambient: heated.ambient,
    hot: temperatureAfter(heated, HEATING_TIME),
    insulation: solenoid.insulationClass,
    limit: CLASS_LIMIT[solenoid.insulationClass],
    touch: TOUCH_CAUTION,
    thermalResistance: solenoid.thermalResistance,
    measuredResistance: read === undefined ? null : thermalResistanceFrom(heated, HEATING_TIME, read),
  };
}
