/** What the commands print and write, for people and for machines. */
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { RESULTS } from "../../../core/review/results.ts";
import { folder, MEDIUM_DOG, ROOT, run } from "./program.ts";

const EXAMPLES = readdirSync(join(ROOT, "assets/examples")).filter((name) => name.endsWith(".door.json"));

/** The contract's names, taken from its own list: `name unit` pairs. */
const CONTRACT_NAMES = `flap.mass flap.inertia flap.firstMoment flap.smallAnglePeriod magnets.peakTorque
magnets.peakAngle magnets.centreStiffness magnets.axialForce magnets.fluxIndex swing.releaseAngle swing.settleTime
swing.restTime swing.restAngle swing.deadBand swing.centrePasses energy.initial energy.hinge energy.viscous
energy.seal energy.air energy.stops energy.left latch.captureAngle latch.blockAngle latch.boltRiseTime push.force
push.limit push.energy wind.gustSpeed solenoid.resistance solenoid.current solenoid.pullInVoltage
solenoid.pullInTime solenoid.releaseTime solenoid.sideLoadLimit solenoid.holdTemperature
solenoid.continuousTemperature driver.dissipation supply.current regulator.dissipation regulator.temperature
timer.nominal timer.shortest timer.longest fit.heightSpare fit.widthSpare fit.stepSpare passage.arrivalTime
passage.passTime passage.letGoTime hold.required hold.setting`.split(/\s+/);

describe("review", () => {
  test.each(EXAMPLES)("%s for people and as JSON", (name) => {
    const path = join(ROOT, "assets/examples", name);
    const text = run(["review", path]);
    const json = run(["review", path, "--json"]);
    const failing = name.startsWith("never-latches");
    expect([text.code, json.code]).toEqual(failing ? [1, 1] : [0, 0]);
    expect(text.error + json.error).toBe("");
    const report = JSON.parse(json.out);
    expect(Object.keys(report.results).sort()).toEqual([...CONTRACT_NAMES].sort());
    for (const { name: result, unit } of RESULTS) expect(report.results[result].unit).toBe(unit);
    for (const finding of report.findings) {
      expect(["ok", "caution", "fail"]).toContain(finding.status);
      expect(finding.message).toMatch(/\.$/);
    }
    expect(report.relatch).toHaveProperty("outcome");
    expect(report.findings.some((f: { status: string }) => f.status === "fail")).toBe(failing);
  });

  test("the medium dog's door is one to be proud of: nothing fails, set to 12 s at most", () => {
    const report = JSON.parse(run(["review", MEDIUM_DOG, "--json"]).out);
    expect(report.results["hold.setting"].value).toBeLessThanOrEqual(12);
    expect(report.relatch.outcome).toBe("caught");
  });

  test("every result explains itself", () => {
    for (const { name, formula } of RESULTS.filter((_, i) => i % 7 === 0)) {
      const told = run(["review", MEDIUM_DOG, "--explain", name]);
      expect(told.code).toBe(0);
      expect(told.out).toContain(name);
      expect(told.out.replace(/\s+/g, " ")).toContain(formula.replace(/\s+/g, " ").slice(0, 40));
      expect(told.out).toMatch(/source: ./);
    }
  });

  test("a door in inches is spoken of in inches", () => {
    const path = join(ROOT, "assets/examples/large-dog-plywood.door.json");
    expect(run(["review", path]).out).toMatch(/\d in\b/);
    expect(run(["review", path, "--units", "metric"]).out).toMatch(/\d cm\b/);
  });
});

describe("swing", () => {
  test("trace as CSV and JSON, and the relatch at another hold", () => {
    const out = join(folder(), "trace.csv");
    const written = run(["swing", MEDIUM_DOG, "--hold", "4 s", "--csv", out]);
    expect(written.code).toBe(0);
    const [header, first] = readFileSync(out, "utf8").split("\n");
    expect(header).toBe("time_s,angle_rad,speed_rad_per_s");
    expect(first.split(",").map(Number)[0]).toBe(0);
    const early = JSON.parse(run(["swing", MEDIUM_DOG, "--hold", "4 s", "--json"]).out);
    expect(early.relatch.outcome).toBe("shut out");
    expect(early.trace.time_s).toHaveLength(early.trace.angle_rad.length);
    const set = JSON.parse(run(["swing", MEDIUM_DOG, "--json"]).out);
    expect(set.relatch.outcome).toBe("caught");
  });
});

describe("new", () => {
  test("copies an example, and never over a file that is there", () => {
    const place = folder();
    expect(run(["new", "mine.door.json"], place).code).toBe(0);
    expect(readFileSync(join(place, "mine.door.json"), "utf8")).toBe(readFileSync(MEDIUM_DOG, "utf8"));
    expect(run(["new", "--from", "cat", "mine.door.json"], place).code).toBe(2);
    expect(run(["new", "--from", "cat", "other.door.json"], place).code).toBe(0);
    expect(run(["review", "other.door.json"], place).code).toBe(0);
  });
});

describe("hold", () => {
  test("the same answer whatever the workers, and from parts joined", () => {
    const place = folder();
    const args = ["hold", MEDIUM_DOG, "--samples", "400", "--seed", "5", "--json"];
    const one = run([...args, "--workers", "1"], place);
    expect(one.code).toBe(0);
    expect(run([...args, "--workers", "3"], place).out).toBe(one.out);
    for (const part of ["1/2", "2/2"]) {
      const call = [
        "hold",
        MEDIUM_DOG,
        "--samples",
        "400",
        "--seed",
        "5",
        "--part",
        part,
        "--out",
        `p${part[0]}.json`,
      ];
      expect(run(call, place).code).toBe(0);
    }
    expect(run(["hold", "--join", "p2.json", "p1.json", "--json"], place).out).toBe(one.out);
    const report = JSON.parse(one.out);
    expect(report.results["hold.recommended"].value).toBeNull();
    expect(report.samples).toBe(400);
    expect(Object.keys(report.settle)).toEqual(["5", "50", "95", "99"]);
  }, 120_000);
});

describe("map", () => {
  test("a table, a CSV, JSON, absent values absent", () => {
    const out = join(folder(), "map.csv");
    const call = ["map", MEDIUM_DOG, "--x", "latch.slotWidth=6 mm..16 mm:3", "--of", "hold.required"];
    expect(run([...call, "--csv", out]).code).toBe(0);
    expect(readFileSync(out, "utf8").split("\n")[0]).toBe("latch.slotWidth (m),hold.required (s),note");
    const { values } = JSON.parse(run([...call, "--json"]).out);
    expect(values[0]).toBeNull();
    expect(values[2]).toBeGreaterThan(1);
    expect(run(call).out).toMatch(/16 mm/);
  });
});

describe("fit", () => {
  const BARE = join(ROOT, "assets/measured/bare-flap.door.json");
  const SWING = join(ROOT, "assets/measured/bare-flap-swing.csv");

  test("finds the values the measured swing was made with, within its own errors, and writes a copy", () => {
    const copy = join(folder(), "fitted.door.json");
    const found = JSON.parse(run(["fit", BARE, SWING, "--write", copy, "--json"]).out);
    const truth: Record<string, number> = {
      "hinge.frictionTorque": 6.5e-3,
      "hinge.viscousDamping": 5.5e-3,
      "air.swingFactor": 1.6,
    };
    for (const { key, value, error } of found.values) {
      expect(Math.abs(value - truth[key]) / error).toBeLessThan(3.5);
    }
    expect(existsSync(copy)).toBe(true);
    expect(readFileSync(copy, "utf8")).toMatch(/"frictionTorque": "6\.\d+ mN m"/);
  }, 120_000);
});

describe("best", () => {
  test("finds no longer hold than the door has, says that it is local and what stops it", () => {
    const call = ["best", MEDIUM_DOG, "--over", "latch.slotWidth=14 mm..18 mm"];
    const found = JSON.parse(run([...call, "--json"]).out);
    expect(found.kept).toBe(true);
    expect(found.hold).toBeLessThanOrEqual(found.holdBefore);
    expect(found.binding.length).toBeGreaterThan(0);
    const text = run(call);
    expect(text.code).toBe(0);
    expect(text.out.replace(/\s+/g, " ")).toMatch(/local searches.*not proven/);
    expect(run(["best", MEDIUM_DOG]).code).toBe(2);
  });
});
