// The browser and the harness themselves: that WebGL2 draws, that pixels can be read, that complaints are heard.
import { statSync } from "node:fs";
import { expect, test } from "vitest";
import { setUpApp } from "./harness/app.ts";
import { pixelsOf } from "./harness/pixels.ts";

const app = setUpApp();

test("the built page opens under its content security policy without a complaint", async () => {
  const page = await app.open();
  expect(await page.title()).toContain("Swingstill");
  await page.locator("#root > *").first().waitFor();
  expect(statSync(await app.picture(page, "opened")).size).toBeGreaterThan(1000);
});

/** Runs in the page: a WebGL2 canvas filled with one colour, and the colour read back. */
function paint({ red, green }: { red: number; green: number }): number[] | string {
  const old = document.getElementById("probe");
  const canvas = (old ?? document.body.appendChild(document.createElement("canvas"))) as HTMLCanvasElement;
  canvas.id = "probe";
  Object.assign(canvas.style, { position: "fixed", inset: "0 auto auto 0", zIndex: "9999" });
  const gl = canvas.getContext("webgl2");
  if (gl === null) return "no WebGL2";
  gl.clearColor(red, green, 0, 1);
  gl.clear(gl.COLOR_BUFFER_BIT);
  // A smaller square in the middle, so that there are two colours.
  gl.enable(gl.SCISSOR_TEST);
  gl.scissor(canvas.width / 4, canvas.height / 4, canvas.width / 2, canvas.height / 2);
  gl.clearColor(0, 0, 1, 1);
  gl.clear(gl.COLOR_BUFFER_BIT);
  gl.disable(gl.SCISSOR_TEST);
  const pixel = new Uint8Array(4);
  gl.readPixels(0, 0, 1, 1, gl.RGBA, gl.UNSIGNED_BYTE, pixel);
  return [...pixel];
}

test("WebGL2 draws, and what it drew can be read, from inside and from outside", async () => {
  const page = await app.open();
  expect(await page.evaluate(paint, { red: 1, green: 0 })).toEqual([255, 0, 0, 255]);
  const probe = page.locator("#probe");
  const red = await pixelsOf(probe);
  expect(red).toMatchObject({ width: 300, height: 150, colours: 2 });
  expect((await pixelsOf(probe)).digest).toBe(red.digest);
  expect(await page.evaluate(paint, { red: 0, green: 1 })).toEqual([0, 255, 0, 255]);
  expect((await pixelsOf(probe)).digest).not.toBe(red.digest);
});

test("complaints of a page are heard", async () => {
  const expected = [
    /^error: on purpose$/,
    /^warning: careful$/,
    /^uncaught: thrown$/,
    /^404: .*gone\.js$/,
    /^error: Failed/,
  ];
  const page = await app.open({ expected });
  await page.evaluate(async () => {
    console.error("on purpose");
    console.warn("careful");
    setTimeout(() => {
      throw new Error("thrown");
    });
    await fetch("/gone.js");
  });
  const missed = () => expected.filter((pattern) => !app.heard(page).some((text) => pattern.test(text)));
  await expect.poll(missed).toEqual([]);
});

test("an inline script does not run", async () => {
  const page = await app.open({ expected: [/Content Security Policy/] });
  const ran = await page.evaluate(() => {
    const script = document.createElement("script");
    script.textContent = "window.ran = true;";
    document.head.append(script);
    return "ran" in window;
  });
  expect(ran).toBe(false);
});
