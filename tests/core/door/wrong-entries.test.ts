/** Entries that a door cannot have: one fault each, at its key's path, all of a file at once. */
import { describe, expect, it } from "vitest";
import type { Json } from "../../../core/door/json.ts";
import { faultsWith, faultWith } from "./sample.ts";

// One entry wrong, one fault at its path, with words from the message.
const WRONG: [path: string, entry: Json | undefined, words: string, at?: string][] = [
  [
    "opening.width",
    22,
    'a plain number has no unit; given 22, expected a length, such as "39 cm" or "12 in", in quotes',
  ],
  ["opening.width", "22", "the unit is missing"],
  ["opening.width", "22 kg", '"kg" is a mass, not a length'],
  ["opening.width", "NaN cm", "not a finite number"],
  ["opening.width", "", "the text is empty"],
  ["opening.width", "1,5 cm", "a point, not a comma"],
  ["opening.width", "-22 cm", 'given "-22 cm", expected a length from 0.001 mm to 100 m'],
  ["opening.width", "0 cm", "expected a length from"],
  ["opening.width", null, "given null"],
  ["opening.width", ["22 cm"], "given a list"],
  ["opening.width", undefined, "this key is required"],
  ["opening.sillHeight", "-1 mm", "expected a length from 0 mm"],
  ["opening.outOfPlumb", "46 deg", "expected an angle from -45° to 45°"],
  ["opening.wdith", "22 cm", 'the nearest is "width"'],
  ["opening.gap", "5 mm", '"gap" belongs to "magnets"'],
  ["opening", [], "given an empty list, expected a section { … }"],
  ["opening", "wide", "expected a section { … }"],
  ["opening", undefined, "this section is required"],
  ["animals", {}, "expected a list [ … ]"],
  ["animals", [], "at least 1 animal"],
  ["animals.0", "Tilda", "expected a section { … }"],
  ["animals.0.mass", "0 kg", "expected a mass from"],
  ["animals.0.speed", "0 m/s", "expected a speed from"],
  ["animals.0.stepRatio", "0.45", "this is a plain number, without a unit and without quotes"],
  ["animals.0.stepRatio", -0.1, "expected a number from 0"],
  ["animals.0.name", 7, "a text in quotes"],
  ["animals.0.name", "Til\u001b[31mda", "without control characters"],
  ["flap.material", "cardboard", "the material is not known"],
  ["flap.material", "", "the material is not known"],
  ["flap.density", "0 kg/m^3", "expected a density from"],
  ["flap.extraMasses", "none", "expected a list"],
  ["flap.extraMasses.0.mass", "-1 g", "expected a mass from 0 g"],
  ["flap.extraMasses.0.distanceFromHinge", undefined, "this key is required"],
  ["hinge.frictionTorque", "-1 mN m", "expected a torque from 0 mN m"],
  ["hinge.frictionTorque", "6 N", '"N" is a force, not a torque'],
  ["hinge.staticRatio", 0.9, "expected a number from 1"],
  ["hinge.stopAngle", "0 deg", "expected an angle from"],
  ["hinge.stopAngle", "180 deg", "to below 180°"],
  ["hinge.stopAngle", "100", "the unit is missing"],
  ["hinge.stopRestitution", 1.01, "expected a number from 0 to 1"],
  ["seal.contactAngle", "-1 deg", "expected an angle from 0°"],
  ["damper.coefficient", "-1 N m s/rad", "expected an angular damping from"],
  ["air.swingFactor", -1, "expected a number from 0"],
  ["air.dragCoefficient", -1, "expected a number from 0"],
  ["magnets.arrangement", "wall", 'expected "none", "jamb" or "sill"'],
  ["magnets.sides", 0, "expected a whole number from 1"],
  ["magnets.sides", 1.5, "expected a whole number from 1"],
  ["magnets.sides", 3, "a flap has two side edges"],
  ["magnets.gap", "0 mm", "expected a length from"],
  ["magnets.gap", undefined, 'this key is required because arrangement is "jamb"'],
  ["magnets.remanence", "13 T", "expected a flux density from"],
  ["magnets.temperature", "-300 degC", "expected a temperature from -273 °C"],
  ["magnets.distanceFromHinge", "30 cm", "below the flap's bottom edge"],
  ["latch.slotWidth", "8 mm", "the bolt does not fit into the slot"],
  ["latch.edgeHalfWidth", "6.9 mm", "the slot is wider than the edge"],
  ["latch.engagement", "6.1 mm", "does not pull the bolt clear", "solenoid.stroke"],
  ["latch.distanceFromHinge", "34.1 cm", "out of the flap's reach"],
  ["latch.springForce", "0.29 N", "the bolt never rises"],
  ["latch.offset", "-30 cm", "too near the hinge for its offset", "latch.distanceFromHinge"],
  ["latch.guideFactor", 0.5, "expected a number from 1"],
  ["latch.boltPoints", "left", 'expected "up" or "down"'],
  ["latch", null, "given null"],
  ["solenoid.inductance", undefined, "this key is required"],
  ["solenoid.insulationClass", "C", '"A", "E", "B", "F" or "H"'],
  ["solenoid.pull", [["0 mm", "6 N"]], "at least 2 pairs [stroke, force]"],
  ["solenoid.pull", undefined, "at least 2 pairs"],
  ["solenoid.pull", "6 N", "a list of at least 2 pairs"],
  ["solenoid.pull.1", ["8 mm"], "a pair [stroke, force]"],
  ["solenoid.pull.1", "8 mm", "a pair [stroke, force]"],
  ["solenoid.pull.1.0", "0 mm", "a stroke above the one before it"],
  ["solenoid.pull.1.1", "0 N", "expected a force from"],
  ["solenoid.pull.1.1", 1.2, "a plain number has no unit"],
  ["driver.kind", "mosfet", 'required because kind is "mosfet"', "driver.onResistance"],
  ["driver.clampVoltage", "0 V", "since the clamp is a diode"],
  ["timer.resistor", undefined, "both or neither"],
  ["timer.capacitor", undefined, "both or neither"],
  ["timer.retriggers", "yes", "true or false"],
  ["timer.resistorTolerance", "5", "the percent sign is missing"],
  ["timer.resistorTolerance", 5, "expected a percentage from 0 % to below 100 %"],
  ["supply.efficiency", 0, "expected a number from"],
  ["supply.efficiency", 1.1, "expected a number from"],
  ["detection.pulseInterval", "0 s", "expected a time from"],
  ["release.angle", "101 deg", "at most the stop angle, 100°"],
  ["release.angle", "-101 deg", "at most the stop angle, 100°"],
  ["study.reliability", 0.49, "expected a number from 0.5 to below 1"],
  ["study.reliability", 1, "expected a number from 0.5 to below 1"],
  ["study.margin", -0.1, "expected a number from 0"],
  ["study.margin", "20 %", "this is a plain number"],
  ["format", "other-door", "this is not a door file"],
  ["version", "1", "a version number, 1"],
  ["version", 1.5, "a version number, 1"],
  ["version", 2, "made by a newer Swingstill"],
  ["version", undefined, "given nothing"],
  ["name", 5, "a text in quotes"],
  ["latches", {}, 'the nearest is "latch"'],
  ["wingspan", {}, "expected one of format, version, name"],
];

describe("a wrong entry", () => {
  it.each(WRONG)("%s = %j is one fault: %s", (path, entry, words, at = path) => {
    const fault = faultWith([path, entry]);
    expect(fault.path).toBe(at);
    expect(fault.message).toContain(words);
    expect(fault.message.startsWith(`${at}: `)).toBe(true);
    expect(fault.message).toContain(`given ${fault.given}, expected ${fault.expected}.`);
  });

  it("at the edge of what is allowed is none", () => {
    expect(faultsWith(["latch.edgeHalfWidth", "7 mm"], ["latch.distanceFromHinge", "34 cm"])).toEqual([]);
    expect(faultsWith(["hinge.stopRestitution", 1], ["hinge.stopRestitution", 0])).toEqual([]);
    expect(faultsWith(["release.angle", "-100 deg"], ["supply.efficiency", 1])).toEqual([]);
    expect(faultsWith(["driver.clamp", "none"], ["driver.clampVoltage", "0 V"])).toEqual([]);
    expect(faultsWith(["latch.boltPoints", "down"], ["latch.springForce", "0 N"])).toEqual([]);
    expect(faultsWith(["timer.resistorTolerance", 0.05])).toEqual([]);
  });

  it("is told with all the others at once", () => {
    const faults = faultsWith(
      ["opening.width", 22],
      ["flap.hieght", "5 cm"],
      ["animals.0.mass", "4 m"],
      ["latch.slotWidth", "7 mm"],
      ["timer.resistor", undefined],
      ["study.tolerances", { "hinge.frctionTorque": "3 %" }],
    );
    expect(faults.map(({ path }) => path).sort()).toEqual([
      "animals.0.mass",
      "flap.hieght",
      "latch.slotWidth",
      "opening.width",
      "study.tolerances.hinge.frctionTorque",
      "timer.resistor",
    ]);
  });

  it("does not draw others after it", () => {
    expect(faultWith(["latch.boltWidth", "wide"]).path).toBe("latch.boltWidth");
    expect(faultWith(["flap.height", 28]).path).toBe("flap.height");
    expect(faultWith(["animals.0.shoulderHeight", "tall"]).path).toBe("animals.0.shoulderHeight");
    expect(faultWith(["magnets", "none"]).path).toBe("magnets");
    expect(faultWith(["latch", 3]).path).toBe("latch");
    expect(faultWith(["solenoid", false]).path).toBe("solenoid");
    expect(faultWith(["flap.density", "wood"], ["flap.material", "larch"]).path).toBe("flap.density");
  });
});

describe("magnets that do not fit", () => {
  it("overlap, leave the flap, or stack in the sill", () => {
    expect(faultWith(["magnets.perSide", 2], ["magnets.pitch", "9 mm"]).message).toContain(
      "the magnets overlap",
    );
    expect(faultsWith(["magnets.perSide", 2], ["magnets.pitch", "10 mm"])).toEqual([]);
    expect(faultWith(["magnets.perSide", 12]).message).toContain("ends above the hinge");
    expect(faultsWith(["magnets.perSide", 11])).toEqual([]);
    expect(faultWith(["magnets.arrangement", "sill"], ["magnets.perSide", 2]).path).toBe("magnets.perSide");
    expect(faultsWith(["magnets.arrangement", "sill"], ["magnets.sides", 5])).toEqual([]);
  });

  it("strike each other in the sill, where the trailing edge swings deepest", () => {
    // A disc of 10 mm whose face hangs 27 cm below the hinge: √(270² + 5²) − 270 = 0.0463 mm.
    const sill = ["magnets.arrangement", "sill"] as const;
    const fault = faultWith(sill, ["magnets.gap", "0.046 mm"]);
    expect(fault.path).toBe("magnets.gap");
    expect(fault.message).toContain(
      "the flap's magnet strikes the sill's; given 0.046 mm, expected more than the 0.0462",
    );
    expect(faultsWith(sill, ["magnets.gap", "0.0463 mm"])).toEqual([]);
    expect(faultsWith(["magnets.gap", "0.046 mm"])).toEqual([]);
  });
});
