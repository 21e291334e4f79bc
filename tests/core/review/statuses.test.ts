/** Each finding has a door that makes it ok, caution and fail, as far as it can be each: one change to the good door. */
import { expect, test } from "vitest";
import { compute } from "../../../core/review/compute.ts";
import type { FindingStatus } from "../../../core/review/finding.ts";
import { FINDING_RULES } from "../../../core/review/findings.ts";
import { words } from "../../../core/review/words.ts";
import { goodWith } from "./doors.ts";

const W = words("metric");

type Changes = Readonly<Record<string, unknown>>;
type Row = Partial<Record<FindingStatus, Changes>>;

const NONE: Changes = {};
const DULL_MAGNETS: Changes = {
  "magnets.diameter": "3 mm",
  "magnets.thickness": "1 mm",
  "magnets.gap": "2 mm",
  "magnets.remanence": "0.4 T",
};
const FEW: Changes = { magnets: undefined, damper: undefined };

/** What a status is left out for: the concern cannot be that. */
const ROWS: Readonly<Record<string, Row>> = {
  "fit.height": { ok: NONE, fail: { "opening.height": "19 cm" } },
  "fit.width": { ok: NONE, fail: { "animals.0.chestWidth": "20 cm" } },
  "fit.step": { ok: NONE, fail: { "animals.0.stepRatio": 0.3 } },
  "passage.hinge-height": { ok: NONE, fail: { "animals.0.pushHeight": "40 cm" } },
  "passage.stop-angle": { ok: NONE, fail: { "hinge.stopAngle": "50 deg" } },
  "passage.lifts-flap": { ok: NONE, caution: { "opening.sillHeight": "26 cm" } },
  "push.comfort": {
    ok: NONE,
    caution: { "animals.0.comfortablePush": "2.35 N" },
    fail: { "animals.0.comfortablePush": "1 N" },
  },
  "flap.clears-sill": { ok: NONE, caution: { "latch.distanceFromHinge": "30 cm" } },
  "latch.clears-bolt": { ok: NONE, caution: { "latch.edgeHalfWidth": "40 mm" } },
  "swing.settles": {
    ok: NONE,
    caution: { "hinge.frictionTorque": "0 N m" },
    fail: { ...FEW, "air.windSpeed": "3 m/s" },
  },
  "swing.dead-band": {
    ok: NONE,
    caution: { ...FEW, "hinge.frictionTorque": "4 mN m" },
    fail: { ...FEW, "hinge.frictionTorque": "6 mN m" },
  },
  "swing.rests-elsewhere": {
    ok: NONE,
    caution: { seal: { frictionTorque: "20 mN m", contactAngle: "6 deg" } },
    fail: { seal: { frictionTorque: "60 mN m", contactAngle: "20 deg" } },
  },
  "swing.shift": {
    ok: NONE,
    caution: { "latch.offset": "1 mm" },
    fail: { ...FEW, "opening.outOfPlumb": "1 deg" },
  },
  "wind.gust": { ok: NONE, caution: FEW },
  "magnets.centring": {
    ok: NONE,
    caution: { ...DULL_MAGNETS, "magnets.gap": "4 mm", "magnets.force": "repel" },
    fail: { "magnets.force": "repel" },
  },
  "latch.bolt-rises": { ok: NONE, caution: { "latch.springForce": "0.2 N" } },
  "latch.engagement": { ok: NONE, caution: { "latch.tipGap": "3 mm" } },
  "hold.enough": { ok: NONE, caution: { "timer.holdTime": "6.5 s" }, fail: { "timer.holdTime": "4 s" } },
  "hold.needless": { ok: NONE, caution: { "timer.holdTime": "25 s" } },
  "hold.under-animal": { ok: NONE, fail: { "timer.retriggers": false, "timer.holdTime": "3 s" } },
  "hold.restart": { ok: NONE, caution: { "timer.retriggers": false } },
  "hold.outcome": { ok: NONE, fail: { "timer.holdTime": "2.2 s" } },
  "coil.pull-in": {
    ok: NONE,
    caution: { "supply.voltage": "11.6 V" },
    fail: { "supply.voltage": "9 V" },
  },
  "coil.side-load": {
    ok: NONE,
    caution: { "animals.0.comfortablePush": "20 N" },
    fail: { "latch.sideLoad": "20 N" },
  },
  "coil.heat": {
    ok: NONE,
    caution: { "solenoid.thermalResistance": "57 K/W" },
    fail: { "solenoid.thermalResistance": "120 K/W" },
  },
  "coil.touch": { ok: NONE, caution: { "solenoid.thermalResistance": "25 K/W" } },
  "coil.clamp": { ok: NONE, fail: { "driver.clamp": "none" } },
  "coil.release": { ok: NONE, caution: { "solenoid.inductance": "30 H" } },
  "driver.base": {
    ok: NONE,
    caution: { "driver.baseResistor": "12 kohm" },
    fail: { "driver.baseResistor": "30 kohm" },
  },
  "driver.heat": { ok: NONE, caution: { "driver.dropVoltage": "12 V", "supply.voltage": "36 V" } },
  "supply.regulates": {
    ok: NONE,
    caution: { "supply.voltage": "6 V", "supply.regulator": "linear" },
    fail: { "supply.voltage": "5 V" },
  },
  "supply.regulator-heat": {
    ok: NONE,
    caution: { "supply.regulator": "linear", "supply.logicCurrent": "65 mA" },
    fail: { "supply.regulator": "linear", "supply.logicCurrent": "100 mA" },
  },
  "supply.current": {
    ok: NONE,
    caution: { "supply.currentLimit": "130 mA" },
    fail: { "supply.currentLimit": "100 mA" },
  },
  "timer.parts": {
    ok: NONE,
    caution: { "timer.resistor": "68 kohm", "timer.capacitor": "100 uF" },
  },
  "timer.leakage": {
    ok: { "timer.resistor": "47 kohm", "timer.capacitor": "10 uF" },
    caution: { "timer.resistor": "68 kohm", "timer.capacitor": "100 uF" },
    fail: { "timer.resistor": "1 Mohm", "timer.capacitor": "10 uF" },
  },
  "detection.arrival": {
    ok: NONE,
    caution: { "detection.range": "0.5 m" },
    fail: { "detection.range": "0 m" },
  },
  "magnets.swallow": { ok: DULL_MAGNETS, caution: NONE },
  "magnets.hinge-load": { ok: NONE, caution: { "magnets.gap": "1 mm", "magnets.diameter": "10 mm" } },
  "release.override": { caution: { release: { angle: "30 deg" } } },
  "missing.magnets": { ok: { magnets: undefined } },
  "missing.latch": { caution: { latch: undefined } },
  "missing.solenoid": { caution: { solenoid: undefined } },
  "missing.driver": { caution: { driver: undefined } },
  "missing.timer": { caution: { timer: undefined } },
  "missing.supply": { caution: { supply: undefined } },
  "care.power-lost": { caution: NONE },
  "care.people": { caution: NONE },
  "care.electrical": { caution: NONE },
};

const CASES = Object.entries(ROWS).flatMap(([id, row]) =>
  Object.entries(row).map(([status, changes]) => [id, status, changes] as const),
);

test.each(CASES)("%s can be %s", (id, status, changes) => {
  const rule = FINDING_RULES.find((one) => one.id === id);
  expect(rule?.judge(compute(goodWith(changes)), W)?.status).toBe(status);
});

test("every finding has its doors", () => {
  expect(Object.keys(ROWS).sort()).toEqual(FINDING_RULES.map((rule) => rule.id).sort());
});

test("a concern with nothing to judge says nothing", () => {
  const bare = compute(
    goodWith({
      magnets: undefined,
      latch: undefined,
      solenoid: undefined,
      driver: undefined,
      timer: undefined,
      supply: undefined,
    }),
  );
  const silent = FINDING_RULES.filter((rule) => rule.judge(bare, W) === null).map((rule) => rule.id);
  for (const id of [
    "swing.dead-band",
    "hold.enough",
    "coil.pull-in",
    "supply.current",
    "magnets.swallow",
    "care.power-lost",
  ]) {
    expect(silent).toContain(id);
  }
  for (const id of ["fit.height", "push.comfort", "swing.settles", "care.people"])
    expect(silent).not.toContain(id);
});

test.each([
  { ...FEW, "hinge.frictionTorque": "6 mN m" },
  { ...FEW, "opening.outOfPlumb": "1 deg" },
  { ...FEW, "air.windSpeed": "3 m/s" },
])("a flap that rests off the slot rests nowhere else: one fault is said once (%o)", (changes) => {
  const computed = compute(goodWith(changes));
  const status = (id: string) => FINDING_RULES.find((one) => one.id === id)?.judge(computed, W)?.status;
  expect([status("swing.dead-band"), status("swing.rests-elsewhere")]).toEqual(["fail", "ok"]);
});
