import { describe, expect, test } from "vitest";
import { verdictOf } from "../../../renderer/figures/verdict.ts";
import { prepare, viewAt } from "../../../renderer/worker/compute-view.ts";
import { exampleText } from "../example.ts";

function viewOf(change: (door: Record<string, Record<string, unknown>>) => void, hold: number | null = null) {
  const door = JSON.parse(exampleText("medium-dog"));
  change(door);
  const made = prepare(JSON.stringify(door), "metric");
  if (!made.ok) throw new Error(made.faults[0].message);
  return viewAt(made.prepared, hold, 1);
}

const unchanged = () => {};

test("long enough: caught, with what is to spare", () => {
  const view = viewOf(unchanged);
  const verdict = verdictOf(view);
  expect(verdict).toMatchObject({ status: "ok", head: "Caught" });
  const spare = 10 - (view.hold?.need ?? 0);
  expect(verdict.sentence).toContain(`by ${Number(spare.toPrecision(2))} s`);
});

describe("too short says how much, and what becomes of the bolt", () => {
  test("at let-go already", () => {
    const view = viewOf(unchanged, 3);
    const verdict = verdictOf(view);
    expect(verdict.status).toBe("fail");
    expect(verdict.head).toBe("Shut out");
    expect(verdict.sentence).toContain(`${Number(((view.hold?.need ?? 0) - 3).toPrecision(2))} s too soon`);
  });
  test("under the animal", () => {
    expect(verdictOf(viewOf(unchanged, 0.5)).head).toBe("Under the animal");
  });
  test("in passing is no reason to rely on it", () => {
    const { outcomes, hold } = viewOf(unchanged);
    const early = outcomes.find(
      ({ outcome, from, to }) => outcome === "caught" && to - from > 0.01 && from < (hold?.need ?? 0) - 0.2,
    );
    if (early === undefined) throw new Error("this door is caught at no shorter hold");
    const verdict = verdictOf(viewOf(unchanged, (early.from + Math.min(early.to, early.from + 0.1)) / 2));
    expect(verdict).toMatchObject({ status: "fail", head: "Caught in passing" });
  });
});

test("a door whose bolt catches but of which something else fails is not there yet", () => {
  const view = viewOf((door) => {
    door.driver.clamp = "none";
  });
  expect(verdictOf(view)).toMatchObject({ status: "fail", head: "Not yet" });
});

test("without a latch or a timer it says what is missing", () => {
  const noLatch = viewOf((door) => {
    delete door.latch;
  });
  expect(verdictOf(noLatch).sentence).toContain("no latch yet");
  const noTimer = viewOf((door) => {
    delete door.timer;
  });
  expect(verdictOf(noTimer).sentence).toContain("no timer yet");
});

test("what is to be read besides is counted", () => {
  const view = viewOf(unchanged);
  const cautions = view.findings.filter(({ status }) => status === "caution").length;
  expect(verdictOf(view).rest).toBe(`${cautions} to mind`);
});
