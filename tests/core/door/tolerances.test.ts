import { describe, expect, it } from "vitest";
import type { Json } from "../../../core/door/json.ts";
import { doorWith, faultsWith, faultWith } from "./sample.ts";

const tolerance = (key: string, entry: Json) =>
  doorWith(["study.tolerances", { [key]: entry }]).study.tolerances.get(key);
const fault = (key: string, entry: Json) => faultWith(["study.tolerances", { [key]: entry }]);

const normal = (twoSigma: number, relative = false) => ({ shape: "normal", twoSigma, relative });

describe("tolerances", () => {
  it.each<[string, Json, unknown]>([
    ["hinge.frictionTorque", "30 %", normal(0.3, true)],
    ["hinge.frictionTorque", "± 2 mN m", normal(0.002)],
    ["magnets.gap", "0.5 mm", normal(0.0005)],
    ["magnets.gap", "0 mm", normal(0)],
    ["magnets.temperature", "9 degF", normal(5)],
    ["magnets.temperature", "5 K", normal(5)],
    ["opening.outOfPlumb", "0.5 deg", normal(0.5 * (Math.PI / 180))],
    ["air.swingFactor", "0.2", normal(0.2)],
    ["air.swingFactor", 0.2, normal(0.2)],
    ["air.swingFactor", "20 %", normal(0.2, true)],
    ["release.angle", "10 %", normal(0.1, true)],
    ["animals.0.speed", "30 %", normal(0.3, true)],
    ["flap.extraMasses.0.mass", "1 g", normal(0.001)],
    ["solenoid.pull.1.1", "10 %", normal(0.1, true)],
    [
      "air.swingFactor",
      { low: 0, high: 2, shape: "uniform" },
      { shape: "uniform", low: 0, high: 2, relative: false },
    ],
    ["air.swingFactor", { low: 0, high: 2 }, { shape: "uniform", low: 0, high: 2, relative: false }],
    [
      "magnets.gap",
      { low: "-1 mm", high: "0.5 mm", shape: "triangular" },
      { shape: "triangular", low: -0.001, high: 0.0005, relative: false },
    ],
    [
      "timer.resistor",
      { low: "-1 %", high: "1 %", shape: "normal" },
      { shape: "normal", low: -0.01, high: 0.01, relative: true },
    ],
  ])("%s: %j is read", (key, entry, read) => expect(tolerance(key, entry)).toEqual(read));

  it("of the let-go angle need no release section", () => {
    const door = doorWith(["release", undefined], ["study.tolerances", { "release.angle": "3 deg" }]);
    expect(door.study.tolerances.has("release.angle")).toBe(true);
  });

  it("of a section left out stand ready for it", () => {
    const door = doorWith(["magnets", undefined], ["study.tolerances", { "magnets.gap": "0.5 mm" }]);
    expect(door.study.tolerances.has("magnets.gap")).toBe(true);
  });

  it.each<[string, Json, string, string?]>([
    ["hinge.frictionTorqe", "30 %", 'the nearest is "hinge.frictionTorque"'],
    ["latch.boltPoints", "30 %", "this key does not spread"],
    ["magnets.sides", "1", "this key does not spread"],
    ["study.margin", "1 %", "this key does not spread"],
    ["flap", "1 %", "the path of a number"],
    ["animals.1.speed", "30 %", 'an entry of "animals", which has 1'],
    ["flap.extraMasses.1.mass", "5 %", 'an entry of "flap.extraMasses", which has 1'],
    ["magnets.gap", "-0.5 mm", "a spread is not negative"],
    ["magnets.gap", "0.5", "the unit is missing"],
    ["magnets.gap", 0.5, "a plain number has no unit"],
    ["magnets.gap", "0.5 kg", '"kg" is a mass, not a length'],
    ["magnets.gap", "NaN %", "not a finite number"],
    ["magnets.gap", null, "± two standard deviations"],
    ["air.swingFactor", "much", "a plain number"],
    ["air.swingFactor", { low: 2, high: 0 }, "low at most high"],
    ["air.swingFactor", { low: 0 }, "this key is required", ".high"],
    ["air.swingFactor", { low: 0, high: 1, shape: "flat" }, '"uniform", "normal" or "triangular"', ".shape"],
    ["air.swingFactor", { low: 0, high: 1, shap: "normal" }, 'the nearest is "shape"', ".shap"],
    ["magnets.gap", { low: -1, high: "1 mm" }, "a plain number has no unit", ".low"],
    ["magnets.gap", { low: "-10 %", high: "1 mm" }, "both ends as percentages or both absolute"],
  ])("%s: %j is refused", (key, entry, words, end = "") => {
    const found = fault(key, entry);
    expect(found.message).toContain(words);
    expect(found.path).toBe(`study.tolerances.${key}${end}`);
  });

  it("are a section, of a bounded size", () => {
    expect(faultWith(["study.tolerances", []]).path).toBe("study.tolerances");
    const many = Object.fromEntries(Array.from({ length: 1000 }, (_, i) => [`k${i}`, "1 %"]));
    expect(faultsWith(["study.tolerances", many]).length).toBe(1);
  });
});
