import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { readDoor } from "../../../core/door/index.ts";
import { compute, relatchAt } from "../../../core/review/compute.ts";
import { findings, worstFirst } from "../../../core/review/findings.ts";
import { resultValues } from "../../../core/review/results.ts";
import { words } from "../../../core/review/words.ts";
import { advise, type Prepared, prepare, viewAt } from "../../../renderer/worker/compute-view.ts";
import { exampleText } from "../example.ts";

const doors = new URL("../../reference/model/doors/", import.meta.url);
const names = readdirSync(doors).filter((_, i) => i % 4 === 0);
const referenceText = (name: string): string => readFileSync(new URL(name, doors), "utf8");

function prepared(text: string, before: Prepared | null = null): Prepared {
  const preparation = prepare(text, "metric", before);
  if (!preparation.ok) throw new Error(preparation.faults[0].message);
  return preparation.prepared;
}

describe.each(names)("%s", (name) => {
  const text = referenceText(name);
  const made = prepared(text);
  const view = viewAt(made, null, 1);

  test("shows core's own figures, verdicts and relatch", () => {
    const read = readDoor(text);
    if (!read.ok) throw new Error("the door does not read");
    const computed = compute(read.door);
    expect(view.results).toEqual(resultValues(computed));
    expect(view.relatch).toEqual(computed.relatch);
    const said = worstFirst(findings(computed, words("metric")));
    expect(view.findings.map(({ id, status }) => [id, status])).toEqual(
      said.map(({ id, status }) => [id, status]),
    );
  });

  test("can cross to the page as it is", () => {
    expect(structuredClone(view)).toEqual(view);
  });

  test("its film is never empty and covers the swing", () => {
    const { time, angle } = view.replay;
    expect(time.length).toBeGreaterThan(10);
    expect(angle.length).toBe(time.length);
    expect(time.length).toBeLessThanOrEqual(100_000);
    expect(view.swing.time.length).toBe(view.swing.energy.left.length);
  });

  test("the outcome of every hold is that of the relatch at it", () => {
    for (const { from, to, outcome } of view.outcomes.slice(0, 6)) {
      const { computed, door } = made;
      const middle = (from + to) / 2;
      const relatch = relatchAt(
        door,
        computed,
        computed.governing,
        computed.trace,
        middle,
        computed.solenoid,
      );
      expect(relatch?.outcome).toBe(outcome);
    }
  });
});

test("every fault of a wrong file is told", () => {
  const preparation = prepare(exampleText("cat").replaceAll(" mm", " mmm"), "metric");
  expect(preparation.ok ? [] : preparation.faults.length).toBeGreaterThan(3);
});

test("a door computed after another with the same magnets is the same as alone, bit for bit", () => {
  const before = prepared(exampleText("medium-dog"));
  const text = exampleText("medium-dog").replace('"holdTime": "10 s"', '"holdTime": "4 s"');
  expect(text).not.toBe(exampleText("medium-dog"));
  const after = viewAt(prepared(text, before), null, 1);
  expect(after).toEqual(viewAt(prepared(text), null, 1));
});

test("a hold that is tried changes the relatch, the film and the bar, and no figure", () => {
  const made = prepared(exampleText("medium-dog"));
  const usual = viewAt(made, null, 1);
  const tried = viewAt(made, 3, 2);
  expect(tried.hold?.shown).toBe(3);
  expect(tried.hold?.nominal).toBe(10);
  expect(tried.relatch?.outcome).not.toBe(usual.relatch?.outcome);
  expect(tried.replay.outcome).toBe(tried.relatch?.outcome);
  expect(tried.results).toBe(usual.results);
});

test("advice gives the same verdicts, with ways out", () => {
  const made = prepared(exampleText("never-latches"));
  const quick = viewAt(made, null, 1).findings;
  const full = advise(made);
  expect(full.map(({ id, status }) => [id, status])).toEqual(quick.map(({ id, status }) => [id, status]));
  expect(full.flatMap(({ suggestions }) => suggestions).length).toBeGreaterThan(3);
});
