// How fast the built app is, printed: nothing here passes or fails by a time. What is asserted are counts: that edits reach the
// picture, that frames are drawn, and how much one of them leaves to be collected.
import type { CDPSession, Page } from "playwright-core";
import { expect, test } from "vitest";
import { setUpApp } from "./harness/app.ts";
import { entry, openBench, ready, station } from "./helpers/bench.ts";
import { doorCanvas } from "./helpers/scene.ts";

const app = setUpApp();

const EDITS = 24;
const EDITS_ALONE = 8;
/** The page's own thread is slowed by this; workers are not. */
const THROTTLE = 4;

/** ms after which nothing follows an edit: the finely drawn picture, the advice, the end of typing have come. */
const AT_REST = 2000;

/** Seconds of JavaScript on the page's own thread so far. */
async function scriptTime(session: CDPSession): Promise<number> {
  const { metrics } = await session.send("Performance.getMetrics");
  return metrics.find(({ name }) => name === "ScriptDuration")?.value ?? Number.NaN;
}

async function sessionOf(page: Page): Promise<CDPSession> {
  const session = await page.context().newCDPSession(page);
  await session.send("Performance.enable");
  return session;
}

function quantiles(values: readonly number[]): string {
  const sorted = [...values].sort((a, b) => a - b);
  const at = (share: number) => sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))];
  return `median ${at(0.5).toFixed(0)} ms, p95 ${at(0.95).toFixed(0)} ms`;
}

/** Types a text into an entry and answers when the strip shows another trace: ms in the page. */
async function editToTrace(page: Page, path: string, text: string): Promise<number> {
  return page.evaluate(
    ([at, typed]) =>
      new Promise<number>((resolve, reject) => {
        const input = document.querySelector<HTMLInputElement>(`[data-path="${at}"]`);
        const trace = document.querySelector(`path[class="strip-line"]`);
        if (input === null || trace === null) return reject(new Error("no entry or no trace"));
        const from = performance.now();
        const observer = new MutationObserver(() => {
          observer.disconnect();
          requestAnimationFrame(() => resolve(performance.now() - from));
        });
        observer.observe(trace, { attributes: true, attributeFilter: ["d"] });
        const write = Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, "value")?.set;
        write?.call(input, typed);
        input.dispatchEvent(new Event("input", { bubbles: true }));
      }),
    [path, text] as const,
  );
}

test("an edit reaches the trace on screen", async () => {
  const page = await openBench(app, { reducedMotion: "reduce" });
  await page.locator(`path[class="strip-line"]`).waitFor();
  await station(page, "magnets");
  await entry(page, "magnets.gap").waitFor();
  const session = await sessionOf(page);
  await session.send("Emulation.setCPUThrottlingRate", { rate: THROTTLE });
  const waits: number[] = [];
  const scripts: number[] = [];
  const alone: number[] = [];
  const all: number[] = [];
  for (let i = 0; i < EDITS; i++) {
    const before = await scriptTime(session);
    waits.push(await editToTrace(page, "magnets.gap", `${(5 + 0.1 * i).toFixed(1)} mm`));
    scripts.push(1000 * ((await scriptTime(session)) - before));
  }
  for (let i = 0; i < EDITS_ALONE; i++) {
    await page.waitForTimeout(AT_REST);
    const before = await scriptTime(session);
    await editToTrace(page, "magnets.gap", `${(8 + 0.1 * i).toFixed(1)} mm`);
    alone.push(1000 * ((await scriptTime(session)) - before));
    await page.waitForTimeout(AT_REST);
    all.push(1000 * ((await scriptTime(session)) - before));
  }
  await session.send("Emulation.setCPUThrottlingRate", { rate: 1 });
  console.info(
    [
      `edits one upon the other, each to its trace on screen, the page's thread slowed ${THROTTLE}×: script ${quantiles(scripts)} (the picture on the stage follows a frame later); waited ${quantiles(waits)}`,
      `an edit by itself: script to the trace ${quantiles(alone)}`,
      `  until nothing follows it any more (the trace, the door in 3D, coarse and then fine, advice, the copy kept): script ${quantiles(all)}`,
    ].join("\n"),
  );
  expect(waits).toHaveLength(EDITS);
});

/** Bytes and the functions that took them, while something runs. */
async function allocated(session: CDPSession, work: () => Promise<void>) {
  await session.send("HeapProfiler.enable");
  await session.send("HeapProfiler.startSampling", {
    samplingInterval: 512,
    includeObjectsCollectedByMajorGC: true,
    includeObjectsCollectedByMinorGC: true,
  });
  await work();
  const { profile } = await session.send("HeapProfiler.stopSampling");
  const taken = new Map<string, number>();
  /** By the file of the outermost function: the loop that the memory was taken in. */
  const loops = new Map<string, number>();
  let total = 0;
  const add = (map: Map<string, number>, name: string, bytes: number) =>
    map.set(name, (map.get(name) ?? 0) + bytes);
  const walk = (node: typeof profile.head, loop: string | null): void => {
    const { functionName, url, lineNumber } = node.callFrame;
    const file = url.slice(url.lastIndexOf("/") + 1);
    add(taken, `${functionName || "(nameless)"} ${file}:${lineNumber + 1}`, node.selfSize);
    add(loops, loop ?? file, node.selfSize);
    total += node.selfSize;
    for (const child of node.children) walk(child, loop ?? (file === "" ? null : file));
  };
  walk(profile.head, null);
  const falling = (map: Map<string, number>) => [...map].sort(([, a], [, b]) => b - a);
  return { total, loops: falling(loops).slice(0, 3), most: falling(taken).slice(0, 6) };
}

/** Counts frames until so many are drawn. */
const frames = (page: Page, count: number): Promise<number> =>
  page.evaluate(
    (wanted) =>
      new Promise<number>((resolve) => {
        let seen = 0;
        const from = performance.now();
        const next = (): void => {
          if (++seen > wanted) resolve(performance.now() - from);
          else requestAnimationFrame(next);
        };
        requestAnimationFrame(next);
      }),
    count,
  );

const FRAMES = 120;
/** Bytes: the renderer's own small change; a column of the trace or a geometry made anew is more. */
const MOST_A_FRAME = 50_000;

test("a frame of the replay", async () => {
  const page = await openBench(app, { reducedMotion: "reduce" });
  await doorCanvas(page).waitFor();
  await page.waitForTimeout(2000);
  const session = await sessionOf(page);
  const idle = await allocated(session, async () => void (await frames(page, FRAMES)));
  await page.keyboard.press("Space");
  // The animal has come by: everything there is has been drawn once.
  await page.waitForTimeout(4500);
  const before = await scriptTime(session);
  const spent = await frames(page, FRAMES);
  const script = (1000 * ((await scriptTime(session)) - before)) / FRAMES;
  const replay = await allocated(session, async () => void (await frames(page, FRAMES)));
  const perFrame = (replay.total - idle.total) / FRAMES;
  console.info(
    [
      `replay: ${script.toFixed(2)} ms of script a frame, ${(spent / FRAMES).toFixed(1)} ms from frame to frame (drawn by the processor)`,
      `allocated: ${(perFrame / 1000).toFixed(1)} kB a frame over ${FRAMES} frames (idle ${(idle.total / FRAMES / 1000).toFixed(1)} kB)`,
      // The canvas's loop is in DoorScene's file: three's renderer, its binding and the poses. The page's is the playhead, clock and strip.
      ...replay.loops.map(
        ([file, bytes]) =>
          `  ${(bytes / FRAMES / 1000).toFixed(2)} kB a frame in the loop of ${file || "the browser"}`,
      ),
      ...replay.most.map(([name, bytes]) => `  ${(bytes / FRAMES / 1000).toFixed(2)} kB a frame: ${name}`),
    ].join("\n"),
  );
  expect(perFrame).toBeLessThan(MOST_A_FRAME);
});

test("from launch to a door that swings", async () => {
  const page = await app.open();
  await ready(page);
  const verdict = await page.evaluate(() => performance.now());
  await doorCanvas(page).waitFor();
  const clock = page.locator(".clock");
  const first = await clock.textContent();
  await expect.poll(() => clock.textContent(), { timeout: 20_000, interval: 20 }).not.toBe(first);
  const swinging = await page.evaluate(() => performance.now());
  const paint = await page.evaluate(
    () => performance.getEntriesByName("first-contentful-paint")[0]?.startTime ?? Number.NaN,
  );
  console.info(
    `launch: first paint ${paint.toFixed(0)} ms, verdict ${verdict.toFixed(0)} ms, swinging door ${swinging.toFixed(0)} ms`,
  );
  expect(await doorCanvas(page).count()).toBe(1);
});
