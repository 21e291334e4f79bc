/** What to buy and make, in generic terms, with the values that matter. */

import { ratedForce } from "../parts/solenoid.ts";
import { STANDARD_GRAVITY } from "../quantity/constants.ts";
import { timerParts } from "../review/suggest-timer.ts";
import { gradeFor } from "./grades.ts";
import { holdToSet, type SheetInput } from "./sheet-input.ts";
import { oneShotOf } from "./wiring-timer.ts";
import { CONTROL_CAPACITOR, GATE_PULL_DOWN, TRIGGER_PULL_UP, wiringValues } from "./wiring-values.ts";

export interface Part {
  readonly count: string;
  readonly name: string;
  readonly values: string;
}

/** A transistor and a diode are chosen for this many times what they carry (common practice, no source). */
const RESERVE = 2;

/** To two figures, upwards: a rating is not computed finer. */
function upwards(value: number): number {
  const step = 10 ** (Math.floor(Math.log10(value)) - 1);
  return Math.ceil(value / step - 1e-9) * step;
}

/** In the order one builds: flap, frame, latch, electronics. */
export function partsList(input: SheetInput): Part[] {
  return [
    ...flapParts(input),
    ...magnetParts(input),
    ...latchParts(input),
    ...coilParts(input),
    ...timerRows(input),
    ...supplyParts(input),
    ...smallParts(input),
  ];
}

const part = (count: number | string, name: string, values: string): Part => ({
  count: String(count),
  name,
  values,
});

function flapParts({ door, sizes, words: w, computed }: SheetInput): Part[] {
  const { flap, hinge, seal, damper } = door;
  const long = (metres: number) => sizes.long(metres * 1000);
  const material = flap.material === "" ? "sheet" : flap.material;
  const rows = [
    part(
      1,
      "flap",
      `${material}, ${long(flap.width)} × ${long(flap.height)} × ${long(flap.thickness)}, ${w.mass(computed.body.plateMass)} at ${w.of(flap.density, "density")}`,
    ),
    ...flap.extraMasses.map((mass) =>
      part(
        1,
        mass.name,
        `${w.mass(mass.mass)}, its centre ${long(mass.distanceFromHinge)} below the hinge axis`,
      ),
    ),
    part(
      1,
      "hinge, along the top edge",
      `carries ${w.mass(computed.body.mass)} (${w.force(computed.body.mass * STANDARD_GRAVITY)}); dry friction ${w.torque(hinge.frictionTorque)}, damping ${w.damping(hinge.viscousDamping)}; axis ${long(flap.hingeOffset)} above the flap`,
    ),
    part(2, "stop", `soft, holds the flap at ${w.angle(hinge.stopAngle)} to either side`),
  ];
  if (seal.frictionTorque > 0) {
    rows.push(
      part(
        1,
        "seal, brush or lip",
        `${w.torque(seal.frictionTorque)} of drag, touching up to ${w.angle(seal.contactAngle)}`,
      ),
    );
  }
  if (damper.coefficient > 0) {
    rows.push(
      part(
        1,
        "damper",
        `${w.damping(damper.coefficient)} within ${w.angle(damper.withinAngle)} of closed; rotary, or an eddy-current plate`,
      ),
    );
  }
  return rows;
}

function magnetParts({ door, plan, sizes, words: w }: SheetInput): Part[] {
  const { magnets } = door;
  if (magnets === null) return [];
  const grade = gradeFor(magnets.remanence);
  const [first] = plan.pockets;
  const polarity = `half of them in the flap, half in the frame, ${magnets.force === "attract" ? "unlike" : "like"} poles facing${magnets.polarity === "alternating" ? ", turned over from one row to the next" : ""} (arrows on the template)`;
  const rows = [
    part(
      plan.pockets.length,
      "disc magnet",
      `Ø ${sizes.long(first.diameter)} × ${sizes.long(first.thickness)}, magnetised through its thickness, ${w.of(magnets.remanence, "fluxDensity")}${grade === null ? "" : `, as grade ${grade}`}; ${polarity}`,
    ),
  ];
  if (plan.cheeks.length > 0) {
    const { left, right, top, bottom, thickness } = plan.cheeks[0];
    rows.push(
      part(
        2 * plan.cheeks.length,
        "cheek around a magnet",
        `${sizes.long(right - left)} × ${sizes.long(bottom - top)} × ${sizes.long(thickness)}, the flap's material; their mass is not in the computation unless the file names it`,
      ),
    );
  }
  return rows;
}

function latchParts({ door, plan, sizes, words: w }: SheetInput): Part[] {
  const { latch } = door;
  const { bolt, strike } = plan;
  if (latch === null || bolt === null || strike === null) return [];
  const rows = [
    part(
      1,
      "bolt",
      `${sizes.long(bolt.width)} wide along the swing, ${w.mass(latch.boltMass)} with plunger and link, points ${latch.boltPoints}`,
    ),
    part(
      1,
      "bolt spring",
      `${w.force(latch.springForce)}, mean over ${sizes.long(bolt.stroke)}; it extends the bolt`,
    ),
    part(1, "bolt guide", `bore ${sizes.long(bolt.guideBore)}, smooth`),
  ];
  if (!strike.inFlap) {
    rows.push(
      part(
        1,
        "strike",
        `${sizes.long(strike.length)} long, ${sizes.long(2 * strike.halfThickness)} along the swing, with a slot ${sizes.long(strike.slotLength)} × ${sizes.long(strike.slotWidth)}, ${sizes.long(strike.slotDepth)} deep`,
      ),
    );
  }
  return rows;
}

function coilParts({ door, computed, sizes, words: w }: SheetInput): Part[] {
  const { solenoid, driver, supply } = door;
  const rows: Part[] = [];
  if (solenoid !== null) {
    const full = ratedForce(solenoid.pull, solenoid.stroke);
    const seated = ratedForce(solenoid.pull, 0);
    rows.push(
      part(
        1,
        "solenoid, pull type",
        `${w.voltage(solenoid.ratedVoltage)}, ${w.current(solenoid.ratedCurrent)} (${w.resistance(solenoid.ratedVoltage / solenoid.ratedCurrent)} at ${w.temperature(20)}), stroke ${sizes.long(solenoid.stroke * 1000)}, pull ${w.force(full)} at full stroke and ${w.force(seated)} seated, insulation class ${solenoid.insulationClass}`,
      ),
    );
  }
  if (driver === null) return rows;
  const current = computed.solenoid?.coil?.current ?? solenoid?.ratedCurrent ?? null;
  const volts = supply?.voltage ?? solenoid?.ratedVoltage ?? null;
  const amperes = current === null ? "" : `, ${w.current(upwards(RESERVE * current))} or more`;
  const withstands = volts === null ? "" : `, ${w.voltage(upwards(RESERVE * volts))} or more`;
  if (driver.kind === "mosfet") {
    const on = driver.onResistance === null ? "" : `, at most ${w.resistance(driver.onResistance)} when on`;
    rows.push(
      part(
        1,
        "transistor",
        `n-channel MOSFET, fully on at ${w.voltage(driver.driveVoltage)}${on}${withstands}${amperes}`,
      ),
    );
  } else {
    rows.push(
      part(
        1,
        "transistor",
        `npn Darlington, gain at least ${w.number(driver.currentGain)}, drop about ${w.voltage(driver.dropVoltage)}${withstands}${amperes}`,
      ),
      part(1, "base resistor", w.resistance(driver.baseResistor)),
    );
  }
  rows.push(clampPart(driver, amperes, withstands, w));
  return rows;
}

function clampPart(
  driver: NonNullable<SheetInput["door"]["driver"]>,
  amperes: string,
  withstands: string,
  w: SheetInput["words"],
): Part {
  if (driver.clamp === "none") {
    return part(
      0,
      "clamp across the coil",
      "the file has none: add a diode across the coil before switching it once",
    );
  }
  if (driver.clamp === "diode") {
    return part(1, "clamp diode", `silicon, across the coil, cathode to the supply${withstands}${amperes}`);
  }
  return part(
    1,
    "clamp, zener and diode",
    `together ${w.voltage(driver.clampVoltage)} across the coil${amperes}; the transistor sees the supply and this on top`,
  );
}

function timerRows(input: SheetInput): Part[] {
  const { door, computed, words: w } = input;
  const { timer } = door;
  if (timer === null || computed.timer === null) return [];
  const kind = timer.retriggers ? "each pulse starts it anew" : "one trigger, then it runs out";
  const hold = holdToSet(input);
  const rows = [
    part(1, "timer", `${kind}; ${hold === null ? "no hold is sure" : `to be set to ${w.time(hold.time)}`}`),
  ];
  if (timer.resistor !== null && timer.capacitor !== null) {
    rows.push(
      part(
        1,
        "timing resistor, as in the file",
        `${w.resistance(timer.resistor)}, ${w.ratio(timer.resistorTolerance)}`,
      ),
      part(
        1,
        "timing capacitor, as in the file",
        `${w.capacitance(timer.capacitor)}, ${w.ratio(timer.capacitorTolerance)}`,
      ),
    );
  }
  const made = hold === null ? null : timerParts(computed, hold.time);
  if (made === null) return rows;
  const { resistor, trimmer, capacitor, trimmerSetting, trimsFrom, trimsTo, leakage } = made.parts;
  rows.push(
    part(1, "if a one-shot: resistor", `${w.resistance(resistor)} (E24)`),
    part(
      1,
      "if a one-shot: trimmer",
      `${w.resistance(trimmer)} in series, at ${w.resistance(trimmerSetting)} (${w.ratio(trimmerSetting / trimmer)} of its turn) with parts as printed; reaches ${w.time(trimsFrom)} to ${w.time(trimsTo)} whatever the parts' tolerances`,
    ),
    part(
      1,
      "if a one-shot: capacitor",
      `${w.capacitance(capacitor)} (E6)${leakage.enough ? "" : ", film or low leakage: an ordinary electrolytic leaks too much, a counter is surer"}`,
    ),
  );
  return rows;
}

function supplyParts({ door, computed, words: w }: SheetInput): Part[] {
  const { supply, detection } = door;
  const rows: Part[] = [];
  if (supply !== null) {
    const draws = computed.supply?.current ?? null;
    rows.push(
      part(
        1,
        "supply",
        `listed, limited-energy adapter, ${w.voltage(supply.voltage)} DC, ${w.current(supply.currentLimit)}${draws === null ? "" : ` (the door draws ${w.current(draws)})`}`,
      ),
      part(
        1,
        "regulator",
        `${supply.regulator}, ${w.voltage(supply.voltage)} to ${w.voltage(supply.logicVoltage)}, ${w.current(upwards(RESERVE * supply.logicCurrent))} or more`,
      ),
    );
  }
  if (door.latch === null && door.timer === null) return rows;
  rows.push(
    part(
      1,
      "receiver and tag",
      `notices the animal from ${w.length(detection.range)}, a pulse every ${w.time(detection.pulseInterval)}; a tag for each animal`,
    ),
  );
  return rows;
}

/** What the wiring diagram adds to the file's parts. */
function smallParts(input: SheetInput): Part[] {
  const { door, computed, words: w } = input;
  if (door.solenoid === null && door.supply === null && door.timer === null) return [];
  const { fuse, lampResistor } = wiringValues(computed);
  const rows: Part[] = [];
  if (fuse !== null) rows.push(part(1, "fuse", `time-lag, ${w.current(fuse)}, between adapter and door`));
  if (lampResistor !== null) {
    rows.push(
      part(1, "indicator", `red LED with ${w.resistance(lampResistor)} in series, lit while the coil is on`),
    );
  }
  if (door.driver?.kind === "mosfet") {
    rows.push(
      part(
        1,
        "gate resistor to 0 V",
        `${w.resistance(GATE_PULL_DOWN)}: keeps the coil off while the logic starts`,
      ),
    );
  }
  if (oneShotOf(input) !== null) {
    const restart =
      door.timer?.retriggers === true ? "; a small pnp transistor restarts it at each pulse" : "";
    rows.push(
      part(
        1,
        "one-shot",
        `the common eight-pin timer chip, ${w.resistance(TRIGGER_PULL_UP)} at its trigger, ${w.capacitance(CONTROL_CAPACITOR)} at its control pin${restart}`,
      ),
    );
  }
  return rows;
}
