// The built app in a real browser, with everything it complains about collected.
import { join, resolve } from "node:path";
import type { Browser, BrowserContextOptions, Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, expect } from "vitest";
import { type Site, serveSite } from "../../../electron/start/server.ts";
import { launchChromium } from "./chromium.ts";

const root = resolve(import.meta.dirname, "../../..");
const OUT = join(root, "tests/e2e/out");

export interface OpenOptions extends BrowserContextOptions {
  /** Below the site's address, with its query. */
  readonly path?: string;
  /** Complaints a test brings about on purpose. */
  readonly expected?: readonly RegExp[];
}

export interface App {
  /** A fresh page with storage of its own; closed after the test, which fails if the page complained. */
  readonly open: (options?: OpenOptions) => Promise<Page>;
  /** Keeps a picture in tests/e2e/out; answers its path. */
  readonly picture: (page: Page, name: string) => Promise<string>;
  readonly url: () => string;
  /** Everything a page of this test complained about so far, expected or not. */
  readonly heard: (page: Page) => readonly string[];
}

interface Opened {
  readonly page: Page;
  readonly complaints: string[];
  readonly expected: readonly RegExp[];
}

/** Complaints of the software renderer about the test's own reading of pixels. */
const RENDERER_NOISE = [
  /GPU stall due to ReadPixels/,
  /GL_CLOSE_PATH_NV/,
  // @react-three/fiber 9 makes the clock that three 0.183 and later call outdated.
  /THREE\.Clock: This module has been deprecated/,
];

/**
 * Serves the built app and starts a browser for the tests of one file. To be called at the file's top level
 * or in a describe.
 */
export function setUpApp(): App {
  let site: Site;
  let browser: Browser;
  let opened: Opened[] = [];

  beforeAll(async () => {
    site = await serveSite(join(root, "dist/renderer"), 0);
    browser = await launchChromium();
  });

  afterEach(async () => {
    const pages = opened;
    opened = [];
    for (const { page } of pages) await page.context().close();
    expect(pages.flatMap(unexpected)).toEqual([]);
  });

  afterAll(async () => {
    await browser?.close();
    await site?.close();
  });

  return {
    url: () => site.url,
    heard: (page) => opened.find((one) => one.page === page)?.complaints ?? [],
    open: async ({ path = "", expected = [], ...options } = {}) => {
      const context = await browser.newContext({ viewport: { width: 1360, height: 880 }, ...options });
      const page = await context.newPage();
      const complaints: string[] = [];
      listen(page, (complaint) => complaints.push(complaint));
      opened.push({ page, complaints, expected });
      await page.goto(new URL(path, site.url).href);
      return page;
    },
    picture: async (page, name) => {
      const path = join(OUT, `${name}.png`);
      await page.screenshot({ path });
      return path;
    },
  };
}

const unexpected = ({ complaints, expected }: Opened): readonly string[] =>
  complaints.filter((text) => ![...RENDERER_NOISE, ...expected].some((pattern) => pattern.test(text)));

function listen(page: Page, complain: (text: string) => void): void {
  page.on("console", (message) => {
    if (message.type() === "error" || message.type() === "warning")
      complain(`${message.type()}: ${message.text()}`);
  });
  page.on("pageerror", (error) => complain(`uncaught: ${error.message}`));
  page.on("crash", () => complain("the page crashed"));
  page.on("requestfailed", (request) => {
    const reason = request.failure()?.errorText ?? "";
    if (reason !== "net::ERR_ABORTED") complain(`request failed: ${request.url()} ${reason}`);
  });
  page.on("response", (response) => {
    if (response.status() >= 400) complain(`${response.status()}: ${response.url()}`);
  });
}
