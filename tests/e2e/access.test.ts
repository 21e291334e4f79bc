// For everyone: axe in both themes, keyboard alone, double text, a small window.
import type { Page } from "playwright-core";
import { describe, expect, test } from "vitest";
import { type OpenOptions, setUpApp } from "./harness/app.ts";
import { violations } from "./helpers/axe.ts";
import { entry, openBench, station } from "./helpers/bench.ts";

const app = setUpApp();

async function open(options: OpenOptions): Promise<Page> {
  const page = await openBench(app, options);
  await page.locator(".strip").first().waitFor();
  await page.getByRole("button", { name: "Pause" }).click();
  return page;
}

describe.each(["light", "dark"] as const)("in %s colours axe has nothing to object to", (colorScheme) => {
  test("in any station", async () => {
    const page = await open({ colorScheme });
    for (const id of ["verdict", "animals", "flap", "magnets", "solenoid", "timer"]) {
      await station(page, id);
      expect({ id, found: await violations(page) }).toEqual({ id, found: [] });
    }
  });

  test("in the trial with something found, and in the study's tolerances", async () => {
    const page = await open({ colorScheme });
    await station(page, "trial");
    await page.locator('[data-trial="still"]').fill("6.5");
    await page.locator('[data-trial="rest"]').fill("far");
    await page.locator(".trial-value").first().waitFor();
    expect(await violations(page)).toEqual([]);
    await page.getByRole("radio", { name: "Study" }).click();
    await page.locator(".tolerances summary").click();
    await entry(page, "study.tolerances.magnets.gap").fill("wide");
    await page.locator(".tolerance .entry-fault").waitFor();
    expect(await violations(page)).toEqual([]);
  });

  test("with a wrong entry", async () => {
    const page = await open({ colorScheme });
    await station(page, "magnets");
    await entry(page, "magnets.gap").fill("wide");
    await page.locator(".entry-fault").waitFor();
    expect(await violations(page)).toEqual([]);
  });

  test("in the menus, an explanation and the dialogs", async () => {
    const page = await open({ colorScheme });
    await station(page, "flap");
    await page.locator(".figure").first().click();
    await page.getByRole("dialog").waitFor();
    expect(await violations(page)).toEqual([]);
    await page.keyboard.press("Escape");
    await page.getByRole("button", { name: "View" }).click();
    await page.getByRole("menu").waitFor();
    expect(await violations(page)).toEqual([]);
    await page.keyboard.press("Escape");
    await page.keyboard.press("F1");
    await page.getByRole("dialog").waitFor();
    expect(await violations(page)).toEqual([]);
  });

  test("with everything else on the stage", async () => {
    const page = await open({ colorScheme });
    await page.getByRole("button", { name: "Pin a copy" }).first().click();
    for (const stage of ["Swing", "Study", "Compare"]) {
      await page.getByRole("radio", { name: stage }).click();
      await page.waitForTimeout(500);
      expect({ stage, found: await violations(page) }).toEqual({ stage, found: [] });
    }
  });
});

/** Presses Tab until the focus is on what is wanted; fails after a round. */
async function tabTo(page: Page, wanted: (focus: string) => boolean, key = "Tab"): Promise<void> {
  for (let i = 0; i < 150; i++) {
    const focus = await page.evaluate(() => {
      const element = document.activeElement as HTMLElement | null;
      return [
        element?.id,
        element?.dataset.path,
        element?.getAttribute("aria-label"),
        element?.textContent,
      ].join("|");
    });
    if (wanted(focus)) return;
    await page.keyboard.press(key);
  }
  throw new Error("the focus never came there");
}

test("by keyboard alone: a part is found, changed, explained, undone, and the film steps", async () => {
  const page = await open({});
  await tabTo(page, (focus) => focus.startsWith("tab-verdict"));
  for (let i = 0; i < 6; i++) await page.keyboard.press("ArrowDown");
  expect(await page.getByRole("tabpanel").getByRole("heading", { level: 2 }).textContent()).toBe("Magnets");
  await tabTo(page, (focus) => focus.includes("|magnets.gap|"));
  await page.keyboard.press("ArrowUp");
  await page.keyboard.press("Enter");
  expect(await entry(page, "magnets.gap").inputValue()).toBe("6.1 mm");
  await tabTo(page, (focus) => focus.includes("back to the centre"));
  await page.keyboard.press("Enter");
  await page.getByRole("dialog").waitFor();
  await page.keyboard.press("Escape");
  await page.keyboard.press("Control+z");
  expect(await entry(page, "magnets.gap").inputValue()).toBe("6 mm");
  const clock = page.locator(".clock");
  const before = await clock.textContent();
  for (let i = 0; i < 10; i++) await page.keyboard.press(".");
  expect(await clock.textContent()).not.toBe(before);
});

test("F6 goes from region to region", async () => {
  const page = await open({});
  const regions: (string | undefined)[] = [];
  for (let i = 0; i < 3; i++) {
    await page.keyboard.press("F6");
    regions.push(
      await page.evaluate(
        () => (document.activeElement?.closest("[data-region]") as HTMLElement)?.dataset.region,
      ),
    );
  }
  expect([...regions].sort()).toEqual(["parts", "stage", "strip"]);
});

test("what has the focus is to be seen", async () => {
  const page = await open({});
  for (let i = 0; i < 30; i++) {
    await page.keyboard.press("Tab");
    const box = await page.evaluate(() => {
      const element = document.activeElement;
      if (element === null || element === document.body) return null;
      const { x, y, width, height } = element.getBoundingClientRect();
      return {
        name: element.outerHTML.slice(0, 120),
        clip: { x: x - 6, y: y - 6, width: width + 12, height: height + 12 },
      };
    });
    if (box === null) continue;
    const clip = { ...box.clip, x: Math.max(0, box.clip.x), y: Math.max(0, box.clip.y) };
    const focused = await page.screenshot({ clip });
    await page.evaluate(() => {
      const element = document.activeElement as HTMLElement;
      element.dataset.left = "";
      element.blur();
    });
    const left = await page.screenshot({ clip });
    await page.evaluate(() => {
      const element = document.querySelector<HTMLElement>("[data-left]");
      delete element?.dataset.left;
      element?.focus();
    });
    expect({ name: box.name, differs: !focused.equals(left) }).toEqual({ name: box.name, differs: true });
  }
});

/** Nothing sticks out sideways. */
async function overflows(page: Page): Promise<number> {
  return page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
}

test("with double text everything is still there and in reach", async () => {
  const page = await open({ viewport: { width: 1360, height: 880 } });
  for (let i = 0; i < 5; i++) await page.keyboard.press("Control+Equal");
  expect(await page.evaluate(() => getComputedStyle(document.documentElement).fontSize)).toBe("32px");
  expect(await overflows(page)).toBe(0);
  await station(page, "timer");
  await entry(page, "timer.holdTime").fill("11 s");
  await page.locator(".figure").first().scrollIntoViewIfNeeded();
  expect(await page.locator(".figure").first().isVisible()).toBe(true);
  await app.picture(page, "double-text");
  await page.keyboard.press("Control+0");
  expect(await page.evaluate(() => getComputedStyle(document.documentElement).fontSize)).toBe("16px");
});

test("a small window holds everything without scrolling, the door the largest", async () => {
  const page = await open({ viewport: { width: 1024, height: 700 } });
  expect(await overflows(page)).toBe(0);
  const size = async (selector: string) => {
    const box = await page.locator(selector).first().boundingBox();
    if (box === null) throw new Error(`${selector} is not shown`);
    expect(box.x + box.width).toBeLessThanOrEqual(1024);
    expect(box.y + box.height).toBeLessThanOrEqual(700.5);
    return box.width * box.height;
  };
  const door = await size(".stage");
  for (const other of [".form", ".rail", ".strip-place", ".head"])
    expect(await size(other)).toBeLessThan(door);
});

test.each([
  ["light", 1440, 900],
  ["dark", 1440, 900],
  ["light", 1024, 700],
  ["dark", 1024, 700],
] as const)("a picture of the window in %s colours, %d×%d", async (colorScheme, width, height) => {
  const page = await open({ colorScheme, viewport: { width, height } });
  await page.waitForTimeout(800);
  await app.picture(page, `window-${colorScheme}-${width}`);
});
