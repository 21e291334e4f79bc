import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import type { Json } from "../../../core/door/json.ts";
import { LONGEST_FILE, readDoor } from "../../../core/door/read-door.ts";
import { doorWith, faultsWith, faultWith, textWith } from "./sample.ts";

const DEG = Math.PI / 180;

describe("a door file", () => {
  it("is read into SI, defaults filled in as the contract lists them", () => {
    expect(doorWith(["release", undefined], ["magnets.temperature", undefined])).toEqual({
      name: "Kitchen door",
      notes: "",
      animals: [
        {
          name: "Tilda",
          shoulderHeight: 0.28,
          chestWidth: 0.14,
          bodyLength: 0.46,
          mass: 4.5,
          speed: 1,
          stepRatio: 0.45,
          pushHeight: 0.9 * 0.28,
          comfortablePush: 0.1 * 4.5 * 9.80665,
        },
      ],
      opening: {
        width: 0.22,
        height: 0.31,
        sillHeight: 0.12,
        outOfPlumb: 0,
        heightMargin: 0.05,
        widthMargin: 0.05,
      },
      flap: {
        width: 0.2,
        height: 0.28,
        thickness: 0.004,
        material: "polycarbonate",
        density: 1200,
        hingeOffset: 0.01,
        bottomClearance: 0.005,
        extraMasses: [{ name: "strike", mass: 0.02, distanceFromHinge: 0.28 }],
      },
      hinge: {
        frictionTorque: 0.006,
        viscousDamping: 0.001,
        staticRatio: 1,
        stopAngle: 100 * DEG,
        stopRestitution: 0.3,
      },
      seal: { frictionTorque: 0, contactAngle: 4 * DEG },
      damper: { coefficient: 0, withinAngle: Math.PI },
      air: { density: 1.204, dragCoefficient: 1.18, swingFactor: 1, windSpeed: 0, pressureDifference: 0 },
      magnets: {
        arrangement: "jamb",
        sides: 2,
        perSide: 1,
        pitch: 0.025,
        polarity: "like",
        force: "attract",
        diameter: 0.01,
        thickness: 0.005,
        remanence: 1.3,
        gap: 0.005,
        distanceFromHinge: 0.27,
        temperature: 20,
      },
      latch: {
        boltWidth: 0.008,
        slotWidth: 0.014,
        distanceFromHinge: 0.3,
        tipGap: 0.002,
        engagement: 0.006,
        edgeHalfWidth: 0.01,
        boltMass: 0.03,
        springForce: 1,
        frictionCoefficient: 0.2,
        guideFactor: 2,
        sideLoad: 0,
        offset: 0,
        boltPoints: "up",
      },
      solenoid: {
        ratedVoltage: 24,
        ratedCurrent: 0.12,
        inductance: 0.2,
        stroke: 0.008,
        pull: [
          { stroke: 0, force: 6 },
          { stroke: 0.008, force: 1.2 },
        ],
        thermalResistance: 20,
        thermalTimeConstant: 600,
        insulationClass: "B",
        ambient: 20,
      },
      driver: {
        kind: "darlington",
        dropVoltage: 1.2,
        onResistance: null,
        currentGain: 1000,
        driveVoltage: 3.3,
        baseEmitterVoltage: 1.4,
        baseResistor: 1000,
        clamp: "diode",
        clampVoltage: 0.7,
      },
      timer: {
        holdTime: 12,
        retriggers: true,
        resistor: 110_000,
        capacitor: 1e-4,
        resistorTolerance: 0.05,
        capacitorTolerance: 0.2,
      },
      supply: {
        voltage: 24,
        currentLimit: 0.5,
        logicVoltage: 5,
        logicCurrent: 0.04,
        regulator: "linear",
        efficiency: 0.85,
        thermalResistance: 65,
        ambient: 25,
      },
      detection: { range: 3, farSideRange: 0, pulseInterval: 1 },
      release: { angle: null, speed: 0 },
      study: {
        reliability: 0.999,
        margin: 0.2,
        tolerances: new Map([["hinge.frictionTorque", { shape: "normal", twoSigma: 0.3, relative: true }]]),
      },
    });
  });

  it("needs no more than animals, opening, flap and hinge", () => {
    const optional = ["seal", "damper", "air", "magnets", "latch", "solenoid", "driver", "timer", "supply"];
    const door = doorWith(
      ...[...optional, "detection", "release", "study", "name"].map((key) => [key, undefined] as const),
    );
    const { magnets, latch, solenoid, driver, timer, supply } = door;
    expect({ magnets, latch, solenoid, driver, timer, supply }).toEqual({
      magnets: null,
      latch: null,
      solenoid: null,
      driver: null,
      timer: null,
      supply: null,
    });
    expect(door.name).toBe("Unnamed door");
    expect(door.detection.range).toBe(3);
    expect(door.study.tolerances.size).toBe(0);
  });

  it("reads the doors of the reference", () => {
    const folder = new URL("../../reference/model/doors/", import.meta.url);
    const names = readdirSync(folder).filter((name) => name.endsWith(".door.json"));
    expect(names.length).toBeGreaterThan(30);
    for (const name of names) {
      const read = readDoor(readFileSync(new URL(name, folder), "utf8"));
      expect(read.ok ? [] : read.errors, name).toEqual([]);
    }
  });

  it("is the same door, to the bit, in inches and pound-forces", () => {
    const metric = textWith(["hinge.frictionTorque", "7.06155181422604375 mN m"]);
    const inches = metric
      .replace("7.06155181422604375 mN m", "1 ozf in")
      .replace(/"(\d+) (mm|cm)"/g, (_, size, unit) => `"${Number(size) * (unit === "cm" ? 50 : 5)}/127 in"`);
    expect(inches).not.toMatch(/\d (mm|cm)"/);
    const a = readDoor(metric);
    const b = readDoor(inches);
    expect(b.ok && b.door).toEqual(a.ok && a.door);
  });

  it("takes defaults that hang on other keys", () => {
    expect(doorWith(["animals.0.pushHeight", "20 cm"]).animals[0].pushHeight).toBe(0.2);
    expect(doorWith(["animals.0.name", undefined]).animals[0].name).toBe("Animal 1");
    expect(doorWith(["flap.extraMasses.0.name", undefined]).flap.extraMasses[0].name).toBe("Mass 1");
    expect(doorWith(["flap.material", "birch plywood"]).flap.density).toBe(690);
    expect(doorWith(["flap.density", "1 g/cm^3"]).flap).toMatchObject({ material: "", density: 1000 });
    const own = doorWith(["flap.material", "larch"], ["flap.density", "550 kg/m^3"]).flap;
    expect(own).toMatchObject({ material: "larch", density: 550 });
    expect(
      doorWith(["timer.resistor", undefined], ["timer.capacitor", undefined]).timer?.resistor,
    ).toBeNull();
    expect(doorWith(["driver.kind", "mosfet"], ["driver.onResistance", "80 mohm"]).driver?.onResistance).toBe(
      0.08,
    );
  });

  it("has no magnets where the arrangement is none, and still looks at their keys", () => {
    expect(doorWith(["magnets.arrangement", "none"]).magnets).toBeNull();
    expect(doorWith(["magnets", {}]).magnets).toBeNull();
    expect(faultWith(["magnets", { arrangement: "none", gap: "5 kg" }]).path).toBe("magnets.gap");
  });
});

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
});

describe("text that is no door", () => {
  const message = (text: string) => {
    const read = readDoor(text);
    return read.ok ? "" : read.errors.map((fault) => fault.message).join("\n");
  };

  it("is told where it breaks", () => {
    expect(message(textWith().slice(0, 300))).toMatch(/^file: line \d+, column \d+: /);
    expect(message("")).toContain("line 1, column 1");
    expect(message("[]")).toContain("expected a door file");
    expect(message("null")).toContain("expected a door file");
  });

  it("is refused by size before it is read", () => {
    expect(message("[".repeat(50_000_000))).toContain("the file is too large");
    expect(message(`"${" ".repeat(LONGEST_FILE - 2)}"`)).toContain("expected a door file");
  });

  it("loses no key to a second one of the same name", () => {
    const twice = textWith().replace('"width": "22 cm"', '"width": "22 cm", "width": "25 cm"');
    const read = readDoor(twice);
    expect(read.ok ? [] : read.errors.map(({ path }) => path)).toEqual(["opening.width"]);
  });

  it("takes a byte order mark and other line ends", () => {
    const text = `\ufeff${textWith().replaceAll("\n", "\r\n")}`;
    const read = readDoor(text);
    expect(read.ok && read.file.text).toBe(text);
  });

  it("cannot reach the prototypes", () => {
    const text = textWith().replace(
      '"seal": {}',
      '"seal": {"__proto__": {"a": 1}, "constructor": 1, "toString": 2}',
    );
    const read = readDoor(text);
    expect(read.ok ? [] : read.errors.map(({ path }) => path)).toEqual([
      "seal.__proto__",
      "seal.constructor",
      "seal.toString",
    ]);
    expect(({} as Record<string, unknown>).a).toBeUndefined();
  });

  it("with unknown keys by the hundred thousand is refused in few words", () => {
    const keys = Array.from({ length: 100_000 }, (_, i) => `"k${i}": 1`).join(",");
    const read = readDoor(textWith().replace('"seal": {}', `"seal": {${keys}}`));
    expect(read.ok ? 0 : read.errors.length).toBeLessThan(100);
  });
});
