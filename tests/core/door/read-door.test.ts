import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { LONGEST_FILE, readDoor } from "../../../core/door/read-door.ts";
import { doorWith, faultWith, textWith } from "./sample.ts";

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
