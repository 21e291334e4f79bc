// The door in 3D on the real build: it draws, it moves with the film, every view and every option shows something else.
import { expect, test } from "vitest";
import { setUpApp } from "./harness/app.ts";
import { pixelsOf } from "./harness/pixels.ts";
import { openBench } from "./helpers/bench.ts";
import { doorCanvas, shareOf, stageTool, standingPicture } from "./helpers/scene.ts";

const app = setUpApp();

/** Ground of a cut bolt, as renderer/three/look/look.ts draws it. */
const CUT_BRASS = [0xe3, 0xbd, 0x62] as const;

test("the canvas draws the door, and its pixels change while the film runs", async () => {
  const page = await openBench(app, { reducedMotion: "reduce" });
  await doorCanvas(page).waitFor();
  const before = await standingPicture(page);
  expect((await pixelsOf(doorCanvas(page))).colours).toBeGreaterThan(100);
  await page.keyboard.press("Space");
  const seen = new Set<string>();
  for (let i = 0; i < 4; i++) {
    await page.waitForTimeout(1200);
    seen.add((await pixelsOf(doorCanvas(page))).digest);
  }
  await page.keyboard.press("Space");
  seen.delete(before);
  expect(seen.size).toBeGreaterThanOrEqual(2);
});

test("every view draws something different, and the same again when one comes back to it", async () => {
  const page = await openBench(app, { reducedMotion: "reduce" });
  await doorCanvas(page).waitFor();
  const side = await standingPicture(page);
  const seen = new Set([side]);
  for (const view of ["Inside", "Outside", "Latch"]) {
    await stageTool(page, view);
    seen.add(await standingPicture(page));
  }
  await stageTool(page, "Free");
  const free = await standingPicture(page);
  expect(seen.add(free).size).toBe(5);
  await stageTool(page, "Side");
  expect(await standingPicture(page)).toBe(side);
  // Nothing of the side view's cut is left in the free one.
  await stageTool(page, "Free");
  expect(await standingPicture(page)).toBe(free);
});

test("the magnets come and go, and the cut shows the latch", async () => {
  const page = await openBench(app, { reducedMotion: "reduce", colorScheme: "light" });
  await doorCanvas(page).waitFor();
  await stageTool(page, "Inside");
  const closed = await standingPicture(page);
  await stageTool(page, "Magnets");
  expect(await standingPicture(page)).not.toBe(closed);
  await stageTool(page, "Magnets");
  expect(await standingPicture(page)).toBe(closed);

  await stageTool(page, "Latch");
  await standingPicture(page);
  const whole = await shareOf(page, CUT_BRASS, 10);
  await stageTool(page, "Section");
  await standingPicture(page);
  const cut = await shareOf(page, CUT_BRASS, 10);
  expect(cut).toBeGreaterThan(0.004);
  expect(cut).toBeGreaterThan(10 * whole);
});

test("the keyboard turns the view", async () => {
  const page = await openBench(app, { reducedMotion: "reduce" });
  await doorCanvas(page).waitFor();
  const before = await standingPicture(page);
  await page.getByRole("group", { name: /three dimensions/ }).focus();
  await page.keyboard.press("ArrowLeft");
  const turned = await standingPicture(page);
  expect(turned).not.toBe(before);
  await page.keyboard.press("+");
  expect(await standingPicture(page)).not.toBe(turned);
});
