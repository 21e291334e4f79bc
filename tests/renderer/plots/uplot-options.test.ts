/** A live picture takes the next figure of its kind as other numbers; one of another kind needs another picture. */
import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { angleFigure, readSwing, torqueFigure } from "../../../renderer/plots/swing-figures.ts";
import { type PlotLook, plotData, plotKind, plotOptions } from "../../../renderer/plots/uplot-options.ts";
import type { DoorView } from "../../../renderer/state/view.ts";
import { prepare, viewAt } from "../../../renderer/worker/compute-view.ts";

function view(name: string): DoorView {
  const text = readFileSync(
    new URL(`../../reference/model/doors/${name}.door.json`, import.meta.url),
    "utf8",
  );
  const preparation = prepare(text, "metric");
  if (!preparation.ok) throw new Error(name);
  return viewAt(preparation.prepared, null, 1);
}

const [plain, damped] = [view("01-plain"), view("15-damper")];
const angle = (of: DoorView, pinned: DoorView | null = null) => angleFigure(of, pinned, readSwing(of));

test("other numbers are the same kind; another line, unit or legend is another", () => {
  expect(plotKind(angle(plain))).toBe(plotKind(angle(damped)));
  expect(plotKind(angle(plain, damped))).not.toBe(plotKind(angle(plain)));
  expect(plotKind(torqueFigure(plain, "metric", false))).not.toBe(
    plotKind(torqueFigure(plain, "inch", false)),
  );
});

test("figures of one kind have columns of one number, as the plot's series want it", () => {
  expect(plotData(angle(plain))).toHaveLength(plotData(angle(damped)).length);
});

test("the axes are those of the figure shown now", () => {
  let shown = angle(plain);
  const look = { colours: {}, face: "Face", size: 12 } as unknown as PlotLook;
  const { scales } = plotOptions(
    () => shown,
    look,
    { width: 300, height: 200 },
    () => {},
  );
  const range = (name: "x" | "y"): unknown => {
    const of = scales?.[name]?.range;
    return typeof of === "function" ? of({} as never, null as never, null as never, name) : of;
  };
  expect([range("x"), range("y")]).toEqual([
    [shown.x.from, shown.x.to],
    [shown.y.from, shown.y.to],
  ]);
  shown = angle(damped);
  expect([range("x"), range("y")]).toEqual([
    [shown.x.from, shown.x.to],
    [shown.y.from, shown.y.to],
  ]);
});
