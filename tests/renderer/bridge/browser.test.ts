import { beforeEach, describe, expect, test, vi } from "vitest";
import { type BrowserWindow, createBrowserBridge } from "../../../renderer/bridge/browser.ts";
import { createMemoryVault, type Shelf, type Vault } from "../../../renderer/bridge/vault.ts";

/** A file of a browser with File System Access. */
class FakeHandle {
  readonly kind = "file";
  readonly name: string;
  data: string;
  permission: PermissionState = "granted";
  gone = false;
  constructor(name: string, data: string) {
    this.name = name;
    this.data = data;
  }
  async requestPermission(): Promise<PermissionState> {
    return this.permission;
  }
  async getFile(): Promise<File> {
    if (this.gone) throw new DOMException("gone", "NotFoundError");
    return new File([this.data], this.name);
  }
  async createWritable() {
    let written = "";
    return {
      write: async (data: string | Uint8Array) => {
        written = typeof data === "string" ? data : new TextDecoder().decode(data);
      },
      close: async () => {
        this.data = written;
      },
    };
  }
  async isSameEntry(other: FakeHandle): Promise<boolean> {
    return other === this;
  }
}

/** Keeps records as they are: handles cannot be cloned outside a browser. */
function plainVault(): Vault {
  const shelves = {
    recent: new Map<string, unknown>(),
    snapshots: new Map<string, unknown>(),
    trials: new Map<string, unknown>(),
  };
  return {
    all: async <T>(shelf: Shelf) => [...shelves[shelf].values()] as T[],
    get: async <T>(shelf: Shelf, key: string) => shelves[shelf].get(key) as T | undefined,
    put: async (shelf, key, value) => void shelves[shelf].set(key, value),
    remove: async (shelf, key) => void shelves[shelf].delete(key),
  };
}

interface Downloaded {
  readonly name: string;
  readonly blob: Blob;
}

function fakeWindow(pickers: Record<string, unknown>, locks?: unknown) {
  const downloads: Downloaded[] = [];
  const blobs = new Map<string, Blob>();
  const listeners = new Map<string, (event: Event) => void>();
  const window = {
    navigator: { userAgent: "X11; Linux", locks },
    addEventListener: (name: string, listener: (event: Event) => void) => listeners.set(name, listener),
    URL: {
      createObjectURL: (blob: Blob) => {
        const url = `blob:${blobs.size}`;
        blobs.set(url, blob);
        return url;
      },
      revokeObjectURL: () => {},
    },
    document: {
      createElement: () => ({
        href: "",
        download: "",
        click() {
          downloads.push({ name: this.download, blob: blobs.get(this.href) as Blob });
        },
      }),
    },
    ...pickers,
  };
  return { window: window as unknown as BrowserWindow, downloads, listeners };
}

const cancelled = async () => {
  throw new DOMException("cancelled", "AbortError");
};

beforeEach(() => {
  vi.useFakeTimers({ toFake: ["setTimeout"] });
  return () => vi.useRealTimers();
});

describe("with the browser's file pickers", () => {
  test("open and save write the very same file, byte for byte", async () => {
    const handle = new FakeHandle("mine.door.json", "\ufeff{ }\r\n");
    const { window } = fakeWindow({ showOpenFilePicker: async () => [handle] });
    const bridge = createBrowserBridge(window, plainVault());
    const door = await bridge.openDoor();
    expect(door).toMatchObject({ name: "mine.door.json", text: "\ufeff{ }\r\n" });
    const saved = await bridge.saveDoor(door?.token ?? null, "mine", `${door?.text} `);
    expect(saved).toMatchObject({ name: "mine.door.json", token: door?.token });
    expect(handle.data).toBe("\ufeff{ }\r\n ");
  });

  test("a door without a file asks for a place; cancelling is no failure", async () => {
    const handle = new FakeHandle("new.door.json", "");
    const asked: string[] = [];
    const pick = async ({ suggestedName }: { suggestedName: string }) => {
      asked.push(suggestedName);
      return handle;
    };
    const bridge = createBrowserBridge(fakeWindow({ showSaveFilePicker: pick }).window, plainVault());
    await bridge.saveDoor(null, "cat", "{}");
    expect([asked, handle.data]).toEqual([["cat.door.json"], "{}"]);
    const other = createBrowserBridge(
      fakeWindow({ showSaveFilePicker: cancelled, showOpenFilePicker: cancelled }).window,
      plainVault(),
    );
    expect(await other.saveDoorAs("cat", "{}")).toBeNull();
    expect(await other.openDoor()).toBeNull();
  });

  test("a file that is not UTF-8 or too large is refused in words", async () => {
    const handle = new FakeHandle("odd.door.json", "");
    handle.getFile = async () => new File([new Uint8Array([0xff, 0xfe, 0x80])], "odd.door.json");
    const bridge = createBrowserBridge(
      fakeWindow({ showOpenFilePicker: async () => [handle] }).window,
      plainVault(),
    );
    await expect(bridge.openDoor()).rejects.toThrow("odd.door.json is not UTF-8");
  });

  test("a permission the person refuses is said", async () => {
    const handle = new FakeHandle("mine.door.json", "{}");
    const bridge = createBrowserBridge(
      fakeWindow({ showOpenFilePicker: async () => [handle] }).window,
      plainVault(),
    );
    const door = await bridge.openDoor();
    handle.permission = "denied";
    await expect(bridge.saveDoor(door?.token ?? null, "mine", "x")).rejects.toThrow("not allowed to write");
    expect(handle.data).toBe("{}");
  });

  test("recent doors: newest first, each file once, gone ones forgotten with a word", async () => {
    const one = new FakeHandle("one.door.json", "1");
    const two = new FakeHandle("two.door.json", "2");
    let next = one;
    const vault = plainVault();
    const bridge = createBrowserBridge(fakeWindow({ showOpenFilePicker: async () => [next] }).window, vault);
    await bridge.openDoor();
    await new Promise((resolve) => setImmediate(resolve));
    vi.setSystemTime(Date.now() + 1000);
    next = two;
    await bridge.openDoor();
    next = one;
    await bridge.openDoor();
    const names = (await bridge.recentDoors()).map(({ name }) => name);
    expect(names.sort()).toEqual(["one.door.json", "two.door.json"]);
    const gone = (await bridge.recentDoors()).find(({ name }) => name === "two.door.json");
    two.gone = true;
    if (gone === undefined) throw new Error("the second door is not listed");
    await expect(bridge.openRecent(gone.token)).rejects.toThrow("two.door.json is not there any more");
    expect((await bridge.recentDoors()).map(({ name }) => name)).toEqual(["one.door.json"]);
  });
});

describe("without them", () => {
  test("saving is a download, and the door can be opened again from the copy kept", async () => {
    const { window, downloads } = fakeWindow({});
    const bridge = createBrowserBridge(window, createMemoryVault());
    const saved = await bridge.saveDoor(null, "cat.door.json", "{ }");
    expect(saved?.name).toBe("cat.door.json");
    expect([downloads[0].name, await downloads[0].blob.text()]).toEqual(["cat.door.json", "{ }"]);
    const [recent] = await bridge.recentDoors();
    expect(await bridge.openRecent(recent.token)).toEqual({
      token: recent.token,
      name: "cat.door.json",
      text: "{ }",
    });
  });

  test("exports are downloads of their bytes", async () => {
    const { window, downloads } = fakeWindow({});
    const bridge = createBrowserBridge(window, createMemoryVault());
    expect(await bridge.saveBytes("swing.csv", new TextEncoder().encode("a,b"), "text/csv")).toBe(
      "swing.csv",
    );
    expect([downloads[0].blob.type, await downloads[0].blob.text()]).toEqual(["text/csv", "a,b"]);
  });
});

test("the list of recent doors stays short", async () => {
  const bridge = createBrowserBridge(fakeWindow({}).window, createMemoryVault());
  for (let i = 0; i < 20; i++) await bridge.saveDoor(null, `door-${i}`, String(i));
  expect(await bridge.recentDoors()).toHaveLength(12);
});

test("leaving with unsaved work asks", () => {
  const { window, listeners } = fakeWindow({});
  const bridge = createBrowserBridge(window, createMemoryVault());
  const leave = () => {
    const event = new Event("beforeunload", { cancelable: true });
    listeners.get("beforeunload")?.(event);
    return event.defaultPrevented;
  };
  expect(leave()).toBe(false);
  bridge.setUnsaved(true);
  expect(leave()).toBe(true);
});

test("recovery copies: newest first, none of a page that still lives, cleared by name", async () => {
  const held: { name: string }[] = [];
  const locks = {
    request: async (name: string) => void held.push({ name }),
    query: async () => ({ held }),
  };
  const vault = createMemoryVault();
  const living = createBrowserBridge(fakeWindow({}, locks).window, vault);
  await living.writeSnapshot({ document: "a", name: "a", token: null, text: "1" });
  expect(await living.readSnapshots()).toEqual([]);
  held.length = 0;
  expect((await living.readSnapshots()).map(({ document, text }) => [document, text])).toEqual([["a", "1"]]);
  await living.clearSnapshot("a");
  expect(await living.readSnapshots()).toEqual([]);
});

test("where the browser keeps no database, doors open and save all the same", async () => {
  const refuse = async () => {
    throw new DOMException("forbidden", "SecurityError");
  };
  const vault: Vault = { all: refuse, get: refuse, put: refuse, remove: refuse };
  const handle = new FakeHandle("mine.door.json", "{}");
  const bridge = createBrowserBridge(fakeWindow({ showOpenFilePicker: async () => [handle] }).window, vault);
  const door = await bridge.openDoor();
  await bridge.saveDoor(door?.token ?? null, "mine", "{ }");
  expect(handle.data).toBe("{ }");
  expect(await bridge.recentDoors()).toEqual([]);
});

test("a file that took too long to be made for a dialog goes to the downloads; another refusal is told", async () => {
  const refuse = (name: string) => async () => {
    throw new DOMException("must be handling a user gesture", name);
  };
  const late = fakeWindow({ showSaveFilePicker: refuse("SecurityError") });
  const saved = createBrowserBridge(late.window, plainVault()).saveBytes(
    "a.zip",
    new Uint8Array(2),
    "application/zip",
  );
  expect(await saved).toBe("a.zip");
  expect(late.downloads.map(({ name, blob }) => [name, blob.size])).toEqual([["a.zip", 2]]);
  const other = fakeWindow({ showSaveFilePicker: refuse("NotAllowedError") });
  const lost = createBrowserBridge(other.window, plainVault()).saveBytes(
    "a.zip",
    new Uint8Array(2),
    "application/zip",
  );
  await expect(lost).rejects.toThrow("user gesture");
});

describe("readings from the bench", () => {
  test("come back with the file they belong to, under whatever token; another file of that name has its own", async () => {
    const [mine, other] = [new FakeHandle("a.door.json", "{}"), new FakeHandle("a.door.json", "{}")];
    let next = mine;
    const { window } = fakeWindow({ showOpenFilePicker: async () => [next] });
    const vault = plainVault();
    const first = createBrowserBridge(window, vault);
    const token = (await first.openDoor())?.token ?? null;
    await first.keepTrial(token, "a.door.json", "one");
    await first.keepTrial(token, "a.door.json", "two");
    const again = createBrowserBridge(window, vault);
    expect(await again.readTrial((await again.openDoor())?.token ?? null, "a.door.json")).toBe("two");
    next = other;
    const theirs = (await again.openDoor())?.token ?? null;
    expect(await again.readTrial(theirs, "a.door.json")).toBeNull();
    await again.keepTrial(theirs, "a.door.json", "theirs");
    next = mine;
    expect(await again.readTrial((await again.openDoor())?.token ?? null, "a.door.json")).toBe("two");
  });

  test("of a door never saved go by its name, apart from a file of that name; null forgets them", async () => {
    const { window } = fakeWindow({});
    const bridge = createBrowserBridge(window, plainVault());
    await bridge.keepTrial(null, "new.door.json", "one");
    expect(await bridge.readTrial(null, "new.door.json")).toBe("one");
    expect(await bridge.readTrial(null, "other.door.json")).toBeNull();
    const saved = await bridge.saveDoor(null, "new.door.json", "{}");
    expect(await bridge.readTrial(saved?.token ?? null, "new.door.json")).toBeNull();
    await bridge.keepTrial(null, "new.door.json", null);
    expect(await bridge.readTrial(null, "new.door.json")).toBeNull();
  });
});
