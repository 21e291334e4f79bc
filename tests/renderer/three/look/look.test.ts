import { expect, test } from "vitest";
import { isWorthSaying } from "../../../../renderer/three/look/console.ts";
import { isClear } from "../../../../renderer/three/look/flap-look.ts";
import { chance } from "../../../../renderer/three/look/noise.ts";
import { readPalette, samePalette } from "../../../../renderer/three/look/palette.ts";
import { qualityFor } from "../../../../renderer/three/look/quality.ts";

test("a software renderer moves coarsely and stands finely, a graphics processor is used up to a bound", () => {
  const soft = qualityFor(
    "ANGLE (Google, Vulkan 1.3.0 (SwiftShader Device (Subzero)), SwiftShader driver)",
    1,
  );
  expect(soft.fine).toBe(false);
  expect(soft.moving).toBeLessThan(soft.still);
  const hard = qualityFor("ANGLE (Intel, Mesa Intel(R) UHD Graphics, OpenGL 4.6)", 3);
  expect(hard).toMatchObject({ fine: true, still: 1.5, moving: 1.5 });
  expect(qualityFor("", 1).still).toBe(1);
});

test("the palette is the page's tokens, and says grey where one is missing", () => {
  const tokens: Record<string, string> = { "--ink": " #112233 ", "--face": "Serif" };
  const palette = readPalette("dark", (name) => tokens[name] ?? "");
  expect(palette).toMatchObject({ theme: "dark", ink: "#112233", face: "Serif", ghost: "#808080" });
  expect(samePalette(palette, { ...palette })).toBe(true);
  expect(samePalette(palette, { ...palette, ink: "#112234" })).toBe(false);
});

test("one sees through polycarbonate, acrylic and glass, by whatever capitals", () => {
  expect(["polycarbonate", "Acrylic", " glass "].every(isClear)).toBe(true);
  expect(["oak", "PVC", "", "EPDM rubber"].some(isClear)).toBe(false);
});

test("chance repeats by its seed and spreads evenly", () => {
  const [a, b, other] = [chance(4), chance(4), chance(5)];
  const first = Array.from({ length: 2000 }, a);
  expect(Array.from({ length: 2000 }, b)).toEqual(first);
  expect(other()).not.toBe(first[0]);
  expect(first.reduce((sum, x) => sum + x, 0) / first.length).toBeCloseTo(0.5, 1);
  expect(Math.min(...first)).toBeGreaterThanOrEqual(0);
  expect(Math.max(...first)).toBeLessThan(1);
});

test("only the binding's own remark is kept from the console", () => {
  expect(isWorthSaying("THREE.Clock: This module has been deprecated. Please use THREE.Timer instead.")).toBe(
    false,
  );
  expect(isWorthSaying("THREE.WebGLRenderer: Context Lost.")).toBe(true);
});
