/** The DXF read back by programs that are not ours: geometry, layers, units. */
import { execFileSync } from "node:child_process";
import DxfParser from "dxf-parser";
import { describe, expect, test } from "vitest";
import type { Circle, Drawing, LayerName, Polyline } from "../../../core/sheet/drawing.ts";
import { circle, Sketch, text } from "../../../core/sheet/drawing.ts";
import { CAP_HEIGHT, dxfFile } from "../../../core/sheet/dxf.ts";
import { plainPrimitives } from "../../../core/sheet/plain.ts";
import { templates } from "../../../core/sheet/sheet-set.ts";
import { EXAMPLES, exampleJson } from "../doors.ts";
import { drawnOf, fileOf, variant } from "./sample.ts";

interface Entity {
  readonly type: string;
  readonly layer: string;
  readonly center?: { readonly x: number; readonly y: number };
  readonly radius?: number;
  readonly vertices?: readonly { readonly x: number; readonly y: number }[];
  readonly shape?: boolean;
  readonly text?: string;
  readonly textHeight?: number;
  readonly startAngle?: number;
  readonly endAngle?: number;
}

function entitiesOf(file: string): readonly Entity[] {
  return (new DxfParser().parseSync(file)?.entities ?? []) as unknown as Entity[];
}

/** Primitives of a kind on a layer, as they are drawn. */
function drawn<K extends "circle" | "polyline">(drawing: Drawing, layer: LayerName, kind: K) {
  const items = drawing.layers
    .filter(({ name }) => name === layer)
    .flatMap(({ items: all }) => plainPrimitives(all));
  return items.filter((item) => item.kind === kind) as unknown as (K extends "circle" ? Circle : Polyline)[];
}

const DRAWINGS = EXAMPLES.flatMap((name) =>
  (["flap", "frame", "solenoid"] as const).map((which) => [`${name}, ${which}`, name, which] as const),
);

describe("dxf-parser reads", () => {
  test.each(DRAWINGS)("%s: bores, cut lines and layers as drawn", (_, name, which) => {
    const drawing = templates(drawnOf(exampleJson(name)))[which];
    const entities = entitiesOf(dxfFile(drawing));
    const bores = entities.filter(({ type, layer }) => type === "CIRCLE" && layer === "DRILL");
    const wanted = drawn(drawing, "DRILL", "circle");
    expect(bores.length).toBe(wanted.length);
    wanted.forEach(({ centre, radius }, i) => {
      expect(bores[i].radius).toBeCloseTo(radius, 6);
      expect(bores[i].center?.x).toBeCloseTo(centre[0], 6);
      expect(bores[i].center?.y).toBeCloseTo(drawing.heightMm - centre[1], 6);
    });
    const cuts = entities.filter(({ type, layer }) => type === "LWPOLYLINE" && layer === "CUT");
    drawn(drawing, "CUT", "polyline").forEach(({ points, closed }, i) => {
      expect(cuts[i].shape).toBe(closed);
      points.forEach(([x, y], k) => {
        expect(cuts[i].vertices?.[k].x).toBeCloseTo(x, 6);
        expect(cuts[i].vertices?.[k].y).toBeCloseTo(drawing.heightMm - y, 6);
      });
    });
    expect(new Set(entities.map(({ layer }) => layer))).toEqual(new Set(drawing.layers.map((l) => l.name)));
  });

  test("the cut flap is as wide and high as the file's, its pockets at the file's distances", () => {
    const { flap } = templates(drawnOf(exampleJson("large-dog-plywood"), "inch"));
    const entities = entitiesOf(dxfFile(flap));
    const [outline] = entities.filter(({ type, layer }) => type === "LWPOLYLINE" && layer === "CUT");
    const xs = outline.vertices?.map(({ x }) => x) ?? [];
    const ys = outline.vertices?.map(({ y }) => y) ?? [];
    expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(14.5 * 25.4, 6);
    expect(Math.max(...ys) - Math.min(...ys)).toBeCloseTo(22.25 * 25.4, 6);
    // The hinge axis is 3/8 in above the top edge; the magnets 21 in and 19 in below the axis.
    const axis = Math.max(...ys) + 0.375 * 25.4;
    const bores = entities.filter(({ type, layer }) => type === "CIRCLE" && layer === "DRILL");
    const depths = bores.map(({ center }) => (axis - (center?.y ?? 0)) / 25.4).sort((a, b) => a - b);
    expect(depths.map((d) => Number(d.toFixed(6)))).toEqual([19, 19, 21, 21]);
    for (const { radius } of bores) expect(radius).toBeCloseTo(0.25 * 25.4, 6);
  });

  test.each(DRAWINGS)("%s: the scales are 100 mm and 4 in long", (_, name, which) => {
    const entities = entitiesOf(dxfFile(templates(drawnOf(exampleJson(name)))[which]));
    const runs = entities.filter(({ type, layer }) => type === "LWPOLYLINE" && layer === "RULER");
    const lengths = runs.map(({ vertices = [] }) => vertices[1].x - vertices[0].x);
    expect(lengths.map((length) => Number(length.toFixed(6)))).toEqual([100, 101.6]);
  });

  test("arcs turn the way they are drawn, text keeps its height, letters outside ASCII survive", () => {
    const sketch = new Sketch();
    sketch.on("CUT", { kind: "arc", centre: [50, 40], radius: 10, start: 0, end: Math.PI / 2 });
    sketch.on("TEXT", text([10, 20], "Ø 8 ± 0,5 °", { size: 4 }));
    const entities = entitiesOf(dxfFile(sketch.drawing("x", 100, 60)));
    const arc = entities.find(({ type }) => type === "ARC");
    // From the right clockwise to below, y down: with y up from below (−90°) to the right (0°).
    expect(arc?.startAngle).toBeCloseTo(-Math.PI / 2, 6);
    expect(arc?.endAngle).toBeCloseTo(0, 6);
    const words = entities.find(({ type }) => type === "TEXT");
    expect(words).toMatchObject({ text: "Ø 8 ± 0,5 °" });
    expect(words?.textHeight).toBeCloseTo(4 * CAP_HEIGHT, 9);
  });
});

const python = ["/usr/bin/python3", "python3"].find((path) => {
  try {
    execFileSync(path, ["-c", "import ezdxf"], { stdio: "ignore" });
    return true;
  } catch {
    return false;
  }
});
const whyNot =
  python === undefined ? " (skipped: no ezdxf for Python; on Debian: apt-get install python3-ezdxf)" : "";

/** Audit, units, extents and circles as ezdxf sees them. */
const SCRIPT = `
import ezdxf, json, sys
doc = ezdxf.readfile(sys.argv[1])
audit = doc.audit()
circles = [[e.dxf.center.x, e.dxf.center.y, e.dxf.radius] for e in doc.modelspace().query('CIRCLE[layer=="DRILL"]')]
print(json.dumps({
  "errors": [e.message for e in audit.errors], "units": doc.header["$INSUNITS"], "circles": circles,
  "layers": sorted(l.dxf.name for l in doc.layers if l.dxf.name not in ("0", "Defpoints")),
  "texts": [e.dxf.text for e in doc.modelspace().query("TEXT")],
}))`;

describe.skipIf(python === undefined)(`ezdxf reads${whyNot}`, () => {
  test.each(DRAWINGS)("%s without a complaint, in millimetres, the bores as drawn", (_, name, which) => {
    const drawing = templates(drawnOf(exampleJson(name)))[which];
    const path = fileOf("template.dxf", dxfFile(drawing));
    const seen = JSON.parse(execFileSync(python ?? "", ["-c", SCRIPT, path], { encoding: "utf8" }));
    expect(seen.errors).toEqual([]);
    expect(seen.units).toBe(4);
    expect(seen.layers).toEqual(drawing.layers.map((l) => l.name).sort());
    const wanted = drawn(drawing, "DRILL", "circle").map(({ centre: [x, y], radius }) => [
      x,
      drawing.heightMm - y,
      radius,
    ]);
    expect(seen.circles.length).toBe(wanted.length);
    seen.circles.forEach((one: number[], i: number) => {
      one.forEach((value, k) => {
        expect(value).toBeCloseTo(wanted[i][k], 6);
      });
    });
    expect(seen.texts).toContain(which.toUpperCase());
  });
});

test("a drawing without bores has none in its file", () => {
  const plain = templates(drawnOf(variant({ magnets: null, latch: null })));
  expect(entitiesOf(dxfFile(plain.flap)).filter(({ type }) => type === "CIRCLE")).toEqual([]);
  const one = new Sketch().on("DRILL", circle([1, 2], 3)).drawing("x", 10, 10);
  expect(entitiesOf(dxfFile(one)).length).toBe(1);
});
