import type { Session } from "electron";
import { beforeEach, describe, expect, test, vi } from "vitest";
import { setUpNavigation, setUpSession } from "../../electron/navigation.ts";
import { PAGE_URL } from "../../electron/urls.ts";

type Listener = (...args: never[]) => unknown;
const opened: string[] = [];
const appListeners = new Map<string, Listener>();

vi.mock("electron", () => ({
  app: { on: (name: string, listener: Listener) => appListeners.set(name, listener) },
  shell: { openExternal: async (url: string) => opened.push(url) },
}));

const listeners = new Map<string, Listener>();
let openWindow: (details: { url: string }) => unknown;

beforeEach(() => {
  opened.length = 0;
  listeners.clear();
  setUpNavigation();
  const contents = {
    on: (name: string, listener: Listener) => listeners.set(name, listener),
    setWindowOpenHandler: (handler: typeof openWindow) => {
      openWindow = handler;
    },
  };
  appListeners.get("web-contents-created")?.(...([{}, contents] as never[]));
});

const prevented = (name: string, url: string): boolean => {
  const preventDefault = vi.fn();
  listeners.get(name)?.(...([{ url, preventDefault }] as never[]));
  return preventDefault.mock.calls.length > 0;
};

const ELSEWHERE = [
  "https://example.org/",
  "file:///etc/passwd",
  "javascript:alert(1)",
  "app://other/index.html",
];

describe("every page that comes to be", () => {
  test.each(ELSEWHERE)("does not go to %s, in its main frame or another", (url) => {
    expect(prevented("will-navigate", url)).toBe(true);
    expect(prevented("will-frame-navigate", url)).toBe(true);
  });

  test("may load itself anew, and no other file in its place", () => {
    expect(prevented("will-navigate", PAGE_URL)).toBe(false);
    expect(prevented("will-navigate", "app://swingstill/assets/a.svg")).toBe(true);
  });

  test("is not redirected and holds no other page's view", () => {
    expect(prevented("will-redirect", PAGE_URL)).toBe(true);
    expect(prevented("will-attach-webview", PAGE_URL)).toBe(true);
  });

  test("opens no window; a plain https address goes to the person's browser", () => {
    for (const url of [...ELSEWHERE, PAGE_URL, "https://doi.org/x"])
      expect(openWindow({ url })).toEqual({ action: "deny" });
    expect(opened).toEqual(["https://example.org/", "https://doi.org/x"]);
  });
});

describe("the session", () => {
  const set = new Map<string, Listener>();
  const on = (name: string) => (handler: Listener) => set.set(name, handler);
  setUpSession({
    webRequest: { onBeforeRequest: on("request") },
    setPermissionRequestHandler: on("permission"),
    setPermissionCheckHandler: on("check"),
    on: (name: string, listener: Listener) => set.set(name, listener),
  } as unknown as Session);

  const answer = (name: string, ...args: unknown[]): unknown => {
    let answered: unknown;
    const returned = set.get(name)?.(...([...args, (value: unknown) => (answered = value)] as never[]));
    return answered ?? returned;
  };
  const contents = (url: string) => ({ getURL: () => url });

  test("lets the page's own files through and no network", () => {
    expect(answer("request", { url: PAGE_URL })).toEqual({ cancel: false });
    for (const url of ELSEWHERE) expect(answer("request", { url })).toEqual({ cancel: true });
  });

  test("grants copying and full screen to the app alone, and nothing else", () => {
    expect(answer("permission", contents(PAGE_URL), "clipboard-sanitized-write")).toBe(true);
    expect(answer("permission", contents("https://example.org/"), "clipboard-sanitized-write")).toBe(false);
    for (const wish of ["media", "geolocation", "notifications", "clipboard-read", "openExternal", "usb"])
      expect(answer("permission", contents(PAGE_URL), wish)).toBe(false);
    expect(answer("check", null, "media", "app://swingstill/")).toBe(false);
    expect(answer("check", null, "fullscreen", "app://swingstill/")).toBe(true);
  });

  test("downloads nothing past the save dialog", () => {
    const preventDefault = vi.fn();
    set.get("will-download")?.(...([{ preventDefault }] as never[]));
    expect(preventDefault).toHaveBeenCalledOnce();
  });
});
