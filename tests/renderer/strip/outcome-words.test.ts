/** The strip's words on real doors: each says what the relatch of that hold says. */
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import type { Outcome } from "../../../core/passage/relatch.ts";
import type { DoorView } from "../../../renderer/state/view.ts";
import { stripMarks } from "../../../renderer/strip/marks.ts";
import {
  caughtFrom,
  holdText,
  lookAt,
  lookStretches,
  outcomeAt,
  outcomeSentence,
} from "../../../renderer/strip/outcomes.ts";
import { fitWindow, wholeWindow } from "../../../renderer/strip/time-window.ts";
import { type Prepared, prepare, viewAt } from "../../../renderer/worker/compute-view.ts";

const folder = new URL("../../reference/model/doors/", import.meta.url);

function prepared(name: string): Prepared {
  const preparation = prepare(readFileSync(new URL(`${name}.door.json`, folder), "utf8"), "metric");
  if (!preparation.ok) throw new Error(name);
  return preparation.prepared;
}

const plain = prepared("01-plain");
const at = (hold: number | null, door = plain): DoorView => viewAt(door, hold, 1);

describe("words", () => {
  test.each(["caught", "stuck", "shut out", "under the animal"] as Outcome[])(
    "%s, as the relatch says",
    (outcome) => {
      const stretch = at(null).outcomes.find((s) => s.outcome === outcome);
      if (stretch === undefined) throw new Error(`the plain door knows no hold that ends ${outcome}`);
      const hold = (stretch.from + stretch.to) / 2;
      const view = at(hold);
      expect(view.relatch?.outcome).toBe(outcome);
      expect(outcomeAt(view.outcomes, hold)).toBe(outcome);
      expect(holdText(view, hold, 0.1)).toContain(`: ${outcome}`);
      expect(outcomeSentence(view, hold)).not.toBe("");
    },
  );

  test("12.5 s: caught 3.2 s after let-go, in that form", () => {
    const hold = Math.ceil((at(null).hold?.need ?? 0) * 10) / 10;
    const view = at(hold);
    const when = (view.relatch?.time ?? 0).toFixed(1);
    expect(holdText(view, hold, 0.1)).toBe(`${hold.toFixed(1)} s: caught ${when} s after let-go`);
  });

  test("while the answer is on the way, the outcome is told and the hold's end instead of the relatch", () => {
    const view = at(null);
    const other = (view.hold?.shown ?? 0) + 3.7;
    expect(holdText(view, other, 0.1)).toMatch(/^15\.7 s: caught, the hold ends \d+\.\d s after let-go$/);
  });

  test("caught before the flap has settled is said to be in passing, and parted from the rest", () => {
    const view = at(null);
    const need = view.hold?.need ?? 0;
    const early = view.outcomes.find(({ outcome, to }) => outcome === "caught" && to < need);
    if (early === undefined) throw new Error("the plain door has no catch in passing");
    expect(lookAt(view, (early.from + early.to) / 2)?.id).toBe("passing");
    expect(lookAt(view, need + 0.1)?.id).toBe("caught");
    const looks = lookStretches(view.outcomes, view.hold?.need ?? null);
    for (let i = 1; i < looks.length; i++) expect(looks[i].from).toBe(looks[i - 1].to);
    for (const { from, to, look } of looks) {
      const middle = (from + to) / 2;
      expect(lookAt(view, middle)?.id).toBe(look.id);
      expect(outcomeAt(view.outcomes, middle)).toBe(look.outcome);
    }
    expect(caughtFrom(view.outcomes)).toBeLessThanOrEqual(need + 1e-3);
  });

  test("where no hold is sure, a catch is one of this time only", () => {
    const view = at(null, prepared("14-strong-seal"));
    expect(view.hold?.need).toBeNull();
    expect(
      lookStretches(view.outcomes, view.hold?.need ?? null).some(({ look }) => look.id === "caught"),
    ).toBe(false);
  });

  test("a hold beyond all that were worked out has the last outcome", () => {
    expect(outcomeAt(at(null).outcomes, 1e6)).toBe("caught");
    expect(outcomeAt([], 3)).toBeNull();
  });
});

describe("marks and windows", () => {
  test.each(["01-plain", "16-frictionless", "21-never-lifts", "36-no-timer", "27-hold-under"])(
    "%s: in order, inside the window",
    (name) => {
      const view = at(null, prepared(name));
      const ends = view.hold === null ? null : view.hold.start + view.hold.shown;
      const marks = stripMarks(view, ends);
      const times = marks.map(({ time }) => time);
      expect(times).toEqual([...times].sort((a, b) => a - b));
      const fit = fitWindow(view);
      const whole = wholeWindow(view);
      expect(fit.to).toBeGreaterThan(fit.from);
      expect(whole.to).toBeGreaterThanOrEqual(fit.to);
      for (const time of times) expect(time).toBeLessThanOrEqual(fit.to);
      expect(marks.some(({ id }) => id === "hold-ends")).toBe(view.hold !== null);
    },
  );
});
