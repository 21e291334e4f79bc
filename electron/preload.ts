/** Meets the bridge on the desktop. Runs sandboxed, beside the page; passes messages and knows nothing else. */
import { contextBridge, type IpcRendererEvent, ipcRenderer } from "electron";
import type { Bridge, Platform, Unsubscribe } from "./bridge.ts";
import {
  CALL_CHANNEL,
  type CallName,
  type Calls,
  EVENT_CHANNEL,
  type Reply,
  type ShellEvent,
} from "./messages.ts";

async function call<K extends CallName>(name: K, args: Calls[K]["args"]): Promise<Calls[K]["result"]> {
  const reply: Reply<Calls[K]["result"]> = await ipcRenderer.invoke(CALL_CHANNEL, name, args);
  if (reply.ok) return reply.value;
  throw new Error(reply.message);
}

type EventOf<K extends ShellEvent["kind"]> = Extract<ShellEvent, { kind: K }>;

function on<K extends ShellEvent["kind"]>(kind: K, listener: (event: EventOf<K>) => void): Unsubscribe {
  const heard = (_event: IpcRendererEvent, event: ShellEvent): void => {
    if (event.kind === kind) listener(event as EventOf<K>);
  };
  ipcRenderer.on(EVENT_CHANNEL, heard);
  return () => {
    ipcRenderer.removeListener(EVENT_CHANNEL, heard);
  };
}

const SYSTEMS: Readonly<Record<string, Platform["system"]>> = {
  darwin: "mac",
  win32: "windows",
  linux: "linux",
};

const bridge: Bridge = {
  platform: { kind: "desktop", system: SYSTEMS[process.platform] ?? "other" },
  openDoor: () => call("door.open", {}),
  saveDoor: (token, name, text) => call("door.save", { token, name, text }),
  saveDoorAs: (name, text) => call("door.saveAs", { name, text }),
  saveBytes: (name, bytes, type) => call("bytes.save", { name, bytes, type }),
  recentDoors: () => call("recent.list", {}),
  openRecent: (token) => call("recent.open", { token }),
  onOpenFile: (listener) => {
    const unsubscribe = on("open-file", ({ door }) => listener(door));
    void call("page.ready", {});
    return unsubscribe;
  },
  onMenuCommand: (listener) => on("menu", ({ command }) => listener(command)),
  setMenuState: (state) => void call("menu.state", state),
  setUnsaved: (unsaved) => void call("close.unsaved", { unsaved }),
  onSaveBeforeClosing: (save) =>
    on("save-before-closing", () => {
      save()
        .catch(() => false)
        .then((saved) => call("close.saved", { saved }));
    }),
  writeSnapshot: async (snapshot) => void (await call("snapshot.write", snapshot)),
  readSnapshots: () => call("snapshot.read", {}),
  clearSnapshot: async (document) => void (await call("snapshot.clear", { document })),
  readTrial: (token, name) => call("trial.read", { token, name }),
  keepTrial: async (token, name, text) => void (await call("trial.keep", { token, name, text })),
};

contextBridge.exposeInMainWorld("swingstill", bridge);
