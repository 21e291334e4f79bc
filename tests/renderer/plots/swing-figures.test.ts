/** The pictures of a swing hold what was computed: sums, bands, units; and write well-formed SVG and tables. */
import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { type Figure, stacked } from "../../../renderer/plots/figure.ts";
import { readingsAt } from "../../../renderer/plots/readings.ts";
import { summaryOf } from "../../../renderer/plots/summaries.ts";
import {
  angleFigure,
  energyFigure,
  phaseFigure,
  readSwing,
  torqueFigure,
} from "../../../renderer/plots/swing-figures.ts";
import { figureTable } from "../../../renderer/plots/tables.ts";
import { figureSvg } from "../../../renderer/plots/write-out.ts";
import type { DoorView } from "../../../renderer/state/view.ts";
import { prepare, viewAt } from "../../../renderer/worker/compute-view.ts";

const folder = new URL("../../reference/model/doors/", import.meta.url);
const names = readdirSync(folder).filter((name) => name.endsWith(".door.json"));
const DEGREES = 180 / Math.PI;
const COLOURS = new Proxy({}, { get: (_, ink) => `#${String(ink)}` }) as Parameters<typeof figureSvg>[1];

function view(name: string): DoorView {
  const preparation = prepare(readFileSync(new URL(name, folder), "utf8"), "metric");
  if (!preparation.ok) throw new Error(name);
  return viewAt(preparation.prepared, null, 1);
}

const figuresOf = (door: DoorView, pinned: DoorView | null): Figure[] => [
  angleFigure(door, pinned, readSwing(door)),
  phaseFigure(door, pinned),
  energyFigure(door),
  torqueFigure(door, "metric", false),
  torqueFigure(door, "inch", true),
];

describe.each(names)("%s", (name) => {
  const door = view(name);

  test("every axis has a length and every drawn number is one", () => {
    for (const figure of figuresOf(door, null)) {
      expect(figure.x.to).toBeGreaterThan(figure.x.from);
      expect(figure.y.to).toBeGreaterThan(figure.y.from);
      const svg = figureSvg(figure, COLOURS, "Face", (text) => text.length * 8);
      expect(svg).not.toMatch(/NaN|Infinity|undefined/);
      // Every element is closed: what is opened is closed again or closes itself.
      const opened = svg.match(/<[a-zA-Z][^>]*[^/]>/g)?.length ?? 0;
      expect(svg.match(/<\/[a-zA-Z]+>/g)?.length).toBe(opened);
    }
  });

  test("the energy's layers add up to what there was, at every moment", () => {
    const { layers } = energyFigure(door);
    const edges = stacked(layers);
    const initial = door.swing.energy.initial * 1000;
    for (const top of edges[edges.length - 1]) {
      // 10⁻⁶ of max(initial, 1 mJ) is the ledger's own; a sink left out took less than that as well.
      expect(Math.abs(top - initial)).toBeLessThan(1e-5 * Math.max(initial, 1));
    }
  });

  test("sentences for those who do not see them", () => {
    for (const which of ["angle", "energy", "torque"] as const) {
      expect(summaryOf(door, which)).toMatch(/^[A-Z].*\.$/);
      expect(summaryOf(door, which)).not.toMatch(/NaN|null|undefined/);
    }
  });
});

describe("what is drawn is what was computed", () => {
  const door = view("05-jamb-three-alternating.door.json");

  test("angle in degrees, the envelope over it, the slot's band about the slot", () => {
    const figure = angleFigure(door, null, readSwing(door));
    const angle = figure.lines.find(({ label }) => label === "angle");
    const envelopes = figure.lines.filter(({ ink }) => ink === "ink-soft");
    expect(envelopes).toHaveLength(2);
    door.swing.angle.forEach((value, i) => {
      expect(angle?.values[i]).toBeCloseTo(value * DEGREES, 9);
      if (i > 2000 || i % 50 !== 0) return;
      for (const [side, sign] of [
        [envelopes[0], 1],
        [envelopes[1], -1],
      ] as const) {
        const edge = side.values[i];
        // Straight between turning points, where the swing's own edge bends: a part of a degree.
        if (!Number.isNaN(edge)) expect(sign * (edge - value * DEGREES)).toBeGreaterThan(-1);
      }
    });
    const { captureAngle, slotAngle } = door.geometry;
    const [band] = figure.bands;
    expect(band.to - band.from).toBeCloseTo(2 * (captureAngle ?? 0) * DEGREES, 9);
    expect((band.to + band.from) / 2).toBeCloseTo(slotAngle * DEGREES, 9);
  });

  test("total torque is the sum of its parts, in either unit", () => {
    for (const [units, si] of [
      ["metric", 1e-3],
      ["inch", (4.4482216152605 / 16) * 0.0254],
    ] as const) {
      const { lines } = torqueFigure(door, units, false);
      const { gravity, magnets, air } = door.torques;
      const total = lines.find(({ label }) => label === "total");
      gravity.forEach((value, i) => {
        expect(total?.values[i]).toBeCloseTo((value + magnets[i] + air[i]) / si, 6);
      });
    }
  });

  test("near the slot shows less than all, the slot's band within", () => {
    const all = torqueFigure(door, "metric", false);
    const near = torqueFigure(door, "metric", true);
    expect(near.x.to - near.x.from).toBeLessThan(all.x.to - all.x.from);
    expect(near.x.from).toBeLessThan(near.bands[0].from);
    expect(near.x.to).toBeGreaterThan(near.bands[0].to);
  });

  test("a pinned door makes a second line, also where it swings longer", () => {
    const pinned = view("01-plain.door.json");
    const both = angleFigure(pinned, door, readSwing(pinned));
    expect(both.values).toHaveLength(Math.max(pinned.swing.time.length, door.swing.time.length));
    const own = both.lines.find(({ label }) => label === "angle");
    for (let i = 0; i < pinned.swing.time.length - 1; i += 37) {
      expect(own?.values[i]).toBeCloseTo(pinned.swing.angle[i] * DEGREES, 6);
    }
    expect(Number.isNaN(own?.values[both.values.length - 1])).toBe(true);
    expect(phaseFigure(pinned, door).lines).toHaveLength(2);
  });

  test("a hovered sample reads every layer with its unit", () => {
    const figure = energyFigure(door);
    const readings = readingsAt(figure, 10);
    expect([...readings.keys()].sort()).toEqual(figure.layers.map(({ label }) => label).sort());
    for (const text of readings.values()) expect(text).toMatch(/^−?\d+(\.\d+)? mJ$/);
  });

  test("tables in SI, full precision, columns named with their units", () => {
    const lines = figureTable(door, "angle").trimEnd().split("\n");
    expect(lines[0]).toBe("time_s,angle_rad,speed_rad_per_s");
    expect(lines).toHaveLength(door.swing.time.length + 1);
    expect(lines[8].split(",").map(Number)).toEqual(
      [7, 7, 7].map((i, k) => {
        return [door.swing.time, door.swing.angle, door.swing.speed][k][i];
      }),
    );
    const energy = figureTable(door, "energy").split("\n")[5].split(",").map(Number);
    const sum = energy.slice(1).reduce((a, b) => a + b, 0);
    expect(sum).toBeCloseTo(door.swing.energy.initial, 7);
    expect(figureTable(door, "torque").split("\n")[0]).toBe(
      "angle_rad,gravity_Nm,magnets_Nm,air_Nm,friction_Nm",
    );
  });
});

test("names with signs that mean something in XML are written as they are", () => {
  const door = view("01-plain.door.json");
  const figure = { ...energyFigure(door), title: 'A<b> & "c"' };
  const svg = figureSvg(figure, COLOURS, '"Face", sans-serif', () => 10);
  expect(svg).toContain("<title>A&lt;b&gt; &amp; &quot;c&quot;</title>");
  expect(svg).toContain('font-family="&quot;Face&quot;, sans-serif"');
});
