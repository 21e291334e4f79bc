/** A suggestion passes when a person writes its edits into the file: not by the review's own trial, but read and computed anew. */
import { expect, test } from "vitest";
import { type Computed, compute } from "../../../core/review/compute.ts";
import type { Finding } from "../../../core/review/finding.ts";
import { findings } from "../../../core/review/findings.ts";
import { type Words, words } from "../../../core/review/words.ts";
import { doorOf, REFERENCE_DOORS, referenceJson } from "../doors.ts";
import { edited, GOOD, withChanges } from "./doors.ts";

/** Spoiled one way or two; what is wrong can be put right. */
const SPOILED: Readonly<Record<string, Readonly<Record<string, unknown>>>> = {
  "too low": { "opening.height": "19 cm" },
  "too narrow": { "animals.0.chestWidth": "20 cm" },
  "high sill": { "animals.0.stepRatio": 0.3 },
  "high push": { "animals.0.pushHeight": "40 cm" },
  "early stop": { "hinge.stopAngle": "50 deg" },
  "weak animal": { "animals.0.comfortablePush": "1.6 N" },
  "strike in the sill": { "latch.distanceFromHinge": "30 cm" },
  "bolt in the sill": { "latch.distanceFromHinge": "30 cm", "latch.boltPoints": "down" },
  "edge on the sill": { "flap.bottomClearance": "0.001 mm", "flap.thickness": "12 mm" },
  "thick strike": { "latch.edgeHalfWidth": "40 mm", "solenoid.stroke": "9 mm" },
  "no magnets, stiff hinge": { magnets: undefined, damper: undefined, "hinge.frictionTorque": "6 mN m" },
  "stiff hinge": { "hinge.frictionTorque": "10 mN m", "magnets.gap": "12 mm" },
  "strong seal": { seal: { frictionTorque: "20 mN m", contactAngle: "6 deg" } },
  tilted: { magnets: undefined, damper: undefined, "opening.outOfPlumb": "-1 deg" },
  "slot off": { "latch.offset": "-2 mm" },
  "fan on": { magnets: undefined, damper: undefined, "air.pressureDifference": "0.3 Pa" },
  "in the wind": { "magnets.gap": "9 mm" },
  repelling: { "magnets.force": "repel" },
  "weak spring": { "latch.springForce": "0.2 N" },
  "no stroke to spare": { "latch.tipGap": "3 mm" },
  "short hold": { "timer.holdTime": "4 s" },
  "long hold": { "timer.holdTime": "25 s" },
  "one trigger": { "timer.retriggers": false, "timer.holdTime": "3 s" },
  "R and C too short": {
    "timer.resistor": "33 kohm",
    "timer.capacitor": "100 uF",
    "timer.holdTime": "3.6 s",
  },
  "R and C that differ": { "timer.resistor": "68 kohm", "timer.capacitor": "100 uF" },
  "leaking capacitor": {
    "timer.holdTime": "2.2 s",
    "timer.resistor": "200 kohm",
    "timer.capacitor": "10 uF",
  },
  "low supply": { "supply.voltage": "9 V" },
  "leaning dog": { "animals.0.comfortablePush": "20 N" },
  "hot coil": { "solenoid.thermalResistance": "120 K/W" },
  "warm coil": { "solenoid.thermalResistance": "25 K/W" },
  "no clamp": { "driver.clamp": "none" },
  "slow release": { "solenoid.inductance": "30 H" },
  "weak base": { "driver.baseResistor": "30 kohm" },
  "hot transistor": { "driver.dropVoltage": "12 V", "supply.voltage": "36 V" },
  "hot regulator": { "supply.regulator": "linear", "supply.logicCurrent": "100 mA" },
  "weak supply": { "supply.currentLimit": "100 mA" },
  "late detection": { "detection.range": "0.2 m" },
  "strong magnets": { "magnets.gap": "1 mm", "magnets.diameter": "10 mm" },
};

const DOORS = [
  ...REFERENCE_DOORS.map((file) => [file, referenceJson(file)] as const),
  ...Object.entries(SPOILED).map(([name, changes]) => [name, withChanges(GOOD, changes)] as const),
];

const statusOf = (all: readonly Finding[], id: string) => all.find((f) => f.id === id)?.status;
const failing = (all: readonly Finding[]) => all.filter((f) => f.status === "fail").map((f) => f.id);
const ofHold = (id: string) => id.startsWith("hold.");

/** A push that gets harder is said, with the result's own figure. */
function checkPushCost(before: Computed, after: Computed, cost: string | null, w: Words): void {
  const [from, to] = [before, after].map((c) => c.pushes[c.hardestPush].force);
  if (from === null || to === null || to <= 1.011 * from) return;
  expect(cost).toContain(`The push rises from ${w.force(from)} to ${w.force(to)}`);
}

function checkSuggestions(data: unknown, system: "metric" | "inch"): number {
  const w = words(system);
  const present = compute(doorOf(data));
  const before = findings(present, w);
  const holdWrong = failing(before).some(ofHold);
  let count = 0;
  for (const finding of before) {
    if (finding.status === "ok") expect(finding.suggestions).toEqual([]);
    for (const { label, edits, cost } of finding.suggestions) {
      count++;
      expect(finding.message.toLowerCase()).toContain(label.toLowerCase());
      expect(`${label} ${cost ?? ""}`).not.toMatch(/NaN|undefined|null|Infinity|e-\d/);
      const changed = compute(doorOf(edited(data, edits)));
      checkPushCost(present, changed, cost, w);
      const after = findings(changed, w);
      expect(statusOf(after, finding.id), `${finding.id}: ${label}`).toBe("ok");
      const fresh = failing(after).filter(
        (id) => !failing(before).includes(id) && !(holdWrong && ofHold(id)),
      );
      expect(fresh, `${finding.id}: ${label}`).toEqual([]);
    }
  }
  return count;
}

test.each(DOORS)("suggestions pass when written into the file: %s", (_, data) => {
  checkSuggestions(data, "metric");
});

test.each(DOORS.slice(-8))("in inches too: %s", (_, data) => {
  checkSuggestions(data, "inch");
});

/** The concern each spoiled door is about, and the key its first suggestion edits. */
const FIRST_WAY_OUT: readonly (readonly [string, string, string])[] = [
  ["too low", "fit.height", "opening.height"],
  ["too narrow", "fit.width", "opening.width"],
  ["high sill", "fit.step", "opening.sillHeight"],
  ["high push", "passage.hinge-height", "opening.height"],
  ["early stop", "passage.stop-angle", "hinge.stopAngle"],
  ["weak animal", "push.comfort", "flap.thickness"],
  ["strong magnets", "push.comfort", "magnets.gap"],
  ["strike in the sill", "flap.clears-sill", "latch.distanceFromHinge"],
  ["bolt in the sill", "flap.clears-sill", "latch.distanceFromHinge"],
  ["edge on the sill", "flap.clears-sill", "flap.bottomClearance"],
  ["thick strike", "latch.clears-bolt", "latch.tipGap"],
  ["no magnets, stiff hinge", "swing.dead-band", "latch.slotWidth"],
  ["stiff hinge", "swing.dead-band", "magnets.gap"],
  ["strong seal", "swing.rests-elsewhere", "seal.frictionTorque"],
  ["tilted", "swing.shift", "latch.offset"],
  ["slot off", "swing.shift", "latch.offset"],
  ["fan on", "swing.shift", "latch.offset"],
  ["in the wind", "wind.gust", "magnets.gap"],
  ["repelling", "magnets.centring", "magnets.force"],
  ["weak spring", "latch.bolt-rises", "latch.springForce"],
  ["no stroke to spare", "latch.engagement", "latch.tipGap"],
  ["short hold", "hold.enough", "timer.holdTime"],
  ["long hold", "hold.needless", "timer.holdTime"],
  ["one trigger", "hold.under-animal", "timer.retriggers"],
  ["R and C too short", "hold.enough", "timer.holdTime"],
  ["R and C that differ", "timer.parts", "timer.holdTime"],
  ["leaking capacitor", "timer.leakage", "timer.resistor"],
  ["low supply", "coil.pull-in", "supply.voltage"],
  ["leaning dog", "coil.side-load", "latch.frictionCoefficient"],
  ["hot coil", "coil.heat", "supply.voltage"],
  ["warm coil", "coil.touch", "supply.voltage"],
  ["no clamp", "coil.clamp", "driver.clamp"],
  ["slow release", "coil.release", "driver.clamp"],
  ["weak base", "driver.base", "driver.baseResistor"],
  ["hot transistor", "driver.heat", "driver.kind"],
  ["hot regulator", "supply.regulator-heat", "supply.regulator"],
  ["weak supply", "supply.current", "supply.currentLimit"],
  ["late detection", "detection.arrival", "detection.range"],
  ["strong magnets", "magnets.hinge-load", "magnets.gap"],
];

test.each(FIRST_WAY_OUT)("a way out of %s: %s by %s", (name, id, key) => {
  const all = findings(compute(doorOf(withChanges(GOOD, SPOILED[name]))), words("metric"));
  const finding = all.find((f) => f.id === id);
  expect(finding?.status).not.toBe("ok");
  expect(finding?.suggestions[0]?.edits[0]?.path, finding?.message).toBe(key);
});

test("a hot coil that does not withdraw the bolt is not to be fed less", () => {
  const weak = { "solenoid.thermalResistance": "57 K/W", "latch.springForce": "1.6 N" };
  const all = findings(compute(doorOf(withChanges(GOOD, weak))), words("metric"));
  expect(all.find((f) => f.id === "coil.pull-in")?.status).toBe("fail");
  const heat = all.find((f) => f.id === "coil.heat");
  expect(heat?.status).not.toBe("ok");
  expect(heat?.suggestions.flatMap(({ edits }) => edits.map(({ path }) => path))).not.toContain(
    "supply.voltage",
  );
});

test("magnets that pull to the centre say what they cost in push force", () => {
  const all = findings(compute(doorOf(referenceJson("06-jamb-repel"))), words("metric"));
  const turned = all.find((f) => f.id === "magnets.centring")?.suggestions[0];
  expect(turned?.edits).toEqual([{ path: "magnets.force", text: "attract" }]);
  expect(turned?.cost).toMatch(/^The push rises from 2\.22 N to [\d.]+ N \(at ease up to 4\.41 N\)/);
});
