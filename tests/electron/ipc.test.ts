import type { BrowserWindow } from "electron";
import { beforeEach, describe, expect, test, vi } from "vitest";
import { type Handlers, setUpIpc, tell } from "../../electron/ipc.ts";
import { CALL_CHANNEL, EVENT_CHANNEL } from "../../electron/messages.ts";
import { PAGE_URL } from "../../electron/urls.ts";

type Handle = (event: unknown, name: unknown, args: unknown) => Promise<unknown>;
const registered = new Map<string, Handle>();

vi.mock("electron", () => ({
  ipcMain: { handle: (channel: string, handle: Handle) => registered.set(channel, handle) },
}));

const mainFrame = { url: PAGE_URL };
const sent: unknown[] = [];
let destroyed = false;
const window = {
  isDestroyed: () => destroyed,
  webContents: { mainFrame, send: (channel: string, event: unknown) => sent.push([channel, event]) },
} as unknown as BrowserWindow;

const asked: unknown[] = [];
const handlers = {
  "recent.list": async () => [],
  "close.unsaved": async (args: unknown) => asked.push(args),
  "door.open": async () => {
    throw Object.assign(new Error("ENOSPC: no space left"), { code: "ENOSPC" });
  },
} as unknown as Handlers;

const ask = (name: unknown, args: unknown, senderFrame: unknown = mainFrame): Promise<unknown> => {
  const handle = registered.get(CALL_CHANNEL);
  if (handle === undefined) throw new Error("no gateway");
  return handle({ senderFrame }, name, args);
};

beforeEach(() => {
  registered.clear();
  asked.length = 0;
  sent.length = 0;
  destroyed = false;
  mainFrame.url = PAGE_URL;
  setUpIpc(() => window, handlers);
});

describe("the gateway", () => {
  test("is one channel", () => expect([...registered.keys()]).toEqual([CALL_CHANNEL]));

  test("passes a good request to its handler and the answer back", async () => {
    expect(await ask("recent.list", {})).toEqual({ ok: true, value: [] });
    expect(await ask("close.unsaved", { unsaved: true })).toEqual({ ok: true, value: 1 });
    expect(asked).toEqual([{ unsaved: true }]);
  });

  test("refuses a malformed request before any handler sees it", async () => {
    expect(await ask("close.unsaved", { unsaved: "yes" })).toEqual({
      ok: false,
      message: "close.unsaved.unsaved must be true or false",
    });
    expect(await ask("nothing", {})).toEqual({ ok: false, message: "there is no such request" });
    expect(asked).toEqual([]);
  });

  test("turns a system's error into words", async () => {
    expect(await ask("door.open", {})).toEqual({ ok: false, message: "the disk is full" });
  });
});

describe("who may ask", () => {
  const refusal = { ok: false, message: "this page may not ask the shell for anything" };

  test("no frame inside the page, even of the app itself", async () => {
    expect(await ask("recent.list", {}, { url: PAGE_URL })).toEqual(refusal);
  });

  test("no frame that is gone", async () => expect(await ask("recent.list", {}, null)).toEqual(refusal));

  test.each(["https://example.org/", "file:///tmp/index.html", "about:blank", "app://other/index.html", ""])(
    "not the main frame while it shows %j",
    async (url) => {
      mainFrame.url = url;
      expect(await ask("recent.list", {})).toEqual(refusal);
    },
  );

  test("no window that is closed", async () => {
    destroyed = true;
    expect(await ask("recent.list", {})).toEqual(refusal);
  });

  test("nobody before there is a window", async () => {
    registered.clear();
    setUpIpc(() => undefined, handlers);
    expect(await ask("recent.list", {})).toEqual(refusal);
  });
});

test("the page is told on one channel, and a closed window not at all", () => {
  tell(window, { kind: "menu", command: "save" });
  destroyed = true;
  tell(window, { kind: "menu", command: "save" });
  tell(undefined, { kind: "menu", command: "save" });
  expect(sent).toEqual([[EVENT_CHANNEL, { kind: "menu", command: "save" }]]);
});
