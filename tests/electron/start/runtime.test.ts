import { join } from "node:path";
import { describe, expect, test } from "vitest";
import {
  browserOpener,
  findRuntime,
  hasDisplay,
  type Machine,
  planStart,
} from "../../../electron/start/runtime.ts";

function machine(files: Readonly<Record<string, string>>, rest: Partial<Machine> = {}): Machine {
  return {
    env: {},
    system: "linux",
    packageFolder: "/pkg",
    read: (path) => files[path],
    exists: (path) => Object.hasOwn(files, path),
    ...rest,
  };
}

const PATH_FILE = join("/pkg", "path.txt");

describe("the runtime", () => {
  test("is where its package says", () => {
    const files = { [PATH_FILE]: "electron\n", [join("/pkg", "dist", "electron")]: "" };
    expect(findRuntime(machine(files))).toBe(join("/pkg", "dist", "electron"));
  });

  test("is not there on a fresh clone, nor where its file is missing", () => {
    expect(findRuntime(machine({}))).toBeUndefined();
    expect(findRuntime(machine({ [PATH_FILE]: "electron" }))).toBeUndefined();
  });

  test("may lie elsewhere, also before the package has named its executable", () => {
    const env = { ELECTRON_OVERRIDE_DIST_PATH: "/own" };
    expect(findRuntime(machine({ [join("/own", "electron")]: "" }, { env }))).toBe(join("/own", "electron"));
    const exe = join("/own", "electron.exe");
    expect(findRuntime(machine({ [exe]: "" }, { env, system: "win32" }))).toBe(exe);
    expect(findRuntime(machine({ [join("/pkg", "dist", "electron")]: "" }, { env }))).toBeUndefined();
  });
});

test("only Linux may be without a display", () => {
  expect(hasDisplay({}, "linux")).toBe(false);
  expect(hasDisplay({ DISPLAY: "" }, "linux")).toBe(false);
  expect(hasDisplay({ DISPLAY: ":0" }, "linux")).toBe(true);
  expect(hasDisplay({ WAYLAND_DISPLAY: "wayland-0" }, "linux")).toBe(true);
  expect(hasDisplay({}, "darwin")).toBe(true);
  expect(hasDisplay({}, "win32")).toBe(true);
});

describe("the way a start goes on", () => {
  const usual = { words: [], runtime: "/pkg/dist/electron", display: true, fetched: false, superUser: false };

  test("a window where the runtime is there", () => {
    expect(planStart(usual)).toEqual({ way: "desktop", runtime: "/pkg/dist/electron", options: [] });
  });

  test("as the super-user the runtime starts only without its sandbox", () => {
    expect(planStart({ ...usual, superUser: true })).toMatchObject({ options: ["--no-sandbox"] });
  });

  test("the runtime is fetched once, then the browser does", () => {
    expect(planStart({ ...usual, runtime: undefined })).toEqual({ way: "fetch" });
    expect(planStart({ ...usual, runtime: undefined, fetched: true })).toMatchObject({ way: "browser" });
  });

  test("nothing is fetched where no window could appear, or none is wanted", () => {
    expect(planStart({ ...usual, runtime: undefined, display: false })).toMatchObject({ way: "browser" });
    expect(planStart({ ...usual, display: false })).toMatchObject({ way: "browser" });
    expect(planStart({ ...usual, words: ["--browser"] })).toMatchObject({ way: "browser" });
  });
});

test("the browser is opened by the system's own means, and not without a display", () => {
  const url = "http://127.0.0.1:1/";
  expect(browserOpener(url, "linux", true)).toEqual({ command: "xdg-open", args: [url] });
  expect(browserOpener(url, "darwin", true)).toEqual({ command: "open", args: [url] });
  expect(browserOpener(url, "win32", true)?.args.at(-1)).toBe(url);
  expect(browserOpener(url, "linux", false)).toBeUndefined();
});
