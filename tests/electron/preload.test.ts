import { beforeEach, expect, test, vi } from "vitest";
import type { Bridge, FileToken } from "../../electron/bridge.ts";
import {
  CALL_CHANNEL,
  type CallName,
  checkCall,
  EVENT_CHANNEL,
  type Reply,
} from "../../electron/messages.ts";

type Listener = (event: unknown, message: unknown) => void;
const shared = vi.hoisted(() => ({
  exposed: new Map<string, unknown>(),
  calls: [] as unknown[][],
  listeners: new Map<string, Set<(event: unknown, message: unknown) => void>>(),
  reply: { ok: true, value: null } as unknown,
}));

vi.mock("electron", () => ({
  contextBridge: { exposeInMainWorld: (name: string, value: unknown) => shared.exposed.set(name, value) },
  ipcRenderer: {
    invoke: async (...args: unknown[]) => {
      shared.calls.push(args);
      return shared.reply;
    },
    on: (channel: string, listener: Listener) => {
      shared.listeners.set(channel, (shared.listeners.get(channel) ?? new Set()).add(listener));
    },
    removeListener: (channel: string, listener: Listener) => shared.listeners.get(channel)?.delete(listener),
  },
}));

await import("../../electron/preload.ts");
const bridge = shared.exposed.get("swingstill") as Bridge;

const shellSays = (message: unknown): void => {
  for (const listener of shared.listeners.get(EVENT_CHANNEL) ?? []) listener({}, message);
};
const answerWith = (reply: Reply<unknown>): void => {
  shared.reply = reply;
};

beforeEach(() => {
  shared.calls.length = 0;
  shared.listeners.clear();
  answerWith({ ok: true, value: null });
});

test("the page gets the bridge and nothing else", () => {
  expect([...shared.exposed.keys()]).toEqual(["swingstill"]);
  expect(bridge.platform.kind).toBe("desktop");
});

test("every request of the bridge passes the guard at the other side", async () => {
  const token = "a".repeat(32) as FileToken;
  await bridge.openDoor();
  await bridge.saveDoor(token, "a", "{}");
  await bridge.saveDoor(null, "a", "{}");
  await bridge.saveDoorAs("a", "{}");
  await bridge.saveBytes("a", new Uint8Array(1), "image/png");
  await bridge.recentDoors();
  await bridge.openRecent(token);
  bridge.onOpenFile(() => undefined);
  bridge.setMenuState({ undo: null, redo: "x" });
  bridge.setUnsaved(true);
  await bridge.writeSnapshot({ document: "d", name: "a", token: null, text: "{}" });
  await bridge.readSnapshots();
  await bridge.clearSnapshot("d");
  await bridge.readTrial(token, "a");
  await bridge.keepTrial(null, "a", "{}");
  const names = shared.calls.map(([channel, name, args]) => {
    expect(channel).toBe(CALL_CHANNEL);
    return checkCall(name, args).name;
  });
  const all: readonly CallName[] = [
    "door.open",
    "door.save",
    "door.saveAs",
    "bytes.save",
    "recent.list",
    "recent.open",
    "page.ready",
    "menu.state",
    "close.unsaved",
    "snapshot.write",
    "snapshot.read",
    "snapshot.clear",
    "trial.read",
    "trial.keep",
  ];
  expect(new Set(names)).toEqual(new Set(all));
});

test("a refusal arrives as an error with the shell's sentence", async () => {
  answerWith({ ok: false, message: "the disk is full" });
  await expect(bridge.openDoor()).rejects.toThrow("the disk is full");
});

test("listeners hear their kind of event until they end the subscription", () => {
  const commands: string[] = [];
  const end = bridge.onMenuCommand((command) => commands.push(command));
  shellSays({ kind: "menu", command: "save" });
  shellSays({ kind: "save-before-closing" });
  end();
  shellSays({ kind: "menu", command: "open" });
  expect(commands).toEqual(["save"]);
});

test.each([
  ["saved", async () => true, true],
  ["cancelled", async () => false, false],
  ["failed", async () => Promise.reject(new Error("disk full")), false],
])("told to save before closing, the page answers: %s", async (_case, save, saved) => {
  bridge.onSaveBeforeClosing(save);
  shellSays({ kind: "save-before-closing" });
  await expect.poll(() => shared.calls).toEqual([[CALL_CHANNEL, "close.saved", { saved }]]);
});
