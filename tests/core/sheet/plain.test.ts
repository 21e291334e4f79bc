/** Dimensions and hatches taken apart, widths of words, contrast of inks. */
import fontkit from "@pdf-lib/fontkit";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { dimension, type PlainPrimitive, type Point } from "../../../core/sheet/drawing.ts";
import { faceBytes } from "../../../core/sheet/fonts.ts";
import * as look from "../../../core/sheet/look.ts";
import { plainPrimitives } from "../../../core/sheet/plain.ts";
import { textWidth } from "../../../core/sheet/text-width.ts";

const kinds = (items: readonly PlainPrimitive[]) => new Set(items.map(({ kind }) => kind));

describe("dimension", () => {
  const length = fc.integer({ min: 1, max: 400 });
  test("its arrows point at its feet, whichever way and however short", () => {
    fc.assert(
      fc.property(
        length,
        length,
        fc.constantFrom("x" as const, "y" as const),
        fc.boolean(),
        (a, b, along, turned) => {
          const [from, to]: [Point, Point] = turned
            ? [
                [a + b, 3],
                [a, 5],
              ]
            : [
                [a, 3],
                [a + b, 5],
              ];
          const flip = ([x, y]: Point): Point => (along === "x" ? [x, y] : [y, x]);
          const parts = plainPrimitives([dimension(flip(from), flip(to), along, 40, "12")]);
          const tips = parts.flatMap((part) =>
            part.kind === "polyline" && part.filled === true ? [part.points[0]] : [],
          );
          const at = tips.map((tip) => (along === "x" ? tip : [tip[1], tip[0]]));
          expect(at.map(([u]) => u).sort((p, q) => p - q)).toEqual([a, a + b]);
          expect(new Set(at.map(([, v]) => v))).toEqual(new Set([40]));
        },
      ),
    );
  });

  test("words that do not fit stand outside the arrows", () => {
    const parts = plainPrimitives([dimension([0, 0], [6, 0], "x", -5, "a long description")]);
    const words = parts.find((part) => part.kind === "text");
    expect(words?.kind === "text" && words.at[0]).toBeGreaterThan(6);
    const before = plainPrimitives([
      { ...dimension([0, 0], [6, 0], "x", -5, "a long description"), before: true },
    ]);
    const other = before.find((part) => part.kind === "text");
    expect(other?.kind === "text" && other.at[0] < 0 && other.anchor === "end").toBe(true);
  });
});

describe("hatch", () => {
  test("all of a rectangle and nothing beside it, at any turn", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 5, max: 60 }),
        fc.integer({ min: 5, max: 60 }),
        fc.double({ min: -1.5, max: 1.5, noNaN: true }),
        fc.double({ min: 0.4, max: 2, noNaN: true }),
        (width, height, turn, spacing) => {
          const points: Point[] = [
            [0, 0],
            [width, 0],
            [width, height],
            [0, height],
          ];
          const lines = plainPrimitives([{ kind: "hatch", points, spacing, turn }]);
          expect(kinds(lines)).toEqual(new Set(["line"]));
          let length = 0;
          for (const line of lines) {
            if (line.kind !== "line") continue;
            for (const [x, y] of [line.from, line.to]) {
              expect(x >= -1e-6 && x <= width + 1e-6 && y >= -1e-6 && y <= height + 1e-6).toBe(true);
            }
            length += Math.hypot(line.to[0] - line.from[0], line.to[1] - line.from[1]);
          }
          // Lines `spacing` apart cover the area: their total length times the spacing, but for the ends.
          const doubt = 2 * spacing * Math.hypot(width, height);
          expect(Math.abs(length * spacing - width * height)).toBeLessThan(doubt);
        },
      ),
    );
  });

  test("leaves a hole of a U free", () => {
    const points: Point[] = [
      [0, 0],
      [10, 0],
      [10, 30],
      [20, 30],
      [20, 0],
      [30, 0],
      [30, 40],
      [0, 40],
    ];
    const lines = plainPrimitives([{ kind: "hatch", points, spacing: 1, turn: 0 }]);
    for (const line of lines) {
      if (line.kind !== "line" || line.from[1] > 30) continue;
      const [left, right] = [line.from[0], line.to[0]].sort((a, b) => a - b);
      expect(right <= 10 + 1e-9 || left >= 20 - 1e-9).toBe(true);
    }
    expect(lines.length).toBe(30 * 2 + 10);
  });
});

describe("width of words", () => {
  const faces = ([400, 600] as const).map((weight) => fontkit.create(faceBytes("Figtree", weight) as Buffer));

  test.each([0, 1])("is that of the face, letter by letter (weight %i of two)", (i) => {
    for (let code = 32; code < 127; code++) {
      const { advanceWidth } = faces[i].glyphForCodePoint(code);
      expect([code, textWidth(String.fromCharCode(code), 1000, i === 1)]).toEqual([code, advanceWidth]);
    }
  });

  test("a letter not in the table is never taken for narrower than the face's", () => {
    for (const letter of "°±×−–“”½¼Ø²³µ≤≥→") {
      const { advanceWidth } = faces[0].glyphForCodePoint(letter.codePointAt(0) ?? 0);
      expect(textWidth(letter, 1000)).toBeGreaterThanOrEqual(Math.min(advanceWidth, 860));
    }
  });
});

/** Relative luminance and contrast by WCAG 2.2. */
function contrast(a: string, b: string): number {
  const luminance = (hex: string) => {
    const [r, g, bl] = [1, 3, 5].map((i) => {
      const c = Number.parseInt(hex.slice(i, i + 2), 16) / 255;
      return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
    });
    return 0.2126 * r + 0.7152 * g + 0.0722 * bl;
  };
  const [low, high] = [luminance(a), luminance(b)].sort((x, y) => x - y);
  return (high + 0.05) / (low + 0.05);
}

test("everything that is read has a contrast of 4.5 : 1 on white and on a box to write in", () => {
  const inks = [look.INK, look.INK_SOFT, look.ACCENT, look.CUT, look.DRILL, look.MAGNET, look.LATCH];
  for (const ink of [...inks, ...Object.values(look.STATUS_COLOUR)]) {
    for (const paper of ["#ffffff", look.TINT])
      expect([ink, contrast(ink, paper) >= 4.5]).toEqual([ink, true]);
  }
});
