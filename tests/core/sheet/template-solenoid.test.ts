/** The solenoid's page: lines where the file's latch has them, one page, nothing that the file does not know. */
import { describe, expect, test } from "vitest";
import type { Drawing, LayerName, Polyline, Text } from "../../../core/sheet/drawing.ts";
import { PAPERS } from "../../../core/sheet/paper.ts";
import { templates } from "../../../core/sheet/sheet-set.ts";
import { textWidth } from "../../../core/sheet/text-width.ts";
import { tiling } from "../../../core/sheet/tiles.ts";
import { EXAMPLES, exampleJson } from "../doors.ts";
import { drawnOf, variant } from "./sample.ts";

const itemsOf = (drawing: Drawing, layer: LayerName) =>
  drawing.layers.filter(({ name }) => name === layer).flatMap(({ items }) => items);
const textsOf = (drawing: Drawing) =>
  drawing.layers.flatMap(({ items }) => items.filter((item): item is Text => item.kind === "text"));
const sentences = (drawing: Drawing) =>
  textsOf(drawing)
    .map(({ text }) => text)
    .join(" ");

/** Upper and lower end of every box on a layer, mm. */
const boxes = (drawing: Drawing, layer: LayerName) =>
  itemsOf(drawing, layer)
    .filter((item): item is Polyline => item.kind === "polyline")
    .map(({ points }) => {
      const ys = points.map(([, y]) => y);
      return [Math.min(...ys), Math.max(...ys)] as const;
    });

const solenoidOf = (json: unknown, system: "metric" | "inch" = "metric") =>
  templates(drawnOf(json, system)).solenoid;

describe("the solenoid's page", () => {
  test("has the tip drawn back by the gap, the stroke out, and the mouth where the file has them", () => {
    // Slot's mouth 375 mm below the axis, sill 383 mm; tip gap 3 mm, stroke 8 mm.
    const drawing = solenoidOf(exampleJson("medium-dog"));
    const [strike, bolt] = boxes(drawing, "LATCH");
    const [, mouth] = strike;
    expect(bolt[0] - mouth).toBeCloseTo(3, 9);
    const [, out] = boxes(drawing, "HIDDEN");
    expect(mouth - out[0]).toBeCloseTo(5, 9);
    expect(out[1] - out[0]).toBeCloseTo(8, 9);
    const sill = itemsOf(drawing, "OUTLINE").map((item) =>
      item.kind === "line" ? item.from[1] : Number.NaN,
    );
    for (const y of sill) expect(y - mouth).toBeCloseTo(8, 9);
  });

  test("stands on its head for a bolt that hangs on the flap", () => {
    const drawing = solenoidOf(variant({ latch: { boltPoints: "down" } }));
    const [strike, bolt] = boxes(drawing, "LATCH");
    const [mouth] = strike;
    expect(mouth - bolt[1]).toBeCloseTo(3, 9);
    expect(bolt[0]).toBeLessThan(bolt[1]);
    expect(sentences(drawing)).toContain("must stand among the file's extra masses");
  });

  test("says that the holes are the bracket's own, and draws none", () => {
    const drawing = solenoidOf(exampleJson("cat"));
    expect(itemsOf(drawing, "DRILL")).toEqual([]);
    expect(sentences(drawing)).toContain("The hole pattern is your solenoid's own");
  });

  test("is there for a latch without a coil, not without a latch", () => {
    const bare = solenoidOf(variant({ solenoid: null }));
    expect(sentences(bare)).not.toContain("It pulls");
    expect(Object.keys(templates(drawnOf(variant({ latch: null }))))).toEqual(["flap", "frame"]);
  });

  test.each(EXAMPLES.flatMap((name) => [[name, "metric"] as const, [name, "inch"] as const]))(
    "%s in %s: one page of either paper, all words within it and clear of each other",
    (name, system) => {
      const drawing = solenoidOf(exampleJson(name), system);
      for (const paper of [PAPERS.a4, PAPERS.letter]) expect(tiling(drawing, paper).tiles).toHaveLength(1);
      const spans = textsOf(drawing).map(({ at: [x, y], text, size, anchor, strong }) => {
        const width = textWidth(text, size, strong ?? false);
        const left = anchor === "end" ? x - width : anchor === "middle" ? x - width / 2 : x;
        return { text, left, right: left + width, top: y - 0.7 * size, bottom: y };
      });
      for (const one of spans) {
        expect(one.left, one.text).toBeGreaterThanOrEqual(0);
        expect(one.right, one.text).toBeLessThanOrEqual(drawing.widthMm);
        expect(one.bottom, one.text).toBeLessThanOrEqual(drawing.heightMm);
        for (const other of spans) {
          if (other === one) continue;
          const apart =
            other.left >= one.right ||
            other.right <= one.left ||
            other.top >= one.bottom ||
            other.bottom <= one.top;
          expect(apart, `${one.text} | ${other.text}`).toBe(true);
        }
      }
    },
  );
});
