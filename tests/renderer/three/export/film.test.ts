import { describe, expect, test } from "vitest";
import { recordCanvas, webmType } from "../../../../renderer/three/export/film.ts";

const canvas = {} as HTMLCanvasElement;

test("the best WebM that is supported is taken, and none where none is", () => {
  expect(webmType((type) => type.includes("vp8"))).toBe("video/webm;codecs=vp8");
  expect(webmType((type) => type === "video/webm")).toBe("video/webm");
  expect(webmType(() => false)).toBeNull();
  expect(webmType(null)).toBeNull();
});

describe("recording", () => {
  test.each([
    { from: 1, to: 1, rate: 1 },
    { from: 2, to: 1, rate: 1 },
    { from: 0, to: 1, rate: 0 },
    { from: 0, to: Number.NaN, rate: 1 },
  ])("refuses the stretch %o", async (range) => {
    await expect(recordCanvas(canvas, () => {}, range)).rejects.toThrow(/end after its start/);
  });

  test("says so where the browser cannot record", async () => {
    await expect(recordCanvas(canvas, () => {}, { from: 0, to: 1, rate: 1 })).rejects.toThrow(
      /cannot record WebM/,
    );
  });
});
