import { expect, test } from "vitest";
import { compute } from "../../../core/review/compute.ts";
import {
  FINDING_RULES,
  findings,
  findingsAtOnce,
  verdict,
  worstFirst,
} from "../../../core/review/findings.ts";
import { resultNamed, resultValues } from "../../../core/review/results.ts";
import { words } from "../../../core/review/words.ts";
import { REFERENCE_DOORS, referenceDoor } from "../doors.ts";
import { GOOD, goodWith } from "./doors.ts";

const METRIC = words("metric");
const INCH = words("inch");

const OPTIONAL = ["magnets", "latch", "solenoid", "driver", "timer", "supply"] as const;

/** The reference doors, and the good door without each of its sections and pairs of them. */
const DOORS = [
  ...REFERENCE_DOORS.map((file) => [file, referenceDoor(file)] as const),
  ...OPTIONAL.flatMap((a, i) =>
    OPTIONAL.slice(i).map(
      (b) => [`without ${a}, ${b}`, goodWith({ [a]: undefined, [b]: undefined })] as const,
    ),
  ),
  ["no bolt friction", goodWith({ "latch.frictionCoefficient": 0 })] as const,
];

test.each(DOORS)("every result that does not exist is named by a finding that says why: %s", (_, door) => {
  const computed = compute(door);
  const named = new Set(findingsAtOnce(computed, METRIC).flatMap((f) => f.results));
  const missing = Object.entries(resultValues(computed)).filter(([, { value }]) => value === null);
  expect(missing.map(([name]) => name).filter((name) => !named.has(name))).toEqual([]);
});

test.each(DOORS)("sentences are whole, in both unit systems: %s", (_, door) => {
  const computed = compute(door);
  for (const w of [METRIC, INCH]) {
    const all = findings(computed, w);
    for (const text of [...all.map((f) => f.message), verdict(all, computed, w)]) {
      expect(text).toMatch(/^[^a-z\s].*[^.;:,\s]\.$/);
      expect(text).not.toMatch(/NaN|undefined|null|Infinity|\[object|e-\d|--|;;| {2}|passs/);
    }
  }
});

test("ids are unique and every named result exists", () => {
  expect(new Set(FINDING_RULES.map((r) => r.id)).size).toBe(FINDING_RULES.length);
  for (const rule of FINDING_RULES) {
    for (const name of rule.results) expect(resultNamed(name), `${rule.id}: ${name}`).toBeDefined();
  }
});

test("a good door has only cautions that always apply", () => {
  const computed = compute(goodWith({}));
  const all = findings(computed, METRIC);
  const notOk = all.filter((f) => f.status !== "ok").map((f) => f.id);
  expect(notOk.sort()).toEqual(["care.electrical", "care.people", "care.power-lost", "magnets.swallow"]);
  expect(GOOD.timer.holdTime).toBe("8 s");
  expect(verdict(all, computed, METRIC)).toMatch(/^This door works/);
});

test("the worst come first, in their order otherwise", () => {
  const all = findings(compute(referenceDoor("04-jamb-two-like")), METRIC);
  const sorted = worstFirst(all);
  expect(sorted.map((f) => f.status)).toEqual(
    [...sorted.map((f) => f.status)].sort((a, b) => "fco".indexOf(a[0]) - "fco".indexOf(b[0])),
  );
  expect(sorted.filter((f) => f.status === "ok")).toEqual(all.filter((f) => f.status === "ok"));
  expect(verdict(all, compute(referenceDoor("04-jamb-two-like")), METRIC)).toContain(sorted[0].message);
});

test("at once is the same without suggestions", () => {
  const computed = compute(referenceDoor("13-wide-seal"));
  const bare = ({ id, status, results }: { id: string; status: string; results: readonly string[] }) => ({
    id,
    status,
    results,
  });
  const quick = findingsAtOnce(computed, METRIC);
  expect(quick.map(bare)).toEqual(findings(computed, METRIC).map(bare));
  expect(quick.flatMap((f) => f.suggestions)).toEqual([]);
});
